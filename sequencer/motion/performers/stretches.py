"""Stretches of trajectories, split into pieces on which proven bounds hold.

Times in beats.
"""

from collections.abc import Sequence
from dataclasses import dataclass
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
    """
    places = np.unique(np.asarray(at, dtype=np.float64))
    group: list[int] = []
    knots: list[float] = []
    ends: list[float] = []
    bounds: list[list[Bounds]] = [[] for _ in trajectories]
    for k, (low, high) in enumerate(intervals):
        pieces = [each.pieces(low, high) for each in trajectories]
        cuts = {low, high, *places[(places > low) & (places < high)].tolist()}
        cuts.update(edge for own in pieces for left, right, _ in own for edge in (left, right))
        if whole_beats:
            cuts.update(np.arange(np.floor(low) + 1, high).tolist())
        edges = np.array(sorted(cuts))
        edges = edges[np.append(True, np.diff(edges) > _SLIVER)]
        middle = (edges[:-1] + edges[1:]) / 2
        group += [k] * len(middle)
        knots += edges[:-1].tolist()
        ends += edges[1:].tolist()
        for found, own in zip(bounds, pieces, strict=True):
            index = np.searchsorted([left for left, *_ in own], middle, side="right") - 1
            found += [own[i][2] for i in index.tolist()]
    return Stretches(
        group=np.array(group, dtype=np.int64),
        start=np.array(knots),
        end=np.array(ends),
        bounds=tuple(tuple(each) for each in bounds),
    )
