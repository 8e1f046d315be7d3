"""Performers whose dance a change of the file leaves as it was: they need not be staged again."""

from collections.abc import Hashable, Mapping, Sequence
from operator import attrgetter
from typing import Any

import numpy as np

from sequencer.motion.performers.dancer import Dancer
from sequencer.show.model import Show
from sequencer.show.reading import ReadShow
from sequencer.staging.staged import Block, Lit, Staged
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap


def unchanged(
    before: Staged, read: ReadShow, tempo: TempoMap, blocks: Sequence[Block], lit: Sequence[Lit]
) -> Mapping[str, Dancer]:
    """Performers of an earlier staging, by name, whose trajectories and flames come out the same.

    Where they stand is not compared: only their paths over the floor may differ.

    Parameters
    ----------
    before : Staged
        The earlier staging.
    read : ReadShow
        The show file as it is now.
    tempo : TempoMap
    blocks : sequence of Block
        With fitted parameters, and stops.
    lit : sequence of Lit

    Returns
    -------
    dancers : mapping of name to Dancer
        With their old paths over the floor.
    """
    if not (same_vocabulary(before, read) and same_count(tempo, before.tempo)):
        return {}
    by_start = attrgetter("start", "path")
    old = _dances(before.show, sorted((*before.blocks, *before.stops), key=by_start), before.lit)
    new = _dances(read.show, sorted(blocks, key=by_start), lit)
    return {one.name: one for one in before.dancers if new.get(one.name) == old[one.name]}


def same_song(before: Staged, read: ReadShow, heard: Song) -> bool:
    """Whether an earlier staging counts a song as the file does now; a file of beats may have changed since."""
    return (
        before.heard is heard
        and before.read is not None
        and before.show.track == read.show.track
        and read.show.track.corrections.beats is None
    )


def same_vocabulary(before: Staged, read: ReadShow) -> bool:
    """Whether an earlier staging has the patterns of the file as it is now; a pattern file may have changed since."""
    return (
        before.read is not None
        and _vocabulary(before.read) == _vocabulary(read)
        and not _from_files(before.read)
        and not _from_files(read)
    )


def dance_key(
    read: ReadShow, name: str, tempo: TempoMap, blocks: Sequence[Block], lit: Sequence[Lit]
) -> Hashable | None:
    """All that makes a performer's trajectories and flames, as a key; None if a pattern file may change it.

    Parameters
    ----------
    read : ReadShow
    name : str
    tempo : TempoMap
    blocks : sequence of Block
        With fitted parameters.
    lit : sequence of Lit
    """
    if _from_files(read):
        return None
    count = (tempo.times.tobytes(), tempo.first, repr(tempo.bars), tempo.metre)
    # Texts of the numbers: equal ones of two kinds have different texts, and so have 0.0 and -0.0.
    return repr(_vocabulary(read)), count, repr(_dances(read.show, blocks, lit)[name])


def _vocabulary(read: ReadShow) -> Any:
    return read.document.values.get("patterns")


def _from_files(read: ReadShow) -> bool:
    return "pattern_files" in read.document.values


def same_count(first: TempoMap, second: TempoMap) -> bool:
    """Whether two tempo maps give every beat the same second and the same position."""
    return (
        np.array_equal(first.times, second.times)
        and (first.first, first.bars, first.metre) == (second.first, second.bars, second.metre)
    )  # fmt: skip


def _dances(show: Show, blocks: Sequence[Block], lit: Sequence[Lit]) -> dict[str, Any]:
    """All that makes each performer's trajectories, their margins and flames."""
    fire = show.fire and (show.fire.fuel, show.fire.flame, show.fire.burn)
    limits = show.limits
    # Within which links are sought, and blocks flown.
    hand = limits.hand_speed, limits.hand_acceleration, limits.turns
    parts: dict[str, Any] = {record.name: [record, fire, hand] for record in show.cast}
    for block in blocks:
        parts[block.who].append(
            (
                block.start, block.end, dict(block.hands), block.timing, block.direction,
                block.cycle, block.shift, block.mirrored, block.link, block.posture,
                block.stop, block.stopped,
            )
        )  # fmt: skip
    for span in lit:
        parts[span.who].append((span.start, span.end))
    return parts
