"""Exceptions that a caller may catch.

SequencerError            root of the tree
└── InputError            the user's input cannot be used (exit status 2)
    └── InputErrors       several of these, found in one file
"""

import re
from collections.abc import Sequence
from typing import NamedTuple

_LONGEST = 400  # letters of what is wrong
_END = 160  # of these from its end
_LONG_WORD = re.compile(
    r"(\S{60})\S{61,}(\S{30})"
)  # somebody's own, which says no more when it is told whole


class SequencerError(Exception):
    """Root of the tree."""


class Place(NamedTuple):
    """A spot in a user's file; line and column count from 1."""

    file: str
    line: int | None = None
    column: int | None = None


class InputError(SequencerError):
    """The user's input cannot be used.

    Parameters
    ----------
    code : str
        Short stable name in kebab case.
    place : Place
        File, and line and column where they are known.
    what : str
        What is wrong, with the user's own text quoted. As an attribute, this and the next two have every letter written out
        that steers a terminal or turns the direction of a line, so that all who print them print them alike.
    mend : str
        How to fix it.
    why : str, optional
        The reason, where it is not obvious.
    """

    def __init__(self, code: str, place: Place, what: str, mend: str, why: str = "") -> None:
        super().__init__(code, place, what, mend, why)  # pickling needs every argument
        self.code, self.place = code, place
        self.what, self.mend, self.why = written_out(what), written_out(mend), written_out(why)

    def __str__(self) -> str:
        where = _seen(":".join(str(part) for part in self.place if part))
        return f"{where}: {self.sentence} [{self.code}]"

    @property
    def sentence(self) -> str:
        """What is wrong, why, and how to mend it, in one line of a length that somebody reads."""
        why = f" ({_short(self.why)})" if self.why else ""
        text = f"{_short(self.what)}{why}"
        return f"{text}{' ' if text.endswith('?') else '; '}{_seen(self.mend)}"


def _short(text: str) -> str:
    """A text whose middle is left out where somebody's own value makes it longer than anybody reads."""
    text = _LONG_WORD.sub(r"\1…\2", _seen(text))
    if len(text) <= _LONGEST:
        return text
    return f"{text[: _LONGEST - _END]} … {text[-_END:]}"


def _seen(text: str) -> str:
    """A text of one line in which every letter is seen, line ends too."""
    return written_out(text).replace("\n", "\\n")


def written_out(text: str) -> str:
    """A text in which every letter is seen: one that steers a terminal, or turns the direction of a line, is written out.

    Parameters
    ----------
    text : str
        Line ends stay.
    """
    if text.isprintable():
        return text
    return "".join(
        each if each.isprintable() or each == "\n" else ascii(each)[1:-1] for each in text
    )


class InputErrors(InputError):
    """Several faults in one file, in line order; printed one per line."""

    def __init__(self, errors: Sequence[InputError]) -> None:
        first = errors[0]
        super().__init__(first.code, first.place, first.what, first.mend, first.why)
        self.args = (tuple(errors),)
        self.errors = tuple(errors)

    def __str__(self) -> str:
        return "\n".join(str(error) for error in self.errors)
