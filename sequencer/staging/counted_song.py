"""The song as the show counts it: the detected beats with the performer's corrections applied."""

from dataclasses import replace
from pathlib import Path

from sequencer.show.reading import ReadShow
from sequencer.timing.corrections import Corrections, corrected, steady_count
from sequencer.timing.position import Clock, SectionEdge
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
    brought = Corrections()
    if given.beats is not None:
        brought = given_count(Path(read.document.file).parent / given.beats)
    try:
        if given.steady is not None and isinstance(given.steady.at, Clock):
            at = given.steady.at.seconds
            brought = steady_count(song, given.steady.tempo, at, given.metre)
        song = corrected(
            song,
            replace(
                brought,
                metre=given.metre or brought.metre,
                one=given.one,
                tempo=given.tempo,
                shift=given.shift,
                sections=tuple((mark.start, mark.name) for mark in given.sections),
            ),
        )
        return song, song.tempo_map()
    except ValueError as error:
        raise read.fault(
            "bad-correction",
            path,
            str(error),
            "look at the detected beats under Count on the page, or with `sequencer listen`",
        ) from error
