"""Exits and floor for the audience, by hand: people = width × flow × minutes, rounded down."""

from sequencer.checks.fire.on_site.audience_room import Crowd, crowd_findings


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
    """That no exit is recorded at all, `exits` finds."""
    assert told(widths=(), not_counted=("gate", "ramp"), people=1) == [("exits-too-narrow", "stop")]
    assert told(widths=(), people=1) == []


def test_one_exit_that_counts_is_none_if_it_is_lost():
    """One exit is enough for 60 (Approved Document B, from memory); 3 m let 1170 out in 5 min."""
    assert told(widths=(3.0,), people=60) == []
    assert told(widths=(3.0,), people=61) == [("exits-too-narrow", "warn")]
    assert told(widths=(3.0,), not_counted=("ramp",), people=61) == [("exits-too-narrow", "warn")]
    assert told(widths=(3.0, 1.0), people=61) == [("exits-too-narrow", "warn")]
    assert told(widths=(3.0,), people=1171, area=2000.0) == [("exits-too-narrow", "stop")]


def test_exits_too_narrow_to_count_are_said_to_be():
    """Narrower than 1.05 m (Hastings BC [K2])."""
    (found,) = crowd_findings(Crowd(people=180, widths=(0.6, 0.7)))
    assert found.message == (
        "180 people watch; only 0 can leave in 5 min, every exit open "
        "(78 people a minute for each metre; 2 exits narrower than 1.05 m not counted)"
    )


def test_floor_of_half_a_square_metre_and_of_a_third():
    """0.5 m² a person outdoors (HSG195 para 87 [K4]), 0.3 m² standing (ABTT [K5])."""
    assert told(people=300, area=150.0) == []
    assert told(people=301, area=150.0) == [("audience-crowded", "warn")]
    assert told(people=501, area=150.0) == [("audience-crowded", "stop")]
