"""The hand through a whole show, made of courses that follow each other, slice by slice.

At each knot the head is where its course has it; the hand is what the law of motion gives in the stage frame, with walking and
turning and the tempo of the moment, or, where what is drawn stands in, comes back within a beat to the drawing. The tempo is
smoothed: a spline through that of each beat. Frame: body frame [m], beats, unless stated.
"""

from collections.abc import Callable, Sequence
from functools import partial
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.content_keys import content_key
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.motion.flown.even_splines import DEGREE, EvenSpline, between
from sequencer.motion.flown.tether import force
from sequencer.motion.laws.phases import smooth_step
from sequencer.motion.trajectories.flown_path.flown_bounds import paces_along, pull_bounds
from sequencer.motion.trajectories.flown_path.flown_hand import (
    SHOW_KNOTS,
    Course,
    FlownHand,
    Torn,
    slices_between,
)
from sequencer.motion.trajectories.flown_path.hand_slices import HandSlice, kept_slice
from sequencer.motion.trajectories.trajectory import Trajectory

# Knots on either side that decide a slice: a hand comes back within a beat (96 knots) to what stands in, and what a knot
# does to a spline through it dies away by 0.43 a knot, in a hundred knots far below rounding.
SLICE_MARGIN = 288
_TEMPO_AROUND = (
    48.0  # [beats] after which another smoothing of the tempo has died away below rounding
)
_ON_KNOT = 1e-6  # [knots]
_EASED = 1.0  # [beats] in which a hand comes back to what stands in


class Ground(NamedTuple):
    """Where a performer stands, and how fast the beats go."""

    to_stage: Callable[
        [Floats, Floats], Floats
    ]  # show beats (n,), points (n, 3) [m, body frame] → [m, stage frame]
    to_body: Callable[[Floats, Floats], Floats]  # and back
    beats_a_second: Callable[[Floats], Floats]  # show beats (n,) → [beats/s]
    # show beats, from and to → all that decides the place between them; where there is none, nothing is kept
    part: Callable[[float, float], bytes] | None = None


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
    own = _Courses(courses, length, drag, ground)
    first = int(np.ceil(courses[0].start * SHOW_KNOTS - _ON_KNOT))
    last = max(int(np.floor(courses[-1].end * SHOW_KNOTS + _ON_KNOT)), first + DEGREE + 1)
    spans = slices_between(first, last)
    windows = [
        (max(low - SLICE_MARGIN, first), min(high + SLICE_MARGIN, last)) for low, high in spans
    ]
    keys = [own.key(low, high, *window) for (low, high), window in zip(spans, windows, strict=True)]
    made = [
        kept_slice(key, partial(own.made, low, high, window, last_one=high == last))
        for key, (low, high), window in zip(keys, spans, windows, strict=True)
    ]
    return joined_slices(
        made, keys, first=first, length=length, drawn=drawn, courses=tuple(courses)
    )


def joined_slices(
    made: Sequence[HandSlice],
    keys: Sequence[bytes | None],
    *,
    first: int,
    length: float,
    drawn: Trajectory,
    courses: tuple[Course, ...],
    torn: tuple[Torn, ...] = (),
) -> FlownHand:
    """The hand of slices that follow each other.

    Parameters
    ----------
    made : sequence of HandSlice
    keys : sequence of bytes or None
        By which each is kept.
    first : int
        Number of its first knot, from beat 0.
    length, drawn, courses, torn
        See `FlownHand`.
    """
    head, hand = (
        EvenSpline(
            start=first / SHOW_KNOTS,
            step=1.0 / SHOW_KNOTS,
            coefficients=np.concatenate(columns),
        )
        for columns in (tuple(each.head for each in made), tuple(each.hand for each in made))
    )
    return FlownHand(
        head=head, hand=hand, length=length, drawn=drawn, courses=courses,
        pull=np.concatenate([each.pull for each in made]),
        most_pull=np.concatenate([each.most_pull for each in made]), slices=tuple(keys), torn=torn,
    )  # fmt: skip


class _Courses(NamedTuple):
    """Courses to be made into a hand, slice by slice: what is made of one depends on `SLICE_MARGIN` knots on either side at most."""

    courses: Sequence[Course]
    length: float
    drag: float
    ground: Ground

    def key(self, first: int, last: int, low: int, high: int) -> bytes | None:
        """All that decides a slice; None if that is not known."""
        if self.ground.part is None:
            return None
        start, end = low / SHOW_KNOTS, high / SHOW_KNOTS
        near = clipped(self.courses, start, end)
        if near is None:
            return None
        _, paces = _paces(start, end, self.ground.beats_a_second)
        return content_key(
            "flown slice", near, (first, last, low, high), self.ground.part(start, end), paces,
            self.length, self.drag,
        )  # fmt: skip

    def made(self, first: int, last: int, window: tuple[int, int], *, last_one: bool) -> HandSlice:
        """The coefficients and pulls from one knot to another, from the knots in a window about them."""
        low, high = window
        knots: Floats = np.arange(low, high + 1, dtype=np.float64) / SHOW_KNOTS
        places = slice(first - low, last - low + (DEGREE if last_one else 0))
        pulls = slice(first - low, last - low + (1 if last_one else 0))
        head, hand, pull, most = self._places(knots, pulls)
        return HandSlice(
            through_knots(knots, head).coefficients[places],
            through_knots(knots, hand).coefficients[places],
            pull[pulls],
            most[pulls],
        )

    def _places(self, knots: Floats, pulls: slice) -> tuple[Floats, Floats, Floats, Floats]:
        """Head and hand at knots that follow each other, and bounds on the pull beside some of them."""
        courses, length, drag, ground = self
        count, step = len(knots) - 1, 1.0 / SHOW_KNOTS
        head: Floats = np.empty((count + 1, 3))
        hand: Floats = np.empty((count + 1, 3))
        flown: Bools = np.zeros(count + 1, dtype=np.bool_)
        edges = np.array([course.start for course in courses[1:]])
        which = np.searchsorted(edges, knots, side="right")
        for k in np.unique(which).tolist():
            course, own = courses[k], which == k
            head[own], hand[own] = course.at(np.clip(knots[own], course.start, course.end))
            flown[own] = course.flown
        needed = np.array(hand)
        pull, most = np.full(count + 1, np.inf), np.zeros(count + 1)
        rate = _rate(knots, ground.beats_a_second)
        for run in _runs(flown):
            at, path = knots[run], ground.to_stage(knots[run], head[run])
            some = slice(max(run.start, pulls.start), min(run.stop, pulls.stop))
            felt = slice(some.start - run.start, some.stop - run.start)
            held, least, largest = _needed(at, path, rate, length, drag, felt)
            needed[run] = ground.to_body(at, held)
            if some.start < some.stop:
                pull[some], most[some] = least, largest
        off = needed - hand
        aim = hand + off + _eased(off, flown, step) - head
        hand = head + length * aim / np.linalg.norm(aim, axis=-1, keepdims=True)
        return head, hand, pull / STANDARD_GRAVITY, most / STANDARD_GRAVITY


def clipped(
    courses: Sequence[Course], low: float, high: float
) -> list[tuple[float, float, bool, bytes]] | None:
    """All that decides what courses hold from one beat to another; None if that is not known of one of them."""
    out = []
    for each in courses:
        if each.start <= high and each.end >= low:
            if each.content is None:
                return None
            out.append((max(each.start, low), min(each.end, high), each.flown, each.content))
    return out


def _rate(knots: Floats, beats_a_second: Callable[[Floats], Floats]) -> EvenSpline:
    """The smoothed tempo about some knots, the same wherever they begin and end."""
    middles, paces = _paces(float(knots[0]), float(knots[-1]), beats_a_second)
    return through_knots(middles, np.repeat(paces[:, None], 3, axis=1))


def _paces(
    low: float, high: float, beats_a_second: Callable[[Floats], Floats]
) -> tuple[Floats, Floats]:
    """Middles of the beats that decide the smoothed tempo between two beats, and the tempo there."""
    first, last = np.floor(low) - _TEMPO_AROUND, np.ceil(high) + _TEMPO_AROUND
    middles: Floats = np.arange(first, last, dtype=np.float64) + 0.5
    return middles, np.asarray(beats_a_second(middles), dtype=np.float64)


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
    knots: Floats, head: Floats, rate: EvenSpline, length: float, drag: float, felt: slice
) -> tuple[Floats, Floats, Floats]:
    """The hand that a head's path needs at its knots, and bounds on the pull over mass on the spans beside some of them.

    Shape (n, 3) [m, stage frame], and (k,) twice [m/s²].
    """
    path = through_knots(knots, head, end_rates(head, float(knots[1] - knots[0])))
    pace, change = (_at_knots(partial(paces_along, rate, path, order=order)) for order in (0, 1))
    first, second = (_at_knots(partial(path.on_each_span, order=order)) for order in (1, 2))
    pulled = force(pace * first, pace**2 * second + pace * change * first, drag)
    held = head + length * pulled / np.linalg.norm(pulled, axis=-1, keepdims=True)
    if felt.start >= felt.stop:
        return held, np.zeros(0), np.zeros(0)
    low, high = max(felt.start - 1, 0), min(felt.stop, path.spans)
    near = EvenSpline(
        start=path.start + low * path.step,
        step=path.step,
        coefficients=path.coefficients[low : high + DEGREE],
    )
    least, most = pull_bounds(near, rate, drag)
    after = np.arange(felt.start, felt.stop)
    beside = np.maximum(after - 1, 0) - low, np.minimum(after, path.spans - 1) - low
    return (
        held,
        np.minimum(least[beside[0]], least[beside[1]]),
        np.maximum(most[beside[0]], most[beside[1]]),
    )


def _at_knots(on_each_span: Callable[[float], Floats]) -> Floats:
    """What is known at any one place of every span, where each begins and where the last ends."""
    return np.concatenate([on_each_span(0.0), on_each_span(1.0)[-1:]])


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
