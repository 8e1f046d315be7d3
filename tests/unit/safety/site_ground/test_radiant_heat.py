"""Heat at a place, by hand: the share of the heat over the sphere about the flame's centre."""

import numpy as np
import pytest

from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.safety.site_ground.radiant_heat import Wicks, flux_at, heat_plan
from tests.unit.checks.fire.test_rules_kept import show

HERE = WalkableFloor().ways_to([(0.0, 0.0)])


def stands(who, x, start=0.0, end=8.0):
    return Followed(who=who, floor=WalkPath((x, 0.0)), start=start, end=end)


def wick(heat=10e3, centre=1.0):
    return Wicks(heat=heat, centre=centre, mean=0.4, peak=0.5)


def by_hand(heat, away):
    """30 % of 1.5 times the mean heat over a sphere: NUREG-1805 sheet 05.1; the peak is a design choice."""
    return 0.3 * 1.5 * heat / (4 * np.pi * away**2)


def test_one_flame_counts_from_its_centre_at_the_peak():
    assert flux_at(HERE, [stands("Wren", 5.0)], {"Wren": wick()}) == pytest.approx(
        by_hand(10e3, 4.0), rel=1e-3
    )


def test_flames_add_up_and_each_performer_counts_once_at_their_nearest():
    burns = [stands("Wren", 4.0), stands("Wren", 5.0, 16.0, 20.0), stands("Moss", 3.0)]
    both = {"Wren": wick(), "Moss": wick(heat=20e3, centre=0.5)}

    assert flux_at(HERE, burns, both) == pytest.approx(
        by_hand(10e3, 3.0) + by_hand(20e3, 2.5), rel=1e-3
    )


def test_who_walks_past_counts_where_they_pass():
    past = WalkPath((-6.0, 3.0), moves=(Move(start=1.0, end=7.0, place=(6.0, 3.0), facing=0.0),))
    burn = Followed(who="Wren", floor=past, start=0.0, end=8.0)

    assert flux_at(HERE, [burn], {"Wren": wick()}) == pytest.approx(by_hand(10e3, 2.0), rel=1e-2)


def test_a_place_inside_the_flame_is_taken_at_ten_centimetres():
    assert flux_at(HERE, [stands("Wren", 0.5)], {"Wren": wick()}) == pytest.approx(
        by_hand(10e3, 0.1)
    )
    assert flux_at(HERE, [], {}) == 0.0


def test_the_centre_of_a_flame_lies_half_a_flame_outside_the_farthest_wick():
    sound = show()
    wren = sound.dancers[0]
    prop = wren.props["right"]
    (own, *_) = heat_plan(sound).wicks.values()

    farthest_wick = wren.reach - prop.wick_radius - prop.flame_reach
    assert own.centre == pytest.approx(farthest_wick + (prop.wick_radius + prop.flame_reach) / 2)
    assert own.mean < own.peak
