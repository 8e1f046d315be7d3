"""Beats, bars, sections and energy of a recording."""
