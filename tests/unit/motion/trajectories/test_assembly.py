"""Links of two hands, how long links from and to rest are, and what they keep clear of."""

from copy import copy
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer import kept
from sequencer.content_keys import content_key
from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.performers.feasibility import body_gap, props_gap
from sequencer.motion.props.prop import Prop, PropPoint, Solid
from sequencer.motion.trajectories import bridges
from sequencer.motion.trajectories.assembly import LEAD_IN, assembled
from sequencer.motion.trajectories.one_link.link_limits import LinkLimits, hand_space_of
from sequencer.motion.trajectories.one_link.links import found_link
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from tests.nothing_kept import nothing_kept

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


LAWS = block_laws(
    dict.fromkeys(SIDES, ("buzzsaw", {})),
    timing="split", direction="same", cycle=2.0, body=BODY, tethers=dict.fromkeys(SIDES, POI.length),
)  # fmt: skip


def known_by(
    start=8.0, *, beats=2.0, begun=0.0, phase=0.0, entry=0.0, other=0.0, more=0.0, alone=False,
    edge=0.0, edge_before=0.0, held=None, name="a",
):  # fmt: skip
    """The content key of a left hand's link between two spans, with the right hand beside it."""

    def span(side, start, end, origin, name="b"):
        return Span(start=start, end=end, law=LAWS[side], origin=origin, kind="block", label=name)

    end = start + beats
    room = hand_space_of(BODY, "right", POI)
    beside = Trajectory(
        (
            span("right", start - 8.0, start + 1.0 + edge_before, start - other),
            span("right", start + 1.0 + edge, end + 9.0, start + 0.5 + more),
        )[: 1 if alone else 2],
        room,
    )
    carriage = held and Carriage(
        body=BODY,
        held=tuple(HeldPosture(start + a, start + b, each) for a, b, each in held),
    )
    own = bridges.Bridges(LAWS["left"], 2.0, hand_space_of(BODY, "left", POI), beside, carriage)
    before = span("left", start - 4.0 - begun, start, start - 4.0 - phase, name)
    after = span("left", end, end + 4.0 + begun, end - entry)
    return content_key(*own._content(before, after, start, end))


LEANT = ((-9.0, -1.0, UPRIGHT), (0.5, 1.5, Posture(lean=0.1)), (4.0, 5.0, UPRIGHT))


def test_a_link_is_known_by_what_it_depends_on():
    """Later, after a longer block, under another label: the same link. Any other change: another one."""
    assert known_by(8.0) == known_by(72.25) == known_by(begun=1.0) == known_by(name="c")
    assert known_by(held=LEANT) == known_by(72.25, held=LEANT)
    later = tuple((a + 0.25, b + 0.25, each) for a, b, each in LEANT)
    others = [
        known_by(), known_by(beats=1.0), known_by(phase=0.25), known_by(entry=0.25),
        known_by(other=0.25), known_by(more=0.25), known_by(alone=True),
        known_by(alone=True, other=0.25), known_by(edge=2.0**-20), known_by(edge_before=2.0**-20),
        known_by(more=-0.46875), known_by(more=-0.46875, edge_before=2.0**-20),
        known_by(held=LEANT), known_by(held=later),
    ]  # fmt: skip
    assert len(set(others)) == len(others)


def test_where_beats_are_rounded_a_link_is_known_by_its_place():
    """An eighth is exact in binary, a tenth is not, nor is a beat beyond a million with its 256ths."""
    assert known_by(8.125) == known_by(16.125)
    assert known_by(8.1) != known_by(16.1)
    assert known_by(8.1) == known_by(8.1)
    assert known_by(2.0**21) != known_by(2.0**21 + 8.0)


def test_the_same_link_later_is_sought_once(monkeypatch):
    """Two links between three equal blocks, and with the last block a tenth of a beat late two searches."""
    asked = []

    def found(*ends, **more):
        asked.append(ends)
        return found_link(*ends, **more)

    monkeypatch.setattr(bridges, "found_link", found)
    room = hand_space_of(BODY, "right", POI)
    for late, count in ((0.0, 3), (0.1, 4)):
        asked.clear()
        spans = [
            Span(start=at, end=at + 6.0, law=LAWS["right"], origin=at, kind="block", label="b")
            for at in (8.0, 16.0, 24.0 + late)
        ]
        with nothing_kept():
            whole = assembled(spans, rest("right", BODY, POI), straight=[(0.0, 99.0)], space=room)
        assert len(asked) == count  # from rest and to rest as well
        links = [span for span in whole.spans if span.kind == "link"]
        assert len(links) == 4
        assert (links[1].law is links[2].law) == (late == 0.0)
        for link in links[1:3]:
            ends = link.law.at(np.array([0.0, link.end - link.start]))
            for k, own in ((0, 6.0), (1, 0.0)):
                assert_allclose(ends.tether[k], LAWS["right"].at(np.array(own)).tether, atol=1e-9)


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


def test_a_link_is_known_by_its_objects_only_where_they_are_the_same():
    """Equal numbers, limits and shapes by their values, laws and bodies by the objects; minus nought is another number."""
    law, other, limits = LAWS["left"], LAWS["right"], LinkLimits()
    solid = Solid("tether", PropPoint(0.0), PropPoint(0.5), 0.01)

    def known(first=law, beats=2.0, most=limits, edges=(0.5,), shape=(solid,)):
        return bridges._by_objects((first, beats, most, [*edges], shape))

    assert known() == known(most=replace(limits), shape=(Solid(*solid),))
    others = [
        known(), known(first=other), known(first=copy(law)), known(beats=2.5), known(beats=0.0), known(beats=-0.0),
        known(most=replace(limits, torque=1.0)), known(edges=(0.75,)), known(edges=(0.5, 0.5)),
        known(shape=(solid._replace(radius=0.02),)), known(edges=(), shape=(0.5, solid)),
    ]  # fmt: skip
    assert len(set(others)) == len(others)


def test_a_link_of_another_packages_law_is_never_known_by_its_objects():
    class Strange:
        """What its laws do is not known, and may change."""

    assert bridges._by_objects((LAWS["left"], 2.0)) is not None
    assert bridges._by_objects((Strange(), 2.0)) is None


def test_what_is_known_by_an_object_holds_it():
    """Else its id could become that of another, which would be taken for it."""
    with nothing_kept():
        body, prop = Body(stature=1.63), Prop(length=0.47, mass=0.2, wick_radius=0.05)
        room = hand_space_of(body, "right", prop)
        assert hand_space_of(body, "right", prop) is room
        assembled([blocks("extension", start=8.0)["right"]], rest("right", BODY, POI), space=room)
        (held,) = (each for each, _ in kept._RECENT["hand spaces"].values())
        assert held[0] is body
        assert held[1] is prop
        laws = [content[0] for content, _ in kept._RECENT["bridges of objects"].values()]
        assert laws
        for key, (content, _) in kept._RECENT["bridges of objects"].items():
            assert key == bridges._by_objects(content)
