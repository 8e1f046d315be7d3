"""Stretches of trajectories, split into pieces on which proven bounds hold.

Times in beats.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor
from typing import Protocol

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, Ints
from sequencer.motion.laws.law import Bounds

_SLIVER = 1e-12  # [beats] a narrower piece is rounding


class Bounded(Protocol):
    """A trajectory as far as its bounds go."""

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on contiguous pieces that cover [start, end]."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Stretches:
    """Stretches of one trajectory or of two, split where bounds or the tempo change; n pieces."""

    group: Ints  # (n,) the stretch of each piece
    start: Floats  # (n,) [beats]
    end: Floats  # (n,) [beats]
    bounds: tuple[tuple[Bounds, ...], ...]  # n bounds for each trajectory

    def columns(self, *names: str, of: int = 0) -> list[Floats]:
        """Some bounds of a trajectory as arrays of shape (n,)."""
        return [np.array([getattr(b, name) for b in self.bounds[of]]) for name in names]


def stretches(
    trajectories: Sequence[Bounded],
    intervals: Sequence[tuple[float, float]],
    *,
    whole_beats: bool = False,
    at: ArrayLike = (),
) -> Stretches:
    """Trajectories split into pieces, the same ones for all of them.

    Parameters
    ----------
    trajectories : sequence of trajectories
    intervals : sequence of (start, end)
        The stretches [beats].
    whole_beats : bool
        Whether to split at every beat too, where a tempo map may change.
    at : array_like, shape (k,) [beats]
        Further places to split.

    Returns
    -------
    stretches : Stretches

    Notes
    -----
    Source: the trajectories' own pieces. Exact, but for pieces narrower than 1e-12 beats, which are left out.
    """
    places = np.unique(np.asarray(at, dtype=np.float64))
    group: list[int] = []
    start: list[float] = []
    end: list[float] = []
    bounds: list[list[Bounds]] = [[] for _ in trajectories]
    for k, (low, high) in enumerate(intervals):
        pieces = [each.pieces(low, high) for each in trajectories]
        cuts = {low, high}
        for own in pieces:
            cuts.update(left for left, *_ in own)
        if len(places):
            cuts.update(places[(places > low) & (places < high)].tolist())
        if whole_beats:
            cuts.update(float(beat) for beat in range(floor(low) + 1, ceil(high)))
        ordered = sorted(cuts)
        edges = [a for a, b in pairwise(ordered) if b - a > _SLIVER] + ordered[-1:]
        group += [k] * (len(edges) - 1)
        start += edges[:-1]
        end += edges[1:]
        middles = [(a + b) / 2 for a, b in pairwise(edges)]
        for known, own in zip(bounds, pieces, strict=True):
            known.extend(_holding(own, middles))
    return Stretches(
        group=np.array(group, dtype=np.int64),
        start=np.array(start),
        end=np.array(end),
        bounds=tuple(tuple(each) for each in bounds),
    )


def _holding(pieces: Sequence[tuple[float, float, Bounds]], beats: Sequence[float]) -> list[Bounds]:
    """The bounds that hold at increasing beats."""
    found, k = [], 0
    for beat in beats:
        while k + 1 < len(pieces) and pieces[k + 1][0] <= beat:
            k += 1
        found.append(pieces[k][2])
    return found
