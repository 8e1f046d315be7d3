"""The steps of the search over pairs: which cells are searched, how finely, and what is kept of what is found.

Bounds and findings are given here, so that what follows is known by hand or by plain loops.
"""

from math import ceil, hypot, log2, sqrt
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.certified import CertifiedMinima, Spans
from sequencer.motion.clearance import approach
from sequencer.motion.clearance.approach import approaches

INF, NAN = np.inf, np.nan


def drawn_grid(n, c, seed=1):
    draw = np.random.default_rng(seed)
    edges = np.concatenate([[2.0], 2.0 + np.cumsum(draw.choice([0.25, 0.5, 1.0], c))])
    return SimpleNamespace(
        place=draw.normal(size=(n, c, 2)) + 6 * draw.normal(size=(n, 1, 2)), edges=edges, start=edges[:-1], end=edges[1:],
        place_uncertainty=draw.uniform(0, 0.5, (n, c)), reach=draw.uniform(0.5, 1.5, (n, c)),
        acceleration=draw.uniform(0, 30, (n, c, 5)),
    )  # fmt: skip


def spans(*rows):
    group, start, end = zip(*rows, strict=True) if rows else ((), (), ())
    return Spans(
        group=np.array(group, dtype=np.int64),
        start=np.array(start, float),
        end=np.array(end, float),
    )


def minima(value, at=None, row=None, label=None, lower=None, found=(), evaluations=1):
    n = len(value)
    return CertifiedMinima(
        value=np.array(value, float), at=np.array(at or [0.0] * n), row=np.array(row or [0] * n),
        label=np.array(label or [0] * n), lower=np.array(lower or value, float),
        spans=spans(*found), evaluations=evaluations,
    )  # fmt: skip


@pytest.mark.parametrize("count", [5, 16, 17, 40])
def test_reach_balls_of_windows_by_loops(count):
    """Sixteen cells together: a ball about the middle of the box of all places encloses all that is reached."""
    grid = drawn_grid(4, count)
    first, second = np.triu_indices(4, 1)
    bound, when = approach._reach_bounds(grid, first, second)
    for k, (i, j) in enumerate(zip(first, second, strict=True)):
        best = INF, 0.0
        for low in range(0, count, 16):
            cells = range(low, min(low + 16, count))
            balls = []
            for who in (i, j):
                places = [grid.place[who, c] for c in cells]
                x, y = ((min(p[a] for p in places) + max(p[a] for p in places)) / 2 for a in (0, 1))
                size = max(
                    hypot(p[0] - x, p[1] - y) + grid.place_uncertainty[who, c] + grid.reach[who, c]
                    for p, c in zip(places, cells, strict=True)
                )
                balls.append((x, y, size))
            gap = (
                hypot(balls[0][0] - balls[1][0], balls[0][1] - balls[1][1])
                - balls[0][2]
                - balls[1][2]
            )
            if gap < best[0]:
                best = gap, (grid.edges[low] + grid.edges[cells[-1] + 1]) / 2
        assert (bound[k], when[k]) == pytest.approx(best)


def test_cells_are_split_until_their_bend_is_forty_centimetres(monkeypatch):
    """a·w²/8 ≤ 0.4 m of both together, over an interval of width w, by powers of two; at least one."""
    grid = drawn_grid(3, 6, seed=2)
    grid.acceleration[2] = 0.0
    grid.acceleration[:, 3] = 0.0
    seen = {}

    def search(sample, **more):
        seen.update(more, sample=sample)
        return "found"

    monkeypatch.setattr(approach, "search", search)
    first, second = np.array([0, 0, 1]), np.array([1, 2, 2])
    pair, cell = np.array([2, 0, 1, 0, 1, 0, 2]), np.array([0, 1, 2, 3, 3, 4, 5])
    found = approach._search_cells(grid, first, second, pair, cell, 0.3, 0.02, "known")
    group, start, end, cells = [], [], [], []
    counts = []
    for p, c in zip(pair, cell, strict=True):
        bend = max(grid.acceleration[first[p], c]) + max(grid.acceleration[second[p], c])
        width = grid.end[c] - grid.start[c]
        count = 2 ** ceil(log2(max(width * sqrt(bend / 3.2), 1.0)))
        assert bend * (width / count) ** 2 / 8 <= 0.4 + 1e-12
        counts.append(count)
        for k in range(count):
            group.append(p)
            cells.append(c)
            start.append(grid.start[c] + width * k / count)
            end.append(grid.start[c] + width * (k + 1) / count)
    assert {1, 2, 4} <= set(counts)
    assert found == "found"
    assert_array_equal(seen["group"], group)
    assert_allclose((seen["start"], seen["end"]), (start, end))
    assert_array_equal(seen["required"], [0.3] * 3)
    assert (seen["best"], seen["tolerance"]) == ("known", 0.02)
    kernel = seen["sample"].__self__
    assert kernel.grid is grid
    assert_array_equal(
        (kernel.first, kernel.second, kernel.cell), (first[group], second[group], cells)
    )


def test_of_two_searches_the_smaller_of_each_pair_is_kept():
    """Equal ones stay as they were; spans are those of the later, to be dropped by the caller."""
    one = minima(
        [0.1, 0.5, 0.3], [1.0, 2, 3], [4, 5, 6], [7, 8, 9], [0.09, 0.2, 0.3], [(0, 1, 2)], 10
    )
    two = minima(
        [0.2, 0.4, 0.3],
        [10.0, 20, 30],
        [40, 50, 60],
        [70, 80, 90],
        [0.1, 0.1, 0.1],
        [(1, 2, 3)],
        20,
    )
    found = approach._better(two, one)
    assert_array_equal(found.at, [1, 20, 3])
    assert_array_equal(found.row, [4, 50, 6])
    assert_array_equal(found.label, [7, 80, 9])
    assert_array_equal(found.lower, [0.09, 0.1, 0.1])
    assert (found.spans, found.evaluations) == (two.spans, 20)
    assert_array_equal(
        found.value, two.value
    )  # a search is told what is known, and never finds more


# One batch


def searching(monkeypatch, gap, finds, *, minima_=True, required=0.3, tolerance=0.005):
    """What is found for pairs of which the reach balls are so far apart in each cell."""
    gap = np.array(gap)
    n, c = gap.shape
    # Each pair lies along y, its second one reaching 1 m, both uncertain by an eighth, the first reaching half.
    # (3, 4, 5) and binary fractions: a gap of a quarter or a half is met exactly.
    grid = SimpleNamespace(
        place=np.zeros((2 * n, c, 2)), place_uncertainty=np.full((2 * n, c), 0.125), reach=np.repeat([[0.5], [1.0]], n, axis=0) * np.ones(c)
    )  # fmt: skip
    grid.place[n:, :, 0] = 0.6 * (gap + 1.75)
    grid.place[:n, :, 1] = 0.8 * (gap + 1.75)
    left, asked = list(finds), []

    def search_cells(own, first, second, pair, cell, *more):
        assert own is grid
        assert_array_equal((first, second), (np.arange(n), np.arange(n, 2 * n)))
        asked.append(
            (list(zip(pair.tolist(), cell.tolist(), strict=True)), [float(x) for x in more[2]])
        )
        assert more[:2] == (required, tolerance)
        return left.pop(0)

    monkeypatch.setattr(approach, "_search_cells", search_cells)
    found, reached = approach._searched(
        grid, np.arange(n), np.arange(n, 2 * n), required, minima_, tolerance
    )
    assert_allclose(reached, gap.min(axis=1))
    assert left == []
    return found, asked


GAP = [
    [0.29, 0.56, 0.31, 0.574, 0.576, 0.9],
    [0.9, 0.2, 0.35, 0.28, 0.5, 0.501],
    [0.5, 0.6, 0.4, 0.5, 0.5, 0.45],
]


def test_cells_are_searched_while_they_may_hold_less(monkeypatch):
    """By time, then by pair. The third pair is never within reach of the requirement, and is not searched."""
    finds = [
        minima(
            [0.7, 0.625, INF],
            [1.0, 2, NAN],
            [1, 2, -1],
            [5, 6, -1],
            [0.6, 0.4, INF],
            [(1, 2, 3)],
            10,
        ),
        minima(
            [0.65, 0.625, INF],
            [3.0, 9, NAN],
            [3, 9, -1],
            [7, 9, -1],
            [0.62, 0.625, INF],
            [(0, 8, 9)],
            5,
        ),
    ]
    found, asked = searching(monkeypatch, GAP, finds, tolerance=0.125)
    assert asked == [
        ([(0, 0), (1, 1), (1, 3)], [INF] * 3),
        ([(0, 1), (0, 2), (1, 2), (0, 3)], [0.7, 0.625, INF]),
    ]
    assert_array_equal(found.value, [0.65, 0.625, INF])
    assert_array_equal(found.at, [3, 2, NAN])
    assert_array_equal(found.row, [3, 2, -1])
    assert_array_equal(found.label, [7, 6, -1])
    assert_array_equal(found.lower, [0.6, 0.4, INF])
    assert found.spans is finds[0].spans
    assert found.evaluations == 10 + 5


def test_rounds_count_all_they_looked_at(monkeypatch):
    """The second round's lower value calls for no new cell."""
    finds = [minima([0.9], found=[(0, 1, 2)], evaluations=10), minima([0.85], evaluations=5)]
    found, asked = searching(monkeypatch, [[0.2, 0.8, 0.5]], finds)
    assert [cells for cells, _ in asked] == [[(0, 0)], [(0, 1), (0, 2)]]
    assert (found.value[0], found.evaluations, len(found.spans.group)) == (0.85, 15, 1)


def test_where_no_distance_above_the_requirement_matters_one_round_is_enough(monkeypatch):
    finds = [minima([0.3, 0.3, 0.3], row=[-1, -1, -1], found=[(1, 2, 3)], evaluations=10)]
    found, asked = searching(monkeypatch, GAP, finds, minima_=False)
    assert asked == [([(0, 0), (1, 1), (1, 3)], [0.3] * 3)]
    assert (found.evaluations, found.spans) == (10, finds[0].spans)


def test_nothing_within_reach_is_not_searched(monkeypatch):
    found, asked = searching(monkeypatch, [[0.25, 0.5], [0.4, 0.6]], [], required=0.25)
    assert asked == []
    assert_array_equal((found.value, found.lower), np.full((2, 2), INF))
    assert_array_equal((found.row, found.label), np.full((2, 2), -1))
    assert np.isnan(found.at).all()
    assert (found.evaluations, len(found.spans.group), found.spans.group.dtype) == (0, 0, np.int64)


# The whole cast


def cast(monkeypatch, bound, finds, batch=2, **more):
    """Approaches of four dancers, six pairs, by what reach balls say of each, and what batches find."""
    monkeypatch.setattr(approach, "cells", lambda *all_: all_)
    monkeypatch.setattr(
        approach, "_reach_bounds", lambda *_all: (np.array(bound), 0.5 + np.arange(6))
    )
    monkeypatch.setattr(approach, "_BATCH", batch)
    left, asked = list(finds), []

    def searched(grid, first, second, *rest):
        assert grid == ("abcd", 0.0, 8.0)
        asked.append((list(zip(first.tolist(), second.tolist(), strict=True)), rest))
        return left.pop(0)

    monkeypatch.setattr(approach, "_searched", searched)
    return approaches("abcd", 0.0, 8.0, required=0.3, **more), asked


BOUND = [0.29, 0.3, 0.1, 0.2, 0.9, 0.25]  # of the pairs 01, 02, 03, 12, 13, 23
FINDS = [
    (
        minima([0.15, INF], [3.0, NAN], [0, -1], [2 * 9 + 5, -1], None, [(0, 1, 2), (0, 3, 4)], 10),
        np.array([0.1, 0.22]),
    ),
    (
        minima([0.4, INF], [4.0, NAN], [1, -1], [8 * 9 + 0, -1], None, [(1, 5, 6)], 5),
        np.array([0.2, 0.35]),
    ),
]


def test_pairs_are_searched_in_batches_where_their_reach_is_nearer_than_required(monkeypatch):
    found, asked = cast(monkeypatch, BOUND, FINDS)
    assert asked == [([(0, 1), (0, 3)], (0.3, True, 0.005)), ([(1, 2), (2, 3)], (0.3, True, 0.005))]
    assert_array_equal((found.first, found.second), ([0, 0, 0, 1, 1, 2], [1, 2, 3, 2, 3, 3]))
    assert_allclose(found.distance, [0.15, 0.3, 0.22, 0.4, 0.9, 0.35])
    assert_allclose(found.at, [3.0, 1.5, 2.5, 4.0, 4.5, 5.5])
    assert found.part.tolist() == [[2, 5], [-1, -1], [-1, -1], [8, 0], [-1, -1], [-1, -1]]
    assert found.dismissed.tolist() == [0, 1, 1, 0, 1, 1]
    assert found.evaluations == 15
    assert found.spans.group.tolist() == [0, 0, 5]
    assert (found.spans.start.tolist(), found.spans.end.tolist()) == ([1, 3, 5], [2, 4, 6])


def test_without_minima_what_is_not_hit_keeps_what_is_required(monkeypatch):
    found, asked = cast(monkeypatch, BOUND, FINDS, minima=False, tolerance=0.01)
    assert [rest for _, rest in asked] == [(0.3, False, 0.01)] * 2
    assert_allclose(found.distance, [0.15, 0.3, 0.3, 0.4, 0.9, 0.35])


def test_nobody_near_is_nothing_found(monkeypatch):
    found, asked = cast(monkeypatch, [0.3] * 6, [])
    assert (asked, found.evaluations, len(found.spans.group)) == ([], 0, 0)
    assert found.dismissed.tolist() == [1] * 6
    assert (found.spans.group.dtype, found.spans.start.shape, found.spans.end.shape) == (
        np.int64,
        (0,),
        (0,),
    )


def test_batches_and_windows_are_of_these_sizes():
    """Approved: they bound memory, and which windows bound a pair that is far away."""
    assert (approach._BATCH, approach._WINDOW) == (64, 16)
