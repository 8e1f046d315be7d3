"""How a performer holds the body through a show: postures, and minimum-jerk transitions between them.

A posture is held during a pattern and reached on the way into it, so that trunk, head and shoulders move as
smoothly as the links. Everything is proven piecewise: an angle that goes from a to b
in w beats never turns faster than (15/8)·|b − a|/w, and an end of a body's capsule moves at most at that
rate times its lever arm (geometry/posture.py). Body frame [m], beats.
Source: minimum-jerk step, `phases.smooth_step`.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import accumulate
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import (
    UPRIGHT,
    Posture,
    capsule_ends,
    in_column,
    levers,
    shoulders,
    to_trunk,
)
from sequencer.motion.laws.phases import STEP_ACCELERATION, STEP_RATE, smooth_step

_SHORTEST = 1e-6  # [beats] minimum transition: a jump would have no bound


class HeldPosture(NamedTuple):
    """A posture held from `start` to `end`."""

    start: float  # [beats]
    end: float  # [beats]
    posture: Posture


@dataclass(frozen=True, kw_only=True, eq=False)
class Carriage:
    """Postures in order; upright before the first and after the transition out of the last.

    Parameters
    ----------
    body : Body
    held : sequence of HeldPosture
        By start, not overlapping. Between the end of one and the start of the next the body moves from one
        to the other.

    Raises
    ------
    ValueError
        If postures overlap or end before they start, if one follows another without time between them, or
        if a posture moves trunk or head out of the upright column.
    """

    body: Body
    held: tuple[HeldPosture, ...] = ()

    def __post_init__(self) -> None:
        for each in self.held:
            if not each.start <= each.end:  # also catches nan
                raise ValueError(f"a posture ends before it starts: {each.start} … {each.end}")
        for before, after in zip(self.held, self.held[1:], strict=False):
            if after.start < before.end - 1e-9:
                raise ValueError(f"postures overlap: {before.end} … {after.start}")
            if after.start < before.end + _SHORTEST and after.posture != before.posture:
                raise ValueError(f"no time to move from one posture to the next at {after.start}")
        if self.held:
            angles = np.array([each.posture.angles for each in self.held])
            if not np.all(in_column(self.body, angles)):
                raise ValueError("a posture moves the body out of its column")

    @cached_property
    def upright(self) -> bool:
        """Whether the body stays upright throughout."""
        return all(each.posture.upright for each in self.held)

    @cached_property
    def _tables(self) -> tuple[Floats, Floats]:
        """Knots (2k,) [beats] and the angles (2k, 5) held at them."""
        knots = np.array([edge for each in self.held for edge in each[:2]])
        angles = np.array([each.posture.angles for each in self.held]).repeat(2, axis=0)
        return knots, angles

    @cached_property
    def _turns(self) -> tuple[Floats, Floats, Floats]:
        """Transitions that move the body: begin and end (m,) [beats], in order, and what each angle turns by (m, 5) [rad]."""
        knots, angles = self._tables
        jump = np.abs(np.diff(angles, axis=0))
        moving = np.flatnonzero((np.diff(knots) > 0) & np.any(jump > 0, axis=1))
        return knots[moving], knots[moving + 1], jump[moving]

    def angles(self, beats: Floats) -> Floats:
        """Angles at show beats, shape (n, 5) [rad]; exact."""
        return self._angles(beats)[0]

    def _angles(self, beats: Floats) -> tuple[Floats, Floats]:
        """Angles and their rates, each shape (n, 5) [rad and rad/beat]."""
        if self.upright:
            return np.zeros((len(beats), 5)), np.zeros((len(beats), 5))
        knots, angles = self._tables
        k = np.searchsorted(knots, beats, side="right") - 1
        low, high = np.clip(k, 0, None), np.clip(k + 1, None, len(knots) - 1)
        width = knots[high] - knots[low]
        width = np.where(width > 0, width, 1.0)  # before the first and after the last nothing moves
        step, rate, _ = smooth_step((beats - knots[low]) / width)
        jump = angles[high] - angles[low]
        return angles[low] + step[:, None] * jump, (rate / width)[:, None] * jump

    def capsule_ends(self, beats: Floats) -> tuple[Floats, Floats]:
        """Ends of `Body.capsules`, each of shape (capsules, n, 3) [m, body frame]; exact."""
        if self.upright:
            ends = [[getattr(c, end) for c in self.body.capsules] for end in ("start", "end")]
            low, high = (
                np.broadcast_to(np.array(e)[:, None], (len(e), len(beats), 3)) for e in ends
            )
            return low, high
        return capsule_ends(self.body, self.angles(beats))

    def shoulder(self, beats: Floats, side: Side) -> Floats:
        """Rest position of a shoulder, shape (n, 3) [m, body frame]; exact."""
        if self.upright:
            return np.broadcast_to(self.body.shoulder(side), (len(beats), 3))
        return shoulders(self.body, self.angles(beats), side)

    def shoulder_rate(self, beats: Floats, side: Side) -> Floats:
        """Velocity of a shoulder's rest position, shape (n, 3) [m/beat, body frame]; exact."""
        if self.upright:
            return np.zeros((len(beats), 3))
        angles, rates = self._angles(beats)
        about = np.array([0.0, 0.0, self.body.hip_height])
        turn, lean = angles[:, 0], angles[:, 1]
        zero, one = np.zeros_like(turn), np.ones_like(turn)
        # Axes of the nested rotations in the body frame, outermost first.
        axes = (
            np.stack((zero, zero, one), axis=1),
            np.stack((np.cos(turn), np.sin(turn), zero), axis=1),
            np.stack(
                (-np.sin(turn) * np.cos(lean), np.cos(turn) * np.cos(lean), -np.sin(lean)), axis=1
            ),
        )
        speeds = (rates[:, 0], -rates[:, 1], rates[:, 2])
        spin = sum(axis * speed[:, None] for axis, speed in zip(axes, speeds, strict=True))
        return np.asarray(np.cross(spin, self.shoulder(beats, side) - about))

    def beyond(self, beats: Floats, hand: Floats, side: Side) -> Floats:
        """Distance of a hand from the nearest position that its shoulder can move to, shape (n,) [m].

        Parameters
        ----------
        beats : ndarray, shape (n,) [beats]
        hand : ndarray, shape (n, 3) [m, body frame]
        side : {"left", "right"}

        Notes
        -----
        Source: distance to a box, which changes no faster than hand and box move. Exact.
        """
        away = hand - self.shoulder(beats, side)
        if not self.upright:
            away = to_trunk(away, self.angles(beats))
        return _beyond(self.body, away, side)

    def speeds(self, start: Floats, end: Floats) -> tuple[Floats, Floats]:
        """Bounds on n spans of the angles' speeds: turn, lean and side together, and nod and tilt.

        Parameters
        ----------
        start, end : ndarray, shape (n,) [beats]

        Returns
        -------
        trunk, head : ndarray, shape (n,) [rad/beat]
        """
        rates = self._fastest(start, end, 1)
        return rates[:, :3].sum(axis=1), rates[:, 3:].sum(axis=1)

    def capsule_speeds(self, start: Floats, end: Floats) -> Floats:
        """Bound on the speed of every capsule's ends on n spans, shape (capsules, n) [m/beat]."""
        trunk, head = self.speeds(start, end)
        lever = levers(self.body)
        return np.asarray(lever[:, :1] * trunk + lever[:, 1:] * head)

    def shoulder_bounds(self, start: Floats, end: Floats) -> tuple[Floats, Floats]:
        """Bounds on a shoulder's speed [m/beat] and acceleration [m/beat²] on n spans, shape (n,) each.

        Notes
        -----
        Three nested rotations: |p'| ≤ Σ|qᵢ'|·ρ and |p''| ≤ ((Σ|qᵢ'|)² + Σ|qᵢ''|)·ρ, ρ the distance from
        between the hips.
        """
        up = self.body.shoulder_height - self.body.hip_height
        lever = float(np.hypot(self.body.half_shoulder, up))
        rate = self._fastest(start, end, 1)[:, :3].sum(axis=1)
        acceleration = self._fastest(start, end, 2)[:, :3].sum(axis=1)
        return lever * rate, lever * (rate**2 + acceleration)

    @cached_property
    def column_top(self) -> float:
        """Height of the upper end of the column used for distances to others [m]; higher if the body leans."""
        return self.body.column.end[2] if self.upright else self.body.leaning_top

    @property
    def shoulder_reach(self) -> float:
        """Bound on a shoulder's horizontal distance from the body's axis [m].

        Notes
        -----
        A lean by an angle moves a point at height h above the hips sideways by at most h·sin of the angle.
        """
        if self.upright:
            return self.body.half_shoulder
        up = self.body.shoulder_height - self.body.hip_height
        most = np.abs(self._tables[1][:, 1:3]).sum(axis=1).max()
        return float(self.body.half_shoulder + up * np.sin(most))

    @property
    def lowest_shoulder(self) -> float:
        """Lower bound on a shoulder's height [m above the floor].

        Notes
        -----
        A shoulder u above the hips and v aside is cos(lean)·(u·cos(side) ± v·sin(side)) above them.
        """
        body = self.body
        if self.upright:
            return body.shoulder_height
        lean, side = np.abs(self._tables[1][:, 1:3]).max(axis=0)
        up = (body.shoulder_height - body.hip_height) * np.cos(side)
        return float(body.hip_height + np.cos(lean) * (up - body.half_shoulder * np.sin(side)))

    @property
    def edges(self) -> Floats:
        """Beats at which a posture is reached or left, shape (k,)."""
        return np.zeros(0) if self.upright else self._tables[0]

    def part(self, start: float, end: float) -> tuple[Body, tuple[HeldPosture, ...]]:
        """The body, and the postures that decide its motion between two beats."""
        if self.upright:
            return self.body, ()
        ends, starts = self._in_order
        low, high = bisect_right(ends, start) - 1, bisect_left(starts, end)
        return self.body, self.held[max(low, 0) : high + 1]

    @cached_property
    def _in_order(self) -> tuple[list[float], list[float]]:
        """Beats by which each posture and all before it have ended, and from which each and all after it begin."""
        ends = accumulate((each.end for each in self.held), max)
        starts = accumulate((each.start for each in reversed(self.held)), min)
        return list(ends), list(starts)[::-1]

    def held_between(self, start: float, end: float) -> Posture | None:
        """The posture held from one beat to another; None if the body moves there, or no posture is held."""
        if self.upright:
            return UPRIGHT
        return next((p for low, high, p in self.held if low <= start and end <= high), None)

    def _fastest(self, start: Floats, end: Floats, order: int) -> Floats:
        """Bounds on the angles' derivatives on n spans, shape (n, 5)."""
        if self.upright:
            return np.zeros((len(start), 5))
        begins, ends, jump = self._turns
        most = STEP_RATE if order == 1 else STEP_ACCELERATION
        rates = most * jump / ((ends - begins) ** order)[:, None]
        # Each span is looked at for the transitions that run in it only, however long a show is.
        first = np.searchsorted(ends, start, side="right")
        last = np.searchsorted(begins, end, side="left")
        pairs = np.stack([first, np.maximum(last, first)], axis=1).ravel()
        padded = np.concatenate([rates, np.zeros((1, 5))])  # so that an index may be the end
        largest = np.maximum.reduceat(padded, pairs, axis=0)[::2]
        return np.where((first < last)[:, None], largest, 0.0)


def nearest_give(body: Body, away: Floats, side: Side) -> Floats:
    """Point in the box of `Body.shoulder_give` nearest to a hand.

    Parameters
    ----------
    body : Body
    away : ndarray, shape (..., 3) [m, the trunk's frame]
        The hand, relative to the shoulder's rest position.
    side : {"left", "right"}

    Returns
    -------
    place : ndarray, shape (..., 3) [m, the trunk's frame]
        Relative to the shoulder's rest position.

    Notes
    -----
    Source: the nearest point of a box. Exact.
    """
    low, high = body.shoulder_give
    if side == "left":
        low, high = np.array([-high[0], *low[1:]]), np.array([-low[0], *high[1:]])
    return np.asarray(np.clip(away, low, high))


def _beyond(body: Body, away: Floats, side: Side) -> Floats:
    """Distance of points (..., 3), relative to the shoulder's rest position, from the box of `shoulder_give`."""
    return np.asarray(np.linalg.norm(away - nearest_give(body, away, side), axis=-1))


def beyond_upright(body: Body, hand: Floats, side: Side) -> Floats:
    """Distance of hands from the nearest position that the shoulder of an upright body can move to.

    Parameters
    ----------
    body : Body
    hand : ndarray, shape (..., 3) [m, body frame]
    side : {"left", "right"}

    Returns
    -------
    distance : ndarray, shape (...) [m]

    Notes
    -----
    Source: distance to a box. Exact.
    """
    return _beyond(body, hand - body.shoulder(side), side)


@lru_cache(maxsize=512)
def lasting(body: Body, posture: Posture) -> Carriage:
    """One posture at every beat."""
    return Carriage(body=body, held=(HeldPosture(0.0, 1.0, posture),))


def carried(body: Body, blocks: Sequence[tuple[float, float, Posture]], lead: float) -> Carriage:
    """The carriage through blocks: each posture is reached over the gap before it, at most `lead` beats.

    Parameters
    ----------
    body : Body
    blocks : sequence of (start, end, posture)
        By start [beats]; between blocks without a gap, the last half beat of one and the first half beat of
        the next are used for the transition. Blocks with the same posture may overlap, as those of two
        hands do.
    lead : float
        Longest transition into and out of a posture [beats].

    Returns
    -------
    carriage : Carriage
        Upright throughout if every posture is.
    """
    if all(posture.upright for _, _, posture in blocks):
        return Carriage(body=body)
    held: list[HeldPosture] = [HeldPosture(blocks[0][0] - lead - 1.0, blocks[0][0] - lead, UPRIGHT)]
    for start, end, posture in blocks:
        last = held[-1]
        gap = start - last.end
        if gap < 0 and last.posture == posture:
            held[-1] = last._replace(end=max(last.end, end))
        elif gap < 1.0 and last.posture != posture:
            # No gap between them: the transition takes half a beat of each.
            cut = min(0.5, (last.end - last.start) / 2)
            held[-1] = last._replace(end=last.end - cut)
            held.append(HeldPosture(start + min(0.5, (end - start) / 2), end, posture))
        else:
            if gap > 2 * lead:
                held.append(HeldPosture(last.end + lead, start - lead, UPRIGHT))
            held.append(HeldPosture(start, end, posture))
    end = held[-1].end
    held.append(HeldPosture(end + lead, end + lead + 1.0, UPRIGHT))
    return Carriage(body=body, held=tuple(held))
