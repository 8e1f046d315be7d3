"""A show that is being changed: staged and checked again only where a change touches it.

Whoever plans makes a change and takes the findings as they become known; a newer change stops those that are under
way. Several threads may use one open show.
"""

import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

from sequencer.checks.dance.as_flown import CHECK as FLIGHTS
from sequencer.checks.outcome import Outcome
from sequencer.checks.suite import (
    by_motion,
    by_urgency,
    examined,
    flights_outcome,
    outcome_as_flown,
    reported,
)
from sequencer.findings import Finding, Report
from sequencer.planning.offers import OfferedMend, checked_with_mends, with_mends
from sequencer.planning.trying.restaging import restaged
from sequencer.progress import Progress, stop_if_unwanted, stoppable, within
from sequencer.show.editing import Change, Insertion
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.staged import Staged

Fly = Callable[[Staged, Progress], object]
MENDS = "mends"  # the name of the last step
_FLIGHT, _FLOWN = 0.5, 0.8  # of the progress: the show is flown, and all checks of that are done


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What one check says about a show."""

    check: str  # its name, or `MENDS`
    outcome: Outcome  # of this check alone; from `MENDS`, only findings that have mends now
    left: tuple[str, ...]  # names of the checks that have not given their last answer yet
    flown: bool = False  # whether it is about the motion as flown
    report: Report | None = None  # from `MENDS`: the whole report
    offered: tuple[OfferedMend, ...] = ()  # from `MENDS`: what mends change


class OpenShow:
    """A staged show that takes changes.

    A rules file or a log of burns that the show names is looked at again with the next change.

    Parameters
    ----------
    show : Staged
        Staged from a file.
    fly : callable, optional
        Flies a show, given its progress, so that `flown_show` finds everybody flown; that does it itself if left out.
    """

    def __init__(self, show: Staged, *, fly: Fly = flown_show) -> None:
        self._lock = threading.Lock()
        self._show = show
        self._fly = fly
        self._revision = 0

    def __repr__(self) -> str:
        return f"<OpenShow {self._show.show.title}, revision {self._revision}>"

    @property
    def show(self) -> Staged:
        """The show after all changes so far."""
        return self._show

    @property
    def revision(self) -> int:
        """How many changes have been made."""
        return self._revision

    def change(self, changes: Sequence[Change], insertions: Sequence[Insertion] = ()) -> Staged:
        """Change the show; answers about the show before stop.

        Parameters
        ----------
        changes : sequence of (path, value)
        insertions : sequence of (path, index, entry)

        Returns
        -------
        show : Staged
            The show after the change; the file itself is not written.

        Raises
        ------
        InputError
            If the change does not fit the rest of the show, which then stays as it was.
        ValueError
            If the show was not staged from a file, or a path does not exist.
        """
        with self._lock:
            self._revision += 1  # first, so that answers stop while the show is staged
            try:
                self._show = restaged(self._show, changes, insertions)
            except BaseException:
                self._revision -= 1
                raise
            return self._show

    def take(self, show: Staged) -> None:
        """Another staging of the show, as after a change of its file; answers about the show before stop.

        Parameters
        ----------
        show : Staged
        """
        with self._lock:
            self._revision += 1
            self._show = show

    def answers(
        self, *, flown: bool = True, mends: bool = True, progress: Progress | None = None
    ) -> Iterator[Answer]:
        """What the checks say about the show as it is now, as it becomes known.

        First comes what is known already, then joins and distances, then what can stop a show, quick checks before slow ones.
        Then the show is flown, and what is about the motion itself answers once more, distances first; last come the mends that
        were tried and work.

        Parameters
        ----------
        flown : bool
            Whether passive props are checked as they can be flown. Checks of the motion itself answer about it as drawn
            first, and stay among those that are left.
        mends : bool
            Whether to seek mends; without them there is no whole report either.
        progress : callable, optional
            Of what takes long: the flight, and the mends.

        Yields
        ------
        answer : Answer

        Raises
        ------
        Stopped
            Once the show is changed.
        InputError
            If the show's file of rules cannot be used.
        """
        with self._lock:
            show, revision = self._show, self._revision
        order = by_urgency(show)
        again = by_motion(order) if flown else ()
        flights = (*(check.name for check in again), FLIGHTS.name) if flown else ()
        last = (*flights, MENDS) if mends else flights
        for k, check in enumerate(order):
            with self._while_at(revision):
                outcome = check.outcome(show)
            first = tuple(other.name for other in order[k + 1 :] if other not in again)
            yield Answer(check=check.name, outcome=outcome, left=first + last)
        if flown:
            with self._while_at(revision):
                self._fly(show, _stopping(within(progress, 0.0, _FLIGHT)))
        for k, check in enumerate(again):
            with self._while_at(revision):
                outcome = outcome_as_flown(check, show)
            yield Answer(check=check.name, outcome=outcome, left=last[k + 1 :], flown=True)
        if flown:
            with self._while_at(revision):
                outcome = flights_outcome(show, _stopping(within(progress, _FLIGHT, _FLOWN)))
            yield Answer(check=FLIGHTS.name, outcome=outcome, left=last[len(flights) :], flown=True)
        if mends:
            with self._while_at(revision):
                answer = _mended(
                    show, flown=flown, progress=_stopping(within(progress, _FLOWN, 1.0))
                )
            yield answer

    def report(self, *, flown: bool = True) -> Report:
        """The whole report on the show as it is now, with mends.

        Parameters
        ----------
        flown : bool
            As for `answers`.

        Raises
        ------
        Stopped
            If the show is changed meanwhile.
        InputError
            If the show's file of rules cannot be used.
        """
        with self._lock:
            show, revision = self._show, self._revision
        with self._while_at(revision):
            return checked_with_mends(show, flown=flown)

    @contextmanager
    def _while_at(self, revision: int) -> Iterator[None]:
        """A context that ends with `Stopped` if the show is no longer at a revision."""
        with stoppable(lambda: self._revision != revision):
            stop_if_unwanted()
            yield
            stop_if_unwanted()


def _mended(show: Staged, *, flown: bool, progress: Progress | None) -> Answer:
    """What mends there are, and the whole report."""
    before, _ = examined(show, flown=flown)
    offered: list[OfferedMend] = []
    after = with_mends(show, before, flown=flown, offered=offered, progress=progress)
    return Answer(
        check=MENDS, outcome=Outcome(findings=_with_new_mends(before, after)), left=(), flown=flown,
        report=reported(show, after), offered=tuple(offered),
    )  # fmt: skip


def _with_new_mends(before: Outcome, after: Outcome) -> tuple[Finding, ...]:
    """Findings that have mends which they did not have before."""
    pairs = zip(before.findings, after.findings, strict=True)
    return tuple(new for old, new in pairs if new != old)


def _stopping(progress: Progress | None) -> Progress:
    """The progress, told where unwanted work stops."""

    def told(subject: str, share: float) -> None:
        stop_if_unwanted()
        if progress is not None:
            progress(subject, share)

    return told
