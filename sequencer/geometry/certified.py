"""Smallest values and spans under a requirement, proven over whole intervals of time.

A function of time is known only through samples with proven bounds: its value at the middle of an interval,
and a lower and an upper bound over the whole interval. Intervals whose bounds are not yet decisive are
split. Nothing is concluded from samples alone, so no dip is missed, however short. Units of time and value
are up to the caller.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.progress import stop_if_unwanted

TOLERANCE = 0.005  # [m] accuracy that counts as exact on a stage plan
_FEW = 24  # intervals of each group that are searched first
_CHUNK = 16_384  # samples evaluated at a time, to limit memory
_LEVEL = 400_000  # intervals of one level processed together
_MOST = 500_000_000  # samples in one search; hours of work, and no show is that long
_NARROWEST = 1e-10  # [time] half-width at which every valid bound is decisive


class Sample(NamedTuple):
    """Samples of n intervals; every array has shape (n,)."""

    value: Floats  # at the middle; inf if `lower` was enough and it was not computed
    lower: Floats  # proven lower bound over the interval
    upper: Floats  # proven upper bound over the interval
    label: Ints  # the caller's data, stored with the smallest value


Evaluate = Callable[[Ints, Floats, Floats, Floats], Sample]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Spans:
    """Intervals in which the value is, or within the tolerance may be, below the requirement."""

    group: Ints  # (n,)
    start: Floats  # (n,) [time]
    end: Floats  # (n,) [time]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CertifiedMinima:
    """Smallest value of each group, proven to the tolerance, and the spans below its requirement."""

    value: Floats  # (groups,) inf if a group has no interval
    at: Floats  # (groups,) [time] at which it was found
    row: Ints  # (groups,) the caller's interval that contains it
    label: Ints  # (groups,)
    lower: Floats  # (groups,) proven: the function is never below this
    spans: Spans
    evaluations: int


def search(
    evaluate: Evaluate,
    *,
    group: Ints,
    start: Floats,
    end: Floats,
    required: Floats,
    best: Floats | None = None,
    tolerance: float = TOLERANCE,
    apart: bool = False,
) -> CertifiedMinima:
    """Smallest value of each group over its intervals, and the spans below its requirement.

    Parameters
    ----------
    evaluate : callable
        `evaluate(rows, centre, half, enough)` returns a Sample for intervals within the caller's intervals
        `rows`. A lower bound of at least `enough` decides an interval.
    group : ndarray, shape (n,) [1]
        The group of each interval.
    start : ndarray, shape (n,) [time]
    end : ndarray, shape (n,) [time]
    required : ndarray, shape (groups,) [value]
        -inf if no spans are wanted.
    best : ndarray, shape (groups,) [value], optional
        Values already known; an interval that cannot go below one of them by the tolerance is not split.
    tolerance : float
        Largest error of the smallest value, and width of the margin that counts as below.
    apart : bool
        Whether a level of the search is decided as a whole, and `evaluate` given all of it: then what is decided about a
        group does not depend on which others are searched with it.

    Returns
    -------
    found : CertifiedMinima

    Raises
    ------
    ValueError
        If a bound is not a number, or splitting does not end: then the bounds given are invalid.

    Notes
    -----
    Source: branch and bound with a Lipschitz constant (S. A. Piyavskii, USSR Comput. Math. Math.
    Phys. 12, 1972; from memory). Error: at most `tolerance`.
    """
    groups = len(required)
    value = np.full(groups, np.inf) if best is None else np.array(best, dtype=np.float64)
    lowest = np.full(groups, np.inf)
    at, row = np.full(groups, np.nan), np.full(groups, -1, dtype=np.int64)
    label = np.full(groups, -1, dtype=np.int64)
    early = _spread(group, groups)
    rows: Ints = np.concatenate([np.flatnonzero(early), np.flatnonzero(~early)])
    start, end = start[rows], end[rows]
    centre, half = 0.5 * (start + end), 0.5 * (end - start)
    open_ = np.isfinite(required)[group[rows]]
    first = int(np.count_nonzero(early))
    flagged: list[tuple[Ints, Floats, Floats]] = []
    evaluations = 0
    whole = _MOST if apart else None
    # One level of the search at a time, in blocks: the last block goes first when a level grows large.
    waiting = [(rows, centre, half, open_)]
    while waiting:
        stop_if_unwanted()
        rows, centre, half, open_ = waiting.pop()
        kept: list[tuple[Ints, Floats, Floats, Bools]] = []
        for low, high in _blocks(len(rows), whole or _CHUNK, first):
            r, t, w, spanning = rows[low:high], centre[low:high], half[low:high], open_[low:high]
            g = group[r]
            need = np.where(spanning, required[g], -np.inf)
            enough = np.maximum(value[g] - tolerance, need)
            sample = evaluate(r, t, w, enough)
            evaluations += len(r)
            if np.any(np.isnan(sample.lower)) or np.any(np.isnan(sample.value)):
                raise ValueError("a bound is not a number: nothing is proven")
            _improve(value, at, row, label, g, r, t, sample)

            lower = sample.lower
            under = spanning & (lower < need)
            sure = under & ((sample.upper < need) | (sample.value - lower <= tolerance))
            if np.any(sure):
                flagged.append((g[sure], (t - w)[sure], (t + w)[sure]))
            undecided = under & ~sure
            split = undecided | (lower < value[g] - tolerance)
            np.minimum.at(lowest, g[~split], lower[~split])
            if np.any(split):
                if evaluations > _MOST or np.min(w[split]) < _NARROWEST:
                    raise ValueError("the bounds do not tighten as intervals shrink")
                target = np.where(undecided, need, value[g] - tolerance)[split]
                kept.append(
                    _split(r[split], t[split], w[split], undecided[split], sample, split, target)
                )
        first = 0
        rows, centre, half, open_ = _joined(kept)
        waiting += [
            (rows[low:high], centre[low:high], half[low:high], open_[low:high])
            for low, high in reversed(_blocks(len(rows), whole or _LEVEL, 0))
        ]
    return CertifiedMinima(
        value=value,
        at=at,
        row=row,
        label=label,
        lower=np.minimum(lowest, value),
        spans=joined_spans(flagged),
        evaluations=evaluations,
    )


def _spread(group: Ints, groups: int) -> Bools:
    """A few evenly spaced intervals of every group: their results save much work on the others."""
    order = np.argsort(group, kind="stable")
    count = np.bincount(group, minlength=groups)
    rank = np.empty(len(group), dtype=np.int64)
    rank[order] = np.arange(len(group)) - np.repeat(np.cumsum(count) - count, count)
    stride = np.maximum(count // _FEW, 1)[group]
    return np.asarray(rank % stride == stride // 2)


def _blocks(n: int, size: int, first: int) -> list[tuple[int, int]]:
    """Split n into blocks, with a separate size for the first."""
    edges = sorted({0, min(first, n), *range(first, n, size), n})
    return list(pairwise(edges))


def _improve(
    value: Floats, at: Floats, row: Ints, label: Ints, g: Ints, r: Ints, t: Floats, sample: Sample
) -> None:
    """Update the smallest values from a batch; ties go to the earliest time."""
    better = np.flatnonzero(sample.value < value[g])
    if not len(better):
        return
    order = better[np.lexsort((t[better], sample.value[better], g[better]))]
    first = order[np.append(True, np.diff(g[order]) != 0)]
    value[g[first]] = sample.value[first]
    at[g[first]], row[g[first]], label[g[first]] = t[first], r[first], sample.label[first]


def _split(
    r: Ints, t: Floats, w: Floats, spanning: Bools, sample: Sample, split: Bools, target: Floats
) -> tuple[Ints, Floats, Floats, Bools]:
    """Split into 2, 4, 8 or 16; powers of two keep times exact, so that pairs share samples.

    Bounds tighten at least linearly with the width, so the ratio of the current slack to the allowed slack
    gives the number of parts; rounding down costs at most one more round.
    """
    lost = sample.value[split] - sample.lower[split]
    spare = np.maximum(sample.value[split] - target, 1e-9)
    with np.errstate(invalid="ignore"):
        ratio = np.where(np.isfinite(lost), lost / spare, 2.0)
    power = np.clip(np.floor(np.log2(np.maximum(ratio, 2.0)) * 0.6), 1, 4).astype(np.int64)
    count = 2**power
    parent = np.repeat(np.arange(len(r)), count)
    place = np.arange(len(parent)) - np.repeat(np.cumsum(count) - count, count)
    half = w[parent] / count[parent]
    centre = t[parent] + half * (2 * place + 1 - count[parent])
    return r[parent], centre, half, spanning[parent]


def _joined(
    kept: list[tuple[Ints, Floats, Floats, Bools]],
) -> tuple[Ints, Floats, Floats, Bools]:
    if not kept:
        none = np.zeros(0)
        return none.astype(np.int64), none, none, none.astype(np.bool_)
    rows, centre, half, open_ = (np.concatenate(column) for column in zip(*kept, strict=True))
    return rows, centre, half, open_


def joined_spans(flagged: list[tuple[Ints, Floats, Floats]]) -> Spans:
    """Intervals of each group as spans: those that touch are joined.

    Parameters
    ----------
    flagged : list of (group, start, end)
        Each an array, shape (n,) [time].
    """
    if not any(len(group) for group, _, _ in flagged):
        none = np.zeros(0)
        return Spans(group=none.astype(np.int64), start=none, end=none)
    group, start, end = (np.concatenate(column) for column in zip(*flagged, strict=True))
    order = np.lexsort((start, group))
    group, start, end = group[order], start[order], end[order]
    gap = np.ones(len(group), dtype=np.bool_)
    gap[1:] = (np.diff(group) != 0) | (start[1:] > end[:-1] + 1e-9)
    first = np.flatnonzero(gap)
    last = np.append(first[1:], len(group)) - 1
    return Spans(group=group[first], start=start[first], end=end[last])
