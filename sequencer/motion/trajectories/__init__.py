"""A prop's trajectory through a whole show: blocks joined by links, and whether they join."""
