"""Quantities as people write them.

Sources: factors, NIST SP 811, appendix B (from memory); a space parts thousands and either mark may be
the decimal one, SI Brochure, 9th edition, 5.4.4 (from memory).
"""

import math

import pytest

from sequencer import units

FOURS = units.BarLengths()


@pytest.mark.parametrize(
    ("text", "table", "default", "value"),
    [
        ("1.8 m", units.LENGTHS, "m", 1.8),
        ("1,8 m", units.LENGTHS, "m", 1.8),
        ("55cm", units.LENGTHS, "m", 0.55),
        ("6 ft", units.LENGTHS, "m", 1.8288),
        ("5 ft 7 in", units.LENGTHS, "m", 1.7018),
        ("-5 ft 7 in", units.LENGTHS, "m", -1.7018),
        ("5'11", units.LENGTHS, "m", 1.8034),
        ("5' 7.25", units.LENGTHS, "m", 1.70815),
        ("5'", units.LENGTHS, "m", 1.524),
        ("6 ft 2,5 in", units.LENGTHS, "m", 1.8923),
        ("5' 7.25\"", units.LENGTHS, "m", 1.70815),
        ("5 ft 7 in", dict(units.LENGTHS), "m", 1.7018),
        ("1.500 mm", units.LENGTHS, "m", 0.0015),
        ("20 ft", units.LENGTHS, "m", 6.096),
        ("200 g", units.MASSES, "kg", 0.2),
        ("1 gal", units.VOLUMES, "L", 3.785411784e-3),
        ("15 mph", units.SPEEDS, "m/s", 6.7056),
        ("-12 ms", units.DURATIONS, "s", -0.012),
        (3, units.LENGTHS, "m", 3.0),
        ("1,25 m", units.LENGTHS, "m", 1.25),
        ("1.500 m", units.LENGTHS, "m", 1.5),
        ("0,500 m", units.LENGTHS, "m", 0.5),
        (",500 m", units.LENGTHS, "m", 0.5),
        ("1234,500 mm", units.LENGTHS, "m", 1.2345),
        ("1,2345 m", units.LENGTHS, "m", 1.2345),
        ("1 500 mm", units.LENGTHS, "m", 1.5),
        ("1\u202f500 mm", units.LENGTHS, "m", 1.5),
        ("1\u00a0500,250 mm", units.LENGTHS, "m", 1.50025),
        ("1,500.5 mm", units.LENGTHS, "m", 1.5005),
        ("1.500,5 mm", units.LENGTHS, "m", 1.5005),
        ("-1,234,567 mm", units.LENGTHS, "m", -1234.567),
        ("1.234.567 mm", units.LENGTHS, "m", 1234.567),
    ],
)
def test_quantities_become_si(text, table, default, value):
    assert math.isclose(units.quantity(text, table, default=default), value, rel_tol=1e-12)


@pytest.mark.parametrize(
    ("text", "match"),
    [
        ("wide", "is not a number with a unit"),
        ("3 furlongs", "unit 'furlongs'.*use one of m, cm"),
        ("nan", "is not a number"),
        (math.inf, "not a finite number"),
        (True, "not a number"),
        ("1e400 m", "not a finite number"),
        (10**400, "not a finite number"),
        ("9" * 400 + " ft 1 in", "not a finite number"),
        ("1,50,000 m", "not a number with a unit"),
        ("1,500 500 m", "not a number with a unit"),
        ("1,500.5,3 m", "not a number with a unit"),
        ("1 50 m", "not a number with a unit"),
        ("0 500 m", "not a number with a unit"),
        ("1.5.5", "not a number with a unit"),
        ("6 ft 1.5.5 in", "not a number with a unit"),
        (
            "5.5 ft 3 in",
            "does not have a whole number of feet; write feet and inches as '5 ft 7 in'",
        ),
        ("1'70", '"1\'70" has 70 inches, and 12 make a foot; write feet and inches as'),
        ("5'12", "has 12 inches"),
        ("5.5'3", "does not have a whole number of feet"),
    ],
)
def test_what_is_no_quantity_is_refused(text, match):
    with pytest.raises(ValueError, match=match):
        units.quantity(text, units.LENGTHS, default="m")


@pytest.mark.parametrize(
    ("text", "whole", "part"),
    [
        ("1,500 mm", "1500 mm", "1.500 mm"),
        ("1,200 ft", "1200 ft", "1.200 ft"),
        ("-12,500", "-12500", "-12.500"),
        (" 999,999cm ", "999999 cm", "999.999 cm"),
        ("0 ft 2,500 in", "0 ft 2500 in", "0 ft 2.500 in"),
    ],
)
def test_what_can_be_read_in_two_ways_is_refused_and_both_are_named(text, whole, part):
    with pytest.raises(
        ValueError, match=f"can be read as {whole} or as {part}; write one of these"
    ):
        units.quantity(text, units.LENGTHS, default="m")
    ways = [units.quantity(way, units.LENGTHS, default="m") for way in (whole, part)]
    assert math.isclose(ways[0], 1000 * ways[1])


def test_feet_stay_in_both_readings_of_the_inches():
    with pytest.raises(units.QuantityError) as caught:
        units.quantity("6 ft 2,500 in", units.LENGTHS, default="m")
    assert caught.value.what == "'6 ft 2,500 in' can be read as 6 ft 2500 in or as 6 ft 2.500 in"
    assert str(caught.value) == f"{caught.value.what}; write one of these, without the comma"


@pytest.mark.parametrize(
    ("count", "words"),
    [
        (0, "0 entries"),
        (1, "1 entry"),
        (1.0, "1 entry"),
        (-1.0, "-1 entry"),
        (1.0000001, "1 entry"),
        (1.5, "1.5 entries"),
        (1_234_567, "1234567 entries"),
    ],
)
def test_a_count_agrees_with_its_noun(count, words):
    assert units.counted(count, "entry", "entries") == words
    assert units.counted(count, "beat") == words.replace("entries", "beats").replace(
        "entry", "beat"
    )


@pytest.mark.parametrize(
    ("value", "decimals", "down", "up"),
    [
        (8.25, 1, 8.2, 8.3),  # a bound of 8.25 m was once printed as "at most 8 m"
        (8.25, 0, 8.0, 9.0),
        (
            0.29,
            2,
            0.29,
            0.29,
        ),  # what is exact stays as it is: 100 · 0.29 is 28.999999999999996 in binary
        (0.07, 2, 0.07, 0.07),  # and 100 · 0.07 is 7.000000000000001
        (-0.04, 1, -0.1, 0.0),  # towards more and towards less, not away from 0
        (6.096, 2, 6.09, 6.1),
        (2.0000001, 3, 2.0, 2.001),
    ],
)
def test_rounding_to_one_side(value, decimals, down, up):
    assert units.rounded_down(value, decimals) == down
    assert units.rounded_up(value, decimals) == up
    assert f"{units.rounded_up(-0.0, decimals):g}" == "0"  # never -0


@pytest.mark.parametrize(
    ("position", "said"),
    [
        ("25.2", "25.2"), ("25.2+1/2", "the and of 25.2"), ("25.2+5/16", "about the and of 25.2"),
        ("25.2+1/4", "about the and of 25.2"), ("25.2+3/4", "about the and of 25.2"), ("25.2+3/16", "just after 25.2"),
        ("25.2+13/16", "just before 25.3"), ("25.4+15/16", "just before 26.1"), ("0.4+.9", "just before 1.1"),
        ("-1.3+.9", "just before -1.4"), ("-1.4+.001", "just after -1.4"), ("whole show", "whole show"), ("", ""),
    ],
)  # fmt: skip
def test_a_position_is_told_as_it_can_be_counted(position, said):
    assert units.aloud(position, FOURS) == said


@pytest.mark.parametrize(
    ("position", "said"),
    [
        ("7.3+7/8", "just before 8.1"),
        ("8.3+7/8", "just before 8.4"),
        ("8.5+7/8", "just before 9.1"),
    ],
)
def test_the_count_after_the_last_of_a_bar_is_one_of_the_next(position, said):
    """A waltz with one bar of five."""
    waltz = units.BarLengths(metre=3, others=((8, 5),))
    assert units.aloud(position, waltz) == said
    assert units.aloud(position, waltz, "bar ") == said.replace("before ", "before bar ")


def test_when_something_is_takes_at_only_where_it_is_said():
    told = [units.at_aloud(each, FOURS) for each in ("25.2", "25.2+1/2", "25.2+5/16", "25.2+1/16")]
    assert told == ["at 25.2", "at the and of 25.2", "at about the and of 25.2", "just after 25.2"]


def test_what_stands_before_a_position_stands_before_its_number():
    assert units.aloud("25.2+1/16", FOURS, "bar ") == "just after bar 25.2"
    assert units.aloud("25.2", FOURS, "bar ") == "bar 25.2"
