"""Where a walk, a turn or a change of tempo takes a flown hand past its limits, it is flown again in its place.

Each such stretch, with four beats on either side of it, is sought again in the stage frame (`motion.trajectories.flown_eased`).
It is taken if the hand that comes of it holds its limits there; else what was flown stays, and the check tells that it is strained.
"""

from collections.abc import Callable, Sequence
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Side
from sequencer.kept import content_key
from sequencer.motion.flown.apart import prop_capsules
from sequencer.motion.flown.body_space import BodySpace
from sequencer.motion.flown.flown_motion import LEAST_PULL, FlownLimits
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.trajectories.flown_eased import AROUND_STRETCH, StrainedStretch, eased
from sequencer.motion.trajectories.flown_hand import Course, FlownHand, Ground, clipped

STRAINED = 1.1  # times a limit: less is within what the tempo of a song wavers by
AROUND_STRAIN = 4.0  # [beats]
_SPARE = 0.01  # [m] from body and other prop


def is_strained(hand: FlownHand, course: Course, limits: FlownLimits, ground: Ground) -> bool:
    """Whether a hand misses a limit of pull or acceleration on a course.

    Parameters
    ----------
    hand : FlownHand
    course : Course
    limits : FlownLimits
    ground : Ground
    """
    pushed = hand.hand_acceleration(course, ground.beats_a_second)
    slack = hand.least_pull(course) < LEAST_PULL
    return bool(slack or pushed > STRAINED * limits.hand_acceleration)


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
    windows = _windows(hand, limits, ground)
    found = []
    for low, high in windows:
        course = eased(_stretch(dancer, side, hand, (low, high), limits, ground, other))
        if course is not None:
            found.append(course)
    while found:
        out = made(_with(hand.courses, found))
        held = [course for course in found if not is_strained(out, course, limits, ground)]
        if len(held) == len(found):
            return out
        found = held
    return hand


def _windows(hand: FlownHand, limits: FlownLimits, ground: Ground) -> list[tuple[float, float]]:
    """Stretches to seek again [show beats]: what is strained and some beats about it, within what is flown."""
    step, first = hand.head.step, hand.head.start
    knots: Floats = first + np.arange(len(hand.pull), dtype=np.float64) * step
    # at the knots and half way, as what is strained is told
    seen = hand.pushes(ground.beats_a_second)
    push = np.array(seen[::2])
    push[:-1] = np.maximum(push[:-1], seen[1::2])
    push[1:] = np.maximum(push[1:], seen[1::2])
    out: list[tuple[float, float]] = []
    for low, high in _runs(hand.courses):
        inside = (knots > low + step) & (knots < high - step)
        bad = inside & ((hand.pull < LEAST_PULL) | (push > STRAINED * limits.hand_acceleration))
        for beat in knots[bad].tolist():
            start = max(beat - AROUND_STRAIN, low)
            end = min(beat + AROUND_STRAIN, high)
            if out and start <= out[-1][1]:
                out[-1] = (out[-1][0], max(out[-1][1], end))
            else:
                out.append((start, end))
    # on the knots, where head and hand are published
    return [
        (first + step * round((low - first) / step), first + step * round((high - first) / step))
        for low, high in out
    ]


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
        space = BodySpace(body=dancer.body, posture=posture, side=side, prop=prop, clearance=_SPARE)
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
