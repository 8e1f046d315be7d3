"""Files that the desk keeps beside a show for itself: only plain ones are opened, and no link is followed.

A show may come from a stranger, and so may what lies beside it under the name of such a file: a link to somebody's letters, a
pipe, a folder. None of these is opened, whatever for.
"""

import errno
import os
import stat
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_FLAGS = ("O_BINARY", "O_NOFOLLOW", "O_NONBLOCK", "O_CLOEXEC")  # those that the system knows


class ForeignFileError(OSError):
    """Something that the desk never puts there has the name."""

    def __init__(self, path: Path) -> None:
        super().__init__(errno.EINVAL, "something else has this name, and is left alone", str(path))


@contextmanager
def plain_file(path: Path, flags: int) -> Iterator[int]:
    """A plain file, open; it is closed at the end.

    Parameters
    ----------
    path : Path
    flags : int
        As `os.open` takes them, without `O_TRUNC`: what is there has to be looked at first.

    Yields
    ------
    handle : int

    Raises
    ------
    ForeignFileError
        If a link, a folder, a device or a pipe has the name.
    OSError
        If it cannot be opened.
    """
    handle = plain_handle(path, flags)
    try:
        yield handle
    finally:
        os.close(handle)


def plain_handle(path: Path, flags: int, mode: int = 0o600) -> int:
    """The same for who closes it: with the rights that a new file gets."""
    try:
        there = path.lstat()
    except FileNotFoundError:
        there = None
    if there is not None and not stat.S_ISREG(there.st_mode):
        raise ForeignFileError(path)
    try:
        handle = os.open(path, flags | sum(getattr(os, each, 0) for each in _FLAGS), mode)
    except OSError as error:
        if error.errno == errno.ELOOP:  # a link has come meanwhile
            raise ForeignFileError(path) from error
        raise
    if not stat.S_ISREG(os.fstat(handle).st_mode):
        os.close(handle)
        raise ForeignFileError(path)
    return handle
