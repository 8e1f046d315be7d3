"""Distances of segments in space, or all in one plane, for whole arrays at once.

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
    The four arrays are broadcast against each other; what depends on one segment alone is computed once. In a plane they
    have two columns: the same, in every digit, as in space with a third that is 0 everywhere.
    Source: C. Ericson, Real-Time Collision Detection, 2005, 5.1.9 (from memory): the nearest points
    of the two lines, clamped, each then projected on the other segment. For parallel lines any starting
    point will do, and the final projections find the relevant end. Exact up to rounding.
    """
    a0, a1, b0, b1 = (_parts(ends) for ends in (a_start, a_end, b_start, b_end))
    d1, d2, r = _between(a0, a1), _between(b0, b1), _between(b0, a0)
    a, e, b = _dot(d1, d1), _dot(d2, d2), _dot(d1, d2)
    c, f = _dot(d1, r), _dot(d2, r)
    denominator = a * e - b * b
    crossing = denominator > 1e-14 * a * e
    across = b * f - c * e
    s = np.divide(across, denominator, out=np.zeros(np.shape(across)), where=crossing)
    s = _share(s)
    t = _share((b * s + f) / np.maximum(e, _TINY))
    s = _share((b * t - c) / np.maximum(a, _TINY))
    gap = tuple(x + s * u - t * v for x, u, v in zip(r, d1, d2, strict=True))
    return np.sqrt(_dot(gap, gap)), s, t


def point_segment(point: Floats, start: Floats, end: Floats) -> Floats:
    """Distance of points from segments: `segment_segment` of a segment without length, in every digit.

    Parameters
    ----------
    point : ndarray, shape (..., 3) [m, any one frame]
    start : ndarray, shape (..., 3) [m, same frame]
    end : ndarray, shape (..., 3) [m, same frame]

    Returns
    -------
    distance : ndarray, shape (...) [m]

    Notes
    -----
    The three arrays are broadcast against each other; in a plane as of `segment_segment`. Source: the point's foot on the line, clamped.
    Exact up to rounding.
    """
    p, a, b = (_parts(each) for each in (point, start, end))
    way, off = _between(a, b), _between(a, p)
    share = _share(_dot(way, off) / np.maximum(_dot(way, way), _TINY))
    gap = tuple(x - share * v for x, v in zip(off, way, strict=True))
    return np.sqrt(_dot(gap, gap))


Parts = tuple[Floats, ...]  # x, y and z apart: several times quicker than rows of three


def _parts(vectors: Floats) -> Parts:
    return tuple(vectors[..., k] for k in range(vectors.shape[-1]))


def _between(first: Parts, last: Parts) -> Parts:
    return tuple(b - a for a, b in zip(first, last, strict=True))


def _dot(a: Parts, b: Parts) -> Floats:
    """Dot products, summed in the order of numpy's einsum: fits compared with older ones keep every digit."""
    if len(a) == 2:
        return np.asarray(a[0] * b[0] + a[1] * b[1])
    return np.asarray(a[0] * b[0] + a[2] * b[2] + a[1] * b[1])


def _share(values: Floats) -> Floats:
    """Values as shares of a whole: half the time of `np.clip` on arrays as small as these."""
    return np.asarray(np.minimum(np.maximum(values, 0.0), 1.0))
