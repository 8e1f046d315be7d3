"""Input features of the analysis: mel bands at 50 frames per second, chroma at 10, loudness at 10.

Frame n is centred on n / FRAMES seconds. Mel bands are log10 of the magnitude (full scale sine = 0),
relative to the loud parts of the same track, so that a quiet copy gives the same result as a loud one. Mel
scale:
2595 log10(1 + f/700), D. O'Shaughnessy, Speech Communication (Addison-Wesley 1987). Chroma: energy of the
twelve pitch classes, A = 440 Hz, equal temperament.
"""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.listening.signal.audio import SAMPLE_RATE, Samples
from sequencer.listening.signal.weighting import Weighting

FRAMES = 50  # per second, of the mel bands
SLOW = 10  # per second, of chroma and loudness
BANDS = 80
HOP = SAMPLE_RATE // FRAMES
_FLOOR = -4.0  # log10 below the loud parts at which a band counts as silent
SILENT_LEVEL = -4.3  # log10: a track whose loud parts are below this is silent
_WINDOW = 2048
_LONG = 8192  # window of the chroma
_SLOW_HOP = SAMPLE_RATE // SLOW
_EPSILON = 1e-6

Halves = NDArray[np.float16]


@dataclass(frozen=True, slots=True, eq=False)
class Spectra:
    """Features of a whole track.

    Parameters
    ----------
    mel : ndarray, shape (n, 80) [log10 magnitude]
    chroma : ndarray, shape (m, 12) [1]
        Each row's energy by pitch class, C first.
    loudness : ndarray, shape (m,) [rms, full scale 1]
        Weighted as ears hear it, see `weighting`.
    duration : float
        Seconds.

    Notes
    -----
    Source: module docstring. Half precision: mel to 0.002.
    """

    mel: Halves
    chroma: Halves
    loudness: Floats
    duration: float

    @property
    def loud(self) -> float:
        """Level of the loud parts [log10 magnitude]."""
        return loud_level(self.mel)


def loud_level(mel: NDArray[np.float16]) -> float:
    """Level of the loud parts of a track [log10 magnitude]: 90th percentile of each frame's top.

    If sound is sparse, as with slow clicks, 40 dB below the loudest frames if that is higher.

    Parameters
    ----------
    mel : ndarray, shape (n, 80) [log10 magnitude]

    Returns
    -------
    level : float

    Notes
    -----
    Source: ours. Exact.
    """
    tops = mel.max(axis=1).astype(np.float32)
    if not len(tops):
        return float(np.log10(_EPSILON))
    return max(float(np.percentile(tops, 90)), float(np.percentile(tops, 99.5)) - 2.0)


def levelled(mel: NDArray[np.float16], loud: float) -> NDArray[np.float32]:
    """Mel bands relative to the track's loud parts: 1 there, 0 at the floor.

    Parameters
    ----------
    mel : ndarray, shape (n, 80) [log10 magnitude]
    loud : float
        Of the whole track, see `loud_level`.

    Returns
    -------
    bands : ndarray, shape (n, 80) [1]

    Notes
    -----
    Source: ours. Exact.
    """
    return np.maximum((mel.astype(np.float32) - np.float32(loud + _FLOOR)) / np.float32(-_FLOOR), 0)


def mel_weights() -> NDArray[np.float32]:
    """Triangles of the mel bands over the bins of the spectrum.

    Returns
    -------
    weights : ndarray, shape (1025, 80) [1]

    Notes
    -----
    Source: module docstring; triangles of unit sum. Exact.
    """
    low, high = _mel(30.0), _mel(10_500.0)
    edges = 700.0 * (10 ** (np.linspace(low, high, BANDS + 2) / 2595.0) - 1)
    bins = np.arange(_WINDOW // 2 + 1) * SAMPLE_RATE / _WINDOW
    left, centre, right = edges[:-2], edges[1:-1], edges[2:]
    # the lowest bands are narrower than a bin: widen them so that they are not empty
    width = SAMPLE_RATE / _WINDOW
    left, right = np.minimum(left, centre - width), np.maximum(right, centre + width)
    up = (bins[:, None] - left) / (centre - left)
    down = (right - bins[:, None]) / (right - centre)
    weights = np.maximum(0, np.minimum(up, down))
    return (weights / weights.sum(axis=0)).astype(np.float32)


def chroma_weights() -> NDArray[np.float32]:
    """Share of each bin of the long spectrum in each pitch class, 65 Hz to 2.1 kHz.

    Returns
    -------
    weights : ndarray, shape (4097, 12) [1]

    Notes
    -----
    Source: ISO 16:1975 (A = 440 Hz); a Gaussian of a third of a semitone about each pitch. Exact.
    """
    bins = np.arange(_LONG // 2 + 1) * SAMPLE_RATE / _LONG
    pitch = 69 + 12 * np.log2(np.maximum(bins, 1.0) / 440.0)
    apart = (pitch[:, None] - np.arange(12) + 6) % 12 - 6
    weights = np.exp(-0.5 * (apart / 0.35) ** 2)
    weights[(bins < 65) | (bins > 2100)] = 0
    return weights.astype(np.float32)


def _mel(frequency: float) -> float:
    return float(2595.0 * np.log10(1 + frequency / 700.0))


class _Frames:
    """Splits a stream of blocks into overlapping windows centred on multiples of the hop."""

    def __init__(self, window: int, hop: int) -> None:
        self.window, self.hop = window, hop
        self.held: Samples = np.zeros(window // 2, np.float32)

    def windows(self, block: Samples, *, last: bool = False) -> NDArray[np.float32]:
        """All windows completed by this block, shape (n, window)."""
        parts = [self.held, block]
        if last:
            parts.append(np.zeros(self.window // 2, np.float32))
        held = np.concatenate(parts)
        count = max(0, (len(held) - self.window) // self.hop + 1)
        self.held = held[count * self.hop :]
        if not count:
            return np.zeros((0, self.window), np.float32)
        return np.lib.stride_tricks.sliding_window_view(held, self.window)[:: self.hop][:count]


class Ear:
    """Takes the blocks of a track in order and returns its spectra at the end."""

    def __init__(self) -> None:
        from scipy.signal.windows import hann

        self._fast, self._slow = _Frames(_WINDOW, HOP), _Frames(_LONG, _SLOW_HOP)
        self._weighting, self._heard = Weighting(SAMPLE_RATE), _Frames(_SLOW_HOP, _SLOW_HOP)
        short, long = hann(_WINDOW, sym=False), hann(_LONG, sym=False)
        self._short = (short * 2 / short.sum()).astype(np.float32)
        self._long = (long * 2 / long.sum()).astype(np.float32)
        self._mel, self._chroma = mel_weights(), chroma_weights()
        self._parts: list[tuple[Halves, Halves, Floats]] = []

    def take(self, block: Samples, *, last: bool = False) -> None:
        """Process the next block of mono samples at `SAMPLE_RATE`, shape (n,)."""
        from scipy.fft import rfft

        mels = []
        windows = self._fast.windows(block, last=last)
        for start in range(0, len(windows), 512):
            magnitude = np.abs(rfft(windows[start : start + 512] * self._short, axis=1))
            mels.append(np.log10(magnitude @ self._mel + np.float32(_EPSILON)).astype(np.float16))
        slow = self._slow.windows(block, last=last)
        power = np.abs(rfft(slow * self._long, axis=1)) ** 2 if len(slow) else None
        chroma: Samples = np.zeros((0, 12), np.float32)
        if power is not None:
            chroma = np.sqrt(power @ self._chroma)
        heard = self._heard.windows(self._weighting.take(block), last=last).astype(np.float64)
        loudness = np.sqrt(np.mean(heard**2, axis=1)) if len(heard) else np.zeros(0)
        mel = np.concatenate(mels) if mels else np.zeros((0, BANDS), np.float16)
        self._parts.append((mel, chroma.astype(np.float16), loudness))

    def spectra(self, duration: float) -> Spectra:
        """Spectra of the whole track, which ended at `duration` [s]."""
        self.take(np.zeros(0, np.float32), last=True)
        mel, chroma, loudness = (
            np.concatenate(column) for column in zip(*self._parts, strict=True)
        )
        self._parts = []
        return Spectra(mel, chroma, loudness, duration)


def spectra_of(blocks: Iterable[Samples], duration: float | None = None) -> Spectra:
    """Spectra of a stream of mono blocks at `SAMPLE_RATE`; default duration: that of the blocks."""
    ear, samples = Ear(), 0
    for block in blocks:
        ear.take(block)
        samples += len(block)
    return ear.spectra(samples / SAMPLE_RATE if duration is None else duration)
