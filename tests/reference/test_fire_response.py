"""Response times and wind forces against published figures, and the side on which each is safe.

Sources: Woods et al. 2015 (reaction 231 ms); EN ISO 13855:2010 (approach 1.6 m/s); MUTCD pedestrian
speed 3.5 ft/s (LaPlante and Kaeser 2007); Beaufort table.
"""

import pytest

from sequencer.facts.pace import (
    brisk_walk,
    reach_in,
    response_seconds,
    slow_walk,
    speeds,
    walk_words,
)
from sequencer.facts.wind import beaufort


def test_spotter_four_metres_away():
    """0.231 s + 4 m / 1.6 m/s = 2.73 s; at 3.5 ft/s, by which a rescuer is judged, 3.98 s."""
    assert response_seconds(4.0) == pytest.approx(3.98, abs=0.01)
    assert response_seconds(4.0, speed=brisk_walk().speed) == pytest.approx(2.73, abs=0.01)
    assert speeds()["pedestrian"].speed == pytest.approx(3.5 * 0.3048)


def test_the_walk_that_judges_a_rescuer_is_the_slower_one():
    """ISO 13855's speed keeps people from a hazard: taken too high it is safe there, and unsafe for a rescuer."""
    assert slow_walk().speed < brisk_walk().speed
    assert response_seconds(7.5) > response_seconds(7.5, speed=brisk_walk().speed)
    assert reach_in(5.0) < reach_in(5.0, speed=brisk_walk().speed)


@pytest.mark.parametrize(
    ("way", "words"),
    [
        (7.43, "walk 7.5 m: 5 s brisk, 8 s slow"),  # 4.87 s and 7.20 s
        (5.01, "walk 5.1 m: 4 s brisk, 5 s slow"),  # 3.36 s and 4.93 s
        (0.0, "walk 0.0 m: 1 s brisk, 1 s slow"),  # the reaction alone
    ],
)
def test_a_walk_in_words_is_rounded_to_the_safe_side(way, words):
    assert walk_words(way) == words


def test_reach_is_the_inverse():
    assert reach_in(response_seconds(7.0)) == pytest.approx(7.0, rel=1e-12)
    assert reach_in(0.1) == 0.0


def test_response_refuses_nonsense():
    with pytest.raises(ValueError, match="distance must be"):
        response_seconds(-1.0)
    with pytest.raises(ValueError, match="speed > 0"):
        response_seconds(1.0, speed=0.0)


@pytest.mark.parametrize(
    ("miles", "force"),
    [(7, 2), (8, 3), (12, 3), (13, 4), (15, 4), (18, 4), (19, 5), (24, 5), (0, 0)],
)
def test_beaufort_by_the_printed_table(miles, force):
    """Beaufort 3, 4, 5 are 8–12, 13–18, 19–24 mph."""
    assert beaufort(miles * 0.44704) == force


def test_the_scale_ends_at_twelve():
    assert beaufort(200.0) == 12
    with pytest.raises(ValueError, match="must be"):
        beaufort(-1.0)
