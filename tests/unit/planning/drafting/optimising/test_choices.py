"""The best choice against plain enumeration, and what is refused."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import product
from math import inf, isfinite

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sequencer.planning.drafting.optimising import branching
from sequencer.planning.drafting.optimising import choices as choices_module
from sequencer.planning.drafting.optimising.bounding import GraphBound
from sequencer.planning.drafting.optimising.choices import (
    BestSearch,
    Choices,
    Counting,
    Undecided,
    best,
    cost_at,
    holding,
    improved,
    nowhere_cheaper,
)
from sequencer.planning.drafting.optimising.cost_graph import cost_of
from sequencer.planning.drafting.optimising.improving import Improver
from tests.repeated import at_length


def drawn(seed: int) -> Choices:
    """A small case with all kinds of rules; about a third of them have no solution."""
    rng = np.random.default_rng(seed)
    slots = int(rng.integers(1, 7))
    sizes = rng.integers(1, 6, slots)
    costs = [np.round(rng.uniform(-2, 10, n), 3) for n in sizes]
    for values in costs:
        values[rng.random(len(values)) < 0.1] = inf
    passages = {}
    for i in range(slots):
        for j in range(i + 1, slots):
            if rng.random() < (0.9 if j == i + 1 else 0.4):
                table = np.round(rng.uniform(0, 6, (sizes[i], sizes[j])), 3)
                table[rng.random(table.shape) < rng.choice([0, 0.15, 0.4])] = inf
                passages[i, j] = table
    countings = []
    for r in range(int(rng.integers(0, 4))):
        whole = rng.random() < 0.7
        counts = tuple(
            rng.integers(0, 3, n).astype(float) if whole else np.round(rng.uniform(-1, 2, n), 2)
            for n in sizes
        )
        countings.append(
            Counting(
                name=f"rule {r}",
                counts=counts,
                at_least=float(rng.integers(0, slots + 3)) if rng.random() < 0.6 else 0.0,
                at_most=float(rng.integers(0, slots + 3)) if rng.random() < 0.5 else inf,
                price=None if rng.random() < 0.5 else float(np.round(rng.uniform(0, 5), 2)),
            )
        )
    return Choices(costs=tuple(costs), passages=passages, countings=tuple(countings))


def plain_cost(choices: Choices, picks: tuple[int, ...]) -> float:
    """The cost by its definition, written anew."""
    cost = sum(values[p] for values, p in zip(choices.costs, picks, strict=True))
    for (i, j), table in choices.passages.items():
        cost += table[picks[i], picks[j]]
    for rule in choices.countings:
        count = sum(values[p] for values, p in zip(rule.counts, picks, strict=True))
        missed = max(0.0, rule.at_least - count) + max(0.0, count - rule.at_most)
        if missed > 1e-9:
            cost += inf if rule.price is None else rule.price * missed
    return float(cost)


def enumerated(choices: Choices) -> float:
    return min(plain_cost(choices, p) for p in product(*[range(len(c)) for c in choices.costs]))


@pytest.mark.parametrize("tens", [0, 1, *at_length(*range(2, 10))])
def test_small_cases_equal_plain_enumeration(tens: int) -> None:
    impossible = 0
    for seed in range(50 * tens, 50 * tens + 50):
        choices = drawn(seed)
        truth = enumerated(choices)
        chosen = best(choices)
        if not isfinite(truth):
            impossible += 1
            assert chosen is None, seed
            continue
        assert chosen is not None, seed
        # 1e-8: `best` stops where nothing is cheaper by more than a billionth
        assert chosen.cost == pytest.approx(truth, abs=1e-8), seed
        assert chosen.bound == pytest.approx(truth, abs=1e-8), seed
        assert plain_cost(choices, chosen.picks) == pytest.approx(chosen.cost, abs=1e-9), seed
    assert 5 <= impossible <= 30  # both kinds are met


@pytest.fixture
def luckless(monkeypatch: pytest.MonkeyPatch) -> None:
    """Searches around a choice find nothing, so that bounds and branches alone must."""

    def nothing(self: Improver, start: Sequence[int], *_: object) -> tuple[tuple[int, ...], float]:
        return tuple(start), cost_of(self.graph, start)

    monkeypatch.setattr(Improver, "searched", nothing)
    monkeypatch.setattr(branching, "rebuilt", nothing)


def scaled(choices: Choices, by: float) -> Choices:
    """The same choice in another currency."""
    return Choices(
        costs=tuple(by * c for c in choices.costs),
        passages={pair: by * table for pair, table in choices.passages.items()},
        countings=tuple(
            rule if rule.price is None else replace(rule, price=by * rule.price)
            for rule in choices.countings
        ),
    )


@pytest.mark.usefixtures("luckless")
@pytest.mark.parametrize("by", [1.0, 0.02])
def test_the_tree_finds_the_best_without_any_luck(by: float) -> None:
    for seed in range(100):
        choices = scaled(drawn(seed), by)
        truth = enumerated(choices)
        chosen = best(choices)
        if isfinite(truth):
            assert chosen is not None, seed
            assert chosen.cost == pytest.approx(truth, abs=1e-8), seed
            assert chosen.bound == pytest.approx(truth, abs=1e-8), seed
        else:
            assert chosen is None, seed


@pytest.mark.usefixtures("luckless")
def test_without_effort_nothing_false_is_said() -> None:
    outcomes = set()
    for seed in range(200):
        choices = drawn(seed)
        truth = enumerated(choices)
        try:
            chosen = best(choices, effort=0)
        except Undecided:
            outcomes.add("undecided")
            continue
        if chosen is None:
            outcomes.add("none")
            assert not isfinite(truth), seed
            continue
        outcomes.add("chosen")
        assert chosen.bound - 1e-8 <= truth <= chosen.cost + 1e-8, seed
        assert isfinite(chosen.cost), seed
    assert {"none", "chosen"} <= outcomes


def raised(choices: Choices, rng: np.random.Generator) -> Choices:
    """The same choice with some costs higher, and some things forbidden: what trials do to a draft."""

    def more(table: np.ndarray) -> np.ndarray:
        dearer = np.where(rng.random(table.shape) < 0.3, rng.uniform(0, 4, table.shape), 0.0)
        return np.where(rng.random(table.shape) < 0.05, inf, table + dearer)

    return replace(
        choices,
        costs=tuple(more(c) for c in choices.costs),
        passages={pair: more(table) for pair, table in choices.passages.items()},
    )


@pytest.mark.usefixtures("luckless")
@pytest.mark.parametrize("tens", range(5))
def test_a_search_that_goes_on_as_costs_rise_equals_plain_enumeration(tens: int) -> None:
    """Whatever was set aside as too dear comes back once what was better has become dearer."""
    went_on = 0
    for seed in range(20 * tens, 20 * tens + 20):
        rng = np.random.default_rng([7, seed])
        choices, search = drawn(seed), BestSearch()
        for _ in range(5):
            truth = enumerated(choices)
            before = search._search
            chosen = search.best(choices)
            if not isfinite(truth):
                assert chosen is None, seed
                break
            went_on += before is not None and search._search is before
            assert chosen is not None, seed
            assert chosen.cost == pytest.approx(truth, abs=1e-8), seed
            assert chosen.bound == pytest.approx(truth, abs=1e-8), seed
            choices = raised(choices, rng)
    assert went_on > 20


@pytest.mark.usefixtures("luckless")
@pytest.mark.parametrize("tens", range(5))
def test_a_search_for_something_cheaper_finds_it_or_proves_that_there_is_nothing(tens: int) -> None:
    """The cost below which something is sought rises and falls; each outcome is held against plain enumeration."""
    outcomes = [0, 0]
    for seed in range(20 * tens, 20 * tens + 20):
        rng = np.random.default_rng([8, seed])
        choices, search = drawn(seed), BestSearch(close=0.005)
        for _ in range(6):
            truth = enumerated(choices)
            if not isfinite(truth):
                break
            below = truth + float(rng.choice([-2.0, -0.3, -0.001, 0.001, 0.3, 2.0]))
            chosen = search.best(choices, below=below, known=[0] * len(choices.costs))
            assert chosen is not None, seed
            assert chosen.cost == pytest.approx(plain_cost(choices, chosen.picks)), seed
            assert chosen.bound <= truth + 1e-8, seed
            found = truth < below
            outcomes[found] += 1
            assert (chosen.cost < below) == found, seed
            if not found:
                assert chosen.bound >= below - 1e-8, seed
            if rng.random() < 0.7:
                choices = raised(choices, rng)
    assert min(outcomes) > 10


@pytest.mark.usefixtures("luckless")
def test_the_tree_holds_every_choice_with_a_bound_below_its_cost() -> None:
    """What is possible lies in one part, whose costs add up to those of now, however far the search has come."""
    leaves = 0
    for seed in range(60):
        rng = np.random.default_rng([9, seed])
        choices, search = drawn(seed), BestSearch()
        for _ in range(3):
            if not isfinite(enumerated(choices)):
                break
            search.best(choices)
            tree = search._search
            assert tree is not None
            leaves += sum(all(len(own) == 1 for own in names) for _, _, names, _ in tree._tree)
            for picks in product(*[range(len(c)) for c in choices.costs]):
                cost = plain_cost(choices, picks)
                holds = [
                    estimate
                    for estimate, _, names, _ in tree._tree
                    if all(p in own for p, own in zip(picks, names, strict=True))
                ]
                assert len(holds) <= 1, seed
                if isfinite(cost):
                    assert holds, (seed, picks)
                    assert holds[0] <= cost + 1e-9, (seed, picks)
                    own = [
                        int(np.argmax(n == p)) for n, p in zip(tree._base.names, picks, strict=True)
                    ]
                    bare = replace(tree._base, least=np.full_like(tree._base.least, -inf))
                    plain = replace(choices, countings=())
                    assert cost_of(bare, own) == pytest.approx(plain_cost(plain, picks)), seed
            choices = raised(choices, rng)
    assert leaves > 0


def test_a_single_choice_stays_in_the_tree_with_its_cost() -> None:
    """However low its bound is: once something else is dearer, it may be the best."""
    graph = choices_module._graph(
        Choices(costs=(np.array([1.5]), np.array([2.0])), passages={(0, 1): np.array([[0.25]])})
    )
    search = branching.BranchSearch(graph, 0, lambda *_: None)
    search._whole, search._improver = graph, Improver(graph)
    low = GraphBound(
        bound=-1.0, multipliers=np.zeros(0), picks=(0, 0), costs=graph.costs, pairs=graph.pairs, work=0,
        least=(np.array([-1.0]), np.array([-1.0])),
    )  # fmt: skip
    search._divide(graph, low, -1.0)
    assert [each[0] for each in search._tree] == [pytest.approx(3.75)]


def test_the_first_that_is_cheap_enough_ends_the_search() -> None:
    choices = chain(4, slots=9, candidates=7)
    search = BestSearch()
    truth = search.best(choices, below=0.0)  # nothing is: all is proven
    assert truth is not None
    tree = search._search
    assert tree is not None
    looks = tree._looks
    dearer = replace(choices, costs=tuple(c + 1.0 for c in choices.costs))
    chosen = search.best(dearer, below=100.0)
    assert chosen is not None
    assert chosen.cost < 100
    assert search._search is tree
    assert tree._looks == looks


def test_where_a_cost_has_fallen_the_search_begins_anew() -> None:
    choices = chain(3, slots=6, candidates=5)
    search = BestSearch()
    first = search.best(choices)
    assert first is not None
    cheaper = replace(choices, costs=tuple(0.5 * c for c in choices.costs))
    assert search.best(cheaper) == best(cheaper)
    fewer = replace(choices, countings=())
    assert search.best(fewer) == best(fewer)
    assert search.best(choices) == first


def lowered(choices: Choices, kind: str, rng: np.random.Generator) -> Choices:
    """The same choice with one cost, passage or price lower."""
    if kind == "costs":
        rows = [c.copy() for c in choices.costs]
        row = rows[rng.integers(len(rows))]
        row[rng.integers(len(row))] = -20.0
        return replace(choices, costs=tuple(rows))
    if kind == "passages":
        tables = {pair: table.copy() for pair, table in choices.passages.items()}
        table = tables[list(tables)[rng.integers(len(tables))]]
        table[tuple(rng.integers(table.shape))] = -20.0
        return replace(choices, passages=tables)
    rules = [replace(rule, price=0.01) for rule in choices.countings]
    return replace(choices, countings=tuple(rules))


@pytest.mark.usefixtures("luckless")
@pytest.mark.parametrize("kind", ["costs", "passages", "prices"])
def test_wherever_a_cost_has_fallen_the_search_equals_plain_enumeration(kind: str) -> None:
    """One number is enough: nothing of what was proven holds any more."""
    fell = 0
    for seed in range(60):
        rng = np.random.default_rng([11, seed])
        choices, search = drawn(seed), BestSearch()
        if not (choices.countings if kind == "prices" else choices.passages):
            continue
        before = enumerated(choices)
        search.best(choices)
        cheaper = lowered(choices, kind, rng)
        assert nowhere_cheaper(choices, choices)
        assert nowhere_cheaper(choices, raised(choices, rng))
        assert (
            not nowhere_cheaper(choices, cheaper) or kind == "prices"
        )  # of rules that hold anyway
        truth = enumerated(cheaper)
        chosen = search.best(cheaper)
        if not isfinite(truth):
            assert chosen is None, seed
            continue
        fell += truth < before
        assert chosen is not None, seed
        assert chosen.cost == pytest.approx(truth, abs=1e-8), seed
        assert chosen.bound == pytest.approx(truth, abs=1e-8), seed
    assert fell > 10


def chain(seed: int, slots: int, candidates: int) -> Choices:
    rng = np.random.default_rng(seed)
    return Choices(
        costs=tuple(rng.uniform(0, 4, candidates) for _ in range(slots)),
        passages={
            (k, k + 1): rng.uniform(0, 3, (candidates, candidates)) for k in range(slots - 1)
        },
        countings=(
            Counting(
                name="first candidates",
                counts=tuple(
                    (np.arange(candidates) < candidates // 3).astype(float) for _ in range(slots)
                ),
                at_least=slots // 2,
                at_most=slots // 2 + 2,
                price=2.0,
            ),
        ),
    )


@settings(max_examples=25)
@given(st.integers(0, 10_000), st.data())
def test_bound_below_cost_below_any_pick(seed: int, data: st.DataObject) -> None:
    choices = chain(seed, slots=7, candidates=6)
    chosen = best(choices, effort=1)
    assert chosen is not None
    picks = data.draw(st.tuples(*[st.integers(0, 5)] * 7))
    assert chosen.bound <= chosen.cost + 1e-9
    assert chosen.bound <= plain_cost(choices, picks) + 1e-9
    assert chosen.cost == pytest.approx(plain_cost(choices, chosen.picks))


def test_the_same_input_gives_the_same_choice() -> None:
    choices = chain(5, slots=12, candidates=9)
    assert best(choices, effort=30, seed=3) == best(choices, effort=30, seed=3)


def test_another_choice_differs_in_a_third_of_the_slots() -> None:
    choices = chain(8, slots=10, candidates=5)
    first = best(choices)
    assert first is not None
    other_rule = Counting(
        name="another",
        counts=tuple((np.arange(5) == pick).astype(float) for pick in first.picks),
        at_most=6.0,
    )
    second = best(
        Choices(
            costs=choices.costs,
            passages=choices.passages,
            countings=(*choices.countings, other_rule),
        )
    )
    assert second is not None
    assert sum(a != b for a, b in zip(first.picks, second.picks, strict=True)) >= 10 / 3
    assert second.cost >= first.cost


def test_what_was_found_before_is_at_least_kept() -> None:
    choices = chain(2, slots=12, candidates=9)
    full = best(choices)
    assert full is not None
    assert best(choices, effort=0, known=full.picks).cost <= full.cost + 1e-9


def test_each_improvement_is_told_with_a_bound() -> None:
    choices = chain(4, slots=12, candidates=9)
    told = []
    said = []
    chosen = best(choices, found=told.append, progress=lambda _, share: said.append(share))
    assert told
    assert [c.cost for c in told] == sorted((c.cost for c in told), reverse=True)
    assert all(c.bound <= chosen.bound + 1e-9 for c in told)
    assert told[-1].picks == chosen.picks
    assert all(0 <= share <= 1 for share in said)


def test_gap_is_a_share_of_the_cost() -> None:
    chosen = best(chain(1, slots=6, candidates=5))
    assert chosen.gap == pytest.approx(0.0, abs=1e-9)


def test_undecided_is_no_proof() -> None:
    # Exactly half of what lies in 40 numbers: without effort neither found nor refuted.
    rng = np.random.default_rng(0)
    counts = tuple(np.array([0.0, float(n)]) for n in rng.integers(10**9, 10**10, 40))
    half = float(sum(c[1] for c in counts) // 2)
    rule = Counting(name="half", counts=counts, at_least=half, at_most=half)
    choices = Choices(costs=tuple(np.zeros(2) for _ in counts), passages={}, countings=(rule,))
    with pytest.raises(Undecided):
        best(choices, effort=1)


@pytest.mark.parametrize(
    ("choices", "words"),
    [
        (Choices(costs=(np.zeros(0),), passages={}), "at least one candidate"),
        (Choices(costs=(np.array([np.nan]),), passages={}), "must be numbers"),
        (Choices(costs=(np.array([-inf]),), passages={}), "must be numbers"),
        (Choices(costs=(np.zeros(2), np.zeros(2)), passages={(1, 0): np.zeros((2, 2))}), "fit"),
        (Choices(costs=(np.zeros(2), np.zeros(2)), passages={(0, 1): np.zeros((2, 3))}), "fit"),
        (
            Choices(
                costs=(np.zeros(2),),
                passages={},
                countings=(Counting(name="a", counts=(np.zeros(3),)),),
            ),
            "a: the counts do not fit",
        ),
        (
            Choices(
                costs=(np.zeros(2),),
                passages={},
                countings=(Counting(name="a", counts=(np.zeros(2),), price=-1.0),),
            ),
            "less than 0",
        ),
    ],
)
def test_what_does_not_fit_is_refused(choices: Choices, words: str) -> None:
    with pytest.raises(ValueError, match=words):
        best(choices)


def test_picks_that_do_not_fit_are_refused() -> None:
    choices = chain(1, slots=4, candidates=3)
    with pytest.raises(ValueError, match="known picks"):
        best(choices, known=(0, 0))


def test_a_search_that_is_content_with_a_gap_ends_there() -> None:
    """What it says is proven as ever; it only looks at less."""
    content = 0
    for seed in (3, 5, 9, 18, 19, 27):
        choices = drawn(seed)
        whole, near = best(choices), best(choices, close=0.03)
        assert (whole is None) == (near is None)
        if whole is None or near is None:
            continue
        assert near.bound - 1e-9 <= whole.cost <= near.cost + 1e-9
        assert near.cost - near.bound <= 0.03 * abs(near.cost) + 1e-9
        content += near.gap > 0
    assert content


@pytest.mark.parametrize("seed", range(40))
def test_a_walk_ends_at_what_is_allowed_and_near_the_best(seed: int) -> None:
    choices = drawn(seed)
    found = best(choices)
    start = [0] * len(choices.costs)
    picks = improved(choices, start)
    if found is None:
        assert picks is None
        return
    assert picks is not None
    assert cost_at(choices, picks) == pytest.approx(plain_cost(choices, picks))
    assert cost_at(choices, picks) == pytest.approx(found.cost)  # so small that it is the best
    assert improved(choices, start) == picks


@pytest.mark.parametrize("seed", range(10))
def test_a_short_walk_ends_at_what_is_allowed_and_no_dearer(seed: int) -> None:
    choices = drawn(seed)
    start = improved(choices, [0] * len(choices.costs))
    again = None if start is None else improved(choices, start, near=True)
    assert (again is None) == (start is None)
    if again is not None and start is not None:
        assert np.isfinite(cost_at(choices, again))
        assert cost_at(choices, again) <= cost_at(choices, start) + 1e-9


def test_what_is_held_stays_and_the_rest_is_chosen_as_before():
    rng = np.random.default_rng(4)
    whole = Choices(
        costs=tuple(rng.uniform(0, 9, 4) for _ in range(3)),
        passages={(0, 1): rng.uniform(0, 9, (4, 4)), (1, 2): rng.uniform(0, 9, (4, 4))},
    )
    picks = (2, 1, 3)
    held = holding(whole, picks, {1})
    for each in product(range(4), repeat=3):
        stays = each[0] == 2 and each[2] == 3
        assert cost_at(held, each) == (cost_at(whole, each) if stays else inf)
    assert best(held).picks == min(
        ((2, k, 3) for k in range(4)), key=lambda each: cost_at(whole, each)
    )
    assert improved(held, picks) == best(held).picks
