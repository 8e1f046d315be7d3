"""The song as the show counts it: the detected beats with the performer's corrections applied."""

from dataclasses import replace
from math import floor
from pathlib import Path

from sequencer.show.model import TempoWords
from sequencer.show.reading import ReadShow
from sequencer.timing.corrections import Corrections, Level, corrected, steady_count
from sequencer.timing.position import Clock, SectionEdge, clock_text
from sequencer.timing.song import Song
from sequencer.timing.taps import given_count
from sequencer.timing.tempo import TempoMap


def as_counted(read: ReadShow, song: Song) -> tuple[Song, TempoMap]:
    """The corrected song and its tempo map.

    Raises
    ------
    InputError
        If a correction does not fit this song, the beat file cannot be used, or no steady beat was detected
        and none is given.
    """
    given = read.show.track.corrections
    path = ("track", "corrections")
    if isinstance(given.one, SectionEdge):
        raise read.fault(
            "bad-correction",
            (*path, "one"),
            f"{given.one} is not a beat",
            "write m:ss.s or bar.beat",
        )
    if given.steady is not None and not isinstance(given.steady.at, Clock):
        raise read.fault(
            "bad-correction", (*path, "steady", "at"), f"{given.steady.at} is not a moment of the track",
            "write m:ss.s",
        )  # fmt: skip
    if given.steady is not None and given.beats is not None:
        raise read.fault(
            "bad-correction", (*path, "steady"), "there is a file of beats as well",
            "leave out `steady` or `beats`",
        )  # fmt: skip
    constant, level = _tempo(given.tempo)
    brought = Corrections()
    if given.beats is not None:
        brought = given_count(Path(read.document.file).parent / given.beats)
    if given.steady is not None and isinstance(given.steady.at, Clock):
        brought = _steady(read, given.steady.tempo, given.steady.at.seconds, song)
    try:
        song = corrected(
            song,
            replace(
                brought,
                metre=given.metre or brought.metre,
                one=given.one,
                constant=constant,
                tempo=level,
                shift=given.shift,
            ),
        )
        counted = song.tempo_map()
    except ValueError as error:
        raise read.fault(
            "bad-correction",
            path,
            str(error),
            "look at the detected beats under Count on the page, or with `sequencer listen`",
        ) from error
    marks = tuple((mark.start, mark.name) for mark in given.sections)
    try:
        return corrected(song, Corrections(sections=marks)), counted
    except ValueError as error:
        raise read.fault(
            "bad-correction", (*path, "sections"), str(error),
            "give every section a moment of its own in the track, as m:ss.s or bar.beat",
        ) from error  # fmt: skip


def _tempo(words: TempoWords | None) -> tuple[bool, Level | None]:
    """Whether the tempo is constant, and at which level it is counted."""
    last = words.split()[-1] if words else None
    level: Level | None = "half" if last == "half" else "double" if last == "double" else None
    return bool(words and words.startswith("constant")), level


def _steady(read: ReadShow, tempo: float, one: float, song: Song) -> Corrections:
    """A steady count of one's own; what is wrong with it is told at its moment, or else at its tempo."""
    try:
        return steady_count(song, tempo, one, read.show.track.corrections.metre)
    except ValueError as error:
        inside = 0.0 <= one <= song.duration
        last = clock_text(floor(10 * song.duration) / 10)
        raise read.fault(
            "bad-correction", ("track", "corrections", "steady", "tempo" if inside else "at"), str(error),
            "write a faster tempo"
            if inside
            else f"write when you count a one, from 0:00.0 to {last}, the end of the track",
        ) from error  # fmt: skip
