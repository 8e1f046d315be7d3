"""Places over which nothing can be danced: where a count jumps, and what is left open there."""

from itertools import product

import numpy as np
import pytest

from sequencer.motion.trajectories.assembly import LEAD_IN
from sequencer.planning.drafting.gaps.skipped import (
    Jump,
    Skipped,
    around_jump,
    in_slot,
    jumps_of,
    off_tempo,
    skipped_for,
    skipped_in_words,
)
from sequencer.planning.drafting.gaps.slots import Slot
from sequencer.timing.tempo import TempoMap

BEAT = 0.5  # [s]


def count(lengths, metre=4):
    times = np.concatenate([[0.0], np.cumsum(lengths)])
    return TempoMap(times, bars=tuple(range(0, len(times), metre)), metre=metre)


def played(rng, beats=64):
    """As people play: each beat up to 8 % off, and swaying by a fifth over the phrase."""
    sway = 1 + 0.1 * np.sin(2 * np.pi * np.arange(beats) / 16)
    return BEAT * sway * rng.uniform(0.92, 1.08, beats)


@pytest.mark.parametrize("seed", range(20))
def test_one_beat_that_was_not_heard_or_one_heard_twice_is_a_jump_and_nothing_else(seed):
    rng = np.random.default_rng(seed)
    lengths = played(rng)
    assert jumps_of(count(lengths)) == ()
    at = int(rng.integers(0, 62))
    missed = np.concatenate([lengths[:at], [lengths[at] + lengths[at + 1]], lengths[at + 2 :]])
    (jump,) = jumps_of(count(missed))
    assert (jump.start, jump.end) == (at, at + 1)
    assert jump.lasts == pytest.approx(missed[at])
    assert jump.lasts / jump.usual == pytest.approx(2.0, rel=0.2)
    half = 0.5 * lengths[at]
    (jump,) = jumps_of(count(np.concatenate([lengths[:at], [half, half], lengths[at + 1 :]])))
    assert (jump.start, jump.end) == (at, at + 2)


@pytest.mark.parametrize("factor", [0.3, 0.5, 0.7, 1.4, 2.0, 3.0])
def test_where_the_tempo_itself_changes_nothing_jumps(factor):
    lengths = np.full(64, BEAT)
    lengths[30:] *= factor
    assert jumps_of(count(lengths)) == ()


def test_too_short_a_count_has_nothing_to_jump_against():
    assert jumps_of(count([0.5, 0.5, 2.0, 0.5, 0.5])) == ()
    assert len(jumps_of(count([2.0, 0.5, 0.5, 0.5]))) == 1
    assert len(jumps_of(count([0.5, 0.5, 0.5, 2.0]))) == 1


def test_a_beat_half_as_long_again_jumps_and_one_a_little_shorter_does_not():
    for length, jumps in ((0.76, 1), (0.74, 0), (0.33, 1), (0.34, 0)):
        lengths = np.full(32, BEAT)
        lengths[12] = length
        assert len(jumps_of(count(lengths))) == jumps


@pytest.mark.parametrize(("at", "metre"), list(product(range(8, 16), (2, 3, 4))))
def test_what_is_open_is_the_least_in_which_props_rest_over_the_jump_until_a_bar_begins(at, metre):
    """Against all spans between whole beats: a way to rest, a beat of rest, the jump, a beat of rest, and a way out of it."""
    lengths = np.full(64, BEAT)
    lengths[at] = 1.0
    tempo = count(lengths, metre)
    (jump,) = jumps_of(tempo)
    fits = [
        (low, high)
        for low in range(40)
        for high in range(low + 1, 40)
        if low + LEAD_IN + 1 <= jump.start and high - LEAD_IN - 1 >= jump.end and high % metre == 0
    ]
    least = min(fits, key=lambda each: each[1] - each[0])
    assert around_jump(jump, tempo) == Skipped(*map(float, least), jump)


def slot(start, end):
    return Slot(start=start, end=end, section="A", label="A", material=0)


def test_of_stretches_danced_alike_only_what_jumps_is_open():
    lengths = np.full(64, BEAT)
    lengths[40] = 1.0
    lengths[0:16] *= 1.3  # farther from the usual tempo, yet nothing jumps
    tempo = count(lengths)
    jumps = jumps_of(tempo)
    some = [slot(0, 16), slot(32, 48)]
    assert skipped_for(some, tempo) == [around_jump(jumps[0], tempo)]
    assert skipped_for(some, tempo, jumps) == skipped_for(some, tempo)
    assert skipped_for(some[:1], tempo, jumps) == [Skipped(-3.0, 20.0)]


def test_without_a_jump_the_stretch_farthest_from_the_tempo_of_the_song_is_open():
    lengths = np.full(64, BEAT)
    lengths[20:36] /= 1.9
    lengths[48:64] *= 1.6
    tempo = count(lengths)
    some = [slot(0, 16), slot(20, 36), slot(48, 63)]
    assert [off_tempo(each, tempo) for each in some] == pytest.approx([1.0, 1.9, 1.6])
    assert skipped_for(some, tempo) == [Skipped(17.0, 40.0)]  # with the ways to rest and out of it
    assert skipped_for([some[0], some[2]], tempo) == [Skipped(45.0, 66.0)]  # the song ends
    assert skipped_for([some[1], slot(21, 35)], tempo) == [
        Skipped(17.0, 40.0),
        Skipped(18.0, 40.0),
    ]


def test_at_the_tempo_of_the_song_there_is_time_for_the_ways_to_rest():
    lengths = np.full(64, BEAT)
    lengths[16:32] *= 1.1
    assert skipped_for([slot(16, 32)], count(lengths)) == [Skipped(16.0, 32.0)]


def test_at_the_tempo_of_the_song_one_of_those_danced_alike_is_open_first_and_all_if_that_is_not_enough():
    lengths = np.full(96, BEAT)
    lengths[32:48] *= 1.04
    some = [slot(0, 16), slot(32, 48), slot(64, 80)]
    spans = [Skipped(float(each.start), float(each.end)) for each in some]
    assert skipped_for(some, count(lengths)) == [spans[1]]
    assert skipped_for(some, count(np.full(96, BEAT))) == spans[:1]
    assert skipped_for(some, count(lengths), one_helps=False) == spans
    assert skipped_for([], count(lengths)) == []
    lengths[32:48] *= 1.2  # the tempo is to blame: that one, whichever is asked for
    for one_helps in (True, False):
        assert skipped_for(some, count(lengths), one_helps=one_helps) == [Skipped(29.0, 52.0)]


def test_from_fifteen_per_cent_off_the_tempo_on_the_ways_to_rest_are_open_too():
    for off, span in ((1.14, (16.0, 32.0)), (1.16, (13.0, 36.0))):
        for factor in (off, 1 / off):
            lengths = np.full(64, BEAT)
            lengths[16:32] *= factor
            assert skipped_for([slot(16, 32)], count(lengths)) == [Skipped(*span)]


def test_a_jump_is_of_the_stretches_that_it_touches_for_longer_than_a_moment():
    """Not of one that begins as it ends, nor of one that ends as it begins."""
    jump = Jump(16.0, 17.0, 1.0, 0.5)
    for start, end, inside in (
        (17, 32, False), (0, 16, False), (16, 32, True), (0, 17, True), (0, 32, True),
    ):  # fmt: skip
        assert in_slot(jump, slot(start, end)) == inside
    near = jump._replace(start=16.0 - 1e-8, end=17.0 + 1e-8)  # as rounding leaves it
    assert not in_slot(near, slot(17, 32))
    assert not in_slot(near, slot(0, 16))


def clock(beat):
    return f"c{beat:g}"


def test_words_name_all_that_is_open_and_why():
    lengths = np.full(64, BEAT)
    lengths[16:24] /= 1.2
    tempo, jump = count(lengths), Jump(40.0, 41.0, 1.0, 0.5)
    slots = [slot(0, 16), slot(24, 38), slot(48, 64)]
    some = [Skipped(38.0, 44.0, jump), Skipped(16.0, 24.0)]
    first, second = skipped_in_words(some, slots, tempo, clock)
    assert first.startswith("c16 to c24 (5.1 to 7.1): nothing was found that can be danced there,")
    assert "look whether the count is right there, or add patterns" in first
    assert second.startswith("c38 to c48 (10.3 to 13.1): the count jumps at 11.1 ")
    assert "(a beat of 1.00 s among others of 0.50 s)" in second
    alone = skipped_in_words(some[:1], [slot(0, 8)], tempo, clock)
    assert alone[0].startswith("c38 to c44 ")  # what was left open for another reason is not told
    near = skipped_in_words(some[:1], [slot(0, 34), slot(48, 64)], tempo, clock)
    assert near[0].startswith("c34 to c48 ")  # four beats are too few to be danced


def test_where_the_tempo_is_that_of_the_song_nothing_is_said_of_the_count():
    for off, look in ((1.0, False), (1.14, False), (1.16, True)):
        lengths = np.full(64, BEAT)
        lengths[16:24] *= off
        (said,) = skipped_in_words([Skipped(16.0, 24.0)], [], count(lengths), clock)
        assert ("the count" in said) == look
        assert said.endswith("add patterns under `repertoire`, `known`")


@pytest.mark.parametrize(
    ("at", "said"),
    [(0, "c0 to c4 (1.1 to 2.1): "), (1, "c0 to c8 (1.1 to 3.1): "), (62, "c59 to c64 (15.4 to 17.1): ")],
)  # fmt: skip
def test_at_an_end_of_the_song_words_name_no_moment_outside_of_it(at, said):
    lengths = np.full(64, BEAT)
    lengths[at] = 1.0
    tempo = count(lengths)
    (jump,) = jumps_of(tempo)
    some = [around_jump(jump, tempo)]
    (told,) = skipped_in_words(some, [slot(16, 48)], tempo, clock)
    assert told.startswith(said)
