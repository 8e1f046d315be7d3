"""What a plan shows: one instant on the floor, and how much of the place around it.

Stage frame [m]: X to the audience's right, Y upstage.
"""

from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from math import dist, hypot, inf
from typing import TypeVar

from sequencer.safety.site_ground.ways_out import ways_out
from sequencer.staging.results import result_of
from sequencer.staging.staged import Staged

T = TypeVar("T")
Spot = tuple[float, float, float]  # X [m], Y [m], facing [degrees]
ShownArea = tuple[float, float, float, float]  # left, low, right, high
Way = tuple[tuple[float, float], ...]  # points of a walk [m, stage frame]
_SITE = 30.0  # [m] from the stage up to which a site plan shows exits, gate and fuel in place


@dataclass(frozen=True, kw_only=True, eq=False)
class Scene:
    """One instant on the floor."""

    staged: Staged
    spots: dict[str, Spot]
    ways: dict[str, Way] = field(
        default_factory=dict
    )  # paths walked to the spots; empty if nobody walks
    lit: tuple[str, ...] = ()
    focus: str | None = None  # the performer whose sheet this is
    crew: bool = True
    distances: bool = True  # name the closest pair
    dimensions: bool = False  # also give the distances to the audience
    landing: tuple[Way, ...] = ()  # outlines of the area where heads that come off may land
    turned: bool = (
        False  # seen from the performers' side: the audience at the top, stage left on the left
    )
    close: bool = False  # only the stage and who is on it, as large as can be; the audience is named at the frame
    bare: bool = False  # no words and no scale: those of a plan beside it hold for it too
    shown: int | None = (
        None  # which formation of the show, if spots and ways are its: what follows from them is found once
    )


def way_length(way: Way) -> float:
    """Length of a walk [m]."""
    return sum(dist(a, b) for a, b in pairwise(way))


def stage_outline(staged: Staged) -> list[tuple[float, float]]:
    """Corners of the stage [m, stage frame]; a metre round its origin where no stage is known."""
    stage = staged.venue.stage
    return list(stage.outline) if stage is not None else [(-1, 0), (1, 0), (1, 1), (-1, 1)]


def once_shown(scene: Scene, what: Hashable, work: Callable[[], T]) -> T:
    """What follows from a formation's spots and ways, found once for all sheets that show it.

    Parameters
    ----------
    scene : Scene
    what : hashable
        What is found, and all that it depends on besides spots and ways.
    work : callable
        Finds it; nobody may change what it returns.
    """
    if scene.shown is None:
        return work()
    return result_of(scene.staged, (what, scene.shown), work)


def closest_spots(scene: Scene) -> float:
    """How far the two nearest spots are apart [m]; inf if there are not two."""
    return once_shown(scene, "closest spots", lambda: _least_gap(list(scene.spots.values())))


def _least_gap(spots: Sequence[Spot]) -> float:
    """The smallest distance of any two: from left to right, each with those that are not yet farther off in X alone."""
    ordered = sorted(spots)
    least = inf
    for k, (x, y, _) in enumerate(ordered):
        for other_x, other_y, _ in ordered[k + 1 :]:
            if other_x - x >= least:
                break
            least = min(least, hypot(other_x - x, other_y - y))
    return least


def window(scene: Scene) -> ShownArea:
    """The area that the drawing shows: the stage, everybody on it, and what is near."""
    what = ("window", scene.crew, scene.dimensions, scene.close, scene.landing)
    return once_shown(scene, what, lambda: _window(scene))


def _window(scene: Scene) -> ShownArea:
    venue = scene.staged.show.venue
    outline = stage_outline(scene.staged)
    xs, ys = [p[0] for p in outline], [p[1] for p in outline]
    if scene.close:
        points = [spot[:2] for spot in scene.spots.values()]
        points += [point for way in scene.ways.values() for point in way]
        xs, ys = [*xs, *(x for x, _ in points)], [*ys, *(y for _, y in points)]
        pad = 0.5 + 0.04 * (max(xs) - min(xs))
        return min(xs) - pad, min(ys) - pad, max(xs) + pad, max(ys) + pad
    on_stage = [spot[:2] for spot in scene.spots.values()]
    for x, y in (*on_stage, *(point for way in scene.ways.values() for point in way)):
        xs.append(x)
        ys.append(y)
    size = max(max(xs) - min(xs), max(ys) - min(ys), 2.0)
    near = max(2.5, 0.3 * size)
    low_x, high_x, low_y, high_y = min(xs), max(xs), min(ys), max(ys)
    for line in _audience_near(scene.staged, 1.2 * size):
        for x, y in line:
            xs.append(min(max(x, low_x - near), high_x + near))
            ys.append(min(max(y, low_y - near), high_y + near))
        x, y = _nearest(line, outline)  # never cut off: this is where somebody could be hit first
        xs.append(x)
        ys.append(y)
    for x, y in (point for ring in scene.landing for point in ring):
        xs.append(x)
        ys.append(y)
    seen = ((low_x - near, low_y - near), (high_x + near, high_y + near))
    others = [p for thing in venue.scenery if _overlaps(thing.outline, seen) for p in thing.outline]
    if scene.crew:
        others += [post.post for post in scene.staged.show.crew]
        others += [place.at for place in venue.exits]
        others += [tool.at for tool in venue.extinguishers]
        others += [venue.fuel_station] if venue.fuel_station is not None else []
        others += [venue.gate] if venue.gate is not None else []
        others += [*(venue.spin_off or ()), *(venue.fire_lane.line if venue.fire_lane else ())]
    for x, y in others:
        xs.append(min(max(x, low_x - near), high_x + near))
        ys.append(min(max(y, low_y - near), high_y + near))
    if scene.crew and scene.dimensions:
        for x, y in _site_near(scene.staged, outline):
            xs.append(x)
            ys.append(y)
    pad = 0.05 * size + 0.5
    return min(xs) - pad, min(ys) - pad, max(xs) + pad, max(ys) + pad


def _site_near(staged: Staged, outline: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Exits with their ways, fuel, zone, gate, lane and scenery that are near enough for a site plan to show them in place."""
    import shapely

    venue, stage = staged.show.venue, shapely.Polygon(outline)
    points = [point for out in ways_out(staged) for point in (*out.way, out.at)]
    points += [each for each in (venue.fuel_station, venue.gate) if each is not None]
    points += [*(venue.spin_off or ()), *(venue.fire_lane.line if venue.fire_lane else ())]
    points += [corner for thing in venue.scenery for corner in thing.outline]
    return [point for point in points if stage.distance(shapely.Point(point)) <= _SITE]


def _audience_near(staged: Staged, most: float) -> list[Way]:
    """Audience lines close enough to the stage for a plan to show."""
    outline = stage_outline(staged)
    lines = [edge.line for edge in staged.show.venue.audience]
    return [line for line in lines if _apart(line, outline) <= most]


def _overlaps(outline: Sequence[tuple[float, float]], seen: Way) -> bool:
    """Whether the bounding box of an outline meets the box between two corners."""
    xs, ys = [p[0] for p in outline], [p[1] for p in outline]
    (low_x, low_y), (high_x, high_y) = seen
    return min(xs) <= high_x and max(xs) >= low_x and min(ys) <= high_y and max(ys) >= low_y


def _apart(line: Way, outline: Sequence[tuple[float, float]]) -> float:
    """Distance of a line from an area [m]."""
    import shapely

    return float(shapely.LineString(line).distance(shapely.Polygon(outline)))


def _nearest(line: Way, outline: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """The point of a line nearest to an area."""
    import shapely
    from shapely.ops import nearest_points

    nearest, _ = nearest_points(shapely.LineString(line), shapely.Polygon(outline))
    return float(nearest.x), float(nearest.y)
