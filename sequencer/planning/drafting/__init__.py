"""A routine proposed for a song: what each slot may be, the search for the best, and its proof."""
