"""Performers of a drafted show flown one after another: where one's part cannot be flown, the others' need not be looked at.

All dance the same moves, so what strains one hand forbids the move for all. The whole, with everybody's parts and how near they come,
takes so many times longer.
"""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace

from sequencer.checks.dance.flown_in_place import first_touch, strained
from sequencer.checks.dance.unflown_links import unflown_links
from sequencer.findings import Finding
from sequencer.staging.staged import Staged

_MOST_AT_FAULT = 2  # performers: what two cannot fly most others cannot either

CanMend = Callable[[Sequence[Finding]], bool]


class FlownInTurn:
    """What of each performer's part cannot be flown, looked at until something is found; what comes of it the checks of the whole know.

    Parameters
    ----------
    base : Staged
        The show without the routine: what is found in it is no fault of the routine's.
    """

    def __init__(self, base: Staged) -> None:
        self._base = base
        self._at_fault = Counter[str]()

    def faults(self, show: Staged, counts: CanMend) -> list[Finding]:
        """What cannot be flown of the first performer of whom anything cannot: links first, then what strains a hand in its place, then touches.

        Parameters
        ----------
        show : Staged
            With the routine.
        counts : callable
            Whether anything can be done about some findings; what nothing can be done about is left to the check of the whole.

        Returns
        -------
        faults : list of Finding
            Of the first performers of whom anything cannot, the first kind of each; none if everybody's part flies.
        """
        faults: list[Finding] = []
        at_fault = 0
        names = [each.name for each in show.dancers]
        for name in sorted(names, key=lambda name: -self._at_fault[name]):
            for told in (unflown_links, strained, first_touch):
                own = {_place(each) for each in told(_alone(self._base, name))}
                found = [each for each in told(_alone(show, name)) if _place(each) not in own]
                if found and counts(found):
                    self._at_fault[name] += 1
                    faults += found
                    at_fault += 1
                    break
            if at_fault == _MOST_AT_FAULT:
                break
        return faults


def _alone(show: Staged, name: str) -> Staged:
    """The show with one performer's dance only."""
    return replace(show, dancers=tuple(each for each in show.dancers if each.name == name))


def _place(finding: Finding) -> tuple[str, str | None]:
    return finding.code, finding.position
