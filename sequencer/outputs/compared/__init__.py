"""Two texts of a show compared, in a performer's words: what changed, eight by eight, and all else that differs."""
