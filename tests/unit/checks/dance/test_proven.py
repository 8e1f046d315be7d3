"""All hands of a show, asked together, against each hand asked by itself."""

from itertools import pairwise
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.checks.dance.proven import (
    Hand,
    edges_of,
    gap_between_props,
    gap_to_body,
    spare_reach,
    tether_pull,
)
from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.feasibility import body_gap, props_gap, reach_left
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.timing.tempo import TempoMap
from tests.unit.motion.performers.drawn import pull_left

BODY = Body(stature=1.7)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
STAFF = Prop(kind="staff", length=0.6, behind=0.7, mass=0.8, wick_radius=0.05)


def hand(side, *names, beats):
    """Blocks one after the other, between two rests."""
    laws = [law_for(name, {}, side=side, body=BODY) for name in names]
    ends = [0.0, 4.0, *(4.0 + beats * (k + 1) for k in range(len(names)))]
    still = rest(side, BODY, POI)
    each = [("rest", still), *(("block", law) for law in laws), ("rest", still)]
    return Trajectory(
        tuple(
            Span(start=start, end=end, origin=start, law=law, kind=kind, label=kind)
            for (start, end), (kind, law) in zip(pairwise([*ends, 24.0]), each, strict=True)
        )
    )


@pytest.fixture(scope="module")
def show():
    """One with two poi whose spans end at different beats, put out in a block; one with a staff in the right hand."""
    ash = Dancer(
        name="Ash", body=BODY, props={"left": POI, "right": POI}, lit=((0.0, 9.0),),
        floor=WalkPath((0.0, 0.0), 0.0), carriage=Carriage(
            body=BODY, held=(HeldPosture(3.0, 4.0, Posture()), HeldPosture(5.0, 11.0, Posture(lean=0.05)))
        ),
        trajectories={
            "left": hand("left", "extension", "three-beat-weave", beats=8.0),
            "right": hand("right", "extension", "toroid", beats=6.0),
        },
    )  # fmt: skip
    birch = Dancer(
        name="Birch", body=BODY, props={"right": STAFF}, floor=WalkPath((3.0, 0.0), 0.0),
        trajectories={"right": hand("right", "extension", beats=8.0)},
    )  # fmt: skip
    return SimpleNamespace(dancers=(ash, birch), tempo=TempoMap.steady(100.0, beats=40), results={})


@pytest.fixture(scope="module")
def course(show):
    dancer = show.dancers[0]
    return dancer, dancer.trajectories


def told(each):
    return repr([own.least for own in each])  # nan is nan


@pytest.mark.parametrize("side", SIDES)
def test_reach_of_every_span(show, course, side):
    dancer, own = course
    found = spare_reach(show)[Hand("Ash", side)]
    alone = reach_left(
        own[side], edges_of(own[side]), side=side, body=dancer.body, carriage=dancer.carriage
    )
    assert [each.span for each in found] == list(own[side].spans)
    assert told(found) == repr(alone)


@pytest.mark.parametrize("side", SIDES)
def test_pull_of_every_block(show, course, side):
    """Of blocks alone: on links and at rest the hand steadies the prop."""
    dancer, own = course
    found = tether_pull(show)[Hand("Ash", side)]
    alone = pull_left(
        own[side], edges_of(own[side]), prop=dancer.props[side],
        beats_per_second=show.tempo.beats_per_second,
    )  # fmt: skip
    blocks = [k for k, span in enumerate(own[side].spans) if span.kind == "block"]
    assert [each.span for each in found] == [own[side].spans[k] for k in blocks]
    assert len(blocks) == 2
    assert told(found) == repr([alone[k] for k in blocks])


@pytest.mark.parametrize("near", [0.05, 0.4])
@pytest.mark.parametrize("side", SIDES)
def test_gap_to_the_body_of_every_span(show, course, side, near):
    """Cut where the performer is put out, within the last block; each part belongs to its span."""
    dancer, own = course
    found = gap_to_body(show, near)[Hand("Ash", side)]
    fire = {edge for burn in dancer.lit for edge in burn}
    edges = edges_of(own[side])
    inner = [edge for edge in fire if edges[0] < edge < edges[-1] and edge not in edges]
    cut = sorted([*edges, *inner])
    alone = body_gap(
        own[side], cut, prop=dancer.props[side], body=dancer.body, carriage=dancer.carriage, near=near
    )  # fmt: skip
    for each, (start, end) in zip(found, pairwise(cut), strict=True):
        assert each.span.start <= start < end <= each.span.end
    assert told(found) == repr(alone)
    assert near < 0.4 or any(each.least.label >= 0 for each in found)


def test_gap_between_both_props(show, course):
    """Cut where a span of either hand ends."""
    dancer, own = course
    left, right = ((own[side], dancer.props[side]) for side in SIDES)
    edges = sorted({*edges_of(own["left"]), *edges_of(own["right"])})
    alone = props_gap(left, right, edges)
    found = gap_between_props(show)["Ash"]
    assert [each[:2] for each in found] == list(pairwise(edges))
    assert repr([each[2] for each in found]) == repr(alone)
    assert np.all(np.diff([start for start, *_ in found]) > 0)


def test_a_single_prop_meets_no_other_and_a_staff_has_no_tether(show):
    assert Hand("Birch", "right") not in tether_pull(show)
    assert gap_between_props(show)["Birch"] == []
    assert list(gap_to_body(show, 0.05)) == [
        Hand("Ash", "left"), Hand("Ash", "right"), Hand("Birch", "right"),
    ]  # fmt: skip
