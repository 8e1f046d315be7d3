"""How likely each moment is a beat, and a bar's first beat, and how likely each metre is.

At `spectra.FRAMES` frames a second, as judged by `network`.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.listening.spectra import SILENT, Spectra, levelled

_NEVER = -12.0  # [nats]
_AUDIBLE = 0.1  # of the scale of `levelled`: 72 dB below the loud parts
_EARLY = 5  # frames by which a beat may precede its sound


@dataclass(frozen=True, slots=True, eq=False)
class Activations:
    """Log odds of beat and downbeat by frame, log probability of metres by track.

    Parameters
    ----------
    beat : ndarray, shape (n,) [nats]
    downbeat : ndarray, shape (n,) [nats]
    metres : ndarray, shape (8,) [nats]
        Mean log probability of a frame that bars have 0 … 7 beats; 0 never occurs.
    bands : ndarray, shape (n, 80) [1]
        What the judgement rests on, see `spectra.levelled`.

    Notes
    -----
    Source: module docstring.
    """

    beat: Floats
    downbeat: Floats
    metres: Floats
    bands: NDArray[np.float32]


def activations_of(spectra: Spectra) -> Activations:
    """Log odds of beat and downbeat for a whole track; none where it is silent."""
    if spectra.loud < SILENT or not len(spectra.mel):
        nothing = np.full(len(spectra.mel), _NEVER)
        return Activations(
            nothing, nothing, np.full(8, -np.log(8.0)), np.zeros((len(nothing), 80), np.float32)
        )
    from threadpoolctl import threadpool_limits

    from sequencer.listening.network import judged

    bands = levelled(spectra.mel, spectra.loud)
    with threadpool_limits(1):  # one core, and so the same sums in the same order each time
        odds, metres = judged(bands)
    sounding = np.flatnonzero(bands.max(axis=1) > _AUDIBLE)
    odds[: max(sounding[0] - _EARLY, 0)] = _NEVER  # the count may go on in a break,
    odds[sounding[-1] + _EARLY :] = _NEVER  # but neither before the music nor after it
    shifted = metres - metres.max(axis=1, keepdims=True)
    chance = shifted - np.log(np.exp(shifted).sum(axis=1, keepdims=True))
    mean = np.concatenate([[-99.0], chance.mean(axis=0, dtype=np.float64)])
    return Activations(odds[:, 0].astype(np.float64), odds[:, 1].astype(np.float64), mean, bands)
