"""Distances of performers from each other and from all else, proven over every moment."""
