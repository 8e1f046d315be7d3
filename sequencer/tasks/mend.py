"""What `check --mend` does: mend the show file in place, or leave it as it is."""

from pathlib import Path

from sequencer.files import AnyPath, write_text
from sequencer.planning.mending import Mended, mended_joins, mended_spacing
from sequencer.progress import Progress, within
from sequencer.show.document import parse_document
from sequencer.show.reading import show_from_document
from sequencer.tasks import shows


class MendingStopped(KeyboardInterrupt):
    """Mending was interrupted; what it had mended by then is in the file."""

    def __init__(self, mended: Mended) -> None:
        super().__init__()
        self.mended = mended


def mend_show(path: AnyPath, *, progress: Progress | None = None) -> Mended:
    """Mend joins and distances of a show file in place; it is written atomically, and only if it changed.

    Raises
    ------
    InputError
        If the show or its track cannot be used, or the file cannot be written.
    MendingStopped
        If it is interrupted after the first mend; each mend made by then was tried on the whole show, and is
        written.
    """
    path = Path(path)
    shows.stage_show(
        path, progress=within(progress, 0.0, 0.2)
    )  # rejects an unusable show, another cut included
    text = path.read_text(encoding="utf-8-sig")
    track = path.parent / show_from_document(parse_document(text, str(path))).show.track.file
    song = shows.hear_song(track)
    mended = Mended(text=text, done=(), left=())
    joins: tuple[str, ...] = ()

    def made(now: Mended) -> None:
        nonlocal mended
        mended = Mended(text=now.text, done=joins + now.done, left=())

    try:
        joined = mended_joins(text, str(path), song, progress=within(progress, 0.2, 0.4), made=made)
        joins = joined.done
        spaced = mended_spacing(
            joined.text, str(path), song, progress=within(progress, 0.4, 1.0), made=made
        )
        mended = Mended(text=spaced.text, done=joins + spaced.done, left=joined.left + spaced.left)
        if mended.done:
            write_text(path, mended.text)
    except KeyboardInterrupt:
        if not mended.done:
            raise
        write_text(path, mended.text)  # once more, if it was this that was interrupted
        raise MendingStopped(mended) from None
    return mended
