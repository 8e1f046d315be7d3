"""Fitting a pattern to a body: position, shape, posture and pace, computed once and cached."""
