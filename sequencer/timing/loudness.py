"""How parts of a song compare with each other: ranks, which a loud master does not flatten."""

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats

SAME_LOUDNESS = 1.0  # [dB] a song whose parts lie closer has neither calm nor full ones
_LOW, _HIGH = 10, 90  # percentiles between which parts lie apart


def percentile_ranks(values: ArrayLike, *, apart: float) -> Floats:
    """The share of the values that each one exceeds, ties counted by half.

    Parameters
    ----------
    values : array_like, shape (n,) [any unit]
    apart : float
        What the middle four fifths of the values must span [same unit] for ranks to mean anything; where they span less, all ranks
        are drawn towards 0.5 in proportion.

    Returns
    -------
    ranks : ndarray, shape (n,) [1]
        From 0 to 1; 0.5 on the mean.

    Notes
    -----
    Source: percentile ranks, their definition; the shrinking is this project's choice. Exact.
    """
    values = np.asarray(values, dtype=np.float64)
    if not len(values):
        return np.zeros(0)
    _, place, counts = np.unique(values, return_inverse=True, return_counts=True)
    below = np.cumsum(counts) - counts
    shares = (below + 0.5 * counts) / len(values)
    spread = float(np.percentile(values, _HIGH) - np.percentile(values, _LOW))
    sure = min(spread / apart, 1.0)
    return np.asarray(0.5 + sure * (shares[place] - 0.5))
