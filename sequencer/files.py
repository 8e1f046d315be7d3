"""Atomic writes: no partial file is ever left, and an old file stays untouched until its replacement is complete."""

import errno
import os
import secrets
import shutil
import signal
import threading
import time
from collections.abc import Iterator, Mapping
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path
from typing import TypeAlias

from sequencer.errors import InputError, Place

AnyPath: TypeAlias = str | os.PathLike[str]  # what public functions take for a file

PARTIAL = ".partial-"  # how the name of a scratch file begins
_FORGOTTEN = 3600.0  # [s] since a scratch file was last written: nobody is at work on it any more
_SWEPT: set[Path] = set()  # folders in which this process has looked
_REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk quota is used up",
    errno.EACCES: "no permission to write there",
    errno.EPERM: "no permission to write there",
    errno.EROFS: "the disk is read-only",
    errno.ENOTDIR: "part of the path is a file, not a folder",
    errno.EEXIST: "a file has the name that the folder should have",
    errno.EISDIR: "there is already a folder with that name",
    errno.ENAMETOOLONG: "the name is too long",
}


@contextmanager
def replacing(path: Path, *, settled: bool = True, private: bool = False) -> Iterator[Path]:
    """Yield a temporary path next to `path`, moved into place only if the body succeeds.

    Parameters
    ----------
    path : Path
        The file to write; its folder is created if missing.
    settled : bool
        Whether it has to be on the disk before it takes the name. Without, a power cut may leave it empty: only for what is
        known to be whole by a checksum of its own, and can be made again.
    private : bool
        Whether nobody but its owner may read it, whatever was there before.

    Yields
    ------
    scratch : Path
        An empty file in the same folder, removed if anything goes wrong.

    Raises
    ------
    InputError
        If the folder cannot be written to, or the disk is full.
    """
    # Its name is known before it is there: an interruption at any moment finds what to take away.
    scratch = path.with_name(f"{PARTIAL}{secrets.token_hex(8)}{path.suffix}")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        _sweep(path.parent)
        scratch.touch(mode=0o600, exist_ok=False)
        yield scratch
        mode = 0o600 if private else _usual_mode(path)
        if settled:
            _settle(scratch)  # before it gets rights that may forbid it
        scratch.chmod(mode & 0o777)
        scratch.replace(path)
        if settled:
            _settle_folder(path.parent)
    except OSError as error:
        raise _refusal(path, error) from error
    finally:
        with suppress(
            OSError
        ):  # gone under its new name, or never there; a disk that is read-only says so even then
            scratch.unlink()


def _usual_mode(path: Path) -> int:
    """The rights of the file that is replaced, or those of any new file."""
    return path.stat().st_mode if path.exists() else 0o666 & ~_umask()


def _settle(scratch: Path) -> None:
    """Have a file on the disk before it takes another's name: after a power cut there is the old one or the new one."""
    with scratch.open("rb+") as file:
        os.fsync(file.fileno())


def _settle_folder(folder: Path) -> None:
    """Have a folder's new names on the disk, where the system lets anybody ask for that."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _sweep(folder: Path) -> None:
    """Take away what killed runs left half-written in a folder; looked for once by a process."""
    if folder in _SWEPT:
        return
    _SWEPT.add(folder)
    with suppress(OSError), os.scandir(folder) as there:
        for each in there:
            if each.name.startswith(PARTIAL) and time.time() - each.stat().st_mtime > _FORGOTTEN:
                with suppress(OSError):
                    if each.is_dir(follow_symlinks=False):
                        shutil.rmtree(each.path)
                    else:
                        Path(each.path).unlink()


@contextmanager
def making_folder(folder: Path) -> Iterator[Path]:
    """Yield a temporary folder, which becomes a new folder of that name only if the body succeeds.

    Parameters
    ----------
    folder : Path
        The folder to make: nothing of that name may be there; the folder above it is created if missing.

    Yields
    ------
    scratch : Path
        An empty folder beside it, removed with all that is in it if anything goes wrong.

    Raises
    ------
    InputError
        If something of that name is there, or it cannot be written.
    """
    _refuse_taken(folder)
    scratch = folder.with_name(f"{PARTIAL}{secrets.token_hex(8)}")
    above = [each for each in folder.parents if not os.path.lexists(each)]
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        _sweep(folder.parent)
        scratch.mkdir(mode=0o700)
        yield scratch
        for each in sorted(scratch.rglob("*")):
            if each.is_file():
                _settle(each)
            else:
                _settle_folder(each)
        _settle_folder(scratch)
        _refuse_taken(folder)
        scratch.chmod(0o777 & ~_umask())
        scratch.rename(folder)
        _settle_folder(folder.parent)
    except OSError as error:
        raise _refusal(folder, error) from error
    finally:
        shutil.rmtree(scratch, ignore_errors=True)
        for each in above:  # those that were made for nothing: all others hold something
            with suppress(OSError):
                each.rmdir()


def _refuse_taken(folder: Path) -> None:
    # What ends above itself is there as soon as it is looked at, and has no name that another could have meanwhile.
    if folder.name in {"", ".."} or os.path.lexists(folder):
        raise InputError(
            "folder-exists", Place(str(folder)), "something of this name is there already, and nothing is overwritten",
            "name a new folder with --out",
        )  # fmt: skip


@contextmanager
def telling(path: Path) -> Iterator[None]:
    """Turn an OSError into an InputError that names the file.

    Raises
    ------
    InputError
        If the operating system refuses an operation in the body.
    """
    try:
        yield
    except OSError as error:
        raise _refusal(path, error) from error


def _refusal(path: Path, error: OSError) -> InputError:
    reason = _REASONS.get(error.errno or 0) or error.strerror or "the operating system refused"
    return InputError(
        "cannot-write",
        Place(str(path)),
        f"cannot write this file: {reason}",
        "choose another folder, or make room",
    )


def write_text(path: Path, text: str, *, settled: bool = True) -> None:
    """Write UTF-8 text with LF line endings, atomically; bytes of a path that are no text are written out."""
    with replacing(path, settled=settled) as scratch:
        scratch.write_text(text, encoding="utf-8", errors="backslashreplace", newline="\n")


def write_set(contents: Mapping[Path, bytes]) -> None:
    """Write several files; all are complete on disk before the first is replaced.

    Raises
    ------
    InputError
        If the folder cannot be written to, or the disk is full; then no file is changed.
    """
    with ExitStack() as stack:
        scratches = {path: stack.enter_context(replacing(path)) for path in contents}
        for path, scratch in scratches.items():
            with telling(path):
                scratch.write_bytes(contents[path])
        with not_interrupted():  # the files belong together: all are replaced, or none
            stack.close()


@contextmanager
def not_interrupted() -> Iterator[None]:
    """Let Ctrl-C wait until the body is done; it must be short.

    Raises
    ------
    KeyboardInterrupt
        At its end, if Ctrl-C was pressed meanwhile.
    """
    handler = signal.getsignal(signal.SIGINT)
    main = threading.current_thread() is threading.main_thread()
    if not (
        main and callable(handler)
    ):  # Python interrupts no other thread, or Ctrl-C does nothing
        yield
        return
    waiting: list[int] = []
    signal.signal(signal.SIGINT, lambda number, _frame: waiting.append(number))
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, handler)
    if waiting:
        handler(signal.SIGINT, None)


def write_bytes(path: Path, content: bytes) -> None:
    """Write bytes atomically."""
    with replacing(path) as scratch:
        scratch.write_bytes(content)


def _umask() -> int:
    current = os.umask(0)
    os.umask(current)
    return current
