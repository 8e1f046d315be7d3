"""A YAML text read in pieces, each parsed once: after an edit only what was edited is parsed again.

A piece is one entry of a list or one key with its value, on lines of its own. It is parsed by itself, which says the same
as within its text: whatever spans several pieces (a bracket or a quote left open, an anchor, a second document) cannot be
parsed by itself, and the text is then read as a whole. `tests/property/test_pieces.py` compares both.
"""

import re
from functools import lru_cache
from typing import Literal

from ruamel.yaml.error import YAMLError

from sequencer.errors import InputError
from sequencer.show.text.nodes import Known, Node, composed
from sequencer.show.text.plain_values import DEEPEST, MOST_VALUES, Walk, key_text
from sequencer.show.text.simple_rows import simple_row

_LEAF = 16  # lines that are parsed together
_MOST_LEAVES = 20_000  # kept
_MOST_JOINED = 64  # kept; each may be as long as a file

# Several documents, directives, tabs as indent, keys with a question mark, line ends that only some programs know.
_IRREGULAR = re.compile(
    r"^(?:---|\.\.\.|%| *\t| *[?:](?:[ \r\n]|\Z))|[\x85\u2028\u2029\ufeff]|\r(?!\n)", re.MULTILINE
)
_BRACKETS = "{["  # a text that begins with one is, but for odd keys, a single piece: it would be parsed twice
_HEADING = re.compile(r" *[^\s#&*!|>'\"%@`?{}\[\],-][^\n:#&*!]*:[ ]*(?:#[^\n]*)?\r?\n")
_CONTENT = re.compile(r"^( *)(?:(-)(?=[ \r\n]|\Z)|[^ #\r\n])", re.MULTILINE)

_Holder = Literal["list", "keys"]
_Entry = tuple[Node | None, Node]  # a key and its value, or no key and an item


def tree_in_pieces(text: str) -> Node | None:
    """The tree of a text, with what it says; None if it has to be read as a whole, or cannot be read."""
    first = _CONTENT.search(text)
    if _IRREGULAR.search(text) or (first is not None and first[0][-1] in _BRACKETS):
        return None
    root = _block(text, "keys", 0, (0, 0))
    if root is None or root.known is None:
        return None
    return root if root.known.size <= MOST_VALUES and root.known.depth <= DEEPEST else None


def _block(text: str, kind: _Holder, column: int, base: tuple[int, int]) -> Node | None:
    """A list or keys in block style that fill a text from some column on."""
    starts = _starts(text, kind, column)
    if not starts:
        return None
    ends = [*starts[1:], len(text)]
    node = Node(kind, base[0] + starts[0] + column, 0, column)
    line = base[1] + text.count("\n", 0, starts[0])
    node.line = line
    offsets: list[tuple[int, int]] = []
    for start, end in zip(starts, ends, strict=True):
        chunk = text[start:end]
        lines = chunk.count("\n")
        entry = _leaf(chunk, kind) if lines <= _LEAF else _long(chunk, kind, column)
        if entry is None:
            return None
        name, item = entry
        if name is not None:
            node.names.append(name)
        node.items.append(item)
        offsets.append((base[0] + start, line))
        line += lines
    node.offsets = offsets
    node.end = offsets[-1][0] + max(each.end for each in (*node.names[-1:], node.items[-1]))
    node.known = _known(node)
    return None if node.known is None else node


def _starts(text: str, kind: _Holder, column: int) -> list[int]:
    """Where each entry's first line begins; none if the text begins otherwise, or a list's column holds anything else."""
    dash, other = r"-(?:[ \r\n]|\Z)", r"(?:[^ #\r\n-]|-[^ \r\n])"
    if kind == "list" and re.search(rf"^ {{{column}}}{other}", text, re.MULTILINE):
        return []
    own = dash if kind == "list" else other
    starts = [found.start() for found in re.finditer(rf"^ {{{column}}}{own}", text, re.MULTILINE)]
    first = _CONTENT.search(text)
    return starts if starts and first is not None and first.start() == starts[0] else []


def _known(node: Node) -> Known | None:
    """What a list or keys say whose entries are known; None if a key appears twice."""
    parts = [each.known for each in node.items if each.known is not None]
    size = 1 + sum(part.size for part in parts)
    depth = 1 + max(part.depth for part in parts)
    if node.kind == "list":
        return Known([part.plain for part in parts], size, depth)
    plain = {key_text(name): part.plain for name, part in zip(node.names, parts, strict=True)}
    return Known(plain, size, depth) if len(plain) == len(parts) else None


@lru_cache(maxsize=_MOST_JOINED)
def _long(chunk: str, kind: _Holder, column: int) -> _Entry | None:
    """An entry of many lines: a heading with what stands below it, else parsed as it is."""
    heading = _HEADING.match(chunk) if kind == "keys" else None
    if heading is not None:
        top = _parsed(heading[0], kind)
        body = chunk[heading.end() :]
        first = _CONTENT.search(body)
        if top is not None and first is not None:
            below: _Holder = "list" if first[2] else "keys"
            inner = len(first[1])
            if inner > column or (inner == column and below == "list"):
                node = _block(body, below, inner, (heading.end(), 1))
                if node is not None:
                    return top[0], node
    return _parsed(chunk, kind)


@lru_cache(maxsize=_MOST_LEAVES)
def _leaf(chunk: str, kind: _Holder) -> _Entry | None:
    """An entry of few lines."""
    return _parsed(chunk, kind)


def _parsed(chunk: str, kind: _Holder) -> _Entry | None:
    """One entry, parsed by itself; None if it is not exactly one."""
    try:
        node = (simple_row(chunk) if kind == "list" else None) or composed(chunk)
    except (YAMLError, ValueError, RecursionError):
        return None
    if node is None or node.kind != kind or node.flow or len(node.items) != 1:
        return None
    if node.anchor is not None or node.tag is not None:
        return None
    item, walk = node.items[0], Walk("")
    try:
        plain = walk.value(node)
    except InputError:
        return None
    own = plain[0] if kind == "list" else next(iter(plain.values()))
    item.known = Known(own, len(walk.places) - 1, walk.deepest - 1)
    return (node.names[0] if kind == "keys" else None), item
