"""Posts for spotters with the smallest worst response, outside every reach and with a free line of sight.

Places in the stage frame [m], time in beats. Candidate places lie on a grid; one counts only if, at every
moment, it is outside the reach of every performer (proven from the speed between samples). Of them,
so many are chosen that the longest way from a lit performer to the nearest post is shortest: first the
farthest-first choice, then exchanges of one post at a time, then steps to finer neighbours, until none
helps.

Sources: farthest-first choice is at most twice the best (T. F. Gonzalez, Theoretical Computer Science 38,
1985; from memory); exchange and refinement are common practice. The answer is proven in its reach, not in
its optimality.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.facts.pace import response_seconds
from sequencer.geometry.regions import Point
from sequencer.geometry.walking import NO_WAY, WalkableFloor
from sequencer.motion.clearance.to_posts import Followed, farthest

SPACING = 0.5  # [m] of the first grid; wider on a large ground
FINEST = 0.05  # [m]
POST_CLEARANCE = 0.3  # [m] outside a reach; a design choice
_STEP = 0.25  # [beats] between samples of a walk
_CELL = 0.25  # [m] of places by which posts are compared
_POWER = 16
_CANDIDATES = 2000  # places of the first grid
_ROUNDS = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Posting:
    """Proposed posts."""

    places: tuple[Point, ...]  # [m, stage frame]
    way: float  # [m] longest way of a lit performer to the nearest; proven to 5 mm
    response: float  # [s] to arrive there


@dataclass(frozen=True, slots=True, kw_only=True)
class PostArea:
    """Where posts may stand."""

    left: float
    right: float
    down: float
    up: float
    closed: tuple[tuple[Point, ...], ...] = ()  # outlines in which nobody stands: scenery
    barriers: tuple[
        tuple[Point, ...], ...
    ] = ()  # lines that are not crossed: edges of the audience
    centre: Point = (0.0, 0.0)  # on the free side of every barrier


def propose_posts(
    number: int,
    lit: Sequence[Followed],
    cast: Sequence[Followed],
    reach: Mapping[str, float],
    *,
    bounds: PostArea,
    ground: WalkableFloor,
    tall: WalkableFloor,
) -> Posting | None:
    """Posts for some spotters; None where no place is outside every reach.

    Parameters
    ----------
    number : int
        Posts wanted.
    lit : sequence of Followed
        Each burn with its performer's way over the floor.
    cast : sequence of Followed
        Every performer over the whole show, lit or not.
    reach : mapping of performer to float
        From the body's axis to the outer edge of prop and flame [m].
    bounds : PostArea
    ground : WalkableFloor
        What is walked round.
    tall : WalkableFloor
        What hides a performer.

    Raises
    ------
    ValueError
        If no post is wanted or nobody is lit.
    """
    if number < 1 or not lit:
        raise ValueError("at least one post and one lit performer are needed")
    targets = _thinned(np.concatenate([_sampled(burn)[0] for burn in lit]))
    keep = _Free(cast=cast, reach=reach, bounds=bounds)
    area = (bounds.right - bounds.left) * (bounds.up - bounds.down)
    spacing = max(SPACING, math.sqrt(area / _CANDIDATES))
    grid = keep.of(_grid(bounds, spacing))
    if not len(grid):
        return None
    ways = _ways(grid, targets, ground, tall)
    chosen = _exchanged(_first(ways, number), ways)
    places, best = grid[chosen], float(_score(np.min(ways[chosen], axis=0)))
    step = spacing / 2
    while step >= FINEST:
        places, best = _refined(places, best, step, targets, keep, ground, tall)
        step /= 2
    posts = tuple((round(float(x), 2), round(float(y), 2)) for x, y in places)
    if not np.all(keep.mask(np.array(posts))):  # rounding to a centimetre left the free ground
        posts = tuple((float(x), float(y)) for x, y in places)
    worst = max(
        found.distance for found in farthest(lit, [ground.ways_to(posts)] * len(lit), float("inf"))
    )
    if worst >= NO_WAY:
        return None
    return Posting(places=posts, way=worst, response=response_seconds(worst))


@dataclass(frozen=True, kw_only=True)
class _Free:
    """Tells which places are free at every moment."""

    cast: Sequence[Followed]
    reach: Mapping[str, float]
    bounds: PostArea

    @cached_property
    def _trees(self) -> list[tuple[Any, float]]:
        """Each performer's places, and how far away a post must be from the nearest of them."""
        from scipy.spatial import cKDTree

        found = []
        for each in self.cast:
            stood, slack = _sampled(each)
            found.append((cKDTree(stood), self.reach.get(each.who, 0.0) + POST_CLEARANCE + slack))
        return found

    def of(self, places: Floats) -> Floats:
        return places[self.mask(places)]

    def mask(self, places: Floats) -> Bools:
        import shapely

        b = self.bounds
        free = (places[:, 0] >= b.left) & (places[:, 0] <= b.right)
        free &= (places[:, 1] >= b.down) & (places[:, 1] <= b.up)
        for outline in b.closed:
            free &= ~shapely.intersects_xy(shapely.Polygon(outline), places[:, 0], places[:, 1])
        for line in b.barriers:
            ways = shapely.linestrings(
                np.stack([places, np.broadcast_to(b.centre, places.shape)], axis=1)
            )
            free &= ~shapely.intersects(ways, shapely.LineString(line))
        for tree, least in self._trees:
            left = np.flatnonzero(free)
            gap, _ = tree.query(places[left], distance_upper_bound=least)
            free[left] = gap >= least  # inf where nobody is nearer than that
        return np.asarray(free, dtype=np.bool_)


def _sampled(burn: Followed) -> tuple[Floats, float]:
    """Places over a span, and how far from the nearest of them the performer can ever be [m]."""
    places = []
    slack = 0.0
    for start, end, bounds in burn.floor.pieces(burn.start, burn.end):
        count = 2 if bounds.speed == 0 else max(2, int(np.ceil((end - start) / _STEP)) + 1)
        places.append(burn.floor.at(np.linspace(start, end, count)).place)
        slack = max(slack, bounds.speed * (end - start) / (count - 1) / 2)
    return np.asarray(np.unique(np.concatenate(places), axis=0), dtype=np.float64), slack


def _thinned(places: Floats) -> Floats:
    """One place a cell: enough to compare posts by; the answer is proven on the whole way."""
    _, kept = np.unique(np.round(places / _CELL), axis=0, return_index=True)
    return np.asarray(places[np.sort(kept)], dtype=np.float64)


def _grid(bounds: PostArea, spacing: float) -> Floats:
    x = np.arange(bounds.left, bounds.right + spacing / 2, spacing)
    y = np.arange(bounds.down, bounds.up + spacing / 2, spacing)
    return np.asarray(np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 2), dtype=np.float64)


def _ways(places: Floats, targets: Floats, ground: WalkableFloor, tall: WalkableFloor) -> Floats:
    """Way from each place to each target, `NO_WAY` where it cannot be seen or walked."""
    points = [(float(x), float(y)) for x, y in places]
    ways = np.minimum(ground.ways_to(points)(targets), NO_WAY)
    hidden = tall.sight_to(points)(targets) <= 0.0
    return np.asarray(np.where(hidden, NO_WAY, ways).T)


def _score(nearest: Floats) -> Floats:
    """Longest way over the targets, shape (...) from (..., targets), with a little of the others'.

    A high power mean: the longest way alone leaves a search on a plateau where two are equally long.
    """
    longest = np.max(nearest, axis=-1, keepdims=True)
    share = np.mean((nearest / longest) ** _POWER, axis=-1) ** (1 / _POWER)
    return np.asarray(longest[..., 0] * (0.9 + 0.1 * share))


def _first(ways: Floats, number: int) -> list[int]:
    chosen = [int(np.argmin(np.max(ways, axis=1)))]
    while len(chosen) < number:
        far = int(np.argmax(np.min(ways[chosen], axis=0)))
        chosen.append(int(np.argmin(ways[:, far])))
    return chosen


def _exchanged(chosen: list[int], ways: Floats) -> list[int]:
    """Exchange one post at a time while the longest way gets shorter."""
    best = float(_score(np.min(ways[chosen], axis=0)))
    for _ in range(_ROUNDS):
        improved = False
        for slot in range(len(chosen)):
            others = [index for i, index in enumerate(chosen) if i != slot]
            rest = np.min(ways[others], axis=0) if others else np.full(ways.shape[1], np.inf)
            longest = _score(np.minimum(ways, rest))
            candidate = int(np.argmin(longest))
            if float(longest[candidate]) < best - 1e-9:
                chosen[slot], best, improved = candidate, float(longest[candidate]), True
        if not improved:
            break
    return chosen


def _refined(
    places: Floats,
    best: float,
    step: float,
    targets: Floats,
    keep: _Free,
    ground: WalkableFloor,
    tall: WalkableFloor,
) -> tuple[Floats, float]:
    """Move posts that hold the longest way to a neighbour while it gets shorter."""
    around = np.array([(dx, dy) for dx in (-1, 0, 1) for dy in (-1, 0, 1) if dx or dy]) * step
    ways = _ways(places, targets, ground, tall)
    for _ in range(_ROUNDS):
        far = int(np.argmax(np.min(ways, axis=0)))
        improved = False
        for slot in np.argsort(ways[:, far], kind="stable")[:2]:
            near = keep.of(places[slot] + around)
            if not len(near):
                continue
            rest = np.min(np.delete(ways, slot, axis=0), axis=0, initial=np.inf)
            moved = _ways(near, targets, ground, tall)
            longest = _score(np.minimum(moved, rest))
            candidate = int(np.argmin(longest))
            if float(longest[candidate]) < best - 1e-6:
                places, ways = places.copy(), ways.copy()
                places[slot], ways[slot] = near[candidate], moved[candidate]
                best, improved = float(longest[candidate]), True
                break
        if not improved:
            break
    return places, best
