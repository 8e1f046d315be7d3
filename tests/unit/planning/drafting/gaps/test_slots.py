from itertools import pairwise

import pytest

from sequencer.planning.drafting.gaps.slots import SHORTEST_STRETCH, occurrences, parts_of, slots_of
from tests.songs import even_song


def cut(song, **more):
    return slots_of(song, song.tempo_map(), **more)


def spans(slots):
    return [(slot.start, slot.end) for slot in slots]


def song_of(starts, beats=64, **more):
    """A song at 120 beats a minute with sections from given beats."""
    return even_song(beats, sections={beat / 2: label for beat, label in starts.items()}, **more)


def test_sections_are_cut_into_pairs_of_eights():
    slots = cut(song_of({0: "A", 32: "B"}, 57))
    assert spans(slots) == [(0, 16), (16, 32), (32, 48), (48, 56)]
    assert [slot.section for slot in slots] == ["A", "A", "B", "B"]


def test_parts_that_return_share_their_material():
    song = song_of({0: "A", 16: "B", 32: "A", 48: "B"}, 65)
    slots = cut(song)
    assert [slot.material for slot in slots] == [0, 1, 0, 1]
    assert [slot.material for slot in cut(song, alike=False)] == [0, 1, 2, 3]
    assert {k: len(own) for k, own in occurrences(slots).items()} == {0: 2, 1: 2}


def test_what_is_taken_is_left_out_and_what_is_short_left_open():
    song = song_of({0: "A"}, 49)
    assert spans(cut(song, taken=[(4, 7), (20.5, 24)])) == [(7, 16), (24, 32), (32, 48)]
    assert spans(cut(song, taken=[(0, 48)])) == []
    assert all(slot.beats >= SHORTEST_STRETCH for slot in cut(song, taken=[(5, 6), (11, 12)]))


def test_one_section_alone_by_name_or_label():
    song = song_of({0: "A", 16: "B", 32: "A"}, 49)
    assert spans(cut(song, only="A 2")) == [(32, 48)]
    assert spans(cut(song, only="A")) == [(0, 16), (32, 48)]
    assert cut(song, only="C") == ()


def test_a_section_too_short_for_a_pattern_makes_the_one_before_longer():
    song = song_of({0: "A", 16: "B", 20: "C"}, 37)
    assert spans(cut(song)) == [(0, 20), (20, 36)]


def test_a_waltz_has_stretches_of_two_or_three_phrases():
    song = song_of({0: "A", 18: "B"}, 43, metre=3)
    assert spans(cut(song)) == [(0, 18), (18, 30), (30, 42)]


def test_two_tunes_that_take_turns_are_danced_in_single_eights():
    """Else two patterns would have to do for the whole song."""
    turns = {16 * k: "AB"[k % 2] for k in range(8)}
    slots = cut(song_of(turns, 129))
    assert {slot.beats for slot in slots} == {8}
    assert [slot.material for slot in slots[:8]] == [0, 1, 2, 3, 0, 1, 2, 3]
    # where parts that return may differ, or the song is short or has more tunes, stretches are as long as ever
    assert {slot.beats for slot in cut(song_of(turns, 129), alike=False)} == {16}
    assert {slot.beats for slot in cut(song_of({16 * k: "AB"[k % 2] for k in range(4)}, 65))} == {
        16
    }
    four = {16 * k: "ABCD"[k % 4] for k in range(8)}
    assert {slot.beats for slot in cut(song_of(four, 129))} == {16}


def test_a_part_of_two_eights_that_returns_at_once_is_danced_in_single_eights():
    """Else one pattern would go on through all of its returns."""
    starts = {0: "A", 32: "B", 48: "B", 64: "C", 96: "B", 112: "D", 144: "E"}
    slots = cut(song_of(starts, 177))
    assert {slot.beats for slot in slots if slot.label == "B"} == {8}
    assert {slot.beats for slot in slots if slot.label != "B"} == {16}
    assert len({slot.material for slot in slots if slot.label == "B"}) == 2
    assert {slot.beats for slot in cut(song_of(starts, 177), alike=False)} == {16}
    longer = {0: "A", 32: "B", 64: "B", 96: "C"}
    assert {slot.beats for slot in cut(song_of(longer, 129))} == {16}


def test_a_slow_song_has_single_eights():
    song = even_song(33, tempo=60.0)
    assert spans(cut(song)) == [(0, 8), (8, 16), (16, 24), (24, 32)]


@pytest.mark.parametrize("beats", [33, 40, 57, 71])
def test_slots_follow_each_other_through_the_song(beats):
    slots = cut(song_of({0: "A", 24: "B"}, beats))
    assert slots[0].start == 0
    assert slots[-1].end == beats - 1
    assert all(a.end == b.start for a, b in pairwise(slots))


def test_parts_are_the_sections_in_whole_beats():
    song = song_of({0: "A", 16: "B"}, 33)
    assert [(p.name, p.start, p.end) for p in parts_of(song, song.tempo_map())] == [
        ("A", 0, 16),
        ("B", 16, 32),
    ]


@pytest.mark.parametrize(("tempo", "beats"), [(91.0, 8), (94.0, 16), (120.0, 16)])
def test_with_what_only_pulls_stretches_are_single_eights_only_where_links_of_one_beat_fly(
    tempo, beats
):
    """From 0.65 s on, about half of them fly; two beats would be a quarter of an eight."""
    turns = {16 * k * 60 / tempo: "AB"[k % 2] for k in range(8)}
    song = even_song(129, tempo=tempo, sections=turns)
    assert {slot.beats for slot in cut(song, pulled=True)} == {beats}
    assert {slot.beats for slot in cut(song)} == {8}
