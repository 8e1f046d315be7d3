"""Performers in a wheelchair: heights, the chair's own shape, and the column that others keep clear of."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import USED_ANGLES, capsule_ends, in_column
from sequencer.geometry.segments import segment_segment
from sequencer.geometry.wheelchair import AXLE, SEAT, WHEEL
from sequencer.motion.trajectories.rests import rest
from sequencer.show.file_records.prop_records import PropRecord

STATURES = (0.8, 1.4, 1.7, 2.1, 2.6)
LOW, HIGH = (np.array(limits) for limits in zip(*USED_ANGLES.values(), strict=True))
CORNERS = np.array(np.meshgrid(*zip(LOW, HIGH, strict=True))).reshape(5, -1).T


def out_of_column(body, angles):
    """How far any capsule is out of the column in any of the postures [m], shape (capsules, postures)."""
    radii = np.array([capsule.radius for capsule in body.capsules])[:, None]
    column = body.column
    far = []
    for end in capsule_ends(body, angles):
        level = np.clip(end[..., 2], column.start[2], column.end[2])
        away = np.hypot(np.hypot(end[..., 0], end[..., 1]), end[..., 2] - level)
        far.append(away + radii - column.radius)
    return np.maximum(*far)


def test_heights_are_the_survey_s_over_the_seat():
    """ANSUR II, men: sitting height 918 mm, acromial height sitting 604 mm, at the mean stature; from memory."""
    body = Body(stature=1.7562, seated=True)

    assert_allclose(body.height, 0.50 + 0.918, atol=1e-4)
    assert_allclose(body.shoulder_height, 0.50 + 0.604, atol=1e-4)
    assert_allclose(body.overhead_grip, 0.50 + 0.604 + 0.6843, atol=1e-4)
    assert body.arm_length == Body(stature=1.7562).arm_length
    assert body.half_breadth == Body(stature=1.7562).half_breadth


def test_trunk_and_head_are_let_down_as_they_are():
    """Above the hips a seated body is a standing one, lower by one length; its hips are over the seat."""
    stood, sat = Body(stature=1.8), Body(stature=1.8, seated=True)
    lower = stood.stature - sat.height
    for a, b in zip(stood.skull, sat.skull, strict=True):
        assert_allclose(a.end[2] - b.end[2], lower, atol=2e-3)  # both heights are survey means
    for a, b in zip(stood.trunk[:4], sat.trunk[:4], strict=True):
        assert_allclose(a.end[2] - b.end[2], lower, atol=2e-3)  # chests and waists
    assert_allclose(stood.hip_height - sat.hip_height, lower)
    assert min(c.start[2] - c.radius for c in sat.trunk) >= SEAT - 1e-9
    assert SEAT < sat.hip_height < SEAT + 0.15


@pytest.mark.parametrize("stature", STATURES)
def test_the_column_holds_person_and_chair_in_every_posture(stature):
    body = Body(stature=stature, seated=True)
    draw = np.random.default_rng(1).uniform(LOW, HIGH, size=(2000, 5))
    angles = np.concatenate((CORNERS, draw, np.zeros((1, 5))))

    assert np.all(in_column(body, angles))
    assert np.max(out_of_column(body, angles)) <= 1e-9


@given(
    st.floats(0.8, 2.6),
    st.tuples(*(st.floats(low, high) for low, high in zip(LOW, HIGH, strict=True))),
)
def test_the_column_holds_any_seated_body(stature, angles):
    assert np.max(out_of_column(Body(stature=stature, seated=True), np.array([angles]))) <= 1e-9


def test_the_column_is_that_of_an_occupied_wheelchair():
    """Corner of 0.70 m by 1.20 m about the middle (ISO 7176-5, EN 12183, from memory); more for long legs."""
    assert_allclose(Body(stature=1.7, seated=True).girth, np.hypot(0.35, 0.60))
    assert Body(stature=2.3, seated=True).girth > np.hypot(0.35, 0.60) + 0.02
    assert Body(stature=1.7).girth == Body(stature=1.7).half_breadth


@pytest.mark.parametrize("stature", STATURES)
def test_the_chair_keeps_its_outline_and_the_floor(stature):
    body = Body(stature=stature, seated=True)
    wheels = [c for c in body.legs if c.name == "wheel"]
    assert_allclose(max(c.start[0] + c.radius for c in wheels), 0.35)
    assert_allclose(min(c.start[0] - c.radius for c in wheels), -0.35)
    for capsule in body.legs:
        assert min(capsule.start[2], capsule.end[2]) - capsule.radius >= -1e-9, capsule
        assert max(abs(capsule.start[0]), abs(capsule.end[0])) + capsule.radius <= 0.3501


def test_nothing_passes_through_a_wheel():
    """Every line across a wheel of 0.60 m, and every point of its middle plane, meets it."""
    wheels = [c for c in Body(seated=True).legs if c.name == "wheel" and c.start[0] > 0]
    draw = np.random.default_rng(2)
    turn, far = draw.uniform(0, 2 * np.pi, 20_000), WHEEL * np.sqrt(draw.uniform(0, 1, 20_000))
    turn[:5000], far[:5000] = np.linspace(0, 2 * np.pi, 5000), WHEEL  # the rim
    y, z = far * np.cos(turn), AXLE + far * np.sin(turn)
    depth = np.full(len(y), np.inf)
    for c in wheels:
        along = np.clip(y, c.start[1], c.end[1])
        depth = np.minimum(depth, np.hypot(y - along, z - c.start[2]) - c.radius)
    assert np.max(depth) <= 0.0
    assert np.max(np.hypot(y, z - AXLE)) <= WHEEL + 1e-12


def test_knees_and_feet_are_before_the_body():
    """Buttock to knee 617 mm, popliteal height 430 mm at the mean stature (ANSUR II, men; from memory)."""
    body = Body(stature=1.7562, seated=True)
    legs = [c for c in body.legs if c.name == "leg"]
    back = min(c.start[1] - c.radius for c in body.trunk)
    thigh = max(legs, key=lambda c: c.radius)
    assert_allclose(thigh.end[1] + thigh.radius - back, 0.617, atol=1e-3)
    sole = min(c.end[2] - c.radius for c in legs)
    assert_allclose(SEAT - sole, 0.430, atol=1e-3)


@pytest.mark.parametrize("stature", np.linspace(1.4, 2.1, 15))
@pytest.mark.parametrize("kind", ["poi", "rope dart", "staff", "club", "fan", "hoop"])
def test_rest_is_beside_the_wheels_and_in_reach(stature, kind):
    """At rest a prop of the usual size keeps 6 cm of chair and person, 9 cm of the floor, and an arm's length."""
    body, prop = (
        Body(stature=stature, seated=True),
        PropRecord(kind=kind).sized(stature, paired=True).held(),
    )
    state = rest("right", body, prop).at(np.zeros(1))
    hand, tether, plane = (part[0] for part in (state.hand, state.tether, state.plane))
    aside = np.cross(plane, tether)
    assert (hand + prop.ball[0] * tether)[
        2
    ] - prop.cold_radius >= 0.0199  # as the floor's check takes it
    for solid in prop.solids:
        start, end = (
            hand + spot[0] * tether + spot[1] * aside for spot in (solid.start, solid.end)
        )
        assert min(start[2], end[2]) - solid.radius >= 0.09
        assert (
            min(start[0], end[0]) - solid.radius > 0.05
        )  # its twin in the left hand is its mirror image
        for c in body.capsules:
            gap = segment_segment(start, end, np.array(c.start), np.array(c.end))[0]
            assert gap - solid.radius - c.radius >= 0.0599, c.name
    assert np.linalg.norm(hand - body.shoulder("right")) <= 0.931 * body.arm_length


def test_what_is_measured_is_measured_in_the_chair():
    body = Body(stature=1.8, shoulder_top=1.2, seated=True)

    assert body.shoulder_height == 1.2
    assert_allclose(body.height - 1.2, Body(stature=1.8, seated=True).height - 1.119, atol=1e-3)
    with pytest.raises(ValueError, match="seated"):
        Body(stature=1.8, shoulder_top=1.54, seated=True)
    with pytest.raises(ValueError, match="shoulder_top"):
        Body(stature=1.8, shoulder_top=1.0)
