"""A show served by a process that is forked from one in which everything is loaded already.

Tests of the page start a hundred servers, each with two processes that work for it; loading what they are made of would cost
more than all that the tests ask. How a person starts one is tested in tests/cli. Where nothing can be forked so, servers start
as a person starts them.
"""

import multiprocessing
import os
import pickle
import signal
import subprocess
import sys
import threading
import time
from contextlib import suppress
from multiprocessing.connection import Connection
from pathlib import Path
from types import SimpleNamespace

LOADED = "tests.warm_modules"  # what all of them need
FORKS = sys.platform == "linux"


class WarmProcess:
    """`sequencer` with arguments, in a forked process; what `subprocess.Popen` has of what tests ask."""

    def __init__(self, *arguments: str) -> None:
        context = multiprocessing.get_context("forkserver")
        context.set_forkserver_preload([LOADED])
        (said, out), (complained, err) = os.pipe(), os.pipe()
        given = Connection(out, readable=False), Connection(err, readable=False)
        self._process = context.Process(
            target=_run, args=(*given, dict(os.environ), str(Path.cwd()), arguments)
        )
        self._process.start()
        for each in given:
            each.close()
        self.pid = self._process.pid
        self.stdout, self.stderr = (
            os.fdopen(each, encoding="utf-8") for each in (said, complained)
        )

    @property
    def returncode(self):
        return self._process.exitcode

    def poll(self):
        self._process.join(0)
        return self._process.exitcode

    def wait(self, timeout=None):
        self._process.join(timeout)
        if self._process.exitcode is None:
            raise subprocess.TimeoutExpired("sequencer", timeout)
        return self._process.exitcode

    def communicate(self, timeout=None):
        said = {}
        readers = [
            threading.Thread(target=lambda each=each: said.update({each: each.read()}), daemon=True)
            for each in (self.stdout, self.stderr)
        ]
        for each in readers:
            each.start()
        self.wait(timeout)
        for each in readers:
            each.join()
        return said[self.stdout], said[self.stderr]

    def kill(self):
        self.send_signal(signal.SIGKILL)

    def send_signal(self, how):
        if self.poll() is None:
            os.kill(self.pid, how)


def _run(out, err, environment, folder, arguments):
    # tests that run in the background of a shell hand on that Ctrl-C is ignored
    signal.signal(signal.SIGINT, signal.default_int_handler)
    for k, each in enumerate((out, err), start=1):
        os.dup2(each.fileno(), k)
    sys.stdout, sys.stderr = (os.fdopen(k, "w", encoding="utf-8", closefd=False) for k in (1, 2))
    os.environ.clear()
    os.environ.update(environment)
    os.chdir(folder)
    _fork_workers()
    from sequencer.cli import main

    main(arguments, prog_name="sequencer")


def _fork_workers():
    """The two that check and fly are forked too. They end with it, which a pipe that they share with it would not tell them.

    Errands are begun anew, as a person's are: they use libraries that have processes of their own.
    """
    from sequencer.desk.processes import worker_link

    context, parent = multiprocessing.get_context("fork"), os.getpid()

    class Worker(context.Process):
        def __init__(self, *, target, args=(), **how):
            # as where it is begun anew, what is handed to it must be such that it can be
            pickle.dumps((target, [each for each in args if not isinstance(each, Connection)]))
            super().__init__(target=target, args=args, **how)

        def run(self):
            _let_go_of_shows()
            threading.Thread(target=_end_with, args=(parent,), daemon=True).start()
            # it is the server's, which would take signals to this one for its own
            signal.set_wakeup_fd(-1)
            for each in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
                signal.signal(each, signal.SIG_DFL)
            super().run()

    forking = SimpleNamespace(Pipe=context.Pipe, Process=Worker)
    worker_link.multiprocessing = SimpleNamespace(get_context=lambda _how: forking)


def _let_go_of_shows():
    """A show that is held by the server is held by what is forked from it too, even when the server is killed."""
    for each in Path("/proc/self/fd").iterdir():
        with suppress(OSError):  # the folder is read through one that is closed by now
            if each.readlink().name.endswith(".open"):
                os.close(int(each.name))


def _end_with(parent):
    """A system's own way looks at the thread that forked, which ends earlier."""
    while os.getppid() == parent:
        time.sleep(0.5)
    os._exit(1)
