"""What is forbidden because of a finding: the passage that it lies in, or the move that it is told of."""

from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.findings import Finding
from sequencer.planning.drafting.finishing.cuts import cut
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
def test_a_finding_lies_where_its_middle_is(start, end, passage):
    one = setting(SLOTS)
    links = dict(one.passage_keys(PICKS))
    assert cut(one, PICKS, SHOW, [finding(start, end)])
    if passage is None:
        assert one.forbidden == {(1, 1)}
        assert not one.bad
    else:
        assert set(one.bad) == {links[passage]}
        assert not one.forbidden


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
    cut(one, (0, 1, 0), SHOW, [finding(16.0, 30.0)])
    assert one.forbidden == {(1, 0), (1, 1), (1, 3), (0, 1)}
    assert np.isinf(one.choices().costs[1][[0, 1, 3]]).all()
    assert np.isfinite(one.choices().costs[1][2])
    assert np.isfinite(one.choices().costs[0][[0, 2, 3]]).all()
