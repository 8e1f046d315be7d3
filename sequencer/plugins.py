"""What other installed packages add: one loader for every group of entry points.

A group is `sequencer.laws`, `sequencer.patterns`, `sequencer.profiles`, `sequencer.sheets` or
`sequencer.checks`. Plug-ins come in the order of their entry points' names, then of their packages' names,
so that every run sees the same. One that is broken is refused with its package's name; none is skipped.
"""

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from importlib.metadata import EntryPoint, entry_points
from typing import TypeVar

from sequencer.errors import InputError, Place

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Plugin:
    """One entry point of another package, not loaded yet."""

    group: str
    name: str
    package: str  # distribution and version, for people: "starfish-fire 0.2"
    entry: EntryPoint = field(repr=False)

    @property
    def top(self) -> str:
        """The import package in which its code lies."""
        return self.entry.value.partition(":")[0].partition(".")[0].strip()

    def load(self) -> object:
        """What the entry point names.

        Raises
        ------
        InputError
            If it cannot be imported, for whatever reason.
        """
        with blamed(self):
            loaded: object = self.entry.load()
        return loaded

    def records(self) -> Mapping[str, object]:
        """Data that the entry point names: a mapping of names to records, or a callable that returns one.

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
                    raise TypeError(f"a name is text, got {name!r}")
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
        for entry in entry_points(group=group)
    ]
    return tuple(sorted(found, key=lambda plugin: (plugin.name, plugin.package)))


def extended(
    known: Mapping[str, T], group: str, read: Callable[[Plugin], Mapping[str, T]]
) -> dict[str, T]:
    """Things known by name, and after them those that other packages add.

    Parameters
    ----------
    known : mapping
        Built-in ones; none of their names can be taken.
    group : str
    read : callable
        What one plug-in adds, by name; what it raises is told with the package's name.

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
                    raise ValueError(f"{name!r} is there already; choose another name")
        whole |= added
    return whole


@contextmanager
def blamed(plugin: Plugin) -> Iterator[None]:
    """Tell whatever fails in here as the fault of a plug-in's package.

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
    """The one line that a person reads where a plug-in fails."""
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
