"""Bars of tracks whose first beats clearly sound different from all others, as on a metronome.

Music is judged by the network. Bare clicks give it little to work with, but their first beats all differ in
the same way, which a sum of squares reveals.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.listening.signal.spectra import FRAMES

_BARS = 4  # minimum number
_DEEP, _DEEPER = 5, 0.1  # bands below about 200 Hz, and how much more of them the downbeat has
_CLEAR = 0.5  # fraction of the median level at which a beat counts as audible


def plain_accents(
    bands: NDArray[np.float32], beats: Floats, metres: Sequence[int]
) -> tuple[float, int, int]:
    """How clearly one beat per bar stands out, in which metre, and the index of the first such beat.

    Parameters
    ----------
    bands : ndarray, shape (n, 80) [1]
        At `spectra.FRAMES` frames a second.
    beats : ndarray, shape (m,) [s]
    metres : sequence of int
        Beats per bar to consider.

    Returns
    -------
    share : float
        Fraction of the variance between beats explained by first beat against others; 0 if there is none.
    metre : int
    phase : int

    Notes
    -----
    Source: share of variance between two groups (R. A. Fisher, Statistical Methods for Research Workers,
    1925). Exact.
    """
    if len(beats) < 2 * _BARS or not len(bands):
        return 0.0, 4, 0
    frames = np.clip(np.round(beats * FRAMES).astype(np.int64), 1, len(bands) - 3)
    sound = np.max([bands[frames + shift] for shift in (-1, 0, 1, 2)], axis=0).astype(np.float64)
    tops = sound.max(axis=1)
    clear = tops > _CLEAR * np.median(tops)  # one beat in silence would outweigh every accent
    place, sound = np.arange(len(beats))[clear], sound[clear]
    total = float(np.sum((sound - sound.mean(axis=0)) ** 2)) if len(sound) else 0.0
    if total <= 1e-3 * len(sound):
        return 0.0, 4, 0
    best = (0.0, 4, 0)
    for metre in metres:
        for phase in range(min(metre, len(beats))):
            first = place % metre == phase
            n = int(first.sum())
            if n < _BARS or n == len(sound):
                continue
            if metre == 2 and not _leads(sound[first], sound[~first]):
                continue  # either half explains the same
            gap = sound[first].mean(axis=0) - sound[~first].mean(axis=0)
            share = n * (len(sound) - n) / len(sound) * float(np.sum(gap**2)) / total
            if share > best[0] + 1e-9:
                best = (share, metre, phase)
    return best


def _leads(some: Floats, others: Floats) -> bool:
    """Whether these are the first beats in groups of two: the deeper (a kick against a snare) or the louder ones."""
    deep = float(some[:, :_DEEP].mean() - others[:, :_DEEP].mean())
    return deep > 0 if abs(deep) > _DEEPER else bool(some.mean() >= others.mean())


__all__ = ["plain_accents"]
