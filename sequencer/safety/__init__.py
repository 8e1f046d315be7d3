"""Fire and crew planning from a staged show: burns, fuel, watches, house rules, the run of the night."""
