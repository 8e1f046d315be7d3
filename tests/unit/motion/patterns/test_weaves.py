"""Weaves, windmill, fountain, corkscrew against the formulas of the module's head, written anew here."""

from itertools import product

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.patterns import weaves
from sequencer.motion.patterns.weaves import corkscrew, fountain, weave, windmill

BODY = Body(stature=1.7)
ARM, SHOULDER, BESIDE = BODY.arm_length, BODY.shoulder_height, BODY.half_breadth + 0.12
SHOULDER_X = BODY.half_shoulder
BEATS = np.array([0.0, 0.31, 0.9, 1.47, 2.2, 3.3, 4.9])
X, Y, Z = np.eye(3)
OFFSET = (0.07, 0.11, -0.05)
# Own side, other side, ahead, up in shares of the arm; the left hand's drop [m]; away from the body.
# Approved: what the search for the widest gap chose, and the hands' distance in planes (docs/motion.md).
PLACES = {
    "front": (0.67, -0.60, 0.29, -0.18, 0.10, Y),
    "behind": (0.63, -0.56, -0.28, -0.22, 0.10, -Y),
    "overhead": (0.62, -0.55, -0.15, 0.46, 0.06, Z),
}
SWINGS = {"front": Z, "behind": -Z, "overhead": -Y}
WAYS = {"forward": -X, "backward": X}


def turned(axis, angles, vector):
    """Turned by scipy's rotation vectors, one angle a row."""
    return Rotation.from_rotvec(np.outer(angles, axis)).apply(vector)


def sign(side):
    return {"right": 1.0, "left": -1.0}[side]


def crossing(loops, beats, cycle):
    """f(t) and its slope, t in loops."""
    t = beats * loops / cycle
    if loops == 2:
        return np.cos(np.pi * t), -np.pi * np.sin(np.pi * t)
    a = 2 / 3 * np.pi * (t + 1)
    slope = 2 / 3 * np.pi * np.sin(a) + 4 / 9 * np.pi * np.sin(2 * a)
    return 1 / 3 - np.cos(a) - np.cos(2 * a) / 3, slope


def steepest(loops):
    """The largest slope of f, sampled densely: a millionth of a loop apart near its top."""
    t = np.linspace(0.0, float(loops), 1_000_001)
    return float(np.max(np.abs(crossing(loops, t, float(loops))[1])))


STEEPEST = {2: np.pi, 3: steepest(3)}


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize(("loops", "side"), list(product((2, 3), SIDES)))
@pytest.mark.parametrize("way", WAYS)
def test_a_weave_is_as_the_formula_says(place, loops, side, way):
    cycle, width, swing, lead, out = 5.0, 0.8, 0.6, 0.3, sign(side)
    law = weave(
        loops=loops, way=way, place=place, width=width, swing=swing, lead=lead, beats=cycle,
        side=side, body=BODY, offset=OFFSET,
    )  # fmt: skip
    own, other, ahead, up, under, away = PLACES[place]
    f, slope = crossing(loops, BEATS, cycle)
    once = 2 * np.pi * loops * BEATS / cycle
    x = ARM * ((own + other) / 2 + width * f * (own - other) / 2) + OFFSET[0]
    hand = np.stack((out * x, 0 * x + ARM * ahead, 0 * x + SHOULDER + ARM * up), axis=1)
    hand += [0.0, OFFSET[1], OFFSET[2] - (under if side == "left" else 0.0)]
    hand += -0.08 * ARM * np.cos(once)[:, None] * away
    about = SWINGS[place] * out
    angle = -swing * slope / STEEPEST[loops]
    seen = law.at(BEATS)
    assert_allclose(seen.hand, hand, atol=1e-12)
    wheel = turned(WAYS[way], once + lead, -away)
    # the slope's largest value is written with eight digits
    tether = Rotation.from_rotvec(angle[:, None] * about).apply(wheel)
    plane = Rotation.from_rotvec(angle[:, None] * about).apply(WAYS[way])
    assert_allclose(seen.tether, tether, atol=1e-7)
    assert_allclose(seen.plane, plane, atol=1e-7)
    assert law.period == cycle


def test_a_weave_left_to_itself_is_two_beat_forward_in_front_and_does_not_swing():
    plain = weave(beats=2.0, side="right", body=BODY)
    told = weave(
        loops=2, way="forward", place="front", width=1.0, swing=0.0, lead=0.0, beats=2.0,
        side="right", body=BODY, offset=(0.0, 0.0, 0.0),
    )  # fmt: skip
    assert plain == told
    assert len(plain.turns) == 1
    assert plain.hand.centre == pytest.approx((0.035 * ARM, 0.29 * ARM, SHOULDER - 0.18 * ARM))
    assert len(weave(swing=0.1, beats=2.0, side="right", body=BODY).turns) == 2
    wide = plain.at(np.array([0.0, 1.0])).hand[:, 0]
    assert_allclose(wide, [0.67 * ARM, -0.60 * ARM])


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize(("turn", "axis"), [("anticlockwise", -Y), ("clockwise", Y)])
def test_a_windmill_is_as_the_formula_says(side, turn, axis):
    cycle, width, lean, lead, out = 3.0, 0.7, 0.5, 0.3, sign(side)
    law = windmill(
        turn=turn, width=width, lean=lean, lead=lead, beats=cycle, side=side, body=BODY, offset=OFFSET
    )  # fmt: skip
    half, once = 2 * np.pi * BEATS / cycle, 4 * np.pi * BEATS / cycle
    hand = np.stack(
        (
            np.full(len(BEATS), out * (0.25 * ARM + 0.07)),
            ARM * (0.06 + width * 0.48 * np.cos(half)) + 0.11,
            SHOULDER + ARM * (0.68 - 0.1 * np.cos(once)) - 0.05,
        ),
        axis=1,
    )
    leans = Rotation.from_rotvec(np.outer(lean * np.sin(half), X))
    seen = law.at(BEATS)
    assert_allclose(seen.hand, hand, atol=1e-12)
    assert_allclose(seen.tether, leans.apply(turned(axis, once + lead, -Z)), atol=1e-12)
    assert_allclose(seen.plane, leans.apply(axis), atol=1e-12)
    assert law.period == cycle


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("way", WAYS)
def test_a_fountain_is_as_the_formula_says(side, way):
    cycle, width, lead, out = 3.0, 0.7, 0.3, sign(side)
    law = fountain(
        way=way, width=width, lead=lead, beats=cycle, side=side, body=BODY, offset=OFFSET
    )
    f = np.cos(2 * np.pi * BEATS / cycle)
    hand = np.stack(
        (
            np.full(len(BEATS), out * (BESIDE + 0.07)),
            ARM * (0.3 + width * 0.15 * f) + 0.11,
            SHOULDER + ARM * (0.05 - width * 0.6 * f) - 0.05,
        ),
        axis=1,
    )
    seen = law.at(BEATS)
    assert_allclose(seen.hand, hand, atol=1e-12)
    assert_allclose(seen.tether, turned(WAYS[way], 4 * np.pi * BEATS / cycle + lead, Y), atol=1e-12)
    assert_allclose(seen.plane, [WAYS[way]] * len(BEATS), atol=1e-12)
    assert law.period == cycle


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize(("turn", "axis"), [("anticlockwise", Z), ("clockwise", -Z)])
def test_a_corkscrew_is_as_the_formula_says(side, turn, axis):
    cycle, loops, low, high, out = 3.0, 5, 0.2, 1.3, sign(side)
    law = corkscrew(
        turn=turn, loops=loops, low=low, high=high, beats=cycle, side=side, body=BODY, offset=OFFSET
    )  # fmt: skip
    rise = (low + high) / 2 + (low - high) / 2 * np.cos(2 * np.pi * BEATS / cycle)
    hand = np.stack(
        (
            out * (SHOULDER_X + 0.98 * ARM * np.cos(rise) + 0.07),
            np.full(len(BEATS), 0.11),
            SHOULDER + 0.98 * ARM * np.sin(rise) - 0.05,
        ),
        axis=1,
    )
    seen = law.at(BEATS)
    assert_allclose(seen.hand, hand, atol=1e-12)
    spun = turned(axis, 2 * np.pi * loops * BEATS / cycle, out * X)
    assert_allclose(seen.tether, spun, atol=1e-12)
    assert_allclose(seen.plane, [axis] * len(BEATS), atol=1e-12)
    assert law.period == cycle


def test_what_windmill_fountain_and_corkscrew_are_when_left_to_themselves():
    """Their written defaults; 20° of lean, 5° to 90° of the arm, four loops: docs/motion.md, section 3."""
    who = {"beats": 4.0, "side": "left", "body": BODY}
    still = {"offset": (0.0, 0.0, 0.0)}
    lean, low, high = np.radians([20.0, 5.0, 90.0])
    found = weaves.LEAN, weaves.LOW, weaves.HIGH
    assert found == (lean, low, high)
    mill = windmill(turn="anticlockwise", width=1.0, lean=lean, lead=0.0, **who, **still)
    assert windmill(**who) == mill
    assert fountain(**who) == fountain(way="forward", width=1.0, lead=0.0, **who, **still)
    screw = corkscrew(turn="anticlockwise", loops=4, low=low, high=high, **who, **still)
    assert corkscrew(**who) == screw


@pytest.mark.parametrize("loops", [1, 17, 2.5, 16.5])
def test_a_corkscrew_has_two_to_sixteen_whole_loops(loops):
    with pytest.raises(ValueError, match="whole number from 2 to 16"):
        corkscrew(loops=loops, beats=4.0, side="right", body=BODY)


def test_the_fewest_and_the_most_loops_of_a_corkscrew_and_an_arm_that_must_rise():
    for loops in (2, 16):
        assert corkscrew(loops=loops, beats=4.0, side="right", body=BODY).period == 4.0
    low = 0.5
    assert corkscrew(low=low, high=np.nextafter(low, 1.0), beats=4.0, side="right", body=BODY)
    for high in (low, 0.4):
        with pytest.raises(ValueError, match="low must be less than high"):
            corkscrew(low=low, high=high, beats=4.0, side="right", body=BODY)


@pytest.mark.parametrize("loops", [1, 4, 2.5])
def test_a_weave_has_two_or_three_loops(loops):
    with pytest.raises(ValueError, match="2 or 3 loops"):
        weave(loops=loops, beats=4.0, side="right", body=BODY)


@pytest.mark.parametrize("build", [weave, windmill, fountain, corkscrew])
def test_every_one_takes_time(build):
    with pytest.raises(ValueError, match="beats of a cycle must be positive"):
        build(beats=0.0, side="right", body=BODY)
