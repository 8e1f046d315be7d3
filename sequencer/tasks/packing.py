"""A show packed into one file to be mailed, with all that it names, and unpacked into a folder of its own."""

import os
from collections.abc import Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, replace
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING

from sequencer.allowed_places import PROJECT_MARK
from sequencer.errors import InputError, Place
from sequencer.file_names import clashing, fitting_name, unfit_path
from sequencer.files import AnyPath, making_folder
from sequencer.given_files import is_given_file
from sequencer.packed_files import (
    MANIFEST,
    MOST_PACKED,
    Manifest,
    manifest_of,
    write_archive,
)

if TYPE_CHECKING:
    from sequencer.packed_reading import Archive
    from sequencer.show.reading import ReadShow
    from sequencer.show.text.file_text import DiskText
    from sequencer.show.text.plain_values import ValuePath

_SONG, _HASH = ("track", "file"), ("track", "sha256")
_FENCE = "A show below reads only what lies in this folder: it came from somebody else.\n"
# Besides sound. Some systems open, or act on, files of other endings as soon as a folder is looked at.
_ENDINGS = {".yaml", ".yml", ".txt", ".csv", ".mid", ".midi", ".ttf", ".otf"}


@dataclass(frozen=True, slots=True)
class PackedShow:
    """A show that was packed, or unpacked."""

    path: Path  # the archive, or the show file in its new folder
    manifest: Manifest


def pack_show(path: AnyPath, out: AnyPath, *, with_song: bool = True) -> PackedShow:
    """Write a show, and all files that it names, into one archive, `NAME/NAME.zip` in a folder.

    The same show makes the same archive to the byte. Files that lie outside the show's folder, or whose names not every
    system takes, lie beside the show in the archive, and it names them there; the show file itself stays as it is.

    Parameters
    ----------
    path, out : path
    with_song : bool
        Whether the song is packed, or its hash only: it need not be there if the show names its hash.

    Raises
    ------
    InputError
        If the show cannot be read, a file that it names is not there, the song is not the one whose hash the show names and only that
        is mailed, or the archive cannot be written.
    """
    from sequencer.show.reading import show_from_document
    from sequencer.show.text.document import parse_document
    from sequencer.show.text.file_text import disk_text

    show = Path(path)
    said = disk_text(show)
    read = show_from_document(parse_document(said.text, str(show)))
    known = None if with_song else read.show.track.sha256
    named = _named(read, {_SONG} if known else set())
    name = _show_name(show)
    places = _packed_names(named, show.parent, [MANIFEST, name])
    changes: dict[ValuePath, str] = {
        at: packed for at, packed in places.items() if PurePosixPath(named[at]) != PurePosixPath(packed)
    }  # fmt: skip
    files: dict[str, Path | bytes] = {
        packed: show.parent / named[at] for at, packed in places.items()
    }
    song = places[_SONG]
    digest = None if with_song else _song_hash(read, show.parent / named[_SONG])
    if digest is not None and known is None:
        changes[_HASH] = digest
    files[name] = _with_changes(said, changes, show)
    manifest = manifest_of(name, song, files, sha256=digest)
    stem = Path(name).stem
    target = Path(out) / stem / f"{stem}.zip"
    write_archive(target, manifest, files)
    return PackedShow(target, manifest)


def unpack_show(path: AnyPath, out: AnyPath | None = None) -> PackedShow:
    """Unpack a show that somebody has sent, into a new folder, whole or not at all; what is in it reads nothing outside that folder.

    Parameters
    ----------
    path : path
    out : path, optional
        The new folder; named after the archive, in the current folder, if left out.

    Raises
    ------
    InputError
        If the archive is not as `pack_show` writes it, its list does not agree with it, the folder is there already, or
        cannot be written.
    """
    from sequencer.packed_reading import opened_archive

    folder = _folder_for(Path(path)) if out is None else Path(out)
    with opened_archive(Path(path)) as archive, making_folder(folder) as scratch:
        archive.write_into(scratch)
        _refuse_other_files(archive, scratch / archive.manifest.show)
        (scratch / PROJECT_MARK).write_text(_FENCE, encoding="utf-8", newline="\n")
    return PackedShow(folder / archive.manifest.show, archive.manifest)


def _folder_for(archive: Path) -> Path:
    """A folder here, named as the archive: its name too may be a stranger's."""
    if (why := unfit_path(archive.stem)) is not None:
        raise InputError(
            "odd-folder", Place(str(archive)), f"no folder can be called as this file: {why}", "name one with --out"
        )  # fmt: skip
    return Path(archive.stem)


def _show_name(show: Path) -> str:
    """What the show is called in the archive: with an ending by which `unpack` takes it for a file of a show."""
    name = fitting_name(show.name)
    return name if _is_packed(name) else fitting_name(f"{name}.yaml")


def _song_hash(read: "ReadShow", song: Path) -> str:
    """Which recording the song is: as the show names it, or else as it lies there."""
    from sequencer.digests import sha256_of_file
    from sequencer.tasks.songs import refuse_another_cut

    known = read.show.track.sha256
    if known is not None and not is_given_file(song):
        return known
    digest = sha256_of_file(song)
    refuse_another_cut(read, digest)
    return digest


def _named(read: "ReadShow", not_needed: "AbstractSet[ValuePath]") -> "dict[ValuePath, str]":
    """Every file that a show names, by where it says so; all that are needed are there, and of a kind that is packed."""
    from sequencer.show.outside_files import files_of

    named = dict(files_of(read.document.values))
    for at, name in named.items():
        if at not in not_needed and not is_given_file(Path(read.document.file).parent / name):
            raise read.fault(
                "no-file",
                at,
                f"there is no file {name!r}",
                "put it back, or take it out of the show",
            )
        if not _is_packed(name):
            raise read.fault(
                "odd-ending",
                at,
                f"a file called {name!r} is not mailed",
                f"give it one of the endings {_endings()}",
            )
    if len(named) >= MOST_PACKED:
        raise read.fault(
            "too-many-files", (), f"it names {len(named)} files, and {MOST_PACKED - 1} can be packed",
            "bring patterns and rules together into fewer files",
        )  # fmt: skip
    return named


def _packed_names(
    named: "Mapping[ValuePath, str]", folder: Path, taken: list[str]
) -> "dict[ValuePath, str]":
    """Where each file lies in the archive: as below the show's folder if it can, else beside the show."""
    places: dict[ValuePath, str] = {}
    of_file: dict[str, str] = {}
    for at, name in named.items():
        real = os.path.realpath(folder / name)
        if real not in of_file:
            of_file[real] = _packed_name(name, [*taken, *of_file.values()])
        places[at] = of_file[real]
    return places


def _packed_name(name: str, taken: list[str]) -> str:
    plain = PurePosixPath(name).as_posix()
    if unfit_path(plain) is None and not any(clashing([*taken, plain])):
        return plain
    folders = {str(above) for each in taken for above in PurePosixPath(each).parents}
    return fitting_name(PurePosixPath(name.replace("\\", "/")).name, {*taken, *folders})


def _with_changes(said: "DiskText", changes: "Mapping[ValuePath, str]", show: Path) -> bytes:
    from sequencer.show.editing import edited_text

    if not changes:
        return said.content
    return replace(said, text=edited_text(said.text, list(changes.items()), file=str(show))).content


def _is_packed(name: str) -> bool:
    from sequencer.listening.signal.audio import is_audio_name

    return PurePosixPath(name).suffix.lower() in _ENDINGS or is_audio_name(Path(name))


def _endings() -> str:
    return ", ".join(sorted(_ENDINGS))


def _refuse_other_files(archive: "Archive", show: Path) -> None:
    """Refuse an archive that holds anything but a show and what it names, each of a kind that a show uses."""
    from sequencer.show.outside_files import files_of
    from sequencer.show.text.document import parse_document
    from sequencer.show.text.file_text import file_text

    manifest = archive.manifest
    try:
        values = parse_document(file_text(show), manifest.show).values
    except InputError as error:
        line = f", line {error.place.line}" if error.place.line else ""
        raise archive.fault(f"the show in it cannot be read{line}: {error.what}") from error
    named = {at: PurePosixPath(name).as_posix() for at, name in files_of(values)}
    held = {each.file for each in manifest.files} | {manifest.song.file}
    for name in sorted(held ^ {manifest.show, *named.values()}):
        said = (
            "is in it, but the show does not name it"
            if name in held
            else "is named by the show, but not in it"
        )
        raise archive.fault(f"{name!r} {said}")
    for name in sorted(held):
        if not _is_packed(name):
            raise archive.fault(f"{name!r} in it is no file of a show")
    if named.get(_SONG) != manifest.song.file:
        raise archive.fault(
            f"its list calls {manifest.song.file!r} the song, and the show does not"
        )
    if not manifest.holds_song and values["track"].get("sha256") != manifest.song.sha256:
        raise archive.fault("the show does not name the recording that its list names")
