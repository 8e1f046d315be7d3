"""The vocabulary of a show: built-in patterns, then pattern files, then the show's own patterns.

A pattern file is YAML with a `patterns` heading, as in a show file; so a show file is itself a pattern
file. An invalid pattern is reported at its position in the file.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from sequencer.errors import InputError
from sequencer.given_files import is_given_file
from sequencer.motion.patterns.library import Pattern, patterns, patterns_from
from sequencer.show.outside_files import outside_file
from sequencer.show.text.document import Document, read_document
from sequencer.show.unseen_texts import unseen_texts

PATTERN_EXISTS = "pattern-exists"  # the code of its error
Book = Mapping[str, Pattern]
_UNDER = "under the heading `patterns:`, as in a show file"
_IF_EMPTY = f"write patterns {_UNDER}"


def book_from_file(path: Path) -> Book:
    """The vocabulary with the patterns of a pattern file or show file added.

    Raises
    ------
    InputError
        If the file cannot be read, has no patterns, or has an invalid one; the message gives the position.
    """
    document = read_document(path, _IF_EMPTY)
    if not any(_headings(document).get(key) for key in ("patterns", "pattern_files")):
        raise _none(document)
    return book_from_document(document)


def book_from_document(document: Document) -> Book:
    """Built-in patterns, those of the files under `pattern_files`, and the document's own, in this order.

    Raises
    ------
    InputError
        If a pattern file cannot be read, or a pattern is invalid; the message gives the position.
    """
    book: Book = patterns()
    for i, file in enumerate(_headings(document).get("pattern_files") or ()):
        path = Path(document.file).parent / str(file)
        if (outside := outside_file(document, ("pattern_files", i), str(file))) is not None:
            raise outside
        if not is_given_file(path):
            raise InputError(
                "no-file", document.place("pattern_files", i), f"there is no pattern file {file!r}",
                "give its path relative to the folder of this file",
            )  # fmt: skip
        added = read_document(path, _IF_EMPTY)
        if not _headings(added).get("patterns"):
            raise _none(added)
        book = _with(added, book)
    return _with(document, book)


def _with(document: Document, book: Book) -> Book:
    """A pattern book with a document's patterns added."""
    records = _headings(document).get("patterns") or {}
    if not isinstance(records, dict):
        raise InputError(
            "bad-pattern", document.place("patterns"), "patterns must be names, each with a record",
            "write `name: {law: …, set: {…}}`, one per line",
        )  # fmt: skip
    for fault in unseen_texts(document, "patterns"):
        raise fault
    for name, record in records.items():
        if name in book:
            raise InputError(
                PATTERN_EXISTS, document.place("patterns", name), f"pattern {name!r} already exists",
                "choose another name",
            )  # fmt: skip
        try:
            book = patterns_from({name: record}, book)
        except ValueError as error:
            raise InputError(
                "bad-pattern", document.place("patterns", name), str(error),
                "see docs/own-patterns.md for what is allowed",
            ) from error  # fmt: skip
    return book


def _headings(document: Document) -> dict[str, Any]:
    if not isinstance(document.values, dict):
        raise _none(document)
    return document.values


def _none(document: Document) -> InputError:
    headings = document.values if isinstance(document.values, dict) else {}
    if "patterns" in headings:
        return InputError(
            "no-patterns", document.key_place("patterns"), "there is no pattern under this heading",
            "write each as `name: {law: …, set: {…}}`, on a line of its own below it",
        )  # fmt: skip
    return InputError(
        "no-patterns", document.place(), "this file has no patterns", f"write them {_UNDER}"
    )
