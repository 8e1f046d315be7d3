"""What `check --mend` does: the cheapest change that helps, one after the other, checked again."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from sequencer.checks.join_mends import edits_for, failing
from sequencer.checks.joins import Meeting
from sequencer.errors import InputError
from sequencer.files import write_text
from sequencer.show.document import parse_document
from sequencer.show.editing import edited_text
from sequencer.show.reading import show_from_document
from sequencer.show.staged import Staged
from sequencer.show.timeline import staged
from sequencer.tasks.spacing_mending import mended_spacing
from sequencer.timing.song import Song

MOST_CHANGES = 500
Progress = Callable[[str, float], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mended:
    """A show file after mending."""

    text: str
    done: tuple[str, ...]  # what was changed, in words
    left: tuple[str, ...]  # joins and pairs that no change has mended, in words


def mend_show(path: Path, *, progress: Progress | None = None) -> Mended:
    """Mend joins and distances of a show file in place; written whole or not at all, and only if it changed.

    Raises
    ------
    InputError
        If the show or its track cannot be used, or the file cannot be written.
    """
    from sequencer.tasks.shows import hear_song, stage_show

    stage_show(path, progress=progress)  # refuses a show that cannot be used, another cut included
    text = path.read_text(encoding="utf-8-sig")
    track = path.parent / show_from_document(parse_document(text, str(path))).show.track.file
    song = hear_song(track, progress=progress)
    mended = mended_joins(text, str(path), song)
    spaced = mended_spacing(mended.text, str(path), song)
    mended = Mended(
        text=spaced.text, done=mended.done + spaced.done, left=mended.left + spaced.left
    )
    if mended.done:
        write_text(path, mended.text)
    return mended


def mended_joins(text: str, file: str, song: Song) -> Mended:
    """A show file whose joins are mended as far as can be; comments stay.

    Parameters
    ----------
    text : str
        The show file as it stands.
    file : str
        Its name, for messages.
    song : Song
        What was heard.

    Returns
    -------
    mended : Mended

    Raises
    ------
    InputError
        If the show cannot be used as it stands.

    Notes
    -----
    A change is kept only if, the whole show staged again, fewer boundaries fail than before.
    """
    done: list[str] = []
    show = _staged(text, file, song)
    bad = failing(show)
    while bad and len(done) < MOST_CHANGES:
        step = _helped(text, file, song, show, bad)
        if step is None:
            break
        text, words, show, bad = step
        done.append(words)
    left = dict.fromkeys(
        f"{joint.who}, {show.position(joint.beat)}: {joint.before.title} into {joint.after.title}, "
        f"{joint.verdict.kind}"
        for joint in (meeting.judged() for meeting in bad)
    )
    return Mended(text=text, done=tuple(done), left=tuple(left))


def _helped(
    text: str, file: str, song: Song, show: Staged, bad: list[Meeting]
) -> tuple[str, str, Staged, list[Meeting]] | None:
    """The first failing boundary that a change helps: the new text, what was done, and what is left."""
    for meeting in bad:
        for edit in edits_for(show, meeting.judged()):
            changed = edited_text(text, list(edit.changes), edit.insertions)
            try:
                after = _staged(changed, file, song)
            except InputError:
                continue  # the change does not fit the rest of the show
            left = failing(after)
            if len(left) < len(bad):
                return changed, edit.words, after, left
    return None


def _staged(text: str, file: str, song: Song) -> Staged:
    return staged(show_from_document(parse_document(text, file)), song)
