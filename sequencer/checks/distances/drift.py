"""Clearance as danced: the chance that two performers come too close with human error.

The show is danced many times with random errors of place, facing, timing, tempo, tether and hands
(`checks.distances.drift_runs`), and each run is searched with the same proof as the plan. Intervals are exact
binomial ones.
Source: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934), 404-413.
"""

from collections.abc import Sequence
from dataclasses import asdict, dataclass, replace

import numpy as np

from sequencer.checks.check import Check
from sequencer.checks.distances.drift_runs import (
    TOGETHER,
    Run,
    RunProgress,
    Trials,
    Work,
    danced,
    drawn_dancers,
)
from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.checks.outcome import BeatClock, Outcome
from sequencer.findings import Chance, Danced, Finding
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.drifting import ERROR_KINDS, Spread
from sequencer.staging.staged import Staged
from sequencer.timing.tempo import TempoMap

CHANCE = 0.05  # a pair at or above this chance is a finding
_CONFIDENCE = 0.95
_TRIALS = 12  # runs for each kind of error alone, and each performer alone
_EXPLAINED = 6  # likeliest conflicts for which these runs are danced
_COARSE = 0.03  # [m] tolerance of distances that only rank the errors


@dataclass(frozen=True, slots=True, kw_only=True)
class ConflictGroup:
    """Conflicts of one pair in one part of the show, over all runs."""

    first: str
    second: str
    start: float  # [beats]
    end: float  # [beats]
    conflicts: int  # runs
    runs: int
    worst: float  # [m] smallest distance
    matters: str = ""  # kind of error that alone brings them nearest
    who: str = ""  # performer whose errors alone bring them nearest

    @property
    def share(self) -> float:
        """Share of runs with a conflict."""
        return self.conflicts / self.runs


def as_danced(
    work: Work, trials: Trials, *, progress: RunProgress | None = None
) -> tuple[ConflictGroup, ...]:
    """Conflicts of every pair in all runs, grouped by where in the show they happen.

    Parameters
    ----------
    work : Work
    trials : Trials
    progress : callable, optional
        Called with the share done.

    Returns
    -------
    groups : tuple of ConflictGroup
        Likeliest first.
    """
    say = progress or (lambda _share: None)
    runs = danced(work, trials, progress=lambda share: say(0.9 * share))
    found = sorted(gathered(work.dancers, runs), key=lambda one: (-one.conflicts, one.worst))
    out = []
    for k, one in enumerate(found):
        out.append(_explained(one, work) if k < _EXPLAINED else one)
        say(0.9 + 0.1 * (k + 1) / len(found))
    return tuple(out)


def gathered(dancers: Sequence[Dancer], runs: Sequence[Run]) -> tuple[ConflictGroup, ...]:
    """Conflicts of all runs, grouped by pair and by part of the show; a gap of 8 beats starts a new group."""
    first, second = np.triu_indices(len(dancers), 1)
    rows = sorted((near, k) for k, run in enumerate(runs) for near in run)
    groups: list[list[tuple[int, float, float, float, int]]] = []
    end = 0.0
    for near, k in rows:
        new = not groups or groups[-1][0][0] != near.pair or near.start - end > TOGETHER
        end = near.end if new else max(end, near.end)
        row = (near.pair, near.start, near.end, near.distance, k)
        if new:
            groups.append([row])
        else:
            groups[-1].append(row)
    return tuple(
        ConflictGroup(
            first=dancers[first[group[0][0]]].name,
            second=dancers[second[group[0][0]]].name,
            start=min(row[1] for row in group),
            end=max(row[2] for row in group),
            conflicts=len({row[4] for row in group}),
            runs=len(runs),
            worst=min(row[3] for row in group),
        )
        for group in groups
    )


def drifted(
    show: Staged, *, trials: Trials | None = None, progress: RunProgress | None = None
) -> Outcome:
    """A show danced with the errors that it states: findings on pairs too close, and the whole table.

    Parameters
    ----------
    show : Staged
    trials : Trials, optional
        How many runs, and the random seed.
    progress : callable, optional
        Called with the share done.
    """
    start, end = show.span
    found, table = drift(
        show.dancers,
        show.tempo,
        required_distances(show),
        start=start,
        end=end,
        spread=show.show.drift.spread(),
        trials=trials,
        progress=progress,
    )
    return replace(found, danced=table)


def drift(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    requirements: Requirements,
    *,
    start: float,
    end: float,
    spread: Spread | None = None,
    trials: Trials | None = None,
    progress: RunProgress | None = None,
) -> tuple[Outcome, Danced]:
    """Findings on pairs that come too close in more than one run of twenty, and the whole table.

    Parameters
    ----------
    dancers : sequence of Dancer
        With names that differ.
    tempo : TempoMap
    requirements : Requirements
    start, end : float
        Beats of the show.
    spread : Spread, optional
    trials : Trials, optional
    progress : callable, optional
    """
    use = Spread() if spread is None else spread
    how = Trials() if trials is None else trials
    work = Work(
        dancers=tuple(dancers),
        span=(start, end),
        required=requirements.performers,
        spread=use,
        seed=how.seed,
    )
    found = as_danced(work, how, progress=progress) if len(dancers) > 1 else ()
    count = BeatClock(tempo)
    pairs = len(dancers) * (len(dancers) - 1) // 2
    table = Danced(
        runs=how.runs,
        seed=how.seed,
        required=requirements.performers,
        confidence=_CONFIDENCE,
        spread={name: float(value) for name, value in asdict(use).items()},
        chances=tuple(_chance(one, count) for one in found),
        pairs=pairs,
        clear=pairs - len({(one.first, one.second) for one in found}),
        clear_high=interval(0, how.runs)[1],
    )
    findings = tuple(_finding(one, count, requirements) for one in found if one.share >= CHANCE)
    scope = (
        "As danced, only performers were checked against each other: not against audience, scenery, "
        "ceiling, edge of the stage or crew posts."
    )
    return Outcome(findings=findings, not_checked=(scope,)), table


def interval(conflicts: int, runs: int, confidence: float = _CONFIDENCE) -> tuple[float, float]:
    """Exact binomial interval of a chance (Clopper and Pearson)."""
    from scipy.stats import beta

    tail = (1 - confidence) / 2
    low = 0.0 if conflicts == 0 else float(beta.ppf(tail, conflicts, runs - conflicts + 1))
    high = 1.0 if conflicts == runs else float(beta.ppf(1 - tail, conflicts + 1, runs - conflicts))
    return low, high


def _explained(one: ConflictGroup, work: Work) -> ConflictGroup:
    """The group with the kind of error, and the performer, that alone bring the pair closest (root mean square)."""
    pair = tuple(dancer for dancer in work.dancers if dancer.name in {one.first, one.second})
    window = (max(one.start - 1.0, work.span[0]), min(one.end + 1.0, work.span[1]))

    def distance(dancers: Sequence[Dancer]) -> float:
        found = approaches(dancers, *window, required=work.required, tolerance=_COARSE)
        return float(found.distance[0])

    plan = distance(pair)

    def nearer(spread: Spread, only: str | None) -> float:
        alone = replace(work, dancers=pair, spread=spread)
        losses = [
            max(plan - distance(drawn_dancers(alone, run, only=only)), 0.0)
            for run in range(_TRIALS)
        ]
        return float(np.sqrt(np.mean(np.square(losses))))

    kinds = {
        kind: nearer(work.spread.only(kind), None)
        for kind in ERROR_KINDS
        if getattr(work.spread, kind) > 0
    }
    people = {dancer.name: nearer(work.spread, dancer.name) for dancer in pair}
    return replace(
        one,
        matters=max(kinds, key=lambda kind: kinds[kind], default=""),
        who=max(people, key=lambda name: people[name]),
    )


def _chance(one: ConflictGroup, count: BeatClock) -> Chance:
    low, high = interval(one.conflicts, one.runs)
    return Chance(
        between=(one.first, one.second),
        start=count.seconds(one.start),
        end=count.seconds(one.end),
        position=count.position(one.start),
        conflicts=one.conflicts,
        runs=one.runs,
        chance=one.share,
        low=low,
        high=high,
        worst=one.worst,
        matters=one.matters,
        who=one.who,
    )


def _finding(one: ConflictGroup, count: BeatClock, requirements: Requirements) -> Finding:
    low, high = interval(one.conflicts, one.runs)
    return Finding(
        code="too-close-as-danced",
        severity="warn",
        who=(one.first, one.second),
        start=count.seconds(one.start),
        end=count.seconds(one.end),
        position=count.position(one.start),
        message=(
            f"as danced, {one.first} and {one.second} come closer "
            f"than {requirements.performers:.2f} m in {one.conflicts} of {one.runs} runs "
            f"({100 * one.share:.0f} %; {100 * low:.0f} to {100 * high:.0f} % with "
            f"{100 * _CONFIDENCE:.0f} % confidence), between {count.aloud(one.start)} and "
            f"{count.aloud(one.end)}"
        ),
        remedies=(
            "give them more room, or raise the distance between performers in the rules",
            f"rehearse {_REHEARSED[one.matters]} first, {one.who} above all: "
            "that error and that person bring them closest"
            if one.matters
            else "mend the likelier conflicts first",
        ),
        source="this tool's random runs; spread: `drift` of the show, or this tool's default where it is blank",
    )


_REHEARSED = {
    "place": "hitting the places",
    "facing": "the facings",
    "timing": "starting on the count",
    "tempo": "keeping the tempo",
    "tether": "tethers of the same length",
    "hand": "the hands' paths",
}


CHECK = Check(
    name="as-danced",
    run=drifted,
    codes={"too-close-as-danced": ("warn",)},
    on_request=True,
)
