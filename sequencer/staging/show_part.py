"""A part of a show: only what decides how everybody moves in it is staged, so that it is as in the whole show there.

Blocks are fitted for the whole show first. What is left out is far enough away to change nothing in the part: links of one
hand keep clear of the other hand's prop, so a margin of some beats is kept, and one more block on either side of it.
"""

from collections.abc import Iterable, Sequence
from math import ceil, floor

from sequencer.geometry.bodies import SIDES
from sequencer.motion.clearance.slices import SLICE_BEATS
from sequencer.staging.entries.moments import beat_of
from sequencer.staging.staged import Block, ShowPart
from sequencer.timing.position import TOUCH, Moment
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

MARGIN = (
    8.0  # [beats] on either side, besides the longest link: a way from or to rest takes no more
)


def show_part(start: Moment | None, until: Moment | None, song: Song, tempo: TempoMap) -> ShowPart:
    """The part between two moments; from the start or to the end of the track where one is None.

    Parameters
    ----------
    start, until : Moment, optional
    song : Song
        As counted.
    tempo : TempoMap

    Raises
    ------
    ValueError
        If a moment is not in the song, or the part would end before it starts.
    """
    first = min(0.0, float(tempo.beats_from_seconds(0.0)))
    last = float(tempo.beats_from_seconds(song.duration))
    low = first if start is None else beat_of(start, song, tempo)
    high = last if until is None else beat_of(until, song, tempo)
    if high <= low + TOUCH:
        raise ValueError(
            f"{tempo.position_of(high)} is not after {tempo.position_of(low)}, where the part starts"
        )
    # Distances are searched by slices: whole ones are the same as in the whole show.
    return ShowPart(
        start=low,
        end=high,
        low=max(first, SLICE_BEATS * floor(low / SLICE_BEATS)),
        high=min(last, SLICE_BEATS * ceil(high / SLICE_BEATS)),
    )


def near_part(blocks: Sequence[Block], part: ShowPart) -> frozenset[Block]:
    """The blocks, links and stops that decide how their performers move in a part.

    Parameters
    ----------
    blocks : sequence of Block
        Of all performers, stops among them.
    part : ShowPart
    """
    longest = max((block.end - block.start for block in blocks if block.link), default=0.0)
    low, high = part.low - MARGIN - longest, part.high + MARGIN + longest
    kept: list[Block] = []
    for who in dict.fromkeys(block.who for block in blocks):
        own = [block for block in blocks if block.who == who]
        first, last = low, high
        for side in SIDES:
            danced = [block for block in own if side in block.hands]
            first = min([first, *_nearest((b.start, b.end) for b in danced if b.end <= low)])
            after = ((-b.end, -b.start) for b in danced if b.start >= high)
            last = max([last, *(-edge for edge in _nearest(after))])
        kept += [b for b in own if b.end > first + TOUCH and b.start < last - TOUCH]
    return frozenset(kept)


def _nearest(spans: Iterable[tuple[float, float]]) -> list[float]:
    """Where the span begins that ends last; nothing if there is none."""
    found = max(spans, key=lambda span: span[1], default=None)
    return [] if found is None else [found[0]]
