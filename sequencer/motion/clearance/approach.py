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

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.geometry.certified import (
    TOLERANCE,
    CertifiedMinima,
    Sample,
    Spans,
    joined_spans,
    search,
)
from sequencer.motion.clearance.by_slice import RowMinima, SlicedSearch
from sequencer.motion.clearance.grid import Cells, cells, side_by_side
from sequencer.motion.clearance.pair_kernel import PairKernel
from sequencer.motion.performers.body_parts import PARTS
from sequencer.motion.performers.dancer import Dancer

_BATCH = 64  # pairs searched at a time
# Pairs times cells of casts that are searched together: what is small costs by its steps, what is larger by its memory.
_TOGETHER = 1_200
_STEP = 0.25  # [beats] between instants that are looked at before a pair is searched
_AT_ONCE, _ROUNDS = 8, 6  # of them, and how often
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
    evaluations: int  # number of intervals examined, of all casts that were searched with it


class _Sought(NamedTuple):
    """What is sought of a pair."""

    required: float  # [m]
    minima: bool = True
    tolerance: float = TOLERANCE  # [m]
    spans_only: bool = False
    enough: tuple[float, float] | None = None  # [beats]


class SearchedCast(NamedTuple):
    """Dancers who are searched between two beats: all their pairs, or some."""

    dancers: Sequence[Dancer]
    start: float  # [beats]
    end: float  # [beats]
    pairs: Sequence[tuple[int, int]] | None = None  # indices of dancers


class _Screened:
    """A cast's pairs, screened by reach balls, and what has been found of those that may come near."""

    def __init__(self, cast: SearchedCast, required: float) -> None:
        self.grid = cells(cast.dancers, cast.start, cast.end)
        pairs = np.triu_indices(len(cast.dancers), 1) if cast.pairs is None else cast.pairs
        index = pairs if cast.pairs is None else np.transpose(pairs)
        self.first, self.second = (np.asarray(side, dtype=np.int64) for side in index)
        bound, self.at = _reach_bounds(self.grid, self.first, self.second)
        self.distance = bound.copy()
        self.near = np.flatnonzero(bound < required)
        self.part = np.full((len(bound), 2), -1, dtype=np.int64)
        self.dismissed = np.ones(len(bound))
        self.spans: list[tuple[Ints, Floats, Floats]] = []
        self.evaluations = 0

    def take(self, chosen: Ints, found: RowMinima, least: Floats, low: int) -> None:
        """Take over what was found of some pairs, which are the rows from `low` on."""
        rows = slice(low, low + len(chosen))
        value, at, label = found.value[rows], found.at[rows], found.label[rows]
        hit = np.isfinite(value)
        self.distance[chosen] = np.where(hit, value, least[rows])
        self.at[chosen[hit]] = at[hit]
        self.part[chosen[hit]] = np.stack(np.divmod(label[hit], len(PARTS)), axis=1)
        self.dismissed[chosen[hit]] = 0.0
        own = (found.spans.group >= rows.start) & (found.spans.group < rows.stop)
        group = chosen[found.spans.group[own] - low]
        self.spans.append((group, found.spans.start[own], found.spans.end[own]))
        self.evaluations += found.evaluations

    def meet(self, chosen: Ints, at: Floats) -> None:
        """Take over instants at which some pairs are too close."""
        if len(chosen):
            self.spans.append((chosen, at, at))

    def approaches(self) -> Approaches:
        """All that was found."""
        return Approaches(
            first=self.first,
            second=self.second,
            distance=self.distance,
            at=self.at,
            part=self.part,
            dismissed=self.dismissed,
            spans=joined_spans(self.spans),
            evaluations=self.evaluations,
        )


_Part = tuple[_Screened, Ints]  # a cast and some of its pairs


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
    cast = SearchedCast(dancers, start, end, pairs)
    (found,) = approaches_each([cast], required=required, minima=minima, tolerance=tolerance)
    return found


def approaches_each(
    casts: Sequence[SearchedCast],
    *,
    required: float,
    minima: bool = True,
    tolerance: float = TOLERANCE,
) -> list[Approaches]:
    """Search several casts that know nothing of each other; what is found of one does not depend on the others.

    Small casts are searched together: what that costs is mostly the number of steps, not of cells.

    Parameters
    ----------
    casts : sequence of SearchedCast
    required, minima, tolerance
        As for `approaches`.

    Returns
    -------
    found : list of Approaches
        One for each cast.

    Raises
    ------
    ValueError
        As `approaches`.
    """
    found = _searched(casts, _Sought(required, minima, tolerance))
    return [each.approaches() for each in found]


def spells_below(
    casts: Sequence[SearchedCast], *, required: float, enough: tuple[float, float] | None = None
) -> list[Spans]:
    """From when to when pairs of several casts are nearer than a requirement; how near is not sought.

    Parameters
    ----------
    casts : sequence of SearchedCast
    required : float [m]
    enough : (float, float), optional
        Of a pair that is found to be nearer at an instant between these beats, that instant is all that is told.

    Returns
    -------
    spans : list of Spans
        One for each cast, the same as of `approaches`; the group is the pair.

    Raises
    ------
    ValueError
        As `approaches`.
    """
    found = _searched(casts, _Sought(required, minima=False, spans_only=True, enough=enough))
    return [joined_spans(each.spans) for each in found]


def _searched(casts: Sequence[SearchedCast], sought: _Sought) -> list[_Screened]:
    found = [_Screened(cast, sought.required) for cast in casts]
    parts = [
        (each, each.near[low : low + _BATCH])
        for each in found
        for low in range(0, len(each.near), _BATCH)
    ]
    for together in _together(parts):
        grids = [each.grid for each, _ in together]
        begins = np.cumsum([0, *(len(grid.reach) for grid in grids)])
        first, second = (
            np.concatenate([begin + index for begin, index in zip(begins, own, strict=False)])
            for own in (
                [each.first[chosen] for each, chosen in together],
                [each.second[chosen] for each, chosen in together],
            )
        )
        some = _Pairs(side_by_side(grids), first, second, sought)
        met = some.met([(each.grid, len(chosen)) for each, chosen in together])
        left = np.isnan(met)
        own, reached = some.only(left).searched()
        least = reached if sought.minima else np.maximum(reached, sought.required)
        low, done = 0, 0
        for each, chosen in together:
            here = slice(low, low + len(chosen))
            each.meet(chosen[~left[here]], met[here][~left[here]])
            each.take(chosen[left[here]], own, least, done)
            low, done = here.stop, done + int(np.sum(left[here]))
    return found


def _together(parts: Sequence[_Part]) -> Iterator[list[_Part]]:
    """Parts that are searched together: of small casts several, in order."""
    some, size = list[_Part](), 0
    for part in parts:
        grid, own = part[0].grid, len(part[1]) * part[0].grid.reach.shape[1]
        fits = size + own <= _TOGETHER and grid.points == some[0][0].grid.points if some else True
        if not fits or (some and some[-1][0] is part[0]):  # of one cast never two at once
            yield some
            some, size = [], 0
        some.append(part)
        size += own
    if some:
        yield some


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
    sought: _Sought

    def only(self, which: Bools) -> "_Pairs":
        """Some of them."""
        if np.all(which):
            return self
        return replace(self, first=self.first[which], second=self.second[which])

    def met(self, casts: Sequence[tuple[Cells, int]]) -> Floats:
        """For each pair an instant at which it is too close, of those that are enough; nan where none was seen."""
        out = np.full(len(self.first), np.nan)
        if self.sought.enough is None:
            return out
        low, high = self.sought.enough
        begins = np.cumsum([0, *(len(grid.edges) for grid, _ in casts)])
        all_beats = np.arange(low + 0.5 * _STEP, high, _STEP)
        rounds = min(-(-len(all_beats) // _AT_ONCE), _ROUNDS)
        for k in range(rounds):
            left = np.flatnonzero(np.isnan(out))
            if not len(left):
                break
            beats = all_beats[k :: -(-len(all_beats) // _AT_ONCE)]  # each time spread over all
            cells = np.concatenate(
                [
                    np.tile(begin + np.searchsorted(grid.edges, beats, side="right") - 1, (n, 1))
                    for begin, (grid, n) in zip(begins, casts, strict=False)
                ]
            )[left].ravel()
            pair, at = np.repeat(left, len(beats)), np.tile(beats, len(left))
            kernel = PairKernel(self.grid, self.first[pair], self.second[pair], cells)
            rows = np.arange(len(at))
            value = kernel.sample(
                rows, at, np.zeros(len(at)), np.full(len(at), self.sought.required)
            ).value
            below = value.reshape(len(left), -1) < self.sought.required
            hit = np.any(below, axis=1)
            out[left[hit]] = beats[np.argmax(below[hit], axis=1)]
        return out

    def searched(self) -> tuple[RowMinima, Floats]:
        """What is found of each pair; also their lower bounds from reach balls alone."""
        gap, sought = self._gaps(), self.sought
        search = SlicedSearch(
            grid=self.grid,
            gap=gap,
            required=np.full(len(gap), sought.required),
            tolerance=sought.tolerance,
            key=self._key,
            sample=self._sample,
            search=self._search,
            minima=sought.minima,
            spans_only=sought.spans_only,
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
            tolerance=self.sought.tolerance,
            apart=True,
        )
