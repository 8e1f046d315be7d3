"""Verdicts on a staged show: each check returns findings; none draws, prints or mends."""
