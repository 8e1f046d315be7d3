"""Rows of a performer's sheet: what both hands do, in words."""
