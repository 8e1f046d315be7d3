"""Upright convex prisms: objects that stand on a stage plan or hang over it.

Stage frame [m]. An unbounded wall is a prism with distant corners, an unbounded column one with distant ends.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats

FAR_AWAY = 1e4  # [m] beyond any stage
_GOLDEN = (np.sqrt(5.0) - 1.0) / 2.0
_STEPS = 48  # of the golden-section search: leaves 1e-10 of a segment


@dataclass(frozen=True, slots=True, eq=False)
class Prism:
    """All points above a convex outline between two heights.

    Parameters
    ----------
    corners : ndarray, shape (e, 2) [m, stage frame]
        Anticlockwise; two corners make a wall without thickness, one an upright line.
    bottom, top : float
        Heights [m].
    """

    corners: Floats
    bottom: float = -FAR_AWAY
    top: float = FAR_AWAY

    def level(self, n: Floats) -> Floats:
        """Support function: largest extent of the prism along each direction.

        Parameters
        ----------
        n : ndarray, shape (..., 3) [1, stage frame]

        Returns
        -------
        level : ndarray, shape (...) [m]

        Notes
        -----
        Source: support function of a convex body (its largest corner). Exact.
        """
        # Not a matrix product: its last digit depends on how many directions are asked at once.
        plan = np.max(n[..., :1] * self.corners[:, 0] + n[..., 1:2] * self.corners[:, 1], axis=-1)
        return np.asarray(plan + np.maximum(n[..., 2] * self.bottom, n[..., 2] * self.top))

    def nearest(self, points: Floats) -> tuple[Floats, Floats]:
        """Distance of points, 0 inside, and the nearest points of the prism.

        Parameters
        ----------
        points : ndarray, shape (..., 3) [m, stage frame]

        Returns
        -------
        distance : ndarray, shape (...) [m]
        nearest : ndarray, shape (..., 3) [m, stage frame]

        Notes
        -----
        Source: nearest point of each edge on the plan, then of the heights. Exact up to rounding.
        """
        plan = points[..., :2]
        start, end = self.corners, np.roll(self.corners, -1, axis=0)
        axis = end - start
        size = np.maximum(np.einsum("ec,ec->e", axis, axis), 1e-300)
        off = plan[..., None, :] - start
        along = np.clip(np.einsum("...ec,ec->...e", off, axis) / size, 0.0, 1.0)
        gap = off - along[..., None] * axis
        square = np.einsum("...ec,...ec->...e", gap, gap)
        best = np.argmin(square, axis=-1)[..., None]
        foot = plan - np.take_along_axis(gap, best[..., None], axis=-2)[..., 0, :]
        if len(self.corners) > 2:
            left = axis[:, 0] * off[..., 1] - axis[:, 1] * off[..., 0]
            foot = np.where(np.all(left >= 0, axis=-1)[..., None], plan, foot)
        near = np.concatenate([foot, np.clip(points[..., 2:], self.bottom, self.top)], axis=-1)
        across = points - near
        return np.sqrt(np.einsum("...c,...c->...", across, across)), near

    def nearest_of_segment(self, start: Floats, end: Floats) -> tuple[Floats, Floats, Floats]:
        """Distance of segments, 0 if they enter, and the nearest points of both.

        Parameters
        ----------
        start : ndarray, shape (n, 3) [m, stage frame]
        end : ndarray, shape (n, 3) [m, stage frame]

        Returns
        -------
        distance : ndarray, shape (n,) [m]
        on_segment : ndarray, shape (n, 3) [m, stage frame]
        on_prism : ndarray, shape (n, 3) [m, stage frame]

        Notes
        -----
        Source: the distance from a convex body is convex along a segment, so a golden-section search finds
        its minimum (J. Kiefer, Proc. Amer. Math. Soc. 4, 1953). Error below 1e-9 m.
        """
        axis = end - start
        low: Floats = np.zeros(len(start))
        high: Floats = np.ones(len(start))

        def at(along: Floats) -> Floats:
            return self.nearest(start + along[:, None] * axis)[0]

        left, right = high - _GOLDEN, low + _GOLDEN
        value_left, value_right = at(left), at(right)
        for _ in range(_STEPS):
            lower = value_left <= value_right
            high, low = np.where(lower, right, high), np.where(lower, low, left)
            fresh = np.where(lower, high - _GOLDEN * (high - low), low + _GOLDEN * (high - low))
            left, right = np.where(lower, fresh, right), np.where(lower, left, fresh)
            value = at(fresh)
            value_left, value_right = (
                np.where(lower, value, value_right),
                np.where(lower, value_left, value),
            )
        best = np.stack([np.zeros(len(start)), 0.5 * (low + high), np.ones(len(start))])
        values = np.stack([at(along) for along in best])
        pick = np.argmin(values, axis=0)
        along = best[pick, np.arange(len(start))]
        point = start + along[:, None] * axis
        distance, near = self.nearest(point)
        return distance, point, near


def walls(line: Floats) -> tuple[Prism, ...]:
    """One upright wall for each segment of a line on the plan.

    Parameters
    ----------
    line : ndarray, shape (k, 2) [m, stage frame]

    Returns
    -------
    walls : tuple of Prism

    Notes
    -----
    Source: geometry. Exact.
    """
    return tuple(Prism(np.stack(pair)) for pair in pairwise(line))


def plane(*, bottom: float = -FAR_AWAY, top: float = FAR_AWAY) -> Prism:
    """Everything between two heights: an unbounded ceiling or floor."""
    return Prism(
        np.array(
            [
                [-FAR_AWAY, -FAR_AWAY],
                [FAR_AWAY, -FAR_AWAY],
                [FAR_AWAY, FAR_AWAY],
                [-FAR_AWAY, FAR_AWAY],
            ]
        ),
        bottom,
        top,
    )
