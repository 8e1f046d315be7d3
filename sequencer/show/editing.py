"""Edits to a show file that keep its comments, order and formatting.

The file goes through ruamel.yaml's round-trip mode, so only the changed values differ.
"""

import io
import re
from collections.abc import Sequence
from typing import Any

from ruamel.yaml import YAML
from ruamel.yaml.comments import CommentedMap, CommentedSeq

from sequencer.show.document import PathKey

_NUMBER = re.compile(r"-?\d+(\.\d+)?")  # text that is a number

Change = tuple[tuple[PathKey, ...], Any]
Insertion = tuple[tuple[PathKey, ...], int, dict[str, Any]]


def edited_text(text: str, changes: list[Change], insertions: Sequence[Insertion] = ()) -> str:
    """The show file with some values replaced and some entries inserted; comments are kept.

    Parameters
    ----------
    text : str
        The current file.
    changes : list of (path, value)
        Path of keys and indices; a missing last key is added, a value of None removes it.
    insertions : sequence of (path, index, entry)
        Path of a list, the index in it, and the entry to insert; indices are those before any insertion.

    Raises
    ------
    ValueError
        If a path does not exist.
    """
    return edited_in_turn(text, [(changes, insertions)])


def edited_in_turn(text: str, steps: Sequence[tuple[Sequence[Change], Sequence[Insertion]]]) -> str:
    """The show file after several edits, each of the file as the one before leaves it; as `edited_text`.

    Parameters
    ----------
    text : str
        The current file.
    steps : sequence of (changes, insertions)

    Raises
    ------
    ValueError
        If a path does not exist.
    """
    yaml = _round_trip()
    root = yaml.load(text)
    for changes, insertions in steps:
        _edit(root, changes, insertions)
    out = io.StringIO()
    yaml.dump(root, out)
    return out.getvalue()


def _edit(root: Any, changes: Sequence[Change], insertions: Sequence[Insertion]) -> None:
    for path, value in changes:
        holder = root
        for key in path[:-1]:
            try:
                holder = holder[key]
            except (KeyError, IndexError, TypeError):
                raise ValueError(
                    f"there is no {'/'.join(map(str, path))} in the show file"
                ) from None
        if value is None:
            del holder[path[-1]]
        else:
            holder[path[-1]] = _node(value)
    for path, index, entry in sorted(insertions, key=lambda one: -one[1]):
        rows = root
        for key in path:
            rows = rows[key]
        rows.insert(index, _node(entry))


def _node(value: Any) -> Any:
    """A value as a person would write it: on one line, numbers unchanged, without quotes."""
    if isinstance(value, dict):
        row = CommentedMap({key: _node(own) for key, own in value.items()})
        row.fa.set_flow_style()
        return row
    if isinstance(value, list | tuple):
        items = CommentedSeq([_node(own) for own in value])
        items.fa.set_flow_style()
        return items
    if isinstance(value, str) and _NUMBER.fullmatch(value):
        return _round_trip().load(value)
    return value


def _round_trip() -> YAML:
    yaml = YAML(typ="rt")
    yaml.preserve_quotes = True
    yaml.width = 4096
    yaml.brace_single_entry_mapping_in_flow_sequence = True  # [{line: …}] keeps its braces
    yaml.indent(mapping=2, sequence=4, offset=2)
    return yaml
