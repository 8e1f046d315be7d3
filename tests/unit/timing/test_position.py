"""Moments as people write them."""

from fractions import Fraction

import pytest

from sequencer.timing.position import Clock, Position, SectionEdge, clock_text, parse_moment

MANY = "9" * 400  # digits: no number can be as large


@pytest.mark.parametrize(
    ("text", "moment"),
    [
        ("17.3", Position(17, Fraction(3))),
        ("17.10", Position(17, Fraction(10))),
        ("0.4", Position(0, Fraction(4))),
        ("17.3+1/2", Position(17, Fraction(7, 2))),
        ("17.3+.25", Position(17, Fraction(13, 4))),
        ("1:02.5", Clock(62.5)),
        ("verse 2", SectionEdge("verse 2", "start")),
        ("end of verse 2", SectionEdge("verse 2", "end")),
        ("start of B", SectionEdge("B", "start")),
    ],
)
def test_moments_are_read_and_written_alike(text, moment):
    assert parse_moment(text) == moment
    assert parse_moment(str(moment)) == moment


@pytest.mark.parametrize("text", ["17", "1:60", "17.3+3/2", "17.0", "-", "1.2.3", "", f"{MANY}:30", f"{MANY}.1", f"1.{MANY}", f"1.1+1/{MANY}"])  # fmt: skip
def test_what_is_no_moment_is_refused(text):
    with pytest.raises(ValueError, match=r"not a moment|below 1|count from 1"):
        parse_moment(text)


@pytest.mark.parametrize(
    ("seconds", "text"),
    [(0, "0:00.0"), (59.96, "1:00.0"), (119.94, "1:59.9"), (3599.97, "60:00.0"), (-0.01, "0:00.0")],
)
def test_rounding_carries_into_the_minutes(seconds, text):
    assert clock_text(seconds) == text
