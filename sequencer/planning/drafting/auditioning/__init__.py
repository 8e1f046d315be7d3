"""What a cast can dance: moves and the ways from one to the next, each tried alone by the checks."""
