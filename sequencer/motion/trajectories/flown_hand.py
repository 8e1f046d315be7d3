"""One hand through a whole show as it can be flown: its blocks' flown periods, joined by flown links.

A block with a passive prop is danced as its flown period, whose state at the block's ends is left and reached by flown links:
over the gap where there is one, else over half a beat on either side of the boundary. Where a block or a link cannot be
flown, what is drawn stands in for it, and says so: a drawn link from the flown states at its ends, or the block's law. There
the hand comes back within a beat from where walking, turning and tempo have it at the last flown instant.

What is published are two splines over the whole show at 96 knots a beat: the head's path, through all that, and the hand
that the law of motion gives it in the stage frame, with walking and turning and the tempo of the moment; so that every
distance can be proven on the hulls of their control points. Between knots the hand is off the law of motion by at most
(‖h''‖ + ‖h̃''‖)·δ²/8, under 1 mm for a hand within its limits. The tempo is smoothed: a spline through that of each beat.
Frame: body frame [m], beats, unless stated.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.motion.flown.even_splines import DEGREE, EvenSpline, between
from sequencer.motion.flown.tether import force, held
from sequencer.motion.laws.composed import ROUNDING_UP
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.phases import smooth_step
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.trajectory import Trajectory

SHOW_KNOTS = 96  # a beat
_PER_PIECE = 24  # knots of a piece with bounds of its own
_EASED = 1.0  # [beats] in which a hand comes back to what stands in


class Ground(NamedTuple):
    """Where a performer stands, and how fast the beats go."""

    to_stage: Callable[
        [Floats, Floats], Floats
    ]  # show beats (n,), points (n, 3) [m, body frame] → [m, stage frame]
    to_body: Callable[[Floats, Floats], Floats]  # and back
    beats_a_second: Callable[[Floats], Floats]  # show beats (n,) → [beats/s]


class Course(NamedTuple):
    """Where head and hand are over some beats."""

    start: float  # [show beats]
    end: float  # [show beats]
    at: Callable[[Floats], tuple[Floats, Floats]]  # show beats → head, hand (n, 3) [m, body frame]
    flown: bool  # False: what is drawn stands in


@dataclass(frozen=True, kw_only=True, eq=False)
class FlownHand:
    """Head and hand over a whole show; before and after it they stay.

    Parameters
    ----------
    head, hand : EvenSpline
        In show beats, on the same knots [m, body frame].
    length : float
        Of the tether [m].
    drawn : Trajectory
        What it is drawn as: its spans, and the planes that their laws name.
    courses : tuple of Course
        What they were made of.
    pull : ndarray, shape (knots,) [1]
        On the hand at every knot, in the head's weights; inf where what is drawn stands in.
    """

    head: EvenSpline
    hand: EvenSpline
    length: float
    drawn: Trajectory
    courses: tuple[Course, ...]
    pull: Floats

    def least_pull(self, course: Course) -> float:
        """Least pull at the knots of a course, in the head's weights."""
        return float(np.min(self.pull[self._knots(course)]))

    def hand_acceleration(
        self, course: Course, beats_a_second: Callable[[Floats], Floats]
    ) -> float:
        """Largest acceleration of the hand in the body's frame at the knots of a course and half way between [m/s²]."""
        knots = self._knots(course)
        places: Floats = np.arange(2 * knots.start, 2 * knots.stop - 1, dtype=np.float64)
        beats = self.head.start + places * (self.head.step / 2.0)
        size = np.linalg.norm(self.hand.at(beats, 2), axis=-1)
        return float(np.max(size * beats_a_second(beats) ** 2))

    def _knots(self, course: Course) -> slice:
        first, last = (
            round((beat - self.head.start) / self.head.step) for beat in (course.start, course.end)
        )
        return slice(first, last + 1)

    def at(self, beats: Floats) -> Motion:
        """State at show beats, shape (...); the tether is the direction from hand to head."""
        beats = np.asarray(beats, dtype=np.float64)
        hand = [self.hand.at(beats, order) for order in range(3)]
        line = [self.head.at(beats, order) - own for order, own in enumerate(hand)]
        return held(hand, line, self.drawn.at(beats).plane)

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on contiguous pieces that cover [start, end]."""
        edges, bounds = self._bounds
        inner = edges[(edges > start) & (edges < end)].tolist()
        cuts = [start, *inner, end]
        middles = (np.array(cuts[:-1]) + np.array(cuts[1:])) / 2.0
        which = np.clip(np.searchsorted(edges, middles, side="right") - 1, 0, len(bounds) - 1)
        return tuple(
            (low, high, bounds[k])
            for low, high, k in zip(cuts[:-1], cuts[1:], which.tolist(), strict=True)
        )

    @cached_property
    def _bounds(self) -> tuple[Floats, tuple[Bounds, ...]]:
        """Edges of pieces and their bounds.

        Notes
        -----
        With δ from hand to head and m its size, |δ·δ'| on a span is at most what it is in the middle and half a span of its
        rate, |δ'|² + |δ||δ''|. So m is bounded from below, |m'| = |δ·δ'|/m from above, |d'| ≤ |δ'|/m, and of d'' the part
        along the tether is |d'|², that across it at most (|δ''| + 2|m'||d'|)/m.
        """
        apart = EvenSpline(
            start=self.head.start,
            step=self.head.step,
            coefficients=self.head.coefficients - self.hand.coefficients,
        )
        half = self.head.step / 2.0
        places = np.arange(self.head.spans, dtype=np.float64)
        middles: Floats = self.head.start + half * (2.0 * places + 1.0)
        here, rate = apart.at(middles), apart.at(middles, 1)
        size, first, second = np.linalg.norm(here, axis=-1), apart.largest(1), apart.largest(2)
        along = np.abs(np.sum(here * rate, axis=-1))
        along = along + half * (first**2 + (size + half * first) * second)
        least = np.sqrt(np.maximum(size**2 - 2.0 * half * along, 0.0))
        with np.errstate(divide="ignore"):
            turn = first / least
            bend = np.hypot((second + 2.0 * along / least * turn) / least, turn**2)
        hand = [self.hand.largest(order) for order in range(1, 4)]
        reach = np.linalg.norm(self.hand.controls(0)[..., :2], axis=-1).max(axis=1)
        starts = np.arange(0, self.head.spans, _PER_PIECE)
        most = [
            np.maximum.reduceat(values, starts) * ROUNDING_UP
            for values in (*hand, reach, turn, bend)
        ]
        edges = self.head.start + np.append(starts, self.head.spans) * self.head.step
        return edges, tuple(
            Bounds(
                hand_speed=v, hand_acceleration=a, hand_jerk=j, hand_reach=far, turn_rate=turned, turn_acceleration=bent
            )
            for v, a, j, far, turned, bent in zip(*(own.tolist() for own in most), strict=True)
        )  # fmt: skip


def flown_hand(
    courses: Sequence[Course],
    *,
    length: float,
    drag: float,
    drawn: Trajectory,
    ground: Ground,
) -> FlownHand:
    """The hand through courses that follow each other.

    Parameters
    ----------
    courses : sequence of Course
    length : float
        Of the tether [m].
    drag : float
        Of the head [1/m].
    drawn : Trajectory
        See `FlownHand`.
    ground : Ground

    Raises
    ------
    ValueError
        If they do not follow each other.
    """
    for before, after in pairwise(courses):
        if abs(before.end - after.start) > 1e-6:
            raise ValueError(f"courses must follow each other: {before.end} … {after.start}")
    start, end = courses[0].start, courses[-1].end
    count = max(int(np.ceil((end - start) * SHOW_KNOTS)), DEGREE + 1)
    step = (end - start) / count
    knots: Floats = start + np.arange(count + 1, dtype=np.float64) * step
    head: Floats = np.empty((count + 1, 3))
    hand: Floats = np.empty((count + 1, 3))
    flown: Bools = np.zeros(count + 1, dtype=np.bool_)
    edges = np.array([course.start for course in courses[1:]])
    which = np.searchsorted(edges, knots, side="right")
    for k, course in enumerate(courses):
        own = which == k
        if np.any(own):
            head[own], hand[own] = course.at(np.clip(knots[own], course.start, course.end))
            flown[own] = course.flown
    needed, force = np.array(hand), np.full_like(hand, np.inf)
    rate = smoothed_tempo(knots, ground.beats_a_second)
    for run in _runs(flown):
        at, path = knots[run], ground.to_stage(knots[run], head[run])
        held, force[run] = _needed(at, path, rate, length, drag)
        needed[run] = ground.to_body(at, held)
    off = needed - hand
    aim = hand + off + _eased(off, flown, step) - head
    hand = head + length * aim / np.linalg.norm(aim, axis=-1, keepdims=True)
    pull = np.where(flown, np.linalg.norm(force, axis=-1) / STANDARD_GRAVITY, np.inf)
    return FlownHand(
        head=through_knots(knots, head),
        hand=through_knots(knots, hand),
        length=length,
        drawn=drawn,
        courses=tuple(courses),
        pull=pull,
    )


def _eased(off: Floats, flown: Bools, step: float) -> Floats:
    """How far the hand goes on being off what stands in, shape (n, 3) [m]: as much as at the nearest knots that are flown.

    A tether leans while its performer walks: the hand must not jump back to what is drawn.
    """
    out = np.zeros_like(off)
    borders = np.flatnonzero(np.diff(flown.astype(np.int8)))
    for k in borders.tolist():
        last, way = (k, 1) if flown[k] else (k + 1, -1)
        ahead = np.flatnonzero(flown[last + way :: way])  # until it is flown again
        room = int(ahead[0]) if len(ahead) else len(flown)
        count = min(room, int(np.ceil(_EASED / step)), len(flown[last + way :: way]))
        later: Floats = np.arange(1, count + 1, dtype=np.float64)
        share = smooth_step(later / (count + 1.0))[0]
        out[last + way * (1 + np.arange(count))] += (1.0 - share)[:, None] * off[last]
    return out


def _runs(flown: Bools) -> list[slice]:
    """Knots that are flown one after the other: how a drawing that stands in bends is nothing to what is flown beside it."""
    edges = np.flatnonzero(np.diff(flown.astype(np.int8), prepend=0, append=0))
    pairs = zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True)
    return [slice(first, last) for first, last in pairs if last - first > DEGREE]


def _needed(
    knots: Floats, head: Floats, rate: EvenSpline, length: float, drag: float
) -> tuple[Floats, Floats]:
    """The hand that a head's path needs, and the pull over mass, shape (n, 3) [m and m/s², stage frame], at its knots."""
    path = through_knots(knots, head, end_rates(head, float(knots[1] - knots[0])))
    pace, change = rate.at(knots)[:, :1], rate.at(knots, 1)[:, :1]
    first, second = path.at(knots, 1), path.at(knots, 2)
    pulled = force(pace * first, pace**2 * second + pace * change * first, drag)
    return head + length * pulled / np.linalg.norm(pulled, axis=-1, keepdims=True), pulled


def smoothed_tempo(knots: Floats, beats_a_second: Callable[[Floats], Floats]) -> EvenSpline:
    """The tempo as a spline through that in the middle of each beat, in each of its three columns [beats/s].

    Parameters
    ----------
    knots : ndarray, shape (n,) [show beats]
        It is known from the first to the last.
    beats_a_second : callable
        At show beats (n,).

    Notes
    -----
    Source: this project's own choice. Exact in the middle of each beat.
    """
    first, last = np.floor(knots[0]) - 1.0, np.ceil(knots[-1]) + 1.0
    middles = np.arange(first, last + 0.5, dtype=np.float64) + 0.5
    return through_knots(middles, np.repeat(beats_a_second(middles)[:, None], 3, axis=1))


def end_rates(points: Floats, step: float) -> tuple[Floats, Floats]:
    """First and second derivative at the first and at the last of even points, each shape (2, 3), exact to degree 5.

    Source: one-sided differences of six points (any numerics text).
    """
    first = np.array([-137.0, 300.0, -300.0, 200.0, -75.0, 12.0]) / 60.0
    second = np.array([45.0, -154.0, 214.0, -156.0, 61.0, -10.0]) / 12.0
    start, end = points[:6], points[:-7:-1]
    return (
        np.stack((first @ start / step, second @ start / step**2)),
        np.stack((-first @ end / step, second @ end / step**2)),
    )


def through_knots(
    knots: Floats, points: Floats, ends: tuple[Floats, Floats] | None = None
) -> EvenSpline:
    """The spline through points at even knots, with some derivatives at its ends; at rest there if none are given.

    Parameters
    ----------
    knots : ndarray, shape (n,) [show beats]
    points : ndarray, shape (n, 3) [m]
    ends : pair of ndarray, shape (2, 3) [m/beat and m/beat²], optional

    Notes
    -----
    Source: `even_splines.between`. Exact to rounding.
    """
    still: Floats = np.zeros((2, 3))
    first, last = (still, still) if ends is None else ends
    step = float(knots[-1] - knots[0]) / (len(knots) - 1)
    return between(points, start=float(knots[0]), step=step, first=first, last=last)
