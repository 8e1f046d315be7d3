"""Nearest parts of two dancers at given instants: for pictures, texts and fixes, not for proof."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, Ints, as_floats
from sequencer.geometry.segments import segment_segment
from sequencer.kept import recent
from sequencer.motion.clearance.slices import key_at
from sequencer.motion.performers.body_parts import FRONT_PARTS, PARTS
from sequencer.motion.performers.dancer import Dancer

_MOST_CLOSEST = 20_000


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Closest:
    """The two nearest parts at n instants."""

    distance: Floats  # (n,) [m] between their surfaces; negative where they overlap
    part: Ints  # (n, 2) index into PARTS
    point: Floats  # (n, 2, 3) [m, stage frame] on the axis of each
    direction: Floats  # (n, 3) [1] from the first to the second; 0 where the axes meet


def closest_at(
    first: Dancer, second: Dancer, beat: float, *, edges: Floats | None = None
) -> Closest:
    """Nearest parts of two dancers at one instant, as `closest`; kept by what decides them.

    Parameters
    ----------
    first, second : Dancer
    beat : float
    edges : ndarray, shape (s + 1,) [beats], optional
        Of slices for which both are known already, see `key_at`.

    Notes
    -----
    Source: `closest`, of which it is one instant. Exact to rounding.
    """
    keys = key_at(first, beat, edges), key_at(second, beat, edges)
    return recent(
        "closest",
        None if None in keys else (*keys, beat),
        lambda: closest(first, second, [beat]),
        most=_MOST_CLOSEST,
    )


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
    parts = PARTS if first.two_ended or second.two_ended else FRONT_PARTS
    starts, ends = [part.start for part in parts], [part.end for part in parts]
    a = [points[0][which][:, None] for which in (starts, ends)]  # (k, 1, n, 3)
    b = [points[1][which][None] for which in (starts, ends)]
    apart, s, t = segment_segment(*a, *b)
    k, n = len(parts), len(beat)
    gap = (apart - radii[0][:k, None] - radii[1][None, :k]).reshape(k * k, n)
    best, each = np.argmin(gap, axis=0), np.arange(n)  # the first of equal ones
    part = np.stack(np.divmod(best, k), axis=1)
    p, q = part.T
    point = np.stack(
        [
            own[0] + along[p, q, each][:, None] * (own[1] - own[0])
            for own, along in (
                ([end[p, 0, each] for end in a], s),
                ([end[0, q, each] for end in b], t),
            )
        ],
        axis=1,
    )
    distance = gap[best, each]
    across = point[:, 1] - point[:, 0]
    size = np.linalg.norm(across, axis=1, keepdims=True)
    direction = np.where(size > 1e-9, across / np.maximum(size, 1e-9), 0.0)
    return Closest(distance=distance, part=part, point=point, direction=direction)
