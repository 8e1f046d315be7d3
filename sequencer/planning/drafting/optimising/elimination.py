"""The least sum of costs of slots and pairs of slots: exact where tables stay small, else a bound from below."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import prod

import numpy as np

from sequencer.arrays import Floats

_OVERHEAD = 40_000  # [table entries] as long as what a slot takes besides its tables


@dataclass(frozen=True, slots=True, kw_only=True)
class Eliminated:
    """What is known after all slots are eliminated."""

    bound: float  # [1] no choice costs less
    picks: tuple[int, ...]  # a choice; of cost `bound` where that is exact
    exact: bool
    work: int  # table entries computed
    least: tuple[Floats, ...] | None  # (n_k,) [1]: no choice with this candidate costs less


@dataclass(slots=True)
class _Cluster:
    slot: int
    scope: tuple[int, ...]
    table: Floats | None
    message: Floats
    parent: int | None = None


_Factor = tuple[tuple[int, ...], Floats, int | None]  # scope, table, the cluster that sent it


def elimination_order(sizes: Sequence[int], pairs: Sequence[tuple[int, int]]) -> tuple[int, ...]:
    """The order in which slots are eliminated: always the one that leaves the smallest table.

    Parameters
    ----------
    sizes : sequence of int
        Candidates of each slot.
    pairs : sequence of (int, int)
        Slots whose costs depend on each other.

    Notes
    -----
    Source: the greedy rule of least weight, with fewest new pairs among equals; U. Kjærulff 1990 (from memory). Any order is
    right, they differ in work.
    """
    beside: list[set[int]] = [set() for _ in sizes]
    for i, j in pairs:
        beside[i].add(j)
        beside[j].add(i)
    left, order = set(range(len(sizes))), []

    def weight(slot: int) -> tuple[int, int, int]:
        near = beside[slot]
        missing = sum(len(near - beside[other]) - 1 for other in near)
        return prod(sizes[other] for other in near) * sizes[slot], missing, slot

    while left:
        slot = min(left, key=weight)
        for other in beside[slot]:
            beside[other] |= beside[slot]
            beside[other] -= {slot, other}
        left.remove(slot)
        order.append(slot)
    return tuple(order)


def _spread(table: Floats, scope: tuple[int, ...], wide: tuple[int, ...]) -> Floats:
    sizes = dict(zip(scope, table.shape, strict=True))
    return table.reshape([sizes.get(slot, 1) for slot in wide])


def _groups(factors: list[_Factor], sizes: Sequence[int], limit: int) -> list[list[_Factor]]:
    """Factors that are added up in one table: as many as its size allows."""
    groups: list[tuple[set[int], list[_Factor]]] = []
    for factor in sorted(factors, key=lambda f: (-f[1].size, f[0])):
        for scope, group in groups:
            if prod(sizes[k] for k in scope | set(factor[0])) <= max(
                limit, prod(sizes[k] for k in scope), factor[1].size
            ):
                scope |= set(factor[0])
                group.append(factor)
                break
        else:
            groups.append((set(factor[0]), [factor]))
    return [group for _, group in groups]


def _added(group: list[_Factor], sizes: Sequence[int]) -> tuple[tuple[int, ...], Floats]:
    scope = tuple(sorted({slot for factor in group for slot in factor[0]}))
    table = np.zeros([sizes[slot] for slot in scope])
    for inner, values, _ in group:
        table += _spread(values, inner, scope)
    return scope, table


def _levelled(tables: list[tuple[tuple[int, ...], Floats]], slot: int) -> list[Floats]:
    """Tables of one slot with their costs by candidate evened out, so that they agree on what is good."""
    marginals = [
        table.min(axis=tuple(a for a, s in enumerate(scope) if s != slot))
        for scope, table in tables
    ]
    mean = np.mean(marginals, axis=0)
    out = []
    for (scope, table), own in zip(tables, marginals, strict=True):
        shift = np.full_like(mean, np.inf)
        np.subtract(mean, own, out=shift, where=np.isfinite(mean))
        out.append(table + _spread(shift, (slot,), scope))
    return out


def eliminate(
    costs: Sequence[Floats],
    pairs: Mapping[tuple[int, int], Floats],
    order: Sequence[int],
    *,
    limit: int,
    marginals: bool = False,
) -> Eliminated:
    """The least cost, or a bound from below where a table would have more than `limit` entries.

    Parameters
    ----------
    costs : sequence of ndarray, each of shape (n_k,) [1]
    pairs : mapping of (i, j), i < j, to ndarray of shape (n_i, n_j) [1]
    order : sequence of int
        In which slots are eliminated.
    limit : int
        Entries of a table; tables of single pairs may be larger.
    marginals : bool
        Whether bounds for each candidate are wanted too; needs all tables in memory, and about three times the work.

    Notes
    -----
    Source: bucket elimination, R. Dechter, Artificial Intelligence 113 (1999), with mini-buckets, R. Dechter and I. Rish, Journal
    of the ACM 50 (2003), whose costs are levelled as in A. Ihler et al., Join-graph based cost-shifting schemes (2012); from
    memory. A slot whose terms do not fit into one table counts once in each, free to differ: never dearer than the truth.
    """
    sizes = [len(c) for c in costs]
    buckets: dict[int, list[_Factor]] = {k: [((k,), c, None)] for k, c in enumerate(costs)}
    place = {slot: n for n, slot in enumerate(order)}
    for pair, values in pairs.items():
        buckets[min(pair, key=place.__getitem__)].append((pair, values, None))
    clusters: list[_Cluster] = []
    bound, exact, work = 0.0, True, 0
    for slot in order:
        groups = _groups(buckets[slot], sizes, limit)
        tables = [_added(group, sizes) for group in groups]
        work += _OVERHEAD + sum(
            t.size * (len(g) + 1) for (_, t), g in zip(tables, groups, strict=True)
        )
        level = [table for _, table in tables]
        if len(tables) > 1:
            exact = False
            level = _levelled(tables, slot)
        for group, (scope, _), table in zip(groups, tables, level, strict=True):
            message = table.min(axis=scope.index(slot))
            number = len(clusters)
            for _, _, sender in group:
                if sender is not None:
                    clusters[sender].parent = number
            clusters.append(_Cluster(slot, scope, table if marginals else None, message))
            rest = tuple(s for s in scope if s != slot)
            if rest:
                buckets[min(rest, key=place.__getitem__)].append((rest, message, number))
            else:
                bound += float(message)
    picks = _picked(buckets, order, len(sizes))
    least = None
    if marginals and np.isfinite(bound):
        work *= 3
        least = _least(clusters, sizes, bound)
    return Eliminated(bound=bound, picks=picks, exact=exact, work=work, least=least)


def _picked(buckets: dict[int, list[_Factor]], order: Sequence[int], slots: int) -> tuple[int, ...]:
    """The best candidate of each slot, last eliminated first."""
    picks = [0] * slots
    for slot in reversed(order):
        total = sum(
            values[tuple(slice(None) if s == slot else picks[s] for s in scope)]
            for scope, values, _ in buckets[slot]
        )
        picks[slot] = int(np.argmin(total))
    return tuple(picks)


def _least(clusters: list[_Cluster], sizes: Sequence[int], bound: float) -> tuple[Floats, ...]:
    """For each candidate the least cost of the relaxed choice that holds it: messages sent back through the tables."""
    found = [np.full(size, -np.inf) for size in sizes]
    whole: dict[int, Floats] = {}
    for number in range(len(clusters) - 1, -1, -1):
        cluster = clusters[number]
        table = cluster.table
        if table is None:  # kept by whoever asks for this
            raise ValueError("tables were not kept")
        rest = tuple(s for s in cluster.scope if s != cluster.slot)
        back: Floats
        if cluster.parent is None:
            back = np.asarray(bound - float(cluster.message))
        else:
            parent = clusters[cluster.parent]
            dropped = tuple(a for a, s in enumerate(parent.scope) if s not in rest)
            above = whole[cluster.parent].min(axis=dropped)
            back = np.full_like(above, np.inf)
            np.subtract(above, cluster.message, out=back, where=np.isfinite(cluster.message))
            back = _spread(back, rest, cluster.scope)
        belief = table + back
        whole[number] = belief
        cluster.table = None
        own = belief.min(axis=tuple(a for a, s in enumerate(cluster.scope) if s != cluster.slot))
        np.maximum(found[cluster.slot], own, out=found[cluster.slot])
    return tuple(found)
