"""A show file that was changed in two places at once: both changes in one text, or what stands against it.

The values are merged on the tree of what the file says; the words line by line, so that comments of both sides stay. A text is
only made if it says exactly what the tree does, and has every comment.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from sequencer.errors import InputError
from sequencer.show.differences import (
    Hunk,
    edits_between,
    groups,
    hunks,
    of_records,
    words_of,
)
from sequencer.show.operations.operation import read_again, shown_text
from sequencer.show.show_text import ShowText
from sequencer.show.text.anchors import root_place
from sequencer.show.text.plain_values import ValuePath

_GONE = object()


@dataclass(frozen=True, slots=True, kw_only=True)
class MergeConflict:
    """A place that both sides changed, each in its own way."""

    path: ValuePath
    ours: str | None  # as each side has it written; None where it is gone
    theirs: str | None
    why: str  # one sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class MergedText:
    """Two changed texts in one; without a text where there is a conflict."""

    text: str | None
    conflicts: tuple[MergeConflict, ...] = ()


def merged(base: str, ours: str, theirs: str, *, file: str = "the show file") -> MergedText:
    """What a show file says after two changes of it.

    Parameters
    ----------
    base : str
        The file from which both started.
    ours, theirs : str
        The file with each change.
    file : str
        Its name, for messages.

    Returns
    -------
    merged : MergedText

    Raises
    ------
    InputError
        If one of the texts is not YAML.
    """
    if theirs in (base, ours):
        return MergedText(text=ours)
    if ours == base:
        return MergedText(text=theirs)
    then, mine, other = (shown_text(text, file) for text in (base, ours, theirs))
    clashes: list[tuple[ValuePath, str]] = []
    values = _both(then.values, mine.values, other.values, (), clashes)
    if clashes:
        return MergedText(
            text=None,
            conflicts=tuple(
                MergeConflict(
                    path=path, ours=_words(mine, path), theirs=_words(other, path), why=why
                )
                for path, why in clashes
            ),
        )
    return _written(then, mine, other, values)


def _written(then: ShowText, mine: ShowText, other: ShowText, values: Any) -> MergedText:
    """A text that says some values, with the words of both sides."""
    file = mine.file
    whole = ("both sides changed the same lines", "they do not go together")
    for start in (_lines_of_both(then.text, mine.text, other.text), mine.text):
        try:
            text = ShowText(start, file)
            edits = list(edits_between(text.values, values))
            after = text.edited(*edits) if edits else text
        except (InputError, ValueError):
            continue
        if after.values != values or _lost(then, mine, other, after):
            continue
        try:
            read_again(after, mine)
        except InputError as error:
            return _against(mine, other, f"{whole[1]}: {error}")
        return MergedText(text=after.text)
    return _against(mine, other, whole[0])


def _against(mine: ShowText, other: ShowText, why: str) -> MergedText:
    return MergedText(
        text=None,
        conflicts=(MergeConflict(path=(), ours=mine.text, theirs=other.text, why=why),),
    )


def _lost(then: ShowText, mine: ShowText, other: ShowText, after: ShowText) -> bool:
    """Whether a comment that one side has written is not there."""
    base, now = _comments(then.text), _comments(after.text)
    return any((_comments(side.text) - base) - now for side in (mine, other))


def _comments(text: str) -> Counter[str]:
    """Everything behind a number sign, line by line; a sign within quotes counts too, which does no harm."""
    return Counter(line[line.index("#") :].strip() for line in text.splitlines() if "#" in line)


def _lines_of_both(base: str, ours: str, theirs: str) -> str:
    """Lines that one side changed, as it has them; ours where both did."""
    then, mine, other = (text.splitlines(keepends=True) for text in (base, ours, theirs))
    every = [*hunks(then, mine, "ours"), *hunks(then, other, "theirs")]
    out: list[str] = []
    at = 0
    for group in groups(every):
        start, end = min(each.start for each in group), max(each.end for each in group)
        own = [each for each in group if each.side == "ours"] or group
        lines = mine if own[0].side == "ours" else other
        out += then[at:start]
        out += lines[own[0].first - (own[0].start - start) : own[-1].last + (end - own[-1].end)]
        at = end
    return "".join([*out, *then[at:]])


# The tree


def _both(
    then: Any, ours: Any, theirs: Any, path: ValuePath, clashes: list[tuple[ValuePath, str]]
) -> Any:
    """A value after the changes of both sides; what clashes is noted."""
    if theirs in (then, ours):
        return ours
    if ours == then:
        return theirs
    if all(isinstance(each, dict) for each in (then, ours, theirs)):
        return _both_keys(then, ours, theirs, path, clashes)
    if all(isinstance(each, list) and of_records(each) for each in (then, ours, theirs)):
        return _both_lists(then, ours, theirs, path, clashes)
    gone = ours is _GONE or theirs is _GONE
    clashes.append((path, "one side took out what the other changed" if gone else "both sides changed this"))  # fmt: skip
    return ours


def _both_keys(
    then: dict[str, Any],
    ours: dict[str, Any],
    theirs: dict[str, Any],
    path: ValuePath,
    clashes: list[tuple[ValuePath, str]],
) -> dict[str, Any]:
    found = {
        key: _both(
            then.get(key, _GONE),
            ours.get(key, _GONE),
            theirs.get(key, _GONE),
            (*path, key),
            clashes,
        )
        for key in dict.fromkeys([*ours, *theirs])
    }
    return {key: value for key, value in found.items() if value is not _GONE}


def _both_lists(
    then: list[Any],
    ours: list[Any],
    theirs: list[Any],
    path: ValuePath,
    clashes: list[tuple[ValuePath, str]],
) -> list[Any]:
    words = words_of(then)
    every = [*hunks(words, words_of(ours), "ours"), *hunks(words, words_of(theirs), "theirs")]
    out: list[Any] = []
    at = 0
    for group in groups(every):
        start, end = min(each.start for each in group), max(each.end for each in group)
        out += then[at:start]
        sides = {each.side for each in group}
        if len(sides) == 1:
            (hunk,) = group
            out += (ours if hunk.side == "ours" else theirs)[hunk.first : hunk.last]
        elif all(each.paired for each in group):
            for k in range(start, end):
                mine, other = (
                    _now(group, side, items, then, k)
                    for side, items in (("ours", ours), ("theirs", theirs))
                )
                out.append(_both(then[k], mine, other, (*path, k), clashes))
        elif len(group) == 2 and _same(group, ours, theirs):
            out += ours[group[0].first : group[0].last]
        else:
            clashes.append(((*path, start), "both sides put in or took out entries here"))
        at = end
    return [*out, *then[at:]]


def _now(group: Sequence[Hunk], side: str, items: list[Any], then: list[Any], k: int) -> Any:
    """What one side has in the place of an item."""
    for hunk in group:
        if hunk.side == side and hunk.start <= k < hunk.end:
            return items[hunk.first + k - hunk.start]
    return then[k]


def _same(group: Sequence[Hunk], ours: list[Any], theirs: list[Any]) -> bool:
    """Whether both sides did the same."""
    one, other = sorted(group, key=lambda each: each.side)
    return (one.start, one.end) == (other.start, other.end) and (
        ours[one.first : one.last] == theirs[other.first : other.last]
    )


def _words(text: ShowText, path: ValuePath) -> str | None:
    """How a side has a place written."""
    try:
        place = root_place(text.document).find(path)
    except ValueError:
        return None
    return text.text[place.start : place.end]


def conflict_place(conflict: MergeConflict) -> str:
    """Where a conflict is, for a person: rows of lists are counted from 1."""
    where = " / ".join(str(key + 1) if isinstance(key, int) else key for key in conflict.path)
    return where or "the show file"


def conflict_words(conflict: MergeConflict) -> Iterator[str]:
    """A conflict in lines for a person: where, why, and what each side has."""
    yield f"{conflict_place(conflict)}: {conflict.why}"
    if conflict.path:
        yield f"here: {conflict.ours or 'taken out'}"
        yield f"there: {conflict.theirs or 'taken out'}"
