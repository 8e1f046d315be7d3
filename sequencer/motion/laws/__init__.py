"""Laws of motion of hands and tethers in beats, exact to the second derivative, with proven bounds."""
