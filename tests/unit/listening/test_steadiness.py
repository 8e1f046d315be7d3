"""Slips off a steady tempo are put back; music that has none is left as it was heard."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.listening.barpointer import FPS
from sequencer.listening.confidence import (
    doubted_bars,
    slipped_beats,
    sure_bars,
    sure_beats,
    sure_metre,
)
from sequencer.listening.steadiness import steadied

INTERVAL = 0.44
TRUE = 1.0 + INTERVAL * np.arange(200)
SURE = np.full(200, 0.9)


def pulses(times, seconds=120.0, height=0.9):
    chance = np.full(round(seconds * FPS), 0.02)
    frames = np.round(np.asarray(times) * FPS).astype(int)
    for shift in (-1, 0, 1):
        chance[frames + shift] = height
    return chance


def slipped_in(low, high):
    return TRUE - np.where((np.arange(200) >= low) & (np.arange(200) < high), INTERVAL / 2, 0.0)


def test_whole_sections_that_slip_by_half_a_beat_are_put_back():
    """As heard in music of one tempo: sections lie half a beat early, then the count is right again."""
    heard = slipped_in(140, 190)

    beats, moved = steadied(heard, SURE, pulses(TRUE))

    np.testing.assert_allclose(beats, TRUE, atol=0.012)
    assert moved[141:189].all()
    assert not moved[:139].any()


def test_of_two_phases_the_one_that_is_heard_is_the_beat():
    """More than half of the beats slipped, but little is heard there."""
    heard = slipped_in(80, 200)

    beats, _ = steadied(heard, SURE, pulses(TRUE))

    on = np.abs(beats[:, None] - TRUE[None, :]).min(axis=1) < 0.012
    assert on.mean() == 1.0 or len(beats) == 200


def test_a_tempo_that_sways_is_left_alone():
    swaying = np.cumsum(INTERVAL * (1 + 0.05 * np.sin(np.arange(200) / 9)))

    beats, moved = steadied(swaying, SURE, pulses(swaying))

    np.testing.assert_array_equal(beats, swaying)
    assert not moved.any()


def test_each_of_two_tempi_is_held_by_itself():
    first, second = 1.0 + 0.5 * np.arange(100), 51.0 + 0.4 * np.arange(120)
    heard = np.concatenate([first, second])
    slipped = heard.copy()
    slipped[150:180] -= 0.2

    beats, moved = steadied(slipped, np.full(220, 0.9), pulses(heard))

    off = np.abs(beats[:, None] - heard[None, :]).min(axis=1)
    assert off.max() < 0.012
    assert not moved[:140].any()
    assert moved.sum() >= 28


def test_beats_drawn_out_in_a_steady_song_stay_as_they_were_heard():
    drawn = TRUE.copy()
    drawn[90:92] += 0.08

    beats, moved = steadied(drawn, SURE, pulses(drawn))

    np.testing.assert_array_equal(beats, drawn)
    assert not moved.any()


def test_beats_drawn_out_stay_where_others_are_put_back():
    heard = slipped_in(140, 190)
    heard[50:52] += 0.08

    beats, moved = steadied(heard, SURE, pulses(TRUE))

    np.testing.assert_allclose(beats[50:52], heard[50:52])
    assert not moved[:139].any()
    assert moved[141:189].all()


def test_no_grid_is_believed_that_a_third_of_the_beats_lies_beside():
    heard = slipped_in(180, 200)
    heard[100:150] += INTERVAL / 4

    beats, moved = steadied(heard, SURE, pulses(TRUE))

    np.testing.assert_array_equal(beats, heard)
    assert not moved.any()


def test_a_short_piece_is_left_alone():
    heard = slipped_in(10, 20)[:30]

    beats, moved = steadied(heard, SURE[:30], pulses(TRUE[:30]))

    np.testing.assert_array_equal(beats, heard)
    assert not moved.any()


class TestSlips:
    def test_the_whole_span_between_two_slips_is_told(self):
        slipped = slipped_beats(slipped_in(60, 100))

        np.testing.assert_array_equal(np.flatnonzero(slipped), np.arange(60, 100))

    def test_a_slip_for_good_flags_the_shorter_side(self):
        np.testing.assert_array_equal(
            np.flatnonzero(slipped_beats(slipped_in(130, 200))), np.arange(130, 200)
        )
        np.testing.assert_array_equal(
            np.flatnonzero(slipped_beats(slipped_in(0, 50))), np.arange(50)
        )

    def test_a_pause_and_a_change_of_tempo_are_none(self):
        paused = TRUE + np.where(np.arange(200) >= 100, 1.3 * INTERVAL, 0.0)
        changed = np.concatenate([TRUE[:100], TRUE[99] + 0.66 * np.arange(1, 101)])

        assert not slipped_beats(paused).any()
        assert not slipped_beats(changed).any()

    def test_where_the_tempo_sways_a_long_beat_is_no_slip(self):
        steps = INTERVAL * (1 + 0.1 * np.sin(np.arange(199)))
        steps[100] *= 1.5

        assert not slipped_beats(np.append(0.0, np.cumsum(steps))).any()

    def test_bars_with_a_slipped_beat_are_to_be_listened_to(self):
        slipped = np.zeros(12, bool)
        slipped[5] = True

        told = doubted_bars(np.array([0.9, 0.9, 0.2]), np.array([0, 4, 8]), slipped)

        np.testing.assert_allclose(told, [0.9, 0.45, 0.2])
        assert doubted_bars(np.zeros(0), np.zeros(0, int), slipped).shape == (0,)


class TestShares:
    def test_more_evidence_is_more_sure(self):
        bars = sure_bars(np.array([0.5, 0.9, 0.9, 0.5]), np.array([0.5, 0.5, 0.9, 0.9]))

        assert 0 < bars[0] < bars[1] < bars[3] < bars[2] < 1
        assert sure_bars(np.array([0.2]), np.array([0.99]))[0] == 0.2  # only counted on
        assert sure_metre(0.5) < sure_metre(0.9) < 1.0

    def test_a_beat_is_judged_by_those_around_it_too(self):
        heard = np.full(40, 0.9)
        heard[20] = 0.5
        alone, all_over = sure_beats(heard), sure_beats(np.full(40, 0.5))

        assert alone[20] < alone[0]
        assert alone[20] > all_over[20]
        assert alone[24] < alone[0] == pytest.approx(alone[30])


def jumped(at, by, *, heard=0.95, slow=1e-3):
    """Beats at half a second that jump by some beats at one of them, as a cut makes it, and what the network hears: every beat."""
    times = np.concatenate([np.arange(at) * 0.5, (np.arange(at, 240) + by) * 0.5])
    beat = np.full(round((times[-1] + 2) * FPS), slow)
    beat[np.round(times * FPS).astype(np.int64)] = heard
    return times, beat


@pytest.mark.parametrize("by", [0.5, 1.5, -0.5, 3.5])
@pytest.mark.parametrize("at", [40, 100, 200])
def test_a_song_that_really_jumps_by_half_a_beat_keeps_its_beats(at, by):
    times, beat = jumped(at, by)
    found, moved = steadied(times, np.full(len(times), 0.9), beat)
    assert_allclose(found, times)
    assert not moved.any()


def test_putting_a_slip_back_loses_no_beat_at_either_end():
    rng = np.random.default_rng(3)
    for _ in range(60):
        true = np.arange(160) * 0.5
        beat = np.full(round(90 * FPS), 1e-3)
        beat[np.round(true * FPS).astype(np.int64)] = 0.9
        times = true + rng.normal(0, 0.006, 160)
        slipped = np.concatenate([times[:70], times[70:90] + 0.25, times[90:]])
        found, moved = steadied(slipped, np.full(160, 0.9), beat)
        assert abs(found[0] - true[0]) < 0.03
        assert abs(found[-1] - true[-1]) < 0.03
        assert len(found) in {159, 160, 161}
        assert 18 <= moved.sum() <= 22
