"""Links: computed bridges from one state to another, and the law of rest.

A link's hand runs on the quintic that meets position, velocity and acceleration at both ends; its
tether on a path of sphere.py that does the same. Frame: body frame [m], rates per beat.
Source: docs/motion.md, section 5; T. Flash, N. Hogan (J. Neurosci. 5, 1985) for quintic hand paths.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import comb, isfinite

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.composed import ROUNDING, ComposedLaw, HandPath
from sequencer.motion.law import Bounds
from sequencer.motion.phases import smooth_step
from sequencer.motion.placing import sign_of
from sequencer.motion.sphere import Ends, directions, polynomial, quintics, sphere_paths
from sequencer.motion.state import Motion

PARTS = 16  # parts of a link that are bounded by themselves
STILL = 1e-6  # [1/beat] a tether that turns slower shows no axis of its own


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LinkLaw:
    """A bridge of some beats; its polynomials go on outside them."""

    beats: float
    hand: Floats  # (6, 3) [m] quintic of the share of the beats
    frame: Floats  # (3, 3) rows p₁, p₂, pole
    angles: Floats  # (6, 2) [rad] azimuth and elevation
    tilt: tuple[float, float]  # [rad] of the plane about the tether, at the start and at the end

    @property
    def period(self) -> float:
        """A link does not repeat."""
        return float("inf")

    def at(self, beats: Floats) -> Motion:
        """State at own beats, shape (...); exact to rounding."""
        beats = np.asarray(beats, dtype=np.float64)
        x = beats.ravel() / self.beats
        place, speed, push = polynomial(self.hand, x)
        span = np.array([self.beats])
        tether, rate, acceleration = (
            part[0] for part in directions(self.frame[None], self.angles[None], x, span)
        )
        alpha, psi = polynomial(self.angles, x)[0].T
        up = np.stack(
            (-np.sin(psi) * np.cos(alpha), -np.sin(psi) * np.sin(alpha), np.cos(psi)), axis=-1
        )
        up = up @ self.frame
        tilt = self.tilt[0] + (self.tilt[1] - self.tilt[0]) * smooth_step(x)[0]
        plane = np.cos(tilt)[:, None] * up + np.sin(tilt)[:, None] * np.cross(tether, up)

        def shaped(part: Floats) -> Floats:
            return np.asarray(part).reshape(*beats.shape, 3)

        return Motion(
            hand=shaped(place),
            hand_rate=shaped(speed / self.beats),
            hand_acceleration=shaped(push / self.beats**2),
            tether=shaped(tether),
            tether_rate=shaped(rate),
            tether_acceleration=shaped(acceleration),
            plane=shaped(plane),
        )

    def bounds(self) -> Bounds:
        """Proven bounds over its own beats: the worst of its parts."""
        return worst(*(bounds for _, _, bounds in self.parts()))

    def reach_from(self, point: Floats) -> float:
        """Proven bound of the hand's distance [m] from a point, shape (3,) [m, body frame]."""
        edges = np.arange(PARTS + 1, dtype=np.float64) / PARTS
        away = _controls(self.hand, 0, edges) - point
        return float(np.max(np.linalg.norm(away, axis=-1))) * ROUNDING

    def parts(self) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on each sixteenth of the link: (start, end, bounds) in own beats."""
        edges = np.arange(PARTS + 1, dtype=np.float64) / PARTS
        span = self.beats
        hand = [_controls(self.hand, order, edges) / span**order for order in range(4)]
        angles = [np.abs(_controls(self.angles, order, edges)).max(axis=1) for order in range(3)]
        steep = np.minimum(angles[0][:, 1], 1.0)  # bound of |sin ψ|
        alpha1, psi1 = (angles[1] / span).T
        alpha2, psi2 = (angles[2] / span**2).T
        turn = np.hypot(alpha1, psi1)
        across = psi2 + np.minimum(0.5, steep) * alpha1**2
        east = alpha2 + 2 * steep * psi1 * alpha1
        push = np.sqrt(across**2 + east**2 + turn**4)

        def size(order: int, axes: int = 3) -> Floats:
            norms: Floats = np.linalg.norm(hand[order][..., :axes], axis=-1).max(axis=1)
            return norms * ROUNDING

        columns = (size(1), size(2), turn * ROUNDING, push * ROUNDING, size(0, 2), size(3))
        return tuple(
            (
                float(edges[k] * span),
                float(edges[k + 1] * span),
                Bounds(
                    hand_speed=float(columns[0][k]),
                    hand_acceleration=float(columns[1][k]),
                    turn_rate=float(columns[2][k]),
                    turn_acceleration=float(columns[3][k]),
                    hand_reach=float(columns[4][k]),
                    hand_jerk=float(columns[5][k]),
                ),
            )
            for k in range(PARTS)
        )


def worst(*bounds: Bounds) -> Bounds:
    """Bounds that hold wherever one of the given ones does."""
    return Bounds(
        hand_speed=max(b.hand_speed for b in bounds),
        hand_acceleration=max(b.hand_acceleration for b in bounds),
        turn_rate=max(b.turn_rate for b in bounds),
        turn_acceleration=max(b.turn_acceleration for b in bounds),
        hand_reach=max(b.hand_reach for b in bounds),
        hand_jerk=max(b.hand_jerk for b in bounds),
    )


def axis_of(motion: Motion) -> Floats:
    """Unit turning axis of each state; the law's plane where the tether stands still.

    Parameters
    ----------
    motion : Motion
        Arrays of shape (..., 3) [body frame].

    Returns
    -------
    axis : ndarray, shape (..., 3) [1, body frame]

    Notes
    -----
    Source: docs/motion.md, section 2. Exact.
    """
    axis = motion.turning_axis
    size = np.linalg.norm(axis, axis=-1, keepdims=True)
    return np.asarray(np.where(size > STILL, axis / np.maximum(size, STILL), motion.plane))


def stacked(first: Motion, last: Motion) -> Ends:
    """Ends of n sphere paths from n states to n states."""

    def pair(a: Floats, b: Floats) -> Floats:
        return np.stack((np.atleast_2d(a), np.atleast_2d(b)), axis=1)

    return Ends(
        tether=pair(first.tether, last.tether),
        rate=pair(first.tether_rate, last.tether_rate),
        acceleration=pair(first.tether_acceleration, last.tether_acceleration),
        axis=pair(axis_of(first), axis_of(last)),
    )


def link(first: Motion, last: Motion, beats: float) -> LinkLaw:
    """The bridge from one state to another.

    Parameters
    ----------
    first, last : Motion
        One state each: arrays of shape (3,) [body frame].
    beats : float

    Returns
    -------
    law : LinkLaw

    Raises
    ------
    ValueError
        If `beats` is not positive, or no path was found (which would take two ends near every pole).
    """
    if not (isfinite(beats) and beats > 0):
        raise ValueError(f"a link's beats must be positive, got {beats!r}")
    span = np.array([beats])
    paths = sphere_paths(stacked(first, last), span)
    if not np.isfinite(paths.peak[0]):
        raise ValueError("no path between the two tethers was found")
    hand = quintics(
        np.stack((first.hand, first.hand_rate * beats, first.hand_acceleration * beats**2)),
        np.stack((last.hand, last.hand_rate * beats, last.hand_acceleration * beats**2)),
    )
    frame, angles = paths.frames[0], paths.angles[0]
    start = _tilt(frame, angles, 0.0, first.plane)
    turn = _tilt(frame, angles, 1.0, last.plane) - start
    turn = (turn + np.pi) % (2 * np.pi) - np.pi
    return LinkLaw(beats=beats, hand=hand, frame=frame, angles=angles, tilt=(start, start + turn))


def rest(side: Side, body: Body, length: float) -> ComposedLaw:
    """Arms hanging, the tether straight down, clear of the legs and of the floor.

    Parameters
    ----------
    side : {"left", "right"}
    body : Body
    length : float
        Of the tether [m]; a long one lifts the hand, so that the head hangs 15 cm over the floor.

    Returns
    -------
    law : ComposedLaw
        At rest, plane said to be wheel, forward.
    """
    arm = body.arm_length
    aside = 0.12
    drop = body.shoulder_height - max(body.shoulder_height - 0.95 * arm, length + 0.15)
    shoulder = body.shoulder(side)
    out = body.half_breadth + aside - body.half_shoulder
    ahead = float(np.sqrt(max((0.95 * arm) ** 2 - drop**2 - out**2, 0.0))) if drop < 0 else 0.1
    place = shoulder + np.array([sign_of(side) * out, min(ahead, 0.3), -drop])
    return ComposedLaw(
        hand=HandPath((float(place[0]), float(place[1]), float(place[2]))),
        tether=(0.0, 0.0, -1.0),
        plane=(-1.0, 0.0, 0.0),
        turns=(),
        period=1.0,
    )


def _tilt(frame: Floats, angles: Floats, x: float, plane: Floats) -> float:
    alpha, psi = polynomial(angles, np.array([x]))[0][0]
    ca, sa, cp, sp = np.cos(alpha), np.sin(alpha), np.cos(psi), np.sin(psi)
    up = np.array([-sp * ca, -sp * sa, cp]) @ frame
    tether = np.array([cp * ca, cp * sa, sp]) @ frame
    return float(np.arctan2(plane @ np.cross(tether, up), plane @ up))


def _controls(coefficients: Floats, order: int, edges: Floats) -> Floats:
    """Bernstein control points of a derivative on each part, (parts, points, m).

    A polynomial's values lie in the convex hull of its control points, so their sizes bound it.
    """
    power = np.polynomial.polynomial
    derived = power.polyder(coefficients, order, axis=0)
    degree = len(derived) - 1
    raise_to = _bernstein(degree)
    parts = []
    for low, high in pairwise(edges.tolist()):
        shift = _substitution(degree, low, high - low)
        parts.append(raise_to @ (shift @ derived))
    return np.stack(parts)


def _substitution(degree: int, low: float, width: float) -> Floats:
    """Matrix that turns coefficients in x into those in y, x = low + width·y."""
    matrix = np.zeros((degree + 1, degree + 1))
    row: Floats = np.zeros(degree + 1)
    row[0] = 1.0
    for k in range(degree + 1):
        matrix[:, k] = row
        row = low * row + width * np.concatenate(([0.0], row[:-1]))
    return matrix


def _bernstein(degree: int) -> Floats:
    """Matrix that turns power coefficients on 0 … 1 into Bernstein control points."""
    return np.array(
        [
            [comb(i, j) / comb(degree, j) if j <= i else 0.0 for j in range(degree + 1)]
            for i in range(degree + 1)
        ]
    )
