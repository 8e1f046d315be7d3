"""Small results in few records: those of one kind that something used last, read at once by the next process.

Thousands of results that each take less time to compute than a row of a database takes to find lie in one record of
their kind. Each is still known by the content that decides it, so a shelf holds nothing that could be wrong: at most
it lacks something.
"""

import hashlib
import json
import marshal
from collections.abc import Callable, Hashable, Sequence
from contextlib import suppress
from typing import Any, TypeVar

T = TypeVar("T")

MOST_ON_SHELF = 2_000_000  # characters of a kind; what was used last goes first


class Shelf:
    """Results of several kinds, read when a kind is first asked for.

    Parameters
    ----------
    read : callable
        The record of a kind; None if there is none.
    write : callable
        Keeps the record of a kind.
    """

    def __init__(
        self, read: Callable[[str], str | None], write: Callable[[str, str], None]
    ) -> None:
        self._read, self._write = read, write
        self._lying: dict[
            str, dict[str, str]
        ] = {}  # by kind and name, as JSON; what was used last comes last
        self._used: dict[str, dict[str, str]] = {}
        self._size: dict[str, int] = {}  # characters of what was used
        self._new: set[str] = set()  # kinds with something that does not lie there yet

    def results(
        self,
        kind: str,
        keys: Sequence[Hashable | None],
        work: Callable[[list[int]], Sequence[T]],
        record: Callable[[T], Any],
        restore: Callable[[Any], T],
    ) -> list[T]:
        """Results of one kind, from the shelf, or computed and put there; see `kept.recent_each`."""
        names = [_name(key) for key in keys]
        found: dict[int, T] = {}
        for k, name in enumerate(names):
            text = None if name is None else self.text(kind, name)
            if text is not None:
                with suppress(ValueError, TypeError, KeyError, IndexError, AttributeError):
                    found[k] = restore(json.loads(text))
        missing = [k for k in range(len(keys)) if k not in found]
        for k, result in zip(missing, work(missing) if missing else (), strict=True):
            found[k] = result
            if (name := names[k]) is not None:
                with suppress(TypeError, ValueError):  # it cannot be written
                    self.lay(kind, name, json.dumps(record(result)))
        return [found[k] for k in range(len(keys))]

    def text(self, kind: str, name: str) -> str | None:
        """A result as JSON, by its name; None if it does not lie there."""
        found = self._used.get(kind, {}).get(name)
        if found is None and (found := self._of(kind).get(name)) is not None:
            self._use(kind, name, found)
        return found

    def lay(self, kind: str, name: str, text: str) -> None:
        """Put a result there as JSON, in one line."""
        if self._use(kind, name, text):
            self._new.add(kind)

    def _use(self, kind: str, name: str, text: str) -> bool:
        """Note what is to lie there the next time; false if there is no room for it."""
        size = self._size.get(kind, 0) + len(name) + len(text)
        if size > MOST_ON_SHELF:
            return False
        self._size[kind] = size
        self._used.setdefault(kind, {})[name] = text
        return True

    def put_away(self) -> None:
        """Write the kinds with something new; of what was not used this time, the latest that there is room for."""
        for kind in sorted(self._new):
            used = dict(self._used[kind])
            for name, text in reversed(self._of(kind).items()):
                if name not in used:
                    self._use(kind, name, text)
            rest = reversed([each for each in self._used[kind].items() if each[0] not in used])
            lines = [f"{name} {text}" for name, text in (*rest, *used.items())]
            self._write(kind, "\n".join(lines))
        self._new.clear()

    def _of(self, kind: str) -> dict[str, str]:
        if kind not in self._lying:
            lines = (self._read(kind) or "").split("\n")
            pairs = (line.partition(" ") for line in lines)
            self._lying[kind] = {name: text for name, _, text in pairs if text}
        return self._lying[kind]


def _name(key: Any) -> str | None:
    """A short name that two keys share only if they are the same in every digit; None for what has no such name."""
    if key is None:
        return None
    try:
        plain = marshal.dumps(key, 2)  # of this version equal values give equal bytes
    except ValueError:
        return None
    return hashlib.blake2b(plain, digest_size=16).hexdigest()
