"""Whom a performer dances a block with, in words: who leads a canon and by how many counts, whose mirror one is.

Taken from the entry of the timeline that each block comes from, so that phrases are right too. Who is away tonight is
not named; the counts stay as written.
"""

from collections.abc import Mapping, Sequence

from sequencer.show.model import Entry
from sequencer.staging.entries.danced_entries import entry_of_blocks
from sequencer.staging.results import once_per_show
from sequencer.staging.staged import Staged
from sequencer.units import counted

_MOST = 4  # names in one breath


@once_per_show
def company_of_blocks(staged: Staged) -> Mapping[int, str]:
    """What to say of the company at each block, by the block's id; only where that is new to its performer.

    Parameters
    ----------
    staged : Staged

    Returns
    -------
    words : mapping of int to str
        Such as "canon: Wren leads, you 4 counts after Moss" or "mirror image of Dune, written for your hands"; a block that is alone, in unison
        or as the one before has none.
    """
    if staged.read is None:
        return {}
    entries = entry_of_blocks(staged)
    written = staged.read.written
    out: dict[int, str] = {}
    for who in staged.show.names:
        told, mirrors_before = -1, ""
        for block in staged.blocks_of(who):
            k = entries.get(id(block))
            if block.link or k is None:
                continue
            entry = written.timeline[k]
            order = written.names if "all" in entry.who else tuple(dict.fromkeys(entry.who))
            mirrors = _mirror(entry, order, staged.show.names, who)
            canon = _canon(entry, order, staged.show.names, who) if k != told else ""
            mirror = mirrors if mirrors != mirrors_before else ""
            if mirrors_before and not mirrors:
                mirror = "no longer mirrored"
            told, mirrors_before = k, mirrors
            if words := "; ".join(filter(None, (canon, mirror))):
                out[id(block)] = words
    return out


def _canon(entry: Entry, order: Sequence[str], there: Sequence[str], who: str) -> str:
    """A performer's place in a canon: who leads, and how many counts after whom one comes in."""
    dancing = [name for name in order if name in there]
    if not entry.canon or len(dancing) < 2:
        return ""
    place = dancing.index(who)
    if place == 0:
        after = _counts(entry.canon * (order.index(dancing[1]) - order.index(who)))
        return f"canon: you lead, {dancing[1]} follows after {after}"
    before = dancing[place - 1]
    late = _counts(entry.canon * (order.index(who) - order.index(before)))
    if place == 1:
        return f"canon: {before} leads, you {late} later"
    return f"canon: {dancing[0]} leads, you {late} after {before}"


def _mirror(entry: Entry, order: Sequence[str], there: Sequence[str], who: str) -> str:
    """Whose mirror image a performer is, by name."""
    swapped = set(order) if "all" in entry.mirror else set(entry.mirror)
    dancing = [name for name in order if name in there]
    plain = [name for name in dancing if name not in swapped]
    other = [name for name in dancing if name in swapped]
    if not plain or not other:
        return ""
    if who in swapped:
        return f"mirror image of {_named(plain)}, written for your hands"
    return f"{_named(other)} {'mirrors' if len(other) == 1 else 'mirror'} you"


def _named(names: Sequence[str]) -> str:
    if len(names) > _MOST:
        return f"{', '.join(names[: _MOST - 1])} and {len(names) - _MOST + 1} more"
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def _counts(beats: float) -> str:
    return counted(round(beats, 3), "count")
