"""Corrections one by one and all together, on counts worked out beat by beat."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.timing import corrections
from sequencer.timing.corrections import LONGEST_BAR, LONGEST_SHIFT, Corrections, corrected
from sequencer.timing.position import Clock, Position, SectionEdge
from tests.songs import even_song, silent_song


@pytest.fixture
def song():
    """32 beats at 120 from 0 s in bars of four, 16 s in all."""
    return even_song(32, sections={0.0: "A", 4.0: "B", 8.0: "A", 12.0: "C"})


def firsts(song):
    """Indices of the beats that begin a bar."""
    return [song.beats.index(down) for down in song.downbeats]


def late(song, first):
    return replace(song, downbeats=song.beats[first::4], bar_confidence=())


@pytest.mark.parametrize(
    "said",
    [
        {"metre": 3}, {"one": Clock(0.0)}, {"tempo": "half"}, {"shift": 0.1},
        {"sections": ((Position(1), "x"),)}, {"sections": ((SectionEdge("A"), "x"),)},
        {"sections": ((Clock(1.0), "x"), (Position(2), "y"))},
    ],
)  # fmt: skip
def test_each_correction_of_a_count_needs_one(said, song):
    """No beat and one are none; two are a count, to which each applies."""
    for few in (silent_song(), replace(song, beats=song.beats[:1], downbeats=())):
        with pytest.raises(ValueError, match="cannot be corrected"):
            corrected(few, Corrections(**said))
    three = replace(song, beats=song.beats[:3], downbeats=song.beats[:1])
    first = 0.1 if "shift" in said else 0.0
    assert corrected(three, Corrections(**said)).downbeats == (first,)
    two = replace(song, beats=song.beats[:2], downbeats=song.beats[:1])
    assert corrected(two, Corrections(one=Clock(0.5))).downbeats == song.beats[1:2]


def test_limits_are_five_seconds_and_sixteen_beats():
    assert (LONGEST_SHIFT, LONGEST_BAR) == (5.0, 16)


@pytest.mark.parametrize(
    ("first", "one", "bars"),
    [
        (4, 5, range(1, 32, 4)),
        (4, 8, range(0, 32, 4)),
        (9, 10, range(2, 32, 4)),
        (9, 8, range(0, 32, 4)),
        (12, 15, range(3, 32, 4)),
        (0, 30, range(2, 32, 4)),
    ],
)
def test_bars_that_begin_late_are_counted_back_to_the_start(song, first, one, bars):
    moved = corrected(late(song, first), Corrections(one=Clock(song.beats[one])))
    assert firsts(moved) == list(bars)


def test_one_may_lie_at_the_very_start_and_end_of_the_track(song):
    assert firsts(corrected(song, Corrections(one=Clock(0.0)))) == list(range(0, 32, 4))
    assert firsts(corrected(song, Corrections(one=Clock(16.0)))) == list(range(3, 32, 4))
    for seconds in (-0.001, 16.001):
        with pytest.raises(ValueError, match="outside the track"):
            corrected(song, Corrections(one=Clock(seconds)))


def test_one_may_be_off_by_the_longest_gap(song):
    """Beats at 2, 3, 5 and 6 s: up to two seconds off."""
    wide = replace(song, beats=(2.0, 3.0, 5.0, 6.0), downbeats=(2.0,))
    assert firsts(corrected(wide, Corrections(one=Clock(0.0)))) == [0]
    assert firsts(corrected(wide, Corrections(one=Clock(8.0)))) == [3]
    with pytest.raises(ValueError, match="outside the beats"):
        corrected(wide, Corrections(one=Clock(8.01)))


def test_the_nearest_bar_decides_how_far_all_move(song):
    """Bars at 0, 4, 8 and from 13 on: one at 15 moves them by two, at 11 by two back."""
    odd = replace(song, downbeats=tuple(song.beats[k] for k in (0, 4, 8, 13, 17, 21, 25, 29)))
    assert firsts(corrected(odd, Corrections(one=Clock(song.beats[14])))) == [
        1, 5, 9, 14, 18, 22, 26, 30,
    ]  # fmt: skip
    assert firsts(corrected(odd, Corrections(one=Clock(song.beats[11])))) == [
        2, 6, 11, 15, 19, 23, 27, 31,
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("first", "level", "beats", "bars"),
    [
        (9, "half", range(1, 32, 2), [0, 4, 8, 12]),
        (8, "half", range(0, 32, 2), [0, 4, 8, 12]),
        (10, "half", range(0, 32, 2), [1, 5, 9, 13]),
        (9, "double", None, range(2, 63, 4)),
        (1, "double", None, range(2, 63, 4)),
    ],
)
def test_beats_before_the_first_bar_have_bars_of_their_own(song, first, level, beats, bars):
    """Counted back from the first bar; half keeps every second beat, whose first may not be the song's."""
    changed = corrected(late(song, first), Corrections(tempo=level))
    if beats is not None:
        assert changed.beats == tuple(song.beats[k] for k in beats)
    assert firsts(changed) == list(bars)


def test_half_and_double_follow_a_metre_that_changes():
    """Ten bars of four and ten of three: at half, eights of five fours and seven and a half threes."""
    song = even_song(lengths=[4] * 10 + [3] * 10)
    half = corrected(song, Corrections(tempo="half"))
    assert half.beats == song.beats[::2]
    assert firsts(half) == [*range(0, 20, 4), *range(20, 35, 3)]
    double = corrected(song, Corrections(tempo="double"))
    assert firsts(double) == [*range(0, 80, 4), *range(80, 139, 3)]
    assert_allclose(double.beats, np.arange(139) * 0.25)


def test_a_bar_keeps_its_confidence_to_a_millionth_of_a_second(song):
    sure = replace(song, bar_confidence=tuple(np.arange(8) / 8))
    for early, expected in ((0.5e-6, 0.25), (2e-6, 0.125)):
        beats = np.array(song.beats)
        beats[8] -= early
        found = corrections._barred(sure, beats, [0, 8], 4)
        assert found.bar_confidence == (0.0, expected)
        assert found.downbeats == (0.0, 4.0 - early)
    early = corrections._barred(
        replace(sure, downbeats=song.beats[1::4]), np.array(song.beats), [0], 4
    )
    assert early.bar_confidence == (0.0,)


def test_a_count_without_bars_is_barred_from_its_first_beat(song):
    assert firsts(corrected(late(song, 99), Corrections(metre=3))) == list(range(0, 32, 3))


def test_sections_by_name_take_the_first_of_a_label(song):
    said = (
        (SectionEdge("A"), "w"),
        (SectionEdge("B", "end"), "x"),
        (SectionEdge("C", "start"), "y"),
    )
    found = corrected(song, Corrections(sections=said)).sections
    assert [(one.label, one.start, one.end) for one in found] == [
        ("w", 0.0, 8.0), ("x", 8.0, 12.0), ("y", 12.0, 16.0),
    ]  # fmt: skip
    two = corrected(song, Corrections(sections=((SectionEdge("A 2"), "x"), (Clock(1.0), "w"))))
    assert [one.start for one in two.sections] == [0.0, 8.0]


def test_sections_five_hundredths_apart_are_two(song):
    near = corrected(song, Corrections(sections=((Clock(0.0), "x"), (Clock(0.05), "y"))))
    assert [one.end for one in near.sections] == [0.05, 16.0]
    with pytest.raises(ValueError, match=r"at -1\.0 s, outside the track"):
        corrected(song, Corrections(sections=((Clock(-1.001), "x"),)))


def test_the_clock_needs_no_bars_and_an_edge_no_beats(song):
    bare = late(song, 99)
    assert corrections._sections(bare, ((Clock(1.0), "x"),))[0].end == 16.0
    silent = silent_song()
    assert corrections._sections(silent, ((SectionEdge("A"), "x"),))[0].end == 18.0
    with pytest.raises(ValueError, match="needs a count"):
        corrections._sections(silent, ((Position(1), "x"),))
    two = replace(song, beats=song.beats[:2], downbeats=song.beats[:1])
    starts = [
        one.start for one in corrections._sections(two, ((Position(1), "x"), (Position(2), "y")))
    ]
    assert starts == [0.0, 2.0]


def test_all_corrections_apply_in_their_order(song):
    """Taps each half second from 1 s; at half every second; 0.25 s later; in threes; one at the third."""
    taps = tuple(1.0 + 0.5 * k for k in range(24))
    said = Corrections(
        beats=taps, tempo="half", shift=0.25, metre=3, one=Position(1, Fraction(3)),
        sections=((Position(1), "x"), (Position(3), "y")),
    )  # fmt: skip
    found = corrected(song, said)
    assert_allclose(found.beats, 1.25 + np.arange(12))
    assert_allclose(found.downbeats, [3.25, 6.25, 9.25, 12.25])
    assert (found.metre, found.tempo) == (3, 60.0)
    assert [(one.start, one.end) for one in found.sections] == [(0.0, 9.25), (9.25, 16.0)]
