"""Planes and directions: their common names as unit vectors, and back.

Frame: body frame [m], x to the performer's right, y forward, z up. A plane with a direction is one unit
vector n by the right-hand rule; −n is the same plane in the opposite direction. Angles in a plane are
anticlockwise for its conventional viewer: the performer for the wall plane, from above for the floor plane,
from the performer's right for the wheel plane. 0 is to the viewer's right (the performer's right; for the
wheel plane, forward), −90° below (for the floor plane, behind).
Source: common practice.
"""

from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.laws.rotations import Vector

PlaneName: TypeAlias = Literal["wall", "wheel", "floor"]
TurnName: TypeAlias = Literal["anticlockwise", "clockwise"]
PLANES: tuple[PlaneName, ...] = ("wall", "wheel", "floor")
TURNS: tuple[TurnName, ...] = ("anticlockwise", "clockwise")
WheelWay: TypeAlias = Literal["forward", "backward"]
WAYS: tuple[WheelWay, ...] = ("forward", "backward")

# The viewer's right and up in each plane; their cross product is the anticlockwise n.
_RIGHT: dict[PlaneName, Vector] = {"wall": (1, 0, 0), "wheel": (0, 1, 0), "floor": (1, 0, 0)}
_UP: dict[PlaneName, Vector] = {"wall": (0, 0, 1), "wheel": (0, 0, 1), "floor": (0, 1, 0)}


@dataclass(frozen=True, slots=True)
class Frame:
    """Outward, along the hand's motion, and the axis: right-handed unit vectors, shape (3,) [1, body frame]."""

    outward: Floats
    along: Floats
    axis: Floats

    def yawed(self, angle: float) -> "Frame":
        """The frame turned about the vertical, anticlockwise from above [rad]."""
        cos, sin = np.cos(angle), np.sin(angle)
        about = np.array([[cos, -sin, 0.0], [sin, cos, 0.0], [0.0, 0.0, 1.0]])
        return Frame(about @ self.outward, about @ self.along, about @ self.axis)


def frame_of(plane: PlaneName, turn: TurnName, start: float) -> Frame:
    """Frame of a hand that starts at an angle in the plane and moves in a direction.

    Parameters
    ----------
    plane : {"wall", "wheel", "floor"}
    turn : {"anticlockwise", "clockwise"}
        As seen by the plane's viewer.
    start : float
        Angle in the plane [rad].

    Returns
    -------
    frame : Frame

    Raises
    ------
    ValueError
        If a name is unknown.
    """
    if plane not in PLANES:
        raise ValueError(f"plane must be one of {', '.join(PLANES)}, got {plane!r}")
    if turn not in TURNS:
        raise ValueError(f"turn must be one of {', '.join(TURNS)}, got {turn!r}")
    right, up = np.array(_RIGHT[plane], dtype=float), np.array(_UP[plane], dtype=float)
    axis = np.cross(right, up) * (1.0 if turn == "anticlockwise" else -1.0)
    outward = np.cos(start) * right + np.sin(start) * up
    return Frame(outward, np.cross(axis, outward), axis)


def plane_axis(plane: PlaneName, turn: TurnName) -> Vector:
    """Axis of a plane by the right-hand rule [1, body frame], for a direction of the prop.

    Raises
    ------
    ValueError
        If a name is unknown.
    """
    return as_vector(frame_of(plane, turn, 0.0).axis + 0.0)  # no −0


def wheel_axis(way: WheelWay) -> Vector:
    """Axis of the wheel plane [1, body frame]; forward: the top of the loop goes forward.

    Raises
    ------
    ValueError
        If the direction is unknown.
    """
    if way not in WAYS:
        raise ValueError(f"way must be forward or backward, got {way!r}")
    return (-1.0 if way == "forward" else 1.0, 0.0, 0.0)


def as_vector(values: Floats) -> Vector:
    """Three plain numbers of an array, shape (3,) [any unit], for a frozen record."""
    x, y, z = (float(value) for value in values)
    return x, y, z


_NAMES: tuple[tuple[Vector, str, str], ...] = (
    ((-1.0, 0.0, 0.0), "wheel plane, forward", "wheel plane, forward"),
    ((1.0, 0.0, 0.0), "wheel plane, backward", "wheel plane, backward"),
    ((0.0, 1.0, 0.0), "wall plane, clockwise", "wall plane, anticlockwise"),
    ((0.0, -1.0, 0.0), "wall plane, anticlockwise", "wall plane, clockwise"),
    ((0.0, 0.0, 1.0), "floor plane, anticlockwise from above", "floor plane, anticlockwise from above"),
    ((0.0, 0.0, -1.0), "floor plane, clockwise from above", "floor plane, clockwise from above"),
)  # fmt: skip


def plane_words(n: Floats, *, eye: Literal["performer", "audience"] = "performer") -> str:
    """Plane and direction as text, as seen by the performer or a facing audience.

    Parameters
    ----------
    n : ndarray, shape (3,) [1, body frame]
        Unit vector of plane and direction.
    eye : {"performer", "audience"}
        The audience is the one that the performer faces: it sees the wall plane in the opposite direction.

    Returns
    -------
    words : str
        The nearest of the three planes; mentions a tilt of more than 10°.

    Notes
    -----
    Source: common practice; docs/motion.md, section 1.
    """
    products = [float(np.dot(n, axis)) for axis, _, _ in _NAMES]
    names = [mine if eye == "performer" else theirs for _, mine, theirs in _NAMES]
    best = int(np.argmax(products))
    words = names[best]
    off = np.degrees(np.arccos(min(products[best], 1.0)))
    if off <= 10.0:
        return words
    order = np.argsort(products)[::-1]
    second = names[int(order[1])]
    if off > 35.0:
        return f"between {words} and {second}"
    return f"{words}, tilted {off:.0f}° towards {second}"
