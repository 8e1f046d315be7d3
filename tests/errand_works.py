"""Work for errands of tests, as a process of its own finds it."""

import os
import time

from sequencer.errors import InputError, Place


def adds(given, progress):
    progress("adding", 0.5)
    time.sleep(0.3)
    progress("adding", 1.0)
    return given["a"] + given["b"]


def refuses(_given, _progress):
    raise InputError("too-poor", Place("/somewhere/s.yaml", 3), "nothing can be made", "learn more")


def breaks(_given, _progress):
    raise ZeroDivisionError("a bug")


def dies(_given, _progress):
    os._exit(3)


def goes_on(given, progress):
    """Work without an end, which hands over how far it has come."""
    done = 0
    try:
        while True:
            done += 1
            progress("going on", 0.1)
            time.sleep(0.01)
    except KeyboardInterrupt:
        if given.get("best"):
            return {"done": done}
        raise
