"""Strokes of the music, and how bright it sounds: from the mel bands."""

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.signal.energy import POINTS
from sequencer.listening.signal.spectra import FRAMES, SILENT_LEVEL, Spectra, levelled

_BLOCK = 30_000  # frames
_BACK = 2  # frames: how far apart the spectra are whose rise is a stroke
_WIDE = 1  # bands to each side in which a tone that moves is still the same
_NEAR = 3  # frames in which a stroke is the strongest
_AROUND = 20  # frames over whose mean a stroke rises
_CLEAR = 0.12  # [1] of the strong strokes: what is weaker is none
_STRONG = 95  # percentile of strokes that counts as strength 1
_FAINT = 0.15  # [1] of the scale of the bands: strokes of a track with nothing stronger are noise


def onsets_of(spectra: Spectra) -> tuple[Floats, Floats]:
    """Times and strengths of strokes.

    Parameters
    ----------
    spectra : Spectra

    Returns
    -------
    times : ndarray, shape (n,) [s]
        Rising, to one frame (1/50 s).
    strengths : ndarray, shape (n,) [1]
        1 for the strong strokes of the track; at most 2.

    Notes
    -----
    Source: spectral flux whose past is widened over neighbouring bands, S. Böck and G. Widmer, DAFx 2013, with thresholds of
    our own; from memory.
    """
    rise = _rise(spectra)
    if len(rise) < _AROUND or spectra.loud < SILENT_LEVEL:
        return np.zeros(0), np.zeros(0)
    around = np.convolve(rise, np.ones(_AROUND) / _AROUND, mode="same")
    above = rise - around
    window = np.lib.stride_tricks.sliding_window_view(
        np.pad(rise, _NEAR, constant_values=0.0), 2 * _NEAR + 1
    )
    first = np.append(True, rise[1:] > rise[:-1])  # of equal neighbours one
    peaks = np.flatnonzero((rise >= window.max(axis=1)) & first & (above > 0))
    if not len(peaks):
        return np.zeros(0), np.zeros(0)
    strong = max(float(np.percentile(above[peaks], _STRONG)), _FAINT)
    strength = above[peaks] / strong
    kept = strength >= _CLEAR
    return peaks[kept] / FRAMES, np.minimum(strength[kept], 2.0)


def brightness_of(spectra: Spectra) -> Floats:
    """How high the sound lies at evenly spaced points over the track.

    Parameters
    ----------
    spectra : Spectra

    Returns
    -------
    brightness : ndarray, shape (n,) [1]
        0 where all lies in the lowest band, 1 where all lies in the highest; `energy.POINTS` per second, at least 2. Where there
        is silence, the value before.

    Notes
    -----
    Source: spectral centroid on the mel scale (G. Peeters, CUIDADO report, IRCAM 2004), over levels in dB above the floor. From
    memory.
    """
    count = max(2, round(spectra.duration * POINTS))
    weight, moment = np.zeros(count), np.zeros(count)
    if spectra.loud < SILENT_LEVEL:
        return weight
    for start in range(0, len(spectra.mel), _BLOCK):
        bands = levelled(spectra.mel[start : start + _BLOCK], spectra.loud).astype(np.float64)
        place = (np.arange(start, start + len(bands)) / FRAMES / spectra.duration * count).astype(
            np.int64
        )
        place = np.minimum(place, count - 1)
        weight += np.bincount(place, weights=bands.sum(axis=1), minlength=count)
        scale = np.linspace(0.0, 1.0, bands.shape[1])
        moment += np.bincount(place, weights=bands @ scale, minlength=count)
    sounds = weight > 0
    if not sounds.any():
        return np.zeros(count)
    last = np.maximum.accumulate(np.where(sounds, np.arange(count), -1))
    last[last < 0] = int(np.argmax(sounds))
    return np.asarray(moment[last] / weight[last])


def _rise(spectra: Spectra) -> Floats:
    """How much the bands rise at each frame, mean over all bands, shape (n,) [1]."""
    found = []
    for start in range(0, len(spectra.mel), _BLOCK):
        low = max(start - _BACK, 0)
        bands = levelled(spectra.mel[low : start + _BLOCK], spectra.loud)
        padded = np.pad(bands, ((0, 0), (_WIDE, _WIDE)), mode="edge")
        past = np.lib.stride_tricks.sliding_window_view(padded, 2 * _WIDE + 1, axis=1).max(axis=2)
        rise = np.zeros(len(bands))
        rise[_BACK:] = np.maximum(bands[_BACK:] - past[:-_BACK], 0.0).mean(axis=1)
        found.append(rise[start - low :])
    return np.concatenate(found) if found else np.zeros(0)
