"""Shoulders and elbows for drawings: roots found by bisection, elbows by the two spheres that they lie on."""

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal
from scipy.optimize import brentq

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture, from_trunk
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.performers import arms
from sequencer.motion.performers.arms import elbow, given_shoulder, shoulder_gives

BODY = Body(stature=1.7)
BENT = Carriage(body=BODY, held=(HeldPosture(0.0, 1.0, Posture(turn=0.4, lean=0.05, side=-0.04)),))
UPRIGHT = Carriage(body=BODY)
ARM = BODY.arm_length


def hands_about(carriage, side, low, high, n=60, seed=1):
    """Hands at `low` to `high` arms from a shoulder, in every direction, and their beats."""
    draw = np.random.default_rng(seed)
    beats = draw.uniform(0.0, 1.0, n)
    way = draw.normal(size=(n, 3))
    way *= draw.uniform(low, high, (n, 1)) * ARM / np.linalg.norm(way, axis=1, keepdims=True)
    return beats, way, carriage.shoulder(beats, side) + from_trunk(way, carriage.angles(beats))


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("carriage", [UPRIGHT, BENT], ids=["upright", "bent"])
def test_a_shoulder_moves_just_as_far_as_the_arm_needs(carriage, side):
    """Towards the nearest point c of its box, by the first t at which |a − t·c| is an arm: found by bisection."""
    beats, way, hand = hands_about(carriage, side, 0.6, 1.2)
    low, high = BODY.shoulder_give
    if side == "left":  # the mirror image
        low, high = np.array([-high[0], *low[1:]]), np.array([-low[0], *high[1:]])
    expected = np.zeros_like(way)
    for k, away in enumerate(way):
        nearest = np.array([min(max(a, x), b) for a, x, b in zip(low, away, high, strict=True)])

        def missing(t, away=away, nearest=nearest):
            return np.linalg.norm(away - t * nearest) - ARM

        if missing(0.0) <= 0:
            continue
        share = 1.0 if missing(1.0) > 0 else brentq(missing, 0.0, 1.0, xtol=1e-15)
        expected[k] = share * nearest
    found = shoulder_gives(carriage, beats, hand, side)
    assert_allclose(found, expected, atol=1e-12)
    moved = np.linalg.norm(expected, axis=1)
    assert np.any(moved == 0)
    assert np.any((moved > 0) & (np.linalg.norm(way - expected, axis=1) < ARM + 1e-9))
    assert np.any(np.linalg.norm(way - expected, axis=1) > ARM + 0.01)
    whole = carriage.shoulder(beats, side) + from_trunk(expected, carriage.angles(beats))
    assert_allclose(given_shoulder(carriage, beats, hand, side), whole, atol=1e-12)


def test_a_shoulder_that_has_nowhere_to_go_stays():
    """A hand straight out to the side and a little back, below and outside the box: its nearest point is 0."""
    shoulder = BODY.shoulder("right")
    hand = shoulder + np.array([[1.1 * ARM, 0.0, -0.1], [0.0, 0.0, -1.3 * ARM], [0.0, 0.0, -ARM]])
    assert_array_equal(shoulder_gives(UPRIGHT, np.zeros(3), hand, "right"), np.zeros((3, 3)))


def test_what_an_arm_is_like():
    """Share of the upper arm, and how an elbow hangs: typed again."""
    assert arms.UPPER == 0.505
    assert arms._POLE == (0.55, -0.35, -0.75)


@pytest.mark.parametrize("side", ["left", "right"])
def test_an_elbow_lies_on_both_spheres_and_hangs(side):
    """|e − s| = 0.505 arms, |h − e| = 0.495 arms, and of that circle's points the farthest along the pole."""
    _, way, hand = hands_about(UPRIGHT, side, 0.05, 0.999)
    shoulder = hand - way
    found = elbow(BODY, shoulder, hand, side)
    assert_allclose(np.linalg.norm(found - shoulder, axis=1), 0.505 * ARM, atol=1e-12)
    assert_allclose(np.linalg.norm(hand - found, axis=1), 0.495 * ARM, atol=1e-12)
    pole = np.array([0.55 if side == "right" else -0.55, -0.35, -0.75])
    # on the circle the farthest along the pole lies in the plane of both, on the pole's side
    aside = np.cross(way, pole)
    assert_allclose(np.sum((found - shoulder) * aside, axis=1), 0.0, atol=1e-12)
    up = np.cross(aside, way)
    assert np.all(np.sum((found - shoulder) * up, axis=1) > 0)


def test_an_elbow_of_a_hand_out_of_reach_or_at_the_shoulder():
    """Straight: 0.505 arms along the line. At the shoulder: the law of cosines at the least span, 0.01 arms + 0.1 mm."""
    shoulder = np.array([[0.2, 0.0, 1.4], [0.2, 0.0, 1.4]])
    hand = shoulder + np.array([[0.0, 1.5 * ARM, 0.0], [0.0, 0.0, 0.0]])
    far, near = elbow(BODY, shoulder, hand, "right")
    # an arm 1e-9 m short of straight bends by √(2·0.505·0.495·arm·1e-9) to the side
    assert_allclose(far, shoulder[0] + [0.0, 0.505 * ARM, 0.0], atol=3e-5)
    bend = np.sqrt(2 * 0.505 * 0.495 * ARM * 1e-9)
    out = np.array([0.55, 0.0, -0.75])
    assert_allclose(
        (far - shoulder[0])[[0, 2]], (bend * out / np.linalg.norm(out))[[0, 2]], rtol=1e-3
    )
    span = 0.01 * ARM + 1e-4
    along = ((0.505 * ARM) ** 2 - (0.495 * ARM) ** 2 + span**2) / (2 * span)
    pole = np.array([0.55, -0.35, -0.75])
    high = np.sqrt((0.505 * ARM) ** 2 - along**2)
    assert_allclose(near, shoulder[1] + high * pole / np.linalg.norm(pole), atol=1e-12)


def test_an_elbow_of_a_hand_very_near_the_shoulder():
    """Half a centimetre off along y: the span is held at its least, the way stays along y."""
    shoulder = np.array([[0.0, 0.0, 1.4]])
    near = elbow(BODY, shoulder, shoulder + np.array([0.0, 0.005, 0.0]), "left")[0]
    span = 0.01 * ARM + 1e-4
    along = ((0.505 * ARM) ** 2 - (0.495 * ARM) ** 2 + span**2) / (2 * span)
    out = np.array([-0.55, 0.0, -0.75])
    high = np.sqrt((0.505 * ARM) ** 2 - along**2)
    expected = shoulder[0] + [0.0, along, 0.0] + high * out / np.linalg.norm(out)
    assert_allclose(near, expected, atol=1e-12)
    tiny = elbow(BODY, shoulder, shoulder + np.array([0.0, 5e-7, 0.0]), "left")[0]
    # under a micrometre the way is divided by a micrometre: half of a unit vector here
    aside = np.array([-0.55, -0.35 + 0.35 / 4, -0.75])
    expected = [0.0, along / 2, 0.0] + high * aside / np.linalg.norm(aside)
    assert_allclose(tiny - shoulder[0], expected, atol=1e-12)


def test_an_elbow_of_an_arm_along_its_pole():
    """No side is lower than another: the elbow stays on the line, whatever the rounding."""
    shoulder = np.array([[0.0, 0.0, 1.4]])
    pole = np.array([0.55, -0.35, -0.75])
    pole /= np.linalg.norm(pole)
    found = elbow(BODY, shoulder, shoulder + 0.6 * pole, "right")[0] - shoulder[0]
    along = ((0.505 * ARM) ** 2 - (0.495 * ARM) ** 2 + 0.36) / 1.2
    assert found @ pole == pytest.approx(along)
    assert np.linalg.norm(found - along * pole) <= np.sqrt((0.505 * ARM) ** 2 - along**2) + 1e-12


def test_elbows_of_a_table_of_hands():
    _, way, hand = hands_about(UPRIGHT, "right", 0.3, 0.9)
    flat = elbow(BODY, hand - way, hand, "right")
    table = elbow(BODY, (hand - way).reshape(3, 4, 5, 3), hand.reshape(3, 4, 5, 3), "right")
    assert_allclose(table, flat.reshape(3, 4, 5, 3), rtol=1e-12)
