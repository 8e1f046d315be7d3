"""Where on a plan the ring of a walk's start and its arrow are drawn, so that no disc hides them; any unit of length."""

from collections.abc import Sequence
from math import dist

import numpy as np

Point = tuple[float, float]
_ALONG = (0.5, 0.6, 0.4, 0.7, 0.3, 0.8)  # shares of a way at which its arrow may be


def start_mark(way: Sequence[Point], discs: Sequence[Point], clear: float) -> Point:
    """Where the ring of a start is drawn: on the way, at the first point that no disc covers; else at the start."""
    return next((p for p in _fine(way) if _is_clear(p, discs, clear)), way[0])


def way_arrow(way: Sequence[Point], discs: Sequence[Point], clear: float) -> tuple[Point, Point]:
    """Where on a way its arrow is drawn, near the middle and clear of discs if it can be, and the unit vector ahead."""
    fine = _fine(way)
    marks = [round(share * (len(fine) - 2)) for share in _ALONG]
    k = next((each for each in marks if _is_clear(fine[each], discs, clear)), marks[0])
    (x, y), (to_x, to_y) = fine[k], fine[k + 1]
    long = max(dist(fine[k], fine[k + 1]), 1e-9)
    return (x, y), ((to_x - x) / long, (to_y - y) / long)


def _fine(way: Sequence[Point]) -> list[Point]:
    """A way in even steps of its length."""
    points = np.asarray(way, dtype=float)
    steps = np.hypot(*np.diff(points, axis=0).T)
    along = np.concatenate([[0.0], np.cumsum(steps)])
    at = np.linspace(0.0, along[-1], 101)
    xs, ys = (np.interp(at, along, points[:, k]).tolist() for k in (0, 1))
    return list(zip(xs, ys, strict=True))


def _is_clear(point: Point, discs: Sequence[Point], clear: float) -> bool:
    return all(dist(point, disc) >= clear for disc in discs)
