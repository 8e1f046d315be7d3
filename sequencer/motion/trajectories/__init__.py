"""A prop's whole show: blocks joined by links into one trajectory, and whether they join."""
