"""Weighting and level against Recommendation ITU-R BS.1770-4."""

import numpy as np
import pytest
from scipy.signal import sosfilt

from sequencer.listening.signal.energy import loudness_curve
from sequencer.listening.signal.weighting import weighting_filter


def test_coefficients_for_48_khz_are_those_of_the_standard() -> None:
    # Source: ITU-R BS.1770-4, annex 1, tables 1 and 2 (as printed, 14 digits; typed from memory).
    shelf, high_pass = weighting_filter(48_000.0)
    assert shelf == pytest.approx(
        [1.53512485958697, -2.69169618940638, 1.19839281085285, 1.0, -1.69065929318241, 0.73248077421585],
        abs=1e-8,
    )  # fmt: skip
    assert high_pass == pytest.approx(
        [1.0, -2.0, 1.0, 1.0, -1.99004745483398, 0.99007225036621], abs=1e-8
    )


@pytest.mark.parametrize("rate", [22_050, 48_000])
def test_a_full_scale_sine_of_997_hz_reads_minus_3_01(rate: int) -> None:
    # Source: ITU-R BS.1770-4, annex 1: "a 0 dB FS, 997 Hz sine … in one channel … −3.01 LKFS".
    time = np.arange(4 * rate) / rate
    weighted = sosfilt(weighting_filter(rate), np.sin(2 * np.pi * 997 * time))
    level = np.sqrt(np.mean(weighted[rate:] ** 2))
    # 0.04: the bilinear transform bends the shelf a little at the lower rate
    assert loudness_curve(np.array([level]))[0] == pytest.approx(-3.01, abs=0.04)


def test_other_rates_weigh_like_48_khz() -> None:
    # The curve of the standard, up to a third of the lower rate: the bilinear transform bends it above.
    for frequency in (30.0, 60.0, 250.0, 1000.0, 3000.0, 6000.0):
        gains = []
        for rate in (22_050, 48_000):
            z = np.exp(2j * np.pi * frequency / rate * np.arange(3) * -1)
            gain = 1.0
            for row in weighting_filter(rate):
                gain *= abs(np.dot(row[:3], z) / np.dot(row[3:], z))
            gains.append(20 * np.log10(gain))
        assert gains[0] == pytest.approx(gains[1], abs=0.1)
