"""Bars of tracks whose first beats plainly sound unlike all others, as a metronome's do.

Music is judged by the network; bare clicks give it little to judge by, but their first beats differ in one
and the same way, which a sum of squares shows.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.listening.spectra import FRAMES

_BARS = 4  # at least so many
_DEEP, _DEEPER = 5, 0.1  # bands below about 200 Hz, and by how much more of them is heard
_CLEAR = 0.5  # of the median level at which a beat sounds


def plain_accents(
    bands: NDArray[np.float32], beats: Floats, metres: Sequence[int]
) -> tuple[float, int, int]:
    """How plainly one beat a bar stands out, in which metre, and the index of the first such beat.

    Parameters
    ----------
    bands : ndarray, shape (n, 80) [1]
        At `spectra.FRAMES` frames a second.
    beats : ndarray, shape (m,) [s]
    metres : sequence of int
        Beats a bar that are weighed.

    Returns
    -------
    share : float
        Of all difference between beats, explained by first against others; 0 where there is none.
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
    """Whether these are the first beats of twos: the deeper ones, as of a kick against a snare, or the louder."""
    deep = float(some[:, :_DEEP].mean() - others[:, :_DEEP].mean())
    return deep > 0 if abs(deep) > _DEEPER else bool(some.mean() >= others.mean())


__all__ = ["plain_accents"]
