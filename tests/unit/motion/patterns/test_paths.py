"""Swings, carries and travelling spins: where hand and tether are, by plane geometry."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.paths import PATH_SHAPES, body_turn, carry, swing, travelling
from sequencer.motion.patterns.placing import HANDS_APART, circle_centre

BODY = Body(stature=1.7)
OWN = {"side": "right", "body": BODY}
RIGHT, UP = np.array([1.0, 0.0, 0.0]), np.array([0.0, 0.0, 1.0])
# Where a hand is at quarters of its cycle, in half widths across and up as the performer's eye sees it.
QUARTERS = {
    "line": ([1, 0, -1, 0], [0, 0, 0, 0]),
    "box": ([1, -1, -1, 1], [1, 1, -1, -1]),
    "diamond": ([1, 0, -1, 0], [0, 1, 0, -1]),
}


@pytest.mark.parametrize("shape", QUARTERS)
def test_a_travelling_hand_passes_its_corners(shape):
    law = travelling(shape=shape, size=0.2, loops=2, beats=4.0, **OWN)
    across, up = (0.2 * np.array(row) for row in QUARTERS[shape])
    centre = circle_centre(
        "wall", "right", BODY, 0.2 * (2**0.5 if shape == "box" else 1), (0, 0, 0)
    )
    place = law.at(np.arange(4.0)).hand - centre
    assert_allclose(place @ RIGHT, across, atol=1e-12)
    assert_allclose(place @ UP, up, atol=1e-12)
    assert_allclose(place[:, 1], 0, atol=1e-12)
    between = law.at(np.array([0.5, 1.5, 2.5, 3.5])).hand - centre
    if shape != "line":  # half-way from corner to corner
        assert_allclose(between, (place + np.roll(place, -1, axis=0)) / 2, atol=1e-12)
    assert law.period == 4.0


def test_an_eight_lies_on_its_side_and_crosses_in_the_middle():
    """Lissajous figure 1:2: across sin t, up half of sin 2t."""
    law = travelling(shape="infinity", size=0.3, loops=1, beats=4.0, **OWN)
    beats = np.linspace(0, 4, 33)
    place = law.at(beats).hand - circle_centre("wall", "right", BODY, 0.3, (0, 0, 0))
    turn = np.pi / 2 * beats
    assert_allclose(place @ RIGHT, 0.3 * np.sin(turn), atol=1e-12)
    assert_allclose(place @ UP, 0.15 * np.sin(2 * turn), atol=1e-12)


@pytest.mark.parametrize("loops", [3, -2])
@pytest.mark.parametrize("shape", PATH_SHAPES)
def test_a_travelling_prop_turns_evenly_all_the_while(shape, loops):
    """From `lead` on, anticlockwise for the performer's eye where loops are positive."""
    law = travelling(shape=shape, size=0.2, loops=loops, lead=0.4, beats=5.0, **OWN)
    beats = np.linspace(0, 5, 41)
    state, angle = law.at(beats), 0.4 + 2 * np.pi * loops * beats / 5
    assert_allclose(
        state.tether, np.cos(angle)[:, None] * RIGHT + np.sin(angle)[:, None] * UP, atol=1e-12
    )
    assert_allclose(state.plane, np.sign(loops) * np.array([[0, -1.0, 0]] * 41), atol=1e-12)


def test_a_pendulum_swings_to_either_side_of_hanging():
    """The angle from hanging is A·cos(2πt/T); at 180° it stops at the top."""
    for amplitude in (0.5, np.pi):
        law = swing(amplitude=amplitude, plane="wall", beats=2.0, **OWN)
        beats = np.linspace(0, 2, 17)
        state, angle = law.at(beats), amplitude * np.cos(np.pi * beats)
        assert_allclose(state.tether @ -UP, np.cos(angle), atol=1e-12)
        assert_allclose(np.abs(state.tether @ RIGHT), np.abs(np.sin(angle)), atol=1e-12)
        assert_allclose(state.hand, [circle_centre("wall", "right", BODY, 0.0, (0, 0, 0))] * 17)


def test_a_carried_prop_hangs_while_the_hand_goes_round():
    law = carry(hand_radius=0.25, start=0.7, beats=3.0, **OWN)
    beats = np.linspace(0, 3, 19)
    angle = 0.7 + 2 * np.pi * beats / 3
    place = law.at(beats).hand - circle_centre("wall", "right", BODY, 0.25, (0, 0, 0))
    assert_allclose(
        place, 0.25 * (np.cos(angle)[:, None] * RIGHT + np.sin(angle)[:, None] * UP), atol=1e-12
    )
    assert_allclose(law.at(beats).tether, [-UP] * 19)
    level = carry(hand_radius=0.25, plane="floor", beats=3.0, **OWN)
    assert_allclose(level.at(beats).plane, [(-1.0, 0, 0)] * 19)


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("towards", ["own", "right", "left"])
def test_a_body_turn_keeps_the_spin_where_it_is(side, towards):
    """As the body turns half round towards the spin, the hand goes half round the body the other way."""
    law = body_turn(loops=4, towards=towards, apart=0.05, beats=8.0, side=side, body=BODY)
    to = {"left": -1, "right": 1}[side if towards == "own" else towards]
    own = {"left": -1, "right": 1}[side]
    beats = np.array([0.0, 2.0, 4.0, 8.0])
    hand, middle = law.at(beats).hand, law.at(np.array([2.0])).hand[0]
    far = BODY.half_breadth + 0.12 + 0.05 - (0.0 if to == own else HANDS_APART)
    assert_allclose(np.hypot(*hand[:, :2].T), far)
    assert np.sign(hand[0, 0]) == np.sign(hand[3, 0]) == to
    assert_allclose(hand[2, 0], -hand[0, 0])
    assert_allclose(hand[:, 2], BODY.shoulder_height - 0.15 * BODY.arm_length)
    assert_allclose(middle[:2], [0.0, abs(hand[0, 0])], atol=1e-9)  # half-way it is straight ahead
    assert_allclose(law.at(beats).tether[0], -UP)


@pytest.mark.parametrize(
    ("build", "given", "words"),
    [
        (travelling, {"shape": "star", "size": 0.2, "loops": 1}, "shape must be one of"),
        (travelling, {"shape": "box", "size": 0.2, "loops": 0}, "loops must be a whole number"),
        (travelling, {"shape": "box", "size": 0.2, "loops": 17}, "loops must be a whole number"),
        (travelling, {"shape": "box", "size": 0.2, "loops": 1.5}, "loops must be a whole number"),
        (travelling, {"shape": "box", "size": 0.0, "loops": 1}, "size must be positive"),
        (swing, {"amplitude": 0.0}, "amplitude must be"),
        (swing, {"amplitude": 3.2}, "amplitude must be"),
        (swing, {"amplitude": 1.0, "plane": "floor"}, "cannot swing in the floor plane"),
        (body_turn, {"loops": 1}, "whole number from 2 to 32"),
        (body_turn, {"loops": 33}, "whole number from 2 to 32"),
        (body_turn, {"loops": 4, "towards": "up"}, "towards must be one of"),
    ],
)
def test_what_is_out_of_range_is_refused(build, given, words):
    with pytest.raises(ValueError, match=words):
        build(**given, beats=4.0, **OWN)


@pytest.mark.parametrize("loops", [-16, -1, 1, 16])
def test_loops_go_up_to_sixteen_either_way(loops):
    assert travelling(shape="line", size=0.01, loops=loops, beats=4.0, **OWN).period == 4.0
