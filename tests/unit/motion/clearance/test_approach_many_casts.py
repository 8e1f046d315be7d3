"""Casts that are searched together: what is found of one is the same, to the last digit, as when it is searched alone."""

import numpy as np
import pytest

from sequencer.motion.clearance import approach
from sequencer.motion.clearance.approach import (
    SearchedCast,
    approaches,
    approaches_each,
    spells_below,
)
from sequencer.motion.clearance.grid import cells, side_by_side
from sequencer.motion.performers.drifting import Spread, drifted

REQUIRED = 0.3


@pytest.fixture(scope="module")
def casts(dance):
    """Five draws of the same four, over spans that differ, the last one with some pairs only."""
    plan = dance.random_cast(4, seed=3)
    draws = [
        [drifted(each, Spread(), np.random.default_rng([k, i]), 8.0) for i, each in enumerate(plan)]
        for k in range(5)
    ]
    return [
        *(SearchedCast(own, 0.5 * k, 14.0 + k) for k, own in enumerate(draws[:4])),
        SearchedCast(draws[4], 0.0, 12.0, [(0, 2), (3, 1), (1, 2)]),
    ]


def same(one, other):
    columns = [(one.spans, other.spans, ("group", "start", "end"))]
    columns.append((one, other, ("first", "second", "distance", "at", "part", "dismissed")))
    return all(
        np.array_equal(getattr(a, name), getattr(b, name), equal_nan=True)
        for a, b, names in columns
        for name in names
    )


@pytest.mark.parametrize("minima", [True, False])
def test_together_is_as_alone(casts, minima, monkeypatch):
    monkeypatch.setattr(approach, "_TOGETHER", 10**9)
    together = approaches_each(casts, required=REQUIRED, minima=minima)
    for cast, found in zip(casts, together, strict=True):
        alone = approaches(
            cast.dancers, cast.start, cast.end, required=REQUIRED, minima=minima, pairs=cast.pairs
        )
        assert same(found, alone)
    assert sum(len(found.spans.group) for found in together) > 10


def test_small_casts_are_searched_together(casts, monkeypatch):
    asked = []

    class Counting(approach.PairKernel):
        def sample(self, rows, *of):
            asked.append(len(rows))
            return super().sample(rows, *of)

    monkeypatch.setattr(approach, "PairKernel", Counting)
    counts = []
    for most in (1, 10**9):
        monkeypatch.setattr(approach, "_TOGETHER", most)
        asked.clear()
        spells_below(casts, required=REQUIRED)
        counts.append((len(asked), sum(asked)))
    (alone, own), (together, all_) = counts
    assert own == all_  # the same intervals
    assert together < 0.5 * alone  # in fewer steps


def test_spans_are_the_same_without_distances(casts):
    for found, spans in zip(
        approaches_each(casts, required=REQUIRED),
        spells_below(casts, required=REQUIRED),
        strict=True,
    ):
        for name in ("group", "start", "end"):
            assert np.array_equal(getattr(spans, name), getattr(found.spans, name))


@pytest.mark.parametrize("required", [REQUIRED, 1.0, 1.3, 1.5])
def test_an_instant_is_enough(dance, casts, required):
    """Who is seen too close between two beats is told with that instant; all others with all their spans.

    At the larger ones some pairs are a few millimetres above it at an instant that is looked at.
    """
    low, high = 5.0, 9.0
    all_ = spells_below(casts, required=required)
    few = spells_below(casts, required=required, enough=(low, high))
    seen = 0
    for cast, spans, own in zip(casts, all_, few, strict=True):
        pairs = cast.pairs or list(zip(*np.triu_indices(len(cast.dancers), 1), strict=True))
        for k, (i, j) in enumerate(pairs):
            whole, short = (
                list(zip(each.start[each.group == k], each.end[each.group == k], strict=True))
                for each in (spans, own)
            )
            if len(short) == 1 and short[0][0] == short[0][1]:
                ((at, _),) = short
                seen += 1
                assert low < at < high
                assert any(start <= at <= end for start, end in whole)
                assert dance.sampled_distance(cast.dancers[i], cast.dancers[j], [at]) < required
            else:
                assert short == whole
    assert seen > 3


def test_casts_side_by_side_are_out_of_reach(casts):
    grids = [cells(cast.dancers, cast.start, cast.end) for cast in casts[:2]]
    both = side_by_side(grids)
    n, c = grids[0].reach.shape
    assert np.array_equal(both.speed[:n, :c], grids[0].speed)
    assert np.array_equal(both.acceleration[n:, c + 1 :], grids[1].acceleration)
    assert np.all(both.reach[n:, : c + 1] == -np.inf)
    assert np.all(both.reach[:n, c:] == -np.inf)
    assert np.array_equal(both.start[c + 1 :], grids[1].start)
    assert len(both.within) == len(both.cuts) - 1 == len(both.keys[0])
