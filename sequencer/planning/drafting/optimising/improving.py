"""A choice made better step by step: always the best change of one slot that was not just undone."""

from collections.abc import Sequence

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.planning.drafting.optimising.cost_graph import (
    COUNT_TOLERANCE,
    CostGraph,
    cost_of,
    counted,
)

_OVERHEAD = 20_000  # [table entries] as long as what a step takes besides its arrays
_SPARE = 1e-9  # [1] what is no better: rounding
_TENURE = (3, 10)  # [steps] in which what a slot had does not come back
_STUCK = 150  # [steps] without a better choice until it starts from the best again, shaken
_SHAKEN = 4  # slots


class Improver:
    """Searches around a choice; what is forbidden counts as very dear, so that a way out of it is found too.

    Candidates of all slots stand in one row, slot after slot: `first[k]` is where those of slot k begin.
    """

    def __init__(self, graph: CostGraph) -> None:
        finite = [c[np.isfinite(c)] for c in (*graph.costs, *graph.pairs.values())]
        self.graph = graph
        # More than any choice can save elsewhere
        self.dear = 1.0 + 2.0 * sum(float(np.ptp(c)) for c in finite if c.size)
        sizes = [len(c) for c in graph.costs]
        self.first = np.concatenate([[0], np.cumsum(sizes)])
        self.slot_of = np.repeat(np.arange(len(sizes)), sizes)
        self.costs = self._known(np.concatenate(graph.costs))
        self.beside: list[list[tuple[int, Floats]]] = [[] for _ in sizes]
        for (i, j), table in graph.pairs.items():
            known = self._known(table)
            self.beside[i].append((j, known.T))
            self.beside[j].append((i, known))
        self.prices = self._known(graph.prices)
        rows = np.concatenate(graph.rows, axis=1)
        self.rule, self.candidate = np.nonzero(rows)
        self.hard = np.isinf(graph.prices)[self.rule]
        self.value = rows[self.rule, self.candidate]
        self.of_slot = self.slot_of[self.candidate]
        self.work = 0

    def _known(self, values: Floats) -> Floats:
        return np.where(np.isfinite(values), values, self.dear)

    def missed(self, counts: Floats) -> Floats:
        """What is paid where each entry of `rule` counts this much, shape (entries,) [1]."""
        missing = self.graph.least[self.rule] - counts
        missing[missing <= COUNT_TOLERANCE] = 0.0
        paid: Floats = missing * self.prices[self.rule]
        paid[(missing > 0) & self.hard] += self.dear  # however little is missing
        return paid

    def searched(
        self, start: Sequence[int], steps: int, rng: np.random.Generator
    ) -> tuple[tuple[int, ...], float]:
        """The best choice met on a walk from a start.

        Parameters
        ----------
        start : sequence of int
            A candidate for each slot.
        steps : int
            Of the walk after it first comes to where no change of one slot brings anything.
        rng : Generator
            Draws how long what was left is not taken up again, and what is shaken.

        Returns
        -------
        picks : tuple of int
        cost : float
            [1]; infinite where something forbidden is left.

        Notes
        -----
        Source: tabu search, F. Glover, ORSA Journal on Computing 1 (1989); from memory.
        """
        walk = ChoiceWalk(self, start)
        best, best_total, better_at = list(walk.picks), 0.0, 0
        barred = np.full(len(self.costs), -1)
        step, descending = 0, True
        while descending or step < steps:
            gain = walk.gains()
            self.work += _OVERHEAD + 2 * len(self.costs) + 12 * len(self.rule)
            free = (barred < step) | (walk.total + gain < best_total - _SPARE)
            gain[~free] = np.inf
            chosen = int(np.argmin(gain))
            descending = descending and bool(gain[chosen] < -_SPARE)
            if not np.isfinite(gain[chosen]):
                if not np.any(barred >= step):
                    break  # one candidate for each slot
                step += 1
                continue
            if not descending:
                if steps == 0:
                    break
                step += 1
            slot = int(self.slot_of[chosen])
            barred[self.first[slot] + walk.picks[slot]] = step + int(rng.integers(*_TENURE))
            walk.change(slot, chosen - int(self.first[slot]), float(gain[chosen]))
            if walk.total < best_total - _SPARE:
                best, best_total, better_at = list(walk.picks), walk.total, step
            elif step - better_at > _STUCK:
                walk = self._shaken(best, best_total, rng)
                better_at = step
        return tuple(best), cost_of(self.graph, best)

    def descend(self, walk: "ChoiceWalk") -> None:
        """The best change of one slot until none brings anything."""
        while True:
            gain = walk.gains()
            self.work += _OVERHEAD + 2 * len(self.costs) + 12 * len(self.rule)
            chosen = int(np.argmin(gain))
            if not gain[chosen] < -_SPARE:
                return
            slot = int(self.slot_of[chosen])
            walk.change(slot, chosen - int(self.first[slot]), float(gain[chosen]))

    def _shaken(self, best: Sequence[int], total: float, rng: np.random.Generator) -> "ChoiceWalk":
        walk = ChoiceWalk(self, best, total=total)
        for _ in range(_SHAKEN):
            slot = int(rng.integers(len(best)))
            gain = walk.gains()[self.first[slot] : self.first[slot + 1]]
            few = np.argsort(gain, kind="stable")[:5]
            pick = int(rng.choice(few))
            if np.isfinite(gain[pick]):
                walk.change(slot, pick, float(gain[pick]))
        return walk


class ChoiceWalk:
    """Where a search stands."""

    def __init__(self, improver: Improver, start: Sequence[int], *, total: float = 0.0) -> None:
        self.improver = improver
        self.picks = list(start)
        self.counts = counted(improver.graph, start)
        self.own = np.array(  # what each slot counts now, (slots, rules)
            [rows[:, pick] for rows, pick in zip(improver.graph.rows, start, strict=True)]
        )
        self.near = improver.costs.copy()
        for slot, beside in enumerate(improver.beside):
            for other, table in beside:
                self.near[self.range_of(other)] += table[:, self.picks[slot]]
        self.total = total  # [1] above that of some start

    def range_of(self, slot: int) -> slice:
        """Where the candidates of a slot stand in the row of all."""
        return slice(self.improver.first[slot], self.improver.first[slot + 1])

    def gains(self) -> Floats:
        """What the cost would rise by with each candidate in its slot [1]; infinite for those that are there."""
        i = self.improver
        values = self.near + self._more(self.counts[i.rule] - self.own[i.of_slot, i.rule])
        now: Ints = i.first[:-1] + np.array(self.picks)
        gain: Floats = values - values[now][i.slot_of]
        gain[now] = np.inf
        return gain

    def counted_on(self, counts: Floats) -> Floats:
        """What each candidate alone adds to what is paid for rules, on top of counts of shape (rules,) [1]."""
        return self._more(counts[self.improver.rule])

    def _more(self, without: Floats) -> Floats:
        i = self.improver
        more = i.missed(without + i.value) - i.missed(without)
        return np.bincount(i.candidate, weights=more, minlength=len(self.near)).astype(np.float64)

    def move(self, slot: int, pick: int) -> None:
        """Another candidate for a slot, whatever that adds."""
        if pick != self.picks[slot]:
            self.change(slot, pick, float(self.gains()[self.improver.first[slot] + pick]))

    def change(self, slot: int, pick: int, gain: float) -> None:
        """Another candidate for a slot."""
        before = self.picks[slot]
        for other, table in self.improver.beside[slot]:
            self.near[self.range_of(other)] += table[:, pick] - table[:, before]
        rows = self.improver.graph.rows[slot]
        self.counts += rows[:, pick] - rows[:, before]
        self.own[slot] = rows[:, pick]
        self.picks[slot] = pick
        self.total += gain
