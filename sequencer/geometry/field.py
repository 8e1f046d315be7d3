"""Distances to a body on a grid: fast enough to try thousands of prop positions; for selection, not proof.

The distance to the surface of a body, upright or in a posture, is tabulated around it.
Frame: body frame [m]. A look-up takes the nearest cell, so it is off by at most half a cell's diagonal.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.bodies import Body
from sequencer.geometry.capsules import Capsule
from sequencer.geometry.posture import UPRIGHT, PosedBody, Posture

CELL = 0.02  # [m]
_AT_ONCE = 2**16  # numbers that are looked up together: more of them leave the fast memory
AROUND = 0.14  # [m] tabulated beyond the surface; anything farther counts as at least this far


@dataclass(frozen=True, eq=False)
class Table:
    """Distance to capsules on a grid."""

    low: Floats  # (3,) [m] centre of the first cell
    shape: tuple[int, int, int]
    values: Floats  # (cells,) [m]

    def cells(self, points: Floats) -> Ints:
        """Cell indices of points (n, 3) [m] along each axis; points outside are not clipped."""
        return np.asarray(np.rint((points - self.low) / CELL), dtype=np.int64)

    def moved(self, cells: Ints, steps: Ints) -> Floats:
        """Distance [m] at n cells moved by m steps, shape (n, m); outside the table, the value at its edge.

        Parameters
        ----------
        cells : ndarray, shape (n, 3) [1]
        steps : ndarray, shape (m, 3) [1]

        Notes
        -----
        Source: the table's values at the nearest cells; off by half a cell's diagonal at most.
        """
        return np.asarray(self.values[_sums(self._moved_along(cells, steps))])

    def least_moved(self, cells: Ints, steps: Ints) -> Floats:
        """The smallest of these over all cells, for m steps, shape (m,) [m].

        Parameters
        ----------
        cells : ndarray, shape (n, 3) [1]
        steps : ndarray, shape (m, 3) [1]

        Notes
        -----
        Source: as for `moved`; a cell that occurs several times is looked up once.
        """
        low = cells.min(axis=0)
        wide = cells.max(axis=0) - low + 1
        keys = ((cells[:, 0] - low[0]) * wide[1] + cells[:, 1] - low[1]) * wide[2]
        distinct = np.unique(keys + cells[:, 2] - low[2], return_index=True)[1]
        moved = self._moved_along(cells[distinct], steps)
        least: Floats = np.full(len(steps), np.inf)
        some = max(1, _AT_ONCE // len(steps))
        for first in range(0, len(distinct), some):
            part = [(places[first : first + some], which) for places, which in moved]
            np.minimum(least, self.values[_sums(part)].min(axis=0), out=least)
        return least

    def _moved_along(self, cells: Ints, steps: Ints) -> list[tuple[Ints, Ints]]:
        """For each axis the index of every cell after each distinct step, and which step each of m is."""
        out = []
        for k, count in enumerate(self.shape):
            own, which = np.unique(steps[:, k], return_inverse=True)
            places = np.clip(cells[:, k, None] + own, 0, count - 1)
            stride = int(np.prod(self.shape[k + 1 :]))
            out.append(((places * stride).astype(np.intp), which))
        return out


def _sums(axes: list[tuple[Ints, Ints]]) -> Ints:
    """Indices of n cells moved by m steps, shape (n, m)."""
    (x, of_x), (y, of_y), (z, of_z) = axes
    flat = x.take(of_x, axis=1)
    flat += y.take(of_y, axis=1)
    flat += z.take(of_z, axis=1)
    return flat


@lru_cache(maxsize=64)
def table_of(body: Body, posture: Posture = UPRIGHT) -> Table:
    """The table of one body in a posture; cached, since every pattern uses the same ones."""
    return _table(PosedBody(body, posture).capsules)


def _table(capsules: Sequence[Capsule]) -> Table:
    ends = np.array([(c.start, c.end) for c in capsules])
    radii = np.array([c.radius for c in capsules])
    low = (ends.min(axis=1) - radii[:, None]).min(axis=0) - AROUND
    high = (ends.max(axis=1) + radii[:, None]).max(axis=0) + AROUND
    counts = np.ceil((high - low) / CELL).astype(int) + 1
    axes = [low[k] + CELL * np.arange(counts[k]) for k in range(3)]
    best: Floats = np.full(tuple(counts), np.inf)
    for (start, end), radius in zip(ends, radii, strict=True):
        # Squared distance to a segment, accumulated axis by axis; only where it leans it takes all cells at once.
        along = end - start
        length = float(along @ along)
        away = [_on_axis(axes[k] - start[k], k) for k in range(3)]
        shares = [away[k] * along[k] / length for k in range(3) if along[k]]
        share = np.clip(sum(shares[1:], shares[0]), 0.0, 1.0) if shares else 0.0
        square = sum((away[k] - share * along[k] if along[k] else away[k]) ** 2 for k in range(3))
        gap = np.sqrt(square)
        gap -= radius
        np.minimum(best, gap, out=best)
    return Table(low, (int(counts[0]), int(counts[1]), int(counts[2])), best.ravel())


def _on_axis(values: Floats, k: int) -> Floats:
    return values.reshape([-1 if j == k else 1 for j in range(3)])
