"""Shapes of props: what they are made of, and what they refuse."""

from math import pi, radians, sqrt

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.props.prop import PROP_KINDS, Prop

POI = Prop(length=0.55, mass=0.2, wick_radius=0.05)
STAFF = Prop(
    kind="staff",
    length=0.7,
    behind=0.7,
    mass=0.8,
    head_mass=0.15,
    wick_radius=0.04,
    flame_reach=0.3,
)
FAN = Prop(
    kind="fan", length=0.4, mass=0.5, head_mass=0.04, wicks=5, spread=radians(120), wick_radius=0.03
)
HOOP = Prop(kind="hoop", length=0.85, mass=0.6, wicks=4, wick_radius=0.03)
CLUB = Prop(kind="club", length=0.45, behind=0.1, mass=0.35, wick_radius=0.04)
DART = Prop(kind="rope dart", length=2.0, mass=0.25, wick_radius=0.05)
ALL = {prop.kind: prop for prop in (POI, STAFF, FAN, HOOP, CLUB, DART)}


def test_every_kind_is_here():
    assert set(ALL) == set(PROP_KINDS)


def test_heads_by_kind():
    assert [len(ALL[kind].heads) for kind in ("poi", "rope dart", "staff", "club")] == [1, 1, 2, 1]
    assert STAFF.heads == ((0.7, 0.0), (-0.7, 0.0))
    assert len(FAN.heads) == 5
    assert_allclose([spot.off for spot in FAN.heads], 0.4)
    # the outer spokes of 120° lie 60° off the axis
    assert_allclose(min(spot.along for spot in FAN.heads), 0.4 * 0.5)
    assert_allclose(max(spot.across for spot in FAN.heads), 0.4 * sqrt(3) / 2)


def test_a_hoops_wicks_lie_on_its_rim_and_none_in_the_hand():
    for wicks in range(1, 9):
        hoop = Prop(kind="hoop", length=0.8, mass=0.6, wicks=wicks, wick_radius=0.03)
        centre = [(spot.along - 0.4) ** 2 + spot.across**2 for spot in hoop.heads]
        assert_allclose(centre, 0.16)
        assert min(spot.off for spot in hoop.heads) > 0.05


def test_who_pulls_and_who_is_turned():
    assert {kind for kind, prop in ALL.items() if prop.flexible} == {"poi", "rope dart"}
    assert {kind for kind, prop in ALL.items() if prop.two_ended} == {"staff", "club"}
    assert {kind for kind, prop in ALL.items() if prop.burns_behind} == {"staff"}


def test_a_narrow_fan_is_held_by_its_shaft():
    narrow = Prop(kind="fan", length=0.4, mass=0.5, wicks=3, spread=radians(60), wick_radius=0.03)
    assert narrow.shaft_radius > 0.4 * 0.5
    assert FAN.shaft_radius == 0.01


def test_masses_pull_at_the_right_place():
    assert POI.centre_of_mass == 0.55
    assert STAFF.centre_of_mass == 0
    assert_allclose(HOOP.centre_of_mass, 0.425)
    held = Prop(kind="staff", length=1.0, behind=0.4, mass=0.8, head_mass=0.15, wick_radius=0.04)
    assert_allclose(held.centre_of_mass, 0.3)


@pytest.mark.parametrize("field", ["behind", "head_mass", "flame_reach"])
def test_nothing_is_negative(field):
    with pytest.raises(ValueError, match=f"{field} must not be negative"):
        Prop(**{"kind": "staff", "length": 0.7, "mass": 0.8, "wick_radius": 0.04, field: -0.1})


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"kind": "sword"}, "kind must be one of"),
        ({"behind": 0.2}, "nothing behind the hand"),
        ({"wicks": 3}, "one wick at each end"),
        ({"kind": "fan", "wicks": 0}, "wicks must be 1 to 24"),
        ({"kind": "fan", "spread": 2 * pi}, "spread must be 0 to 3.14"),
        ({"kind": "staff", "spread": 0.1}, "spread must be 0 to 0.00"),
        ({"kind": "staff", "head_mass": 0.15}, "heads weigh more than the staff as a whole"),
    ],
)
def test_shapes_that_are_none(given, words):
    with pytest.raises(ValueError, match=words):
        Prop(**{"length": 0.5, "mass": 0.2, "wick_radius": 0.05, **given})


def test_a_head_on_a_line_is_a_point():
    """m·L² about the hand, any mechanics text."""
    assert_allclose(Prop(length=0.5, mass=0.2, wick_radius=0.05).inertia, 0.05)
    rope = Prop(kind="rope dart", length=2.0, mass=0.3, wick_radius=0.05)
    assert_allclose((rope.inertia, rope.centre_of_mass), (1.2, 2.0))


def test_radii_of_every_kind_by_hand():
    """Half thicknesses of common practice, wicks of 3 cm with flames of 20; a fan of 60° and a hoop in balls."""
    more = {"mass": 0.6, "wick_radius": 0.03, "flame_reach": 0.2}
    half = 0.5 * np.sin(np.radians(30))
    expected = {  # shaft, ball's place, cold and burning radius, hottest
        Prop(length=0.5, **more): (0.01, 0.5, 0.03, 0.23),
        Prop(kind="rope dart", length=0.5, **more): (0.01, 0.5, 0.03, 0.23),
        Prop(kind="staff", length=0.5, behind=0.4, **more): (0.015, 0.5, 0.03, 0.23),
        Prop(kind="club", length=0.5, behind=0.1, **more): (0.025, 0.5, 0.03, 0.23),
        Prop(kind="fan", length=0.5, wicks=3, spread=np.radians(60), **more): (
            half + 0.01, 0.5 * np.cos(np.radians(30)), half + 0.03, half + 0.23,
        ),
        Prop(kind="fan", length=0.5, wicks=1, **more): (0.01, 0.5, 0.03, 0.23),
        Prop(kind="hoop", length=0.5, wicks=4, **more): (0.012, 0.25, 0.28, 0.48),
    }  # fmt: skip
    for prop, (shaft, place, cold, burning) in expected.items():
        assert_allclose(
            (prop.shaft_radius, prop.ball[0], prop.cold_radius, prop.burning_radius),
            (shaft, place, cold, burning),
        )
        assert prop.hot_radius == pytest.approx(0.23)
        assert prop.farthest == 0.5
    thin = Prop(kind="hoop", length=0.5, wicks=4, mass=0.6, wick_radius=0.005)
    assert thin.cold_radius == pytest.approx(0.25 + 0.012)  # its rim is thicker than its wicks
    assert Prop(kind="staff", length=0.3, behind=0.9, **more).farthest == 0.9
