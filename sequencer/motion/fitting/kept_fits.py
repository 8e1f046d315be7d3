"""Disk cache of fits, so that each combination of body, props, pattern and tempo is searched only once.

An entry is trusted only if its query, the hash of the formulas and its checksum all match; anything else
counts as missing and is searched again. Failure to write to the folder is ignored.
"""

import hashlib
import json
from collections.abc import Iterator
from contextlib import suppress
from functools import cache
from importlib import resources
from importlib.resources.abc import Traversable
from importlib.util import find_spec
from itertools import count
from math import inf
from pathlib import Path
from typing import Any

from sequencer.errors import InputError
from sequencer.files import write_text
from sequencer.geometry.bodies import SIDES
from sequencer.geometry.posture import Posture
from sequencer.motion.fitting.fits import Fit, Margins
from sequencer.motion.patterns.law_kinds import LAW_PLUGINS
from sequencer.plugins import plugins
from sequencer.system_folders import cache_folder

MOST = 4000  # entries; beyond this the oldest half is deleted
_PRUNED_EACH = 100  # entries stored by a process: the folder is looked through each time
_STORED = count()
ROOMS = ("geometry", "motion")  # packages whose formulas an entry depends on


def folder() -> Path:
    """Location of the entries: the user's cache directory."""
    return cache_folder() / "fits"


@cache
def formulas() -> str:
    """A hash of the code that a fit depends on, including other packages' laws; changed formulas trigger a new search."""
    total = hashlib.sha256()
    added = (plugin.top for plugin in plugins(LAW_PLUGINS))
    for room in (*(f"sequencer.{room}" for room in ROOMS), *dict.fromkeys(added)):
        for file in _code_of(room):
            total.update(file.name.encode() + file.read_bytes())
    return total.hexdigest()


def _code_of(name: str) -> Iterator[Traversable]:
    """Code and data of a package, or the single file of a module; nothing if neither is found."""
    spec = find_spec(name)
    if spec is None:
        return
    if spec.submodule_search_locations is not None:
        yield from _files(resources.files(name))
    elif spec.origin is not None:
        yield Path(spec.origin)


def _files(room: Traversable) -> Iterator[Traversable]:
    """Code and data of a package and its subpackages, in the same order on every system."""
    for each in sorted(room.iterdir(), key=lambda each: each.name):
        if each.is_dir():
            yield from _files(each)
        elif each.name.endswith((".py", ".json")):
            yield each


def load(question: str) -> Fit | None:
    """The cached fit for a query; None if there is no valid entry."""
    try:
        entry = json.loads(_path(question).read_text(encoding="utf-8"))
        fit = entry["fit"]
        whole = entry["question"] == question and entry["checksum"] == _checksum(question, fit)
        return _from_record(fit) if whole else None
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def store(question: str, fit: Fit) -> None:
    """Store a fit."""
    record = _record(fit)
    entry = {"question": question, "checksum": _checksum(question, record), "fit": record}
    with suppress(InputError, OSError):
        write_text(
            _path(question), json.dumps(entry), settled=False
        )  # what is torn has no checksum
        if next(_STORED) % _PRUNED_EACH == 0:
            _prune()


def _record(fit: Fit) -> dict[str, Any]:
    return {
        "values": {side: dict(values) for side, values in fit.values.items()},
        "posture": list(fit.posture.angles),
        "margins": [None if value == inf else value for value in fit.margins],
    }


def _from_record(record: dict[str, Any]) -> Fit:
    turn, lean, side, nod, tilt = (float(angle) for angle in record["posture"])
    margins = [inf if value is None else float(value) for value in record["margins"]]
    return Fit(
        values={side: dict(record["values"][side]) for side in SIDES if side in record["values"]},
        posture=Posture(turn=turn, lean=lean, side=side, nod=nod, tilt=tilt),
        margins=Margins(*margins),
    )


def _path(question: str) -> Path:
    name = hashlib.sha256(f"{formulas()} {question}".encode()).hexdigest()
    return folder() / f"{name[:40]}.json"


def _checksum(question: str, record: dict[str, Any]) -> str:
    text = json.dumps([formulas(), question, record], sort_keys=True)
    return hashlib.sha256(text.encode("ascii")).hexdigest()


def _prune() -> None:
    """Limit the folder's size: beyond `MOST` entries the oldest half is deleted."""
    entries = list(folder().glob("*.json"))
    if len(entries) <= MOST:
        return
    dated = []
    for entry in entries:
        with suppress(OSError):  # another process may have deleted it
            dated.append((entry.stat().st_mtime, entry))
    for _, entry in sorted(dated)[: len(dated) // 2]:
        with suppress(OSError):
            entry.unlink()
