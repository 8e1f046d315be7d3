"""Elimination and shifted costs against plain enumeration."""

from itertools import product

import numpy as np
import pytest

from sequencer.planning.drafting.optimising.elimination import eliminate, elimination_order
from sequencer.planning.drafting.optimising.shifting import shifted


def drawn(seed: int, *, forbidden: float = 0.0, apart: bool = False):
    """Six slots of four candidates, all pairs but a few; dense, so that small tables cannot hold a bucket."""
    rng = np.random.default_rng(seed)
    costs = [rng.uniform(0, 3, 4) for _ in range(6)]
    pairs = {}
    for i in range(6):
        for j in range(i + 1, 6):
            if rng.random() < 0.7 and not (apart and i < 3 <= j):
                table = rng.uniform(0, 3, (4, 4))
                table[rng.random((4, 4)) < forbidden] = np.inf
                pairs[i, j] = table
    return costs, pairs


def total(costs, pairs, picks) -> float:
    cost = sum(c[p] for c, p in zip(costs, picks, strict=True))
    return float(cost + sum(t[picks[i], picks[j]] for (i, j), t in pairs.items()))


def every(costs):
    return product(*[range(len(c)) for c in costs])


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize(("forbidden", "apart"), [(0.0, False), (0.25, False), (0.1, True)])
def test_large_tables_are_exact_and_so_is_the_least_of_each_candidate(
    seed, forbidden, apart
) -> None:
    costs, pairs = drawn(seed, forbidden=forbidden, apart=apart)
    order = elimination_order([4] * 6, sorted(pairs))
    found = eliminate(costs, pairs, order, limit=10_000, marginals=True)
    values = {picks: total(costs, pairs, picks) for picks in every(costs)}
    assert found.exact
    assert found.bound == pytest.approx(min(values.values()))
    assert values[found.picks] == pytest.approx(found.bound)
    for slot in range(6):
        for candidate in range(4):
            truth = min(v for picks, v in values.items() if picks[slot] == candidate)
            assert found.least[slot][candidate] == pytest.approx(truth)


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize("limit", [1, 16, 64])
def test_small_tables_bound_from_below(seed, limit) -> None:
    costs, pairs = drawn(seed, forbidden=0.1)
    order = elimination_order([4] * 6, sorted(pairs))
    found = eliminate(costs, pairs, order, limit=limit, marginals=True)
    values = {picks: total(costs, pairs, picks) for picks in every(costs)}
    assert found.bound <= min(values.values()) + 1e-9
    assert found.bound > 0.0
    for slot in range(6):
        for candidate in range(4):
            truth = min(v for picks, v in values.items() if picks[slot] == candidate)
            assert found.bound - 1e-9 <= found.least[slot][candidate] <= truth + 1e-9


def test_larger_tables_bound_better() -> None:
    bounds = []
    for limit in (1, 64, 10_000):
        some = 0.0
        for seed in range(8):
            costs, pairs = drawn(seed)
            order = elimination_order([4] * 6, sorted(pairs))
            some += eliminate(costs, pairs, order, limit=limit).bound
        bounds.append(some)
    assert bounds[0] < bounds[1] < bounds[2]


def test_a_path_is_eliminated_from_its_ends() -> None:
    order = elimination_order([9] * 5, [(k, k + 1) for k in range(4)])
    left = set(range(5))
    for slot in order[:-1]:
        assert sum(abs(slot - other) == 1 for other in left) <= 1
        left.remove(slot)


@pytest.mark.parametrize("seed", range(6))
def test_shifted_costs_are_the_same_in_sum_and_bound_better_each_sweep(seed) -> None:
    costs, pairs = drawn(seed, forbidden=0.1)
    bounds = [sum(c.min() for c in costs) + sum(t.min() for t in pairs.values())]
    for sweeps in (1, 2, 8):
        slots, left = shifted(costs, pairs, sweeps)
        for picks in list(every(costs))[::37]:
            assert total(slots, left, picks) == pytest.approx(total(costs, pairs, picks))
        assert all(t.min() >= -1e-9 for t in left.values())
        bounds.append(sum(c.min() for c in slots))
    assert bounds == sorted(bounds)
    assert bounds[-1] > bounds[0] + 0.5
    order = elimination_order([4] * 6, sorted(pairs))
    assert eliminate(slots, left, order, limit=16).bound >= bounds[-1] - 1e-9
