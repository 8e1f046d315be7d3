"""The best choice at given costs, and the proof of how good it is; knows no song and no show."""
