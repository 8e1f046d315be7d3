"""A line for the practice log as it is typed after a run: "Wren 25.1 60% 6/8 lit burn 4:05"."""

import re
from collections.abc import Sequence

from sequencer.errors import InputError, Place
from sequencer.practice.logged_run import WHOLE_SHOW
from sequencer.practice.place_drift import ONE_WAY

OPTION = "--log"
EXAMPLE = 'write such as "Wren 25.1 60% 6/8", and lit, burn 4:05, 40 cm downstage, late 0.5, note … where they apply'
_BAR = r"-?\d+\.\d+"
_NUMBER = r"\d+(?:[.,]\d+)?"
# What is typed, in the order in which it is looked for, and the columns that it fills.
_PARTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"note\b[: ]*(.+)", ("note",)),
    (r"burn (\d+:\d\d(?:\.\d+)?|\d+(?:\.\d+)?) ?s?\b", ("burn",)),
    (r"(burnt out|put out)", ("ended",)),
    (r"on (?:the|my) (?:place|spot)|on place", ("drift",)),
    (rf"(?:drifted )?({ONE_WAY}(?:(?:,| and)? *{ONE_WAY})?)", ("drift",)),
    (rf"late ({_NUMBER})(?: beats?)?", ("late",)),
    (rf"early ({_NUMBER})(?: beats?)?", ("early",)),
    (r"(?:on )?(\d{4}-\d\d?-\d\d?|\d\d?\.\d\d?\.\d{4})", ("date",)),
    (rf"(?:at )?({_NUMBER}) ?%", ("speed",)),
    (r"(\d+) ?(?:clean )?(?:/|of|out of) ?(\d+)(?: clean)?", ("clean", "tried")),
    (rf"({_BAR}) ?(?:-|–|to) ?({_BAR})", ("from", "until")),
    (rf"(?:at )?({_BAR})", ("from",)),
    (r"(?:the )?whole show", ("what",)),
    (r"(unlit|lit)", ("lit",)),
)
_KNOWN = [
    (re.compile(rf"{pattern}(?=$|[\s,;])", re.IGNORECASE), names) for pattern, names in _PARTS
]
_SAID: dict[tuple[str, ...], tuple[str, ...]] = {("what",): (WHOLE_SHOW,), ("drift",): ("0",)}
_LIT = {"lit": "yes", "unlit": "no"}


def typed_run(text: str, names: Sequence[str]) -> dict[str, str]:
    """Cells of the line that somebody typed, by the names of their columns.

    Parameters
    ----------
    text : str
        In any order, but the name first and a note last.
    names : sequence of str
        Of everybody who may be named; one alone need not be.

    Raises
    ------
    InputError
        If a part is not understood, or said twice; its column is that in the text.
    """
    cells: dict[str, str] = {}
    at = _led_by_name(text, names, cells)
    while at < len(text):
        if text[at].isspace() or text[at] in ",;:":
            at += 1
            continue
        match, columns = _next(text, at)
        if match is None:
            rest = text[at:].split(maxsplit=1)[0]
            raise InputError(
                "bad-log-line", Place(OPTION, 1, at + 1), f"{rest!r} is not understood", EXAMPLE
            )
        said = match.groups() or _SAID[columns]
        for column, value in zip(columns, said, strict=True):
            if column in cells or (column == "early" and "late" in cells):
                raise InputError(
                    "bad-log-line",
                    Place(OPTION, 1, at + 1),
                    f"{column} is said twice",
                    "say it once",
                )
            cells[column] = value.strip()
        at = match.end()
    if "early" in cells:
        cells["late"] = f"-{cells.pop('early')}"
    if "lit" in cells:
        cells["lit"] = _LIT[cells["lit"].casefold()]
    return cells


def _led_by_name(text: str, names: Sequence[str], cells: dict[str, str]) -> int:
    """Take the name at the start, the longest that fits; where the rest begins."""
    start = len(text) - len(text.lstrip())
    for name in sorted(names, key=len, reverse=True):
        rest = text[start + len(name) :]
        alone = not rest or rest[0].isspace() or rest[0] in ",:;"
        if alone and text[start:].casefold().startswith(name.casefold()):
            cells["performer"] = name
            return start + len(name)
    return start


def _next(text: str, at: int) -> tuple[re.Match[str] | None, tuple[str, ...]]:
    for pattern, names in _KNOWN:
        if match := pattern.match(text, at):
            return match, names
    return None, ()
