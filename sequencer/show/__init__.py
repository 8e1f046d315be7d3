"""The show file: its records, reading, editing and schema."""
