"""The vocabulary: named patterns, the families of laws they are made of, and blocks of both hands."""
