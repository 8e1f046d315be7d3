"""A small song and a small clean show, made once for all tests of the command line."""

import numpy as np
import pytest
import soundfile as sf

RATE = 22050
SHOW = """\
title: Small
track:
  file: song.wav
  corrections: {metre: 4, one: 0:00.5}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7, birth_year: 1990, prop: {tether: 0.55}}
timeline:
  - {from: 3.1, pattern: two-beat-weave, beats: 16}
"""


def click_track(seconds=40.0, tempo=120.0, start=0.5):
    """Clicks with a heavier one on each bar of four, over a bass that changes with the bars."""
    t = np.arange(int(seconds * RATE)) / RATE
    song = np.zeros_like(t)
    rng = np.random.default_rng(1)
    for k, beat in enumerate(np.arange(start, seconds - 0.5, 60 / tempo)):
        i = int(beat * RATE)
        n = RATE // 10
        decay = np.exp(-np.arange(n) / (0.01 * RATE))
        song[i : i + n] += decay * rng.normal(0, 0.5 if k % 4 else 0.8, n)
        if k % 4 == 0:
            n = RATE // 3
            tone = np.sin(2 * np.pi * (55 + 10 * (k // 4 % 4)) * np.arange(n) / RATE)
            song[i : i + n] += 0.5 * tone[: len(song) - i] * np.exp(-np.arange(n) / (0.1 * RATE))
    return (0.5 * song / np.abs(song).max()).astype(np.float32)


@pytest.fixture(scope="session")
def stage_folder(tmp_path_factory):
    """A folder with `song.wav` and `show.yaml`; tests write beside them, never into them."""
    folder = tmp_path_factory.mktemp("small")
    sf.write(folder / "song.wav", click_track(), RATE)
    (folder / "show.yaml").write_text(SHOW, encoding="utf-8")
    return folder
