"""How likely each moment is a beat, and a bar's first beat, and how likely each metre is.

At `spectra.FRAMES` frames a second, as judged by `network`.
"""

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.listening.signal.spectra import SILENT_LEVEL, Spectra, levelled

_NEVER = -12.0  # [nats]
_UNHEARD = (
    -1.52,
    -2.31,
)  # [nats]: probabilities of 0.18 and 0.09, which favour no tempo over another
_AUDIBLE = 0.1  # on the scale of `levelled`: 72 dB below the loud parts
_EARLY = 5  # frames by which a beat may precede its sound
_HALF, _STEP = 100, 25  # frames: half of 4 s, and from one such window to the next
_EDGE = 10  # frames at the ends of a window that may be something else
_LOUDEST = 6  # number of bands that rise most
_PEAKED, _UNEVEN = 2.2, 0.009  # steady noise has no peaks in time or pitch
_BLOCK = 30_000  # frames


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
        The network's input, see `spectra.levelled`.
    metres_there : ndarray, shape (n, 8) [nats]
        Log probability of each metre by frame; without rows where it is not known.

    Notes
    -----
    Source: module docstring.
    """

    beat: Floats
    downbeat: Floats
    metres: Floats
    bands: NDArray[np.float32]
    metres_there: NDArray[np.float16] = field(default_factory=lambda: np.zeros((0, 8), np.float16))


def activations_of(spectra: Spectra) -> Activations:
    """Log odds of beat and downbeat for a whole track; none if it is silent."""
    if spectra.loud < SILENT_LEVEL or not len(spectra.mel):
        nothing = np.full(len(spectra.mel), _NEVER)
        return Activations(
            nothing, nothing, np.full(8, -np.log(8.0)), np.zeros((len(nothing), 80), np.float32)
        )
    from threadpoolctl import threadpool_limits

    from sequencer.listening.network import judged

    bands = levelled(spectra.mel, spectra.loud)
    with threadpool_limits(1):  # one core, so that sums are taken in the same order every time
        odds, metres = judged(bands)
    sounding = np.flatnonzero(bands.max(axis=1) > _AUDIBLE)
    odds[nothing_heard(bands)] = _UNHEARD  # where the network would go on counting from nothing
    odds[: max(sounding[0] - _EARLY, 0)] = _NEVER  # the count may go on in a break,
    odds[sounding[-1] + _EARLY :] = _NEVER  # but not before the music or after it
    shifted = metres - metres.max(axis=1, keepdims=True)
    chance = shifted - np.log(np.exp(shifted).sum(axis=1, keepdims=True))
    mean = np.concatenate([[-99.0], chance.mean(axis=0, dtype=np.float64)])
    there = np.full((len(chance), 8), -99.0, np.float16)
    there[:, 1:] = chance
    return Activations(
        odds[:, 0].astype(np.float64), odds[:, 1].astype(np.float64), mean, bands, there
    )


def nothing_heard(bands: NDArray[np.float32]) -> NDArray[np.bool_]:
    """Frames in 4 s or more of silence, or of noise with no peaks in time or pitch.

    Parameters
    ----------
    bands : ndarray, shape (n, 80) [1]
        See `spectra.levelled`.

    Returns
    -------
    nothing : ndarray, shape (n,) [1]
        True where there is nothing to count by.

    Notes
    -----
    Source: this project. Rises in noise are spread evenly about their median, those of a stroke lie only
    above it; the mean spectrum of noise is smooth, that of a tone is not. Limits fitted (benchmarks).
    """
    nothing = np.zeros(len(bands), np.bool_)
    rises = np.zeros(len(bands), np.float32)
    for start in range(0, len(bands), _BLOCK):
        before = min(start, 2)
        part = _rises(bands[start - before : start + _BLOCK + 1])
        rises[start : start + _BLOCK] = part[before : before + _BLOCK]
    for middle in range(_HALF, len(bands) - _HALF + 1, _STEP):
        here = slice(middle - _HALF, middle + _HALF)
        if _is_silence(bands[here]) or _is_noise(bands[here], rises[here]):
            nothing[middle - _HALF + _EDGE : middle + _HALF - _EDGE] = True
    return nothing


def _is_silence(bands: NDArray[np.float32]) -> bool:
    return float(bands.max()) <= _AUDIBLE


def _is_noise(bands: NDArray[np.float32], rises: NDArray[np.float32]) -> bool:
    low, median, high = np.percentile(rises, [3, 50, 99])
    mean = bands.mean(axis=0)
    even = float(np.abs(np.diff(mean, 2)).mean()) < _UNEVEN
    return bool(high - median < _PEAKED * (median - low) and even and mean.mean() > _AUDIBLE / 2)


def _rises(bands: NDArray[np.float32]) -> NDArray[np.float32]:
    """Rise of the bands that rise most, frame by frame; each band is combined with its neighbour."""
    smooth = bands[:-1] + bands[1:]
    rise = np.zeros(len(bands), np.float32)
    if len(bands) > 3:
        up = np.partition(smooth[2:] - smooth[:-2], -_LOUDEST, axis=1)[:, -_LOUDEST:]
        rise[2:-1] = np.maximum(up, 0).mean(axis=1)
    return rise
