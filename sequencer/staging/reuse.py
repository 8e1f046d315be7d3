"""Performers whose dance a change of the file leaves as it was: they need not be staged again."""

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from sequencer.motion.performers.dancer import Dancer
from sequencer.show.model import Show
from sequencer.show.reading import ReadShow
from sequencer.staging.staged import Block, Lit, Staged
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
        With fitted parameters.
    lit : sequence of Lit

    Returns
    -------
    dancers : mapping of name to Dancer
        With their old paths over the floor.
    """
    if before.read is None or _vocabulary(read) != _vocabulary(before.read):
        return {}
    if _from_files(read) or _from_files(before.read) or not same_count(tempo, before.tempo):
        return {}  # a pattern file may have changed since
    old = _dances(before.show, before.blocks, before.lit)
    new = _dances(read.show, blocks, lit)
    return {one.name: one for one in before.dancers if new.get(one.name) == old[one.name]}


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
    """All that makes each performer's trajectories and flames."""
    fire = show.fire and (show.fire.fuel, show.fire.flame)
    parts: dict[str, Any] = {record.name: [record, fire] for record in show.cast}
    for block in blocks:
        parts[block.who].append(
            (
                block.start, block.end, dict(block.hands), block.timing, block.direction,
                block.cycle, block.shift, block.mirrored, block.link, block.posture,
            )
        )  # fmt: skip
    for span in lit:
        parts[span.who].append((span.start, span.end))
    return parts
