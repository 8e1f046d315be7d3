"""The process of an errand: one piece of long work for a page, which tells how far it is and can be stopped.

What it is told by the pipe is "stop": then the work is interrupted as by Ctrl-C, so that it can hand over the best it has.
"""

import _thread
import os
import signal
import threading
import time
from collections.abc import Callable, Mapping
from multiprocessing.connection import Connection
from typing import Any, TypeAlias

from sequencer.desk.connection.page_values import error_values, fault_values
from sequencer.errors import InputError
from sequencer.progress import Progress

ErrandWork: TypeAlias = Callable[[Mapping[str, Any], Progress], Any]  # of what is given
HAND_OVER = "stop"
_OFTEN = 0.2  # [s] between two words of progress


def work_on(work: ErrandWork, given: Mapping[str, Any], pipe: Connection) -> None:
    """Do a piece of work and say what came of it.

    Parameters
    ----------
    work : callable
        A function of a module, as it is found by its name in another process.
    given : mapping
        For the work; `path` names the show file.
    pipe : Connection
    """
    signal.signal(
        signal.SIGINT, signal.SIG_IGN
    )  # Ctrl-C is for the server, which ends this process
    signal.signal(signal.SIGTERM, _interrupted)
    pipe.send(_outcome(work, given, pipe))
    os._exit(0)


def _outcome(work: ErrandWork, given: Mapping[str, Any], pipe: Connection) -> tuple[str, Any]:
    try:
        # Listened to from here on: a stop that came any sooner would end the process without a word.
        threading.Thread(target=_listen, args=(pipe,), daemon=True).start()
        return "done", work(given, _Telling(pipe))
    except InputError as error:
        return "failed", error_values(error, str(given.get("path", "")))
    except KeyboardInterrupt:
        return "stopped", None
    except Exception as error:  # noqa: BLE001 (told to the page)
        return "failed", fault_values(error)
    finally:
        signal.signal(
            signal.SIGTERM, signal.SIG_IGN
        )  # what came of it is said, whoever stops it now


class _Telling:
    """Progress through the pipe, not more often than anybody reads."""

    def __init__(self, pipe: Connection) -> None:
        self._pipe, self._last = pipe, 0.0

    def __call__(self, subject: str, share: float) -> None:
        now = time.monotonic()
        if now - self._last > _OFTEN:
            self._last = now
            self._pipe.send(("progress", (subject, share)))


def _listen(pipe: Connection) -> None:
    """Interrupt the work when that is asked for; end with the server."""
    while True:
        try:
            if pipe.recv() == HAND_OVER:
                _thread.interrupt_main(signal.SIGTERM)
        except (EOFError, OSError):
            os._exit(0)


def _interrupted(_number: int, _frame: object) -> None:
    raise KeyboardInterrupt
