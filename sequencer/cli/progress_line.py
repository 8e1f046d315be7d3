"""Progress of long work, on standard error only."""

import sys
from contextlib import suppress
from types import TracebackType
from typing import Self


class ProgressLine:
    """Shows what is being done; on a terminal, in one line that is cleared at the end.

    Call it with a subject and the share done, 0 … 1.
    """

    def __init__(self) -> None:
        self._terminal = sys.stderr.isatty()
        self._shown = ""

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._terminal and self._shown:
            sys.stderr.write("\r" + " " * len(self._shown) + "\r")
            sys.stderr.flush()

    def __call__(self, subject: str, share: float) -> None:
        """Show `subject` and how much of it is done."""
        with suppress(OSError):  # progress into a closed pipe is not an error
            self._say(subject, share)

    def _say(self, subject: str, share: float) -> None:
        if self._terminal:
            line = f"{subject} … {share:4.0%}"
            sys.stderr.write("\r" + line.ljust(len(self._shown)))
            sys.stderr.flush()
            self._shown = line
        elif subject != self._shown:
            sys.stderr.write(f"{subject} …\n")
            self._shown = subject
