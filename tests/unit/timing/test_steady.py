"""One tempo is found through beats that slip, and told where it is not heard."""

import numpy as np
import pytest

from sequencer.timing.steady import ON_GRID, SteadyGrid, steady_grid

INTERVAL = 0.4837
TRUE = 0.713 + INTERVAL * np.arange(240)


def scattered(times, spread, seed=1):
    return times + np.random.default_rng(seed).normal(0, spread, len(times))


def test_scattered_beats_give_the_tempo_to_a_hundredth_of_a_percent():
    grid = steady_grid(scattered(TRUE, 0.008))

    assert grid.interval == pytest.approx(INTERVAL, rel=1e-4)
    assert np.abs(grid.away(TRUE)).max() < 0.005


@pytest.mark.parametrize("share", [0.1, 0.3, 0.45])
def test_half_beat_slips_of_less_than_half_the_song_change_nothing(share):
    slipped = TRUE + np.where(np.arange(240) < 240 * share, -INTERVAL / 2, 0.0)

    grid = steady_grid(scattered(slipped, 0.005))

    assert np.abs(grid.away(TRUE)).max() < 0.01


def test_weights_decide_which_phase_is_the_beat():
    early = np.arange(240) < 150
    slipped = TRUE - np.where(early, INTERVAL / 2, 0.0)

    grid = steady_grid(slipped, np.where(early, 0.1, 0.9))

    assert np.abs(grid.away(TRUE)).max() < 0.01


def test_missing_and_added_beats_do_no_harm():
    kept = np.random.default_rng(2).random(240) > 0.25
    added = np.array([11.0, 30.2, 77.7])

    grid = steady_grid(np.sort(np.concatenate([TRUE[kept], added])))

    assert np.abs(grid.away(TRUE)).max() < 0.005


def test_an_hour_at_one_tempo_stays_within_a_few_milliseconds():
    true = 0.2 + 0.5003 * np.arange(7200)

    grid = steady_grid(scattered(true, 0.01))

    assert np.abs(grid.away(true)).max() < 0.005


def test_too_few_beats_are_no_tempo():
    assert steady_grid(TRUE[:7]) is None
    assert steady_grid(TRUE[:8]) is not None


def test_the_nearest_beat_is_told_with_its_sign():
    grid = SteadyGrid(1.0, 0.5)

    np.testing.assert_allclose(grid.away(np.array([1.02, 1.48, 3.0])), [0.02, -0.02, 0.0])
    np.testing.assert_array_equal(
        grid.holds(np.array([1.0 + ON_GRID - 1e-9, 1.0 + ON_GRID + 1e-3])), [True, False]
    )
    np.testing.assert_allclose(grid.times(0.9, 2.1), [1.0, 1.5, 2.0])
    np.testing.assert_allclose(grid.moved().times(0.9, 2.1), [1.25, 1.75])
