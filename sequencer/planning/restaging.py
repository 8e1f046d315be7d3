"""A staged show with some values of its file changed, to try a mend before anything is written."""

import copy
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from sequencer.show.editing import Change, Insertion
from sequencer.show.reading import show_from_document
from sequencer.staging.carrying import carry_results
from sequencer.staging.moments import Moments
from sequencer.staging.staged import Staged
from sequencer.staging.standings import floor_path, standings
from sequencer.staging.timeline import staged

_OF_THE_FLOOR = {"formations", "staging"}  # headings that only affect paths over the floor


def restaged(
    show: Staged, changes: Sequence[Change], insertions: Sequence[Insertion] = ()
) -> Staged:
    """The show as it would be with changes of its file; nothing is written.

    Parameters
    ----------
    show : Staged
        A show that was staged from a file.
    changes : sequence of (path, value)
    insertions : sequence of (path, index, entry)

    Raises
    ------
    InputError
        If a change does not fit the rest of the show.
    ValueError
        If the show was not staged from a file, or a path does not exist.
    """
    if show.read is None or show.heard is None:
        raise ValueError("this show does not remember its file, so no change can be tried on it")
    values = changed_values(show.read.document.values, changes, insertions)
    read = show_from_document(replace(show.read.document, values=values))
    if insertions or any(path[0] not in _OF_THE_FLOOR for path, _ in changes):
        return staged(read, show.heard, before=show)
    last = max(one.end for one in show.standings)
    places = standings(read, Moments(read, show.song, show.tempo), last)
    dancers = tuple(
        replace(dancer, floor=floor_path(read, dancer.name, places)) for dancer in show.dancers
    )
    after = replace(show, show=read.show, read=read, standings=places, dancers=dancers)
    carry_results(show, after)
    return after


def changed_values(
    values: Any, changes: Sequence[Change], insertions: Sequence[Insertion] = ()
) -> Any:
    """Plain values of a file after changes, as `editing.edited_text` makes them in the text."""
    root = copy.deepcopy(values)
    for path, value in changes:
        holder = root
        for key in path[:-1]:
            holder = _inside(holder, key, path)
        if value is None:
            del holder[path[-1]]
        else:
            holder[path[-1]] = value
    for path, index, entry in sorted(insertions, key=lambda one: -one[1]):
        rows = root
        for key in path:
            rows = _inside(rows, key, path)
        rows.insert(index, entry)
    return root


def _inside(holder: Any, key: str | int, path: Sequence[str | int]) -> Any:
    try:
        return holder[key]
    except (KeyError, IndexError, TypeError):
        raise ValueError(f"there is no {'/'.join(map(str, path))} in the show file") from None
