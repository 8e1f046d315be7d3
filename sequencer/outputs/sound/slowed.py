"""A song slower or faster at the same pitch: as loud as it was, left and right as they were to each other.

A phase vocoder: short spectra are laid a hop apart again, read from the song at another pace; their phases go on from
frame to frame as they did in the song. The phases are those of the sum of the channels, and each channel keeps its own
loudness and how its phase differs from the sum's, so that what was in the middle stays there (channels stretched each by
itself drift apart). Spectra that are not in step sum up to less: the whole is brought back to the loudness of the song.

Source: D. Ellis, A phase vocoder in Matlab (2002); common phases: J. Bonada, Automatic technique in frequency domain for
near-lossless time-scale modification of audio (ICMC 2000), from memory.
"""

import numpy as np
import numpy.typing as npt

from sequencer.arrays import Floats

_WINDOW = 2048  # samples
_HOP = _WINDOW // 4
_AT_ONCE = 400  # frames

_Spectra = npt.NDArray[np.complex128]


def slowed(samples: Floats, speed: float) -> Floats:
    """The song at another speed.

    Parameters
    ----------
    samples : ndarray, shape (n, c) [1]
    speed : float
        1 leaves it unchanged; 0.5 takes twice as long.

    Returns
    -------
    samples : ndarray, shape (n / speed, c) [1]
        With the effective value of `samples`.

    Notes
    -----
    Source: module docstring. Sharp attacks are smeared by up to half a window (23 ms at 44.1 kHz).
    """
    if speed == 1.0 or not samples.size:
        return samples
    out = _laid_out(samples, speed)[: round(len(samples) / speed)]
    before, after = (float(np.sqrt(np.mean(np.square(own)))) for own in (samples, out))
    return out * (before / after) if after > 0.0 else out


def _laid_out(samples: Floats, speed: float) -> Floats:
    """The spectra a hop apart, summed up; memory for a few at a time."""
    window: Floats = np.asarray(np.hanning(_WINDOW + 1)[:-1], dtype=np.float64)
    padded = np.pad(samples, ((_WINDOW // 2, 2 * _WINDOW), (0, 0)))
    count = int(np.ceil(len(samples) / _HOP / speed)) + 1
    out = np.zeros((count * _HOP + _WINDOW, samples.shape[1]))
    weight = np.zeros(len(out))
    usual = (
        2 * np.pi * _HOP * np.arange(_WINDOW // 2 + 1) / _WINDOW
    )  # [rad] that each band turns in a hop
    phase: Floats | None = None
    for low in range(0, count, _AT_ONCE):
        moments = np.arange(low, min(low + _AT_ONCE, count)) * speed  # [hops] of the song
        first = np.floor(moments).astype(np.int64)
        share = (moments - first)[:, None, None]
        here, there = (_spectra(padded, first + more, window) for more in (0, 1))
        middle = here.sum(axis=2)
        step = np.angle(there.sum(axis=2)) - np.angle(middle) - usual
        steps = usual + step - 2 * np.pi * np.round(step / (2 * np.pi))
        begins = np.angle(middle[0]) if phase is None else phase
        ends = begins + np.cumsum(steps, axis=0)
        phases = np.concatenate([begins[None], ends[:-1]])
        phase = ends[-1]
        loud = (1.0 - share) * np.abs(here) + share * np.abs(there)
        turned = phases[:, :, None] + np.angle(here) - np.angle(middle)[:, :, None]
        pieces = np.fft.irfft(loud * np.exp(1j * turned), n=_WINDOW, axis=1) * window[:, None]
        for k, piece in enumerate(pieces):
            at = (low + k) * _HOP
            out[at : at + _WINDOW] += piece
            weight[at : at + _WINDOW] += window**2
    inside = slice(_WINDOW // 2, None)
    return np.asarray(out[inside] / np.maximum(weight[inside], 1e-3)[:, None])


def _spectra(padded: Floats, frames: npt.NDArray[np.int64], window: Floats) -> _Spectra:
    """Short spectra, shape (frames, bands, channels); silence after the end of the song."""
    most = (len(padded) - _WINDOW) // _HOP
    at = np.minimum(frames, most)[:, None] * _HOP + np.arange(_WINDOW)
    return np.asarray(np.fft.rfft(padded[at] * window[:, None], axis=1))
