"""A show placed on its song: moments as beats, blocks as laws. The input to checks and outputs."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from operator import itemgetter
from typing import Any, Literal, Protocol, TypeVar

from sequencer.geometry.bodies import Side
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.geometry.regions import Venue
from sequencer.motion.patterns.library import Pattern, patterns
from sequencer.motion.performers.dancer import Dancer
from sequencer.show.model import Show, StopKind
from sequencer.show.reading import ReadShow
from sequencer.staging.results import Results, once_per_show
from sequencer.timing.position import TOUCH
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap
from sequencer.units import aloud, at_aloud, counted

Path = tuple[str | int, ...]  # of keys and indices, into the show file
Spots = Mapping[str, tuple[float, float, float]]  # X [m], Y [m], facing [degrees]


@dataclass(frozen=True, slots=True, kw_only=True)
class HandWords:
    """One hand's part of a block."""

    pattern: str
    parameters: Mapping[str, Any]  # set in the show file
    fitted: Mapping[str, Any] = field(default_factory=dict)  # fitted to this body and prop

    @property
    def values(self) -> dict[str, Any]:
        """All parameters: those set and those fitted."""
        return {**self.fitted, **self.parameters}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Block:
    """One performer's pattern, link or stop from `start` to `end`."""

    who: str
    start: float  # [beats]
    end: float  # [beats]
    hands: Mapping[Side, HandWords]  # empty for a link and for a stop
    timing: Literal["together", "split", "quarter"]
    direction: Literal["same", "opposite"]
    cycle: float  # [beats] of one hand cycle
    shift: float  # [beats] into the pattern at the start
    mirrored: bool
    link: bool
    phrase: str | None
    note: str
    path: Path  # path of its entry or step in the show file
    posture: Posture = UPRIGHT  # posture of the body during the block
    stop: StopKind | None = None
    stopped: tuple[Side, ...] = ()  # hands that stop
    cue: str = ""  # to say or think as it begins

    def __repr__(self) -> str:
        return f"<Block of {self.who}: {self.title}, beats {self.start:g} … {self.end:g}>"

    @property
    def title(self) -> str:
        """Display name: the pattern, or both hands' patterns if they differ; what a stop is."""
        if self.stop:
            return f"stop for {counted(self.end - self.start, 'beat')}"
        if self.link:
            return "link"
        names = list(dict.fromkeys(part.pattern for part in self.hands.values()))
        return " / ".join(names)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Coming:
    """One performer who comes on from the wings, or goes off into them."""

    who: str
    on: bool  # comes on; else goes off
    start: float  # [beats]
    end: float  # [beats]
    place: tuple[float, float]  # [m, stage frame] where they wait in the wings
    side: str  # stage left, stage right or upstage; empty for a place of its own
    goal: tuple[float, float, float]  # X [m], Y [m], facing [degrees] where the walk ends
    path: Path

    @property
    def words(self) -> str:
        """What happens: "comes on from stage left"."""
        if self.on:
            return f"comes on from {self.side}" if self.side else "comes on"
        return f"goes off to {self.side}" if self.side else "goes off"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Standing:
    """A formation held from `start` to `end`, after a walk that began at `walk`."""

    formation: str
    walk: float  # [beats] equal to start if nobody walks
    start: float  # [beats]
    end: float  # [beats]
    spots: Spots
    path: Path
    comings: tuple[Coming, ...] = ()  # who comes on or goes off meanwhile, each in their own time
    waiting: tuple[str, ...] = ()  # who is in the wings once it is taken

    def comings_of(self, who: str) -> tuple[Coming, ...]:
        """How somebody comes on or goes off meanwhile, in order; empty if they do not."""
        return tuple(each for each in self.comings if each.who == who)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lit:
    """One performer's burn."""

    who: str
    start: float  # [beats] all of this start are alight, and the burn begins
    end: float  # [beats] putting out begins
    path: Path
    lit_by: str | None = None  # as entered for this span
    lit_at: tuple[float, float] | None = None  # [m, stage frame] as entered
    put_out_by: str | None = None  # as entered
    second_set: bool = False  # relit with another set of props, soaked beforehand


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Accent:
    """A beat that one performer must hit."""

    who: str
    beat: float  # [beats]
    phrase: str | None
    note: str
    path: Path


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowPart:
    """A part of a show, and the window around it in which its performers move as in the whole show."""

    start: float  # [beats]
    end: float  # [beats]
    low: float  # [beats]
    high: float  # [beats]

    def overlaps(self, start: float, end: float) -> bool:
        """Whether something from one beat to another lies in it, at least for a while."""
        return end > self.start + TOUCH and start < self.end - TOUCH

    def touches(self, block: Block) -> bool:
        """Whether a block lies in the part, reaches into it or ends or begins at its border."""
        return block.end >= self.start - TOUCH and block.start <= self.end + TOUCH


class _OfOne(Protocol):
    """What belongs to one performer: a block, a burn, an accent."""

    @property
    def who(self) -> str: ...


Own = TypeVar("Own", bound=_OfOne)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Staged:
    """A show, its corrected song, and everything derived from the two."""

    file: str  # name of the show file, for display
    show: Show
    song: Song  # with the show's corrections
    tempo: TempoMap
    dancers: tuple[Dancer, ...]  # in the order of the cast
    blocks: tuple[Block, ...]  # by start, then cast order
    standings: tuple[Standing, ...]  # by start; the first applies from the start of the song
    lit: tuple[Lit, ...]  # by start
    stops: tuple[Block, ...] = ()  # rests and holds, by start, then cast order
    accents: tuple[Accent, ...] = ()  # by beat, then cast order
    book: Mapping[str, Pattern] = field(
        default_factory=patterns
    )  # including the show's own patterns
    venue: Venue = field(
        default_factory=Venue
    )  # stage, audience, ceiling, scenery and posts as geometry
    read: ReadShow | None = None  # the show file it was staged from, so that changes can be tried
    heard: Song | None = None  # the song before corrections
    part: ShowPart | None = None  # if only that was staged
    missing: tuple[Block, ...] = ()  # blocks and stops of those who are away tonight
    results: Results = field(
        default_factory=Results, init=False, repr=False, compare=False
    )  # see there

    def __repr__(self) -> str:
        return (
            f"<Staged {self.show.title}: {len(self.dancers)} in the cast, {counted(len(self.blocks), 'block')}, "
            f"{self.song.duration:.1f} s at {self.song.tempo:.1f} beats/min>"
        )

    def seconds(self, beat: float) -> float:
        """Second of the track at a beat coordinate."""
        return self.tempo.second_of(beat)

    def position(self, beat: float) -> str:
        """bar.beat of a beat coordinate, as text."""
        return self.tempo.position_text(beat)

    def aloud(self, beat: float) -> str:
        """bar.beat of a beat coordinate as it can be counted, for sentences."""
        return aloud(self.position(beat), self.tempo.bar_lengths)

    def at_aloud(self, beat: float) -> str:
        """When something is, as it can be counted: `at 25.2`, `just after 25.2`."""
        return at_aloud(self.position(beat), self.tempo.bar_lengths)

    def number_of(self, who: str) -> int:
        """A performer's number, from 1 in the order of the whole cast: it stays when somebody is away."""
        return _numbers(self)[who]

    def post_number(self, name: str) -> int:
        """A post's number, from 1 in the order of the whole crew: it stays when somebody is away; 0 for nobody of the crew."""
        crew = self.show.crew if self.read is None else self.read.written.crew
        return next((k for k, post in enumerate(crew, start=1) if post.name == name), 0)

    def taken_by(self, part: str) -> str:
        """Who has a part tonight: another name only if somebody stands in."""
        stands_in = self.show.tonight.stand_in(part) if self.show.tonight else None
        return part if stands_in is None else stands_in.name

    def part_of(self, person: str) -> str:
        """The part that somebody has tonight, by which findings and sheets know them; their name if they have none."""
        stand_ins = self.show.tonight.stand_ins if self.show.tonight else ()
        return next((each.part for each in stand_ins if each.name == person), person)

    @property
    def comings(self) -> tuple[Coming, ...]:
        """All entrances and exits, by start."""
        every = (each for standing in self.standings for each in standing.comings)
        return tuple(sorted(every, key=lambda each: each.start))

    @property
    def tonight(self) -> str:
        """Who stands in and who is away, in words; empty if everybody is there."""
        tonight = self.show.tonight
        if tonight is None or not (tonight.away or tonight.stand_ins):
            return ""
        words = [f"{each.name} for {each.part}" for each in tonight.stand_ins]
        words += [f"without {' and '.join(tonight.away)}"] if tonight.away else []
        return f"tonight {', '.join(words)}"

    @property
    def span(self) -> tuple[float, float]:
        """From the start of the song, or the first beat if earlier, to the end of the last block [beats]; of a part, its window."""
        if self.part is not None:
            return self.part.low, self.part.high
        start = min(0.0, float(self.tempo.beats_from_seconds(0.0)))
        end = max(
            [float(self.tempo.beats_from_seconds(self.song.duration))]
            + [block.end for block in (*self.blocks, *self.stops)]
        )
        return start, end

    def section_at(self, beat: float) -> str:
        """Name of the section at a beat coordinate; empty if there is none."""
        second = self.seconds(beat) + 1e-6
        for section, name in zip(self.song.sections, self.song.section_names(), strict=True):
            if section.start <= second < section.end:
                return name
        return ""

    def blocks_of(self, who: str) -> tuple[Block, ...]:
        """One performer's blocks in order."""
        return _blocks_by_name(self).get(who, ())

    def stops_of(self, who: str) -> tuple[Block, ...]:
        """One performer's rests and holds in order."""
        return _stops_by_name(self).get(who, ())

    def accents_of(self, who: str) -> tuple[Accent, ...]:
        """One performer's accents in order."""
        return _accents_by_name(self).get(who, ())

    def lit_of(self, who: str) -> tuple[Lit, ...]:
        """One performer's burns in order."""
        return _burns_by_name(self).get(who, ())


@once_per_show
def _blocks_by_name(show: Staged) -> dict[str, tuple[Block, ...]]:
    return by_name(show.blocks)


@once_per_show
def _stops_by_name(show: Staged) -> dict[str, tuple[Block, ...]]:
    return by_name(show.stops)


@once_per_show
def _accents_by_name(show: Staged) -> dict[str, tuple[Accent, ...]]:
    return by_name(show.accents)


@once_per_show
def _numbers(show: Staged) -> dict[str, int]:
    names = show.show.names if show.read is None else show.read.written.names
    return {name: number for number, name in enumerate(names, start=1)}


@once_per_show
def _burns_by_name(show: Staged) -> dict[str, tuple[Lit, ...]]:
    return by_name(show.lit)


def written(blocks: Iterable[Block]) -> str:
    """What the show file says of some blocks, and where, as text; two that dance alike may be written in two ways."""
    return f"[{', '.join(map(_written_block, blocks))}]"


@lru_cache(maxsize=40_000)  # by object: an edit leaves most blocks the same objects
def _written_block(block: Block) -> str:
    return repr(
        (
            block.path, block.start, block.end, sorted(block.hands.items(), key=itemgetter(0)),
            block.timing, block.direction, block.cycle, block.shift, block.mirrored, block.link,
            block.stop, block.stopped,
        )
    )  # fmt: skip


def by_name(each: Iterable[Own]) -> dict[str, tuple[Own, ...]]:
    """Blocks, burns or accents of each performer who has any, in the order given."""
    found: dict[str, list[Own]] = {}
    for one in each:
        found.setdefault(one.who, []).append(one)
    return {who: tuple(own) for who, own in found.items()}
