"""The most fitting division of a song into parts, and how sure each border is.

A semi-Markov model over bars: a division's weight is the product over its borders (evidence for a new part
there) and over its parts (length, squareness, how alike the bars of a part are, whether the part comes
again). Forward and backward sums give the share of all divisions, by weight, in which a bar begins a part
(S. Sarawagi and W. Cohen, NIPS 2004). The coefficients are fitted by maximum likelihood, so that the shares
mean what they say.
"""

from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats, Ints

LONGEST_PART = 160  # bars of a part; a whole song may be longer
_REPEATED = 64  # bars: the longest stretch that is looked for elsewhere
_USUAL = 20.0  # [s] a part
_WHOLE = 480.0  # [s]: beyond it what speaks for one part goes with the length, as for divisions
_NEVER = -1e9
_SMEAR = 0.5  # of a neighbouring bar's share that counts for a border
_APART = 3  # bars between borders


@dataclass(frozen=True, slots=True)
class FormWeights:
    """Coefficients of the evidence: `border` (K + 1,) with the constant last, `mean` and `spread` (K,), `part` (M,)."""

    border: Floats
    mean: Floats
    spread: Floats
    part: Floats


@dataclass(frozen=True, slots=True)
class Shares:
    """Sums over all divisions of n bars.

    Parameters
    ----------
    border : ndarray, shape (n + 1,) [1]
        Share of divisions, by weight, with a border there; 0 at both ends.
    part : ndarray, shape (n + 1, L) [1]
        Share with a part from bar a of l bars, at [a, l − 1].
    whole : float
        Share in which the song is one part longer than L bars.
    total : float
        Logarithm of the sum of all weights.
    """

    border: Floats
    part: Floats
    whole: float
    total: float


def part_evidence(alike: Floats, edges: Floats) -> tuple[Floats, Floats]:
    """What speaks for a part from each bar, of each length.

    Parameters
    ----------
    alike : ndarray, shape (n, n) [1]
        Likeness of bars.
    edges : ndarray, shape (n + 1,) [s]

    Returns
    -------
    evidence : ndarray, shape (n + 1, L, 14) [1]
        At [a, l − 1]: of a part of l bars from bar a; zero where it does not fit.
    whole : ndarray, shape (14,) [1]
        Of the song as one part.

    Notes
    -----
    Source: module docstring; squareness in fours and eights is common practice. The first and the last part
    have a prior of their own: a lead-in or a fade may be short.
    """
    n = len(alike)
    longest = min(n, LONGEST_PART)
    again, within = _again(alike, longest), _within(alike, longest)
    start, length = np.arange(n + 1)[:, None], np.arange(1, longest + 1)[None]
    fits = start + length <= n
    stop = np.minimum(start + length, n)
    evidence = _columns(
        np.log(np.maximum(edges[stop] - edges[start], 0.5) / _USUAL), length * np.ones_like(start),
        (start == 0) | (start + length == n), again, within,
    ) * fits[..., None]  # fmt: skip
    return evidence, _whole(alike, float(edges[-1] - edges[0]))


def fits_in(n: int) -> Bools:
    """Which parts fit into n bars, shape (n + 1, L), as `part_evidence` orders them."""
    return np.arange(n + 1)[:, None] + np.arange(1, min(n, LONGEST_PART) + 1)[None] <= n


def shares_of(nodes: Floats, parts: Floats, whole: float) -> Shares:
    """Forward and backward sums.

    Parameters
    ----------
    nodes : ndarray, shape (n + 1,) [1]
        Logarithm of the weight of a border at each bar; both ends count nothing.
    parts : ndarray, shape (n + 1, L) [1]
        Of a part from each bar, of each length.
    whole : float
        Of the song as one part, where it is longer than L.

    Notes
    -----
    Source: module docstring. Exact.
    """
    n, longest = len(nodes) - 1, parts.shape[1]
    nodes = nodes.copy()
    nodes[0] = nodes[n] = 0.0
    weight = np.where(fits_in(n), parts, _NEVER)
    ahead, behind = np.full(n + 1, _NEVER), np.full(n + 1, _NEVER)
    ahead[0] = behind[n] = 0.0
    apart = n > longest
    for b in range(1, n + 1):
        froms = np.arange(max(0, b - longest), b)
        terms = ahead[froms] + weight[froms, b - froms - 1]
        ahead[b] = _sum(np.append(terms, whole) if apart and b == n else terms) + nodes[b]
    for a in range(n - 1, 0, -1):
        tos = np.arange(a + 1, min(n, a + longest) + 1)
        terms = behind[tos] + weight[a, tos - a - 1] + nodes[tos]
        behind[a] = _sum(terms)
    total = float(ahead[n])
    border = np.exp(ahead + behind - total)
    border[0] = border[n] = 0.0
    start, length = np.arange(n + 1)[:, None], np.arange(1, longest + 1)[None]
    stop = np.minimum(start + length, n)
    part = np.exp(np.minimum(ahead[:, None] + weight + nodes[stop] + behind[stop] - total, 0.0))
    alone = float(np.exp(whole - total)) if apart else 0.0
    return Shares(border, np.where(fits_in(n), part, 0.0), alone, total)


def scored(
    weights: FormWeights, borders: Floats, parts: Floats, whole: Floats
) -> tuple[Floats, Floats, float]:
    """Logarithms of the weights of borders, parts and the whole song, from their evidence."""
    nodes = ((borders - weights.mean) / weights.spread) @ weights.border[:-1] + weights.border[-1]
    return nodes, parts @ weights.part, float(whole @ weights.part)


def smeared(border: Floats) -> Floats:
    """The share of a border at a bar with half of its neighbours': a bar beside it is nearly right."""
    full = border.copy()
    full[1:-1] += _SMEAR * (border[:-2] + border[2:])
    return np.minimum(full, 1.0)


def borders_above(shares: Floats, least: float) -> list[int]:
    """Bars from which parts go, with 0 and n: the set with the largest sum of shares above `least`.

    Parts are three bars or longer, so that one border is not found twice.
    """
    n = len(shares) - 1
    best, back = np.zeros(n + 1), np.zeros(n + 1, np.int64)
    for b in range(1, n + 1):  # best[b]: with a border at b, or the end there
        last = max(0, b - _APART) + 1
        k = int(np.argmax(best[:last]))
        best[b], back[b] = best[k] + (shares[b] - least if b < n else 0.0), k
        if b < n and b < _APART:
            best[b] = _NEVER
    found = [n]
    while found[-1] > 0:
        found.append(int(back[found[-1]]))
    return found[::-1]


def _columns(log: Floats, length: Ints, end: Bools, again: Floats, within: Floats) -> Floats:
    middle = ~end
    root = np.sqrt(length / 8.0)
    columns = [
        log * middle, log**2 * middle, (length % 4 == 0) & middle, (length % 8 == 0) & middle,
        (length % 2 == 0) & middle, (length == 16) & middle, log * end, log**2 * end,
        (length % 4 == 0) & end, (length < 4) & middle,
        again * middle, again * root * middle, within * (length > 1), within * root * (length > 1),
    ]  # fmt: skip
    return np.stack([np.asarray(c, dtype=np.float64) for c in columns], axis=-1)


def _again(alike: Floats, longest: int) -> Floats:
    """How alike a stretch is to the one elsewhere that is most like it, bar by bar, in spreads of the song."""
    n = len(alike)
    best = np.full((n + 1, longest), -1.0)
    for lag in range(2, n):
        line = np.concatenate([[0.0], np.cumsum(np.diagonal(alike, lag))])
        for length in range(4, min(lag, n - lag, longest, _REPEATED) + 1):
            mean = (line[length:] - line[:-length]) / length
            m, k = len(mean), length - 1
            best[:m, k] = np.maximum(best[:m, k], mean)
            best[lag : lag + m, k] = np.maximum(best[lag : lag + m, k], mean)
    spread = float(alike.std()) + 1e-6
    return np.where(best >= 0, (best - float(np.median(alike))) / spread, 0.0)


def _within(alike: Floats, longest: int) -> Floats:
    """How alike the bars of a stretch are among themselves, in spreads of the song."""
    n = len(alike)
    area = np.zeros((n + 1, n + 1))
    area[1:, 1:] = alike.cumsum(axis=0).cumsum(axis=1)
    start, length = np.arange(n + 1)[:, None], np.arange(1, longest + 1)[None]
    stop = np.minimum(start + length, n)
    inside = area[stop, stop] - 2 * area[start, stop] + area[start, start]
    mean = inside / length**2 - 1 / length  # without each bar's likeness to itself
    spread = float(alike.std()) + 1e-6
    return np.asarray(np.where(length >= 2, (mean - float(alike.mean())) / spread, 0.0))


def _whole(alike: Floats, duration: float) -> Floats:
    """What speaks for a song being one part.

    The weight of a division is a product over its parts and so falls by as much with each further minute; that of one part
    would fall ever more slowly and win in any song that is long enough. So beyond eight minutes, about twice the longest
    song of those fitted on, it falls in proportion.
    """
    n = len(alike)
    times = max(1.0, duration / _WHOLE)
    one = (float(alike.sum()) / n - 1) / n  # without each bar's likeness to itself
    columns = _columns(
        np.log(np.maximum(np.array([duration / times]), 0.5) / _USUAL), np.array([n]), np.array([True]),
        np.zeros(1), (np.array([one]) - float(alike.mean())) / (float(alike.std()) + 1e-6),
    )  # fmt: skip
    return np.asarray(columns[0] * times)


def _sum(terms: Floats) -> float:
    top = float(terms.max())
    return top + float(np.log(np.exp(terms - top).sum()))
