"""The text of a show file on disk, to the byte, and what can be wrong with it before it is read as YAML."""

import os
from dataclasses import dataclass
from pathlib import Path

from sequencer.errors import InputError, Place
from sequencer.files import replacing, telling
from sequencer.given_files import TooLargeError, given_bytes, is_given_folder

LARGEST = 4_000_000  # bytes of a show file
_MARK = b"\xef\xbb\xbf"


@dataclass(frozen=True, slots=True)
class DiskText:
    """What a file says."""

    text: str  # with its own line ends
    marked: bool = False  # it begins with a byte order mark

    @property
    def content(self) -> bytes:
        """The file to the byte."""
        return (_MARK if self.marked else b"") + self.text.encode("utf-8")


def file_text(path: Path) -> str:
    """Text of a show file, its lines ended by LF alone.

    Raises
    ------
    InputError
        As `disk_text`.
    """
    return disk_text(path).text.replace("\r\n", "\n").replace("\r", "\n")


def disk_text(path: Path) -> DiskText:
    """The text of a show file with its own line ends.

    Raises
    ------
    InputError
        If it does not exist, is no file, cannot be read, is no UTF-8 text, or is larger than any show.
    """
    place = Place(str(path))
    try:
        content = given_bytes(path, LARGEST)
    except FileNotFoundError as error:
        raise InputError(
            "no-file", place, "file not found", "check the path, or start one with `sequencer new`"
        ) from error
    except TooLargeError as error:
        raise InputError(
            "too-large", place, str(error.strerror), "give the path of a show file"
        ) from error
    except (OSError, ValueError) as error:
        if is_given_folder(path):
            raise InputError(
                "not-a-file", place, "this is a folder", "give the path of a show file in it"
            ) from error
        reason = getattr(error, "strerror", None) or str(error)
        raise InputError(
            "cannot-read", place, f"this file cannot be read ({reason})", "check the path"
        ) from error
    marked = content.startswith(_MARK)
    try:
        return DiskText(content[len(_MARK) if marked else 0 :].decode("utf-8"), marked)
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        raise InputError(
            "not-text", Place(str(path), line), "this is not UTF-8 text", "save it as UTF-8"
        ) from error


def write_disk_text(path: Path, said: DiskText) -> None:
    """Write a show file, atomically; it is on disk once this returns. Where its name is a link, the file that it leads to is written.

    Raises
    ------
    InputError
        If it cannot be written; the file then stays as it is.
    """
    real = Path(os.path.realpath(path))
    with replacing(real) as scratch, telling(path):
        scratch.write_bytes(said.content)
