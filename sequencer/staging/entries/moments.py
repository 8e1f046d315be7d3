"""Converts the moments of a show file to beat coordinates on one song."""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.show.reading import ReadShow, nearest
from sequencer.show.text.plain_values import PathKey
from sequencer.timing.position import Clock, Moment, Position, SectionEdge
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

SNAP = 0.25  # beats: a section boundary this close to a whole beat means that beat


@dataclass(frozen=True, slots=True)
class Moments:
    """Converts moments to beats; errors give the position in the file."""

    read: ReadShow
    song: Song
    tempo: TempoMap

    def beat(self, moment: Moment, path: Sequence[PathKey]) -> float:
        """Beat coordinate of the moment at `path` in the file.

        Raises
        ------
        InputError
            If the bar has no such beat, the section does not exist, or the moment is outside the track.
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
                    _which(moment.name, names),
                )  # fmt: skip
            beat = _edge(moment, self.song, self.tempo)
        seconds = float(self.tempo.seconds_from_beats(beat))
        if not -0.05 <= seconds <= self.song.duration + 0.05:
            last = self.tempo.position_of(float(self.tempo.beats_from_seconds(self.song.duration)))
            raise self.read.fault(
                "outside-the-track", path, f"{moment} is outside the track",
                f"the track ends at {Clock(self.song.duration)}, that is {last}",
            )  # fmt: skip
        return beat


def beat_of(moment: Moment, song: Song, tempo: TempoMap) -> float:
    """Beat coordinate of a moment that is not from a file.

    Raises
    ------
    ValueError
        If the bar has no such beat, the section does not exist, or the moment is outside the track.
    """
    if isinstance(moment, Position):
        beat = tempo.beat_of(moment)
    elif isinstance(moment, Clock):
        beat = float(tempo.beats_from_seconds(moment.seconds))
    elif moment.name in song.section_names():
        beat = _edge(moment, song, tempo)
    else:
        which = _which(moment.name, song.section_names())
        raise ValueError(f"the song has no section {moment.name!r}; {which}")
    if not -0.05 <= float(tempo.seconds_from_beats(beat)) <= song.duration + 0.05:
        last = tempo.position_of(float(tempo.beats_from_seconds(song.duration)))
        raise ValueError(f"{moment} is outside the track, which ends at {last}")
    return beat


def _which(name: str, names: Sequence[str]) -> str:
    """Which section may be meant: each of those that share a name, or the one whose name is most alike."""
    alike = [each for each in names if each.rpartition(" ")[0] == name and each[-1].isdigit()]
    if len(alike) < 2:
        return nearest(name, list(names))
    return f"it has {len(alike)} of them: write {', '.join(alike[:-1])} or {alike[-1]}"


def _edge(edge: SectionEdge, song: Song, tempo: TempoMap) -> float:
    section = song.sections[song.section_names().index(edge.name)]
    exact = float(tempo.beats_from_seconds(section.start if edge.edge == "start" else section.end))
    return float(round(exact)) if abs(exact - round(exact)) <= SNAP else exact
