"""Parts that several sheets share, built from a staged show."""
