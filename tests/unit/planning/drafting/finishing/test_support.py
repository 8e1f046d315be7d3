"""What the others dance while one dances alone."""

import pytest

from sequencer.planning.drafting.finishing.support import Support, supported
from tests.unit.planning.drafting.costing.test_setting import NAMES, setting, slot

SLOTS = [
    slot(0, label="A", material=0), slot(1, label="B", material=1), slot(2, label="C", material=2),
    slot(3, label="B", material=1), slot(4, label="D", material=3),
]  # fmt: skip
SOLOS = frozenset({1, 3})


@pytest.fixture(name="trying")
def _trying(monkeypatch):
    """A setting of which some passages fail, and what was tried."""
    found = setting(SLOTS)
    seen, bad = [], set()

    def tried(keys):
        seen.extend(keys)
        return ["no" if key[0] in bad or key[3] in bad else "" for key in keys]

    monkeypatch.setattr(found, "tried", tried)
    return found, seen, bad


def test_the_smallest_easy_move_is_danced_by_the_others_wherever_the_part_returns(trying):
    found, seen, _ = trying
    first, *_ = supported(found, found.at_slots([2, 3, 4, 2]), SOLOS)
    assert first == (Support(first=1, last=1, move=0), Support(first=3, last=3, move=0))
    # with the soloist's links, into it and out of it
    assert {(key[0], key[1], key[2], key[3]) for key in seen[:4]} == {
        (2, 14.0, 2, 0), (0, 14.0, 2, 4), (4, 14.0, 2, 0), (0, 14.0, 2, 2),
    }  # fmt: skip


def test_what_cannot_be_passed_into_is_left_for_the_next_and_what_fails_is_given_up(trying):
    found, _, bad = trying
    bad.add(0)
    ways = list(supported(found, found.at_slots([2, 3, 4, 2]), SOLOS))
    assert [way[0].move for way in ways] == [1]
    bad.add(1)
    assert list(supported(found, found.at_slots([2, 3, 4, 2]), SOLOS)) == []
    assert list(supported(found, found.at_slots([2, 3, 4, 2]), frozenset())) == []


def test_support_is_smaller_than_the_solo_and_none_of_what_is_danced_beside_it(trying):
    found, _, _ = trying
    assert (
        list(supported(found, found.at_slots([2, 0, 4, 2]), SOLOS)) == []
    )  # nothing is smaller than the solo
    (way,) = supported(found, found.at_slots([0, 2, 4, 3]), SOLOS)
    assert [NAMES[one.move] for one in way] == [
        "extension",
        "extension",
    ]  # the first is danced before
    found.forbidden.add((1, 1))
    assert list(supported(found, found.at_slots([0, 2, 4, 3]), SOLOS)) == []


def test_one_move_goes_on_through_all_stretches_of_the_part(monkeypatch):
    slots = [slot(0, label="A"), slot(1, label="B"), slot(2, label="B"), slot(3, label="C")]
    slots[2] = type(slots[2])(start=32, end=48, section="B 1", label="B", material=2)
    found = setting(slots)
    seen = []
    monkeypatch.setattr(found, "tried", lambda keys: seen.extend(keys) or [""] * len(keys))
    first, *_ = supported(found, found.at_slots([2, 3, 4, 2]), frozenset({1, 2}))
    assert first == (Support(first=1, last=2, move=0),)
    assert [key[1:3] for key in seen[:2]] == [(14.0, 2), (30.0, 2)]
