"""Changes proposed and written: mends of joins and of distances, each tried on the whole show first."""
