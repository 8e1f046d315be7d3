"""A steady tempo is believed: beats that slip off a grid that most of a stretch lies on are put back onto it.

Produced music keeps one tempo, or changes it at once and keeps the next. The search for beats goes from beat to beat and can slip by half a
beat where the off-beats are louder; no single beat then looks wrong. A grid through the whole stretch competes with it, in
both of its phases, by how much of a beat is heard on each; each slip is put back only where the grid is heard as well as it.
"""

from itertools import pairwise

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.listening.barpointer import FPS
from sequencer.timing.steady import SteadyGrid, steady_grid

_STRETCH = 32  # beats at least in a stretch of one tempo
_AROUND = 8  # beats on either side, whose median interval is the tempo there
_CHANGED = 0.03  # share by which the tempo of the two sides differs at a change
_PLATEAU = 0.9  # of the largest difference, about the change
_HALVES = 0.97  # share of the beats that lie on the half beats of a grid that is believed
_MOST = 0.5  # share of the beats that lie on its beats
_SPAN = 4  # beats at least that slip
_NEAR = 2  # frames about a beat of the grid in which it is heard


def steadied(times: Floats, sure: Floats, beat: Floats) -> tuple[Floats, Bools]:
    """Beats with slips off a steady tempo put right.

    Parameters
    ----------
    times : ndarray, shape (n,) [s]
        Beats as the search found them, rising.
    sure : ndarray, shape (n,) [1]
        Probability of each.
    beat : ndarray, shape (m,) [1]
        Probability of a beat at each frame of the search.

    Returns
    -------
    beats : ndarray, shape (k,) [s]
        The same beats where they lie on the grid or no grid is believed, else the grid's.
    moved : ndarray, shape (k,) [1]
        True where the grid's beat stands in.

    Notes
    -----
    Source: this project; constants by common sense, checked on the corpora (benchmarks).
    """
    cuts = [0, *_changes(times), len(times)]
    beats, moved = [], []
    for low, high in pairwise(cuts):
        end = float(times[high]) if high < len(times) else np.inf
        found = _stretch(times[low:high], sure[low:high], beat, end)
        beats.append(found[0])
        moved.append(found[1])
    return np.concatenate(beats), np.concatenate(moved)


def _changes(times: Floats) -> list[int]:
    """Beats at which another tempo begins for good."""
    if len(times) < 2 * _STRETCH:
        return []
    steps = np.diff(times)
    windows = np.lib.stride_tricks.sliding_window_view(steps, 2 * _AROUND)
    left = np.median(windows[: -2 * _AROUND], axis=1)
    right = np.median(windows[2 * _AROUND :], axis=1)
    off = np.abs(np.log(right / left))
    found: list[int] = []
    for i in np.argsort(-off, kind="stable").tolist():
        if off[i] < _CHANGED:
            break
        low = high = i  # medians are the same for some beats on either side of the change
        while low > 0 and off[low - 1] > _PLATEAU * off[i]:
            low -= 1
        while high + 1 < len(off) and off[high + 1] > _PLATEAU * off[i]:
            high += 1
        place = (low + high) // 2 + 2 * _AROUND
        if all(abs(place - other) >= 2 * _AROUND for other in found):
            found.append(place)
    return sorted(found)


def _stretch(times: Floats, sure: Floats, beat: Floats, end: float) -> tuple[Floats, Bools]:
    """Beats of one stretch, before `end` [s]."""
    same = np.zeros(len(times), np.bool_)
    grid = steady_grid(times, sure) if len(times) >= _STRETCH else None
    if grid is None:
        return times, same
    halves = SteadyGrid(grid.start, grid.interval / 2)
    if np.mean(halves.holds(times)) < _HALVES:
        return times, same
    low, high = float(times[0]), float(times[-1])
    grids = [grid, grid.moved()]
    heard = [_heard(one.times(low, high), beat) for one in grids]
    best = grids[int(heard[1] > heard[0])]
    on, off = best.holds(times), best.moved().holds(times)
    if on.mean() < _MOST:
        return times, same
    beats, moved = [], []
    begin = 0
    for first, last in _slips(on, off):
        low = times[first - 1] + best.interval / 2 if first else times[0]
        high = (
            times[last] - best.interval / 2
            if last < len(times)
            else min(high, end - best.interval / 2)
        )
        wanted = best.times(low, high)
        # a song may really jump by half a beat: at a cut, a pause, a short bar
        if _heard(wanted, beat) < _heard(times[first:last], beat):
            continue
        beats += [times[begin:first], wanted]
        moved += [same[begin:first], np.ones(len(wanted), np.bool_)]
        begin = last
    return np.concatenate([*beats, times[begin:]]), np.concatenate([*moved, same[begin:]])


def _slips(on: Bools, off: Bools) -> list[tuple[int, int]]:
    """Runs of beats that lie half a beat off, as first and one past the last; what lies on neither goes with what is before it."""
    label = np.where(on, 1, np.where(off, -1, 0))
    known = np.maximum.accumulate(np.where(label != 0, np.arange(len(label)), 0))
    slipped = label[known] < 0
    edges = np.flatnonzero(np.diff(np.concatenate([[False], slipped, [False]]).astype(np.int8)))
    runs = zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True)
    return [(first, last) for first, last in runs if off[first:last].sum() >= _SPAN]


def _heard(times: Floats, beat: Floats) -> float:
    """Mean log odds of beats at these moments [nats]."""
    if not len(times) or not len(beat):
        return -np.inf
    frames = np.round(times * FPS).astype(np.int64)[:, None] + np.arange(-_NEAR, _NEAR + 1)
    chance = np.clip(beat[np.clip(frames, 0, len(beat) - 1)].max(axis=1), 1e-3, 1 - 1e-3)
    return float(np.mean(np.log(chance / (1 - chance))))
