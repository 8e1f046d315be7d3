"""What is forbidden because of a finding: the passage that it lies in, or the move that it is told of."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.findings import Finding
from sequencer.planning.drafting.finishing.cuts import cut, to_leave
from sequencer.timing.tempo import TempoMap
from tests.unit.planning.drafting.costing.test_setting import moves, setting, slot

SLOTS = [slot(0), slot(1, label="B"), slot(2, label="C")]
SHOW = SimpleNamespace(tempo=TempoMap.steady(60.0, beats=64))  # a beat is a second
PICKS = (0, 1, 2)


def finding(start, end=None, code="strained-as-flown"):
    return Finding(
        code=code, severity="warn", who=("Ann",), message="too hard", start=start, end=end, position="1.1"
    )  # fmt: skip


@pytest.mark.parametrize(
    ("start", "end", "passage"),
    [
        (16.0, 30.0, None),  # of the second block, from its first beat to its link
        (16.25, None, (0, 1)),  # just after the link that leads to it
        (14.0, 16.0, (0, 1)),  # of that link
        (15.75, 23.25, None),  # from the link on, but most of it later
        (30.5, 31.5, (1, 2)),
    ],
)
def test_a_finding_inside_a_block_lies_where_its_middle_is(start, end, passage, monkeypatch):
    one = setting(SLOTS)
    told = []
    monkeypatch.setattr(type(one), "could_not", lambda _self, who: told.append(who))
    links = dict(one.passage_keys(PICKS))
    assert cut(one, PICKS, SHOW, [finding(start, end)])
    if passage is None:
        assert one.forbidden == {(1, 1)}
        assert not one.bad
    else:
        assert set(one.bad) == {links[passage]}
        assert not one.forbidden
    assert told == [("Ann",)]


@pytest.mark.parametrize(
    ("start", "end", "move", "passage"),
    [
        (
            2.0,
            44.0,
            (0, 0),
            None,
        ),  # too low in the first block and in the third: the second is innocent
        (2.0, 30.0, (0, 0), None),
        (4.0, 17.5, (0, 0), None),
        (17.5, 44.0, (1, 1), None),
        (15.75, 44.0, None, (0, 1)),  # first of all in a link
        (30.5, 46.0, None, (1, 2)),
    ],
)
def test_a_finding_that_tells_of_several_blocks_lies_where_it_begins(start, end, move, passage):
    """Approaches up to 32 beats apart are one finding, from the first to the last; what is between them may be well."""
    one = setting(SLOTS)
    links = dict(one.passage_keys(PICKS))
    assert cut(one, PICKS, SHOW, [finding(start, end, code="near-floor")])
    assert one.forbidden == ({move} if move else set())
    assert set(one.bad) == ({links[passage]} if passage else set())


@pytest.mark.parametrize("start", [58.0, 64.0])
def test_a_finding_that_begins_in_a_long_rest_is_of_the_move_that_comes_out_of_it(start):
    """The way out of rest may begin earlier than the two beats that it takes in drawing."""
    slots = [*SLOTS, slot(3, start=70, label="D"), slot(4, start=86, label="E")]
    one = setting(slots)
    show = SimpleNamespace(tempo=TempoMap.steady(60.0, beats=120))
    assert cut(one, (0, 1, 2, 3, 4), show, [finding(start, 90.0)])
    assert one.forbidden == {(3, 3)}
    assert not one.bad


def test_a_block_that_somebody_ends_late_is_one_block():
    """In canon the last ends it that many beats later."""
    one = setting(SLOTS, late={1: 4})
    assert cut(one, PICKS, SHOW, [finding(20.0, 36.5)])
    assert one.forbidden == {(1, 1)}
    assert not one.bad
    one = setting(SLOTS, late={1: 4})
    assert cut(one, PICKS, SHOW, [finding(16.5, 39.5)])  # past its end, though its middle is inside
    assert set(one.bad) == {dict(setting(SLOTS, late={1: 4}).passage_keys(PICKS))[0, 1]}


def test_a_passage_that_was_at_fault_before_leaves_it_to_the_move():
    one = setting(SLOTS)
    cut(one, PICKS, SHOW, [finding(16.25)])
    cut(one, PICKS, SHOW, [finding(16.25)])
    assert one.forbidden == {(1, 1)}


def test_a_pattern_is_given_up_in_its_place_once_two_ways_of_dancing_it_were_at_fault_alike():
    own = (*moves(("extension",)), *moves(("extension", "windmill"), timing="together"))
    own = (*own, *moves(("extension",), timing="quarter"))
    one = setting(SLOTS, own=own)
    cut(one, (0, 0, 0), SHOW, [finding(16.0, 30.0)])
    cut(one, (0, 1, 0), SHOW, [finding(16.0, 30.0, code="too-close")])
    cut(one, (1, 0, 0), SHOW, [finding(0.0, 14.0)])
    assert one.forbidden == {(1, 0), (1, 1), (0, 1)}  # not alike, and not in the same place
    assert not one.unseen
    cut(one, (0, 1, 0), SHOW, [finding(16.0, 30.0)])
    assert one.forbidden == {(1, 0), (1, 1), (1, 3), (0, 1)}
    assert one.unseen == {(1, 3)}
    assert np.isinf(one.choices().costs[1][[0, 1, 3]]).all()
    assert np.isfinite(one.choices().costs[1][2])
    assert np.isfinite(one.choices().costs[0][[0, 2, 3]]).all()


def test_nothing_of_a_routine_that_stands_is_forbidden_for_the_sake_of_another():
    """What is beside it in the other one is at fault together with it."""
    one = setting(SLOTS)
    assert cut(one, PICKS, SHOW, [finding(16.0, 30.0)], stands=(3, 1, 2))
    assert not one.forbidden
    links = dict(setting(SLOTS).passage_keys(PICKS))
    assert set(one.bad) == {links[0, 1]}  # that out of it is in what stands too
    assert not cut(one, PICKS, SHOW, [finding(14.5, 15.5)], stands=(0, 1, 3))  # all in what stands
    one = setting(SLOTS)
    assert not cut(one, PICKS, SHOW, [finding(16.0, 30.0), finding(16.25)], stands=PICKS)
    assert not one.forbidden
    assert not one.bad


def test_a_pattern_that_is_given_up_stays_where_a_routine_stands_with_it():
    own = (*moves(("extension",)), *moves(("extension", "windmill"), timing="together"))
    own = (*own, *moves(("extension",), timing="quarter"))
    one = setting(SLOTS, own=own)
    for move in (0, 1):
        cut(one, (2, move, 2), SHOW, [finding(16.0, 30.0)], stands=(2, 3, 2))
    assert one.forbidden == {(1, 0), (1, 1)}


def test_room_is_left_for_lighting_and_none_because_somebody_holds_a_lit_prop_still():
    """Left open, a stretch in which somebody is lit would be held still too, and more of it each time."""
    one = setting(SLOTS)
    lighting = finding(17.0, 20.0, code="lit-while-spinning")
    assert to_leave(one, SHOW, [lighting], ("Ann",), {}) == [(17.0, 21.0, ("Ann",))]
    assert to_leave(one, SHOW, [finding(17.0, 20.0, code="hanging-lit")], ("Ann",), {}) == []


def test_room_is_left_only_for_whom_the_finding_names():
    """The others are lit already: they would hold their flames still."""
    one = setting(SLOTS)
    lighting = finding(17.0, 23.0, code="lighter-in-reach")
    (left,) = to_leave(one, SHOW, [lighting], ("Bo", "Ann"), {})
    assert left == (17.0, 23.0, ("Ann",))
    of_crew = replace(lighting, who=("Sorrel",))
    (left,) = to_leave(one, SHOW, [of_crew], ("Bo", "Ann"), {})
    assert left.who == ("Bo", "Ann")


def test_room_is_left_where_whoever_is_lit_dances():
    """Ann, lit from the first stretch on, comes in with the second: it is there that she begins later."""
    one = setting(SLOTS)
    lighting = finding(10.0, 19.0, code="lit-while-spinning")
    (left,) = to_leave(one, SHOW, [lighting], ("Bo", "Ann"), {0: frozenset({"Ann"})})
    assert left == (16.0, 20.0, ("Ann",))
    (left,) = to_leave(one, SHOW, [lighting], ("Bo", "Ann"), {0: frozenset({"Bo"})})
    assert left == (10.0, 16.0, ("Ann",))
    nowhere = {0: frozenset({"Ann"}), 1: frozenset({"Ann"})}
    (left,) = to_leave(one, SHOW, [lighting], ("Bo", "Ann"), nowhere)
    assert left == (10.0, 16.0, ("Ann",))
