"""What a conflict becomes once one kind of error, or one performer's errors, are taken away.

The same runs are danced again, with the same draws, around the conflict: some in which it happened and some in which it
did not. The first tell how often it goes away, the others how often it comes where it was not: props that move as
one may only be kept apart by somebody who is late. Conflicts of the runs danced again belong to a scene by the same rule as
those of the whole runs.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools
from sequencer.checks.distances.binomial import ChanceChange, alike, changed
from sequencer.checks.distances.drift_runs import Work, drawn_dancer
from sequencer.checks.distances.scenes import FRINGE, Edges, by_scene
from sequencer.motion.clearance.approach import SearchedCast, spells_below
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.drifting import ERROR_KINDS

_HELPS = 0.8  # of a chance that is left at most without an error that is worth rehearsing


@dataclass(frozen=True, slots=True, kw_only=True)
class Removed:
    """What a conflict of two performers becomes without an error."""

    chance: float = 0.0  # with all errors
    kinds: Mapping[str, ChanceChange] = field(
        default_factory=dict
    )  # without a kind of error of both
    people: Mapping[str, ChanceChange] = field(default_factory=dict)  # without all errors of one
    who: tuple[str, ...] = ()  # whose errors count most; both if they count alike

    @property
    def matters(self) -> str:
        """The kind of error without which it is least likely; empty if none by itself makes much of it."""
        most = _HELPS * self.chance
        helps = {kind: own.chance for kind, own in self.kinds.items() if own.chance <= most}
        return min(helps, key=lambda kind: helps[kind], default="")

    @property
    def raises(self) -> tuple[str, ...]:
        """Kinds of error without which it is surely likelier: the plan itself brings the two together."""
        return tuple(kind for kind, each in self.kinds.items() if each.low > 0)


class Without(NamedTuple):
    """Kinds of error that are taken away from the first and from the second of a pair."""

    first: tuple[str, ...] = ()
    second: tuple[str, ...] = ()


AS_IT_IS = Without()


@dataclass(frozen=True, slots=True, kw_only=True)
class ConflictPlace:
    """Where a conflict is in the plan."""

    pair: tuple[str, str]
    scene: int
    edges: Edges  # of the pair's scenes
    window: tuple[float, float]  # [beats] in which it is danced again

    @property
    def inside(self) -> tuple[float, float]:
        """Beats in which two who are too close have a conflict in this scene, whatever else they do (`by_scene`)."""
        low, high = self.edges[self.scene : self.scene + 2]
        return max(low + FRINGE, self.window[0]), min(high - FRINGE, self.window[1])


@dataclass(frozen=True, slots=True, kw_only=True)
class DancedAgain:
    """Some runs danced again around a conflict, each as it is and without some errors; n runs, w ways."""

    runs: tuple[int, ...]
    ways: tuple[Without, ...]
    near: Bools  # (n, w) whether the two come too close anywhere in the window
    there: Bools  # (n, w) whether they do in the scene of the conflict

    def of(self, runs: Sequence[int], way: Without) -> Bools:
        """Whether it is there in some runs."""
        at = [self.runs.index(run) for run in runs]
        return self.there[at, self.ways.index(way)]


def kinds_of(work: Work, name: str) -> tuple[str, ...]:
    """The kinds of error that a performer has."""
    return tuple(kind for kind in ERROR_KINDS if getattr(work.spread_of(name), kind) > 0)


def ways_of(work: Work, pair: tuple[str, str]) -> tuple[dict[str, Without], dict[str, Without]]:
    """Without each kind of error of both, by kind; and without all errors of one, by name."""
    first, second = (kinds_of(work, name) for name in pair)
    kinds = {
        kind: Without(*(tuple(k for k in own if k == kind) for own in (first, second)))
        for kind in ERROR_KINDS
        if kind in {*first, *second}
    }
    return kinds, {pair[0]: Without(first=first), pair[1]: Without(second=second)}


def again_with(
    work: Work, place: ConflictPlace, runs: Sequence[int], ways: Sequence[Without]
) -> DancedAgain:
    """Some runs danced again around a conflict, with the same draws.

    Parameters
    ----------
    work : Work
    place : ConflictPlace
    runs : sequence of int
    ways : sequence of Without
    """
    found = _spells(work, place, runs, ways)
    near = [[bool(spells) for spells in own] for own in found]
    there = [[place.scene in by_scene(spells, place.edges) for spells in own] for own in found]
    shape = (len(runs), len(ways))
    return DancedAgain(
        runs=tuple(runs),
        ways=tuple(ways),
        near=np.array(near, dtype=np.bool_).reshape(shape),
        there=np.array(there, dtype=np.bool_).reshape(shape),
    )


def removed_errors(
    work: Work,
    pair: tuple[str, str],
    again: DancedAgain,
    chance: float,
    *,
    hit: Sequence[int],
    missed: Sequence[int],
) -> Removed:
    """What a conflict becomes without each kind of error, and without each performer's errors.

    Parameters
    ----------
    work : Work
    pair : (str, str)
    again : DancedAgain
        All of the next runs, each as it is and in `ways_of` the pair.
    chance : float
        Share of all runs with the conflict.
    hit, missed : sequence of int
        Some runs with the conflict and some without it.
    """
    # Where the window shows something else than the whole run, what is there belongs to another conflict.
    with_it = [run for run in hit if again.of([run], AS_IT_IS)[0]]
    without = [run for run in missed if not again.of([run], AS_IT_IS)[0]]
    kinds, people = (
        {
            name: changed(
                chance,
                (int(np.sum(~again.of(with_it, way))), len(with_it)),
                (int(np.sum(again.of(without, way))), len(without)),
            )
            for name, way in ways.items()
        }
        for ways in ways_of(work, pair)
    )
    still = [again.of(with_it, way) for way in ways_of(work, pair)[1].values()]
    return Removed(
        chance=chance, kinds=kinds, people=people, who=_who(pair, np.stack(still, axis=1))
    )


def _spells(
    work: Work, place: ConflictPlace, runs: Sequence[int], ways: Sequence[Without]
) -> list[list[list[tuple[float, float]]]]:
    """From when to when the two are too close in each run, for each way."""
    casts = [_cast(work, place, run, ways) for run in runs]
    # Two who meet well inside the scene meet there, whatever else they do.
    # With the tolerance of the whole runs: a coarser one would find conflicts that those do not have.
    out = []
    for spans in spells_below(casts, required=work.required, enough=place.inside):
        own: list[list[tuple[float, float]]] = [[] for _ in ways]
        for k, start, end in zip(spans.group, spans.start, spans.end, strict=True):
            own[int(k)].append((float(start), float(end)))
        out.append([sorted(spells) for spells in own])
    return out


def _cast(work: Work, place: ConflictPlace, run: int, ways: Sequence[Without]) -> SearchedCast:
    """The two of a conflict in one run, once for each of their ways, and one pair for each way."""
    cast, at = list[Dancer](), dict[tuple[str, tuple[str, ...]], int]()
    plan = {dancer.name: dancer for dancer in work.dancers if dancer.name in place.pair}
    pairs = []
    for way in ways:
        two = []
        for name, kinds in zip(place.pair, way, strict=True):
            if (name, kinds) not in at:
                at[name, kinds] = len(cast)
                cast.append(_dancer(work, plan[name], run, kinds))
            two.append(at[name, kinds])
        pairs.append((two[0], two[1]))
    return SearchedCast(cast, *place.window, pairs)


def _dancer(work: Work, plan: Dancer, run: int, without: tuple[str, ...]) -> Dancer:
    """One performer of a run without some kinds of error; the plan's own without any error."""
    spread = work.spread_of(plan.name)
    for kind in without:
        spread = spread.without(kind)
    if not any(getattr(spread, kind) for kind in ERROR_KINDS):
        return plan
    return drawn_dancer(work, plan, run, spread)


def _who(pair: tuple[str, str], still: Bools) -> tuple[str, ...]:
    """Whose errors count most: shape (n, 2), whether the conflict stays without the first's and without the second's."""
    first_only = int(np.sum(~still[:, 0] & still[:, 1]))
    second_only = int(np.sum(still[:, 0] & ~still[:, 1]))
    if alike(first_only, second_only):
        return pair
    return (pair[0],) if first_only > second_only else (pair[1],)
