from dataclasses import replace
from math import inf

import numpy as np
import pytest

from sequencer.motion.patterns.library import patterns
from sequencer.planning.drafting.auditioning.candidates import DraftMove, Heard, usual_hands
from sequencer.planning.drafting.auditioning.cast_moves import Cast, effects
from sequencer.planning.drafting.auditioning.repertoire import Material
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.costing.weights import TOO_SOON, Weights
from sequencer.planning.drafting.gaps.slots import Fixed, Slot
from sequencer.show.file_records.wishes import Wishes

NAMES = ("static-spin", "extension", "two-beat-weave", "antispin-flower-5", "windmill")


def moves(names=NAMES, **more):
    given = {"timing": "split", "direction": "same", "cycle": 2.0, "usual": True, **more}
    return tuple(DraftMove(pattern=name, **given) for name in names)


def slot(k, *, beats=16, label="A", material=None, start=None):
    at = 16 * k if start is None else start
    number = k if material is None else material
    return Slot(start=at, end=at + beats, section=f"{label} {k}", label=label, material=number)


def setting(slots, *, loudness=None, own=None, joins=(), learning=(), level=3, **more):
    own = moves() if own is None else own
    heard = tuple(
        Heard(passes=True, size=0.2 * k, speed=1.0 * k, margin=0.1) for k in range(len(own))
    )
    found = Setting(
        slots=tuple(slots),
        loudness=np.full(len(slots), 0.5) if loudness is None else np.array(loudness),
        cast=Cast(
            moves=own,
            heard=more.pop("heard", heard),
            laws=(),
            ways=(0,) * len(slots),
            material=Material(known=NAMES, learning=frozenset(learning), level=level),
            book=patterns(),
        ),
        wishes=more.pop("wishes", Wishes()),
        **more,
    )
    table = np.zeros((len(own), len(own)), dtype=bool)
    for a, b in joins:
        table[a, b] = True
    for beats in {each.beats for each in slots}:
        found._joins[beats, 0, 0] = table  # what laws would say
    return found


def total_cost(choices, picks):
    """What a routine costs by the tables that are searched, added up one by one."""
    total = sum(costs[pick] for costs, pick in zip(choices.costs, picks, strict=True))
    total += sum(table[picks[i], picks[j]] for (i, j), table in choices.passages.items())
    for rule in choices.countings:
        count = sum(row[pick] for row, pick in zip(rule.counts, picks, strict=True))
        total += rule.price * (max(rule.at_least - count, 0) + max(count - rule.at_most, 0))
    return total


@pytest.mark.parametrize("seed", range(20))
def test_terms_of_a_routine_are_what_the_tables_of_the_search_add_up_to(seed):
    draw = np.random.default_rng(seed)
    slots = [
        slot(0, label="A", material=0), slot(1, label="B", material=1, beats=8),
        slot(2, label="C", material=2, start=24, beats=8), slot(3, label="A", material=0, start=32),
        slot(4, label="B", material=1, start=48, beats=8), slot(5, label="D", material=3, start=60),
        slot(6, label="D", material=3, start=76),
    ]  # fmt: skip
    found = setting(
        slots,
        loudness=draw.random(len(slots)),
        joins=[(0, 1), (2, 2), (3, 0)],
        learning=["windmill"],
        walked=frozenset({5}),
        seed=int(draw.integers(3)),
        level=3 + seed % 3,
        wishes=Wishes(moves={"weave": 2, "static-spin": 1}),
        fixed=(Fixed(start=56, end=60, pattern="extension", label="X", material="m"),),
    )
    found.bad[0, 14.0, 2, 2, 0, 0, 0] = "tried"
    choices = found.choices()
    for _ in range(10):
        picks = [int(k) for k in draw.integers(0, len(NAMES), len(found.uses))]
        cost = total_cost(choices, picks)
        if np.isfinite(cost):
            assert cost == pytest.approx(sum(found.terms(picks).values()))
        else:  # nobody walks in what is hard
            assert found.difficulty[picks[3]] > 2


def test_large_moves_cost_in_calm_music_and_small_ones_in_loud():
    calm = setting([slot(0)], loudness=[0.0]).own_terms(0)["energy"]
    loud = setting([slot(0)], loudness=[1.0]).own_terms(0)["energy"]
    assert np.all(np.diff(calm) > 0)
    assert np.all(np.diff(loud) < 0)
    assert calm[0] == loud[-1] == 0
    half = setting([slot(0, beats=8)], loudness=[0.0]).own_terms(0)["energy"]
    assert half == pytest.approx(calm / 2)


@pytest.mark.parametrize(("loud", "easy"), [(0.0, 1 / 3), (0.5, 2 / 3), (1.0, 1.0)])
def test_what_is_too_hard_costs_and_what_is_too_easy_more_the_louder_it_is(loud, easy):
    ends = slot(1)
    cost = setting([slot(0), ends], loudness=[loud, 0.5], level=4).own_terms(0)["difficulty"]
    wanted = 1 + 3 * (0.5 + 0.5 * loud)
    hard = max(patterns()["antispin-flower-5"].difficulty - wanted, 0.0)
    assert cost[3] == pytest.approx(Weights().difficulty * hard)
    assert cost[0] == pytest.approx(Weights().difficulty * easy * (wanted - 1))
    brief = [slot(0, beats=6), ends]
    short = setting(brief, loudness=[loud, 0.5], level=4).own_terms(0)["difficulty"]
    assert short[3] > cost[3] * 6 / 16 + 0.5


@pytest.mark.parametrize("loud", [0.0, 0.5, 1.0])
def test_the_last_move_is_as_hard_as_in_full_music_unless_something_that_stays_comes_after(loud):
    slots = [slot(0), slot(1)]
    full = setting(slots, loudness=[1.0, 1.0], level=4).own_terms(0)["difficulty"]
    last = setting(slots, loudness=[0.5, loud], level=4)
    assert last.own_terms(1)["difficulty"] == pytest.approx(full)
    after = Fixed(start=40, end=56, pattern="extension", label="X", material="m")
    fixed = setting(slots, loudness=[0.5, loud], level=4, fixed=(after,))
    assert last.own_terms(0)["difficulty"] == pytest.approx(fixed.own_terms(0)["difficulty"])
    same = fixed.own_terms(1)["difficulty"] == pytest.approx(full)
    assert same == (loud == 1.0)


def test_something_as_hard_as_the_level_is_shown():
    def shown(level, count=1):
        found = setting([slot(k) for k in range(count)], level=level)
        return [rule for rule in found.countings() if rule.name.startswith("difficulty")]

    (rule,) = shown(4)
    assert list(rule.counts[0]) == [float(patterns()[n].difficulty == 4) for n in NAMES]
    assert (rule.at_least, rule.price) == (1.0, Weights().shown)
    assert shown(5)[0].counts[0].tolist() == rule.counts[0].tolist()  # nothing is harder
    assert shown(4, 24)[0].at_least == 3.0  # one piece of eight
    assert shown(3) == []  # what is easy comes by itself
    plain = setting([slot(0)], level=4)
    assert plain.terms([0])["difficulty"] - plain.terms([3])["difficulty"] > Weights().shown - 1e-9
    assert plain.unmet([0]) == ()  # nobody wished it
    learnt = setting([slot(0)], level=4, learning=["windmill", "antispin-flower-5"])
    assert not [rule for rule in learnt.countings() if rule.name.startswith("difficulty")]


def test_cycles_that_end_with_the_stretch_cost_nothing():
    def ending(cycle, beats=16):
        each = moves(NAMES[:1], cycle=cycle)
        return float(setting([slot(0, beats=beats)], own=each).own_terms(0)["ending"][0])

    assert [ending(c) for c in (1.0, 2.0, 4.0, 8.0, 16 / 3)] == [0.0] * 5
    assert ending(3.0) > 0.25
    assert ending(16.0) == pytest.approx(Weights().ending)  # only once
    assert ending(5.0, beats=7) > ending(3.5, beats=7) == 0.0


def test_little_room_costs():
    heard = (Heard(passes=True, margin=0.05), Heard(passes=True, margin=0.02))
    found = setting([slot(0)], own=moves(NAMES[:2]), heard=heard)
    assert found.own_terms(0)["margin"] == pytest.approx([0.0, Weights().margin * 0.6])


def test_what_is_being_learnt_is_only_for_calm_music():
    calm, loud = (
        setting([slot(0)], loudness=[rank], learning=["extension"]).own_terms(0)["learning"]
        for rank in (0.2, 0.8)
    )
    assert not calm.any()
    assert loud[1] > 10
    assert loud[0] == 0


def test_a_pattern_costs_within_two_eights_of_itself_unless_the_part_returns():
    near = setting([slot(0, label="A"), slot(1, label="B")])
    assert near.passage_terms(0, 1)["variety"][2, 2] == TOO_SOON
    same = setting([slot(0, material=0), slot(1, material=0)])
    assert same.passage_terms(0, 1)["variety"][2, 2] == 0
    three = setting([slot(0), slot(1, beats=8), slot(2, start=24), slot(3, start=40)])
    assert list(three._soon()) == [(0, 2)]
    stays = Fixed(start=-10, end=-4, pattern="windmill", label="X", material="m")
    assert setting([slot(0)], fixed=(stays,)).own_terms(0)["variety"][4] == TOO_SOON
    far = Fixed(start=-30, end=-16, pattern="windmill", label="X", material="m")
    assert not setting([slot(0)], fixed=(far,)).own_terms(0)["variety"].any()


def test_one_hard_move_after_another_and_a_change_of_hands_cost():
    own = (*moves(), *moves(NAMES[:1], timing="together"), *moves(NAMES[:1], direction="opposite"))
    terms = setting([slot(0), slot(1, label="B")], own=own).passage_terms(0, 1)
    assert terms["rest"][3, 4] == Weights().rest
    assert terms["rest"][3, 0] == terms["rest"][0, 3] == 0
    within = setting([slot(0), slot(1)], own=own).passage_terms(0, 1)
    assert within["hands"][0, 5] == pytest.approx(Weights().hands)
    assert within["hands"][0, 6] == pytest.approx(1.5 * Weights().hands)
    assert within["hands"][0, 1] == terms["hands"][0, 1] == 0
    # Into another part a change costs less, and hands that go on alike cost something.
    assert terms["hands"][0, 5] == pytest.approx(0.5 * Weights().hands)
    more = terms["variety"] - within["variety"]
    assert more[0, 1] == pytest.approx(0.5 * Weights().variety)
    assert more[0, 5] == more[5, 6] == 0


def test_hands_that_can_be_timed_in_one_way_only_may_go_on_alike():
    (first, other) = (
        setting([slot(0), slot(1, label=label)]).passage_terms(0, 1)["variety"]
        for label in ("A", "B")
    )
    assert np.array_equal(first, other)


def test_loudness_and_size_are_ranked_alike():
    """A third of the repertoire is for a third of the song, however many ways of dancing a pattern are at hand."""
    found = effects(["a", "a", "a", "b", "c"], [0.3, 0.3, 0.3, 0.5, 0.9], [1.0] * 5)
    assert found == pytest.approx([0.0, 0.0, 0.0, 0.5, 1.0])
    # Moves of about one size share the rank in the middle of theirs.
    names = ["a", "b", "c", "d", "e"]
    assert effects(names, [0.3, 0.5, 0.9, 0.905, 0.9], [1.0] * 5) == pytest.approx(
        [0.0, 1 / 3, 1.0, 1.0, 1.0]
    )
    # Of one size, the faster one looks larger, by a little.
    faster = effects(names, [0.3, 0.5, 0.9, 0.9, 0.9], [1.0, 1.0, 1.0, 2.0, 1.0])
    assert faster[3] > faster[2] == faster[4] > 0.8
    assert effects(["a", "b"], [0.5, 0.5], [1.0, 1.0]) == pytest.approx([0.5, 0.5])


def test_links_of_two_beats_are_preferred_and_short_stretches_take_one():
    found = setting([slot(0), slot(1, label="B", beats=8), slot(2, start=24)])
    assert next(iter(found.link_costs(0))) == 2
    assert next(iter(found.link_costs(1))) == 1
    assert set(found.link_costs(1)) == {1, 2, 3, 4}
    assert list(found.link_costs(0).values()) == sorted(found.link_costs(0).values())


def test_what_joins_is_joined_and_what_fails_takes_the_next_link_until_none_is_left():
    found = setting([slot(0), slot(1, label="B")], joins=[(0, 1)])
    assert found.link(0, 1, 0, 1) == 0
    assert found.link(0, 1, 1, 0) == 2
    tried = []
    while (link := found.link(0, 1, 0, 1)) is not None:
        tried.append(link)
        found.bad[0, 16.0 - link, link, 1, 0, 0, 0] = "no"
    assert tried == [0, *found.link_costs(0)]
    assert found.choices().passages[0, 1][0, 1] == inf
    assert not found.passable([0, 1])
    assert found.passable([1, 0])


def test_a_section_that_returns_always_ends_in_a_link():
    slots = [
        slot(0, label="A", material=0),
        slot(1, label="B", material=1),
        slot(2, label="A", material=0),
    ]
    found = setting(slots, joins=[(0, 1), (1, 0)])
    assert found.exits == {0, 2}
    assert found.link(0, 1, 0, 1) == 2
    assert found.link(1, 2, 1, 0) == 0
    assert (found.early(2), found.early(1)) == (2, 0)
    free = setting(slots, joins=[(0, 1)], wishes=Wishes(returns="free"))
    assert free.link(0, 1, 0, 1) == 0


def test_a_move_that_returns_at_once_goes_on_without_a_link():
    slots = [slot(0, material=0), slot(1, material=0), slot(2, label="B", material=1)]
    found = setting(slots, joins=[(0, 0), (2, 1)])
    assert found.link(0, 1, 0, 0) == 0
    assert found.link_table(0, 1)[0, 0] == 0
    assert found.link(0, 1, 3, 3) == 2  # it does not join
    assert found.link_table(0, 1)[2, 1] > 0  # out of what returns into something else


def test_wishes_count_what_is_there_already():
    wishes = Wishes(moves={"windmill": 2})
    there = Fixed(start=-40, end=-30, pattern="windmill", label="X", material="m")
    rules = [
        [rule.at_least for rule in setting([slot(0)], wishes=wishes, fixed=fixed).countings() if rule.at_least]
        for fixed in ((), (there,), (there, there), (there, Fixed(start=0, end=1, pattern="windmill", label="", material="n")))
    ]  # fmt: skip
    assert rules == [[2.0], [1.0], [1.0], []]


def test_weaves_are_danced_in_split_time_and_butterflies_in_opposite_directions():
    book = patterns()

    def usual(name, timing, direction, **more):
        (move,) = moves((name,), timing=timing, direction=direction, **more)
        return usual_hands(move, book[name])

    assert usual("two-beat-weave", "split", "same")
    assert not usual("two-beat-weave", "together", "same")
    assert usual("two-beat-weave", "together", "same", one_hand=True)
    assert usual("butterfly", "together", "opposite")
    assert not usual("butterfly", "together", "same")
    assert usual("extension", "together", "opposite")


def test_a_stretch_of_three_bars_of_four_takes_a_link_of_one_beat():
    assert next(iter(setting([slot(0, beats=12), slot(1, start=12)]).link_costs(0))) == 1
    assert next(iter(setting([slot(0, beats=14), slot(1, start=14)]).link_costs(0))) == 2


def test_nobody_walks_in_what_is_hard_unless_there_is_nothing_else():
    walking = setting([slot(0), slot(1, label="B")], walked=frozenset({1})).choices().costs
    easy = [patterns()[name].difficulty <= 2 for name in NAMES]
    assert list(np.isfinite(walking[1])) == easy
    assert np.isfinite(walking[0]).all()
    hard = setting([slot(0)], own=moves(NAMES[3:]), walked=frozenset({0})).choices().costs
    assert np.isfinite(hard[0]).all()


def test_tables_of_links_are_those_of_what_has_failed_by_now():
    """Against each pair asked by itself: kept tables must not outlive what was found since, nor serve another kind of slot."""
    slots = [
        slot(0, label="A", material=0), slot(1, label="B", material=1), slot(2, label="A", material=0),
        slot(3, label="C", material=2), slot(4, label="C", material=2), slot(5, label="D", material=3, beats=8),
    ]  # fmt: skip
    found = setting(slots, joins=[(0, 1), (2, 2)])

    def asked(a, b):
        costs, n = {0: 0.0, None: inf, **found.link_costs(a)}, found.count
        return [[costs[found.link(a, b, i, j)] for j in range(n)] for i in range(n)]

    draw = np.random.default_rng(5)
    for _ in range(6):
        for a, b in found.neighbours:
            assert np.array_equal(found.link_table(a, b), asked(a, b))
        for a, b in found.neighbours:
            for first, second in draw.integers(found.count, size=(4, 2)).tolist():
                link = found.link(a, b, first, second)
                if link is not None:
                    key = (first, float(slots[a].beats - link), link, second, *found.ways(a, b))
                    found.bad[key] = "planted"
    dear = replace(found.weights, links=3.0)
    before, found.weights = found.link_table(0, 1), dear
    assert not np.array_equal(found.link_table(0, 1), before)


def test_what_is_forbidden_or_beside_a_link_that_does_not_pass_is_unsettled():
    found = setting([slot(k, label=label) for k, label in enumerate("ABCD")], joins=[(0, 1)])
    picks = [0, 1, 2, 3]
    found.passed |= {key for _, key in found.passage_keys(picks)}
    assert found.unsettled(picks) == set()
    found.forbidden.add((1, 1))
    found.forbidden.add((0, 4))  # of none of its moves
    assert found.unsettled(picks) == {1}
    link = dict(found.passage_keys(picks))[2, 3]
    found.bad[link] = "no"
    found.passed.discard(link)
    assert found.unsettled(picks) == {1, 2, 3}
    found.forbidden.clear()
    assert found.unsettled(picks) == {2, 3}
    for n in (1, 2, 3, 4):  # none is left at all
        found.bad[2, 16.0 - n, n, 3, 0, 0, 0] = "no"
    assert found.link(2, 3, 2, 3) is None
    assert found.unsettled(picks) == {2, 3}


def test_beside_some_material_is_what_is_danced_right_before_and_behind_it_wherever_it_comes():
    order = [0, 1, 2, 3, 1, 4]
    slots = [slot(k, label="ABCDE"[n], material=n) for k, n in enumerate(order)]
    found = setting(slots)
    assert found.with_beside({1}) == {0, 1, 2, 3, 4}
    assert found.with_beside({0}) == {0, 1}
    assert found.with_beside({2, 4}) == {1, 2, 3, 4}
    assert found.with_beside(()) == set()
