"""A staged show as it can be flown: every passive prop on its flown path, all else as it was.

Distances, flights let go, traces and pages take it in place of the show as drawn. Where a block cannot be flown its drawn
path stands in, with the margin that it had. The tempo of a block is its fastest, rounded to a whole beat a minute, so that
blocks at almost the same tempo are flown alike.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache, partial
from typing import Any, NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.content_keys import content_key, whole_code
from sequencer.geometry.bodies import SIDES, Side
from sequencer.kept import is_recent, kept_on_disk, known_on_disk, recent
from sequencer.motion.clearance.slices import floor_keys
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.performers.flown_figures import FAR_TOO_SLOW, flying_hand
from sequencer.motion.trajectories.flown_path.flown_apart import kept_apart
from sequencer.motion.trajectories.flown_path.flown_courses import Journey, courses_of, journey
from sequencer.motion.trajectories.flown_path.flown_hand import SHOW_KNOTS, Course, FlownHand, Torn
from sequencer.motion.trajectories.flown_path.flown_making import Ground, flown_hand, joined_slices
from sequencer.motion.trajectories.flown_path.flown_torn import is_unbroken, unbroken, with_torn
from sequencer.motion.trajectories.flown_path.hand_slices import known_slice
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.progress import Progress, stop_if_unwanted, within
from sequencer.staging.dancers import flown_limits
from sequencer.staging.in_flight.flown_eases import eased_hand
from sequencer.staging.results import OfPerformer, result_of
from sequencer.staging.staged import Staged

Hands = Mapping[tuple[str, Side], Journey]  # by performer and hand
_ALONE = 0.8  # of the progress, for each hand alone; the rest is for both together
_PERFORMERS = "performers as flown"
_MOST_PERFORMERS = 64  # held in memory, some 5 megabytes each
_MOST_DANCES = 2_000  # whose content is remembered
_STANDING = 1.0  # [beats] before the first move and after the last


@dataclass(frozen=True, kw_only=True, eq=False)
class FlownShow:
    """A show as flown.

    Parameters
    ----------
    staged : Staged
        With dancers on their flown paths.
    drawn : Staged
        The same show as drawn.
    """

    staged: Staged
    drawn: Staged

    @property
    def hands(self) -> Hands:
        """What each hand flies, of passive props, by performer and side."""
        return flown_hands(self.drawn)


def flown_hands(show: Staged) -> Hands:
    """What every hand with a passive prop flies.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    return {
        (dancer.name, side): way
        for dancer in show.dancers
        for side, way in _journeys(show, dancer, None).items()
    }


def _journeys(show: Staged, dancer: Dancer, progress: Progress | None) -> Mapping[Side, Journey]:
    """What a performer's hands fly, computed once for each show."""
    key = OfPerformer("what their hands fly", dancer.name)
    return result_of(show, key, lambda: _new_journeys(show, dancer, progress))


def _new_journeys(
    show: Staged, dancer: Dancer, progress: Progress | None
) -> Mapping[Side, Journey]:
    held = [
        (side, trajectory)
        for side, trajectory in dancer.trajectories.items()
        if dancer.props[side].flexible and isinstance(trajectory, Trajectory)
    ]
    out: dict[Side, Journey] = {}
    alone = within(progress, 0.0, _ALONE)
    for k, (side, trajectory) in enumerate(held):
        say = None if alone is None else _teller(alone, k, len(held), dancer, trajectory)
        hand = flying_hand(
            side=side,
            prop=dancer.props[side],
            carriage=dancer.carriage,
            tempo=show.tempo,
            limits=flown_limits(show.show.limits),
        )
        out[side] = journey(
            trajectory,
            hand.flying,
            worth=partial(hand.worth_flying, share=FAR_TOO_SLOW),
            told=say,
            other=out.get("left" if side == "right" else "right", ()),
        )
    if progress is not None:
        progress(f"flying {dancer.name}'s part", _ALONE)
    stop_if_unwanted()
    return kept_apart({side: out[side] for side in SIDES if side in out}, dancer.props)


def _teller(
    progress: Progress, done: int, of: int, dancer: Dancer, trajectory: Trajectory
) -> Callable[[float], None]:
    first, last = trajectory.spans[0].start, trajectory.spans[-1].end
    return lambda beat: progress(
        f"flying {dancer.name}'s part", (done + (beat - first) / (last - first)) / of
    )


def flown_show(show: Staged, progress: Progress | None = None) -> FlownShow:
    """The show on its flown paths, computed once for each show.

    Parameters
    ----------
    show : Staged
        As drawn.
    progress : callable, optional
    """
    return result_of(show, flown_show, lambda: _flown_show(show, progress))


def _flown_show(show: Staged, progress: Progress | None) -> FlownShow:
    count = len(show.dancers)
    dancers = tuple(
        flown_performer(show, dancer, within(progress, k / count, (k + 1) / count))
        for k, dancer in enumerate(show.dancers)
    )
    return FlownShow(staged=replace(show, dancers=dancers), drawn=show)


class _OnPaths(NamedTuple):
    """A performer's hands on their flown paths."""

    trajectories: Mapping[Side, PropTrajectory]
    deviation: Mapping[Side, tuple[HandDeviation, ...]]


def unflown(show: Staged) -> tuple[Dancer, ...]:
    """Performers whose flight is not known yet, and can be known by what decides it.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    found = []
    for dancer in show.dancers:
        key = performer_key(show, dancer)
        if key is not None and not (
            is_recent(_PERFORMERS, key) or known_on_disk(key, restore=lambda _record: True)
        ):
            found.append(dancer)
    return tuple(found)


def flown_performer(show: Staged, dancer: Dancer, progress: Progress | None = None) -> Dancer:
    """A performer on flown paths; known by all that decides them.

    Parameters
    ----------
    show : Staged
        As drawn.
    dancer : Dancer
        Of it.
    progress : callable, optional
    """
    key = performer_key(show, dancer)

    def work() -> _OnPaths:
        if key is None:
            return _flown(show, dancer, progress)
        return kept_on_disk(
            key,
            lambda: _flown(show, dancer, progress),
            record=_record,
            restore=partial(_restored, dancer),
        )

    own = recent(_PERFORMERS, key, work, most=_MOST_PERFORMERS)
    return replace(dancer, trajectories=own.trajectories, deviation=own.deviation)


def performer_key(show: Staged, dancer: Dancer) -> bytes | None:
    """All that decides how a performer flies; None if that is not known.

    Parameters
    ----------
    show : Staged
        As drawn.
    dancer : Dancer
        Of it.
    """
    tempo = show.tempo
    try:
        return content_key(
            "performer as flown", whole_code(), _dance_content(dancer), dancer.floor.content,
            flown_limits(show.show.limits), tempo.times, tempo.first,
        )  # fmt: skip
    except TypeError:  # a law of another package
        return None


def _dance_content(dancer: Dancer) -> bytes:
    """What a performer dances, with which body and props: the same objects in every show that leaves them as they were.

    Raises
    ------
    TypeError
        If there is a law of another package.
    """
    carriage = dancer.carriage
    parts = (dancer.trajectories, dancer.body, dancer.props, carriage, dancer.deviation)

    def work() -> tuple[tuple[object, ...], bytes]:
        said = content_key(
            dancer.trajectories, dancer.body, dancer.props, carriage.held, dancer.deviation
        )
        return parts, said

    # The parts are held, so that no others can have their ids.
    _, content = recent("dances", tuple(map(id, parts)), work, most=_MOST_DANCES)
    return content


def _record(own: _OnPaths) -> dict[str, Any]:
    """Courses and slices of every flown hand, and the margins that are left."""
    hands = {}
    for side, hand in own.trajectories.items():
        if isinstance(hand, FlownHand):
            keys = [None if key is None else key.hex() for key in hand.slices]
            if None in keys:
                raise ValueError("a slice that is not kept")
            courses = [[each.start, each.end, each.flown] for each in hand.courses]
            torn = [list(each) for each in hand.torn]
            hands[side] = [round(hand.head.start * SHOW_KNOTS), courses, keys, torn]
    return {
        "hands": hands,
        "deviation": {side: [list(each) for each in own] for side, own in own.deviation.items()},
    }


def _restored(dancer: Dancer, record: dict[str, Any]) -> _OnPaths:
    """The inverse of `_record`, of a performer as drawn.

    Raises
    ------
    KeyError, TypeError, ValueError
        If the record is none, or a slice of it is not kept any more.
    """
    trajectories: dict[Side, PropTrajectory] = dict(dancer.trajectories)
    for side in SIDES:
        if side not in record["hands"]:
            continue
        first, courses, names, torn = record["hands"][side]
        keys = [bytes.fromhex(name) for name in names]
        made = [known_slice(key) for key in keys]
        drawn = trajectories[side]
        if not isinstance(drawn, Trajectory) or None in made:
            raise ValueError("a slice that is not kept any more")
        trajectories[side] = joined_slices(
            [each for each in made if each is not None],
            keys,
            first=first,
            length=dancer.props[side].length,
            drawn=drawn,
            courses=tuple(Course(low, high, _not_kept, own) for low, high, own in courses),
            torn=tuple(Torn(*each) for each in torn),
        )
    deviation = {
        side: tuple(HandDeviation(*each) for each in record["deviation"][side])
        for side in dancer.deviation
    }
    return _OnPaths(trajectories, deviation)


def _not_kept(_beats: Floats) -> tuple[Floats, Floats]:
    raise ValueError("where a course that was kept leads, the hand's splines say")


def _flown(show: Staged, dancer: Dancer, progress: Progress | None) -> _OnPaths:
    hands = _journeys(show, dancer, progress)
    ground = _ground_of(show, dancer)
    trajectories: dict[Side, PropTrajectory] = dict(dancer.trajectories)
    deviation = dict(dancer.deviation)
    makers: dict[Side, Callable[[Sequence[Course]], FlownHand]] = {}
    for side in SIDES:
        if side not in hands:
            continue
        courses = _while_walking(courses_of(hands[side]), dancer)
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
            ease = partial(
                eased_hand,
                dancer,
                side,
                limits=flown_limits(show.show.limits),
                ground=ground,
                other=trajectories.get("left" if side == "right" else "right"),
                made=made,
            )
            trajectories[side] = eased = _unbroken(hand, ease, made, ground)
            if eased.torn:
                deviation[side] = _left(dancer.deviation.get(side, ()), eased.courses)
    return _OnPaths(trajectories, deviation)


def _unbroken(
    hand: FlownHand,
    ease: Callable[[FlownHand], FlownHand],
    made: Callable[[Sequence[Course]], FlownHand],
    ground: Ground,
) -> FlownHand:
    """A hand that is eased where it is strained; where that would make it jump, the drawing stands in, and the rest is eased."""
    eased = ease(hand)
    if is_unbroken(eased):
        return eased
    whole = unbroken(hand, made, ground.beats_a_second)
    eased = ease(whole)
    return with_torn(eased, whole.torn) if is_unbroken(eased) else whole


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

    def turned(points: Floats, facing: Floats) -> Floats:
        cos, sin = np.cos(facing), np.sin(facing)
        x, y = points[:, 0], points[:, 1]
        return np.stack((sin * y - cos * x, -sin * x - cos * y, points[:, 2]), axis=-1)

    def to_stage(beats: Floats, points: Floats) -> Floats:
        own = dancer.floor.at(beats)
        out = turned(points, own.facing)
        out[:, :2] += own.place
        return out

    def to_body(beats: Floats, points: Floats) -> Floats:
        own, out = dancer.floor.at(beats), points.copy()
        out[:, :2] -= own.place
        return turned(out, -own.facing)

    @cache  # each is asked for by both hands, and again once a stretch is eased
    def part(low: float, high: float) -> bytes:
        return floor_keys(dancer.floor, np.array([low, high]))[0]

    return Ground(
        to_stage, to_body, lambda beats: np.asarray(show.tempo.beats_per_second(beats)), part
    )


def _left(
    margins: tuple[HandDeviation, ...], courses: Sequence[Course]
) -> tuple[HandDeviation, ...]:
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
