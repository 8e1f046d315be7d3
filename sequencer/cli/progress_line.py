"""Progress of long work, on standard error only."""

import sys
from contextlib import suppress
from types import TracebackType
from typing import Self


class ProgressLine:
    """Says what is being done; on a terminal in one line that is wiped at the end.

    Call it with a subject and the share that is done, 0 … 1.
    """

    def __init__(self) -> None:
        self._terminal = sys.stderr.isatty()
        self._said = ""

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._terminal and self._said:
            sys.stderr.write("\r" + " " * len(self._said) + "\r")
            sys.stderr.flush()

    def __call__(self, subject: str, share: float) -> None:
        """Show `subject` and how much of it is done."""
        with suppress(OSError):  # progress into a closed pipe is no fault
            self._say(subject, share)

    def _say(self, subject: str, share: float) -> None:
        if self._terminal:
            line = f"{subject} … {share:4.0%}"
            sys.stderr.write("\r" + line.ljust(len(self._said)))
            sys.stderr.flush()
            self._said = line
        elif subject != self._said:
            sys.stderr.write(f"{subject} …\n")
            self._said = subject
