"""How far off the plan somebody is while they stand and walk: one vector for each place held, mixed on the way.

On a walk the vectors of its two ends mix as cos(πs/2)·before + sin(πs/2)·after, s being the share of the way. If they are
independent and equally wide, so is the mixture at every moment, since cos² + sin² = 1: nobody is surer of the place half
way than where they stand. A straight mixture (1 − s)·before + s·after would be √½ as wide there.
Stage frame [m], facings [rad], beats.
"""

import math
from collections.abc import Sequence

import numpy as np

from sequencer.arrays import Floats, Ints

Stray = tuple[float, float, float]  # X [m], Y [m], facing [rad]
_QUARTER = math.pi / 2  # turn, from one place's vector to the next's


def stray_rows(strays: Sequence[Stray]) -> Floats | None:
    """Vectors at the start and the end of each row of a table of moves, shape (m + 1, 2, 3); None if there are none.

    Parameters
    ----------
    strays : sequence of Stray
        One for each place held, in order; row 0 is the standing before the first move.
    """
    if not strays:
        return None
    own = np.array(strays, dtype=np.float64)
    return np.stack([own[[0, *range(len(own) - 1)]], own], axis=1)


def strayed(
    rows: Floats, move: Ints, s: Floats, rate: Floats, acceleration: Floats
) -> tuple[Floats, Floats, Floats]:
    """How far off somebody is, with both derivatives.

    Parameters
    ----------
    rows : ndarray, shape (m + 1, 2, 3) [m and rad]
    move : ndarray, shape (...) [1]
        Row of each instant.
    s, rate, acceleration : ndarray, shape (...) [1, 1/beat, 1/beat²]
        Share of the way, and its derivatives.

    Returns
    -------
    off, off_rate, off_acceleration : ndarray, shape (..., 3) [m and rad, per beat]

    Notes
    -----
    Source: derivatives of the mixture (module). Exact.
    """
    before, after = rows[move, 0], rows[move, 1]
    # Whoever is off by the same vector at both ends, as before the first move, is so on the way.
    quarter = np.where(np.all(before == after, axis=-1), 0.0, _QUARTER)
    angle = quarter * s
    cos, sin = np.cos(angle)[..., None], np.sin(angle)[..., None]
    off, turned = cos * before + sin * after, cos * after - sin * before
    first, second = (quarter * rate)[..., None], (quarter * acceleration)[..., None]
    return off, turned * first, turned * second - off * first * first


def stray_bounds(
    ends: Floats, rate: float, acceleration: float
) -> tuple[float, float, float, float]:
    """Bounds of what a walk's vectors add to it: of speed, acceleration, turn rate and turn acceleration.

    Parameters
    ----------
    ends : ndarray, shape (2, 3) [m and rad]
    rate, acceleration : float [1/beat, 1/beat²]
        The most of the derivatives of the share of the way.

    Notes
    -----
    Source: |cos·a + sin·b| ≤ √(|a|² + |b|²), and likewise a quarter turn on (Cauchy and Schwarz). Upper bounds.
    """
    size, turn = float(np.linalg.norm(ends[:, :2])), float(np.hypot(*ends[:, 2]))
    first = _QUARTER * rate
    second = first**2 + _QUARTER * acceleration
    return first * size, second * size, first * turn, second * turn
