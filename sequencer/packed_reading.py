"""Opens an archive that somebody has sent: all that it claims is looked at before anything is written.

A zip archive says everything several times, and a reader that believes another of these than the one before can be
deceived. So what does not agree is refused, and so is all that `packed_files` would not write: links, folders, files
that are compressed or lie over one another, names that lead elsewhere, and bytes in places that nobody looks at.
"""

import hashlib
import stat
import struct
import zipfile
import zlib
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import IO, BinaryIO, NamedTuple

from pydantic import ValidationError

from sequencer.errors import InputError, Place
from sequencer.file_names import clashing, unfit_path
from sequencer.given_files import given_file
from sequencer.packed_files import LARGEST_PACKED, MANIFEST, MOST_PACKED, Manifest, PackedFile

_LARGEST_MANIFEST = 1_000_000  # bytes
_LARGEST_LIST = 500_000  # bytes of the archive's own list at its end
_END = struct.Struct("<4s4H2LH")  # the end of an archive
_HEAD = struct.Struct("<4s5H3L2H")  # the head of a file in it
_LONG = b"PK\x06\x07"  # the end of an archive of the large form
_UTF8 = 0x0800  # the only flag that is taken: how a name is written
_FOLDER = 0x10
_PIECE = 1 << 20  # bytes read at once
_AGAIN = "ask who sent it to pack the show again, with `sequencer pack`"


@dataclass(frozen=True, slots=True)
class Archive:
    """An archive whose list agrees with what it holds, as far as that is told; a file's bytes are looked at as it is taken out."""

    name: str
    manifest: Manifest
    content: zipfile.ZipFile

    def fault(self, what: str, mend: str = _AGAIN) -> InputError:
        """Why it is refused."""
        return InputError("bad-archive", Place(self.name), what, mend)

    def write_into(self, folder: Path) -> None:
        """Write all files into an empty folder.

        Raises
        ------
        InputError
            If a file is not what the list says; the folder is then of no use.
        OSError
            If it cannot be written.
        """
        for each in self.manifest.files:
            target = folder / each.file
            target.parent.mkdir(parents=True, exist_ok=True)
            with _telling(self.name), self.content.open(each.file) as source:
                self._copy(each, source, target)

    def _copy(self, each: PackedFile, source: IO[bytes], target: Path) -> None:
        digest, size = hashlib.sha256(), 0
        with target.open("xb") as out:
            while piece := source.read(_PIECE):
                size += len(piece)
                if size > each.bytes:
                    break
                digest.update(piece)
                out.write(piece)
        if size != each.bytes or digest.hexdigest() != each.sha256:
            raise self.fault(f"{each.file} is not what its list says")


class _End(NamedTuple):
    """What the end of an archive says."""

    size: int  # [bytes] of the whole archive
    listed_at: int  # where its own list begins
    files: int  # in that list


@contextmanager
def opened_archive(path: Path) -> Iterator[Archive]:
    """An archive, open to be unpacked; nothing is written.

    Raises
    ------
    InputError
        If it cannot be read, is no archive that `write_archive` could have written, or its list does not agree with it.
    """
    name = str(path)
    with _reading(path) as file:
        told = _end_of(name, file)
        with _telling(name):
            content = zipfile.ZipFile(file)
        with content:
            entries = content.infolist()
            for each in entries:
                _refuse_odd(name, each)
            _refuse_together(name, file, entries, told)
            manifest = _manifest(name, content)
            _refuse_lies(name, manifest, entries)
            yield Archive(name, manifest, content)


@contextmanager
def _reading(path: Path) -> Iterator[BinaryIO]:
    with ExitStack() as stack:
        try:
            file = stack.enter_context(given_file(path))
        except FileNotFoundError as error:
            raise InputError(
                "no-file", Place(str(path)), "file not found", "check the path"
            ) from error
        except (OSError, ValueError) as error:
            reason = getattr(error, "strerror", None) or str(error)
            raise InputError(
                "cannot-read", Place(str(path)), f"this file cannot be read ({reason})", "check the path"
            ) from error  # fmt: skip
        yield file


@contextmanager
def _telling(name: str) -> Iterator[None]:
    """Turn what the library finds wrong into one line."""
    try:
        yield
    except (
        zipfile.BadZipFile, zlib.error, NotImplementedError, RuntimeError, EOFError, struct.error,
        UnicodeDecodeError, ValueError, OverflowError,
    ) as error:  # fmt: skip
        raise _bad(name, "it is damaged, or no archive of a show") from error


def _bad(name: str, what: str) -> InputError:
    return InputError("bad-archive", Place(name), what, _AGAIN)


def _end_of(name: str, file: BinaryIO) -> _End:
    """The end of an archive of the plain form, with nothing behind it."""
    size = file.seek(0, 2)
    if size > LARGEST_PACKED * 1.01:
        raise _bad(name, f"it is larger than {LARGEST_PACKED / 1e9:.0f} GB")
    if size < _END.size:
        raise _bad(name, "it is damaged, or no archive of a show")
    file.seek(size - _END.size)
    sign, disk, first, here, entries, length, start, comment = _END.unpack(file.read(_END.size))
    if sign != b"PK\x05\x06" or disk or first or comment or here != entries:
        raise _bad(name, "it is damaged, or no archive of a show")
    if entries > MOST_PACKED + 1 or length > _LARGEST_LIST:
        raise _bad(
            name,
            f"it holds more than {MOST_PACKED} files, or tells more of them than there is to tell",
        )
    if start + length + _END.size != size:
        raise _bad(name, "something stands before or behind what it holds")
    file.seek(max(0, size - _END.size - 20))
    if file.read(4) == _LONG:
        raise _bad(name, "it is of the form for more than 4 GB")
    return _End(size, start, entries)


def _refuse_odd(name: str, each: zipfile.ZipInfo) -> None:
    """Refuse what a file of a show is not."""
    told = each.orig_filename
    if told != each.filename or not (told.isascii() or each.flag_bits & _UTF8):
        raise _bad(name, f"a file in it has a name that is not told in one way: {told!r}")
    if (why := unfit_path(told)) is not None:
        raise _bad(name, f"a file in it is called {told!r}: {why}")
    kind = stat.S_IFMT(each.external_attr >> 16)
    if kind not in {0, stat.S_IFREG} or each.external_attr & _FOLDER:
        raise _bad(name, f"{told!r} in it is not a file but a link, a folder or a device")
    if each.flag_bits & ~_UTF8:
        raise _bad(name, f"{told!r} in it is encrypted, or packed in an unusual way")
    if each.compress_type != zipfile.ZIP_STORED or each.compress_size != each.file_size:
        raise _bad(name, f"{told!r} in it is compressed, which no archive of a show is")
    if each.extra or each.comment:
        raise _bad(name, f"more is said of {told!r} in it than an archive of a show says")


def _refuse_together(name: str, file: BinaryIO, entries: list[zipfile.ZipInfo], told: _End) -> None:
    """Refuse files that clash, lie over one another or apart, or say something else of themselves than the list does."""
    if len(entries) != told.files:
        raise _bad(name, "it does not hold as many files as it says")
    if (twice := next(clashing(each.filename for each in entries), None)) is not None:
        raise _bad(name, f"{twice!r} would lie over another file in it")
    end = 0
    for each in sorted(entries, key=lambda entry: entry.header_offset):
        _refuse_apart(name, each.header_offset - end)
        file.seek(each.header_offset)
        head = _head(each)
        if file.read(len(head)) != head:
            raise _bad(name, f"{each.filename!r} in it is not what the archive's own list says")
        end = each.header_offset + len(head) + each.file_size
    _refuse_apart(name, told.listed_at - end)


def _head(each: zipfile.ZipInfo) -> bytes:
    """What must stand before a file, to the byte, if it says of itself what the list at the end says, and nothing more.

    Source: the published specification of zip archives, local file header, from memory.
    """
    year, month, day, hour, minute, second = each.date_time
    called = each.orig_filename.encode("utf-8")
    return _HEAD.pack(
        b"PK\x03\x04", each.extract_version, each.flag_bits, each.compress_type, hour << 11 | minute << 5 | second // 2,
        (year - 1980) << 9 | month << 5 | day, each.CRC, each.compress_size, each.file_size, len(called), 0,
    ) + called  # fmt: skip


def _refuse_apart(name: str, gap: int) -> None:
    if gap < 0:
        raise _bad(name, "files in it lie over one another")
    if gap > 0:
        raise _bad(name, "something stands before or between the files in it")


def _manifest(name: str, content: zipfile.ZipFile) -> Manifest:
    if MANIFEST not in content.namelist():
        raise _bad(name, f"there is no {MANIFEST} in it, which says what it holds")
    if content.getinfo(MANIFEST).file_size > _LARGEST_MANIFEST:
        raise _bad(name, f"its {MANIFEST} says more than there is to say")
    with _telling(name):
        text = content.read(MANIFEST)
    try:
        return Manifest.model_validate_json(text, strict=True)
    except ValidationError as error:
        first = error.errors()[0]
        # Only what the list itself is made of is said again: its writer may have put anything in a key's place.
        known = Manifest.model_fields.keys() | PackedFile.model_fields.keys()
        parts = [str(part) for part in first["loc"] if isinstance(part, int) or part in known]
        where = f"{'.'.join(parts)}: " if parts else ""
        raise _bad(name, f"its {MANIFEST} cannot be used: {where}{first['msg']}") from None


def _refuse_lies(name: str, manifest: Manifest, entries: list[zipfile.ZipInfo]) -> None:
    """Refuse a list that does not name exactly what is there."""
    held = {each.filename: each.file_size for each in entries if each.filename != MANIFEST}
    listed = {each.file: each.bytes for each in manifest.files}
    if len(listed) != len(manifest.files):
        raise _bad(name, "its list names a file twice")
    for file in sorted(held.keys() ^ listed.keys()):
        said = "is in it, but not in its list" if file in held else "is in its list, but not in it"
        raise _bad(name, f"{file!r} {said}")
    for file, length in listed.items():
        if held[file] != length:
            raise _bad(name, f"{file!r} is not as long as its list says")
    if manifest.show not in listed or "/" in manifest.show:
        raise _bad(name, "the show that its list names is not in it")
    if (why := unfit_path(manifest.song.file)) is not None:
        raise _bad(name, f"its song is called {manifest.song.file!r}: {why}")
    if manifest.song.file in listed and not manifest.holds_song:
        raise _bad(name, "its list says two things of the song")
