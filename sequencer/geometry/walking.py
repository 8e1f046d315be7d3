"""Ways over the floor round things that stand on it, and lines of sight past them.

Stage frame [m], on the plan. The shortest way among polygons bends only at their corners (visibility
graph), so it is found exactly; the width of the walker is not added. As a distance it changes no faster
than a place moves, which proofs over time rely on.
Source: visibility graph, M. de Berg and others, Computational Geometry, ch. 15 (from memory).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from sequencer.arrays import Floats, as_floats
from sequencer.geometry.regions import Point

Ways = Callable[[Floats], Floats]  # (n, 2) places → (n, m) ways to each of m targets
NO_WAY = 1e6  # [m] stands for a way that does not exist, where inf would not compute
_SKIN = 1e-6  # [m] obstacles are shrunk by this, so that a way may touch a corner
_CHUNK = 200_000  # lines tested at once


@dataclass(frozen=True)
class WalkableFloor:
    """A floor with things on it that nobody walks through.

    Parameters
    ----------
    obstacles : sequence of outlines
        Corners of each in turn [m, stage frame].
    """

    obstacles: tuple[tuple[Point, ...], ...] = ()

    def ways_to(self, targets: Sequence[Point]) -> Ways:
        """Shortest walking ways to targets, as a function of places.

        Returns
        -------
        ways : callable
            Takes places, shape (n, 2), gives ways, shape (n, m) [m]; inf where there is none.
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
                bent = np.min(first[:, :, None] + onward[None, :, :], axis=1)
                best[blocked] = np.minimum(best[blocked], bent)
            return np.asarray(best)

        return ways

    def sight_to(self, posts: Sequence[Point]) -> Ways:
        """Gap between the line from each post to a place and the nearest obstacle, as a function of places.

        Returns
        -------
        gaps : callable
            Takes places, shape (n, 2), gives gaps, shape (n, m) [m]; 0 where the line is blocked, inf
            on an empty floor.
        """
        import shapely

        ends = np.array(posts, dtype=np.float64).reshape(-1, 2)

        def gaps(places: Floats) -> Floats:
            at = as_floats("places", places)
            if not self.obstacles:
                return np.full((len(at), len(ends)), np.inf)
            return np.asarray(shapely.distance(_lines(at, ends), self._solid), dtype=np.float64)

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
        """Shortest ways between corners, shape (corners, corners)."""
        from scipy.sparse.csgraph import shortest_path

        corners = self._corners
        seen = self._open(corners, corners)
        lengths = np.where(seen, _lengths(corners, corners), np.inf)
        np.fill_diagonal(lengths, 0.0)
        return np.asarray(shortest_path(lengths, method="D", directed=False))

    def _from_corners(self, ends: Floats) -> Floats:
        corners = self._corners
        last = np.where(self._open(corners, ends), _lengths(corners, ends), np.inf)
        return np.asarray(np.min(self._between[:, :, None] + last[None, :, :], axis=1))

    def _open(self, starts: Floats, ends: Floats) -> Any:
        """Whether the straight line between each start and end crosses nothing, shape (n, m)."""
        import shapely

        rows = max(1, _CHUNK // max(len(ends), 1))
        parts = [
            ~shapely.intersects(_lines(starts[low : low + rows], ends), self._shrunk)
            for low in range(0, len(starts), rows)
        ]
        return np.concatenate(parts) if parts else np.zeros((0, len(ends)), dtype=np.bool_)


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
