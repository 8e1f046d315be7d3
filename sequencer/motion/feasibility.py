"""What one performer's props do to themselves and their owner, proven over a whole course.

Four questions for every stretch of a course, in the body frame [m] and in beats: how far the hand is
from the end of the arm, how hard the tether pulls, how close it comes to the own trunk, head and legs,
and how close to the other prop. Each is a function of time with a proven Lipschitz constant, searched
by branch and bound (geometry/certified.py), so no moment is missed.

    arm's length − |h − shoulder|      changes at most at |h'|
    T/m = λ²·A − g·d_z                 at most at λ²·(2r|d'||d''| + |d'||h''| + |h'''|) + g|d'|
    distance of tether or head         at most at |h'| + r|d'|; of two props, at the sum of both
Not looked at: the arms, clothing and hair, and what the floor path adds to the forces.
Source: docs/motion.md, section 6.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.certified import Sample, search
from sequencer.geometry.distances import segment_segment
from sequencer.motion.course import Course
from sequencer.motion.law import Bounds
from sequencer.motion.props import TetheredProp
from sequencer.motion.state import Motion
from sequencer.motion.tension import GRAVITY

TETHER_RADIUS = 0.01  # [m] half the thickness of a chain or leash; common practice
REACH_ERROR = 0.002  # [m]
GAP_ERROR = 0.005  # [m]
PULL_ERROR = 0.05  # [m/s²]

Rates = Callable[[Floats], Floats]  # beats → beats a second


@dataclass(frozen=True, slots=True, kw_only=True)
class Least:
    """The smallest value over one stretch, proven to the error of its question.

    A stretch that stays above what is enough carries that value and no moment.
    """

    value: float
    beat: float  # nan where it stays above
    label: int  # which part of the body, or of the two props; -1 where it stays above


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Stretches:
    """Stretches of a course cut where its bounds or the tempo change; k stretches, n pieces."""

    edges: Floats  # (k + 1,) [beats]
    group: Ints  # (n,)
    start: Floats  # (n,) [beats]
    end: Floats  # (n,) [beats]
    bounds: tuple[Bounds, ...]  # n of them

    def columns(self, *names: str) -> list[Floats]:
        """Some of the bounds as arrays of shape (n,)."""
        return [np.array([getattr(b, name) for b in self.bounds]) for name in names]


def stretches(course: Course, edges: Sequence[float], *, whole_beats: bool = False) -> Stretches:
    """A course cut at given edges.

    Parameters
    ----------
    course : Course
    edges : sequence of float
        Rising [beats]; one stretch from each to the next.
    whole_beats : bool
        Whether to cut at every beat too, where a tempo map may change.
    """
    cuts = np.asarray(edges, dtype=np.float64)
    group: list[int] = []
    start: list[float] = []
    end: list[float] = []
    bounds: list[Bounds] = []
    for k, (low, high) in enumerate(pairwise(cuts.tolist())):
        for left, right, own in course.pieces(low, high):
            inner = np.arange(np.floor(left) + 1, right) if whole_beats else np.zeros(0)
            knots = [left, *inner.tolist(), right]
            for a, b in pairwise(knots):
                if b - a > 1e-12:
                    group.append(k)
                    start.append(a)
                    end.append(b)
                    bounds.append(own)
    return Stretches(
        edges=cuts,
        group=np.array(group, dtype=np.int64),
        start=np.array(start),
        end=np.array(end),
        bounds=tuple(bounds),
    )


def reach_left(course: Course, edges: Sequence[float], *, side: Side, body: Body) -> list[Least]:
    """Arm's length less the hand's distance from its shoulder [m], smallest on each stretch."""
    cut = stretches(course, edges)
    (speed,) = cut.columns("hand_speed")
    shoulder = body.shoulder(side)

    def value(t: Floats) -> tuple[Floats, Ints]:
        away = np.linalg.norm(course.at(t).hand - shoulder, axis=-1)
        return body.arm_length - away, np.zeros(len(t), dtype=np.int64)

    return _least(cut, value, speed, REACH_ERROR, 0.0)


def pull_left(
    course: Course, edges: Sequence[float], *, prop: TetheredProp, rates: Rates
) -> list[Least]:
    """Tension over mass [m/s²], smallest on each stretch; below 0 the tether is slack.

    Notes
    -----
    `rates` may change at whole beats only, as a tempo map does; the pieces are cut there.
    """
    cut = stretches(course, edges, whole_beats=True)
    hand2, hand3, turn1, turn2 = cut.columns(
        "hand_acceleration", "hand_jerk", "turn_rate", "turn_acceleration"
    )
    r = prop.length
    pace = rates((cut.start + cut.end) / 2)
    slope = pace**2 * (2 * r * turn1 * turn2 + turn1 * hand2 + hand3) + GRAVITY * turn1

    def value(t: Floats) -> tuple[Floats, Ints]:
        motion = course.at(t)
        outward = r * np.sum(motion.tether_rate**2, axis=-1) - np.sum(
            motion.tether * motion.hand_acceleration, axis=-1
        )
        pull = rates(t) ** 2 * outward - GRAVITY * motion.tether[:, 2]
        return pull, np.zeros(len(t), dtype=np.int64)

    return _least(cut, value, slope, PULL_ERROR, 0.0)


def body_gap(
    course: Course, edges: Sequence[float], *, prop: TetheredProp, body: Body, near: float = 0.0
) -> list[Least]:
    """Gap between tether or wick and the own trunk, head and legs [m]; label indexes `Body.capsules`."""
    cut = stretches(course, edges)
    hand1, turn1 = cut.columns("hand_speed", "turn_rate")
    capsules = body.capsules

    def value(t: Floats) -> tuple[Floats, Ints]:
        motion = course.at(t)
        head = motion.head(prop.length)
        gaps = []
        for capsule in capsules:
            low, high = (
                np.broadcast_to(np.array(end), head.shape) for end in (capsule.start, capsule.end)
            )
            line = segment_segment(motion.hand, head, low, high)[0] - TETHER_RADIUS
            ball = segment_segment(head, head, low, high)[0] - prop.wick_radius
            gaps.append(np.minimum(line, ball) - capsule.radius)
        stacked = np.stack(gaps)
        return stacked.min(axis=0), stacked.argmin(axis=0).astype(np.int64)

    return _least(cut, value, hand1 + prop.length * turn1, GAP_ERROR, near)


def props_gap(
    left: tuple[Course, TetheredProp], right: tuple[Course, TetheredProp], edges: Sequence[float]
) -> list[Least]:
    """Gap between one performer's two props [m].

    Labels: 0 tether and tether, 1 left head and right tether, 2 right head and left tether, 3 heads.
    """
    cuts = [stretches(course, edges) for course, _ in (left, right)]
    both = np.unique(np.concatenate([*(c.start for c in cuts), *(c.end for c in cuts)]))
    both = both[np.concatenate(([True], np.diff(both) > 1e-12))]
    start, end = both[:-1], both[1:]
    middle = (start + end) / 2
    slope = np.zeros(len(middle))
    for cut, (_, prop) in zip(cuts, (left, right), strict=True):
        hand1, turn1 = cut.columns("hand_speed", "turn_rate")
        row = np.clip(np.searchsorted(cut.start, middle, side="right") - 1, 0, len(cut.start) - 1)
        slope += (hand1 + prop.length * turn1)[row]
    group = np.clip(np.searchsorted(cuts[0].edges, middle, side="right") - 1, 0, len(edges) - 2)
    joint = Stretches(
        edges=cuts[0].edges, group=group.astype(np.int64), start=start, end=end, bounds=()
    )

    def value(t: Floats) -> tuple[Floats, Ints]:
        a, b = left[0].at(t), right[0].at(t)
        ends = _ends(a, left[1]), _ends(b, right[1])
        wicks = left[1].wick_radius, right[1].wick_radius
        gaps = np.stack(
            (
                segment_segment(*ends[0], *ends[1])[0] - 2 * TETHER_RADIUS,
                segment_segment(ends[0][1], ends[0][1], *ends[1])[0] - wicks[0] - TETHER_RADIUS,
                segment_segment(*ends[0], ends[1][1], ends[1][1])[0] - wicks[1] - TETHER_RADIUS,
                np.linalg.norm(ends[0][1] - ends[1][1], axis=-1) - sum(wicks),
            )
        )
        return gaps.min(axis=0), gaps.argmin(axis=0).astype(np.int64)

    return _least(joint, value, slope, GAP_ERROR, 0.0)


def _ends(motion: Motion, prop: TetheredProp) -> tuple[Floats, Floats]:
    return motion.hand, motion.head(prop.length)


def _least(
    cut: Stretches,
    value: Callable[[Floats], tuple[Floats, Ints]],
    slope: Floats,
    error: float,
    enough: float,
) -> list[Least]:
    """Smallest value of each stretch; of one that stays above `enough` only that it does."""

    def evaluate(rows: Ints, t: Floats, half: Floats, _enough: Floats) -> Sample:
        here, label = value(t)
        slack = slope[rows] * half
        return Sample(value=here, lower=here - slack, upper=here + slack, label=label)

    count = len(cut.edges) - 1
    found = search(
        evaluate, group=cut.group, start=cut.start, end=cut.end,
        required=np.full(count, -np.inf), best=np.full(count, enough + error), tolerance=error,
    )  # fmt: skip
    return [
        Least(value=float(found.value[k]), beat=float(found.at[k]), label=int(found.label[k]))
        for k in range(count)
    ]
