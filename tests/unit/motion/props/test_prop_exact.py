"""Shapes of props to the last digit: tables typed again, masses spread over many points, places by hand."""

from math import cos, hypot, inf, nan, pi, radians, sin, sqrt

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import (
    CHORDS,
    PROP_KINDS,
    SHAFT_RADIUS,
    TETHER_RADIUS,
    USUAL_HANDS,
    Prop,
    PropPoint,
    Solid,
    placed,
)

MORE = {"mass": 0.6, "wick_radius": 0.03, "flame_reach": 0.2}
POI = Prop(length=0.55, **MORE)
STAFF = Prop(kind="staff", length=0.8, behind=0.5, head_mass=0.12, **MORE)
CLUB = Prop(kind="club", length=0.45, behind=0.15, head_mass=0.1, **MORE)
FAN = Prop(kind="fan", length=0.4, wicks=4, spread=radians(120), head_mass=0.05, **MORE)
HOOP = Prop(kind="hoop", length=0.9, wicks=3, head_mass=0.04, **MORE)


def test_tables_are_those_of_common_practice():
    """Typed again: half thicknesses [m] and how many hands hold one each."""
    assert PROP_KINDS == ("poi", "rope dart", "staff", "club", "fan", "hoop")
    assert dict(USUAL_HANDS) == {
        "poi": (2,), "rope dart": (1,), "staff": (1, 2), "club": (2,), "fan": (2,), "hoop": (2,),
    }  # fmt: skip
    assert dict(SHAFT_RADIUS) == {
        "poi": 0.01, "rope dart": 0.01, "staff": 0.015, "club": 0.025, "fan": 0.01, "hoop": 0.012,
    }  # fmt: skip
    assert TETHER_RADIUS == 0.01
    assert CHORDS == 24


def test_a_bare_prop():
    bare = Prop(length=0.5, mass=0.2, wick_radius=0.05)
    assert (bare.flame_reach, bare.kind, bare.behind, bare.wicks, bare.spread, bare.head_mass) == (
        0.0, "poi", 0.0, 1, 0.0, 0.0,
    )  # fmt: skip
    assert PropPoint(0.3) == (0.3, 0.0)
    assert PropPoint(-3.0, 4.0).off == 5.0


def spread_out(prop):
    """Many points (along, across) and their masses: rods, spokes and rim evenly, heads as points."""
    share = (np.arange(100_000) + 0.5) / 100_000
    heads = np.array([(spot.along, spot.across) for spot in prop.heads])
    frame = prop.mass - prop.head_mass * len(heads)
    if prop.kind == "hoop":
        turn = 2 * pi * share
        places = prop.length / 2 * np.stack([1 + np.cos(turn), np.sin(turn)], axis=1)
    elif prop.kind == "fan":
        places = np.concatenate([share[:, None] * head for head in heads])
    else:
        along = -prop.behind + (prop.length + prop.behind) * share
        places = np.stack([along, 0 * along], axis=1)
    masses = np.full(len(places), frame / len(places))
    return np.concatenate([places, heads]), np.append(masses, np.full(len(heads), prop.head_mass))


@pytest.mark.parametrize(
    "prop",
    [STAFF, CLUB, FAN, HOOP, Prop(kind="fan", length=0.4, wicks=1, head_mass=0.05, **MORE)],
    ids=lambda prop: f"{prop.kind}-{prop.wicks}",
)
def test_mass_and_inertia_are_the_sums_over_all_points(prop):
    """Σm·x/Σm and Σm·r², the definitions; a hundred thousand points miss the integral by 1e-10."""
    places, masses = spread_out(prop)
    assert prop.centre_of_mass == pytest.approx((masses @ places[:, 0]) / prop.mass, rel=1e-8)
    assert prop.inertia == pytest.approx(masses @ (places**2).sum(axis=1), rel=1e-8)


def test_heads_of_fans_and_hoops_by_hand():
    """A fan of 120° with four spokes: 60 and 20° to either side; the farthest along first, then by side."""
    at = [(0.4 * cos(radians(a)), 0.4 * sin(radians(a))) for a in (-20, 20, -60, 60)]
    assert_allclose(FAN.heads, at, atol=1e-15)
    assert Prop(kind="fan", length=0.4, wicks=1, spread=1.0, **MORE).heads == ((0.4, 0.0),)
    two = Prop(kind="fan", length=0.4, wicks=2, spread=pi, **MORE)
    assert_allclose(two.heads, [(0, -0.4), (0, 0.4)], atol=1e-15)
    # an odd hoop has a wick opposite the hand, an even one has the hand's opposite between two
    half = 0.45
    assert_allclose(
        HOOP.heads, [(0.9, 0), (half / 2, -half * sqrt(3) / 2), (half / 2, half * sqrt(3) / 2)],
        atol=1e-15,
    )  # fmt: skip
    even = Prop(kind="hoop", length=0.9, wicks=2, **MORE)
    assert_allclose(even.heads, [(half, -half), (half, half)], atol=1e-15)
    assert POI.heads == ((0.55, 0.0),)
    assert CLUB.heads == ((0.45, 0.0),)


def test_wicks_a_picometre_apart_are_told_apart():
    """The farthest along first, to 1e-12 m: a middle spoke 2e-12 ahead leads, one 2e-13 ahead is level with the others.

    An outer spoke of a metre at α falls back by α²/2.
    """
    for back, order in ((2e-12, [0, -1, 1]), (2e-13, [-1, 0, 1])):
        fan = Prop(kind="fan", length=1.0, wicks=3, spread=2 * sqrt(2 * back), **MORE)
        assert np.sign([spot.across for spot in fan.heads]).tolist() == order
    # eight wicks of a hoop a picometre wide: 0.96, 0.69, 0.31 and 0.04 of it along, so 1, 1, 0 and 0
    tiny = Prop(kind="hoop", length=1e-12, wicks=8, **MORE).heads
    for half, far in ((tiny[:4], True), (tiny[4:], False)):
        assert [spot.along > 0.5e-12 for spot in half] == [far] * 4
        assert [spot.across for spot in half] == sorted(spot.across for spot in half)


@pytest.mark.parametrize(
    ("prop", "place", "radius"),
    [
        (FAN, 0.2, 0.4 * sqrt(3) / 2),
        (Prop(kind="fan", length=0.4, wicks=1, spread=1.0, **MORE), 0.4, 0.0),
        (Prop(kind="fan", length=0.4, wicks=2, spread=pi / 3, **MORE), 0.2 * sqrt(3), 0.2),
        (HOOP, 0.45, 0.45),
        (STAFF, 0.8, 0.0),
        (POI, 0.55, 0.0),
    ],
)
def test_the_ball_by_hand(prop, place, radius):
    assert_allclose(prop.ball, (place, radius), atol=1e-15)


def test_a_fan_of_a_right_angle_is_wide():
    """Under 90° its shaft encloses every spoke, from 90° on it is one spoke."""
    narrow, right = (
        Prop(kind="fan", length=0.4, wicks=3, spread=spread, **MORE)
        for spread in (pi / 2 - 1e-9, pi / 2)
    )
    assert narrow.shaft_radius == pytest.approx(0.4 * sin(pi / 4) + 0.01)
    assert right.shaft_radius == 0.01
    assert HOOP.shaft_radius == 0.012


def test_radii_where_the_shaft_is_thicker_than_the_wick():
    thin = Prop(kind="hoop", length=0.5, wicks=4, mass=0.6, wick_radius=0.005, flame_reach=0.004)
    assert thin.hot_radius == pytest.approx(0.009)
    assert thin.cold_radius == pytest.approx(0.262)
    assert thin.burning_radius == pytest.approx(0.262)  # wick and flame are thinner than the rim
    club = Prop(kind="club", length=0.5, behind=0.2, mass=0.6, wick_radius=0.005)
    assert club.cold_radius == club.burning_radius == 0.005


def test_solids_by_hand():
    assert POI.solids == (
        Solid("tether", PropPoint(0.0), PropPoint(0.55), 0.01),
        Solid("head", PropPoint(0.55), PropPoint(0.55), 0.03),
    )
    rope = Prop(kind="rope dart", length=2.0, **MORE)
    assert rope.solids[0] == Solid("rope", PropPoint(0.0), PropPoint(2.0), 0.01)
    assert STAFF.solids == (
        Solid("staff", PropPoint(-0.5), PropPoint(0.8), 0.015),
        Solid("head", PropPoint(0.8), PropPoint(0.8), 0.03),
        Solid("head", PropPoint(-0.5), PropPoint(-0.5), 0.03),
    )
    assert CLUB.solids == (
        Solid("club", PropPoint(-0.15), PropPoint(0.45), 0.025),
        Solid("head", PropPoint(0.45), PropPoint(0.45), 0.03),
    )
    assert FAN.solids == (
        *(Solid("fan", PropPoint(0.0), spot, 0.01) for spot in FAN.heads),
        *(Solid("head", spot, spot, 0.03) for spot in FAN.heads),
    )


def test_a_hoop_is_a_closed_ring_of_chords():
    """24 chords of 15° about (R, 0), from the hand round; a chord leaves its arc by its sagitta R(1 − cos 7.5°)."""
    ring, wicks = HOOP.solids[:24], HOOP.solids[24:]
    turn = np.radians(15.0 * np.arange(25))
    corners = 0.45 * np.stack([1 - np.cos(turn), np.sin(turn)], axis=1)
    assert_allclose([each.start for each in ring], corners[:-1], atol=1e-15)
    assert_allclose([each.end for each in ring], corners[1:], atol=1e-15)
    assert {each.name for each in ring} == {"hoop"}
    assert_allclose([each.radius for each in ring], 0.012 + 0.45 * (1 - cos(radians(7.5))))
    assert wicks == tuple(Solid("head", spot, spot, 0.03) for spot in HOOP.heads)


def test_envelopes_by_hand():
    assert POI.envelope == POI.solids
    assert STAFF.envelope == STAFF.solids
    assert CLUB.envelope == CLUB.solids
    end = PropPoint(0.4 * cos(radians(60)))
    assert FAN.envelope == (
        Solid("fan", PropPoint(0.0), end, 0.01),
        Solid("head", end, end, 0.4 * sin(radians(60)) + 0.03),
    )
    assert HOOP.envelope == (
        Solid("hoop", PropPoint(0.0), PropPoint(0.45), 0.012),
        Solid("head", PropPoint(0.45), PropPoint(0.45), 0.45 + 0.03),
    )


def bounds(**given):
    zero = dict.fromkeys(("hand_speed", "hand_acceleration", "turn_rate", "turn_acceleration"), 0.0)
    return Bounds(**{**zero, "hand_reach": 0.0, **given})


def test_the_fastest_wick_by_hand():
    """|h'| + |a||d'| on the axis, |h'| + ρ·ω beside it, ω the rate of the whole frame."""
    told = bounds(hand_speed=0.7, turn_rate=3.0, frame_rate=5.0)
    assert POI.fastest(told) == pytest.approx(0.7 + 0.55 * 3)
    assert STAFF.fastest(told) == pytest.approx(0.7 + 0.8 * 3)
    behind = Prop(kind="staff", length=0.3, behind=0.9, **MORE)
    assert behind.fastest(told) == pytest.approx(0.7 + 0.9 * 3)
    assert FAN.fastest(told) == pytest.approx(0.7 + 0.4 * 5)
    # a hoop's wick on the axis is at 0.9, those beside it at 0.45
    assert HOOP.fastest(told) == pytest.approx(0.7 + 0.9 * 3)
    assert HOOP.fastest(bounds(turn_rate=3.0, frame_rate=9.0)) == pytest.approx(0.45 * 9)
    unknown = bounds(hand_speed=0.7, turn_rate=3.0)
    assert FAN.fastest(unknown) == pytest.approx(0.7 + 0.4 * 3)
    still = bounds(hand_speed=0.7)
    assert POI.fastest(still) == 0.7


def test_the_fastest_wick_of_many_bounds_is_that_of_each_to_the_last_digit():
    drawn = np.random.default_rng(3)
    many = [
        bounds(hand_speed=h, turn_rate=t, frame_rate=f if k % 3 else np.inf)
        for k, (h, t, f) in enumerate(drawn.uniform(0.0, 9.0, (40, 3)).tolist())
    ]
    for prop in (POI, STAFF, CLUB, FAN, HOOP):
        assert prop.fastest_each(many).tolist() == [prop.fastest(each) for each in many]
    assert POI.fastest_each([]).shape == (0,)


def state(n=3):
    """Tethers along y and planes along x but for the second instant: n × d = −z there and z elsewhere."""
    rows = np.zeros((n, 3))
    tether, plane = rows + np.array([0.0, 1.0, 0.0]), rows + np.array([1.0, 0.0, 0.0])
    plane[1] *= -1
    return Motion(
        hand=rows + np.array([0.1, 0.2, 1.3]), hand_rate=rows, hand_acceleration=rows, tether=tether,
        tether_rate=rows, tether_acceleration=rows, plane=plane,
    )  # fmt: skip


def test_bodies_are_put_where_they_are():
    """h + along·d + across·(n × d), by hand."""
    solids = (
        Solid("on", PropPoint(0.0), PropPoint(0.5), 0.01),
        Solid("off", PropPoint(-0.5, 0.2), PropPoint(0.0, -0.3), 0.01),
    )
    (a, b), (c, d) = placed(solids, state())
    assert_array_equal(a, [[0.1, 0.2, 1.3]] * 3)
    assert_allclose(b, [[0.1, 0.7, 1.3]] * 3)
    assert_allclose(c, [[0.1, -0.3, 1.5], [0.1, -0.3, 1.1], [0.1, -0.3, 1.5]])
    assert_allclose(d, [[0.1, 0.2, 1.0], [0.1, 0.2, 1.6], [0.1, 0.2, 1.0]])
    for wide in (
        Solid("start", PropPoint(0.0, 0.2), PropPoint(0.5), 0.01),
        Solid("end", PropPoint(0.5), PropPoint(0.0, 0.2), 0.01),
    ):
        ((start, end),) = placed((wide,), state())
        assert_allclose(start if wide.name == "start" else end, [
            [0.1, 0.2, 1.5], [0.1, 0.2, 1.1], [0.1, 0.2, 1.5],
        ])  # fmt: skip
        assert_allclose(end if wide.name == "start" else start, [[0.1, 0.7, 1.3]] * 3)


GIVEN = {"length": 0.5, "mass": 0.6, "wick_radius": 0.05}


@pytest.mark.parametrize("field", ["length", "mass", "wick_radius"])
def test_positive(field):
    for value in (0.0, -0.1, nan, inf):
        with pytest.raises(ValueError, match=f"{field} must be positive"):
            Prop(**{**GIVEN, field: value})
    assert getattr(Prop(**{**GIVEN, field: 1e-9}), field) == 1e-9


@pytest.mark.parametrize("field", ["flame_reach", "behind", "head_mass"])
def test_not_negative(field):
    for value in (-1e-9, nan, inf):
        with pytest.raises(ValueError, match=f"{field} must not be negative"):
            Prop(**{**GIVEN, "kind": "staff", field: value})
    assert getattr(Prop(**{**GIVEN, "kind": "staff", field: 1e-9}), field) == 1e-9


@pytest.mark.parametrize(
    "field", ["length", "mass", "wick_radius", "flame_reach", "behind", "spread", "head_mass"]
)
def test_numbers_are_numbers(field):
    for value in ("0.1", True, None):
        with pytest.raises(TypeError, match=f"{field} must be a number"):
            Prop(**{**GIVEN, "kind": "staff", field: value})
    with pytest.raises(TypeError, match="wicks must be a whole number"):
        Prop(**GIVEN, wicks=1.0)


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"kind": "poi", "behind": 0.1}, "a poi has nothing behind"),
        ({"kind": "fan", "behind": 0.1}, "a fan has nothing behind"),
        ({"kind": "staff", "behind": 0.1}, None),
        ({"kind": "club", "behind": 0.1}, None),
        ({"kind": "staff", "wicks": 2}, "one wick at each end"),
        ({"kind": "staff", "wicks": 0}, "one wick at each end"),
        ({"kind": "hoop", "wicks": 2}, None),
        ({"kind": "hoop", "wicks": 0}, "wicks must be 1 to 24"),
        ({"kind": "fan", "wicks": 1}, None),
        ({"kind": "fan", "wicks": 24}, None),
        ({"kind": "fan", "wicks": 25}, "wicks must be 1 to 24"),
        ({"kind": "fan", "spread": pi}, None),
        ({"kind": "fan", "spread": pi + 1e-9}, "spread must be 0 to 3.14"),
        ({"kind": "fan", "spread": -1e-9}, "spread must be 0 to 3.14"),
        ({"kind": "fan", "spread": nan}, "spread must be 0 to 3.14"),
        ({"kind": "hoop", "spread": 1e-9}, "spread must be 0 to 0.00"),
        ({"kind": "staff", "head_mass": 0.3}, None),  # both heads are all that it weighs
        ({"kind": "staff", "head_mass": 0.3001}, "the heads weigh more than the staff"),
        ({"kind": "fan", "wicks": 4, "head_mass": 0.15}, None),
        ({"kind": "fan", "wicks": 4, "head_mass": 0.151}, "the heads weigh more than the fan"),
        ({"kind": "club", "head_mass": 0.6}, None),
    ],
)
def test_each_kind_refuses_what_it_cannot_have(given, words):
    if words is None:
        assert Prop(**GIVEN, **given).kind == given["kind"]
    else:
        with pytest.raises(ValueError, match=words):
            Prop(**GIVEN, **given)


def test_who_is_what():
    flexible = {prop.kind for prop in (POI, STAFF, CLUB, FAN, HOOP) if prop.flexible}
    assert flexible == {"poi"}
    assert Prop(kind="rope dart", length=2.0, **MORE).flexible
    assert not Prop(kind="staff", length=0.7, **MORE).two_ended
    assert STAFF.farthest == 0.8
    assert hypot(*FAN.heads[0]) == pytest.approx(FAN.farthest)
