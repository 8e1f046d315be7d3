"""From a show and a song to a staged show: moments become beats, blocks become laws, faults are reported."""

from collections.abc import Collection, Hashable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import pairwise
from operator import attrgetter
from typing import Any

from sequencer.kept import recent
from sequencer.motion.fitting.pacing import Pace, usual_cycle
from sequencer.motion.patterns import library
from sequencer.motion.performers.dancer import Dancer
from sequencer.show.model import Limits
from sequencer.show.pattern_book import book_from_document
from sequencer.show.reading import ReadShow
from sequencer.staging.carrying import carry_results, files_beside
from sequencer.staging.dancers import PlacedDance, dancer_at, recent_dancer
from sequencer.staging.dances import fitted_blocks
from sequencer.staging.entries.counted_song import as_counted
from sequencer.staging.entries.expansion import expanded
from sequencer.staging.entries.moments import Moments
from sequencer.staging.entries.wish_faults import refuse_unknown_moves
from sequencer.staging.on_floor.standings import floor_path, standings
from sequencer.staging.on_floor.venues import venue_of
from sequencer.staging.reuse import same_song, same_vocabulary, unchanged
from sequencer.staging.show_part import near_part, show_part
from sequencer.staging.staged import Block, Lit, Staged, Standing, by_name
from sequencer.timing.position import TOUCH, Moment
from sequencer.timing.song import Song

BetweenMoments = tuple[Moment | None, Moment | None]
_MOST_CASTS = 32  # whose cycles are kept
_MOST_DANCED = 30  # shows whose blocks are kept: each weighs a kilobyte a block


def staged(
    read: ReadShow,
    song: Song,
    *,
    before: Staged | None = None,
    only: Collection[str] | None = None,
    fly: bool = True,
    between: BetweenMoments | None = None,
    key: Hashable | None = None,
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
    fly : bool
        Whether blocks whose hand work is large are flown for their margin, which takes seconds each; else the margin is
        the hand work. `before` is staged in the same way.
    between : tuple of Moment or None, optional
        Two moments: only what decides how everybody moves between them is staged. The whole show if left out.
    key : hashable, optional
        Of a whole show with an earlier staging: as for `dancers_anywhere`.

    Raises
    ------
    InputError
        If a moment, block, walk or pattern is invalid; the message gives the position in the file.
    ValueError
        If the moments of `between` are not in the song, or not one after the other.
    """
    if before is not None and only is None and between is None:
        danced = _recently_danced(read, song, before, key)
    else:
        danced = _danced(read, song, before, only, between)
    stood = standings(read, Moments(read, danced.song, danced.tempo), danced.last)
    known: dict[str, Dancer] = {}
    if before is not None:
        danceable = (*danced.blocks, *danced.stops)
        known = dict(unchanged(before, read, danced.tempo, danceable, danced.lit))
    dancers = tuple(
        replace(
            known[name] if name in known else recent_dancer(read, name, danced, fly=fly),
            floor=floor_path(read, name, stood),
        )
        for name in read.show.names
        if only is None or name in only
    )
    show = _placed(read, song, danced, dancers, stood)
    files_beside(show)  # before any of them is read
    if before is not None:
        carry_results(before, show)
    return show


def staged_alone(
    read: ReadShow,
    song: Song,
    name: str,
    *,
    before: Staged,
    fly: bool = True,
    key: Hashable | None = None,
) -> Staged:
    """A changed show with all of its blocks and one dancer, who stands anywhere: for checks that look at one after the other.

    Parameters
    ----------
    read : ReadShow
        The file with changes.
    song : Song
        The analysed song.
    name : str
        The performer.
    before : Staged
        The show without them.
    fly : bool
        As for `staged`.
    key : hashable, optional
        As for `dancers_anywhere`.

    Raises
    ------
    InputError
        As `staged`; what is invalid of another performer, or of a walk, may go unnoticed.
    """
    danced = _recently_danced(read, song, before, key)
    dancer = recent_dancer(read, name, danced, fly=fly)
    return _placed(read, song, danced, (dancer,), before.standings)


def _placed(
    read: ReadShow,
    song: Song,
    danced: PlacedDance,
    dancers: tuple[Dancer, ...],
    stood: tuple[Standing, ...],
) -> Staged:
    return Staged(
        file=read.document.file,
        show=read.show,
        song=danced.song,
        tempo=danced.tempo,
        dancers=dancers,
        blocks=danced.blocks,
        stops=danced.stops,
        accents=danced.accents,
        standings=stood,
        lit=danced.lit,
        missing=danced.missing,
        venue=venue_of(read),
        book=danced.book,
        read=read,
        heard=song,
        part=danced.part,
    )


def dancers_anywhere(
    read: ReadShow,
    names: Sequence[str],
    *,
    before: Staged,
    at: float | None = None,
    fly: bool = True,
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
        may be stretched farther. Elsewhere they mean nothing, but see `dancer_at`.
    fly : bool
        As for `staged`.
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
    danced = _recently_danced(read, before.heard, before, key)
    found = []
    for name in names:
        dancer = (
            recent_dancer(read, name, danced, fly=fly)
            if at is None
            else dancer_at(read, name, danced, at, fly=fly)
        )
        if dancer is None:
            return None
        found.append(dancer)
    return tuple(found)


def _recently_danced(
    read: ReadShow, heard: Song, before: Staged, key: Hashable | None
) -> PlacedDance:
    """The dance of a whole changed file; looked up if it is known by a key that it was a short while ago."""
    # The song is held, so that no other can have its id.
    of = None if key is None else (key, id(heard))
    _, danced = recent(
        "danced", of, lambda: (heard, _danced(read, heard, before)), most=_MOST_DANCED
    )
    return danced


def _danced(
    read: ReadShow,
    heard: Song,
    before: Staged | None,
    only: Collection[str] | None = None,
    between: BetweenMoments | None = None,
) -> PlacedDance:
    if before is not None and same_song(before, read, heard):
        song, tempo = before.song, before.tempo
    else:
        song, tempo = as_counted(read, heard)
    moments = Moments(read, song, tempo)
    if before is not None and same_vocabulary(before, read):
        book = before.book
    else:
        book = book_from_document(read.document)
    refuse_unknown_moves(read, book)
    cycles = _cycle_beats(read, book, song.tempo)
    found = expanded(
        read,
        moments,
        partial(cycles, read.written.names),
        of=lambda who: partial(cycles, who),
    )
    everything = (*found.blocks, *found.stops)
    there = frozenset(read.show.names)
    missing = tuple(block for block in everything if block.who not in there)
    if missing:
        found = found.of(there)
    end = max((block.end for block in everything), default=0.0)
    if only is not None:
        found = found.of(only)
    part = None if between is None else show_part(*between, song, tempo)
    blocks = fitted_blocks(read.show, found.blocks, tempo, book)
    stops, accents = found.stops, found.accents
    near: Collection[Block] = (*blocks, *stops)
    if part is not None:
        near = near_part((*blocks, *stops), part)
        blocks, stops = (
            tuple(block for block in each if part.touches(block)) for each in (blocks, stops)
        )
        accents = tuple(each for each in accents if part.start <= each.beat <= part.end)
    lit = _lit(read, moments)
    last = max(float(tempo.beats_from_seconds(song.duration)), end)
    return PlacedDance(
        song=song,
        tempo=tempo,
        book=book,
        blocks=blocks,
        stops=stops,
        accents=accents,
        part=part,
        lit=lit,
        missing=missing,
        last=last,
        own=by_name(sorted(near, key=attrgetter("start", "path"))),
        burns=by_name(lit),
    )


def pace_of(limits: Limits) -> Pace:
    """How fast a show's limits let anybody be: what decides the beats of a cycle that is left out."""
    return Pace(
        hand_speed=limits.hand_speed,
        hand_acceleration=limits.hand_acceleration,
        turns=limits.turns,
        head_speed=limits.head_speed,
        torque=limits.torque,
    )


def _cycle_beats(
    read: ReadShow, book: Mapping[str, library.Pattern], tempo: float
) -> "_CycleBeats":
    """Beats of the cycles; those of the last shows with the same cast, limits and patterns."""
    # By object, as a changed file keeps the records of the headings that it leaves: held, so that no other
    # can have their ids.
    parts = (read.show.limits, read.parts, *read.parts, book)
    same = (tempo, *(id(part) for part in (read.show.limits, *read.parts, book)))
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
        self._pace = pace_of(read.show.limits)
        self._props = {
            record.name: [own.held() for own in record.props.values()] for record in read.parts
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
        spans += [
            Lit(
                who=name,
                start=start,
                end=end,
                path=path,
                lit_by=span.lit_by,
                lit_at=span.lit_at,
                put_out_by=span.put_out_by,
                second_set=span.props == "second set",
            )
            for name in who
        ]
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
