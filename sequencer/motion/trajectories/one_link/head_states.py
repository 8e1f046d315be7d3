"""States of a head in which a link begins or ends, and what hand and tether do there. Frame: body frame [m], per beat."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.flown.even_splines import DEGREE
from sequencer.motion.flown.flown_motion import FlownMotion, Flying
from sequencer.motion.flown.tether import Flight, drag_of, flight
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion


class HeadState(NamedTuple):
    """A head at an instant, with the plane that its tether's law names."""

    path: Floats  # (5, 3) the head and its first four derivatives [m per beat^order, body frame]
    plane: Floats  # (3,) [1] of the law


def state_in(motion: FlownMotion, plane: Floats, beat: float) -> HeadState:
    """The head of a flown motion at one of its beats.

    Parameters
    ----------
    motion : FlownMotion
    plane : ndarray, shape (3,) [1]
        Of its law.
    beat : float

    Notes
    -----
    Source: the spline's derivatives. Exact.
    """
    return HeadState(motion.head.path_at(beat), plane)


def hanging(law: Law, length: float) -> HeadState:
    """The head of a prop that hangs at rest."""
    rest = law.at(np.zeros(1))
    path: Floats = np.zeros((DEGREE, 3))
    path[0] = rest.head(length)[0]
    return HeadState(path, rest.plane[0])


def _flight_of(path: Floats, flying: Flying) -> Flight:
    """Hand and pull of a head, shape (5, ..., 3) [m per beat^order], in seconds."""
    seconds = [own / flying.beat**order for order, own in enumerate(path)]
    return flight(tuple(seconds), length=flying.prop.length, drag=drag_of(flying.prop))


def motion_of(state: HeadState, flying: Flying) -> Motion:
    """Hand and tether of a head's state, per beat."""
    return _motion_of(state.path, state.plane, flying)


def motions_of(states: Sequence[HeadState], flying: Flying) -> Motion:
    """The same of several states, arrays of shape (n, 3)."""
    paths = np.stack([each.path for each in states], axis=1)
    return _motion_of(paths, np.stack([each.plane for each in states]), flying)


def _motion_of(path: Floats, plane: Floats, flying: Flying) -> Motion:
    beat, prop = flying.beat, flying.prop
    seen, bent = _flight_of(path, flying), path[2] / beat**2
    rates = [
        (seen.head_rate - seen.hand_rate) / prop.length,
        (bent - seen.hand_acceleration) / prop.length,
    ]
    return Motion(
        hand=seen.hand,
        hand_rate=seen.hand_rate * beat,
        hand_acceleration=seen.hand_acceleration * beat**2,
        tether=seen.tether,
        tether_rate=rates[0] * beat,
        tether_acceleration=rates[1] * beat**2,
        plane=plane,
    )
