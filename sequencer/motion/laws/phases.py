"""Scalar functions of beats from which the laws are built, with proven bounds on their derivatives.

An angle [rad] or a length [m] that increases, oscillates or steps. Each gives its value and its first and
second derivative, and `limits()`: upper bounds of the absolute first to fourth derivative over all
beats, from the coefficients. A fourth derivative that does not exist everywhere has the bound inf.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Protocol

import numpy as np

from sequencer.arrays import Floats

Limits = tuple[float, float, float, float]


class Phase(Protocol):
    """A twice continuously differentiable function of beats."""

    def at(self, beats: Floats) -> tuple[Floats, Floats, Floats]:
        """Value, rate [1/beat] and acceleration [1/beat²], each shape (...)."""
        ...

    def limits(self) -> Limits:
        """Bounds on the absolute derivatives of order 1, 2, 3 and 4 over all beats."""
        ...


@dataclass(frozen=True, slots=True)
class Wave:
    """offset + rate·t + Σ amplitude·cos(frequency·t + lead)."""

    offset: float = 0.0
    rate: float = 0.0  # [1/beat]
    sways: tuple[
        tuple[float, float, float], ...
    ] = ()  # amplitude, frequency [rad/beat], lead [rad]

    def at(self, beats: Floats) -> tuple[Floats, Floats, Floats]:
        """Value and its first two derivatives; exact."""
        value = self.offset + self.rate * beats
        rate = np.full_like(value, self.rate)
        acceleration = np.zeros_like(value)
        for amplitude, frequency, lead in self.sways:
            angle = frequency * beats + lead
            cosine = amplitude * np.cos(angle)
            value = value + cosine
            rate -= amplitude * frequency * np.sin(angle)
            acceleration -= frequency**2 * cosine
        return value, rate, acceleration

    def limits(self) -> Limits:
        """Sums of the absolute coefficients; exact for a single oscillation."""
        orders = [sum(abs(a) * abs(f) ** k for a, f, _ in self.sways) for k in (1, 2, 3, 4)]
        return abs(self.rate) + orders[0], orders[1], orders[2], orders[3]


# Largest slopes of the minimum-jerk step 10x³ − 15x⁴ + 6x⁵ on 0 … 1 (at x = ½, ½ ∓ √3/6, and 0).
STEP_RATE = 15 / 8
STEP_ACCELERATION = 10 / np.sqrt(3.0)
STEP_JERK = 60.0


def smooth_step(x: Floats) -> tuple[Floats, Floats, Floats]:
    """The minimum-jerk step from 0 to 1 and its first two derivatives; flat outside 0 … 1.

    Parameters
    ----------
    x : ndarray, shape (...) [1]

    Returns
    -------
    step, rate, acceleration : ndarray, shape (...) [1]

    Notes
    -----
    Source: T. Flash, N. Hogan, The coordination of arm movements (J. Neurosci. 5, 1985), eq. for
    point-to-point movements (from memory): 10x³ − 15x⁴ + 6x⁵. Exact.
    """
    x = np.clip(x, 0.0, 1.0)
    rest = 1.0 - x
    return (
        x**3 * (10.0 + x * (6.0 * x - 15.0)),
        30.0 * (x * rest) ** 2,
        60.0 * x * rest * (1.0 - 2.0 * x),
    )


@dataclass(frozen=True, slots=True)
class Steps:
    """Minimum-jerk steps from value to value, at rest at every knot.

    Repeats after the last knot, drifting by the last value minus the first, or stays there.
    """

    knots: tuple[float, ...]  # [beats] increasing
    values: tuple[float, ...]
    repeats: bool = True

    def __post_init__(self) -> None:
        if len(self.knots) != len(self.values) or len(self.knots) < 2:
            raise ValueError("steps need as many values as knots, and at least two")
        if not np.all(np.diff(self.knots) > 0):
            raise ValueError(f"knots must increase, got {self.knots}")

    def at(self, beats: Floats) -> tuple[Floats, Floats, Floats]:
        """Value and its first two derivatives; exact."""
        knots, values = np.asarray(self.knots), np.asarray(self.values)
        span = knots[-1] - knots[0]
        cycle = np.floor((beats - knots[0]) / span) if self.repeats else np.zeros_like(beats)
        own = beats - cycle * span
        index = np.clip(np.searchsorted(knots, own, side="right") - 1, 0, len(knots) - 2)
        width, jump = np.diff(knots)[index], np.diff(values)[index]
        step, rate, acceleration = smooth_step((own - knots[index]) / width)
        value = values[index] + cycle * (values[-1] - values[0]) + jump * step
        return value, jump / width * rate, jump / width**2 * acceleration

    def limits(self) -> Limits:
        """From the largest step; exact."""
        widths, jumps = np.diff(self.knots), np.abs(np.diff(self.values))
        return (
            float(np.max(jumps / widths) * STEP_RATE),
            float(np.max(jumps / widths**2) * STEP_ACCELERATION),
            float(np.max(jumps / widths**3) * STEP_JERK),
            float("inf"),
        )


@dataclass(frozen=True, slots=True)
class CosineSteps:
    """Half cosine waves from value to value, with zero slope at every knot; repeats, drifting by last − first.

    Its acceleration jumps at a knot unless the steps on either side are equal and opposite.
    """

    knots: tuple[float, ...]  # [beats] increasing
    values: tuple[float, ...]

    def __post_init__(self) -> None:
        if len(self.knots) != len(self.values) or len(self.knots) < 2:
            raise ValueError("steps need as many values as knots, and at least two")
        if not np.all(np.diff(self.knots) > 0):
            raise ValueError(f"knots must increase, got {self.knots}")

    def at(self, beats: Floats) -> tuple[Floats, Floats, Floats]:
        """Value and its first two derivatives; exact."""
        knots, values = np.asarray(self.knots), np.asarray(self.values)
        span = knots[-1] - knots[0]
        cycle = np.floor((beats - knots[0]) / span)
        own = beats - cycle * span
        index = np.clip(np.searchsorted(knots, own, side="right") - 1, 0, len(knots) - 2)
        half, pace = np.diff(values)[index] / 2, np.pi / np.diff(knots)[index]
        angle = pace * (own - knots[index])
        value = values[index] + cycle * (values[-1] - values[0]) + half * (1.0 - np.cos(angle))
        return value, half * pace * np.sin(angle), half * pace**2 * np.cos(angle)

    def limits(self) -> Limits:
        """From the largest step; exact."""
        halves, paces = np.diff(self.values) / 2, np.pi / np.diff(self.knots)
        ends = halves * paces**2  # acceleration after each knot; before the next it is the opposite
        smooth = np.allclose(-ends, np.roll(ends, -1), rtol=1e-9, atol=1e-12)
        orders = [float(np.max(np.abs(halves) * paces**k)) for k in (1, 2, 3, 4)]
        return orders[0], orders[1], orders[2] if smooth else float("inf"), float("inf")


@dataclass(frozen=True, slots=True)
class Spline:
    """The periodic cubic spline through values, plus a steady drift of last − first per period."""

    knots: tuple[float, ...]  # [beats] increasing
    values: tuple[float, ...]

    def __post_init__(self) -> None:
        if len(self.knots) != len(self.values) or len(self.knots) < 2:
            raise ValueError("a spline needs as many values as knots, and at least two")
        if not np.all(np.diff(self.knots) > 0):
            raise ValueError(f"knots must increase, got {self.knots}")

    def at(self, beats: Floats) -> tuple[Floats, Floats, Floats]:
        """Value and its first two derivatives; exact to rounding."""
        drift, spline = _spline(self)
        span = self.knots[-1] - self.knots[0]
        own = self.knots[0] + np.mod(beats - self.knots[0], span)
        value = spline(own) + drift * (beats - self.knots[0])
        return value, spline(own, 1) + drift, spline(own, 2)

    def limits(self) -> Limits:
        """From the pieces' coefficients; exact for the second and third derivative."""
        drift, spline = _spline(self)
        cubic, square, slope = (np.abs(spline.c[k]) for k in (0, 1, 2))
        width = np.diff(self.knots)
        second = np.maximum(2 * square, np.abs(2 * spline.c[1] + 6 * spline.c[0] * width))
        first = slope + 2 * square * width + 3 * cubic * width**2
        return (
            abs(drift) + float(first.max()),
            float(second.max()),
            float(6 * cubic.max()),
            float("inf"),
        )


@lru_cache(maxsize=256)
def _spline(phase: Spline) -> tuple[float, Any]:
    from scipy.interpolate import CubicSpline

    knots, values = np.asarray(phase.knots), np.asarray(phase.values)
    drift = (values[-1] - values[0]) / (knots[-1] - knots[0])
    own = values - drift * (knots - knots[0])
    own[-1] = own[0]  # equal to rounding
    return float(drift), CubicSpline(knots, own, bc_type="periodic")
