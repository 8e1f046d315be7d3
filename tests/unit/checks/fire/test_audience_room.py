"""Exits and floor for the audience, by hand: people = width × flow × minutes, rounded down."""

from sequencer.checks.fire.audience_room import Crowd, crowd_findings


def told(**change):
    crowd = Crowd(**{"people": 1170, "area": 1000.0, "widths": (3.0, 4.0)} | change)
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


def test_an_audience_of_unknown_size_counts_as_unmet():
    assert told(people=None) == [("not-recorded", "stop")]


def test_exits_that_do_not_count_let_nobody_out():
    """3 m alone: 1170 in 5 min; that no exit is recorded at all, `exits` finds."""
    assert told(widths=(3.0,), not_counted=("ramp",)) == []
    assert told(widths=(), not_counted=("gate", "ramp"), people=1) == [("exits-too-narrow", "stop")]
    assert told(widths=(), people=1) == []


def test_floor_of_half_a_square_metre_and_of_a_third():
    """0.5 m² a person outdoors (HSG195 para 87 [K4]), 0.3 m² standing (ABTT [K5])."""
    assert told(people=300, area=150.0) == []
    assert told(people=301, area=150.0) == [("audience-crowded", "warn")]
    assert told(people=501, area=150.0) == [("audience-crowded", "stop")]
