"""Places in a text where a show file is edited: letters, lines and what stands around a node."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sequencer.show.text.nodes import Node
from sequencer.show.text.plain_edits import missing
from sequencer.show.text.plain_values import PathKey, ValuePath, key_text


@dataclass(frozen=True, slots=True)
class Splice:
    """Letters of a text from `start` to `end`, replaced by others."""

    start: int
    end: int
    text: str


@dataclass(frozen=True, slots=True)
class NodePlace:
    """A node of a text, at its place in the whole of it."""

    node: Node
    base: int  # letters before the piece that the node was read from
    path: ValuePath
    holder: "NodePlace | None" = None
    number: int = 0  # among the holder's items

    @property
    def start(self) -> int:
        """Its first letter."""
        return self.base + self.node.start

    @property
    def end(self) -> int:
        """Behind its last letter."""
        return self.base + self.node.end

    def item(self, k: int) -> "NodePlace":
        """One of its items, or the value of one of its keys."""
        name = self.node.names[k] if self.node.names else None
        key: PathKey = k if name is None else key_text(name)
        return NodePlace(self.node.items[k], self._base(k), (*self.path, key), self, k)

    def name(self, k: int) -> tuple[int, int]:
        """First letter of a key, and behind its last."""
        base, name = self._base(k), self.node.names[k]
        return base + name.start, base + name.end

    def find(self, path: ValuePath) -> "NodePlace":
        """What lies at a path from here.

        Raises
        ------
        ValueError
            If there is nothing.
        """
        spot = self
        for n, key in enumerate(path):
            k = spot._place(key)
            if k is None:
                raise missing((*self.path, *path[: n + 1], *path[n + 1 :]))
            spot = spot.item(k)
        return spot

    def _base(self, k: int) -> int:
        return self.base + (self.node.offsets[k][0] if self.node.offsets is not None else 0)

    def _place(self, key: PathKey) -> int | None:
        node = self.node
        if node.kind == "list" and isinstance(key, int):
            return key if 0 <= key < len(node.items) else None
        if node.kind == "keys":
            return next((k for k, name in enumerate(node.names) if key_text(name) == key), None)
        return None


def spliced(text: str, splices: Iterable[Splice]) -> str | None:
    """A text after splices in any order; None if two of them change the same letters."""
    out: list[str] = []
    at = 0
    for splice in sorted(splices, key=lambda one: (one.start, one.end)):
        if splice.start < at:
            return None
        out += [text[at : splice.start], splice.text]
        at = splice.end
    return "".join([*out, text[at:]])


def line_start(text: str, at: int) -> int:
    """The first letter of the line in which a letter stands."""
    return text.rfind("\n", 0, at) + 1


def line_end(text: str, at: int) -> int:
    """Behind the last letter of a line, before its line end."""
    found = text.find("\n", at)
    end = len(text) if found < 0 else found
    return end - 1 if end > at and text[end - 1] == "\r" else end


def next_line(text: str, at: int) -> int:
    """The first letter of the line behind the one in which a letter stands."""
    found = text.find("\n", at)
    return len(text) if found < 0 else found + 1


def skipped(text: str, at: int) -> int:
    """The next letter that is neither space nor comment."""
    while at < len(text):
        if text[at] in " \t\r\n\ufeff":
            at += 1
        elif text[at] == "#":
            at = next_line(text, at)
        else:
            break
    return at


def with_comments(text: str, start: int) -> int:
    """The first of the comment lines right above a line, given by where it starts."""
    while start > 0:
        above = line_start(text, start - 1)
        if not text[above:start].lstrip().startswith("#"):
            break
        start = above
    return start


def indented(lines: Sequence[str], column: int) -> list[str]:
    """Lines below each other from a column on; empty ones stay empty."""
    return [" " * column + line if line else line for line in lines]
