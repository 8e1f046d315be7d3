"""A stretch of a flown hand sought again in its place in the show: in the stage frame, with walking, turning and the tempo.

Blocks and links are flown standing still at a steady tempo; where a walk, a turn or a change of tempo takes the hand past its
limits, the head's path is sought again over that stretch, nearest to what was flown, its ends as they were to the fourth
derivative. Unknown is a spline in the stage frame over beats; its derivatives by time follow from those by beats, with p the
beats of a second and D = p·d/db: D² = p²·d²/db² + p·p'·d/db, and so on.
Source: the chain rule. Frames: stage frame [m] for the path, body frame [m] for what is in the way.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, partial
from math import comb
from operator import itemgetter
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.content_keys import content_key
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.kept import kept
from sequencer.motion.flown.body_space import Room
from sequencer.motion.flown.curve_layout import GAUSS_PLACES, CurveLayout, whole
from sequencer.motion.flown.even_splines import DEGREE, EvenSpline, at_knot, pieces
from sequencer.motion.flown.flown_motion import LEAST_PULL, FlownLimits
from sequencer.motion.flown.optimum import Optimum, Problem, Wanted
from sequencer.motion.flown.seeking import held_to_limits, sought
from sequencer.motion.flown.tether import Flight, drag_of, flight
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.flown_path.flown_hand import Course
from sequencer.motion.trajectories.flown_path.flown_making import (
    Ground,
    end_rates,
    smoothed_tempo,
    through_knots,
)

EASED_KNOTS = (
    12,
    24,
)  # a beat, as many as a period has; and twice as many where those do not hold the limits
_FAR_OVER = 1.0  # share of a limit by which it is missed so far that more knots would not help
AROUND_STRETCH = 1.0  # [beats] beyond the stretch, by which the states at its ends are known
_FINER = 96  # knots of a beat, for those
_TEMPO_AROUND = 8.0  # [beats] after which another smoothing of the tempo has died away
_LOOKS = 16  # a span, its knots among them: there the hand's acceleration has its corners
_WHOLE = 1e-6  # [spans] rounding of a stretch that is whole spans long
_ORDERS = 5


@dataclass(frozen=True, kw_only=True, eq=False)
class StrainedStretch:
    """What is sought again.

    Parameters
    ----------
    start, end : float
        [show beats]
    courses : sequence of Course
        What was flown, from a beat before it to a beat after it.
    prop : Prop
    limits : FlownLimits
    ground : Ground
    room : Room or None
        What may not be touched or left, in the posture that is held; not looked at if None.
    mates : callable or None
        The other hand's prop at show beats (n,), shape (n, m, 7), clearance included [m, body frame].
    content : bytes or None
        All that decides what is found, but the tempo; None if that is not known.
    """

    start: float
    end: float
    courses: Sequence[Course]
    prop: Prop
    limits: FlownLimits
    ground: Ground
    room: Room | None = None
    mates: Any = None
    content: bytes | None = None

    def flown(self, beats: Floats) -> tuple[Floats, Floats]:
        """Head and hand as flown standing still, in their places on the stage, each shape (n, 3) [m, stage frame]."""
        head, hand = np.empty((2, len(beats), 3))
        edges = np.array([each.start for each in self.courses[1:]])
        which = np.searchsorted(edges, beats, side="right")
        for k, course in enumerate(self.courses):
            at = which == k
            if np.any(at):
                own = np.clip(beats[at], course.start, course.end)
                head[at], hand[at] = course.at(own)
        return self.ground.to_stage(beats, head), self.ground.to_stage(beats, hand)

    @cached_property
    def rate(self) -> EvenSpline:
        """The smoothed tempo [beats/s], in each of three columns."""
        return smoothed_tempo(
            np.array([self.start - _TEMPO_AROUND, self.end + _TEMPO_AROUND]),
            self.ground.beats_a_second,
        )


def by_time(rates: Floats) -> Floats:
    """Derivatives by seconds as sums of derivatives by beats.

    Parameters
    ----------
    rates : ndarray, shape (4, n) [beats/s per beat^order]
        Beats a second and its first three derivatives by beats.

    Returns
    -------
    factors : ndarray, shape (5, 5, n) [1/s^order per 1/beat^order]
        Of the k-th derivative by beats in the n-th by seconds.

    Notes
    -----
    Source: module docstring; each step multiplies by p and differentiates, products by Leibniz' rule. Exact.
    """
    many = rates.shape[1]
    jets: Floats = np.zeros((_ORDERS, _ORDERS, many))  # of one n: k, derivative by beats
    jets[0, 0] = 1.0
    out: Floats = np.zeros((_ORDERS, _ORDERS, many))
    out[0] = jets[:, 0]
    for n in range(1, _ORDERS):
        grown: Floats = np.zeros_like(jets)
        grown[:, :-1] += jets[:, 1:]  # c' of y⁽ᵏ⁾
        grown[1:] += jets[:-1]  # c of y⁽ᵏ⁺¹⁾
        jets = np.zeros_like(jets)
        for j in range(_ORDERS - n):
            for i in range(j + 1):
                jets[:, j] += comb(j, i) * rates[i] * grown[:, j - i]
        out[n] = jets[:, 0]
    return out


def eased(stretch: StrainedStretch) -> Course:
    """The stretch as flown in its place: so that limits are held, or missed by as little as was found.

    Parameters
    ----------
    stretch : StrainedStretch
    """
    key = None
    if stretch.content is not None:
        key = content_key(stretch.content, stretch.rate.coefficients)

    def work() -> Floats:
        if key is None:
            return _sought(stretch)
        return kept(
            "eased stretch",
            (key,),
            lambda: _sought(stretch),
            record=lambda own: own.tolist(),
            restore=np.array,
        )

    numbers = work()
    step = (stretch.end - stretch.start) / (len(numbers) - DEGREE)
    return _Eased(stretch, numbers, step).course(key)


def _sought(stretch: StrainedStretch) -> Floats:
    found: list[tuple[float, Floats]] = []
    for knots in EASED_KNOTS:
        problem, start, step = _problem(stretch, knots)
        own = held_to_limits(problem, start, partial(_found_for, stretch, step))
        worst = max(own.missed().values(), default=0.0)
        found.append((worst, own.unknown))
        if worst == 0.0 or worst > _FAR_OVER:
            break
    return min(found, key=itemgetter(0))[1]


def _found_for(stretch: StrainedStretch, step: float, own: Optimum) -> "_Eased":
    return _Eased(stretch, own.unknown, step, own)


class _Eased:
    """A path that was found for a stretch; `flown_motion.FlownMotion` in the stage frame, as far as limits go."""

    def __init__(
        self, stretch: StrainedStretch, unknown: Floats, step: float, found: Optimum | None = None
    ) -> None:
        self.stretch, self.unknown, self.found = stretch, unknown, found
        self.head = EvenSpline(start=stretch.start, step=step, coefficients=unknown)

    def flight(self, beats: Floats) -> Flight:
        """Head, hand and pull at show beats (n,) [stage frame, seconds]."""
        own = np.stack([self.head.at(beats, order) for order in range(_ORDERS)])
        path = np.einsum("okn,kna->ona", _factors(self.stretch, beats), own)
        prop = self.stretch.prop
        return flight(tuple(path), length=prop.length, drag=drag_of(prop))

    def missed(self) -> dict[str, float]:
        """Limits that are missed at the looks, and the share by which each is."""
        count = self.head.spans * _LOOKS
        shares: Floats = np.arange(count + 1, dtype=np.float64) / count
        seen = self.flight(self.stretch.start + (self.stretch.end - self.stretch.start) * shares)
        limits = self.stretch.limits
        pull = float(np.linalg.norm(seen.force, axis=-1).min()) / STANDARD_GRAVITY
        pushed = float(np.linalg.norm(seen.hand_acceleration, axis=-1).max())
        over = {
            "pull": 1.0 - pull / LEAST_PULL,
            "acceleration": pushed / limits.hand_acceleration - 1.0,
        }
        return {name: share for name, share in over.items() if share > 0}

    def course(self, content: bytes | None) -> Course:
        """As a course in the body's frame."""
        ground = self.stretch.ground

        def at(beats: Floats) -> tuple[Floats, Floats]:
            seen = self.flight(beats)
            return ground.to_body(beats, seen.head), ground.to_body(beats, seen.hand)

        return Course(self.stretch.start, self.stretch.end, at, flown=True, content=content)


def _factors(stretch: StrainedStretch, beats: Floats) -> Floats:
    return by_time(np.stack([stretch.rate.at(beats, order)[:, 0] for order in range(4)]))


def _problem(stretch: StrainedStretch, knots: int) -> tuple[Problem, Floats, float]:
    """The problem with some knots a beat, coefficients to start from, and the step [beats]."""
    step = _step(stretch, knots)
    spans = round((stretch.end - stretch.start) / step)
    beats = stretch.start + (np.arange(spans, dtype=np.float64)[:, None] + GAUSS_PLACES) * step
    flat = beats.ravel()
    head, hand = stretch.flown(flat)
    shape = beats.shape
    inward = (hand - head) / np.linalg.norm(hand - head, axis=-1, keepdims=True)
    own = np.stack([pieces(GAUSS_PLACES, order) / step**order for order in range(_ORDERS)])
    factors = _factors(stretch, flat).reshape(_ORDERS, _ORDERS, *shape)
    paced = np.einsum("oqkp,qpj->kopj", factors, own)
    corners = [stretch.ground.to_body(flat, np.broadcast_to(e, (len(flat), 3))) for e in np.eye(3)]
    origin = stretch.ground.to_body(flat, np.zeros((len(flat), 3)))
    turned = np.stack([corner - origin for corner in corners], axis=-1)
    grid = _layout(
        spans, step, paced, turned.reshape(1, *shape, 3, 3), origin.reshape(1, *shape, 3)
    )
    mates = None
    if stretch.mates is not None:
        near = stretch.mates(flat)
        mates = near.reshape(*shape, 1, *near.shape[1:])
    problem = Problem(
        grid,
        Wanted(
            head=head.reshape(*shape, 3), hand=hand.reshape(*shape, 3),
            inward=inward.reshape(*shape, 3), length=stretch.prop.length,
            drag=drag_of(stretch.prop),
            limits=sought(stretch.limits)._replace(speed=float("inf")), room=stretch.room,
            mates=mates,
        ),
    )  # fmt: skip
    start = problem.drawn()
    for ends, beat in ((slice(None, DEGREE), stretch.start), (slice(-DEGREE, None), stretch.end)):
        start[ends] = at_knot(_state(stretch, beat), step)
    return problem, start, step


def _step(stretch: StrainedStretch, knots: int) -> float:
    """Of the knots of what is sought [beats]."""
    length = stretch.end - stretch.start
    return length / max(int(np.ceil(length * knots - _WHOLE)), 2 * DEGREE)


def _layout(spans: int, step: float, paced: Floats, frames: Floats, origins: Floats) -> CurveLayout:
    grid = whole(spans, step)
    free = np.ones(grid.count, dtype=np.bool_)
    free[:DEGREE] = free[-DEGREE:] = False
    return replace(grid, free=free, paced=paced, frames=frames, origins=origins)


def _state(stretch: StrainedStretch, beat: float) -> Floats:
    """The head and its first four derivatives by beats, shape (5, 3) [stage frame], by a spline through what was flown."""
    knots: Floats = beat + np.arange(-_FINER, _FINER + 1, dtype=np.float64) * (
        AROUND_STRETCH / _FINER
    )
    head = stretch.flown(knots)[0]
    path = through_knots(knots, head, end_rates(head, float(knots[1] - knots[0])))
    return np.stack([path.at(np.array([beat]), order)[0] for order in range(_ORDERS)])
