"""Type on the sheets: the embedded faces, which characters they have, and how wide words are.

Lengths in points at size 1 unless a size is given. The faces are in `sequencer/outputs/sheets/page/fonts`.
"""

import unicodedata
from collections import ChainMap
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from functools import cache, lru_cache
from importlib.resources import as_file, files
from itertools import groupby
from typing import Any, Literal

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from sequencer.outputs.sheets.page.bidi import DIRECTION_MARKS, without_controls
from sequencer.outputs.sheets.page.own_type import OwnType

Face = Literal["Regular", "Bold", "Italic", "Poster"]
FACES: tuple[Face, ...] = ("Regular", "Bold", "Italic", "Poster")
ASCENT = 0.707  # share of a text box above its baseline; the rest is below
_SHOWN = 2  # code points spelled out in a run of letters that the type lacks


@cache
def font_name(face: Face) -> str:
    """Name under which reportlab knows a face; loads it the first time."""
    name = f"SequencerSheet-{face}"
    with as_file(files("sequencer.outputs.sheets.page") / "fonts" / f"{name}.ttf") as path:
        pdfmetrics.registerFont(TTFont(name, str(path)))
    return name


@cache
def _widths(face: Face) -> dict[int, float]:
    widths = pdfmetrics.getFont(font_name(face)).face.charWidths
    return {code: width / 1000 for code, width in widths.items()}


_user_types: list[OwnType] = []  # the user's type, while a print that uses one is in progress


@contextmanager
def with_type(user_type: OwnType | None) -> Iterator[None]:
    """Within the `with` block, set letters that the sheets' type lacks in the user's type."""
    if user_type is None or user_type.forbidden:
        yield
        return
    _user_types.append(user_type)
    _forget()
    try:
        yield
    finally:
        _user_types.pop()
        _forget()


def _forget() -> None:
    """Clear widths and line breaks computed with other type."""
    for cached in _REMEMBERED:
        cached.cache_clear()


def runs_of(text: str, face: Face) -> list[tuple[str, str]]:
    """Stretches of a printable text, each with the name of the type that has its letters."""
    face_name = font_name(face)
    if not _user_types:
        return [(face_name, text)]
    table, extra = _widths(face), _user_types[-1]
    return [
        (name, "".join(letters))
        for name, letters in groupby(
            text,
            key=lambda each: (
                extra.name if ord(each) not in table and ord(each) in extra.widths else face_name
            ),
        )
    ]


def has(letter: str) -> bool:
    """Whether any available type has a letter."""
    code = ord(letter)
    return code in _widths("Regular") or any(code in each_type.widths for each_type in _user_types)


@lru_cache(maxsize=50_000)
def width(text: str, face: Face) -> float:
    """Width of a printable text at size 1."""
    table = _table(face)
    return sum(table.get(ord(letter), 0.6) for letter in text if letter not in DIRECTION_MARKS)


def _table(face: Face) -> Mapping[int, float]:
    """Widths of a face, and of the user's type for letters it lacks."""
    return (
        ChainMap(_widths(face), *(each_type.widths for each_type in _user_types))
        if _user_types
        else _widths(face)
    )


def printable(text: str) -> str:
    """The text in letters that the type has; others become their code numbers, such as ‹U+706B›.

    Line ends are kept; other control characters become spaces.
    """
    if text.isascii() and text.isprintable():
        return text
    pieces: list[str] = []
    missing: list[str] = []
    for letter in unicodedata.normalize("NFC", without_controls(text)):
        kind = unicodedata.category(letter)
        if letter != "\n" and kind == "Cc":
            letter = " "  # noqa: PLW2901 - what is printed in its place
        elif letter in DIRECTION_MARKS:
            pieces.append(_spelled(missing) + letter)
            missing = []
            continue
        elif kind == "Cf" or 0xFE00 <= ord(letter) <= 0xFE0F:
            continue
        if letter == "\n" or has(letter):
            pieces.append(_spelled(missing) + letter)
            missing = []
        else:
            missing.append(letter)
    return "".join(pieces) + _spelled(missing)


def _spelled(missing: list[str]) -> str:
    if not missing:
        return ""
    codes = " ".join(f"U+{ord(letter):04X}" for letter in missing[:_SHOWN])
    more = f" +{len(missing) - _SHOWN}" if len(missing) > _SHOWN else ""
    return f"‹{codes}{more}›"


def uncovered(texts: Iterable[str]) -> tuple[str, ...]:
    """Letters that the type lacks, each once, in order of code point."""
    found = {
        letter
        for text in texts
        if not text.isascii()
        for letter in unicodedata.normalize("NFC", text)
        if not has(letter)
        and unicodedata.category(letter) not in {"Cc", "Cf"}
        and not 0xFE00 <= ord(letter) <= 0xFE0F
    }
    return tuple(sorted(found))


def clipped(text: str, face: Face, size: float, room: float) -> str:
    """A printable text cut to one line of `room` points, ending in … where it was cut."""
    text = printable(text).replace("\n", " ")
    if width(text, face) * size <= room:
        return text
    table = _table(face)
    left = room / size - table[ord("…")]
    count = 0
    for letter in text:
        left -= 0.0 if letter in DIRECTION_MARKS else table.get(ord(letter), 0.6)
        if left < 0:
            break
        count += 1
    while count < len(text) and count and unicodedata.combining(text[count]):
        count -= 1
    return text[:count].rstrip() + "…"


_REMEMBERED: list[Any] = [width]


def remembered(function: Any) -> Any:
    """Register a cache that depends on the available type: it is cleared when that changes."""
    _REMEMBERED.append(function)
    return function
