"""Corrections at their limits: bars, confidence, sections and energy, each counted by hand."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.timing.corrections import Corrections, _mean_energy, corrected
from sequencer.timing.position import Clock, Position, SectionEdge
from tests.songs import even_song, silent_song


@pytest.fixture
def song():
    """16 beats at 120 from 1 s in bars of four, each bar with a confidence of its own; 10 s in all."""
    return even_song(
        16,
        start=1.0,
        duration=10.0,
        sections={0.0: "A", 5.0: "B"},
        energy=tuple(np.arange(10.0)),
        bar_confidence=(0.1, 0.2, 0.3, 0.4),
    )


@pytest.mark.parametrize("metre", [1, 16])
def test_bars_of_one_and_of_sixteen_beats_are_bars(song, metre):
    assert corrected(song, Corrections(metre=metre)).downbeats == song.beats[::metre]
    with pytest.raises(ValueError, match="1 to 16"):
        Corrections(metre=17)


@pytest.mark.parametrize("shift", [5.0, -5.0])
def test_five_seconds_are_the_largest_shift(song, shift):
    moved = corrected(replace(song, duration=20.0), Corrections(shift=shift))
    expected = [beat + shift for beat in song.beats if beat + shift >= 0]
    assert_allclose(moved.beats, expected)
    with pytest.raises(ValueError, match="within ±5 s"):
        Corrections(shift=1.001 * shift)


def test_a_shift_keeps_both_ends_of_the_track_and_the_bars_with_their_confidence(song):
    """From −1 s the first beat lies at 0; from +1.5 s the last, of 8.5 s, at the end of the track."""
    early = corrected(song, Corrections(shift=-1.0))
    assert (early.beats[0], len(early.beats)) == (0.0, 16)
    late = corrected(song, Corrections(shift=1.5))
    assert (late.beats[-1], len(late.beats)) == (10.0, 16)
    cut = corrected(song, Corrections(shift=-1.25))
    assert cut.beats[0] == 0.25
    assert cut.downbeats == (1.75, 3.75, 5.75)
    assert cut.bar_confidence == (0.2, 0.3, 0.4)
    bare = corrected(replace(song, bar_confidence=()), Corrections(shift=-1.25))
    assert bare.bar_confidence == ()


def test_a_shift_that_leaves_no_bar_is_refused(song):
    with pytest.raises(ValueError, match="no bar is left"):
        corrected(replace(song, downbeats=song.beats[:1]), Corrections(shift=-2.0))
    with pytest.raises(ValueError, match="no bar is left"):
        corrected(replace(song, duration=1.4), Corrections(shift=0.1))
    two = corrected(replace(song, duration=1.7), Corrections(shift=0.1))
    assert two.beats == pytest.approx([1.1, 1.6])


def test_confidence_follows_the_time(song):
    """A new bar is as sure as the old bar in which it begins; before the first, as sure as that."""
    threes = corrected(song, Corrections(metre=3))
    assert threes.downbeats == song.beats[::3]
    assert threes.bar_confidence == (0.1, 0.1, 0.2, 0.3, 0.4, 0.4)
    late = replace(song, downbeats=song.beats[3::4], bar_confidence=(0.5, 0.6, 0.7, 0.8))
    twos = corrected(late, Corrections(metre=2))
    assert twos.downbeats == song.beats[1::2]
    assert twos.bar_confidence == (0.5, 0.5, 0.5, 0.6, 0.6, 0.7, 0.7, 0.8)


def test_half_needs_two_beats_left(song):
    short = replace(song, beats=song.beats[:2], downbeats=song.beats[:1], bar_confidence=(0.1,))
    with pytest.raises(ValueError, match="too few beats"):
        corrected(short, Corrections(tempo="half"))
    three = replace(song, beats=song.beats[:3], downbeats=song.beats[:1], bar_confidence=(0.1,))
    assert corrected(three, Corrections(tempo="half")).beats == (1.0, 2.0)


@pytest.mark.parametrize("at", range(16))
def test_any_beat_may_be_one_and_the_bars_run_from_end_to_end(song, at):
    """Congruence modulo four decides, wherever in the song it is said."""
    moved = corrected(song, Corrections(one=Clock(song.beats[at])))
    assert moved.downbeats == song.beats[at % 4 :: 4]
    assert corrected(song, Corrections(one=Position(at // 4 + 1, Fraction(at % 4 + 1)))) == moved


def test_one_lies_within_the_track_and_within_a_beat_of_the_beats(song):
    """Half a second off the last beat is a beat's length: still it; more is not."""
    assert corrected(song, Corrections(one=Clock(9.0))).downbeats == song.beats[3::4]
    assert corrected(song, Corrections(one=Clock(0.5))).downbeats == song.beats[::4]
    for seconds in (9.01, 0.49, 10.0, 0.0):
        with pytest.raises(ValueError, match="outside the beats"):
            corrected(song, Corrections(one=Clock(seconds)))
    with pytest.raises(ValueError, match="outside the track"):
        corrected(song, Corrections(one=Clock(10.001)))


def test_one_of_a_count_without_bars_begins_them(song):
    bare = replace(song, downbeats=(), bar_confidence=())
    assert corrected(bare, Corrections(one=Clock(2.5))).downbeats == song.beats[3::4]


def test_the_last_tap_may_be_a_second_after_the_track(song):
    assert corrected(song, Corrections(beats=(1.0, 11.0))).beats == (1.0, 11.0)
    with pytest.raises(ValueError, match=r"at 11\.1 s.*ends at 10\.0 s"):
        corrected(song, Corrections(beats=(1.0, 11.1)))


def test_taps_from_zero_on_rise(song):
    assert Corrections(beats=(0.0, 1.0)).beats == (0.0, 1.0)
    for beats in ((1.0,), (1.0, 1.0), (-0.1, 1.0), (0.0, float("inf"))):
        with pytest.raises(ValueError, match="increasing times"):
            Corrections(beats=beats)
    with pytest.raises(ValueError, match="downbeats must be increasing"):
        Corrections(beats=(0.0, 1.0, 2.0), downbeats=(2.0, 0.0))


def test_taps_are_certain_and_their_bars_are_counted(song):
    taps = tuple(0.25 * k for k in range(12))
    tapped = corrected(replace(song, unsteady=((1.0, 2.0),)), Corrections(beats=taps))
    assert tapped.downbeats == taps[::4]
    assert tapped.bar_confidence == (1.0, 1.0, 1.0)
    assert tapped.confidence["beats"] == tapped.confidence["downbeats"] == 1.0
    assert tapped.unsteady == ()
    once = corrected(song, Corrections(beats=taps, downbeats=taps[2:3]))
    assert (once.metre, once.downbeats) == (4, taps[2:3])
    mostly = corrected(song, Corrections(beats=taps, downbeats=(taps[0], *taps[2:12:3])))
    assert mostly.metre == 3
    said = corrected(song, Corrections(beats=taps, downbeats=taps[::3], metre=3))
    assert (said.metre, said.downbeats) == (3, taps[::3])


def test_a_section_may_begin_a_second_early_and_not_at_the_end(song):
    early = corrected(song, Corrections(sections=((Clock(-1.0), "a"), (Clock(9.9), "b"))))
    assert [(s.start, s.end) for s in early.sections] == [(0.0, 9.9), (9.9, 10.0)]
    with pytest.raises(ValueError, match="outside the track"):
        corrected(song, Corrections(sections=((Clock(10.0), "a"),)))
    near = ((Clock(2.0), "a"), (Clock(2.06), "b"))
    assert len(corrected(song, Corrections(sections=near)).sections) == 2
    with pytest.raises(ValueError, match="same place"):
        corrected(song, Corrections(sections=((Clock(2.0), "a"), (Clock(2.04), "b"))))


def test_sections_are_sorted_and_trimmed_and_end_where_the_next_begins(song):
    said = ((SectionEdge("A", edge="end"), " late "), (Clock(2.0), "early"))
    found = corrected(song, Corrections(sections=said)).sections
    assert [(s.label, s.start, s.end) for s in found] == [("early", 0.0, 5.0), ("late", 5.0, 10.0)]
    assert [s.energy for s in found] == [2.0, 7.0]


def test_a_track_without_beats_has_sections_by_the_clock_alone():
    silent = silent_song(sections=even_song(8, sections={0.0: "A"}).sections)
    assert corrected(silent, Corrections(sections=((Clock(0.0), "a"),))).sections[0].label == "a"
    with pytest.raises(ValueError, match="no steady beat"):
        corrected(silent, Corrections(sections=((Position(1), "a"),)))


@pytest.mark.parametrize(
    ("start", "end", "expected"),
    [(0, 10, 4.5), (2, 4, 2.5), (2.5, 3.5, 2.5), (9.95, 10, 9.0), (10, 10, 9.0), (3.2, 3.4, 3.0)],
)
def test_energy_is_the_mean_of_every_second_that_a_span_touches(song, start, end, expected):
    assert _mean_energy(song, start, end) == expected
    assert _mean_energy(replace(song, energy=()), start, end) == 0.0


def test_bars_put_in_move_with_the_bar_nearest_to_the_new_one(song):
    """Bars at beats 0, 4, 6, 10 and 14 (one of two put in): one at beat 11 moves all by one, not by eleven."""
    odd = replace(
        song, downbeats=tuple(song.beats[k] for k in (0, 4, 6, 10, 14)), bar_confidence=()
    )
    moved = corrected(odd, Corrections(one=Clock(song.beats[11])))
    assert moved.downbeats == tuple(song.beats[k] for k in (1, 5, 7, 11, 15))
