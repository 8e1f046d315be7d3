"""Every way from one state of hand and tether to another, for many transitions at once, whatever the limits.

The hand goes on its plain path, the tether by every way round the sphere (`sphere.py`). Each transition's ways are, to the last
digit, what they would be by themselves. Frame: body frame [m], rates per beat.
"""

from collections.abc import Callable
from dataclasses import fields
from functools import partial
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.one_link.hand_paths import (
    Piecewise,
    known_portions,
    plain_path,
    whole,
)
from sequencer.motion.trajectories.one_link.link_law import LinkLaw
from sequencer.motion.trajectories.one_link.link_limits import LinkLimits
from sequencer.motion.trajectories.one_link.link_search import law_along, stacked
from sequencer.motion.trajectories.one_link.sphere import LOOPS, SPHERE_SAMPLES, every_path, moved


class EveryWay(NamedTuple):
    """Transitions from one state to another by every way of the tether round the sphere, the hand on its plain path.

    Seen at k instants of n ways, rates by beats; the hand's are the same in all. The gentlest turning first.
    """

    hand: Floats  # (3, k, 3) place, rate, acceleration [m, body frame]
    tether: Floats  # (n, k, 3) [1]
    tether_rate: Floats  # (n, k, 3)
    tether_acceleration: Floats  # (n, k, 3)
    law: Callable[[int], LinkLaw]  # of one of them


def every_way(first: Motion, last: Motion, lengths: Floats, shares: Floats) -> list[EveryWay]:
    """Every way between states, whatever the limits, for some transitions that are worked out together.

    Parameters
    ----------
    first, last : Motion
        Arrays of shape (transitions, 3) [body frame].
    lengths : ndarray, shape (transitions,) [beats]
    shares : ndarray, shape (k,) [1]
        Of the beats, at which they are seen.

    Raises
    ------
    ValueError
        If no path was found for one of them (which would take two ends near every pole).

    Notes
    -----
    Source: `sphere.every_path` and `hand_paths.plain_path`. Exact at both ends.
    """
    ways, owner = _ways_of_each(first, last, lengths)
    plain = plain_path(first, last, lengths)
    hand = _jets_of_each(plain, lengths, shares)
    tether, rate, acceleration = moved(
        ways.frames, *_jets_of_each(ways.angles, lengths[owner], shares)
    )
    ends = np.searchsorted(owner, np.arange(len(lengths) + 1)).tolist()
    out = []
    for k, (low, high) in enumerate(pairwise(ends)):
        own = _Ways(ways.frames[low:high], _rows_of(ways.angles, slice(low, high)))
        law = partial(
            _law_of, _rows_of(plain, slice(k, k + 1)), own, float(lengths[k]), first, last, k
        )
        out.append(
            EveryWay(hand[:, k], tether[low:high], rate[low:high], acceleration[low:high], law)
        )
    return out


def _law_of(
    hand: Piecewise, ways: "_Ways", beats: float, first: Motion, last: Motion, k: int, way: int
) -> LinkLaw:
    angles = _rows_of(ways.angles, slice(way, way + 1))
    return law_along(hand, ways.frames[way], angles, beats, _one_of(first, k), _one_of(last, k))


def _one_of(motions: Motion, k: int) -> Motion:
    """One of several states, arrays of shape (3,)."""
    return Motion(**{each.name: getattr(motions, each.name)[k] for each in fields(motions)})


def _rows_of(paths: Piecewise, rows: slice) -> Piecewise:
    return Piecewise(paths.knots, paths.pieces[rows])


class _Ways(NamedTuple):
    """Tether paths of some transitions, one transition after the other, each one's gentlest first."""

    frames: Floats  # (n, 3, 3)
    angles: Piecewise  # n paths [rad]


def _ways_of_each(first: Motion, last: Motion, lengths: Floats) -> tuple[_Ways, Ints]:
    """All direct tether paths of some transitions, and whose each is; of each in the order in which a search takes them."""
    frames, angles_, usable = every_path(stacked(first, last), lengths)
    good = usable.T
    if not good.any(axis=1).all():
        raise ValueError("no path between the two tethers was found")
    plain = angles_.transpose(2, 0, 1, 3, 4)[good].reshape(-1, *angles_.shape[-2:])
    owner = np.repeat(np.nonzero(good)[0], len(LOOPS))
    span, angles = lengths[owner], whole(plain)
    x: Floats = np.arange(SPHERE_SAMPLES, dtype=np.float64) / (SPHERE_SAMPLES - 1)
    turns = _jets_of_each(angles, span, x)
    peak = np.linalg.norm(moved(None, *turns)[2], axis=-1).max(axis=1)
    over = ~LinkLimits().keep_turning(angles, span)
    order = np.lexsort((peak, over, owner))
    chosen = Piecewise(angles.knots, angles.pieces[order])
    frames = frames.transpose(1, 0, 2, 3)[good].repeat(len(LOOPS), axis=0)
    return _Ways(frames[order], chosen), owner


def _jets_of_each(paths: Piecewise, lengths: Floats, x: Floats) -> Floats:
    """Value, rate and acceleration by beats of n paths of one piece, each in its own number of beats, shape (3, n, k, m)."""
    (part,) = known_portions(paths.knots, x.tobytes())
    own = paths.pieces[:, 0]
    powers = [[length**order for length in lengths] for order in range(3)]
    return np.stack(
        [
            rows @ own / np.array(scale)[:, None, None]
            for rows, scale in zip(part.powers, powers, strict=True)
        ]
    )
