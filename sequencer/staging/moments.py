"""Moments of a show file turned into beat coordinates, on one song."""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.show.document import PathKey
from sequencer.show.reading import ReadShow, nearest
from sequencer.timing.position import Clock, Moment, Position, SectionEdge
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

SNAP = 0.25  # beats: a section's border within this of a whole beat means that beat


@dataclass(frozen=True, slots=True)
class Moments:
    """Turns moments into beats; faults name their place in the file."""

    read: ReadShow
    song: Song
    tempo: TempoMap

    def beat(self, moment: Moment, path: Sequence[PathKey]) -> float:
        """Beat coordinate of a moment that stands at `path`.

        Raises
        ------
        InputError
            If the bar has no such beat, there is no such section, or it lies outside the track.
        """
        if isinstance(moment, Position):
            try:
                beat = self.tempo.beat_of(moment)
            except ValueError as error:
                raise self.read.fault(
                    "no-such-beat", path, str(error), "count beats from 1 in the song's metre"
                ) from None
        elif isinstance(moment, Clock):
            beat = float(self.tempo.beats_from_seconds(moment.seconds))
        else:
            names = self.song.section_names()
            if moment.name not in names:
                raise self.read.fault(
                    "unknown-section", path, f"the song has no section {moment.name!r}",
                    nearest(moment.name, list(names)),
                )  # fmt: skip
            beat = _edge(moment, self.song, self.tempo)
        seconds = float(self.tempo.seconds_from_beats(beat))
        if not -0.05 <= seconds <= self.song.duration + 0.05:
            last = self.tempo.position_of(float(self.tempo.beats_from_seconds(self.song.duration)))
            raise self.read.fault(
                "outside-the-track", path, f"{moment} lies outside the track",
                f"the track ends at {Clock(self.song.duration)}, that is {last}",
            )  # fmt: skip
        return beat


def beat_of(moment: Moment, song: Song, tempo: TempoMap) -> float:
    """Beat coordinate of a moment that stands in no file.

    Raises
    ------
    ValueError
        If the bar has no such beat, there is no such section, or it lies outside the track.
    """
    if isinstance(moment, Position):
        beat = tempo.beat_of(moment)
    elif isinstance(moment, Clock):
        beat = float(tempo.beats_from_seconds(moment.seconds))
    elif moment.name in song.section_names():
        beat = _edge(moment, song, tempo)
    else:
        near = nearest(moment.name, list(song.section_names()))
        raise ValueError(f"the song has no section {moment.name!r}; {near}")
    if not -0.05 <= float(tempo.seconds_from_beats(beat)) <= song.duration + 0.05:
        last = tempo.position_of(float(tempo.beats_from_seconds(song.duration)))
        raise ValueError(f"{moment} lies outside the track, which ends at {last}")
    return beat


def _edge(edge: SectionEdge, song: Song, tempo: TempoMap) -> float:
    section = song.sections[song.section_names().index(edge.name)]
    exact = float(tempo.beats_from_seconds(section.start if edge.edge == "start" else section.end))
    return float(round(exact)) if abs(exact - round(exact)) <= SNAP else exact
