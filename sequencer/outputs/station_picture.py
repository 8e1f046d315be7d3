"""One build step as a picture of strokes: body, arms, tethers, and the ring that each prop draws in its plane.

Seen obliquely from behind on the right and from a little above, so that no plane is seen edge-on: forward and backward
in the wheel plane differ by the arrows on the ring, and by which part of it is nearer. Knows no paper: lengths are metres.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import UPRIGHT, PosedBody, Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.performers.arms import elbow, given_shoulder

Tone = Literal["ink", "soft", "arm", "body"]
_TURN, _TILT = np.radians(38.0), np.radians(24.0)
_RIGHT = np.array([np.cos(_TURN), np.sin(_TURN), 0.0])
_UP = np.array([-np.sin(_TURN) * np.sin(_TILT), np.cos(_TURN) * np.sin(_TILT), np.cos(_TILT)])
_NEAR = np.cross(_RIGHT, _UP)  # towards the eye
_RING = 72  # chords of a ring: off the circle by 0.1 % of its radius
_ARROWS = (0.10, 0.43, 0.77)  # where on the ring the arrows are, in turns from the head
_ARROW = 0.17  # [m] length of an arrow


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class HandAt:
    """One hand with its prop at one instant, in the body frame."""

    side: Side
    hand: Floats  # (3,) [m]
    tether: Floats  # (3,) [1]
    plane: Floats  # (3,) [1]
    length: float  # [m] hand to head
    leads: bool = True  # the hand that the steps are told for


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Stroke:
    """A line, a filled outline or a dot on paper."""

    points: Floats  # (n, 2) [m]; one point of a dot
    tone: Tone
    width: float = 1.0  # of a line, relative; the radius of a dot
    kind: Literal["line", "fill", "dot", "ring"] = "line"  # a ring is a hollow dot


def flat(points: Floats) -> Floats:
    """Points, shape (..., 3) [m, body frame], as they are seen, shape (..., 2) [m]: to the right, and up.

    Notes
    -----
    Source: straight projection along a line of sight, any text on descriptive geometry. Exact.
    """
    return np.stack((points @ _RIGHT, points @ _UP), axis=-1)


def station_picture(
    hands: Sequence[HandAt], body: Body, posture: Posture = UPRIGHT
) -> list[Stroke]:
    """Strokes of one build step, in the order in which they are drawn.

    Parameters
    ----------
    hands : sequence of HandAt
        One or both.
    body : Body
    posture : Posture, optional
    """
    ordered = sorted(hands, key=lambda each: each.leads)  # the leading hand on top
    strokes = [_capsule(c.start, c.end, c.radius) for c in PosedBody(body, posture).capsules]
    for each in ordered:
        strokes += _ring(each, near=False)
    strokes += [_arm(each, body, posture) for each in ordered]
    for each in ordered:
        strokes += [*_ring(each, near=True), *_arrows(each), *_prop(each)]
    return strokes


def window(pictures: Iterable[Sequence[Stroke]], body: Body) -> tuple[float, float, float]:
    """Middle and half the side of the square that all pictures of one build share [m].

    The body is shown from its hips up.
    """
    points = [s.points for picture in pictures for s in picture if s.tone != "body"]
    upper = np.array([[0.0, 0.0, 0.52 * body.height], [0.0, 0.0, body.height]])
    seen = np.concatenate([*points, flat(upper)])
    low, high = seen.min(axis=0), seen.max(axis=0)
    x, y = (low + high) / 2
    return float(x), float(y), float(np.max(high - low)) / 2 + 0.04


def _ring(at: HandAt, *, near: bool) -> list[Stroke]:
    """The half of the ring that is nearer to the eye than the hand, or the other half."""
    turns: Floats = np.arange(_RING + 1, dtype=np.float64) / _RING
    points = _on_ring(at, turns)
    depth = (points - at.hand) @ _NEAR
    middle = (depth[:-1] + depth[1:]) / 2
    is_flat = float(np.ptp(depth)) < 0.05
    wide = (1.7 if near else 0.6) if at.leads else (0.9 if near else 0.5)
    chosen = (
        np.flatnonzero((middle > 0) == near) if not is_flat else np.arange(_RING if near else 0)
    )
    return [
        Stroke(points=flat(points[k : k + 2]), tone="ink" if at.leads else "soft", width=wide)
        for k in chosen.tolist()
    ]


def _on_ring(at: HandAt, turns: Floats) -> Floats:
    side = np.cross(at.plane, at.tether)
    angle = 2 * np.pi * turns[:, None]
    return np.asarray(at.hand + at.length * (np.cos(angle) * at.tether + np.sin(angle) * side))


def _arrows(at: HandAt) -> list[Stroke]:
    """Arrows along the ring, the way the head goes."""
    strokes = []
    for turn in _ARROWS:
        tip, tail = flat(_on_ring(at, np.array([turn + 0.03, turn])))
        along = tip - tail
        long = float(np.hypot(*along))
        if long < 0.01:  # seen almost along the line of sight
            continue
        ahead = along / long
        aside = np.array([-ahead[1], ahead[0]])
        barb = _ARROW * (1.0 if at.leads else 0.55)
        outline = np.stack(
            (tip + 0.5 * barb * ahead, tip - 0.5 * barb * ahead + 0.45 * barb * aside,
             tip - 0.5 * barb * ahead - 0.45 * barb * aside)
        )  # fmt: skip
        strokes.append(Stroke(points=outline, tone="ink" if at.leads else "soft", kind="fill"))
    return strokes


def _prop(at: HandAt) -> list[Stroke]:
    head = at.hand + at.length * at.tether
    tone: Tone = "ink" if at.leads else "soft"
    return [
        Stroke(points=flat(np.stack((at.hand, head))), tone=tone, width=2.6 if at.leads else 1.4),
        Stroke(points=flat(head[None]), tone=tone, width=0.055, kind="dot" if at.leads else "ring"),
        Stroke(points=flat(at.hand[None]), tone=tone, width=0.03, kind="dot"),
    ]


def _arm(at: HandAt, body: Body, posture: Posture) -> Stroke:
    carriage = Carriage(body=body, held=(HeldPosture(0.0, 1.0, posture),))
    hand, start = at.hand[None], np.zeros(1)
    shoulder = given_shoulder(carriage, start, hand, at.side)
    bend = elbow(body, shoulder, hand, at.side)
    return Stroke(points=flat(np.concatenate((shoulder, bend, hand))), tone="arm", width=3.4)


def _capsule(start: Sequence[float], end: Sequence[float], radius: float) -> Stroke:
    """The outline of a part of the body."""
    ends = flat(np.array([start, end]))
    along = ends[1] - ends[0]
    turn = float(np.arctan2(along[1], along[0])) if np.linalg.norm(along) > 1e-9 else 0.0
    angle = np.linspace(-np.pi / 2, np.pi / 2, 13) + turn
    arc = radius * np.stack((np.cos(angle), np.sin(angle)), axis=-1)
    return Stroke(points=np.concatenate((ends[1] + arc, ends[0] - arc)), tone="body", kind="fill")
