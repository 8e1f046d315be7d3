"""The published schema of the show file."""
