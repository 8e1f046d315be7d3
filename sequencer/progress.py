"""Long work: a callback for its progress, and a way to stop it."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import TypeAlias

Progress: TypeAlias = Callable[[str, float], None]  # its subject, and the fraction done, 0 … 1


class Stopped(BaseException):
    """Work was stopped because nobody wants its result any more; no error, so nothing that handles errors stops it."""


_UNWANTED: ContextVar[Callable[[], bool] | None] = ContextVar("unwanted", default=None)


@contextmanager
def stoppable(unwanted: Callable[[], bool]) -> Iterator[None]:
    """A context in which work of this thread ends with `Stopped` soon after it has become unwanted.

    Parameters
    ----------
    unwanted : callable
        Whether that is so; asked often, so it must answer at once.
    """
    outer = _UNWANTED.get()
    token = _UNWANTED.set(unwanted if outer is None else lambda: unwanted() or outer())
    try:
        yield
    finally:
        _UNWANTED.reset(token)


def stop_if_unwanted() -> None:
    """Called by long work between its steps.

    Raises
    ------
    Stopped
        If a surrounding `stoppable` says that the work is unwanted.
    """
    unwanted = _UNWANTED.get()
    if unwanted is not None and unwanted():
        raise Stopped


def within(progress: Progress | None, start: float, end: float) -> Progress | None:
    """The progress of one part of some work, which goes from `start` to `end` of the whole."""
    if progress is None:
        return None

    def part(subject: str, share: float) -> None:
        progress(subject, start + (end - start) * min(max(share, 0.0), 1.0))

    return part
