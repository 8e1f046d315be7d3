"""What the checks found, as tables and JSON."""
