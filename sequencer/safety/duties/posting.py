"""Posts for spotters that minimise the longest walk, outside every reach and with a clear line of sight.

Positions in the stage frame [m], time in beats. Candidates lie on a grid; one is used only if it is outside
the reach of every performer at every moment (proven from the speed between samples). From these, posts are
chosen to minimise the longest walk from a post to the lit performer nearest to it: first by the
farthest-first rule, then by exchanging one post at a time, then by steps to finer neighbours, until nothing
helps.

Sources: farthest-first choice is at most twice the best (T. F. Gonzalez, Theoretical Computer Science 38,
1985; from memory); exchange and refinement are common practice. That posts are out of reach is proven; that
they are optimal is not.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from functools import cached_property
from typing import Any

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.geometry.certified import TOLERANCE
from sequencer.geometry.regions import Point
from sequencer.geometry.walking import NO_WAY, WalkableFloor
from sequencer.kept import remembering
from sequencer.motion.clearance.to_posts import Followed, farthest

SPACING = 0.5  # [m] spacing of the first grid; wider on a large ground
FINEST = 0.05  # [m]
POST_CLEARANCE = (
    0.8  # [m] outside a reach, where the glow of two wicks no longer hurts; a design choice
)
_STEP = 0.25  # [beats] between samples of a walk
_CELL = 0.25  # [m] spacing of the positions by which posts are compared
_POWER = 16
_CANDIDATES = 2000  # positions in the first grid
_ROUNDS = 20
_CHUNK = 200_000  # walks compared at a time, to limit memory
_LEAST_SCORE = 0.9 * (1 - 1e-9)  # of the longest walk: a score is never lower, rounded or not


@dataclass(frozen=True, slots=True, kw_only=True)
class Posting:
    """Proposed posts."""

    places: tuple[Point, ...]  # [m, stage frame]
    way: float  # [m] longest walk from a lit performer to the nearest post; proven to 5 mm


@dataclass(frozen=True, slots=True, kw_only=True)
class PostArea:
    """The area where posts may be placed."""

    left: float
    right: float
    down: float
    up: float
    closed: tuple[tuple[Point, ...], ...] = ()  # outlines that nobody can, or may, stand in
    barriers: tuple[tuple[Point, ...], ...] = ()  # lines that are not crossed: audience lines
    centre: Point = (0.0, 0.0)  # a point on the free side of every barrier


def _record(posting: Posting | None) -> dict[str, Any] | None:
    return None if posting is None else asdict(posting)


def _restored(record: Mapping[str, Any] | None) -> Posting | None:
    if record is None:
        return None
    places = tuple((x, y) for x, y in record["places"])
    return Posting(places=places, way=record["way"])


@remembering(record=_record, restore=_restored)
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
    """Posts for a number of spotters; None if no position is outside every reach.

    Parameters
    ----------
    number : int
        Number of posts.
    lit : sequence of Followed
        Each burn with its performer's walking path.
    cast : sequence of Followed
        Every performer over the whole show, lit or not.
    reach : mapping of performer to float
        From the body's axis to the outer edge of prop and flame [m].
    bounds : PostArea
    ground : WalkableFloor
        Obstacles to walk round.
    tall : WalkableFloor
        Obstacles that hide a performer.

    Raises
    ------
    ValueError
        If `number` is 0 or nobody is lit.
    """
    if number < 1 or not lit:
        raise ValueError("at least one post and one lit performer are needed")
    targets = thinned(np.concatenate([sampled_places(burn)[0] for burn in lit]))
    keep = FreeGround(cast=cast, reach=reach, bounds=bounds)
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
    posts = tuple((round(float(x), 2) + 0.0, round(float(y), 2) + 0.0) for x, y in places)
    if not np.all(
        keep.mask(np.array(posts))
    ):  # rounding to a centimetre moved it off the free ground
        posts = tuple((float(x), float(y)) for x, y in places)
    worst = max(
        found.distance for found in farthest(lit, [ground.ways_to(posts)] * len(lit), float("inf"))
    )
    if worst >= NO_WAY:
        return None
    return Posting(places=posts, way=worst)


def too_few(number: int, lit: Sequence[Followed], within: float) -> bool:
    """Whether so many posts can never be near enough to everybody lit, wherever they stand; proven, and quick.

    Parameters
    ----------
    number : int
        Number of posts.
    lit : sequence of Followed
        Each burn with its performer's walking path.
    within : float
        Longest walk allowed [m].

    Notes
    -----
    Of one place more than there are posts, two have the same nearest post; if any two are farther apart than twice the
    walk, one of the two is too far from it, since no walk is shorter than the straight line. False does not say that
    so many are enough. Source: pigeonhole principle; places are chosen in their order, each clear of those before.
    """
    apart = 2 * (within + 2 * TOLERANCE)  # a walk is found to within the tolerance
    left = np.concatenate([sampled_places(burn)[0] for burn in lit])
    for _ in range(number):
        if not len(left):
            return False
        left = left[np.hypot(*(left - left[0]).T) > apart]
    return bool(len(left))


def too_deep(lit: Sequence[Followed], closed: Sequence[Sequence[Point]], within: float) -> bool:
    """Whether somebody lit is farther than a walk from all ground outside an outline that no post may be in.

    Then no number of posts is near enough: no walk is shorter than the straight line out. Proven, and quick.

    Parameters
    ----------
    lit : sequence of Followed
        Each burn with its performer's walking path.
    closed : sequence of outlines
        Corners of each in order [m, stage frame].
    within : float
        Longest walk allowed [m].
    """
    import shapely

    places = shapely.points(np.concatenate([sampled_places(burn)[0] for burn in lit]))
    for outline in closed:
        shape = shapely.Polygon(outline)
        inside = places[shapely.contains(shape, places)]
        # a walk is found to within the tolerance
        if np.any(shapely.distance(inside, shape.exterior) > within + 2 * TOLERANCE):
            return True
    return False


@dataclass(frozen=True, kw_only=True)
class FreeGround:
    """Finds which positions are free at every moment."""

    cast: Sequence[Followed]
    reach: Mapping[str, float]
    bounds: PostArea

    @cached_property
    def _trees(self) -> list[tuple[Any, float]]:
        """Each performer's positions, and how far a post must be from the nearest of them."""
        from scipy.spatial import cKDTree

        found = []
        for each in self.cast:
            stood, slack = sampled_places(each)
            found.append((cKDTree(stood), self.reach.get(each.who, 0.0) + POST_CLEARANCE + slack))
        return found

    def of(self, places: Floats) -> Floats:
        """Those of some positions that are free, shape (n, 2) [m]."""
        return places[self.mask(places)]

    def mask(self, places: Floats) -> Bools:
        """Whether each position is free, shape (n,)."""
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
            free[left] = gap >= least  # inf if nobody is nearer than that
        return np.asarray(free, dtype=np.bool_)


def sampled_places(burn: Followed) -> tuple[Floats, float]:
    """Sampled positions over a span, and the performer's largest distance from the nearest sample [m]."""
    places = []
    slack = 0.0
    for start, end, bounds in burn.floor.pieces(burn.start, burn.end):
        count = 2 if bounds.speed == 0 else max(2, int(np.ceil((end - start) / _STEP)) + 1)
        places.append(burn.floor.at(np.linspace(start, end, count)).place)
        slack = max(slack, bounds.speed * (end - start) / (count - 1) / 2)
    return np.asarray(np.unique(np.concatenate(places), axis=0), dtype=np.float64), slack


def thinned(places: Floats) -> Floats:
    """One position per cell: enough to compare posts; the result is proven on the whole path."""
    _, kept = np.unique(np.round(places / _CELL), axis=0, return_index=True)
    return np.asarray(places[np.sort(kept)], dtype=np.float64)


def _grid(bounds: PostArea, spacing: float) -> Floats:
    x = np.arange(bounds.left, bounds.right + spacing / 2, spacing)
    y = np.arange(bounds.down, bounds.up + spacing / 2, spacing)
    return np.asarray(np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 2), dtype=np.float64)


def _ways(places: Floats, targets: Floats, ground: WalkableFloor, tall: WalkableFloor) -> Floats:
    """Walking distance from each position to each target, `NO_WAY` if it cannot be seen or reached."""
    points = [(float(x), float(y)) for x, y in places]
    ways, gaps = ground.ways_to(points), tall.sight_to(points)
    found = np.empty((len(points), len(targets)))
    step = max(1, _CHUNK // len(points))
    for low in range(0, len(targets), step):
        some = targets[low : low + step]
        walked = np.minimum(ways(some), NO_WAY)
        found[:, low : low + step] = np.where(gaps(some) <= 0.0, NO_WAY, walked).T
    return found


def _score(nearest: Floats) -> Floats:
    """Longest walk over the targets, shape (...) from (..., targets), with a small weight on the others.

    A high power mean: the longest walk alone leaves the search on a plateau where two are equally long.
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
    """Exchange one post at a time while the longest walk gets shorter."""
    best = float(_score(np.min(ways[chosen], axis=0)))
    nearest, near, next_ = _two_nearest(ways[chosen])
    for _ in range(_ROUNDS):
        improved = False
        for slot in range(len(chosen)):
            rest = np.where(nearest == slot, next_, near)
            # A score is at least 0.9 of the longest walk: most candidates need no more than that.
            short = np.flatnonzero(_LEAST_SCORE * _longest(ways, rest, best / _LEAST_SCORE) < best)
            if not len(short):
                continue
            scores = _score(np.minimum(ways[short], rest))
            least = int(np.argmin(scores))
            if float(scores[least]) < best - 1e-9:
                chosen[slot], best, improved = int(short[least]), float(scores[least]), True
                nearest, near, next_ = _two_nearest(ways[chosen])
        if not improved:
            break
    return chosen


def _two_nearest(ways: Floats) -> tuple[Ints, Floats, Floats]:
    """Nearest post to each target, the walk from it, and the walk from the next nearest; inf if there is none [m]."""
    nearest = np.argmin(ways, axis=0)
    others = ways.copy()
    others[nearest, np.arange(ways.shape[1])] = np.inf
    return nearest, np.min(ways, axis=0), np.min(others, axis=0)


def _longest(ways: Floats, rest: Floats, enough: float) -> Floats:
    """Longest walk with one post more, by that post, shape (posts,) [m]; none but those over `enough` need be right."""
    far = np.flatnonzero(rest > enough)
    return np.asarray(np.max(np.minimum(ways[:, far], rest[far]), axis=1, initial=0.0))


def _refined(
    places: Floats,
    best: float,
    step: float,
    targets: Floats,
    keep: FreeGround,
    ground: WalkableFloor,
    tall: WalkableFloor,
) -> tuple[Floats, float]:
    """Move the posts that determine the longest walk to a neighbour while it gets shorter."""
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
