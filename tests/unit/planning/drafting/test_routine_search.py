"""The search by trials against plain enumeration: what passes is found out on the way, and the bound holds of all that does."""

from dataclasses import replace
from itertools import product
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.planning.drafting import routine_search
from sequencer.planning.drafting.costing import slot_links
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.optimising.branching import BranchSearch
from sequencer.planning.drafting.optimising.choices import cost_at
from sequencer.planning.drafting.routine_search import RoutineSearch
from tests.unit.planning.drafting.costing.test_setting import NAMES, moves, setting, slot

SLOTS = [slot(0), slot(1, label="B"), slot(2, label="C"), slot(3, label="D"), slot(4, label="E")]


@pytest.fixture(name="trials")
def _trials(monkeypatch):
    """Passages that fail, drawn by a seed for each test; how many were tried."""
    seen = []

    def tried(self, keys):
        seen.extend(keys)
        draws = (np.random.default_rng([self.salt, *map(int, key)]).random() for key in keys)
        return ["no" if draw < self.share else "" for draw in draws]

    monkeypatch.setattr(Setting, "tried", tried)
    monkeypatch.setattr(Setting, "grounded", lambda *_: set())
    return seen


def test_what_one_cannot_dance_nobody_else_tries_and_the_strictest_comes_first(monkeypatch):
    one = setting(SLOTS)
    ann, bo = (SimpleNamespace(name=name, dances=True) for name in ("Ann", "Bo"))
    one.cast = replace(one.cast, laws=((ann,), (bo,)))
    one._refused = [0, 0]
    asked = []

    def tried(passages, first, *_, **__):
        asked.append((first.name, [each.link for each in passages]))
        return ["no" if first is bo and each.link < 3 else "" for each in passages]

    monkeypatch.setattr(slot_links, "tried", tried)
    keys = [(0, 14.0, link, 1, 0, 0, 0) for link in (1, 2, 3)]
    assert one.tried(keys) == ["no", "no", ""]
    assert asked == [("Ann", [1, 2, 3]), ("Bo", [1, 2, 3])]
    assert one.tried(keys) == ["no", "no", ""]
    assert asked[2:] == [("Bo", [1, 2, 3]), ("Ann", [3])]


def test_of_a_large_group_three_try_a_link_and_who_could_not_dance_one_is_among_them(monkeypatch):
    one = setting(SLOTS)
    people = [
        SimpleNamespace(
            name=name, dances=name != "Bo", stage=SimpleNamespace(record=SimpleNamespace(name=name))
        )
        for name in ("Ann", "Bo", "Cy", "Dee", "Eve")
    ]
    one.cast = replace(one.cast, laws=tuple((each,) for each in people))
    asked = []

    def tried(passages, first, *_, **__):
        asked.append(first.name)
        return [""]

    monkeypatch.setattr(slot_links, "tried", tried)
    assert one.tried([(0, 14.0, 2, 1, 0, 0, 0)]) == [""]
    assert asked == ["Ann", "Cy", "Dee"]
    one.could_not(("Eve",))
    asked.clear()
    assert one.tried([(0, 14.0, 2, 1, 0, 0, 0)]) == [""]
    assert asked == ["Eve", "Ann", "Cy"]


def test_a_move_that_one_cannot_fly_is_flown_by_nobody_else(monkeypatch):
    one = setting(SLOTS)
    laws = tuple((SimpleNamespace(stage=name, dances=True),) for name in ("Ann", "Bo"))
    one.cast = replace(one.cast, laws=laws)
    asked = []

    def grounded(moves, stage):
        asked.append((stage, [each.pattern for each in moves]))
        return ["no" if (stage, each.pattern) == ("Ann", NAMES[1]) else "" for each in moves]

    monkeypatch.setattr(slot_links, "grounded", grounded)
    assert one.grounded([0, 1, 2, 0, 1]) == {(1, 1), (4, 1)}
    assert asked == [("Ann", [*NAMES[:3]]), ("Bo", [NAMES[0], NAMES[2]])]


@pytest.mark.parametrize(
    ("people", "near", "far"), [(1, 48, 80), (2, 48, 80), (4, 24, 40), (6, 16, 26)]
)
def test_of_a_group_fewer_better_routines_are_tried_as_each_costs_more(people, near, far):
    one = setting(SLOTS)
    one.cast = replace(one.cast, laws=((SimpleNamespace(dances=True),),) * people)
    finder = search(one)
    assert (finder._most_tries(0.05), finder._most_tries(0.051)) == (near, far)


def test_a_proof_goes_on_where_the_last_one_stopped(trials):
    """One tree holds all that may be better, however often what was found in it fails."""
    finder = search(drawn(3))
    chosen = finder.routine(None)
    assert trials
    worth, trees = chosen.cost + 5, []
    for _ in range(3):
        better = finder._best(chosen.picks, 8000, below=worth)
        assert better.cost < worth
        trees.append(finder._proof._search)
        finder.setting.forbidden.add((0, better.picks[0]))
    assert isinstance(trees[0], BranchSearch)
    assert trees[0] is trees[1] is trees[2]
    before = trees[0].work
    assert finder._best(chosen.picks, 8000).bound >= better.bound  # the best is sought apart
    assert trees[0].work == before


def drawn(seed, share=0.4):
    rng = np.random.default_rng(seed)
    found = setting(SLOTS, loudness=rng.random(len(SLOTS)), joins=[(0, 1), (3, 2)], seed=seed)
    found.salt, found.share = seed, share
    return found


def search(one):
    return RoutineSearch(one, effort=8000, seed=0, found=lambda _: None, progress=lambda *_: None)


def least_that_passes(every):
    """The cost of the best routine once everything was tried, by enumeration."""
    routines = list(product(range(every.count), repeat=len(every.uses)))
    for _ in range(6):
        found = {key for picks in routines for _, key in every.passage_keys(picks)}
        keys = sorted(found - every.passed)
        if not keys:
            break
        every.try_all(keys)
    choices = every.choices()
    picks = np.array(routines)
    total = sum(costs[picks[:, k]] for k, costs in enumerate(choices.costs))
    total = total + sum(t[picks[:, i], picks[:, j]] for (i, j), t in choices.passages.items())
    for rule in choices.countings:
        count = sum(row[picks[:, k]] for k, row in enumerate(rule.counts))
        over = np.maximum(rule.at_least - count, 0) + np.maximum(count - rule.at_most, 0)
        total = total + rule.price * over
    return total.min()


@pytest.mark.parametrize("seed", range(4))
def test_a_routine_of_which_all_passes_and_a_bound_below_all_that_pass(seed, trials):
    one = drawn(seed)
    chosen = search(one).routine(None)
    count = len(trials)
    assert all(key in one.passed for _, key in one.passage_keys(chosen.picks))
    assert chosen.cost == pytest.approx(cost_at(one.choices(), chosen.picks))
    least = least_that_passes(drawn(seed))
    assert chosen.bound <= least + 1e-9
    assert least - 1e-9 <= chosen.cost
    assert chosen.gap <= routine_search._NEAR_ENOUGH
    assert count < 0.5 * one.count**2 * (len(SLOTS) - 1)  # of the pairs of moves alone


WALKED = 1  # the slot in which somebody walks
HARD_ONES = ("toroid", "buzzsaw", "stall", "reverse-two-beat-weave")


def walking(seed):
    """One easy move and four harder ones, of which the easy one only may be danced while somebody walks; the music is loud."""
    rng = np.random.default_rng([5, seed])
    own = moves(("static-spin", *HARD_ONES))
    pairs = [pair for pair in product(range(len(own)), repeat=2) if rng.random() < 0.3]
    found = setting(
        SLOTS[:4], own=own, loudness=rng.uniform(0.6, 1, 4), joins=pairs, level=4, seed=seed + 1,
        walked=frozenset({WALKED}),
    )  # fmt: skip
    found.salt, found.share = seed, 0.5
    return found


def test_once_all_that_is_easy_is_forbidden_where_somebody_walks_the_bound_is_proven_anew(trials):
    """What is harder may be danced there from then on, so that something may cost less than anything did before."""
    cheaper, proven = 0, 0
    for seed in range(24):
        one, told = walking(seed), []
        finder = search(one)
        finder._found = told.append
        first = finder.routine(None)
        assert first.picks[WALKED] == 0, seed
        one.forbid(WALKED, 0, "too-close")
        told.clear()
        chosen = finder.routine(first.picks)
        least = least_that_passes(one)
        assert chosen.bound <= least + 1e-9, seed
        assert least - 1e-9 <= chosen.cost, seed
        assert all(each.bound <= least + 1e-9 for each in told), seed
        cheaper += least < first.bound - 1e-9
        proven += chosen.gap <= routine_search._NEAR_ENOUGH
    assert cheaper > 3
    assert proven == 24
    assert trials


def test_the_same_setting_gives_the_same_routine(trials):
    first, second = (search(drawn(7)).routine(None) for _ in range(2))
    assert first == second
    assert trials


def test_where_nothing_passes_there_is_no_routine(trials):
    one = drawn(1, share=1.1)
    one._joins = {key: np.zeros_like(table) for key, table in one._joins.items()}
    assert search(one).routine(None) is None
    assert trials


def test_what_was_not_tried_is_doubted_and_costs_a_routine_nothing(trials):
    one = drawn(2, share=0.0)
    picks = [0, 2, 4, 1, 3]
    before = one.doubts(0, 1)[0, 2]
    assert before > 0
    cost = cost_at(one.choices(), picks)
    assert cost_at(one.choices(doubting=True), picks) > cost
    one.try_all([key for _, key in one.passage_keys(picks)])
    assert one.doubts(0, 1)[0, 2] == 0
    assert 0 < one.doubts(0, 1)[0, 3] < before  # others of as many beats have passed
    assert cost_at(one.choices(doubting=True), picks) == pytest.approx(cost)
    assert cost_at(one.choices(), picks) == pytest.approx(cost)
    assert trials


def test_a_move_that_is_stranded_gives_way(trials, monkeypatch):
    """What cannot be flown out of the rest before it is left, as long as there is anything else."""
    plain = search(drawn(3)).routine(None)
    one = drawn(3)
    one.beside_rest = ((0, True, False),)
    monkeypatch.setattr(
        Setting, "_flies_beside_rest", lambda _self, _k, move, *_a, **_b: move != plain.picks[0]
    )
    chosen = search(one).routine(None)
    assert chosen.picks[0] != plain.picks[0]
    assert one.stranded_picks(plain.picks) == {(0, plain.picks[0])}
    assert trials


def test_a_move_that_strains_a_hand_in_its_place_gives_way(trials, monkeypatch):
    plain = search(drawn(3)).routine(None)
    one = drawn(3)
    one._swaying = [2]
    monkeypatch.setattr(
        Setting, "_strains", lambda _self, k, move: (k, move) == (2, plain.picks[2])
    )
    chosen = search(one).routine(None)
    assert chosen.picks[2] != plain.picks[2]
    assert one.strained_moves == {(2, plain.picks[2])}
    assert trials


def test_what_ends_in_rest_ends_early_where_that_flies(monkeypatch, trials):
    one = drawn(4)
    one.beside_rest = ((4, False, True),)
    monkeypatch.setattr(Setting, "_flies_beside_rest", lambda _s, _k, _m, beats, **_b: beats == 14)
    assert one.ended_early(4, 0) == 2
    assert one.ended_early(3, 0) == one.early(3)
    assert one.stranded([0] * 5) == set()
    monkeypatch.setattr(Setting, "_flies_beside_rest", lambda *_a, **_b: False)
    assert one.stranded([1] * 5) == {4}
    assert not trials


def test_links_of_as_many_beats_between_two_patterns_are_given_up_once_six_failed(trials):
    """Those that nobody tried count as failed too, the other way round and of other lengths they do not; one that passed saves all."""
    hands = ("split", "together", "quarter")
    ways = [m for name in NAMES[:2] for hand in hands for m in moves((name,), timing=hand)]
    pairs = [(a, b) for a in range(3) for b in range(3, 6)]

    def tried(count, share):
        one = setting(SLOTS[:2], own=ways)
        one.salt, one.share = 0, share
        one.try_all([(a, 14.0, 2, b, 0, 0, 0) for a, b in pairs[:count]])
        return one

    assert [tried(5, 1.1).link(0, 1, *pair) for pair in pairs] == [1] * 5 + [2] * 4
    assert [tried(6, 1.1).link(0, 1, *pair) for pair in pairs] == [1] * 9
    assert tried(6, 1.1).link(0, 1, 3, 0) == 2
    saved = tried(6, 1.1)
    saved._given_up.clear()
    saved.share = 0.0
    saved.try_all([(0, 14.0, 2, 3, 0, 0, 0)])
    saved.share = 1.1
    saved.try_all([(*pairs[-1][:1], 14.0, 2, pairs[-1][1], 0, 0, 0)])
    assert saved.link(0, 1, *pairs[-2]) == 2
    assert trials


def test_a_link_too_quick_to_fly_is_not_tried_with_what_only_pulls():
    """Of links of 0.5 s hardly one in twenty flew (measured); with a staff, which the hand turns, any may be had."""

    def lengths(fastest, *, flexible=True):
        prop = SimpleNamespace(flexible=flexible)
        stage = SimpleNamespace(props={"right": prop}, tempo=(100.0, fastest))
        one = setting(SLOTS[:2])
        one.cast = replace(one.cast, laws=((SimpleNamespace(stage=stage, dances=True),),))
        return sorted(one.link_costs(0))

    assert lengths(112.0) == [2, 3, 4]
    assert lengths(108.0) == [1, 2, 3, 4]
    assert lengths(200.0, flexible=False) == [1, 2, 3, 4]


def test_links_become_dearer_at_once():
    one = setting(SLOTS[:2], flights=0)
    one.cast = replace(
        one.cast, laws=((SimpleNamespace(stage=SimpleNamespace(props={}), dances=True),),)
    )
    before = dict(one.link_costs(0))
    one.weights = replace(one.weights, links=2 * one.weights.links)
    assert one.link_costs(0) == pytest.approx({n: 2 * cost for n, cost in before.items()})


def test_what_would_be_better_by_less_than_two_percent_is_not_tried_once_many_passages_were(
    trials, monkeypatch
):
    """Trials cost more than anything else; while few were needed, half a percent is worth them."""
    finder = search(drawn(3))
    chosen = finder.routine(None)
    asked = []
    monkeypatch.setattr(
        finder, "_best", lambda *_, below: replace(chosen, cost=below - 1e-6, bound=finder._bound)
    )
    monkeypatch.setattr(finder, "_fails", lambda *_, **__: bool(asked.append(1)))

    def tried(share, many):
        """Whether what could be better by a share is tried."""
        finder._bound, finder._tries = (1 - share) * chosen.cost, 0
        asked.clear()
        monkeypatch.setattr(routine_search, "_MANY_TRIED", many)
        finder._proven(chosen.picks)
        return bool(asked)

    assert tried(0.021, many=1)
    assert not tried(0.019, many=1)
    assert tried(0.019, many=len(trials) + 1)
    assert not tried(0.004, many=len(trials) + 1)


@pytest.mark.parametrize(
    ("proves", "asked"),
    [
        (True, [0.9, 0.95, 0.975, 0.98, 1.0]),  # half of what is left each time, then all of it
        (False, [0.9, 0.98, 0.98, 0.98, 0.98, 1.0]),  # it takes too long: three efforts more
    ],
)
def test_half_of_a_gap_is_closed_before_all_of_it(proves, asked, trials, monkeypatch):
    monkeypatch.setattr(routine_search, "_MANY_TRIED", 1)
    finder = search(drawn(3))
    chosen = finder.routine(None)
    seen = []

    def best(_picks, _effort, *, below):
        """Finds nothing that is cheaper."""
        seen.append(below / chosen.cost)
        finder._bound = max(finder._bound, below * proves)
        return chosen

    monkeypatch.setattr(finder, "_best", best)
    finder._bound = 0.8 * chosen.cost
    out = finder._proven(chosen.picks)
    assert trials
    assert seen == pytest.approx(asked, abs=1e-4)
    assert out.picks == chosen.picks
    assert out.gap == pytest.approx(0.0 if proves else 0.2, abs=1e-4)


def test_the_most_doubtful_links_are_tried_first_and_a_failure_ends_it(trials):
    one = drawn(3, share=0.0)
    finder = search(one)
    usual = [key for _, key in one.passage_keys((0, 1, 2, 3, 4))]
    worst = usual[-1]
    for second in range(3):  # links like the last one have failed before
        one._record.add_link(worst[0], worst[2], worst[3], failed=True)
        one._record.add_link(usual[0][0], usual[0][2], usual[0][3], failed=second == 0)
    assert one.most_doubtful(usual)[0] == worst
    one.share = 1.0
    del trials[:]
    assert finder._fails((0, 1, 2, 3, 4), most=1)
    assert trials == [worst]
    assert finder._fails((0, 1, 2, 3, 4), most=2)
    assert len(trials) == 3


def test_a_walk_that_becomes_too_dear_ends_without_a_trial(trials):
    one = drawn(3, share=1.0)
    finder = search(one)
    first = finder.first(None)
    least = cost_at(one.choices(), first)
    assert finder._passing(first, below=least) is None
    assert trials == []
    assert finder._passing(first, below=least + 0.5) is None
    assert trials
    near = drawn(3, share=0.0)
    finder, first = search(near), search(near).first(None)
    found = finder._passing(first, below=cost_at(near.choices(), first) + 1e-6)
    assert cost_at(near.choices(), found) == pytest.approx(cost_at(near.choices(), first))


def test_a_whole_effort_that_decides_nothing_is_not_spent_again(trials, monkeypatch):
    monkeypatch.setattr(routine_search, "_MANY_TRIED", 1)
    finder = search(drawn(3))
    chosen = finder.routine(None)
    assert trials
    asked = []

    def best(_picks, effort, *, below):
        asked.append(effort)
        return chosen

    monkeypatch.setattr(finder, "_best", best)
    for _ in range(2):
        finder._bound = 0.96 * chosen.cost
        finder._proven(chosen.picks)
    assert len([effort for effort in asked if effort == finder.effort]) == 1
    assert max(asked[-2:]) == finder.effort // routine_search._OF_A_HALF


# --- a routine of which something was forbidden ---


def changed(picks, others):
    return {k for k, (one, other) in enumerate(zip(picks, others, strict=True)) if one != other}


def passes(one, picks):
    return all(key in one.passed for _, key in one.passage_keys(picks))


@pytest.mark.parametrize("seed", range(6))
def test_what_nothing_was_found_against_stays_if_that_costs_little(seed, trials, monkeypatch):
    monkeypatch.setattr(routine_search, "_STAYING", 10.0)
    one = drawn(seed, share=0.3)
    finder = search(one)
    first = finder.unproven(None)
    one.forbidden.add((2, first.picks[2]))
    assert one.unsettled(first.picks) == {2}
    told = []
    finder._found = told.append
    again = finder.repaired(first.picks)
    assert told[-1].picks == again.picks  # whoever stops it has that
    assert changed(first.picks, again.picks) <= {1, 2, 3}
    assert again.picks[2] != first.picks[2]
    assert passes(one, again.picks)
    assert again.cost == pytest.approx(cost_at(one.choices(), again.picks))
    assert again.bound <= least_that_passes(one) + 1e-9
    assert trials


def test_what_was_forbidden_is_chosen_anew_alone_before_what_is_beside_it(trials, monkeypatch):
    """As long as that costs no more than the share above the best that is near."""
    one = drawn(3, share=0.0)
    finder = search(one)
    first = finder.unproven(None)
    one.forbidden.add((2, first.picks[2]))
    tables = one.choices(doubting=True)

    def least(free):
        own = [range(one.count) if k in free else [pick] for k, pick in enumerate(first.picks)]
        return min(cost_at(tables, each) for each in product(*own))

    alone, beside, all_of = least({2}), least({1, 2, 3}), least(range(5))
    assert all_of <= beside < alone
    seen = {}
    for name, most in (("alone", alone), ("beside", beside)):
        monkeypatch.setattr(routine_search, "_STAYING", most / all_of - 1 + 1e-6)
        near = finder._near(first.picks)
        seen[name] = changed(first.picks, near)
        assert cost_at(tables, near) == pytest.approx(most)
    assert seen["alone"] == {2}
    assert {2} < seen["beside"] <= {1, 2, 3}
    monkeypatch.setattr(routine_search, "_STAYING", -1e-3)
    assert cost_at(tables, finder._near(first.picks)) == pytest.approx(all_of)
    assert trials


def test_where_nothing_near_passes_the_whole_is_searched_again(trials, monkeypatch):
    one = drawn(3)
    finder = search(one)
    first = finder.unproven(None)
    one.forbidden.add((2, first.picks[2]))
    tries = []
    monkeypatch.setattr(finder, "_fails", lambda picks, **_: tries.append(picks) or True)
    monkeypatch.setattr(finder, "unproven", lambda picks: ("whole", tuple(picks)))
    assert finder.repaired(first.picks) == ("whole", first.picks)
    assert len(tries) == routine_search._MOST_REPAIRS
    tries.clear()
    monkeypatch.setattr(finder, "_near", lambda _picks: None)
    assert finder.repaired(first.picks) == ("whole", first.picks)
    assert tries == []
    assert trials


def test_near_a_routine_none_is_taken_with_more_links_than_there_may_be(trials, monkeypatch):
    one = drawn(3, share=0.0)
    finder = search(one)
    first = finder.unproven(None)
    one.forbidden.add((2, first.picks[2]))
    near = finder.repaired(first.picks)
    monkeypatch.setattr(finder, "unproven", lambda picks: ("whole", tuple(picks)))
    linked = {first.picks: 0.1, near.picks: 0.2}
    monkeypatch.setattr(Setting, "linked", lambda _self, picks: linked[tuple(picks)])
    assert finder.repaired(first.picks) == ("whole", first.picks)
    linked[first.picks] = 0.2  # it had as many
    assert finder.repaired(first.picks).picks == near.picks
    assert trials
