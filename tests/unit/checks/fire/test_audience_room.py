"""Exits and floor for the audience, by hand: people = width × flow × minutes, rounded down."""

import pytest

from sequencer.checks.fire.audience_room import Crowd, crowd_findings

EXITS = {"gate": 3.0, "ramp": 4.0}


def told(**change):
    crowd = Crowd(**{"people": 1170, "area": 1000.0, "exits": EXITS} | change)
    return [(found.code, found.severity) for found in crowd_findings(crowd)]


def test_the_largest_exit_is_taken_as_lost():
    """78 a metre and minute [K7]: 3 m let 1170 out in 5 min; with the 4 m of the other 2730."""
    assert told() == []
    assert told(people=1171) == [("exits-too-narrow", "warn")]
    assert told(people=2730, area=2000.0) == [("exits-too-narrow", "warn")]
    assert told(people=2731, area=2000.0) == [("exits-too-narrow", "stop")]


def test_the_show_s_own_time_to_leave_counts():
    """In 8 min 3 m let 1872 out, in 4 min 936."""
    assert told(people=1872, leave_in=480.0) == []
    assert told(people=937, leave_in=240.0) == [("exits-too-narrow", "warn")]


@pytest.mark.parametrize("exits", [{}, {"gate": 3.0, "ramp": None}])
def test_a_blank_width_counts_as_unmet(exits):
    assert told(people=10, exits=exits) == [("not-recorded", "stop")]


def test_floor_of_half_a_square_metre_and_of_a_third():
    """0.5 m² a person outdoors (HSG195 para 87 [K4]), 0.3 m² standing (ABTT [K5])."""
    assert told(people=300, area=150.0) == []
    assert told(people=301, area=150.0) == [("audience-crowded", "warn")]
    assert told(people=501, area=150.0) == [("audience-crowded", "stop")]
