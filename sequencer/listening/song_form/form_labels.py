"""Which parts of a song are the same music, and which of those come varied.

Two parts are compared bar by bar in order, without transposition, at the shift that fits best; a logistic
model of how alike they are then, in each view of a bar, gives the odds that they are the same music. Parts
are joined by average linkage as long as the mean odds speak for it.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.song_form.form_features import Groups, apart_of

_OVERLAP = 0.75  # of the shorter part that a shift must leave
_VARIED = 0.75  # distance of sound and rhythm from which a return is a variation
_SOUND = ("timbre", "rhythm", "loud")


@dataclass(frozen=True, slots=True)
class LabelWeights:
    """Coefficients of the pair evidence: `weight` (P + 1,) with the constant last, `mean` and `spread` (P,)."""

    weight: Floats
    mean: Floats
    spread: Floats


def pair_evidence(groups: Groups, alike: Floats, borders: list[int]) -> Floats:
    """What speaks for two parts being the same music, shape (k, k, 14) for k parts.

    Parameters
    ----------
    groups : dict of ndarray, shape (n, k) [1]
    alike : ndarray, shape (n, n) [1]
    borders : list of int
        Bars, with 0 and n.

    Notes
    -----
    Source: ours. Columns: likeness of chroma, timbre, rhythm and loudness at the best shift; the first three above
    the song's mean; the whole likeness above the song's mean, and in its spreads; the three averaged over all pairs
    of bars, above the mean; neighbours; the logarithm of the ratio of lengths.
    """
    views = [np.exp(-apart_of(rows) / 2) for rows in groups.values()]
    usual = [float(view.mean()) for view in views[:3]]
    mean, spread = float(alike.mean()), float(alike.std()) + 1e-6
    parts = list(pairwise(borders))
    found = np.zeros((len(parts), len(parts), 14))
    for i, (a, b) in enumerate(parts):
        for j, (c, d) in enumerate(parts[:i]):
            shift, best = _best_shift(alike[a:b, c:d])
            line = [float(np.mean(np.diagonal(view[a:b, c:d], shift))) for view in views]
            block = [float(view[a:b, c:d].mean()) for view in views[:3]]
            found[i, j] = found[j, i] = [
                *line, *np.subtract(line[:3], usual), best - mean, (best - mean) / spread,
                *np.subtract(block, usual), float(d == a), np.log(min(b - a, d - c) / max(b - a, d - c)),
            ]  # fmt: skip
    return found


def labels_of(weights: LabelWeights, evidence: Floats) -> list[int]:
    """A number for each part, 0 for the first: equal where the music is the same.

    Parameters
    ----------
    weights : LabelWeights
    evidence : ndarray, shape (k, k, P) [1]

    Notes
    -----
    Source: module docstring. Ties go to the earlier pair, so that the same song always gives the same letters.
    """
    odds = ((evidence - weights.mean) / weights.spread) @ weights.weight[:-1] + weights.weight[-1]
    k = len(odds)
    first = np.arange(k)  # of each part's group: the earliest of its parts, which stands for it
    total, size = odds.copy(), np.ones(k)
    apart = np.tri(k, k=-1, dtype=bool)  # pairs of groups, the later one by rows
    while apart.any():
        means = np.where(apart, total / np.outer(size, size), -np.inf)
        i, j = np.unravel_index(int(np.argmax(means)), means.shape)
        if means[i, j] <= 0:
            break
        first[first == i] = j
        total[j] += total[i]
        total[:, j] += total[:, i]
        size[j] += size[i]
        apart[i] = apart[:, i] = False
    return [int(label) for label in np.unique(first, return_inverse=True)[1]]


def variants_of(groups: Groups, borders: list[int], labels: list[int]) -> list[int]:
    """0 where a part sounds as it did at first, 1, 2 … for each other way in which it returns."""
    sound = np.concatenate([groups[name] for name in _SOUND], axis=1)
    means = [sound[a:b].mean(axis=0) for a, b in pairwise(borders)]
    ways: dict[int, list[Floats]] = {}
    found = []
    for label, mean in zip(labels, means, strict=True):
        known = ways.setdefault(label, [])
        apart = [float(np.linalg.norm(mean - way)) for way in known]
        if apart and min(apart) < _VARIED:
            found.append(int(np.argmin(apart)))
        else:
            found.append(len(known))
            known.append(mean)
    return found


def _best_shift(block: Floats) -> tuple[int, float]:
    """The diagonal along which two parts are most alike, and how alike they are there."""
    shorter, best, at = min(block.shape), -1.0, 0
    for shift in range(-block.shape[0] + 1, block.shape[1]):
        line = np.diagonal(block, shift)
        if len(line) >= _OVERLAP * shorter and float(line.mean()) > best:
            best, at = float(line.mean()), shift
    return at, best
