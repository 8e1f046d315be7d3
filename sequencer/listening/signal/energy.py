"""How strong the music is over time, on a scale a performer can read: 0 the calmest of the track, 1 its fullest."""

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.signal.spectra import SLOW
from sequencer.listening.signal.weighting import LEVEL_OFFSET
from sequencer.timing.loudness import SAME_LOUDNESS, percentile_ranks

POINTS = 2  # per second
_SECONDS = 3  # over which loudness is judged
_SILENT = -70.0  # [dB] quieter than this is no music


def loudness_curve(loudness: Floats) -> Floats:
    """Loudness of each tenth of a second.

    Parameters
    ----------
    loudness : ndarray, shape (m,) [rms, full scale 1]
        Weighted, of all channels mixed to one, at `spectra.SLOW` values per second.

    Returns
    -------
    levels : ndarray, shape (m,) [LUFS]
        At least −70.

    Notes
    -----
    Source: Recommendation ITU-R BS.1770-4, annex 1, for one channel; its absolute gate as the floor. Exact. A clipped master keeps more of its
    contrast in the mix than in its channels, so the curves over a song are of the mix.
    """
    levels: Floats = np.maximum(LEVEL_OFFSET + 10 * np.log10(loudness**2 + 1e-12), _SILENT)
    return levels


def energy_curve(loudness: Floats, duration: float) -> Floats:
    """Energy at evenly spaced points over the whole track: the share of its music that is quieter.

    Parameters
    ----------
    loudness : ndarray, shape (m,) [rms, full scale 1]
        Weighted, at `spectra.SLOW` values per second.
    duration : float
        Of the track [s].

    Returns
    -------
    energy : ndarray, shape (n,) [1]
        0 … 1; `POINTS` per second, at least 2. A track that is equally loud throughout stays near 0.5.

    Notes
    -----
    Source: percentile ranks of short-term loudness over 3 s, EBU Tech 3341; ranks, as loud masters leave few dB between calm and
    full (this project's choice). Exact.
    """
    n = max(2, round(duration * POINTS))
    if not len(loudness) or loudness.max() <= 1e-6:
        return np.zeros(n)
    width = min(_SECONDS * SLOW, len(loudness))
    total = np.convolve(loudness**2, np.ones(width), mode="same")
    shared = np.convolve(np.ones(len(loudness)), np.ones(width), mode="same")
    level = LEVEL_OFFSET + 10 * np.log10(total / shared + 1e-12)
    at = (np.arange(n) + 0.5) * duration / n * SLOW
    points = np.interp(at, np.arange(len(level)), level)
    sounds = points > _SILENT
    energy = np.zeros(n)
    energy[sounds] = percentile_ranks(points[sounds], apart=SAME_LOUDNESS)
    return energy


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
