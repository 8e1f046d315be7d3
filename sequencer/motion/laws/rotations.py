"""Turns inside turns: the one kernel that every closed-form law is evaluated and bounded by.

A vector v carried by nested rotations is R(a₁, α₁)·R(a₂, α₂)·…·v, with fixed unit axes and angles
that are phases of the beats. Its derivatives follow from R(a, α)' = α'·[a]ₓ·R, its bounds from the
product rule with |R⁽ᵏ⁾| bounded by the complete Bell polynomials of the angle's bounds.

Source: rotation about an axis, O. Rodrigues (1840), in any text on rigid-body motion. Exact.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import comb

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.laws.phases import Limits, Phase

Vector = tuple[float, float, float]
_Jet = tuple[Floats, Floats, Floats]  # a vector and its first two derivatives, axes first


@dataclass(frozen=True, slots=True)
class Turn:
    """A rotation about a fixed unit axis by an angle that follows the beats."""

    axis: Vector
    angle: Phase

    def __post_init__(self) -> None:
        if abs(sum(x * x for x in self.axis) - 1.0) > 1e-9:
            raise ValueError(f"axis must have length 1, got {self.axis}")


def carried(turns: tuple[Turn, ...], jet: _Jet, beats: Floats) -> _Jet:
    """A jet after nested turns, outermost first.

    Parameters
    ----------
    turns : tuple of Turn
    jet : tuple of ndarray, shape (3, n) or (3, 1) [any unit]
        Vector, rate and acceleration per beat before the turns.
    beats : ndarray, shape (n,) [beats]

    Returns
    -------
    jet : tuple of ndarray, shape (3, n) or (3, 1) [same unit]

    Notes
    -----
    Source: Rodrigues' rotation formula and its derivatives. Exact. The axes come first here, because
    a small matrix times a long row of vectors is what the machine does fastest.
    """
    value, rate, acceleration = jet
    for turn in reversed(turns):
        cross, along = _matrices(turn.axis)
        angle, slope, curve = turn.angle.at(beats)
        swept = cross @ value
        acceleration = (
            acceleration + 2.0 * slope * (cross @ rate) + curve * swept + slope**2 * (cross @ swept)
        )
        rate = rate + slope * swept
        cosine, sine = np.cos(angle), np.sin(angle)
        value, rate, acceleration = (
            _rotated(part, along, cross, cosine, sine) for part in (value, rate, acceleration)
        )
    return value, rate, acceleration


def turned(turns: tuple[Turn, ...], vector: Floats, beats: Floats) -> Floats:
    """A vector after nested turns, without its derivatives.

    Parameters
    ----------
    turns : tuple of Turn
        Outermost first.
    vector : ndarray, shape (3, n) or (3, 1) [any unit]
    beats : ndarray, shape (n,) [beats]

    Returns
    -------
    vector : ndarray, shape (3, n) or (3, 1) [same unit]

    Notes
    -----
    Source: Rodrigues' rotation formula. Exact.
    """
    for turn in reversed(turns):
        cross, along = _matrices(turn.axis)
        if np.allclose(cross @ vector, 0.0, rtol=0.0, atol=1e-15):
            continue  # it lies in the axis
        angle = turn.angle.at(beats)[0]
        vector = _rotated(vector, along, cross, np.cos(angle), np.sin(angle))
    return vector


def turned_limits(turns: tuple[Turn, ...], size: float, own: Limits = (0.0,) * 4) -> Limits:
    """Bounds of the derivatives, order 1 to 4, of a carried vector.

    Parameters
    ----------
    turns : tuple of Turn
    size : float
        Bound of the vector's length.
    own : tuple of float
        Bounds of the vector's own derivatives before the turns.

    Returns
    -------
    limits : tuple of float
    """
    orders: tuple[float, ...] = (size, *own)
    for turn in reversed(turns):
        a, b, c, d = turn.angle.limits()
        spin = (
            1.0,
            a,
            a**2 + b,
            a**3 + 3 * a * b + c,
            a**4 + 6 * a**2 * b + 3 * b**2 + 4 * a * c + d,
        )
        orders = tuple(
            sum(
                comb(k, j) * spin[j] * orders[k - j]
                for j in range(k + 1)
                if orders[k - j] > 0.0 and spin[j] > 0.0  # 0·inf is 0 here
            )
            for k in range(5)
        )
    return orders[1], orders[2], orders[3], orders[4]


@lru_cache(maxsize=1024)
def _matrices(axis: Vector) -> tuple[Floats, Floats]:
    """Matrices of axis × v, and of the part of v along the axis."""
    x, y, z = axis
    cross = np.array([[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]])
    along: Floats = np.outer(axis, axis).astype(np.float64)
    return cross.astype(np.float64), along


def _rotated(vector: Floats, along: Floats, cross: Floats, cosine: Floats, sine: Floats) -> Floats:
    kept = along @ vector
    return np.asarray(kept + cosine * (vector - kept) + sine * (cross @ vector))
