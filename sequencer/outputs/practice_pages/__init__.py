"""The practice plan: on the screen, as a page with loops that can be opened, and as JSON."""
