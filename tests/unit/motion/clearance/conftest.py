"""What tests of distances share: the nearest points of two segments by plain vector geometry."""

import numpy as np
import pytest


def _foot(point, start, end):
    """The point of a segment nearest to a point."""
    way = end - start
    square = float(way @ way)
    share = min(max(float((point - start) @ way) / square, 0.0), 1.0) if square else 0.0
    return start + share * way


def _nearest(a, b, c, d):
    """Nearest points of the segments ab and cd, and their distance.

    Each of the four ends against the other segment, and where the common perpendicular of the two lines meets
    both; the least of the five.
    """
    tries = [(_foot(c, a, b), c), (_foot(d, a, b), d), (a, _foot(a, c, d)), (b, _foot(b, c, d))]
    u, v, r = b - a, d - c, c - a
    n = np.cross(u, v)
    square = float(n @ n)
    if square > 1e-18:
        s, t = float(np.cross(r, v) @ n) / square, float(np.cross(r, u) @ n) / square
        if 0 <= s <= 1 and 0 <= t <= 1:
            tries.append((a + s * u, c + t * v))
    return min(
        ((*each, float(np.linalg.norm(each[1] - each[0]))) for each in tries), key=lambda e: e[2]
    )


@pytest.fixture(scope="session")
def nearest_points():
    """Nearest point of each of two segments, and their distance."""
    return _nearest
