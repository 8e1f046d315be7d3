"""What each bar of a song sounds like, and how much speaks for a new part at each bar.

Four views of a bar, each standardised over the song: pitch classes by quarter, timbre by band, rhythm (rises
of three bands in eight slots) and loudness. Evidence for a border: how far the bars after it are from those
before (in several reaches), the checkerboard kernel of J. Foote (ICME 2000), and a change of the bars' own
repetition lags (J. Serrà, M. Müller, P. Grosche, J. Arcos, AAAI 2012). All per bar: a border is where a
count begins.
"""

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.listening.signal.spectra import FRAMES, SLOW, Spectra, levelled

_BLOCK = 30_000  # frames taken at once, to save memory
_STILL = {
    "chroma": 0.15,
    "timbre": 0.02,
    "rhythm": 0.002,
    "loud": 0.5,
}  # spread that counts as none
_WEIGHTS = {"chroma": 1.0, "timbre": 0.6, "rhythm": 0.8}  # in the likeness of two bars
_UNLIKE = 2.4  # squared distance of unrelated bars
_FURTHEST = 128  # bars: the longest lag in which a repetition is looked for around a border
_SHORTEST = 1.15  # [s]: shorter bars are taken in pairs
Groups = dict[str, Floats]


def long_bars(downbeats: Floats) -> Floats:
    """First beats [s], of every second bar only where bars are short; shape (m,)."""
    bars = np.asarray(downbeats, dtype=np.float64)
    while len(bars) > 4 and float(np.median(np.diff(bars))) < _SHORTEST:
        bars = bars[::2]
    return bars


def bar_groups(spectra: Spectra, bars: Floats) -> Groups:
    """The four views of each bar, centred, of unit mean square: rows are bars.

    Parameters
    ----------
    spectra : Spectra
    bars : ndarray, shape (n,) [s]

    Returns
    -------
    groups : dict of ndarray, shape (n, k) [1]
        `chroma` (n, 48), `timbre` (n, 16), `rhythm` (n, 24), `loud` (n, 1).

    Notes
    -----
    Source: module docstring.
    """
    n, edges = len(bars), bar_edges(bars, spectra.duration)
    timbre, rises = _levels(spectra)
    chroma = _means(spectra.chroma.astype(np.float64), _slots(edges, 4) * SLOW).reshape(n, 4, 12)
    chroma /= np.linalg.norm(chroma, axis=2, keepdims=True) + 1e-6
    loud = _means(spectra.loudness[:, None], edges * SLOW)
    raw = {
        "chroma": chroma.reshape(n, 48),
        "timbre": _means(timbre, edges * FRAMES),
        "rhythm": _means(rises, _slots(edges, 8) * FRAMES).reshape(n, 24),
        "loud": 20 * np.log10(loud + 1e-4),
    }
    return {name: _standardised(rows, _STILL[name]) for name, rows in raw.items()}


def bar_edges(bars: Floats, duration: float) -> Floats:
    """Start of each bar and the end of the last [s], shape (n + 1,)."""
    return np.append(bars, min(duration, bars[-1] + float(np.median(np.diff(bars)))))


def likeness(groups: Groups) -> Floats:
    """Likeness of each bar to each other, 0 … 1, shape (n, n)."""
    apart = sum(weight * apart_of(groups[name]) for name, weight in _WEIGHTS.items())
    return np.asarray(np.exp(-apart / _UNLIKE))


def apart_of(rows: Floats) -> Floats:
    """Squared distances between rows, shape (n, n)."""
    square = np.sum(rows**2, axis=1)
    return np.asarray(np.maximum(square[:, None] + square[None] - 2 * rows @ rows.T, 0.0))


def border_evidence(groups: Groups, alike: Floats) -> Floats:
    """What speaks for a border before each bar: shape (n + 1, 16), the first and last row without meaning.

    Parameters
    ----------
    groups : dict of ndarray, shape (n, k) [1]
    alike : ndarray, shape (n, n) [1]
        Of `likeness`.

    Notes
    -----
    Source: module docstring. Columns: contrast of each view at 2 and 8 bars, checkerboard at 4 and 8, repetition
    at 4 and 8, contrast of all views at 4, the same over its neighbours, and two of these in spreads of the song.
    """
    columns = [contrast(rows, reach) for rows in groups.values() for reach in (2, 8)]
    checks = [checkerboard(alike, reach) for reach in (4, 8)]
    turns = [repetition_change(alike, reach) for reach in (4, 8)]
    whole = np.sum([contrast(rows, 4) for rows in groups.values()], axis=0)
    padded = np.pad(whole, 2)
    around = np.maximum.reduce([padded[k : k + len(whole)] for k in (0, 1, 3, 4)])
    columns += [*checks, *turns, whole, whole - around, _in_spreads(whole), _in_spreads(checks[1])]
    return np.stack(columns, axis=1)


def contrast(rows: Floats, reach: int) -> Floats:
    """Distance between the means of the bars before and after each border, shape (n + 1,)."""
    n = len(rows)
    found = np.zeros(n + 1)
    b = np.arange(1, n)
    low, high = np.maximum(0, b - reach), np.minimum(n, b + reach)
    total = _summed(rows)
    before = (total[b] - total[low]) / (b - low)[:, None]
    after = (total[high] - total[b]) / (high - b)[:, None]
    share = np.minimum(b - low, high - b) / reach  # at the ends of a song fewer bars tell less
    found[1:n] = np.linalg.norm(before - after, axis=1) * np.sqrt(share)
    return found


def checkerboard(alike: Floats, reach: int) -> Floats:
    """Likeness within the bars before and after each border, less that across it, shape (n + 1,)."""
    n = len(alike)
    area = np.zeros((n + 1, n + 1))
    area[1:, 1:] = alike.cumsum(axis=0).cumsum(axis=1)
    b = np.arange(1, n)
    low, high = np.maximum(0, b - reach), np.minimum(n, b + reach)

    def mean(top: Ints, bottom: Ints, left: Ints, right: Ints) -> Floats:
        inside = area[bottom, right] - area[top, right] - area[bottom, left] + area[top, left]
        return np.asarray(inside / ((bottom - top) * (right - left)))

    found = np.zeros(n + 1)
    within = mean(low, b, low, b) + mean(b, high, b, high)
    found[1:n] = within / 2 - mean(low, b, b, high)
    return found


def repetition_change(alike: Floats, reach: int) -> Floats:
    """How much the lags at which the music repeats change at each border, 0 … 1, shape (n + 1,)."""
    n = len(alike)
    padded = np.pad(alike, 2, mode="edge")
    runs = sum(padded[k : k + n, k : k + n] for k in range(4)) / 4  # four bars in order
    least = float(np.quantile(runs, 0.8))
    furthest = min(n - 1, _FURTHEST)
    lags = np.zeros((n, 2 * furthest + 1))
    for lag in range(2, furthest + 1):
        line = np.maximum(0.0, np.diagonal(runs, lag) - least)
        lags[: n - lag, furthest + lag] = line
        lags[lag:, furthest - lag] = line
    total = _summed(lags)
    b = np.arange(1, n)
    low, high = np.maximum(0, b - reach), np.minimum(n, b + reach)
    before = (total[b] - total[low]) / (b - low)[:, None]
    after = (total[high] - total[b]) / (high - b)[:, None]
    found = np.zeros(n + 1)
    found[1:n] = np.abs(before - after).sum(axis=1) / (before.sum(axis=1) + after.sum(axis=1) + 0.5)
    return found


def _levels(spectra: Spectra) -> tuple[Floats, Floats]:
    """Level of sixteen bands, and rises of three, at each frame; block by block to save memory."""
    level, rises, loud = [], [], spectra.loud
    for start in range(0, len(spectra.mel), _BLOCK):
        bands = levelled(spectra.mel[max(start - 1, 0) : start + _BLOCK], loud)
        if start == 0:
            bands = np.concatenate([bands[:1], bands])
        rise, bands = np.maximum(np.diff(bands, axis=0), 0), bands[1:]
        level.append(bands.reshape(len(bands), 16, 5).mean(axis=2))
        three = [rise[:, a:b].mean(axis=1) for a, b in ((0, 20), (20, 50), (50, 80))]
        rises.append(np.stack(three, axis=1))
    return np.concatenate(level), np.concatenate(rises)


def _slots(edges: Floats, parts: int) -> Floats:
    """Edges of equal parts of each bar, shape (n · parts + 1,)."""
    inside = edges[:-1, None] + np.diff(edges)[:, None] * np.arange(parts) / parts
    return np.append(inside.ravel(), edges[-1])


def _means(rows: Floats, edges: Floats) -> Floats:
    """Mean of the rows between successive edges."""
    total = _summed(rows)
    index = np.clip(np.round(edges).astype(np.int64), 0, len(rows))
    low, high = index[:-1], np.minimum(np.maximum(index[1:], index[:-1] + 1), len(rows))
    low = np.minimum(low, high - 1)
    return np.asarray((total[high] - total[low]) / (high - low)[:, None])


def _summed(rows: Floats) -> Floats:
    """Sums of the rows before each, shape (n + 1, k)."""
    return np.concatenate([np.zeros((1, rows.shape[1])), np.cumsum(rows, axis=0, dtype=np.float64)])


def _standardised(rows: Floats, still: float) -> Floats:
    """Rows about their mean, of unit mean square where they differ by more than nothing."""
    centred = rows - rows.mean(axis=0)
    return np.asarray(centred / (np.sqrt(np.mean(np.sum(centred**2, axis=1))) + still))


def _in_spreads(values: Floats) -> Floats:
    """Above the median of the song, in its spreads."""
    inner = values[1:-1]
    return np.asarray((values - np.median(inner)) / (np.std(inner) + 1e-6))
