"""A YAML text as a tree of nodes that know where they stand: what reading and editing a show file start from.

Made from the parser's events, since only these tell an alias from what it stands for. Scalars stay text.
"""

import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any, Literal

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError
from ruamel.yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    Event,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

NO_VALUE = frozenset({"", "~", "null", "Null", "NULL"})
NodeKind = Literal["scalar", "list", "keys", "alias"]


@dataclass(frozen=True, slots=True)
class Known:
    """What a piece of text says."""

    plain: Any  # its plain value
    size: int  # values in it
    depth: int  # levels below it


@dataclass(slots=True, eq=False)
class Node:
    """A value in a text, with its place counted from where the piece of text begins that it was read from."""

    kind: NodeKind
    start: int  # of its first letter, an anchor or a tag among them
    line: int  # from 0
    column: int  # from 0
    end: int = 0  # behind its last letter; comments below are no part of it
    text: str = ""  # of a scalar
    empty: bool = False  # a scalar that is no value: left out, ~ or null
    style: str | None = None  # of a scalar: ' " | or >
    flow: bool = False  # written within brackets
    anchor: str | None = None
    tag: str | None = None
    names: list["Node"] = field(default_factory=list)  # keys, each beside its value
    items: list["Node"] = field(default_factory=list)
    target: "Node | None" = None  # what an alias stands for
    offsets: Sequence[tuple[int, int]] | None = (
        None  # letters and lines by which the piece of each item begins later
    )
    known: "Known | None" = None  # what it says, where it was read in pieces


def composed(text: str) -> Node | None:
    """The tree of a text that is one document; None if it says nothing.

    Raises
    ------
    MarkedYAMLError
        If it is not YAML, or more than one document.
    YAMLError, ValueError
        If it holds letters that YAML does not know.
    RecursionError
        If values are nested very deeply.
    """
    yaml = YAML(typ="safe", pure=True)
    yaml.version = "1.2"
    reading = _Composer(iter(yaml.parse(io.StringIO(text))), text)
    return reading.document()


class _Composer:
    def __init__(self, events: Iterator[Event], text: str) -> None:
        self._events, self._text = events, text
        self._anchors: dict[str, Node] = {}

    def document(self) -> Node | None:
        root = None
        for event in self._events:
            if isinstance(event, DocumentStartEvent):
                if root is not None:
                    raise MarkedYAMLError(
                        "expected a single document",
                        None,
                        "but found another document",
                        event.start_mark,
                    )
                root = self._node(next(self._events))
        return root

    def _node(self, event: Event) -> Node:
        mark = event.start_mark
        if isinstance(event, AliasEvent):
            if event.anchor not in self._anchors:
                raise MarkedYAMLError(None, None, f"found undefined alias {event.anchor!r}", mark)
            node = Node("alias", mark.index, mark.line, mark.column, event.end_mark.index)
            node.target, node.anchor = self._anchors[event.anchor], str(event.anchor)
            return node
        if isinstance(event, ScalarEvent):
            node = self._scalar(event)
        elif isinstance(event, SequenceStartEvent):
            node = Node("list", mark.index, mark.line, mark.column, flow=bool(event.flow_style))
        elif isinstance(event, MappingStartEvent):
            node = Node("keys", mark.index, mark.line, mark.column, flow=bool(event.flow_style))
        else:
            raise TypeError(f"no value begins with {event!r}")
        if event.anchor is not None:
            node.anchor = str(event.anchor)
            self._anchors[node.anchor] = node
        tag = getattr(event, "tag", None)
        node.tag = None if tag is None else str(tag)
        if node.kind == "list":
            self._list(node)
        elif node.kind == "keys":
            self._keys(node)
        return node

    def _scalar(self, event: ScalarEvent) -> Node:
        mark, value = event.start_mark, str(event.value)
        end = event.end_mark.index
        if event.style in ("|", ">") and not value.endswith("\n\n"):
            end = len(self._text[:end].rstrip())  # blank lines below mean nothing here
        return Node(
            "scalar", mark.index, mark.line, mark.column, end,
            text=value, empty=event.style is None and value in NO_VALUE, style=event.style,
        )  # fmt: skip

    def _list(self, node: Node) -> None:
        for event in self._events:
            if isinstance(event, SequenceEndEvent):
                node.end = event.end_mark.index if node.flow else _content_end(node)
                return
            node.items.append(self._node(event))

    def _keys(self, node: Node) -> None:
        for event in self._events:
            if isinstance(event, MappingEndEvent):
                node.end = event.end_mark.index if node.flow else _content_end(node)
                return
            name, item = self._node(event), self._node(next(self._events))
            node.names.append(name)
            node.items.append(self._nothing(name, item))

    def _nothing(self, name: Node, item: Node) -> Node:
        """A value; one that is left out stands behind its key's colon, wherever the parser noticed it."""
        if item.empty and not item.text and item.start == item.end:
            colon = self._text.find(":", name.end, item.start)
            if colon >= 0:
                item.start = item.end = colon + 1
                item.line = name.line + self._text.count("\n", name.start, colon)
                item.column = name.column + item.start - name.start
                if item.line != name.line:
                    item.column = colon - self._text.rfind("\n", 0, colon)
        return item


def _content_end(node: Node) -> int:
    return max([node.start, *(each.end for each in (*node.names[-1:], *node.items[-1:]))])
