"""What any-two-too-close becomes without an error in the whole show, against every run danced whole without it."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.checks.distances import runs_again
from sequencer.checks.distances.conflict_groups import Dances, as_danced
from sequencer.checks.distances.drift_runs import Trials, Work, danced, some_runs
from sequencer.checks.distances.drift_words import rehearsed
from sequencer.checks.distances.missed_cues import Slip
from sequencer.checks.distances.rehearse_first import advice, any_share, goes_wrong
from sequencer.checks.distances.removed_errors import (
    AS_IT_IS,
    ConflictPlace,
    Without,
    again_with,
    removed_errors,
    ways_of,
)
from sequencer.motion.performers.drifting import Spread
from sequencer.motion.performers.walks import Move

STILL = Spread(place=0, facing=0, timing=0, tempo=0, tether=0, hand=0)
RUNS = 50
SCENES = (0.0, 4.0, 8.0, 12.0, 16.0, 20.0)


@pytest.fixture(scope="module", autouse=True)
def all_again():
    """All runs of both sorts are danced again, so that no chance is a sample's."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(runs_again, "TRIALS", RUNS)
        yield


def without(work, removal):
    """The same show and seed, with everybody's spread stated anew."""
    own = {each.name: work.spread_of(each.name) for each in work.dancers}
    for who in removal.who:
        own[who] = replace(own[who], **dict.fromkeys(removal.kinds, 0.0))
    return replace(work, own=own)


@pytest.fixture(scope="module")
def line(dance):
    """Three stand in a line through five scenes; Bo, in the middle, is the surest of the place."""
    room = 2 * dance.dancer(sides=()).body.half_breadth + 0.3
    cast = tuple(
        dance.dancer(name, (k * (room + 0.13), 5.0), sides=())
        for k, name in enumerate(("Ada", "Bo", "Cy"))
    )
    work = Work(
        dancers=cast, span=(0.0, 20.0), required=0.3, spread=replace(STILL, place=0.15), seed=0,
        own={"Bo": replace(STILL, place=0.05)}, edges=(SCENES,) * 3,
    )  # fmt: skip
    return work, as_danced(work, Trials(runs=RUNS))


def test_it_is_what_the_same_runs_without_the_error_are(line):
    work, dances = line
    wrong = sum(map(bool, dances.runs))

    assert 10 <= wrong <= 40
    assert 10 <= RUNS - wrong <= 40
    assert len(dances.groups) == 10  # six of them are explained
    told = {each: got.chance for each, got in dances.everywhere.items()}
    assert {each.who for each in told} >= {("Ada", "Bo", "Cy"), ("Ada",), ("Bo",), ("Cy",)}
    for removal, chance in told.items():
        right = any_share(Dances(
            groups=(), runs=tuple(danced(without(work, removal), Trials(runs=RUNS))), half=(), twice=(),
        ))  # fmt: skip
        assert chance == pytest.approx(right), removal
    assert len({round(chance, 6) for chance in told.values()}) > 2


def test_an_error_that_shows_in_every_scene_is_told_once_with_all_that_it_costs(line):
    """No scene has a conflict alone: by scenes, each would be worth nothing."""
    _, dances = line
    told = advice(dances, 0.0, ())

    assert all(len({near.scene for near in run}) == 5 for run in dances.runs if run)
    assert told[0].who == ("Ada", "Bo", "Cy")
    assert (told[0].kind, told[0].more) == ("place", 5)
    assert told[0].fall == pytest.approx(any_share(dances))
    assert len({(each.who, each.kind) for each in told}) == len(told)
    assert rehearsed(told[0], "", "weave") == "hitting the places everywhere, weave above all"


def test_falls_are_the_formula_with_and_without(line):
    """Missed in half of the runs: Ada 1 time in 2 with harm, Cy 1 in 4. By hand, 1 − (1 − p)(1 − 1/4)(1 − 1/8)."""
    _, dances = line
    p = any_share(dances)

    def slip(who, *, harm):
        meets, worst = (("Bo",), 0.1) if harm else ((), np.inf)
        return Slip(who=who, cue=4.0, kind="a beat late", meets=meets, at=4.0, worst=worst)

    slips = [slip("Ada", harm=k < 2) for k in range(4)] + [slip("Cy", harm=k < 1) for k in range(4)]
    told = {(each.who, each.kind): each.fall for each in advice(dances, 0.5, slips)}
    assert told[("Ada",), ""] == pytest.approx((1 - p) * (1 / 4) * (7 / 8))
    assert told[("Cy",), ""] == pytest.approx((1 - p) * (3 / 4) * (1 / 8))
    assert told[("Ada", "Bo", "Cy"), "place"] == pytest.approx(p * (3 / 4) * (7 / 8))
    assert goes_wrong(p, 0.5, slips) == pytest.approx(1 - (1 - p) * (3 / 4) * (7 / 8))


def near_an_edge(dance):
    """Both step towards each other, stay two beats over the edge at 6, and step back; timing wanders by most of a beat."""
    body = dance.dancer(sides=()).body
    apart = 2 * body.half_breadth + 0.3 + 2.0

    def steps(home, away):
        return (
            Move(start=4.0, end=5.0, place=(away, 5.0), facing=0),
            Move(start=6.75, end=7.75, place=(home, 5.0), facing=0),
        )

    cast = tuple(
        dance.dancer(name, (home, 5.0), sides=(), moves=steps(home, away))
        for name, home, away in (("Ada", 0.0, 0.99), ("Bo", apart, apart - 0.99))
    )
    return Work(
        dancers=cast, span=(0.0, 12.0), required=0.3, spread=replace(STILL, place=0.05, timing=0.6), seed=0,
        edges=((0.0, 3.0, 6.0, 12.0),),
    )  # fmt: skip


def test_a_conflict_over_an_edge_is_counted_alike_with_and_without_the_error(dance):
    """Every group's chance without a kind of error is the share of the whole runs without it in that scene."""
    work = near_an_edge(dance)
    dances = as_danced(work, Trials(runs=RUNS))
    assert len(dances.groups) == 2
    for one in dances.groups:
        assert 5 <= one.conflicts <= 40
        for kind, told in one.removed.kinds.items():
            runs = danced(replace(work, spread=work.spread.without(kind)), Trials(runs=RUNS))
            right = sum(any(near.scene == one.scene for near in run) for run in runs) / RUNS
            # a run within the tolerance of 5 mm may be told either way: two of 50
            assert told.chance == pytest.approx(right, abs=0.05), (one.scene, kind)


def test_what_the_window_shows_anyway_is_no_change(line):
    """Runs that have it are given as runs without it: they neither come nor go."""
    work, dances = line
    one = dances.groups[0]
    pair = (one.first, one.second)
    hit = one.in_runs[:6]
    place = ConflictPlace(
        pair=pair, scene=one.scene, edges=SCENES, window=(one.scene_start, one.scene_end)
    )
    kinds, people = ways_of(work, pair)
    again = again_with(
        work, place, hit, tuple({AS_IT_IS: 0, **dict.fromkeys([*kinds.values(), *people.values()])})
    )
    found = removed_errors(work, pair, again, 0.0, hit=(), missed=hit)
    assert again.of(hit, AS_IT_IS).all()
    assert any(again.of(hit, way).any() for way in people.values())  # it stays without one's errors
    assert [each.chance for each in found.people.values()] == [0.0, 0.0]


def test_whose_errors_are_taken_away_changes_nobody_else(line):
    work, _ = line
    place = ConflictPlace(pair=("Ada", "Bo"), scene=0, edges=SCENES, window=(0.0, 4.0))
    again = again_with(work, place, range(RUNS), (AS_IT_IS, Without(second=("place",))))
    steady = replace(work, own={"Bo": STILL})
    for way, of in ((AS_IT_IS, work), (Without(second=("place",)), steady)):
        right = [any(near.pair == 0 for near in run) for run in some_runs(of, range(RUNS))]
        assert again.of(range(RUNS), way).tolist() == right
