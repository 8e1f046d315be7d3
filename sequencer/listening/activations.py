"""How likely each moment is a beat, and a bar's first beat.

Probabilities at `spectra.FRAMES` frames a second.
"""

from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.spectra import FRAMES, SILENT, Spectra, levelled


@dataclass(frozen=True, slots=True, eq=False)
class Activations:
    """Probabilities of beat and downbeat by frame.

    Parameters
    ----------
    beat : ndarray, shape (n,) [1]
    downbeat : ndarray, shape (n,) [1]

    Notes
    -----
    Source: module docstring.
    """

    beat: Floats
    downbeat: Floats


def activations_of(spectra: Spectra) -> Activations:
    """Probabilities of beat and downbeat for a whole track."""
    if spectra.loud < SILENT:
        nothing = np.zeros(len(spectra.mel))
        return Activations(nothing, nothing)
    bands = levelled(spectra.mel, spectra.loud)
    rise = np.zeros_like(bands)
    rise[2:] = np.maximum(bands[2:] - bands[:-2], 0)
    low, high = rise[:, :10].mean(axis=1), rise[:, 10:].mean(axis=1)
    strength = _standing_out(low + 2 * high)
    bass = _standing_out(low)
    beat = _logistic(2.0 * strength - 2.5)
    downbeat = beat * _logistic(1.0 * bass - 1.5)
    return Activations(beat, downbeat)


def _standing_out(strength: Floats) -> Floats:
    """Strength over its surroundings of 4 s, in their spread; peaks only."""
    from scipy.ndimage import maximum_filter1d, uniform_filter1d

    width = 4 * FRAMES + 1
    mean = uniform_filter1d(strength, width)
    spread = np.sqrt(np.maximum(uniform_filter1d(strength**2, width) - mean**2, 1e-6))
    standing = (strength - mean) / (spread + 0.01)
    peak = strength == maximum_filter1d(strength, 5)
    return np.where(peak, standing, np.minimum(standing, -1.0))


def _logistic(x: Floats) -> Floats:
    return np.asarray(1 / (1 + np.exp(-x)), dtype=np.float64)
