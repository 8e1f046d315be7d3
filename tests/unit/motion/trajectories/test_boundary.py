"""A boundary between two blocks: which parameters, which beats and which neighbours are asked."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.trajectories import boundary
from sequencer.motion.trajectories.boundary import BlockPart, Boundary
from sequencer.motion.trajectories.joining import Tolerances
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits

BODY = Body(stature=1.7)
ROOM = HandSpace(body=BODY, side="right", length=0.55)


def part(name="pro-bend-3", beats=2.3, cycle=3.0, **parameters):
    def build(changed, span):
        return law_for(name, changed, side="right", body=BODY, beats=span)

    return BlockPart(name=name, parameters=parameters, cycle=cycle, beats=beats, build=build)


def same(found, wanted):
    """Hand and tether of two states."""
    np.testing.assert_allclose(found.hand, wanted.hand, atol=1e-12)
    np.testing.assert_allclose(found.tether, wanted.tether, atol=1e-12)


def test_a_part_is_built_with_its_own_or_with_other_parameters():
    """Its law over its cycle, its start at 0, its end after its beats and some more."""
    own, other = part(turn="clockwise"), {"turn": "anticlockwise"}
    laws = {
        key: law_for("pro-bend-3", given, side="right", body=BODY, beats=3.0)
        for key, given in (("own", {"turn": "clockwise"}), ("other", other), ("none", {}))
    }
    same(own.law.at(np.array(0.7)), laws["own"].at(np.array(0.7)))
    same(own.start(), laws["own"].at(np.array(0.0)))
    same(own.start(other), laws["other"].at(np.array(0.0)))
    same(own.end(), laws["own"].at(np.array(2.3)))
    same(own.end(other), laws["other"].at(np.array(2.3)))
    same(own.end({}), laws["none"].at(np.array(2.3)))
    same(own.start({}), laws["none"].at(np.array(0.0)))
    same(own.end(extra=0.4), laws["own"].at(np.array(2.7)))
    assert np.abs(own.end(other).tether - own.end().tether).max() > 0.1


def test_a_part_tells_its_values_its_kind_and_what_is_open():
    own = part("static-spin", turn="clockwise")
    pattern = patterns()["static-spin"]
    assert own.values == pattern.values({"turn": "clockwise"}, "right")
    assert own.values["turn"] == "clockwise"
    assert own.kind == pattern.hand("right").kind.name
    names = [each.name for each in pattern.parameters]
    assert all(own.open(name) for name in names)
    assert not own.open("no such parameter")
    alone = replace(own, book={"static-spin": pattern})
    assert alone.kind == own.kind
    with pytest.raises(Exception, match="static-spin"):
        _ = replace(own, book={"toroid": patterns()["toroid"]}).kind


def test_a_boundary_is_judged_from_end_to_law_with_its_own_limits(monkeypatch):
    before, after = part("static-spin", 4.25, 1.0), part("static-spin", 4.0, 1.0)
    usual = Boundary(before=before, after=after, space=ROOM)
    assert (usual.tolerances, usual.limits, usual.earlier) == (Tolerances(), LinkLimits(), None)
    found = usual.verdict()
    assert (found.kind, found.shift) == ("joins after a shift", 0.25)
    asked = []
    monkeypatch.setattr(boundary, "judge", lambda *states, **more: asked.append((states, more)))
    own = replace(usual, limits=LinkLimits(hand_speed=0.1), tolerances=Tolerances(hand=9))
    own.verdict()
    (((first, law), more),) = asked
    same(first, before.end())
    same(law.at(np.array(0.3)), after.law.at(np.array(0.3)))
    assert more == {"space": ROOM, "tolerances": own.tolerances, "limits": own.limits}


def test_states_join_within_the_tolerances_and_the_rooms_length():
    own = part("static-spin", 4.0, 1.0)
    state = own.start()
    place = Boundary(before=own, after=own, space=ROOM)
    assert place.joins(state, state)
    off = replace(state, hand=state.hand + np.array([0.2, 0, 0]))
    assert not place.joins(state, off)
    assert replace(place, tolerances=Tolerances(hand=0.21)).joins(state, off)
    faster = replace(
        state, tether_rate=1.1 * state.tether_rate
    )  # 10 % of a loop per beat: 2π·0.1·length
    assert place.joins(state, faster)
    tight = replace(place, tolerances=Tolerances(head_velocity=0.3))
    assert not tight.joins(state, faster)
    assert replace(tight, space=replace(ROOM, length=0.4)).joins(state, faster)


def test_a_changed_start_must_still_join_what_came_before():
    """Whatever it is where nothing came before."""
    own = part("static-spin", 4.0, 1.0)
    place = Boundary(before=own, after=own, space=ROOM, earlier=own.end)
    for parameters, joins in (({}, True), ({"from": 90}, False), ({"turn": "clockwise"}, False)):
        assert place.starts(parameters) == joins
        assert replace(place, earlier=None).starts(parameters)
