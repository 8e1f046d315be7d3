"""Strokes and brightness of sounds made for it."""

import numpy as np
import pytest

from sequencer.listening.signal.audio import SAMPLE_RATE
from sequencer.listening.signal.onsets import brightness_of, onsets_of
from sequencer.listening.signal.spectra import spectra_of


def struck(times: list[float], sizes: list[float], seconds: float) -> np.ndarray:
    rng = np.random.default_rng(4)
    samples = rng.normal(0, 1e-3, int(seconds * SAMPLE_RATE)).astype(np.float32)
    t = np.arange(SAMPLE_RATE // 5) / SAMPLE_RATE
    for at, size in zip(times, sizes, strict=True):
        start = int(at * SAMPLE_RATE)
        burst = size * rng.normal(0, 0.3, len(t)) * np.exp(-t * 40)
        samples[start : start + len(t)] += burst.astype(np.float32)
    return samples


def test_strokes_are_heard_when_they_fall_and_as_strong_as_they_are() -> None:
    times = [0.5 + 0.5 * k for k in range(30)]
    sizes = [1.0 if k % 4 == 0 else 0.05 for k in range(30)]
    found, strengths = onsets_of(spectra_of([struck(times, sizes, 16.0)]))

    assert len(found) == 30
    assert found == pytest.approx(times, abs=0.04)  # two frames
    strong = np.array(sizes) == 1.0
    assert strengths[strong].min() > 1.2 * strengths[~strong].max()
    assert strengths.max() <= 2.0


def test_a_held_tone_is_no_stroke() -> None:
    t = np.arange(10 * SAMPLE_RATE) / SAMPLE_RATE
    tone = (0.3 * np.sin(2 * np.pi * 440 * t)).astype(np.float32)
    found, _ = onsets_of(spectra_of([tone]))
    assert not np.any((found > 0.5) & (found < 9.5))


@pytest.mark.parametrize("empty", [0, 100])
def test_nothing_sounds_in_silence(empty: int) -> None:
    spectra = spectra_of([np.zeros(empty * SAMPLE_RATE // 10, np.float32)], 10.0)
    assert len(onsets_of(spectra)[0]) == 0
    assert brightness_of(spectra) == pytest.approx(np.zeros(20))


def test_higher_sounds_are_brighter() -> None:
    t = np.arange(6 * SAMPLE_RATE) / SAMPLE_RATE
    low, high = (0.3 * np.sin(2 * np.pi * f * t) for f in (150.0, 4000.0))
    gap = np.zeros(2 * SAMPLE_RATE)
    bright = brightness_of(spectra_of([np.concatenate([low, high, gap]).astype(np.float32)]))
    assert len(bright) == 28
    assert bright[13:24].mean() > bright[:11].mean() + 0.3
    assert bright[26:] == pytest.approx(bright[25], abs=0.05)  # silence keeps what was
