"""Progress of long work, on standard error and only on a terminal."""

import sys
import time
from contextlib import suppress
from types import TracebackType
from typing import Self

from sequencer.cli.time_left import TimeLeft, time_words


class ProgressLine:
    """Shows what is being done, how much of it, and how long it will take; one line, cleared at the end.

    Call it with a subject and the share done, 0 … 1.
    """

    def __init__(self) -> None:
        self._terminal = sys.stderr.isatty()
        self._shown = ""
        self._left = TimeLeft()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._shown:
            with suppress(OSError):
                sys.stderr.write("\r" + " " * len(self._shown) + "\r")
                sys.stderr.flush()

    def __call__(self, subject: str, share: float) -> None:
        """Show `subject` and how much of it is done."""
        if not self._terminal:
            return
        self._left.passed(time.monotonic(), share)
        seconds = self._left.seconds
        left = "" if seconds is None else f", {time_words(seconds)}"
        line = f"{subject} … {share:4.0%}{left}"
        with suppress(OSError):  # progress into a closed pipe is not an error
            sys.stderr.write("\r" + line.ljust(len(self._shown)))
            sys.stderr.flush()
        self._shown = line
