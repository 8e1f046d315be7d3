"""Smallest distance of every pair of dancers, proven, and when it is below a requirement.

Stage frame [m], beats. A dancer is seven capsules, nine with props that extend behind the hand
(`motion.performers.body_parts.PARTS`); the distance of two dancers is the smallest distance between a part of
one and a part of the other, radii subtracted.

Three steps, each only for what the previous one leaves undecided:
1. Reach balls on the plan. While they stay a requirement apart, nothing is sampled.
2. A separating direction: along any unit vector n, all points of one dancer stay below a level and
   all points of the other above it, over a whole interval, from their positions, their velocities along n
   and their bounded accelerations. The gap between the levels is a lower bound of the distance.
3. The same for each pair of parts, along the direction of their nearest points.
"""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.certified import (
    TOLERANCE,
    CertifiedMinima,
    Sample,
    Spans,
    joined_spans,
    search,
)
from sequencer.motion.clearance.by_slice import RowMinima, SlicedSearch
from sequencer.motion.clearance.grid import Cells, cells
from sequencer.motion.clearance.pair_kernel import PairKernel
from sequencer.motion.performers.body_parts import PARTS
from sequencer.motion.performers.dancer import Dancer

_BATCH = 64  # pairs searched at a time
_SCREENED = 2048  # pairs screened at a time, to limit memory
_WINDOW = 16  # cells processed together when pairs are first screened


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Approaches:
    """Smallest distance of every pair, and the spans below its requirement; p pairs."""

    first: Ints  # (p,) index of a dancer
    second: Ints  # (p,) index of a dancer, above `first`
    distance: Floats  # (p,) [m] to the tolerance; a lower bound if `dismissed`
    at: Floats  # (p,) [beats]; for those dismissed, where the bound was taken
    part: Ints  # (p, 2) index into PARTS; -1 for those dismissed
    dismissed: Floats  # (p,) true if the pair was never sampled
    spans: Spans  # group is the pair
    evaluations: int  # number of intervals examined


def approaches(
    dancers: Sequence[Dancer],
    start: float,
    end: float,
    *,
    required: float,
    minima: bool = True,
    tolerance: float = TOLERANCE,
    pairs: Sequence[tuple[int, int]] | None = None,
) -> Approaches:
    """Search every pair in a cast between two beats, or some pairs.

    Parameters
    ----------
    dancers : sequence of Dancer
    start, end : float
        Span to search [beats].
    required : float
        Distance that two dancers must keep [m].
    minima : bool
        False if distances above the requirement do not matter; they are then reported as the requirement
        itself, a lower bound that costs nothing.
    tolerance : float
        Largest error of a distance [m].
    pairs : sequence of (int, int), optional
        The pairs to search, as indices of dancers; all of them if left out.

    Returns
    -------
    approaches : Approaches

    Raises
    ------
    ValueError
        If a bound is not finite, so that nothing can be proven.
    """
    grid = cells(dancers, start, end)
    chosen_pairs = np.triu_indices(len(dancers), 1) if pairs is None else np.transpose(pairs)
    first, second = (np.asarray(index, dtype=np.int64) for index in chosen_pairs)
    bound, when = _reach_bounds(grid, first, second)
    p = len(first)
    distance, at = bound.copy(), when.copy()
    part = np.full((p, 2), -1, dtype=np.int64)
    dismissed = np.ones(p)
    spans: list[tuple[Ints, Floats, Floats]] = []
    evaluations = 0
    near = np.flatnonzero(bound < required)
    for low in range(0, len(near), _BATCH):
        chosen = near[low : low + _BATCH]
        some = _Pairs(grid, first[chosen], second[chosen], required, minima, tolerance)
        found, reached = some.searched()
        evaluations += found.evaluations
        hit = np.isfinite(found.value)
        least = reached if minima else np.maximum(reached, required)
        distance[chosen] = np.where(hit, found.value, least)
        at[chosen[hit]] = found.at[hit]
        part[chosen[hit]] = np.stack(np.divmod(found.label[hit], len(PARTS)), axis=1)
        dismissed[chosen[hit]] = 0.0
        spans.append((chosen[found.spans.group], found.spans.start, found.spans.end))
    return Approaches(
        first=first,
        second=second,
        distance=distance,
        at=at,
        part=part,
        dismissed=dismissed,
        spans=joined_spans(spans),
        evaluations=evaluations,
    )


def _reach_bounds(grid: Cells, first: Ints, second: Ints) -> tuple[Floats, Floats]:
    """Lower bound of every pair's distance from reach balls over windows of cells, and its time."""
    cuts = np.arange(0, grid.reach.shape[1], _WINDOW)
    low, high = (each.reduceat(grid.place, cuts, axis=1) for each in (np.minimum, np.maximum))
    middle = 0.5 * (low + high)  # (n, w, 2)
    off = grid.place - np.repeat(middle, np.diff(cuts, append=grid.reach.shape[1]), axis=1)
    ball = np.hypot(off[..., 0], off[..., 1]) + grid.place_uncertainty + grid.reach
    ball = np.maximum.reduceat(ball, cuts, axis=1)
    times = 0.5 * (grid.edges[cuts] + grid.edges[np.append(cuts[1:], grid.reach.shape[1])])
    bound, when = np.empty(len(first)), np.empty(len(first))
    for begin in range(0, len(first), _SCREENED):
        some = slice(begin, begin + _SCREENED)
        i, j = first[some], second[some]
        across = middle[i] - middle[j]
        gap = np.hypot(across[..., 0], across[..., 1]) - ball[i] - ball[j]
        least = np.argmin(gap, axis=1)  # of equal ones the earliest
        bound[some] = np.take_along_axis(gap, least[:, None], axis=1)[:, 0]
        when[some] = times[least]
    return bound, when


@dataclass(frozen=True, slots=True, eq=False)
class _Pairs:
    """Some pairs, searched together."""

    grid: Cells
    first: Ints
    second: Ints
    required: float
    minima: bool
    tolerance: float

    def searched(self) -> tuple[RowMinima, Floats]:
        """What is found of each pair; also their lower bounds from reach balls alone."""
        gap = self._gaps()
        search = SlicedSearch(
            grid=self.grid,
            gap=gap,
            required=np.full(len(gap), self.required),
            tolerance=self.tolerance,
            key=self._key,
            sample=self._sample,
            search=self._search,
            minima=self.minima,
        )
        return search.found(), gap.min(axis=1)

    def _gaps(self) -> Floats:
        """Lower bound of each pair's distance in each cell, from reach balls, shape (p, c) [m]."""
        grid, first, second = self.grid, self.first, self.second
        across = grid.place[first] - grid.place[second]
        gap = np.hypot(across[..., 0], across[..., 1])
        ball = grid.place_uncertainty + grid.reach
        gap -= ball[first] + ball[second]
        return np.asarray(gap)

    def _key(self, pair: int, s: int) -> Hashable | None:
        keys = self.grid.keys
        own = keys[self.first[pair]][s], keys[self.second[pair]][s]
        return None if None in own else ("pair", *own, self.grid.within[s])

    def _sample(self, pair: Ints, cell: Ints, beats: Floats) -> Sample:
        kernel = PairKernel(self.grid, self.first[pair], self.second[pair], cell)
        n = len(beats)
        return kernel.sample(np.arange(n), beats, np.zeros(n), np.full(n, np.inf))

    def _search(
        self, pair: Ints, cell: Ints, group: Ints, required: Floats, best: Floats
    ) -> CertifiedMinima:
        """Search pairs over the given cells, starting from known values of each group."""
        grid, first, second = self.grid, self.first, self.second
        # Split cells at once until the second-order term is 0.4 m: wider ones are never decisive.
        bend = grid.acceleration[first[pair], cell].max(axis=1)
        bend += grid.acceleration[second[pair], cell].max(axis=1)
        width = grid.end[cell] - grid.start[cell]
        count = np.maximum(width * np.sqrt(np.maximum(bend, 1e-12) / 3.2), 1.0)
        count = 2 ** np.ceil(np.log2(count)).astype(np.int64)
        row = np.repeat(np.arange(len(pair)), count)
        place = np.arange(len(row)) - np.repeat(np.cumsum(count) - count, count)
        step = (width / count)[row]
        begin = grid.start[cell][row] + step * place
        pair, cell = pair[row], cell[row]
        kernel = PairKernel(grid, first[pair], second[pair], cell)
        return search(
            kernel.sample,
            group=group[row],
            start=begin,
            end=begin + step,
            required=required,
            best=best,
            tolerance=self.tolerance,
            apart=True,
        )
