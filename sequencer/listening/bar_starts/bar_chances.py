"""How likely each beat is a one, by what is heard around it and in the whole song.

The best bars through a song (`bar_choice.laid_bars`) do not say how much better they are than others at one place. The same
scores and costs, summed over all ways to lay bars instead of maximized, do: a song whose first half is plain and whose second
might as well be counted a beat later is sure in the first and not in the second.
"""

from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.bar_starts.bar_choice import BAR_METRES, OTHER_COST, TURN_COST


def chance_of_ones(score: Floats) -> Floats:
    """Probability that each beat is the first of its bar.

    Parameters
    ----------
    score : ndarray, shape (n, 27) [nats]
        Of each state at each beat, see `bar_choice.scored_by_beat`; n at least 1.

    Returns
    -------
    chance : ndarray, shape (n,) [1]

    Notes
    -----
    Source: the forward-backward algorithm (L. R. Rabiner, A tutorial on hidden Markov models, Proceedings of the IEEE 77, 1989)
    over the states and costs of `bar_choice.laid_bars`; exact for them.
    """
    step = _steps()
    heard = np.exp(score - score.max(axis=1, keepdims=True))
    n = len(heard)
    before, after = np.empty_like(heard), np.ones_like(heard)
    before[0] = heard[0] / heard[0].sum()
    for t in range(1, n):
        here = (before[t - 1] @ step) * heard[t]
        before[t] = here / here.sum()
    for t in range(n - 2, -1, -1):
        here = step @ (after[t + 1] * heard[t + 1])
        after[t] = here / here.sum()
    chance = before * after
    first = np.append(0, np.cumsum(BAR_METRES))[:-1]
    return np.asarray(chance[:, first].sum(axis=1) / chance.sum(axis=1))


def _steps() -> Floats:
    """Weight of each state after each other, shape (27, 27) [1]: the next place, or a one before its time or of another metre."""
    edges = np.append(0, np.cumsum(BAR_METRES))
    step = np.zeros((edges[-1], edges[-1]))
    step[:, edges[:-1]] = np.exp(-OTHER_COST)
    for low, high in pairwise(edges):
        step[low:high, low] = np.exp(-TURN_COST)
        places = np.arange(low, high)
        step[places, np.roll(places, -1)] = 1.0
    return step


__all__ = ["chance_of_ones"]
