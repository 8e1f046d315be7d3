"""The count of a song."""

from fractions import Fraction

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.timing.position import Position
from sequencer.timing.tempo import TempoMap, bars_from_downbeats

# pickup of two beats, bars of 4, 4 and 3, then regular again; the tempo doubles at beat 4
UNEVEN = TempoMap(
    np.concatenate([np.arange(-2, 5) * 0.5, 2.0 + np.arange(1, 12) * 0.25]) + 1.0,
    first=-2,
    bars=(0, 4, 8, 11),
    metre=4,
)


@pytest.mark.parametrize("beats", [3.25, [0.0, 1.5], np.linspace(-6, 40, 12).reshape(3, 4)])
def test_scalar_row_and_grid_come_back_in_their_shape(beats):
    seconds = UNEVEN.seconds_from_beats(beats)
    assert seconds.shape == np.shape(beats)
    assert_allclose(UNEVEN.beats_from_seconds(seconds), beats, atol=1e-12)


def test_tempo_goes_on_beyond_the_beats():
    assert_allclose(UNEVEN.seconds_from_beats([-4, 20]), [-1.0, 7.0])
    assert_allclose(UNEVEN.beats_per_second([-9, 0, 4, 99]), [2, 2, 4, 4])


def test_fastest_and_slowest_are_exact_over_a_span():
    assert UNEVEN.fastest(0, 4) == pytest.approx(2)
    assert UNEVEN.fastest(3.5, 4.01) == pytest.approx(4)
    assert UNEVEN.slowest(3.5, 4.01) == pytest.approx(2)


@pytest.mark.parametrize(
    ("position", "beat"),
    [
        ("1.1", 0),
        ("2.3", 6),
        ("3.3", 10),
        ("4.1", 11),
        ("5.1", 15),
        ("9.4", 34),
        ("0.3", -2),
        ("-1.1", -8),
    ],
)
def test_positions_follow_bars_of_uneven_length(position, beat):
    bar, _, within = position.partition(".")
    assert UNEVEN.beat_of(Position(int(bar), Fraction(within))) == beat
    assert str(UNEVEN.position_of(beat)) == position


def test_a_beat_that_the_bar_lacks_is_refused():
    with pytest.raises(ValueError, match=r"bar 3 has 3 beats, so there is no 3\.4"):
        UNEVEN.beat_of(Position(3, Fraction(4)))


def test_fractions_of_a_beat_are_kept():
    assert str(UNEVEN.position_of(6.5)) == "2.3+1/2"
    assert str(UNEVEN.position_of(6.999999)) == "2.4"


def test_bars_are_counted_from_the_first_downbeat():
    assert bars_from_downbeats(12, [2, 6, 10]) == (0, 4, 8)
    with pytest.raises(ValueError, match="at least one"):
        bars_from_downbeats(4, [])


@pytest.mark.parametrize("times", [[0.0], [0.0, 0.0], [1.0, 0.5], [[0.0, 1.0]], [0.0, np.nan]])
def test_a_map_needs_rising_seconds(times):
    with pytest.raises(ValueError, match=r"increasing|finite"):
        TempoMap(np.array(times))


@pytest.mark.parametrize(
    ("start", "end", "gaps"),
    [
        (0.0, 5.0, (0.4, 0.5, 0.8, 0.25, 1.0)),
        (1.0, 2.0, (0.5,)),
        (1.2, 1.9, (0.5,)),
        (1.2, 2.1, (0.5, 0.8)),
        (2.0, 4.0, (0.8, 0.25)),
        (2.5, 2.5, (0.8,)),
        (3.0, 3.0, (0.25,)),
        (-7.0, -5.0, (0.4,)),
        (9.0, 12.0, (1.0,)),
        (-7.0, 0.5, (0.4,)),
        (4.5, 12.0, (1.0,)),
    ],
)
def test_fastest_and_slowest_are_those_of_the_beats_touched(start, end, gaps):
    """Gaps of 0.4, 0.5, 0.8, 0.25 and 1 s from beat to beat; beyond the ends the outer ones go on."""
    times = np.cumsum([0.3, 0.4, 0.5, 0.8, 0.25, 1.0])
    for first in (0, -3):
        tempo = TempoMap(times, first=first)
        assert tempo.fastest(start + first, end + first) == pytest.approx(1 / min(gaps))
        assert tempo.slowest(start + first, end + first) == pytest.approx(1 / max(gaps))


def test_one_beat_is_what_many_are_to_the_last_bit():
    """Reference: the same beats in an array; on the beats, just beside them, between and beyond."""
    drawn = np.random.default_rng(1)
    times = np.cumsum(drawn.uniform(0.3, 0.7, 40))
    for first in (-3, 0, 2):
        tempo = TempoMap(times, first=first)
        whole = np.arange(-8.0, 50.0)
        beats = np.concatenate(
            [whole, np.nextafter(whole, -99), np.nextafter(whole, 99), drawn.uniform(-9, 50, 200)]
        )
        many = tempo.seconds_from_beats(beats)
        single = [tempo.seconds_from_beats(beat) for beat in beats.tolist()]
        assert all(one.shape == () and one.dtype == np.float64 for one in single)
        assert np.array_equal(np.array(single).view(np.int64), many.view(np.int64))


def test_one_second_is_what_many_are_to_the_last_bit():
    """Reference: the same seconds in an array; on the beats, just beside them, between and beyond."""
    drawn = np.random.default_rng(2)
    times = np.cumsum(drawn.uniform(0.3, 0.7, 40))
    for first in (-3, 0, 2):
        tempo = TempoMap(times, first=first)
        seconds = np.concatenate(
            [times, np.nextafter(times, -99), np.nextafter(times, 99), drawn.uniform(-9, 50, 200)]
        )
        many = tempo.beats_from_seconds(seconds)
        single = [tempo.beats_from_seconds(second) for second in seconds.tolist()]
        assert all(one.shape == () and one.dtype == np.float64 for one in single)
        assert np.array_equal(np.array(single).view(np.int64), many.view(np.int64))


def test_a_position_asked_for_again_is_the_same_and_as_text():
    """Beats that round to one 960th have one position; a map of other bars has positions of its own."""
    other = TempoMap(UNEVEN.times, first=UNEVEN.first, bars=(0,), metre=3)
    for beat in (0.0, 1.5, 4.0, 4.0 + 1 / 3, -1.0, 5.0 + 1 / 1920.5):
        for tempo in (UNEVEN, other, UNEVEN, other):
            anew = TempoMap(tempo.times, first=tempo.first, bars=tempo.bars, metre=tempo.metre)
            assert tempo.position_of(beat) == anew.position_of(beat)
            assert tempo.position_text(beat) == str(anew.position_of(beat))
    assert UNEVEN.position_text(5.0) != other.position_text(5.0)


@pytest.mark.parametrize("beat", [float("nan"), float("inf")])
def test_one_beat_that_is_no_number_is_refused_as_many_are(beat):
    with pytest.raises(ValueError, match="beats must be finite"):
        UNEVEN.seconds_from_beats(beat)
