"""A show that is being changed: staged and checked again only where a change touches it.

Whoever plans makes a change and takes the findings as they become known; a newer change stops those that are under
way. Several threads may use one open show.
"""

import threading
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.checks.registry import checks
from sequencer.checks.suite import by_urgency
from sequencer.findings import Finding, Report
from sequencer.planning.offers import checked_with_mends, with_mends
from sequencer.planning.restaging import restaged
from sequencer.progress import stop_if_unwanted, stoppable
from sequencer.show.editing import Change, Insertion
from sequencer.staging.staged import Staged

MENDS = "mends"  # the name of the last step


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What one check says about a show."""

    check: str  # its name, or `MENDS`
    outcome: Outcome  # of this check alone; from `MENDS`, only findings that have mends now
    left: tuple[str, ...]  # names of the checks that have not answered yet


class OpenShow:
    """A staged show that takes changes.

    A rules file or a log of burns that the show names is looked at again with the next change.

    Parameters
    ----------
    show : Staged
        Staged from a file.
    """

    def __init__(self, show: Staged) -> None:
        self._lock = threading.Lock()
        self._show = show
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

    def answers(self, *, mends: bool = True) -> Iterator[Answer]:
        """What the checks say about the show as it is now, as it becomes known.

        First comes what is known already, then what can stop a show, quick checks before slow ones, and last the
        mends that were tried and work.

        Parameters
        ----------
        mends : bool
            Whether to seek mends.

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
        last = (MENDS,) if mends else ()
        outcomes: dict[Check, Outcome] = {}
        for k, check in enumerate(order):
            with self._while_at(revision):
                outcomes[check] = check.outcome(show)
            left = tuple(other.name for other in order[k + 1 :])
            yield Answer(check=check.name, outcome=outcomes[check], left=left + last)
        if mends:
            whole = sum((outcomes[check] for check in checks() if check in outcomes), Outcome())
            with self._while_at(revision):
                mended = _with_new_mends(whole, with_mends(show, whole))
            yield Answer(check=MENDS, outcome=Outcome(findings=mended), left=())

    def report(self) -> Report:
        """The whole report on the show as it is now, with mends.

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
            return checked_with_mends(show)

    @contextmanager
    def _while_at(self, revision: int) -> Iterator[None]:
        """A context that ends with `Stopped` if the show is no longer at a revision."""
        with stoppable(lambda: self._revision != revision):
            stop_if_unwanted()
            yield
            stop_if_unwanted()


def _with_new_mends(before: Outcome, after: Outcome) -> tuple[Finding, ...]:
    """Findings that have mends which they did not have before."""
    pairs = zip(before.findings, after.findings, strict=True)
    return tuple(new for old, new in pairs if new != old)
