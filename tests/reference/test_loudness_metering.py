"""Integrated, momentary and short-term loudness against the cases of EBU Tech 3341, made here from sines of 1 kHz.

Source: EBU Tech 3341 (2016), table 1, "minimum requirements test signals": levels, lengths and expected readings, all ± 0.1
LU; typed from memory.
"""

import numpy as np
import pytest

from sequencer.listening.signal.loudness_meter import (
    MOMENTARY,
    SHORT_TERM,
    LoudnessMeter,
    block_loudness,
    integrated_loudness,
)

RATE = 48_000


def powers_of(*parts, channels=2, rate=RATE, block=70_001):
    """Parts as seconds and dBFS of the peak: one for all channels, or one for each; taken in uneven blocks."""
    pieces, begun = [], 0
    for seconds, level in parts:
        count = round(seconds * rate)
        sine = np.sin(2 * np.pi * 1000 * (begun + np.arange(count)) / rate)
        peaks = 10 ** (np.broadcast_to(np.asarray(level, dtype=float), channels) / 20)
        pieces.append(sine[:, None] * peaks)
        begun += count
    samples = np.concatenate(pieces).astype(np.float32)
    meter = LoudnessMeter(rate, channels)
    for start in range(0, len(samples), block):
        meter.take(samples[start : start + block])
    return meter.powers()


@pytest.mark.parametrize("rate", [48_000, 44_100, 22_050, 11_025])
@pytest.mark.parametrize("level", [-23.0, -33.0])
def test_a_steady_tone_reads_its_level_everywhere(level, rate):
    """Cases 1 and 2; other rates besides, which the standard allows."""
    powers = powers_of((20, level), rate=rate)

    off = 0.1 if rate > 40_000 else 0.15  # the bilinear transform bends the shelf at low rates
    assert integrated_loudness(powers) == pytest.approx(level, abs=off)
    assert block_loudness(powers, MOMENTARY)[3:] == pytest.approx(level, abs=off)
    assert block_loudness(powers, SHORT_TERM) == pytest.approx(level, abs=off)
    assert len(powers) == 400


@pytest.mark.parametrize(
    "parts",
    [
        [(10, -36), (60, -23), (10, -36)],
        [(10, -72), (10, -36), (60, -23), (10, -36), (10, -72)],
        [(20, -26), (20.1, -20), (20, -26)],
    ],
    ids=["3: relative gate", "4: both gates", "5: mean of power"],
)
def test_gates_leave_out_what_is_far_below(parts):
    """Cases 3 to 5: −23 LUFS each."""
    assert integrated_loudness(powers_of(*parts)) == pytest.approx(-23.0, abs=0.1)


def test_surround_channels_weigh_more_and_low_effects_nothing():
    """Case 6: left and right −28, centre −24, surround −30 dBFS read −23 LUFS; the same with a low-effects channel at −10."""
    five = powers_of((20, [-28, -28, -24, -30, -30]), channels=5)
    six = powers_of((20, [-28, -28, -24, -10, -30, -30]), channels=6)
    assert integrated_loudness(five) == pytest.approx(-23.0, abs=0.1)
    assert integrated_loudness(six) == pytest.approx(-23.0, abs=0.1)


def test_short_term_loudness_is_a_mean_over_three_seconds():
    """Case 9: −20 dBFS for 1.34 s and −30 dBFS for 1.66 s, five times: −23 LUFS, constant after 3 s."""
    powers = powers_of(*[(1.34, -20), (1.66, -30)] * 5)
    assert block_loudness(powers, SHORT_TERM) == pytest.approx(-23.0, abs=0.1)


def test_momentary_loudness_is_a_mean_over_four_tenths():
    """Case 12: −20 dBFS for 0.18 s and −30 dBFS for 0.22 s, 25 times: −23 LUFS."""
    powers = powers_of(*[(0.18, -20), (0.22, -30)] * 25)
    assert block_loudness(powers, MOMENTARY)[3:] == pytest.approx(-23.0, abs=0.15)


def test_one_channel_is_half_as_strong_as_two():
    """ITU-R BS.1770-4, annex 1: a sine of 0 dBFS in one channel reads −3.01 LUFS."""
    assert integrated_loudness(powers_of((5, 0.0), channels=1)) == pytest.approx(-3.01, abs=0.05)


def test_silence_and_very_little_are_no_programme():
    assert integrated_loudness(np.zeros(400)) == -70.0
    assert integrated_loudness(np.zeros(3)) == -70.0
    assert LoudnessMeter(RATE, 2).powers().shape == (0,)
