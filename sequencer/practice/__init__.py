"""Practice: what to work at next, from the show itself and from the log of what was practised."""
