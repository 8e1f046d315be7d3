"""What `draft` does: a routine is drafted into a show file, or only shown."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.errors import InputError, Place
from sequencer.files import AnyPath
from sequencer.progress import Progress, within
from sequencer.show.text.file_text import DiskText, disk_text, write_disk_text
from sequencer.tasks import songs

if TYPE_CHECKING:
    from sequencer.planning.drafting.drafted_routine import Draft

_HEARD = 0.1  # of the progress


def draft_show(
    path: AnyPath,
    *,
    section: str | None = None,
    another: bool = False,
    seed: int = 0,
    write: bool = True,
    progress: Progress | None = None,
) -> "Draft":
    """Draft a routine into a show file: its gaps are filled, and what was drafted before is drafted anew.

    Parameters
    ----------
    path : path
    section : str, optional
        Only this section of the song.
    another : bool
        The next best routine that differs from the one in the file in at least a third of its material.
    seed : int
        The same seed gives the same routine; another one breaks ties in another way.
    write : bool
        Whether the file is written; it is replaced at once, or stays as it was.
    progress : callable, optional

    Returns
    -------
    draft : Draft
        With the text of the file, what it costs, and the proven bound.

    Raises
    ------
    InputError
        If the show or its track cannot be used, nothing can be drafted, or the file cannot be written.
    DraftingStopped
        If it is interrupted once there is a routine; that is in the file, unchecked, if it is to be written and no routine
        was drafted there before.
    """
    from sequencer.planning.drafting.drafted_routine import DraftingStopped

    path = Path(path)
    before = disk_text(path)
    text = before.text
    try:
        draft = draft_text(
            text, path, section=section, another=another, seed=seed, progress=progress
        )
    except DraftingStopped as stop:
        stop.written = write and not stop.over_another
        if stop.written:  # else a routine that was checked stays
            _write(path, before, stop.draft.text)
        raise
    if write:
        _write(path, before, draft.text)
    return draft


def draft_text(
    text: str,
    path: AnyPath,
    *,
    section: str | None = None,
    span: tuple[str, str] | None = None,
    another: bool = False,
    seed: int = 0,
    progress: Progress | None = None,
) -> "Draft":
    """Draft a routine into the text of a show, which its file need not say yet; nothing is written.

    Parameters
    ----------
    text : str
    path : path
        Of the show file: its name is told in messages, and its track lies beside it.
    section : str, optional
        Only this section of the song.
    span : (str, str), optional
        Only from one moment to another, as the file writes moments.
    another, seed, progress
        As for `draft_show`.

    Raises
    ------
    InputError
        If the show or its track cannot be used, or nothing can be drafted.
    DraftingStopped
        If it is interrupted once there is a routine; it was not checked.
    """
    from sequencer.planning.drafting.draft_search import drafted_show
    from sequencer.planning.drafting.drafted_routine import DraftRequest
    from sequencer.show.reading import show_from_document
    from sequencer.show.text.document import parse_document

    read = show_from_document(parse_document(text.removeprefix("\ufeff"), str(path)))
    song = songs.song_of(read, progress=within(progress, 0.0, _HEARD))
    asked = DraftRequest(section=section, span=span, another=another, seed=seed)
    return drafted_show(text, str(path), song, asked, progress=within(progress, _HEARD, 1.0))


def _write(path: Path, before: DiskText, after: str) -> None:
    """Replace the file, if it still is what was read."""
    if disk_text(path) != before:
        raise InputError(
            "changed-meanwhile", Place(str(path)), "the file was changed while the routine was drafted",
            "nothing was written: give the command again",
        )  # fmt: skip
    if after != before.text:
        write_disk_text(path, replace(before, text=after))


def draft_words(draft: "Draft", *, why: bool = False) -> str:
    """A drafted routine as text for people: what it holds, what it costs and how good it is."""
    from sequencer.planning.drafting.why import summary

    return summary(draft, why=why)
