"""Results kept by what they were computed from: in the process, and on disk for the next one.

A result is known by its content key, a hash of all that it depends on, together with the code that computed
it. An entry on disk is trusted only if its checksum matches; anything else counts as missing and is computed
again. A folder that cannot be read or written, a full disk, a damaged file or another process at work never
change a result: they only cost time (kept_store.py).
"""

import atexit
import json
import os
import threading
from collections import OrderedDict
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from contextvars import ContextVar
from functools import partial, wraps
from typing import Any, ParamSpec, TypeVar, cast

from sequencer.content_keys import code_unchanged, content_key
from sequencer.kept_shelf import Shelf
from sequencer.kept_store import Kept, ResultStore
from sequencer.progress import stop_if_unwanted

T = TypeVar("T")
P = ParamSpec("P")

LONGEST = 20_000_000  # characters of a record on disk; a longer one would push all others out
SMALL_RECORD = 200  # characters of a record that lies on a shelf besides
MOST_IN_MEMORY = 100_000  # results of one process; the one used longest ago goes first


def kept(
    kind: str,
    content: Iterable[Any],
    work: Callable[[], T],
    *,
    record: Callable[[T], Any],
    restore: Callable[[Any], T],
) -> T:
    """A result: from memory, from disk, or computed and then kept.

    Parameters
    ----------
    kind : str
        What is computed; the same for all results of one function.
    content : iterable
        All that the result depends on, of types that `content_key` knows. Of any other it is computed each time.
    work : callable
        Computes it. What it returns must never be changed by anyone.
    record : callable
        The result as JSON: numbers, text, lists, mappings, None; floats keep every digit.
    restore : callable
        The result from that.
    """
    stop_if_unwanted()
    key = _key(kind, content)
    for found in () if key is None else _known(key, restore):
        return found
    return _kept_by(key, work(), record)


def kept_each(
    kind: str,
    contents: Sequence[Iterable[Any]],
    work: Callable[[list[int]], Sequence[T]],
    *,
    record: Callable[[T], Any],
    restore: Callable[[Any], T],
) -> list[T]:
    """Several results of one kind; those that are missing are computed together.

    Parameters
    ----------
    kind, record, restore
        As for `kept`.
    contents : sequence of iterable
        Of each result.
    work : callable
        Takes the indices of those that are missing, in order, and returns their results. A result must not
        depend on which others are computed with it.
    """
    stop_if_unwanted()
    keys = [_key(kind, content) for content in contents]
    known = _known_each([key for key in keys if key], restore)
    found = {k: known[key] for k, key in enumerate(keys) if key in known}
    missing = [k for k in range(len(keys)) if k not in found]
    for k, result in zip(missing, work(missing) if missing else (), strict=True):
        found[k] = _kept_by(keys[k], result, record)
    return [found[k] for k in range(len(keys))]


def known(kind: str, content: Iterable[Any], *, restore: Callable[[Any], T]) -> tuple[T, ...]:
    """The result kept under a content, as a tuple of one; empty if there is none. See `kept`."""
    key = _key(kind, content)
    return () if key is None else _known(key, restore)


def kept_on_disk(
    key: bytes, work: Callable[[], T], *, record: Callable[[T], Any], restore: Callable[[Any], T]
) -> T:
    """A large result, kept on disk only: who asks for it holds it.

    Parameters
    ----------
    key : bytes
        A content key of all that it depends on, its kind included.
    work, record, restore
        As for `kept`; a record of bytes is kept as it is, which takes less time than JSON.
    """
    found = known_on_disk(key, restore=restore)
    if found:
        return found[0]
    result = work()
    with suppress(Exception):  # it cannot be written
        own = record(result)
        own = own if isinstance(own, bytes) else json.dumps(own)
        if len(own) <= LONGEST:
            _STORE.put(key, own)
    return result


def known_on_disk(key: bytes, *, restore: Callable[[Any], T]) -> tuple[T, ...]:
    """What `kept_on_disk` has kept under a key, as a tuple of one; empty if there is nothing."""
    found = _STORE.get(key)
    if found is not None:
        with suppress(ValueError, TypeError, KeyError, IndexError, AttributeError):
            return (restore(found if isinstance(found, bytes) else json.loads(found)),)
    return ()


def keep(kind: str, content: Iterable[Any], result: T, *, record: Callable[[T], Any]) -> None:
    """Keep a result whose content is known to hold only once it has been computed. See `kept`."""
    _kept_by(_key(kind, content), result, record)


@contextmanager
def collected() -> Iterator[dict[bytes, Kept]]:
    """A context of a worker process: what it finds is collected for `take`, and not written by this process."""
    records: dict[bytes, Kept] = {}
    before = _STORE.begin_collecting(records)
    try:
        yield records
    finally:
        _STORE.begin_collecting(before)


def take(records: Mapping[bytes, Kept]) -> None:
    """Know results that another process of the same code collected, and keep them on disk."""
    _STORE.take(records)


def _kept_by(key: bytes | None, result: T, record: Callable[[T], Any]) -> T:
    if key is None:
        return result
    if _SHELF.get() is None:
        _STORE.put(
            key, partial(_recorded, result, record)
        )  # made once it is written: nobody waits for that
    elif (text := _recorded(result, record)) is not None:
        _STORE.put(key, text)
        _lay_small(key, text)
    return _remembered(key, result)


def _recorded(result: T, record: Callable[[T], Any]) -> str | None:
    """A result as JSON; None if it cannot be written so, or is too long: then it is kept in memory only."""
    with suppress(Exception):  # the result is known: what goes wrong here must not cost it
        text = json.dumps(record(result))
        if len(text) <= LONGEST:
            return text
    return None


def _key(kind: str, content: Iterable[Any]) -> bytes | None:
    try:
        return content_key(kind, *content)
    except TypeError:
        return None


def _known(key: bytes, restore: Callable[[Any], T]) -> tuple[T, ...]:
    """The result of a key, from memory or from disk; empty if it is in neither."""
    return tuple(_known_each([key], restore).values())


def _known_each(keys: Sequence[bytes], restore: Callable[[Any], T]) -> dict[bytes, T]:
    """The results of some keys, from memory or from disk, by key; without those that are in neither."""
    found: dict[bytes, T] = {}
    with _LOCK:
        for key in keys:
            if key in _MEMORY:
                _MEMORY.move_to_end(key)
                found[key] = cast("T", _MEMORY[key])
    if len(found) < len(keys):
        for key, text in _texts([key for key in dict.fromkeys(keys) if key not in found]).items():
            with suppress(ValueError, TypeError, KeyError, IndexError, AttributeError):
                found[key] = _remembered(key, restore(json.loads(text)))
    return found


def _texts(keys: Sequence[bytes]) -> dict[bytes, str]:
    """The records of some keys: from the shelf, if they are small, or from their own rows."""
    opened, found = _SHELF.get(), dict[bytes, str]()
    if opened is not None:
        lying = ((key, opened.text("small", key.hex())) for key in keys)
        found = {key: text for key, text in lying if text is not None}
    for key, text in _STORE.texts([key for key in keys if key not in found]).items():
        found[key] = text
        _lay_small(key, text)
    return found


def _lay_small(key: bytes, text: str) -> None:
    opened = _SHELF.get()
    if opened is not None and len(text) <= SMALL_RECORD:
        opened.lay("small", key.hex(), text)


def _remembered(key: bytes, result: T) -> T:
    with _LOCK:
        result = cast("T", _MEMORY.setdefault(key, result))  # of two threads the first one's
        while len(_MEMORY) > MOST_IN_MEMORY:
            _MEMORY.popitem(last=False)
    return result


def remembering(
    *, record: Callable[[T], Any], restore: Callable[[Any], T]
) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Decorator for a pure function: its results are kept by its arguments; see `kept`."""

    def decorator(work: Callable[P, T]) -> Callable[P, T]:
        kind = f"{work.__module__}.{work.__qualname__}"

        @wraps(work)
        def remembered(*args: P.args, **named: P.kwargs) -> T:
            return kept(
                kind, (args, named), lambda: work(*args, **named), record=record, restore=restore
            )

        return remembered

    return decorator


def recent_each(
    kind: str,
    keys: Sequence[Hashable | None],
    work: Callable[[list[int]], Sequence[T]],
    *,
    most: int,
    record: Callable[[T], Any] | None = None,
    restore: Callable[[Any], T] | None = None,
) -> list[T]:
    """Several results, kept in this process while they are among the most recent of their kind.

    Parameters
    ----------
    kind : str
    keys : sequence of hashable
        Content keys of all that each result depends on; None for one that is computed each time.
    work : callable
        As for `kept_each`. What it returns must never be changed by anyone.
    most : int
        Results of this kind that are kept.
    record, restore : callable, optional
        As for `kept`: then they lie on the shelf too, if there is one (`shelf`). Keys are numbers, text, bytes and
        tuples of these.
    """
    found: dict[int, T] = {}
    with _LOCK:
        own = _RECENT.setdefault(kind, OrderedDict())
        for k, key in enumerate(
            keys
        ):  # a key of many parts takes long to look for: as seldom as can be
            if key is not None and (known := own.get(key, _UNKNOWN)) is not _UNKNOWN:
                own.move_to_end(key)
                found[k] = cast("T", known)
    missing = [k for k in range(len(keys)) if k not in found]
    if missing:
        stop_if_unwanted()
        shelf = _SHELF.get()
        if shelf is None or record is None or restore is None:
            new = work(missing)
        else:
            new = shelf.results(
                kind, [keys[k] for k in missing],
                lambda some: work([missing[k] for k in some]), record, restore,
            )  # fmt: skip
        found.update(zip(missing, new, strict=True))
    with _LOCK:
        for k in missing:
            if (key := keys[k]) is not None:
                own[key] = found[k]
        while len(own) > most:
            own.popitem(last=False)
    return [found[k] for k in range(len(keys))]


def recent(
    kind: str,
    key: Hashable | None,
    work: Callable[[], T],
    *,
    most: int,
    record: Callable[[T], Any] | None = None,
    restore: Callable[[Any], T] | None = None,
) -> T:
    """One result, kept in this process while it is among the most recent of its kind; see `recent_each`."""
    with _LOCK:
        own = _RECENT.get(kind)
        if (
            own is not None
            and key is not None
            and (known := own.get(key, _UNKNOWN)) is not _UNKNOWN
        ):
            own.move_to_end(key)
            return cast("T", known)
    (found,) = recent_each(
        kind, [key], lambda _: [work()], most=most, record=record, restore=restore
    )
    return found


def is_recent(kind: str, key: Hashable) -> bool:
    """Whether a result of a kind (`recent`) is kept in this process."""
    with _LOCK:
        return key in _RECENT.get(kind, ())


@contextmanager
def shelf(of: str) -> Iterator[None]:
    """A context in which small results (`recent_each`) lie on a shelf for the next process that asks for the same.

    Parameters
    ----------
    of : str
        What the results are used for, such as a show file's path; a name, since what they depend on is in their keys.
    """
    store = _STORE

    def row(kind: str) -> bytes:
        return content_key("shelf", of, kind)

    opened = Shelf(
        lambda kind: store.text(row(kind)), lambda kind, text: store.put(row(kind), text)
    )
    token = _SHELF.set(opened)
    try:
        yield
    finally:
        _SHELF.reset(token)
        opened.put_away()


def shelved_each(
    kind: str,
    keys: Callable[[], Sequence[Hashable | None]],
    work: Callable[[list[int]], Sequence[T]],
    count: int,
    *,
    record: Callable[[T], Any],
    restore: Callable[[Any], T],
) -> list[T]:
    """Several results from the shelf, or computed and put there; without a shelf computed, and no key asked for.

    Parameters
    ----------
    kind, work, record, restore
        As for `recent_each`.
    keys : callable
        Content keys of all that each result depends on; None for one that is computed each time.
    count : int
        Number of results.
    """
    opened = _SHELF.get()
    if opened is None:
        return list(work(list(range(count))))
    return opened.results(kind, keys(), work, record, restore)


def shelved(
    kind: str,
    key: Callable[[], Hashable | None],
    work: Callable[[], T],
    *,
    record: Callable[[T], Any],
    restore: Callable[[Any], T],
) -> T:
    """One result from the shelf; see `shelved_each`."""
    (found,) = shelved_each(
        kind, lambda: [key()], lambda _: [work()], 1, record=record, restore=restore
    )
    return found


_SHELF: ContextVar[Shelf | None] = ContextVar("shelf", default=None)
_MEMORY: OrderedDict[bytes, Any] = OrderedDict()
_UNKNOWN = object()
_RECENT: dict[str, OrderedDict[Hashable, Any]] = {}
_LOCK = threading.RLock()


# --- this process ---


def put_away() -> None:
    """Write what waits to be written: for when nobody waits for anything."""
    _STORE.flush()


def _end() -> None:
    _STORE.flush()
    _STORE.close()


def _begin_in_child() -> None:
    """A forked process starts with locks that nobody holds; its parent writes what waits, and closes the database."""
    global _STORE, _LOCK
    _INHERITED.append(_STORE)  # never closed here: it is the parent's
    _STORE, _LOCK = ResultStore(code_unchanged), threading.RLock()
    _SHELF.set(None)


_STORE = ResultStore(code_unchanged)
_INHERITED: list[ResultStore] = []
atexit.register(_end)
if hasattr(os, "register_at_fork"):
    os.register_at_fork(after_in_child=_begin_in_child)
