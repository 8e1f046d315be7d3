"""The song as the show counts it: what was heard, with the performer's corrections on top."""

from pathlib import Path

from sequencer.show.beat_files import BeatTimes, read_beats
from sequencer.show.reading import ReadShow
from sequencer.timing.corrections import Corrections, corrected
from sequencer.timing.position import SectionEdge
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap


def as_counted(read: ReadShow, song: Song) -> tuple[Song, TempoMap]:
    """The corrected song and its count.

    Raises
    ------
    InputError
        If a correction does not fit this song, the file of beats cannot be used, or no steady beat was
        heard and none is given.
    """
    given = read.show.track.corrections
    path = ("track", "corrections")
    if isinstance(given.one, SectionEdge):
        raise read.fault(
            "bad-correction", (*path, "one"), f"{given.one} is no beat", "write m:ss.s or bar.beat"
        )
    times = BeatTimes((), ())
    if given.beats is not None:
        times = read_beats(Path(read.document.file).parent / given.beats)
    try:
        song = corrected(
            song,
            Corrections(
                metre=given.metre,
                one=given.one,
                tempo=given.tempo,
                shift=given.shift,
                beats=times.beats,
                downbeats=times.downbeats,
                sections=tuple((mark.start, mark.name) for mark in given.sections),
            ),
        )
        return song, song.tempo_map()
    except ValueError as error:
        raise read.fault(
            "bad-correction", path, str(error), "see `sequencer listen` for what was heard"
        ) from error
