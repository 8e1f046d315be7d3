"""A staged show as it can be flown: every passive prop on its flown path, all else as it was.

Distances, flights let go, traces and pages take it in place of the show as drawn. Where a block cannot be flown its drawn
path stands in, with the margin that it had. The tempo of a block is its fastest, rounded to a whole beat a minute, so that
blocks at almost the same tempo are flown alike.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.flown.flown_motion import LEAST_PULL
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.performers.flown_figures import FAR_TOO_SLOW, FlyingHand
from sequencer.motion.trajectories.flown_apart import kept_apart
from sequencer.motion.trajectories.flown_courses import Journey, courses_of, journey
from sequencer.motion.trajectories.flown_hand import Course, FlownHand, Ground, flown_hand
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.progress import Progress, stop_if_unwanted, within
from sequencer.staging.dancers import flown_limits
from sequencer.staging.flown_eases import STRAINED, eased_hand
from sequencer.staging.results import once_per_show, result_of
from sequencer.staging.staged import Staged

_SHORT = 0.1  # [beats]
_OUT = 0.02  # [m] out of reach that counts
_LOOKS = 24  # a beat

Hands = Mapping[tuple[str, Side], Journey]  # by performer and hand
_ALONE = 0.8  # of the progress, for each hand alone; the rest is for both together
_STANDING = 1.0  # [beats] before the first move and after the last


@dataclass(frozen=True, kw_only=True, eq=False)
class FlownShow:
    """A show as flown.

    Parameters
    ----------
    staged : Staged
        With dancers on their flown paths.
    hands : mapping of (name, side) to Journey
        What each hand flies, of passive props.
    """

    staged: Staged
    hands: Hands


def flown_hands(show: Staged, progress: Progress | None = None) -> Hands:
    """What every hand with a passive prop flies, computed once for each show.

    Parameters
    ----------
    show : Staged
    progress : callable, optional
    """
    return result_of(show, flown_hands, lambda: _flown_hands(show, progress))


def _flown_hands(show: Staged, progress: Progress | None) -> Hands:
    held = [
        (dancer, side, trajectory)
        for dancer in show.dancers
        for side, trajectory in dancer.trajectories.items()
        if dancer.props[side].flexible and isinstance(trajectory, Trajectory)
    ]
    out: dict[tuple[str, Side], Journey] = {}
    alone = within(progress, 0.0, _ALONE)
    for k, (dancer, side, trajectory) in enumerate(held):
        say = None if alone is None else _teller(alone, k, len(held), dancer, trajectory)
        hand = FlyingHand(
            side=side,
            prop=dancer.props[side],
            carriage=dancer.carriage,
            tempo=show.tempo,
            limits=flown_limits(show.show.limits),
        )
        out[dancer.name, side] = journey(
            trajectory,
            hand.flying,
            worth=partial(hand.worth_flying, share=FAR_TOO_SLOW),
            told=say,
            other=out.get((dancer.name, "left" if side == "right" else "right"), ()),
        )
    for k, dancer in enumerate(show.dancers):
        own = {side: out[dancer.name, side] for side in SIDES if (dancer.name, side) in out}
        if progress is not None:
            progress(
                f"flying {dancer.name}'s part", _ALONE + (1.0 - _ALONE) * k / len(show.dancers)
            )
        stop_if_unwanted()
        for side, way in kept_apart(own, dancer.props).items():
            out[dancer.name, side] = way
    return out


def _teller(
    progress: Progress, done: int, of: int, dancer: Dancer, trajectory: Trajectory
) -> Callable[[float], None]:
    first, last = trajectory.spans[0].start, trajectory.spans[-1].end
    return lambda beat: progress(
        f"flying {dancer.name}'s part", (done + (beat - first) / (last - first)) / of
    )


@once_per_show
def flown_show(show: Staged) -> FlownShow:
    """The show on its flown paths, computed once for each show; see `flown_hands` for progress.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    hands = flown_hands(show)
    dancers = tuple(_flown_dancer(show, dancer, hands) for dancer in show.dancers)
    return FlownShow(staged=replace(show, dancers=dancers), hands=hands)


def _flown_dancer(show: Staged, dancer: Dancer, hands: Hands) -> Dancer:
    ground = _ground_of(show, dancer)
    trajectories: dict[Side, PropTrajectory] = dict(dancer.trajectories)
    deviation = dict(dancer.deviation)
    makers: dict[Side, Callable[[Sequence[Course]], FlownHand]] = {}
    for side in SIDES:
        if (dancer.name, side) not in hands:
            continue
        courses = _while_walking(courses_of(hands[dancer.name, side]), dancer)
        drawn = dancer.trajectories[side]
        if not isinstance(drawn, Trajectory):
            continue
        prop = dancer.props[side]
        makers[side] = partial(
            flown_hand, length=prop.length, drag=drag_of(prop), drawn=drawn, ground=ground
        )
        trajectories[side] = makers[side](courses)
        deviation[side] = _left(dancer.deviation.get(side, ()), courses)
    for side, made in makers.items():
        hand = trajectories[side]
        if isinstance(hand, FlownHand):
            trajectories[side] = eased_hand(
                dancer,
                side,
                hand,
                limits=flown_limits(show.show.limits),
                ground=ground,
                other=trajectories.get("left" if side == "right" else "right"),
                made=made,
            )
    return replace(dancer, trajectories=trajectories, deviation=deviation)


def _while_walking(courses: list[Course], dancer: Dancer) -> list[Course]:
    """Courses that go on, at rest, as long as the performer walks before and after them: a prop leans in who walks."""
    moves = dancer.floor.moves
    if moves:
        start, end = moves[0].start - _STANDING, moves[-1].end + _STANDING
        courses[0] = courses[0]._replace(start=min(courses[0].start, start))
        courses[-1] = courses[-1]._replace(end=max(courses[-1].end, end))
    return courses


def _ground_of(show: Staged, dancer: Dancer) -> Ground:
    """How the performer's frame lies in the stage's: facing 0, body x is −X and body y is −Y."""

    def turned(beats: Floats, points: Floats, way: float) -> Floats:
        facing = way * dancer.floor.at(beats).facing
        cos, sin = np.cos(facing), np.sin(facing)
        x, y = points[:, 0], points[:, 1]
        return np.stack((sin * y - cos * x, -sin * x - cos * y, points[:, 2]), axis=-1)

    def to_stage(beats: Floats, points: Floats) -> Floats:
        out = turned(beats, points, 1.0)
        out[:, :2] += dancer.floor.at(beats).place
        return out

    def to_body(beats: Floats, points: Floats) -> Floats:
        out = points.copy()
        out[:, :2] -= dancer.floor.at(beats).place
        return turned(beats, out, -1.0)

    return Ground(to_stage, to_body, lambda beats: np.asarray(show.tempo.beats_per_second(beats)))


def _left(margins: tuple[HandDeviation, ...], courses: list[Course]) -> tuple[HandDeviation, ...]:
    """Margins that still hold: those parts of them where what is drawn stands in."""
    return tuple(
        HandDeviation(max(own.start, each.start), min(own.end, each.end), own.size)
        for own in margins
        for each in courses
        if not each.flown and own.start < each.end and each.start < own.end
    )


def is_flown(dancer: Dancer) -> bool:
    """Whether a dancer is on flown paths."""
    return any(isinstance(each, FlownHand) for each in dancer.trajectories.values())


class Strain(NamedTuple):
    """A limit that a hand misses in its place in the show, though it holds it standing still at a steady tempo."""

    who: str
    side: Side
    course: Course
    least_pull: float  # in the head's weights
    hand_acceleration: float  # [m/s²]
    spare_reach: float  # [m] negative out of reach
    moving: bool  # whether its performer walks or turns there


def strains(flown: FlownShow) -> tuple[Strain, ...]:
    """Where walking, turning or a change of tempo take a flown hand past its limits; by start.

    Parameters
    ----------
    flown : FlownShow
    """
    show, out = flown.staged, []
    limit = show.show.limits.hand_acceleration * STRAINED
    for dancer in show.dancers:
        for side, hand in dancer.trajectories.items():
            if not isinstance(hand, FlownHand):
                continue
            for course in hand.courses:
                if course.flown and course.end - course.start > _SHORT:
                    pull = hand.least_pull(course)
                    pushed = hand.hand_acceleration(course, show.tempo.beats_per_second)
                    spare = _spare_reach(dancer, side, hand, course)
                    if pull < LEAST_PULL or pushed > limit or spare < -_OUT:
                        moving = _moves(dancer, course)
                        out.append(Strain(dancer.name, side, course, pull, pushed, spare, moving))
    return tuple(sorted(out, key=lambda each: (each.course.start, each.who, each.side)))


def _spare_reach(dancer: Dancer, side: Side, hand: FlownHand, course: Course) -> float:
    """Least arm's length that is left at some beats of a course [m]."""
    count = max(int(np.ceil((course.end - course.start) * _LOOKS)), 2)
    shares: Floats = np.arange(count + 1, dtype=np.float64) / count
    beats = course.start + (course.end - course.start) * shares
    beyond = dancer.carriage.beyond(beats, hand.hand.at(beats), side)
    return float(dancer.body.arm_length - np.max(beyond))


def _moves(dancer: Dancer, course: Course) -> bool:
    return any(
        bounds.speed > 0 or bounds.turn_rate > 0
        for _, _, bounds in dancer.floor.pieces(course.start, course.end)
    )
