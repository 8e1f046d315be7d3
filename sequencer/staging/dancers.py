"""One performer of a show: blocks become the laws of each hand, and those a dancer, standing anywhere."""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise
from typing import NamedTuple

from sequencer.content_keys import content_key
from sequencer.facts.flames import FASTEST_HEAD
from sequencer.geometry.bodies import Body, Side
from sequencer.kept import recent
from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.laws.carriage import Carriage, carried
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns import library
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.flown_figures import FlyingHand
from sequencer.motion.performers.hand_deviation import hand_deviations_of
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import LEAD_IN, assembled
from sequencer.motion.trajectories.one_link.link_limits import LinkLimits, PaceLimits, hand_space_of
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.stops import HandStop
from sequencer.motion.trajectories.trajectory import BLEND_HALF_WIDTH, Span, Trajectory
from sequencer.show.file_records.performer_record import Performer
from sequencer.show.model import Limits
from sequencer.show.reading import ReadShow
from sequencer.staging.reuse import dance_key
from sequencer.staging.staged import Accent, Block, Lit, ShowPart
from sequencer.staging.whirls import refuse_whirls
from sequencer.staging.wicks import fastest_wick, flame_reach
from sequencer.timing.position import TOUCH
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

_MOST_DANCERS = 500  # who are kept
_MOST_LAWS = 10_000  # blocks whose laws are kept
_NEAR = 1.0  # [beats] around an instant: what is farther changes no blend that reaches it


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedDance:
    """What a file says on the dance, as beats."""

    song: Song
    tempo: TempoMap
    book: Mapping[str, library.Pattern]
    blocks: tuple[Block, ...]
    stops: tuple[Block, ...]
    accents: tuple[Accent, ...]
    lit: tuple[Lit, ...]
    own: Mapping[
        str, tuple[Block, ...]
    ]  # blocks and stops, by start, of each performer who has any
    burns: Mapping[str, tuple[Lit, ...]]  # of each performer who has any
    last: float  # [beats]
    part: ShowPart | None = None  # if only that is staged
    missing: tuple[Block, ...] = ()  # what those who are away would dance


def recent_dancer(read: ReadShow, name: str, danced: PlacedDance, *, fly: bool = True) -> Dancer:
    """A performer, standing anywhere; one who danced the same a short while ago is looked up.

    Parameters
    ----------
    read : ReadShow
    name : str
    danced : PlacedDance
    fly : bool
        Whether the margin of a block whose hand work is large is sought by flying it; else it is the hand work.

    Raises
    ------
    InputError
        If the performer's measurements or a pattern are invalid.
    """
    own, burns = danced.own.get(name, ()), danced.burns.get(name, ())
    same = dance_key(read, name, danced.tempo, own, burns)

    def work() -> Dancer:
        dance = recent(
            "dances as drawn", same, lambda: _dance(read, name, danced), most=_MOST_DANCERS
        )
        lit = _burns(danced, name)
        return _standing(
            read, name, dance.carriage, dance.props, dance.trajectories, lit, danced.tempo, fly=fly
        )

    key = same if fly or same is None else ("as drawn", same)
    return recent("dancer", key, work, most=_MOST_DANCERS)


class _Dance(NamedTuple):
    """What a performer dances, whatever margin it has."""

    carriage: Carriage
    props: Mapping[Side, Prop]
    trajectories: Mapping[Side, Trajectory]


def _dance(read: ReadShow, name: str, danced: PlacedDance) -> _Dance:
    tempo = danced.tempo
    record, body, props = _performer(read, name)
    own = danced.own.get(name, ())
    carriage = _carriage(body, own)
    trajectories = _trajectories(read, own, carriage, props, danced)
    burns = _burns(danced, name)
    for side, trajectory in trajectories.items():
        # Faster than any ordinary prop (a long rope): its flame is stretched farther.
        speed = fastest_wick(props[side], trajectory, burns, tempo)
        if speed > FASTEST_HEAD:
            reach = flame_reach(record.props[side], read.show.fire, speed=speed)
            props[side] = replace(props[side], flame_reach=reach)
    return _Dance(carriage, props, trajectories)


def dancer_at(
    read: ReadShow, name: str, danced: PlacedDance, beat: float, *, fly: bool = True
) -> Dancer | None:
    """A performer at one beat, standing anywhere; None if a link or a rest may decide how they are then.

    Parameters
    ----------
    read : ReadShow
    name : str
    danced : PlacedDance
    beat : float
        Elsewhere the dancer means nothing, but that a block through which the beat goes is as it is, between its blends.
        A flame may be shorter than it is, never longer.
    fly : bool
        As for `recent_dancer`.

    Raises
    ------
    InputError
        If the performer's measurements or a pattern are invalid.
    """
    _, body, props = _performer(read, name)
    own = danced.own.get(name, ())
    near = [block for block in own if block.start < beat + _NEAR and block.end > beat - _NEAR]
    spans = _spans(read, near, body, props, danced.book)
    low, high = beat - BLEND_HALF_WIDTH - TOUCH, beat + BLEND_HALF_WIDTH + TOUCH
    runs = {side: _run_through(spans[side], low, high) for side in props}
    if not all(runs.values()):
        return None
    trajectories = {
        side: Trajectory(tuple(run), hand_space_of(body, side, props[side]))
        for side, run in runs.items()
    }
    carriage = _carriage(body, own)
    burns = _burns(danced, name)
    return _standing(read, name, carriage, props, trajectories, burns, danced.tempo, fly=fly)


def _run_through(spans: Sequence[Span], low: float, high: float) -> list[Span]:
    """The spans that follow each other without a gap from one beat to another or farther; none if there is a gap."""
    run = [span for span in spans if span.start < high and span.end > low]
    whole = run and run[0].start <= low and run[-1].end >= high
    return run if whole and all(a.end == b.start for a, b in pairwise(run)) else []


def _performer(read: ReadShow, name: str) -> tuple[Performer, Body, dict[Side, Prop]]:
    """A performer of the cast, with their body and the props they hold."""
    record, fire = read.show.cast[read.show.names.index(name)], read.show.fire

    def work() -> tuple[object, Body, dict[Side, Prop]]:
        props = {side: own.held(flame_reach(own, fire)) for side, own in record.props.items()}
        return (record, fire), record.body, props

    try:
        # As long as the file says the same of them they are the same objects, and so is what is known by these.
        # Record and fire are held, so that their ids stay their own.
        _, body, props = recent("performers", (id(record), id(fire)), work, most=_MOST_DANCERS)
    except ValueError as error:
        raise read.fault(
            "bad-value",
            read.cast_path(name),
            str(error),
            "see docs/show-file.md for what is allowed",
        ) from error
    return record, body, dict(props)


def _carriage(body: Body, blocks: Sequence[Block]) -> Carriage:
    danced = [(b.start, b.end, b.posture) for b in blocks if not (b.link or b.stop)]
    return carried(body, danced, lead=LEAD_IN)


def _burns(danced: PlacedDance, name: str) -> tuple[tuple[float, float], ...]:
    return tuple((span.start, span.end) for span in danced.burns.get(name, ()))


def flown_limits(limits: Limits) -> FlownLimits:
    """What a show lets a hand do, as flying needs it."""
    return FlownLimits(hand_speed=limits.hand_speed, hand_acceleration=limits.hand_acceleration)


def link_limits(limits: Limits, tempo: TempoMap, start: float, end: float) -> LinkLimits:
    """What a show lets a link from one beat to another ask for, per beat.

    Parameters
    ----------
    limits : Limits
        The show's, by the second.
    tempo : TempoMap
    start, end : float
        [beats]
    """
    pace = PaceLimits(
        hand_speed=limits.hand_speed,
        hand_acceleration=limits.hand_acceleration,
        turns=limits.turns,
        torque=limits.torque,
    )
    return pace.at(tempo.fastest(start, end))


def _standing(
    read: ReadShow,
    name: str,
    carriage: Carriage,
    props: Mapping[Side, Prop],
    trajectories: Mapping[Side, Trajectory],
    burns: tuple[tuple[float, float], ...],
    tempo: TempoMap,
    *,
    fly: bool,
) -> Dancer:
    return Dancer(
        name=name,
        body=carriage.body,
        props=props,
        trajectories=trajectories,
        floor=WalkPath(place=(0.0, 0.0)),
        lit=burns,
        deviation={
            side: hand_deviations_of(
                trajectory,
                props[side],
                tempo,
                hand=FlyingHand(
                    side=side,
                    prop=props[side],
                    carriage=carriage,
                    tempo=tempo,
                    limits=flown_limits(read.show.limits),
                )
                if fly
                else None,
            )
            for side, trajectory in trajectories.items()
        },
        carriage=carriage,
    )


def _trajectories(
    read: ReadShow,
    blocks: Sequence[Block],
    carriage: Carriage,
    props: Mapping[Side, Prop],
    danced: PlacedDance,
) -> dict[Side, Trajectory]:
    body = carriage.body
    spans = _spans(read, blocks, body, props, danced.book)
    limits = partial(link_limits, read.show.limits, danced.tempo)
    bridged = [(block.start, block.end) for block in blocks if block.link]
    trajectories: dict[Side, Trajectory] = {}
    for side in sorted(
        props, reverse=True
    ):  # the right hand is computed first, the left keeps clear of its prop
        trajectories[side] = assembled(
            spans[side],
            rest(side, body, props[side]),
            straight=bridged,
            space=hand_space_of(body, side, props[side]),
            other=trajectories.get("right"),
            carriage=carriage,
            stops=[
                HandStop(b.start, b.end, b.stop) for b in blocks if b.stop and side in b.stopped
            ],
            hangs=props[side].flexible,
            limits=limits,
        )
    return {side: trajectories[side] for side in props}


def _spans(
    read: ReadShow,
    blocks: Sequence[Block],
    body: Body,
    props: Mapping[Side, Prop],
    book: Mapping[str, library.Pattern],
) -> dict[Side, list[Span]]:
    """The blocks of each hand as laws."""
    tethers = {side: prop.length for side, prop in props.items()}
    spans: dict[Side, list[Span]] = {side: [] for side in props}
    for block in blocks:
        if block.link or block.stop:
            continue
        for side, law in _laws(read, block, body, tethers, book).items():
            refuse_whirls(read, block, law)
            spans[side].append(
                Span(
                    start=block.start,
                    end=block.end,
                    law=law,
                    origin=block.start,
                    kind="block",
                    label=block.hands[side].pattern,
                )
            )
    return {side: _touching(own) for side, own in spans.items()}


def _laws(
    read: ReadShow,
    block: Block,
    body: Body,
    tethers: Mapping[Side, float],
    book: Mapping[str, library.Pattern],
) -> dict[Side, Law]:
    hands = {side: (part.pattern, part.values) for side, part in block.hands.items()}
    danced = (block.timing, block.direction, block.cycle, block.shift, block.mirrored)

    def work() -> tuple[object, dict[Side, Law]]:
        laws = block_laws(
            hands,
            timing=block.timing,
            direction=block.direction,
            cycle=block.cycle,
            shift=block.shift,
            mirrored=block.mirrored,
            body=body,
            tethers=tethers,
            book=book,
        )
        return book, laws  # held, so that its id stays its own

    key = None
    with suppress(TypeError):  # a value of another package's pattern
        key = (id(book), content_key(hands, danced, body, tethers))
    try:
        # An edit leaves most blocks as they were: they are the same objects, of which bounds and keys are known.
        _, laws = recent("laws of blocks", key, work, most=_MOST_LAWS)
    except ValueError as error:
        where = (*block.path, "pattern")
        raise read.fault(
            "bad-pattern", where, str(error), "run `sequencer patterns` for names and parameters"
        ) from error
    return laws


def _touching(spans: list[Span]) -> list[Span]:
    """The same spans, with ends that differ only by rounding made equal."""
    met = spans[:1]
    for span in spans[1:]:
        before = met[-1].end
        near = abs(span.start - before) <= TOUCH
        met.append(replace(span, start=before) if near else span)
    return met
