"""Reads files that people name: only real files, and never more of one than it may hold.

A name may lead to a device that never ends, or to a pipe into which nobody ever writes; what a file system says of a
file's size need not be so. So the file is opened without waiting, looked at once it is open, and read up to its limit.
"""

import errno
import os
import stat
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO


class TooLargeError(OSError):
    """A file holds more than a file of its kind may."""


def given_bytes(path: Path, most: int) -> bytes:
    """What a file holds.

    Parameters
    ----------
    path : Path
    most : int
        The most bytes that it may hold.

    Raises
    ------
    TooLargeError
        If it holds more.
    OSError
        If it cannot be opened or read, or is no file: a folder, a device, a pipe.
    ValueError
        If no file can have that name: it holds a zero byte.
    """
    with given_file(path) as file:
        content = file.read(most + 1)
    if len(content) > most:
        raise TooLargeError(errno.EFBIG, f"this file is larger than {most // 1_000_000} MB")
    return content


def is_there(path: Path) -> bool:
    """Whether there is anything of that name; a name that nothing can have names nothing."""
    try:
        return path.exists()
    except (OSError, ValueError):
        return False


def is_given_file(path: Path) -> bool:
    """Whether there is a file of that name; a name that no file can have names none."""
    try:
        return path.is_file()
    except (OSError, ValueError):
        return False


def is_given_folder(path: Path) -> bool:
    """Whether there is a folder of that name; a name that no folder can have names none."""
    try:
        return path.is_dir()
    except (OSError, ValueError):
        return False


@contextmanager
def given_file(path: Path) -> Iterator[BinaryIO]:
    """A file, open to be read.

    Raises
    ------
    OSError
        If it cannot be opened, or is no file: a folder, a device, a pipe.
    ValueError
        If no file can have that name: it holds a zero byte.
    """
    with open(path, "rb", opener=_opened) as file:
        if not stat.S_ISREG(os.fstat(file.fileno()).st_mode):
            raise OSError(errno.EINVAL, "this is a device or a pipe, not a file", str(path))
        yield file


def _opened(path: str, flags: int) -> int:
    # A pipe is opened at once instead of waiting for somebody to write into it.
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0))
