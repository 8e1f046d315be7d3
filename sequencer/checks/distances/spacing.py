"""Every pair of performers: how close they come, and when that is too close."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.fault_kinds import DISTANCE
from sequencer.checks.outcome import BeatClock, Mendable, Outcome, deviation_words
from sequencer.findings import Clearance, Figure, Finding
from sequencer.geometry.certified import TOLERANCE
from sequencer.kept import recent_each
from sequencer.motion.clearance.approach import (
    Approaches,
    SearchedCast,
    approaches,
    approaches_each,
)
from sequencer.motion.clearance.nearest import Closest, closest_at
from sequencer.motion.clearance.slices import SliceKeys, slice_edges, slice_keys
from sequencer.motion.performers.dancer import Dancer
from sequencer.timing.tempo import TempoMap

_TOGETHER = 8.0  # [beats] approaches no farther apart than this share one finding
_AT_ONCE = 64  # pairs that are searched together: small as they are, it is the steps that cost
_MOST_KEPT = 20_000  # conflicts that are known: a change of a show leaves most of them as they are


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """Approaches of one pair under the requirement, close together in time."""

    first: int
    second: int
    start: float  # [beats]
    end: float  # [beats]
    spans: tuple[tuple[float, float], ...]  # [beats]
    distance: float  # [m] smallest, to the tolerance
    at: float  # [beats]
    parts: tuple[str, str]
    where: tuple[float, float]  # [m, stage frame]


def spacing(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    requirements: Requirements,
    *,
    start: float,
    end: float,
) -> Outcome:
    """Distances and conflicts of every pair of performers between two beats."""
    if len(dancers) < 2:
        return Outcome(not_checked=("One performer only: no distance between performers.",))
    found = approaches(dancers, start, end, required=requirements.performers)
    edges = slice_edges(start, end)  # by which the two of each pair are known already
    rows = tuple(
        _row(dancers, tempo, requirements, found, k, edges) for k in range(len(found.first))
    )
    mendable = tuple(
        Mendable(finding=_finding(dancers, tempo, requirements, conflict), subject=conflict)
        for conflict in conflicts(dancers, found, requirements.performers, start=start, end=end)
    )
    return Outcome(
        findings=tuple(each.finding for each in mendable), clearances=rows, mendable=mendable
    )


class _Nearest(NamedTuple):
    """Where two who are too close come closest."""

    distance: float  # [m]
    at: float  # [beats]
    parts: tuple[str, str]
    where: tuple[float, float]  # [m, stage frame]


def conflicts(
    dancers: Sequence[Dancer], found: Approaches, required: float, *, start: float, end: float
) -> tuple[Conflict, ...]:
    """Spans under the requirement, grouped by pair and time, each group with its proven minimum.

    Parameters
    ----------
    dancers : sequence of Dancer
    found : Approaches
        Of all of them, between two beats.
    required : float
        Distance that performers must keep [m].
    start, end : float
        The two beats.

    Notes
    -----
    A minimum is known by what decides how the two move in the slices that its span touches: after a change of a show it is
    sought for those only whom the change is about.
    """
    groups = list(_groups(found))
    slices = slice_edges(start, end)
    moving: dict[int, SliceKeys] = {}
    keys = []
    for i, j, spans in groups:
        low, high = spans[0][0], spans[-1][1]
        for k in {i, j} - moving.keys():
            moving[k] = slice_keys(dancers[k], slices)
        # a span that ends where a slice begins is of both
        first = max(int(np.searchsorted(slices, low)) - 1, 0)
        last = int(np.searchsorted(slices, high, side="right"))
        own = moving[i][first:last], moving[j][first:last]
        keys.append(None if None in own[0] + own[1] else (*own, low, high, required))

    def work(missing: list[int]) -> list[_Nearest]:
        casts = [
            SearchedCast((dancers[i], dancers[j]), spans[0][0], spans[-1][1])
            for i, j, spans in (groups[k] for k in missing)
        ]
        some = (casts[k : k + _AT_ONCE] for k in range(0, len(casts), _AT_ONCE))
        return [each for own in some for each in _nearest(own, required)]

    nearest = recent_each("conflicts", keys, work, most=_MOST_KEPT)
    out = [
        Conflict(
            first=i, second=j, start=spans[0][0], end=spans[-1][1], spans=spans, **near._asdict()
        )
        for (i, j, spans), near in zip(groups, nearest, strict=True)
    ]
    return tuple(sorted(out, key=lambda conflict: (conflict.start, conflict.first)))


def _groups(found: Approaches) -> Iterator[tuple[int, int, tuple[tuple[float, float], ...]]]:
    """Each pair with its spans under the requirement, those together that are close in time [beats]."""
    spans = found.spans
    for pair in np.unique(spans.group):
        of = np.flatnonzero(spans.group == pair)
        begin, end = spans.start[of], spans.end[of]
        cuts = np.flatnonzero(begin[1:] - end[:-1] > _TOGETHER) + 1
        for some in np.split(np.arange(len(of)), cuts):
            yield (
                int(found.first[pair]),
                int(found.second[pair]),
                tuple((float(begin[k]), float(end[k])) for k in some),
            )


def _nearest(pairs: Sequence[SearchedCast], required: float) -> Iterator[_Nearest]:
    """Where the two of each pair come closest between its beats."""
    for pair, alone in zip(pairs, approaches_each(pairs, required=required), strict=True):
        first, second = pair.dancers
        at = float(alone.at[0])
        near = closest_at(first, second, at)
        yield _Nearest(float(alone.distance[0]), at, _names(near, first, second), _middle(near))


def _row(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    requirements: Requirements,
    found: Approaches,
    k: int,
    edges: Floats,
) -> Clearance:
    first, second = dancers[found.first[k]], dancers[found.second[k]]
    bound = bool(found.dismissed[k])
    beat = float(found.at[k])
    near = None if bound else closest_at(first, second, beat, edges=edges)
    count = BeatClock(tempo)
    return Clearance(
        between=(first.name, second.name),
        distance=float(found.distance[k]),
        required=requirements.performers,
        at=count.seconds(beat),
        error=0.0 if bound else TOLERANCE,
        parts=("", "") if near is None else _names(near, first, second),
        where=None if near is None else _middle(near),
        bound=bound,
        position=count.position(beat),
    )


def _finding(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    requirements: Requirements,
    conflict: Conflict,
) -> Finding:
    count = BeatClock(tempo)
    pair = dancers[conflict.first], dancers[conflict.second]
    first, second = pair[0].name, pair[1].name
    gap = (
        f"comes within {conflict.distance:.2f} m of"
        if conflict.distance >= 0
        else f"reaches {-conflict.distance:.2f} m into"
    )
    often = len(conflict.spans)
    times = "" if often == 1 else f"; {often} times up to {count.aloud(conflict.end)}"
    return Finding(
        code="too-close",
        severity="stop",
        who=(first, second),
        start=count.seconds(conflict.start),
        end=count.seconds(conflict.end),
        position=count.position(conflict.start),
        message=(
            f"{first}'s {conflict.parts[0]} {gap} {second}'s {conflict.parts[1]} "
            f"{count.at_aloud(conflict.at)}; {requirements.performers:.2f} m is required{deviation_words(conflict.at, *pair)}{times}"
        ),
        source=requirements.source("performers"),
        where=conflict.where,
        figures=(
            Figure(
                quantity=DISTANCE,
                value=conflict.distance,
                limit=requirements.performers,
                unit="m",
                least=True,
            ),
        ),
    )


def _names(near: Closest, first: Dancer, second: Dancer) -> tuple[str, str]:
    return first.part_name(near.part[0, 0]), second.part_name(near.part[0, 1])


def _middle(near: Closest) -> tuple[float, float]:
    x, y = near.point[0, :, :2].mean(axis=0)
    return float(x), float(y)
