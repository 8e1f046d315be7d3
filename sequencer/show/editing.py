"""Edits to a show file that keep its comments, order and formatting, as lists of changed values and inserted entries."""

from collections.abc import Iterator, Sequence
from typing import Any

from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import RowsIn, TakenOut, TextEdit, ValueSet
from sequencer.show.text.plain_values import PathKey

Change = tuple[tuple[PathKey, ...], Any]
Insertion = tuple[tuple[PathKey, ...], int, dict[str, Any]]


def edited_text(
    text: str,
    changes: Sequence[Change],
    insertions: Sequence[Insertion] = (),
    *,
    file: str = "the show file",
) -> str:
    """The show file with some values replaced and some entries inserted; comments are kept.

    Parameters
    ----------
    text : str
        The current file.
    changes : sequence of (path, value)
        Path of keys and indices; a missing last key is added, a value of None removes it.
    insertions : sequence of (path, index, entry)
        Path of a list, the index in it, and the entry to insert; indices are those before any insertion.
    file : str
        Its name, for messages.

    Raises
    ------
    InputError
        If a place is written in a way that cannot be edited by itself.
    ValueError
        If a path does not exist.
    """
    return edited_in_turn(text, [(changes, insertions)], file=file)


def edited_in_turn(
    text: str,
    steps: Sequence[tuple[Sequence[Change], Sequence[Insertion]]],
    *,
    file: str = "the show file",
) -> str:
    """The show file after several edits, each of the file as the one before leaves it; as `edited_text`.

    Parameters
    ----------
    text : str
        The current file.
    steps : sequence of (changes, insertions)
    file : str
        Its name, for messages.

    Raises
    ------
    InputError
        If a place is written in a way that cannot be edited by itself.
    ValueError
        If a path does not exist.
    """
    now = ShowText(text, file)
    for changes, insertions in steps:
        for some in _at_once(changes):
            now = now.edited(*as_edits(some))
        if insertions:
            now = now.edited(*as_edits([], insertions))
    return now.text


def _at_once(changes: Sequence[Change]) -> Iterator[Sequence[Change]]:
    """Changes that can be made together: all, if none takes something out and none lies within another, else each alone."""
    paths = [path for path, _ in changes]
    beside = all(
        one[: len(other)] != other
        for k, one in enumerate(paths)
        for other in (*paths[:k], *paths[k + 1 :])
    )
    if beside and all(value is not None for _, value in changes):
        yield from [changes] if changes else []
    else:
        yield from ([change] for change in changes)


def as_edits(changes: Sequence[Change], insertions: Sequence[Insertion] = ()) -> list[TextEdit]:
    """The same as edits of a `ShowText`."""
    edits: list[TextEdit] = [
        TakenOut(path) if value is None else ValueSet(path, value) for path, value in changes
    ]
    return edits + [RowsIn(path, index, (entry,)) for path, index, entry in insertions]
