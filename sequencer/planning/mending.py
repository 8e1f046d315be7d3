"""Mends a show file: the smallest change that helps, one at a time, each checked again."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from sequencer.checks.distances.spacing import Conflict
from sequencer.findings import Finding
from sequencer.kept import recent
from sequencer.planning.edits.space_edits import SpaceEdit
from sequencer.planning.mends.dance_mends import Cause, causes
from sequencer.planning.mends.flown_dance_mends import MendSearch, causes_to_mend
from sequencer.planning.mends.flown_spacing import close_as_flown, spaced_as_flown
from sequencer.planning.mends.space_mends import (
    MENDED,
    baseline,
    smallest_mends,
    too_close,
)
from sequencer.planning.offers import in_order
from sequencer.planning.trying.trials import DanceEdit, mendable_faults
from sequencer.progress import Progress, stop_if_unwanted
from sequencer.show.editing import edited_in_turn
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.timing.song import Song
from sequencer.units import aloud

MOST_DANCED = 200
MOST_MOVES = 60
_LESS = 1e-6  # [beats] by which the time under the requirement must fall


@dataclass(frozen=True, slots=True, kw_only=True)
class Mended:
    """A show file after mending."""

    text: str
    done: tuple[str, ...]  # the changes made, in words
    left: tuple[str, ...]  # what no change mended, in words, with what was tried


Made = Callable[[Callable[[], Mended]], None]  # writing the text out takes as long as a trial


@dataclass(frozen=True, slots=True, kw_only=True)
class _Draft:
    """The show file between two changes."""

    before: str  # the file as it was
    show: Staged
    file: str = "the show file"  # its name, for messages
    steps: tuple[DanceEdit | SpaceEdit, ...] = ()  # the changes made since

    @property
    def text(self) -> str:
        """The file with all changes."""
        if not self.steps:
            return self.before
        steps = [(step.changes, step.insertions) for step in self.steps]
        return edited_in_turn(self.before, steps, file=self.file)

    def stepped(self, steps: Sequence[DanceEdit | SpaceEdit], after: Staged) -> "_Draft":
        """The file with some more changes, one after the other, and the show with them."""
        return replace(self, steps=(*self.steps, *steps), show=after)


_Step = Callable[[_Draft], "tuple[_Draft, str] | None"]
_Tell = Callable[[_Draft, tuple[str, ...]], None]  # of the changes made so far


def mended_dance(
    text: str,
    file: str,
    song: Song,
    *,
    most: int = MOST_DANCED,
    flown: bool = False,
    progress: Progress | None = None,
    made: Made | None = None,
) -> Mended:
    """Mend what stops or warns in the dance, the walks and the burns of a show file, as far as possible; comments stay.

    Parameters
    ----------
    text : str
        The show file as it stands.
    file : str
        Its name, for messages.
    song : Song
        The analysed song.
    most : int
        How many mends are made.
    flown : bool
        Whether the show is mended as flown: what cannot be flown as well, and every change is tried so.
    progress : callable, optional
    made : callable, optional
        Called after each mend with a function that gives the show file as it is then, so that nothing is lost if the rest is
        stopped.

    Returns
    -------
    mended : Mended

    Raises
    ------
    InputError
        If the show cannot be used as it stands.

    Notes
    -----
    The smallest change of a cause that clears it, with no fault that is new or worse, staged and checked from the file's
    text. Another pattern is offered by `check`, and never written.
    """
    draft = _draft(text, file, song)
    given_up: dict[tuple[object, ...], str] = {}
    since: dict[tuple[object, ...], int] = {}  # mends that were made when each was given up

    def give_up(cause: Cause, words: str) -> None:
        given_up[_key(cause)] = words
        since[_key(cause)] = len(done_so_far)
        tell(draft, tuple(done_so_far))

    def step(now: _Draft) -> tuple[_Draft, str] | None:
        nonlocal draft
        draft = now
        search = MendSearch(draft.show, flown=flown)
        while True:
            helped = _first_mend(draft, search, _waiting(draft.show, flown, given_up), give_up)
            # What was given up may be mended now that others are: those wait until nothing else is left.
            again = [key for key in given_up if since[key] < len(done_so_far)]
            if helped is not None or not again:
                return helped
            for key in again:
                del given_up[key]

    done_so_far: list[str] = []

    def left(show: Staged) -> int:
        return len(_waiting(show, flown, given_up))

    told = _teller("mending the dance", left, progress, made)

    def tell(draft: _Draft, done: tuple[str, ...]) -> None:
        done_so_far[:] = done
        told(draft, done)

    draft, done = _repeated(draft, step, most, tell)
    keys = {_key(cause) for cause in _waiting(draft.show, flown)}
    return Mended(
        text=draft.text, done=done, left=tuple(given_up[key] for key in given_up if key in keys)
    )


def _first_mend(
    draft: _Draft,
    search: MendSearch,
    waiting: Sequence[Cause],
    give_up: Callable[[Cause, str], None],
) -> tuple[_Draft, str] | None:
    """The draft after a mend of the first cause that has one, and its words; those before it are given up."""
    for cause in waiting:
        stop_if_unwanted()
        fault = cause.faults[0]
        where = (
            f"{named(cause.faults)}, {aloud(fault.position or '', draft.show.tempo.bar_lengths)}"
        )
        answer = search.of(cause, most=1, ranged=False)
        if answer.mends and not answer.mends[0].of_the_look:
            mend = answer.mends[0]
            return draft.stepped(mend.steps, mend.after), f"{where}: {mend.words}"
        if answer.mends:
            give_up(cause, f"{where}: {fault.code}; {answer.mends[0].words} would mend it")
        else:
            tried = ", ".join(answer.tried) or "nothing"
            give_up(cause, f"{where}: {fault.code}; tried {tried}")
    return None


def _waiting(
    show: Staged, flown: bool, given_up: Mapping[tuple[object, ...], str] | None = None
) -> list[Cause]:
    """The causes of a show's faults that are not given up, in the order in which they are mended."""
    every = causes_to_mend(show) if flown else causes(show, mendable_faults(show))
    found = in_order(every)
    return [cause for cause in found if _key(cause) not in (given_up or {})]


def _key(cause: Cause) -> tuple[object, ...]:
    fault = cause.faults[0]
    return fault.code, fault.who, fault.position


def named(faults: Sequence[Finding]) -> str:
    """Who has some faults, each once."""
    return " and ".join(dict.fromkeys(who for fault in faults for who in fault.who))


def mended_spacing(
    text: str,
    file: str,
    song: Song,
    *,
    most: int = MOST_MOVES,
    flown: bool = False,
    progress: Progress | None = None,
    made: Made | None = None,
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
    most : int
        How many mends are made.
    flown : bool
        Whether the show is mended as flown: what cannot be flown as well, and every change is tried so.
    progress : callable, optional
    made : callable, optional
        Called after each mend with a function that gives the show file as it is then, so that nothing is lost if the rest is
        stopped.

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
    to anyone or anything comes closer still, and no finding that stops or warns is new.
    """
    close = close_as_flown if flown else too_close
    step = _space_mended_as_flown if flown else _space_mended
    tell = _teller("mending distances", lambda show: len(close(show)), progress, made)
    draft, done = _repeated(_draft(text, file, song), step, most, tell)
    names = [dancer.name for dancer in draft.show.dancers]
    left = tuple(
        f"{names[one.first]} and {names[one.second]}, {draft.show.aloud(one.start)}: too close"
        for one in close(draft.show)
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
            made(lambda: Mended(text=draft.text, done=done, left=()))
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


def _space_mended(draft: _Draft) -> tuple[_Draft, str] | None:
    """The draft after a mend of the closest conflict that has one; farther ones wait their turn."""
    before = baseline(draft.show)
    for conflict in before.bad[:MENDED]:
        for edit, after in smallest_mends(before, conflict):
            stop_if_unwanted()
            if _time(too_close(after)) < _time(before.bad) - _LESS:
                return draft.stepped((edit,), after), edit.words
    return None


def _space_mended_as_flown(draft: _Draft) -> tuple[_Draft, str] | None:
    """The same of a show as flown."""
    bad = close_as_flown(draft.show)
    for conflict in bad[:MENDED]:
        for edit, after in spaced_as_flown(draft.show, conflict):
            stop_if_unwanted()
            if _time(close_as_flown(after)) < _time(bad) - _LESS:
                return draft.stepped((edit,), after), edit.words
    return None


def _time(bad: Sequence[Conflict]) -> float:
    return sum(high - low for one in bad for low, high in one.spans)


def _draft(text: str, file: str, song: Song) -> _Draft:
    def work() -> tuple[Song, Staged]:
        return song, staged(show_from_document(parse_document(text, file)), song)

    # Dance and distances are mended in turn: the song is held, so that no other can have its id.
    _, show = recent("mended draft", (text, file, id(song)), work, most=1)
    return _Draft(before=text, file=file, show=show)
