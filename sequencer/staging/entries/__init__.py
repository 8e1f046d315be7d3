"""Entries of the show file on one song: moments, phrases written out, stops, wishes."""
