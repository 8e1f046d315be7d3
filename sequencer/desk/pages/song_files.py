"""Songs that a page may choose from: audio files beside a show, a path that a person wrote, and one that is brought in."""

import os
import secrets
from collections.abc import AsyncIterator
from contextlib import suppress
from pathlib import Path

from sequencer.errors import InputError, Place
from sequencer.file_names import refused_letter
from sequencer.files import replacing, telling
from sequencer.system_folders import from_home

LARGEST_SONG = 400_000_000  # bytes
LONGEST_SONG_NAME = 200  # bytes: file systems take 255, and a number may follow
_MOST_LISTED = 200
_MOST_LOOKED = 5_000  # files and folders beside a show


def songs_beside(folder: Path) -> list[str]:
    """Audio files in a folder and in its subfolders, as a show file writes them; those in the folder first."""
    from sequencer.listening.signal.audio import is_audio_name

    found: list[Path] = []
    looked = 0
    folders = [folder]
    try:
        folders += sorted(
            each for each in folder.iterdir() if each.is_dir() and each.name[0] != "."
        )
    except OSError:
        return []
    for each in folders:
        try:
            names = sorted(each.iterdir())
        except OSError:
            continue
        looked += len(names)
        found += [path for path in names if is_audio_name(path) and path.is_file()]
        if looked > _MOST_LOOKED:
            break
    return [path.relative_to(folder).as_posix() for path in found[:_MOST_LISTED]]


def song_path(words: str, folder: Path) -> Path:
    """Where the song lies that a person wrote: below the show's folder, or wherever else the path leads.

    Raises
    ------
    InputError
        If nothing was written, or there is no such file.
    """
    if not words.strip():
        raise InputError(
            "no-track", Place("song"), "no song is chosen", "choose one, or write its path"
        )
    path = folder / from_home(Path(words.strip()))
    if path.is_dir():
        raise InputError("no-track", Place(words), "this is a folder", "choose a song in it")
    if not path.is_file():
        raise InputError(
            "no-track", Place(words), "there is no such file", f"write its path, as seen from {folder}"
        )  # fmt: skip
    return path


def written_path(path: Path, folder: Path) -> str:
    """A path as a show file in a folder writes it."""
    from sequencer.tasks.starting import from_folder

    return from_folder(path, folder)


async def brought_song(name: str, parts: AsyncIterator[bytes], folder: Path) -> str:
    """A song that a page hands over, put beside the show; what has that name already is never overwritten.

    Parameters
    ----------
    name : str
        Of the file; folders in it are left out.
    parts : async iterator of bytes
    folder : Path

    Returns
    -------
    name : str
        By which it lies in the folder.

    Raises
    ------
    InputError
        If its name is none of a song, it is too large, or it cannot be written.
    """
    from sequencer.listening.signal.audio import is_audio_name

    own = name.replace("\\", "/").rpartition("/")[2].strip()
    path = folder / (own or "song")
    _good_name(own)
    if not is_audio_name(path):
        raise InputError(
            "not-a-song", Place(own or "song"), "by its name this is no song",
            "choose a wav, flac, ogg or mp3 file",
        )  # fmt: skip
    with telling(folder):
        folder.mkdir(parents=True, exist_ok=True)
    # Into a file of another name first: it may be the one that is there already.
    size = 0
    scratch = path.with_name(f".brought-{os.getpid()}-{secrets.token_hex(4)}{path.suffix}")
    try:
        with replacing(scratch) as partial, telling(path), partial.open("wb") as out:
            async for part in parts:
                size += len(part)
                if size > LARGEST_SONG:
                    raise InputError(
                        "too-large", Place(own), f"this is larger than {LARGEST_SONG // 1_000_000} MB",
                        "choose a shorter one, or put it beside the show yourself",
                    )  # fmt: skip
                out.write(part)
        return _placed(scratch, path)
    finally:
        with suppress(OSError):
            scratch.unlink()


def _good_name(name: str) -> None:
    """Refuse a name that no file beside a show should have."""
    if (wrong := refused_letter(name)) is not None:
        raise InputError(
            "bad-name", Place("name of the song"), f"a file's name cannot have {wrong!r} on every system",
            "rename the song, and bring it again",
        )  # fmt: skip
    if len(name.encode()) > LONGEST_SONG_NAME:
        raise InputError(
            "bad-name", Place("name of the song"), "the name of this file is too long",
            "give it a shorter one, and bring it again",
        )  # fmt: skip


def _placed(scratch: Path, path: Path) -> str:
    """Give a file its name, with a number where another file has that name."""
    from sequencer.digests import sha256_of_file

    for number in range(1, 1000):
        place = path if number == 1 else path.with_name(f"{path.stem} {number}{path.suffix}")
        if not place.exists():
            scratch.rename(place)
            return place.name
        if place.is_file() and sha256_of_file(place) == sha256_of_file(scratch):
            return place.name
    raise InputError("cannot-write", Place(path.name), "too many files have this name", "rename it")
