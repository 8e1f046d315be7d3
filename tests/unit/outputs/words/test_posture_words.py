"""A posture in a performer's words, and where those words are printed."""

from dataclasses import replace
from math import radians

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import UPRIGHT, PosedBody, Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.outputs.patterns.one_pattern import one_pattern
from sequencer.outputs.patterns.pattern_drawing import drawn
from sequencer.outputs.rehearsal.pattern import pattern_document
from sequencer.outputs.words.block_words import block_words
from sequencer.outputs.words.posture_words import block_posture, posture_words, widest_gives
from sequencer.staging.staged import Block, HandWords

BACK = Posture(turn=radians(24), lean=radians(-5), tilt=radians(9))


def degrees(**angles):
    return Posture(**{name: radians(angle) for name, angle in angles.items()})


@pytest.mark.parametrize(
    ("angles", "words"),
    [
        ({}, ""),
        ({"turn": 0.4}, ""),
        ({"turn": 22.5}, "Turn your trunk 25° to the left."),
        ({"turn": -13}, "Turn your trunk 15° to the right."),
        ({"turn": -5.9}, "Turn your trunk a little to the right."),
        ({"lean": 10}, "Lean 10° forward."),
        ({"lean": -5}, "Lean back a little."),
        ({"side": -4}, "Lean to the left a little."),
        ({"lean": 3, "side": 4}, "Lean forward and to the right a little."),
        ({"lean": 10, "side": -4}, "Lean 10° forward and a little to the left."),
        ({"nod": 12}, "Bow your head 10°."),
        ({"nod": -12}, "Tip your head 10° back."),
        ({"nod": -2}, "Tip your head back a little."),
        ({"tilt": -20}, "Tilt your head 20° to the left."),
    ],
)
def test_angles(angles, words):
    assert posture_words(degrees(**angles)) == words


@pytest.mark.parametrize(
    ("left", "right", "words"),
    [
        ((0, 0, 0), (-0.02, 0.044, 0), "Bring your right shoulder 4 cm forward."),
        ((0, -0.03, 0), (0, 0, 0.02), "Draw your left shoulder 3 cm back, lift your right shoulder 2 cm."),
        ((0.02, 0.05, 0.02), (-0.02, 0.05, 0.02), "Bring both shoulders 5 cm forward and 2 cm up."),
        ((0, 0.004, 0), (0, 0, -0.004), ""),
    ],
)  # fmt: skip
def test_shoulders(left, right, words):
    assert posture_words(UPRIGHT, {"left": left, "right": right}) == words


def test_all_in_one_sentence():
    said = posture_words(degrees(turn=25, lean=-4, tilt=8), {"right": (0, 0.04, 0)})
    assert said == (
        "Turn your trunk 25° to the left, lean back a little, tilt your head 10° to the right; "
        "bring your right shoulder 4 cm forward."
    )


def block(posture=UPRIGHT):
    return Block(
        who="Ada", start=0.0, end=8.0, hands={"right": HandWords(pattern="orbit", parameters={})},
        timing="split", direction="same", cycle=4.0, shift=0.0, mirrored=False, link=False,
        phrase=None, note="", path=(), posture=posture,
    )  # fmt: skip


def test_a_block_says_it_with_the_shoulders_of_who_dances_it(dance):
    body = Body(stature=1.7, arm=0.5)
    ada = dance.dancer("Ada", hand_radius=0.3)
    ada = replace(ada, body=body, carriage=Carriage(body=body, held=(HeldPosture(-9, 90, BACK),)))
    gives = widest_gives(ada, 0.0, 8.0)
    assert max(np.linalg.norm(each) for each in gives.values()) > 0.02
    assert "shoulder" in block_posture(block(BACK), ada)
    lines = block_words(block(BACK), ada)
    assert lines[2].startswith("turn your trunk 25° to the left, lean back a little")
    assert not lines[2].endswith(".")
    assert "shoulder" not in block_posture(block(BACK))
    assert lines[:2] + lines[3:] == block_words(block(), ada) == block_words(block())


def leaning(name, posture=BACK, **more):
    one = one_pattern(name, **more)
    return replace(one, fit=replace(one.fit, posture=posture))


def test_a_drawing_moves_the_body_and_hangs_the_arm_on_it():
    body = Body(stature=1.7)
    shown = drawn(leaning("pro-bend-4", parameters={"ahead": 0.2}, body=body))
    hung, given, bend, hand = shown.arm
    assert_allclose(hung, PosedBody(body, BACK).shoulder("right"))
    assert_allclose(hand, shown.motion.hand[0])
    # A drawn arm is as long as the body's, bent or straight.
    arm = np.linalg.norm(bend - given) + np.linalg.norm(hand - bend)
    assert_allclose(arm, max(body.arm_length, np.linalg.norm(hand - given)), atol=1e-6)
    assert_allclose(drawn(one_pattern("extension", body=body)).arm[0], body.shoulder("right"))


def test_the_pattern_page_holds_its_posture():
    document = pattern_document(leaning("extension"))
    (held,) = document["cast"][0]["carriage"]
    assert_allclose(held[2:], BACK.angles, atol=1e-5)
    assert held[0] < 0 < document["blocks"][0][2] < held[1]
    assert any(line.startswith("Turn your trunk") for line in document["texts"][0])
    stiff = pattern_document(leaning("extension", UPRIGHT))
    assert "carriage" not in stiff["cast"][0]
    assert not any("trunk" in line for line in stiff["texts"][0])
