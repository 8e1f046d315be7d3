"""Edits of a show file, and what becomes of its plain values; `show.show_text` writes the same into the text."""

import copy
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any, TypeAlias

from sequencer.show.text.plain_values import ValuePath
from sequencer.show.text.written import said


@dataclass(frozen=True, slots=True)
class ValueSet:
    """A value replaced, or a key added."""

    path: ValuePath
    value: Any


@dataclass(frozen=True, slots=True)
class TakenOut:
    """A key with its value, or an item of a list, taken out."""

    path: ValuePath


@dataclass(frozen=True, slots=True)
class RowsIn:
    """Items put into a list."""

    path: ValuePath  # of the list
    index: int  # before which they are put, as the list was
    rows: tuple[Any, ...]  # values, or `Written` ones


@dataclass(frozen=True, slots=True)
class KeyNamed:
    """A key renamed, in its place."""

    path: ValuePath
    name: str


TextEdit: TypeAlias = ValueSet | TakenOut | RowsIn | KeyNamed


def changed_plain(values: Any, edits: Iterable[TextEdit]) -> Any:
    """Plain values after edits; what none of them touches stays the same objects.

    Parameters
    ----------
    values : dict or list
    edits : iterable of TextEdit
        Every path is one of the values as given.

    Raises
    ------
    ValueError
        If a path does not exist.
    """
    opened = _Opened(values)
    # Every holder is found before any changes, so that paths mean what they meant.
    found = [(edit, opened.at(_holder(edit), edit.path)) for edit in edits]
    for edit, holder in found:
        if isinstance(edit, ValueSet):
            try:
                holder[edit.path[-1]] = said(edit.value)
            except (IndexError, TypeError):
                raise missing(edit.path) from None
    for edit, holder in sorted(found, key=lambda each: _late_first(each[0])):
        if isinstance(edit, TakenOut):
            _take(holder, edit.path)
        elif isinstance(edit, RowsIn):
            holder[edit.index : edit.index] = [said(row) for row in edit.rows]
    for edit, holder in found:
        if isinstance(edit, KeyNamed):
            _rename(holder, edit)
    return opened.root


def _holder(edit: TextEdit) -> ValuePath:
    return edit.path if isinstance(edit, RowsIn) else edit.path[:-1]


def _late_first(edit: TextEdit) -> tuple[float, bool]:
    """Items behind come first, and at one place what is taken out before what is put in."""
    if isinstance(edit, RowsIn):
        return -edit.index, True
    last = edit.path[-1]
    return -last if isinstance(last, int) else 1, False


def _take(holder: Any, path: ValuePath) -> None:
    try:
        del holder[path[-1]]
    except (KeyError, IndexError, TypeError):
        raise missing(path) from None


def _rename(holder: Any, edit: KeyNamed) -> None:
    if edit.path[-1] not in holder:
        raise missing(edit.path)
    pairs = [(edit.name if key == edit.path[-1] else key, own) for key, own in holder.items()]
    holder.clear()
    holder.update(pairs)


class _Opened:
    """Values of which every container on the way to an edit is copied, once."""

    def __init__(self, values: Any) -> None:
        self.root = copy.copy(values)
        self._own: dict[int, Any] = {id(self.root): self.root}  # held, so that ids stay their own

    def at(self, path: Sequence[str | int], whole: ValuePath) -> Any:
        holder = self.root
        for key in path:
            try:
                inner = holder[key]
            except (KeyError, IndexError, TypeError):
                raise missing(whole) from None
            if id(inner) not in self._own:
                inner = copy.copy(inner)
                self._own[id(inner)] = inner
                holder[key] = inner
            holder = inner
        if not isinstance(holder, dict | list):
            raise missing(whole)
        return holder


def missing(path: Iterable[str | int]) -> ValueError:
    """What is raised for a path that is not there."""
    return ValueError(f"there is no {'/'.join(map(str, path))} in the show file")
