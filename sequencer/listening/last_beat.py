"""Where a count ends: with the last beat on which something is still played, not in what rings on or has died away behind it.

A network that has heard a song goes on counting into its last chord's tail. A listener stops there, since nothing rises any more.
"""

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.listening.leaders import risen
from sequencer.listening.signal.spectra import FRAMES

_STRUCK = 0.15  # [1] of the song's usual rise on a beat: less is no stroke (benchmarks: 0.1 to 0.2 do alike)
_GONE = 0.3  # on the scale of `levelled`: 56 dB below the loud parts
_EARLY, _LATE = 2, 3  # frames about a beat in which it is heard
_FEWEST = 4  # beats that a count keeps


def end_of_count(times: Floats, bands: NDArray[np.float32]) -> int:
    """How many of the beats lie before the music has rung out.

    Parameters
    ----------
    times : ndarray, shape (n,) [s]
        Beats, rising.
    bands : ndarray, shape (m, 80) [1]
        See `spectra.levelled`.

    Returns
    -------
    end : int
        n where something rises on the last beat; at least 4 of n, or n.

    Notes
    -----
    Source: ours. A beat within the song is never looked at: the count goes on through a break.
    """
    if len(times) <= _FEWEST or not len(bands):
        return len(times)
    frames = np.round(times * FRAMES).astype(np.int64)
    index = np.clip(frames[:, None] + np.arange(-_EARLY, _LATE + 1), 0, len(bands) - 1)
    rise = risen(bands)[index].max(axis=1)
    least = _STRUCK * float(np.median(rise))
    end = len(times)
    while end > _FEWEST:
        here = index[end - 1]
        if rise[end - 1] >= least and bands[here].max() >= _GONE:
            break
        end -= 1
    return end


__all__ = ["end_of_count"]
