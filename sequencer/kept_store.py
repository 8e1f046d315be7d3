"""Records on disk by their keys: one SQLite database in the user's cache directory, which keeps several processes apart.

A record is trusted only if its checksum matches; anything else counts as missing. A folder that cannot be read or
written, a full disk, a damaged file or another process at work never stop anything: then less is found or kept.
"""

import hashlib
import os
import threading
import time
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

from sequencer.system_folders import cache_folder

try:
    import sqlite3
except ImportError:  # Python was built without it: nothing is kept on disk
    sqlite3 = None  # type: ignore[assignment]

MOST_ON_DISK = 200 * 2**20  # [bytes]; beyond this the older half of the results goes
BUNDLE = 2_000  # results that are written together, at most
OFTEN_ENOUGH = 2.0  # [s] that a result waits to be written if more are computed after it; one that took longer never waits
_SCHEMA = 1  # of the database; another one has another file
_FOLDERS = ("XDG_CACHE_HOME", "LOCALAPPDATA", "HOME")  # variables that place the cache directory
_AT_ONCE = 200  # records that are asked for together, at most
_PATIENCE = 0.5  # [s] to wait for another process
_REFUSALS = 3  # after so many the database is left alone


Kept = str | bytes  # a record: JSON, or numbers as they lie in memory
MadeLater = Callable[
    [], Kept | None
]  # a record that is made when it is needed; None if there is none


def store_path() -> Path:
    """Location of the database: the user's cache directory."""
    return cache_folder() / f"results-{_SCHEMA}.sqlite3"


class ResultStore:
    """The database of this process, opened when it is first needed; out of order it finds and keeps nothing.

    Parameters
    ----------
    may_write : callable
        Whether what waits may be written at this moment.
    """

    def __init__(self, may_write: Callable[[], bool]) -> None:
        self._may_write = may_write
        self._lock = threading.RLock()
        self._here: tuple[int | str | None, ...] | None = None
        self._base: sqlite3.Connection | None = None
        self._refused = {"read": 0, "write": 0}  # in a row
        self._waiting: dict[bytes, Kept | MadeLater] = {}
        self._taken: dict[bytes, Kept] = {}  # from workers, until they are asked for
        self._collected: dict[bytes, Kept] | None = None
        self._since = self._asked = (
            time.monotonic()
        )  # when the oldest of them came; when it was last asked for anything

    def get(self, key: bytes) -> Kept | None:
        """The record kept for a key; None if there is none, or it is damaged."""
        return self.get_each((key,)).get(key)

    def get_each(self, keys: Sequence[bytes]) -> dict[bytes, Kept]:
        """The records kept for some keys, without those that there are none for, or that are damaged."""
        found: dict[bytes, Kept] = {}
        with self._lock:
            sought = []
            for key in keys:
                record = self._at_hand(key)
                if record is None:
                    sought.append(key)
                else:
                    found[key] = record
            for first in range(0, len(sought), _AT_ONCE):
                some = sought[first : first + _AT_ONCE]
                found |= {
                    key: record
                    for key, record, checksum in self._run("read", _reading(some))
                    if isinstance(record, str | bytes) and checksum == _checksum(key, record)
                }
            self._asked = time.monotonic()
        return found

    def _at_hand(self, key: bytes) -> Kept | None:
        """A record that waits to be written, or was taken from a worker."""
        taken, waiting = self._taken.pop(key, None), self._waiting.get(key)
        if waiting is None:
            return taken
        if not callable(waiting):
            return waiting
        made = _made(waiting)
        if made is None:
            del self._waiting[key]
        else:
            self._waiting[key] = made
        return made

    def text(self, key: bytes) -> str | None:
        """The same, if it is JSON."""
        return self.texts((key,)).get(key)

    def texts(self, keys: Sequence[bytes]) -> dict[bytes, str]:
        """The same of some keys."""
        return {key: own for key, own in self.get_each(keys).items() if isinstance(own, str)}

    def put(self, key: bytes, record: Kept | MadeLater) -> None:
        """Keep a record; written with others, at the latest when the process ends.

        One that is only made when it is written costs whoever waits for the result nothing.
        """
        with self._lock:
            if self._collected is not None:
                made = _made(record)
                if made is not None:
                    self._collected[key] = made
                return
            now = time.monotonic()
            dear, self._asked = now - self._asked > OFTEN_ENOUGH, now
            if not self._waiting:
                self._since = now
            self._waiting[key] = record
            if len(self._waiting) >= BUNDLE or dear or now - self._since > OFTEN_ENOUGH:
                self.flush()

    def begin_collecting(self, records: dict[bytes, Kept] | None) -> dict[bytes, Kept] | None:
        """From now on put results there instead; None to write them again. Returns where they went before."""
        with self._lock:
            before, self._collected = self._collected, records
            return before

    def take(self, records: Mapping[bytes, Kept]) -> None:
        """Results of a worker: found from now on even where nothing can be written."""
        with self._lock:
            self._taken.update(records)
            for key, record in records.items():
                self.put(key, record)

    def flush(self) -> None:
        """Write what waits; a record that cannot be made is left out."""
        with self._lock:
            waiting, self._waiting = self._waiting, {}
            if not waiting or self._connection() is None or not self._may_write():
                return
            now = int(time.time())
            try:
                made = ((key, _made(own)) for key, own in waiting.items())
                rows = [
                    (key, own, _checksum(key, own), now) for key, own in made if own is not None
                ]
                self._run("write", lambda base: _write(base, rows))
            except BaseException:  # interrupted: they are written when the process ends
                self._waiting = waiting | self._waiting
                raise

    def close(self) -> None:
        """Close the database; it is opened again when it is needed."""
        with self._lock:
            base, self._base, self._here = self._base, None, None
            if base is not None:
                with suppress(sqlite3.Error):
                    base.close()

    def __del__(self) -> None:
        with suppress(
            AttributeError, TypeError
        ):  # of one that was never whole, or as the interpreter ends
            self.close()

    def _run(self, what: str, work: Callable[[sqlite3.Connection], list[Any]]) -> list[Any]:
        base = self._connection()
        if base is None or self._refused[what] >= _REFUSALS:
            return []
        try:
            found = work(base)
        except sqlite3.Error as error:
            self._refused[what] += 1  # busy, full, or only to be read
            if type(error) is sqlite3.DatabaseError:  # damaged
                with suppress(sqlite3.Error):
                    base.close()
                self._base = _opened_anew(store_path())
            return []
        self._refused[what] = 0
        return found

    def _connection(self) -> sqlite3.Connection | None:
        """The open database; one whose folder has moved is opened there."""
        here = (os.getpid(), *(os.environ.get(name) for name in _FOLDERS))
        if self._here != here:
            self.close()
            self._here, self._refused = here, {"read": 0, "write": 0}
            with suppress(OSError, RuntimeError):  # there may be no home
                self._base = _opened(store_path())
        return self._base


def _made(record: Kept | MadeLater) -> Kept | None:
    """A record, made now if it was not yet; None if that fails, since its result is known all the same."""
    with suppress(Exception):
        return record() if callable(record) else record
    return None


def _reading(keys: Sequence[bytes]) -> Callable[[sqlite3.Connection], list[Any]]:
    return lambda base: _read(base, keys)


def _read(base: sqlite3.Connection, keys: Sequence[bytes]) -> list[Any]:
    places = ", ".join("?" * len(keys))
    sought = f"SELECT key, record, checksum FROM results WHERE key IN ({places})"  # noqa: S608  question marks only
    return base.execute(sought, keys).fetchall()


def _write(base: sqlite3.Connection, rows: list[tuple[bytes, Kept, bytes, int]]) -> list[Any]:
    with base:
        base.executemany("INSERT OR REPLACE INTO results VALUES (?, ?, ?, ?)", rows)
        if _used(base) > MOST_ON_DISK:
            (count,) = base.execute("SELECT count(*) FROM results").fetchone()
            base.execute(
                "DELETE FROM results WHERE key IN (SELECT key FROM results ORDER BY written, key LIMIT ?)",
                (count - count // 2,),
            )
    return []


def _used(base: sqlite3.Connection) -> int:
    """Bytes of the database that hold something; what was deleted is used again."""
    pages, empty, size = (
        base.execute(f"PRAGMA {name}").fetchone()[0]
        for name in ("page_count", "freelist_count", "page_size")
    )
    return int((pages - empty) * size)


def _opened(path: Path) -> sqlite3.Connection | None:
    """A database that can be read, and written if the folder allows it; None if neither."""
    if sqlite3 is None:
        return None
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        return _prepared(sqlite3.connect(path, timeout=_PATIENCE, check_same_thread=False))
    except (OSError, sqlite3.OperationalError):
        return _opened_to_read(path)
    except sqlite3.Error:  # damaged, or no database at all
        return _opened_anew(path)


def _opened_to_read(path: Path) -> sqlite3.Connection | None:
    with suppress(OSError, ValueError, sqlite3.Error):
        where = f"{path.resolve().as_uri()}?mode=ro"
        return sqlite3.connect(where, uri=True, timeout=_PATIENCE, check_same_thread=False)
    return None


def _opened_anew(path: Path) -> sqlite3.Connection | None:
    """An empty database in the place of a damaged one; None if that is not allowed either."""
    with suppress(OSError, sqlite3.Error):
        path.unlink(missing_ok=True)
        return _prepared(sqlite3.connect(path, timeout=_PATIENCE, check_same_thread=False))
    return None


def _prepared(base: sqlite3.Connection) -> sqlite3.Connection:
    """A database with its table."""
    try:
        # Without waiting for the disk: what a power cut damages, the checksums find.
        base.execute("PRAGMA synchronous = OFF")
        base.execute(
            "CREATE TABLE IF NOT EXISTS results "
            "(key BLOB PRIMARY KEY, record TEXT, checksum BLOB, written INTEGER) WITHOUT ROWID"
        )
    except sqlite3.Error:
        base.close()
        raise
    return base


def _checksum(key: bytes, record: Kept) -> bytes:
    plain = record if isinstance(record, bytes) else record.encode("utf-8")
    return hashlib.blake2b(key + plain, digest_size=16).digest()
