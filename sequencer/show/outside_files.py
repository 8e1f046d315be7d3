"""Files that a show names: none may lie where the person at this machine has not allowed it."""

from collections.abc import Iterator
from pathlib import Path

from sequencer.allowed_places import is_allowed
from sequencer.errors import InputError
from sequencer.show.document import Document
from sequencer.show.model import Show
from sequencer.show.plain_values import ValuePath


def files_of(show: Show) -> Iterator[tuple[ValuePath, str]]:
    """Every file that a show names, and where it says so."""
    yield ("track", "file"), show.track.file
    if show.track.corrections.beats is not None:
        yield ("track", "corrections", "beats"), show.track.corrections.beats
    for k, name in enumerate(show.pattern_files):
        yield ("pattern_files", k), name
    for k, name in enumerate(show.rules.file):
        yield ("rules", "file", k), name
    if show.fire is not None and show.fire.burns is not None:
        yield ("fire", "burns"), show.fire.burns
    if show.type_file is not None:
        yield ("type_file",), show.type_file


def outside_file(document: Document, path: ValuePath, name: str) -> InputError | None:
    """Why a file that is named there may not be read; None if it may."""
    folder = Path(document.file).parent
    try:
        if is_allowed(folder / name, folder):
            return None
    except (OSError, ValueError):  # no file can have that name: it is refused once it is opened
        return None
    return InputError(
        "outside-folder", document.place(*path), f"{name!r} lies outside the folder of this file",
        f"put it below that folder, or, if you trust this file, add --allow {_quoted(str(Path(name).parent))}",
        "a show from elsewhere must not read what is on your machine",
    )  # fmt: skip


def _quoted(words: str) -> str:
    return f"'{words}'" if any(each.isspace() for each in words) else words
