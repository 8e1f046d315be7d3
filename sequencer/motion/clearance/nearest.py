"""Nearest parts of two dancers at given instants: for pictures, texts and fixes, not for proof."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, Ints, as_floats
from sequencer.geometry.segments import segment_segment
from sequencer.motion.performers.body_parts import FRONT_PARTS, PARTS
from sequencer.motion.performers.dancer import Dancer


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Closest:
    """The two nearest parts at n instants."""

    distance: Floats  # (n,) [m] between their surfaces; negative where they overlap
    part: Ints  # (n, 2) index into PARTS
    point: Floats  # (n, 2, 3) [m, stage frame] on the axis of each
    direction: Floats  # (n, 3) [1] from the first to the second; 0 where the axes meet


def closest(first: Dancer, second: Dancer, beats: ArrayLike) -> Closest:
    """Nearest parts of two dancers.

    Parameters
    ----------
    first, second : Dancer
    beats : array_like, shape (n,) [beats]

    Returns
    -------
    closest : Closest

    Notes
    -----
    Source: every part against every part, `geometry.segments.segment_segment`. Exact at the given
    instants; nothing is implied in between.
    """
    beat = as_floats("beats", beats)
    points = [dancer.stage_points(beat)[0] for dancer in (first, second)]
    radii = [dancer.shells(own, beat) for dancer, own in zip((first, second), points, strict=True)]
    n = len(beat)
    distance: Floats = np.full(n, np.inf)
    part = np.zeros((n, 2), dtype=np.int64)
    point = np.zeros((n, 2, 3))
    parts = PARTS if first.two_ended or second.two_ended else FRONT_PARTS
    low, high = (points[1][[getattr(b, end) for b in parts]] for end in ("start", "end"))
    every = np.arange(n)
    for p, a in enumerate(parts):
        start, end = points[0][a.start], points[0][a.end]
        apart, s, t = segment_segment(start, end, low, high)  # to all parts of the second dancer
        gaps = apart - radii[0][p] - radii[1][: len(parts)]
        q = gaps.argmin(axis=0)
        closer = gaps[q, every] < distance
        k, q = every[closer], q[closer]
        distance[k] = gaps[q, k]
        part[k, 0], part[k, 1] = p, q
        point[k, 0] = start[k] + s[q, k, None] * (end - start)[k]
        point[k, 1] = low[q, k] + t[q, k, None] * (high - low)[q, k]
    across = point[:, 1] - point[:, 0]
    size = np.linalg.norm(across, axis=1, keepdims=True)
    direction = np.where(size > 1e-9, across / np.maximum(size, 1e-9), 0.0)
    return Closest(distance=distance, part=part, point=point, direction=direction)
