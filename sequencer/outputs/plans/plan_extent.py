"""How much of the venue a plan shows, and where an audience line gets its label. Stage frame [m]."""

from collections.abc import Sequence
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.regions import AudienceEdge, Venue
from sequencer.motion.performers.dancer import Dancer

_FARTHEST = 12.0  # [m] from the stage: an audience farther away need not be shown


def extent(
    dancers: Sequence[Dancer], venue: Venue, *, surroundings: bool = True
) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of the area that must be shown [m]."""
    points: list[tuple[float, float]] = []
    for dancer in dancers:
        stops = [dancer.floor.place, *(move.place for move in dancer.floor.moves)]
        stops += [point for move in dancer.floor.moves for point in move.through]
        reach = min(dancer.reach, 2.5) if surroundings else 0.8
        points += [(x + s * reach, y + s * reach) for x, y in stops for s in (-1, 1)]
    if venue.stage is not None:
        points += list(venue.stage.outline)
    if surroundings:
        points += [corner for piece in venue.scenery for corner in piece.region.outline]
        points += [post.at for post in venue.posts]
    stage = np.array(points or [(-3.0, 0.0), (3.0, 6.0)])
    low, high = stage.min(axis=0) - 1.0, stage.max(axis=0) + 1.0
    room = 0.07 * (high - low)
    least, most = low.copy(), high.copy()
    for edge in venue.audience if surroundings else ():
        # The far ends of an audience line may be cut off; the part facing the stage must show, with its name.
        for axis, way, near in _facing(edge, low, high):
            if way < 0:
                least[axis] = min(least[axis], max(near, low[axis] - _FARTHEST) - room[axis])
            else:
                most[axis] = max(most[axis], min(near, high[axis] + _FARTHEST) + room[axis])
    return float(least[0]), float(least[1]), float(most[0]), float(most[1])


def seen_edge(edge: AudienceEdge, axes: Any) -> tuple[tuple[float, float], tuple[float, float]]:
    """Middle of the longest stretch of an audience line inside the axes, and the direction away from the stage [m].

    Parameters
    ----------
    edge : AudienceEdge
    axes : matplotlib Axes
    """
    import shapely

    (left, right), (down, up) = axes.get_xlim(), axes.get_ylim()
    middle = np.array([0.5 * (left + right), 0.5 * (down + up)])
    seen = shapely.LineString(edge.line).intersection(shapely.box(left, down, right, up))
    pieces = [piece for piece in getattr(seen, "geoms", [seen]) if piece.length > 0]
    if not pieces:
        near = _nearest_point(np.array(edge.line), np.array([left, down]), np.array([right, up]))
        return (float(near[0]), float(near[1])), (0.0, -1.0)
    longest = max(pieces, key=lambda piece: piece.length)
    at = longest.interpolate(0.5, normalized=True)
    corners = np.array(longest.coords)
    along = corners[-1] - corners[0]
    across = np.array([-along[1], along[0]])
    if np.dot(across, middle - (at.x, at.y)) > 0:
        across = -across
    size = float(np.hypot(*across)) or 1.0
    return (at.x, at.y), (float(across[0] / size), float(across[1] / size))


def _facing(edge: AudienceEdge, low: Floats, high: Floats) -> list[tuple[int, int, float]]:
    """The sides of a box that a line faces: axis, direction, and extent there [m]."""
    import shapely

    line = shapely.LineString(edge.line)
    far = 4000.0
    out = []
    for axis in (0, 1):
        for way in (-1, 1):
            a, b = low.copy(), high.copy()
            if way < 0:
                a[axis], b[axis] = low[axis] - far, low[axis]
            else:
                a[axis], b[axis] = high[axis], high[axis] + far
            seen = line.intersection(shapely.box(*a, *b))
            if not seen.is_empty:
                least_x, least_y, most_x, most_y = seen.bounds
                near = (least_x, least_y)[axis] if way < 0 else (most_x, most_y)[axis]
                out.append((axis, way, float(near)))
    if not out:  # off a corner
        for axis, near in enumerate(_nearest_point(np.array(edge.line), low, high)):
            if not low[axis] <= near <= high[axis]:
                out.append((axis, -1 if near < low[axis] else 1, float(near)))
    return out


def _nearest_point(line: Floats, low: Floats, high: Floats) -> Floats:
    """Point of a line nearest to a box."""
    import shapely

    box = shapely.box(low[0], low[1], high[0], high[1])
    one, _ = shapely.shortest_line(shapely.LineString(line), box).coords
    return np.asarray(one, dtype=np.float64)
