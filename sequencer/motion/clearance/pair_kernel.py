"""Samples of pairs of dancers over intervals: the distance at the middle and proven bounds around it.

Stage frame [m], beats. Steps 2 and 3 of `motion.clearance.approach`: one separating direction, then boxes and the
nearest points of every pair of parts.
"""

from dataclasses import dataclass
from functools import cache

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.certified import Sample
from sequencer.geometry.segments import segment_segment
from sequencer.motion.clearance.grid import Cells
from sequencer.motion.performers.body_parts import PARTS, parts_of
from sequencer.motion.performers.sampling import States, states

_ARMS = np.array([1, 4])  # parts whose radius changes


@dataclass(frozen=True, slots=True, eq=False)
class _Layout:
    """The points between which the parts run, and the parts that end at each point."""

    starts: Ints  # (k,) of each part
    ends: Ints  # (k,)
    first: Ints  # (p,) a part that ends at each point
    last: Ints  # (p,) another one, or the same; the thicker counts
    arms: Ints  # points at which an arm ends


@cache
def _layout(points: int) -> _Layout:
    parts = parts_of(points)
    at = [[k for k, part in enumerate(parts) if p in part[3:]] for p in range(points)]
    return _Layout(
        starts=np.array([part.start for part in parts]),
        ends=np.array([part.end for part in parts]),
        first=np.array([own[0] for own in at]),
        last=np.array([own[-1] for own in at]),
        arms=np.array([2, 3, 5, 6]),
    )


@dataclass(frozen=True, slots=True, eq=False)
class PairKernel:
    """Samples of pairs of dancers; one row per starting interval."""

    grid: Cells
    first: Ints
    second: Ints
    cell: Ints

    def sample(self, rows: Ints, centre: Floats, half: Floats, enough: Floats) -> Sample:
        """Value and bounds of the distance over intervals."""
        i, j, cell = self.first[rows], self.second[rows], self.cell[rows]
        state, (a, b) = states(self.grid.ensemble, (i, j), centre, self.grid.points)
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
        slope = self.grid.ensemble.elbow_slopes[who, None]
        return np.asarray(slope * self.grid.hand_speed[who, cell])

    def _level(
        self, state: States, at: Ints, who: Ints, cell: Ints, half: Floats, n: Floats
    ) -> Floats:
        """Upper bound of the extent of any part of a dancer along n over an interval."""
        along = np.einsum("nkc,nc->nk", state.points.take(at, axis=0), n)
        rate = np.abs(np.einsum("nkc,nc->nk", state.rates.take(at, axis=0), n))
        w = half[:, None]
        change = np.minimum(
            rate * w + 0.5 * self.grid.acceleration[who, cell] * w * w,
            self.grid.speed[who, cell] * w,
        )
        layout = _layout(self.grid.points)
        radii = state.radii.take(at, axis=0)
        level = along + change + np.maximum(radii[:, layout.first], radii[:, layout.last])
        level[:, layout.arms] += np.repeat(self._growth(who, cell), 2, axis=1) * w
        return np.asarray(np.max(level, axis=1))

    def _separated(
        self, state: States, a: Ints, b: Ints, i: Ints, j: Ints, cell: Ints, half: Floats
    ) -> Floats:
        """Lower bound from the direction between the two dancers' positions."""
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
        n, k = len(a), state.radii.shape[1]
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
        # Written last to first, so that the first of equal pairs of parts is kept.
        smallest = np.flatnonzero(f <= value[row])[::-1]
        label[row[smallest]] = p[smallest] * len(PARTS) + q[smallest]
        return Sample(value, lower, upper, label)

    def _boxes(
        self, state: States, at: Ints, who: Ints, cell: Ints, half: Floats, across: Floats
    ) -> tuple[Floats, Floats, Floats]:
        """Box in which each part's axis stays over an interval, and its largest radius.

        The box is aligned with the direction between the two positions, so that one axis separates dancers
        side by side. Low and high corner, shape (n, k, 3); radius, shape (n, k).
        """
        size = np.hypot(across[:, 0], across[:, 1])
        safe = np.maximum(size, 1e-9)
        cos = np.where(size > 1e-9, across[:, 0] / safe, 1.0)[:, None]
        sin = np.where(size > 1e-9, across[:, 1] / safe, 0.0)[:, None]
        w = half[:, None]
        place, rate = state.points.take(at, axis=0), state.rates.take(at, axis=0)
        bend = 0.5 * self.grid.acceleration[who, cell] * w * w
        most = self.grid.speed[who, cell] * w
        layout, thick = _layout(self.grid.points), state.radii.take(at, axis=0)
        low, high = np.empty((2, *thick.shape, 3))
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
            high[..., axis] = np.maximum(up[:, layout.starts], up[:, layout.ends])
            low[..., axis] = np.minimum(down[:, layout.starts], down[:, layout.ends])
        thick[:, _ARMS] += self._growth(who, cell) * w
        return low, high, thick

    def _part_speed(self, who: Ints, cell: Ints) -> Floats:
        """Speed bound of each part's surface, shape (n, k) [m/beat]."""
        layout, speed = _layout(self.grid.points), self.grid.speed[who, cell]
        own = np.maximum(speed[:, layout.starts], speed[:, layout.ends])
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
        starts, ends = _layout(self.grid.points).starts, _layout(self.grid.points).ends
        ends_a, ends_b = (starts[p], ends[p]), (starts[q], ends[q])
        place_a = [state.points[a, end] for end in ends_a]
        place_b = [state.points[b, end] for end in ends_b]
        distance, s, t = segment_segment(*place_a, *place_b)
        n = place_b[0] + t[:, None] * (place_b[1] - place_b[0])
        n -= place_a[0] + s[:, None] * (place_a[1] - place_a[0])
        n /= np.maximum(distance, 1e-12)[:, None]
        size = np.linalg.norm(n, axis=1)  # 0 if the parts meet: then n proves nothing
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
