"""Numbers with their sources, as data."""
