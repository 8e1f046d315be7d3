"""Results computed from a show, cached with that show so that nothing is computed twice.

A show is frozen and its laws are pure, so a result holds as long as the show does. Results are no part of
it: a copy with a change (`dataclasses.replace`) and one sent to another process start without any.
"""

from collections.abc import Callable, Hashable
from functools import wraps
from typing import Any, Protocol, TypeVar, cast

T = TypeVar("T")


class Results(dict[Hashable, Any]):
    """Cached results of one show, keyed by what computed them."""

    def __reduce__(self) -> tuple[type["Results"], tuple[()]]:
        return Results, ()  # another process computes its own


class HasResults(Protocol):
    """Anything with a cache of results."""

    @property
    def results(self) -> Results:
        """Its cached results."""
        ...


S = TypeVar("S", bound=HasResults)


def result_of(show: HasResults, key: Hashable, work: Callable[[], T]) -> T:
    """A result of a show, computed on the first call.

    Two threads that call at once may both compute it; both then get the same one. An error is not cached.

    Parameters
    ----------
    show : HasResults
    key : Hashable
        Cache key of the result.
    work : callable
        Computes it.
    """
    if key not in show.results:
        show.results.setdefault(key, work())
    return cast("T", show.results[key])


def once_per_show(work: Callable[[S], T]) -> Callable[[S], T]:
    """Decorator for a function of a show only, computed once for each show."""

    @wraps(work)
    def once(show: S) -> T:
        return result_of(show, work, lambda: work(show))

    return once
