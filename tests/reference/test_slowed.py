"""A slowed song against librosa's phase vocoder (one channel), and against itself: loudness, width, pitch, time."""

import numpy as np
import pytest
from librosa.effects import time_stretch

from sequencer.outputs.sound.slowed import slowed
from tests.repeated import at_length

RATE = 22_050
SPEEDS = (0.5, 0.7, 0.85, 1.1)


def music(seconds=6, seed=0):
    """Chords of decaying partials and noise bursts, in two channels: most of it in the middle."""
    rng = np.random.default_rng(seed)
    t = np.arange(seconds * RATE) / RATE
    out = np.zeros((len(t), 2))
    for beat in range(2 * seconds):
        since = t - beat / 2
        on = since >= 0
        shape = np.where(on, np.exp(-4 * np.maximum(since, 0)), 0)
        for hz in 220 * 2 ** (rng.integers(0, 24, 3) / 12):
            side = rng.uniform(0.3, 0.7)
            tone = 0.1 * shape * np.sin(2 * np.pi * hz * since)
            out += tone[:, None] * np.array([side, 1 - side])
        burst = np.where(on, np.exp(-60 * np.maximum(since, 0)), 0) * rng.standard_normal(len(t))
        out += 0.05 * burst[:, None]
    return out


def level(sound):
    return 10 * np.log10(np.mean(np.square(sound)))


def alike(sound):
    return np.corrcoef(sound[:, 0], sound[:, 1])[0, 1]


@pytest.mark.parametrize("speed", [SPEEDS[0], *at_length(*SPEEDS[1:])])
def test_one_channel_is_librosa_s_but_for_its_level(speed):
    own = music()[:, :1]
    found = slowed(own, speed)[:, 0]
    librosas = time_stretch(own[:, 0], rate=speed)
    assert len(found) == len(librosas)
    inside = slice(4096, -4096)  # it reflects the ends
    factor = found[inside] @ librosas[inside] / (librosas[inside] @ librosas[inside])
    rest = found[inside] - factor * librosas[inside]
    assert level(rest) < level(found[inside]) - 50


@pytest.mark.parametrize("speed", SPEEDS)
def test_it_is_as_loud_and_as_wide_as_it_was(speed):
    """Stretched each by itself, channels of the middle lose half their power together and more."""
    song = music()
    found = slowed(song, speed)
    assert level(found) == pytest.approx(level(song), abs=1e-6)
    assert alike(found) == pytest.approx(alike(song), abs=0.04)
    pieces = [np.array_split(each, 4) for each in (song, found)]
    for before, after in zip(*pieces, strict=True):
        assert level(after) == pytest.approx(level(before), abs=2.5)


def test_the_middle_stays_in_the_middle_and_a_side_at_its_side():
    one = music()[:, 0]
    middle = slowed(np.stack([one, one], axis=1), 0.7)
    assert np.abs(middle[:, 0] - middle[:, 1]).max() < 1e-9
    side = slowed(np.stack([one, 0 * one], axis=1), 0.7)
    assert np.abs(side[:, 1]).max() < 1e-9


def test_pitch_and_time_are_kept():
    t = np.arange(4 * RATE) / RATE
    song = 0.5 * np.sin(2 * np.pi * 440 * t)[:, None]
    song[: 2 * RATE] = 0.0  # it starts to sound at 2 s
    slow = slowed(song, 0.5)[:, 0]
    loud = np.flatnonzero(np.abs(slow) > 0.2)[0] / RATE
    middle = slow[5 * RATE : 7 * RATE]
    spectrum = np.abs(np.fft.rfft(middle * np.hanning(len(middle))))
    assert len(slow) == 8 * RATE
    assert loud == pytest.approx(4.0, abs=0.05)  # one window at 22 kHz
    assert np.argmax(spectrum) / 2 == pytest.approx(440.0, abs=1.0)


def test_many_frames_are_laid_without_a_seam():
    """Frames go by hundreds; a pure tone sounds on through all of them."""
    t = np.arange(30 * RATE) / RATE
    slow = slowed(0.5 * np.sin(2 * np.pi * 330 * t)[:, None], 0.7)[:, 0]
    peaks = np.abs(slow[RATE:-RATE]).reshape(-1)[: 40 * RATE]
    windows = peaks[: len(peaks) // 441 * 441].reshape(-1, 441).max(axis=1)
    assert windows.min() > 0.45
    assert windows.max() < 0.55


def test_silence_and_nothing_stay_what_they_are():
    assert not slowed(np.zeros((5000, 2)), 0.7).any()
    assert slowed(np.zeros((0, 2)), 0.7).shape == (0, 2)
    own = music(2)
    assert slowed(own, 1.0) is own
