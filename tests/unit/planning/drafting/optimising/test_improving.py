"""Searches around a choice: what they say of costs is true, and they never end above where they began."""

from dataclasses import replace
from functools import partial
from itertools import product

import numpy as np
import pytest

from sequencer.planning.drafting.optimising.bounding import bounded
from sequencer.planning.drafting.optimising.cost_graph import (
    CostGraph,
    cost_of,
    possible,
    price_of,
    priced,
    restricted,
)
from sequencer.planning.drafting.optimising.elimination import eliminate, elimination_order
from sequencer.planning.drafting.optimising.improving import ChoiceWalk, Improver
from sequencer.planning.drafting.optimising.rebuilding import rebuilt


def drawn(seed: int, *, slots: int = 12, candidates: int = 8, hard: bool = False) -> CostGraph:
    """A ring of slots with variety two steps on, and rules: every second candidate at most so often."""
    rng = np.random.default_rng(seed)
    pairs = {}
    for k in range(slots):
        for step in (1, 2):
            i, j = sorted((k, (k + step) % slots))
            pairs[i, j] = rng.uniform(0, 3, (candidates, candidates))
    rows = [rng.integers(0, 3, (3, candidates)).astype(float) for _ in range(slots)]
    prices = np.array([1.5, 0.7, np.inf if hard else 2.0])
    return CostGraph(
        costs=tuple(rng.uniform(0, 3, candidates) for _ in range(slots)),
        pairs=pairs,
        rows=tuple(rows),
        least=np.array([1.4 * slots, 1.2 * slots, 1.1 * slots]),
        prices=prices,
        names=tuple(np.arange(candidates) for _ in range(slots)),
    )


@pytest.mark.parametrize("seed", range(4))
def test_gains_are_differences_of_cost(seed: int) -> None:
    graph = drawn(seed)
    improver = Improver(graph)
    rng = np.random.default_rng(seed)
    walk = ChoiceWalk(improver, rng.integers(0, 8, 12).tolist())
    start = cost_of(graph, walk.picks)
    for _ in range(25):
        gains = walk.gains()
        slot, pick = int(rng.integers(12)), int(rng.integers(8))
        other = list(walk.picks)
        other[slot] = pick
        if pick != walk.picks[slot]:
            expected = cost_of(graph, other) - cost_of(graph, walk.picks)
            assert gains[8 * slot + pick] == pytest.approx(expected, abs=1e-9)
        walk.move(slot, pick)
        assert walk.picks == other
        assert start + walk.total == pytest.approx(cost_of(graph, walk.picks), abs=1e-9)


@pytest.mark.parametrize("hard", [False, True])
def test_searches_end_no_higher_than_a_descent(hard: bool) -> None:
    better = 0
    for seed in range(6):
        graph = drawn(seed, hard=hard)
        improver = Improver(graph)
        start = [0] * 12
        _, descent = improver.searched(start, 0, np.random.default_rng(0))
        for search in (improver.searched, partial(rebuilt, improver)):
            picks, cost = search(start, 120, np.random.default_rng(0))
            assert cost == pytest.approx(cost_of(graph, picks))
            assert cost <= descent + 1e-9
            better += cost < descent - 1e-6
    assert better >= 6  # half of the searches find more than the descent


def test_what_must_hold_is_reached_from_where_it_does_not() -> None:
    graph = drawn(3, hard=True)
    worst = [int(np.argmin(rows[2])) for rows in graph.rows]
    assert cost_of(graph, worst) == np.inf
    picks, cost = Improver(graph).searched(worst, 200, np.random.default_rng(1))
    assert np.isfinite(cost)
    assert sum(rows[2, p] for rows, p in zip(graph.rows, picks, strict=True)) >= graph.least[2]


def test_priced_costs_are_never_above_the_cost() -> None:
    rng = np.random.default_rng(9)
    graph = drawn(1)
    for _ in range(20):
        picks = rng.integers(0, 8, 12).tolist()
        multipliers = rng.uniform(0, 1, 3) * graph.prices
        costs, constant = priced(graph, multipliers)
        relaxed = constant + sum(c[p] for c, p in zip(costs, picks, strict=True))
        relaxed += sum(t[picks[i], picks[j]] for (i, j), t in graph.pairs.items())
        assert relaxed <= cost_of(graph, picks) + 1e-9


@pytest.mark.parametrize("seed", range(2))
def test_multipliers_raise_the_bound_as_far_as_a_grid_of_them_does(seed: int) -> None:
    graph = drawn(seed)
    _, best = rebuilt(Improver(graph), [0] * 12, 150, np.random.default_rng(0))
    found = bounded(graph, np.zeros(3), lambda: best, rounds=80, limit=10**6)
    assert found.bound <= best + 1e-9
    order = elimination_order([8] * 12, sorted(graph.pairs))
    grid = []
    for shares in product(np.linspace(0.0, 1.0, 4), repeat=3):
        costs, constant = priced(graph, np.array(shares) * graph.prices)
        grid.append(eliminate(costs, graph.pairs, order, limit=10**6).bound + constant)
    assert found.bound >= max(grid) - 1e-3
    assert found.bound > grid[0] + 1.0


def test_costs_in_another_form_are_the_same_in_sum() -> None:
    graph = drawn(1)
    _, best = rebuilt(Improver(graph), [0] * 12, 150, np.random.default_rng(0))
    small = bounded(graph, np.zeros(3), lambda: best, rounds=60, limit=64, sweeps=4)
    unshifted = bounded(graph, np.zeros(3), lambda: best, rounds=60, limit=64)
    assert unshifted.bound < small.bound <= best + 1e-9
    other = replace(graph, costs=small.costs, pairs=small.pairs)
    for picks in ([0, 1, 2, 3] * 3, [7, 6, 5] * 4):
        assert cost_of(other, picks) == pytest.approx(cost_of(graph, picks))


def test_prices_are_paid_for_what_is_missing_alone() -> None:
    graph = drawn(0)
    assert price_of(graph, graph.least + 1.0) == 0.0
    assert price_of(graph, graph.least - [1.0, 0.0, 2.0]) == pytest.approx(1.5 + 4.0)
    assert price_of(graph, graph.least - 1e-10) == 0.0
    assert price_of(drawn(0, hard=True), graph.least - [0.0, 0.0, 0.5]) == np.inf


def test_what_is_impossible_goes_and_nothing_else() -> None:
    pairs = {(0, 1): np.array([[np.inf, np.inf], [1.0, np.inf]])}
    graph = CostGraph(
        costs=(np.zeros(2), np.zeros(2), np.array([0.0, 1.0, np.inf])),
        pairs=pairs,
        rows=(np.zeros((1, 2)), np.zeros((1, 2)), np.array([[0.0, 2.0, 5.0]])),
        least=np.array([2.0]),
        prices=np.array([np.inf]),
        names=(np.arange(2), np.arange(2), np.arange(3)),
    )
    small = possible(graph)
    assert [n.tolist() for n in small.names] == [[1], [0], [1]]
    assert possible(restricted(graph, [[0], [0, 1], [0, 1]])) is None
    assert possible(restricted(graph, [[0, 1], [0, 1], [0]])) is None


@pytest.mark.parametrize("seed", range(4))
def test_bounds_of_candidates_are_bounds_from_any_multipliers(seed: int) -> None:
    graph = drawn(seed, slots=5, candidates=4)
    costs = {picks: cost_of(graph, picks) for picks in product(range(4), repeat=5)}
    best = min(costs.values())
    for start in (np.zeros(3), 10.0 * graph.prices):
        found = bounded(graph, start, lambda: best, rounds=3, limit=10**4)
        assert found.bound <= best + 1e-9
        assert np.all(found.multipliers <= graph.prices)
        for slot in range(5):
            for candidate in range(4):
                truth = min(cost for picks, cost in costs.items() if picks[slot] == candidate)
                assert found.least[slot][candidate] <= truth + 1e-9


def test_what_must_hold_is_not_given_up_however_little_is_missing() -> None:
    graph = CostGraph(
        costs=(np.array([0.0, 5.0]), np.array([0.0, 5.0])),
        pairs={},
        rows=(np.array([[0.99, 1.0]]), np.array([[0.99, 1.0]])),
        least=np.array([2.0]),
        prices=np.array([np.inf]),
        names=(np.arange(2), np.arange(2)),
    )
    improver = Improver(graph)
    for search in (improver.searched, partial(rebuilt, improver)):
        assert search([1, 1], 5, np.random.default_rng(0)) == ((1, 1), 10.0)
