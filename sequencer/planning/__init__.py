"""Routines drafted for a song, and mends of joins and of distances; each is tried on the whole show."""
