"""What is chosen from, as arrays: costs of slots and of pairs of slots, and rules that count over all of them.

Candidates are known by their place in the arrays of a graph; `names` says which candidate of the whole each of them is.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats, Ints

COUNT_TOLERANCE = 1e-9  # [1] by which a count may miss what is asked: rounding of sums


@dataclass(frozen=True, slots=True, kw_only=True)
class CostGraph:
    """A choice of one candidate for each slot.

    Its cost is Σ costs[k][x_k] + Σ pairs[i, j][x_i, x_j] + Σ_r price_r · max(0, least_r − Σ_k rows[k][r, x_k]);
    an infinite price forbids whatever misses the rule.
    """

    costs: tuple[Floats, ...]  # of each slot, shape (n_k,) [1]
    pairs: Mapping[tuple[int, int], Floats]  # i < j, shape (n_i, n_j) [1]
    rows: tuple[Floats, ...]  # of each slot, shape (rules, n_k) [1]: what each candidate counts
    least: Floats  # of each rule, shape (rules,) [1]
    prices: Floats  # of each rule, shape (rules,) [1]
    names: tuple[Ints, ...]  # of each slot, shape (n_k,): candidates of the whole


def counted(graph: CostGraph, picks: Sequence[int]) -> Floats:
    """What the picks count under each rule, shape (rules,) [1]."""
    total = np.zeros(len(graph.least))
    for rows, pick in zip(graph.rows, picks, strict=True):
        total += rows[:, pick]
    return total


def price_of(graph: CostGraph, counts: Floats) -> float:
    """What is paid for rules missed [1]; infinite where one must hold and does not.

    Parameters
    ----------
    graph : CostGraph
    counts : ndarray, shape (rules,) [1]

    Notes
    -----
    Source: the definition in `CostGraph`. Exact to rounding, for which a count may miss by 1e-9.
    """
    missing = np.maximum(graph.least - counts, 0.0)
    missing[missing <= COUNT_TOLERANCE] = 0.0
    paid = missing > 0
    return float(np.sum(missing[paid] * graph.prices[paid]))


def cost_of(graph: CostGraph, picks: Sequence[int]) -> float:
    """The cost of one candidate for each slot [1]; infinite where it is forbidden."""
    total = float(sum(costs[pick] for costs, pick in zip(graph.costs, picks, strict=True)))
    total += float(sum(table[picks[i], picks[j]] for (i, j), table in graph.pairs.items()))
    return total + price_of(graph, counted(graph, picks))


def restricted(graph: CostGraph, kept: Sequence[Ints | Bools]) -> CostGraph:
    """The same choice among fewer candidates.

    Parameters
    ----------
    graph : CostGraph
    kept : sequence of ndarray, each of shape (m_k,) [index] or (n_k,) [bool]
        For each slot its candidates, by place or as a mask.

    Notes
    -----
    Source: none needed; parts of the arrays.
    """
    places = [np.arange(len(c))[k] for c, k in zip(graph.costs, kept, strict=True)]
    if all(len(p) == len(c) for p, c in zip(places, graph.costs, strict=True)):
        return graph
    return CostGraph(
        costs=tuple(c[p] for c, p in zip(graph.costs, places, strict=True)),
        pairs={
            (i, j): table[np.ix_(places[i], places[j])] for (i, j), table in graph.pairs.items()
        },
        rows=tuple(r[:, p] for r, p in zip(graph.rows, places, strict=True)),
        least=graph.least,
        prices=graph.prices,
        names=tuple(n[p] for n, p in zip(graph.names, places, strict=True)),
    )


def possible(graph: CostGraph) -> CostGraph | None:
    """Without candidates that no choice can contain; None where a slot has none left.

    A candidate goes if it is forbidden, if a slot beside has nothing that may stand beside it, or if a rule that must
    hold cannot hold with it even when every other slot counts as much as it can.
    """
    hard = np.isinf(graph.prices)
    while True:
        masks = [np.isfinite(costs) for costs in graph.costs]
        for (i, j), table in graph.pairs.items():
            fits = np.isfinite(table)
            masks[i] &= fits.any(axis=1)
            masks[j] &= fits.any(axis=0)
        if not all(mask.any() for mask in masks):
            return None
        if hard.any():
            most = np.array(
                [r[hard][:, mask].max(axis=1) for r, mask in zip(graph.rows, masks, strict=True)]
            )
            spare = most.sum(axis=0) - graph.least[hard]
            if np.any(spare < -COUNT_TOLERANCE):
                return None
            for k, rows in enumerate(graph.rows):
                lost = most[k][:, None] - rows[hard]
                masks[k] &= np.all(lost <= spare[:, None] + COUNT_TOLERANCE, axis=0)
            if not all(mask.any() for mask in masks):
                return None
        if all(mask.all() for mask in masks):
            return graph
        graph = restricted(graph, masks)


def priced(graph: CostGraph, multipliers: Floats) -> tuple[list[Floats], float]:
    """Costs of the slots with what each count is worth taken off, and what that adds to any choice's cost.

    Parameters
    ----------
    graph : CostGraph
    multipliers : ndarray, shape (rules,) [1]
        From 0 to the rule's price.

    Returns
    -------
    costs : list of ndarray, each of shape (n_k,) [1]
    constant : float
        [1]

    Notes
    -----
    Source: Lagrangian relaxation, M. L. Fisher, Management Science 27 (1981): for 0 ≤ λ ≤ price,
    price · max(0, b − a) ≥ λ (b − a), so that no choice costs less than its relaxed cost (from memory).
    """
    costs = [c - multipliers @ r for c, r in zip(graph.costs, graph.rows, strict=True)]
    return costs, float(multipliers @ graph.least)
