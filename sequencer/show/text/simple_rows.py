"""The usual line of a show file, `- {pattern: extension, beats: 8}`, made a tree of nodes without a YAML parser.

A show of many blocks has thousands of them. Whatever is not as plain as that is left to the parser, and
`tests/unit/show/text/test_simple_rows.py` holds both against each other.
"""

import re

from sequencer.show.text.nodes import NO_VALUE, Node

_LINE = re.compile(r" *- (?=\{)")
_REST = re.compile(r"(?: *| +#[^\n]*)\r?(?:\n(?: *(?:#[^\n]*)?\r?(?:\n|\Z))*)?\Z")
_WORDS = re.compile(r"(?:[^\W_]|-(?=\d))(?:[\w.+/°-]| (?=[^\W_]))*")
_DEEPEST = 8


def simple_row(chunk: str) -> Node | None:
    """The list of one item that a line says, with comments below it; None if a parser has to read it."""
    line = _LINE.match(chunk)
    if line is None:
        return None
    item, end = _value(chunk, line.end(), 0)
    if item is None or _REST.match(chunk, end) is None:
        return None
    dash = line.end() - 2
    return Node("list", dash, 0, dash, end, items=[item])


def _value(text: str, at: int, depth: int) -> tuple[Node | None, int]:
    """A value that begins at a letter, and where it ends; None if it is not plain enough."""
    if text.startswith("{", at) and depth < _DEEPEST:
        return _keys(text, at, depth)
    if text.startswith("[", at) and depth < _DEEPEST:
        return _list(text, at, depth)
    found = _WORDS.match(text, at)
    if found is None:
        return None, at
    words = found[0]
    return Node("scalar", at, 0, at, found.end(), text=words, empty=words in NO_VALUE), found.end()


def _keys(text: str, at: int, depth: int) -> tuple[Node | None, int]:
    node, at = Node("keys", at, 0, at, flow=True), at + 1
    while True:
        name, end = _value(text, at, _DEEPEST)
        if name is None or not text.startswith(": ", end):
            return None, at
        item, at = _value(text, end + 2, depth + 1)
        if item is None:
            return None, at
        node.names.append(name)
        node.items.append(item)
        if text.startswith("}", at):
            node.end = at + 1
            return node, at + 1
        if not text.startswith(", ", at):
            return None, at
        at += 2


def _list(text: str, at: int, depth: int) -> tuple[Node | None, int]:
    node, at = Node("list", at, 0, at, flow=True), at + 1
    while True:
        item, at = _value(text, at, depth + 1)
        if item is None:
            return None, at
        node.items.append(item)
        if text.startswith("]", at):
            node.end = at + 1
            return node, at + 1
        if not text.startswith(", ", at):
            return None, at
        at += 2
