"""A choice made better by choosing anew, best together, for a few slots at a time."""

from collections.abc import Sequence

import numpy as np

from sequencer.arrays import Floats
from sequencer.planning.drafting.optimising.cost_graph import cost_of
from sequencer.planning.drafting.optimising.elimination import eliminate, elimination_order
from sequencer.planning.drafting.optimising.improving import ChoiceWalk, Improver

_PART = (3, 9)  # slots, from and below
_FEW = 20  # candidates of each that are looked at
_LIMIT = 200_000  # entries of a table: what is chosen then may be a little less than best


def rebuilt(
    improver: Improver, start: Sequence[int], rounds: int, rng: np.random.Generator
) -> tuple[tuple[int, ...], float]:
    """The best choice met by choosing anew for some slots that stand together, time and again.

    Parameters
    ----------
    improver : Improver
    start : sequence of int
        A candidate for each slot.
    rounds : int
    rng : Generator
        Draws the slots.

    Returns
    -------
    picks : tuple of int
    cost : float
        [1]; infinite where something forbidden is left.

    Notes
    -----
    Source: large neighbourhood search, P. Shaw, CP 1998; from memory. Each part is exact but for what its slots count together.
    """
    walk = ChoiceWalk(improver, start)
    improver.descend(walk)
    for _ in range(rounds):
        before, total = list(walk.picks), walk.total
        _part_anew(improver, walk, _together(improver, int(rng.integers(*_PART)), rng))
        improver.descend(walk)
        if walk.total > total:
            walk = ChoiceWalk(improver, before, total=total)
    return tuple(walk.picks), cost_of(improver.graph, walk.picks)


def _together(improver: Improver, size: int, rng: np.random.Generator) -> list[int]:
    """So many slots, each beside one before it where there is one."""
    every = range(len(improver.beside))
    slots = [int(rng.integers(len(every)))]
    while len(slots) < min(size, len(every)):
        near = sorted({other for k in slots for other, _ in improver.beside[k]} - set(slots))
        slots.append(int(rng.choice(near or [k for k in every if k not in slots])))
    return sorted(slots)


def _part_anew(improver: Improver, walk: ChoiceWalk, slots: list[int]) -> None:
    """The best candidates of some slots together, the others as they are."""
    place = {slot: n for n, slot in enumerate(slots)}
    more = walk.counted_on(walk.counts - walk.own[slots].sum(axis=0))
    costs: list[Floats] = []
    few = []
    pairs = {}
    for slot in slots:
        span = walk.range_of(slot)
        cost = walk.near[span] + more[span]
        for other, table in improver.beside[slot]:
            if other in place:
                cost = cost - table[walk.picks[other]]
        some = np.argsort(cost, kind="stable")[:_FEW]
        if walk.picks[slot] not in some:
            some[-1] = walk.picks[slot]
        few.append(some)
        costs.append(cost[some])
    for slot in slots:
        for other, table in improver.beside[slot]:
            if other in place and slot < other:
                i, j = place[slot], place[other]
                pairs[i, j] = table[np.ix_(few[j], few[i])].T
    order = elimination_order([len(c) for c in costs], sorted(pairs))
    found = eliminate(costs, pairs, order, limit=_LIMIT)
    improver.work += found.work
    for slot, some, pick in zip(slots, few, found.picks, strict=True):
        walk.move(slot, int(some[pick]))
