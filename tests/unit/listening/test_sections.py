"""Borders where the music turns, equal labels where it returns, and a number that the music decides."""

import numpy as np
import pytest

from sequencer.listening.sections import sections_of
from sequencer.listening.spectra import FRAMES, SLOW, Spectra

BAR = 2.0  # [s]


def music(form, bars=8):
    """Spectra of stretches of `bars` bars, each letter with chroma and timbre of its own."""
    rng = np.random.default_rng(4)
    kinds = {c: (rng.uniform(0.1, 1, 12), rng.uniform(-2, 0, 80)) for c in sorted(set(form))}
    seconds = len(form) * bars * BAR
    chroma = np.concatenate([np.tile(kinds[c][0], (int(bars * BAR * SLOW), 1)) for c in form])
    mel = np.concatenate([np.tile(kinds[c][1], (int(bars * BAR * FRAMES), 1)) for c in form])
    chroma = chroma + rng.normal(0, 0.05, chroma.shape)
    mel = mel + rng.normal(0, 0.1, mel.shape)
    downbeats = np.arange(0, seconds, BAR)
    loudness = np.full(len(chroma), 0.1)
    return Spectra(mel.astype(np.float16), chroma.astype(np.float16), loudness, seconds), downbeats


@pytest.mark.parametrize("form", ["ABAB", "AABA", "ABCB", "ABACA"])
def test_form_is_found(form):
    spectra, downbeats = music(form)

    sections = sections_of(spectra, downbeats, metre=4)

    turns = [i * 8 * BAR for i in range(1, len(form)) if form[i] != form[i - 1]]
    starts = [s.start for s in sections]
    assert set(turns) <= set(starts)
    for section in sections:
        index = int((section.start + section.end) / 2 / (8 * BAR))
        first = next(s for s in sections if s.label == section.label)
        assert form[index] == form[int((first.start + first.end) / 2 / (8 * BAR))]
    assert sections[0].start == 0
    assert sections[-1].end == spectra.duration
    assert all(start in downbeats for start in starts)


def test_letters_differ_where_the_music_differs():
    spectra, downbeats = music("ABC")

    labels = [s.label for s in sections_of(spectra, downbeats, metre=4)]

    assert len(set(labels)) == 3
    assert labels[0] == "A"


def test_too_short_to_divide():
    spectra, downbeats = music("A", bars=4)

    (section,) = sections_of(spectra, downbeats, metre=4)

    assert (section.start, section.end, section.label) == (0.0, 8.0, "A")
    assert len(sections_of(spectra, np.zeros(0), metre=4)) == 1
