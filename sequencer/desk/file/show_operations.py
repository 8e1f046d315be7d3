"""Operations of a page on a show's text, and what a text says: also one that is no show."""

import inspect
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from pydantic import TypeAdapter

from sequencer.desk.file.line_merge import merged_text
from sequencer.errors import InputError, Place
from sequencer.show.model import Show
from sequencer.show.operations.block_operations import copied
from sequencer.show.operations.every_operation import OPERATIONS, read_operation
from sequencer.show.operations.merging import MergeConflict, conflict_words, merged
from sequencer.show.operations.operation import applied, read_again, shown_text
from sequencer.show.operations.tonight_operations import SetThere
from sequencer.show.text.file_text import LARGEST

REPLACE_TEXT = "replace-text"
_MOST_TOLD = 3  # conflicts that a sentence tells


@dataclass(frozen=True, slots=True)
class ReadText:
    """What a text says."""

    values: Any  # plain values; None if it is no YAML
    fault: InputError | None = None  # why it is no show
    show: Show | None = None

    @property
    def is_show(self) -> bool:
        """Whether it is a show."""
        return self.fault is None


@lru_cache(maxsize=4)
def read_text(text: str, file: str) -> ReadText:
    """What a show file's text says."""
    values = None
    try:
        shown = shown_text(text, file)
        values = shown.values
        return ReadText(values, show=read_again(shown, shown).show)
    except InputError as error:
        return ReadText(values, error)


def done_on(text: str, file: str, operation: Mapping[str, Any]) -> tuple[str, str]:
    """A text after an operation, and what that does in words.

    Parameters
    ----------
    text : str
    file : str
        Its name, for messages.
    operation : mapping
        As JSON: `do` names it, all else are its fields.

    Raises
    ------
    InputError
        If there is no such operation, or it is refused.
    """
    if operation.get("do") == REPLACE_TEXT:
        return _replaced(text, operation), "edit the text"
    known = read_operation(operation)
    return applied(shown_text(text, file), known).text, known.words


def with_everybody(text: str, file: str) -> str | None:
    """A show's text with everybody there tonight; None if there is none."""
    try:
        return applied(shown_text(text, file), SetThere()).text
    except InputError:
        return None


def _replaced(text: str, operation: Mapping[str, Any]) -> str:
    """The text of a person who edits it as text, with the line ends of the one before."""
    place = Place(f"operation {REPLACE_TEXT}")
    new = operation.get("text")
    if not isinstance(new, str) or set(operation) - {"do", "text"}:
        raise InputError(
            "bad-operation", place, "it has one field, 'text', which is text", "send it"
        )
    try:
        size = len(new.encode("utf-8"))
    except UnicodeEncodeError as error:
        raise InputError(
            "bad-operation", place, "the text has half a letter in it", "send whole letters"
        ) from error
    if size > LARGEST:
        raise InputError(
            "too-large", place, f"this is larger than {LARGEST // 1_000_000} MB", "shorten it"
        )
    if "\r\n" in text and "\r\n" not in new:
        new = new.replace("\n", "\r\n")
    return new


@dataclass(frozen=True, slots=True)
class TwoChanges:
    """Two changes of a text in one; without a text where they do not go together."""

    text: str | None
    conflicts: tuple[MergeConflict, ...] = ()

    @property
    def why(self) -> str:
        """What stands against it, in a sentence."""
        return "; ".join("; ".join(conflict_words(each)) for each in self.conflicts[:_MOST_TOLD])


def both_changes(base: str, mine: str, theirs: str, file: str) -> TwoChanges:
    """A text after two changes of it, on the tree of what it says; line by line where one is no YAML.

    Parameters
    ----------
    base : str
        From which both started.
    mine, theirs : str
    file : str
        Its name, for messages.
    """
    try:
        found = merged(base, mine, theirs, file=file)
    except InputError:
        return TwoChanges(merged_text(base, mine, theirs))
    return TwoChanges(found.text, found.conflicts)


def copied_blocks(text: str, file: str, at: Any) -> list[str]:
    """Entries or steps as they are written, for the operation that pastes them.

    Parameters
    ----------
    text : str
    file : str
    at : list of paths

    Raises
    ------
    InputError
        If there is none at a path.
    """
    place = Place(file)
    if not isinstance(at, list) or not all(isinstance(path, list) for path in at):
        raise InputError("bad-request", place, "'at' is a list of paths", "send lists of keys")
    try:
        return list(copied(shown_text(text, file), [tuple(path) for path in at]))
    except ValueError as error:
        raise InputError(
            "bad-request", place, str(error), "look at the show as it is now"
        ) from error


def operation_schemas() -> dict[str, Any]:
    """The JSON Schema of the fields of every operation, by its name."""
    own = {
        "type": "object", "properties": {"text": {"type": "string"}}, "required": ["text"],
        "additionalProperties": False, "description": "The whole text replaced by another.",
    }  # fmt: skip
    schemas = {}
    for name, kind in OPERATIONS.items():
        schema = TypeAdapter(kind).json_schema()
        schemas[name] = {**schema, "description": inspect.getdoc(kind) or ""}
    return {**schemas, REPLACE_TEXT: own}
