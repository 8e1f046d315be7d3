"""From a show and a song to a staged show: moments become beats, blocks become laws, faults are reported."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import pairwise
from typing import Any

from sequencer.facts.flames import FASTEST_HEAD
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.fitting.pacing import Pace, usual_cycle
from sequencer.motion.laws.carriage import Carriage, carried
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns import library
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.hand_deviation import hand_deviations_of
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import LEAD_IN, assembled
from sequencer.motion.trajectories.link_limits import hand_space_of
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.show.pattern_book import book_from_document
from sequencer.show.reading import ReadShow
from sequencer.staging.carrying import carry_results, files_beside
from sequencer.staging.counted_song import as_counted
from sequencer.staging.dances import fitted_blocks
from sequencer.staging.expansion import expanded
from sequencer.staging.moments import Moments
from sequencer.staging.reuse import unchanged
from sequencer.staging.staged import Block, Lit, Staged, Standing, by_name
from sequencer.staging.standings import floor_path, standings
from sequencer.staging.venues import venue_of
from sequencer.staging.wicks import fastest_wick, flame_reach
from sequencer.timing.position import TOUCH
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap


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
    heard = song
    song, tempo = as_counted(read, song)
    moments = Moments(read, song, tempo)
    book = book_from_document(read.document)
    cycles = _CycleBeats(read, book, song.tempo)
    blocks = expanded(
        read,
        moments,
        partial(cycles, read.show.names),
        of=lambda who: partial(cycles, who),
    )
    names = [name for name in read.show.names if only is None or name in only]
    end = max((block.end for block in blocks), default=0.0)
    if only is not None:
        blocks = tuple(block for block in blocks if block.who in only)
    blocks = fitted_blocks(read.show, blocks, tempo, book)
    lit = _lit(read, moments)
    last = max(float(tempo.beats_from_seconds(song.duration)), end)
    stood = standings(read, moments, last)
    known = unchanged(before, read, tempo, blocks, lit) if before else {}
    own, burns = by_name(blocks), by_name(lit)
    show = Staged(
        file=read.document.file,
        show=read.show,
        song=song,
        tempo=tempo,
        dancers=tuple(
            replace(known[name], floor=floor_path(read, name, stood))
            if name in known
            else _dancer(read, name, own.get(name, ()), stood, burns.get(name, ()), book, tempo)
            for name in names
        ),
        blocks=blocks,
        standings=stood,
        lit=lit,
        venue=venue_of(read),
        book=book,
        read=read,
        heard=heard,
    )
    files_beside(show)  # before any of them is read
    if before is not None:
        carry_results(before, show)
    return show


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


def _dancer(
    read: ReadShow,
    name: str,
    blocks: tuple[Block, ...],
    stood: tuple[Standing, ...],
    lit: tuple[Lit, ...],
    book: Mapping[str, library.Pattern],
    tempo: TempoMap,
) -> Dancer:
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
    held = [(b.start, b.end, b.posture) for b in blocks if not b.link]
    carriage = carried(body, held, lead=LEAD_IN)
    trajectories = _trajectories(read, blocks, carriage, props, book)
    burns = tuple((span.start, span.end) for span in lit)
    for side, trajectory in trajectories.items():
        # Faster than any ordinary prop (a long rope): its flame is stretched farther.
        speed = fastest_wick(props[side], trajectory, burns, tempo)
        if speed > FASTEST_HEAD:
            reach = flame_reach(record.props[side], read.show.fire, speed=speed)
            props[side] = replace(props[side], flame_reach=reach)
    return Dancer(
        name=name,
        body=body,
        props=props,
        trajectories=trajectories,
        floor=floor_path(read, name, stood),
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
    bridged = [(block.start, block.end) for block in blocks if block.link]
    trajectories: dict[Side, Trajectory] = {}
    for side in sorted(
        props, reverse=True
    ):  # the right hand is computed first, the left keeps clear of its prop
        trajectories[side] = assembled(
            _touching(spans[side]),
            rest(side, body, props[side]),
            straight=bridged,
            space=hand_space_of(body, side, props[side]),
            other=trajectories.get("right"),
            carriage=carriage,
        )
    return {side: trajectories[side] for side in props}


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
