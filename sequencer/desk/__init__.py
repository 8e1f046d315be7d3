"""A show opened for planning in the browser: its text and journal, the server on this machine, and what it tells the page."""
