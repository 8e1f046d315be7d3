"""What was heard in a song, or said about it by hand: a plain record below every other room."""

from collections import Counter
from dataclasses import dataclass, field

import numpy as np

from sequencer.timing.tempo import TempoMap, bars_from_downbeats


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A stretch of the song; equal labels where the music repeats."""

    start: float  # [s]
    end: float  # [s]
    label: str
    energy: float = 0.0  # 0 … 1 of the song's loudest section


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One way to count the song, as likely as `share` among those weighed."""

    tempo: float  # [beats a minute] median
    metre: int  # beats a bar
    share: float  # 0 … 1; the shares of all readings add up to 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Song:
    """Beats, bars, sections and energy of one track."""

    track: str  # file name, for people
    sha256: str  # of the file's bytes
    duration: float  # [s]
    tempo: float  # [beats a minute] median
    metre: int  # beats a bar, the commonest
    beats: tuple[float, ...]  # [s] rising
    downbeats: tuple[float, ...]  # [s] a subset of `beats`
    sections: tuple[Section, ...]  # cover 0 … duration
    energy: tuple[float, ...] = ()  # 0 … 1, evenly spaced over the whole track
    confidence: dict[str, float] = field(default_factory=dict)  # 0 … 1 by subject
    bar_confidence: tuple[float, ...] = ()  # 0 … 1, one a downbeat: low means "listen here"
    readings: tuple[Reading, ...] = ()  # the likeliest first; the first is the one given here
    unsteady: tuple[tuple[float, float], ...] = ()  # [s] spans where no steady beat was heard

    def tempo_map(self) -> TempoMap:
        """The count that every other room uses.

        Raises
        ------
        ValueError
            If fewer than two beats, or no downbeat, were heard.
        """
        if len(self.beats) < 2:
            raise ValueError("no steady beat was heard")
        place = {time: index for index, time in enumerate(self.beats)}
        downbeats = [place[time] for time in self.downbeats]
        bars = bars_from_downbeats(len(self.beats), downbeats)
        return TempoMap(np.array(self.beats), first=-min(downbeats), bars=bars, metre=self.metre)

    def section_names(self) -> tuple[str, ...]:
        """One unique name a section: the label, numbered where it occurs again."""
        total = Counter(section.label for section in self.sections)
        seen: Counter[str] = Counter()
        names = []
        for section in self.sections:
            seen[section.label] += 1
            alone = total[section.label] == 1
            names.append(section.label if alone else f"{section.label} {seen[section.label]}")
        return tuple(names)
