"""Which way somebody walks on a plan, and who passes first where two ways cross.

Stage frame [m]; on paper points. A way's points are evenly spaced in beats. Source: elementary geometry.
"""

from collections.abc import Sequence
from itertools import combinations, pairwise
from math import dist

import numpy as np

from sequencer.outputs.sheets.page.wording import brief, number
from sequencer.outputs.sheets.parts.scene import Way, way_length

Point = tuple[float, float]
_WALKS = 0.05  # [m] shorter ways are not drawn
_TOGETHER = 0.25  # [beats] nearer than this nobody is first
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


def crossing_words(ways: dict[str, Way], beats: float) -> list[str]:
    """Who passes first wherever two ways cross, such as "Wren before Moss by 2 counts".

    Parameters
    ----------
    ways : dict of way [m, stage frame]
        All of them walked in the same `beats`.
    beats : float
    """
    import shapely

    walked = {name: way for name, way in ways.items() if way_length(way) >= _WALKS}
    lines = {name: shapely.LineString(way) for name, way in walked.items()}
    out = []
    for one, other in combinations(walked, 2):
        met = lines[one].intersection(lines[other])
        for each in getattr(met, "geoms", [met]):
            if each.geom_type != "Point":
                continue
            times = [_beat(walked[n], lines[n].project(each), beats) for n in (one, other)]
            gap = times[1] - times[0]
            if abs(gap) < _TOGETHER:
                out.append(
                    f"{brief(one)} and {brief(other)} at the same time: agree who goes first"
                )
                continue
            first, then = (one, other) if gap > 0 else (other, one)
            counts = max(round(2 * abs(gap)) / 2, 0.5)
            noun = "count" if counts <= 1 else "counts"
            out.append(f"{brief(first)} before {brief(then)} by {number(counts)} {noun}")
    return list(dict.fromkeys(out))


def _beat(way: Way, far: float, beats: float) -> float:
    """When somebody has walked so far along a way."""
    steps = [dist(a, b) for a, b in pairwise(way)]
    lengths = np.concatenate([[0.0], np.cumsum(steps)])
    return float(np.interp(far, lengths, np.linspace(0.0, beats, len(way))))


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
