"""A staged show with some values of its file changed: what a mend is tried on before anything is written."""

import copy
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from sequencer.show.editing import Change, Insertion
from sequencer.show.reading import show_from_document
from sequencer.staging.moments import Moments
from sequencer.staging.staged import Staged
from sequencer.staging.standings import floor_path, standings
from sequencer.staging.timeline import staged

_OF_THE_FLOOR = {"formations", "staging"}  # headings on which only ways over the floor depend


def restaged(
    show: Staged, changes: Sequence[Change], insertions: Sequence[Insertion] = ()
) -> Staged:
    """The show as it would be with changes of its file; nothing is written.

    Parameters
    ----------
    show : Staged
        One that remembers what it was staged from.
    changes : sequence of (path, value)
    insertions : sequence of (path, index, entry)

    Raises
    ------
    InputError
        If a change does not fit the rest of the show.
    ValueError
        If the show does not remember what it was staged from, or a path does not exist.
    """
    if show.read is None or show.heard is None:
        raise ValueError("this show does not remember its file, so no change can be tried on it")
    values = changed_values(show.read.document.values, changes, insertions)
    read = show_from_document(replace(show.read.document, values=values))
    if insertions or any(path[0] not in _OF_THE_FLOOR for path, _ in changes):
        return staged(read, show.heard)
    last = max(one.end for one in show.standings)
    stood = standings(read, Moments(read, show.song, show.tempo), last)
    dancers = tuple(
        replace(dancer, floor=floor_path(read, dancer.name, stood)) for dancer in show.dancers
    )
    return replace(show, show=read.show, read=read, standings=stood, dancers=dancers)


def changed_values(
    values: Any, changes: Sequence[Change], insertions: Sequence[Insertion] = ()
) -> Any:
    """Plain values of a file with changes, as `editing.edited_text` makes them in its text."""
    root = copy.deepcopy(values)
    for path, value in changes:
        holder = root
        for key in path[:-1]:
            holder = _held(holder, key, path)
        if value is None:
            del holder[path[-1]]
        else:
            holder[path[-1]] = value
    for path, index, entry in sorted(insertions, key=lambda one: -one[1]):
        rows = root
        for key in path:
            rows = _held(rows, key, path)
        rows.insert(index, entry)
    return root


def _held(holder: Any, key: str | int, path: Sequence[str | int]) -> Any:
    try:
        return holder[key]
    except (KeyError, IndexError, TypeError):
        raise ValueError(f"there is no {'/'.join(map(str, path))} in the show file") from None
