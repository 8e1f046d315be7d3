"""Hears beats, bars, sections and energy in a recording."""
