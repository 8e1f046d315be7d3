"""Hand corrections win over what was heard."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest

from sequencer.timing.corrections import Corrections, corrected, steady_count
from sequencer.timing.position import Clock, Position, SectionEdge
from sequencer.timing.song import Reading
from tests.songs import even_song, silent_song


@pytest.fixture
def song():
    """32 beats at 120 from 1 s, bars of four, two sections."""
    return even_song(
        32,
        start=1.0,
        duration=18.0,
        sections={0.0: "A", 9.0: "B"},
        track="t.ogg",
        energy=tuple(np.linspace(0, 1, 36)),
        bar_confidence=(0.9,) * 8,
    )


def test_nothing_said_changes_nothing(song):
    assert corrected(song, Corrections()) is song


def test_shift_moves_beats_and_keeps_them_inside(song):
    moved = corrected(song, Corrections(shift=-1.2))

    assert moved.beats[0] == pytest.approx(0.3)
    assert set(moved.downbeats) <= set(moved.beats)
    assert moved.downbeats[0] == pytest.approx(1.8)
    assert len(moved.bar_confidence) == len(moved.downbeats)


def test_half_keeps_every_second_beat_from_a_downbeat(song):
    slow = corrected(song, Corrections(tempo="half"))

    assert slow.beats == song.beats[::2]
    assert slow.tempo == pytest.approx(60)
    assert slow.downbeats == slow.beats[::4]


def test_double_puts_a_beat_between_each_two(song):
    quick = corrected(song, Corrections(tempo="double"))

    assert quick.tempo == pytest.approx(240)
    assert quick.beats[1] == pytest.approx(1.25)
    assert len(quick.beats) == 63
    assert quick.downbeats[1] == pytest.approx(2.0)


@pytest.fixture
def cut(song):
    """Bars of 4 4 2 4 … on the same beats."""
    return replace(song, downbeats=(*song.beats[:12:4], *song.beats[10::4]), bar_confidence=())


def test_the_metre_that_was_heard_keeps_a_bar_put_in(cut):
    assert corrected(cut, Corrections(metre=4)).downbeats == cut.downbeats
    assert corrected(cut, Corrections(metre=2)).downbeats == cut.beats[::2]


def test_double_keeps_a_bar_put_in(cut):
    quick = corrected(cut, Corrections(tempo="double"))

    assert set(cut.downbeats) <= set(quick.downbeats)
    lengths = np.diff([quick.beats.index(down) for down in quick.downbeats])
    assert lengths.tolist() == [4] * len(lengths)


@pytest.mark.parametrize("put_in", [2, 3])
def test_half_counts_anew_after_a_bar_put_in(song, put_in):
    """Whatever its length, the bar after it is counted from its own first beat."""
    after = 8 + put_in
    odd = replace(song, downbeats=(*song.beats[:12:4], *song.beats[after::4]), bar_confidence=())

    slow = corrected(odd, Corrections(tempo="half"))

    assert slow.beats == (*song.beats[:after:2], *song.beats[after::2])
    assert song.beats[after] in slow.downbeats
    assert slow.downbeats[-2:] == (song.beats[after + 8], song.beats[after + 16])


def test_half_and_double_keep_beats_before_the_first_bar(song):
    late = replace(song, downbeats=song.beats[3::4], bar_confidence=())

    assert corrected(late, Corrections(tempo="half")).beats == song.beats[1::2]
    quick = corrected(late, Corrections(tempo="double"))
    assert len(quick.beats) == 63
    assert quick.downbeats == quick.beats[2::4]


def test_metre_and_one(song):
    three = corrected(song, Corrections(metre=3))
    assert three.downbeats == song.beats[::3]

    moved = corrected(song, Corrections(one=Position(1, Fraction(3))))
    assert moved.downbeats[0] == song.beats[2]
    assert moved.tempo_map().first == -2

    by_time = corrected(song, Corrections(one=Clock(2.1)))  # nearest beat is at 2.0: beat 3
    assert by_time.downbeats == moved.downbeats

    both = corrected(song, Corrections(metre=3, one=Clock(1.5)))
    assert both.downbeats[0] == song.beats[1]
    assert both.downbeats[1] == song.beats[4]


def test_one_late_in_the_song_counts_back_to_its_start(song):
    moved = corrected(song, Corrections(one=Clock(song.beats[30])))

    assert moved.downbeats[0] == song.beats[2]
    assert moved.downbeats[-1] == song.beats[30]


def test_tapped_beats_replace_what_was_heard(song):
    taps = tuple(0.5 + 0.6 * i for i in range(20))

    tapped = corrected(song, Corrections(beats=taps, metre=3))

    assert tapped.beats == taps
    assert tapped.downbeats == taps[::3]
    assert tapped.tempo == pytest.approx(100)
    assert tapped.confidence["beats"] == 1.0


def test_given_downbeats_tell_the_metre(song):
    taps = tuple(0.5 + 0.6 * i for i in range(20))

    tapped = corrected(song, Corrections(beats=taps, downbeats=taps[1::3]))

    assert tapped.metre == 3
    assert tapped.downbeats == taps[1::3]


def test_sections_by_every_kind_of_moment(song):
    said = Corrections(
        sections=((Clock(0.0), "intro"), (Position(3), "verse"), (SectionEdge("B"), "refrain"))
    )

    sections = corrected(song, said).sections

    assert [s.label for s in sections] == ["intro", "verse", "refrain"]
    assert [s.start for s in sections] == [0.0, 5.0, 9.0]
    assert sections[-1].end == song.duration
    assert sections[0].energy < sections[2].energy


@pytest.mark.parametrize(
    ("said", "match"),
    [
        ({"metre": 0}, "metre must be 1 to 16"),
        ({"metre": 99}, "metre must be 1 to 16"),
        ({"tempo": "triple"}, "half.*double"),
        ({"shift": 120.0}, "milliseconds"),
        ({"shift": float("nan")}, "shift must be"),
        ({"sections": ((Clock(1.0), " "),)}, "needs a name"),
        ({"beats": (2.0, 1.0)}, "increasing"),
        ({"beats": (1.0, 2.0), "downbeats": (1.5,)}, "one of the beats"),
    ],
)
def test_nonsense_is_refused_when_said(said, match):
    with pytest.raises(ValueError, match=match):
        Corrections(**said)


@pytest.mark.parametrize(
    ("said", "match"),
    [
        (Corrections(one=Clock(99.0)), "outside the track"),
        (Corrections(one=Position(40)), "outside the beats"),
        (Corrections(one=Position(2, Fraction(6))), "has 4 beats"),
        (Corrections(sections=((Clock(40.0), "x"),)), "outside the track"),
        (Corrections(sections=((Clock(4.0), "x"), (Clock(4.01), "y"))), "same place"),
        (Corrections(sections=((SectionEdge("Z"), "x"),)), "no section 'Z'"),
        (Corrections(beats=(1.0, 500.0)), "the track ends"),
    ],
)
def test_what_does_not_fit_the_song_is_refused(song, said, match):
    with pytest.raises(ValueError, match=match):
        corrected(song, said)


def test_a_track_without_beats_can_be_tapped_but_not_recounted(song):
    silent = silent_song(sections=song.sections)

    with pytest.raises(ValueError, match="no steady beat"):
        corrected(silent, Corrections(metre=3))
    assert corrected(silent, Corrections(beats=(1.0, 2.0, 3.0, 4.0))).tempo == pytest.approx(60)


@pytest.mark.parametrize(("level", "step"), [("half", 2), ("double", 0.5)])
def test_another_level_of_a_count_without_bars_begins_at_its_first_beat(song, level, step):
    bare = replace(song, downbeats=(), bar_confidence=())
    changed = corrected(bare, Corrections(tempo=level))
    count = 16 if level == "half" else 63
    assert changed.beats == pytest.approx([1.0 + 0.5 * step * k for k in range(count)])
    assert changed.downbeats == pytest.approx(changed.beats[::4])


@pytest.mark.parametrize(
    ("tempo", "one", "metre"), [(100.0, 3.3, None), (97.31, 0.0, 3), (240.0, 18.0, 4)]
)
def test_a_steady_count_fills_the_track_from_its_one(song, tempo, one, metre):
    steady = steady_count(song, tempo, one, metre)
    counted = corrected(song, replace(steady, metre=metre))
    gap = 60 / tempo

    assert np.diff(counted.beats) == pytest.approx(gap)
    assert counted.beats[0] < gap
    assert song.duration - gap < counted.beats[-1] <= song.duration
    assert min(abs(np.array(counted.downbeats) - one)) < 1e-9
    assert np.diff(counted.downbeats) == pytest.approx((metre or 4) * gap)
    assert counted.tempo == pytest.approx(tempo)


def test_a_steady_count_outside_the_track_is_refused(song):
    with pytest.raises(ValueError, match="outside the track"):
        steady_count(song, 120, 18.5)
    with pytest.raises(ValueError, match="no two beats"):
        steady_count(replace(song, duration=2.0), 20, 1.0)


def test_a_one_put_right_is_the_first_reading_and_the_one_heard_is_among_the_others():
    heard = even_song(
        64,
        readings=(
            Reading(tempo=120.0, metre=4, share=0.6, one=0.0),
            Reading(tempo=120.0, metre=4, share=0.3, one=1.0),
            Reading(tempo=60.0, metre=4, share=0.1),
        ),
    )
    put = corrected(heard, Corrections(one=Clock(1.0)))
    assert [each.share for each in put.readings] == [0.3, 0.6, 0.1]
    assert [put.shift_of(each) for each in put.readings[:2]] == [0, 2]
    assert corrected(heard, Corrections(one=Clock(0.0))).readings == heard.readings
