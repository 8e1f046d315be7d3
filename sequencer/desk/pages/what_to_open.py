"""What somebody means to open: a show file, the folder it lies in, or the song that a show is to be begun for."""

import difflib
import os
import re
import stat
from collections.abc import Sequence
from pathlib import Path

from sequencer.errors import InputError, Place
from sequencer.given_files import is_given_file, is_given_folder, is_there
from sequencer.shell_words import shell_path
from sequencer.show.text.document import parse_document
from sequencer.show.text.file_text import file_text
from sequencer.system_folders import from_home

SHOW_FILES = (".yaml", ".yml")
_NAMES_ITS_SONG = re.compile(
    r"""^(["']?)track\1[ \t]*:""", re.MULTILINE
)  # as every show does, one that is no YAML any more too, and no other file of ours
_ALSO_IN_SHOWS = frozenset({"title", "venue", "cast", "timeline"})
_OTHER_FILES = frozenset({
    ".csv", ".doc", ".docx", ".gif", ".htm", ".html", ".jpeg", ".jpg", ".json", ".md", ".mov", ".mp4", ".odt", ".pdf", ".png", ".rtf",
    ".svg", ".toml", ".txt", ".webm", ".xml", ".zip",
})  # fmt: skip
_LONGEST_READ = 400_000  # letters of a file that does not name its song at once: seconds
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
        If several shows may be meant, a file in the folder may be a show and cannot be told from one, or what is to be begun
        has no folder to lie in.
    """
    wanted = from_home(Path() if given is None else given)
    path, song = _meant(wanted, track)
    if not is_there(path):
        _refuse_nowhere(path, whole_name=wanted.suffix.lower() in SHOW_FILES)
    return path, song


def _meant(path: Path, track: Path | None) -> tuple[Path, Path | None]:
    if is_given_folder(path):
        return _show_in(path), track
    if path.suffix.lower() in SHOW_FILES:
        return path, track
    if is_given_file(path):
        if track is not None or not _is_song(path):
            return path, track  # it is told that it is no show
        there = _show_called(path.parent, path.stem)
        return (path.with_suffix(SHOW_FILES[0]), path) if there is None else (there, None)
    there = _show_called(path.parent, path.name)
    if there is None and not os.path.lexists(path) and _may_be_begun(path):
        there = path.with_name(path.name + SHOW_FILES[0])
    return there or path, track


def _is_song(path: Path) -> bool:
    from sequencer.listening.signal.audio import is_audio_name

    return is_audio_name(path)


def _may_be_begun(path: Path) -> bool:
    """Whether a name that is not there is one for a show: not that of a song or another kind of file, and no slip in `.yaml`."""
    ending = path.suffix.lower()
    return not (
        _is_song(path) or ending in _OTHER_FILES or difflib.get_close_matches(ending, SHOW_FILES)
    )


def _refuse_nowhere(path: Path, *, whole_name: bool) -> None:
    """Refuse to begin a show where there is no folder for it, where nobody can see whether one is there, or in place of one that is away.

    The folder of a show whose whole name was given is made with the show, when it is first saved.
    """
    place = Place(str(path))
    if not (is_given_folder(path.parent) or (whole_name and not os.path.lexists(path.parent))):
        raise InputError(
            "no-folder", place, f"there is no folder {str(path.parent)!r} that can be opened",
            "check the path, or make the folder first",
        )  # fmt: skip
    try:
        lost = stat.S_ISLNK(path.lstat().st_mode)
    except FileNotFoundError:
        return
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputError(
            "cannot-read", place, f"this file cannot be read ({reason})", "check the path"
        ) from error
    if lost:
        raise InputError(
            "lost-link", place, f"this is a link to {str(path.readlink())!r}, and nothing can be opened there",
            "put the file back there, or take the link away",
        )  # fmt: skip


def _show_files(folder: Path) -> list[Path]:
    """What may be a show in a folder by its name, in the order of the names; links that lead nowhere too."""
    try:
        paths = sorted(folder.iterdir())
    except FileNotFoundError:
        return []
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputError(
            "cannot-read", Place(str(folder)), f"this folder cannot be looked through ({reason})",
            "type the name of a show file in it, with its ending",
        ) from error  # fmt: skip
    return [
        each
        for each in paths
        if each.suffix.lower() in SHOW_FILES
        and not each.name.startswith(".")
        and not is_given_folder(each)
    ]


def _show_called(folder: Path, name: str) -> Path | None:
    """The file for a show of that name, whichever its ending; None if there is none."""
    if not is_given_folder(folder):
        return None
    there = [each for each in _show_files(folder) if each.stem == name]
    if len(there) > 1:
        raise _several(folder, there, f"there are several shows of the name {name!r}")
    return there[0] if there else None


def _show_in(folder: Path) -> Path:
    """The show of a folder; where there is none, one of the folder's name that can be begun."""
    files = _show_files(folder)
    shows: list[Path] = []
    doubts: dict[Path, str] = {}
    for each in files:
        if isinstance(said := _is_show(each), str):
            doubts[each] = said
        elif said:
            shows.append(each)
    named = {each.stem for each in (*shows, *doubts)}
    # A version that was kept, `mine (before the rehearsal).yaml`, stands beside the show that it is one of.
    own = [each for each in shows if each.stem.partition(" (")[0] not in named - {each.stem}]
    if len(own) > 1:
        raise _several(folder, own, "there are several shows in this folder")
    if own:
        return own[0]
    new = folder / f"{folder.resolve().name or 'show'}{SHOW_FILES[0]}"
    if doubts and list(doubts) != [new]:
        told = [f"{each.name!r} ({why})" for each, why in doubts.items()]
        raise InputError(
            "unsure-show", Place(str(folder)), f"there may be a show in this folder already: {_listed(told)}",
            f"type {_commands(list(doubts))} to open {'it' if len(doubts) == 1 else 'one of them'}, or `sequencer open` and a new name to begin another",
        )  # fmt: skip
    return new


def _several(folder: Path, shows: Sequence[Path], what: str) -> InputError:
    told = _listed([repr(each.name) for each in shows])
    return InputError(
        "several-shows", Place(str(folder)), f"{what}: {told}", f"type {_commands(shows)}"
    )


def _listed(told: Sequence[str]) -> str:
    more = f" and {len(told) - _MOST_TOLD} more" if len(told) > _MOST_TOLD else ""
    return ", ".join(told[:_MOST_TOLD]) + more


def _commands(shows: Sequence[Path]) -> str:
    return " or ".join(f"`sequencer open {shell_path(each)}`" for each in shows[:_MOST_TOLD])


def _is_show(path: Path) -> bool | str:
    """Whether a file is a show; where nobody can tell, why not."""
    try:
        text = file_text(path)
        if _NAMES_ITS_SONG.search(text):
            return True
        if len(text) > _LONGEST_READ:
            return "too long to be looked through here"
        values = parse_document(text, str(path)).values
    except InputError as error:
        return "a link that leads nowhere" if error.code == "no-file" else error.what
    headings = set(values) if isinstance(values, dict) else set()
    if "track" in headings:
        return True
    half = sorted(headings & _ALSO_IN_SHOWS)
    return f"it has the heading {half[0]!r}, as shows do, but no 'track'" if half else False
