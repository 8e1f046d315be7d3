"""Proven bounds on contiguous pieces of time as arrays, so that those of many drawn dancers are quickly had. Beats."""

from collections.abc import Callable
from typing import NamedTuple, Protocol

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.laws.law import Bounds


class BoundTable(NamedTuple):
    """Bounds on k contiguous pieces."""

    starts: Floats  # (k,) [beats]
    ends: Floats  # (k,) [beats]
    # (5, k) [m, m/beat, m/beat², 1/beat, 1/beat²] of a `Bounds`: hand_reach, hand_speed, hand_acceleration,
    # turn_rate, turn_acceleration
    bounds: Floats


class HasPieces(Protocol):
    """What has proven bounds on contiguous pieces; some have them as arrays too (`bound_table`)."""

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on contiguous pieces of [start, end]."""
        ...


def table_of(pieces: tuple[tuple[float, float, Bounds], ...]) -> BoundTable:
    """Pieces as arrays."""
    bounds = [
        (b.hand_reach, b.hand_speed, b.hand_acceleration, b.turn_rate, b.turn_acceleration)
        for _, _, b in pieces
    ]
    starts, ends = np.array([piece[:2] for piece in pieces], dtype=np.float64).T
    return BoundTable(starts, ends, np.array(bounds, dtype=np.float64).T)


def bound_table(trajectory: HasPieces, start: float, end: float) -> BoundTable:
    """The bounds of a trajectory between two beats, as arrays.

    Parameters
    ----------
    trajectory
        With `pieces`, or `bound_table` of its own.
    start, end : float [beats]
    """
    own: Callable[[float, float], BoundTable] | None = getattr(trajectory, "bound_table", None)
    if own is not None:
        return own(start, end)
    return table_of(trajectory.pieces(start, end))
