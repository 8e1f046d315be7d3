"""Mends for two performers who come too close, each tried on the whole show before it is offered.

A change is offered only if the pair keeps its distance wherever the change acts, nobody else who is too close
to anyone or anything comes closer still, and no finding that stops or warns is new.
"""

import heapq
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from sequencer.checks.check import Check
from sequencer.checks.dance import feasible, travel
from sequencer.checks.distances import keeping_clear
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.checks.distances.spacing import Conflict, conflicts
from sequencer.checks.outcome import BeatClock, Outcome
from sequencer.checks.registry import checks_of
from sequencer.errors import InputError
from sequencer.findings import Severity
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.nearest import closest_at
from sequencer.planning.edits import danced_edits, floor_edits
from sequencer.planning.edits.shapes import has_shape
from sequencer.planning.edits.space_edits import SpaceEdit
from sequencer.planning.trying.restaging import restaged, restaged_dancers
from sequencer.planning.trying.trial_limits import conflicts_to_mend
from sequencer.staging.results import once_per_show
from sequencer.staging.staged import Staged

_ALL_KINDS = 3  # conflicts for which changes of the dance itself are tried too
_HARMFUL = 4  # harmful changes of one kind after which larger ones are not tried
# Kinds by their number in `edits_by_kind`, in a captain's order: where people stand and walk before what they dance,
# the length of a tether after its timing, and another plane last. What has a shape is widened before one is moved.
_TIERS = ((0, 1, 2, 3), (4,), (5, 6), (7,), (8,))
_TIERS_OF_SHAPES = ((0,), (1, 2, 3), (4,), (9,), (5, 6), (7,), (8,))
MENDED = 6  # conflicts for which mends are computed; the rest get none
_CLOSER = 0.01  # [m] by which an approach must be closer to count as worse
_MOST_LOOKS = (
    24  # approaches of a conflict at whose middle a changed pair is looked at before a search
)
_SURELY = 1e-6  # [m] above rounding
_BESIDE = 0.5  # [beats] by which an approach may differ from one that was there before

_Fault = tuple[str, tuple[str, ...], str, Severity]
Faults = Counter[_Fault]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Baseline:
    """Faults of a show before anything is changed: no change may add to them."""

    show: Staged
    span: tuple[float, float]
    required: float
    floor: Faults
    near: Mapping[tuple[str, str], float]  # [m] to still things that are too near
    trajectories: Faults | None = None  # of what is danced; worked out where it is asked for
    close: tuple[Conflict, ...] | None = None  # the same of who comes too close, closest first

    @property
    def bad(self) -> tuple[Conflict, ...]:
        """Who comes too close, closest first."""
        return too_close(self.show) if self.close is None else self.close


def baseline(show: Staged) -> Baseline:
    """The faults of a show, to compare changed shows with."""
    span = show.span
    required = required_distances(show).performers
    floor, near = _floor_faults(show)
    return Baseline(
        show=show,
        span=span,
        required=required,
        floor=floor,
        near=near,
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Mends:
    """The mends found for one conflict."""

    accepted: tuple[tuple[SpaceEdit, Staged], ...]  # with the show after each; in a captain's order
    rejected: tuple[
        tuple[SpaceEdit, tuple[str, ...]], ...
    ]  # these keep the two apart, but do harm elsewhere


def mends_for(before: Baseline, conflict: Conflict, *, trajectories: bool = True) -> Mends:
    """The smallest change of each kind that mends a conflict.

    Parameters
    ----------
    before : Baseline
    conflict : Conflict
    trajectories : bool
        Whether to try changes of the dance itself as well; they take longer.
    """
    accepted: list[tuple[SpaceEdit, Staged]] = []
    rejected: list[tuple[SpaceEdit, tuple[str, ...]]] = []
    for edits in edits_by_kind(before.show, conflict, span=before.span, required=before.required):
        harmful = 0
        for edit in edits:
            if edit.of_trajectories and not trajectories:
                break
            after = _separated(before, conflict, edit)
            if after is None:
                continue
            harm = harm_of(before, after, trajectories=edit.of_trajectories)
            if not harm:
                accepted.append((edit, after))
                break
            if not harmful:
                rejected.append((edit, harm))
            harmful += 1
            if harmful == _HARMFUL:
                break
    return Mends(
        accepted=tuple(accepted),
        rejected=tuple(sorted(rejected, key=lambda one: one[0].cost)),
    )


def smallest_mends(before: Baseline, conflict: Conflict) -> Iterator[tuple[SpaceEdit, Staged]]:
    """The mends that `mends_for` accepts, smallest first, each sought only when it is wanted.

    Parameters
    ----------
    before : Baseline
    conflict : Conflict

    Yields
    ------
    edit : SpaceEdit
    after : Staged
        The show after it.
    """
    kinds = edits_by_kind(before.show, conflict, span=before.span, required=before.required)
    first = has_form(before.show, conflict)
    for tier in _TIERS_OF_SHAPES if first else _TIERS:
        yield from _of_tier(before, conflict, [kinds[k] for k in tier])


def _of_tier(
    before: Baseline, conflict: Conflict, kinds: Sequence[Iterator[SpaceEdit]]
) -> Iterator[tuple[SpaceEdit, Staged]]:
    """The mends of some kinds, smallest first."""
    harmful: Counter[int] = Counter()
    done: set[int] = set()
    for k, edit in heapq.merge(
        *map(_numbered, range(len(kinds)), kinds), key=lambda each: each[1].cost
    ):
        if k in done or harmful[k] == _HARMFUL:
            continue
        after = _separated(before, conflict, edit)
        if after is None:
            continue
        if does_harm(before, after, trajectories=edit.of_trajectories):
            harmful[k] += 1
        else:
            done.add(k)
            yield edit, after


def _numbered(k: int, edits: Iterator[SpaceEdit]) -> Iterator[tuple[int, SpaceEdit]]:
    return ((k, edit) for edit in edits)


def edits_by_kind(
    show: Staged, conflict: Conflict, *, span: tuple[float, float], required: float
) -> tuple[Iterator[SpaceEdit], ...]:
    """The edits of each kind, smallest first, the kinds in a captain's order; each is made when it is asked for.

    Parameters
    ----------
    show : Staged
    conflict : Conflict
    span : (float, float)
        Beats of the whole show.
    required : float
        Distance that performers must keep [m].
    """
    kinds = (
        floor_edits.widened(show, conflict),
        floor_edits.places(show, conflict, span, required),
        floor_edits.ways(show, conflict),
        floor_edits.turned(show, conflict),
        floor_edits.facings(show, conflict),
        danced_edits.canons(show, conflict),
        danced_edits.shifts(show, conflict),
        danced_edits.tethers(show, conflict),
        danced_edits.planes(show, conflict),
        floor_edits.places(show, conflict, span, required, shaped=False),
    )
    return tuple(_sorted(kind) for kind in kinds)


def _sorted(kind: Iterator[SpaceEdit]) -> Iterator[SpaceEdit]:
    """The edits of a kind by cost, made when the first is asked for."""
    yield from sorted(kind, key=lambda edit: edit.cost)


def has_form(show: Staged, conflict: Conflict) -> bool:
    """Whether the formation in which two come too close is a named shape, or has mirrored pairs or lines."""
    for one in show.standings:
        if one.walk <= conflict.at <= one.end:
            formation = show.show.formations.get(one.formation)
            spots = {who: (x, y) for who, (x, y, _) in one.spots.items()}
            return formation is not None and (formation.spots is None or has_shape(spots))
    return False


def words_for(show: Staged) -> dict[tuple[tuple[str, ...], str | None], tuple[str, ...]]:
    """Mends of each conflict in words, by the two performers and its start (bar.beat)."""
    before = baseline(show)
    most = conflicts_to_mend(show, MENDED)
    words: dict[tuple[tuple[str, ...], str | None], tuple[str, ...]] = {}
    for k, conflict in enumerate(before.bad):
        who = (show.dancers[conflict.first].name, show.dancers[conflict.second].name)
        key = (who, BeatClock(show.tempo).position(conflict.start))
        if k >= most:
            words[key] = ("mend the closer conflicts first, then check again",)
            continue
        mends = mends_for(before, conflict, trajectories=k < _ALL_KINDS)
        words[key] = tuple(edit.words for edit, _ in mends.accepted) or (
            _NOTHING,
            *(f"{edit.words}, but then: {'; '.join(harm)}" for edit, harm in mends.rejected[:2]),
        )
    return words


_NOTHING = (
    "no single change of place, path, formation, facing, shift, canon, tether or plane was found that keeps "
    "them apart without harm elsewhere: give them more room, or change who is there when"
)


@once_per_show
def too_close(show: Staged) -> tuple[Conflict, ...]:
    """Conflicts of a show, closest first."""
    required = required_distances(show).performers
    start, end = show.span
    found = approaches(show.dancers, start, end, required=required, minima=False)
    every = conflicts(show.dancers, found, required, start=start, end=end)
    return tuple(sorted(every, key=lambda one: one.distance))


def harm_of(before: Baseline, after: Staged, *, trajectories: bool) -> tuple[str, ...]:
    """New faults of a changed show, in words; empty if there are none."""
    return tuple(dict.fromkeys(_harms(before, after, trajectories=trajectories)))


def does_harm(before: Baseline, after: Staged, *, trajectories: bool) -> bool:
    """Whether a changed show has new faults; ends with the first."""
    return any(True for _ in _harms(before, after, trajectories=trajectories))


def _harms(before: Baseline, after: Staged, *, trajectories: bool) -> Iterator[str]:
    yield from _in_words(_walk_faults(after) - before.floor)  # quick, and often the one
    names = [dancer.name for dancer in after.dancers]
    for one in too_close(after):
        for low, high in one.spans:
            if not _known(before.bad, one.first, one.second, low, high, one.distance):
                yield f"{names[one.first]} and {names[one.second]} are too close"
    floor, near = _floor_faults(after)
    new = floor - before.floor
    if trajectories:
        known = before.trajectories
        new += _trajectory_faults(after) - (
            _trajectory_faults(before.show) if known is None else known
        )
    yield from _in_words(new)
    yield from _closer(before, near)


def floor_harms(before: Baseline, after: Staged) -> Iterator[str]:
    """New faults of walks, and of where people stand, in words; distances of performers are not looked at.

    Parameters
    ----------
    before : Baseline
    after : Staged
        The changed show; each check runs when its faults are asked for.
    """
    yield from _in_words(_walk_faults(after) - before.floor)  # quick, and often the one
    still = keeping_clear.boundaries_of(after)
    total = _faults(still)
    yield from _in_words(total - before.floor)
    yield from _closer(before, _near(still))
    for check in _floor_checks():  # a code may be of several
        own = _faults(check.faults(after))
        total += own
        if own:
            yield from _in_words(total - before.floor)


def _closer(before: Baseline, near: Mapping[tuple[str, str], float]) -> Iterator[str]:
    for (who, thing), distance in near.items():
        if distance < before.near.get((who, thing), distance) - _CLOSER:
            yield f"{who} comes closer to {thing}"


def unlike(before: Sequence[Conflict], now: Sequence[Conflict]) -> Iterator[Conflict]:
    """Conflicts that were not there before, or that are closer now.

    Parameters
    ----------
    before, now : sequence of Conflict
        Of a show, and of it with a change.
    """
    for one in now:
        if any(
            not _known(before, one.first, one.second, low, high, one.distance)
            for low, high in one.spans
        ):
            yield one


def _in_words(new: Faults) -> Iterator[str]:
    for code, whose, *_ in new:
        yield f"{', '.join(whose)}: {code}".removeprefix(": ")


def _separated(before: Baseline, conflict: Conflict, edit: SpaceEdit) -> Staged | None:
    """The show after a change, if that keeps the two apart."""
    try:
        if _seen_close(before, conflict, edit):
            return None  # most changes end here, without a search
        after = restaged(before.show, edit.changes, edit.insertions)
    except (InputError, ValueError):
        return None  # the change does not fit the rest of the show
    return None if _still_close(before, conflict, after) else after


def _still_close(before: Baseline, conflict: Conflict, after: Staged) -> bool:
    """Whether the pair comes too close in the beats of the conflict, widened by half a beat."""
    pair = (after.dancers[conflict.first], after.dancers[conflict.second])
    low = max(conflict.start - _BESIDE, before.span[0])
    high = min(conflict.end + _BESIDE, before.span[1])
    found = approaches(pair, low, high, required=before.required, minima=False)
    inside = (found.spans.start < conflict.end) & (found.spans.end > conflict.start)
    return bool(inside.any()) or any(
        not _known(before.bad, conflict.first, conflict.second, float(a), float(b), None)
        for a, b in zip(found.spans.start, found.spans.end, strict=True)
    )


def _seen_close(before: Baseline, conflict: Conflict, edit: SpaceEdit) -> bool:
    """Whether a change leaves the pair too close at one of some beats; if not, nothing is proven."""
    pair, most = (conflict.first, conflict.second), before.required - _SURELY
    left = [conflict.at, *((low + high) / 2 for low, high in conflict.spans[:_MOST_LOOKS])]
    if edit.of_trajectories:  # first where the dance around a beat is enough
        unsure = []
        for beat in left:
            seen = restaged_dancers(before.show, pair, edit.changes, edit.insertions, at=beat)
            if seen is None:
                unsure.append(beat)
            elif closest_at(seen[0], seen[1], beat).distance[0] < most:
                return True
        left = unsure
    if not left:
        return False
    both = restaged_dancers(before.show, pair, edit.changes, edit.insertions)
    return both is not None and any(
        closest_at(both[0], both[1], beat).distance[0] < most for beat in left
    )


def _known(
    bad: Sequence[Conflict],
    first: int,
    second: int,
    start: float,
    end: float,
    distance: float | None,
) -> bool:
    """Whether an approach was there before, and no farther apart."""
    return any(
        (old.first, old.second) == (first, second)
        and old.start - _BESIDE <= start
        and end <= old.end + _BESIDE
        and (distance is None or distance >= old.distance - _CLOSER)
        for old in bad
    )


@once_per_show
def _floor_faults(show: Staged) -> tuple[Faults, dict[tuple[str, str], float]]:
    """What stops or warns and depends on where people stand; and distances to things that are too near."""
    outcome = still = keeping_clear.boundaries_of(show)
    for check in _floor_checks():
        outcome += check.faults(show)
    return _faults(outcome), _near(still)


def _floor_checks() -> list[Check]:
    """Checks of where people stand, without those of distances: `too_close` compares performers with each other."""
    every = checks_of("places")
    return [check for check in every if check is not keeping_clear.CHECK and check.can_fail]


def _near(outcome: Outcome) -> dict[tuple[str, str], float]:
    """Distances to things that are too near [m]."""
    near: dict[tuple[str, str], float] = {}
    for row in outcome.clearances:
        if row.distance < row.required:
            near[row.between] = min(row.distance, near.get(row.between, row.distance))
    return near


def _walk_faults(show: Staged) -> Faults:
    """What stops or warns about the walks."""
    return _faults(travel.CHECK.faults(show))


def _trajectory_faults(show: Staged) -> Faults:
    """What stops or warns and depends on what is danced."""
    outcome = Outcome()
    for check in checks_of("trajectories"):
        if check is feasible.CHECK:
            outcome += feasible.feasible_as_drawn(show)
        elif check is not keeping_clear.CHECK and check.can_fail:
            outcome += check.faults(show)
    return _faults(outcome)


def _faults(outcome: Outcome) -> Faults:
    """What stops or warns, by code, who, and the still thing it is about, if any.

    What stops counts as a warning too, so that one which no longer stops is none that is new.
    """
    things = dict(outcome.things)
    ranks: dict[Severity, tuple[Severity, ...]] = {"stop": ("stop", "warn"), "warn": ("warn",)}
    return Counter(
        (finding.code, finding.who, things.get(finding, ""), rank)
        for finding in outcome.findings
        for rank in ranks.get(finding.severity, ())
    )
