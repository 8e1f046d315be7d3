"""Bodies against ANSUR II, the 2012 anthropometric survey of the US Army (Natick TR-15/007): 5th, 50th
and 95th percentiles of the public rows, in mm, as the project's fact sheet holds them."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.distances.boundaries import boundaries, ceiling_needed
from sequencer.checks.distances.requirements import Requirements
from sequencer.geometry.bodies import SIDES, SURVEY, Body
from sequencer.geometry.regions import Ceiling, Venue
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.timing.tempo import TempoMap

MM = 1e-3


class Rest:
    """A trajectory that is never asked."""

    def at(self, *_):
        raise AssertionError

    pieces = at


def performer(*, length, flame=0.0, wick=1e-9):
    prop = Prop(length=length, mass=0.2, wick_radius=wick, flame_reach=flame)
    body = Body.of_survey("man", 95)
    return Dancer(
        name="P95",
        body=body,
        props={"right": prop},
        trajectories={"right": Rest()},
        floor=WalkPath((0, 0)),
        lit=((0, 1),),
    )


@pytest.mark.parametrize(
    ("sex", "statures"), [("man", (1648, 1755, 1870)), ("woman", (1525, 1626, 1740))]
)
def test_statures(sex, statures):
    assert [round(Body.of_survey(sex, p).stature / MM) for p in (5, 50, 95)] == list(statures)


def test_reach_of_the_tallest_man():
    """0.740 m of arm and 0.75 m of prop: 1.49 m of reach, 3.031 m overhead.

    The facts count the reach from the shoulder; from the body's axis it is half the shoulders more.
    """
    tall = performer(length=0.75)

    assert_allclose(tall.reach - tall.body.half_shoulder, 1.49, atol=MM)
    assert_allclose(tall.body.overhead_grip + 0.75, 3.031, atol=MM)


def test_percentiles_do_not_add():
    """Overhead grip is summed per person: 2281 mm, not the 2290 mm of the summed percentiles."""
    body = Body.of_survey("man", 95)

    assert_allclose(body.overhead_grip, 2.281, atol=MM)
    assert abs(body.shoulder_height + body.arm_length - 2.281) > 4 * MM


def test_ceiling_that_a_ten_foot_rule_leaves_too_low():
    """3.048 m does not hold a P95 man with 0.75 m, 0.455 m of flame and 1 m of room: 4.49 m does."""
    needed = ceiling_needed(performer(length=0.75, flame=0.455), Requirements())

    assert_allclose(needed, 4.486, atol=2 * MM)
    assert needed > 3.048


@pytest.mark.parametrize(("height", "low"), [(3.048, True), (4.49, False), (None, False)])
def test_a_ceiling_is_judged_where_there_is_one(dance, height, low):
    """3.048 m fails, 4.49 m holds the same performer; outdoors, with no ceiling, the rule does not apply."""
    ada = replace(
        dance.dancer("Ada", (0.0, 5.0), lit=((0.0, 8.0),)),
        body=Body.of_survey("man", 95),
        props=dict.fromkeys(
            SIDES, Prop(length=0.75, mass=0.2, wick_radius=1e-9, flame_reach=0.455)
        ),
    )
    ceilings = () if height is None else (Ceiling(height=height),)
    found = boundaries(
        [ada],
        TempoMap(0.5 * np.arange(32)),
        Venue(ceilings=ceilings),
        Requirements(),
        start=0,
        end=8,
    )

    assert ("ceiling-too-low" in {each.code for each in found.findings}) == low


@pytest.mark.parametrize("key", list(SURVEY))
def test_proportions_meet_the_survey(key):
    """Scaled from stature alone, shoulder and arm are within 3 % of the same percentile's."""
    row, body = SURVEY[key], Body(stature=SURVEY[key].stature)

    assert_allclose(body.shoulder_height, row.shoulder_height, rtol=0.03)
    assert_allclose(body.arm_length, row.arm_length, rtol=0.03)
    assert_allclose(body.overhead_grip, row.overhead_grip, rtol=0.03)


def test_mean_of_men():
    """Mean stature 1756.2, shoulder 1440.7, arm 684.3, bideltoid breadth 510.4 mm."""
    body = Body(stature=1.7562)

    assert_allclose(body.shoulder_height, 1.4407, atol=1e-4)
    assert_allclose(body.arm_length, 0.6843, atol=1e-4)
    assert_allclose(2 * body.half_breadth, 0.5104, atol=1e-4)


def test_a_ceiling_over_who_is_seated():
    """Seat 0.50 m, acromial height sitting 604 mm, arm 684.3 mm (means of men), prop, flame and 1 m of room."""
    seated = replace(performer(length=0.75, flame=0.455), body=Body(stature=1.7562, seated=True))
    seated = replace(seated, carriage=None)

    assert_allclose(
        ceiling_needed(seated, Requirements()),
        max(0.5 + 0.604 + 0.6843 + 0.75 + 0.455 + 1, 3.6576),
        atol=2 * MM,
    )
    assert_allclose(seated.body.overhead_grip, 1.7883, atol=MM)
