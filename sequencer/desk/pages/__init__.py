"""What the page asks of the server: one module a subject."""
