"""Places over which nothing can be danced: where a count jumps, and what is left open there."""

from itertools import product

import numpy as np
import pytest

from sequencer.motion.trajectories.assembly import LEAD_IN
from sequencer.planning.drafting.gaps.skipped import (
    Jump,
    Skipped,
    around_jump,
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


def test_words_name_all_that_is_open_and_why():
    jump = Jump(40.0, 41.0, 1.0, 0.5)
    slots = [slot(0, 16), slot(24, 38), slot(48, 64)]
    some = [Skipped(38.0, 44.0, jump), Skipped(16.0, 24.0)]
    words, whole = (lambda b: f"b{b:g}", lambda b: f"c{b:g}"), (0.0, 64.0)
    first, second = skipped_in_words(some, slots, *words, whole)
    assert first.startswith("c16 to c24 (b16 to b24): nothing was found that can be danced there,")
    assert second.startswith("c38 to c48 (b38 to b48): the count jumps at b40 ")
    assert "(a beat of 1.00 s among others of 0.50 s)" in second
    alone = skipped_in_words(some[:1], [slot(0, 8)], str, str, whole)
    assert alone[0].startswith("38.0 to 44.0 ")  # what was left open for another reason is not told


@pytest.mark.parametrize(
    ("at", "said"),
    [(0, "c0 to c4 (b0 to b4): "), (1, "c0 to c8 (b0 to b8): "), (62, "c59 to c64 (b59 to b64): ")],
)
def test_at_an_end_of_the_song_words_name_no_moment_outside_of_it(at, said):
    lengths = np.full(64, BEAT)
    lengths[at] = 1.0
    tempo = count(lengths)
    (jump,) = jumps_of(tempo)
    some, rest = [around_jump(jump, tempo)], [slot(16, 48)]
    words = [lambda b: f"b{b:g}", lambda b: f"c{b:g}"]
    (told,) = skipped_in_words(some, rest, *words, (0.0, 64.0))
    assert told.startswith(said)
