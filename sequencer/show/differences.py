"""What differs between plain values, as edits; and where two sides changed one list at the same place."""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Any, Literal

from sequencer.show.text.plain_edits import RowsIn, TakenOut, TextEdit, ValueSet
from sequencer.show.text.plain_values import ValuePath

MergeSide = Literal["ours", "theirs"]


@dataclass(frozen=True, slots=True)
class Hunk:
    """Neighbouring items of a list that one side replaced, took out or put in."""

    start: int  # of the items as they were
    end: int
    first: int  # of the items as they are now
    last: int  # behind the last of them
    side: MergeSide = "ours"

    @property
    def paired(self) -> bool:
        """Whether each item has one in its place."""
        return self.end - self.start == self.last - self.first

    def meets(self, other: "Hunk") -> bool:
        """Whether another side's hunk changes the same items, or puts others in at the same place."""
        if self.start == self.end and other.start == other.end:
            return self.start == other.start
        return self.start < other.end and other.start < self.end


def hunks(before: Sequence[str], after: Sequence[str], side: MergeSide = "ours") -> list[Hunk]:
    """Where two lists of texts differ, in order."""
    most, head = min(len(before), len(after)), 0
    while head < most and before[head] == after[head]:
        head += 1
    tail = 0
    while tail < most - head and before[-1 - tail] == after[-1 - tail]:
        tail += 1
    old, new = before[head : len(before) - tail], after[head : len(after) - tail]
    found = SequenceMatcher(None, old, new, autojunk=False).get_opcodes()
    return [
        Hunk(a + head, b + head, c + head, d + head, side)
        for kind, a, b, c, d in found
        if kind != "equal"
    ]


def groups(every: Sequence[Hunk]) -> list[list[Hunk]]:
    """Hunks of two sides in order, together where they meet."""
    found: list[list[Hunk]] = []
    for hunk in sorted(every, key=lambda one: (one.start, one.end)):
        near = [own for own in found if any(hunk.side != o.side and hunk.meets(o) for o in own)]
        if not near:
            found.append([hunk])
            continue
        near[0].append(hunk)
        for other in near[1:]:
            near[0] += other
            found.remove(other)
    return sorted(
        found, key=lambda own: (min(each.start for each in own), max(each.end for each in own))
    )


def words_of(items: Sequence[Any]) -> list[str]:
    """Items of a list as texts that are equal where the items are."""
    return [json.dumps(item, sort_keys=True, ensure_ascii=False) for item in items]


def edits_between(old: Any, new: Any, path: ValuePath = ()) -> Iterator[TextEdit]:
    """Edits that make some plain values others, and touch no more than differs."""
    if old == new:
        return
    if isinstance(old, dict) and isinstance(new, dict) and (path == () or old.keys() & new.keys()):
        for key in old:
            if key in new:
                yield from edits_between(old[key], new[key], (*path, key))
            else:
                yield TakenOut((*path, key))
        yield from (ValueSet((*path, key), own) for key, own in new.items() if key not in old)
    elif isinstance(old, list) and isinstance(new, list) and of_records(old) and of_records(new):
        yield from _list_edits(old, new, path)
    else:
        yield ValueSet(path, new)


def _list_edits(old: list[Any], new: list[Any], path: ValuePath) -> Iterator[TextEdit]:
    for hunk in hunks(words_of(old), words_of(new)):
        if hunk.paired:
            for k in range(hunk.end - hunk.start):
                at = hunk.start + k
                yield from edits_between(old[at], new[hunk.first + k], (*path, at))
            continue
        yield from (TakenOut((*path, k)) for k in range(hunk.start, hunk.end))
        rows = tuple(new[hunk.first : hunk.last])
        if rows:
            yield RowsIn(path, hunk.start, rows)


def of_records(items: Sequence[Any]) -> bool:
    """Whether a list holds records, each with keys of its own."""
    return bool(items) and all(isinstance(item, dict) for item in items)
