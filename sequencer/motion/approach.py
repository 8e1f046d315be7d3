"""How close every two dancers come, proven, and when they are under a requirement.

Stage frame [m], beats. A dancer is seven capsules (`motion.dancer.PARTS`); the distance of two
dancers is the smallest distance of a part of one from a part of the other, radii taken off.

Three steps, each only for what the one before leaves open:
1. Reach balls on the plan. While they stay a requirement apart, nothing is sampled.
2. A separating direction: along any unit vector n, all points of one dancer stay below a level and
   all points of the other above it, over a whole interval, by their places, their rates along n and
   their bounded accelerations. The gap between the levels is a lower bound of the distance.
3. The same for each pair of parts, along the direction of their nearest points.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.certified import TOLERANCE, Found, Sample, Spans, search
from sequencer.geometry.distances import segment_segment
from sequencer.motion.cells import Cells, cells
from sequencer.motion.dancer import PARTS, Dancer
from sequencer.motion.sampling import States, states

_STARTS = np.array([part.start for part in PARTS])
_ENDS = np.array([part.end for part in PARTS])
_POINT_RADIUS = np.array([0, 0, 1, 1, 3, 4, 4, 6])  # the thickest part that ends at each point
_ARMS = np.array([1, 4])  # parts whose radius changes
_ARM_OF_POINT = np.array([-1, -1, 0, 0, -1, 1, 1, -1])  # whose change each point feels
_BATCH = 64  # pairs searched at once
_WINDOW = 16  # cells looked at together when pairs are first told apart


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Approaches:
    """Smallest distance of every pair, and the spans under its requirement; p pairs."""

    first: Ints  # (p,) index of a dancer
    second: Ints  # (p,) index of a dancer, above `first`
    distance: Floats  # (p,) [m] to the tolerance; a lower bound where `dismissed`
    at: Floats  # (p,) [beats]; where the bound was taken, for those dismissed
    part: Ints  # (p, 2) index into PARTS; -1 for those dismissed
    dismissed: Floats  # (p,) 1 where the pair was never sampled
    spans: Spans  # group is the pair
    evaluations: int  # intervals looked at


def approaches(
    dancers: Sequence[Dancer],
    start: float,
    end: float,
    *,
    required: float,
    minima: bool = True,
    tolerance: float = TOLERANCE,
) -> Approaches:
    """Search every pair of a cast between two beats.

    Parameters
    ----------
    dancers : sequence of Dancer
    start, end : float
        From when to when [beats].
    required : float
        Distance that two dancers must keep [m].
    minima : bool
        False where distances over the requirement are of no interest; they are then told as the
        requirement itself, which is a lower bound, and cost nothing.
    tolerance : float
        Largest error of a distance [m].

    Returns
    -------
    approaches : Approaches

    Raises
    ------
    ValueError
        If a bound is not finite, so that nothing can be proven.
    """
    grid = cells(dancers, start, end)
    first, second = (
        np.asarray(index, dtype=np.int64) for index in np.triu_indices(len(dancers), 1)
    )
    bound, when = _apart(grid, first, second)
    p = len(first)
    distance, at = bound.copy(), when.copy()
    part = np.full((p, 2), -1, dtype=np.int64)
    dismissed = np.ones(p)
    spans: list[tuple[Ints, Floats, Floats]] = []
    evaluations = 0
    near = np.flatnonzero(bound < required)
    for low in range(0, len(near), _BATCH):
        chosen = near[low : low + _BATCH]
        found, reached = _searched(
            dancers, grid, first[chosen], second[chosen], required, minima, tolerance
        )
        evaluations += found.evaluations
        hit = found.row >= 0
        least = reached if minima else np.maximum(reached, required)
        distance[chosen] = np.where(hit, found.value, least)
        at[chosen[hit]] = found.at[hit]
        part[chosen[hit]] = np.stack(np.divmod(found.label[hit], len(PARTS)), axis=1)
        dismissed[chosen[hit]] = 0.0
        spans.append((chosen[found.spans.group], found.spans.start, found.spans.end))
    group, begin, finish = (
        (np.concatenate(column) for column in zip(*spans, strict=True))
        if spans
        else (np.zeros(0, dtype=np.int64), np.zeros(0), np.zeros(0))
    )
    return Approaches(
        first=first,
        second=second,
        distance=distance,
        at=at,
        part=part,
        dismissed=dismissed,
        spans=Spans(group=group, start=begin, end=finish),
        evaluations=evaluations,
    )


def _apart(grid: Cells, first: Ints, second: Ints) -> tuple[Floats, Floats]:
    """Lower bound of every pair's distance from reach balls over windows of cells, and when."""
    bound: Floats = np.full(len(first), np.inf)
    when: Floats = np.zeros(len(first))
    for low in range(0, grid.reach.shape[1], _WINDOW):
        window = slice(low, low + _WINDOW)
        place = grid.place[:, window]
        middle = 0.5 * (place.min(axis=1) + place.max(axis=1))
        off = place - middle[:, None]
        ball = np.max(
            np.hypot(off[..., 0], off[..., 1]) + grid.stray[:, window] + grid.reach[:, window],
            axis=1,
        )
        across = middle[first] - middle[second]
        gap = np.hypot(across[:, 0], across[:, 1]) - ball[first] - ball[second]
        closer = gap < bound
        bound = np.where(closer, gap, bound)
        when = np.where(closer, 0.5 * (grid.edges[low] + grid.end[window][-1]), when)
    return bound, when


def _searched(
    dancers: Sequence[Dancer],
    grid: Cells,
    first: Ints,
    second: Ints,
    required: float,
    minima: bool,
    tolerance: float,
) -> tuple[Found, Floats]:
    """Search some pairs; also their lower bounds from reach balls alone."""
    across = grid.place[first] - grid.place[second]
    gap = np.hypot(across[..., 0], across[..., 1])
    gap -= (grid.stray + grid.reach)[first] + (grid.stray + grid.reach)[second]
    want = gap < required
    taken = np.zeros_like(want)
    found: Found | None = None
    evaluations = 0
    spans: Spans | None = None
    while np.any(want & ~taken):
        # By time, so that a state is worked out once for all pairs that ask for it.
        cell, pair = np.nonzero((want & ~taken).T)
        known = found.value if found else np.full(len(first), np.inf if minima else required)
        again = _search_cells(dancers, grid, first, second, pair, cell, required, tolerance, known)
        again = again if found is None else _better(again, found)
        evaluations += again.evaluations
        # Cells taken up later lie beyond the requirement: only the first search finds spans.
        spans = again.spans if spans is None else spans
        found = again
        if not minima:
            break
        taken |= want
        want = gap < found.value[:, None] - tolerance
        want &= np.any(taken, axis=1)[:, None]
    if found is None or spans is None:
        none = np.zeros(0)
        nothing = np.full(len(first), -1, dtype=np.int64)
        found = Found(
            value=np.full(len(first), np.inf),
            at=np.full(len(first), np.nan),
            row=nothing,
            label=nothing,
            lower=np.full(len(first), np.inf),
            spans=Spans(group=none.astype(np.int64), start=none, end=none),
            evaluations=0,
        )
        return found, gap.min(axis=1)
    return (
        Found(
            value=found.value,
            at=found.at,
            row=found.row,
            label=found.label,
            lower=found.lower,
            spans=spans,
            evaluations=evaluations,
        ),
        gap.min(axis=1),
    )


def _search_cells(
    dancers: Sequence[Dancer],
    grid: Cells,
    first: Ints,
    second: Ints,
    pair: Ints,
    cell: Ints,
    required: float,
    tolerance: float,
    known: Floats,
) -> Found:
    """Search pairs over the cells given, keeping what is known already."""
    # Cells are cut at once to where the second-order term is 0.4 m: wider ones decide nothing.
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
    kernel = _Kernel(dancers, grid, first[pair], second[pair], cell)
    return search(
        kernel.sample,
        group=pair,
        start=begin,
        end=begin + step,
        required=np.full(len(first), required),
        best=known,
        tolerance=tolerance,
    )


def _better(found: Found, known: Found) -> Found:
    """What a later search adds to what was known before it."""
    better = found.value < known.value
    return Found(
        value=found.value,
        at=np.where(better, found.at, known.at),
        row=np.where(better, found.row, known.row),
        label=np.where(better, found.label, known.label),
        lower=np.minimum(found.lower, known.lower),
        spans=found.spans,
        evaluations=found.evaluations,
    )


@dataclass(frozen=True, slots=True, eq=False)
class _Kernel:
    """Samples of pairs of dancers; one row an interval to start from."""

    dancers: Sequence[Dancer]
    grid: Cells
    first: Ints
    second: Ints
    cell: Ints

    def sample(self, rows: Ints, centre: Floats, half: Floats, enough: Floats) -> Sample:
        """Value and bounds of the distance over intervals."""
        i, j, cell = self.first[rows], self.second[rows], self.cell[rows]
        state, (a, b) = states(self.dancers, (i, j), centre)
        lower = self._separated(state, a, b, i, j, cell, half)
        value = np.full(len(rows), np.inf)
        upper = np.full(len(rows), np.inf)
        label = np.full(len(rows), -1, dtype=np.int64)
        left = np.flatnonzero(lower < enough)
        if len(left):
            exact = self._parts(
                state, a[left], b[left], i[left], j[left], cell[left], half[left], enough[left]
            )
            value[left], upper[left], label[left] = exact.value, exact.upper, exact.label
            lower[left] = np.maximum(lower[left], exact.lower)
        return Sample(value, lower, upper, label)

    def _growth(self, who: Ints, cell: Ints) -> Floats:
        """How fast each arm's radius can change, shape (n, 2) [m/beat]."""
        slope = np.array([dancer.body.elbow_slope for dancer in self.dancers])
        return np.asarray(slope[who, None] * self.grid.swing[who, cell])

    def _level(
        self, state: States, at: Ints, who: Ints, cell: Ints, half: Floats, n: Floats
    ) -> Floats:
        """Highest that any part of a dancer can come along n over an interval."""
        along = np.einsum("nkc,nc->nk", state.points[at], n)
        rate = np.abs(np.einsum("nkc,nc->nk", state.rates[at], n))
        w = half[:, None]
        change = np.minimum(
            rate * w + 0.5 * self.grid.acceleration[who, cell] * w * w,
            self.grid.speed[who, cell] * w,
        )
        radius = state.radii[at][:, _POINT_RADIUS]
        growth = np.zeros_like(radius)
        growth[:, _ARM_OF_POINT >= 0] = self._growth(who, cell)[
            :, _ARM_OF_POINT[_ARM_OF_POINT >= 0]
        ]
        return np.asarray(np.max(along + change + radius + growth * w, axis=1))

    def _separated(
        self, state: States, a: Ints, b: Ints, i: Ints, j: Ints, cell: Ints, half: Floats
    ) -> Floats:
        """Lower bound from the direction between the two places."""
        n = state.points[b, 0] - state.points[a, 0]
        size = np.linalg.norm(n, axis=1, keepdims=True)
        n = np.where(size > 1e-9, n / np.maximum(size, 1e-9), np.array([1.0, 0.0, 0.0]))
        top = self._level(state, a, i, cell, half, n)
        bottom = -self._level(state, b, j, cell, half, -n)
        return bottom - top

    def _parts(
        self,
        state: States,
        a: Ints,
        b: Ints,
        i: Ints,
        j: Ints,
        cell: Ints,
        half: Floats,
        enough: Floats,
    ) -> Sample:
        """Value and bounds from the nearest points of every pair of parts that matters."""
        n, k = len(a), len(PARTS)
        speed_a = self._part_speed(i, cell)
        speed_b = self._part_speed(j, cell)
        across = state.points[b, 0] - state.points[a, 0]
        low_a, high_a, thick_a = self._boxes(state, a, i, cell, half, across)
        low_b, high_b, thick_b = self._boxes(state, b, j, cell, half, across)
        square = np.zeros((n, k, k))
        for axis in range(3):
            gap = low_b[:, None, :, axis] - high_a[:, :, None, axis]
            np.maximum(gap, low_a[:, :, None, axis] - high_b[:, None, :, axis], out=gap)
            np.maximum(gap, 0.0, out=gap)
            gap *= gap
            square += gap
        gap = np.sqrt(square, out=square)
        gap -= thick_a[:, :, None]
        gap -= thick_b[:, None]
        open_ = gap < enough[:, None, None]
        lower = np.where(open_, np.inf, gap).reshape(n, -1).min(axis=1)
        row, p, q = np.nonzero(open_)
        value, upper = np.full(n, np.inf), np.full(n, np.inf)
        label = np.full(n, -1, dtype=np.int64)
        if not len(row):
            return Sample(value, lower, upper, label)

        f, low = self._witness(state, a[row], b[row], i[row], j[row], cell[row], half[row], p, q)
        high = f + (speed_a[row, p] + speed_b[row, q]) * half[row]
        first = np.flatnonzero(np.append(True, np.diff(row) != 0))
        has = row[first]
        value[has] = np.minimum.reduceat(f, first)
        upper[has] = np.minimum.reduceat(high, first)
        lower[has] = np.minimum(lower[has], np.minimum.reduceat(low, first))
        # Written last to first, so that the first of equal pairs of parts stays.
        smallest = np.flatnonzero(f <= value[row])[::-1]
        label[row[smallest]] = p[smallest] * k + q[smallest]
        return Sample(value, lower, upper, label)

    def _boxes(
        self, state: States, at: Ints, who: Ints, cell: Ints, half: Floats, across: Floats
    ) -> tuple[Floats, Floats, Floats]:
        """Box in which each part's axis stays over an interval, and its largest radius.

        The box lies along the direction between the two places, so that dancers side by side are
        told apart by one axis. Low and high corner, shape (n, 7, 3); radius, shape (n, 7).
        """
        size = np.hypot(across[:, 0], across[:, 1])
        safe = np.maximum(size, 1e-9)
        cos = np.where(size > 1e-9, across[:, 0] / safe, 1.0)[:, None]
        sin = np.where(size > 1e-9, across[:, 1] / safe, 0.0)[:, None]
        w = half[:, None]
        place, rate = state.points[at], state.rates[at]
        bend = 0.5 * self.grid.acceleration[who, cell] * w * w
        most = self.grid.speed[who, cell] * w
        low, high = np.empty((2, len(at), len(PARTS), 3))
        for axis in range(3):
            along, change = (
                cos * each[..., 0] + sin * each[..., 1]
                if axis == 0
                else cos * each[..., 1] - sin * each[..., 0]
                if axis == 1
                else each[..., 2]
                for each in (place, rate)
            )
            change = np.minimum(np.abs(change) * w + bend, most)
            up, down = along + change, along - change
            high[..., axis] = np.maximum(up[:, _STARTS], up[:, _ENDS])
            low[..., axis] = np.minimum(down[:, _STARTS], down[:, _ENDS])
        thick = state.radii[at]
        thick[:, _ARMS] += self._growth(who, cell) * w
        return low, high, thick

    def _part_speed(self, who: Ints, cell: Ints) -> Floats:
        """Speed bound of each part's surface, shape (n, 7) [m/beat]."""
        speed = self.grid.speed[who, cell]
        own = np.maximum(speed[:, _STARTS], speed[:, _ENDS])
        own[:, _ARMS] += self._growth(who, cell)
        return np.asarray(own)

    def _witness(
        self,
        state: States,
        a: Ints,
        b: Ints,
        i: Ints,
        j: Ints,
        cell: Ints,
        half: Floats,
        p: Ints,
        q: Ints,
    ) -> tuple[Floats, Floats]:
        """Distance of parts p and q at the middle, and its lower bound over the interval."""
        ends_a, ends_b = (_STARTS[p], _ENDS[p]), (_STARTS[q], _ENDS[q])
        place_a = [state.points[a, end] for end in ends_a]
        place_b = [state.points[b, end] for end in ends_b]
        distance, s, t = segment_segment(*place_a, *place_b)
        n = place_b[0] + t[:, None] * (place_b[1] - place_b[0])
        n -= place_a[0] + s[:, None] * (place_a[1] - place_a[0])
        n /= np.maximum(distance, 1e-12)[:, None]
        size = np.linalg.norm(n, axis=1)  # 0 where the parts meet: then n proves nothing
        along_a = [np.einsum("nc,nc->n", place, n) for place in place_a]
        along_b = [np.einsum("nc,nc->n", place, n) for place in place_b]
        rate_a = [np.einsum("nc,nc->n", state.rates[a, end], n) for end in ends_a]
        rate_b = [np.einsum("nc,nc->n", state.rates[b, end], n) for end in ends_b]
        bend_a = [self.grid.acceleration[i, cell, end] for end in ends_a]
        bend_b = [self.grid.acceleration[j, cell, end] for end in ends_b]
        proven: Floats = np.full(len(p), np.inf)
        for x in (0, 1):
            for y in (0, 1):
                gap = along_b[y] - along_a[x] - np.abs(rate_b[y] - rate_a[x]) * half
                proven = np.minimum(proven, gap - 0.5 * (bend_a[x] + bend_b[y]) * half * half)
        proven = np.where(size > 0.5, proven, 0.0)
        growth_a = np.zeros(len(p))
        growth_b = np.zeros(len(p))
        for arm, part in enumerate(_ARMS):
            for growth, who, mine in ((growth_a, i, p), (growth_b, j, q)):
                of = mine == part
                growth[of] = self._growth(who[of], cell[of])[:, arm]
        radii = state.radii[a, p] + state.radii[b, q]
        speed_a = np.maximum(*(self.grid.speed[i, cell, end] for end in ends_a))
        speed_b = np.maximum(*(self.grid.speed[j, cell, end] for end in ends_b))
        proven = np.maximum(proven, distance - (speed_a + speed_b) * half)
        return distance - radii, proven - radii - (growth_a + growth_b) * half
