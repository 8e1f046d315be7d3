"""Files packed into one to be mailed: a plain zip archive that begins with a list of what is in it, and the hash of each.

The same files make the same archive to the byte: names in order, one moment and one set of rights for all, and nothing
compressed, since what compressing makes of a file depends on who wrote the library.
"""

import hashlib
import io
import stat
import zipfile
from collections.abc import Mapping
from pathlib import Path
from typing import BinaryIO, Literal

from pydantic import BaseModel, ConfigDict, Field

from sequencer.digests import sha256_of_file
from sequencer.errors import InputError, Place
from sequencer.files import replacing
from sequencer.given_files import given_file

MANIFEST = "manifest.json"
LARGEST_PACKED = 2_000_000_000  # bytes: what an archive of the plain form can hold
MOST_PACKED = 200  # files
_MOMENT = (1980, 1, 1, 0, 0, 0)  # the first that an archive can tell
_RIGHTS = (stat.S_IFREG | 0o644) << 16
_UNIX = 3
_PIECE = 1 << 20  # bytes read at once


class PackedFile(BaseModel):
    """A file as the list in an archive tells it."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    file: str = Field(min_length=1, max_length=400)
    bytes: int = Field(ge=0)
    sha256: str = Field(pattern=r"^[0-9a-f]{64}$")


class PackedSong(BaseModel):
    """The song as the list tells it; how long its file is only where it is packed, since the hash alone says which it is."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    file: str = Field(min_length=1, max_length=400)
    bytes: int | None = Field(default=None, ge=0)
    sha256: str = Field(pattern=r"^[0-9a-f]{64}$")


class Manifest(BaseModel):
    """The list in an archive: what it holds, which of it is the show, and which recording the song is."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    format: Literal["sequencer show 1"] = "sequencer show 1"
    show: str
    song: PackedSong  # where it is not among the files, only its hash is mailed
    files: tuple[PackedFile, ...] = Field(min_length=1, max_length=MOST_PACKED)

    @property
    def holds_song(self) -> bool:
        """Whether the song itself is packed."""
        return self.song.model_dump() in [each.model_dump() for each in self.files]


def manifest_of(
    show: str, song: str, files: Mapping[str, Path | bytes], *, sha256: str | None = None
) -> Manifest:
    """The list of some files.

    Parameters
    ----------
    show, song : str
        Which of the files they are.
    files : mapping of str to (Path or bytes)
        What each holds, by its path in the archive.
    sha256 : str, optional
        The song's, where only that is mailed: it need not be among the files, and is not listed.

    Raises
    ------
    InputError
        If a file cannot be read.
    """
    listed = sorted(files if sha256 is None else files.keys() - {song})
    entries = {name: _entry(name, files[name]) for name in listed}
    told = entries[song].model_dump() if sha256 is None else {"file": song, "sha256": sha256}
    return Manifest(show=show, song=PackedSong(**told), files=tuple(entries.values()))


def write_archive(path: Path, manifest: Manifest, files: Mapping[str, Path | bytes]) -> None:
    """Write an archive, atomically: the list, then all that it names.

    Parameters
    ----------
    path : Path
    manifest : Manifest
    files : mapping of str to (Path or bytes)
        What each file holds, by its path in the archive; those that are not listed are left out.

    Raises
    ------
    InputError
        If it cannot be written, is larger than an archive can be, or a file has changed since it was listed.
    """
    total = sum(each.bytes for each in manifest.files)
    if total > LARGEST_PACKED:
        raise InputError(
            "too-large", Place(str(path)), f"it would hold {total / 1e9:.1f} GB, and takes {LARGEST_PACKED / 1e9:.0f} at most",
            "add --without-song",
        )  # fmt: skip
    listed = manifest.model_dump_json(indent=1, exclude_none=True).encode("utf-8") + b"\n"
    with replacing(path) as scratch, zipfile.ZipFile(scratch, "w", allowZip64=False) as archive:
        _put(archive, MANIFEST, len(listed), io.BytesIO(listed))
        for each in manifest.files:
            content = files[each.file]
            if isinstance(content, bytes):
                digest = _put(archive, each.file, each.bytes, io.BytesIO(content))
            else:
                with given_file(content) as source:
                    digest = _put(archive, each.file, each.bytes, source)
            if digest != each.sha256:
                raise InputError(
                    "changed-meanwhile", Place(str(content)), "this file was changed while it was packed",
                    "pack the show again",
                )  # fmt: skip


def _put(archive: zipfile.ZipFile, name: str, size: int, source: BinaryIO) -> str:
    """Put in as many bytes as were listed; the hash of what was put."""
    info = zipfile.ZipInfo(name, _MOMENT)
    info.create_system, info.external_attr, info.file_size = _UNIX, _RIGHTS, size
    digest, left = hashlib.sha256(), size
    with archive.open(info, "w") as out:
        while left > 0 and (piece := source.read(min(left, _PIECE))):
            digest.update(piece)
            out.write(piece)
            left -= len(piece)
    return digest.hexdigest()


def _entry(name: str, content: Path | bytes) -> PackedFile:
    if isinstance(content, bytes):
        return PackedFile(file=name, bytes=len(content), sha256=hashlib.sha256(content).hexdigest())
    try:
        return PackedFile(file=name, bytes=content.stat().st_size, sha256=sha256_of_file(content))
    except OSError as error:
        raise InputError(
            "no-file", Place(str(content)), f"this file cannot be packed ({error.strerror})",
            "put it back, or take it out of the show",
        ) from error  # fmt: skip
