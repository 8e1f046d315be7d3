"""Files that a show names: none may lie where the person at this machine has not allowed it."""

import os
from collections.abc import Iterator
from pathlib import Path, PureWindowsPath

from sequencer.allowed_places import is_allowed
from sequencer.digests import sha256_of_file
from sequencer.errors import InputError
from sequencer.given_files import is_given_file
from sequencer.shell_words import shell_path
from sequencer.show.model import Show
from sequencer.show.text.document import Document
from sequencer.show.text.plain_values import ValuePath

_NAMED: tuple[ValuePath, ...] = (
    ("track", "file"),
    ("track", "corrections", "beats"),
    ("pattern_files",),
    ("rules", "file"),
    ("fire", "burns"),
    ("type_file",),
)


def files_of(show: object) -> Iterator[tuple[ValuePath, str]]:
    """Every file that a show names, and where it says so.

    Parameters
    ----------
    show : Show, or plain values
        What a file says may also be no show.
    """
    for path in _NAMED:
        named = show
        for key in path:
            named = named.get(key) if isinstance(named, dict) else getattr(named, str(key), None)
        if isinstance(named, str):
            yield path, named
        elif isinstance(named, list | tuple):
            yield from (((*path, k), each) for k, each in enumerate(named) if isinstance(each, str))


def outside_files(document: Document, show: Show) -> list[InputError]:
    """Why files that a show names may not be read; a text that lies in no folder is its writer's."""
    file = Path(document.file)
    if not (file.is_absolute() or is_given_file(file)):
        return []
    found = (outside_file(document, *each, sha256=_known(show, each[0])) for each in files_of(show))
    return [each for each in found if each is not None]


def outside_file(
    document: Document, path: ValuePath, name: str, *, sha256: str | None = None
) -> InputError | None:
    """Why a file that is named there may not be read; None if it may, or if its content is known by its hash already."""
    folder = Path(document.file).parent
    try:
        # to ask what a name leads to on another machine would already speak with it
        elsewhere = PureWindowsPath(name).drive.startswith(("\\\\", "//"))
        if not elsewhere and is_allowed(folder / name, folder):
            return None
        if not elsewhere and _has(folder / name, sha256):
            return None
    except (OSError, ValueError):  # no file can have that name: it is refused once it is opened
        return None
    return InputError(
        "outside-folder", document.place(*path), f"{name!r} lies outside the folder of this file",
        f"put it below that folder, or, if you trust this file, add --allow {shell_path(os.path.normpath(folder / Path(name).parent))}",
        "a show from elsewhere must not read what is on your machine",
    )  # fmt: skip


def _known(show: Show, path: ValuePath) -> str | None:
    return show.track.sha256 if path == ("track", "file") else None


def _has(path: Path, sha256: str | None) -> bool:
    if sha256 is None or not is_given_file(path):
        return False
    return sha256_of_file(path) == sha256
