"""Conflicts of many runs, gathered by where in the plan they are: one group for each pair and scene.

Beats.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial

from sequencer.checks.distances.binomial import ChanceChange
from sequencer.checks.distances.drift_runs import Run, RunProgress, Trials, Work, danced
from sequencer.checks.distances.removed_errors import (
    AS_IT_IS,
    ConflictPlace,
    DancedAgain,
    Removed,
    again_with,
    removed_errors,
    ways_of,
)
from sequencer.checks.distances.removed_everywhere import (
    At,
    Removal,
    removed_everywhere,
)
from sequencer.checks.distances.runs_again import SortedRuns, sorted_runs
from sequencer.checks.distances.scenes import FRINGE
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.drifting import ERROR_KINDS
from sequencer.workers import in_workers

EXPLAINED = 6  # likeliest conflicts of which it is told what taking an error away changes
HALF_RUNS, TWICE_RUNS = 4, 8  # one run of so many is danced at half and at twice the spread
_FEWEST = 20  # runs at another spread, unless fewer are asked for altogether
_AROUND = 4.0  # [beats] before and after a conflict in which it may lie without an error
_OVER = (
    1.5 * FRINGE
)  # [beats] beyond a scene's edge: enough to see where what reaches over it belongs


@dataclass(frozen=True, slots=True, kw_only=True)
class ConflictGroup:
    """Conflicts of one pair in one scene, over all runs."""

    first: str
    second: str
    pair: int  # place in the order of pairs
    scene: int
    scene_start: float  # [beats]
    scene_end: float  # [beats]
    start: float  # [beats]
    end: float  # [beats]
    in_runs: tuple[int, ...]  # the runs with a conflict
    runs: int
    worst: float  # [m] smallest distance
    moments: tuple[float, ...] = ()  # [beats] of each run's smallest distance
    worst_run: int = -1  # in which they come nearest
    worst_at: float = 0.0  # [beats] when they do
    removed: Removed = field(default_factory=Removed)
    half: float | None = None  # share at half the spread
    twice: float | None = None  # share at twice the spread

    @property
    def conflicts(self) -> int:
        """Number of runs with a conflict."""
        return len(self.in_runs)

    @property
    def share(self) -> float:
        """Share of runs with a conflict."""
        return self.conflicts / self.runs

    @property
    def window(self) -> tuple[float, float]:
        """Beats around all conflicts, a little over the edges of the scene."""
        return (
            min(max(self.start - _AROUND, self.scene_start - _OVER), self.start),
            max(min(self.end + _AROUND, self.scene_end + _OVER), self.end),
        )

    @property
    def at(self) -> At:
        """Pair and scene."""
        return self.pair, self.scene


@dataclass(frozen=True, slots=True, kw_only=True)
class Dances:
    """All runs of a show: their conflicts, and how often anything happened at which spread."""

    groups: tuple[ConflictGroup, ...]  # likeliest first
    runs: tuple[Run, ...]
    half: tuple[Run, ...]
    twice: tuple[Run, ...]
    everywhere: Mapping[Removal, ChanceChange] = field(
        default_factory=dict
    )  # that any two come too close, without some errors in the whole show


def as_danced(work: Work, trials: Trials, *, progress: RunProgress | None = None) -> Dances:
    """Conflicts of every pair in all runs, by where in the plan they happen.

    Parameters
    ----------
    work : Work
    trials : Trials
    progress : callable, optional
        Called with the share done.

    Returns
    -------
    dances : Dances
    """
    say = progress or (lambda _share: None)
    runs = danced(work, trials, progress=lambda share: say(0.65 * share))
    half, twice = (
        danced(
            work.times(by),
            replace(trials, runs=min(trials.runs, max(_FEWEST, trials.runs // part))),
            progress=partial(_later, say, low, high),
        )
        for by, part, low, high in ((0.5, HALF_RUNS, 0.65, 0.75), (2.0, TWICE_RUNS, 0.75, 0.85))
    )
    found = sorted(
        gathered(work, runs), key=lambda one: (-one.conflicts, one.worst, one.pair, one.scene)
    )
    places = {one.at: _place(work, one) for one in found}
    by_sort = sorted_runs(runs)
    again = in_workers(
        partial(_explained, work, by_sort),
        found[:EXPLAINED],
        jobs=trials.jobs,
        backend=trials.backend,
    )
    known, out = dict[At, DancedAgain](), list[ConflictGroup]()
    for one, (own, removed) in zip(found, again, strict=False):
        known[one.at] = own
        out.append(replace(one, removed=removed))
        say(0.85 + 0.1 * len(out) / len(found[:EXPLAINED]))
    out += found[EXPLAINED:]
    everywhere = (
        removed_everywhere(
            work,
            _removals(work, out),
            runs,
            places,
            known,
            jobs=trials.jobs,
            backend=trials.backend,
        )
        if known
        else {}
    )
    if found:
        say(1.0)
    return Dances(
        groups=tuple(
            replace(one, half=_share(half, one.at), twice=_share(twice, one.at)) for one in out
        ),
        runs=tuple(runs),
        half=tuple(half),
        twice=tuple(twice),
        everywhere=everywhere,
    )


def _removals(work: Work, groups: Sequence[ConflictGroup]) -> list[Removal]:
    """What may be taken away: a kind of error of all, all errors of one, and what most of a conflict hangs on."""
    everybody = tuple(dancer.name for dancer in work.dancers)
    kinds = [
        kind
        for kind in ERROR_KINDS
        if any(getattr(work.spread_of(name), kind) > 0 for name in everybody)
    ]
    return [
        *(Removal(everybody, (kind,)) for kind in kinds),
        *(Removal((name,), ERROR_KINDS) for name in everybody),
        *(
            Removal(one.removed.who, (one.removed.matters,))
            for one in groups
            if one.removed.matters and not one.removed.raises
        ),
    ]


def _later(say: RunProgress, low: float, high: float, share: float) -> None:
    say(low + (high - low) * share)


def _share(runs: Sequence[Run], at: tuple[int, int]) -> float:
    return sum(any((near.pair, near.scene) == at for near in run) for run in runs) / len(runs)


def gathered(work: Work, runs: Sequence[Run]) -> tuple[ConflictGroup, ...]:
    """Conflicts of all runs by pair and scene.

    Parameters
    ----------
    work : Work
    runs : sequence of Run
    """
    found: dict[tuple[int, int], ConflictGroup] = {}
    for k, run in enumerate(runs):
        for near in run:
            at = (near.pair, near.scene)
            one = found.get(at) or _begun(work, *at, len(runs))
            if near.distance < one.worst:
                one = replace(one, worst=near.distance, worst_run=k, worst_at=near.at)
            found[at] = replace(
                one,
                start=min(one.start, near.start),
                end=max(one.end, near.end),
                in_runs=(*one.in_runs, k),
                moments=(*one.moments, near.at),
            )
    return tuple(found.values())


def _begun(work: Work, pair: int, scene: int, runs: int) -> ConflictGroup:
    """A group without any conflict yet."""
    first, second = pair_names(work.dancers)[pair]
    edges = work.edges[pair] if work.edges else work.span
    return ConflictGroup(
        first=first,
        second=second,
        pair=pair,
        scene=scene,
        scene_start=edges[scene],
        scene_end=edges[scene + 1],
        start=float("inf"),
        end=float("-inf"),
        in_runs=(),
        runs=runs,
        worst=float("inf"),
    )


def pair_names(dancers: Sequence[Dancer]) -> list[tuple[str, str]]:
    """Both names of every pair, in the order of pairs."""
    names = [dancer.name for dancer in dancers]
    return [(names[i], names[j]) for i in range(len(names)) for j in range(i + 1, len(names))]


def _place(work: Work, one: ConflictGroup) -> ConflictPlace:
    """Where a group is, and what is danced again of it."""
    low, high = one.window
    return ConflictPlace(
        pair=(one.first, one.second),
        scene=one.scene,
        edges=work.edges[one.pair] if work.edges else work.span,
        window=(max(low, work.span[0]), min(high, work.span[1])),
    )


def _explained(work: Work, by_sort: SortedRuns, one: ConflictGroup) -> tuple[DancedAgain, Removed]:
    """Runs danced again around a conflict, and what taking an error away changes."""
    place = _place(work, one)
    hit, missed = by_sort.having(one.in_runs), by_sort.without(one.in_runs)
    kinds, people = ways_of(work, place.pair)
    ways = dict.fromkeys((AS_IT_IS, *kinds.values(), *people.values()))
    again = again_with(work, place, sorted({*hit, *missed, *by_sort.again()}), tuple(ways))
    return again, removed_errors(work, place.pair, again, one.share, hit=hit, missed=missed)
