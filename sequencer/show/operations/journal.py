"""A show file under a person's hands, with a journal beside it: whatever happens, nothing that was done is lost.

The journal begins with the text from which the work started; then comes one line for each step, on disk before the step counts.
Each line carries a checksum, so that one that was cut off is known. The show file itself is written when it is saved, whole or not
at all.
"""

import json
import os
import zlib
from collections.abc import Iterable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from sequencer.errors import InputError, Place
from sequencer.files import telling, write_bytes
from sequencer.show.operations.history import History
from sequencer.show.operations.merging import MergedText, merged

_KIND = 1  # of journal; another one is not read
_NOT_TEXT = "save it as UTF-8"


def journal_path(path: Path) -> Path:
    """Where the journal of a show file lies."""
    return path.with_name(f".{path.name}.journal")


class Journal:
    """A show file that is being changed, and its journal.

    Parameters
    ----------
    path : Path
        The show file. If there is a journal of it, all that was done goes on from there.

    Raises
    ------
    InputError
        If the file cannot be read or is not YAML, or its folder cannot be written to.
    """

    def __init__(self, path: Path) -> None:
        self._path, self._beside = path, journal_path(path)
        self._size = 0
        known = _read(self._beside)
        self.given_back = False
        """Whether the journal held what the file did not: the work before a crash."""
        if known is None:
            self._saved = self._start = _text_of(path)
            self.history = History(self._start, str(path), keep=self._keep)
        else:
            self._resume(*known)
        if not self._size:
            self._begin()

    def __repr__(self) -> str:
        return f"<Journal of {self._path}: {self.history!r}>"

    @property
    def saved(self) -> bool:
        """Whether the show file has all that was done."""
        return self.history.text == self._saved

    @property
    def outside(self) -> str | None:
        """The show file's text, if something else has changed it; None if not.

        Raises
        ------
        InputError
            If it cannot be read.
        """
        now = _text_of(self._path)
        return None if now == self._saved else now

    def save(self) -> None:
        """Write the show file.

        Raises
        ------
        InputError
            If something else has changed it meanwhile, or it cannot be written; then it is as it was.
        """
        if self._path.exists() and self.outside is not None:
            raise InputError(
                "changed-meanwhile", Place(str(self._path)),
                "the file has been changed by something else since it was read",
                "take these changes in first",
            )  # fmt: skip
        text = self.history.text
        write_bytes(self._path, text.encode("utf-8"))
        self._saved = text
        self._keep({"saved": True})

    def take_in(self) -> MergedText:
        """Merge what something else has changed in the file into what was done here.

        Returns
        -------
        merged : MergedText
            With conflicts, nothing has changed.

        Raises
        ------
        InputError
            If the file is not YAML now, or cannot be read.
        """
        theirs = self.outside
        if theirs is None:
            return MergedText(text=self.history.text)
        found = merged(self._saved, self.history.text, theirs, file=str(self._path))
        if found.text is not None:
            # The step first: cut off between the two, the same is merged again, which changes nothing.
            self.history.take(found.text, "changed elsewhere")
            self._keep({"outside": theirs})
            self._saved = theirs
        return found

    def close(self) -> None:
        """Leave the file; the journal goes if all is saved, and stays else."""
        if self.saved:
            with telling(self._beside):
                self._beside.unlink(missing_ok=True)

    # The journal's file

    def _resume(
        self, start: str, lines: Iterable[Mapping[str, Any]], size: int, whole: bool
    ) -> None:
        """Go on from a journal, as far as it can be read."""
        every = list(lines)
        last = max((k for k, line in enumerate(every) if _of_the_file(line)), default=None)
        steps = [line for line in every if not _of_the_file(line)]
        self._start = self._saved = start
        if last is not None:
            until = [line for line in every[:last] if not _of_the_file(line)]
            own = every[last].get("outside")
            self._saved = own if own is not None else History.resumed(start, until).text
        self.history = History.resumed(start, steps, str(self._path), keep=self._keep)
        self._size = size
        on_disk = _text_of(self._path) if self._path.exists() else None
        if on_disk == self.history.text:  # it was written, and the line that says so was not
            self._saved = on_disk
        self.given_back = not self.saved
        if not whole:
            self._cut()

    def _cut(self) -> None:
        """Take away a line that was cut off when it was written; whatever else cannot be read is kept in a copy."""
        found = self._beside.read_bytes()
        if b"\n" in found[self._size :]:
            write_bytes(self._beside.with_name(self._beside.name + ".damaged"), found)
        with telling(self._beside), self._beside.open("r+b") as file:
            file.truncate(self._size)

    def _begin(self) -> None:
        line = _line({"journal": _KIND, "text": self._start})
        write_bytes(self._beside, line)
        with telling(self._beside), self._beside.open("r+b") as file:
            os.fsync(file.fileno())
        self._size = len(line)

    def _keep(self, step: dict[str, Any]) -> None:
        """One more line, on disk when this returns; if that fails, the journal is as it was."""
        line = _line(step)
        with telling(self._beside):
            file = os.open(self._beside, os.O_WRONLY | os.O_APPEND | getattr(os, "O_BINARY", 0))
            try:
                _write_all(file, line)
                os.fsync(file)
            except OSError:
                with suppress(OSError):
                    os.ftruncate(file, self._size)
                raise
            finally:
                os.close(file)
        self._size += len(line)


def _of_the_file(line: Mapping[str, Any]) -> bool:
    """Whether a line tells of the show file, and not of a step."""
    return "saved" in line or "outside" in line


def _write_all(file: int, line: bytes) -> None:
    while line:
        line = line[os.write(file, line) :]


def _line(value: Mapping[str, Any]) -> bytes:
    words = json.dumps(value, ensure_ascii=False).encode("utf-8", "surrogatepass")
    return b"%08x %b\n" % (zlib.crc32(words), words)


def _read(path: Path) -> tuple[str, list[dict[str, Any]], int, bool] | None:
    """The text at a journal's beginning, its lines, how many bytes can be read, and whether these are all."""
    try:
        found = path.read_bytes()
    except FileNotFoundError:
        return None
    except OSError as error:
        raise InputError(
            "cannot-read", Place(str(path)), f"this journal cannot be read ({error.strerror})",
            "see who may read it, or move it elsewhere",
        ) from error  # fmt: skip
    lines: list[dict[str, Any]] = []
    size = 0
    for line in found.split(b"\n")[:-1]:
        value = _value(line)
        if value is None:
            break
        lines.append(value)
        size += len(line) + 1
    if not lines or lines[0].get("journal") != _KIND:
        raise InputError(
            "not-a-journal", Place(str(path)), "this is no journal of a show file",
            "move it elsewhere: it may hold work that was not saved",
        )  # fmt: skip
    return str(lines[0]["text"]), lines[1:], size, size == len(found)


def _value(line: bytes) -> dict[str, Any] | None:
    checksum, _, words = line.partition(b" ")
    if checksum != b"%08x" % zlib.crc32(words):
        return None
    value = json.loads(words.decode("utf-8", "surrogatepass"))
    return value if isinstance(value, dict) else None


def _text_of(path: Path) -> str:
    """A show file's text to the byte, line ends and byte-order mark included."""
    try:
        return path.read_bytes().decode("utf-8")
    except UnicodeDecodeError as error:
        raise InputError(
            "not-text", Place(str(path)), "this is not UTF-8 text", _NOT_TEXT
        ) from error
    except FileNotFoundError as error:
        raise InputError("no-file", Place(str(path)), "file not found", "check the path") from error
    except OSError as error:
        raise InputError(
            "cannot-read", Place(str(path)), f"this file cannot be read ({error.strerror})",
            "check the path",
        ) from error  # fmt: skip
