"""Rules that hold for every cast: nothing is missed, bounds hold, verdicts do not hang on sampling."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from sequencer.geometry.certified import Sample, search
from sequencer.geometry.segments import segment_segment
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.performers.walks import Move, WalkPath

coordinate = st.one_of(
    st.floats(-3, 3), st.sampled_from([0.0, 1.0, -1.0, 1e-9, 1e-5, 0.5, 1 + 1e-12])
)
point = st.tuples(coordinate, coordinate, coordinate)


@given(point, point, point, point)
@settings(max_examples=300)
def test_segments_agree_with_a_dense_grid(a, b, c, d):
    """Never above the smallest of sampled points, never below by more than the grid can miss."""
    a, b, c, d = (np.array(p, dtype=float) for p in (a, b, c, d))
    share = np.linspace(0, 1, 101)[:, None]
    grid = np.linalg.norm((a + share * (b - a))[:, None] - (c + share * (d - c))[None], axis=-1)
    coarse = 0.005 * (np.linalg.norm(b - a) + np.linalg.norm(d - c))

    ours = float(segment_segment(a, b, c, d)[0])

    assert ours <= grid.min() + 1e-7
    assert ours >= grid.min() - coarse - 1e-7
    assert_allclose(float(segment_segment(d, c, b, a)[0]), ours, atol=1e-7)


@given(st.integers(0, 10_000), st.floats(0.001, 0.01), st.floats(0.005, 0.28))
@settings(max_examples=25)
def test_no_planted_needle_is_missed(seed, width, depth):
    """Dips of 2 to 10 thousandths, planted anywhere; the reference knows where they are."""
    draw = np.random.default_rng(seed)
    n = 40
    dips = np.sort(draw.uniform(0.1, 99.9, n))
    dips = dips[np.append(True, np.diff(dips) > 0.05)]
    slope = 2 * (0.3 + depth) / width

    def function(t):
        near = np.abs(t[:, None] - dips).min(axis=1)
        return np.minimum(0.6, 0.3 - depth + slope * near)

    def evaluate(rows, centre, half, enough):
        value = function(centre)
        return Sample(value, value - slope * half, value + slope * half, rows)

    found = search(
        evaluate,
        group=np.zeros(100, dtype=int),
        start=np.arange(100.0),
        end=np.arange(1.0, 101.0),
        required=np.array([0.3]),
    )

    assert len(found.spans.start) == len(dips)
    assert np.all((found.spans.start <= dips) & (dips <= found.spans.end))
    assert_allclose(found.value, 0.3 - depth, atol=0.005)


@given(st.integers(0, 1000))
@settings(max_examples=8)
def test_no_approach_of_dancers_is_missed(dance, seed):
    cast = dance.random_cast(2, seed=seed, beats=24)
    found = approaches(cast, 0, 24, required=0.5)
    beats = np.random.default_rng(seed).uniform(0, 24, 20_000)
    dense = dance.sampled_distance(*cast, beats)

    assert found.distance[0] <= dense.min() + 0.005
    near = beats[dense < 0.5][:, np.newaxis]
    assert np.all(np.any((found.spans.start <= near) & (near <= found.spans.end), axis=1))


@given(st.integers(0, 1000), st.floats(0.001, 0.02))
@settings(max_examples=6)
def test_verdicts_do_not_hang_on_where_cells_begin(dance, seed, offset):
    """Another start shifts every sample; distances and spans stay."""
    cast = dance.random_cast(2, seed=seed, beats=24)
    one = approaches(cast, 1.0, 20.0, required=0.5)
    other = approaches(cast, 1.0 - offset, 20.0 + offset / 3, required=0.5)

    assert_allclose(one.distance, other.distance, atol=0.02)
    sure = [
        (low, high)
        for low, high in zip(one.spans.start, one.spans.end, strict=True)
        if dance.sampled_distance(*cast, np.linspace(low, high, 200)).min() < 0.49
    ]
    for low, high in sure:
        assert np.any((other.spans.start <= high) & (low <= other.spans.end))


@given(
    st.lists(st.tuples(st.floats(-5, 5), st.floats(-5, 5)), min_size=1, max_size=4),
    st.floats(0.5, 16),
    st.floats(-7, 7),
)
def test_no_walk_exceeds_its_bounds(points, length, turn):
    path = WalkPath(
        (0.0, 0.0),
        0.0,
        (Move(start=0, end=length, place=points[-1], facing=turn, through=tuple(points[:-1])),),
    )
    ((_, _, bounds),) = path.pieces(0, length)
    stand = path.at(np.linspace(0, length, 801))

    assert np.hypot(*stand.place_rate.T).max() <= bounds.speed * (1 + 1e-9) + 1e-9
    assert np.hypot(*stand.place_acceleration.T).max() <= bounds.acceleration * (1 + 1e-9) + 1e-9
    assert np.abs(stand.facing_rate).max() <= bounds.turn_rate + 1e-9


@pytest.mark.parametrize("tolerance", [0.02, 0.001])
def test_the_tolerance_is_kept(dance, tolerance):
    cast = dance.random_cast(2, seed=4, beats=24)
    found = approaches(cast, 0, 24, required=0.3, tolerance=tolerance)
    beats = np.linspace(0, 24, 24_001)
    near = np.argsort(dance.sampled_distance(*cast, beats))[:8]
    fine = np.clip(beats[near, None] + np.linspace(-1e-3, 1e-3, 201), 0, 24).ravel()
    dense = dance.sampled_distance(*cast, fine).min()

    assert abs(found.distance[0] - dense) <= tolerance + 1e-4
