"""What is printed of one pattern: cards, drawings, build steps, joins."""
