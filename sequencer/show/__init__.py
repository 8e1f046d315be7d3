"""The show file: model, reading, editing, and the timeline it means."""
