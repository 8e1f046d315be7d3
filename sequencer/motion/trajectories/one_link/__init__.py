"""One link: the hand on a quintic, the tether on the sphere, and the search for the pair that is danced."""
