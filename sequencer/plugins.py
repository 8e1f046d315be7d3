"""Extensions from other installed packages: one loader for all groups of entry points.

A group is `sequencer.laws`, `sequencer.patterns`, `sequencer.profiles`, `sequencer.sheets` or
`sequencer.checks`. Plug-ins come in the order of their entry points' names, then of their packages' names,
so that every run sees the same. One that is broken is refused with its package's name; none is skipped.
"""

import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import cache
from importlib.metadata import EntryPoint, entry_points
from typing import TypeVar

from sequencer.errors import InputError, Place

T = TypeVar("T")

GROUPS = tuple(f"sequencer.{name}" for name in ("laws", "patterns", "profiles", "sheets", "checks"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Plugin:
    """One entry point of another package, not loaded yet."""

    group: str
    name: str
    package: str  # distribution and version, for display: "starfish-fire 0.2"
    entry: EntryPoint = field(repr=False)

    @property
    def top(self) -> str:
        """The import package that contains its code."""
        return self.entry.value.partition(":")[0].partition(".")[0].strip()

    def load(self) -> object:
        """The object that the entry point refers to.

        Raises
        ------
        InputError
            If it cannot be imported, for whatever reason.
        """
        with blamed(self):
            loaded: object = self.entry.load()
        return loaded

    def records(self) -> Mapping[str, object]:
        """The data that the entry point refers to: a mapping of names to records, or a callable that returns one.

        Raises
        ------
        InputError
            If it is neither, or the callable fails.
        """
        found = self.load()
        with blamed(self):
            if callable(found):
                found = found()
            if not isinstance(found, Mapping):
                raise TypeError(f"expected a mapping of names to records, got {_kind(found)}")
            for name in found:
                if not isinstance(name, str):
                    raise TypeError(f"a name must be text, got {name!r}")
        return found


def plugins(group: str) -> tuple[Plugin, ...]:
    """Plug-ins of a group, by entry point and package; nothing is imported yet.

    Parameters
    ----------
    group : str
        Such as "sequencer.laws".
    """
    found = [
        Plugin(group=group, name=entry.name, package=_package(entry), entry=entry)
        for entry in entries(group)
    ]
    return tuple(sorted(found, key=lambda plugin: (plugin.name, plugin.package)))


def any_installed() -> bool:
    """Whether any other package adds anything at all."""
    return any(entries(group) for group in GROUPS)


def entries(group: str) -> Sequence[EntryPoint]:
    """Entry points of a group, of all packages on the path."""
    return [each for each in _found_on(tuple(sys.path)) if each.group == group]


@cache
def _found_on(_path: tuple[str, ...]) -> tuple[EntryPoint, ...]:
    """Entry points of our groups: looked up once for each path, since that reads about every installed package."""
    found = entry_points()
    return tuple(entry for group in GROUPS for entry in found.select(group=group))


def extended(
    known: Mapping[str, T], group: str, read: Callable[[Plugin], Mapping[str, T]]
) -> dict[str, T]:
    """Named objects: the built-in ones, followed by those from other packages.

    Parameters
    ----------
    known : mapping
        Built-in ones; their names cannot be reused.
    group : str
    read : callable
        Returns what one plug-in adds, by name; its exceptions are reported with the package's name.

    Raises
    ------
    InputError
        If a plug-in is broken, or takes a name that is in use.
    """
    whole = dict(known)
    for plugin in plugins(group):
        with blamed(plugin):
            added = read(plugin)
            for name in added:
                if name in whole:
                    raise ValueError(f"{name!r} already exists; choose another name")
        whole |= added
    return whole


@contextmanager
def blamed(plugin: Plugin) -> Iterator[None]:
    """Report any exception raised here as a fault of the plug-in's package.

    Raises
    ------
    InputError
        Instead of any other exception.
    """
    try:
        yield
    except InputError:
        raise
    except Exception as error:
        raise fault_of(plugin, error) from error


def fault_of(plugin: Plugin, error: Exception) -> InputError:
    """The one-line message for a plug-in that fails."""
    words = " ".join(str(error).split())
    if not isinstance(error, ValueError):
        words = f"{type(error).__name__}: {words}" if words else type(error).__name__
    return InputError(
        "broken-plugin",
        Place(plugin.package),
        f"this package's entry point {plugin.name!r} of {plugin.group} fails",
        "install a version that fits, or uninstall the package",
        words,
    )


def _package(entry: EntryPoint) -> str:
    found = entry.dist
    return "an unnamed package" if found is None else f"{found.name} {found.version}"


def _kind(value: object) -> str:
    return f"{type(value).__name__} {value!r}"[:80]
