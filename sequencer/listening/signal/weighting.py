"""Loudness as ears judge it: samples weighted by frequency before their power is taken."""

from math import pi, tan

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats

LEVEL_OFFSET = -0.691  # [dB] so that a sine of 997 Hz at full scale in one channel is −3.01

# Shelf of the head, and high pass: corner [Hz], quality [1], gain [dB]
_SHELF = (1681.974450955533, 0.7071752369554196, 3.999843853973347)
_HIGH_PASS = (38.13547087602444, 0.5003270373238773)
_SHELF_POWER = 0.4996667741545416


def weighting_filter(rate: float) -> Floats:
    """Second-order sections of the K-weighting.

    Parameters
    ----------
    rate : float
        Samples per second [Hz].

    Returns
    -------
    sections : ndarray, shape (2, 6) [1]
        Numerator and denominator of each, as scipy's `sosfilt` takes them.

    Notes
    -----
    Source: Recommendation ITU-R BS.1770-4, annex 1, whose coefficients for 48 kHz these analogue prototypes give through the
    bilinear transform to 8 digits; the prototypes' values are those in common use, from memory.
    """
    corner, quality, gain = _SHELF
    k = tan(pi * corner / rate)
    high = 10 ** (gain / 20)
    band = high**_SHELF_POWER
    below = 1 + k / quality + k * k
    shelf = [
        (high + band * k / quality + k * k) / below,
        2 * (k * k - high) / below,
        (high - band * k / quality + k * k) / below,
        1.0,
        2 * (k * k - 1) / below,
        (1 - k / quality + k * k) / below,
    ]
    corner, quality = _HIGH_PASS
    k = tan(pi * corner / rate)
    below = 1 + k / quality + k * k
    passed = [1.0, -2.0, 1.0, 1.0, 2 * (k * k - 1) / below, (1 - k / quality + k * k) / below]
    return np.array([shelf, passed])


class Weighting:
    """Weights the blocks of a track in order.

    Parameters
    ----------
    rate : float
        Samples per second [Hz].
    """

    def __init__(self, rate: float) -> None:
        self._sections = weighting_filter(rate)
        self._state = np.zeros((2, 2))

    def take(self, block: NDArray[np.float32]) -> NDArray[np.float32]:
        """The next block weighted, shape (n,) [full scale 1]."""
        from scipy.signal import sosfilt

        if not len(block):
            return block
        weighted, self._state = sosfilt(self._sections, block, zi=self._state)
        return np.asarray(weighted, dtype=np.float32)
