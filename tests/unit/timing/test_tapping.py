"""What taps say about a count, held against taps that were made from a known one."""

import numpy as np
import pytest

from sequencer.timing.tapping import (
    FEWEST_TAPS,
    beats_of_pairs,
    fit_taps,
    lead_of_strokes,
    match_taps,
)

PERIOD = 0.5017  # [s]
BEATS = 3.21 + PERIOD * np.arange(240)


def tapped(beats, seed, *, early=0.03, sway=0.015):
    """Taps of a person on beats."""
    return np.asarray(beats) - early + np.random.default_rng(seed).normal(0, sway, len(beats))


@pytest.mark.parametrize("seed", range(20))
def test_tempo_and_phase_come_back(seed):
    """Within four standard errors of least squares through n taps: σ √(12 / n³) of the period."""
    taps = tapped(BEATS[20:60], seed)
    fit = fit_taps(taps)
    bound = 0.015 * np.sqrt(12 / 40**3)
    assert fit.period == pytest.approx(PERIOD, abs=4 * bound)
    assert fit.start == pytest.approx(BEATS[20] - 0.03, abs=4 * 0.015 * 2 / np.sqrt(40))
    assert fit.period_error == pytest.approx(bound, rel=0.5)
    assert fit.sway == pytest.approx(0.015, rel=0.6)
    assert fit.tempo == pytest.approx(60 / fit.period)


@pytest.mark.parametrize("seed", range(20))
def test_slips_change_nothing_much(seed):
    """A fifth of the taps anywhere, three beats left out, a finger that bounces, a tap given twice."""
    draw = np.random.default_rng(seed)
    taps = tapped(np.delete(BEATS[20:70], [7, 8, 30]), seed)
    wild = draw.choice(np.arange(1, len(taps)), 9, replace=False)
    taps[wild] += draw.uniform(0.1, 0.24, 9) * draw.choice([-1, 1], 9)
    taps = np.concatenate([taps, [taps[0] + 0.05, taps[3] + 0.2]])
    fit = fit_taps(draw.permutation(taps))
    assert fit.period == pytest.approx(PERIOD, abs=6e-4)
    assert fit.slips >= 8
    assert fit.sway < 0.03


@pytest.mark.parametrize("beat", [0, 7, 29])
def test_a_finger_that_brushes_the_key_before_a_tap_takes_nothing_from_it(beat):
    """Of the two the one on the beat counts, at the start, within and at the end."""
    beats = BEATS[20:50]
    for off in (-0.1, 0.1):
        fit = fit_taps(np.append(beats, beats[beat] + off))
        assert fit.start == pytest.approx(beats[0])
        assert fit.period == pytest.approx(PERIOD)
        assert (fit.used, fit.slips) == (30, 1)


def test_a_long_pause_loses_no_count():
    """Eight beats, a pause of a minute, eight beats: the tempo is as good as the minute is long."""
    taps = tapped(np.concatenate([BEATS[:8], BEATS[128:136]]), 3, sway=0.004)
    assert fit_taps(taps).period == pytest.approx(PERIOD, abs=1e-4)


@pytest.mark.parametrize("seed", range(5))
def test_two_runs_that_nobody_can_count_between_are_not_surer_than_each_of_them(seed):
    """A beat more or less in the pause fits as well: the tempo that was tapped lies within three of the errors that are told."""
    beats = np.concatenate([BEATS[:8], BEATS[:8] + 240.4 * PERIOD])
    fit = fit_taps(tapped(beats, seed, sway=0.02))
    assert fit.lost
    assert fit.period == pytest.approx(PERIOD, abs=3 * fit.period_error)
    alone = fit_taps(tapped(beats, seed, sway=0.02)[:8]).period_error
    assert fit.period_error > 0.3 * alone


def test_two_runs_that_do_not_meet_are_told_apart_however_exact_each_is():
    fit = fit_taps(np.concatenate([BEATS[:10], BEATS[:10] + 60.4 * PERIOD]))
    assert (fit.lost, fit.used) == (True, 20)
    assert fit.period == pytest.approx(PERIOD)
    assert fit.start == pytest.approx(BEATS[0])


@pytest.mark.parametrize("apart", [0.13, 0.17])
def test_a_gallop_counts_by_the_second_of_each_pair(apart):
    taps = np.sort(np.concatenate([BEATS[:16], BEATS[:16] - apart]))
    beats, gap = beats_of_pairs(taps)
    assert beats == pytest.approx(BEATS[:16])
    assert gap == pytest.approx(apart)
    assert beats_of_pairs(np.delete(taps, 9))[0] == pytest.approx(BEATS[[*range(4), *range(5, 16)]])
    assert fit_taps(beats).period == pytest.approx(PERIOD)


@pytest.mark.parametrize("seed", range(5))
def test_even_taps_are_no_pairs(seed):
    assert beats_of_pairs(tapped(BEATS[:24], seed, sway=0.03)) is None
    assert beats_of_pairs(np.delete(tapped(BEATS[:24], seed), [5, 11, 12])) is None
    assert beats_of_pairs(BEATS[:6]) is None
    slower = np.cumsum([0.4] * 10 + [0.7] * 10)  # two tempos one after the other are no gallop
    assert beats_of_pairs(slower) is None


def test_taps_without_any_error_are_met_exactly():
    fit = fit_taps(BEATS[:12])
    assert (fit.period, fit.start) == (pytest.approx(PERIOD), pytest.approx(BEATS[0]))
    assert fit.sway == pytest.approx(0, abs=1e-9)
    assert (fit.used, fit.slips) == (12, 0)


def test_the_count_begins_with_the_first_tap_that_is_none_of_the_slips():
    """The first one comes a fifth of a second late: it tells nothing."""
    taps = tapped(BEATS[20:50], 6, early=0.0, sway=0.005)
    taps[0] += 0.2
    assert fit_taps(taps).start == pytest.approx(BEATS[21], abs=0.01)


@pytest.mark.parametrize("taps", [[], BEATS[: FEWEST_TAPS - 1], np.arange(2001) * 0.3])
def test_too_few_and_too_many_are_refused(taps):
    with pytest.raises(ValueError, match=r"more than 2000 taps|tap at least 8"):
        fit_taps(taps)


@pytest.mark.parametrize("seed", range(5))
@pytest.mark.parametrize("early", [-0.04, 0.03, 0.09])
def test_how_taps_go_with_known_beats(seed, early):
    middles = (BEATS[1:] + BEATS[:-1]) / 2
    for row, relation, odd in (
        (BEATS[10:40], "same", False), (middles[10:40], "between", False),
        (BEATS[10:60:2], "half", False), (BEATS[11:60:2], "half", True),
        (np.sort(np.concatenate([BEATS[10:40], middles[10:40]])), "double", False),
    ):  # fmt: skip
        own = early if relation != "double" else early / 3
        match = match_taps(tapped(row, seed, early=own, sway=0.01), BEATS)
        assert (match.relation, match.odd) == (relation, odd)
        assert match.offset == pytest.approx(-own, abs=0.01)
        assert match.sway == pytest.approx(0.01, rel=0.8)


def test_beats_that_sway_are_followed():
    """A count that speeds up by a tenth: taps on it go with it, though no one tempo does."""
    beats = 2 + np.cumsum(np.linspace(0.55, 0.5, 120))
    taps = tapped(beats[5:115], 1)
    assert match_taps(taps, beats).relation == "same"
    assert fit_taps(taps).sway > 0.08


@pytest.mark.parametrize("other", [0.41, 0.47, 0.55, 0.61, 0.67, 0.7525, 0.9])
def test_taps_at_another_tempo_go_with_nothing(other):
    assert match_taps(1.0 + other * np.arange(40), BEATS) is None


@pytest.mark.parametrize("other", [0.46, 0.48, 0.525, 0.54])
def test_a_few_taps_at_nearly_the_tempo_drift_away(other):
    assert match_taps(BEATS[4] + other * np.arange(10), BEATS) is None


def test_taps_that_are_too_few_or_without_beats_go_with_nothing():
    assert match_taps(BEATS[:12], []) is None
    assert match_taps(BEATS[:5], BEATS) is None


def test_strokes_tell_where_the_beat_is():
    """Strokes on the beats, 25 ms behind the count, among others that are on no beat."""
    draw = np.random.default_rng(4)
    other = draw.uniform(0, 60, 60)
    strokes = np.concatenate([BEATS[:100] + 0.025 + draw.normal(0, 0.004, 100), other])
    strengths = np.ones(len(strokes))
    lead = lead_of_strokes(PERIOD, BEATS[0], strokes, strengths, (BEATS[0], BEATS[90]))
    assert lead == pytest.approx(0.025, abs=0.004)
    weak = np.concatenate([strokes[:100], strokes[:100] - 0.06])  # as many, but softer
    soft = np.concatenate([np.ones(100), np.full(100, 0.3)])
    lead = lead_of_strokes(PERIOD, BEATS[0], np.flip(weak), np.flip(soft), (BEATS[0], BEATS[90]))
    assert lead == pytest.approx(0.025, abs=0.004)
    lead = lead_of_strokes(PERIOD, BEATS[0], weak, 1.3 - soft, (BEATS[0], BEATS[90]))
    assert lead == pytest.approx(-0.035, abs=0.004)
    assert lead_of_strokes(PERIOD, BEATS[0], other, np.ones(60), (0, 60)) is None
    assert lead_of_strokes(PERIOD, BEATS[0], [], [], (0, 60)) is None
