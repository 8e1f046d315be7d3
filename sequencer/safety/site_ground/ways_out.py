"""Ways out for the audience: where each leads, and what keeps an exit from being counted.

Stage frame [m], time in beats. A way is as entered, from the audience's nearest edge on; otherwise it is the shortest
way round scenery. At every lit moment the exit and its way keep the distance from prop and flame that the audience
has to keep: whoever leaves is the audience still. That is proven from the performers' speed; a walker's width is left out.

Sources: exits, aisles and fire lanes are kept free (caution 26; common practice); the distances are the rules' in
force. The space that a person takes in an exit is a design choice.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist
from typing import Any, Literal

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.regions import Point
from sequencer.geometry.walking import WalkableFloor, Ways
from sequencer.motion.clearance.to_posts import Followed, closest
from sequencer.safety.duties.posting import sampled_places, thinned
from sequencer.safety.rules.permits import permit_that_holds
from sequencer.safety.safety_plan import PLAN_PARTS, SafetyPlan, safety_plan
from sequencer.show.file_records.site import Exit
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged

PERSON = 0.5  # [m] kept free of a standing person on each side of an exit; a design choice
_EDGE_STEP = 1.0  # [m] between points of an audience edge from which people leave
_ROUND = 8  # sides of a quarter circle round a place with fire
_ROOM = 1.0  # [m] by which a way that is offered leads round the fire; what is found is proven
_TOUCH = 1e-6  # [m] of a way inside an obstacle: it only touches it


@dataclass(frozen=True, slots=True, kw_only=True)
class WayFault:
    """One thing that stands in an exit or its way, or is too near to it."""

    kind: Literal["inside", "through", "no way", "fire at exit", "fire at way", "fuel", "post"]
    where: Point  # [m, stage frame]
    what: str = ""  # the scenery, performer or crew member
    distance: float = 0.0  # [m] to prop and flame, or to the fuel point
    required: float = 0.0  # [m]
    spans: tuple[tuple[float, float], ...] = ()  # [beats] when a flame is too near


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOut:
    """An exit and the way to it."""

    name: str
    at: Point
    width: float | None  # [m]
    way: tuple[Point, ...]  # from the audience's edge to the exit; empty if there is none
    entered: bool
    faults: tuple[WayFault, ...] = ()

    @property
    def counted(self) -> bool:
        """Whether its width counts: it is known, and nothing stands in the exit or its way."""
        return self.width is not None and not self.faults


def audience_gap(show: Staged) -> float:
    """Distance that the audience keeps from prop and flame while the most are lit [m]: the rules', or the show's own."""
    plan = safety_plan(show)
    required, _ = plan.book.audience_distance(plan.lit_at_once)
    own, permit = show.show.rules.audience, permit_that_holds(show.show)
    loosened = permit is not None and "audience-distance" in permit.loosens
    return required if own is None or not (own > required or loosened) else own


@once_per_show_with("bodies", *PLAN_PARTS)
def ways_out(show: Staged) -> tuple[WayOut, ...]:
    """Every exit of a show with its way and what is wrong with it, in the order of the file.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    fires = fires_of(show)
    return tuple(_way_out(show, each, fires) for each in show.show.venue.exits)


@dataclass(frozen=True, slots=True, kw_only=True)
class FireTrace:
    """Where one performer is while lit."""

    burn: Followed
    reach: float  # [m] of prop and flame from the body's axis
    places: Floats  # (n, 2) [m, stage frame]
    slack: float  # [m] at most from the nearest of these places

    def gap(self, shape: Any) -> float:
        """At least as far as this is prop and flame from a point or a line [m]."""
        import shapely

        apart = float(shapely.distance(shape, shapely.points(self.places)).min())
        return apart - self.reach - self.slack


@once_per_show_with("bodies", *PLAN_PARTS)
def fires_of(show: Staged) -> tuple[FireTrace, ...]:
    """Where each performer of a show is while lit, by burn."""
    reach = {dancer.name: dancer.reach for dancer in show.dancers}
    found = []
    for burn in safety_plan(show).followed:
        places, slack = sampled_places(burn)
        found.append(FireTrace(burn=burn, reach=reach[burn.who], places=places, slack=slack))
    return tuple(found)


def too_near(
    shape: Any, fires: Sequence[FireTrace], required: float
) -> tuple[str, float, tuple[tuple[float, float], ...]] | None:
    """Who comes nearest to a point or a line, how near, and when they are nearer than required; None if nobody is.

    Proven to 5 mm over every lit moment.
    """
    import shapely

    near = [fire for fire in fires if fire.gap(shape) < required]
    if not near:
        return None

    def ways_of(reach: float) -> Ways:
        return lambda places: shapely.distance(shape, shapely.points(places))[:, None] - reach

    burns = [fire.burn for fire in near]
    found = closest(burns, [ways_of(fire.reach) for fire in near], required)
    broken = [
        (each.distance, fire.burn.who, each.spans)
        for each, fire in zip(found, near, strict=True)
        if each.spans
    ]
    if not broken:
        return None
    distance, who, spans = min(broken, key=lambda each: each[0])
    return who, distance, spans


def way_round_fire(show: Staged, start: Point, exit_at: Point) -> tuple[Point, ...] | None:
    """A short way round all the fire at once, its corners to 10 cm; None if it does not keep clear.

    Proven like any other way.
    """
    import shapely

    plan, around = safety_plan(show), _fire_zone(show).convex_hull.buffer(_ROOM, join_style="mitre")
    outline = _corners_of(around.simplify(_ROOM / 2))
    found = WalkableFloor((*plan.ground.obstacles, outline)).path_between(start, exit_at)
    if found is None:
        return None
    bends = tuple((round(x, 1) + 0.0, round(y, 1) + 0.0) for x, y in found[1:-1])
    way = _entered(show, bends, exit_at) if bends else (start, exit_at)
    blocked = any(not plan.ground.is_open(a, b) for a, b in pairwise(way))
    if blocked or too_near(shapely.LineString(way), fires_of(show), audience_gap(show)):
        return None
    return way


@once_per_show_with("bodies", *PLAN_PARTS)
def cut_off(show: Staged) -> tuple[tuple[str, Point], ...]:
    """Ends and corners of the audience's edges from which no exit that counts is reached past the fire."""
    exits = [each.at for each in ways_out(show) if each.counted]
    if not exits:
        return ()
    fires, required, plan = fires_of(show), audience_gap(show), safety_plan(show)
    found = []
    for edge in show.show.venue.audience:
        for corner in edge.line:
            if _straight_clear(corner, exits, plan.ground, fires, required):
                continue
            import shapely

            if any(fire.gap(shapely.Point(corner)) < required for fire in fires):
                continue  # the audience itself is too near there, which its own check finds
            ways = _floor_round_fire(show).ways_to(exits)(np.array([corner]))
            if not np.any(np.isfinite(ways)):
                found.append((edge.name, corner))
    return tuple(found)


def in_the_way(place: Point, out: WayOut, *, way: bool = True) -> bool:
    """Whether somebody standing there is in an exit, or in its way."""
    half = (out.width or 0.0) / 2 + PERSON
    if dist(place, out.at) < half:
        return True
    return way and len(out.way) > 1 and _apart(place, out.way) < half


def _way_out(show: Staged, record: Exit, fires: Sequence[FireTrace]) -> WayOut:
    plan = safety_plan(show)
    way = _way(show, record, plan.ground)
    out = WayOut(
        name=record.name, at=record.at, width=record.width, way=way, entered=bool(record.way)
    )
    faults = (*_walls(show, out), *_flames(show, out, fires), *_things(show, out, plan))
    return WayOut(
        name=out.name, at=out.at, width=out.width, way=way, entered=out.entered, faults=faults
    )


def _way(show: Staged, record: Exit, ground: WalkableFloor) -> tuple[Point, ...]:
    """The way to an exit from the audience's edge; empty if there is none."""
    if record.way:
        return _entered(show, record.way, record.at)
    starts = _edge_points(show, record.at)
    lengths = ground.ways_to([record.at])(np.array(starts))[:, 0]
    best = int(np.argmin(lengths))
    if not np.isfinite(lengths[best]):
        return ()
    return ground.path_between(starts[best], record.at) or ()


def _entered(show: Staged, way: tuple[Point, ...], at: Point) -> tuple[Point, ...]:
    """A way as entered, from the point of the audience's edges nearest to it on."""
    return (min(_edge_points(show, way[0]), key=lambda point: dist(point, way[0])), *way, at)


def _edge_points(show: Staged, near: Point) -> list[Point]:
    """Points of the audience's edges from which people leave: the nearest of each edge, its corners and between."""
    import shapely

    points: list[Point] = []
    for edge in show.show.venue.audience:
        line = shapely.LineString(edge.line)
        first = line.interpolate(line.project(shapely.Point(near)))
        dense = shapely.get_coordinates(shapely.segmentize(line, _EDGE_STEP))
        points += [(first.x, first.y), *((float(x), float(y)) for x, y in dense)]
    return points


def _walls(show: Staged, out: WayOut) -> list[WayFault]:
    """Scenery in which an exit or its way lies."""
    import shapely

    for thing in show.show.venue.scenery:
        solid = shapely.Polygon(thing.outline)
        if solid.contains(shapely.Point(out.at)):
            return [WayFault(kind="inside", what=thing.name, where=out.at)]
    if not out.way:
        return [WayFault(kind="no way", where=out.at)]
    line = shapely.LineString(out.way)
    for thing in show.show.venue.scenery:
        met = shapely.Polygon(thing.outline).intersection(line)
        if met.length > _TOUCH and out.entered:
            middle = (
                met.interpolate(0.5, normalized=True)
                if met.geom_type == "LineString"
                else met.centroid
            )
            return [WayFault(kind="through", what=thing.name, where=(middle.x, middle.y))]
    return []


def _flames(show: Staged, out: WayOut, fires: Sequence[FireTrace]) -> list[WayFault]:
    """Flames too near to an exit, whose nearer post may be half its width nearer; otherwise those near its way."""
    import shapely

    required, half = audience_gap(show), (out.width or 0.0) / 2
    near = too_near(shapely.Point(out.at), fires, required + half)
    if near is not None:
        who, distance, spans = near
        return [
            WayFault(
                kind="fire at exit", what=who, distance=distance - half, required=required, spans=spans,
                where=out.at,
            )
        ]  # fmt: skip
    if len(out.way) < 2:
        return []
    # Where the audience itself is too near, which its own check finds, the way leads no nearer.
    begin = min((fire.gap(shapely.Point(out.way[0])) for fire in fires), default=required)
    near = too_near(shapely.LineString(out.way), fires, min(required, begin))
    if near is None:
        return []
    who, distance, spans = near
    return [
        WayFault(kind="fire at way", what=who, distance=distance, required=required, spans=spans, where=out.at)
    ]  # fmt: skip


def _things(show: Staged, out: WayOut, plan: SafetyPlan) -> list[WayFault]:
    """The fuel point too near to an exit or its way, and people posted in them; a way that is only reckoned is nobody's."""
    found = []
    fuel, rule = show.show.venue.fuel_station, plan.book.strictest("fuel-point-audience")
    if fuel is not None and rule is not None:
        apart = _apart(fuel, out.way or (out.at,))
        if apart < rule.number:
            found.append(WayFault(kind="fuel", distance=apart, required=rule.number, where=fuel))
    found += [
        WayFault(kind="post", what=duty.who, where=duty.place)
        for duty in plan.crew
        if in_the_way(duty.place, out, way=out.entered)
    ]
    return found


def _straight_clear(
    start: Point, exits: Sequence[Point], ground: WalkableFloor, fires: Sequence[FireTrace], required: float
) -> bool:  # fmt: skip
    """Whether the shortest way to one of the exits is far enough from every flame."""
    import shapely

    for at in exits:
        path = ground.path_between(start, at)
        if (
            path is not None
            and start != at
            and not too_near(shapely.LineString(path), fires, required)
        ):
            return True
    return any(start == at for at in exits)


@once_per_show_with("bodies", *PLAN_PARTS)
def _floor_round_fire(show: Staged) -> WalkableFloor:
    """The floor with scenery, and ground that is certainly too near to a flame, as obstacles."""
    zone = _fire_zone(show)
    parts = [zone] if zone.geom_type == "Polygon" else list(zone.geoms)
    return WalkableFloor((*safety_plan(show).ground.obstacles, *map(_corners_of, parts)))


@once_per_show_with("bodies", *PLAN_PARTS)
def _fire_zone(show: Staged) -> Any:
    """Ground nearer to a flame than the audience may be; a strip of at most 20 cm at its edge may be left out."""
    import shapely

    required = audience_gap(show)
    discs = [
        shapely.buffer(
            shapely.points(thinned(fire.places)), fire.reach + required, quad_segs=_ROUND
        )
        for fire in fires_of(show)
    ]
    return shapely.union_all(np.concatenate(discs))


def _corners_of(polygon: Any) -> tuple[Point, ...]:
    return tuple((float(x), float(y)) for x, y in polygon.exterior.coords[:-1])


def _apart(place: Point, line: Sequence[Point]) -> float:
    import shapely

    shape = shapely.LineString(line) if len(line) > 1 else shapely.Point(line[0])
    return float(shape.distance(shapely.Point(place)))
