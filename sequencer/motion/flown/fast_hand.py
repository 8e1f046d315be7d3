"""Where a hand is faster than it may be, or accelerates more, and how that is penalised.

Each point over a limit costs the square of what it is over by; its second derivatives leave out those of speed and
acceleration themselves (Gauss–Newton).
"""

from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.motion.flown.tether import drag_slopes, force_rate, turning

ORDERS = 5  # the head's path and its first four derivatives decide the hand's acceleration
_EYE = np.eye(3)
_TINY = 1e-20  # complex step


class HandLimit(NamedTuple):
    """A limit and what it costs to be over it."""

    most: float  # [m/s or m/s²]
    weight: float  # [m²/(m/s)² or m²/(m/s²)²]


class TooFast(NamedTuple):
    """Points at which the hand is over one limit."""

    cost: Floats  # (m,) weight times the point's share
    span: Ints  # (m,)
    place: Ints  # (m,)
    over: Floats  # (m,) [m/s or m/s²]
    moved: Floats  # (m, 3) velocity or acceleration
    slopes: Floats  # (m, 3, 5, 3) of it by the head's derivatives

    @property
    def value(self) -> float:
        """The penalty [m²]."""
        return float(np.sum(self.cost * self.over**2))

    def added(self, slope: Floats, matrix: Floats) -> None:
        """Add half its gradient, shape (spans, places, 5, 3), and half its second derivatives, twice as many axes."""
        size = np.linalg.norm(self.moved, axis=-1)
        way = self.moved / size[:, None]
        row = np.einsum("ma,maob->mob", way, self.slopes)
        np.add.at(slope, (self.span, self.place), (self.cost * self.over)[:, None, None] * row)
        side = self.slopes - way[:, :, None, None] * row[:, None]
        bow = np.einsum("maob,macd->mobcd", side, side)
        bow *= (self.over / size)[:, None, None, None, None]
        both = row[:, :, :, None, None] * row[:, None, None] + bow
        np.add.at(matrix, (self.span, self.place), self.cost[:, None, None, None, None] * both)


def too_fast(
    path: Floats,
    force: Floats,
    shares: Floats,
    limits: tuple[HandLimit, HandLimit],
    *,
    length: float,
    drag: float,
) -> list[TooFast]:
    """Where a hand is over its limits.

    Parameters
    ----------
    path : ndarray, shape (5, spans, places, 3) [m per s^order]
        The head and its derivatives.
    force : ndarray, shape (copies, spans, places, 3) [m/s²]
    shares : ndarray, shape (spans, places) [1]
        Of each point and copy.
    limits : tuple of HandLimit
        Of speed and of acceleration.
    length : float
        Of the line [m].
    drag : float
        [1/m]
    """
    _, rate, acceleration, jerk, snap = path
    first = force_rate(rate, acceleration, jerk, drag)
    turned, bent = turning(force, first[None], snap[None])
    out = []
    for kind, moved in enumerate((rate + length * turned, acceleration + length * bent)):
        size, limit = np.linalg.norm(moved, axis=-1), limits[kind]
        copy, span, place = np.nonzero(size > limit.most)
        if len(span):
            forces = force[copy, span, place], first[span, place], snap[span, place]
            rates = rate[span, place], acceleration[span, place]
            out.append(
                TooFast(
                    shares[span, place] * limit.weight,
                    span,
                    place,
                    size[copy, span, place] - limit.most,
                    moved[copy, span, place],
                    _slopes(kind, forces, rates, length=length, drag=drag),
                )
            )
    return out


def _slopes(
    kind: int,
    forces: tuple[Floats, Floats, Floats],
    rates: tuple[Floats, Floats],
    *,
    length: float,
    drag: float,
) -> Floats:
    """How velocity (0) or acceleration (1) of the hand follow the head's derivatives, shape (m, 3, 5, 3).

    By the force and its rates in complex steps, and by drag in these.
    """
    by_force: Floats = np.zeros((3, len(forces[0]), 3, 3))
    for order in range(2 + kind):
        for axis in range(3):
            moved = [each.astype(np.complex128) for each in forces]
            moved[order] += 1j * _TINY * _EYE[axis]
            by_force[order, :, :, axis] = turning(*moved)[kind].imag / _TINY  # type: ignore[arg-type]
    by_force *= length
    slip, slipping = drag_slopes(*rates, drag)
    out: Floats = np.zeros((len(forces[0]), 3, ORDERS, 3))
    out[:, :, 2:] = by_force.transpose(1, 2, 0, 3)
    out[:, :, 1] = by_force[0] @ slip + by_force[1] @ slipping
    out[:, :, 2] += by_force[1] @ slip
    out[:, :, 1 + kind] += _EYE
    return out
