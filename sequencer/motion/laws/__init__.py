"""What moves: laws of hands and tethers in beats, exact to the second derivative, with proven bounds."""
