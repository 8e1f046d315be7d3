"""Cache of analyses, keyed by file content, so that each track is analysed only once.

An entry is trusted only if its name, hash, analysis version and checksum agree; anything else counts as
missing and is rewritten.
"""

import hashlib
import json
from contextlib import suppress
from dataclasses import asdict, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sequencer.errors import InputError
from sequencer.files import write_text
from sequencer.system_folders import cache_folder

if TYPE_CHECKING:
    from sequencer.timing.song import Song

ANALYSIS = "19"  # increased whenever the same file would give a different result

_CURVES = (
    "beats", "downbeats", "energy", "bar_confidence",
    "loudness", "brightness", "onsets", "onset_strengths",
)  # fmt: skip


def folder() -> Path:
    """Location of the entries: the user's cache directory."""
    return cache_folder() / "heard"


def entry(sha256: str) -> bytes | None:
    """The entry of the song with that content as it lies on disk, valid or not; None if there is none."""
    try:
        return _path(sha256).read_bytes()
    except OSError:
        return None


def load(sha256: str, *, track: str) -> "Song | None":
    """The song with that content, named `track`; None if there is no valid entry."""
    try:
        entry = json.loads(_path(sha256).read_text(encoding="utf-8"))
        song = entry["song"]
        whole = (
            entry["analysis"] == ANALYSIS
            and song["sha256"] == sha256
            and entry["checksum"] == _checksum(song)
        )
        return replace(song_from_record(song), track=track) if whole else None
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def store(song: "Song") -> None:
    """Store a song; failure to write the cache is ignored."""
    record = song_record(song)
    entry = {"analysis": ANALYSIS, "checksum": _checksum(record), "song": record}
    with suppress(InputError, OSError):
        write_text(_path(song.sha256), json.dumps(entry, ensure_ascii=False))


def song_record(song: "Song") -> dict[str, Any]:
    """A song as plain JSON values."""
    record: dict[str, Any] = json.loads(json.dumps(asdict(song)))
    return record


def song_from_record(record: dict[str, Any]) -> "Song":
    """The inverse of `song_record`.

    Raises
    ------
    KeyError, TypeError, ValueError
        If the record is not a song.
    """
    from sequencer.timing.song import Reading, Section, Song

    given = dict(record)
    given["sections"] = tuple(Section(**section) for section in given["sections"])
    given["readings"] = tuple(Reading(**reading) for reading in given["readings"])
    given["turns"] = tuple((float(at), float(share)) for at, share in given["turns"])
    given["unsteady"] = tuple((float(a), float(b)) for a, b in given["unsteady"])
    for name in _CURVES:
        given[name] = tuple(float(value) for value in given[name])
    given["warnings"] = tuple(str(line) for line in given["warnings"])
    return Song(**given)


def _path(sha256: str) -> Path:
    return folder() / f"{sha256}-{ANALYSIS}.json"


def _checksum(record: dict[str, Any]) -> str:
    text = json.dumps(record, ensure_ascii=True, sort_keys=True)
    return hashlib.sha256(text.encode("ascii")).hexdigest()
