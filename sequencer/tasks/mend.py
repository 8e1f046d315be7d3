"""What `check --mend` does: mend the show file in place, or leave it as it is."""

import os
from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from functools import partial
from pathlib import Path

from sequencer import kept
from sequencer.errors import InputError, Place
from sequencer.files import AnyPath, not_interrupted
from sequencer.planning.mending import Mended, mended_dance, mended_spacing
from sequencer.progress import Progress, within
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.show.text.file_text import DiskText, disk_text, write_disk_text
from sequencer.tasks import shows, songs


class MendingStopped(KeyboardInterrupt):
    """Mending was interrupted; what it had mended by then is in the file."""

    def __init__(self, mended: Mended) -> None:
        super().__init__()
        self.mended = mended


def mend_show(
    path: AnyPath, *, one: bool = False, flown: bool = True, progress: Progress | None = None
) -> Mended:
    """Mend dance, walks, burns and distances of a show file in place; it is written atomically, and only if it changed.

    Parameters
    ----------
    path : path
    one : bool
        Whether to stop after the first mend.
    flown : bool
        Whether the show is mended as it can be flown, or as it is drawn.
    progress : callable, optional

    Raises
    ------
    InputError
        If the show or its track cannot be used, the file cannot be written, or it was changed meanwhile: then nothing
        is written.
    MendingStopped
        If it is interrupted after the first mend; each mend made by then was tried on the whole show, and is
        written.
    """
    with kept.shelf(os.fspath(path)):  # what the check found, and finds again after the mends
        return _mended_show(Path(path), one=one, flown=flown, progress=progress)


def _mended_show(path: Path, *, one: bool, flown: bool, progress: Progress | None) -> Mended:
    shows.stage_show(
        path, progress=within(progress, 0.0, 0.2)
    )  # rejects an unusable show, another cut included
    before = disk_text(path)
    text = before.text
    read = show_from_document(parse_document(text, str(path)))
    if read.show is not read.written:
        raise read.fault(
            "not-everybody", ("tonight",), "a mend changes the show for everybody, and not everybody is there tonight",
            "take `tonight` out of the file while you mend",
        )  # fmt: skip
    track = path.parent / read.show.track.file
    song = songs.hear_song(track)
    latest: Callable[[], Mended] = partial(Mended, text=text, done=(), left=())
    danced: tuple[str, ...] = ()

    def made(now: Callable[[], Mended]) -> None:
        nonlocal latest
        latest = partial(_after, danced, now)

    try:
        dance = mended_dance(
            text, str(path), song, flown=flown, **({"most": 1} if one else {}),
            progress=within(progress, 0.2, 0.6), made=made,
        )  # fmt: skip
        danced = dance.done
        spaced = Mended(text=dance.text, done=(), left=())
        if not (one and danced):
            spaced = mended_spacing(
                dance.text, str(path), song, flown=flown, **({"most": 1} if one else {}),
                progress=within(progress, 0.6, 1.0), made=made,
            )  # fmt: skip
        mended = Mended(text=spaced.text, done=danced + spaced.done, left=dance.left + spaced.left)
        latest = partial(_after, (), lambda: mended)
        if mended.done:
            _write(path, before, mended.text)
    except KeyboardInterrupt:
        saved = Mended(text=text, done=(), left=())
        with (
            suppress(KeyboardInterrupt),
            not_interrupted(),
        ):  # pressed again, it would lose all mends
            saved = latest()
            if saved.done:
                _write(path, before, saved.text)  # once more, if it was this that was interrupted
        if not saved.done:
            raise
        raise MendingStopped(saved) from None
    return mended


def _after(danced: tuple[str, ...], now: Callable[[], Mended]) -> Mended:
    """The show file after some mends of the distances, or of the dance, and those of the dance before them."""
    mended = now()
    return replace(mended, done=danced + mended.done)


def _write(path: Path, before: DiskText, text: str) -> None:
    """Write the mended file, unless somebody has saved another one meanwhile."""
    now = disk_text(path)
    if now not in {before, replace(before, text=text)}:
        raise InputError(
            "changed-meanwhile",
            Place(str(path)),
            "the show file was changed while it was being mended, so no mend was written and your change is kept",
            "ask for --mend again",
        )
    write_disk_text(path, replace(before, text=text))
