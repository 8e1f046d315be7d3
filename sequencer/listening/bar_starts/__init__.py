"""Where the one is, and how sure that is."""
