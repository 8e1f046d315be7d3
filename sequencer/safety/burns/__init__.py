"""Who is lit when, by whom, and the fuel for it."""
