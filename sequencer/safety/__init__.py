"""Fire and crew planned from a staged show: burns, fuel, who watches, house rules, the run of the night."""
