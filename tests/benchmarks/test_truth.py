"""A truth of beats is repaired where a bar begins within a beat, and nowhere else."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest

SCRIPT = Path(__file__).parents[2] / "benchmarks" / "truth.py"
STEADY = 0.5 * np.arange(40)


@pytest.fixture(scope="module")
def repaired():
    spec = importlib.util.spec_from_file_location("truth_of_beats", SCRIPT)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module.repaired


def bars(pick_up):
    """Beats as a truth made bar by bar has them: two halves of two bars of four at 120 a minute, each with a pick-up [beats]."""
    half = [pick_up, 4.0, 4.0 - pick_up]
    beats, now = [], 0.0
    for bar in half * 2:
        beats += [now + k for k in range(int(np.ceil(bar - 1e-9)))]
        now += bar
    return 0.5 * np.array(beats)


def test_a_bar_that_begins_within_a_beat_gives_one_beat_too_many(repaired):
    """By hand: a pick-up of half a beat fills its bar up with what the last bar lacks, whose last beat is half a one."""
    truth = bars(0.5)
    assert np.diff(truth).min() == 0.25
    counted = repaired(truth)
    assert len(counted) == len(truth) - 1
    assert set(np.diff(counted)[1:]) == {0.5}
    assert np.array_equal(repaired(bars(1.0)), bars(1.0))  # a pick-up of a whole beat is one


def test_what_anybody_counts_stays(repaired):
    assert np.array_equal(repaired(STEADY), STEADY)
    twice = np.concatenate([STEADY, STEADY[-1] + 0.25 * np.arange(1, 9)])  # for good
    assert np.array_equal(repaired(twice), twice)
    late = np.delete(STEADY, 20)  # one that is missing
    assert np.array_equal(repaired(late), late)
    swung = STEADY + np.where(np.arange(40) % 2, 0.06, 0.0)
    assert np.array_equal(repaired(swung), swung)
    for few in ([], [1.0], [1.0, 1.2]):
        assert repaired(few).tolist() == few
