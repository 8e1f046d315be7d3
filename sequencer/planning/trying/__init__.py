"""A change tried on the restaged show, and what it costs."""
