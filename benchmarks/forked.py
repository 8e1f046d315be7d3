"""Processes begun from one that has loaded all libraries: `benchmarks/kills.py` starts thousands."""

import importlib
import os
import signal
import subprocess
import sys
import tempfile
import time
import traceback
from contextlib import suppress
from pathlib import Path

from sequencer import kept
from tests import killed

LISTED = "\nimport sys\nsys.stderr.write(' '.join(sys.modules))"


def loaded_for(folder: Path, code: str) -> None:
    """Load what some code loads as it runs in a folder; nothing of what it computes is known here."""
    _, names = killed.begun(folder, 0, code + LISTED).communicate()
    for name in names.split():
        if not name.startswith("__"):
            with suppress(Exception):  # what cannot be loaded by itself is loaded by the code
                importlib.import_module(name)


class Forked:
    """A child of this process, with what `tests.killed` asks of a `subprocess.Popen`."""

    def __init__(self, folder: Path, at: int, code: str) -> None:
        self._told = [tempfile.TemporaryFile() for _ in range(2)]  # noqa: SIM115 (closed once it has been read)
        sys.stdout.flush()
        self.returncode = 0
        self._pid = os.fork()
        if self._pid == 0:
            _child(folder, at, code, [file.fileno() for file in self._told])

    def communicate(self, timeout: float | None = None) -> tuple[str, str]:
        """What it wrote until its end.

        Raises
        ------
        subprocess.TimeoutExpired
            If it is still at work.
        """
        until = None if timeout is None else time.monotonic() + timeout
        while True:
            done, status = os.waitpid(self._pid, 0 if until is None else os.WNOHANG)
            if done:
                break
            if until is not None and time.monotonic() > until:
                raise subprocess.TimeoutExpired("a forked process", timeout or 0.0)
            time.sleep(0.002)
        self.returncode = os.waitstatus_to_exitcode(status)
        said = []
        for file in self._told:
            with file:
                file.seek(0)
                said.append(file.read().decode(errors="replace"))
        return said[0], said[1]

    def kill(self) -> None:
        """End it as a power cut would."""
        os.kill(self._pid, signal.SIGKILL)


def _child(folder: Path, at: int, code: str, streams: list[int]) -> None:
    """Run code and end; never returns."""
    status = 1
    try:
        for stream, number in zip(streams, (1, 2), strict=True):
            os.dup2(stream, number)
        os.chdir(folder)
        sys.argv = ["-c", str(folder), str(at), code]
        exec(killed.CHILD, {"__name__": "__main__"})  # noqa: S102 (our own)
        status = 0
    except BaseException:  # noqa: BLE001 (it is told)
        traceback.print_exc()
    finally:
        kept._end()  # noqa: SLF001 (as at the end of any process; no more, or the folders of this one would go)
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(status)
