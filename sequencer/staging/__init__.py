"""A show placed on its song: moments become beats, blocks become laws; the input to checks and outputs."""
