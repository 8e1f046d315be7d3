"""What is told of beats and bars: a beat that was put back is to be listened to, and strokes of a count-in are no bar."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.listening import beats as module
from sequencer.listening.activations import Activations
from sequencer.listening.barpointer import FPS, Path
from sequencer.listening.beats import count_of
from sequencer.listening.signal.spectra import FRAMES
from sequencer.timing.song import SURE_CONFIDENCE

SECONDS = 64.0
AT = 1.0 + 0.5 * np.arange(120)


def heard(bands=None):
    """Beats and ones are heard at half a second each, four to the bar."""

    def odds(times):
        t = np.arange(round(SECONDS * FRAMES))[:, None] / FRAMES
        chance = np.maximum(0.95 * np.exp(-((t - times) ** 2) / 0.0008).max(axis=1), 1e-5)
        return np.log(chance / (1 - chance))

    metres = np.where(np.arange(8) == 4, 0.0, -9.0)
    n = round(SECONDS * FRAMES)
    return Activations(
        odds(AT), odds(AT[::4]), metres, np.ones((n, 80), np.float32) if bands is None else bands
    )


@pytest.fixture
def searched(monkeypatch):
    """Puts what the search for beats found in place of the search."""

    def put(times):
        number = np.arange(len(times))
        path = Path(np.round(times * FPS).astype(np.int64), number % 4, number == 0, 100.0, 4)
        way = SimpleNamespace(path=path, value=100.0, tempo=120.0)
        monkeypatch.setattr(module, "ways_to_count", lambda *_, **__: [way])

    return put


def test_bars_on_beats_that_were_put_back_are_told_to_be_listened_to(searched):
    """The search lies half a beat early for five bars; the beats are put right, and the bars there doubted."""
    slipped = AT.copy()
    slipped[60:80] -= 0.25
    chroma = np.zeros((round(SECONDS * FRAMES), 12), np.float16)

    searched(AT)
    plain = count_of(heard(), SECONDS, chroma)
    searched(slipped)
    count = count_of(heard(), SECONDS, chroma)

    np.testing.assert_allclose(count.beats, AT, atol=0.02)
    np.testing.assert_allclose(count.downbeats, AT[::4], atol=0.02)
    assert plain.confidence.min() > SURE_CONFIDENCE
    doubted = np.flatnonzero(count.confidence < SURE_CONFIDENCE)
    assert set(range(15, 20)) <= set(doubted.tolist()) <= set(range(14, 21))


def test_a_bar_is_as_sure_as_its_own_one(searched, monkeypatch):
    """From beat 60 on the one might be another beat as well."""
    laid = module.bars_in_context
    chroma = np.zeros((round(SECONDS * FRAMES), 12), np.float16)
    searched(AT)
    plain = count_of(heard(), SECONDS, chroma)

    def doubted(*given):
        bars = laid(*given)
        return replace(bars, ones=np.where(np.arange(len(bars.ones)) < 60, bars.ones, 0.4))

    monkeypatch.setattr(module, "bars_in_context", doubted)
    count = count_of(heard(), SECONDS, chroma)

    np.testing.assert_array_equal(count.confidence[:15], plain.confidence[:15])
    assert count.confidence[15:].max() < SURE_CONFIDENCE < plain.confidence.min()


def test_strokes_of_a_count_in_are_beats_but_no_bar(searched):
    bands = np.full((round(SECONDS * FRAMES), 80), 0.5, np.float32)
    frames = np.round(AT * FRAMES).astype(int)
    bands[: frames[4]] = 0.0
    for frame in frames:
        bands[frame : frame + 4] += 0.4

    searched(AT)
    count = count_of(heard(bands), SECONDS)

    assert count.count_in == 4
    np.testing.assert_allclose(count.beats, AT, atol=0.02)
    np.testing.assert_allclose(count.downbeats, AT[4::4], atol=0.02)
    assert len(count.confidence) == len(count.downbeats)
