"""Mends of who comes too close as flown, for the mending of a show file: what `check` offers first, else what keeps them apart as drawn.

A pair that is too close only with the margin of the drawing is left alone.
"""

from collections.abc import Iterator
from itertools import islice

from sequencer.checks.distances.spacing import Conflict
from sequencer.planning.edits.space_edits import SpaceEdit
from sequencer.planning.mends.flown_mends import mends_as_flown
from sequencer.planning.mends.space_mends import baseline, smallest_mends, too_close
from sequencer.planning.trying.flown_trials import FlownTrials
from sequencer.progress import stop_if_unwanted
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.staged import Staged

_AS_DRAWN = 3  # mends as drawn that are tried as flown for a conflict


def close_as_flown(show: Staged) -> tuple[Conflict, ...]:
    """Who comes too close as flown, closest first.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    return too_close(flown_show(show).staged)


def spaced_as_flown(show: Staged, conflict: Conflict) -> Iterator[tuple[SpaceEdit, Staged]]:
    """Changes that mend a conflict of a show as flown, with the show after each: in a captain's order, then others.

    Parameters
    ----------
    show : Staged
        As drawn, staged from a file.
    conflict : Conflict
        Of it as flown.

    Notes
    -----
    First changes of where people stand and walk, tried as flown. Where there are none, those that keep the pair apart as
    drawn, a change of the dance among them, if nothing is new or worse as flown.
    """
    before = baseline(show)
    none = True
    for edit, after in mends_as_flown(before, close_as_flown(show), conflict):
        none = False
        yield edit, after
    if not none:
        return
    trials = FlownTrials(show=show)
    for edit, after in islice(smallest_mends(before, conflict), _AS_DRAWN):
        stop_if_unwanted()
        if not any(_there(conflict, one) for one in close_as_flown(after)) and not trials.harm(
            after
        ):
            yield edit, after


def _there(conflict: Conflict, now: Conflict) -> bool:
    """Whether a conflict of the changed show is the one to be mended, still there."""
    same = (now.first, now.second) == (conflict.first, conflict.second)
    return same and now.start < conflict.end and now.end > conflict.start
