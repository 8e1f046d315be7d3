"""Swings, carries, travelling spins and body turns against the formulas of the module's head, written anew."""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.patterns.paths import (
    PATH_SHAPES,
    TOWARDS,
    body_turn,
    carry,
    swing,
    travelling,
)
from sequencer.motion.patterns.placing import circle_centre

BODY = Body(stature=1.7)
ARM, SHOULDER, BESIDE = BODY.arm_length, BODY.shoulder_height, BODY.half_breadth + 0.12
BEATS = np.array([0.0, 0.31, 0.9, 1.47, 2.2, 3.3, 4.9])
X, Y, Z = np.eye(3)
RIGHT_UP = {"wall": (X, Z), "wheel": (Y, Z), "floor": (X, Y)}
TURNS = {"anticlockwise": 1.0, "clockwise": -1.0}
OFFSET = (0.07, 0.11, -0.05)
WHO = {"beats": 3.5, "side": "left", "body": BODY}
STILL = {"offset": (0.0, 0.0, 0.0)}


def turned(axis, angles, vector):
    return Rotation.from_rotvec(np.outer(angles, axis)).apply(vector)


def step(x):
    """The minimum-jerk step."""
    return 10 * x**3 - 15 * x**4 + 6 * x**5


def stepped(beats, span, corners):
    """From corner to corner in equal times, at rest at each."""
    own = np.mod(beats, span) / span * (len(corners) - 1)
    k = np.floor(own).astype(int)
    corners = np.array(corners, dtype=float)
    return corners[k] + (corners[k + 1] - corners[k]) * step(own - k)


def test_names():
    assert PATH_SHAPES == ("line", "box", "diamond", "infinity")
    assert TOWARDS == ("own", "right", "left")


@pytest.mark.parametrize("plane", ["wall", "wheel"])
@pytest.mark.parametrize(("turn", "sense"), TURNS.items())
def test_a_swing_is_as_the_formula_says(plane, turn, sense):
    law = swing(amplitude=0.8, plane=plane, turn=turn, offset=OFFSET, **WHO)
    axis = sense * np.cross(*RIGHT_UP[plane])
    seen = law.at(BEATS)
    centre = circle_centre(plane, "left", BODY, 0.0, OFFSET)
    assert_allclose(seen.hand, [centre] * len(BEATS), atol=1e-12)
    angle = 0.8 * np.cos(2 * np.pi * BEATS / 3.5)
    assert_allclose(seen.tether, turned(axis, angle, -Z), atol=1e-12)
    assert_allclose(seen.plane, [axis] * len(BEATS), atol=1e-12)
    assert law.period == 3.5


@pytest.mark.parametrize("plane", RIGHT_UP)
@pytest.mark.parametrize(("turn", "sense"), TURNS.items())
def test_a_carry_is_as_the_formula_says(plane, turn, sense):
    law = carry(hand_radius=0.2, plane=plane, turn=turn, start=0.7, offset=OFFSET, **WHO)
    right, up = RIGHT_UP[plane]
    angle = (0.7 + sense * 2 * np.pi * BEATS / 3.5)[:, None]
    centre = circle_centre(plane, "left", BODY, 0.2, OFFSET)
    seen = law.at(BEATS)
    assert_allclose(seen.hand, centre + 0.2 * (np.cos(angle) * right + np.sin(angle) * up))
    assert_allclose(seen.tether, [-Z] * len(BEATS), atol=1e-15)
    n = -X if plane == "floor" else sense * np.cross(right, up)  # across the hanging tether
    assert_allclose(seen.plane, [n] * len(BEATS), atol=1e-15)
    assert law.period == 3.5
    assert law.turns == ()


@pytest.mark.parametrize("shape", PATH_SHAPES)
@pytest.mark.parametrize(("plane", "turn"), [("wall", "clockwise"), ("wheel", "anticlockwise")])
@pytest.mark.parametrize("loops", [3, -2, 1, -1])
def test_a_travelling_spin_is_as_the_formula_says(shape, plane, turn, loops):
    law = travelling(
        shape=shape, size=0.2, loops=loops, plane=plane, turn=turn, lead=0.4, offset=OFFSET, **WHO
    )
    sense = TURNS[turn]
    right, up = RIGHT_UP[plane]
    gone = 2 * np.pi * BEATS / 3.5
    across, along = {
        "line": (np.cos(gone), 0 * gone),
        "infinity": (np.sin(gone), np.sin(2 * gone) / 2),
        "box": (stepped(BEATS, 3.5, (1, -1, -1, 1, 1)), stepped(BEATS, 3.5, (1, 1, -1, -1, 1))),
        "diamond": (stepped(BEATS, 3.5, (1, 0, -1, 0, 1)), stepped(BEATS, 3.5, (0, 1, 0, -1, 0))),
    }[shape]
    widest = 0.2 * np.sqrt(2.0) if shape == "box" else 0.2
    hand = circle_centre(plane, "left", BODY, widest, OFFSET)
    hand = hand + 0.2 * (across[:, None] * right + sense * along[:, None] * up)
    angle = (sense * (0.4 + loops * gone))[:, None]
    seen = law.at(BEATS)
    assert_allclose(seen.hand, hand, atol=1e-12)
    assert_allclose(seen.tether, np.cos(angle) * right + np.sin(angle) * up, atol=1e-12)
    n = sense * np.sign(loops) * np.cross(right, up)
    assert_allclose(seen.plane, [n] * len(BEATS), atol=1e-12)
    assert law.period == 3.5


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("towards", TOWARDS)
@pytest.mark.parametrize(("way", "axis"), [("forward", -X), ("backward", X)])
def test_a_body_turn_is_as_the_formula_says(side, towards, way, axis):
    law = body_turn(
        way=way, loops=5, towards=towards, apart=0.05, beats=6.0, side=side, body=BODY, offset=OFFSET
    )  # fmt: skip
    signs = {"left": -1.0, "right": 1.0}
    out, to = signs[side], signs[side if towards == "own" else towards]
    x = BEATS / 3.0
    about = to * np.pi * np.where(x < 1, step(x), step(2 - x))
    far = BESIDE + 0.05 - (0.14 if out != to else 0.0)
    centre = [out * 0.07, 0.11, SHOULDER - 0.15 * ARM - 0.05]
    seen, body = law.at(BEATS), Rotation.from_rotvec(np.outer(about, Z))
    assert_allclose(seen.hand, centre + body.apply([to * far, 0.0, 0.0]), atol=1e-12)
    spun = turned(axis, 2 * np.pi * 5 * BEATS / 6.0, -Z)
    assert_allclose(seen.tether, body.apply(spun), atol=1e-12)
    assert_allclose(seen.plane, body.apply(axis), atol=1e-12)
    assert law.period == 6.0


def test_what_paths_are_when_left_to_themselves():
    """Defaults as written in docs/motion.md, section 3."""
    told = swing(amplitude=0.8, plane="wheel", turn="clockwise", **WHO, **STILL)
    assert swing(amplitude=0.8, **WHO) == told
    wall = {"plane": "wall", "turn": "anticlockwise"}
    told = carry(hand_radius=0.2, start=-np.pi / 2, **wall, **WHO, **STILL)
    assert carry(hand_radius=0.2, **WHO) == told
    path = {"shape": "line", "size": 0.2, "loops": 3}
    assert travelling(**path, **WHO) == travelling(**path, lead=0.0, **wall, **WHO, **STILL)
    told = body_turn(way="forward", loops=8, towards="own", apart=0.0, **WHO, **STILL)
    assert body_turn(**WHO) == told


@pytest.mark.parametrize(
    ("build", "given", "words"),
    [
        (swing, {"amplitude": -0.1}, "amplitude must be"),
        (swing, {"amplitude": np.pi + 1e-9}, "amplitude must be 1 to 180 degrees, got 180"),
        (travelling, {"shape": "box", "size": 0.2, "loops": -17}, "loops must be a whole number"),
        (travelling, {"shape": "box", "size": -0.1, "loops": 1}, "size must be positive"),
        (body_turn, {"loops": 2.5}, "whole number from 2 to 32"),
        (body_turn, {"loops": 33}, "whole number from 2 to 32"),
    ],
)
def test_just_out_of_range_is_refused(build, given, words):
    with pytest.raises(ValueError, match=words):
        build(**given, **WHO)


@pytest.mark.parametrize(
    ("build", "given"),
    [
        (swing, {"amplitude": 1.0}),
        (carry, {"hand_radius": 0.2}),
        (travelling, {"shape": "line", "size": 0.2, "loops": 1}),
        (body_turn, {}),
    ],
)
def test_every_path_takes_time(build, given):
    with pytest.raises(ValueError, match="beats of a cycle must be positive"):
        build(**given, beats=0.0, side="right", body=BODY)


def test_the_very_ends_of_the_ranges_are_allowed():
    assert swing(amplitude=np.pi, **WHO).period == 3.5
    assert swing(amplitude=np.pi + 5e-13, **WHO).period == 3.5  # 180° written in degrees rounds
    assert swing(amplitude=0.5, **WHO).period == 3.5
    for loops in (2, 32):
        assert body_turn(loops=loops, **WHO).period == 3.5
