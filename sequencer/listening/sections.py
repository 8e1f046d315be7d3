"""Sections of a song: where the music changes, and which sections repeat.

One feature vector per bar (pitch classes, timbre, loudness, each standardised over the track); boundaries
where the bars before differ from the bars after (checkerboard kernel, J. Foote, ICME 2000) more than usual;
labels by similarity of sections, compared bar by bar in order, without transposition.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.spectra import FRAMES, SLOW, Spectra, levelled

_REACHES = (
    4,
    6,
    8,
)  # bars on each side of a boundary; a change at several of these scales is a boundary
_BLOCK = 30_000  # frames
_SHORTEST, _LONGEST = 4, 64  # minimum bars of a section
_STRICT = 0.25  # spreads above the median that novelty must reach for a boundary
_SQUARE = 0.5  # bonus for a section that is a multiple of four bars, in the same measure
_ALIKE = 0.6  # similarity above which two sections share a label


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
        Beats per bar; bars of two beats are taken in pairs.

    Returns
    -------
    sections : tuple of Stretch
        A single one if the track is too short, or too uniform, to divide.

    Notes
    -----
    Source: module docstring. Boundaries lie on downbeats.
    """
    end = spectra.duration
    bars = downbeats[::2] if metre == 2 else downbeats
    if len(bars) < 2 * _SHORTEST:
        return (Stretch(0.0, end, "A"),)
    features = _bar_features(spectra, bars)
    borders = _borders(features)
    labels = _labels(features, borders)
    starts = [0.0, *(float(bars[b]) for b in borders[1:-1])]
    ends = [*starts[1:], end]
    return tuple(
        Stretch(start, stop, label) for start, stop, label in zip(starts, ends, labels, strict=True)
    )


def _bar_features(spectra: Spectra, bars: Floats) -> Floats:
    """One row per bar: pitch classes, timbre by band, loudness; each group has equal weight."""
    edges = np.append(bars, min(spectra.duration, bars[-1] + float(np.median(np.diff(bars)))))
    timbre, rough = (_means(rows, edges * FRAMES) for rows in _timbre(spectra))
    chroma = _means(spectra.chroma.astype(np.float64), edges * SLOW)
    chroma /= np.linalg.norm(chroma, axis=1, keepdims=True) + 1e-9
    groups = []
    for group, weight in ((chroma, 1.0), (timbre, 1.0), (rough, 0.7)):
        centred = group - group.mean(axis=0)
        spread = np.sqrt(np.mean(np.sum(centred**2, axis=1))) + 1e-6
        groups.append(weight * centred / spread)
    return np.concatenate(groups, axis=1)


def _timbre(spectra: Spectra) -> tuple[Floats, Floats]:
    """Level, and change of level, of ten wide bands at each frame; computed block by block to save memory."""
    level, change, loud = [], [], spectra.loud
    for start in range(0, len(spectra.mel), _BLOCK):
        bands = levelled(spectra.mel[max(start - 1, 0) : start + _BLOCK], loud)
        if start == 0:
            bands = np.concatenate([bands[:1], bands])
        moved, bands = np.abs(np.diff(bands, axis=0)), bands[1:]
        level.append(bands.reshape(len(bands), -1, 8).mean(axis=2))
        change.append(moved.reshape(len(moved), -1, 8).mean(axis=2))
    return np.concatenate(level).astype(np.float64), np.concatenate(change).astype(np.float64)


def _means(rows: Floats, edges: Floats) -> Floats:
    """Mean of the rows between successive edges."""
    total = np.concatenate(
        [np.zeros((1, rows.shape[1])), np.cumsum(rows, axis=0, dtype=np.float64)]
    )
    index = np.clip(np.round(edges).astype(np.int64), 0, len(rows))
    low, high = index[:-1], np.maximum(index[1:], index[:-1] + 1)
    high = np.minimum(high, len(rows))
    low = np.minimum(low, high - 1)
    return np.asarray((total[high] - total[low]) / (high - low)[:, None])


def _novelty(features: Floats) -> Floats:
    """How much the bars after each boundary differ from those before it; mean over all scales.

    Each scale is normalised by its median and spread, so that none dominates.
    """
    several = []
    for reach in _REACHES:
        one = _contrast(features, reach)
        inner = one[2:-2] if len(one) > 6 else one
        several.append((one - np.median(inner)) / (np.std(inner) + 1e-9))
    return np.asarray(np.mean(several, axis=0))


def _contrast(features: Floats, reach: int) -> Floats:
    """Similarity within the bars before and after each boundary, minus that across it (checkerboard kernel)."""
    n = len(features)
    some = features[:: max(1, n // 300)]
    scale = float(np.median(_distance(some, some))) + 1e-9
    result = np.zeros(n + 1)
    for b in range(2, n - 1):
        low, high = max(0, b - reach), min(n, b + reach)
        past, coming = features[low:b], features[b:high]
        wp = np.exp(-0.5 * ((b - 0.5 - np.arange(low, b)) / (reach / 2)) ** 2)
        wc = np.exp(-0.5 * ((np.arange(b, high) - b + 0.5) / (reach / 2)) ** 2)
        within = wp @ np.exp(-_distance(past, past) / scale) @ wp / wp.sum() ** 2
        within += wc @ np.exp(-_distance(coming, coming) / scale) @ wc / wc.sum() ** 2
        across = wp @ np.exp(-_distance(past, coming) / scale) @ wc / (wp.sum() * wc.sum())
        result[b] = within / 2 - across
    return result


def _distance(one: Floats, other: Floats) -> Floats:
    """Squared distances between rows, shape (n, m)."""
    return np.asarray(np.sum((one[:, None] - other[None]) ** 2, axis=2))


def _borders(features: Floats) -> list[int]:
    """Bar numbers of all boundaries, including the start of the first and the end of the last bar.

    The set of boundaries with the largest total novelty above the threshold, with a small bonus for
    sections of a multiple of four bars, as in most music; found by dynamic programming.
    """
    n = len(features)
    novelty = _novelty(features)
    inner = novelty[2 : n - 1]
    spread = float(np.std(inner)) + 1e-9
    gain = (novelty - float(np.median(inner)) - _STRICT * spread) / spread
    best, back = np.full(n + 1, -np.inf), np.zeros(n + 1, np.int64)
    best[0] = 0.0
    for b in range(1, n + 1):
        if b == n:
            lengths = np.arange(1, min(b, _LONGEST) + 1)
            value = best[b - lengths]
        else:
            lengths = np.arange(_SHORTEST, min(b, _LONGEST) + 1)
            square = (lengths % 4 == 0) + 0.5 * (lengths % 2 == 0)
            value = best[b - lengths] + gain[b] + _SQUARE * square
        # a short beginning (a lead-in) is allowed, a short middle is not
        if b < min(n, _SHORTEST):
            best[b], back[b] = gain[b], 0
        if len(value) and value.max() > best[b]:
            best[b], back[b] = value.max(), b - int(lengths[np.argmax(value)])
    borders = [n]
    while borders[-1] > 0:
        borders.append(int(back[borders[-1]]))
    return borders[::-1]


def _labels(features: Floats, borders: list[int]) -> list[str]:
    """Letters in order of first appearance."""
    unit = features / (np.linalg.norm(features, axis=1, keepdims=True) + 1e-9)
    labels: list[str] = []
    firsts: list[Floats] = []
    for low, high in pairwise(borders):
        here = unit[low:high]
        scores = [_alike(here @ other.T) for other in firsts]
        best = int(np.argmax(scores)) if scores else -1
        if best >= 0 and scores[best] >= _ALIKE:
            labels.append(_letter(best))
        else:
            labels.append(_letter(len(firsts)))
            firsts.append(here)
    return labels


def _alike(block: Floats) -> float:
    """Best mean similarity of two sections, bar by bar, over shifts of one against the other."""
    shorter = min(block.shape)
    means = [
        float(np.mean(diagonal))
        for k in range(-block.shape[0] + 1, block.shape[1])
        if len(diagonal := np.diagonal(block, k)) >= max(1, 0.75 * shorter)
    ]
    return max(means, default=0.0)


def _letter(index: int) -> str:
    """A … Z, AA, AB …: like spreadsheet columns."""
    name = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        name = chr(65 + rest) + name
    return name
