"""What some runs tell of a chance, against SciPy's own tests and numbers worked out by hand."""

import itertools

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.stats import binomtest

from sequencer.checks.distances.binomial import alike, changed, interval


def test_the_interval_is_the_printed_one():
    """Clopper–Pearson at 95 %: 0 of 10 gives 0 to 0.3085 (1 − 0.025^(1/10)); 5 of 10 gives 0.187 to 0.813."""
    assert_allclose(interval(0, 10), (0.0, 1 - 0.025**0.1), atol=1e-12)
    assert_allclose(interval(10, 10), (0.025**0.1, 1.0), atol=1e-12)
    assert_allclose(interval(5, 10), (0.1871, 0.8129), atol=1e-4)


@pytest.mark.parametrize(("hits", "runs"), [(1, 20), (4, 20), (36, 500), (0, 7), (499, 500)])
@pytest.mark.parametrize("confidence", [0.9, 0.95, 0.975])
def test_the_interval_is_that_of_scipy(hits, runs, confidence):
    """`binomtest` finds the ends by root search, not by the quantiles of the beta distribution."""
    own = binomtest(hits, runs).proportion_ci(confidence, method="exact")
    assert_allclose(interval(hits, runs, confidence), (own.low, own.high), atol=1e-9)


def test_of_no_runs_nothing_is_known():
    assert interval(0, 0) == (0.0, 1.0)


def test_what_is_taken_away_is_weighed_by_how_often_it_happens():
    """40 %; of 20 such runs 15 go away, of 30 others 3 come: 0.4·5/20 + 0.6·3/30 = 0.16."""
    found = changed(0.4, (15, 20), (3, 30))
    gone = binomtest(15, 20).proportion_ci(0.975, method="exact")
    come = binomtest(3, 30).proportion_ci(0.975, method="exact")

    assert found.chance == pytest.approx(0.16)
    assert found.low == pytest.approx(0.6 * come.low - 0.4 * gone.high)
    assert found.high == pytest.approx(0.6 * come.high - 0.4 * gone.low)
    assert found.low < 0.16 - 0.4 < found.high


def test_a_conflict_in_every_run_needs_no_others():
    found = changed(1.0, (3, 20), (0, 0))
    assert found.chance == pytest.approx(0.85)
    assert found.high == pytest.approx(-binomtest(3, 20).proportion_ci(0.975, method="exact").low)


def test_a_change_is_covered_as_often_as_it_says():
    """Of 400 drawn experiments with known shares at least 95 % hold the true change: 5 in 100 may miss, fewer do."""
    draw = np.random.default_rng(5)
    held = 0
    for _ in range(400):
        gone, come = draw.binomial(40, 0.3), draw.binomial(40, 0.1)
        found = changed(0.29, (gone, 40), (come, 40))
        held += found.low <= 0.71 * 0.1 - 0.29 * 0.3 <= found.high
    assert held >= 0.95 * 400


def test_who_errs_alike_is_told_by_the_exact_test():
    """`binomtest` of the runs that one of two alone decides, at 5 %."""
    for few, more in itertools.product(range(9), repeat=2):
        p = binomtest(few, few + more).pvalue if few + more else 1.0
        assert alike(few, more) == (p > 0.05), (few, more)
    assert alike(5, 0)  # 2/2⁵ = 0.0625
    assert not alike(6, 0)  # 2/2⁶ = 0.03125
