"""Walking paths around obstacles on the floor, and lines of sight past them.

Stage frame [m], on the plan. The shortest path among polygons bends only at their corners (visibility
graph), so it is found exactly; the walker's width is not included. As a distance it changes no faster than
a position moves, which proofs over time rely on.
Source: visibility graph, M. de Berg and others, Computational Geometry, ch. 15 (from memory).
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from sequencer.arrays import Floats, as_floats
from sequencer.geometry.regions import Point
from sequencer.kept import recent, remembering

Ways = Callable[
    [Floats], Floats
]  # (n, 2) positions → (n, m) walking distances to each of m targets
NO_WAY = 1e6  # [m] used instead of inf for a path that does not exist, so that arithmetic works
_SKIN = 1e-6  # [m] obstacles are shrunk by this, so that a path may touch a corner
_CHUNK = 20_000  # lines tested, or paths compared, at a time: a line takes some 300 bytes
_MOST_FLOORS = 16  # whose ways are kept


@dataclass(frozen=True)
class WalkableFloor:
    """A floor with obstacles.

    Parameters
    ----------
    obstacles : sequence of outlines
        Corners of each in order [m, stage frame].
    """

    obstacles: tuple[tuple[Point, ...], ...] = ()

    def ways_to(self, targets: Sequence[Point]) -> Ways:
        """Shortest walking distances to targets, as a function of position.

        Returns
        -------
        ways : callable
            Takes positions, shape (n, 2), and returns distances, shape (n, m) [m]; inf if there is no path.
        """
        ends = np.array(targets, dtype=np.float64).reshape(-1, 2)
        if not self.obstacles:
            return lambda places: _lengths(as_floats("places", places), ends)
        corners = self._corners
        onward = self._from_corners(ends)  # (corners, m)

        def ways(places: Floats) -> Floats:
            at = as_floats("places", places)
            best = np.where(self._open(at, ends), _lengths(at, ends), np.inf)
            blocked = np.flatnonzero(~np.all(np.isfinite(best), axis=1))
            if len(blocked):
                first = _lengths(at[blocked], corners)
                first[~self._open(at[blocked], corners)] = np.inf
                for some in _parts(len(blocked), onward.size):
                    bent = np.min(first[some, :, None] + onward[None, :, :], axis=1)
                    best[blocked[some]] = np.minimum(best[blocked[some]], bent)
            return np.asarray(best)

        return ways

    def path_between(self, start: Point, end: Point) -> tuple[Point, ...] | None:
        """Corners of the shortest path, with both ends [m]; None if there is no path."""
        ends = np.array([end], dtype=np.float64)
        at = np.array([start], dtype=np.float64)
        path = [start]
        if self.obstacles:
            corners, onward = self._corners, self._from_corners(ends)[:, 0]
            while not self._open(at, ends)[0, 0]:
                ways = np.where(
                    self._open(at, corners)[0], _lengths(at, corners)[0] + onward, np.inf
                )
                ways[np.hypot(*(corners - at).T) < _SKIN] = (
                    np.inf
                )  # onward, not to the corner reached
                best = int(np.argmin(ways))
                if not np.isfinite(ways[best]) or len(path) > len(corners):
                    return None
                at = corners[best : best + 1]
                path.append((float(at[0, 0]), float(at[0, 1])))
        return (*path, end)

    def is_open(self, start: Point, end: Point) -> bool:
        """Whether the straight line between two points crosses nothing."""
        return bool(self._open(np.array([start], dtype=float), np.array([end], dtype=float))[0, 0])

    def sight_to(self, posts: Sequence[Point]) -> Ways:
        """Gap between the line from each post to a position and the nearest obstacle, as a function of position.

        Returns
        -------
        gaps : callable
            Takes positions, shape (n, 2), and returns gaps, shape (n, m) [m]; 0 if the line is blocked, inf
            on an empty floor.
        """
        import shapely

        ends = np.array(posts, dtype=np.float64).reshape(-1, 2)

        def gaps(places: Floats) -> Floats:
            at = as_floats("places", places)
            if not self.obstacles:
                return np.full((len(at), len(ends)), np.inf)
            found = np.empty((len(at), len(ends)))
            for some in _parts(len(at), len(ends)):
                found[some] = shapely.distance(_lines(at[some], ends), self._solid)
            return found

        return gaps

    @cached_property
    def _solid(self) -> Any:
        import shapely

        return shapely.union_all([shapely.Polygon(outline) for outline in self.obstacles])

    @cached_property
    def _shrunk(self) -> Any:
        import shapely

        shrunk = self._solid.buffer(-_SKIN, join_style="mitre")
        shapely.prepare(shrunk)
        return shrunk

    @cached_property
    def _corners(self) -> Floats:
        import shapely

        corners = np.unique(shapely.get_coordinates(self._solid), axis=0)
        return np.asarray(corners, dtype=np.float64)

    @cached_property
    def _between(self) -> Floats:
        """Shortest paths between corners, shape (corners, corners) [m]."""

        def work() -> Floats:
            corners = self._corners
            seen = self._open(corners, corners)
            lengths = np.where(seen, _lengths(corners, corners), np.inf)
            np.fill_diagonal(lengths, 0.0)
            return _shortest(lengths)

        return recent("ways between corners", self.obstacles, work, most=_MOST_FLOORS)

    def _from_corners(self, ends: Floats) -> Floats:
        corners = self._corners
        last = np.where(self._open(corners, ends), _lengths(corners, ends), np.inf)
        return np.asarray(np.min(self._between[:, :, None] + last[None, :, :], axis=1))

    def _open(self, starts: Floats, ends: Floats) -> Any:
        """Whether the straight line between each start and end crosses nothing, shape (n, m)."""
        import shapely

        found = np.empty((len(starts), len(ends)), dtype=np.bool_)
        for some in _parts(len(starts), len(ends)):
            found[some] = ~shapely.intersects(_lines(starts[some], ends), self._shrunk)
        return found


def _parts(rows: int, each: int) -> Iterator[slice]:
    """Rows in parts of at most `_CHUNK` values, with so many values in each row."""
    step = max(1, _CHUNK // max(each, 1))
    for low in range(0, rows, step):
        yield slice(low, min(low + step, rows))


def _square(rows: list[list[float]]) -> Floats:
    return np.array(rows, dtype=np.float64).reshape(len(rows), len(rows))


@remembering(record=lambda found: found.tolist(), restore=_square)
def _shortest(lengths: Floats) -> Floats:
    """Shortest paths between all pairs of corners, by the lengths of the straight lines."""
    from scipy.sparse.csgraph import shortest_path

    return np.asarray(shortest_path(lengths, method="D", directed=False))


def _lengths(starts: Floats, ends: Floats) -> Floats:
    gap = starts[:, None, :] - ends[None, :, :]
    return np.asarray(np.hypot(gap[..., 0], gap[..., 1]))


def _lines(starts: Floats, ends: Floats) -> Any:
    import shapely

    shape = (len(starts), len(ends), 2)
    pairs = np.stack(
        [np.broadcast_to(starts[:, None, :], shape), np.broadcast_to(ends[None, :, :], shape)],
        axis=2,
    )
    return shapely.linestrings(pairs)
