"""The order in which routines are searched, checked as a whole and proven: what stands is kept, and nothing is checked twice."""

from types import SimpleNamespace

import pytest

from sequencer.findings import Finding
from sequencer.planning.drafting import draft_search
from sequencer.planning.drafting.draft_search import _Drafting, _Whole
from sequencer.planning.drafting.optimising.choices import Chosen

FAULT = Finding(
    code="self-hit", severity="stop", message="no", who=("Ash",), position="1.1", start=1.0, end=1.0
)


def chosen(pick, cost, bound):
    return Chosen(picks=(pick,), cost=float(cost), bound=float(bound))


class Search:
    """Routines in the order in which they are found; what was asked for is noted."""

    def __init__(self, first, near, better, allowed=True):
        self.setting = SimpleNamespace(slots=())
        self.first, self.near, self.better = first, iter(near), iter(better)
        self.allowed, self.asked = allowed, []

    def routine(self, known):
        self.asked.append(("routine", known))
        return self.first

    def unproven(self, picks):
        self.asked.append(("unproven", picks))
        return next(self.near)

    def proven(self, picks):
        self.asked.append(("proven", picks))
        return next(self.better)

    def allows(self, picks):
        self.asked.append(("allows", picks))
        return self.allowed


@pytest.fixture(name="sound")
def _sound(monkeypatch):
    """What `_Drafting` keeps of a search, where some picks have a fault; and the picks checked as a whole."""
    monkeypatch.setattr(draft_search, "standing_picks", lambda *_: None)
    monkeypatch.setattr(draft_search, "cut", lambda *_: True)
    monkeypatch.setattr(draft_search, "at_slots_only", lambda *_: False)

    def run(search, faulty):
        checked = []

        def whole(setting, one, *_, **__):
            checked.append(one.picks[0])
            faults = [FAULT] if one.picks[0] in faulty else []
            return _Whole(one, setting, list(one.picks), None, None, faults, False, set())

        drafting = object.__new__(_Drafting)
        drafting.ground, drafting.say = SimpleNamespace(document=SimpleNamespace()), lambda *_: None
        drafting._whole = whole
        drafting._must_leave = lambda _: False
        drafting._not_clean = lambda finding: LookupError(finding.message)
        return drafting._sound(search, {}), checked

    return run


def test_a_first_routine_that_stands_was_proven_before_it_was_checked(sound):
    search = Search(chosen(0, 10, 9), [], [])
    found, checked = sound(search, {})
    assert found.chosen == search.first
    assert (checked, search.asked) == ([0], [("routine", None)])


def test_proofs_wait_until_a_routine_stands_and_what_is_better_is_checked_too(sound):
    near = [chosen(1, 11, 8), chosen(2, 12, 8)]
    search = Search(chosen(0, 10, 8), near, [chosen(3, 11, 10.9)])
    found, checked = sound(search, {0, 1})
    assert (found.chosen.picks, found.chosen.bound) == ((3,), 10.9)
    assert checked == [0, 1, 2, 3]
    asked = [name for name, _ in search.asked]
    assert asked == ["routine", "unproven", "unproven", "allows", "proven"]


def test_where_what_is_better_fails_the_one_that_stands_is_kept_and_proven_of_what_is_left(sound):
    stands = chosen(1, 12, 8)
    search = Search(chosen(0, 10, 8), [stands], [chosen(2, 11, 10), chosen(1, 12, 11.9)])
    found, checked = sound(search, {0, 2})
    assert (found.chosen.picks, found.chosen.bound) == ((1,), 11.9)
    assert checked == [0, 1, 2]  # what stands is not checked again
    assert search.asked[-1] == ("proven", (1,))


def test_what_stands_stays_with_its_own_bound_where_something_of_it_was_forbidden_since(sound):
    stands = chosen(1, 12, 8)
    search = Search(chosen(0, 10, 8), [stands], [chosen(2, 11, 10)], allowed=False)
    found, checked = sound(search, {0})
    assert found.chosen == stands
    assert checked == [0, 1]


def test_where_no_routine_stands_the_last_fault_is_told(sound):
    with pytest.raises(LookupError, match="no"):
        sound(Search(chosen(0, 10, 8), [None], []), {0})
