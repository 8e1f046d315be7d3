"""What was timed against what the show counts on: here 240 s, stated, not timed."""

import pytest

from sequencer.practice.logged_burns import burn_beliefs
from tests.practice_show import made_show, run


def burns(*seconds, who="Ada", fuel="lamp-oil", **more):
    return [run(who=who, burn=each, fuel=fuel, lit=True, **more) for each in seconds]


def test_a_shorter_burn_than_the_show_counts_on_is_told():
    (one,) = burn_beliefs(made_show(), burns(230.0, 250.0))
    assert (one.who, one.timed.count, one.timed.middle, one.timed.shortest) == (
        "Ada",
        2,
        240.0,
        230.0,
    )
    assert one.timed.counted_on == 230.0  # no interval with two
    assert (one.believed.seconds, one.believed.basis) == (240.0, "stated")
    assert one.rosy
    (longer,) = burn_beliefs(made_show(), burns(250.0, 260.0))
    assert not longer.rosy


def test_three_burns_give_an_interval_below_the_shortest():
    """Median 260, least spread 5 % of it, t(0.95; 2) = 2.920 (tables), √(1 + 1/3): 260 − 2.920·13·1.1547 = 216.2."""
    (one,) = burn_beliefs(made_show(), burns(259.0, 260.0, 261.0))
    assert one.timed.counted_on == pytest.approx(216.2, abs=0.1)
    assert one.rosy


def test_what_says_nothing_of_this_fuel_is_left_out():
    show = made_show()
    assert burn_beliefs(show, burns(200.0, fuel="white-gas")) == ()
    assert burn_beliefs(show, burns(200.0, burnt_out=False)) == ()
    assert burn_beliefs(show, [run(tried=8, clean=6)]) == ()
