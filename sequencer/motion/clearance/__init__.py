"""Distances of performers from each other and from everything else, proven over all time."""
