"""The journal of an open show: every change, on disk before it is told, so that a crash loses nothing.

One line of JSON a change. A line that is not whole, as after a crash, ends what is read; the sum of each text is kept with it.
What has the name of a journal and does not begin as one is somebody else's: it is never written, and never taken away.
"""

import hashlib
import json
import os
from collections.abc import Iterator, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from sequencer.desk.file.plain_file import ForeignFileError, plain_file
from sequencer.errors import InputError, Place
from sequencer.files import replacing, telling

_LARGEST = 256_000_000  # bytes
_FORMAT = 1
_HEAD = b'{"journal":1,"disk":'  # how every one begins
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
            If it cannot be written, or something else has its name; it is tried again with the next line. What was there stays.
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

    @property
    def stands(self) -> bool:
        """Whether a line can be put behind the others: they are where they were, and under no other name besides."""
        if not self._size:
            return True  # all of it is written with the next line
        try:
            with plain_file(self.path, os.O_RDONLY) as handle:
                return self._goes_on(handle)
        except OSError:
            return False

    def remove(self) -> None:
        """Take the file away: nothing in it is needed any more."""
        with suppress(OSError):
            if _begins_as_one(self.path):
                self.path.unlink()

    def _write(self) -> None:
        content = b"".join(self._waiting)
        if self._size:
            with telling(self.path):
                self._write_behind(content)
        else:
            with telling(self.path):
                self.path.parent.stat()  # a folder that is gone is not made anew
                if os.path.lexists(self.path) and not _begins_as_one(self.path):
                    raise ForeignFileError(self.path)
            with replacing(self.path, private=True) as scratch:
                scratch.write_bytes(content)
        self._size += len(content)
        self._waiting = []

    def _write_behind(self, content: bytes) -> None:
        with plain_file(self.path, os.O_RDWR) as handle:
            if not self._goes_on(handle):
                raise ForeignFileError(self.path)
            os.ftruncate(handle, self._size)  # what was half written before
            os.lseek(handle, self._size, os.SEEK_SET)
            left = memoryview(content)
            while left:
                left = left[os.write(handle, left) :]
            os.fsync(handle)

    def _goes_on(self, handle: int) -> bool:
        there = os.fstat(handle)
        return there.st_nlink == 1 and there.st_size >= self._size and _is_head(_start(handle))


def _begins_as_one(path: Path) -> bool:
    """Whether what has the name is a journal, also one of which no more than a part of the first line is there."""
    try:
        with plain_file(path, os.O_RDONLY) as handle:
            return _is_head(_start(handle))
    except ForeignFileError:
        return False


def _start(handle: int) -> bytes:
    os.lseek(handle, 0, os.SEEK_SET)
    return os.read(handle, len(_HEAD))


def _is_head(start: bytes) -> bool:
    return _HEAD.startswith(start)


def read_journal(path: Path) -> tuple[list[dict[str, Any]], int, bool]:
    """The whole lines of a journal, the bytes that they take, and whether anything but a last half line follows them.

    Of a link, a device or a pipe nothing is read, as if there was none.

    Raises
    ------
    InputError
        If it is there and cannot be read.
    """
    with telling(path):
        try:
            with (
                plain_file(path, os.O_RDONLY) as handle,
                os.fdopen(handle, "rb", closefd=False) as file,
            ):
                content = file.read(_LARGEST + 1)
        except (FileNotFoundError, ForeignFileError):
            return [], 0, False
    if len(content) > _LARGEST:
        raise InputError(
            "too-large",
            Place(str(path)),
            "this journal is larger than any that was kept here",
            "move it away",
        )
    entries: list[dict[str, Any]] = []
    size = 0
    for line in _whole_lines(content):
        try:
            entry = json.loads(line)
        except (ValueError, RecursionError):  # nested deeper than anything that was written here
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
