"""Digests of files, so that a song is known by its content; a file that stays as it is is read once by a process."""

import errno
import hashlib
import time
from pathlib import Path
from typing import NamedTuple


def sha256_of_file(path: Path) -> str:
    """SHA-256 of a file's bytes, as hexadecimal digits; while the file stays as it is, read once by this process.

    Raises
    ------
    OSError
        If it cannot be read, is no file (a device may never end), or is larger than any song.
    """
    if path.exists() and not path.is_file():
        raise OSError(errno.EINVAL, "this is not a file", str(path))
    before = _state_of(path)
    if before.size > LARGEST_TRACK:
        raise OSError(
            errno.EFBIG, f"this file is larger than {LARGEST_TRACK // 10**9} GB", str(path)
        )
    if before in _DIGESTS:
        return _DIGESTS[before]
    with path.open("rb") as file:
        digest = hashlib.file_digest(file, "sha256").hexdigest()
    # The clock of a file system is coarse: what was written a moment ago may be written again unseen.
    if time.time() - max(before.changed, before.written) / 1e9 > _SETTLED:
        _DIGESTS[before] = digest
    return digest


class _State(NamedTuple):
    """What the system says of a file."""

    path: str
    device: int
    inode: int
    size: int  # [bytes]
    changed: int  # [ns]
    written: int  # [ns]


def _state_of(path: Path) -> _State:
    own = path.stat()
    return _State(
        str(path.absolute()), own.st_dev, own.st_ino, own.st_size, own.st_ctime_ns, own.st_mtime_ns
    )


LARGEST_TRACK = 4_000_000_000  # bytes: four hours as they are on a disc have 2.5
_SETTLED = 5.0  # [s] since a file was changed
_DIGESTS: dict[_State, str] = {}
