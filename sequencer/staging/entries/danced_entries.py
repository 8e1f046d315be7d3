"""Which entry of the timeline each block of a staged show comes from, and by which way from phrase to phrase."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from sequencer.show.model import Step
from sequencer.staging.entries.moments import Moments
from sequencer.staging.staged import Block, Path, Staged
from sequencer.timing.position import TOUCH


class DancedBy(NamedTuple):
    """What a block is danced by: an entry, and the uses of phrases that lead from it to the block's step."""

    entry: int  # of the timeline
    use: tuple[
        Path, ...
    ]  # the entry or step that dances the first phrase, the step of it that dances the next one, and so on; empty without a phrase
    rounds: tuple[int | None, ...]  # which time, from 0, of each use that repeats


def entry_of_blocks(staged: Staged) -> dict[int, int]:
    """The entry of the timeline that each block comes from, by the block's id."""
    return {block: by.entry for block, by in danced_by(staged).items()}


def danced_by(staged: Staged) -> dict[int, DancedBy]:
    """The entry and the uses of phrases that each block comes from, by the block's id.

    A phrase is danced step by step, one after the other; so every entry takes the first blocks of its steps that start no
    earlier than it does.
    """
    if staged.read is None:
        return {}
    moments = Moments(staged.read, staged.song, staged.tempo)
    own: dict[tuple[str, Path], list[Block]] = {}
    for block in (*staged.blocks, *staged.stops):
        own.setdefault((block.who, block.path), []).append(block)
    for blocks in own.values():
        blocks.sort(key=lambda each: each.start)
    ends: dict[str, float] = {}
    out: dict[int, DancedBy] = {}
    written = staged.read.written
    for k, entry in enumerate(written.timeline):
        who = written.names if "all" in entry.who else tuple(dict.fromkeys(entry.who))
        if entry.accent is not None:
            continue
        start = (
            moments.beat(entry.start, ("timeline", k, "from"))
            if entry.start is not None
            else max((ends.get(name, 0.0) for name in who), default=0.0)
        )
        leaves = list(_leaves(staged.show.phrases, entry, ("timeline", k)))
        for place, name in enumerate(who):
            at = start + place * (entry.canon or 0.0)
            for path, use, rounds in leaves:
                here = own.get((name, path), ())
                found = next((each for each in here if each.start >= at - TOUCH), None)
                if found is not None:
                    out.setdefault(id(found), DancedBy(k, use, rounds))
                    at = found.end
            ends[name] = max(ends.get(name, 0.0), at)
    return out


def _leaves(
    phrases: Mapping[str, Sequence[Step]], step: Step, path: Path
) -> Iterator[tuple[Path, tuple[Path, ...], tuple[int | None, ...]]]:
    """Paths of the steps that are danced for an entry or step, in their order, each with its uses and rounds (see `DancedBy`)."""
    if step.phrase is None:
        yield path, (), ()
        return
    for n in range(step.repeat):
        turn = n if step.repeat > 1 else None
        for k, inner in enumerate(phrases[step.phrase]):
            if inner.accent is None:
                for leaf, use, rounds in _leaves(phrases, inner, ("phrases", step.phrase, k)):
                    yield leaf, (path, *use), (turn, *rounds)
