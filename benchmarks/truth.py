"""A truth of beats without those that nobody would count.

Where a tune with a pick-up of part of a beat is repeated, a truth made bar by bar begins a new bar within a beat: one beat too many,
and the next is on time.
"""

import numpy as np

_SHORT = 0.75  # of a usual beat: what comes sooner before the next is no beat, if the two around it are one beat apart
_APART = 0.15  # by which they may be more or less than one


def repaired(beats):
    """Beats [s] without those that lie within a beat, all others as they are."""
    beats = np.asarray(beats, dtype=np.float64)
    gaps = np.diff(beats)
    if len(gaps) < 2:
        return beats
    usual = np.median(gaps)
    around = beats[2:] - beats[:-2]
    within = (gaps[1:] < _SHORT * usual) & (np.abs(around / usual - 1.0) < _APART)
    # The beats before and behind are as long as ever: else the tempo has changed.
    steady = np.concatenate([[True], np.abs(gaps / usual - 1.0) < _APART, [True]])
    within &= steady[:-3] & steady[3:]
    return beats[~np.concatenate([[False], within, [False]])]
