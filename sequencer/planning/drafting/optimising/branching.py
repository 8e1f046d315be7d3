"""Branch and bound over slots: the best choice, and a proof of how good it is."""

import heapq
from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np

from sequencer.arrays import Floats, Ints
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
_LATER_ROUNDS = 8
_SHIFTS = 4  # sweeps each time
_FIRST_STEPS = 2000  # of the search for a good choice
_REBUILT = 8  # steps for each part that is chosen anew after them
_LATER_STEPS = 600
_EACH = (
    20  # parts of the tree between two such searches, from a relaxed choice and from the best one
)
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

    def run(self, effort: int, known: Sequence[int] | None) -> None:
        """Searches until all is proven, or until `effort` table entries were computed.

        Parameters
        ----------
        effort : int
        known : sequence of int or None
            Picks to start from; they need not be allowed.
        """
        whole = possible(self.graph)
        if whole is None:
            self.bound = np.inf
            return
        self._whole = whole  # what picks are taken from
        self._improver = Improver(whole)
        self._base = whole  # costs the same, in another form
        self._first(known, effort)
        self._tell(effort)  # where that is good enough, there is nothing more to tell
        while self._tree and self.work < effort and self.cost > self._enough:
            stop_if_unwanted()
            self._tell(effort)
            self.bound = max(self.bound, min(self._tree[0][0], self.cost))
            if self._is_close(self.bound):
                break
            estimate, _, names, multipliers = heapq.heappop(self._tree)
            if estimate >= self._cut():
                self._tree.clear()
                break
            self._look(names, estimate, multipliers)
        # What was not looked at may hold something as cheap as its bound.
        left = min((node[0] for node in self._tree), default=np.inf)
        self.bound = max(self.bound, min(left, self.cost))

    def _is_close(self, bound: float) -> bool:
        """Whether so little is left between the best and what is proven that nobody wants to know better."""
        return self._close > 0 and self.cost - bound <= self._close * abs(self.cost)

    def _cut(self) -> float:
        """From here on a bound says that nothing better is left [1]."""
        return self.cost - _TOLERANCE * (1.0 + abs(self.cost)) if np.isfinite(self.cost) else np.inf

    def _tell(self, effort: int) -> None:
        if self._progress is not None:
            cost = "none yet" if self.picks is None else f"cost {self.cost:.2f}"
            self._progress(
                f"best routine: {cost}, none below {self.bound:.2f}", min(self.work / effort, 1.0)
            )

    def _improve(self, start: Sequence[int], steps: int) -> None:
        """Keeps what a search from picks of the whole finds, where it is better."""
        before = self._improver.work
        picks, cost = self._improver.searched(start, steps, self._rng)
        if steps:
            picks, cost = rebuilt(self._improver, picks, steps // _REBUILT, self._rng)
        self.work += self._improver.work - before
        if cost < self._cut():
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

    def _first(self, known: Sequence[int] | None, effort: int) -> None:
        """Multipliers and a form of the costs with good bounds from small tables, a good choice, and then the first bound."""
        if known is not None:
            self._improve(self._places(known), 0)
        base = self._base
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
        if outcome.bound < self._cut() and self.work < effort and not self._is_close(outcome.bound):
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
        self._seen(graph, _LATER_STEPS if self._looks % _EACH == 0 else 0)(outcome.picks)
        if self._looks % _EACH == _EACH // 2 and self.picks is not None:
            self._improve(self._places(self.picks), _LATER_STEPS)
        self._divide(graph, outcome, max(estimate, outcome.bound))

    def _divide(self, graph: CostGraph, outcome: GraphBound, bound: float) -> None:
        """Puts what may hold something better back into the tree, in parts that share nothing."""
        if bound >= self._cut() or outcome.least is None:
            return
        least = [np.maximum(v, bound) for v in outcome.least]
        kept = [v < self._cut() for v in least]
        if not all(mask.any() for mask in kept):
            return
        small = restricted(graph, kept)
        least = [v[mask] for v, mask in zip(least, kept, strict=True)]
        sizes = [len(c) for c in small.costs]
        if all(size == 1 for size in sizes):
            self._seen(small)((0,) * len(sizes))
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

    def _push(self, names: tuple[Ints, ...], estimate: float, multipliers: Floats) -> None:
        heapq.heappush(self._tree, (estimate, self._pushes, names, multipliers))
        self._pushes += 1


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
