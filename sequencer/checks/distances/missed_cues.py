"""What happens if somebody misses a cue: begins a beat, a bar or an eight late, or mixes up left and right.

Every cue of every performer is missed in each of these ways, once, by one performer while all others dance the plan. Who
then comes too close is proven as for the plan. Where two are too close as planned anyway, no slip is to blame.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np

from sequencer.checks.distances.drift_runs import RunProgress, Work
from sequencer.checks.distances.meeting import NearParts, meeting
from sequencer.motion.clearance.approach import Approaches, SearchedCast, approaches, spells_below
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.slips import cues, late, mixed_up
from sequencer.timing.tempo import TempoMap
from sequencer.workers import in_workers

PHRASE_LATE = 8.0  # [beats] that dancers count as one phrase
MIXED_SIDES = "left and right mixed up"


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """One cue missed in one way by one performer, and who comes too close."""

    who: str
    cue: float  # [beats]
    kind: str  # "a beat late", "a bar late", "an eight late", "left and right mixed up"
    meets: tuple[str, ...]  # whom, nearest first; nobody: it does no harm
    at: float  # [beats] when they are nearest; the cue if nobody
    worst: float  # [m] how near; infinite if nobody
    parts: tuple[str, str] = ("", "")  # theirs who slip, and of the nearest, that are so near
    apart: float | None = None  # [m] between these without flames; None if nobody


@dataclass(frozen=True, slots=True)
class _Tried:
    """A dancer who slips, and between which beats that holds."""

    kind: str
    dancer: Dancer
    start: float  # [beats]
    end: float  # [beats]


def missed_cues(
    work: Work,
    tempo: TempoMap,
    *,
    jobs: int = 1,
    backend: str | None = None,
    progress: RunProgress | None = None,
) -> tuple[Slip, ...]:
    """Every slip of a show, by performer and cue.

    Parameters
    ----------
    work : Work
        The spread does not count: but for the slip, all dance the plan.
    tempo : TempoMap
        In whose bars one is a bar late.
    jobs, backend
        As for `in_workers`.
    progress : callable, optional
    """
    plan = approaches(work.dancers, *work.span, required=work.required, minima=False)
    out: list[Slip] = []
    each = in_workers(
        partial(_slips_of, work, plan, tempo), range(len(work.dancers)), jobs=jobs, backend=backend
    )
    for k, found in enumerate(each, start=1):
        out += found
        if progress:
            progress(k / len(work.dancers))
    return tuple(out)


def _slips_of(work: Work, plan: Approaches, tempo: TempoMap, who: int) -> list[Slip]:
    """Every slip of one performer."""
    out, dancer = list[Slip](), work.dancers[who]
    for cue, until in cues(dancer, *work.span):
        tried = list(_slips(dancer, cue, until, work.span[1], tempo))
        near = _near(work, who, tried)
        out += [_judged(work, plan, who, cue, *each) for each in zip(tried, near, strict=True)]
    return out


def _slips(
    dancer: Dancer, cue: float, until: float, end: float, tempo: TempoMap
) -> Iterator[_Tried]:
    bar = float(tempo.bar_length(tempo.position_of(cue).bar))
    lags = {1.0: "a beat late", PHRASE_LATE: "an eight late"}
    lags.setdefault(bar, "a bar late")
    for beats, kind in sorted(lags.items()):
        slipping, back = late(dancer, beats, cue, until)
        yield _Tried(kind, slipping, cue, min(back, end))
    other = mixed_up(dancer)
    if other is not None:
        yield _Tried(MIXED_SIDES, other, cue, until)


def _near(work: Work, who: int, tried: Sequence[_Tried]) -> list[list[int]]:
    """Who comes too close to each slip, by their number in the cast."""
    others = [k for k in range(len(work.dancers)) if k != who]
    cast = [*work.dancers, *(each.dancer for each in tried)]
    pairs = [(k, len(work.dancers) + s) for s in range(len(tried)) for k in others]
    start, end = tried[0].start, max(each.end for each in tried)
    (spans,) = spells_below([SearchedCast(cast, start, end, pairs)], required=work.required)
    near: list[list[int]] = [[] for _ in tried]
    for k, (other, slipping) in enumerate(pairs):
        slip = slipping - len(work.dancers)
        # What lies behind the moment when they are back is not theirs.
        if np.any(spans.start[spans.group == k] < tried[slip].end):
            near[slip].append(other)
    return near


def _judged(
    work: Work, plan: Approaches, who: int, cue: float, slip: _Tried, near: Sequence[int]
) -> Slip:
    """The slip with whom it meets, of those who are not too close then anyway."""
    met: list[tuple[float, float, Dancer]] = []
    for other in near:
        pair = np.flatnonzero((plan.first == min(who, other)) & (plan.second == max(who, other)))[0]
        of = plan.spans.group == pair
        if np.any((plan.spans.start[of] < slip.end) & (plan.spans.end[of] > slip.start)):
            continue
        two = (work.dancers[other], slip.dancer)
        found = approaches(two, slip.start, slip.end, required=work.required)
        if found.distance[0] < work.required:
            met.append((float(found.distance[0]), float(found.at[0]), two[0]))
    met.sort(key=lambda one: (one[0], one[1], one[2].name))
    worst, at = met[0][:2] if met else (np.inf, cue)
    nearest = meeting(slip.dancer, met[0][2], at) if met else NearParts(("", ""), 0.0)
    return Slip(
        who=work.dancers[who].name,
        cue=cue,
        kind=slip.kind,
        meets=tuple(other.name for _, _, other in met),
        at=at,
        worst=float(worst),
        parts=nearest.parts,
        apart=nearest.apart if met else None,
    )
