"""A law composed of a hand path and nested rotations of the tether, built by every pattern family.

Frame: body frame [m]. h = centre + Σ slides + Σ arms, d = turns · d₀ and n = turns · n₀. Bounds: first the
product rule on the coefficients (rotations.py), then tightened by certified interpolation: a vector f
sampled every Δ lies within Δ²/8·sup|f''| of the chord
between its samples, so sup|f| ≤ max|fᵢ| + Δ²/8·sup|f''|, and |f| ≤ max|fᵢ| + Δ/2·sup|f'| as well.
Source: error of linear interpolation, any text on numerical analysis.
"""

from dataclasses import asdict, dataclass
from functools import lru_cache
from math import inf, isfinite

import numpy as np

from sequencer.arrays import Floats
from sequencer.kept import remembering
from sequencer.motion.laws.law import Bounds, period_words
from sequencer.motion.laws.phases import Limits, Phase
from sequencer.motion.laws.rotations import (
    Components,
    Turn,
    Vector,
    VectorJet,
    carried,
    spins_at,
    turned,
    turned_limits,
)
from sequencer.motion.laws.state import Motion
from sequencer.units import counted

_GRID = 4096  # samples of one period for the certified interpolation
ROUNDING_UP = 1.0 + 1e-9  # covers rounding in the bounds themselves


@dataclass(frozen=True, slots=True)
class Slide:
    """A straight displacement along `vector` by a phase."""

    vector: Vector  # [m] for a phase of 1
    phase: Phase


@dataclass(frozen=True, slots=True)
class Arm:
    """A vector carried by nested rotations, outermost first."""

    vector: Vector  # [m]
    turns: tuple[Turn, ...]


@dataclass(frozen=True, slots=True)
class HandPath:
    """Hand path: a centre, and displacements from it."""

    centre: Vector  # [m, body frame]
    slides: tuple[Slide, ...] = ()
    arms: tuple[Arm, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ComposedLaw:
    """Hand path and tether of one prop in closed form."""

    hand: HandPath
    tether: Vector  # d₀, unit
    plane: Vector  # n₀, unit, perpendicular to d₀
    turns: tuple[Turn, ...]
    period: float  # [beats]

    def __post_init__(self) -> None:
        across = float(np.dot(self.tether, self.plane))
        if abs(across) > 1e-9 or abs(float(np.dot(self.tether, self.tether)) - 1.0) > 1e-9:
            raise ValueError("the tether must be a unit vector in its plane")

    def __repr__(self) -> str:
        phases = len(self.turns) + len(self.hand.slides) + len(self.hand.arms)
        return f"<ComposedLaw of {counted(phases, 'phase')}, {period_words(self)}>"

    def at(self, beats: Floats) -> Motion:
        """State at the law's beats, shape (...); exact to rounding."""
        beats = np.asarray(beats, dtype=np.float64)
        row = beats.ravel()
        spins = spins_at(self.turns, row)
        jets = *self.hand_jet(row), *carried(spins, _still(self.tether))
        parts = np.empty((7, row.size, 3))
        for part, vector in zip(parts, (*jets, turned(spins, _numbers(self.plane))), strict=True):
            for k in range(3):
                part[:, k] = vector[k]
        shaped = parts.reshape(7, *beats.shape, 3)
        return Motion(
            hand=shaped[0],
            hand_rate=shaped[1],
            hand_acceleration=shaped[2],
            tether=shaped[3],
            tether_rate=shaped[4],
            tether_acceleration=shaped[5],
            plane=shaped[6],
        )

    def hand_jet(self, row: Floats) -> VectorJet:
        """The hand's jet at beats (n,)."""
        place, speed, push = (list(part) for part in _still(self.hand.centre))
        for slide in self.hand.slides:
            value, rate, acceleration = slide.phase.at(row)
            for k, size in enumerate(slide.vector):
                place[k] = place[k] + value * size
                speed[k] = speed[k] + rate * size
                push[k] = push[k] + acceleration * size
        for arm in self.hand.arms:
            jet = carried(spins_at(arm.turns, row), _still(arm.vector))
            for total, part in zip((place, speed, push), jet, strict=True):
                for k in range(3):
                    total[k] = total[k] + part[k]
        return (
            (place[0], place[1], place[2]),
            (speed[0], speed[1], speed[2]),
            (push[0], push[1], push[2]),
        )

    def bounds(self) -> Bounds:
        """Proven bounds over all beats."""
        return _bounds(self)


def hand_limits(path: HandPath) -> tuple[float, Limits]:
    """Bounds on the hand's distance from its centre, and on its derivatives of order 1 to 4.

    Derivatives come from the coefficients; the distance is inf if a slide drifts.
    """
    distance, orders = 0.0, [0.0] * 4
    for slide in path.slides:
        size = float(np.linalg.norm(slide.vector))
        orders = [
            total + (size * own if size > 0 else 0.0)  # 0·inf is 0 here
            for total, own in zip(orders, slide.phase.limits(), strict=True)
        ]
        distance = inf
    for arm in path.arms:
        size = float(np.linalg.norm(arm.vector))
        limits = turned_limits(arm.turns, size)
        orders = [total + own for total, own in zip(orders, limits, strict=True)]
        distance += size
    return distance, (orders[0], orders[1], orders[2], orders[3])


def _numbers(vector: Vector) -> Components:
    return float(vector[0]), float(vector[1]), float(vector[2])


def _still(vector: Vector) -> VectorJet:
    """A vector that does not change."""
    return _numbers(vector), (0.0, 0.0, 0.0), (0.0, 0.0, 0.0)


def _largest(vector: Components) -> float:
    """The largest length of a vector at its beats."""
    x, y, z = vector
    return float(np.max(np.sqrt(x * x + y * y + z * z)))


@lru_cache(maxsize=4096)
@remembering(record=asdict, restore=lambda record: Bounds(**record))
def _bounds(law: ComposedLaw) -> Bounds:
    distance, hand = hand_limits(law.hand)
    spin = turned_limits(law.turns, 1.0)
    reach = inf
    if isfinite(distance):
        reach = float(np.hypot(*law.hand.centre[:2])) + distance
    if not isfinite(law.period):
        return Bounds(
            hand_speed=hand[0] * ROUNDING_UP,
            hand_acceleration=hand[1] * ROUNDING_UP,
            turn_rate=spin[0] * ROUNDING_UP,
            turn_acceleration=spin[1] * ROUNDING_UP,
            hand_reach=reach * ROUNDING_UP,
            hand_jerk=hand[2] * ROUNDING_UP,
            turn_jerk=spin[2] * ROUNDING_UP,
            frame_rate=spin[0] * ROUNDING_UP,
            frame_acceleration=spin[1] * ROUNDING_UP,
        )
    gap = law.period / _GRID
    row = np.arange(_GRID + 1, dtype=np.float64) * gap
    place, speed, push = law.hand_jet(row)
    _, rate, acceleration = carried(spins_at(law.turns, row), _still(law.tether))

    def tight(sampled: Components, coarse: float, slope: float, curve: float) -> float:
        most = _largest(sampled)
        return min(coarse, most + gap / 2 * slope, most + gap**2 / 8 * curve) * ROUNDING_UP

    return Bounds(
        hand_speed=tight(speed, hand[0], hand[1], hand[2]),
        hand_acceleration=tight(push, hand[1], hand[2], hand[3]),
        turn_rate=tight(rate, spin[0], spin[1], spin[2]),
        turn_acceleration=tight(acceleration, spin[1], spin[2], spin[3]),
        hand_reach=tight((place[0], place[1], 0.0), reach, hand[0], hand[1]),
        hand_jerk=hand[2] * ROUNDING_UP,
        turn_jerk=spin[2] * ROUNDING_UP,
        frame_rate=spin[0] * ROUNDING_UP,  # the plane is carried by the same rotations
        frame_acceleration=spin[1] * ROUNDING_UP,
    )
