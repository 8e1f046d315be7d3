"""Results kept by what they were computed from: in the process, and on disk for the next one.

A result is known by its content key, a hash of all that it depends on, together with the code that computed
it. An entry on disk is trusted only if its checksum matches; anything else counts as missing and is computed
again. A folder that cannot be read or written, a full disk, a damaged file or another process at work never
change a result: they only cost time (kept_store.py).
"""

import atexit
import hashlib
import json
import marshal
import os
import sys
import threading
import time
from collections import OrderedDict
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from contextvars import ContextVar
from dataclasses import fields, is_dataclass
from functools import cache, partial, wraps
from importlib import resources
from importlib.metadata import PackageNotFoundError, version
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MethodType
from typing import Any, NamedTuple, ParamSpec, TypeVar, cast

from sequencer.kept_shelf import Shelf
from sequencer.kept_store import Kept, ResultStore
from sequencer.progress import stop_if_unwanted

T = TypeVar("T")
P = ParamSpec("P")

LONGEST = 20_000_000  # characters of a record on disk; a longer one would push all others out
SMALL_RECORD = 200  # characters of a record that lies on a shelf besides
MOST_IN_MEMORY = 100_000  # results of one process; the one used longest ago goes first
# Code and data that results depend on, and the libraries behind it.
COMPUTING = (
    "arrays.py",
    "facts",
    "geometry",
    "kept.py",
    "kept_store.py",
    "motion",
    "safety",
    "timing",
)
LIBRARIES = ("numpy", "scipy", "shapely")
SHOW_LIBRARIES = ("pydantic", "pydantic-core", "ruamel.yaml")  # of show files


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


# --- content ---


def content_key(*things: Any) -> bytes:
    """A hash that two values share only if they are the same in every digit.

    Parameters
    ----------
    *things
        None, numbers, text, bytes, arrays, tuples, lists, mappings and dataclasses of these; an object with
        a `content` attribute (bytes) stands for it.

    Raises
    ------
    TypeError
        If something else is among them, such as a function.
    """
    parts = [formulas()]
    for thing in things:
        _feed(parts.append, thing)
    return hashlib.blake2b(b"".join(parts), digest_size=20).digest()


def _feed(put: Callable[[bytes], None], thing: Any) -> None:
    """Add a value to a hash: its kind and length go first, so that no two values run together."""
    kind = type(thing)
    if kind in _PLAIN:
        put(marshal.dumps(thing, _MARSHALLED))
    elif kind is tuple or kind is list:
        if _PLAIN.issuperset(map(type, thing)):  # a vector, or other things of no parts, at once
            put(b"v" + marshal.dumps(tuple(thing), _MARSHALLED))
            return
        put(b"t%d:" % len(thing))
        for each in thing:
            _feed(put, each)
    elif (known := _DIGESTS.get(id(thing))) is not None and known[0] is thing:
        put(known[1])
    elif _is_array(kind) and thing.dtype.kind in "biuf":
        put(f"a{thing.dtype.str}{thing.shape}:".encode("ascii") + thing.tobytes())
    else:
        _feed_object(put, thing)


# What has no parts: of this version of marshal's, equal values of one of these types give equal bytes, whose kind and length go
# first. No other type is given to it: it would take arrays for their bytes.
_PLAIN = frozenset((float, str, int, bool, bytes, type(None)))
_MARSHALLED = 2


def _is_array(kind: type) -> bool:
    """Whether a type is a NumPy array's or scalar's; where NumPy was never loaded, none is."""
    numpy = sys.modules.get("numpy")
    return numpy is not None and issubclass(kind, (numpy.ndarray, numpy.generic))


class _Form(NamedTuple):
    """What is fed of the values of a type."""

    name: str
    mapping: bool
    ours: bool  # whether its code is among the formulas
    named: bool  # a named tuple
    fields: tuple[str, ...] | None  # of a dataclass
    frozen: bool


def _form_of(kind: type) -> _Form:
    written = getattr(kind, "__dataclass_params__", None)
    return _Form(
        name=f"{kind.__module__}.{kind.__qualname__}",
        mapping=issubclass(kind, Mapping),
        ours=kind.__module__.startswith("sequencer."),
        named=issubclass(kind, tuple) and hasattr(kind, "_fields"),
        fields=tuple(each.name for each in fields(kind)) if is_dataclass(kind) else None,
        frozen=written is not None and bool(written.frozen),
    )


def _feed_object(put: Callable[[bytes], None], thing: Any) -> None:
    if isinstance(thing, MethodType):
        put(b"c%d:" % len(thing.__name__) + thing.__name__.encode())
        thing = thing.__self__
    kind = type(thing)
    form = _FORMS.get(kind)
    if form is None:
        form = _FORMS[kind] = _form_of(kind)
    if not (form.mapping or form.ours):
        raise TypeError(f"no content key of {form.name}")  # nor is its code among the formulas
    content = getattr(thing, "content", None)
    if isinstance(content, bytes):
        put(f"o{form.name}:".encode() + content)
    elif form.mapping:
        put(b"m%d:" % len(thing))
        for key in sorted(thing):
            _feed(put, key)
            _feed(put, thing[key])
    elif form.named:
        put(f"n{form.name}:".encode())
        _feed(put, tuple(thing))
    elif form.fields is not None:
        put(_digest(form, thing))
    else:
        raise TypeError(f"no content key of {form.name}")


def _digest(form: _Form, thing: Any) -> bytes:
    """The hash of a dataclass; of a frozen one remembered, since a body or a law is part of many keys."""
    values = [getattr(thing, each) for each in form.fields or ()]
    parts = [form.name.encode()]
    for value in values:
        _feed(parts.append, value)
    found = hashlib.blake2b(b"".join(parts), digest_size=20).digest()
    if form.frozen and not any(isinstance(value, list | dict | set) for value in values):
        if len(_DIGESTS) >= MOST_IN_MEMORY:
            _DIGESTS.clear()
        _DIGESTS[id(thing)] = thing, found  # held, so that its id is not given to another
    return found


_FORMS: dict[type, _Form] = {}
_DIGESTS: dict[int, tuple[Any, bytes]] = {}


@cache
def formulas() -> bytes:
    """A hash of the code that results depend on: changed formulas find nothing kept."""
    return _hash_of(LIBRARIES, _sources())


@cache
def whole_code() -> bytes:
    """A hash of all code and data of the package, and of the interpreter, for what depends on more than `formulas`."""
    libraries = (*LIBRARIES, *SHOW_LIBRARIES)
    return _hash_of(libraries, _files(resources.files("sequencer")), sys.version)


def _hash_of(libraries: Iterable[str], files: Iterable[Traversable], more: str = "") -> bytes:
    total = hashlib.blake2b(more.encode(), digest_size=20)
    for name in libraries:
        with suppress(PackageNotFoundError):
            total.update(f"{name} {_version(name)}".encode())
    for file in files:
        total.update(file.name.encode() + b"\0" + file.read_bytes())
    return total.digest()


_version = cache(version)


def _sources() -> Iterator[Traversable]:
    top = resources.files("sequencer")
    for package in COMPUTING:
        yield from _files(top / package)


def _changed_since(moment: float) -> bool:
    """Whether some code was changed after a moment: then it may not be what this process runs."""
    files = _files(resources.files("sequencer"))
    return any(file.stat().st_mtime > moment for file in files if isinstance(file, Path))


def _unchanged() -> bool:
    """Whether the code on disk is still what this process runs."""
    return not _changed_since(_LOADED)


_LOADED = time.time()  # code that was changed later is not taken for what is loaded


def _files(place: Traversable) -> Iterator[Traversable]:
    """Code and data of a package and its subpackages, in the same order on every system."""
    if place.name.endswith(_CODE):
        yield place
    elif place.name != "__pycache__" and place.is_dir():
        for each in sorted(place.iterdir(), key=lambda each: each.name):
            yield from _files(each)


_CODE = (".py", ".json")  # ends of the names of code and data


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
    _STORE, _LOCK = ResultStore(_unchanged), threading.RLock()
    _SHELF.set(None)


_STORE = ResultStore(_unchanged)
_INHERITED: list[ResultStore] = []
atexit.register(_end)
if hasattr(os, "register_at_fork"):
    os.register_at_fork(after_in_child=_begin_in_child)
