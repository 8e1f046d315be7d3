"""Frames, bodies, regions and certified distances; independent of music and files."""
