"""A YAML file as plain values with their positions in the file; scalars stay as text.

YAML 1.2, parsed by ruamel.yaml, in pieces where that is possible (`show.pieces`).
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.reader import ReaderError

from sequencer.errors import InputError, Place
from sequencer.show.text.file_text import file_text
from sequencer.show.text.nodes import Node, composed
from sequencer.show.text.pieces import tree_in_pieces
from sequencer.show.text.plain_values import DEEPEST, PathKey, ValuePath, Walk
from sequencer.unseen_letters import steering_fault

ValuePlaces = Mapping[ValuePath, Place]


@dataclass(frozen=True, slots=True)
class Document:
    """Plain values from a file, and the position of each."""

    file: str
    values: Any
    places: ValuePlaces = field(repr=False)
    keys: ValuePlaces = field(repr=False)  # position of the key, if the path ends in one
    root: Node | None = field(default=None, repr=False, compare=False)  # where it was parsed from
    may_steer: bool = field(
        default=True, repr=False, compare=False
    )  # some text may hold letters that steer a terminal

    def place(self, *path: PathKey) -> Place:
        """Position of the value at `path`, or of the nearest enclosing heading."""
        while path and path not in self.places:
            path = path[:-1]
        return self.places.get(path, Place(self.file))

    def key_place(self, *path: PathKey) -> Place:
        """Position of the key at the end of `path`."""
        return self.keys.get(path) or self.place(*path)


def read_document(path: Path, if_empty: str = "start one with `sequencer new`") -> Document:
    """Read a YAML file.

    Parameters
    ----------
    path : Path
        The file.
    if_empty : str
        What to do about a file with nothing in it: a show is started otherwise than a list of rules.

    Raises
    ------
    InputError
        If the file does not exist, is not UTF-8 text or not YAML, or is larger or more deeply nested than
        any show.
    """
    try:
        return parse_document(file_text(path), str(path))
    except InputError as error:
        if error.code != "empty-file":
            raise
        raise InputError(error.code, error.place, error.what, if_empty) from error


def parse_document(text: str, file: str) -> Document:
    """Read YAML from a string; `file` is its name in messages.

    Raises
    ------
    InputError
        As `read_document`.
    """
    root = tree_in_pieces(text)
    if root is not None and root.known is not None:
        found = _Found(root, file)
        return Document(
            file, root.known.plain, _LaterPlaces(found, "places"), _LaterPlaces(found, "keys"), root,
            _may_steer(text),
        )  # fmt: skip
    try:
        root = composed(text)
    except MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        place = Place(file, mark.line + 1, mark.column + 1) if mark else Place(file)
        problem = " ".join(str(error.problem or error.context or "it is not YAML").split())
        raise InputError(
            "not-yaml", place, f"this is not YAML: {problem}", "correct the line or quote the text"
        ) from error
    except (YAMLError, ValueError) as error:
        if isinstance(error, ReaderError):
            raise _unknown_letter(text, file, error) from error
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
    walk = Walk(file)
    return Document(file, walk.value(root), walk.places, walk.keys, root, _may_steer(text))


def _may_steer(text: str) -> bool:
    """Whether a value may hold a letter that steers a terminal: it stands there, or is written by its number in quotes."""
    return "\\" in text or steering_fault(text.replace("\r\n", "\n")) is not None


def _unknown_letter(text: str, file: str, error: ReaderError) -> InputError:
    before = text[: error.position]
    place = Place(file, before.count("\n") + 1, len(before) - before.rfind("\n"))
    letter = ord(error.character) if isinstance(error.character, str) else error.character
    return InputError(
        "not-yaml", place, f"this is not YAML: the letter U+{letter:04X} may stand in no such file",
        "delete it; it may not be seen in an editor",
    )  # fmt: skip


class _Found:
    """Positions of all values, found when one is asked for."""

    def __init__(self, root: Node, file: str) -> None:
        self._root, self._file = root, file
        self._walk: Walk | None = None

    def walk(self) -> Walk:
        if self._walk is None:
            walk = Walk(self._file)
            walk.value(self._root)
            self._walk = walk
        return self._walk


class _LaterPlaces(Mapping[ValuePath, Place]):
    def __init__(self, found: _Found, which: str) -> None:
        self._found, self._which = found, which

    def _all(self) -> dict[ValuePath, Place]:
        walk = self._found.walk()
        return walk.places if self._which == "places" else walk.keys

    def __getitem__(self, path: ValuePath) -> Place:
        return self._all()[path]

    def __contains__(self, path: object) -> bool:
        return path in self._all()

    def __iter__(self) -> Iterator[ValuePath]:
        return iter(self._all())

    def __len__(self) -> int:
        return len(self._all())
