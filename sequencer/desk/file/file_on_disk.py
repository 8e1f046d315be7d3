"""A show file on disk, to the byte: read, written, and held by one server only."""

import json
import os
import time
from contextlib import suppress
from hashlib import sha256
from pathlib import Path
from typing import IO

from sequencer.desk.file.plain_file import ForeignFileError, plain_handle
from sequencer.errors import InputError, Place
from sequencer.files import PARTIAL, telling
from sequencer.system_folders import cache_folder

_HEAD = b'{"process": '  # how the file begins by which a show is held


def can_write_beside(path: Path) -> bool:
    """Whether a file can be put beside another one."""
    # a scratch file as any other: the next write sweeps it away if this process is killed just here
    trial = path.with_name(f"{PARTIAL}trial-{os.getpid()}")
    try:
        trial.touch()
        trial.unlink()
    except OSError:
        return False
    return True


def cache_place(path: Path, kind: str) -> Path:
    """A file of the user's cache that belongs to a show file, where nothing can be put beside that.

    Raises
    ------
    InputError
        If there is no room for it either.
    """
    folder = cache_folder() / "open"
    with telling(folder):
        folder.mkdir(parents=True, exist_ok=True)
    return folder / f"{sha256(os.fsencode(path)).hexdigest()[:24]}.{kind}"


class Hold:
    """A show file held by this process: a second server on it is refused.

    The system lets go of it when the process ends, however that ends, so that no hold is ever left over.

    Parameters
    ----------
    place : Path
        The lock file.
    path : Path
        The show file, for messages.

    Raises
    ------
    InputError
        If another process holds it.
    """

    def __init__(self, place: Path, path: Path) -> None:
        self._place = place
        self._file = self._taken(path)
        said = {"process": os.getpid(), "since": time.strftime("%H:%M")}
        with telling(place):
            self._file.truncate(0)
            self._file.write(json.dumps(said).encode())
            self._file.flush()

    def _taken(self, path: Path) -> IO[bytes]:
        while True:
            file = self._opened()
            if not _locked(file):
                file.seek(0)
                told = _told(file.read())
                file.close()
                raise InputError(
                    "open-already", Place(str(path)), f"this show is open already{told}",
                    "go on in that page, or end that one with Ctrl-C first",
                )  # fmt: skip
            if _is_at(file, self._place):
                if not _is_hold(file):
                    file.close()
                    raise _taken_name(self._place)
                return file
            file.close()  # whoever held it has just taken the file away

    def _opened(self) -> IO[bytes]:
        with telling(self._place):
            try:
                handle = plain_handle(self._place, os.O_RDWR | os.O_CREAT | os.O_APPEND, 0o666)
            except ForeignFileError:
                raise _taken_name(self._place) from None
            return os.fdopen(handle, "a+b")

    def __repr__(self) -> str:
        return f"<Hold of {self._place.name}>"

    def let_go(self) -> None:
        """Let another process have it."""
        with suppress(OSError):
            self._place.unlink()
        self._file.close()


def _is_hold(file: IO[bytes]) -> bool:
    """Whether a file was written here: one that was just made is empty, and after a power cut one may hold zeros."""
    file.seek(0)
    start = file.read(len(_HEAD)).rstrip(b"\0")
    return _HEAD.startswith(start)


def _taken_name(place: Path) -> InputError:
    return InputError(
        "name-taken", Place(str(place)), "the file that says that a show is open goes here, and something else has its name",
        "move that away",
    )  # fmt: skip


def _told(content: bytes) -> str:
    with suppress(ValueError, KeyError, TypeError):
        said = json.loads(content)
        return f", in process {int(said['process'])} since {said['since']}"
    return ""


def _is_at(file: IO[bytes], place: Path) -> bool:
    """Whether an open file is the one that stands at a place."""
    try:
        return os.path.samestat(os.fstat(file.fileno()), place.stat())
    except FileNotFoundError:
        return False


def _locked(file: IO[bytes]) -> bool:
    """Whether this process holds the file now."""
    try:
        if os.name == "nt":
            import msvcrt

            file.seek(1_000_000)  # beyond what is written, so that others can read it
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined, unused-ignore]
        else:
            import fcntl

            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True
