"""Branch and bound over slots: the best choice, and a proof of how good it is.

The tree always holds every choice: what cannot be better than the best one known is set aside with its bound, not thrown
away. So a search goes on where it stopped when costs rise, as they do when what was found does not pass.
"""

import heapq
from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.planning.drafting.optimising.bounding import GraphBound, bounded
from sequencer.planning.drafting.optimising.cost_graph import (
    CostGraph,
    cost_of,
    possible,
    restricted,
)
from sequencer.planning.drafting.optimising.improving import Improver
from sequencer.planning.drafting.optimising.rebuilding import rebuilt
from sequencer.progress import Progress, stop_if_unwanted

_SMALL = 20_000  # entries of a table, where many bounds are wanted
_LARGE = 1_000_000  # entries of a table, for the first bound
_WORTH = (
    0.2  # [1] of the gap, closed by large tables at the start: then they are used for the parts too
)
_FIRST_ROUNDS = 150
_MORE_ROUNDS = 30
_LATER_ROUNDS = 4
_SHIFTS = 4  # sweeps each time
_FIRST_STEPS = 2000  # of the search for a good choice
_REBUILT = 8  # steps for each part that is chosen anew after them
_LATER_STEPS = 600
_EACH = (
    20  # parts of the tree between two such searches, from a relaxed choice and from the best one
)
_SELDOM = 400  # the same where the search is not for the best

_MUCH = (
    0.8  # share of the candidates left, below which a part is bounded anew before it is branched
)
_TOLERANCE = 1e-9  # [1] of the cost's size: rounding of sums


class BranchSearch:
    """The state of a search: what was found, what is proven, and what is left to be looked at.

    Parameters
    ----------
    graph : CostGraph
    seed : int
    found : callable
        Called with picks, cost and bound of each better choice.
    progress : callable, optional
    enough : float
        A cost that nobody wants to see bettered [1].
    close : float
        A gap that nobody wants to see closed, as a share of the cost's size [1].
    """

    def __init__(
        self,
        graph: CostGraph,
        seed: int,
        found: Callable[[tuple[int, ...], float, float], None],
        *,
        progress: Progress | None = None,
        enough: float = -np.inf,
        close: float = 0.0,
    ) -> None:
        self.graph = graph
        self.cost, self.bound = np.inf, -np.inf  # [1]
        self.picks: tuple[int, ...] | None = None  # of `graph`
        self.work = 0  # table entries computed
        self._found, self._progress, self._enough = found, progress, enough
        self._close = close
        self._rng = np.random.default_rng(seed)
        self._tree: list[tuple[float, int, tuple[Ints, ...], Floats]] = []
        self._looks = self._pushes = 0
        self._limit = _SMALL  # entries of a table
        self._below = np.inf
        self._base = graph  # costs the same, in another form
        self._begun = False

    def run(self, effort: int, known: Sequence[int] | None, *, below: float = np.inf) -> None:
        """Searches until all is proven, or until `effort` more table entries were computed.

        Parameters
        ----------
        effort : int
        known : sequence of int or None
            Picks to start from; they need not be allowed.
        below : float
            Where only something cheaper than this is wanted [1]: the first that is found ends the search.
        """
        self._below = below
        whole = possible(self.graph)
        if whole is None:
            self.bound = np.inf
            return
        until = self.work + effort
        self._whole = whole  # what picks are taken from
        self._improver = Improver(whole)
        if not self._begun:
            self._first(whole, known, until)
        elif known is not None:
            self._improve(self._places(known), _LATER_STEPS)
        self._tell(until, effort)  # where that is good enough, there is nothing more to tell
        while self._tree and self.work < until and not self._is_found():
            stop_if_unwanted()
            self._tell(until, effort)
            self.bound = max(self.bound, min(self._tree[0][0], self.cost))
            if self._is_close(self.bound) or self._tree[0][0] >= self._cut():
                break
            estimate, _, names, multipliers = heapq.heappop(self._tree)
            self._look(names, estimate, multipliers)
        # What was not looked at may hold something as cheap as its bound.
        left = self._tree[0][0] if self._tree else np.inf
        self.bound = max(self.bound, self.cost if left >= self._nearly(self.cost) else left)

    def raised(self, graph: CostGraph) -> bool:
        """Goes on with costs that have risen; False, and nothing changed, where any has fallen or anything else is different.

        Parameters
        ----------
        graph : CostGraph

        Notes
        -----
        Source: none needed; what nothing cost less than, nothing costs less than with costs that are nowhere lower.
        """
        if not costs_nowhere_less(self.graph, graph):
            return False
        if self._begun:
            self._base = _risen(self._base, self.graph, graph)
        self.graph = graph
        self.cost = np.inf if self.picks is None else cost_of(graph, self.picks)
        if not np.isfinite(self.cost):
            self.cost, self.picks = np.inf, None
        return True

    def _is_close(self, bound: float) -> bool:
        """Whether so little is left between the best and what is proven that nobody wants to know better."""
        return (
            np.isinf(self._below)
            and self._close > 0
            and self.cost - bound <= self._close * abs(self.cost)
        )

    def _is_found(self) -> bool:
        """Whether something is known that nobody wants to see bettered."""
        return self.cost <= self._enough or self.cost < self._below < np.inf

    def _cut(self) -> float:
        """From here on a bound says that nothing better is left [1]."""
        return min(self._nearly(self.cost), self._below)

    @staticmethod
    def _nearly(cost: float) -> float:
        return cost - _TOLERANCE * (1.0 + abs(cost)) if np.isfinite(cost) else np.inf

    def _tell(self, until: int, effort: int) -> None:
        if self._progress is not None:
            cost = "none yet" if self.picks is None else f"cost {self.cost:.2f}"
            self._progress(
                f"best routine: {cost}, none below {self.bound:.2f}",
                min(1.0 - (until - self.work) / effort, 1.0),
            )

    def _improve(self, start: Sequence[int], steps: int) -> None:
        """Keeps what a search from picks of the whole finds, where it is better."""
        before = self._improver.work
        picks, cost = self._improver.searched(start, steps, self._rng)
        if steps:
            picks, cost = rebuilt(self._improver, picks, steps // _REBUILT, self._rng)
        self.work += self._improver.work - before
        if cost < self._nearly(self.cost):
            named = tuple(int(n[p]) for n, p in zip(self._whole.names, picks, strict=True))
            self.cost, self.picks = cost_of(self.graph, named), named
            self._found(named, self.cost, min(self.bound, self.cost))

    def _places(self, named: Sequence[int]) -> list[int]:
        """Where candidates stand in the whole; the first of a slot for one that is impossible."""
        return [int(np.argmax(n == p)) for n, p in zip(self._whole.names, named, strict=True)]

    def _seen(self, graph: CostGraph, steps: int = 0) -> Callable[[tuple[int, ...]], None]:
        """Takes a relaxed choice of a part as the start of a search."""

        def seen(picks: tuple[int, ...]) -> None:
            named = [int(n[p]) for n, p in zip(graph.names, picks, strict=True)]
            self._improve(self._places(named), steps)

        return seen

    def _first(self, base: CostGraph, known: Sequence[int] | None, until: int) -> None:
        """Multipliers and a form of the costs with good bounds from small tables, a good choice, and then the first bound."""
        self._base, self._begun = base, True
        if known is not None:
            self._improve(self._places(known), 0)
        outcome = bounded(
            base,
            np.zeros(len(base.least)),
            self._cut,
            rounds=_FIRST_ROUNDS,
            limit=_SMALL,
            sweeps=_SHIFTS,
            seen=self._seen(base),
        )
        self._count(outcome, base)
        self._base = base = replace(base, costs=outcome.costs, pairs=outcome.pairs)
        start = outcome.picks if self.picks is None else self._places(self.picks)
        if outcome.bound < self._cut():
            self._improve(start, _FIRST_STEPS)
        if outcome.bound < self._cut() and self.work < until and not self._is_close(outcome.bound):
            before = outcome.bound
            outcome = bounded(
                base,
                outcome.multipliers,
                self._cut,
                rounds=_MORE_ROUNDS,
                limit=_LARGE,
                seen=self._seen(base),
            )
            self._count(outcome, base)
            if outcome.bound < self._cut():
                self._improve(outcome.picks, _FIRST_STEPS)
            gap = self._cut() - before
            if np.isfinite(gap) and outcome.bound - before > _WORTH * gap:
                self._limit = _LARGE
        self._divide(base, outcome, outcome.bound)

    def _count(self, outcome: GraphBound, graph: CostGraph) -> None:
        self.work += outcome.work
        if graph is self._base:
            self.bound = max(self.bound, min(outcome.bound, self.cost))

    def _look(self, names: tuple[Ints, ...], estimate: float, multipliers: Floats) -> None:
        """Bounds a part of the tree, and divides it if something better may be in it."""
        places = [
            np.searchsorted(all_names, some)
            for all_names, some in zip(self._base.names, names, strict=True)
        ]
        graph = possible(restricted(self._base, places))
        if graph is None:
            return
        self._looks += 1
        outcome = bounded(graph, multipliers, self._cut, rounds=_LATER_ROUNDS, limit=self._limit)
        self.work += outcome.work
        each = _EACH if np.isinf(self._below) else _SELDOM
        self._seen(graph, _LATER_STEPS if self._looks % each == 0 else 0)(outcome.picks)
        if self._looks % each == each // 2 and self.picks is not None:
            self._improve(self._places(self.picks), _LATER_STEPS)
        self._divide(graph, outcome, max(estimate, outcome.bound))

    def _divide(self, graph: CostGraph, outcome: GraphBound, bound: float) -> None:
        """Puts a part back into the tree, in parts that share nothing; what holds nothing better, in one piece."""
        if outcome.least is None:
            return
        least = [np.maximum(v, bound) for v in outcome.least]
        bound = max(float(v.min()) for v in least)
        kept = [v < self._cut() for v in least]
        if bound >= self._cut():
            self._push(graph.names, bound, outcome.multipliers)
            return
        self._set_aside(graph, least, kept, outcome.multipliers)
        small = restricted(graph, kept)
        least = [v[mask] for v, mask in zip(least, kept, strict=True)]
        sizes = [len(c) for c in small.costs]
        if all(size == 1 for size in sizes):
            self._seen(small)((0,) * len(sizes))
            cost = cost_of(self.graph, [int(n[0]) for n in small.names])
            self._push(small.names, cost, outcome.multipliers)
            return
        if sum(sizes) < _MUCH * sum(len(c) for c in graph.costs):
            self._push(small.names, bound, outcome.multipliers)
            return
        slot = _branched(small, least)
        for candidate in range(sizes[slot]):
            names = list(small.names)
            names[slot] = names[slot][candidate : candidate + 1]
            estimate = max(bound, float(least[slot][candidate]))
            self._push(tuple(names), estimate, outcome.multipliers)

    def _set_aside(
        self, graph: CostGraph, least: Sequence[Floats], kept: Sequence[Bools], multipliers: Floats
    ) -> None:
        """Puts back all choices with a candidate that is not kept, in parts that share nothing."""
        names = list(graph.names)
        for slot, (bounds, mask) in enumerate(zip(least, kept, strict=True)):
            if not mask.all():
                names[slot] = graph.names[slot][~mask]
                self._push(tuple(names), float(bounds[~mask].min()), multipliers)
                names[slot] = graph.names[slot][mask]

    def _push(self, names: tuple[Ints, ...], estimate: float, multipliers: Floats) -> None:
        if np.isinf(estimate):
            return  # impossible, and it stays so
        heapq.heappush(self._tree, (estimate, self._pushes, names, multipliers))
        self._pushes += 1


def costs_nowhere_less(graph: CostGraph, other: CostGraph) -> bool:
    """Whether another graph is the same but for costs that are higher.

    Parameters
    ----------
    graph, other : CostGraph
    """
    if [len(c) for c in graph.costs] != [len(c) for c in other.costs]:
        return False
    same = graph.pairs.keys() == other.pairs.keys() and all(
        np.array_equal(one, two)
        for one, two in zip(
            (*graph.rows, graph.least, graph.prices),
            (*other.rows, other.least, other.prices),
            strict=True,
        )
    )
    return (
        same
        and all(np.all(one <= two) for one, two in zip(graph.costs, other.costs, strict=True))
        and all(np.all(table <= other.pairs[pair]) for pair, table in graph.pairs.items())
    )


def _risen(base: CostGraph, before: CostGraph, after: CostGraph) -> CostGraph:
    """A graph whose costs have another form than those of `before`, raised by as much as these are in `after`."""
    names = base.names

    def raised(costs: Floats, old: Floats, new: Floats) -> Floats:
        more = np.zeros_like(costs)
        np.subtract(new, old, out=more, where=np.isfinite(old))
        return costs + more

    return replace(
        base,
        costs=tuple(
            raised(c, old[n], new[n])
            for c, n, old, new in zip(base.costs, names, before.costs, after.costs, strict=True)
        ),
        pairs={
            (i, j): raised(
                table,
                before.pairs[i, j][np.ix_(names[i], names[j])],
                after.pairs[i, j][np.ix_(names[i], names[j])],
            )
            for (i, j), table in base.pairs.items()
        },
    )


def _branched(graph: CostGraph, least: Sequence[Floats]) -> int:
    """The slot whose candidates' bounds rise most on the mean; of equals the one with most slots beside it."""
    beside = [0] * len(least)
    for i, j in graph.pairs:
        beside[i] += 1
        beside[j] += 1
    return max(
        (k for k, v in enumerate(least) if len(v) > 1),
        key=lambda k: (float(np.mean(least[k] - least[k].min())), beside[k], -len(least[k]), -k),
    )


def feasible(graph: CostGraph) -> CostGraph:
    """The graph in which only what must hold costs anything: 1 for each unit by which a rule is missed."""
    hard = np.isinf(graph.prices)
    return replace(
        graph,
        costs=tuple(np.where(np.isfinite(c), 0.0, np.inf) for c in graph.costs),
        pairs={p: np.where(np.isfinite(t), 0.0, np.inf) for p, t in graph.pairs.items()},
        rows=tuple(r[hard] for r in graph.rows),
        least=graph.least[hard],
        prices=np.ones(int(hard.sum())),
    )
