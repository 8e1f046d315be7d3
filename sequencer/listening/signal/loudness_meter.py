"""Loudness as ears have it, of all channels together: momentary, short-term, and of the whole track with its gates."""

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.listening.signal.weighting import LEVEL_OFFSET, weighting_filter

POWER_TICKS = 20  # per second: steps in which power is kept
MOMENTARY, SHORT_TERM = 0.4, 3.0  # [s]
ABSOLUTE_GATE = -70.0  # [LUFS] blocks quieter than this are no programme
_RELATIVE_GATE = -10.0  # [LU] below the loudness of what passes the absolute gate
_STEP = 0.1  # [s] from one block to the next: 75 % of it overlaps
_AROUND = 1.41  # weight of a surround channel
_WEIGHTS = {5: (1.0, 1.0, 1.0, _AROUND, _AROUND), 6: (1.0, 1.0, 1.0, 0.0, _AROUND, _AROUND)}


class LoudnessMeter:
    """Takes the blocks of a track in order and keeps how strong they sound.

    Parameters
    ----------
    rate : float
        Samples per second [Hz].
    channels : int
        One: mono; two: left and right; five or six: left, right, centre, (low effects,) left and right surround. Others all
        count alike.

    Notes
    -----
    Source: Recommendation ITU-R BS.1770-4, annex 1: K-weighting of each channel, mean squares added with the channels'
    weights. Exact.
    """

    def __init__(self, rate: float, channels: int) -> None:
        self._rate = rate
        self._sections = weighting_filter(rate)
        self._state = np.zeros((2, 2, channels))
        self._weights = np.array(_WEIGHTS.get(channels, (1.0,) * channels))
        self._rest: Floats = np.zeros(0)
        self._taken = 0  # samples before the rest
        self._ticks: list[Floats] = []

    def take(self, block: NDArray[np.float32]) -> None:
        """The next block of samples, shape (n, channels) [full scale 1]."""
        from scipy.signal import sosfilt

        if not len(block):
            return
        weighted, self._state = sosfilt(
            self._sections, block.astype(np.float64), axis=0, zi=self._state
        )
        power = np.concatenate([self._rest, weighted**2 @ self._weights])
        first = self._tick_at(self._taken)
        last = self._tick_at(self._taken + len(power))
        edges = np.array([self._edge(tick) - self._taken for tick in range(first, last + 1)])
        if len(edges) > 1:
            sums = np.add.reduceat(power, edges[:-1])
            sums[-1] -= power[edges[-1] :].sum()
            self._ticks.append(sums / np.diff(edges))
            self._rest = power[edges[-1] :]
            self._taken += int(edges[-1])
        else:
            self._rest = power

    def powers(self) -> Floats:
        """Weighted mean squares, `POWER_TICKS` per second, shape (n,) [1]; what is left over at the end is no whole tick."""
        return np.concatenate(self._ticks) if self._ticks else np.zeros(0)

    def _edge(self, tick: int) -> int:
        """The sample at which a tick begins."""
        return round(tick * self._rate / POWER_TICKS)

    def _tick_at(self, sample: int) -> int:
        """The last tick that begins at or before a sample."""
        tick = int(sample * POWER_TICKS / self._rate) + 1
        return tick if self._edge(tick) <= sample else tick - 1


def block_loudness(powers: Floats, seconds: float) -> Floats:
    """Loudness of blocks of one length, a tenth of a second apart.

    Parameters
    ----------
    powers : ndarray, shape (n,) [1]
        `POWER_TICKS` per second.
    seconds : float
        `MOMENTARY` or `SHORT_TERM`.

    Returns
    -------
    loudness : ndarray, shape (m,) [LUFS]
        Of whole blocks only; the first begins with the track.

    Notes
    -----
    Source: EBU Tech 3341 (momentary and short-term loudness). Exact.
    """
    width, step = round(seconds * POWER_TICKS), round(_STEP * POWER_TICKS)
    if len(powers) < width:
        return np.zeros(0)
    total = np.concatenate([[0.0], np.cumsum(powers)])
    mean = (total[width:] - total[:-width])[::step] / width
    return np.asarray(LEVEL_OFFSET + 10 * np.log10(np.maximum(mean, 1e-12)))


def integrated_loudness(powers: Floats) -> float:
    """Loudness of a whole track, what is silent or far below the rest left out.

    Parameters
    ----------
    powers : ndarray, shape (n,) [1]
        `POWER_TICKS` per second.

    Returns
    -------
    loudness : float
        [LUFS] At least −70, which also stands for a track without programme.

    Notes
    -----
    Source: Recommendation ITU-R BS.1770-4, annex 1: blocks of 400 ms, gates at −70 LUFS and 10 LU below what passes it. Exact.
    """
    blocks = block_loudness(powers, MOMENTARY)
    heard = blocks[blocks > ABSOLUTE_GATE]
    if not len(heard):
        return ABSOLUTE_GATE
    gate = _mean_level(heard) + _RELATIVE_GATE
    return _mean_level(heard[heard > gate])


def _mean_level(levels: Floats) -> float:
    return float(10 * np.log10(np.mean(10 ** (levels / 10))))
