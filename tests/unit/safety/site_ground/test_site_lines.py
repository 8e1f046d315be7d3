"""Lines on the ground of a site, by hand: the lane's strip, and the rings of the rules in force."""

import pytest

from sequencer.safety.site_ground.site_lines import LANE_WIDTH, fuel_rings, lane_outline, lane_words
from sequencer.show.file_records.site import FireLane
from tests.sites import site


@pytest.mark.parametrize(("width", "half"), [(4.0, 2.0), (None, LANE_WIDTH / 2)])
def test_a_lane_is_half_its_width_on_each_side_of_its_line(width, half):
    lane = FireLane(line=((20.0, 4.0), (12.0, 4.0)), width=width)

    assert sorted(lane_outline(lane)) == [
        (12, 4 - half),
        (12, 4 + half),
        (20, 4 - half),
        (20, 4 + half),
    ]


def test_a_lane_of_unknown_width_is_drawn_as_what_is_assumed():
    assert lane_words(FireLane(line=((0.0, 0.0), (1.0, 0.0)), width=4.0)) == "fire lane 4.0 m"
    assert lane_words(FireLane(line=((0.0, 0.0), (1.0, 0.0)))) == "fire lane, 3.7 m assumed"


def test_rings_are_those_of_the_rules():
    """20 ft from flame and audience [A5]; no fuel point, no ring."""
    ((radius, words),) = fuel_rings(site())

    assert (radius, words) == (pytest.approx(6.096), "no flame, no audience")
    assert fuel_rings(site(("  fuel_station: [11, 12]\n", ""))) == ()
