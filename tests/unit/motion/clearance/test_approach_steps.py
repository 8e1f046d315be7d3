"""The steps of the search over pairs: which cells are searched, how finely, and what is kept of what is found.

Bounds and findings are given here, so that what follows is known by hand or by plain loops.
"""

from math import ceil, hypot, log2, sqrt
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.certified import Spans
from sequencer.motion.clearance import approach
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.by_slice import RowMinima

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


def minima(value, at, label, found, evaluations):
    return RowMinima(
        value=np.array(value), at=np.array(at), label=np.array(label),
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
    own = np.array([3, 1, 0, 2, 0, 1, 4])  # groups: those of one pair in two slices differ
    pairs = approach._Pairs(grid, first, second, approach._Sought(0.3, True, 0.02))
    found = pairs._search(pair, cell, own, "required", "known")
    group, rows, start, end, cells = [], [], [], [], []
    counts = []
    for p, c, g in zip(pair, cell, own, strict=True):
        bend = max(grid.acceleration[first[p], c]) + max(grid.acceleration[second[p], c])
        width = grid.end[c] - grid.start[c]
        count = 2 ** ceil(log2(max(width * sqrt(bend / 3.2), 1.0)))
        assert bend * (width / count) ** 2 / 8 <= 0.4 + 1e-12
        counts.append(count)
        for k in range(count):
            group.append(g)
            rows.append(p)
            cells.append(c)
            start.append(grid.start[c] + width * k / count)
            end.append(grid.start[c] + width * (k + 1) / count)
    assert {1, 2, 4} <= set(counts)
    assert found == "found"
    assert_array_equal(seen["group"], group)
    assert_allclose((seen["start"], seen["end"]), (start, end))
    assert (seen["required"], seen["best"]) == ("required", "known")
    assert (seen["tolerance"], seen["apart"]) == (0.02, True)
    kernel = seen["sample"].__self__
    assert kernel.grid is grid
    assert_array_equal(
        (kernel.first, kernel.second, kernel.cell), (first[rows], second[rows], cells)
    )


def test_instants_are_sampled_whole(monkeypatch):
    """Nothing is far enough to be left out, and an instant has no width."""
    grid, seen = drawn_grid(3, 6), []
    monkeypatch.setattr(approach.PairKernel, "sample", lambda *all_: seen.append(all_))
    pairs = approach._Pairs(
        grid, np.array([0, 0]), np.array([1, 2]), approach._Sought(0.3, True, 0.02)
    )
    pairs._sample(np.array([1, 0, 1]), np.array([2, 3, 5]), np.array([2.5, 3.5, 4.5]))
    ((kernel, rows, beats, half, enough),) = seen
    assert (kernel.first.tolist(), kernel.second.tolist()) == ([0, 0, 0], [2, 1, 2])
    assert (kernel.cell.tolist(), rows.tolist()) == ([2, 3, 5], [0, 1, 2])
    assert (beats.tolist(), half.tolist()) == ([2.5, 3.5, 4.5], [0.0] * 3)
    assert enough.tolist() == [INF] * 3


def test_pairs_are_searched_by_their_reach_balls_in_every_cell(monkeypatch):
    grid, seen = drawn_grid(3, 6), {}

    def sliced(**given):
        seen.update(given)
        return SimpleNamespace(found=lambda: "found")

    monkeypatch.setattr(approach, "SlicedSearch", sliced)
    first, second = np.array([0, 1]), np.array([2, 2])
    pairs = approach._Pairs(grid, first, second, approach._Sought(0.3, False, 0.02))
    found, least = pairs.searched()
    gaps = [
        [
            hypot(*(grid.place[i, c] - grid.place[j, c]))
            - sum(grid.place_uncertainty[k, c] + grid.reach[k, c] for k in (i, j))
            for c in range(6)
        ]
        for i, j in zip(first, second, strict=True)
    ]
    assert_allclose(seen["gap"], gaps)
    assert_allclose(least, np.min(gaps, axis=1))
    assert found == "found"
    assert (seen["grid"], seen["required"].tolist()) == (grid, [0.3, 0.3])
    assert (seen["tolerance"], seen["minima"]) == (0.02, False)
    assert (seen["sample"], seen["search"]) == (pairs._sample, pairs._search)


def test_a_pair_is_known_by_both_in_a_slice_and_in_order():
    grid = SimpleNamespace(
        keys=(("a0", "a1"), ("b0", "b1"), ("a0", None)), within=("edges 0", "edges 1")
    )
    pairs = approach._Pairs(
        grid, np.array([0, 1, 0]), np.array([1, 2, 2]), approach._Sought(0.3, True, 0.02)
    )
    keys = [pairs._key(*each) for each in ((0, 0), (0, 1), (1, 0), (2, 0))]
    assert len(set(keys)) == 4
    assert "edges 0" in keys[0]
    assert {"a1", "b1", "edges 1"} <= set(keys[1])
    assert pairs._key(1, 1) is None


# The whole cast


def cast(monkeypatch, bound, finds, batch=2, **more):
    """Approaches of four dancers, six pairs, by what reach balls say of each, and what batches find."""
    grid = SimpleNamespace(reach=np.zeros((4, 3)), points=8)

    def cells(*given):
        assert given == ("abcd", 0.0, 8.0)
        return grid

    monkeypatch.setattr(approach, "cells", cells)
    monkeypatch.setattr(
        approach, "_reach_bounds", lambda *_all: (np.array(bound), 0.5 + np.arange(6))
    )
    monkeypatch.setattr(approach, "_BATCH", batch)
    left, asked = list(finds), []

    def pairs(of, first, second, sought):
        assert of is grid
        asked.append((list(zip(first.tolist(), second.tolist(), strict=True)), sought[:3]))
        some = SimpleNamespace(
            searched=lambda: left.pop(0), met=lambda _casts: np.full(len(first), NAN)
        )
        some.only = lambda _which: some
        return some

    monkeypatch.setattr(approach, "_Pairs", pairs)
    return approaches("abcd", 0.0, 8.0, required=0.3, **more), asked


BOUND = [0.29, 0.3, 0.1, 0.2, 0.9, 0.25]  # of the pairs 01, 02, 03, 12, 13, 23
FINDS = [
    (
        minima([0.15, INF], [3.0, NAN], [2 * 9 + 5, -1], [(0, 1, 2), (0, 3, 4)], 10),
        np.array([0.1, 0.22]),
    ),
    (
        minima([0.4, INF], [4.0, NAN], [8 * 9 + 0, -1], [(1, 5, 6)], 5),
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
