"""Exits, floor space, travel distances and signs against handbook figures.

Sources stand beside each check.
"""

from math import acos, sqrt

import pytest

from sequencer.facts.crowd import exit_capacity, floor_capacity, flows
from sequencer.facts.extinguishers import (
    allowed_travel,
    hazard_of_volume,
    parse_rating,
)
from sequencer.facts.rule_book import rule_book
from sequencer.facts.signs import signs, signs_for
from sequencer.motion.clearance.to_posts import Followed
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.outputs.words.date_words import day_words
from sequencer.safety.site_ground.audience_floor import standing_area
from sequencer.units import LENGTHS, SPEEDS, VOLUMES, quantity

FOOT = 0.3048


def test_five_metres_of_exit():
    """Hastings BC: 5 m × 109 × 5 min = 2,725 people (read)."""
    assert exit_capacity([5.0], minutes=5, flow=flows()["open-air"].per_metre_minute) == 2725


def test_the_largest_exit_is_lost():
    """Buckinghamshire CC: five exits of 4 m, the largest discounted, 82 a metre, 8 min: 10,496."""
    level = flows()["level"].per_metre_minute
    assert exit_capacity([4.0] * 5, minutes=8, flow=level) == 10_496
    assert exit_capacity([4.0] * 5, minutes=8, flow=level, discount_largest=False) == 13_120
    assert exit_capacity([4.0, 1.0], minutes=8, flow=level) == 2624  # 1 m is under 1.05 m


def test_default_flow_is_the_slower_one():
    """IMO corridor table, 1.3 p/(m·s) = 78 /(m·min); 109 exceeds every observed flow."""
    assert flows()["default"].per_metre_minute == pytest.approx(1.3 * 60)
    assert exit_capacity([5.0], minutes=5) == 1950
    with pytest.raises(ValueError, match="must be"):
        exit_capacity([-1.0], minutes=5)


def test_floor_space():
    """0.5 m² a person outdoors (Buckinghamshire CC; HSG195 quoted): 200 m² hold 400."""
    assert floor_capacity(200.0) == 400
    assert floor_capacity(200.0, kind="standing") == 666
    with pytest.raises(ValueError, match="known kind"):
        floor_capacity(1.0, kind="balcony")
    with pytest.raises(ValueError, match="must be"):
        floor_capacity(-1.0)


def test_the_exclusion_zone_is_cut_out_before_people_are_counted():
    """A floor of 20 m × 10 m, 200 m², with one long side 4 m from the middle of a circle of 6.096 m.

    The segment cut off has r² acos(d/r) − d √(r² − d²), by hand 13.37 m² (textbook geometry): 27 people fewer.
    """
    radius, away = 20 * FOOT, 4.0
    segment = radius**2 * acos(away / radius) - away * sqrt(radius**2 - away**2)
    still = Followed(who="Ada", floor=WalkPath(place=(0.0, 0.0)), start=0.0, end=8.0)
    floor = [(-10.0, 4.0), (10.0, 4.0), (10.0, 14.0), (-10.0, 14.0)]

    whole = standing_area([floor], [], {})
    left = standing_area([floor], [still], {"Ada": radius})

    assert floor_capacity(whole) == 400
    assert left == pytest.approx(200 - segment, abs=0.01)
    assert left <= 200 - segment  # a lower bound
    assert floor_capacity(left) == 373


def test_the_zone_follows_who_walks_while_lit():
    """A walk of 4 m along the floor cuts off a rectangle of 4 m more."""
    radius, away = 20 * FOOT, 4.0
    segment = radius**2 * acos(away / radius) - away * sqrt(radius**2 - away**2)
    walk = WalkPath(
        place=(-2.0, 0.0), moves=(Move(start=0.0, end=8.0, place=(2.0, 0.0), facing=0.0),)
    )
    floor = [(-20.0, 4.0), (20.0, 4.0), (20.0, 14.0), (-20.0, 14.0)]
    left = standing_area(
        [floor], [Followed(who="Ada", floor=walk, start=0.0, end=8.0)], {"Ada": radius}
    )

    assert left == pytest.approx(400 - segment - 4 * (radius - away), abs=0.2)
    assert left <= 400 - segment - 4 * (radius - away)


def test_travel_by_rating_and_amount():
    """Light hazard: 5-B at 30 ft, 10-B at 50 ft; under 1 gal is light (NFPA 10, second-hand)."""
    assert hazard_of_volume(3.7e-3) == "light"
    assert hazard_of_volume(3.8e-3) == "ordinary"
    assert hazard_of_volume(19e-3) == "extra"
    assert allowed_travel(parse_rating("5-B"), 1e-3).printed == "30 ft"
    assert allowed_travel(parse_rating("2-A:10-B:C"), 1e-3).printed == "50 ft"
    assert allowed_travel(parse_rating("2-A:10-B:C"), 4e-3).printed == "30 ft"
    assert allowed_travel(parse_rating("2-A:10-B:C"), 40e-3) is None
    assert allowed_travel(parse_rating("21A 144B"), 1e-3) is None
    with pytest.raises(ValueError, match="must not be negative"):
        hazard_of_volume(-1.0)


@pytest.mark.parametrize("text", ["2-A:10-B:C", "2A-10BC", "2A10BC", "2a 10bc"])
def test_ratings_as_people_write_them(text):
    assert str(parse_rating(text)) == "2-A:10-B:C"


@pytest.mark.parametrize("text", ["", "big one", "ABC", "7-A:10-B:C", "2-A:11-B"])
def test_what_is_no_rating_is_said(text):
    with pytest.raises(
        ValueError, match=r"not an extinguisher rating|gives no size|neither rating scheme"
    ):
        parse_rating(text)


def test_a_better_rating_meets_a_smaller_one():
    asked = parse_rating("2-A:10-B:C")

    assert parse_rating("3-A:40-B:C").meets(asked)
    assert not parse_rating("4-A:10-B").meets(asked)
    assert not parse_rating("1-A:10-B:C").meets(asked)
    assert parse_rating("13A 113B C").meets(asked) is None


def test_signs_of_the_fuel_point():
    """ISO 7010:2019: P003 no open flame, F001 extinguisher; prohibition a red ring, warning a triangle."""
    found = {sign.code: sign for sign in signs_for("fuel point")}

    assert {"P003", "F001"} <= set(found)
    assert (found["P003"].shape, found["P003"].colour) == ("ring with bar", "red")
    assert (signs()["W021"].shape, signs()["W021"].colour) == ("triangle", "yellow")
    assert (found["F001"].shape, found["F001"].colour) == ("square", "red")
    with pytest.raises(ValueError, match="use one of fuel point"):
        signs_for("moon")


@pytest.mark.parametrize(
    ("table", "unit", "base", "exact"),
    [
        (LENGTHS, "ft", "m", 0.3048),
        (SPEEDS, "mph", "m/s", 0.44704),
        (VOLUMES, "gal", "L", 3.785411784e-3),
    ],
)
@pytest.mark.parametrize("amount", [1.0, 20.0, 0.1, 1234.5])
def test_units_come_back(table, unit, base, exact, amount):
    """International foot and mile of 1959, US gallon of 231 in³: exact, there and back."""
    there = quantity(f"{amount} {unit}", table, default=base)
    back = quantity(f"{there / table[base]!r} {base}", table, default=base) / exact

    assert there == pytest.approx(amount * exact, rel=1e-12)
    assert back == pytest.approx(amount, rel=1e-12)


def test_twenty_feet_are_not_rounded_before_they_are_compared():
    """20 ft = 6.096 m: a gap of 6.098 m is enough and 6.095 m is not, though all print as 6.10 m."""
    needed, _ = rule_book().audience_distance(1)

    assert needed == quantity("20 ft", LENGTHS, default="m")
    assert (
        quantity("6.095 m", LENGTHS, default="m") < needed < quantity("6.098", LENGTHS, default="m")
    )


@pytest.mark.parametrize(
    ("day", "week"),
    [
        ("2005-01-01", "Saturday 1 January 2005, week 53 of 2004"),
        ("2008-12-29", "Monday 29 December 2008, week 1 of 2009"),
        ("2010-01-03", "Sunday 3 January 2010, week 53 of 2009"),
        ("2026-11-25", "Wednesday 25 November 2026, week 48"),
    ],
)
def test_iso_weeks(day, week):
    """ISO 8601 week dates: 2004-W53-6, 2009-W01-1, 2009-W53-7, 2026-W48-3, as a night is printed."""
    assert day_words(day) == week
