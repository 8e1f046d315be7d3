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
        # Each axis has few distinct steps: clipped indices are computed once per step.
        flat: Ints = np.zeros((len(cells), len(steps)), dtype=np.int32)
        for k, count in enumerate(self.shape):
            own, which = np.unique(steps[:, k], return_inverse=True)
            places = np.clip(cells[:, k, None] + own, 0, count - 1)
            stride = int(np.prod(self.shape[k + 1 :]))
            flat += (places * stride).astype(np.int32).take(which, axis=1)
        return np.asarray(self.values.take(flat))


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
    best = np.full(tuple(counts), np.inf, dtype=np.float32)
    for (start, end), radius in zip(ends, radii, strict=True):
        # Squared distance to a segment, accumulated axis by axis.
        along = end - start
        length = float(along @ along)
        share = np.zeros(())
        if length > 0:
            parts = [(axes[k] - start[k]) * along[k] / length for k in range(3)]
            share = parts[0][:, None, None] + parts[1][:, None] + parts[2]
            share = np.clip(share, 0.0, 1.0)
        square = sum(
            (axes[k].reshape([-1 if j == k else 1 for j in range(3)]) - start[k] - share * along[k])
            ** 2
            for k in range(3)
        )
        best = np.minimum(best, np.sqrt(square) - radius)
    return Table(
        low, (int(counts[0]), int(counts[1]), int(counts[2])), best.ravel().astype(np.float64)
    )
