"""Frames, bodies, regions and certified distances; knows nothing of music or files."""
