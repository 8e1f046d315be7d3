"""How near a prop comes to body and other prop on a link, at a few looks: to choose by, not to prove.

Frame: body frame [m].
Source: nearest points of segments, `geometry.distances`; nothing is said of what lies between two looks.
"""

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.distances import segment_segment
from sequencer.motion.props import TETHER_RADIUS
from sequencer.motion.rooms import Beside, Room
from sequencer.motion.state import Motion


def body_gaps(hand: Floats, tethers: Floats, room: Room) -> Floats:
    """Smallest gap between prop and body on each tether path.

    Parameters
    ----------
    hand : ndarray, shape (k, 3) [m, body frame]
    tethers : ndarray, shape (n, k, 3) [1, body frame]
    room : Room

    Returns
    -------
    gaps : ndarray, shape (n,) [m]

    Notes
    -----
    Source: this module's head. Exact at the looks.
    """
    start, head = _ends(hand, tethers, room)
    least = np.full(len(tethers), np.inf)
    for capsule in room.body.capsules:
        low, high = (np.broadcast_to(np.array(e), head.shape) for e in (capsule.start, capsule.end))
        gap = segment_segment(start, head, low, high)[0].min(axis=1)
        least = np.minimum(least, gap - capsule.radius - room.wick_radius)
    return least


def other_gaps(hand: Floats, tethers: Floats, room: Room, other: Beside) -> Floats:
    """Smallest gap to the other hand's prop on each tether path.

    Parameters
    ----------
    hand : ndarray, shape (k, 3) [m, body frame]
    tethers : ndarray, shape (n, k, 3) [1, body frame]
    room : Room
    other : Beside

    Returns
    -------
    gaps : ndarray, shape (n,) [m]

    Notes
    -----
    Source: this module's head. Exact at the looks.
    """
    start, head = _ends(hand, tethers, room)
    low, high = (np.broadcast_to(end, head.shape) for end in other.ends())
    wick, theirs = room.wick_radius, other.room.wick_radius
    gaps = [
        segment_segment(*ends)[0].min(axis=1) - radii
        for *ends, radii in (
            (start, head, low, high, 2 * TETHER_RADIUS),
            (head, head, low, high, wick + TETHER_RADIUS),
            (start, head, high, high, theirs + TETHER_RADIUS),
            (head, head, high, high, wick + theirs),
        )
    ]
    return np.asarray(np.min(gaps, axis=0))


def shape_gap(motion: Motion, room: Room) -> float:
    """Smallest gap between a flat prop in its true shape and the body [m].

    Parameters
    ----------
    motion : Motion
        Arrays of shape (k, 3) [body frame].
    room : Room
        Whose `solids` are the shape.
    """
    wide = np.cross(motion.plane, motion.tether)
    spots = np.array([(solid.start, solid.end) for solid in room.solids])
    along, across = (spots[:, :, k].T[:, :, None, None, None] for k in (0, 1))
    start, end = motion.hand + along * motion.tether + across * wide  # (solids, 1, k, 3) each
    capsules = room.body.capsules
    low, high = (
        np.array([getattr(capsule, which) for capsule in capsules])[:, None]
        for which in ("start", "end")
    )
    shape = np.broadcast_shapes(start.shape, low.shape)
    ends = (np.broadcast_to(part, shape) for part in (start, end, low, high))
    radii = np.add.outer(
        [solid.radius for solid in room.solids], [capsule.radius for capsule in capsules]
    )
    return float(np.min(segment_segment(*ends)[0].min(axis=-1) - radii))


def _ends(hand: Floats, tethers: Floats, room: Room) -> tuple[Floats, Floats]:
    """Rear and far end of a prop on each tether path."""
    head = hand + room.length * tethers
    start = hand - room.behind * tethers if room.behind else np.broadcast_to(hand, head.shape)
    return start, head
