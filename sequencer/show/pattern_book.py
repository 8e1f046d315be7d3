"""The vocabulary of a show: what is built in, then files of patterns, then the show's own.

A file of patterns is YAML with the heading `patterns`, written as in a show file; so a show file is
itself a file of patterns. A bad pattern is refused where it stands.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from sequencer.errors import InputError
from sequencer.motion.patterns.library import Pattern, patterns, patterns_from
from sequencer.show.document import Document, read_document

Book = Mapping[str, Pattern]


def book_from_file(path: Path) -> Book:
    """The vocabulary and what a file of patterns, or a show file, adds to it.

    Raises
    ------
    InputError
        If the file cannot be read, holds no patterns, or one does not fit; the place is named.
    """
    document = read_document(path)
    if not {"patterns", "pattern_files"} & set(_headings(document)):
        raise _none(document)
    return book_from_document(document)


def book_from_document(document: Document) -> Book:
    """The vocabulary, the files under `pattern_files` and the document's own patterns, in this order.

    Raises
    ------
    InputError
        If a file of patterns cannot be read, or a pattern does not fit; the place is named.
    """
    book: Book = patterns()
    for i, file in enumerate(_headings(document).get("pattern_files") or ()):
        path = Path(document.file).parent / str(file)
        if not path.is_file():
            raise InputError(
                "no-file", document.place("pattern_files", i), f"there is no file of patterns {file!r}",
                "write its path from the folder of this file",
            )  # fmt: skip
        book = _with(read_document(path), book)
    return _with(document, book)


def _with(document: Document, book: Book) -> Book:
    """A book and the patterns of a document after it."""
    records = _headings(document).get("patterns") or {}
    if not isinstance(records, dict):
        raise InputError(
            "bad-pattern", document.place("patterns"), "patterns should be names with a record each",
            "write `name: {law: …, set: {…}}`, one a line",
        )  # fmt: skip
    for name, record in records.items():
        try:
            book = patterns_from({name: record}, book)
        except ValueError as error:
            raise InputError(
                "bad-pattern", document.place("patterns", name), str(error),
                "docs/own-patterns.md tells what fits",
            ) from error  # fmt: skip
    return book


def _headings(document: Document) -> dict[str, Any]:
    if not isinstance(document.values, dict):
        raise _none(document)
    return document.values


def _none(document: Document) -> InputError:
    return InputError(
        "no-patterns", document.place(), "this file holds no patterns",
        "write them under the heading `patterns:`, as in a show file",
    )  # fmt: skip
