"""Moments and times as text, each by hand."""

from fractions import Fraction

import pytest

from sequencer.timing.position import (
    TOUCH,
    Clock,
    Position,
    SectionEdge,
    clock_text,
    moment_words,
    parse_moment,
)


@pytest.mark.parametrize(
    ("seconds", "decimals", "text"),
    [
        (5.0, 0, "0:05"), (65.0, 0, "1:05"), (59.6, 0, "1:00"), (600.0, 0, "10:00"), (-5.4, 0, "-0:05"),
        (-0.4, 0, "0:00"), (65.25, 2, "1:05.25"), (0.004, 2, "0:00.00"), (59.996, 2, "1:00.00"),
        (4.0625, 3, "0:04.062"), (-61.5, 3, "-1:01.500"), (3599.9, 1, "59:59.9"), (7.0, 1, "0:07.0"),
        (-0.05, 1, "0:00.0"), (-0.06, 1, "-0:00.1"), (0.06, 1, "0:00.1"), (0.0, 1, "0:00.0"),
    ],
)  # fmt: skip
def test_times_to_any_number_of_decimals(seconds, decimals, text):
    assert clock_text(seconds, decimals=decimals) == text


def test_a_tenth_is_shown_where_nothing_is_said():
    assert clock_text(61.04) == str(Clock(61.04)) == "1:01.0"


@pytest.mark.parametrize(
    ("beat", "text"),
    [
        (Fraction(1), "2.1"), (Fraction(12), "2.12"), (Fraction(3, 2), "2.1+1/2"),
        (Fraction(17, 16), "2.1+1/16"), (Fraction(18, 17), "2.1+.059"), (Fraction(47, 16), "2.2+15/16"),
        (3 + Fraction(1, 3), "2.3+1/3"), (1 + Fraction(123, 1000), "2.1+.123"),
    ],
)  # fmt: skip
def test_fractions_to_sixteenths_are_written_as_such(beat, text):
    assert str(Position(2, beat)) == text


def test_a_position_is_beat_one_and_beats_begin_there():
    assert Position(4) == Position(4, Fraction(1))
    with pytest.raises(ValueError, match="count from 1"):
        Position(4, Fraction(959, 960))
    assert str(SectionEdge("verse")) == "start of verse"
    assert TOUCH == 1e-6  # a millionth of a beat: far below what anyone hears


@pytest.mark.parametrize(
    ("text", "moment"),
    [
        (" 3.2 ", Position(3, Fraction(2))), ("-2.3", Position(-2, Fraction(3))),
        ("3.2+0/5", Position(3, Fraction(2))), ("3.2+99/100", Position(3, 2 + Fraction(99, 100))),
        ("3.2+0.5", Position(3, Fraction(5, 2))), ("1:5", Clock(65.0)), ("10:02.5", Clock(602.5)),
        ("0:00", Clock(0.0)), ("end of", SectionEdge("end of")), ("end of end of A", SectionEdge("end of A", "end")),
        ("solo", SectionEdge("solo")), ("17 bis", SectionEdge("17 bis")),
    ],
)  # fmt: skip
def test_moments_in_every_writing(text, moment):
    assert parse_moment(text) == moment


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("3.2+1/0", "denominator of 0"), ("3.2+1/00", "denominator of 0"), ("3.2+1/1", "below 1"),
        ("3.2+1.0", "below 1"), ("3.0", "count from 1"), ("  ", "not a moment"), ("1:75", "not a moment"),
        ("3.", "not a moment"), ("12:3:4", "not a moment"),
    ],
)  # fmt: skip
def test_no_moments(text, says):
    with pytest.raises(ValueError, match=says):
        parse_moment(text)


def test_a_moment_may_be_before_the_track():
    assert [moment_words(s) for s in (181.82, -30.2, -0.01)] == [
        "3:01.8", "0:30.2 before the track", "0:00.0",
    ]  # fmt: skip
