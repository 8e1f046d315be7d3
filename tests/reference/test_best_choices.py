"""The best choice against other solvers: shortest paths of networkx, mixed-integer optima of HiGHS in scipy."""

from math import inf

import networkx as nx
import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_array

from sequencer.planning.drafting.optimising.choices import Choices, Counting, best


@pytest.mark.parametrize("seed", range(12))
def test_a_chain_is_a_shortest_path(seed: int) -> None:
    # Source: networkx.dijkstra_path_length on the layered graph, one node for each candidate of each slot.
    rng = np.random.default_rng(seed)
    sizes = rng.integers(3, 30, int(rng.integers(5, 25)))
    costs = [rng.uniform(0, 5, n) for n in sizes]
    passages = {}
    for k in range(len(sizes) - 1):
        table = rng.uniform(0, 4, (sizes[k], sizes[k + 1]))
        table[rng.random(table.shape) < 0.2] = inf
        table[0, 0] = 4.0  # there is a way
        passages[k, k + 1] = table
    graph = nx.DiGraph()
    for a, cost in enumerate(costs[0]):
        graph.add_edge("start", (0, a), weight=cost)
    for (i, j), table in passages.items():
        for a, b in zip(*np.nonzero(np.isfinite(table)), strict=True):
            graph.add_edge((i, a), (j, b), weight=table[a, b] + costs[j][b])
    for a in range(sizes[-1]):
        graph.add_edge((len(sizes) - 1, a), "end", weight=0.0)
    truth = nx.dijkstra_path_length(graph, "start", "end")
    chosen = best(Choices(costs=tuple(costs), passages=passages))
    assert chosen is not None
    assert chosen.cost == pytest.approx(truth, abs=1e-9)
    assert chosen.bound == pytest.approx(truth, abs=1e-9)


def integer_optimum(choices: Choices) -> float:
    """The cost of the best choice by HiGHS: a 0-or-1 for each candidate and pair, and what each rule misses."""
    first = np.concatenate([[0], np.cumsum([len(c) for c in choices.costs])])
    pair_first, total = {}, int(first[-1])
    for pair, table in choices.passages.items():
        pair_first[pair] = total
        total += table.size
    missed = total
    total += 2 * len(choices.countings)
    cost, upper = np.zeros(total), np.ones(total)
    cost[: first[-1]] = np.concatenate(choices.costs)
    rows = []
    for k, values in enumerate(choices.costs):
        rows.append(({int(first[k]) + a: 1.0 for a in range(len(values))}, 1.0, 1.0))
    for (i, j), table in choices.passages.items():
        start, (n, m) = pair_first[i, j], table.shape
        cost[start : start + table.size] = np.where(np.isfinite(table), table, 0.0).ravel()
        upper[start : start + table.size] = np.isfinite(table).ravel()
        for a in range(n):
            row = {start + a * m + b: 1.0 for b in range(m)}
            rows.append(({**row, int(first[i]) + a: -1.0}, 0.0, 0.0))
        for b in range(m):
            row = {start + a * m + b: 1.0 for a in range(n)}
            rows.append(({**row, int(first[j]) + b: -1.0}, 0.0, 0.0))
    for r, rule in enumerate(choices.countings):
        under, over = missed + 2 * r, missed + 2 * r + 1
        for place in (under, over):
            cost[place] = 0.0 if rule.price is None else rule.price
            upper[place] = 0.0 if rule.price is None else inf
        row = {
            int(first[k]) + a: float(v)
            for k, values in enumerate(rule.counts)
            for a, v in enumerate(values)
        }
        rows.append(({**row, under: 1.0, over: -1.0}, rule.at_least, rule.at_most))
    matrix = lil_array((len(rows), total))
    for n, (row, _, _) in enumerate(rows):
        for place, value in row.items():
            matrix[n, place] = value
    whole = np.zeros(total)
    whole[: first[-1]] = 1
    result = milp(
        cost,
        integrality=whole,
        bounds=Bounds(0, upper),
        constraints=LinearConstraint(
            matrix.tocsr(), [low for _, low, _ in rows], [high for _, _, high in rows]
        ),
        options={"mip_rel_gap": 0.0},
    )
    assert result.status == 0, result.message
    return float(result.fun)


@pytest.mark.parametrize("seed", range(6))
def test_folded_paths_with_rules_equal_a_mixed_integer_solver(seed: int) -> None:
    # Source: scipy.optimize.milp (HiGHS), to its gap of 0; 1e-5: its feasibility tolerance times the prices.
    rng = np.random.default_rng(100 + seed)
    slots, patterns = 9, 6
    labels = [rng.permutation(patterns)[:5] for _ in range(slots)]
    passages = {}
    order = [0, 1, 2, 3, 4, 5, 2, 3, 6, 7, 2, 8]  # part 2, 3 returns
    for step, worth in ((1, 3.0), (2, 1.5)):
        for a, b in zip(order, order[step:], strict=False):
            i, j = min(a, b), max(a, b)
            table = rng.uniform(0, 2, (5, 5)) if step == 1 else np.zeros((5, 5))
            if step == 1:
                table[rng.random((5, 5)) < 0.1] = inf
            table = table + worth * (labels[i][:, None] == labels[j])
            passages[i, j] = passages.get((i, j), 0.0) + table
    countings = [
        Counting(
            name=f"pattern {p}",
            counts=tuple((own == p).astype(float) for own in labels),
            at_most=2.0,
            price=1.5,
        )
        for p in range(patterns)
    ]
    countings.append(
        Counting(
            name="wish",
            counts=tuple((own == 0).astype(float) for own in labels),
            at_least=2.0,
        )
    )
    choices = Choices(
        costs=tuple(rng.uniform(0, 5, 5) for _ in range(slots)),
        passages=passages,
        countings=tuple(countings),
    )
    chosen = best(choices)
    assert chosen is not None
    assert chosen.cost == pytest.approx(integer_optimum(choices), abs=1e-5)
    assert chosen.bound == pytest.approx(chosen.cost, abs=1e-7)
