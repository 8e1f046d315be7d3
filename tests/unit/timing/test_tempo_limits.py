"""The count at its edges: pickups, rates, bars beyond the last, medians; by hand and by exact fractions."""

from fractions import Fraction
from itertools import accumulate

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.timing.position import Position
from sequencer.timing.tempo import TempoMap, bars_from_downbeats, median_tempo

TIMES = np.array([0.5, 1.0, 1.4, 2.2, 2.5, 3.5, 4.0, 5.0])
MAP = TempoMap(TIMES, first=-2, bars=(0, 3), metre=2)


def test_rates_are_those_just_after_each_beat():
    """Gaps of 0.5, 0.4, 0.8, 0.3, 1, 0.5 and 1 s from beat −2 on; the outer ones go on."""
    assert MAP.knots.tolist() == [-2, -1, 0, 1, 2, 3, 4, 5]
    beats = [-9.0, -2.0, -1.01, -1.0, 0.5, 1.0, 2.99, 3.0, 4.0, 4.99, 5.0, 7.0]
    gaps = [0.5, 0.5, 0.5, 0.4, 0.8, 0.3, 1.0, 0.5, 1.0, 1.0, 1.0, 1.0]
    assert_allclose(MAP.beats_per_second(beats), 1 / np.array(gaps))


def test_time_runs_evenly_between_beats_and_on_beyond():
    beats = [-3.0, -2.0, -1.5, 0.25, 3.0, 4.75, 5.0, 6.0]
    seconds = [0.0, 0.5, 0.75, 1.6, 3.5, 4.75, 5.0, 6.0]
    assert_allclose(MAP.seconds_from_beats(beats), seconds)
    assert_allclose(MAP.beats_from_seconds(seconds), beats)


def test_a_steady_map_by_its_tempo():
    steady = TempoMap.steady(90.0, beats=7, metre=3, start=2.0)
    assert_allclose(steady.times, 2 + np.arange(7) * 2 / 3)
    assert (steady.first, steady.bars, steady.metre) == (0, (0, 3, 6), 3)
    least = TempoMap.steady(60.0)
    assert least.times.tolist() == [0.0, 1.0]
    assert (least.bars, least.metre) == ((0,), 4)
    assert TempoMap.steady(60.0, beats=1).times.tolist() == [0.0, 1.0]
    assert TempoMap.steady(0.5, beats=3).times.tolist() == [0.0, 120.0, 240.0]
    for tempo in (0.0, -1.0, float("nan")):
        with pytest.raises(ValueError, match="must be positive"):
            TempoMap.steady(tempo)


def test_a_map_without_more_said_begins_with_bar_one_of_four():
    plain = TempoMap(np.array([0.0, 0.5]))
    assert (plain.first, plain.bars, plain.metre) == (0, (0,), 4)
    assert TempoMap(np.array([0.0, 0.5]), metre=1).bar_start(3) == 2


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ({"bars": ()}, "start at beat 0"), ({"bars": (1, 2)}, "start at beat 0"),
        ({"bars": (0, 4, 4)}, "start at beat 0"), ({"bars": (0, -1)}, "start at beat 0"),
        ({"metre": 0}, "at least 1"), ({"times": np.array([1.0])}, "at least two"),
        ({"times": np.array([[0.0, 1.0], [2.0, 3.0]])}, "at least two"),
    ],
)  # fmt: skip
def test_what_is_no_map_is_refused(more, says):
    with pytest.raises(ValueError, match=says):
        TempoMap(**{"times": np.array([0.0, 1.0]), **more})


def test_a_map_says_what_it_is():
    assert repr(MAP) == (
        "<TempoMap of 8 beats, 93.3 beats/min, 2 bars of 2, 0.50 … 5.00 s>"
    )  # seven beats in 4.5 s


def test_bars_begin_where_said_and_go_on_by_the_metre():
    assert [MAP.bar_start(bar) for bar in (-2, -1, 0, 1, 2, 3, 4, 5)] == [-6, -4, -2, 0, 3, 5, 7, 9]
    assert [MAP.bar_length(bar) for bar in (-1, 0, 1, 2, 3, 4)] == [2, 2, 3, 2, 2, 2]
    assert [MAP.bar_lengths.beats(bar) for bar in (-1, 0, 1, 2, 3, 4)] == [2, 2, 3, 2, 2, 2]


def test_every_beat_and_fraction_has_one_place():
    """Bars of four, three, five and threes on; walked through in 960ths, from two bars before the first."""
    count = TempoMap(np.arange(20) * 0.5, bars=(0, 4, 7, 12), metre=3)
    lengths = [3, 3, 4, 3, 5, 3, 3, 3]
    starts = list(accumulate([-6, *lengths]))
    for bar, (start, length) in enumerate(zip(starts, lengths, strict=False), start=-1):
        for fine in (0, 1, 320, 959):
            for beat in range(length):
                exact = start + beat + Fraction(fine, 960)
                expected = Position(bar, beat + 1 + Fraction(fine, 960))
                assert count.position_of(float(exact)) == expected
                assert count.beat_of(expected) == pytest.approx(float(exact), abs=1e-12)
        with pytest.raises(ValueError, match=f"has {length} beats"):
            count.beat_of(Position(bar, Fraction(length + 1)))


@pytest.mark.parametrize(
    ("beat", "place"),
    [
        (0.49 / 960, (1, 0)), (0.51 / 960, (1, 1)), (-0.49 / 960, (1, 0)),
        (-0.51 / 960, (0, 4 * 960 - 1)), (4 - 0.51 / 960, (1, 4 * 960 - 1)), (4 - 0.49 / 960, (2, 0)),
    ],
)  # fmt: skip
def test_places_are_rounded_to_960ths(beat, place):
    bar, fine = place
    count = TempoMap(np.arange(9.0), bars=(0, 4))
    assert count.position_of(beat) == Position(bar, 1 + Fraction(fine, 960))


def test_bars_by_their_downbeats():
    assert bars_from_downbeats(10, [9, 3, 5, 3]) == (0, 2, 6)
    assert bars_from_downbeats(3, [0]) == (0,)
    for bad in ([-1, 2], [0, 10], []):
        with pytest.raises(ValueError, match="at least one"):
            bars_from_downbeats(10, bad)


@pytest.mark.parametrize("n", [2, 3, 8, 9, 10, 13, 30])
def test_the_median_tempo_is_that_of_spans_of_eight(n):
    times = np.cumsum(np.random.default_rng(n).uniform(0.3, 0.9, n))
    span = min(n - 1, 8)
    spans = sorted(60 * span / (times[k + span] - times[k]) for k in range(n - span))
    low, high = spans[(len(spans) - 1) // 2], spans[len(spans) // 2]
    expected = 2 / (1 / low + 1 / high)  # the middle of the spans, not of their tempi
    assert median_tempo(times) == pytest.approx(expected, rel=1e-12)


def test_fewer_than_two_beats_have_no_tempo():
    assert median_tempo([]) == median_tempo([3.0]) == 0.0
