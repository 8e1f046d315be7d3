"""The parts of the proven search one by one: what is searched first, how it is cut, and what is joined."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry import certified
from sequencer.geometry.certified import Sample, search

INF = np.inf


def test_tolerance_is_five_millimetres_and_blocks_are_as_large_as_approved():
    """A line of tape on the floor is wider; blocks bound the memory: others find the same in another order."""
    assert certified.TOLERANCE == 0.005
    assert (certified._FEW, certified._CHUNK, certified._LEVEL) == (24, 16_384, 400_000)


@pytest.mark.parametrize(
    ("n", "size", "first", "blocks"),
    [
        (0, 4, 0, []),
        (3, 4, 0, [(0, 3)]),
        (9, 4, 0, [(0, 4), (4, 8), (8, 9)]),
        (8, 4, 0, [(0, 4), (4, 8)]),
        (9, 4, 2, [(0, 2), (2, 6), (6, 9)]),
        (9, 4, 9, [(0, 9)]),
        (9, 4, 20, [(0, 9)]),
        (5, 1, 3, [(0, 3), (3, 4), (4, 5)]),
    ],
)
def test_blocks(n, size, first, blocks):
    assert certified._blocks(n, size, first) == blocks


def test_a_few_of_each_group_are_evenly_spread():
    """All of a group of at most 47; of 48 each second, from the second; of 100 each fourth, from the third."""
    assert certified._spread(np.zeros(47, int), 1).all()
    assert np.flatnonzero(certified._spread(np.zeros(48, int), 1)).tolist() == list(range(1, 48, 2))
    early = certified._spread(np.zeros(100, int), 1)
    assert np.flatnonzero(early).tolist() == list(range(2, 100, 4))
    mixed = np.array(
        [1, 0] * 50 + [1] * 46
    )  # 96 of group 1, each fourth; 50 of group 0, each second
    early = certified._spread(mixed, 3)
    assert np.flatnonzero(early[mixed == 1]).tolist() == list(range(2, 96, 4))
    assert np.flatnonzero(early[mixed == 0]).tolist() == list(range(1, 50, 2))


def improved(value, g, t, found):
    value = np.array(value, float)
    at, row, label = (np.full(len(value), -1.0) for _ in range(3))
    n = len(g)
    sample = Sample(np.array(found, float), np.zeros(n), np.zeros(n), 10 * np.arange(n))
    certified._improve(
        value, at, row, label, np.array(g), 100 + np.arange(n), np.array(t, float), sample
    )
    return value.tolist(), at.tolist(), row.tolist(), label.tolist()


def test_the_smallest_and_then_the_earliest_counts():
    """Group 0 twice at 2 (the earlier at 4 s), group 1 not below 1, group 2 once."""
    found = improved([5, 1, INF], [0, 1, 0, 2, 0, 0], [7, 0, 6, 9, 4, 1], [2, 1, 3, 8, 2, 4])
    assert found == ([2, 1, 8], [4, -1, 9], [104, -1, 103], [40, -1, 30])
    assert improved([1], [0], [0], [1]) == ([1], [-1], [-1], [-1])


def pieces(value, lower, target):
    """Into how many a part of half a width is cut, and that they cover it evenly."""
    sample = Sample(np.array([value]), np.array([lower]), np.zeros(1), np.zeros(1, int))
    rows, centre, half, open_ = certified._split(
        np.array([7]), np.array([10.0]), np.array([0.5]), np.array([True]), sample,
        np.array([True]), np.array([target]),
    )  # fmt: skip
    n = len(rows)
    assert rows.tolist() == [7] * n
    assert open_.all()
    assert_allclose(half, 0.5 / n)
    assert_allclose(centre, 9.5 + (np.arange(n) + 0.5) / n)
    return n


@pytest.mark.parametrize(
    ("ratio", "parts"),
    [(0.5, 2), (2, 2), (9, 2), (11, 4), (31, 4), (33, 8), (100, 8), (102, 16), (1e6, 16)],
)
def test_a_part_is_cut_by_its_slack(ratio, parts):
    """2 to the power 0.6·log₂(slack over what is allowed), rounded down: 4 from 10.08, 8 from 32, 16 from 101.6."""
    assert pieces(1.0, 1.0 - 0.25 * ratio, 0.75) == parts


def test_a_part_is_halved_where_nothing_was_computed_and_cut_finest_where_nothing_is_spare():
    assert pieces(INF, 0.0, 0.5) == 2
    assert pieces(1.0, 0.0, 1.0) == 16
    assert pieces(1.0, 1.0 - 2e-8, 1.0) == 4  # twenty times the billionth that counts as spare
    assert pieces(1.0, 1.0 - 9e-9, 2.0) == 2


def test_parts_of_several_are_cut_side_by_side():
    sample = Sample(
        np.array([0.0, 9.0, 4.0]), np.array([-1.0, 0.0, 2.0]), np.zeros(3), np.zeros(3, int)
    )
    rows, centre, half, open_ = certified._split(
        np.array([3, 8]), np.array([1.0, 5.0]), np.array([1.0, 0.25]), np.array([False, True]),
        sample, np.array([True, False, True]), np.array([-0.5, 3.95]),
    )  # fmt: skip
    assert rows.tolist() == [3, 3] + [8] * 8
    assert open_.tolist() == [False] * 2 + [True] * 8
    assert_allclose(half, [0.5] * 2 + [0.03125] * 8)
    assert_allclose(centre, [0.5, 1.5, *(4.78125 + 0.0625 * np.arange(8))])


def test_spans_that_touch_are_one():
    """Within a billionth; of each group by itself; a nested one by where the last begun ends."""
    flagged = [
        (np.array([1, 0, 0]), np.array([0.0, 3.0, 0.0]), np.array([1.0, 4.0, 1.0])),
        (np.array([0, 0, 1]), np.array([1.0 + 0.9e-9, 5.0, 1.0 + 2e-9]), np.array([2.0, 6.0, 7.0])),
    ]
    found = certified.joined_spans(flagged)
    assert found.group.tolist() == [0, 0, 0, 1, 1]
    assert_allclose(found.start, [0, 3, 5, 0, 1 + 2e-9], rtol=1e-12)
    assert found.end.tolist() == [2, 4, 6, 1, 7]
    none = certified.joined_spans([])
    assert (len(none.group), len(none.start), len(none.end)) == (0, 0, 0)


def test_nothing_kept_is_nothing_joined():
    rows, centre, half, open_ = certified._joined([])
    assert [len(each) for each in (rows, centre, half, open_)] == [0] * 4
    assert (rows.dtype, open_.dtype) == (np.int64, np.bool_)


def steep(calls=None):
    """|t − 3.3| with a slope of 1, proven by it."""

    def evaluate(rows, centre, half, enough):
        value = np.abs(centre - 3.3)
        if calls is not None:
            calls.append((rows.tolist(), centre.tolist(), half.tolist(), enough.tolist()))
        return Sample(value, value - half, value + half, rows)

    return evaluate


def run(evaluate, *, n=1, required=(-INF,), group=None, end=8.0, **more):
    edges = np.linspace(0.0, end, n + 1)
    return search(
        evaluate, group=np.zeros(n, int) if group is None else np.array(group),
        start=edges[:-1], end=edges[1:], required=np.array(required, float), **more,
    )  # fmt: skip


def test_what_is_asked_of_each_level():
    """Enough is what is required, or the smallest value known less the tolerance, whichever is more."""
    calls = []
    run(steep(calls), n=2, required=(0.5,), tolerance=0.25)
    rows, centre, half, enough = calls[0]
    assert (rows, centre, half, enough) == ([0, 1], [2.0, 6.0], [2.0, 2.0], [INF, INF])
    # Found 1.3 at 2 s. [0, 4] has slack 2 over the 0.8 to 0.5: halved; [4, 8] may fall to 0.7: under
    # 1.3 − 0.25, slack 2 over 1.65 spare: halved too, but nobody asks it for spans.
    assert calls[1][1] == [1.0, 3.0, 5.0, 7.0]
    assert_allclose(calls[1][3], [1.05] * 4)
    calls = []
    run(steep(calls), n=2, required=(-INF,), tolerance=0.25, best=np.array([0.1]))
    assert_allclose(calls[0][3], [-0.15, -0.15])


def test_a_minimum_is_proven_and_costs_what_it_costs():
    """Approved: how many samples the search takes; more or fewer is another search."""
    found = run(steep(), n=4, required=(1.0,))
    assert 0.0 <= found.value[0] <= 0.005
    assert found.value[0] - 0.005 <= found.lower[0] <= 0.0
    assert_allclose(found.at, 3.3, atol=0.005)
    assert found.row.tolist() == [1]
    assert_allclose(found.spans.start, [2.3], atol=0.006)
    assert_allclose(found.spans.end, [4.3], atol=0.006)
    assert found.evaluations == 80
    assert_allclose([found.value[0], found.lower[0]], [0.00078125, -0.003125], atol=1e-12)


def test_spans_are_those_under_the_requirement_or_within_the_tolerance_of_it():
    for required, spans in ((-0.0051, 0), (1e-9, 1)):
        found = run(steep(), required=(required,))
        assert len(found.spans.group) == spans


def test_groups_have_a_smallest_value_each_and_those_without_parts_none():
    found = run(steep(), n=3, group=[2, 0, 2], required=(-INF, 1.0, 3.0), end=9.0)
    assert_allclose(found.value, [0.0, INF, 0.3], atol=0.005)
    assert (found.row.tolist(), found.label.tolist()) == ([1, -1, 0], [1, -1, 0])
    assert np.isnan(found.at[1])
    assert np.isinf(found.lower[1])
    assert_allclose(found.at[[0, 2]], [3.3, 3.0], atol=0.01)
    assert found.spans.group.tolist() == [2, 2]
    assert_allclose(found.spans.start, [0.3, 6.0], atol=0.01)
    assert_allclose(found.spans.end, [3.0, 6.3], atol=0.01)


def test_levels_and_chunks_change_nothing_but_the_order(monkeypatch):
    plain = run(steep(), n=60, required=(2.0,))
    monkeypatch.setattr(certified, "_CHUNK", 7)
    monkeypatch.setattr(certified, "_LEVEL", 5)
    small = run(steep(), n=60, required=(2.0,))
    assert_allclose(small.value, plain.value, atol=0.005)
    assert_allclose(small.spans.start, plain.spans.start, atol=0.006)
    assert_allclose(small.spans.end, plain.spans.end, atol=0.006)


def test_a_search_that_would_not_end_is_given_up(monkeypatch):
    """After as many samples as are allowed, nothing more is cut."""
    assert certified._MOST == 500_000_000  # approved: hours of work, and no show is that long
    calls = []
    run(steep(calls), n=4, required=(1.0,))
    least = sum(len(rows) for rows, *_ in calls[:-1])
    monkeypatch.setattr(certified, "_MOST", least)
    assert run(steep(), n=4, required=(1.0,)).evaluations == 80
    monkeypatch.setattr(certified, "_MOST", least - 1)
    with pytest.raises(ValueError, match="do not tighten"):
        run(steep(), n=4, required=(1.0,))


def test_a_part_may_be_as_narrow_as_a_ten_billionth():
    """A half width of 1e-10 is still cut, one of less is not."""

    def loose(rows, centre, half, enough):
        value = np.ones(len(rows))
        return Sample(value, np.where(half < 0.9e-10, value, 0.0), value, rows)

    assert run(loose, end=2e-10).value[0] == 1.0
    with pytest.raises(ValueError, match="do not tighten"):
        run(loose, end=1.99e-10)


@pytest.mark.parametrize("which", ["lower", "value"])
def test_one_that_is_no_number_is_enough_to_refuse(which):
    def evaluate(rows, centre, half, enough):
        bad = np.where(rows == 1, np.nan, 1.0)
        good = np.ones(len(rows))
        return Sample(
            bad if which == "value" else good, bad if which == "lower" else good, good, rows
        )

    with pytest.raises(ValueError, match="not a number"):
        run(evaluate, n=3)
