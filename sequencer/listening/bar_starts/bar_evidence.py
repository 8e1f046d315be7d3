"""What tells a bar's first beat besides the network: bass strokes, changes of harmony, phrases, what returns, and the start.

A listener who is a beat off notices by the harmony, which changes on the one, and by phrases of four or eight bars. Each of these is
measured by beat over the whole song and compared within it; `bar_choice` weighs them.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats, Ints
from sequencer.listening.activations import Activations
from sequencer.listening.signal.spectra import FRAMES, SLOW

_AROUND = 8  # beats on either side that a beat is compared with
_MOST = 4.0  # limit of what one beat can tell, in the spread of the song's beats
_SURE = 6.0  # [nats] limit of the network's odds
_LOW, _BASS = 7, 9  # bands below some 200 Hz, for strokes and for what sounds on
_EARLY, _LATE = 0.02, 0.04  # [s] a beat's sound begins so much before it; its harmony so much after
_EDGE = 4  # beats on either side of the edge of what returns
_BASS_IN = 0.8  # of the song's usual bass: it has come in
_PHRASE = 4  # bars of the phrases that are compared


@dataclass(frozen=True, slots=True, eq=False)
class BarEvidence:
    """Evidence of first beats, by beat.

    Parameters
    ----------
    strokes : ndarray, shape (n, 4) [1]
        The network's odds of a first beat [nats]; a stroke of the bass; change of harmony from one beat to the next, and from two
        to two. Each less its mean around, all but the first in the spread of the song.
    turns : ndarray, shape (n, 2) [1]
        Change of harmony over four beats and of sound over eight, likewise, 0 where it is less than around.
    returns : dict of int to ndarray, shape (n,) [1]
        By beats per bar: edges of what returns after four bars.
    bass_in : int
        The first beat with the song's usual bass.

    Notes
    -----
    Source: module docstring; novelty as the difference of means on either side after J. Foote, Automatic audio segmentation
    using a measure of audio novelty, ICME 2000.
    """

    strokes: Floats
    turns: Floats
    returns: dict[int, Floats]
    bass_in: int


def bar_evidence(
    times: Floats, heard: Activations, chroma: NDArray[np.float16], metres: tuple[int, ...]
) -> BarEvidence:
    """Evidence of first beats at the beats of a song.

    Parameters
    ----------
    times : ndarray, shape (n,) [s]
        Beats, rising, at least two.
    heard : Activations
    chroma : ndarray, shape (m, 12) [1]
        See `Spectra`.
    metres : tuple of int
        Beats per bar for which `returns` are wanted.

    Returns
    -------
    evidence : BarEvidence

    Notes
    -----
    Source: module docstring and `BarEvidence`.
    """
    edges = np.append(times, times[-1] + float(np.median(np.diff(times))))
    sound = _means(heard.bands, np.round((edges - _EARLY) * FRAMES))
    power = np.nan_to_num(chroma.astype(np.float64), posinf=0.0)
    shares = np.sqrt(power / (power.sum(axis=1, keepdims=True) + 1e-9))
    harmony = _means(shares, np.round((edges + _LATE) * SLOW))
    frames = np.round(times * FRAMES).astype(np.int64)
    told = _near(heard.downbeat, frames, (-2, -1, 0, 1, 2))
    strokes = np.column_stack(
        [
            _above(np.clip(told, -_SURE, _SURE)),
            _spread(_above(_low_rise(heard.bands, frames))),
            _spread(_above(_change(harmony, 1))),
            _spread(_above(_change(harmony, 2))),
        ]
    )
    turns = [_spread(_above(_change(harmony, 4))), _spread(_above(_change(sound, 8)))]
    alike = np.hstack([sound - sound.mean(axis=0), 2.0 * (harmony - harmony.mean(axis=0))])
    alike /= np.linalg.norm(alike, axis=1, keepdims=True) + 1e-9
    bass = sound[:, :_BASS].max(axis=1)
    return BarEvidence(
        strokes,
        np.maximum(np.column_stack(turns), 0.0),
        {metre: _edges(alike, _PHRASE * metre) for metre in metres},
        int(np.argmax(bass > _BASS_IN * np.median(bass))),
    )


def _means(rows: NDArray[np.floating], edges: Floats) -> Floats:
    """Mean of the rows from each edge to the next, of at least one row each."""
    at = np.clip(edges, 0, len(rows)).astype(np.int64)
    total = np.vstack([np.zeros(rows.shape[1]), np.cumsum(rows, axis=0, dtype=np.float64)])
    low = np.minimum(at[:-1], max(len(rows) - 1, 0))
    high = np.minimum(np.maximum(at[1:], low + 1), len(rows))
    return np.asarray((total[high] - total[low]) / np.maximum(high - low, 1)[:, None])


def _near(curve: Floats, frames: Ints, shifts: tuple[int, ...]) -> Floats:
    index = np.clip(frames[:, None] + np.array(shifts), 0, len(curve) - 1)
    return np.asarray(curve[index].max(axis=1))


def _low_rise(bands: NDArray[np.float32], frames: Ints) -> Floats:
    """The most that the low bands rise over two frames about each of these."""
    low = bands[:, :_LOW]
    rise = np.zeros(len(low))
    rise[1:-1] = np.maximum(low[2:] - low[:-2], 0.0).mean(axis=1)
    return _near(rise, frames, (-1, 0, 1, 2))


def _change(rows: Floats, width: int) -> Floats:
    """Distance of the means over `width` rows before and after each; none at the first."""
    n = len(rows)
    total = np.vstack([np.zeros(rows.shape[1]), np.cumsum(rows, axis=0)])
    here = np.arange(n)
    low, high = np.maximum(here - width, 0), np.minimum(here + width, n)
    before = (total[here] - total[low]) / np.maximum(here - low, 1)[:, None]
    after = (total[high] - total[here]) / (high - here)[:, None]
    found = np.sqrt(np.sum((after - before) ** 2, axis=1))
    found[0] = 0.0
    return np.asarray(found)


def _edges(alike: Floats, lag: int) -> Floats:
    """How much more, or less, like the rows `lag` before the rows after each are than those before it."""
    n = len(alike)
    if n <= lag + 2 * _EDGE:
        return np.zeros(n)
    same = np.zeros(n)
    same[lag:] = np.sum(alike[lag:] * alike[:-lag], axis=1)
    same[:lag] = same[lag:].mean()
    total = np.append(0.0, np.cumsum(same))
    here = np.arange(n)
    low, high = np.maximum(here - _EDGE, 0), np.minimum(here + _EDGE, n)
    after = (total[high] - total[here]) / (high - here)
    before = (total[here] - total[low]) / np.maximum(here - low, 1)
    edge = after - before
    edge[:lag] = 0.0
    return _above(np.minimum(np.abs(_spread(edge)), _MOST))


def _above(values: Floats) -> Floats:
    """Values less the mean around each."""
    n = len(values)
    total = np.append(0.0, np.cumsum(values))
    here = np.arange(n)
    low, high = np.maximum(here - _AROUND, 0), np.minimum(here + _AROUND + 1, n)
    return np.asarray(values - (total[high] - total[low]) / (high - low))


def _spread(values: Floats) -> Floats:
    """Values less their median, in units of the third quartile of their sizes."""
    off = values - np.median(values)
    size = float(np.percentile(np.abs(off), 75)) + 1e-9
    return np.asarray(np.clip(off / size, -_MOST, _MOST))
