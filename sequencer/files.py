"""Writing that never leaves a half file and never touches the old one before the new is whole."""

import errno
import os
import secrets
from collections.abc import Iterator, Mapping
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path
from typing import TypeAlias

from sequencer.errors import InputError, Place

AnyPath: TypeAlias = str | os.PathLike[str]  # what public functions take for a file

PARTIAL = ".partial-"  # how the name of a scratch file begins
_REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk quota is used up",
    errno.EACCES: "no permission to write there",
    errno.EPERM: "no permission to write there",
    errno.EROFS: "the disk is read-only",
    errno.ENOTDIR: "a part of the path is a file, not a folder",
    errno.EEXIST: "a file of that name stands where the folder should be",
    errno.EISDIR: "a folder of that name is in the way",
    errno.ENAMETOOLONG: "the name is too long",
}


@contextmanager
def replacing(path: Path) -> Iterator[Path]:
    """Give a scratch path beside `path`; put it in place only if the body ends well.

    Parameters
    ----------
    path : Path
        The file to write; its folder is made if missing.

    Yields
    ------
    scratch : Path
        An empty file in the same folder, removed again if anything goes wrong.

    Raises
    ------
    InputError
        If the folder cannot be written, or the disk is full.
    """
    # Its name is known before it is there: an interruption at any moment finds what to take away.
    scratch = path.with_name(f"{PARTIAL}{secrets.token_hex(8)}{path.suffix}")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        scratch.touch(mode=0o600, exist_ok=False)
        yield scratch
        mode = path.stat().st_mode if path.exists() else 0o666 & ~_umask()
        scratch.chmod(mode & 0o777)
        scratch.replace(path)
    except OSError as error:
        raise _refusal(path, error) from error
    finally:
        with suppress(FileNotFoundError, NotADirectoryError):
            scratch.unlink()


@contextmanager
def telling(path: Path) -> Iterator[None]:
    """Say which file cannot be written.

    Raises
    ------
    InputError
        If the system refuses what the body does.
    """
    try:
        yield
    except OSError as error:
        raise _refusal(path, error) from error


def _refusal(path: Path, error: OSError) -> InputError:
    reason = _REASONS.get(error.errno or 0) or error.strerror or "the system refuses"
    return InputError(
        "cannot-write",
        Place(str(path)),
        f"cannot write this file: {reason}",
        "name another folder with --out, or make room",
    )


def write_text(path: Path, text: str) -> None:
    """Write UTF-8 text with LF ends, whole or not at all."""
    with replacing(path) as scratch:
        scratch.write_text(text, encoding="utf-8", newline="\n")


def write_set(contents: Mapping[Path, bytes]) -> None:
    """Write several files: all of them are whole on the disk before the first one is replaced.

    Raises
    ------
    InputError
        If the folder cannot be written, or the disk is full; then no file is touched.
    """
    with ExitStack() as stack:
        scratches = {path: stack.enter_context(replacing(path)) for path in contents}
        for path, scratch in scratches.items():
            with telling(path):
                scratch.write_bytes(contents[path])


def write_bytes(path: Path, content: bytes) -> None:
    """Write bytes, whole or not at all."""
    with replacing(path) as scratch:
        scratch.write_bytes(content)


def _umask() -> int:
    current = os.umask(0)
    os.umask(current)
    return current
