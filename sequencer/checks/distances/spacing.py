"""Every pair of performers: how close they come, and when that is too close."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.fault_kinds import DISTANCE
from sequencer.checks.outcome import BeatClock, Mendable, Outcome, deviation_words
from sequencer.findings import Clearance, Figure, Finding
from sequencer.geometry.certified import TOLERANCE
from sequencer.motion.clearance.approach import Approaches, approaches
from sequencer.motion.clearance.nearest import Closest, closest_at
from sequencer.motion.performers.dancer import Dancer
from sequencer.timing.tempo import TempoMap

_TOGETHER = 8.0  # [beats] approaches no farther apart than this share one finding


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
    rows = tuple(_row(dancers, tempo, requirements, found, k) for k in range(len(found.first)))
    mendable = tuple(
        Mendable(finding=_finding(dancers, tempo, requirements, conflict), subject=conflict)
        for conflict in conflicts(dancers, found, requirements.performers)
    )
    return Outcome(
        findings=tuple(each.finding for each in mendable), clearances=rows, mendable=mendable
    )


def conflicts(
    dancers: Sequence[Dancer], found: Approaches, required: float
) -> tuple[Conflict, ...]:
    """Spans under the requirement, grouped by pair and time, each group with its proven minimum."""
    out = []
    spans = found.spans
    for pair in np.unique(spans.group):
        i, j = int(found.first[pair]), int(found.second[pair])
        of = np.flatnonzero(spans.group == pair)
        begin, end = spans.start[of], spans.end[of]
        cuts = np.flatnonzero(begin[1:] - end[:-1] > _TOGETHER) + 1
        for some in np.split(np.arange(len(of)), cuts):
            low, high = float(begin[some[0]]), float(end[some[-1]])
            alone = approaches((dancers[i], dancers[j]), low, high, required=required)
            near = closest_at(dancers[i], dancers[j], float(alone.at[0]))
            out.append(
                Conflict(
                    first=i,
                    second=j,
                    start=low,
                    end=high,
                    spans=tuple((float(begin[k]), float(end[k])) for k in some),
                    distance=float(alone.distance[0]),
                    at=float(alone.at[0]),
                    parts=_names(near, dancers[i], dancers[j]),
                    where=_middle(near),
                )
            )
    return tuple(sorted(out, key=lambda conflict: (conflict.start, conflict.first)))


def _row(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    requirements: Requirements,
    found: Approaches,
    k: int,
) -> Clearance:
    first, second = dancers[found.first[k]], dancers[found.second[k]]
    bound = bool(found.dismissed[k])
    beat = float(found.at[k])
    near = None if bound else closest_at(first, second, beat)
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
