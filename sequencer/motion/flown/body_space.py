"""What the hand and the prop of one performer may not touch: arm's reach, trunk, head and legs, the floor.

Clearance is of the unlit prop in one posture; gradients are the unit vectors between nearest points.
Frame: body frame [m]. Source: docs/motion.md, section 6.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import PosedBody, Posture, from_trunk, to_trunk
from sequencer.geometry.segments import segment_segment
from sequencer.motion.flown.contact import Contact
from sequencer.motion.flown.kernel_places import (
    AT_ARM,
    AT_FLOOR,
    AT_LOW,
    AT_SHOULDER,
    AT_THICK,
    AT_THIN,
    AT_TRUNK,
    KERNEL_ROOM,
)
from sequencer.motion.laws.carriage import nearest_give
from sequencer.motion.props.prop import SHAFT_RADIUS, Prop

CLEARANCE = 0.03  # [m] between the unlit prop and body or floor
# [m] of the body within which a slow head lingers: if it burns, the check of flames near the body warns
LINGERING_NEAR = 0.05
LEFT_BEHIND = 0.055  # [m] sought for what would linger: the penalty of touching leaves a little
ARM_SPARE = 0.002  # [m]


class Room(NamedTuple):
    """What a hand and a prop may not leave or touch, in numbers for the compiled kernel."""

    numbers: Floats  # (22,) see `kernel`
    bodies: Floats  # (n, 7) capsules: ends and radius, clearance included [m, body frame]


NOWHERE = Room(np.zeros(KERNEL_ROOM), np.zeros((0, 7)))._replace(
    numbers=np.where(np.arange(KERNEL_ROOM) == AT_FLOOR, -np.inf, 0.0)
)


@dataclass(frozen=True, kw_only=True)
class BodySpace:
    """One hand's room about a body in one posture."""

    body: Body
    posture: Posture
    side: Side
    prop: Prop
    clearance: float = CLEARANCE  # [m]

    def touching(self, hand: Floats, head: Floats) -> Contact:
        """Contact of n states; `contact.Touching`.

        Parameters
        ----------
        hand, head : ndarray, shape (n, 3) [m, body frame]
        """
        parts = [self._too_far(hand), self._floor(head), *self._near(hand, head)]
        return Contact(*(np.concatenate(column) for column in zip(*parts, strict=True)))

    def room(self) -> Room:
        """The same in numbers; what `touching` tells, the kernel finds in them."""
        lows, highs, radii = self._capsules()
        numbers: Floats = np.zeros(KERNEL_ROOM)
        numbers[AT_ARM] = self.body.arm_length - ARM_SPARE
        numbers[AT_FLOOR] = self.prop.wick_radius + self.clearance
        numbers[AT_THIN] = SHAFT_RADIUS[self.prop.kind]
        numbers[AT_THICK] = self.prop.wick_radius
        numbers[AT_SHOULDER : AT_SHOULDER + 3] = PosedBody(self.body, self.posture).shoulder(
            self.side
        )
        numbers[AT_TRUNK : AT_TRUNK + 9] = from_trunk(np.eye(3), self._angles(3)).T.ravel()
        far = np.full((2, 3), 1e9) * [[-1.0], [1.0]]  # the nearest give to either is a corner
        numbers[AT_LOW:KERNEL_ROOM] = nearest_give(self.body, far, self.side).ravel()
        capsules = np.concatenate([lows[:, 0], highs[:, 0], radii + self.clearance], axis=1)
        return Room(numbers, capsules)

    def gaps(self, hand: Floats, head: Floats) -> Floats:
        """Distance of tether and head from the body, shape (n,) [m]; negative inside."""
        lows, highs, radii = self._capsules()
        gap = segment_segment(hand, head, lows, highs)[0] - radii
        ball = segment_segment(head, head, lows, highs)[0] - radii
        thin, thick = SHAFT_RADIUS[self.prop.kind], self.prop.wick_radius
        return np.asarray(np.minimum(gap - thin, ball - thick).min(axis=0))

    def spare_reach(self, hand: Floats) -> Floats:
        """Arm's length that is left, shape (n,) [m]; negative out of reach."""
        return np.asarray(self.body.arm_length - np.linalg.norm(self._beyond(hand), axis=-1))

    def _angles(self, count: int) -> Floats:
        return np.broadcast_to(np.array(self.posture.angles), (count, 5))

    def _beyond(self, hand: Floats) -> Floats:
        """From the nearest place of the shoulder to the hand, shape (n, 3) [m, body frame]."""
        angles = self._angles(len(hand))
        away = to_trunk(hand - PosedBody(self.body, self.posture).shoulder(self.side), angles)
        return from_trunk(away - nearest_give(self.body, away, self.side), angles)

    def _too_far(self, hand: Floats) -> Contact:
        away = self._beyond(hand)
        far = np.linalg.norm(away, axis=-1)
        over = far - self.body.arm_length + ARM_SPARE
        at = np.flatnonzero(over > 0)
        return Contact(at, over[at], np.zeros(len(at)), -away[at] / far[at, None])

    def _floor(self, head: Floats) -> Contact:
        under = self.prop.wick_radius + self.clearance - head[:, 2]
        at = np.flatnonzero(under > 0)
        up = np.broadcast_to([0.0, 0.0, 1.0], (len(at), 3))
        return Contact(at, under[at], np.ones(len(at)), up)

    def _capsules(self) -> tuple[Floats, Floats, Floats]:
        """Ends, shape (capsules, 1, 3), and radii, shape (capsules, 1) [m, body frame]."""
        own = PosedBody(self.body, self.posture).capsules
        ends = [np.array([getattr(c, end) for c in own])[:, None] for end in ("start", "end")]
        return ends[0], ends[1], np.array([c.radius for c in own])[:, None]

    def _near(self, hand: Floats, head: Floats) -> list[Contact]:
        lows, highs, radii = self._capsules()
        out = []
        for start, thick in (
            (hand, SHAFT_RADIUS[self.prop.kind]),
            (head, self.prop.wick_radius),
        ):
            # A ball about the middle of the prop tells which pairs can touch at all.
            middle, half = (start + head) / 2, np.linalg.norm(head - start, axis=-1) / 2
            rough = segment_segment(middle, middle, lows, highs)[0]
            enough = radii + thick + self.clearance
            part, at = np.nonzero(rough - half < enough)
            gap, share, on = segment_segment(start[at], head[at], lows[part, 0], highs[part, 0])
            depth = enough[part, 0] - gap
            hit = (depth > 0) & (gap > 1e-9)
            part, at, share, on = part[hit], at[hit], share[hit], on[hit]
            place = start[at] + share[:, None] * (head[at] - start[at])
            there = lows[part, 0] + on[:, None] * (highs[part, 0] - lows[part, 0])
            normal = (place - there) / gap[hit, None]
            own_share = share if start is hand else np.ones(len(at))
            out.append(Contact(at, depth[hit], own_share, normal))
        return out
