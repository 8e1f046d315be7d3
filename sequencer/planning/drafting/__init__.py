"""Routines drafted for a song: candidates for every part, the best choice of them, and the checks on it."""
