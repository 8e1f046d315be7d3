"""Beats, seconds and bar.beat: the only place that converts between them."""
