"""Spreads and drifts against values worked out by hand."""

from math import hypot, isnan, sqrt

import pytest

from sequencer.practice.logged_spreads import logged_spreads, pooled_spread, told_drifts
from tests.practice_show import run


def drifts(who, what, *places):
    return [run(who=who, what=what, drift=place) for place in places]


def test_a_spread_is_about_the_plan_and_about_the_drift():
    """0.3, 0.4 and 0.5 m downstage: mean 0.4; about the plan √((0.09 + 0.16 + 0.25)/6); about the mean √(0.02/4)."""
    runs = drifts("Ada", "x", (0.0, -0.3), (0.0, -0.4), (0.0, -0.5))
    runs += [run(late=0.2), run(late=0.4), run(who="Bo", late=-0.5)]
    spreads = logged_spreads(runs)
    ada, bo = spreads["Ada"], spreads["Bo"]

    assert (ada.places, ada.timings) == (3, 2)
    assert ada.place_mean == pytest.approx((0.0, -0.4))
    assert ada.place == pytest.approx(sqrt(0.5 / 6))
    assert ada.place_about_mean == pytest.approx(sqrt(0.02 / 4))
    assert (ada.late, ada.timing) == pytest.approx((0.3, sqrt((0.04 + 0.16) / 2)))
    assert ada.timing_about_mean == pytest.approx(sqrt(0.02))
    assert (bo.places, bo.timings, bo.late) == (0, 1, -0.5)
    assert isnan(bo.place)
    assert isnan(bo.timing_about_mean)
    assert logged_spreads([run(tried=8, clean=6)]) == {}


def test_all_together_need_five():
    """Five places 0.3 m off in x alone: √(0.09/2) in each of x and y."""
    runs = drifts("Ada", "x", *[(0.3, 0.0)] * 3) + drifts("Bo", "y", (-0.3, 0.0))
    assert pooled_spread(runs) == (None, None)
    runs += drifts("Bo", "y", (0.3, 0.0)) + [
        run(who=who, late=late)
        for who, late in zip(
            ("Ada", "Bo", "Ada", "Bo", "Bo"), (0.3, -0.3, 0.3, -0.3, 0.3), strict=True
        )
    ]
    assert pooled_spread(runs) == pytest.approx((sqrt(0.045), 0.3))


def test_a_drift_that_returns_is_told():
    runs = [
        *drifts(
            "Bo", "canon", (0.0, -0.5), (0.1, -0.4), (-0.1, -0.6), (0.0, 0.1)
        ),  # mean (0, -0.35)
        *drifts("Ada", "canon", (0.4, 0.0), (-0.4, 0.0), (0.4, 0.0)),  # mean 0.133
        *drifts("Ada", "walk", (1.0, 0.0), (1.0, 0.0)),  # twice is not yet a habit
    ]
    (one,) = told_drifts(runs, 0.15)
    assert (one.who, one.what, one.that_way, one.runs) == ("Bo", "canon", 3, 4)
    assert one.mean == pytest.approx((0.0, -0.35))
    both = told_drifts(runs, 0.13)
    assert [each.who for each in both] == ["Bo", "Ada"]
    assert hypot(*both[1].mean) == pytest.approx(0.4 / 3)
    assert told_drifts(runs, 0.36) == ()


def test_one_alone_says_nothing_of_all_together():
    assert pooled_spread([run(drift=(0.3, 0.0), late=0.3)] * 9) == (None, None)


def test_a_name_in_other_capitals_is_the_same():
    runs = [run(what=what, drift=(0.0, -0.4)) for what in ("The canon", "the canon", "THE CANON")]
    (one,) = told_drifts(runs, 0.15)
    assert (one.what, one.runs) == ("The canon", 3)
