"""A show on its song: every moment a beat, every block a law; what checks and outputs read."""
