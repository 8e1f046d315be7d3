"""Nested rotations: the kernel that evaluates and bounds every closed-form law.

A vector v carried by nested rotations is R(a₁, α₁)·R(a₂, α₂)·…·v, with fixed unit axes and angles
that are phases of the beats. Its derivatives follow from R(a, α)' = α'·[a]ₓ·R, its bounds from the
product rule with |R⁽ᵏ⁾| bounded by the complete Bell polynomials of the angle's bounds.

Source: rotation about an axis, O. Rodrigues (1840), in any text on rigid-body motion. Exact.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import comb
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.laws.phases import Limits, Phase, Wave

Vector = tuple[float, float, float]
Component = float | Floats  # one coordinate: at n beats (n,), or a number if it is always the same
Components = tuple[Component, Component, Component]
VectorJet = tuple[Components, Components, Components]  # a vector and its first two derivatives
_ALONG = 1e-15  # a vector no farther than this from an axis lies along it


@dataclass(frozen=True, slots=True)
class Turn:
    """A rotation about a fixed unit axis by an angle that is a function of beats."""

    axis: Vector
    angle: Phase

    def __post_init__(self) -> None:
        if abs(sum(x * x for x in self.axis) - 1.0) > 1e-9:
            raise ValueError(f"axis must have length 1, got {self.axis}")


class Spin(NamedTuple):
    """A turn at n beats."""

    axis: Vector
    slope: Component  # [rad/beat]
    curve: Component  # [rad/beat²]
    cosine: Floats  # (n,)
    sine: Floats  # (n,)


def spins_at(turns: tuple[Turn, ...], beats: Floats) -> tuple[Spin, ...]:
    """Nested turns at beats (n,), innermost first; `turns` are given outermost first."""
    return tuple(_spin(turn, beats) for turn in reversed(turns))


def _spin(turn: Turn, beats: Floats) -> Spin:
    phase = turn.angle
    if isinstance(phase, Wave) and not phase.sways:  # most are: its rate is one number
        angle = phase.offset + phase.rate * beats
        return Spin(turn.axis, float(phase.rate), 0.0, np.cos(angle), np.sin(angle))
    angle, slope, curve = phase.at(beats)
    return Spin(turn.axis, slope, curve, np.cos(angle), np.sin(angle))


def carried(spins: tuple[Spin, ...], jet: VectorJet) -> VectorJet:
    """A jet after nested rotations.

    Parameters
    ----------
    spins : tuple of Spin
        Innermost first.
    jet : tuple of Components [any unit]
        Vector, rate and acceleration per beat before the rotations.

    Returns
    -------
    jet : tuple of Components [same unit]

    Notes
    -----
    Source: Rodrigues' rotation formula and its derivatives. Exact. Coordinates are kept apart: most turns
    are about a coordinate axis and leave one of them alone, and what is the same at all beats is one number.
    """
    for spin in spins:
        slot = _slot(spin.axis)
        jet = _carried_freely(spin, jet) if slot is None else _carried_about(spin, slot, jet)
    return jet


def _carried_about(spin: Spin, slot: tuple[int, int, float], jet: VectorJet) -> VectorJet:
    """The jet after a turn about a coordinate axis, or against it."""
    i, j, sign = slot
    value, rate, acceleration = (list(part) for part in jet)
    slope, curve = _times(sign, spin.slope), _times(sign, spin.curve)
    twice, square = _times(2.0, slope), _times(slope, slope)
    x, y, x1, y1 = value[i], value[j], rate[i], rate[j]
    acceleration[i] = _minus(
        _minus(_minus(acceleration[i], _times(twice, y1)), _times(curve, y)), _times(square, x)
    )
    acceleration[j] = _minus(
        _plus(_plus(acceleration[j], _times(twice, x1)), _times(curve, x)), _times(square, y)
    )
    rate[i], rate[j] = _minus(x1, _times(slope, y)), _plus(y1, _times(slope, x))
    cosine, sine = spin.cosine, spin.sine if sign > 0 else -spin.sine
    for part in (value, rate, acceleration):
        part[i], part[j] = _pair_turned(part[i], part[j], cosine, sine)
    return _three(value), _three(rate), _three(acceleration)


def _carried_freely(spin: Spin, jet: VectorJet) -> VectorJet:
    """The jet after a turn about any axis."""
    cross, along = _matrices(spin.axis)
    value, rate, acceleration = _rows(jet)
    swept = cross @ value
    acceleration = (
        acceleration
        + 2.0 * spin.slope * (cross @ rate)
        + spin.curve * swept
        + spin.slope * spin.slope * (cross @ swept)
    )
    rate = rate + spin.slope * swept
    value, rate, acceleration = (
        _rotated(part, along, cross, spin.cosine, spin.sine) for part in (value, rate, acceleration)
    )
    return _three(value), _three(rate), _three(acceleration)


def turned(spins: tuple[Spin, ...], vector: Components) -> Components:
    """A vector after nested rotations, without its derivatives.

    Parameters
    ----------
    spins : tuple of Spin
        Innermost first.
    vector : Components [any unit]

    Returns
    -------
    vector : Components [same unit]

    Notes
    -----
    Source: Rodrigues' rotation formula. Exact.
    """
    for spin in spins:
        slot = _slot(spin.axis)
        if slot is None:
            cross, along = _matrices(spin.axis)
            (rows,) = _rows((vector,))
            if not np.max(np.abs(cross @ rows), initial=0.0) <= _ALONG:
                vector = _three(_rotated(rows, along, cross, spin.cosine, spin.sine))
            continue
        i, j, sign = slot
        if _small(vector[i]) and _small(vector[j]):
            continue
        after = list(vector)
        sine = spin.sine if sign > 0 else -spin.sine
        after[i], after[j] = _pair_turned(vector[i], vector[j], spin.cosine, sine)
        vector = _three(after)
    return vector


def _pair_turned(
    x: Component, y: Component, cosine: Floats, sine: Floats
) -> tuple[Component, Component]:
    """Two coordinates after a turn about the third."""
    return (
        _minus(_times(cosine, x), _times(sine, y)),
        _plus(_times(cosine, y), _times(sine, x)),
    )


def _small(part: Component) -> bool:
    return bool(np.max(np.abs(part), initial=0.0) <= _ALONG)


def _rows(vectors: Sequence[Components]) -> tuple[Floats, ...]:
    """Vectors as columns, shape (3, n), or (3, 1) if none of their coordinates ever changes."""
    counts = [part.size for vector in vectors for part in vector if not isinstance(part, float)]
    rows: list[Floats] = []
    for vector in vectors:
        row: Floats = np.empty((3, counts[0] if counts else 1))
        for k, part in enumerate(vector):
            row[k] = part
        rows.append(row)
    return tuple(rows)


def _three(parts: Sequence[Component] | Floats) -> Components:
    return parts[0], parts[1], parts[2]


# A product with 0 is left out, and so is a sum with it: no digit depends on them.


def _times(a: Component, b: Component) -> Component:
    if (isinstance(a, float) and a == 0.0) or (isinstance(b, float) and b == 0.0):
        return 0.0
    return a * b


def _plus(a: Component, b: Component) -> Component:
    if isinstance(a, float) and a == 0.0:
        return b
    if isinstance(b, float) and b == 0.0:
        return a
    return a + b


def _minus(a: Component, b: Component) -> Component:
    if isinstance(b, float) and b == 0.0:
        return a
    if isinstance(a, float) and a == 0.0:
        return -b
    return a - b


def turned_limits(turns: tuple[Turn, ...], size: float, own: Limits = (0.0,) * 4) -> Limits:
    """Bounds on the derivatives, order 1 to 4, of a carried vector.

    Parameters
    ----------
    turns : tuple of Turn
    size : float
        Bound on the vector's length.
    own : tuple of float
        Bounds on the vector's derivatives before the rotations.

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
def _slot(axis: Vector) -> tuple[int, int, float] | None:
    """The two coordinates that a turn about a coordinate axis changes, and its sense; None for another axis."""
    for k in range(3):
        if axis[k] in (1.0, -1.0) and axis[k - 1] == axis[k - 2] == 0.0:
            return (k + 1) % 3, (k + 2) % 3, float(axis[k])
    return None


@lru_cache(maxsize=1024)
def _matrices(axis: Vector) -> tuple[Floats, Floats]:
    """Matrices of axis × v, and of the component of v along the axis."""
    x, y, z = axis
    cross = np.array([[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]])
    along: Floats = np.outer(axis, axis).astype(np.float64)
    return cross.astype(np.float64), along


def _rotated(vector: Floats, along: Floats, cross: Floats, cosine: Floats, sine: Floats) -> Floats:
    kept = along @ vector
    return np.asarray(kept + cosine * (vector - kept) + sine * (cross @ vector))
