"""A count ends with the last beat on which something is played."""

import numpy as np
import pytest

from sequencer.listening.last_beat import end_of_count
from sequencer.listening.signal.spectra import BANDS, FRAMES


def struck(beats: np.ndarray, seconds: float, fall: float) -> np.ndarray:
    """Bands of a stroke on each beat whose level falls by so much a second, one that decays and never ends at once."""
    level = np.zeros(round(seconds * FRAMES))
    for at in beats:
        frames = np.arange(len(level)) - round(at * FRAMES)
        level = np.maximum(level, np.where(frames >= 0, 1.0 - fall * frames / FRAMES, 0.0))
    return np.repeat(np.maximum(level, 0.0)[:, None], BANDS, axis=1).astype(np.float32)


@pytest.mark.parametrize("fall", [0.05, 0.5, 2.0])  # a drone of an organ, a piano, a dry click
def test_what_rings_on_is_not_counted(fall):
    beats = np.arange(40) * 0.5 + 0.2
    bands = struck(beats[:32], 21.0, fall)
    assert end_of_count(beats, bands) == 32


def test_beats_that_are_played_to_the_end_stay():
    beats = np.arange(40) * 0.5 + 0.2
    assert end_of_count(beats, struck(beats, 21.0, 0.5)) == 40


def test_a_break_within_the_song_is_counted_through():
    beats = np.arange(40) * 0.5 + 0.2
    played = np.delete(beats, np.arange(20, 30))
    assert end_of_count(beats, struck(played, 21.0, 2.0)) == 40


def test_a_soft_last_stroke_stays():
    beats = np.arange(40) * 0.5 + 0.2
    bands = struck(beats[:39], 21.0, 0.5)
    at = round(beats[39] * FRAMES)
    bands[at:] = bands[at - 1].max() + 0.08  # a third of what the others rise
    assert end_of_count(beats, bands) == 40


def test_a_murmur_after_the_fade_is_not_counted():
    beats = np.arange(40) * 0.5 + 0.2
    bands = struck(beats[:32], 21.0, 2.0)
    for at in beats[32:]:  # strokes some 60 dB below the music's
        bands[round(at * FRAMES) : round(at * FRAMES) + 8] = 0.25
    assert end_of_count(beats, bands) == 32


def test_some_beats_are_always_left():
    beats = np.arange(8) * 0.5
    assert end_of_count(beats, np.zeros((400, BANDS), np.float32)) == 4
    assert end_of_count(beats[:3], np.zeros((400, BANDS), np.float32)) == 3
    assert end_of_count(beats, np.zeros((0, BANDS), np.float32)) == 8
