"""What performers do meanwhile: their blocks and walks, in seconds, and the whole beats about a moment."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from sequencer.staging.staged import Staged
from sequencer.timing.position import moment_words

NEXT_TO = 1e-6  # [s] moments this close touch
WALK = "the walk"


class Busy(NamedTuple):
    """A block or a walk of one performer."""

    what: str  # "two-beat-weave", or `WALK`
    start: float  # [s]
    end: float  # [s]

    @property
    def words(self) -> str:
        """What the performer does: "dances two-beat-weave"."""
        return "walks" if self.what == WALK else f"dances {self.what}"


def busy_spans(show: Staged, who: str) -> tuple[Busy, ...]:
    """All blocks and walks of a performer, by start."""
    found = [
        Busy(block.title, show.seconds(block.start), show.seconds(block.end))
        for block in show.blocks_of(who)
    ]
    floors = [dancer.floor for dancer in show.dancers if dancer.name == who]
    found += [
        Busy(WALK, show.seconds(move.start), show.seconds(move.end))
        for floor in floors
        for move in floor.moves
    ]
    return tuple(sorted(found, key=lambda each: (each.start, each.end, each.what)))


def during(busy: Sequence[Busy], start: float, end: float) -> list[Busy]:
    """What of it falls into a span of time [s]; what only touches it does not."""
    return [each for each in busy if each.start < end - NEXT_TO and each.end > start + NEXT_TO]


def beat_before(show: Staged, seconds: float) -> str:
    """The last whole beat not after a moment, with its time: "4.3 (0:12.0)"."""
    return _beat_words(show, math.floor(_beat(show, seconds) + NEXT_TO))


def beat_after(show: Staged, seconds: float) -> str:
    """The first whole beat not before a moment, with its time."""
    return _beat_words(show, math.ceil(_beat(show, seconds) - NEXT_TO))


def _beat(show: Staged, seconds: float) -> float:
    return float(show.tempo.beats_from_seconds(seconds))


def _beat_words(show: Staged, beat: int) -> str:
    return f"{show.aloud(beat)} ({moment_words(show.seconds(beat))})"
