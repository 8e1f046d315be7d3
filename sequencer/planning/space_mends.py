"""Mends of two performers who come too close, each tried on the whole show before it is offered.

A change is offered only if the pair keeps the distance wherever the change acts, nobody else comes closer
than before to anyone or anything that must be kept away from, and no new finding stops the show.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sequencer.checks.distances import clearance as distances
from sequencer.checks.distances.boundaries import boundaries
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.checks.distances.spacing import Conflict, conflicts
from sequencer.checks.outcome import BeatClock, Outcome
from sequencer.checks.registry import checks_of
from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.motion.clearance.approach import approaches
from sequencer.planning.restaging import restaged
from sequencer.planning.space_edits import SpaceEdit, edits_by_kind
from sequencer.staging.staged import Staged

_ALL_KINDS = 3  # conflicts for which changes of what is danced are tried too
_HARMFUL = 4  # changes of one kind that do harm, after which larger ones are not tried
MENDED = 6  # conflicts for which mends are worked out; the rest are told without
_CLOSER = 0.01  # [m] by which an approach must be closer to count as worse
_BESIDE = 0.5  # [beats] by which an approach may lie beside one that was there before

Stops = Counter[tuple[str, tuple[str, ...], str]]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Baseline:
    """What stands against a show before anything is changed: no change may add to it."""

    show: Staged
    span: tuple[float, float]
    required: float
    bad: tuple[Conflict, ...]  # closest first
    floor: Stops
    near: Mapping[tuple[str, str], float]  # [m] to what stands still, where it is too near
    trajectories: Stops


def baseline(show: Staged) -> Baseline:
    """What stands against a show."""
    span = show.span
    required = required_distances(show).performers
    floor, near = _on_the_floor(show)
    return Baseline(
        show=show,
        span=span,
        required=required,
        bad=too_close(show),
        floor=floor,
        near=near,
        trajectories=_trajectory_stops(show),
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Mends:
    """What was found for one conflict."""

    accepted: tuple[tuple[SpaceEdit, Staged], ...]  # with the show after each; least change first
    rejected: tuple[
        tuple[SpaceEdit, tuple[str, ...]], ...
    ]  # these part the two, but do harm elsewhere


def mends_for(before: Baseline, conflict: Conflict, *, trajectories: bool = True) -> Mends:
    """The smallest change of each kind that mends a conflict.

    Parameters
    ----------
    before : Baseline
    conflict : Conflict
    courses : bool
        False leaves changes of what is danced untried: they take longer.
    """
    held: list[tuple[SpaceEdit, Staged]] = []
    spoilt: list[tuple[SpaceEdit, tuple[str, ...]]] = []
    for edits in edits_by_kind(before.show, conflict, span=before.span, required=before.required):
        harmful = 0
        for edit in edits:
            if edit.of_trajectories and not trajectories:
                break
            after = _parted(before, conflict, edit)
            if after is None:
                continue
            harm = harm_of(before, after, trajectories=edit.of_trajectories)
            if not harm:
                held.append((edit, after))
                break
            if not harmful:
                spoilt.append((edit, harm))
            harmful += 1
            if harmful == _HARMFUL:
                break
    return Mends(
        accepted=tuple(sorted(held, key=lambda one: one[0].cost)),
        rejected=tuple(sorted(spoilt, key=lambda one: one[0].cost)),
    )


def words_for(show: Staged) -> dict[tuple[tuple[str, ...], str | None], tuple[str, ...]]:
    """What mends each conflict, in words, by who comes too close and where it begins (bar.beat)."""
    before = baseline(show)
    words: dict[tuple[tuple[str, ...], str | None], tuple[str, ...]] = {}
    for k, conflict in enumerate(before.bad):
        who = (show.dancers[conflict.first].name, show.dancers[conflict.second].name)
        key = (who, BeatClock(show.tempo).position(conflict.start))
        if k >= MENDED:
            words[key] = ("mend the closer conflicts first, then check again",)
            continue
        mends = mends_for(before, conflict, trajectories=k < _ALL_KINDS)
        words[key] = tuple(edit.words for edit, _ in mends.accepted) or (
            _NOTHING,
            *(f"{edit.words}, but then: {'; '.join(harm)}" for edit, harm in mends.rejected[:2]),
        )
    return words


_NOTHING = (
    "no single change of a place, a way, a formation, a facing, a shift, a tether or a plane was found that "
    "parts them and does no harm elsewhere: give them more room, or another moment"
)


def too_close(show: Staged) -> tuple[Conflict, ...]:
    """Conflicts of a show, closest first."""
    required = required_distances(show).performers
    found = approaches(show.dancers, *show.span, required=required, minima=False)
    return tuple(sorted(conflicts(show.dancers, found, required), key=lambda one: one.distance))


def harm_of(before: Baseline, after: Staged, *, trajectories: bool) -> tuple[str, ...]:
    """What stands against a changed show that did not before, in words; empty if nothing."""
    names = [dancer.name for dancer in after.dancers]
    said = [
        f"{names[one.first]} and {names[one.second]} too close"
        for one in too_close(after)
        for low, high in one.spans
        if not _known(before.bad, one.first, one.second, low, high, one.distance)
    ]
    floor, near = _on_the_floor(after)
    new = floor - before.floor
    if trajectories:
        new += _trajectory_stops(after) - before.trajectories
    said += [f"{', '.join(who)}: {code}".removeprefix(": ") for code, who, _ in new]
    said += [
        f"{who} comes nearer to {thing}"
        for (who, thing), distance in near.items()
        if distance < before.near.get((who, thing), distance) - _CLOSER
    ]
    return tuple(dict.fromkeys(said))


def _parted(before: Baseline, conflict: Conflict, edit: SpaceEdit) -> Staged | None:
    """The show after a change, if it parts the two."""
    try:
        after = restaged(before.show, edit.changes, edit.insertions)
    except (InputError, ValueError):
        return None  # the change does not fit the rest of the show
    return None if _still(before, conflict, after) else after


def _still(before: Baseline, conflict: Conflict, after: Staged) -> bool:
    """Whether the pair comes too close in the beats of the conflict, half a beat wider."""
    pair = (after.dancers[conflict.first], after.dancers[conflict.second])
    low = max(conflict.start - _BESIDE, before.span[0])
    high = min(conflict.end + _BESIDE, before.span[1])
    found = approaches(pair, low, high, required=before.required, minima=False)
    inside = (found.spans.start < conflict.end) & (found.spans.end > conflict.start)
    return bool(inside.any()) or any(
        not _known(before.bad, conflict.first, conflict.second, float(a), float(b), None)
        for a, b in zip(found.spans.start, found.spans.end, strict=True)
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


def _on_the_floor(show: Staged) -> tuple[Stops, dict[tuple[str, str], float]]:
    """What stops a show that depends on where people stand; and what they stand too near to."""
    required = required_distances(show)
    start, end = show.span
    outcome = boundaries(show.dancers, show.tempo, show.venue, required, start=start, end=end)
    near: dict[tuple[str, str], float] = {}
    for row in outcome.clearances:
        if row.distance < row.required:
            near[row.between] = min(row.distance, near.get(row.between, row.distance))
    for check in checks_of("places"):
        if check is not distances.CHECK:  # its part on performers against each other is `too_close`
            outcome += check.outcome(show)
    return _stops(outcome), near


def _trajectory_stops(show: Staged) -> Stops:
    """What stops a show that depends on what is danced."""
    outcome = Outcome()
    for check in checks_of("courses"):
        if check is not distances.CHECK:
            outcome += check.outcome(show)
    return _stops(outcome)


def _stops(outcome: Outcome) -> Stops:
    """Counted by code, who, and what they come near to."""
    return Counter(
        (finding.code, finding.who, _thing(finding))
        for finding in outcome.findings
        if finding.severity == "stop"
    )


def _thing(finding: Finding) -> str:
    """What stands still in a finding of a boundary, so that one thing is not told from another by chance."""
    after = finding.message.partition(" m of ")[2] or finding.message.partition(" m into ")[2]
    return after.partition(",")[0]
