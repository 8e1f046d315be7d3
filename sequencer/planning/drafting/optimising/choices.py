"""What a routine is chosen from, and the best choice with a proof of how good it is."""

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import inf

import numpy as np

from sequencer.arrays import Floats
from sequencer.planning.drafting.optimising.branching import (
    BranchSearch,
    costs_nowhere_less,
    feasible,
)
from sequencer.planning.drafting.optimising.cost_graph import CostGraph, cost_of, possible
from sequencer.planning.drafting.optimising.improving import Improver
from sequencer.planning.drafting.optimising.rebuilding import rebuilt
from sequencer.progress import Progress

_EFFORT = 12_000  # [million table entries]
_MILLION = 1_000_000
_STEPS, _PARTS = 600, 80  # of a walk to a good choice, and parts of it that are chosen anew
_FEW_STEPS, _FEW_PARTS = 120, 20  # of one that is short


class Undecided(Exception):  # an outcome of the search, not an error of the caller
    """The effort ended before a choice that satisfies all rules was found, and before it was proven that there is none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Counting:
    """A rule that counts over the whole routine."""

    name: str  # as a person reads it
    counts: tuple[Floats, ...]  # of each slot, (n_k,) [1]: how much each candidate counts
    at_least: float = 0.0  # [1]
    at_most: float = inf  # [1]
    price: float | None = None  # [1] cost of each unit missing or over; None: it must hold


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """One candidate is chosen for each slot, a distinct piece of material."""

    costs: tuple[Floats, ...]  # of each slot, (n_k,) [1]; inf forbids
    passages: Mapping[tuple[int, int], Floats]  # (i, j), i < j: (n_i, n_j) [1]; inf forbids
    countings: tuple[Counting, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """A choice, what it costs, and what is proven of it."""

    picks: tuple[int, ...]  # the candidate of each slot
    cost: float  # [1]
    bound: float  # [1] nothing costs less

    @property
    def gap(self) -> float:
        """How much less anything could cost, as a share of the cost's size [1]."""
        over = self.cost - self.bound
        return over / abs(self.cost) if over > 0 and self.cost else 0.0


def best(
    choices: Choices,
    *,
    effort: int = _EFFORT,
    seed: int = 0,
    close: float = 0.0,
    known: Sequence[int] | None = None,
    found: Callable[[Chosen], None] | None = None,
    progress: Progress | None = None,
) -> Chosen | None:
    """The cheapest choice that satisfies all rules, or the best found with this effort, and a bound that is proven.

    Parameters
    ----------
    choices : Choices
    effort : int
        Work after which the search ends [million table entries]; never seconds, so that the same choices give the same answer.
        It may be overrun by one bound's work.
    seed : int
        Of the draws that shake a choice.
    close : float
        Gap with which the search is content, as a share of the cost's size [1].
    known : sequence of int, optional
        Picks to start from, such as those of a former search with fewer rules; they need not satisfy the rules.
    found : callable, optional
        Called with each improvement, so that whoever stops the search has the best so far.
    progress : callable, optional
        Told the best cost and bound, and the share of the effort spent.

    Returns
    -------
    chosen : Chosen or None
        None where it is proven that nothing satisfies the rules. Its bound is the cost itself where nothing better exists.

    Raises
    ------
    Undecided
        If the effort ended before either was found.
    ValueError
        If the tables do not fit together, or a cost is not a number or minus infinity.
    """
    search = BestSearch(seed=seed, close=close, found=found, progress=progress)
    return search.best(choices, effort=effort, known=known)


class BestSearch:
    """Searches for the best among choices that are asked for time and again, costs rising: each goes on where the last one stopped.

    Parameters
    ----------
    seed, close, found, progress
        As in `best`.
    """

    def __init__(
        self,
        *,
        seed: int = 0,
        close: float = 0.0,
        found: Callable[[Chosen], None] | None = None,
        progress: Progress | None = None,
    ) -> None:
        self._seed, self._close, self._found, self._progress = seed, close, found, progress
        self._search: BranchSearch | None = None

    def best(
        self,
        choices: Choices,
        *,
        effort: int = _EFFORT,
        known: Sequence[int] | None = None,
        below: float = inf,
    ) -> Chosen | None:
        """The cheapest choice, or the first cheaper than some cost; see the function `best`.

        Parameters
        ----------
        choices : Choices
            The search goes on where they are those of the last call but for costs that have risen; else it begins anew.
        effort : int
        known : sequence of int, optional
        below : float
            Where only something cheaper is wanted [1]: the search ends with the first that is, or the proof that nothing is.
        """
        graph = _graph(choices)
        if known is not None and len(known) != len(graph.costs):
            raise ValueError(f"{len(graph.costs)} known picks are needed, got {len(known)}")
        search = self._search
        if search is None or not search.raised(graph):
            self._search = search = BranchSearch(
                graph, self._seed, self._told, progress=self._progress, close=self._close
            )
        allowed = effort * _MILLION
        search.run(allowed, known, below=below)
        if search.picks is not None:
            return Chosen(
                picks=search.picks, cost=search.cost, bound=min(search.bound, search.cost)
            )
        if np.isinf(search.bound):
            return None
        return _by_rules_alone(graph, search, allowed, self._seed, self._told)

    def _told(self, picks: tuple[int, ...], cost: float, bound: float) -> None:
        if self._found is not None:
            self._found(Chosen(picks=picks, cost=cost, bound=bound))


def improved(
    choices: Choices, start: Sequence[int], *, seed: int = 0, near: bool = False
) -> tuple[int, ...] | None:
    """A good choice found by walking from another, in a tenth of the time of `best` and without a proof.

    Parameters
    ----------
    choices : Choices
    start : sequence of int
        Picks to walk from; they need not be allowed.
    seed : int
        Of the draws that shake a choice.
    near : bool
        Whether a shorter walk will do, as the start was good until a little of it became dearer.

    Returns
    -------
    picks : tuple of int or None
        None where nothing was met that satisfies all rules, which proves nothing.
    """
    graph = possible(_graph(choices))
    if graph is None:
        return None
    improver, rng = Improver(graph), np.random.default_rng(seed)
    # The first of a slot stands for what is impossible.
    places = [int(np.argmax(n == p)) for n, p in zip(graph.names, start, strict=True)]
    steps, parts = (_FEW_STEPS, _FEW_PARTS) if near else (_STEPS, _PARTS)
    found, _ = improver.searched(places, steps, rng)
    picks, cost = rebuilt(improver, found, parts, rng)
    if not np.isfinite(cost):
        return None
    return tuple(int(n[p]) for n, p in zip(graph.names, picks, strict=True))


def holding(choices: Choices, picks: Sequence[int], free: Collection[int]) -> Choices:
    """The choices as they are left where only some slots may be chosen anew, and all others stay as they are.

    Parameters
    ----------
    choices : Choices
    picks : sequence of int
        What the others hold.
    free : collection of int
        Slots.
    """

    def held(slot: int, costs: Floats) -> Floats:
        stays: Floats = np.full_like(costs, inf)
        stays[picks[slot]] = costs[picks[slot]]
        return costs if slot in free else stays

    return replace(choices, costs=tuple(held(k, each) for k, each in enumerate(choices.costs)))


def cost_at(choices: Choices, picks: Sequence[int]) -> float:
    """What a choice costs [1]; infinite where it breaks a rule."""
    return cost_of(_graph(choices), picks)


def nowhere_cheaper(choices: Choices, other: Choices) -> bool:
    """Whether other choices are the same but for costs that are higher: nothing then costs less than is proven of the first.

    Parameters
    ----------
    choices, other : Choices
    """
    return costs_nowhere_less(_graph(choices), _graph(other))


def _by_rules_alone(
    graph: CostGraph,
    search: BranchSearch,
    allowed: int,
    seed: int,
    told: Callable[[tuple[int, ...], float, float], None],
) -> Chosen | None:
    """What satisfies the rules at whatever cost, where the search for the cheapest met nothing that does."""
    bare = BranchSearch(feasible(graph), seed, lambda *_: None, enough=0.0)
    bare.run(allowed, None)
    if bare.picks is None or bare.cost > 0:
        if bare.bound > 0:
            return None
        raise Undecided(
            "nothing was found that satisfies all rules, and it is not proven that nothing does"
        )
    again = BranchSearch(graph, seed, told)
    again.run(allowed // 4, bare.picks)
    picks = again.picks if again.picks is not None else bare.picks
    cost = cost_of(graph, picks)
    return Chosen(picks=picks, cost=cost, bound=min(max(search.bound, again.bound), cost))


def _graph(choices: Choices) -> CostGraph:
    costs = tuple(np.asarray(c, dtype=np.float64) for c in choices.costs)
    for k, values in enumerate(costs):
        if values.ndim != 1 or not values.size:
            raise ValueError(f"slot {k} needs at least one candidate, in one row")
        _check_costs(f"costs of slot {k}", values)
    pairs = {}
    for (i, j), given in choices.passages.items():
        table = np.asarray(given, dtype=np.float64)
        if not 0 <= i < j < len(costs) or table.shape != (len(costs[i]), len(costs[j])):
            raise ValueError(f"the passages from slot {i} to slot {j} do not fit the slots")
        _check_costs(f"passages from slot {i} to slot {j}", table)
        pairs[i, j] = table
    rules = [rule for counting in choices.countings for rule in _rules(counting, costs)]
    return CostGraph(
        costs=costs,
        pairs=pairs,
        rows=tuple(
            np.array([rows[k] for rows, _, _ in rules]).reshape(len(rules), len(c))
            for k, c in enumerate(costs)
        ),
        least=np.array([least for _, least, _ in rules]),
        prices=np.array([price for _, _, price in rules]),
        names=tuple(np.arange(len(c)) for c in costs),
    )


def _rules(
    counting: Counting, costs: tuple[Floats, ...]
) -> Iterator[tuple[list[Floats], float, float]]:
    """What is counted, the least of it, and the price of a unit missing; at most so much is at least so much less."""
    if [np.shape(c) for c in counting.counts] != [np.shape(c) for c in costs]:
        raise ValueError(f"{counting.name}: the counts do not fit the slots")
    if not all(np.all(np.isfinite(c)) for c in counting.counts):
        raise ValueError(f"{counting.name}: a count is not finite")
    if counting.price is not None and not counting.price >= 0:
        raise ValueError(f"{counting.name}: the price is less than 0")
    for sign, least in ((1.0, counting.at_least), (-1.0, -counting.at_most)):
        rows = [sign * np.asarray(c, dtype=np.float64) for c in counting.counts]
        if least > sum(float(row.min()) for row in rows):  # else it holds whatever is chosen
            yield rows, least, inf if counting.price is None else float(counting.price)


def _check_costs(name: str, values: Floats) -> None:
    if np.any(np.isnan(values)) or np.any(np.isneginf(values)):
        raise ValueError(f"{name} must be numbers, or inf for what is forbidden")
