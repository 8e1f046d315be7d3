"""The parts of a song: where they begin and which return."""
