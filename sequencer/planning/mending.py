"""Mends a show file: the smallest change that helps, one at a time, each checked again."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from sequencer.checks.dance.joins import Meeting
from sequencer.checks.distances.spacing import Conflict
from sequencer.errors import InputError
from sequencer.planning.join_edits import edits_for, failing
from sequencer.planning.space_mends import (
    MENDED,
    baseline,
    does_harm,
    smallest_mends,
    too_close,
)
from sequencer.progress import Progress
from sequencer.show.document import parse_document
from sequencer.show.editing import Change, Insertion, edited_text
from sequencer.show.reading import show_from_document
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.timing.song import Song

MOST_JOINS = 500
MOST_MOVES = 60
_LESS = 1e-6  # [beats] by which the time under the requirement must fall


@dataclass(frozen=True, slots=True, kw_only=True)
class Mended:
    """A show file after mending."""

    text: str
    done: tuple[str, ...]  # the changes made, in words
    left: tuple[str, ...]  # joins and pairs that no change mended, in words


Made = Callable[[Mended], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Draft:
    """The show file between two changes."""

    text: str
    file: str
    song: Song
    show: Staged

    def changed(
        self, changes: Sequence[Change], insertions: Sequence[Insertion]
    ) -> "_Draft | None":
        """The file with changes; None if they do not fit the rest of the show."""
        text = edited_text(self.text, list(changes), insertions)
        try:
            return _draft(text, self.file, self.song, before=self.show)
        except InputError:
            return None


_Step = Callable[[_Draft], "tuple[_Draft, str] | None"]
_Tell = Callable[[_Draft, tuple[str, ...]], None]  # of the changes made so far


def mended_joins(
    text: str, file: str, song: Song, *, progress: Progress | None = None, made: Made | None = None
) -> Mended:
    """Mend the joins of a show file as far as possible; comments stay.

    Parameters
    ----------
    text : str
        The show file as it stands.
    file : str
        Its name, for messages.
    song : Song
        The analysed song.
    progress : callable, optional
    made : callable, optional
        Called after each mend with the show file as it is then, so that nothing is lost if the rest is stopped.

    Returns
    -------
    mended : Mended

    Raises
    ------
    InputError
        If the show cannot be used as it stands.

    Notes
    -----
    A change is kept only if fewer boundaries fail once the whole show is staged again.
    """
    tell = _teller("mending joins", lambda show: len(failing(show)), progress, made)
    draft, done = _repeated(_draft(text, file, song), _join_mended, MOST_JOINS, tell)
    left = dict.fromkeys(
        f"{joint.who}, {draft.show.position(joint.beat)}: {joint.before.title} into "
        f"{joint.after.title}, {joint.verdict.kind}"
        for joint in (meeting.judged() for meeting in failing(draft.show))
    )
    return Mended(text=draft.text, done=done, left=tuple(left))


def mended_spacing(
    text: str, file: str, song: Song, *, progress: Progress | None = None, made: Made | None = None
) -> Mended:
    """Change a show file until no two performers come too close; comments stay.

    Parameters
    ----------
    text : str
        The show file as it stands.
    file : str
        Its name, for messages.
    song : Song
        The analysed song.
    progress : callable, optional
    made : callable, optional
        Called after each mend with the show file as it is then, so that nothing is lost if the rest is stopped.

    Returns
    -------
    mended : Mended

    Raises
    ------
    InputError
        If the show cannot be used as it stands.

    Notes
    -----
    The closest conflict goes first, with its smallest mend of any kind. The whole show is staged again from
    its text, and the change is kept only if less time is spent under the requirement, nobody who is too close
    to anyone or anything comes closer still, and there is no new `stop` finding.
    """
    tell = _teller("mending distances", lambda show: len(too_close(show)), progress, made)
    draft, done = _repeated(_draft(text, file, song), _space_mended, MOST_MOVES, tell)
    names = [dancer.name for dancer in draft.show.dancers]
    left = tuple(
        f"{names[one.first]} and {names[one.second]}, {draft.show.position(one.start)}: too close"
        for one in too_close(draft.show)
    )
    return Mended(text=draft.text, done=done, left=left)


def _teller(
    subject: str, left: Callable[[Staged], int], progress: Progress | None, made: Made | None
) -> _Tell:
    """Tells how far the mending of some faults is, before each step."""
    most = 1

    def tell(draft: _Draft, done: tuple[str, ...]) -> None:
        nonlocal most
        if made is not None and done:
            made(Mended(text=draft.text, done=done, left=()))
        if progress is not None:
            now = left(draft.show)
            most = max(most, now)
            progress(f"{subject}: {len(done)} mended, {now} left", 1.0 - now / most)

    return tell


def _repeated(draft: _Draft, step: _Step, most: int, tell: _Tell) -> tuple[_Draft, tuple[str, ...]]:
    """The draft after every step that helps, and the change that each made."""
    done: list[str] = []
    tell(draft, ())
    while len(done) < most:
        helped = step(draft)
        if helped is None:
            break
        draft, words = helped
        done.append(words)
        tell(draft, tuple(done))
    return draft, tuple(done)


def _join_mended(draft: _Draft) -> tuple[_Draft, str] | None:
    """The draft after a mend of the first failing boundary that has one."""
    bad: list[Meeting] = failing(draft.show)
    for meeting in bad:
        for edit in edits_for(draft.show, meeting.judged()):
            after = draft.changed(edit.changes, edit.insertions)
            if after is not None and len(failing(after.show)) < len(bad):
                return after, edit.words
    return None


def _space_mended(draft: _Draft) -> tuple[_Draft, str] | None:
    """The draft after a mend of the closest conflict that has one; farther ones wait their turn."""
    before = baseline(draft.show)
    for conflict in before.bad[:MENDED]:
        for edit, _ in smallest_mends(before, conflict):
            after = draft.changed(edit.changes, edit.insertions)
            if (
                after is not None
                and _time(too_close(after.show)) < _time(before.bad) - _LESS
                and not does_harm(before, after.show, trajectories=edit.of_trajectories)
            ):
                return after, edit.words
    return None


def _time(bad: Sequence[Conflict]) -> float:
    return sum(high - low for one in bad for low, high in one.spans)


def _draft(text: str, file: str, song: Song, *, before: Staged | None = None) -> _Draft:
    show = staged(show_from_document(parse_document(text, file)), song, before=before)
    return _Draft(text=text, file=file, song=song, show=show)
