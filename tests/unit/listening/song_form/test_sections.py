"""Borders where the music turns, equal labels where it returns, and a number that the music decides."""

import numpy as np
import pytest

from sequencer.listening.signal.spectra import FRAMES, SLOW, Spectra
from sequencer.listening.song_form import sections
from sequencer.listening.song_form.sections import divisible, form_of

BAR = 2.0  # [s]


def music(form, bars=8, *, seed=4, louder=()):
    """Spectra of stretches of `bars` bars, each letter with a round of four chords and a timbre of its own.

    `louder`: places in the form where everything sounds fuller.
    """
    rng = np.random.default_rng(seed)
    kinds = {
        c: (rng.uniform(0, 1, (4, 12)) ** 3, rng.uniform(-2, 0, 80)) for c in sorted(set(form))
    }
    chroma, mel, loud = [], [], []
    for k, c in enumerate(form):
        for bar in range(bars):
            more = 0.8 * (k in louder)
            chroma.append(np.tile(kinds[c][0][bar % 4], (int(BAR * SLOW), 1)))
            mel.append(np.tile(kinds[c][1] + more * np.linspace(0, 1, 80), (int(BAR * FRAMES), 1)))
            loud.append(np.full(int(BAR * SLOW), 0.1 * 10 ** (more / 2)))
    chroma, mel, loud = (np.concatenate(x) for x in (chroma, mel, loud))
    chroma = chroma + np.abs(rng.normal(0, 0.05, chroma.shape))
    mel = mel + rng.normal(0, 0.1, mel.shape)
    seconds = len(form) * bars * BAR
    spectra = Spectra(mel.astype(np.float16), chroma.astype(np.float16), loud, seconds)
    return spectra, np.arange(0, seconds, BAR)


@pytest.mark.parametrize("bars", [8, 16])
@pytest.mark.parametrize("form", ["ABAB", "ABCB", "ABACA", "ABABCB"])
def test_form_is_found(form, bars):
    """Every part, nothing besides, and equal labels exactly where the music is the same."""
    spectra, downbeats = music(form, bars)

    parts = form_of(spectra, downbeats).parts

    assert [p.start for p in parts] == [k * bars * BAR for k in range(len(form))]
    assert "".join(p.label for p in parts) == form
    assert parts[-1].end == spectra.duration
    assert all(p.confidence > 0.7 for p in parts)


def test_a_song_of_one_part_stays_whole():
    for bars in (12, 48, 200):
        spectra, downbeats = music("A", bars)
        form = form_of(spectra, downbeats)
        assert [(p.start, p.end, p.label) for p in form.parts] == [(0.0, spectra.duration, "A")]
        assert form.turns == ()


def test_a_long_song_has_the_parts_that_it_has_when_short():
    """Six parts of half a minute, 8 times in a row, 24 minutes; as long a stretch of one is one part."""
    times = 8
    spectra, downbeats = music("ABACAB" * times, 15)

    form = form_of(spectra, downbeats)

    starts = {p.start for p in form.parts}
    assert np.mean([k * 15 * BAR in starts for k in range(6 * times)]) > 0.9
    assert len(starts) < 1.1 * 6 * times
    assert len(form_of(*music("A", 15 * 6 * times)).parts) == 1


def test_clicks_have_no_parts():
    """The same sound on every beat for two minutes, with a little noise."""
    rng = np.random.default_rng(1)
    mel = np.full((120 * FRAMES, 80), -5.0)
    mel[:: FRAMES // 2] = -1.0
    chroma, loud = np.full((120 * SLOW, 12), 0.1), np.full(120 * SLOW, 0.01)
    mel, chroma = mel + rng.normal(0, 0.01, mel.shape), chroma + rng.normal(0, 0.001, chroma.shape)
    spectra = Spectra(mel.astype(np.float16), chroma.astype(np.float16), loud, 120.0)

    assert len(form_of(spectra, np.arange(0, 120, BAR)).parts) == 1


def test_a_fuller_return_is_the_same_part_varied():
    spectra, downbeats = music("ABAB", louder=(3,))

    parts = form_of(spectra, downbeats).parts

    assert [(p.label, p.variant) for p in parts] == [("A", 0), ("B", 0), ("A", 0), ("B", 1)]


def test_short_bars_are_taken_in_pairs():
    """Bars of a second: borders lie on first beats all the same."""
    spectra, _ = music("ABAB")
    downbeats = np.arange(0, spectra.duration, BAR / 2)

    parts = form_of(spectra, downbeats).parts

    assert [p.start for p in parts] == [0.0, 16.0, 32.0, 48.0]


def test_less_likely_borders_are_no_parts_but_are_told():
    """A change of the timbre by little: told as possible, on a first beat inside a part, never next to a border."""
    spectra, downbeats = music("ABAB", 16)
    mel = spectra.mel.copy()
    seen, possible = [], 0
    for change in np.linspace(0.0, 1.0, 21):
        nearly = mel.copy()
        nearly[int(8 * BAR * FRAMES) : int(16 * BAR * FRAMES), 40:] += np.float16(change)
        form = form_of(
            Spectra(nearly, spectra.chroma, spectra.loudness, spectra.duration), downbeats
        )
        starts = [p.start for p in form.parts]
        possible += len(form.turns)
        for at, share in form.turns:
            assert at in downbeats
            assert min(abs(at - s) for s in [*starts, spectra.duration]) >= 4 * BAR
            assert 0.2 <= share < 0.7
        seen.append(16.0 in starts or any(at == 16.0 for at, _ in form.turns))
    assert not seen[0]
    assert seen[-1]
    assert possible


def test_confidence_is_how_often_borders_of_such_a_share_are_right(monkeypatch):
    """Shares of 0.35, 0.6 and 0.97 are borders, 0.28 and 0.15 may be, 0.14 is nothing.

    Of borders with a share of 0.52 0.645 were right, of those with 0.68 0.82, by folds over sources.
    """
    shares = np.zeros(65)
    shares[[8, 16, 24, 32, 40, 48]] = 0.6, 0.28, 0.35, 0.15, 0.97, 0.14
    monkeypatch.setattr(sections, "smeared", lambda _: shares)

    form = form_of(*music("ABABABAB"))

    assert [p.start for p in form.parts] == [0.0, 16.0, 48.0, 80.0]
    assert [p.confidence for p in form.parts] == pytest.approx(
        [1.0, 0.645 + (0.82 - 0.645) / 2, 0.51 * 0.35 / 0.37, 0.965]
    )
    told = [(32.0, 0.51 * 0.28 / 0.37), (64.0, 0.51 * 0.15 / 0.37)]
    assert list(form.turns) == [pytest.approx(each) for each in told]


def test_too_short_to_divide():
    spectra, downbeats = music("A", bars=4)

    (part,) = form_of(spectra, downbeats).parts

    assert (part.start, part.end, part.label) == (0.0, 8.0, "A")
    assert len(form_of(spectra, np.zeros(0)).parts) == 1
    assert not divisible(downbeats)
    assert not divisible(np.arange(14) * 1.1)  # seven pairs
    assert divisible(np.arange(8) * 2.0)
