"""Where a hand is faster than it may be, or accelerates more, and how that is penalised.

Each point over a limit costs the square of what it is over by; its second derivatives leave out those of speed and
acceleration themselves (Gauss–Newton). Of the force's second rate drag is left out, under 1 % of it: the figures of what
is found have it (`tether.flight`).
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
    slopes: Floats  # (m, 3, 12) of it by the head's first to fourth derivatives

    @property
    def value(self) -> float:
        """The penalty [m²]."""
        return float(np.sum(self.cost * self.over**2))

    def added(self, slope: Floats, matrix: Floats) -> None:
        """Add half its gradient, shape (spans, places, 5, 3), and half its second derivatives, twice as many axes."""
        size = np.linalg.norm(self.moved, axis=-1)[:, None]
        way = self.moved / size
        row = np.matmul(way[:, None], self.slopes)
        side = self.slopes - way[:, :, None] * row
        both = np.swapaxes(row, 1, 2) @ row + np.swapaxes(side, 1, 2) @ (
            side * (self.over / size[:, 0])[:, None, None]
        )
        both *= self.cost[:, None, None]
        pushed = (self.cost * self.over)[:, None] * row[:, 0]
        # several copies may be too fast at one point
        point = self.span * slope.shape[1] + self.place
        order = np.argsort(point, kind="stable")
        first = np.flatnonzero(np.diff(point[order], prepend=-1))
        at = self.span[order[first]], self.place[order[first]]
        slope[(*at, slice(1, None))] += np.add.reduceat(pushed[order], first).reshape(-1, 4, 3)
        summed = np.add.reduceat(both[order], first).reshape(-1, 4, 3, 4, 3)
        matrix[at[0], at[1], 1:, :, 1:] += summed


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

    Notes
    -----
    Source: module docstring, and that of `tether`. Exact but for the drag's second rate.
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
    """How velocity (0) or acceleration (1) of the hand follow the head's derivatives, shape (m, 3, 12).

    By the force and its rates in complex steps, and by drag in these.
    """
    count, steps = len(forces[0]), 6 + 3 * kind
    moved = np.repeat(np.stack(forces).astype(np.complex128)[:, None], steps, axis=1)
    for k in range(steps):
        moved[k // 3, k, :, k % 3] += 1j * _TINY
    turned = turning(*moved)[kind].imag * (length / _TINY)
    by_force: Floats = np.zeros((9, count, 3))
    by_force[:steps] = turned
    by_force = by_force.reshape(3, 3, count, 3).transpose(0, 2, 3, 1)
    slip, slipping = drag_slopes(*rates, drag)
    out: Floats = np.zeros((count, 3, ORDERS - 1, 3))
    out[:, :, 1:] = by_force.transpose(1, 2, 0, 3)
    out[:, :, 0] = by_force[0] @ slip + by_force[1] @ slipping
    out[:, :, 1] += by_force[1] @ slip
    out[:, :, kind] += _EYE
    return out.reshape(count, 3, -1)
