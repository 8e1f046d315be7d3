"""The text of a show file: where the parser found each value, and how a change is written there."""
