"""A head on a massless line: the hand, the pull and their rates follow from the head's path alone.

With y the head [m, in a frame that does not accelerate] and k the drag of its size and mass:

    f = y'' + g·e_z + k|y'|·y'      pull m·|f|      u = f/|f|      hand h = y + r·u

A line can only pull, so it lies along the force, whatever the hand does; h, y and r decide each other. From the rates of
f: s' = u·f', u' = (f' − s'·u)/s and u'' = (f'' − (u·f'')·u − 2s'·u')/s − |u'|²·u, s = |f|; then h' = y' + r·u',
h'' = y'' + r·u''. |y'| is smoothed at rest: √(|y'|² + 10⁻⁸ m²/s²). All in seconds.
Source: Newton's second law, drag ½ρC_d·A|v|v (any mechanics text).
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.facts.air import SPHERE_DRAG
from sequencer.facts.flames import AIR_DENSITY, STANDARD_GRAVITY
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import Prop

UP = np.array([0.0, 0.0, STANDARD_GRAVITY])  # [m/s²]
_SMOOTH = 1e-8  # [m²/s²]
_EDGE_ON = 1e-9  # [1] of a drawn plane that the line stands across


def drag_of(prop: Prop) -> float:
    """Drag of a head: its deceleration over the square of its speed [1/m], as a ball of the wick's size, unlit."""
    area = np.pi * prop.wick_radius**2
    return float(AIR_DENSITY * SPHERE_DRAG * area / (2.0 * prop.mass))


def speed_of(velocity: Floats) -> Floats:
    """Smoothed speed, shape (..., 1) [m/s]."""
    return np.asarray(np.sqrt(np.sum(velocity**2, axis=-1, keepdims=True) + _SMOOTH))


def force(rate: Floats, acceleration: Floats, drag: float, up: Floats = UP) -> Floats:
    """Pull of the line on the head over its mass, shape (..., 3) [m/s²]."""
    return np.asarray(acceleration + up + drag * speed_of(rate) * rate)


def force_rate(rate: Floats, acceleration: Floats, jerk: Floats, drag: float) -> Floats:
    """Rate of the same, shape (..., 3) [m/s³]."""
    speed = speed_of(rate)
    grown = np.sum(rate * acceleration, axis=-1, keepdims=True) / speed
    return np.asarray(jerk + drag * (grown * rate + speed * acceleration))


def force_bend(
    rate: Floats, acceleration: Floats, jerk: Floats, snap: Floats, drag: float
) -> Floats:
    """Second rate of the same, shape (..., 3) [m/s⁴]."""
    speed = speed_of(rate)
    grown = np.sum(rate * acceleration, axis=-1, keepdims=True) / speed
    square = np.sum(acceleration**2 + rate * jerk, axis=-1, keepdims=True)
    again = (square - grown**2) / speed
    return np.asarray(snap + drag * (again * rate + 2.0 * grown * acceleration + speed * jerk))


def turning(f: Floats, rate: Floats, second: Floats) -> tuple[Floats, Floats]:
    """First and second rate of the direction of f from its rates, each shape (..., 3).

    Notes
    -----
    Source: module docstring. Exact.
    """
    size = np.sqrt(np.sum(f * f, axis=-1, keepdims=True))
    u = f / size
    grown = np.sum(u * rate, axis=-1, keepdims=True)
    first = (rate - grown * u) / size
    across = second - np.sum(u * second, axis=-1, keepdims=True) * u
    bent = (across - 2.0 * grown * first) / size
    return first, bent - np.sum(first * first, axis=-1, keepdims=True) * u


def held(hand: Sequence[Floats], line: Sequence[Floats], drawn: Floats) -> Motion:
    """The state of a hand and its line.

    Parameters
    ----------
    hand : sequence of ndarray, shape (..., 3) [m]
        Its place and first two rates.
    line : sequence of ndarray, shape (..., 3) [m]
        From hand to head, and its first two rates.
    drawn : ndarray, shape (..., 3) [1]
        Unit normals of the planes that are drawn; they are turned to hold the line.

    Notes
    -----
    Source: module docstring.
    """
    tether = line[0] / np.linalg.norm(line[0], axis=-1, keepdims=True)
    turned, bent = turning(*line)
    plane = drawn - np.sum(drawn * tether, axis=-1, keepdims=True) * tether
    plane = plane / np.maximum(np.linalg.norm(plane, axis=-1, keepdims=True), _EDGE_ON)
    return Motion(
        hand=hand[0], hand_rate=hand[1], hand_acceleration=hand[2],
        tether=np.asarray(tether), tether_rate=turned, tether_acceleration=bent, plane=np.asarray(plane),
    )  # fmt: skip


class Flight(NamedTuple):
    """Head and hand at some instants, in seconds; arrays of shape (..., 3)."""

    head: Floats  # [m]
    head_rate: Floats  # [m/s]
    force: Floats  # [m/s²] pull over mass
    hand: Floats  # [m]
    hand_rate: Floats  # [m/s]
    hand_acceleration: Floats  # [m/s²]

    @property
    def tether(self) -> Floats:
        """Unit vector from hand to head, shape (..., 3) [1]."""
        return np.asarray(-self.force / np.linalg.norm(self.force, axis=-1, keepdims=True))


def flight(path: tuple[Floats, ...], *, length: float, drag: float, up: Floats = UP) -> Flight:
    """Hand and pull along a head's path.

    Parameters
    ----------
    path : five ndarrays, shape (..., 3) [m per s^order]
        The head and its first four derivatives in seconds.
    length : float
        Of the line [m].
    drag : float
        See `drag_of` [1/m].
    up : ndarray, shape (3,) [m/s²]
        Against gravity.

    Notes
    -----
    Source: module docstring. Exact.
    """
    head, rate, acceleration, jerk, snap = path
    f = force(rate, acceleration, drag, up)
    first = force_rate(rate, acceleration, jerk, drag)
    u = f / np.linalg.norm(f, axis=-1, keepdims=True)
    turned, bent = turning(f, first, force_bend(rate, acceleration, jerk, snap, drag))
    return Flight(
        head, rate, f, head + length * u, rate + length * turned, acceleration + length * bent
    )
