"""Blocks: which hand leads, how late the other is, and what a mirror does, against laws made one by one."""

import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.transforms import Mirrored, Retimed
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.patterns.library import law_for

BODY = Body(stature=1.7)
RIGHT, LEFT = ("isolation", {}), ("two-beat-weave", {"width": 0.8})
TETHERS = {"right": 0.5, "left": 0.7}


def made(part, side, **more):
    name, given = part
    return law_for(name, given, side=side, body=BODY, beats=4.0, **more)


def block(parts, **more):
    given = {"timing": "together", "direction": "same", **more}
    return block_laws(parts, cycle=4.0, body=BODY, tethers=TETHERS, **given)


@pytest.mark.parametrize(("timing", "late"), [("together", 0.0), ("split", 1.0), ("quarter", 0.5)])
@pytest.mark.parametrize("direction", ["same", "opposite"])
def test_the_left_hand_follows_by_half_or_a_quarter_of_its_turn(timing, late, direction):
    """A two-beat weave turns twice in its 4 beats: half of a turn is one beat."""
    laws = block({"left": LEFT, "right": RIGHT}, timing=timing, direction=direction, shift=0.25)
    assert laws["right"] == Retimed(made(RIGHT, "right", tether=0.5), 0.25)
    left = made(LEFT, "left", tether=0.7, opposite=direction == "opposite")
    assert laws["left"] == Retimed(left, 0.25 + late)


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_single_hand_leads(side):
    laws = block({side: LEFT}, timing="split", direction="opposite")
    assert laws == {side: made(LEFT, side)}


def test_a_mirrored_block_is_the_other_hand_s_law_seen_in_a_mirror_with_its_own_prop():
    laws = block({"left": RIGHT, "right": LEFT}, timing="split", mirrored=True)
    assert laws["left"] == Mirrored(made(RIGHT, "right", tether=0.7))
    assert laws["right"] == Mirrored(Retimed(made(LEFT, "left", tether=0.5), 1.0))
    assert block({"left": RIGHT}, mirrored=True) == {
        "left": Mirrored(made(RIGHT, "right", tether=0.7))
    }


def test_a_hand_without_a_known_prop_has_the_usual_one():
    laws = block_laws(
        {"right": RIGHT}, timing="together", direction="same", cycle=4.0, body=BODY, tethers={}
    )
    assert laws["right"] == made(RIGHT, "right", tether=0.51)
