"""Mends for two performers who come too close as flown, each tried on the whole show as flown before it is offered.

Only changes of where people stand and walk are tried: with what is danced, everything would have to be flown anew for each
trial. A first look moves the flown performers as they are; what is offered has been staged, flown and searched.
"""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from sequencer.checks.dance.flown_in_place import Touch, touches
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.checks.distances.spacing import Conflict
from sequencer.checks.outcome import BeatClock
from sequencer.errors import InputError
from sequencer.motion.clearance.nearest import closest, closest_at
from sequencer.motion.flown.flown_motion import LEAST_PULL
from sequencer.planning.edits.space_edits import SpaceEdit
from sequencer.planning.mends.space_mends import (
    MENDED,
    Baseline,
    baseline,
    edits_by_kind,
    floor_harms,
    too_close,
    unlike,
)
from sequencer.planning.trying.restaging import restaged, restaged_dancers
from sequencer.planning.trying.trial_limits import conflicts_to_mend
from sequencer.progress import Progress, stop_if_unwanted
from sequencer.show.model import Limits
from sequencer.staging.carrying import carry_results
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.in_flight.flown_strains import Strain, strains
from sequencer.staging.results import once_per_show
from sequencer.staging.staged import Staged

_MOST_LOOKS = 24  # approaches of a conflict at whose middle a moved pair is looked at first
_MOST_FLOWN = 6  # changes of one kind that are staged and flown for a conflict
_WORSE = 0.01  # by which a strain or a touch may be worse and count as the same
_NOTHING = (
    "no single change of place, path or formation was found that keeps them apart as flown without harm elsewhere: give them "
    "more room, or change who is there when"
)

Pair = tuple[tuple[str, ...], str | None]  # two performers, and where they come too close
_Words = dict[Pair, tuple[str, ...]]


def words_as_flown(
    show: Staged,
    progress: Progress | None = None,
    edits: dict[Pair, tuple[SpaceEdit, ...]] | None = None,
) -> _Words:
    """Mends of each conflict of a show as flown in words, by the two performers and its start (bar.beat).

    Parameters
    ----------
    show : Staged
        As drawn, staged from a file.
    progress : callable, optional
    edits : dict, optional
        Is given the changes themselves, in the order of their words.
    """
    bad = too_close(flown_show(show).staged)
    before = baseline(show)
    most = conflicts_to_mend(show, MENDED)
    words: _Words = {}
    for k, conflict in enumerate(bad):
        if progress is not None:
            progress("seeking mends as flown", k / len(bad))
        who = (show.dancers[conflict.first].name, show.dancers[conflict.second].name)
        key = (who, BeatClock(show.tempo).position(conflict.start))
        if k >= most:
            words[key] = ("mend the closer conflicts first, then check again",)
            continue
        found = tuple(edit for edit, _ in mends_as_flown(before, bad, conflict))
        words[key] = tuple(edit.words for edit in found) or (_NOTHING,)
        if edits is not None:
            edits[key] = found
    return words


def mends_as_flown(
    before: Baseline, bad: tuple[Conflict, ...], conflict: Conflict
) -> Iterator[tuple[SpaceEdit, Staged]]:
    """The smallest change of each kind that mends a conflict of a show as flown, with the show after it.

    Parameters
    ----------
    before : Baseline
        Of the show as drawn.
    bad : tuple of Conflict
        All conflicts of it as flown.
    conflict : Conflict
        One of them.
    """
    show = before.show
    required = required_distances(show).performers
    seen = flown_show(show).staged
    for edits in edits_by_kind(seen, conflict, span=before.span, required=required):
        flown = 0
        for edit in edits:
            if edit.of_trajectories or flown == _MOST_FLOWN:
                break
            stop_if_unwanted()
            try:
                if _seen_close(show, conflict, edit, required):
                    continue
                after = restaged(show, edit.changes, edit.insertions)
            except (InputError, ValueError):
                continue  # the change does not fit the rest of the show
            flown += 1
            if any(floor_harms(before, after)):
                continue  # nor may the show as drawn, which `check` alone tells of, become worse
            moved = _as_flown(after)
            now = too_close(moved)
            if any(_beside(conflict, one) for one in now) or any(unlike(bad, now)):
                continue
            if any(floor_harms(_baseline_as_flown(show), moved)):
                continue
            if not harms_as_flown(show, after):
                yield edit, after
                break


def harms_as_flown(before: Staged, after: Staged) -> bool:
    """Whether a change strains a flown hand, or lets own props meet or go into the body, where it was not so or less so.

    Parameters
    ----------
    before, after : Staged
        As drawn, without and with the change.
    """
    limits = before.show.limits
    old, new = strains(flown_show(before)), strains(flown_show(after))
    if any(not any(_as_strained(was, now, limits) for was in old) for now in new):
        return True
    met = _touches(before)
    return any(not any(_as_near(was, now) for was in met) for now in _touches(after))


@once_per_show
def _baseline_as_flown(show: Staged) -> Baseline:
    """The faults of a show as flown, among them what comes near scenery and audience, and what is let go."""
    return baseline(_as_flown(show))


def _as_flown(show: Staged) -> Staged:
    """The show on its flown paths, with the results of its drawing that hold for both: of the crew, and of many a rule."""
    flown = flown_show(show).staged
    carry_results(show, flown)
    return flown


@once_per_show
def _touches(show: Staged) -> tuple[Touch, ...]:
    return tuple(touches(show))


def _as_strained(old: Strain, now: Strain, limits: Limits) -> bool:
    """Whether a hand was strained as much in the same place."""
    if (old.who, old.side) != (now.who, now.side):
        return False
    together = old.course.start < now.course.end and now.course.start < old.course.end
    return together and all(
        new <= was + _WORSE
        for was, new in zip(_misses(old, limits), _misses(now, limits), strict=True)
    )


def _misses(strain: Strain, limits: Limits) -> tuple[float, ...]:
    """By how much a strain misses its limits: least pull [the head's weight], what is fast or hard [its limit], reach [m]."""
    return (
        max(LEAST_PULL - strain.least_pull, 0.0),
        max(strain.hand_acceleration / limits.hand_acceleration - 1.0, 0.0),
        max(strain.hand_speed / limits.hand_speed - 1.0, 0.0),
        max(strain.wick_speed / limits.head_speed - 1.0, 0.0),
        max(strain.most_pull / limits.pull - 1.0, 0.0),
        max(-strain.spare_reach, 0.0),
    )


def _as_near(old: Touch, now: Touch) -> bool:
    """Whether the same props touched all the while, and as deep."""
    return (
        (old.who, old.hands) == (now.who, now.hands)
        and old.start <= now.start and now.end <= old.end
        and now.worst.value >= old.worst.value - _WORSE
    )  # fmt: skip


def _beside(conflict: Conflict, now: Conflict) -> bool:
    """Whether a conflict of the changed show is the one to be mended, still there."""
    same = (now.first, now.second) == (conflict.first, conflict.second)
    return same and now.start < conflict.end and now.end > conflict.start


def _seen_close(show: Staged, conflict: Conflict, edit: SpaceEdit, required: float) -> bool:
    """Whether the pair, as flown now and moved, is too close at one of some beats; if not, nothing is proven."""
    pair = (conflict.first, conflict.second)
    moved = restaged_dancers(show, pair, edit.changes, edit.insertions)
    if moved is None:
        return False
    own = flown_show(show).staged.dancers
    first, second = (replace(own[k], floor=each.floor) for k, each in zip(pair, moved, strict=True))
    if closest_at(first, second, conflict.at).distance[0] < required:  # most changes end here
        return True
    looks = [(low + high) / 2 for low, high in conflict.spans[:_MOST_LOOKS]]
    return bool(np.any(closest(first, second, looks).distance < required))
