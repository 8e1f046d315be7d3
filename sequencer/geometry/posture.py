"""How a body makes room: the trunk turns and leans about the hips, the head about the neck.

A posture is five angles [rad]. The trunk with its shoulders is turned about the vertical through the hip
joints, then leans forward or back and to a side; the head, carried by the trunk, leans about the base of
the neck; the legs stay, and so does a chair. Shoulders also move independently (`Body.shoulder_give`).

    p = c + Rz(turn)·Rx(−lean)·Ry(side)·(q − c),  q of the head = k + Rx(−nod)·Ry(tilt)·(q₀ − k)

with c between the hip joints and k the base of the neck. A rotation moves a point no faster than its
angle changes times the point's distance from what it turns about, so the speeds of the angles add.

Ranges of motion, of which two thirds of the turn and less than half of the others is used: trunk
rotation 45°, extension 25° and flexion 80°, bending to a side 35°; neck 45° forward, back and to each
side (American Academy of Orthopaedic Surgeons, Greene and Heckman, The Clinical Measurement of Joint
Motion, 1994; from memory).
Frame: body frame [m].
"""

from dataclasses import dataclass
from functools import lru_cache
from math import degrees, radians

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.capsules import Capsule

RANGE_OF_MOTION = {
    "turn": (radians(-45.0), radians(45.0)),
    "lean": (radians(-25.0), radians(80.0)),
    "side": (radians(-35.0), radians(35.0)),
    "nod": (radians(-45.0), radians(45.0)),
    "tilt": (radians(-45.0), radians(45.0)),
}  # [rad] of the survey of joints named above
USED_ANGLES = {
    "turn": (radians(-30.0), radians(30.0)),
    "lean": (radians(-10.0), radians(10.0)),
    "side": (radians(-8.0), radians(8.0)),
    "nod": (radians(-15.0), radians(15.0)),
    "tilt": (radians(-20.0), radians(20.0)),
}  # [rad] largest angles used
COLUMN_SPARE = 0.004  # [m] by which trunk and head must stay within the upright column


@dataclass(frozen=True, slots=True, kw_only=True)
class Posture:
    """Angles of trunk and head [rad]; all 0 upright.

    Parameters
    ----------
    turn : float
        Of the trunk to the left.
    lean : float
        Of the trunk forward, negative back.
    side : float
        Of the trunk to the right.
    nod : float
        Of the head forward, negative back, against the trunk.
    tilt : float
        Of the head to the right, against the trunk.

    Raises
    ------
    ValueError
        If an angle is outside the allowed range.
    """

    turn: float = 0.0
    lean: float = 0.0
    side: float = 0.0
    nod: float = 0.0
    tilt: float = 0.0

    def __post_init__(self) -> None:
        for name, (low, high) in USED_ANGLES.items():
            value = getattr(self, name)
            if not low - 1e-9 <= value <= high + 1e-9:  # also catches nan
                raise ValueError(
                    f"{name} must be {degrees(low):.0f}° to {degrees(high):.0f}°, "
                    f"got {degrees(value):.1f}°"
                )

    @property
    def angles(self) -> tuple[float, ...]:
        """Turn, lean, side, nod, tilt [rad]."""
        return self.turn, self.lean, self.side, self.nod, self.tilt

    @property
    def upright(self) -> bool:
        """Whether the body is upright and unturned."""
        return not any(self.angles)

    def mirrored(self) -> "Posture":
        """The posture with left and right swapped."""
        # taken from zero, so that an upright one stays the same to the last digit: it is known by that
        return Posture(
            turn=0.0 - self.turn,
            lean=self.lean,
            side=0.0 - self.side,
            nod=self.nod,
            tilt=0.0 - self.tilt,
        )


UPRIGHT = Posture()


@dataclass(frozen=True, slots=True)
class PosedBody:
    """A body's capsules and shoulders in one posture."""

    body: Body
    posture: Posture = UPRIGHT

    @property
    def capsules(self) -> tuple[Capsule, ...]:
        """Trunk, head, neck and legs in this posture, in the order of `Body.capsules`."""
        own = self.body.capsules
        if self.posture.upright:
            return own
        low, high = capsule_ends(self.body, np.array([self.posture.angles]))
        return tuple(
            Capsule(c.name, _tuple(a), _tuple(b), c.radius)
            for c, a, b in zip(own, low[:, 0], high[:, 0], strict=True)
        )

    def shoulder(self, side: Side) -> Floats:
        """Rest position of a shoulder, shape (3,) [m, body frame]."""
        return np.asarray(shoulders(self.body, np.array([self.posture.angles]), side)[0])


def capsule_ends(body: Body, angles: Floats) -> tuple[Floats, Floats]:
    """Ends of every one of `Body.capsules` in n postures.

    Parameters
    ----------
    body : Body
    angles : ndarray, shape (n, 5) [rad]

    Returns
    -------
    low, high : ndarray, shape (capsules, n, 3) [m, body frame]

    Notes
    -----
    Source: module docstring. Exact.
    """
    trunk, moving, upright = _upright_ends(body)
    out = []
    for ends in upright:
        points = np.repeat(ends[:, None], len(angles), axis=1)
        points[:trunk] = _trunk(body, points[:trunk], angles)
        skull = _head(body, points[trunk:moving], angles)
        points[trunk:moving] = _trunk(body, skull, angles)
        out.append(points)
    return out[0], out[1]


@lru_cache(maxsize=512)
def _upright_ends(body: Body) -> tuple[int, int, tuple[Floats, Floats]]:
    """How many capsules a trunk has, how many trunk and head, and both ends of all, upright, each (capsules, 3) [m]."""
    trunk, capsules = len(body.trunk), body.capsules
    ends = np.array([c.start for c in capsules]), np.array([c.end for c in capsules])
    return trunk, trunk + len(body.skull), ends


def in_column(body: Body, angles: Floats) -> Bools:
    """Whether trunk and head stay within the upright column used for distances to others.

    Parameters
    ----------
    body : Body
    angles : ndarray, shape (n, 5) [rad]

    Returns
    -------
    inside : ndarray, shape (n,) [1]
        With 4 mm to spare, which covers the transition between two such postures.

    Notes
    -----
    Source: a capsule lies within an upright cylinder where both its ends do, with its radius. Exact.
    """
    ends = capsule_ends(body, angles)
    count = _upright_ends(body)[1]
    radii = np.array([capsule.radius for capsule in body.capsules[:count]])
    far = [np.hypot(end[:count, :, 0], end[:count, :, 1]) + radii[:, None] for end in ends]
    return np.asarray(np.max(far, axis=(0, 1)) <= body.girth - COLUMN_SPARE)


def levers(body: Body) -> Floats:
    """Bounds on the speed of the ends of `Body.capsules` per unit of angular speed.

    Parameters
    ----------
    body : Body

    Returns
    -------
    levers : ndarray, shape (capsules, 2) [m/rad]
        Per sum of the rates of turn, lean and side, and per sum of those of nod and tilt.

    Notes
    -----
    Source: module docstring. No point of the head is farther from the hips than the combined length of neck
    and head.
    """
    hips = np.array([0.0, 0.0, body.hip_height])
    neck = np.array([0.0, 0.0, body.neck_height])

    def far(capsule: Capsule, centre: Floats) -> float:
        ends = np.array([capsule.start, capsule.end])
        return float(np.linalg.norm(ends - centre, axis=1).max())

    up = body.neck_height - body.hip_height
    trunk = [(far(capsule, hips), 0.0) for capsule in body.trunk]
    skull = [(up + far(capsule, neck), far(capsule, neck)) for capsule in body.skull]
    return np.array([*trunk, *skull, *((0.0, 0.0) for _ in body.legs)])


def shoulders(body: Body, angles: Floats, side: Side) -> Floats:
    """Rest position of a shoulder in n postures, shape (n, 3) [m, body frame]; exact.

    Parameters
    ----------
    body : Body
    angles : ndarray, shape (n, 5) [rad]
    side : {"left", "right"}

    Notes
    -----
    Source: module docstring.
    """
    points = np.repeat(body.shoulder(side)[None, None], len(angles), axis=1)
    return np.asarray(_trunk(body, points, angles)[0])


def to_trunk(vectors: Floats, angles: Floats) -> Floats:
    """Vectors from the body frame to the trunk's frame, shape (n, 3) [same unit]; exact.

    Parameters
    ----------
    vectors : ndarray, shape (n, 3) [any unit, body frame]
    angles : ndarray, shape (n, 5) [rad]

    Notes
    -----
    Source: module docstring, inverted.
    """
    turn, lean, side = (angles[:, k] for k in range(3))
    out = _about("z", vectors, -turn)
    return _about("y", _about("x", out, lean), -side)


def from_trunk(vectors: Floats, angles: Floats) -> Floats:
    """Vectors from the trunk's frame to the body frame, shape (n, 3) [same unit]; exact.

    Parameters
    ----------
    vectors : ndarray, shape (n, 3) [any unit, the trunk's frame]
    angles : ndarray, shape (n, 5) [rad]

    Notes
    -----
    Source: module docstring.
    """
    turn, lean, side = (angles[:, k] for k in range(3))
    return _about("z", _about("x", _about("y", vectors, side), -lean), turn)


def _trunk(body: Body, points: Floats, angles: Floats) -> Floats:
    """Points (m, n, 3) after the trunk's turn and leans."""
    centre = np.array([0.0, 0.0, body.hip_height])
    turn, lean, side = (angles[:, k] for k in range(3))
    out = _about("y", points - centre, side)
    return np.asarray(_about("z", _about("x", out, -lean), turn) + centre)


def _head(body: Body, points: Floats, angles: Floats) -> Floats:
    """Points (m, n, 3) of the head after its nod and tilt."""
    centre = np.array([0.0, 0.0, body.neck_height])
    nod, tilt = angles[:, 3], angles[:, 4]
    return np.asarray(_about("x", _about("y", points - centre, tilt), -nod) + centre)


def _about(axis: str, vectors: Floats, angle: Floats) -> Floats:
    """Vectors (..., n, 3) turned about an axis by angles (n,), by the right-hand rule."""
    i, j = {"x": (1, 2), "y": (2, 0), "z": (0, 1)}[axis]
    cos, sin = np.cos(angle), np.sin(angle)
    out = vectors.copy()
    out[..., i] = cos * vectors[..., i] - sin * vectors[..., j]
    out[..., j] = sin * vectors[..., i] + cos * vectors[..., j]
    return out


def _tuple(point: Floats) -> tuple[float, float, float]:
    return float(point[0]), float(point[1]), float(point[2])
