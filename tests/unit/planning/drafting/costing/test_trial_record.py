"""What is expected of links and starts that nobody tried, by what became of others."""

import numpy as np
import pytest

from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.costing.trial_record import TrialRecord


def move(pattern, timing="split", **more):
    given = {"timing": timing, "direction": "same", "cycle": 2.0, "usual": True, **more}
    return DraftMove(pattern=pattern, **given)


MOVES = (
    move("extension"), move("extension", "together"), move("extension", cycle=4.0), move("windmill"),
)  # fmt: skip


def test_before_anything_is_tried_all_are_as_likely():
    record = TrialRecord(MOVES)
    assert record.links_fail(2) == pytest.approx(np.full((4, 4), 0.2))
    assert record.edges_fail(begins=True) == pytest.approx(np.full(4, 0.1))


def test_links_of_one_kind_are_expected_to_fare_alike():
    """Worked out by hand: of three links of two beats two failed, both from the extension in two beats into the windmill."""
    record = TrialRecord(MOVES)
    record.add_link(0, 2, 3, failed=True)
    record.add_link(1, 2, 3, failed=True)
    record.add_link(2, 2, 3, failed=False)
    usual = (2 + 0.2 * 5) / (3 + 5)
    pattern = (2 + 2 * usual) / (3 + 2)
    found = record.links_fail(2)
    assert found[0, 3] == found[1, 3] == pytest.approx((2 + 2 * pattern) / (2 + 2))
    assert found[2, 3] == pytest.approx((0 + 2 * pattern) / (1 + 2))
    assert found[3, 0] == pytest.approx(usual)  # the other way round nothing is known
    assert record.links_fail(3) == pytest.approx(np.full((4, 4), 0.2))


def test_starts_and_ends_are_told_apart():
    record = TrialRecord(MOVES)
    record.add_edge(0, begins=True, failed=True)
    usual = (1 + 0.1 * 5) / (1 + 5)
    pattern = (1 + 2 * usual) / (1 + 2)
    found = record.edges_fail(begins=True)
    assert found[:2] == pytest.approx((1 + 2 * pattern) / (1 + 2))
    assert found[2] == pytest.approx(pattern)
    assert found[3] == pytest.approx(usual)
    assert record.edges_fail(begins=False) == pytest.approx(np.full(4, 0.1))


def test_what_never_passed_is_counted_by_patterns():
    record = TrialRecord(MOVES)
    for first in (0, 1, 2):
        record.add_link(first, 2, 3, failed=True)
    assert record.never_passed(0, 2, 3) == 3
    assert record.never_passed(3, 2, 0) == record.never_passed(0, 1, 3) == 0
    record.add_link(1, 2, 3, failed=False)
    assert record.never_passed(0, 2, 3) == 0
