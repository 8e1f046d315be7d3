"""Borders of sections that keep their moment of the song while the count is put right."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from sequencer.desk.file.show_operations import done_on
from sequencer.show.operations.operation import shown_text
from sequencer.show.reading import ReadShow
from sequencer.staging.entries.counted_song import as_counted
from sequencer.timing.position import Clock, Moment, Position, clock_text
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

_ON_BEAT = 0.03  # [s] a border so near a beat is written as that beat: nobody hears the difference
_LEAST = 0.1  # [s] that the first section lasts


def held_count(
    text: str, read: ReadShow, heard: Song, seconds: Sequence[float], before: float
) -> tuple[str, list[list[str]] | None]:
    """A text on whose count sections begin when they did, and how they are written; None if they stay as they are.

    Parameters
    ----------
    text : str
        The show file with the count that is thought of.
    read : ReadShow
        What it says.
    heard : Song
        As it was detected.
    seconds : sequence of float
        When each section of the file begins [s].
    before : float
        By how much all beats were later on the count before [s].
    """
    moments = held_borders(read, heard, seconds, read.show.track.corrections.shift - before)
    return held_text(text, Path(read.document.file).name, moments) if moments else (text, None)


def held_borders(
    read: ReadShow, heard: Song, seconds: Sequence[float], shift: float
) -> dict[int, str]:
    """Moments by which borders begin when they did, where what the file says would be another moment on its new count.

    Parameters
    ----------
    read : ReadShow
        With the count that is thought of.
    heard : Song
        As it was detected.
    seconds : sequence of float
        When each section of the file begins, in its order [s].
    shift : float
        By how much later than before all beats are [s]: a border moves along with the beats.

    Returns
    -------
    moments : dict of int to str
        By number in the list; bar.beat where that is a beat, else m:ss.sss. Empty if the sections are not as many as `seconds`.

    Raises
    ------
    InputError
        If the count does not fit this song.
    """
    given = read.show.track.corrections
    marks = given.sections
    if len(marks) != len(seconds):
        return {}
    track = read.show.track.model_copy(
        update={"corrections": given.model_copy(update={"sections": ()})}
    )
    bare = replace(read, show=read.show.model_copy(update={"track": track}))
    _, tempo = as_counted(bare, heard)
    out = {}
    for k, (mark, at) in enumerate(zip(marks, seconds, strict=True)):
        now = _second(tempo, mark.start)
        if now is None:
            continue
        if k == 0 and at == 0.0 and (len(seconds) == 1 or -1.0 <= now < seconds[1] - _LEAST):
            continue  # the first begins with the track, whatever it says
        if min(abs(now - at), abs(now - at - shift)) > _ON_BEAT:
            out[k] = moment_text(tempo, at)
    return out


def held_text(text: str, file: str, moments: Mapping[int, str]) -> tuple[str, list[list[str]]]:
    """A show file with moments of sections written anew, and all its sections as `set-sections` takes them.

    Parameters
    ----------
    text, file : str
        The show file, and its name for messages.
    moments : mapping of int to str
        As `held_borders` gives them.
    """
    rows = shown_text(text, file).value("track", "corrections", "sections")
    sections = [[moments.get(k, str(row["from"])), str(row["name"])] for k, row in enumerate(rows)]
    after, _ = done_on(text, file, {"do": "set-sections", "sections": sections})
    return after, sections


def moment_text(tempo: TempoMap, seconds: float) -> str:
    """A moment of the track as a show file says it: bar.beat where that is a beat, else m:ss.sss."""
    beat = round(float(tempo.beats_from_seconds(seconds)))
    if beat >= 0 and abs(float(tempo.seconds_from_beats(beat)) - seconds) <= _ON_BEAT:
        return tempo.position_text(beat)
    return clock_text(seconds, decimals=3)


def _second(tempo: TempoMap, moment: Moment) -> float | None:
    """When a moment of the file is; None for the edge of a section that was heard, which no count moves."""
    if isinstance(moment, Clock):
        return moment.seconds
    if isinstance(moment, Position):
        try:
            return float(tempo.seconds_from_beats(tempo.beat_of(moment)))
        except ValueError:  # there is no such beat in its bar any more
            return float("inf")
    return None
