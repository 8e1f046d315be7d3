"""Analysed songs as charts, tables and JSON."""
