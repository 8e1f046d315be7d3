"""Parts that several sheets share, made from a staged show."""
