"""Outputs about patterns: cards, drawings, build steps, joins."""
