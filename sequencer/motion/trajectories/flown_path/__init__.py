"""A hand through a whole show as it can be flown: periods, links between them, slices and bounds."""
