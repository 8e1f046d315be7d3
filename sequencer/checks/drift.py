"""Clearance as danced: the chance that two performers come too close when people are people.

The show is danced many times with drawn errors of place, facing, timing, tempo, tether and hands, each time
searched with the same proof as the plan. Runs are independent and seeded: the same seed gives the same
answer on any number of processes. The interval of each chance is the exact binomial one.
Source: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934), 404-413.
"""

import hashlib
import json
from collections.abc import Callable, Sequence
from dataclasses import astuple, dataclass, replace
from pathlib import Path

import numpy as np

from sequencer.checks.outcome import Count, Outcome
from sequencer.checks.requirements import Requirements
from sequencer.files import write_text
from sequencer.findings import Finding
from sequencer.motion.approach import approaches
from sequencer.motion.dancer import Dancer
from sequencer.motion.drifting import KINDS, Spread, drifted
from sequencer.timing.tempo import TempoMap

RUNS = 200
CHANCE = 0.05  # from which chance on a pair is told
_CONFIDENCE = 0.95
_TRIALS = 12  # runs for each kind of error alone, and each performer alone
_EXPLAINED = 6  # pairs for which they are danced
_AT_ONCE = 20  # runs between two savings

Progress = Callable[[float], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Chance:
    """How often one pair came under the requirement."""

    first: str
    second: str
    conflicts: int
    runs: int
    low: float  # exact binomial interval at 95 %
    high: float
    worst: float  # [m] smallest distance of all runs; the requirement where none was under
    at: float  # [beats] where the plan's distance is smallest
    matters: str = ""  # kind of error that alone does most, where it was worked out
    who: str = ""  # performer whose errors alone do most

    @property
    def share(self) -> float:
        """Share of runs with a conflict."""
        return self.conflicts / self.runs


def as_danced(
    dancers: Sequence[Dancer],
    *,
    start: float,
    end: float,
    required: float,
    spread: Spread | None = None,
    runs: int = RUNS,
    seed: int = 0,
    jobs: int = 1,
    backend: str | None = None,
    store: Path | None = None,
    progress: Progress | None = None,
) -> tuple[Chance, ...]:
    """Chance of a conflict for every pair.

    Parameters
    ----------
    dancers : sequence of Dancer
    start, end : float
        Beats of the show.
    required : float
        Distance that counts as a conflict [m].
    spread : Spread, optional
    runs : int
        How often the show is danced.
    seed : int
    jobs : int
        Processes; -1 for one a core.
    backend : str, optional
        A back end of joblib, such as "dask" with an open client; its processes do the work.
    store : Path, optional
        File that keeps runs done, so that an interrupted call goes on where it was.
    progress : callable, optional
        Told the share done.

    Returns
    -------
    chances : tuple of Chance
        Likeliest first.

    Raises
    ------
    ValueError
        If `runs` is not positive.
    """
    if runs < 1:
        raise ValueError(f"runs must be at least 1, got {runs}")
    use = Spread() if spread is None else spread
    span = (start, end)
    key = _key(dancers, span, required, use, seed)
    done = _kept(store, key)
    waiting = [k for k in range(runs) if k not in done]
    for low in range(0, len(waiting), _AT_ONCE):
        some = waiting[low : low + _AT_ONCE]
        found = _danced(dancers, span, required, use, seed, some, jobs, backend)
        done |= dict(zip(some, found, strict=True))
        if store is not None:
            write_text(store, json.dumps({"key": key, "runs": done}))
        if progress is not None:
            progress((low + len(some)) / len(waiting))
    least = np.array([done[k] for k in range(runs)])
    first, second = np.triu_indices(len(dancers), 1)
    plan = approaches(dancers, start, end, required=required)
    out = []
    for k, (i, j) in enumerate(zip(first, second, strict=True)):
        conflicts = int(np.count_nonzero(least[:, k] < required))
        low_end, high_end = interval(conflicts, runs)
        out.append(
            Chance(
                first=dancers[i].name,
                second=dancers[j].name,
                conflicts=conflicts,
                runs=runs,
                low=low_end,
                high=high_end,
                worst=float(least[:, k].min()),
                at=float(plan.at[k]),
            )
        )
    out.sort(key=lambda chance: (-chance.conflicts, chance.worst))
    return tuple(
        _told_apart(chance, dancers, span, required, use, seed)
        if k < _EXPLAINED and chance.share >= CHANCE
        else chance
        for k, chance in enumerate(out)
    )


def drift(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    requirements: Requirements,
    *,
    start: float,
    end: float,
    spread: Spread | None = None,
    runs: int = RUNS,
    seed: int = 0,
    jobs: int = 1,
    backend: str | None = None,
    store: Path | None = None,
    progress: Progress | None = None,
) -> Outcome:
    """Findings on pairs that come too close in more than one run of twenty."""
    use = Spread() if spread is None else spread
    chances = as_danced(
        dancers,
        start=start,
        end=end,
        required=requirements.performers,
        spread=use,
        runs=runs,
        seed=seed,
        jobs=jobs,
        backend=backend,
        store=store,
        progress=progress,
    )
    count = Count(tempo)
    findings = tuple(
        _finding(chance, count, requirements, runs) for chance in chances if chance.share >= CHANCE
    )
    spoken = (
        f"As danced: {runs} runs, seed {seed}, standard deviations of place {use.place:.2f} m, facing "
        f"{np.degrees(use.facing):.0f}°, timing {use.timing:.2f} beats, tempo {100 * use.tempo:.1f} %, "
        f"tether {use.tether:.2f} m, hands {use.hand:.2f} m; only performers against each other."
    )
    return Outcome(findings=findings, unseen=(spoken,))


def interval(conflicts: int, runs: int, confidence: float = _CONFIDENCE) -> tuple[float, float]:
    """Exact binomial interval of a chance (Clopper and Pearson)."""
    from scipy.stats import beta

    tail = (1 - confidence) / 2
    low = 0.0 if conflicts == 0 else float(beta.ppf(tail, conflicts, runs - conflicts + 1))
    high = 1.0 if conflicts == runs else float(beta.ppf(1 - tail, conflicts + 1, runs - conflicts))
    return low, high


def one_run(
    dancers: Sequence[Dancer],
    span: tuple[float, float],
    required: float,
    spread: Spread,
    seed: int,
    run: int,
    only: str | None = None,
) -> list[float]:
    """Smallest distance of every pair in one drawing of the show, in the order of `pairs`.

    Distances over the requirement are told as the requirement. With `only`, all but that one dance the
    plan.
    """
    middle = 0.5 * (span[0] + span[1])
    drawn = [
        drifted(dancer, spread, np.random.default_rng([seed, run, *dancer.name.encode()]), middle)
        if only is None or only == dancer.name
        else dancer
        for dancer in dancers
    ]
    found = approaches(drawn, *span, required=required, minima=False)
    return [float(value) for value in np.minimum(found.distance, required)]


def _danced(
    dancers: Sequence[Dancer],
    span: tuple[float, float],
    required: float,
    spread: Spread,
    seed: int,
    runs: Sequence[int],
    jobs: int,
    backend: str | None,
) -> list[list[float]]:
    if jobs == 1 and backend is None:
        return [one_run(dancers, span, required, spread, seed, run) for run in runs]
    import joblib

    given = {} if backend is None else {"backend": backend}
    with joblib.parallel_config(n_jobs=jobs, **given):
        work = (joblib.delayed(one_run)(dancers, span, required, spread, seed, run) for run in runs)
        return list(joblib.Parallel()(work))


def _told_apart(
    chance: Chance,
    dancers: Sequence[Dancer],
    span: tuple[float, float],
    required: float,
    spread: Spread,
    seed: int,
) -> Chance:
    """The kind of error, and the performer, that alone bring the pair nearest on the mean."""
    pair = [dancer for dancer in dancers if dancer.name in {chance.first, chance.second}]

    def mean(use: Spread, only: str | None) -> float:
        some = [one_run(pair, span, required, use, seed, run, only)[0] for run in range(_TRIALS)]
        return float(np.mean(some))

    kinds = {kind: mean(spread.only(kind), None) for kind in KINDS if getattr(spread, kind) > 0}
    people = {dancer.name: mean(spread, dancer.name) for dancer in pair}
    return replace(
        chance,
        matters=min(kinds, key=lambda kind: kinds[kind], default=""),
        who=min(people, key=lambda name: people[name]),
    )


def _finding(chance: Chance, count: Count, requirements: Requirements, runs: int) -> Finding:
    return Finding(
        code="too-close-as-danced",
        severity="warn",
        who=(chance.first, chance.second),
        start=count.seconds(chance.at),
        end=None,
        position=count.position(chance.at),
        message=(
            f"as danced, {chance.first} and {chance.second} come under "
            f"{requirements.performers:.2f} m in {chance.conflicts} of {runs} runs "
            f"({100 * chance.share:.0f} %; {100 * chance.low:.0f} to {100 * chance.high:.0f} % with "
            f"95 % confidence)"
        ),
        remedies=(
            "give them more room, or a larger distance between performers in the rules",
            f"rehearse {chance.matters} first, and {chance.who}'s before the other's: they do most"
            if chance.matters
            else "mend the likelier conflicts first",
        ),
        source="this tool's Monte Carlo; spreads as stated in the show",
    )


def _key(
    dancers: Sequence[Dancer],
    span: tuple[float, float],
    required: float,
    spread: Spread,
    seed: int,
) -> str:
    """Same show, same spread, same seed: same runs."""
    at = np.linspace(*span, 513)
    told = hashlib.sha256()
    for dancer in dancers:
        points, _ = dancer.stage_points(at)
        told.update(np.round(points, 9).tobytes())
        told.update(repr((dancer.name, dancer.lit, sorted(dancer.props.items()))).encode())
    told.update(repr((span, required, astuple(spread), seed)).encode())
    return told.hexdigest()


def _kept(store: Path | None, key: str) -> dict[int, list[float]]:
    """Runs done before; none if the file is of another show, or cannot be read."""
    if store is None or not store.is_file():
        return {}
    try:
        held = json.loads(store.read_text(encoding="utf-8"))
        if held["key"] != key:
            return {}
        return {int(k): [float(v) for v in values] for k, values in held["runs"].items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}
