"""How sure beats, bars and the metre are, as shares that hold on music that nothing was fitted on.

Logistic curves over what the search and the choice of bars say of themselves; fitted and judged by folds over source packages
(`benchmarks/bars.py`), so that of ten bars at 0.8 some eight are right.
"""

import numpy as np

from sequencer.arrays import Bools, Floats, Ints

_BEAT = (0.3655, 1.2596, 1.5577)  # of the beat's own odds, of those around it, constant
_BAR = (1.385, -0.048)  # of the odds that one and beats are right, constant
# power of the beats' mean: those of a bar are right or wrong together, but not wholly (of 0.4 to 1, benchmarks)
_TOGETHER = 2 / 3
_METRE = (1.0168, -0.9021)  # of its odds, constant
_AROUND = 4  # beats on either side
_LEAST = 0.01  # shares are taken to lie between this and 1 less this
_UNHEARD = (
    0.3  # bars whose beats are heard less than this are counted on: they are no surer than that
)
_SLIPPED = 0.45  # most that a bar on beats that slipped is sure: it is told to be listened to
_HALF = (0.35, 0.65)  # of a beat: how far off the count a slip lies
_STEADY = 0.04  # share by which intervals on both sides of a slip may differ
_SIDE = 8  # beats on either side of a slip that are steady


def odds_of(share: Floats | float) -> Floats:
    """Log odds of probabilities [nats], limited at both ends."""
    inside = np.clip(share, _LEAST, 1.0 - _LEAST)
    return np.asarray(np.log(inside / (1.0 - inside)))


def sure_beats(heard: Floats) -> Floats:
    """Probability that each beat is right.

    Parameters
    ----------
    heard : ndarray, shape (n,) [1]
        What the network says of each.

    Returns
    -------
    share : ndarray, shape (n,) [1]

    Notes
    -----
    Source: module docstring.
    """
    total = np.append(0.0, np.cumsum(heard))
    here = np.arange(len(heard))
    low, high = np.maximum(here - _AROUND, 0), np.minimum(here + _AROUND + 1, len(heard))
    around = (total[high] - total[low]) / (high - low)
    return _share(_BEAT[0] * odds_of(heard) + _BEAT[1] * odds_of(around) + _BEAT[2])


def sure_bars(heard: Floats, one: Floats) -> Floats:
    """Probability that the first beat of each bar is the one, and all its beats are beats.

    Parameters
    ----------
    heard : ndarray, shape (n,) [1]
        What the network says of its beats, in the mean.
    one : ndarray, shape (n,) [1]
        Probability that its first beat is a one, see `bar_chances`.

    Returns
    -------
    share : ndarray, shape (n,) [1]

    Notes
    -----
    Source: module docstring.
    """
    told = _share(_BAR[0] * odds_of(heard**_TOGETHER * one) + _BAR[1])
    return np.where(heard < _UNHEARD, np.minimum(told, heard), told)


def sure_metre(share: float) -> float:
    """Probability that the metre is right, of its share among all ways to lay bars."""
    return float(_share(_METRE[0] * odds_of(share) + _METRE[1]))


def doubted_bars(share: Floats, firsts: Ints, slipped: Bools) -> Floats:
    """The bars' shares, with those that hold a beat that slipped low enough to be listened to.

    Parameters
    ----------
    share : ndarray, shape (n,) [1]
    firsts : ndarray, shape (n,) [1]
        Index of each bar's first beat.
    slipped : ndarray, shape (m,) [1]
        By beat.

    Notes
    -----
    Source: this project.
    """
    if not len(firsts):
        return share
    hit = np.add.reduceat(slipped.astype(np.int64), firsts) > 0
    return np.where(hit, np.minimum(share, _SLIPPED), share)


def slipped_beats(times: Floats) -> Bools:
    """Beats between two places where a steady count jumps by half a beat: the fewer of the two kinds.

    Parameters
    ----------
    times : ndarray, shape (n,) [s]

    Returns
    -------
    slipped : ndarray, shape (n,) [1]
        All false where no such jump is.

    Notes
    -----
    Source: this project. A pause or a change of tempo is no slip: the beats on both sides keep one interval.
    """
    steps = np.diff(times)
    turned = np.zeros(len(times), np.int64)
    for i in range(_SIDE, len(steps) - _SIDE):
        before, after = steps[i - _SIDE : i], steps[i + 1 : i + 1 + _SIDE]
        usual = float(np.median(np.concatenate([before, after])))
        off = abs(steps[i] / usual - 1.0)
        sides = np.abs(np.concatenate([before, after]) / usual - 1.0)
        if _HALF[0] <= off <= _HALF[1] and np.all(sides < _STEADY):
            turned[i + 1] = 1
    kind = np.cumsum(turned) % 2 == 1
    return np.asarray(kind if kind.mean() <= 0.5 else ~kind)


def _share(odds: Floats) -> Floats:
    return np.asarray(1.0 / (1.0 + np.exp(-odds)))


__all__ = [
    "doubted_bars",
    "odds_of",
    "slipped_beats",
    "sure_bars",
    "sure_beats",
    "sure_metre",
]
