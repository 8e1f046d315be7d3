"""From a show and a song to a staged show: moments become beats, blocks become laws, faults are reported."""

from collections.abc import Collection, Hashable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise
from typing import Any

from sequencer.facts.flames import FASTEST_HEAD
from sequencer.geometry.bodies import Body, Side
from sequencer.kept import recent
from sequencer.motion.fitting.pacing import Pace, usual_cycle
from sequencer.motion.laws.carriage import Carriage, carried
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns import library
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.hand_deviation import hand_deviations_of
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import LEAD_IN, assembled
from sequencer.motion.trajectories.link_limits import hand_space_of
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import BLEND_HALF_WIDTH, Span, Trajectory
from sequencer.show.model import Performer
from sequencer.show.pattern_book import book_from_document
from sequencer.show.reading import ReadShow
from sequencer.staging.carrying import carry_results, files_beside
from sequencer.staging.counted_song import as_counted
from sequencer.staging.dances import fitted_blocks
from sequencer.staging.expansion import expanded
from sequencer.staging.moments import Moments
from sequencer.staging.reuse import dance_key, same_song, same_vocabulary, unchanged
from sequencer.staging.staged import Block, Lit, Staged, by_name
from sequencer.staging.standings import floor_path, standings
from sequencer.staging.venues import venue_of
from sequencer.staging.wicks import fastest_wick, flame_reach
from sequencer.timing.position import TOUCH
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

_MOST_CASTS = 32  # whose cycles are kept
_MOST_DANCED = 200  # shows whose blocks are kept
_MOST_DANCERS = 500  # who are kept
_NEAR = 1.0  # [beats] around an instant: what is farther changes no blend that reaches it


def staged(
    read: ReadShow,
    song: Song,
    *,
    before: Staged | None = None,
    only: Collection[str] | None = None,
) -> Staged:
    """Place a show on its song.

    Parameters
    ----------
    read : ReadShow
        The show and the document it came from.
    song : Song
        The analysed song; the show's corrections are applied here.
    before : Staged, optional
        An earlier staging of the same file: performers whose dance is still the same are taken from it,
        and results that still hold.
    only : collection of str, optional
        Performers that are staged; the others have no blocks and no dancer. Everybody if left out.

    Raises
    ------
    InputError
        If a moment, block, walk or pattern is invalid; the message gives the position in the file.
    """
    danced = _danced(read, song, before, only)
    stood = standings(read, danced.moments, danced.last)
    known = unchanged(before, read, danced.tempo, danced.blocks, danced.lit) if before else {}
    show = Staged(
        file=read.document.file,
        show=read.show,
        song=danced.song,
        tempo=danced.tempo,
        dancers=tuple(
            replace(
                known[name] if name in known else _recent_dancer(read, name, danced),
                floor=floor_path(read, name, stood),
            )
            for name in read.show.names
            if only is None or name in only
        ),
        blocks=danced.blocks,
        standings=stood,
        lit=danced.lit,
        venue=venue_of(read),
        book=danced.book,
        read=read,
        heard=song,
    )
    files_beside(show)  # before any of them is read
    if before is not None:
        carry_results(before, show)
    return show


def dancers_anywhere(
    read: ReadShow,
    names: Sequence[str],
    *,
    before: Staged,
    at: float | None = None,
    key: Hashable | None = None,
) -> tuple[Dancer, ...] | None:
    """Some performers of a changed show file, standing anywhere; nobody else is staged.

    Parameters
    ----------
    read : ReadShow
        The file with changes anywhere but in formations and staging.
    names : sequence of str
    before : Staged
        The show without them.
    at : float, optional
        A beat at which they are only looked at: there they are as in the whole show, or smaller, since a flame
        may be stretched farther. Elsewhere they mean nothing.
    key : hashable, optional
        Known by all that the file says apart from formations and staging, if nothing else decides the dance.

    Returns
    -------
    dancers : tuple of Dancer
        In the order of the names; None if a link or a rest may decide how one of them is at that beat.

    Raises
    ------
    InputError
        If a moment, block or pattern is invalid; one of another performer may go unnoticed.
    ValueError
        If the show was not staged from a file.
    """
    if before.heard is None:
        raise ValueError("this show does not remember its song")
    # The song is held, so that no other can have its id.
    heard = before.heard
    of = None if key is None else (key, id(heard))
    _, danced = recent(
        "danced", of, lambda: (heard, _danced(read, heard, before)), most=_MOST_DANCED
    )
    found = []
    for name in names:
        dancer = (
            _recent_dancer(read, name, danced) if at is None else _dancer_at(read, name, danced, at)
        )
        if dancer is None:
            return None
        found.append(dancer)
    return tuple(found)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Danced:
    """What a file says on the dance, as beats."""

    song: Song
    tempo: TempoMap
    moments: Moments
    book: Mapping[str, library.Pattern]
    blocks: tuple[Block, ...]
    lit: tuple[Lit, ...]
    own: Mapping[str, tuple[Block, ...]]  # blocks of each performer who has any
    burns: Mapping[str, tuple[Lit, ...]]  # of each performer who has any
    last: float  # [beats]


def _danced(
    read: ReadShow, heard: Song, before: Staged | None, only: Collection[str] | None = None
) -> _Danced:
    if before is not None and same_song(before, read, heard):
        song, tempo = before.song, before.tempo
    else:
        song, tempo = as_counted(read, heard)
    moments = Moments(read, song, tempo)
    if before is not None and same_vocabulary(before, read):
        book = before.book
    else:
        book = book_from_document(read.document)
    cycles = _cycle_beats(read, book, song.tempo)
    blocks = expanded(
        read,
        moments,
        partial(cycles, read.show.names),
        of=lambda who: partial(cycles, who),
    )
    end = max((block.end for block in blocks), default=0.0)
    if only is not None:
        blocks = tuple(block for block in blocks if block.who in only)
    blocks = fitted_blocks(read.show, blocks, tempo, book)
    lit = _lit(read, moments)
    last = max(float(tempo.beats_from_seconds(song.duration)), end)
    return _Danced(
        song=song,
        tempo=tempo,
        moments=moments,
        book=book,
        blocks=blocks,
        lit=lit,
        last=last,
        own=by_name(blocks),
        burns=by_name(lit),
    )


def _cycle_beats(
    read: ReadShow, book: Mapping[str, library.Pattern], tempo: float
) -> "_CycleBeats":
    """Beats of the cycles; those of the last shows with the same cast, limits and patterns."""
    # By object, as a changed file keeps the records of the headings that it leaves: held, so that no other
    # can have their ids.
    parts = (read.show.limits, read.show.cast, *read.show.cast, book)
    same = (tempo, *(id(part) for part in (read.show.limits, *read.show.cast, book)))
    _, cycles = recent(
        "cycle beats", same, lambda: (parts, _CycleBeats(read, book, tempo)), most=_MOST_CASTS
    )
    return cycles


class _CycleBeats:
    """Beats of one cycle of a pattern; an unknown pattern is reported where it is first used.

    Performers of one entry stay together: one number for the song's tempo and all their props.
    """

    def __init__(self, read: ReadShow, book: Mapping[str, library.Pattern], tempo: float) -> None:
        self._book, self._tempo = book, tempo
        limits = read.show.limits
        self._pace = Pace(
            hand_speed=limits.hand_speed,
            hand_acceleration=limits.hand_acceleration,
            turns=limits.turns,
            head_speed=limits.head_speed,
            torque=limits.torque,
        )
        self._props = {
            record.name: [own.held() for own in record.props.values()] for record in read.show.cast
        }
        self._known: dict[str, float] = {}

    def __call__(self, who: Sequence[str], pattern: str, parameters: Mapping[str, Any]) -> float:
        key = f"{sorted(who)} {pattern} {sorted(parameters.items())!r}"
        if key not in self._known:
            try:
                self._known[key] = usual_cycle(
                    pattern, parameters, tempo=self._tempo, pace=self._pace, book=self._book,
                    props=[prop for name in who for prop in self._props.get(name, ())],
                )  # fmt: skip
            except ValueError:
                self._known[key] = 1.0  # block_laws says it, with the place of the block
        return self._known[key]


def _lit(read: ReadShow, moments: Moments) -> tuple[Lit, ...]:
    if read.show.fire is None:
        return ()
    spans = []
    for i, span in enumerate(read.show.fire.lit):
        path = ("fire", "lit", i)
        start = moments.beat(span.start, (*path, "from"))
        end = moments.beat(span.until, (*path, "until"))
        if end <= start + TOUCH:
            raise read.fault(
                "ends-before-start", (*path, "until"), f"{span.until} is not after {span.start}",
                "choose a later moment",
            )  # fmt: skip
        who = read.show.names if "all" in span.who else span.who
        spans += [Lit(who=name, start=start, end=end, path=path) for name in who]
    order = {name: k for k, name in enumerate(read.show.names)}
    spans.sort(key=lambda span: (span.start, order[span.who]))
    for name in read.show.names:
        own = [span for span in spans if span.who == name]
        for before, after in pairwise(own):
            if after.start < before.end - TOUCH:
                raise read.fault(
                    "lit-twice", after.path, f"{name} is lit here while still burning",
                    f"start it after {moments.tempo.position_of(before.end)}",
                )  # fmt: skip
    return tuple(spans)


def _recent_dancer(read: ReadShow, name: str, danced: _Danced) -> Dancer:
    """A performer, standing anywhere; one who danced the same a short while ago is looked up."""
    own, burns = danced.own.get(name, ()), danced.burns.get(name, ())
    key = dance_key(read, name, danced.tempo, own, burns)
    return recent("dancer", key, lambda: _dancer(read, name, danced), most=_MOST_DANCERS)


def _dancer(read: ReadShow, name: str, danced: _Danced) -> Dancer:
    """A performer, standing anywhere."""
    tempo = danced.tempo
    record, body, props = _performer(read, name)
    own = danced.own.get(name, ())
    carriage = _carriage(body, own)
    trajectories = _trajectories(read, own, carriage, props, danced.book)
    burns = _burns(danced, name)
    for side, trajectory in trajectories.items():
        # Faster than any ordinary prop (a long rope): its flame is stretched farther.
        speed = fastest_wick(props[side], trajectory, burns, tempo)
        if speed > FASTEST_HEAD:
            reach = flame_reach(record.props[side], read.show.fire, speed=speed)
            props[side] = replace(props[side], flame_reach=reach)
    return _standing(name, carriage, props, trajectories, burns, tempo)


def _dancer_at(read: ReadShow, name: str, danced: _Danced, beat: float) -> Dancer | None:
    """A performer at one beat, standing anywhere; None if a link or a rest may decide how they are then."""
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
    return _standing(name, carriage, props, trajectories, _burns(danced, name), danced.tempo)


def _run_through(spans: Sequence[Span], low: float, high: float) -> list[Span]:
    """The spans that follow each other without a gap from one beat to another or farther; none if there is a gap."""
    run = [span for span in spans if span.start < high and span.end > low]
    whole = run and run[0].start <= low and run[-1].end >= high
    return run if whole and all(a.end == b.start for a, b in pairwise(run)) else []


def _performer(read: ReadShow, name: str) -> tuple[Performer, Body, dict[Side, Prop]]:
    """A performer of the cast, with their body and the props they hold."""
    index = read.show.names.index(name)
    record = read.show.cast[index]
    try:
        body = record.body
        props = {
            side: own.held(flame_reach(own, read.show.fire)) for side, own in record.props.items()
        }
    except ValueError as error:
        raise read.fault(
            "bad-value", ("cast", index), str(error), "see docs/show-file.md for what is allowed"
        ) from error
    return record, body, props


def _carriage(body: Body, blocks: Sequence[Block]) -> Carriage:
    return carried(body, [(b.start, b.end, b.posture) for b in blocks if not b.link], lead=LEAD_IN)


def _burns(danced: _Danced, name: str) -> tuple[tuple[float, float], ...]:
    return tuple((span.start, span.end) for span in danced.burns.get(name, ()))


def _standing(
    name: str,
    carriage: Carriage,
    props: Mapping[Side, Prop],
    trajectories: Mapping[Side, Trajectory],
    burns: tuple[tuple[float, float], ...],
    tempo: TempoMap,
) -> Dancer:
    return Dancer(
        name=name,
        body=carriage.body,
        props=props,
        trajectories=trajectories,
        floor=WalkPath(place=(0.0, 0.0)),
        lit=burns,
        deviation={
            side: hand_deviations_of(trajectory, props[side], tempo)
            for side, trajectory in trajectories.items()
        },
        carriage=carriage,
    )


def _trajectories(
    read: ReadShow,
    blocks: Sequence[Block],
    carriage: Carriage,
    props: Mapping[Side, Prop],
    book: Mapping[str, library.Pattern],
) -> dict[Side, Trajectory]:
    body = carriage.body
    spans = _spans(read, blocks, body, props, book)
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
        if block.link:
            continue
        for side, law in _laws(read, block, body, tethers, book).items():
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
    try:
        return block_laws(
            {side: (part.pattern, part.values) for side, part in block.hands.items()},
            timing=block.timing,
            direction=block.direction,
            cycle=block.cycle,
            shift=block.shift,
            mirrored=block.mirrored,
            body=body,
            tethers=tethers,
            book=book,
        )
    except ValueError as error:
        where = (*block.path, "pattern")
        raise read.fault(
            "bad-pattern", where, str(error), "run `sequencer patterns` for names and parameters"
        ) from error


def _touching(spans: list[Span]) -> list[Span]:
    """The same spans, with ends that differ only by rounding made equal."""
    met = spans[:1]
    for span in spans[1:]:
        before = met[-1].end
        near = abs(span.start - before) <= TOUCH
        met.append(replace(span, start=before) if near else span)
    return met
