"""A show on its song: every moment turned into beats, every block into laws. What checks and outputs read."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from sequencer.geometry.bodies import Side
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.geometry.regions import Venue
from sequencer.motion.patterns.library import Pattern, patterns
from sequencer.motion.performers.dancer import Dancer
from sequencer.show.model import Show
from sequencer.show.reading import ReadShow
from sequencer.staging.kept import Kept
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

Path = tuple[str | int, ...]  # of keys and indices, into the show file
Spots = Mapping[str, tuple[float, float, float]]  # X [m], Y [m], facing [degrees]


@dataclass(frozen=True, slots=True, kw_only=True)
class HandWords:
    """One hand's part of a block."""

    pattern: str
    parameters: Mapping[str, Any]  # as the show file sets them
    fitted: Mapping[str, Any] = field(default_factory=dict)  # those found for this body and prop

    @property
    def values(self) -> dict[str, Any]:
        """What is danced: the parameters set, and those found."""
        return {**self.fitted, **self.parameters}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Block:
    """What one performer dances from `start` to `end`."""

    who: str
    start: float  # [beats]
    end: float  # [beats]
    hands: Mapping[Side, HandWords]  # empty for a link
    timing: Literal["together", "split", "quarter"]
    direction: Literal["same", "opposite"]
    cycle: float  # [beats] of one hand cycle
    shift: float  # [beats] into the pattern at the start
    mirrored: bool
    link: bool
    phrase: str | None
    note: str
    path: Path  # the entry or step of the show file that it comes from
    posture: Posture = UPRIGHT  # how the body gives way meanwhile

    def __repr__(self) -> str:
        return f"<Block of {self.who}: {self.title}, beats {self.start:g} … {self.end:g}>"

    @property
    def title(self) -> str:
        """Name for people: the pattern, or both hands' where they differ."""
        if self.link:
            return "link"
        names = list(dict.fromkeys(part.pattern for part in self.hands.values()))
        return " / ".join(names)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Standing:
    """A formation held from `start` to `end`, after a walk that began at `walk`."""

    formation: str
    walk: float  # [beats] = start where nobody walks
    start: float  # [beats]
    end: float  # [beats]
    spots: Spots
    path: Path


@dataclass(frozen=True, slots=True, kw_only=True)
class Lit:
    """One performer's burn."""

    who: str
    start: float  # [beats]
    end: float  # [beats]
    path: Path


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Staged:
    """A show, the song as corrected, and all that follows from the two."""

    file: str  # the show file, for people
    show: Show
    song: Song  # with the show's corrections
    tempo: TempoMap
    dancers: tuple[Dancer, ...]  # in the order of the cast
    blocks: tuple[Block, ...]  # by start, then cast order
    standings: tuple[Standing, ...]  # by start; the first holds from the song's start
    lit: tuple[Lit, ...]  # by start
    book: Mapping[str, Pattern] = field(default_factory=patterns)  # the show's own ones included
    venue: Venue = field(
        default_factory=Venue
    )  # stage, audience, ceiling, scenery and posts as geometry
    read: ReadShow | None = None  # what it was staged from, so that a change can be tried
    heard: Song | None = None  # the song before the show's corrections
    kept: Kept = field(default_factory=Kept, init=False, repr=False, compare=False)  # see there

    def __repr__(self) -> str:
        return (
            f"<Staged {self.show.title}: {len(self.dancers)} in the cast, {len(self.blocks)} blocks, "
            f"{self.song.duration:.1f} s at {self.song.tempo:.1f} beats/min>"
        )

    def seconds(self, beat: float) -> float:
        """Second of the track at a beat coordinate."""
        return float(self.tempo.seconds_from_beats(beat))

    def position(self, beat: float) -> str:
        """bar.beat of a beat coordinate, as text."""
        return str(self.tempo.position_of(beat))

    @property
    def span(self) -> tuple[float, float]:
        """From the song's start, or the first beat if that is earlier, to the end of all that is danced [beats]."""
        start = min(0.0, float(self.tempo.beats_from_seconds(0.0)))
        end = max(
            [float(self.tempo.beats_from_seconds(self.song.duration))]
            + [block.end for block in self.blocks]
        )
        return start, end

    def section_at(self, beat: float) -> str:
        """Name of the section that sounds at a beat coordinate; empty where none does."""
        second = self.seconds(beat) + 1e-6
        for section, name in zip(self.song.sections, self.song.section_names(), strict=True):
            if section.start <= second < section.end:
                return name
        return ""

    def blocks_of(self, who: str) -> tuple[Block, ...]:
        """One performer's blocks in turn."""
        return tuple(block for block in self.blocks if block.who == who)

    def lit_of(self, who: str) -> tuple[Lit, ...]:
        """One performer's burns in turn."""
        return tuple(span for span in self.lit if span.who == who)
