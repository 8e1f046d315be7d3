"""Content keys: hashes by which results are known, and the hash of the code that computes them.

A key is the same for two values only if they are the same in every digit, and computed by the same code and libraries.
"""

import hashlib
import marshal
import sys
import time
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import fields, is_dataclass
from functools import cache
from importlib import resources
from importlib.metadata import PackageNotFoundError, version
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MethodType
from typing import Any, NamedTuple

# Code and data that results depend on, and the libraries behind it.
COMPUTING = (
    "arrays.py",
    "content_keys.py",
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

_MOST_DIGESTS = 100_000  # of values that are part of many keys


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
        if len(_DIGESTS) >= _MOST_DIGESTS:
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


def code_unchanged() -> bool:
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
