"""The one is found by what changes there; the metre may change for good; other ways are told with their shares."""

import numpy as np
import pytest

from sequencer.listening.activations import Activations
from sequencer.listening.bar_starts import bar_choice as module
from sequencer.listening.bar_starts.bar_choice import (
    BAR_METRES,
    bar_features,
    bar_ways,
    laid_bars,
    scored_by_beat,
)
from sequencer.listening.bar_starts.bar_evidence import BarEvidence, bar_evidence
from sequencer.listening.bar_starts.bar_readings import LaidBars, bars_in_context, shifted_readings
from sequencer.listening.bar_starts.bar_weights import BAR_WEIGHTS
from sequencer.listening.barpointer import Path
from sequencer.listening.levels import Counted
from sequencer.listening.signal.spectra import FRAMES, SLOW
from sequencer.timing.song import Reading

EVEN = np.full(8, -np.log(8.0))
TIMES = 2.0 + 0.5 * np.arange(96)
SECONDS = 52.0


def told(ones, n=96, strength=2.0):
    """Evidence that stands out at some beats, in every stroke alike."""
    strokes = np.zeros((n, 4))
    strokes[list(ones)] = strength
    strokes -= strokes.mean(axis=0)
    return BarEvidence(
        strokes, np.zeros((n, 2)), {metre: np.zeros(n) for metre in BAR_METRES}, bass_in=0
    )


def likely(metre):
    return {metre: 0.0}


def laid(evidence, odds, there=None):
    return laid_bars(scored_by_beat(evidence, bar_ways(evidence, EVEN, odds, 4), there))


@pytest.mark.parametrize(("metre", "phase"), [(3, 2), (4, 1), (4, 3), (5, 2), (7, 4)])
def test_the_one_is_where_strokes_stand_out(metre, phase):
    evidence = told(range(phase, 96, metre))

    ways = bar_ways(evidence, EVEN, likely(metre), metre)
    metres, places = laid_bars(scored_by_beat(evidence, ways))

    np.testing.assert_array_equal(np.flatnonzero(places == 0), np.arange(phase, 96, metre))
    assert set(metres.tolist()) == {metre}
    best = int(np.argmax(ways.shares))
    assert (ways.metres[best], ways.phases[best]) == (metre, phase)
    assert ways.shares.sum() == pytest.approx(1.0)


def test_without_any_evidence_a_song_begins_with_its_one():
    ways = bar_ways(told(()), EVEN, likely(4), 4)
    best = int(np.argmax(ways.scores))

    assert (ways.metres[best], ways.phases[best]) == (4, 0)
    assert 0.2 < ways.shares[best] < 0.95


def test_a_song_whose_bass_comes_in_later_may_begin_with_a_pickup():
    plain, late = told(()), told(())
    late = BarEvidence(late.strokes, late.turns, late.returns, bass_in=3)

    def share(evidence, phase):
        ways = bar_ways(evidence, EVEN, likely(4), 4)
        return float(ways.shares[(ways.metres == 4) & (ways.phases == phase)][0])

    assert share(late, 3) > share(plain, 3)


def test_phrases_tell_a_one_that_no_stroke_tells():
    """Sound turns every sixteen beats from beat 2 on."""
    turns = np.zeros((96, 2))
    turns[2::16] = 4.0
    plain = told(())
    evidence = BarEvidence(plain.strokes, turns, plain.returns, 0)

    metres, phases, rows = bar_features(evidence, EVEN, likely(4))

    fours = metres == 4
    column = rows[fours, -4]
    assert phases[fours][int(np.argmax(column))] == 2
    assert column[2] > 3.0
    assert rows.shape == (sum(BAR_METRES), len(BAR_WEIGHTS))


def test_a_metre_that_changes_for_good_is_followed():
    ones = [*range(0, 96, 4), *range(96, 192, 3)]
    evidence = told(ones, n=192)
    there = np.full((192, 8), -5.0)
    there[:96, 4], there[96:, 3] = -0.1, -0.1

    metres, places = laid(evidence, {3: 0.0, 4: 0.0}, there)

    found = np.flatnonzero(places == 0)
    wrong = set(found.tolist()) ^ set(ones)
    assert len(wrong) <= 3
    assert set(metres[:88].tolist()) == {4}
    assert set(metres[104:].tolist()) == {3}


def test_a_doubt_about_the_metre_for_a_few_bars_changes_nothing():
    evidence = told(range(0, 192, 4), n=192)
    there = np.full((192, 8), -5.0)
    there[:, 4] = -0.1
    there[100:112, 4], there[100:112, 3] = -2.0, -0.2

    metres, places = laid(evidence, {3: 0.0, 4: 0.0}, there)

    assert set(metres.tolist()) == {4}
    np.testing.assert_array_equal(np.flatnonzero(places == 0), np.arange(0, 192, 4))


def sounding(one, *, metre=4):
    """Chords that change on each one, a beat's sound on every beat; the network hears beats and no bars."""
    bands = np.full((round(SECONDS * FRAMES), 80), 0.3, np.float32)
    chroma = np.full((round(SECONDS * SLOW), 12), 1e-3, np.float16)
    for i, at in enumerate(TIMES):
        bands[round(at * FRAMES) : round(at * FRAMES) + 6] += 0.3
        bar = (i - one) // metre
        root = (7 * bar) % 12
        low, high = round(at * SLOW), round((at + 0.5) * SLOW)
        for step in (0, 4, 7):
            chroma[low:high, (root + step) % 12] = 1.0
    flat = np.full(len(bands), -3.0)
    return Activations(flat, flat, EVEN, bands), chroma


def counted(metre=4):
    frames = np.round(TIMES * 100).astype(np.int64)
    number = np.arange(len(frames))
    return [Counted(Path(frames, number % metre, number == 0, 100.0, metre), 100.0)]


@pytest.mark.parametrize("one", [1, 2, 3])
def test_harmony_alone_tells_the_one(one):
    heard, chroma = sounding(one)

    evidence = bar_evidence(TIMES, heard, chroma, BAR_METRES)
    lead = [evidence.strokes[p::4, 2].mean() for p in range(4)]
    found = bars_in_context(TIMES, heard, chroma, counted())

    assert int(np.argmax(lead)) == one
    assert (found.metre, found.phase) == (4, one)
    np.testing.assert_array_equal(np.flatnonzero(found.places == 0), np.arange(one, 96, 4))


def test_each_shift_is_a_reading_with_its_share():
    evidence = told(range(1, 96, 4), strength=0.5)
    ways = bar_ways(evidence, EVEN, likely(4), 4)
    places = (np.arange(96) - 1) % 4
    bars = LaidBars(places, np.full(96, 4), 4, 1, ways, (places == 0).astype(float))
    given = (
        Reading(tempo=120.0, metre=4, share=0.7),
        Reading(tempo=120.5, metre=2, share=0.1),
        Reading(tempo=60.0, metre=4, share=0.2),
    )

    own = float(ways.shares[(ways.metres == 4) & (ways.phases == 1)][0])

    found = shifted_readings(given, bars, TIMES)

    assert found[0].one == pytest.approx(TIMES[1])
    assert found[0].share == pytest.approx(0.8 * own, abs=1e-3)
    assert given[2] in found
    fours = [r for r in found if r.metre == 4 and r.tempo == 120.0]
    assert len({r.one for r in fours}) == len(fours) > 1
    assert sum(r.share for r in found) == pytest.approx(1.0, abs=0.06)
    assert [r.share for r in found[1:]] == sorted((r.share for r in found[1:]), reverse=True)


def test_without_evidence_the_metre_is_that_of_the_search_and_of_four_and_two_the_four():
    def share(metre, searched):
        ways = bar_ways(told(()), EVEN, {2: 0.0, 3: 0.0, 4: 0.0}, searched)
        return float(ways.shares[ways.metres == metre].sum())

    assert share(3, 3) > share(3, 4)
    assert share(3, 3) / share(3, 4) == pytest.approx(np.e * share(2, 3) / share(2, 4), rel=1e-6)


def test_the_beat_half_way_through_a_bar_is_told_from_the_others():
    strokes = np.zeros((96, 4))
    strokes[0::4], strokes[2::4] = 2.0, (1.0, 0.5, 0.0, 0.0)
    plain = told(())

    metres, phases, rows = bar_features(
        BarEvidence(strokes, plain.turns, plain.returns, 0), EVEN, likely(4)
    )

    four = rows[(metres == 4) & (phases == 0)][0]
    np.testing.assert_allclose(four[:4], [5 / 3, 11 / 6, 2.0, 2.0])
    np.testing.assert_allclose(four[4:6], [1.0, 0.5])
    assert not rows[metres == 3][:, 4:6].any()


def test_a_bar_that_is_cut_short_moves_the_one_from_there_on(monkeypatch):
    ones = [*range(0, 140, 4), *range(142, 280, 4)]
    evidence = told(ones, n=280, strength=4.0)

    def wrong():
        _, places = laid(evidence, likely(4))
        return len(set(np.flatnonzero(places == 0).tolist()) ^ set(ones))

    monkeypatch.setattr(module, "OTHER_COST", 1e9)
    assert wrong() <= 3
    monkeypatch.setattr(module, "TURN_COST", 1e9)
    assert wrong() > 30


def test_what_returns_after_four_bars_shows_an_edge_where_it_begins():
    """Two phrases of sixteen beats by turns; from beat 66 on what was heard comes again."""
    rng = np.random.default_rng(3)
    frames = round(SECONDS * FRAMES)
    bands = np.zeros((frames, 80), np.float32)
    pages = rng.random((96, 80))
    pages[66:] = pages[50:80]
    for at, page in zip(TIMES, pages, strict=True):
        bands[round((at - 0.02) * FRAMES) : round((at + 0.48) * FRAMES)] = page
    flat = np.full(frames, -3.0)
    heard = Activations(flat, flat, EVEN, bands)

    evidence = bar_evidence(TIMES, heard, np.ones((520, 12), np.float16), BAR_METRES)

    assert int(np.argmax(evidence.returns[4][20:90])) + 20 == pytest.approx(66, abs=1)


def test_the_bass_comes_in_where_the_low_bands_are_as_loud_as_usual():
    heard, chroma = sounding(0)
    heard.bands[: round(TIMES[5] * FRAMES) - 2, :9] = 0.0

    assert bar_evidence(TIMES, heard, chroma, BAR_METRES).bass_in == 5


@pytest.mark.parametrize(
    ("second", "metre"), [(2.0, 4), (0.25, 2)], ids=["in doubt of four", "clear ones of two"]
)
def test_bars_of_two_are_told_only_where_they_are_clear(second, metre):
    """Every second beat stands out, and every fourth a little more; the search found bars of two."""
    plain = told(())
    strokes = told(range(0, 96, 2), strength=2.0).strokes
    strokes = strokes + told(range(0, 96, 4), strength=second).strokes

    ways = bar_ways(BarEvidence(strokes, plain.turns, plain.returns, 0), EVEN, {2: 0.0, 4: 0.0}, 2)

    assert int(ways.metres[np.argmax(ways.scores)]) == metre


def test_ones_are_sure_where_they_stand_out_and_are_told_with_the_bars():
    heard, chroma = sounding(1)

    bars = bars_in_context(TIMES, heard, chroma, counted())

    assert bars.ones.shape == TIMES.shape
    assert bars.ones[bars.places == 0].min() > bars.ones[bars.places != 0].max()
