"""A show that others may watch on the same network."""
