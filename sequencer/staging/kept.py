"""What was worked out of a show, kept with that show, so that nobody works it out a second time.

A show is frozen and its laws are pure, so a result holds as long as the show does. Results are no part of
it: a copy with a change (`dataclasses.replace`) and one sent to another process start without any.
"""

from collections.abc import Callable, Hashable
from functools import wraps
from typing import Any, Protocol, TypeVar, cast

T = TypeVar("T")


class Kept(dict[Hashable, Any]):
    """Results of one show, by what worked them out."""

    def __reduce__(self) -> tuple[type["Kept"], tuple[()]]:
        return Kept, ()  # another process works out its own


class Keeping(Protocol):
    """Whatever keeps results."""

    @property
    def kept(self) -> Kept:
        """Its results."""
        ...


S = TypeVar("S", bound=Keeping)


def kept_with(show: Keeping, key: Hashable, work: Callable[[], T]) -> T:
    """A result of a show, worked out at the first call.

    Two threads that ask at once may both work it out; both then get the same one. An error is not kept.

    Parameters
    ----------
    show : Keeping
    key : Hashable
        What the result is kept by.
    work : callable
        Works it out.
    """
    if key not in show.kept:
        show.kept.setdefault(key, work())
    return cast("T", show.kept[key])


def once_per_show(work: Callable[[S], T]) -> Callable[[S], T]:
    """A function of a show alone, worked out once for each show."""

    @wraps(work)
    def once(show: S) -> T:
        return kept_with(show, work, lambda: work(show))

    return once
