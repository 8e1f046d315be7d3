"""What no choice can cost less than, rules that count included."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.planning.drafting.optimising.cost_graph import CostGraph, counted, priced
from sequencer.planning.drafting.optimising.elimination import eliminate, elimination_order
from sequencer.planning.drafting.optimising.shifting import shifted

_HALVED_AFTER = 4  # steps without a better bound until steps are halved
_SMALLEST_STEP = 0.002  # [1] of Polyak's step
_DEFLECTION = 0.3  # [1] share of the last direction in the next
_RISE = 1e-4  # [1] of the bound: what counts as having risen
_UNKNOWN_GAP = 0.05  # [1] of the bound, where no choice is known yet
_SHIFTED_EACH = 10  # rounds
_PASSES = 6  # over a table in one sweep


@dataclass(frozen=True, slots=True, kw_only=True)
class GraphBound:
    """A bound of a graph, and what was seen on the way."""

    bound: float  # [1]
    multipliers: Floats  # (rules,) [1] at which it was found
    picks: tuple[int, ...]  # the relaxed choice there
    least: (
        tuple[Floats, ...] | None
    )  # of each slot, (n_k,) [1]: no choice with the candidate costs less
    costs: tuple[Floats, ...]  # of each slot, (n_k,) [1]: shifted, the same in sum
    pairs: Mapping[tuple[int, int], Floats]
    work: int  # table entries computed


def bounded(
    graph: CostGraph,
    multipliers: Floats,
    target: Callable[[], float],
    *,
    rounds: int,
    limit: int,
    sweeps: int = 0,
    seen: Callable[[tuple[int, ...]], None] | None = None,
) -> GraphBound:
    """The best bound found by moving what each count is worth, `multipliers`, along what the relaxed choices miss.

    Parameters
    ----------
    graph : CostGraph
        All of its candidates possible.
    multipliers : ndarray, shape (rules,) [1]
        To start from.
    target : callable
        The cost of the best choice known [1], asked before each step; infinite where there is none.
    rounds : int
    limit : int
        Entries of a table.
    sweeps : int
        How often costs are shifted beforehand, where tables do not hold a whole bucket.
    seen : callable, optional
        Called with each relaxed choice, and may make a routine of it.

    Notes
    -----
    Source: subgradient ascent with B. T. Polyak's step (1969) and a deflected direction, P. M. Camerini, L. Fratta and F. Maffioli
    (1975); from memory. Each bound holds by itself, however the steps were chosen.
    """
    order = elimination_order([len(c) for c in graph.costs], sorted(graph.pairs))
    shifts: list[Floats] = [np.zeros(len(c)) for c in graph.costs]
    pairs: Mapping[tuple[int, int], Floats] = graph.pairs
    ascent = _Ascent(graph, multipliers)
    best_picks = (0,) * len(graph.costs)
    work, exact, still = 0, True, False
    for turn in range(max(rounds, 1)):
        costs, constant = priced(graph, ascent.now)
        if not exact and sweeps and (still or turn % _SHIFTED_EACH == 1):
            # A shift found at these multipliers stays right at others: it only moves costs.
            moved, pairs = shifted(_plus(costs, shifts), pairs, sweeps)
            shifts = [m - c for m, c in zip(moved, costs, strict=True)]
            work += 2 * sweeps * _PASSES * sum(t.size for t in pairs.values())
        found = eliminate(_plus(costs, shifts), pairs, order, limit=limit)
        work, exact = work + found.work, found.exact
        if seen is not None:
            seen(found.picks)
        if ascent.took(found.bound + constant):
            best_picks = found.picks
        if ascent.best >= target() or not np.isfinite(ascent.best):
            break
        still = not ascent.stepped(found.picks, found.bound + constant, target())
        if ascent.weary or (still and (exact or ascent.waited >= _HALVED_AFTER)):
            break
    costs, constant = priced(graph, ascent.best_at)
    last = eliminate(_plus(costs, shifts), pairs, order, limit=limit, marginals=True)
    return GraphBound(
        bound=max(ascent.best, last.bound + constant),
        multipliers=ascent.best_at,
        picks=best_picks,
        least=None if last.least is None else tuple(v + constant for v in last.least),
        costs=tuple(_plus(graph.costs, shifts)),
        pairs=pairs,
        work=work + last.work,
    )


class _Ascent:
    """Where the multipliers stand, and where they were best."""

    def __init__(self, graph: CostGraph, multipliers: Floats) -> None:
        self.graph = graph
        self.now = self._allowed(multipliers)
        self.best = -np.inf
        self.best_at = self.now
        self.waited = 0  # steps since the bound last rose
        self._direction: Floats = np.zeros(len(self.now))
        self._step = 1.0  # [1] of Polyak's

    @property
    def weary(self) -> bool:
        """Whether steps have become too small to bring anything."""
        return self._step < _SMALLEST_STEP

    def _allowed(self, multipliers: Floats) -> Floats:
        allowed: Floats = np.minimum(np.maximum(multipliers, 0.0), self.graph.prices)
        return allowed

    def took(self, bound: float) -> bool:
        """Whether the bound where they stand is the best so far."""
        if bound <= self.best:
            self.waited += 1
            return False
        self.waited = 0 if bound > self.best + _RISE * abs(self.best) else self.waited
        self.best = bound
        self.best_at = self.now
        return True

    def stepped(self, picks: tuple[int, ...], bound: float, goal: float) -> bool:
        """One step along what the picks miss; False where they miss nothing that a multiplier could bring."""
        graph = self.graph
        missing = graph.least - counted(graph, picks)
        direction: Floats = missing + _DEFLECTION * self._direction
        direction[(self.now <= 0) & (direction < 0)] = 0.0
        direction[(self.now >= graph.prices) & (direction > 0)] = 0.0
        self._direction = direction
        length = float(direction @ direction)
        if length <= 0:
            return False
        if self.waited >= _HALVED_AFTER:
            self._step, self.waited, self.now = 0.5 * self._step, 0, self.best_at
        gap = goal - bound if np.isfinite(goal) else _UNKNOWN_GAP * abs(bound) + 1.0
        self.now = self._allowed(self.now + self._step * gap / length * direction)
        return True


def _plus(costs: Sequence[Floats], shifts: Sequence[Floats]) -> list[Floats]:
    return [c + s for c, s in zip(costs, shifts, strict=True)]
