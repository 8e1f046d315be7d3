"""A staged show as it can be flown."""
