"""How strong the music is over time, on a scale a performer can read: 0 quiet, 1 the track's loud parts."""

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.spectra import SLOW

POINTS = 2  # per second
_RANGE = 40.0  # [dB] below the loud parts that counts as 0


def energy_curve(loudness: Floats, duration: float) -> Floats:
    """Energy at evenly spaced points over the whole track.

    Parameters
    ----------
    loudness : ndarray, shape (m,) [rms, full scale 1]
        At `spectra.SLOW` values per second.
    duration : float
        Of the track [s].

    Returns
    -------
    energy : ndarray, shape (n,) [1]
        0 … 1; `POINTS` per second, at least 2.

    Notes
    -----
    Source: level in dB over 1 s, relative to the 95th percentile (this project's choice). Exact.
    """
    n = max(2, round(duration * POINTS))
    if not len(loudness) or loudness.max() <= 1e-6:
        return np.zeros(n)
    power = np.convolve(loudness**2, np.ones(SLOW) / SLOW, mode="same")
    level = 10 * np.log10(power + 1e-12)
    height = np.clip(1 + (level - np.percentile(level, 95)) / _RANGE, 0, 1)
    at = (np.arange(n) + 0.5) * duration / n * SLOW
    return np.interp(at, np.arange(len(height)), height)


def mean_energy(energy: Floats, duration: float, start: float, end: float) -> float:
    """Mean of a curve of `energy_curve`, shape (n,) [1], between two times of the track [s].

    Notes
    -----
    Source: mean. Exact to one point of the curve.
    """
    n = len(energy)
    low = min(int(start / duration * n), n - 1)
    high = max(int(np.ceil(end / duration * n)), low + 1)
    return float(np.mean(energy[low:high]))
