"""Limits that a flown hand misses in its place in a show, though it holds them standing still at a steady tempo.

Pull, speeds and acceleration are bounded on the control points of what is flown (`flown_bounds`), with walking,
turning and the tempo of the moment; its reach is searched by branch and bound. What is strained beside a drawn path that stands
in follows from that: it could not be eased across it, and may be once all of it flies.
"""

from collections.abc import Callable, Sequence
from functools import partial
from typing import NamedTuple

from sequencer.arrays import Floats
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.geometry.bodies import Side
from sequencer.kept import recent
from sequencer.motion.flown.flown_motion import LEAST_PULL
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.feasibility import reach_quantity
from sequencer.motion.performers.least_values import Asked, least_values
from sequencer.motion.trajectories.flown_hand import Course, FlownHand
from sequencer.staging.flown_eases import AROUND_STRAIN, STRAINED
from sequencer.staging.flown_show import FlownShow, performer_key
from sequencer.staging.staged import Staged

_SHORT = 0.1  # [beats]
_OUT = 0.02  # [m] out of reach that counts
_NEARLY_OUT = 0.015  # [m] out of reach by less: how much is not sought
_MOST_PERFORMERS = 64
BESIDE_DRAWN = AROUND_STRAIN  # [beats] beside a drawn path that stands in


class Strain(NamedTuple):
    """A limit that a hand misses in its place in the show, though it holds it standing still at a steady tempo."""

    who: str
    side: Side
    course: Course
    least_pull: float  # in the head's weights
    hand_acceleration: float  # [m/s²]
    spare_reach: float  # [m] negative out of reach
    moving: bool  # whether its performer walks or turns there
    hand_speed: float = 0.0  # [m/s]
    wick_speed: float = 0.0  # [m/s]
    most_pull: float = 0.0  # [N] in the hand
    follows: bool = (
        False  # from a drawn path that stands in beside it: away from that nothing is missed
    )


def strains(flown: FlownShow) -> tuple[Strain, ...]:
    """Where walking, turning or a change of tempo take a flown hand past its limits; by start.

    Parameters
    ----------
    flown : FlownShow
    """
    show = flown.staged
    out = []
    for dancer, drawn in zip(show.dancers, flown.drawn.dancers, strict=True):
        key, limits = performer_key(flown.drawn, drawn), show.show.limits
        rows = recent(
            "strained hands",
            None if key is None else (b"strained", key, limits.head_speed, limits.pull),
            partial(_strained, show, dancer), most=_MOST_PERFORMERS,
            record=lambda own: [list(each) for each in own],
            restore=lambda record: [_Row(*each) for each in record],
        )  # fmt: skip
        for row in rows:
            hand = dancer.trajectories[row.side]
            if isinstance(hand, FlownHand):
                course = hand.courses[row.course]
                out.append(
                    Strain(
                        dancer.name, row.side, course, row.least_pull, row.hand_acceleration,
                        row.spare_reach, _moves(dancer, course), row.hand_speed, row.wick_speed,
                        row.most_pull, row.follows,
                    )
                )  # fmt: skip
    return tuple(sorted(out, key=lambda each: (each.course.start, each.who, each.side)))


class _Row(NamedTuple):
    """A strain as it is kept."""

    side: Side
    course: int  # place among the hand's courses
    least_pull: float
    hand_acceleration: float
    hand_speed: float
    wick_speed: float
    most_pull: float
    spare_reach: float
    follows: bool


class _Figures(NamedTuple):
    """What a hand does on a course."""

    least_pull: float
    hand_acceleration: float
    hand_speed: float
    wick_speed: float
    most_pull: float
    spare_reach: float


def _strained(show: Staged, dancer: Dancer) -> list[_Row]:
    """What of a performer's hands is strained."""
    limits, out = show.show.limits, []
    for side, hand in dancer.trajectories.items():
        if not isinstance(hand, FlownHand):
            continue
        away = [away_from_drawn(hand.courses, k) for k in range(len(hand.courses))]
        own, others = (
            _figures(dancer, side, hand, each, show.tempo.beats_per_second)
            for each in (hand.courses, away)
        )

        def misses(figures: _Figures | None) -> bool:
            return figures is not None and (
                figures.least_pull < LEAST_PULL
                or figures.hand_acceleration > STRAINED * limits.hand_acceleration
                or figures.hand_speed > STRAINED * limits.hand_speed
                or figures.wick_speed > STRAINED * limits.head_speed
                or figures.most_pull > STRAINED * limits.pull
                or figures.spare_reach < -_OUT
            )

        for k, (figures, other) in enumerate(zip(own, others, strict=True)):
            if figures is not None and misses(figures):
                out.append(_Row(side, k, *figures, not misses(other)))
    return out


def _figures(
    dancer: Dancer,
    side: Side,
    hand: FlownHand,
    courses: Sequence[Course],
    beats_a_second: Callable[[Floats], Floats],
) -> list[_Figures | None]:
    """What a hand does on courses; None of what is drawn or too short to matter."""
    some = [k for k, each in enumerate(courses) if each.flown and each.end - each.start > _SHORT]
    reach = reach_quantity(
        side=side, body=dancer.body, carriage=dancer.carriage, enough=-_NEARLY_OUT
    )
    spans = [(courses[k].start, courses[k].end) for k in some]
    (spare,) = least_values([Asked(reach, (hand,), spans)]) if some else ([],)
    weight = dancer.props[side].mass * STANDARD_GRAVITY
    out: list[_Figures | None] = [None] * len(courses)
    for k, left in zip(some, spare, strict=True):
        course = courses[k]
        out[k] = _Figures(
            hand.least_pull(course),
            hand.hand_acceleration(course, beats_a_second),
            hand.hand_speed(course, beats_a_second),
            hand.head_speed(course, beats_a_second),
            hand.largest_pull(course) * weight,
            left.value if left.label >= 0 else 0.0,
        )
    return out


def away_from_drawn(courses: Sequence[Course], k: int) -> Course:
    """A course without the beats beside a drawn path that stands in; it ends where it begins if nothing else is left.

    Parameters
    ----------
    courses : sequence of Course
    k : int
        Which of them.
    """
    course = courses[k]
    low, high = course.start, course.end
    if k and not courses[k - 1].flown:
        low = min(low + BESIDE_DRAWN, high)
    if k + 1 < len(courses) and not courses[k + 1].flown:
        high = max(high - BESIDE_DRAWN, low)
    return course._replace(start=low, end=high)


def _moves(dancer: Dancer, course: Course) -> bool:
    return any(
        bounds.speed > 0 or bounds.turn_rate > 0
        for _, _, bounds in dancer.floor.pieces(course.start, course.end)
    )
