"""A solo with support: in some parts whoever leads dances what the routine has, and the others something quiet together.

The support is one easy move for the whole part, smaller than what the soloist dances, the same wherever the part returns.
It begins and ends with the soloist, by links of the same length, which are tried as any others.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from sequencer.planning.drafting.costing.setting import EASY_WALKING, Setting
from sequencer.planning.drafting.costing.slot_links import PassageKey

_MOST_TRIED = 4  # moves for each part


@dataclass(frozen=True, slots=True, kw_only=True)
class Support:
    """What the others dance while one dances alone, from the beginning of one slot to the end of another."""

    first: int  # slot
    last: int  # slot
    move: int


def supported(
    setting: Setting, at: Sequence[int], solos: frozenset[int]
) -> Iterator[tuple[Support, ...]]:
    """Ways to support the soloist, the quietest first; one for all parts that are danced alone.

    Parameters
    ----------
    setting : Setting
    at : sequence of int
        The routine: the move of each slot.
    solos : frozenset of int
        Slots in which one dances alone; where nothing can be found for a part, it stays as it is.

    Yields
    ------
    supports : tuple of Support
        By slot; fewer each time, since what comes out may fail a check of the whole.
    """
    links = {pair: key[2] for pair, key in setting.keys_between(at)}
    parts: dict[str, list[tuple[int, int]]] = {}
    for first, last in _runs(setting, sorted(solos)):
        parts.setdefault(setting.slots[first].label, []).append((first, last))
    found: list[list[tuple[Support, ...]]] = []
    for runs in parts.values():
        ways = []
        for move in _quiet(setting, at, runs):
            keys = [key for run in runs for key in _passages(setting, at, links, run, move)]
            if not any(setting.tried(keys)):
                ways.append(tuple(Support(first=a, last=b, move=move) for a, b in runs))
                if len(ways) == 2:
                    break
        if ways:
            found.append(ways)
    while found:
        yield tuple(sorted((one for ways in found for one in ways[0]), key=lambda s: s.first))
        if len(found[-1]) > 1:
            found[-1] = found[-1][1:]
        else:
            found.pop()


def _runs(setting: Setting, solos: Sequence[int]) -> list[tuple[int, int]]:
    """First and last of the slots that follow each other in one section."""
    runs = [(k, k) for k in solos[:1]]
    for a, b in pairwise(solos):
        one, other = setting.slots[a], setting.slots[b]
        if b == a + 1 and one.section == other.section and one.end == other.start:
            runs[-1] = (runs[-1][0], b)
        else:
            runs.append((b, b))
    return runs


def _quiet(setting: Setting, at: Sequence[int], runs: Sequence[tuple[int, int]]) -> list[int]:
    """Easy moves that are smaller than all that is danced alone in a part and beside it, the smallest first."""
    alone = {setting.slots[k].material for first, last in runs for k in range(first, last + 1)}
    beside = {
        setting.patterns[at[k]]
        for first, last in runs
        for k in range(max(first - 1, 0), min(last + 2, len(setting.slots)))
    }
    least = min(setting.effect[at[k]] for first, last in runs for k in range(first, last + 1))
    able = [
        move
        for move in range(setting.count)
        if setting.difficulty[move] <= EASY_WALKING
        and setting.effect[move] < least
        and setting.patterns[move] not in beside
        and not any((piece, move) in setting.forbidden for piece in alone)
    ]
    able.sort(key=lambda move: (float(setting.effect[move]), move))
    first_of = {setting.patterns[move]: move for move in reversed(able)}
    return sorted(first_of.values(), key=able.index)[:_MOST_TRIED]


def _passages(
    setting: Setting,
    at: Sequence[int],
    links: Mapping[tuple[int, int], int],
    run: tuple[int, int],
    move: int,
) -> Iterator[PassageKey]:
    """How the others pass into their move and out of it, with the soloist's links."""
    first, last = run
    slots = setting.slots
    into, out = links.get((first - 1, first)), links.get((last, last + 1))
    if into is not None:
        before = at[first - 1]
        beats = float(slots[first - 1].beats - into)
        yield before, beats, into, move, *setting.ways(first - 1, first)
    if out is not None:
        after = at[last + 1]
        beats = float(slots[last].end - slots[first].start - out)
        yield move, beats, out, after, *setting.ways(last, last + 1)
