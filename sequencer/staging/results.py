"""Results computed from a show, cached with that show so that nothing is computed twice.

A show is frozen and its laws are pure, so a result holds as long as the show does. Results are no part of
it: a copy with a change (`dataclasses.replace`) and one sent to another process start without any. A show staged
again after a change takes over those whose key says that they still hold (carrying.py).
"""

from collections.abc import Callable, Hashable, Mapping, Sequence
from functools import wraps
from typing import Any, Literal, NamedTuple, Protocol, TypeVar, cast, get_args

T = TypeVar("T")
Part = Literal[
    "trajectories",  # blocks, and how hands and props move
    "bodies",  # bodies with their postures, and props
    "places",  # where people stand and walk
    "burns",  # who is lit, and when
    "venue",
    "crew",
    "fire",  # fuel, flame and burning times
]
SHOW_PARTS: tuple[Part, ...] = get_args(Part)


class OfParts(NamedTuple):
    """Key of a result that holds as long as some parts of a show stay the same."""

    work: Hashable  # what computes it
    depends_on: tuple[
        Part, ...
    ]  # none: it holds as long as all that belongs to no part stays the same


class OfPerformer(NamedTuple):
    """Key of a result about one performer's dance that does not depend on where they stand."""

    what: str
    who: str
    besides: Hashable = None  # anything else that it depends on


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


def results_together(
    show: HasResults,
    keys: Mapping[str, Hashable],
    work: Callable[[Sequence[str]], Mapping[str, T]],
) -> dict[str, T]:
    """Several results of a show by name; those that are missing are computed together.

    Parameters
    ----------
    show : HasResults
    keys : mapping of name to hashable
        Cache key of each.
    work : callable
        Computes those of some names.
    """
    missing = [name for name, key in keys.items() if key not in show.results]
    if missing:
        for name, result in work(missing).items():
            show.results.setdefault(keys[name], result)
    return {name: cast("T", show.results[key]) for name, key in keys.items()}


def once_per_show(work: Callable[[S], T]) -> Callable[[S], T]:
    """Decorator for a function of a show only, computed once for each show."""

    @wraps(work)
    def once(show: S) -> T:
        return result_of(show, work, lambda: work(show))

    return once


def once_per_show_with(*parts: Part) -> Callable[[Callable[[S], T]], Callable[[S], T]]:
    """Decorator like `once_per_show`, for a result that depends on some parts of a show only.

    Parameters
    ----------
    *parts : Part
        Everything that belongs to no part may always be used.
    """

    def decorator(work: Callable[[S], T]) -> Callable[[S], T]:
        key = OfParts(work, parts)

        @wraps(work)
        def once(show: S) -> T:
            return result_of(show, key, lambda: work(show))

        return once

    return decorator
