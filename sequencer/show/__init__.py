"""The show file: records, reading, editing and schema."""
