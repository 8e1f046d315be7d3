"""Values as a person writes them in a show file: on one line, in quotes only where they have to be."""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

# What YAML reads as it stands, between brackets too: no comma, colon, bracket, quote, or number sign.
_PLAIN = re.compile(r"(?:[^\W_]|-(?=\d))(?:[^\W_]|[_.+/'’°²³%()·–-]| (?=[^\W_(])|(?<=\d):(?=\d))*")
_NO_TEXT = {
    "true",
    "false",
    "null",
    "yes",
    "no",
    "on",
    "off",
    "y",
    "n",
}  # in one program or another
_SHORT = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r"}


@dataclass(frozen=True, slots=True)
class Written:
    """A value with the words in which it was written, so that comments and quotes come along."""

    value: Any
    lines: tuple[str, ...]  # without the dash before it and its indent
    above: tuple[str, ...] = ()  # comments that stand over it


def said(value: Any) -> Any:
    """A value as a show file says it once it is read back: lists, keys and text.

    Raises
    ------
    ValueError
        If a show file cannot say it.
    """
    if isinstance(value, Mapping):
        return {str(key): said(own) for key, own in value.items()}
    if isinstance(value, list | tuple):
        return [said(own) for own in value]
    if isinstance(value, Written):
        return said(value.value)
    return None if value is None else _scalar(value)


def flow_words(value: Any) -> str:
    """A value on one line.

    Raises
    ------
    ValueError
        If a show file cannot say it.
    """
    if isinstance(value, Mapping):
        pairs = (f"{flow_words(str(key))}: {flow_words(own)}" for key, own in value.items())
        return "{" + ", ".join(pairs) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(map(flow_words, value)) + "]"
    if isinstance(value, Written):
        return flow_words(value.value)
    if value is None:
        return "null"
    text = _scalar(value)
    if isinstance(value, str) and (not _PLAIN.fullmatch(text) or text.casefold() in _NO_TEXT):
        return double_quoted(text)
    return text


def quoted_like(style: str | None, value: Any) -> str:
    """A value in the kind of quotes that another one has."""
    if isinstance(value, str) and style == '"':
        return double_quoted(value)
    if isinstance(value, str) and style == "'" and value.isprintable():
        return "'" + value.replace("'", "''") + "'"
    return flow_words(value)


def double_quoted(text: str) -> str:
    """A text between double quotes."""
    return '"' + "".join(map(_letter, text)) + '"'


def _letter(letter: str) -> str:
    if letter in _SHORT:
        return _SHORT[letter]
    if letter.isprintable():
        return letter
    code = ord(letter)
    return f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"


def _scalar(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str | int):
        return str(value)
    if isinstance(value, float) and math.isfinite(value):
        return format(Decimal(repr(float(value) + 0.0)), "f").removesuffix(".0")  # + 0.0: no -0
    raise ValueError(f"a show file cannot say {value!r}")
