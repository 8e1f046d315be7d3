"""Links of two hands, how long links from and to rest are, and what they keep clear of."""

import numpy as np
import pytest

from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.performers.feasibility import body_gap, props_gap
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import LEAD_IN, assembled
from sequencer.motion.trajectories.link_limits import hand_space_of
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span

BODY = Body(stature=1.61)
POI = Prop(length=0.48, mass=0.2, wick_radius=0.05)


def blocks(name, *, timing="together", start=0.0):
    """One block of 32 beats for each hand."""
    laws = block_laws(
        dict.fromkeys(SIDES, (name, {})),
        timing=timing, direction="same", cycle=2.0, body=BODY,
        tethers=dict.fromkeys(SIDES, POI.length),
    )  # fmt: skip
    return {
        side: Span(
            start=start, end=start + 32.0, law=laws[side], origin=start, kind="block", label=""
        )
        for side in SIDES
    }


def trajectories(name, *, apart, timing):
    """Both hands through one block, from rest and back to it."""
    own = blocks(name, timing=timing)
    found = {}
    for side in ("right", "left"):
        found[side] = assembled(
            [own[side]],
            rest(side, BODY, POI),
            space=hand_space_of(BODY, side, POI),
            other=found.get("right") if apart else None,
        )
    return found


def nearest(found):
    """Smallest gap of the two props on the links, proven [m]; above 0 only that it is."""
    pair = [(found[side], POI) for side in SIDES]
    low, high = (
        pick(found[side].spans[k].start for side in SIDES) for pick, k in ((max, 1), (min, 3))
    )
    high = min(found[side].spans[3].end for side in SIDES)
    return min(
        gap.value
        for edges in ([low, 0.0], [32.0, high])
        for gap in props_gap(*pair, edges)
    )  # fmt: skip


@pytest.mark.parametrize(
    ("name", "timing"),
    [("static-spin", "split"), ("overhead-weave", "split"), ("box", "together"), ("iso-bend-1", "split")],
)  # fmt: skip
def test_a_link_keeps_clear_of_the_other_hands_prop(name, timing):
    assert nearest(trajectories(name, timing=timing, apart=False)) < -0.02
    assert nearest(trajectories(name, timing=timing, apart=True)) > 0.0


def trajectory(*own, carriage=None, straight=(), lead=LEAD_IN):
    return assembled(
        own,
        rest("right", BODY, POI),
        space=hand_space_of(BODY, "right", POI),
        straight=straight,
        lead=lead,
        carriage=carriage,
    )


def test_a_link_of_two_beats_is_taken_where_it_is_clean():
    block = blocks("extension", start=8.0)["right"]
    spans = trajectory(block).spans
    assert [(s.kind, s.start, s.end) for s in spans] == [
        ("rest", 5, 6), ("link", 6, 8), ("block", 8, 40), ("link", 40, 42), ("rest", 42, 43)
    ]  # fmt: skip


def hard(start):
    """A block whose links take more than a lead of half a beat."""
    return blocks("box", start=start)["right"]


def test_a_link_that_is_not_clean_takes_longer_where_there_is_time():
    spans = trajectory(hard(8.0), lead=0.5).spans
    assert [spans[k].end - spans[k].start for k in (1, 3)] == [1.0, 1.0]


def test_longer_links_leave_rest_between_blocks_and_do_not_begin_before_the_song():
    assert trajectory(hard(0.5), lead=0.5).spans[1].start >= 0.0
    spans = trajectory(hard(8.0), hard(41.2), lead=0.5).spans
    assert [s.kind for s in spans] == [
        "rest", "link", "block", "link", "rest", "link", "block", "link", "rest"
    ]  # fmt: skip
    # 1.2 beats between: no more than half a beat each way, though neither link is clean then
    assert spans[3].end <= 40.5
    assert spans[5].start >= 40.7
    asked = trajectory(hard(8.0), hard(41.2), lead=0.5, straight=[(40.0, 41.2)]).spans
    assert (asked[3].start, asked[3].end) == (40.0, 41.2)


def test_a_link_keeps_clear_of_the_body_as_it_moves():
    """A trunk turned to the left by 30°, leant forward, is nearer to where a bend ends."""
    posture = Posture(turn=np.radians(30), lean=np.radians(8))
    carriage = Carriage(
        body=BODY,
        held=(
            HeldPosture(5.0, 6.0, UPRIGHT),
            HeldPosture(8.0, 40.0, posture),
            HeldPosture(42.0, 43.0, UPRIGHT),
        ),
    )
    block = blocks("iso-bend-5", start=8.0)["right"]
    gaps = []
    for seen in (None, carriage):
        found = trajectory(block, carriage=seen)
        edges = [found.spans[1].start, 8.0, 40.0, found.spans[3].end]
        own = body_gap(found, edges, prop=POI, body=BODY, near=0.05, carriage=carriage)
        gaps.append(min(own[0].value, own[2].value))
    assert gaps[0] < 0.04 < gaps[1]
