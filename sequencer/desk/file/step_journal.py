"""The journal of an open show: every change, on disk before it is told, so that a crash loses nothing.

One line of JSON a change. A line that is not whole, as after a crash, ends what is read; the sum of each text is kept with it.
"""

import hashlib
import json
import os
from collections.abc import Iterator, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from sequencer.errors import InputError, Place
from sequencer.files import telling
from sequencer.given_files import TooLargeError, given_bytes

_LARGEST = 256_000_000  # bytes
_FORMAT = 1
JournalEntry = Mapping[str, Any]


def text_sum(text: str) -> str:
    """A sum by which a text is known."""
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:32]


class StepJournal:
    """Lines that are kept in a file, in their order.

    What cannot be written, since the disk is full, stays in memory and is written with the next line.

    Parameters
    ----------
    path : Path
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self._size = 0  # bytes known to be written
        self._waiting: list[bytes] = []

    def __repr__(self) -> str:
        return f"<StepJournal {self.path.name}: {self._size} bytes>"

    def begin(self, text: str, *entries: JournalEntry) -> None:
        """Begin anew with the text of the show file and some lines; what was there is gone.

        Raises
        ------
        InputError
            If it cannot be written; it is tried again with the next line.
        """
        self._size = 0
        self._waiting = [_line(each) for each in ({"journal": _FORMAT, "disk": text}, *entries)]
        self._write()

    def go_on(self, size: int) -> None:
        """Go on behind the first bytes of a journal that was read."""
        self._size = size

    def add(self, entry: JournalEntry) -> None:
        """Put a line behind the others; once this returns, it is on disk.

        Raises
        ------
        InputError
            If it cannot be written; it is tried again with the next line.
        """
        self._waiting.append(_line(entry))
        self._write()

    def remove(self) -> None:
        """Take the file away: nothing in it is needed any more."""
        with suppress(OSError):
            self.path.unlink()

    def _write(self) -> None:
        content = b"".join(self._waiting)
        with telling(self.path):
            handle = os.open(self.path, os.O_RDWR | os.O_CREAT | getattr(os, "O_BINARY", 0), 0o600)
            try:
                os.ftruncate(handle, self._size)  # what was half written before
                os.lseek(handle, self._size, os.SEEK_SET)
                left = memoryview(content)
                while left:
                    left = left[os.write(handle, left) :]
                os.fsync(handle)
            finally:
                os.close(handle)
        self._size += len(content)
        self._waiting = []


def read_journal(path: Path) -> tuple[list[dict[str, Any]], int, bool]:
    """The whole lines of a journal, the bytes that they take, and whether anything but a last half line follows them.

    Raises
    ------
    InputError
        If it is there and cannot be read.
    """
    with telling(path):
        try:
            content = given_bytes(path, _LARGEST)
        except FileNotFoundError:
            return [], 0, False
        except TooLargeError as error:
            raise InputError(
                "too-large",
                Place(str(path)),
                "this journal is larger than any that was kept here",
                "move it away",
            ) from error
    entries: list[dict[str, Any]] = []
    size = 0
    for line in _whole_lines(content):
        try:
            entry = json.loads(line)
        except ValueError:
            return entries, size, True
        if not isinstance(entry, dict) or (not entries and entry.get("journal") != _FORMAT):
            return entries, size, True
        entries.append(entry)
        size += len(line)
    return entries, size, False


def _whole_lines(content: bytes) -> Iterator[bytes]:
    at = 0
    while (end := content.find(b"\n", at)) >= 0:
        yield content[at : end + 1]
        at = end + 1


def _line(entry: JournalEntry) -> bytes:
    # ASCII only: letters that are half of a pair, as a page may send them, can be written too
    return json.dumps(entry, ensure_ascii=True, separators=(",", ":")).encode("ascii") + b"\n"
