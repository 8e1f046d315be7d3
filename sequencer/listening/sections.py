"""Sections of a song: where the music turns, and which stretches are the same music.

One feature vector a bar (pitch classes, timbre, loudness, each standardised over the track); borders where
the past bars differ from the coming ones (checkerboard kernel, J. Foote, ICME 2000) more than chance
allows; labels by the likeness of stretches, bar against bar in order and transposition as heard.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.spectra import FRAMES, SLOW, Spectra, levelled

_REACH = 8  # bars each side of a border
_SHORTEST = 4  # bars of a section
_ALIKE = 0.6  # likeness of two stretches that earn one label


@dataclass(frozen=True, slots=True)
class Stretch:
    """A section in seconds, with a label that repeats where the music repeats."""

    start: float  # [s]
    end: float  # [s]
    label: str


def sections_of(spectra: Spectra, downbeats: Floats, *, metre: int) -> tuple[Stretch, ...]:
    """Sections that cover the whole track.

    Parameters
    ----------
    spectra : Spectra
    downbeats : ndarray, shape (n,) [s]
    metre : int
        Beats a bar; bars of two beats are looked at in pairs.

    Returns
    -------
    sections : tuple of Stretch
        One for the whole track where it is too short, or even, to be divided.

    Notes
    -----
    Source: module docstring. Borders lie on downbeats.
    """
    end = spectra.duration
    bars = downbeats[::2] if metre == 2 else downbeats
    if len(bars) < 2 * _SHORTEST:
        return (Stretch(0.0, end, "A"),)
    features = _bar_features(spectra, bars)
    borders = _borders(features)
    likeness = _likeness(features)
    labels = _labels(likeness, borders)
    starts = [0.0, *(float(bars[b]) for b in borders[1:-1])]
    ends = [*starts[1:], end]
    return tuple(
        Stretch(start, stop, label) for start, stop, label in zip(starts, ends, labels, strict=True)
    )


def _bar_features(spectra: Spectra, bars: Floats) -> Floats:
    """One row a bar: pitch classes, timbre by band, loudness; each group of equal weight."""
    edges = np.append(bars, min(spectra.duration, bars[-1] + float(np.median(np.diff(bars)))))
    bands = levelled(spectra.mel, spectra.loud)
    timbre = _means(bands.astype(np.float64), edges * FRAMES)
    rough = _means(np.abs(np.diff(bands, axis=0, prepend=bands[:1])), edges * FRAMES)
    chroma = _means(spectra.chroma.astype(np.float64), edges * SLOW)
    chroma /= np.linalg.norm(chroma, axis=1, keepdims=True) + 1e-9
    timbre, rough = (x.reshape(len(bars), -1, 8).mean(axis=2) for x in (timbre, rough))
    groups = []
    for group, weight in ((chroma, 1.0), (timbre, 1.0), (rough, 0.7)):
        centred = group - group.mean(axis=0)
        spread = np.sqrt(np.mean(np.sum(centred**2, axis=1))) + 1e-6
        groups.append(weight * centred / spread)
    return np.concatenate(groups, axis=1)


def _means(rows: Floats, edges: Floats) -> Floats:
    """Mean of the rows between each two edges."""
    total = np.concatenate(
        [np.zeros((1, rows.shape[1])), np.cumsum(rows, axis=0, dtype=np.float64)]
    )
    index = np.clip(np.round(edges).astype(np.int64), 0, len(rows))
    low, high = index[:-1], np.maximum(index[1:], index[:-1] + 1)
    high = np.minimum(high, len(rows))
    low = np.minimum(low, high - 1)
    return np.asarray((total[high] - total[low]) / (high - low)[:, None])


def _novelty(features: Floats) -> Floats:
    """How much the bars after each border differ from those before it, against their own spread."""
    n = len(features)
    distance = np.sum((features[:, None] - features[None]) ** 2, axis=2)
    near = np.exp(-distance / (np.median(distance) + 1e-9))
    result = np.zeros(n + 1)
    for b in range(2, n - 1):
        low, high = max(0, b - _REACH), min(n, b + _REACH)
        past, coming = np.arange(low, b), np.arange(b, high)
        wp = np.exp(-0.5 * ((b - 0.5 - past) / (_REACH / 2)) ** 2)
        wc = np.exp(-0.5 * ((coming - b + 0.5) / (_REACH / 2)) ** 2)
        within = (wp @ near[np.ix_(past, past)] @ wp) / wp.sum() ** 2
        within += (wc @ near[np.ix_(coming, coming)] @ wc) / wc.sum() ** 2
        across = (wp @ near[np.ix_(past, coming)] @ wc) / (wp.sum() * wc.sum())
        result[b] = within / 2 - across
    return result


def _borders(features: Floats) -> list[int]:
    """Bar numbers of all borders, the first and the last bar's end among them."""
    n = len(features)
    novelty = _novelty(features)
    inner = novelty[2 : n - 1]
    level = float(np.median(inner) + 0.5 * np.std(inner))
    order = sorted(range(2, n - 1), key=lambda b: (-novelty[b], b))
    chosen: list[int] = []
    for b in order:
        peak = novelty[b] >= novelty[max(0, b - 2) : b + 3].max()
        clear = all(abs(b - c) >= _SHORTEST for c in (*chosen, 0, n))
        if peak and clear and novelty[b] > level:
            chosen.append(b)
    return [0, *sorted(chosen), n]


def _likeness(features: Floats) -> Floats:
    """Cosine of each two bars' features, shape (n, n)."""
    unit = features / (np.linalg.norm(features, axis=1, keepdims=True) + 1e-9)
    return np.asarray(unit @ unit.T)


def _labels(likeness: Floats, borders: list[int]) -> list[str]:
    """Letters in the order of first hearing."""
    labels: list[str] = []
    firsts: list[tuple[int, int]] = []
    for low, high in pairwise(borders):
        scores = [_alike(likeness, (low, high), other) for other in firsts]
        best = int(np.argmax(scores)) if scores else -1
        if best >= 0 and scores[best] >= _ALIKE:
            labels.append(_letter(best))
        else:
            labels.append(_letter(len(firsts)))
            firsts.append((low, high))
    return labels


def _alike(likeness: Floats, one: tuple[int, int], other: tuple[int, int]) -> float:
    """Best mean likeness of two stretches, bar by bar, over shifts of one against the other."""
    block = likeness[one[0] : one[1], other[0] : other[1]]
    shorter = min(block.shape)
    means = [
        float(np.mean(diagonal))
        for k in range(-block.shape[0] + 1, block.shape[1])
        if len(diagonal := np.diagonal(block, k)) >= max(2, 0.75 * shorter)
    ]
    return max(means, default=0.0)


def _letter(index: int) -> str:
    """A … Z, AA, AB …: names of columns."""
    name = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        name = chr(65 + rest) + name
    return name
