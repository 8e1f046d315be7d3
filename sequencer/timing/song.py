"""Analysis of a song, detected or corrected by hand: a plain record that every layer can use."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import TYPE_CHECKING, Literal, TypeAlias, get_args

import numpy as np

from sequencer.timing.position import clock_text
from sequencer.timing.tempo import TempoMap, bars_from_downbeats
from sequencer.units import counted

if TYPE_CHECKING:
    import pandas as pd

SongTable: TypeAlias = Literal["bars", "beats", "sections"]
SURE_CONFIDENCE = 0.5  # confidence below which a bar should be listened to again
_RUN = 8  # bars of equal length that establish a metre; fewer count as shortened bars
_TOGETHER = 2  # bars; uncertain bars this close are reported as one span


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A section of the song; sections share a label where the music repeats."""

    start: float  # [s]
    end: float  # [s]
    label: str
    energy: float = 0.0  # 0 … 1: mean share of the song's music that is quieter
    variant: int = 0  # 0 as it came at first, 1, 2 … for other ways in which the same music returns
    confidence: float = 1.0  # 0 … 1: that a section begins at its start


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One way to count the song, with its probability among those considered."""

    tempo: float  # [beats/min] median
    metre: int  # beats per bar
    share: float  # 0 … 1; the shares of all readings sum to 1
    one: float = -1.0  # [s] a first beat of its bars; below 0 where that is not told


@dataclass(frozen=True, slots=True, kw_only=True)
class Song:
    """Beats, bars, sections and energy of one track."""

    track: str  # file name, for display
    sha256: str  # of the file's bytes
    duration: float  # [s]
    tempo: float  # [beats/min] median
    metre: int  # most common number of beats per bar
    beats: tuple[float, ...]  # [s] rising
    downbeats: tuple[float, ...]  # [s] a subset of `beats`
    count_in: int = 0  # beats before the first bar that only count the music in, as heard
    sections: tuple[Section, ...]  # cover 0 … duration
    turns: tuple[
        tuple[float, float], ...
    ] = ()  # [s], 0 … 1: where else a section may begin, and how likely, on the scale of sections
    energy: tuple[float, ...] = ()  # 0 … 1, evenly spaced over the whole track: what is quieter
    loudness: tuple[float, ...] = ()  # [LUFS] of each tenth of a second, mixed to one channel
    integrated: float | None = None  # [LUFS] loudness of the whole track, of all channels
    brightness: tuple[float, ...] = ()  # 0 … 1, evenly spaced over the whole track: low to high
    onsets: tuple[float, ...] = ()  # [s] strokes, rising
    onset_strengths: tuple[float, ...] = ()  # of each: 1 for the strong ones of the song, at most 2
    confidence: dict[str, float] = field(default_factory=dict)  # 0 … 1 by subject
    bar_confidence: tuple[float, ...] = ()  # 0 … 1, one per downbeat: low means "listen here"
    readings: tuple[Reading, ...] = ()  # most likely first; the first is the one used here
    unsteady: tuple[tuple[float, float], ...] = ()  # [s] spans where no steady beat was detected
    warnings: tuple[str, ...] = ()  # anything unusual about the file, one line each

    def __repr__(self) -> str:
        return (
            f"<Song {self.track}: {clock_text(self.duration)} min, {self.tempo:.1f} beats/min, "
            f"{counted(len(self.beats), 'beat')}, {counted(len(self.downbeats), 'bar')}, "
            f"{counted(len(self.sections), 'section')}>"
        )

    def to_frame(self, table: SongTable = "bars") -> "pd.DataFrame":
        """The analysis as a pandas data frame.

        Parameters
        ----------
        table : {"bars", "beats", "sections"}
            Bars, one per row: `bar` (from 1), `start` and `end` [s], `beats` (of a whole bar; the song may
            end within the last one), `tempo` [beats a minute], `confidence` (0 … 1, NaN where it is not
            known), `section` (its name).
            Beats, one per row: `bar` and `beat` (from 1; bars before the first full one are 0, −1, …),
            `seconds`.
            Sections, one per row: `section` (its name), `label` (equal where the music repeats), `start`
            and `end` [s], `energy` (0 … 1).

        Returns
        -------
        frame : DataFrame

        Raises
        ------
        ValueError
            If there is no such table, or no steady beat was detected.
        """
        from sequencer.timing import count_tables

        if table == "sections":
            return self._sections_frame()
        if table == "beats":
            return count_tables.beats_frame(self.tempo_map())
        if table == "bars":
            names = [self._section_at(start) for start in self.downbeats]
            return count_tables.bars_frame(self.tempo_map(), len(names), self.bar_confidence, names)
        raise ValueError(f"table must be one of {', '.join(get_args(SongTable))}, got {table!r}")

    def _sections_frame(self) -> "pd.DataFrame":
        import pandas as pd

        rows = [
            (name, part.label, part.start, part.end, part.energy)
            for part, name in zip(self.sections, self.section_names(), strict=True)
        ]
        return pd.DataFrame(rows, columns=["section", "label", "start", "end", "energy"])

    def _section_at(self, seconds: float) -> str:
        """Name of the section at a time [s]; empty if there is none."""
        for part, name in zip(self.sections, self.section_names(), strict=True):
            if part.start <= seconds + 1e-6 < part.end:
                return name
        return ""

    def tempo_map(self) -> TempoMap:
        """The tempo map that everything else uses.

        Raises
        ------
        ValueError
            If fewer than two beats, or no downbeat, were detected.
        """
        if len(self.beats) < 2:
            raise ValueError("no steady beat was detected")
        downbeats = self._firsts()
        bars = bars_from_downbeats(len(self.beats), downbeats)
        return TempoMap(np.array(self.beats), first=-min(downbeats), bars=bars, metre=self.metre)

    def shift_of(self, reading: Reading) -> int:
        """Beats from a one of this count to the one of a reading of the same metre, as it goes on; 0 where that is not told."""
        if reading.one < 0 or len(self.beats) < 2 or not self.downbeats:
            return 0
        beats = np.array(self.beats)
        place = int(np.argmin(np.abs(beats - reading.one)))
        firsts = np.array(self._firsts())
        before = firsts[firsts <= place]
        return int(place - (before[-1] if len(before) else firsts[0])) % self.metre

    def unsure_bars(self) -> tuple[tuple[int, int], ...]:
        """Ranges of bars with an uncertain count, as first and last bar, counted from 1."""
        unsure = [k + 1 for k, share in enumerate(self.bar_confidence) if share < SURE_CONFIDENCE]
        starts = [
            k for k, before in zip(unsure, [-9, *unsure], strict=False) if k - before > _TOGETHER
        ]
        ends = [a for a, b in pairwise([*unsure, 10**9]) if b - a > _TOGETHER]
        return tuple(zip(starts, ends, strict=True))

    def metres(self) -> tuple[tuple[int, int], ...]:
        """Runs of bars of equal length: the run's first bar, counted from 1, and its beats per bar."""
        lengths = np.diff(self._firsts()).tolist()
        runs: list[tuple[int, int]] = []
        for k, length in enumerate(lengths):
            same = lengths[k : k + _RUN]
            if len(same) == _RUN and len(set(same)) == 1 and (not runs or runs[-1][1] != length):
                runs.append((k + 1, length))
        return tuple(runs) or ((1, self.metre),)

    def odd_bars(self) -> tuple[tuple[int, int], ...]:
        """Bars, counted from 1, that are shorter or longer than those of their run, and their beats."""
        lengths = np.diff(self._firsts()).tolist()
        bars = enumerate(zip(lengths, self._usual(), strict=False), start=1)
        return tuple((bar, length) for bar, (length, usual) in bars if length != usual)

    def stretches(self) -> tuple[tuple[int, int], ...]:
        """Where the count restarts: indices of first beats, with the beats per bar from there on.

        At the first bar, wherever the metre changes, and after each bar of another length.
        """
        firsts, usual = self._firsts(), self._usual()
        after = {bar + 1 for bar, _ in self.odd_bars()}
        return tuple(
            (first, metre)
            for bar, (first, metre) in enumerate(zip(firsts, usual, strict=True), start=1)
            if bar == 1 or bar in after or metre != usual[bar - 2]
        )

    def _firsts(self) -> list[int]:
        place = {time: index for index, time in enumerate(self.beats)}
        return [place[time] for time in self.downbeats]

    def _usual(self) -> list[int]:
        """Beats per bar of the run that each bar belongs to, including the last bar."""
        runs = self.metres()
        return [
            next((m for first, m in reversed(runs) if first <= bar), runs[0][1])
            for bar in range(1, len(self.downbeats) + 1)
        ]

    def section_names(self) -> tuple[str, ...]:
        """A unique name for each section: the label, numbered if it occurs more than once."""
        return numbered([section.label for section in self.sections])


def numbered(labels: Sequence[str]) -> tuple[str, ...]:
    """A unique name for each label: itself, numbered if it occurs more than once."""
    total, seen = Counter(labels), Counter[str]()
    names = []
    for label in labels:
        seen[label] += 1
        names.append(label if total[label] == 1 else f"{label} {seen[label]}")
    return tuple(names)
