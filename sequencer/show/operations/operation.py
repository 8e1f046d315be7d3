"""An operation: something a person does to a show file, as a small frozen record that can be written as JSON.

A new kind is a frozen dataclass below `Operation` with a `KIND`; `operations.every_operation` lists all of them.
"""

import json
from abc import ABC, abstractmethod
from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields
from functools import cache
from typing import Annotated, Any, ClassVar, cast

from pydantic import ConfigDict, JsonValue, PlainValidator, TypeAdapter, ValidationError

from sequencer.errors import InputError, Place
from sequencer.kept import recent
from sequencer.show.reading import ReadShow, nearest, show_from_document
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_values import ValuePath

RowValues = Mapping[
    str, JsonValue
]  # an entry, a step, or what stands below a heading, with the file's own keys
Judge = Callable[
    [ReadShow], object
]  # raises InputError where a show cannot be used for another reason

_MOST_TEXTS = 8  # that stay parsed
_KINDS: dict[str, type["Operation"]] = {}


class Operation(ABC):
    """One thing that a person does to a show file."""

    __slots__ = ()
    __pydantic_config__ = ConfigDict(extra="forbid", strict=True)
    KIND: ClassVar[str] = ""  # its name in JSON

    def __init_subclass__(cls, **given: Any) -> None:
        super().__init_subclass__(**given)
        if cls.KIND:
            _KINDS[cls.KIND] = cls

    @property
    @abstractmethod
    def words(self) -> str:
        """What it does, as the list of what can be undone says it."""

    @abstractmethod
    def on(self, text: ShowText) -> ShowText:
        """The text after it; whether that is a show is not looked at here.

        Raises
        ------
        InputError
            If it does not apply to what the text says.
        ValueError
            If it names a place that is not in the text.
        """


def apply(text: str, operation: Operation, *, file: str = "the show file") -> str:
    """A show file after an operation.

    Parameters
    ----------
    text : str
        The file as it stands.
    operation : Operation
    file : str
        Its name, for messages.

    Returns
    -------
    text : str
        What the operation does not touch is the same to the byte.

    Raises
    ------
    InputError
        If the operation does not apply, or what it makes could not be read as a show.
    """
    return applied(shown_text(text, file), operation).text


def applied(before: ShowText, operation: Operation, *, judge: Judge | None = None) -> ShowText:
    """The same for a text that is parsed already.

    Parameters
    ----------
    before : ShowText
    operation : Operation
    judge : callable, optional
        Is given the show that the operation makes, and refuses it by raising an InputError.

    Raises
    ------
    InputError
        As `apply`.
    """
    try:
        after = operation.on(before)
    except ValueError as error:
        raise refusal(
            before, (), str(error), "look at the show as it is now, and do it again"
        ) from error
    read = read_again(after, before)
    if judge is not None:
        judge(read)
    return recent("show texts", (after.text, after.file), lambda: after, most=_MOST_TEXTS)


def shown_text(text: str, file: str) -> ShowText:
    """A text parsed; the last ones stay parsed.

    Raises
    ------
    InputError
        If it is not YAML.
    """
    return recent("show texts", (text, file), lambda: ShowText(text, file), most=_MOST_TEXTS)


def read_again(after: ShowText, before: ShowText) -> ReadShow:
    """The show that a text says, with the records of another text that it shares.

    Raises
    ------
    InputError
        If it is none.
    """
    try:
        known = _read(before)
    except InputError:
        known = None  # a file with a fault: an operation may be what mends it
    return recent(
        "shows of texts", id(after), lambda: (after, show_from_document(after.document, before=known)),
        most=_MOST_TEXTS,
    )[1]  # fmt: skip


def _read(text: ShowText) -> ReadShow:
    # The text is kept with its show, so that no other gets its id.
    return recent(
        "shows of texts", id(text), lambda: (text, show_from_document(text.document)),
        most=_MOST_TEXTS,
    )[1]  # fmt: skip


def refusal(text: ShowText, path: ValuePath, what: str, mend: str) -> InputError:
    """Why an operation is not done, at its place in the file."""
    return InputError("not-done", text.document.place(*path), what, mend)


def operation_from_json(data: Any) -> Operation:
    """An operation from its JSON.

    Parameters
    ----------
    data : mapping
        `do` says which, all else are its fields.

    Raises
    ------
    InputError
        If there is no such operation, or a field is missing, unknown or wrong.
    """
    if isinstance(data, Operation):
        return data
    kinds = dict(_KINDS)
    kind = data.get("do") if isinstance(data, Mapping) else None
    if not isinstance(kind, str) or kind not in kinds:
        raise InputError(
            "bad-operation", Place("operation"), f"there is no operation {kind!r}",
            nearest(str(kind), sorted(kinds)),
        )  # fmt: skip
    own = {key: value for key, value in data.items() if key != "do"}
    try:
        return _adapter(kinds[kind]).validate_json(json.dumps(own))
    except (ValidationError, TypeError, ValueError) as error:
        raise _fault(kind, error) from None


@cache
def _adapter(kind: type[Operation]) -> TypeAdapter[Operation]:
    return TypeAdapter(kind)


def _fault(kind: str, error: Exception) -> InputError:
    place = Place(f"operation {kind}")
    if not isinstance(error, ValidationError):
        return InputError("bad-operation", place, f"this is not JSON: {error}", "send plain values")
    first = error.errors()[0]
    where = ".".join(str(part) for part in first["loc"] if part not in ("tuple[...]", "list[...]"))
    known = [each.name for each in fields(cast("Any", _KINDS[kind]))]
    if first["type"] == "unexpected_keyword_argument":
        return InputError("bad-operation", place, f"unknown field {where!r}", nearest(where, known))
    if first["type"] == "missing":
        return InputError("bad-operation", place, f"the field {where!r} is missing", "add it")
    what = first["msg"].removeprefix("Value error, ")
    return InputError(
        "bad-operation", place, f"{where}: {what[:1].lower()}{what[1:]}", "correct it"
    )


def json_of(operation: Operation) -> dict[str, Any]:
    """An operation as JSON; fields that say what they say by default are left out."""
    out: dict[str, Any] = {"do": operation.KIND}
    for each in fields(cast("Any", operation)):
        value = getattr(operation, each.name)
        default = each.default
        if default is MISSING or value != default:
            out[each.name] = _plain(value)
    return out


def _plain(value: Any) -> Any:
    if isinstance(value, Operation):
        return json_of(value)
    if isinstance(value, Mapping):
        return {str(key): _plain(own) for key, own in value.items()}
    return [_plain(each) for each in value] if isinstance(value, list | tuple) else value


AnyOperation = Annotated[Operation, PlainValidator(operation_from_json)]  # a field of another one
