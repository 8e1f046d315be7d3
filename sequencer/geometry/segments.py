"""Distances of segments in space, for whole arrays at once.

Any common frame [m]; a point is a segment whose ends coincide.
"""

import numpy as np

from sequencer.arrays import Floats

_TINY = 1e-300


def segment_segment(
    a_start: Floats, a_end: Floats, b_start: Floats, b_end: Floats
) -> tuple[Floats, Floats, Floats]:
    """Distance between segments, and the nearest position on each.

    Parameters
    ----------
    a_start : ndarray, shape (..., 3) [m, any one frame]
    a_end : ndarray, shape (..., 3) [m, same frame]
    b_start : ndarray, shape (..., 3) [m, same frame]
    b_end : ndarray, shape (..., 3) [m, same frame]

    Returns
    -------
    distance : ndarray, shape (...) [m]
    on_a : ndarray, shape (...) [1]
        0 at the start of a, 1 at its end.
    on_b : ndarray, shape (...) [1]

    Notes
    -----
    Source: C. Ericson, Real-Time Collision Detection, 2005, 5.1.9 (from memory): the nearest points
    of the two lines, clamped, each then projected on the other segment. For parallel lines any starting
    point will do, and the final projections find the relevant end. Exact up to rounding.
    """
    d1, d2, r = a_end - a_start, b_end - b_start, a_start - b_start
    a, e, b = _dot(d1, d1), _dot(d2, d2), _dot(d1, d2)
    c, f = _dot(d1, r), _dot(d2, r)
    safe_a, safe_e = np.maximum(a, _TINY), np.maximum(e, _TINY)
    denominator = a * e - b * b
    crossing = denominator > 1e-14 * a * e
    s = np.where(crossing, (b * f - c * e) / np.where(crossing, denominator, 1.0), 0.0)
    s = np.clip(s, 0.0, 1.0)
    t = np.clip((b * s + f) / safe_e, 0.0, 1.0)
    s = np.clip((b * t - c) / safe_a, 0.0, 1.0)
    gap = r + s[..., None] * d1 - t[..., None] * d2
    return np.sqrt(_dot(gap, gap)), s, t


def _dot(a: Floats, b: Floats) -> Floats:
    return np.asarray(np.einsum("...i,...i->...", a, b))
