"""Plain values of a tree of nodes, with the position of each; scalars stay text.

Limits stop a hostile file from expanding: every use of an alias is counted.
"""

from typing import Any

from sequencer.errors import InputError, Place
from sequencer.show.text.nodes import Node

MOST_VALUES = 200_000
DEEPEST = 40

_TAGS = {"null", "bool", "int", "float", "str", "timestamp"}

PathKey = str | int
ValuePath = tuple[PathKey, ...]
_Base = tuple[int, int]


class Walk:
    """One pass over the nodes: collects values and positions, and limits expansion.

    Parameters
    ----------
    file : str
        Its name, for messages.
    """

    def __init__(self, file: str) -> None:
        self.file = file
        self.places: dict[ValuePath, Place] = {}
        self.keys: dict[ValuePath, Place] = {}
        self.budget = MOST_VALUES
        self.deepest = 0
        self._open: list[int] = []

    def value(self, node: Node, path: ValuePath = (), base: _Base = (0, 0)) -> Any:
        """The plain value of a node.

        Raises
        ------
        InputError
            If it expands without end or too far, or says something that a show file cannot hold.
        """
        of = node if node.target is None else node.target
        place = self._at(of, base)
        self.budget -= 1
        if self.budget < 0:
            raise InputError(
                "too-many-values", place, f"aliases expand this file to more than {MOST_VALUES} values",
                "write the blocks out, or use a phrase with repeat",
            )  # fmt: skip
        loop = id(of) in self._open
        if loop or len(path) > DEEPEST:
            raise InputError(
                "endless-alias" if loop else "too-deep", place,
                "this alias refers to itself" if loop else "values are nested too deeply",
                "write the value out",
            )  # fmt: skip
        self.places[path] = place
        self.deepest = max(self.deepest, len(path))
        if of.kind == "scalar":
            return self._scalar(of, place)
        self._open.append(id(of))
        try:
            if of.kind == "list":
                return [
                    self.value(item, (*path, k), _moved(base, of, k))
                    for k, item in enumerate(of.items)
                ]
            return self._mapping(of, path, base)
        finally:
            self._open.pop()

    def _mapping(self, node: Node, path: ValuePath, base: _Base) -> dict[str, Any]:
        values: dict[str, Any] = {}
        for k, (name, item) in enumerate(zip(node.names, node.items, strict=True)):
            moved = _moved(base, node, k)
            of = name if name.target is None else name.target
            place = self._at(of, moved)
            if of.kind != "scalar":
                raise InputError("not-a-key", place, "a key must be plain text", "quote it")
            key = key_text(of)
            if key in values:
                first = self.keys[(*path, key)].line
                raise InputError(
                    "key-twice", place, f"the key {key!r} appears twice",
                    f"remove one of them (the first is on line {first})",
                )  # fmt: skip
            self.keys[(*path, key)] = place
            values[key] = self.value(item, (*path, key), moved)
        return values

    def _scalar(self, node: Node, place: Place) -> str | None:
        tag = node.tag or "str"
        if tag.removeprefix("tag:yaml.org,2002:") not in _TAGS:
            raise InputError("unknown-tag", place, f"the tag {tag} is not known", "remove it")
        return None if node.empty else node.text

    def _at(self, node: Node, base: _Base) -> Place:
        return Place(self.file, base[1] + node.line + 1, node.column + 1)


def key_text(node: Node) -> str:
    """A key as text, whatever it looks like."""
    of = node if node.target is None else node.target
    return of.text


def _moved(base: _Base, node: Node, k: int) -> _Base:
    if node.offsets is None:
        return base
    letters, lines = node.offsets[k]
    return base[0] + letters, base[1] + lines
