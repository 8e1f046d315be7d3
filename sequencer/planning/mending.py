"""A show file mended: the smallest change that helps, one after the other, each checked again."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from sequencer.checks.dance.joins import Meeting
from sequencer.checks.distances.spacing import Conflict
from sequencer.errors import InputError
from sequencer.planning.join_edits import edits_for, failing
from sequencer.planning.space_mends import MENDED, baseline, harm_of, mends_for, too_close
from sequencer.show.document import parse_document
from sequencer.show.editing import Change, Insertion, edited_text
from sequencer.show.reading import show_from_document
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.timing.song import Song

MOST_JOINS = 500
MOST_MOVES = 60
_LESS = 1e-6  # [beats] less under the requirement


@dataclass(frozen=True, slots=True, kw_only=True)
class Mended:
    """A show file after mending."""

    text: str
    done: tuple[str, ...]  # what was changed, in words
    left: tuple[str, ...]  # joins and pairs that no change has mended, in words


@dataclass(frozen=True, slots=True, kw_only=True)
class _Draft:
    """A show file as it stands between two changes."""

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
            return _draft(text, self.file, self.song)
        except InputError:
            return None


_Step = Callable[[_Draft], "tuple[_Draft, str] | None"]


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
    draft, done = _repeated(_draft(text, file, song), _join_mended, MOST_JOINS)
    left = dict.fromkeys(
        f"{joint.who}, {draft.show.position(joint.beat)}: {joint.before.title} into "
        f"{joint.after.title}, {joint.verdict.kind}"
        for joint in (meeting.judged() for meeting in failing(draft.show))
    )
    return Mended(text=draft.text, done=done, left=tuple(left))


def mended_spacing(text: str, file: str, song: Song) -> Mended:
    """A show file changed until no two performers come too close; comments stay.

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
    The closest conflict goes first, by its smallest mend of whatever kind. A change is kept only if, the
    whole show staged again from its text, less time is spent under the requirement, nobody comes closer to
    anyone or anything than before where that is too close, and no new finding stops the show.
    """
    draft, done = _repeated(_draft(text, file, song), _space_mended, MOST_MOVES)
    names = [dancer.name for dancer in draft.show.dancers]
    left = tuple(
        f"{names[one.first]} and {names[one.second]}, {draft.show.position(one.start)}: too close"
        for one in too_close(draft.show)
    )
    return Mended(text=draft.text, done=done, left=left)


def _repeated(draft: _Draft, step: _Step, most: int) -> tuple[_Draft, tuple[str, ...]]:
    """A draft after as many steps as help, and what each did."""
    done: list[str] = []
    while len(done) < most:
        helped = step(draft)
        if helped is None:
            break
        draft, words = helped
        done.append(words)
    return draft, tuple(done)


def _join_mended(draft: _Draft) -> tuple[_Draft, str] | None:
    """The first failing boundary that a change helps."""
    bad: list[Meeting] = failing(draft.show)
    for meeting in bad:
        for edit in edits_for(draft.show, meeting.judged()):
            after = draft.changed(edit.changes, edit.insertions)
            if after is not None and len(failing(after.show)) < len(bad):
                return after, edit.words
    return None


def _space_mended(draft: _Draft) -> tuple[_Draft, str] | None:
    """The closest conflict that a change mends; the farther ones wait until the closest are tried."""
    before = baseline(draft.show)
    for conflict in before.bad[:MENDED]:
        for edit, _ in mends_for(before, conflict).accepted:
            after = draft.changed(edit.changes, edit.insertions)
            if (
                after is not None
                and _time(too_close(after.show)) < _time(before.bad) - _LESS
                and not harm_of(before, after.show, trajectories=edit.of_trajectories)
            ):
                return after, edit.words
    return None


def _time(bad: Sequence[Conflict]) -> float:
    return sum(high - low for one in bad for low, high in one.spans)


def _draft(text: str, file: str, song: Song) -> _Draft:
    show = staged(show_from_document(parse_document(text, file)), song)
    return _Draft(text=text, file=file, song=song, show=show)
