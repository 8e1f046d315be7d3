"""Two changes of one text brought together: what each side did stays, or nothing is merged."""

from collections.abc import Sequence
from difflib import SequenceMatcher
from itertools import pairwise
from typing import Any, NamedTuple


class LineHunk(NamedTuple):
    """Lines of a text, from `start` to before `end`, and what stands in their place."""

    start: int  # from 0
    end: int
    lines: tuple[str, ...]  # with their line ends


def line_hunks(before: str, after: str) -> list[LineHunk]:
    """Where two texts differ, line by line."""
    old, new = before.splitlines(keepends=True), after.splitlines(keepends=True)
    most = min(len(old), len(new))
    head = next((k for k in range(most) if old[k] != new[k]), most)
    tail = next((k for k in range(most - head) if old[-1 - k] != new[-1 - k]), most - head)
    inner, other = old[head : len(old) - tail], new[head : len(new) - tail]
    codes = SequenceMatcher(None, inner, other, autojunk=False).get_opcodes()
    return [
        LineHunk(head + low, head + high, tuple(other[first:last]))
        for tag, low, high, first, last in codes
        if tag != "equal"
    ]


def merged_text(base: str, mine: str, theirs: str) -> str | None:
    """The text with both changes of a base; None if both touch one place.

    Parameters
    ----------
    base, mine, theirs : str

    Notes
    -----
    Lines that stand beside each other may be changed by one side each; lines put in at one place by both are a conflict, and so
    is a line that both change, unless they say the same.
    Source: S. Khanna, K. Kunal and B. C. Pierce, A formal investigation of diff3, 2007 (from memory).
    """
    if mine in (base, theirs):
        return theirs
    if theirs == base:
        return mine
    own, other = line_hunks(base, mine), line_hunks(base, theirs)
    both = list(dict.fromkeys([*own, *other]))  # what both did alike is done once
    both.sort(key=lambda hunk: (hunk.start, hunk.end))
    if any(_meet(one, two) for one, two in pairwise(both)):
        return None
    return _with_hunks(base.splitlines(keepends=True), both)


def changed_lines(before: str, after: str) -> list[dict[str, Any]]:
    """Lines that differ, with the number of the first of them in the text before, from 1."""
    lines = before.splitlines(keepends=True)
    return [
        {
            "line": hunk.start + 1,
            "out": [line.rstrip("\r\n") for line in lines[hunk.start : hunk.end]],
            "in": [line.rstrip("\r\n") for line in hunk.lines],
        }
        for hunk in line_hunks(before, after)
    ]  # fmt: skip


def _meet(one: LineHunk, two: LineHunk) -> bool:
    """Whether two hunks, the first of which starts no later, touch one place."""
    if one.start == one.end == two.start == two.end:
        return True
    return two.start < one.end


def _with_hunks(lines: Sequence[str], hunks: Sequence[LineHunk]) -> str:
    parts: list[str] = []
    at = 0
    for hunk in hunks:
        parts += lines[at : hunk.start]
        if parts and hunk.lines and not parts[-1].endswith(("\n", "\r")):
            parts.append("\n")  # the last line of a text may lack its end
        parts += hunk.lines
        at = hunk.end
    return "".join([*parts, *lines[at:]])
