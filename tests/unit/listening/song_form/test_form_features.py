"""Evidence for borders against its definition, written out bar by bar."""

import numpy as np
import pytest

from sequencer.listening.signal.spectra import FRAMES, SLOW, Spectra
from sequencer.listening.song_form.form_features import (
    apart_of,
    bar_edges,
    bar_groups,
    border_evidence,
    checkerboard,
    contrast,
    likeness,
    long_bars,
    repetition_change,
)

RNG = np.random.default_rng(5)
ROWS = RNG.normal(size=(14, 3))
ALIKE = np.exp(-apart_of(ROWS))


def test_distances_are_those_of_rows():
    assert apart_of(ROWS)[2, 5] == pytest.approx(np.sum((ROWS[2] - ROWS[5]) ** 2))
    assert np.abs(np.diag(apart_of(ROWS))).max() < 1e-12


def test_contrast_is_the_distance_of_means_and_less_sure_at_the_ends():
    found = contrast(ROWS, 4)

    assert found[7] == pytest.approx(np.linalg.norm(ROWS[3:7].mean(0) - ROWS[7:11].mean(0)))
    at_2 = np.linalg.norm(ROWS[:2].mean(0) - ROWS[2:6].mean(0)) * np.sqrt(2 / 4)
    assert found[2] == pytest.approx(at_2)
    assert found[0] == found[14] == 0


def test_checkerboard_is_within_less_across():
    found = checkerboard(ALIKE, 4)

    for b, low, high in ((7, 3, 11), (2, 0, 6), (13, 9, 14)):
        within = ALIKE[low:b, low:b].mean() + ALIKE[b:high, b:high].mean()
        assert found[b] == pytest.approx(within / 2 - ALIKE[low:b, b:high].mean())


def test_repetition_changes_where_another_stretch_begins_to_come_again():
    """Bars 1–8 come again as 17–24, 9–16 never: the lags change at 9 and 17, nowhere as much."""
    rng = np.random.default_rng(2)
    tune = rng.normal(size=(8, 12))
    rows = np.concatenate([tune, rng.normal(size=(8, 12)), tune])

    found = repetition_change(np.exp(-apart_of(rows) / 4), 4)

    assert set(np.argsort(found)[-2:]) == {8, 16}
    assert found.max() <= 1
    assert found[4] < 0.5 * found[8]


def test_repetition_is_of_four_bars_in_order_above_the_fifth_that_is_most_alike():
    """The definition bar by bar: lags to both sides, what is above the 0.8 quantile counts, Bray and Curtis's distance."""
    n, reach = 14, 4
    at = [min(max(k, 0), n - 1) for k in range(-2, n + 2)]
    runs = np.array(
        [
            [np.mean([ALIKE[at[i + k], at[j + k]] for k in range(4)]) for j in range(n)]
            for i in range(n)
        ]
    )
    over = np.maximum(0, runs - np.quantile(runs, 0.8))
    lags = np.zeros((n, 2 * n))
    for i in range(n):
        for j in range(n):
            lags[i, n + j - i] = over[i, j] * (abs(i - j) >= 2)

    found = repetition_change(ALIKE, reach)

    for b in range(1, n):
        before, after = lags[max(0, b - reach) : b].mean(0), lags[b : b + reach].mean(0)
        apart = np.abs(before - after).sum() / (before.sum() + after.sum() + 0.5)
        assert found[b] == pytest.approx(apart)


def test_short_bars_are_taken_in_pairs_until_they_are_long():
    assert len(long_bars(np.arange(0, 40, 0.5))) == 20  # 2 s: twice
    assert len(long_bars(np.arange(0, 40, 1.2))) == 34
    assert len(long_bars(np.zeros(0))) == 0


def test_the_last_bar_ends_with_the_track_or_is_as_long_as_the_others():
    assert bar_edges(np.array([0.0, 2.0, 4.0]), 5.0).tolist() == [0, 2, 4, 5]
    assert bar_edges(np.array([0.0, 2.0, 4.0]), 30.0).tolist() == [0, 2, 4, 6]


def test_views_are_what_sounds_in_the_bar():
    """Two bars: C then G; low sound then high; quiet then ten times as loud; a stroke in the middle of the second."""
    mel = np.full((4 * FRAMES, 80), -4.0)
    mel[: 2 * FRAMES, :40] = -1.0
    mel[2 * FRAMES :, 40:] = -1.0
    mel[3 * FRAMES, :] = 0.0
    chroma = np.zeros((4 * SLOW, 12))
    chroma[: 2 * SLOW, 0] = chroma[2 * SLOW :, 7] = 1.0
    loud = np.repeat([0.01, 0.1], 2 * SLOW)
    spectra = Spectra(mel.astype(np.float16), chroma.astype(np.float16), loud, 4.0)

    groups = bar_groups(spectra, np.array([0.0, 2.0]))

    first, second = groups["chroma"]
    assert (first.reshape(4, 12).argmax(axis=1) == 0).all()
    assert (second.reshape(4, 12).argmax(axis=1) == 7).all()
    assert groups["timbre"][0, :8].min() > 0 > groups["timbre"][0, 8:].max()
    assert groups["loud"][1, 0] == -groups["loud"][0, 0] > 0.9
    rises = groups["rhythm"][1].reshape(8, 3)
    assert rises[:, 0].argmax() == 4  # slots of a quarter of a second; low bands
    assert {len(row) for row in groups["rhythm"]} == {24}
    for name, rows in groups.items():
        assert np.mean(np.sum(rows**2, axis=1)) < 1, name


def test_columns_are_in_the_order_that_the_weights_have():
    groups = {name: RNG.normal(size=(20, 2)) for name in ("chroma", "timbre", "rhythm", "loud")}
    alike = likeness(groups)

    found = border_evidence(groups, alike)

    assert found.shape == (21, 16)
    assert found[:, 3] == pytest.approx(contrast(groups["timbre"], 8))
    assert found[:, 8] == pytest.approx(checkerboard(alike, 4))
    assert found[:, 11] == pytest.approx(repetition_change(alike, 8))
    whole = sum(contrast(rows, 4) for rows in groups.values())
    assert found[:, 12] == pytest.approx(whole)
    over = [whole[b] - max(whole[[b - 2, b - 1, b + 1, b + 2]]) for b in range(2, 19)]
    assert found[2:19, 13] == pytest.approx(over)
    inner = whole[1:-1]
    assert found[9, 14] == pytest.approx((whole[9] - np.median(inner)) / inner.std(), rel=1e-4)
