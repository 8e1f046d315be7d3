"""A YAML file as plain values with their positions in the file; scalars stay as text.

YAML 1.2, parsed by ruamel.yaml; the node graph is walked here because only nodes carry line and column.
Limits stop a hostile file from expanding: every use of an alias is counted.
"""

import io
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode

from sequencer.errors import InputError, Place
from sequencer.show.file_text import file_text

MOST_VALUES = 200_000
DEEPEST = 40
_NULLS = {"", "~", "null", "Null", "NULL"}

_TAGS = {"null", "bool", "int", "float", "str", "timestamp"}

PathKey = str | int


@dataclass(frozen=True, slots=True)
class Document:
    """Plain values from a file, and the position of each."""

    file: str
    values: Any
    places: dict[tuple[PathKey, ...], Place] = field(repr=False)
    keys: dict[tuple[PathKey, ...], Place] = field(
        repr=False
    )  # position of the key, if the path ends in one

    def place(self, *path: PathKey) -> Place:
        """Position of the value at `path`, or of the nearest enclosing heading."""
        while path and path not in self.places:
            path = path[:-1]
        return self.places.get(path, Place(self.file))

    def key_place(self, *path: PathKey) -> Place:
        """Position of the key at the end of `path`."""
        return self.keys.get(path) or self.place(*path)


def read_document(path: Path) -> Document:
    """Read a YAML file.

    Raises
    ------
    InputError
        If the file does not exist, is not UTF-8 text or not YAML, or is larger or more deeply nested than
        any show.
    """
    return parse_document(file_text(path), str(path))


def parse_document(text: str, file: str) -> Document:
    """Read YAML from a string; `file` is its name in messages.

    Raises
    ------
    InputError
        As `read_document`.
    """
    yaml = YAML(typ="safe", pure=True)
    yaml.version = "1.2"
    try:
        root = yaml.compose(io.StringIO(text))
    except MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        place = Place(file, mark.line + 1, mark.column + 1) if mark else Place(file)
        problem = " ".join(str(error.problem or error.context or "it is not YAML").split())
        raise InputError(
            "not-yaml", place, f"this is not YAML: {problem}", "correct the line or quote the text"
        ) from error
    except (YAMLError, ValueError) as error:
        problem = " ".join(str(error).split())[:120]
        raise InputError(
            "not-yaml", Place(file), f"this is not YAML: {problem}", "save it as plain UTF-8 text"
        ) from error
    except RecursionError as error:
        raise InputError(
            "too-deep",
            Place(file),
            "values are nested too deeply",
            f"nest at most {DEEPEST} levels deep",
        ) from error
    if root is None:
        raise InputError(
            "empty-file", Place(file), "this file is empty", "start one with `sequencer new`"
        )
    walk = _Walk(file)
    return Document(file, walk.value(root, ()), walk.places, walk.keys)


class _Walk:
    """One pass over the nodes: collects values and positions, and limits expansion."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.places: dict[tuple[PathKey, ...], Place] = {}
        self.keys: dict[tuple[PathKey, ...], Place] = {}
        self._open: list[int] = []
        self._budget = MOST_VALUES

    def value(self, node: Node, path: tuple[PathKey, ...]) -> Any:
        place = self._at(node)
        self._budget -= 1
        if self._budget < 0:
            raise InputError(
                "too-many-values", place, f"aliases expand this file to more than {MOST_VALUES} values",
                "write the blocks out, or use a phrase with repeat",
            )  # fmt: skip
        if id(node) in self._open or len(path) > DEEPEST:
            loop = id(node) in self._open
            raise InputError(
                "endless-alias" if loop else "too-deep", place,
                "this alias refers to itself" if loop else "values are nested too deeply",
                "write the value out",
            )  # fmt: skip
        self.places[path] = place
        if isinstance(node, ScalarNode):
            return self._scalar(node, place)
        self._open.append(id(node))
        try:
            if isinstance(node, SequenceNode):
                return [self.value(item, (*path, i)) for i, item in enumerate(node.value)]
            if isinstance(node, MappingNode):
                return self._mapping(node, path)
        finally:
            self._open.pop()
        raise InputError(
            "not-yaml", place, "this kind of value is not supported", "write text or a list"
        )

    def _mapping(self, node: MappingNode, path: tuple[PathKey, ...]) -> dict[str, Any]:
        values: dict[str, Any] = {}
        for key_node, value_node in node.value:
            place = self._at(key_node)
            if not isinstance(key_node, ScalarNode):
                raise InputError("not-a-key", place, "a key must be plain text", "quote it")
            key = str(key_node.value)
            if key in values:
                first = self.keys[(*path, key)].line
                raise InputError(
                    "key-twice", place, f"the key {key!r} appears twice",
                    f"remove one of them (the first is on line {first})",
                )  # fmt: skip
            self.keys[(*path, key)] = place
            values[key] = self.value(value_node, (*path, key))
        return values

    def _scalar(self, node: ScalarNode, place: Place) -> str | None:
        tag = str(node.tag)
        if tag.removeprefix("tag:yaml.org,2002:") not in _TAGS:
            raise InputError("unknown-tag", place, f"the tag {tag} is not known", "remove it")
        plain = node.style is None
        return None if plain and node.value in _NULLS else str(node.value)

    def _at(self, node: Node) -> Place:
        return Place(self.file, node.start_mark.line + 1, node.start_mark.column + 1)
