"""Mends of joins and of distances, each tried on the whole show before it is offered or written."""
