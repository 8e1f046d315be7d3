"""Spans of an unknown curve, and how their coefficients follow from the unknown ones.

Where a drawing repeats after part of its period up to a rotation or reflection, only that part is unknown, and its copies
are turned from it; at the ends of a link coefficients are known. Seconds.
"""

from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.motion.flown.even_splines import DEGREE, pieces

_GAUSS, _SHARES = np.polynomial.legendre.leggauss(4)
GAUSS_PLACES: Floats = np.asarray((_GAUSS + 1.0) / 2.0, dtype=np.float64)  # Gauss points on a span
GAUSS_SHARES: Floats = np.asarray(_SHARES / 2.0, dtype=np.float64)  # their weights


@dataclass(frozen=True, kw_only=True, eq=False)
class CurveLayout:
    """An unknown curve's spans.

    Parameters
    ----------
    step : float
        Of a span [s].
    taken : ndarray, shape (spans, 6) [1]
        Coefficient at each place.
    count : int
        Coefficients.
    turned : ndarray, shape (spans, 6, 3, 3) [1], optional
        What the coefficient is multiplied by there; default: nothing.
    copies : ndarray, shape (copies, 3, 3) [1]
        Rotations or reflections that lead from the unknown part to each part of the period.
    centre : ndarray, shape (3,) [m, body frame]
        About which they rotate; paths are relative to it.
    free : ndarray, shape (count,) [1], optional
        Which coefficients are unknown; default: all.
    paced : ndarray, shape (spans, 5, places, 6) [1/s^order], optional
        Pieces of the derivatives by time, where tempo changes; default: by the step.
    frames : ndarray, shape (copies, spans, places, 3, 3) [1], optional
        From the unknown's frame to the body's, where that moves; default: the copies.
    origins : ndarray, shape (copies, spans, places, 3) [m, body frame], optional
        Where the unknown's origin is; default: the centre.
    """

    step: float
    taken: Ints
    count: int
    turned: Floats | None
    copies: Floats
    centre: Floats
    free: Bools | None = None
    paced: Floats | None = None
    frames: Floats | None = None
    origins: Floats | None = None

    @property
    def spans(self) -> int:
        """Spans of the unknown part."""
        return len(self.taken)

    @property
    def shares(self) -> Floats:
        """Share of every Gauss point in a mean over the part, shape (spans, places) [1]."""
        return np.broadcast_to(GAUSS_SHARES / self.spans, (self.spans, len(GAUSS_PLACES)))

    def pieces(self, orders: int) -> Floats:
        """Pieces of the spline and of its derivatives at the Gauss points, shape (spans, orders, places, 6) [1/s^order]."""
        if self.paced is not None:
            return self.paced[:, :orders]
        own = [pieces(GAUSS_PLACES, order) / self.step**order for order in range(orders)]
        return np.broadcast_to(np.stack(own), (self.spans, orders, len(GAUSS_PLACES), DEGREE + 1))

    def local(self, unknown: Floats) -> Floats:
        """Coefficients that count on each span, shape (spans, 6, 3) [m]."""
        own = unknown[self.taken]
        if self.turned is not None:
            own = np.matmul(self.turned, own[..., None])[..., 0]
        return np.asarray(own)

    def gradient(self, blocks: Floats) -> Floats:
        """Sums over all coefficients, shape (3·count,), of vectors over each span's, shape (spans, 6, 3)."""
        if self.turned is not None:
            blocks = np.matmul(np.swapaxes(self.turned, -1, -2), blocks[..., None])[..., 0]
        rows = (self.taken[:, :, None] * 3 + np.arange(3)).ravel()
        return np.asarray(np.bincount(rows, blocks.ravel(), 3 * self.count), dtype=np.float64)

    def matrix(self, blocks: Floats) -> Floats:
        """The same of matrices, shape (spans, 6, 3, 6, 3) to (3·count, 3·count)."""
        if self.turned is not None:
            left = np.swapaxes(self.turned, -1, -2)[:, :, None]
            blocks = np.matmul(left, blocks.transpose(0, 1, 3, 2, 4))
            blocks = np.matmul(blocks, self.turned[:, None]).transpose(0, 1, 3, 2, 4)
        size = 3 * self.count
        rows = (self.taken[:, :, None] * 3 + np.arange(3)).reshape(self.spans, -1)
        cells = rows[:, :, None] * size + rows[:, None, :]
        filled = np.bincount(cells.ravel(), blocks.ravel(), size * size)
        return np.asarray(filled.reshape(size, size), dtype=np.float64)


def whole(spans: int, step: float) -> CurveLayout:
    """A curve without repeats that begins and ends.

    Parameters
    ----------
    spans : int
    step : float
        [s]
    """
    return CurveLayout(
        step=step,
        taken=np.arange(spans)[:, None] + np.arange(DEGREE + 1),
        count=spans + DEGREE,
        turned=None,
        copies=np.eye(3)[None],
        centre=np.zeros(3),
    )
