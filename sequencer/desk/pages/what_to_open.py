"""What somebody means to open: a show file, the folder it lies in, or the song that a show is to be begun for."""

import re
from pathlib import Path

from sequencer.errors import InputError, Place
from sequencer.files import telling
from sequencer.given_files import given_bytes
from sequencer.show.text.file_text import LARGEST
from sequencer.system_folders import from_home

SHOW_FILES = (".yaml", ".yml")
_NAMES_ITS_SONG = re.compile(
    rb"^track\s*:", re.MULTILINE
)  # as every show does, and no other file of ours
_MOST_TOLD = 5  # shows that a sentence names


def what_to_open(given: Path | None, track: Path | None = None) -> tuple[Path, Path | None]:
    """The show file, and the song for one that is to be begun.

    Parameters
    ----------
    given : Path, optional
        A show file, there or to be begun, with its `.yaml` or without; a folder, by default the one in which the command is run: its
        show, or one that is begun in it; or a song: a show of its name beside it.
    track : Path, optional
        The song that was named beside it.

    Raises
    ------
    InputError
        If there are several shows in the folder.
    """
    path = from_home(Path() if given is None else given)
    if path.is_dir():
        return _show_in(path), track
    if path.suffix.lower() in SHOW_FILES:
        return path, track
    if track is None and path.is_file() and _is_song(path):
        beside = path.with_suffix(SHOW_FILES[0])
        return beside, None if beside.exists() else path
    if not path.suffix and not path.exists():
        return path.with_suffix(SHOW_FILES[0]), track
    return path, track


def _is_song(path: Path) -> bool:
    from sequencer.listening.signal.audio import is_audio_name

    return is_audio_name(path)


def _show_in(folder: Path) -> Path:
    """The show of a folder; where there is none, one of the folder's name that can be begun."""
    with telling(folder):
        shows = [each for each in sorted(folder.iterdir()) if _is_show(each)]
    named = {each.stem for each in shows}
    # A version that was kept, `mine (before the rehearsal).yaml`, stands beside the show that it is one of.
    own = [each for each in shows if each.stem.partition(" (")[0] not in named - {each.stem}]
    if len(own) > 1:
        told = ", ".join(repr(each.name) for each in own[:_MOST_TOLD])
        more = f" and {len(own) - _MOST_TOLD} others" if len(own) > _MOST_TOLD else ""
        raise InputError(
            "several-shows", Place(str(folder)), f"there are several shows in this folder: {told}{more}", "name one of them"
        )  # fmt: skip
    if own:
        return own[0]
    return folder / f"{folder.resolve().name or 'show'}{SHOW_FILES[0]}"


def _is_show(path: Path) -> bool:
    if path.suffix.lower() not in SHOW_FILES or path.name.startswith(".") or not path.is_file():
        return False
    try:
        return _NAMES_ITS_SONG.search(given_bytes(path, LARGEST)) is not None
    except OSError:
        return False
