"""Keeps what a decoder says of its own from whoever reads the terminal: it writes to the descriptor, past Python.

libmpg123, by which MP3 is decoded, prints lines of its own on a damaged file; what is wrong with it is said by us, in one line.
"""

import os
import threading
from collections.abc import Iterator
from contextlib import contextmanager, suppress

_STDERR = 2  # the descriptor to which C libraries write
_LOCK = threading.RLock()  # the descriptor is one for all threads: they decode one after the other


@contextmanager
def quiet_library() -> Iterator[None]:
    """While this lasts, what is written to the descriptor of the standard error is dropped.

    So it should last for one call of a library only: what another thread writes meanwhile is lost too. Where there is no such
    descriptor, as for a program without a terminal on Windows, nothing happens.
    """
    with _LOCK:
        try:
            before = os.dup(_STDERR)
        except OSError:
            yield
            return
        try:
            with suppress(OSError):
                nowhere = os.open(os.devnull, os.O_WRONLY)
                try:
                    os.dup2(nowhere, _STDERR)
                finally:
                    os.close(nowhere)
            yield
        finally:
            os.dup2(before, _STDERR)
            os.close(before)
