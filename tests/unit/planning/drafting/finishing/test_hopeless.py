"""Where nothing can be danced, as the search and the checks find it."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.findings import Finding
from sequencer.planning.drafting.finishing.hopeless import Hopeless
from sequencer.planning.drafting.gaps.skipped import Skipped, around_jump, jumps_of
from sequencer.timing.tempo import TempoMap
from tests.unit.planning.drafting.costing.test_setting import setting, slot

SLOTS = [slot(0), slot(1, label="B"), slot(2, label="C")]


def count(*jumps):
    lengths = np.ones(60)  # a beat is a second
    lengths[list(jumps)] = 2.0
    return TempoMap(np.concatenate([[0.0], np.cumsum(lengths)]), bars=tuple(range(0, 60, 4)))


def finding(tempo, beat, code="strained-as-flown"):
    at = float(tempo.seconds_from_beats(beat))
    return Finding(
        code=code, severity="warn", who=("Ann",), message="too hard", start=at, end=at, position="1.1"
    )  # fmt: skip


def test_a_jump_is_danced_over_until_three_routines_were_at_fault_there():
    tempo = count(20, 40)
    one, show = setting(SLOTS), SimpleNamespace(tempo=tempo)
    first, hopeless = jumps_of(tempo)[0], Hopeless(tempo)
    for _ in range(2):
        # twice in one routine counts once; elsewhere, or of another kind, not at all
        assert hopeless.in_routine(one, show, [finding(tempo, 18), finding(tempo, 25)]) == []
        assert hopeless.in_routine(one, show, [finding(tempo, 4)]) == []
        assert hopeless.in_routine(one, show, [finding(tempo, 18, "too-close")]) == []
    found = hopeless.in_routine(one, show, [finding(tempo, 18)])
    assert found == [around_jump(first, tempo)]


@pytest.mark.parametrize("times", [0, 1, 2])
def test_with_a_jump_another_is_left_open_at_which_two_routines_were_at_fault_but_not_one(times):
    tempo = count(20, 40)
    one, show = setting(SLOTS), SimpleNamespace(tempo=tempo)
    both, hopeless = jumps_of(tempo), Hopeless(tempo)
    for k in range(3):
        faults = [finding(tempo, 18), *([finding(tempo, 45)] if k < times else [])]
        found = hopeless.in_routine(one, show, faults)
    assert found == [around_jump(jump, tempo) for jump in both[: 1 + (times == 2)]]


def test_with_a_steady_count_nothing_is_left_open_for_faults_of_flight():
    tempo = count()
    one, show, hopeless = setting(SLOTS), SimpleNamespace(tempo=tempo), Hopeless(tempo)
    for _ in range(12):
        assert hopeless.in_routine(one, show, [finding(tempo, 18)]) == []


def test_where_each_move_strains_a_hand_the_stretch_is_left_open_at_the_first_fault():
    tempo = count()
    one, show, hopeless = setting(SLOTS), SimpleNamespace(tempo=tempo), Hopeless(tempo)
    one.strained_moves |= {(1, k) for k in range(one.count - 1)}
    assert hopeless.in_routine(one, show, [finding(tempo, 18)]) == []  # one is left
    one.forbidden.add((1, one.count - 1))
    assert hopeless.in_routine(one, show, [finding(tempo, 18)]) == [Skipped(16.0, 32.0)]
    assert hopeless.in_search(one) == [Skipped(16.0, 32.0)]


def test_of_stretches_danced_alike_one_is_left_open_and_the_others_only_if_that_does_not_help():
    tempo = count()
    some = [slot(0), slot(1, material=0), slot(2, material=0), slot(3, material=1, label="B")]
    hopeless = Hopeless(tempo)
    one = setting(some)
    one.strained_moves |= {(0, k) for k in range(one.count)}
    assert hopeless.in_search(one) == [Skipped(0.0, 16.0)]
    again = setting([replace(slot(k), material=k // 3) for k in (1, 2, 3, 4)])
    again.strained_moves |= {(1, k) for k in range(one.count)}  # another material: one of its own
    assert hopeless.in_search(again) == [Skipped(48.0, 64.0)]
    again.strained_moves |= {(0, k) for k in range(one.count)}
    assert hopeless.in_search(again)[:2] == [Skipped(16.0, 32.0), Skipped(32.0, 48.0)]


@pytest.mark.parametrize(("code", "open_there"), [("self-hit", True), ("too-close", False)])
def test_what_is_forbidden_because_of_places_or_fire_leaves_nothing_open(code, open_there):
    tempo = count(40)
    one, hopeless = setting(SLOTS), Hopeless(tempo)
    for k in range(one.count):
        one.forbid(2, k, code)
    open_at = [around_jump(jump, tempo) for jump in jumps_of(tempo)]
    assert hopeless.in_search(one) == (open_at if open_there else [])


def fast(low, high):
    """Beats of a second, some of them twice as quick."""
    lengths = np.ones(60)
    lengths[low:high] = 0.5
    return TempoMap(np.concatenate([[0.0], np.cumsum(lengths)]), bars=tuple(range(0, 60, 4)))


@pytest.mark.parametrize(
    ("quick", "beats", "besides", "open_there"),
    [
        ((16, 32), [20], (), [Skipped(13.0, 36.0)]),
        ((16, 32), [10], (), [Skipped(13.0, 36.0)]),  # at the way into it
        ((16, 32), [10, 20, 40], (), [Skipped(13.0, 36.0)]),
        ((16, 32), [40], (), []),  # what is beside it is at the tempo of the song
        ((16, 32), [20], {1}, []),  # a rest is beside it anyway
        ((60, 60), [20], (), []),
    ],
)
def test_after_many_rounds_the_stretch_that_is_far_off_the_tempo_is_left_open(
    quick, beats, besides, open_there
):
    tempo = fast(*quick)
    one, show, hopeless = setting(SLOTS), SimpleNamespace(tempo=tempo), Hopeless(tempo)
    faults = [finding(tempo, beat) for beat in beats]
    assert hopeless.at_last(one, show, faults, besides) == open_there


def test_after_many_rounds_something_is_left_open_four_times_and_looking_in_vain_is_none():
    tempo = fast(16, 32)
    one, show, hopeless = setting(SLOTS), SimpleNamespace(tempo=tempo), Hopeless(tempo)
    for _ in range(5):
        assert not hopeless.at_last(one, show, [finding(tempo, 40)], ())
    for _ in range(4):
        assert hopeless.at_last(one, show, [finding(tempo, 20)], ())
    assert not hopeless.at_last(one, show, [finding(tempo, 20)], ())


def test_of_stretches_apart_each_has_one_left_open_and_of_those_beside_each_other_the_farthest_off():
    lengths = np.ones(140)
    lengths[16:32] = 0.5
    lengths[96:112] = 0.7
    lengths[112:128] = 0.8
    tempo = TempoMap(np.concatenate([[0.0], np.cumsum(lengths)]), bars=tuple(range(0, 140, 4)))
    one, show = setting([slot(k) for k in range(8)]), SimpleNamespace(tempo=tempo)
    faults = [finding(tempo, beat) for beat in (20, 100, 116)]
    assert Hopeless(tempo).at_last(one, show, faults, ()) == [
        Skipped(13.0, 36.0),
        Skipped(93.0, 116.0),
    ]


@pytest.mark.parametrize(
    ("quick", "open_there"), [((16, 32), [Skipped(13.0, 36.0)]), ((60, 60), [])]
)
def test_where_no_link_is_left_into_a_stretch_far_off_the_tempo_it_is_left_open(quick, open_there):
    tempo = fast(*quick)
    one, hopeless = setting(SLOTS), Hopeless(tempo)
    assert hopeless.in_search(one) == []
    for first in range(one.count):
        for second in range(one.count):
            for link in (0, 1, 2, 3, 4):
                one.bad[first, float(16 - link), link, second, *one.ways(1, 2)] = "too quick"
    one.ways = lambda a, _b: (0, 0, a)  # links out of one slot are none of another's
    one.bad = {(*key[:4], 0, 0, 1): why for key, why in one.bad.items()}
    one._look_again()
    assert one.without_links() == [(1, 2)]
    assert hopeless.in_search(one) == open_there
