"""Common time grid for a whole cast, with every dancer's proven bounds on each cell.

A cell never straddles the moment a head is lit or put out or a hand deviation changes, so no radius jumps
within a cell. Nor does it straddle the edge of a slice: what is found in the cells of a slice depends on nothing
outside it, and is kept for the next search.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.kept import recent
from sequencer.motion.clearance.slices import SliceKeys, floor_keys, slice_edges, slice_keys
from sequencer.motion.performers.body_parts import N_FRONT, N_POINTS
from sequencer.motion.performers.dancer import Dancer, Pieces
from sequencer.motion.performers.ensemble import Ensemble

_MORE = 32  # dancers whose bounds are kept beside those of a whole cast: a megabyte or two each of a long show
_MOST_OF_PAIRS = 256  # the same of pairs, which are small
_MOST_GRIDS = 2  # of one check: distances between performers, and to what stands still


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cells:
    """Proven bounds of n dancers on c cells; p points, with rear ends only if there are any."""

    ensemble: Ensemble  # the dancers
    edges: Floats  # (c + 1,) [beats]
    speed: Floats  # (n, c, p) [m/beat] of each point
    acceleration: Floats  # (n, c, p) [m/beat²]
    reach: Floats  # (n, c) [m] of every part from the body's axis, on the plan
    drawn: Floats  # (n, c) [m] the same without hand deviation
    hand_speed: (
        Floats  # (n, c, 2) [m/beat] speed at which hands move away from or towards their shoulders
    )
    lit: Bools  # (n, c)
    place: Floats  # (n, c, 2) [m, stage frame] at the middle
    place_uncertainty: Floats  # (n, c) [m] largest distance of the position from there
    cuts: Ints  # (s + 1,) first cell of each slice, and c
    keys: tuple[SliceKeys, ...]  # (n,) content of each dancer in each slice
    floors: tuple[SliceKeys, ...]  # (n,) the same of where they stand and walk alone
    # (s,) edges of the cells of each slice, and the number of points: what results depend on beside the dancers
    within: tuple[tuple[bytes, int], ...]

    @property
    def points(self) -> int:
        """Number of points kept per dancer."""
        return self.speed.shape[-1]

    @property
    def start(self) -> Floats:
        """Start of each cell, shape (c,) [beats]."""
        return self.edges[:-1]

    @property
    def end(self) -> Floats:
        """End of each cell, shape (c,) [beats]."""
        return self.edges[1:]


def cells(dancers: Sequence[Dancer], start: float, end: float) -> Cells:
    """Cells between two beats, and the dancers' bounds on them.

    Raises
    ------
    ValueError
        If `end` is not after `start`, or a bound is not finite: then nothing can be proven.
    """
    if not end > start:
        raise ValueError(f"end must come after start, got {start} and {end}")
    slices = slice_edges(start, end)
    keys = tuple(slice_keys(dancer, slices) for dancer in dancers)
    if any(None in own for own in keys):
        return _cells(dancers, slices, keys)
    return recent(
        _kind("grid", dancers),
        (keys, start, end),
        lambda: _cells(dancers, slices, keys),
        most=_MOST_GRIDS,
    )


def _kind(what: str, dancers: Sequence[Dancer]) -> str:
    """What bounds are kept as: those of pairs, of which there are thousands, put none of a whole cast away."""
    return f"{what} of pairs" if len(dancers) <= 2 else what


def _most(dancers: Sequence[Dancer]) -> int:
    return _MOST_OF_PAIRS if len(dancers) <= 2 else len(dancers) + _MORE


def _cells(dancers: Sequence[Dancer], slices: Floats, keys: tuple[SliceKeys, ...]) -> Cells:
    start, end = float(slices[0]), float(slices[-1])
    kind, most = _kind("pieces", dancers), _most(dancers)
    pieces = [
        _pieces(dancer, own, start, end, kind=kind, most=most)
        for dancer, own in zip(dancers, keys, strict=True)
    ]
    quarters = [np.round(4 * own.edges) / 4 for own in pieces]
    changes = [dancer.changes for dancer in dancers]
    beats = np.arange(np.ceil(start), np.floor(end) + 1)
    edges = np.unique(np.concatenate([[start, end], beats, *quarters, *changes]))
    edges = edges[(edges >= start) & (edges <= end)]
    cuts = np.searchsorted(edges, slices)
    points = N_POINTS if any(dancer.two_ended for dancer in dancers) else N_FRONT
    rows = [
        _row(dancer, own, edges, points, key, kind=_kind("rows of cells", dancers), most=most)
        for dancer, own, key in zip(dancers, pieces, keys, strict=True)
    ]
    return Cells(
        ensemble=Ensemble(dancers),
        edges=edges,
        speed=np.stack([row.speed for row in rows]),
        acceleration=np.stack([row.acceleration for row in rows]),
        reach=np.stack([row.reach for row in rows]),
        drawn=np.stack([row.drawn for row in rows]),
        hand_speed=np.stack([row.hand_speed for row in rows]),
        lit=np.stack([row.lit for row in rows]),
        place=np.stack([row.place for row in rows]),
        place_uncertainty=np.stack([row.place_uncertainty for row in rows]),
        cuts=cuts,
        keys=keys,
        floors=tuple(floor_keys(dancer.floor, slices) for dancer in dancers),
        within=tuple((edges[a : b + 1].tobytes(), points) for a, b in pairwise(cuts.tolist())),
    )


def side_by_side(grids: Sequence[Cells]) -> Cells:
    """Cells of several casts that know nothing of each other, numbered one cast after the other.

    Parameters
    ----------
    grids : sequence of Cells
        With the same number of points.

    Returns
    -------
    cells : Cells
        Each cast is out of reach in the cells of the others, and in one more cell between two casts.

    Raises
    ------
    ValueError
        If the casts differ in their number of points.
    """
    if len(grids) == 1:
        return grids[0]
    if len({grid.points for grid in grids}) > 1:
        raise ValueError("grids must have the same number of points")
    first_row = np.cumsum([0, *(len(grid.reach) for grid in grids)]).tolist()
    first_cell = np.cumsum([0, *(len(grid.edges) for grid in grids)]).tolist()
    first_cut = np.cumsum([0, *(len(grid.cuts) for grid in grids)]).tolist()

    def block(name: str, fill: float = 0.0) -> Floats:
        sample: Floats = getattr(grids[0], name)
        out = np.full((first_row[-1], first_cell[-1] - 1, *sample.shape[2:]), fill, sample.dtype)
        for grid, row, cell in zip(grids, first_row, first_cell, strict=False):
            own = getattr(grid, name)
            out[row : row + own.shape[0], cell : cell + own.shape[1]] = own
        return out

    def among(name: str) -> tuple[SliceKeys, ...]:
        return tuple(
            (*(None,) * cut, *own, *(None,) * (first_cut[-1] - 1 - cut - len(own)))
            for grid, cut in zip(grids, first_cut, strict=False)
            for own in getattr(grid, name)
        )

    return Cells(
        ensemble=Ensemble([dancer for grid in grids for dancer in grid.ensemble.dancers]),
        edges=np.concatenate([grid.edges for grid in grids]),
        speed=block("speed"),
        acceleration=block("acceleration"),
        reach=block("reach", -np.inf),
        drawn=block("drawn", -np.inf),
        hand_speed=block("hand_speed"),
        lit=block("lit").astype(np.bool_),
        place=block("place"),
        place_uncertainty=block("place_uncertainty"),
        cuts=np.concatenate(
            [grid.cuts + cell for grid, cell in zip(grids, first_cell, strict=False)]
        ),
        keys=among("keys"),
        floors=among("floors"),
        within=tuple(each for grid in grids for each in (*grid.within, (b"", grid.points)))[:-1],
    )


class _Row(NamedTuple):
    """One dancer's part of the cells."""

    speed: Floats
    acceleration: Floats
    reach: Floats
    drawn: Floats
    hand_speed: Floats
    lit: Bools
    place: Floats
    place_uncertainty: Floats


def _row(
    dancer: Dancer,
    own: Pieces,
    edges: Floats,
    points: int,
    keys: SliceKeys,
    *,
    kind: str,
    most: int,
) -> _Row:
    """A dancer's bounds on all cells."""

    def work() -> _Row:
        low = np.searchsorted(own.edges, edges[:-1], side="right") - 1
        high = np.searchsorted(own.edges, edges[1:], side="left")
        low = np.clip(low, 0, len(own.reach) - 1)
        pairs: Ints = np.stack([low, np.maximum(high, low + 1)], axis=1).ravel()

        def largest(values: Floats) -> Floats:
            # reduceat takes the maximum over [low, high); the extra row lets high be the end.
            padded = np.concatenate([values, np.zeros_like(values[:1])])
            return np.asarray(np.maximum.reduceat(padded, pairs, axis=0)[::2])

        middle = 0.5 * (edges[:-1] + edges[1:])
        speed, acceleration = own.speed[:, :points], own.acceleration[:, :points]
        few = np.stack([own.reach, own.drawn, own.place_speed], axis=1)
        most = largest(np.concatenate([speed, acceleration, own.hand_speed, few], axis=1))
        reach, drawn, place_speed = most[:, -3:].T
        return _Row(
            speed=most[:, :points],
            acceleration=most[:, points : 2 * points],
            reach=reach,
            drawn=drawn,
            hand_speed=most[:, 2 * points : -3],
            lit=dancer.is_lit(middle),
            place=dancer.floor.at(middle).place,
            place_uncertainty=place_speed * 0.5 * np.diff(edges),
        )

    key = None if None in keys else (keys, edges.tobytes(), points)
    return recent(kind, key, work, most=most)


def _pieces(
    dancer: Dancer, keys: SliceKeys, start: float, end: float, *, kind: str, most: int
) -> Pieces:
    if None in keys:
        return dancer.pieces(start, end)
    return recent(kind, (keys, start, end), lambda: dancer.pieces(start, end), most=most)
