"""How far people are from the plan, by what was measured in practice: the spreads for `check --danced`.

Stage frame [m]: X to the audience's right, Y upstage; beats behind the count. The simulation draws errors about the
plan, so what counts for it is the root mean square about the plan, in which a drift that is always the same way counts
in full. Source: root mean square and sample standard deviation, NIST/SEMATECH e-Handbook of Statistical Methods, section
1.3.5.6 (from memory).
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import hypot, sqrt
from statistics import fmean

from sequencer.motion.performers.drifting import MeasuredSpread
from sequencer.practice.logged_run import LoggedRun

FEWEST_MEASURED = (
    5  # measured runs for a spread, of one performer or of all together; a design choice
)
_FEWEST_ALIKE = 3  # measured runs of one exercise for a drift that is told; a design choice


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedSpread:
    """How far one performer is from the plan, by a practice log; nan where fewer than two runs were measured."""

    who: str
    places: int  # runs in which the place was measured
    place_mean: tuple[
        float, float
    ]  # [m, stage frame] the drift that is always there; (0, 0) if none was measured
    place: float  # [m] root mean square about the plan in each of X and Y, as `Spread.place`
    place_about_mean: float  # [m] standard deviation about that drift, in each of X and Y
    timings: int  # runs in which the timing was measured
    late: float  # [beats] mean; positive: behind the count
    timing: float  # [beats] root mean square about the plan, as `Spread.timing`
    timing_about_mean: float  # [beats] standard deviation about the mean


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldDrift:
    """One performer who ends up beside their place in one exercise, again and again."""

    who: str
    what: str  # the exercise
    mean: tuple[float, float]  # [m, stage frame]
    that_way: int  # runs that ended up on that side of the place
    runs: int


def logged_spreads(runs: Sequence[LoggedRun]) -> dict[str, LoggedSpread]:
    """Spreads of everybody of whom a place or a timing was measured, by name.

    Parameters
    ----------
    runs : sequence of LoggedRun
    """
    names = dict.fromkeys(run.who for run in runs if run.drift is not None or run.late is not None)
    return {who: _spread_of(who, [run for run in runs if run.who == who]) for who in names}


def measured_spreads(runs: Sequence[LoggedRun]) -> dict[str, MeasuredSpread]:
    """What `check --danced` draws of a performer's own: of those whose place or timing was measured often enough, by name.

    Parameters
    ----------
    runs : sequence of LoggedRun
    """
    found = {
        who: MeasuredSpread(
            place=each.place if each.places >= FEWEST_MEASURED else None,
            timing=each.timing if each.timings >= FEWEST_MEASURED else None,
        )
        for who, each in logged_spreads(runs).items()
    }
    return {who: each for who, each in found.items() if each != MeasuredSpread()}


def pooled_spread(runs: Sequence[LoggedRun]) -> tuple[float | None, float | None]:
    """Spread of places [m, in each of X and Y] and of timing [beats] of all together.

    None with too few measured runs, or if they are all of one performer: they say nothing of the others.

    Parameters
    ----------
    runs : sequence of LoggedRun
    """
    drifts = [(run.who, run.drift) for run in runs if run.drift is not None]
    lates = [(run.who, run.late) for run in runs if run.late is not None]
    place = _rms(value for _, drift in drifts for value in drift) if _of_several(drifts) else None
    timing = _rms(late for _, late in lates) if _of_several(lates) else None
    return place, timing


def _of_several(measured: Sequence[tuple[str, object]]) -> bool:
    return len(measured) >= FEWEST_MEASURED and len({who for who, _ in measured}) > 1


def told_drifts(runs: Sequence[LoggedRun], least: float) -> tuple[ToldDrift, ...]:
    """Drifts of at least some metres that return in an exercise, the farthest first.

    Parameters
    ----------
    runs : sequence of LoggedRun
    least : float
        [m] What the show allows for anyhow.
    """
    alike: dict[tuple[str, str], list[tuple[float, float]]] = {}
    spelt: dict[str, str] = {}  # a name is the same in other capitals; the first is told
    for run in runs:
        if run.drift is not None:
            what = spelt.setdefault(run.what.casefold(), run.what)
            alike.setdefault((run.who, what), []).append(run.drift)
    out = []
    for (who, what), drifts in alike.items():
        mean = _mean(drifts)
        same = sum(x * mean[0] + y * mean[1] > 0 for x, y in drifts)
        if len(drifts) >= _FEWEST_ALIKE and hypot(*mean) >= least:
            out.append(ToldDrift(who=who, what=what, mean=mean, that_way=same, runs=len(drifts)))
    return tuple(sorted(out, key=lambda each: (-hypot(*each.mean), each.who, each.what)))


def _spread_of(who: str, runs: Sequence[LoggedRun]) -> LoggedSpread:
    drifts = [run.drift for run in runs if run.drift is not None]
    lates = [run.late for run in runs if run.late is not None]
    mean = _mean(drifts) if drifts else (0.0, 0.0)
    late = fmean(lates) if lates else 0.0
    away = [value - middle for drift in drifts for value, middle in zip(drift, mean, strict=True)]
    return LoggedSpread(
        who=who,
        places=len(drifts),
        place_mean=mean,
        place=_rms(value for drift in drifts for value in drift),
        place_about_mean=_deviation(away, 2 * (len(drifts) - 1)),
        timings=len(lates),
        late=late,
        timing=_rms(lates),
        timing_about_mean=_deviation([value - late for value in lates], len(lates) - 1),
    )


def _mean(drifts: Sequence[tuple[float, float]]) -> tuple[float, float]:
    return fmean(x for x, _ in drifts), fmean(y for _, y in drifts)


def _rms(values: Iterable[float]) -> float:
    found = list(values)
    return sqrt(fmean(value**2 for value in found)) if found else float("nan")


def _deviation(away: Sequence[float], freedom: int) -> float:
    return sqrt(sum(value**2 for value in away) / freedom) if freedom > 0 else float("nan")
