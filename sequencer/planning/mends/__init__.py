"""Mends of findings: changes that were tried and hold."""
