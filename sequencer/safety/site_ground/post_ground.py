"""Where a crew post may stand, where it may not, and where posts are proposed.

Stage frame [m]. Nobody is posted in an exit or its way, on the fire lane, inside scenery or among the audience; a
guard stands at the audience's edge, the fuel keeper by the fuel. What is proposed besides keeps out of every reach
and outside the hull of every reach on the stage while anybody is lit, so that nobody stands amid the act.

Sources: guards keep the audience from stage and fuel (North American fire-arts guidelines [A36; read]); a keeper stays
with the fuel (juggling society, Dublin [A37; read]). The distances are design choices.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import ceil, cos, dist, inf, pi, sin
from typing import Any, Literal

import numpy as np

from sequencer.geometry.regions import Point
from sequencer.motion.clearance.to_posts import Followed
from sequencer.safety.duties.posting import (
    FreeGround,
    PostArea,
    Posting,
    propose_posts,
    sampled_places,
    too_deep,
    too_few,
)
from sequencer.safety.duties.watching import Duty
from sequencer.safety.safety_plan import PLAN_PARTS, SafetyPlan, safety_plan
from sequencer.safety.site_ground.site_lines import lane_half
from sequencer.safety.site_ground.ways_out import PERSON, fires_of, in_the_way, ways_out
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged

PostFaultKind = Literal[
    "far off", "scenery", "exit", "way", "reckoned way", "lane", "crowd", "guard in crowd", "lead in crowd",
    "far from edge", "far from fuel",
]  # fmt: skip
# design choices [m]
IN_CROWD = 1.0  # at most beyond the audience's edge, for a guard
FROM_EDGE = 5.0  # at most from that edge, for a guard
FROM_FUEL = 3.0  # at most from the fuel point, for its keeper; others keep farther away
FAR_OFF = 50.0  # from stage, audience and fuel: a slip of the pen
POST_ROOM = 3.0  # beyond the performers' reach within which posts are sought
MORE = 3  # spotters added to keep the longest way
OUTSIDE_ACT = 0.3  # outside the hull of every reach while anybody is lit
_IN_CROWD: Mapping[str, PostFaultKind] = {"perimeter": "guard in crowd", "lead": "lead in crowd"}
_ROUND = 4  # sides of a quarter circle
_INNER = cos(
    pi / (4 * _ROUND)
)  # radius of the circle inside such a polygon, over that of the one round it
_RING = 0.5  # [m] between the rings of places that are tried round a post


@dataclass(frozen=True, slots=True, kw_only=True)
class PostFault:
    """One reason why somebody may not be posted where they are."""

    kind: PostFaultKind
    what: str = ""  # the exit, scenery or edge
    distance: float = 0.0  # [m]


def post_faults(show: Staged, duty: Duty, place: Point) -> tuple[PostFault, ...]:
    """What is wrong with a crew member posted at a place.

    Parameters
    ----------
    show : Staged
    duty : Duty
    place : Point
        [m, stage frame]
    """
    away = _far_off(show, place)
    if away > FAR_OFF:
        return (PostFault(kind="far off", distance=away),)
    return (*_in_things(show, place), *_by_duty(show, duty, place))


def free_post(show: Staged, duty: Duty) -> Point | None:
    """The place nearest to where somebody is, or belongs, at which nothing is wrong, to 10 cm; None if none is near.

    It lies outside every reach too.
    """
    return next(posts_round(show, duty), None)


def may_stand(show: Staged, duty: Duty, place: Point) -> bool:
    """Whether somebody may be sent to a place: nothing is wrong there, and it is outside every reach and the act."""
    return bool(_anywhere(show).mask(np.array([place]))[0]) and not post_faults(show, duty, place)


def posts_round(show: Staged, duty: Duty, *, within: float = FAR_OFF) -> Iterator[Point]:
    """Places at which nothing is wrong round where somebody is, or belongs, nearest first, to 10 cm."""
    rings = np.array(list(_around(_belongs(show, duty), within)))
    for x, y in _anywhere(show).of(rings).tolist():
        if not post_faults(show, duty, (x, y)):
            yield x, y


def proposed_posts(
    show: Staged, plan: SafetyPlan, *, number: int | None = None, within: float | None = None
) -> Posting | None:
    """Posts for spotters that minimise the longest way to a performer; None if there is no position for them.

    Parameters
    ----------
    show : Staged
    plan : SafetyPlan
        Of that show.
    number : int, optional
        Number of spotters; default: as many as the rules require, or as the crew has if more.
    within : float, optional
        Longest way allowed [m]: where so many cannot keep it from outside the act, up to `MORE` are added; None if
        they cannot either.
    """
    if not plan.followed:
        return None
    if number is None:
        needed = plan.book.needed("spotters", plan.lit_at_once)
        have = sum(duty.duty == "spotter" for duty in plan.crew)
        number = max(needed[0] if needed else 1, have, 1)
    free, near = _anywhere(show), _near_the_act(show)
    if within is not None and (
        too_few(number + MORE, plan.followed, within)
        or too_deep(plan.followed, near.closed, within)
    ):
        return None  # a search for each number would end no other way
    for count in range(number, number + (1 if within is None else MORE + 1)):
        posting = propose_posts(
            count,
            plan.followed,
            free.cast,
            free.reach,
            bounds=near,
            ground=plan.ground,
            tall=plan.tall,
        )
        if posting is None or within is None or posting.way <= within:
            return posting
    return None


def _near_the_act(show: Staged) -> PostArea:
    """The ground on which posts for spotters are sought."""
    free, fuel = _anywhere(show), show.show.venue.fuel_station
    x, y = np.concatenate([_stops(each) for each in free.cast]).T
    room = max(dancer.reach for dancer in show.dancers) + POST_ROOM
    by_fuel = () if fuel is None else (_corners(_round(fuel, FROM_FUEL)),)
    return replace(
        free.bounds,
        left=float(x.min()) - room,
        right=float(x.max()) + room,
        down=float(y.min()) - room,
        up=float(y.max()) + room,
        closed=(*free.bounds.closed, *by_fuel),
    )


@once_per_show_with("bodies", *PLAN_PARTS)
def _anywhere(show: Staged) -> FreeGround:
    """All ground on which somebody may be posted whatever their duty, over the whole show."""
    start, end = show.span
    cast = [
        Followed(who=dancer.name, floor=dancer.floor, start=start, end=end)
        for dancer in show.dancers
    ]
    stops = np.concatenate([_stops(each) for each in cast])
    centre = stops.mean(axis=0)
    return FreeGround(
        cast=cast,
        reach={dancer.name: dancer.reach for dancer in show.dancers},
        bounds=PostArea(
            left=-inf,
            right=inf,
            down=-inf,
            up=inf,
            closed=(*safety_plan(show).ground.obstacles, *_closed(show)),
            barriers=tuple(line.line for line in show.show.venue.audience),
            centre=(float(centre[0]), float(centre[1])),
        ),
    )


def _stops(each: Followed) -> Any:
    """Places at which somebody stands, and those they walk through, shape (n, 2) [m]."""
    moves = each.floor.moves
    through = [point for move in moves for point in move.through]
    return np.array([each.floor.place, *(move.place for move in moves), *through], dtype=float)


def _closed(show: Staged) -> Iterator[tuple[Point, ...]]:
    """Outlines of the ground on which nobody is posted, besides scenery: exits, ways, lane, fuel, and amid the act."""
    import shapely

    venue, shapes = show.show.venue, []
    for out in ways_out(show):
        half = (out.width or 0.0) / 2 + PERSON
        shapes.append(_line(out.way, half) if len(out.way) > 1 else _round(out.at, half))
    if venue.fire_lane is not None:
        shapes.append(_line(venue.fire_lane.line, lane_half(venue.fire_lane)))
    act = list(_reaches(show))
    if act:
        shapes.append(shapely.unary_union(act).convex_hull)
    for shape in shapes:
        yield _corners(shape)


def _reaches(show: Staged) -> Iterator[Any]:
    """The ground under everybody's reach, and a little more: of who is lit, and of who is on the stage meanwhile."""
    import shapely

    for fire in fires_of(show):
        yield _round_places(fire.places, fire.reach + fire.slack)
    stage = _stage(show)
    for start, end in _lit_spans(show):
        for dancer in show.dancers:
            places, slack = sampled_places(
                Followed(who=dancer.name, floor=dancer.floor, start=start, end=end)
            )
            there = places[shapely.intersects_xy(stage, places[:, 0], places[:, 1])]
            if len(there):
                yield _round_places(there, dancer.reach + slack)


def _lit_spans(show: Staged) -> list[tuple[float, float]]:
    """When anybody is lit, from and to [beats]."""
    spans: list[tuple[float, float]] = []
    for burn in sorted(safety_plan(show).followed, key=lambda each: each.start):
        if spans and burn.start <= spans[-1][1]:
            spans[-1] = (spans[-1][0], max(spans[-1][1], burn.end))
        else:
            spans.append((burn.start, burn.end))
    return spans


def _round_places(places: Any, reach: float) -> Any:
    import shapely

    return shapely.MultiPoint(places).convex_hull.buffer((reach + OUTSIDE_ACT) / _INNER, _ROUND)


def _corners(shape: Any) -> tuple[Point, ...]:
    return tuple((float(x), float(y)) for x, y in shape.exterior.coords[:-1])


def _in_things(show: Staged, place: Point) -> Iterator[PostFault]:
    """Scenery, exits, ways and the lane in which a place lies."""
    import shapely

    venue, point = show.show.venue, shapely.Point(place)
    for thing in venue.scenery:
        if shapely.Polygon(thing.outline).contains(point):
            yield PostFault(kind="scenery", what=thing.name)
    for out in ways_out(show):
        if in_the_way(place, out, way=False):
            yield PostFault(kind="exit", what=out.name)
        elif in_the_way(place, out):
            yield PostFault(kind="way" if out.entered else "reckoned way", what=out.name)
    lane = venue.fire_lane
    if lane is not None and shapely.LineString(lane.line).distance(point) < lane_half(lane):
        yield PostFault(kind="lane")


def _by_duty(show: Staged, duty: Duty, place: Point) -> Iterator[PostFault]:
    """Whether a place is where somebody of this duty belongs."""
    import shapely

    venue, point = show.show.venue, shapely.Point(place)
    name, gap = min(
        ((line.name, shapely.LineString(line.line).distance(point)) for line in venue.audience),
        key=lambda each: each[1],
    )
    guard = duty.duty == "perimeter"
    if gap > (IN_CROWD if guard else 0.0) and beyond_audience(show, place):
        yield PostFault(kind=_IN_CROWD.get(duty.duty, "crowd"), what=name, distance=gap)
    elif guard and gap > FROM_EDGE:
        yield PostFault(kind="far from edge", what=name, distance=gap)
    fuel = venue.fuel_station
    if duty.duty == "fuel keeper" and fuel is not None and dist(place, fuel) > FROM_FUEL:
        yield PostFault(kind="far from fuel", distance=dist(place, fuel))


def _belongs(show: Staged, duty: Duty) -> Point:
    """Where the search for a better place starts."""
    import shapely

    venue = show.show.venue
    if duty.duty == "fuel keeper" and venue.fuel_station is not None:
        return venue.fuel_station[0], venue.fuel_station[1] + PERSON
    point, stage = shapely.Point(duty.place), _stage(show)
    if duty.duty == "perimeter":
        lines = [shapely.LineString(line.line) for line in venue.audience]
        edge = min(lines, key=lambda line: line.distance(point))
        at, inward = shapely.shortest_line(edge, stage.centroid).coords
        near = edge.interpolate(edge.project(point))
        step = PERSON / max(dist(at, inward), PERSON)
        return near.x + step * (inward[0] - at[0]), near.y + step * (inward[1] - at[1])
    if _far_off(show, duty.place) > FAR_OFF:
        near, _ = shapely.shortest_line(stage, point).coords
        return float(near[0]), float(near[1])
    return duty.place


def _around(start: Point, within: float) -> Iterator[Point]:
    """Places round a point up to a distance, nearest first, on whole decimetres."""
    yield round(start[0], 1) + 0.0, round(start[1], 1) + 0.0
    for ring in range(1, ceil(within / _RING)):
        radius = ring * _RING
        count = max(8, ceil(2 * pi * radius / (2 * _RING)))
        for k in range(count):
            turn = 2 * pi * k / count
            x, y = start[0] + radius * cos(turn), start[1] + radius * sin(turn)
            yield round(x, 1) + 0.0, round(y, 1) + 0.0


def beyond_audience(show: Staged, place: Point) -> bool:
    """Whether the audience's edges hide the whole stage from a place: it lies on the audience's side."""
    import shapely

    stage = _stage(show)
    seen = [*stage.exterior.coords[:-1], (stage.centroid.x, stage.centroid.y)]
    ways = shapely.linestrings([[place, corner] for corner in seen])
    edges = shapely.MultiLineString([line.line for line in show.show.venue.audience])
    return bool(np.all(shapely.intersects(ways, edges)))


def _far_off(show: Staged, place: Point) -> float:
    """Distance to the nearest of stage, audience and fuel [m]."""
    import shapely

    venue, point = show.show.venue, shapely.Point(place)
    things = [_stage(show), *(shapely.LineString(line.line) for line in venue.audience)]
    things += [shapely.Point(venue.fuel_station)] if venue.fuel_station is not None else []
    return float(min(thing.distance(point) for thing in things))


def _stage(show: Staged) -> Any:
    import shapely

    stage = show.venue.stage
    return shapely.box(-1, 0, 1, 1) if stage is None else shapely.Polygon(stage.outline)


def _round(at: Point, radius: float) -> Any:
    import shapely

    return shapely.Point(at).buffer(radius / _INNER, _ROUND)


def _line(line: Any, half: float) -> Any:
    import shapely

    return shapely.LineString(line).buffer(half / _INNER, _ROUND)
