"""What was heard in a song, as charts, tables and JSON."""
