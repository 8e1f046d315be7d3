"""How much is tried for mends of a show: whatever a show of ordinary size can need, and less the larger a show is.

Each change is tried on the whole show, which takes longer the more performers dance and the longer they do. So what is spent
on mends stays much the same, however large a show is and however many faults it has; the most urgent are mended first.
"""

import math
from dataclasses import dataclass

from sequencer.staging.staged import Staged

ORDINARY_SHOW = 8 * 4.0  # [performers · min] up to which as much is tried as is wanted
ORDINARY_TRIALS = 12 * 70  # whole shows staged for such a one at the most: of twelve causes each
LEAST_TRIALS = 12  # of a show of any size
CONFLICTS_UP_TO = (
    50 * 5.0
)  # [performers · min] up to which mends are sought for as many conflicts as are wanted


@dataclass(slots=True, kw_only=True)
class Allowance:
    """Whole shows that may still be staged to try changes on."""

    left: float = math.inf

    def take(self) -> None:
        """Note that one is staged."""
        self.left -= 1

    @property
    def used_up(self) -> bool:
        """Whether nothing more is to be begun."""
        return self.left <= 0


def show_size(show: Staged) -> float:
    """Performers times the minutes that they are on, which a trial takes time by [performers · min].

    Parameters
    ----------
    show : Staged
    """
    start, end = show.span
    return len(show.dancers) * (show.seconds(end) - show.seconds(start)) / 60


def allowance_for(show: Staged) -> Allowance:
    """What may be staged for mends of the dance, of walks and of burns.

    Parameters
    ----------
    show : Staged
    """
    size = show_size(show)
    if size <= ORDINARY_SHOW:
        return Allowance()
    return Allowance(left=max(LEAST_TRIALS, int(ORDINARY_TRIALS * ORDINARY_SHOW / size)))


def conflicts_to_mend(show: Staged, most: int) -> int:
    """For how many places where two come too close mends are sought, the closest first; one at least.

    Parameters
    ----------
    show : Staged
    most : int
        Of a show that is not large.
    """
    size = show_size(show)
    return most if size <= CONFLICTS_UP_TO else max(1, int(most * CONFLICTS_UP_TO / size))
