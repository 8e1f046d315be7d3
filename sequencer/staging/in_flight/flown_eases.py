"""Where a walk, a turn or a change of tempo takes a flown hand past its limits, it is flown again in its place.

Each such stretch, with four beats on either side of it, is sought again in the stage frame (`motion.trajectories.flown_eased`).
It is taken if the hand that comes of it holds its limits there, or misses them by less than before; what is strained then, the
check tells.
"""

from collections.abc import Callable, Sequence
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.content_keys import content_key
from sequencer.geometry.bodies import Side
from sequencer.motion.flown.apart import prop_capsules
from sequencer.motion.flown.body_space import BodySpace
from sequencer.motion.flown.flown_motion import LEAST_PULL, FlownLimits
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.trajectories.flown_path.flown_eased import (
    AROUND_STRETCH,
    EASED_KNOTS,
    StrainedStretch,
    eased,
)
from sequencer.motion.trajectories.flown_path.flown_hand import SHOW_KNOTS, Course, FlownHand
from sequencer.motion.trajectories.flown_path.flown_making import Ground, clipped

STRAINED = 1.1  # times a limit: less is within what the tempo of a song wavers by
AROUND_STRAIN = 4.0  # [beats]
_AROUND = round(AROUND_STRAIN * SHOW_KNOTS)  # [knots]
# [knots] more, within which a stretch begins and ends where the hand is least hurried: where it turns sharply, what is sought
# could not leave what was flown without hurry. What is strained after all is sought with the next.
_CALMS = (SHOW_KNOTS, SHOW_KNOTS // 4, 2 * SHOW_KNOTS)
_PART = SHOW_KNOTS // EASED_KNOTS[0]  # [knots]
_SPARE = 0.01  # [m] from the other prop


def strain_of(hand: FlownHand, course: Course, limits: FlownLimits, ground: Ground) -> float:
    """By how much a hand misses the limits of pull and acceleration on a course, as a share; 0 where it is not strained.

    Parameters
    ----------
    hand : FlownHand
    course : Course
    limits : FlownLimits
    ground : Ground
    """
    pushed = hand.hand_acceleration(course, ground.beats_a_second) / limits.hand_acceleration
    pull = hand.least_pull(course) / LEAST_PULL
    return max(1.0 - pull if pull < 1.0 else 0.0, pushed - 1.0 if pushed > STRAINED else 0.0)


def eased_hand(
    dancer: Dancer,
    side: Side,
    hand: FlownHand,
    *,
    limits: FlownLimits,
    ground: Ground,
    other: PropTrajectory | None,
    made: Callable[[Sequence[Course]], FlownHand],
) -> FlownHand:
    """A flown hand, with every stretch that is strained and can be eased flown again.

    Parameters
    ----------
    dancer : Dancer
    side : {"left", "right"}
    hand : FlownHand
    limits : FlownLimits
    ground : Ground
    other : trajectory or None
        Of the other hand; kept clear of if it is flown.
    made : callable
        The hand of some courses.
    """
    for calm in _CALMS:
        found = [
            eased(_stretch(dancer, side, hand, span, limits, ground, other))
            for span in _windows(hand, limits, ground, calm)
        ]
        if not found:
            break
        hand = _less_strained(hand, found, limits, ground, made)
    return hand


def _less_strained(
    hand: FlownHand,
    found: list[Course],
    limits: FlownLimits,
    ground: Ground,
    made: Callable[[Sequence[Course]], FlownHand],
) -> FlownHand:
    """The hand with those of some courses in their place that are less strained in it than before."""
    before = {course: strain_of(hand, course, limits, ground) for course in found}
    while found:
        out = made(_with(hand.courses, found))
        eases = [each for each in found if strain_of(out, each, limits, ground) < before[each]]
        if len(eases) == len(found):
            return out
        found = eases
    return hand


def _windows(
    hand: FlownHand, limits: FlownLimits, ground: Ground, calm: int
) -> list[tuple[float, float]]:
    """Stretches to seek again [show beats]: what is strained and some beats about it, within what is flown."""
    step, first = hand.head.step, hand.head.start
    knots: Floats = first + np.arange(len(hand.pull), dtype=np.float64) * step
    spans = hand.pushes(ground.beats_a_second)
    push = np.maximum(np.append(spans[0], spans), np.append(spans, spans[-1]))  # beside each knot
    out: list[tuple[float, float]] = []
    for low, high in _runs(hand.courses):
        inside = (knots > low + step) & (knots < high - step)
        bad = inside & ((hand.pull < LEAST_PULL) | (push > STRAINED * limits.hand_acceleration))
        ends = [round((beat - first) / step) for beat in (low, high)]
        for group in _groups(np.flatnonzero(bad), 2 * (_AROUND + calm)):
            start, end = _about(push, (int(group[0]), int(group[-1])), (ends[0], ends[1]), calm)
            out.append((first + step * start, first + step * end))
    return out


def _about(
    push: Floats, bad: tuple[int, int], inside: tuple[int, int], calm: int
) -> tuple[int, int]:
    """The first and the last knot of a stretch about some that are strained, from the lowest to the highest that there is.

    It is whole parts long, so that every knot of what is sought is one of those where head and hand are published: a spline
    through them does not overshoot where the hand's acceleration has a corner.
    """
    (low, high), (first, last) = inside, (bad[0] - _AROUND, bad[1] + _AROUND)
    begins = np.arange(max(first - calm, low), max(first, low) + 1)
    start = int(begins[np.argmin(push[begins])])
    places = np.arange(start, min(last + calm, high, len(push) - 1) + 1, _PART)
    ends = places[places >= last]
    return start, int(ends[np.argmin(push[ends])] if len(ends) else places[-1])


def _groups(places: Ints, apart: int) -> list[Ints]:
    """Increasing places, those together that are at most so far apart."""
    if not len(places):
        return []
    return np.split(places, np.flatnonzero(np.diff(places) > apart) + 1)


def _runs(courses: Sequence[Course]) -> list[tuple[float, float]]:
    """Where everything is flown, course after course."""
    out: list[tuple[float, float]] = []
    for before, course in pairwise((None, *courses)):
        if course is None or not course.flown:
            continue
        if before is not None and before.flown:
            out[-1] = (out[-1][0], course.end)
        else:
            out.append((course.start, course.end))
    return out


def _stretch(
    dancer: Dancer,
    side: Side,
    hand: FlownHand,
    span: tuple[float, float],
    limits: FlownLimits,
    ground: Ground,
    other: PropTrajectory | None,
) -> StrainedStretch:
    low, high = span
    prop, posture = dancer.props[side], dancer.carriage.held_between(low, high)
    room = None
    if posture is not None:
        space = BodySpace(body=dancer.body, posture=posture, side=side, prop=prop)
        room = space.room()
    mates = None
    if isinstance(other, FlownHand):
        held = dancer.props["left" if side == "right" else "right"]

        def mates(beats: Floats) -> Floats:
            near = prop_capsules(held, other.head.at(beats), other.hand.at(beats))
            near[..., 6] += _SPARE
            return near

    return StrainedStretch(
        start=low, end=high, courses=hand.courses, prop=prop, limits=limits, ground=ground, room=room,
        mates=mates, content=_content(dancer, side, hand, span, limits, ground, other),
    )  # fmt: skip


def _content(
    dancer: Dancer,
    side: Side,
    hand: FlownHand,
    span: tuple[float, float],
    limits: FlownLimits,
    ground: Ground,
    other: PropTrajectory | None,
) -> bytes | None:
    """All that decides what is found for a stretch, but the tempo; None if that is not known."""
    low, high = span
    start, end = low - AROUND_STRETCH, high + AROUND_STRETCH
    near = clipped(hand.courses, start, end)
    if near is None or ground.part is None:
        return None
    beside = None
    if isinstance(other, FlownHand):
        held = dancer.props["left" if side == "right" else "right"]
        beside = other.part(low, high), held
    return content_key(
        "eased stretch", span, near, limits, ground.part(start, end), dancer.props[side],
        dancer.body, dancer.carriage.held_between(low, high), side, beside,
    )  # fmt: skip


def _with(courses: Sequence[Course], found: Sequence[Course]) -> tuple[Course, ...]:
    """Courses with others in their place over some beats."""
    out = list(courses)
    for new in found:
        kept = []
        for each in out:
            if each.end <= new.start or each.start >= new.end:
                kept.append(each)
                continue
            kept += [
                each._replace(start=low, end=high)
                for low, high in ((each.start, new.start), (new.end, each.end))
                if high > low
            ]
        out = sorted([*kept, new], key=lambda each: each.start)
    return tuple(out)
