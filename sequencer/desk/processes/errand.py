"""An errand of the server: long work in a process of its own, so that steps and checks go on beside it.

All of it runs in the server's event loop, but for the thread that listens to the pipe.
"""

import asyncio
import itertools
import multiprocessing
import threading
import time
from collections.abc import Callable, Mapping
from multiprocessing.connection import Connection
from typing import Any, Literal

from sequencer.desk.processes.errand_process import HAND_OVER, ErrandWork, work_on

ErrandState = Literal["working", "done", "failed", "stopped"]
_NUMBERS = itertools.count(1)


class Errand:
    """Long work for a page, from its start to what came of it.

    Parameters
    ----------
    work : callable
        A function of a module; done in the other process.
    given : mapping
        For the work; `path` names the show file.
    told : callable
        Called in the server's loop whenever there is something new.
    """

    def __init__(
        self, work: ErrandWork, given: Mapping[str, Any], told: Callable[["Errand"], None]
    ) -> None:
        self.number = next(_NUMBERS)
        self.given = given
        self.state: ErrandState = "working"
        self.words, self.share = "beginning", 0.0
        self.result: Any = None  # of the work, once it is done
        self.error: dict[str, Any] | None = None
        self.stopping = False
        self._told = told
        self._since = time.monotonic()
        self._loop = asyncio.get_running_loop()
        context = multiprocessing.get_context("spawn")
        self._pipe, other = context.Pipe()
        self._process = context.Process(
            target=work_on, args=(work, dict(given), other), name="errand of a page", daemon=True
        )
        self._process.start()
        other.close()
        self._listening = threading.Thread(target=self._listen, args=(self._pipe,), daemon=True)
        self._listening.start()

    def __repr__(self) -> str:
        return f"<Errand {self.number}: {self.state}, {self.words}>"

    def stop(self) -> None:
        """Ask the work to hand over the best it has by now."""
        if self.state != "working":
            return
        self.stopping = True
        try:
            self._pipe.send(HAND_OVER)
        except OSError:
            return  # it has just ended, and says so
        self._told(self)

    def end(self) -> None:
        """End the work, whatever it has by now; nothing more is told of it."""
        if self.state == "working":
            self.state = "stopped"
        if self._process.is_alive():
            self._process.kill()
        self._process.join(2.0)
        self._listening.join(2.0)
        self._pipe.close()

    def values(self) -> dict[str, Any]:
        """How far it is, without what came of it."""
        return {
            "number": self.number, "state": self.state, "words": self.words, "share": self.share,
            "seconds": round(time.monotonic() - self._since, 1), "stopping": self.stopping,
            "error": self.error,
        }  # fmt: skip

    def _listen(self, pipe: Connection) -> None:
        while True:
            try:
                message = pipe.recv()
            except (EOFError, OSError):
                break
            self._in_loop(message)
        self._in_loop(("failed", _GONE))

    def _in_loop(self, message: tuple[str, Any]) -> None:
        try:
            self._loop.call_soon_threadsafe(self._take, message)
        except RuntimeError:  # the loop is closed: nobody listens any more
            return

    def _take(self, message: tuple[str, Any]) -> None:
        kind, said = message
        if self.state != "working":
            return  # it has ended already
        if kind == "progress":
            self.words, self.share = said[0], round(float(said[1]), 3)
        elif kind == "done":
            self.state, self.result, self.share = "done", said, 1.0
        elif kind == "failed":
            self.state, self.error = "failed", said
        else:
            self.state, self.words = "stopped", "stopped before there was anything to show"
        self._told(self)


class DoneErrand(Errand):
    """An errand that was done when the show was last open: what came of it, without a process.

    Parameters
    ----------
    given : mapping
    result : object
        Of the work.
    """

    def __init__(self, given: Mapping[str, Any], result: object) -> None:
        self.number = next(_NUMBERS)
        self.given, self.result = given, result
        self.state: ErrandState = "done"
        self.words, self.share = "", 1.0
        self.error: dict[str, Any] | None = None
        self.stopping = False
        self._since = time.monotonic()

    def stop(self) -> None:
        """It has ended already."""

    def end(self) -> None:
        """It has ended already."""


_GONE = {
    "code": "gone", "message": "this ended unexpectedly; try it again", "why": "",
    "what": "this ended unexpectedly", "mend": "try it again", "line": None, "column": None,
}  # fmt: skip
