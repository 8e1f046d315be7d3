"""Limits that a flown hand misses in its place in a show, though it holds them standing still at a steady tempo.

Pull, speeds and acceleration are bounded on the control points of what is flown (`flown_bounds`), with walking,
turning and the tempo of the moment; its reach is searched by branch and bound. What is strained beside a drawn path that stands
in may follow from that: it could not be eased across it, and may be once all of it flies.
"""

from collections.abc import Callable, Sequence
from math import inf
from typing import Any, NamedTuple

from sequencer.arrays import Floats
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.geometry.bodies import Side
from sequencer.kept import kept, recent
from sequencer.motion.flown.flown_motion import LEAST_PULL
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.feasibility import reach_quantity
from sequencer.motion.performers.least_values import Asked, least_values
from sequencer.motion.trajectories.flown_path.flown_hand import Course, FlownHand, Torn
from sequencer.motion.trajectories.flown_path.flown_links import TAKEN_OVER
from sequencer.show.model import Limits
from sequencer.staging.in_flight.flown_eases import AROUND_STRAIN, STRAINED
from sequencer.staging.in_flight.flown_show import FlownShow, performer_key
from sequencer.staging.staged import Staged

_SHORT = 0.1  # [beats]
_OUT = 0.02  # [m] out of reach that counts
_NEARLY_OUT = 0.015  # [m] out of reach by less: how much is not sought
_MOST_PERFORMERS = 64
BESIDE_DRAWN = AROUND_STRAIN  # [beats] beside a drawn path that stands in

Stretch = tuple[float, float]  # from and to [show beats]


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
    # Drawn stretches that stand in beside it, each together with those away from all of which nothing is missed: it follows
    # from them. A link is one stretch with the drawn pattern that it leads to.
    follows: tuple[tuple[Stretch, ...], ...] = ()


def strains(flown: FlownShow) -> tuple[Strain, ...]:
    """Where walking, turning or a change of tempo take a flown hand past its limits; by start.

    Parameters
    ----------
    flown : FlownShow
    """
    show = flown.staged
    out = []
    for dancer, drawn in zip(show.dancers, flown.drawn.dancers, strict=True):
        for row in rows_of(flown.drawn, drawn, dancer):
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


def rows_of(show: Staged, drawn: Dancer, dancer: Dancer) -> "list[StrainRow]":
    """What of a performer's hands is strained, worked out once for all that decides it.

    Parameters
    ----------
    show : Staged
        As drawn.
    drawn, dancer : Dancer
        Of it, and the same on flown paths.
    """
    key, limits = performer_key(show, drawn), show.show.limits
    content = None if key is None else (b"strained", key, limits.head_speed, limits.pull)

    def work() -> list[StrainRow]:
        return _strained(show, dancer)

    def record(own: list[StrainRow]) -> list[list[Any]]:
        return [list(each) for each in own]

    def restore(rows: list[list[Any]]) -> list[StrainRow]:
        return [_row_from(each) for each in rows]

    return recent(
        "strained hands",
        content,
        lambda: kept("strained hands", (content or object(),), work, record=record, restore=restore),
        most=_MOST_PERFORMERS, record=record, restore=restore,
    )  # fmt: skip


def limits_missed_between(flown: FlownShow, start: float, end: float) -> tuple[str, ...]:
    """Limits that a flown hand misses between two beats, as `missed_limits` names them; of the first hand that misses any.

    Parameters
    ----------
    flown : FlownShow
    start, end : float
        [show beats]
    """
    show = flown.staged
    for dancer in show.dancers:
        for side, hand in dancer.trajectories.items():
            if not isinstance(hand, FlownHand):
                continue
            inside = [
                each._replace(start=max(each.start, start), end=min(each.end, end))
                for each in hand.courses
                if each.start < end and each.end > start
            ]
            for figures in _figures(dancer, side, hand, inside, show.tempo.beats_per_second):
                arm = dancer.body.arm_length
                missed = () if figures is None else missed_limits(figures, show.show.limits, arm)
                if missed:
                    return missed
    return ()


class StrainRow(NamedTuple):
    """A strain as it is kept."""

    side: Side
    course: int  # place among the hand's courses
    least_pull: float
    hand_acceleration: float
    hand_speed: float
    wick_speed: float
    most_pull: float
    spare_reach: float
    follows: tuple[tuple[Stretch, ...], ...]


def _row_from(record: list[Any]) -> StrainRow:
    *own, follows = record
    return StrainRow._make(
        [*own, tuple(tuple((low, high) for low, high in some) for some in follows)]
    )


class CourseFigures(NamedTuple):
    """What a hand does on a course."""

    least_pull: float
    hand_acceleration: float
    hand_speed: float
    wick_speed: float
    most_pull: float
    spare_reach: float


def missed_limits(own: "Strain | CourseFigures", limits: Limits, arm: float) -> tuple[str, ...]:
    """Which limits a hand misses, as the fields that say so, by how far beyond them it is as a share; a slack tether first.

    Parameters
    ----------
    own : Strain or CourseFigures
    limits : Limits
    arm : float
        The arm's length [m].

    Notes
    -----
    A song's tempo wavers, so the hand may go and push `STRAINED` times as fast and hard as its limits say. Pull in the grip and
    the wick's speed may pass theirs by `TAKEN_OVER` only, of which half is what their bounds are above the values.
    """
    beyond = {
        "least_pull": (inf if own.least_pull <= 0.0 else 1.0 - own.least_pull / LEAST_PULL, 0.0),
        "hand_acceleration": (
            own.hand_acceleration / limits.hand_acceleration - 1.0,
            STRAINED - 1.0,
        ),
        "hand_speed": (own.hand_speed / limits.hand_speed - 1.0, STRAINED - 1.0),
        "wick_speed": (own.wick_speed / limits.head_speed - 1.0, TAKEN_OVER),
        "most_pull": (own.most_pull / limits.pull - 1.0, TAKEN_OVER),
        "spare_reach": (-own.spare_reach / arm, _OUT / arm),
    }
    missed = [name for name, (share, allowed) in beyond.items() if share > allowed]
    return tuple(sorted(missed, key=lambda name: -beyond[name][0]))


def _strained(show: Staged, dancer: Dancer) -> list[StrainRow]:
    """What of a performer's hands is strained."""
    limits, out = show.show.limits, []
    for side, hand in dancer.trajectories.items():
        if not isinstance(hand, FlownHand):
            continue

        def of(
            courses: Sequence[Course], side: Side = side, hand: FlownHand = hand
        ) -> list[CourseFigures | None]:
            return _figures(dancer, side, hand, courses, show.tempo.beats_per_second)

        def misses(figures: CourseFigures | None) -> bool:
            return figures is not None and bool(
                missed_limits(figures, limits, dancer.body.arm_length)
            )

        for k, figures in enumerate(of(hand.courses)):
            if figures is not None and misses(figures):
                some = _beside(hand, k)
                away = of([away_from(hand.courses[k], *each) for each in some])
                clear = [each for each, other in zip(some, away, strict=True) if not misses(other)]
                out.append(StrainRow(side, k, *figures, _least_of(clear)))
        out += [_torn_row(side, hand, each, dancer, limits) for each in hand.torn]
    return out


def _torn_row(side: Side, hand: FlownHand, torn: Torn, dancer: Dancer, limits: Limits) -> StrainRow:
    """A course on which the hand would jump: whatever its bounds say, the tether does not hold it."""
    weight = dancer.props[side].mass * STANDARD_GRAVITY
    figures = CourseFigures(
        torn.least_pull, torn.hand_acceleration, torn.hand_speed, torn.head_speed,
        torn.most_pull * weight, 0.0,
    )  # fmt: skip
    if not missed_limits(figures, limits, dancer.body.arm_length):
        figures = figures._replace(least_pull=0.0)
    place = next(k for k, each in enumerate(hand.courses) if each.start == torn.start)
    return StrainRow(side, place, *figures, ())


_Beside = tuple[Stretch | None, Stretch | None]  # drawn before it, and after it


def _beside(hand: FlownHand, k: int) -> list[_Beside]:
    """The drawn stretches that stand in before and after a course: each alone, and both together."""
    before, after = _standing_in(hand, k, -1), _standing_in(hand, k, 1)
    pairs = ((before, None), (None, after), (before, after))
    return list(dict.fromkeys(each for each in pairs if each != (None, None)))


def _least_of(clear: Sequence[_Beside]) -> tuple[tuple[Stretch, ...], ...]:
    """Stretches of which one by itself is enough, else those that are only together."""
    some = [tuple(own for own in each if own is not None) for each in clear]
    alone = tuple(each for each in some if len(each) == 1)
    return alone or tuple(some)


def _standing_in(hand: FlownHand, k: int, way: int) -> Stretch | None:
    """The drawn stretch that begins or ends where a course does; a link together with what it leads to."""
    near = _drawn_course(hand, k + way)
    if near is None:
        return None
    low, high = near.start, near.end
    middle = (low + high) / 2
    if any(each.kind == "link" and each.start <= middle < each.end for each in hand.drawn.spans):
        far = _drawn_course(hand, k + 2 * way)
        if far is not None:
            low, high = min(low, far.start), max(high, far.end)
    return low, high


def _drawn_course(hand: FlownHand, k: int) -> Course | None:
    """A course by its place, if there is one and what is drawn stands in."""
    if not 0 <= k < len(hand.courses) or hand.courses[k].flown:
        return None
    return hand.courses[k]


def _figures(
    dancer: Dancer,
    side: Side,
    hand: FlownHand,
    courses: Sequence[Course],
    beats_a_second: Callable[[Floats], Floats],
) -> list[CourseFigures | None]:
    """What a hand does on courses; None of what is drawn or too short to matter."""
    some = [k for k, each in enumerate(courses) if each.flown and each.end - each.start > _SHORT]
    reach = reach_quantity(
        side=side, body=dancer.body, carriage=dancer.carriage, enough=-_NEARLY_OUT
    )
    spans = [(courses[k].start, courses[k].end) for k in some]
    (spare,) = least_values([Asked(reach, (hand,), spans)]) if some else ([],)
    weight = dancer.props[side].mass * STANDARD_GRAVITY
    out: list[CourseFigures | None] = [None] * len(courses)
    for k, left in zip(some, spare, strict=True):
        course = courses[k]
        speed, acceleration, wick_speed = hand.largest_rates(course, beats_a_second)
        out[k] = CourseFigures(
            least_pull=hand.least_pull(course),
            hand_acceleration=acceleration,
            hand_speed=speed,
            wick_speed=wick_speed,
            most_pull=hand.largest_pull(course) * weight,
            spare_reach=left.value if left.label >= 0 else 0.0,
        )
    return out


def away_from(course: Course, before: object, after: object) -> Course:
    """A course without the beats beside what is drawn before and after it; it ends where it begins if nothing else is left.

    Parameters
    ----------
    course : Course
    before, after : object
        None where nothing is drawn that is to be kept away from.
    """
    low, high = course.start, course.end
    if before is not None:
        low = min(low + BESIDE_DRAWN, high)
    if after is not None:
        high = max(high - BESIDE_DRAWN, low)
    return course._replace(start=low, end=high)


def _moves(dancer: Dancer, course: Course) -> bool:
    return any(
        bounds.speed > 0 or bounds.turn_rate > 0
        for _, _, bounds in dancer.floor.pieces(course.start, course.end)
    )
