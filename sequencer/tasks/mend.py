"""What `check --mend` does: mend the show file in place, or leave it as it is."""

from pathlib import Path

from sequencer.files import AnyPath, write_text
from sequencer.planning.mending import Mended, mended_joins, mended_spacing
from sequencer.progress import Progress, within
from sequencer.show.document import parse_document
from sequencer.show.reading import show_from_document
from sequencer.tasks import shows


def mend_show(path: AnyPath, *, progress: Progress | None = None) -> Mended:
    """Mend joins and distances of a show file in place; it is written atomically, and only if it changed.

    Raises
    ------
    InputError
        If the show or its track cannot be used, or the file cannot be written.
    """
    path = Path(path)
    shows.stage_show(
        path, progress=within(progress, 0.0, 0.2)
    )  # rejects an unusable show, another cut included
    say = progress or (lambda _subject, _share: None)
    text = path.read_text(encoding="utf-8-sig")
    track = path.parent / show_from_document(parse_document(text, str(path))).show.track.file
    song = shows.hear_song(track)
    say("mending joins", 0.3)
    mended = mended_joins(text, str(path), song)
    say("mending distances", 0.6)
    spaced = mended_spacing(mended.text, str(path), song)
    mended = Mended(
        text=spaced.text, done=mended.done + spaced.done, left=mended.left + spaced.left
    )
    if mended.done:
        write_text(path, mended.text)
    return mended
