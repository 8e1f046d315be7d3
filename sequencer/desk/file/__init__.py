"""The opened show file: its text, its steps, its versions, and what others did to it on the disk."""
