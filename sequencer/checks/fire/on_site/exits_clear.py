"""Exits: each with a place, a width and a way that leads neither through the fire nor past what blocks it.

An exit with anything against it is not counted in the time to leave (`audience-room`); people posted in one are
found by `posts`. Places in the stage
frame [m]. Sources: as `safety.ways_out`.
"""

from sequencer.checks.check import Check
from sequencer.checks.fire.records import (
    BLANK,
    MISSING,
    PROGRESS,
    BeatReader,
    blank_finding,
    where_lit,
)
from sequencer.checks.outcome import Outcome, place_text
from sequencer.facts.sources import source
from sequencer.findings import Finding
from sequencer.geometry.regions import Point
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.safety.site_ground.site_lines import lane_outline
from sequencer.safety.site_ground.ways_out import (
    WayFault,
    WayOut,
    audience_gap,
    cut_off,
    fires_of,
    too_near,
    way_round_fire,
    ways_out,
)
from sequencer.staging.staged import Staged
from sequencer.units import rounded_down, rounded_up

NOT_WALKED = "Ways to the exits were checked on the plan, from the audience's edge on: steps, slopes, doors and lighting were not."
_KEPT_FREE = "exits, aisles and fire lanes are kept free: common practice"
_NOT_COUNTED = "its width is not counted"


@where_lit
def exits(show: Staged) -> Outcome:
    """Exits of a lit show: recorded, with a width, and with a way past the fire.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    outs, lane = ways_out(show), lane_findings(show)
    if not outs:
        blank = blank_finding(
            "the audience's way out is not recorded", "venue, exits", source("K1")
        )
        return Outcome(findings=(blank, *lane))
    unknown = [each.name for each in outs if each.width is None]
    found = [
        blank_finding(f"the width of {name} is not recorded", "venue, exits, width", source("K1"))
        for name in unknown
    ]
    for out in outs:
        found += [_fault(show, out, each) for each in out.faults if each.kind != "post"]
    found += [_cut_off(show, edge, corner) for edge, corner in cut_off(show)]
    return Outcome(findings=(*found, *lane), not_checked=(NOT_WALKED,))


def lane_findings(show: Staged) -> tuple[Finding, ...]:
    """What stands on the fire lane: scenery, fuel, extinguishers, or a flame's reach."""
    import shapely

    venue = show.show.venue
    if venue.fire_lane is None:
        return ()
    lane = shapely.Polygon(lane_outline(venue.fire_lane))
    things = [(thing.name, shapely.Polygon(thing.outline)) for thing in venue.scenery]
    if venue.fuel_station is not None:
        things.append(("the fuel point", shapely.Point(venue.fuel_station)))
    if venue.spin_off is not None:
        things.append(("the spin-off zone", shapely.Polygon(venue.spin_off)))
    things += [
        (f"the extinguisher at {place_text(tool.at)}", shapely.Point(tool.at))
        for tool in venue.extinguishers
    ]
    blocked = [
        (name, shape)
        for name, shape in things
        if shape.intersection(lane).area > 0 or lane.contains(shape)
    ]
    if near := too_near(lane, fires_of(show), 0.0):
        blocked.append((f"the reach of {near[0]}’s prop and flame", lane))
    return tuple(
        Finding(
            code="lane-blocked",
            severity="stop",
            who=(),
            start=None,
            end=None,
            position=None,
            message=f"{name} lies on the fire lane: engine and ambulance cannot pass",
            remedies=("keep the lane clear", "write where the lane is, under venue, fire_lane"),
            source=_KEPT_FREE,
            where=(shape.representative_point().x, shape.representative_point().y),
        )
        for name, shape in blocked
    )


def _fault(show: Staged, out: WayOut, fault: WayFault) -> Finding:
    code, message, remedies, origin = _told(show, out, fault)
    clock: BeatReader = show
    start, end = (fault.spans[0][0], fault.spans[-1][1]) if fault.spans else (None, None)
    return Finding(
        code=code,
        severity="stop",
        who=(fault.what,) if fault.kind in {"fire at exit", "fire at way"} else (),
        start=None if start is None else clock.seconds(start),
        end=None if end is None else clock.seconds(end),
        position=None if start is None else clock.position(start),
        message=f"{message}; {_NOT_COUNTED}",
        remedies=remedies,
        source=origin,
        where=fault.where,
    )


def _told(show: Staged, out: WayOut, fault: WayFault) -> tuple[str, str, tuple[str, ...], str]:
    """Code, message, mends and source of a fault."""
    name, apart = out.name, f"{rounded_down(max(fault.distance, 0.0), 2):.2f} m"
    asked = f"{fault.required:.2f} m required"
    if fault.kind == "inside":
        return (
            "exit-blocked",
            f"{name} stands inside {fault.what}: nobody can leave through it",
            (f"write where {name} is, or the outline of {fault.what} with its doorway open",),
            _KEPT_FREE,
        )
    if fault.kind == "through":
        return (
            "exit-blocked",
            f"the way to {name}, as entered, leads through {fault.what} at {place_text(fault.where)}",
            (f"move {fault.what}", "enter a way that leads round it, under venue, exits, way"),
            _KEPT_FREE,
        )
    if fault.kind == "no way":
        return (
            "exit-blocked",
            f"there is no way on foot from the audience to {name}: scenery stands in between",
            ("open a gap in the scenery", f"write where {name} is"),
            _KEPT_FREE,
        )
    if fault.kind == "fuel":
        rule = safety_plan(show).book.strictest("fuel-point-audience")
        return (
            "exit-by-fuel",
            f"the fuel point is {apart} from {name} or the way to it; {asked}",
            (
                f"move the fuel point {rounded_up(fault.required - fault.distance, 2):.2f} m farther away",
            ),
            rule.citation if rule else _KEPT_FREE,
        )
    _, rules = safety_plan(show).book.audience_distance(safety_plan(show).lit_at_once)
    cited = " ".join(rule.citation for rule in rules)
    if fault.kind == "fire at exit":
        inside = fault.distance < 0
        near = (
            "stands inside the reach of" if inside else f"is, at its nearer side, within {apart} of"
        )
        return (
            "exit-near-fire",
            f"{name} {near} {fault.what}'s prop and flame; {asked}",
            (
                f"keep {fault.what} {rounded_up(fault.required - fault.distance, 2):.2f} m farther away from it",
                "use another exit",
            ),
            cited,
        )
    led = way_round_fire(show, out.way[0], out.at)
    mends = ["use another exit"]
    if led is not None:
        points = ", ".join(place_text(point) for point in led[1:-1])
        mends.insert(0, f"lead people round, under venue, exits, way: [{points}]")
    entered = "as entered" if out.entered else "as the shortest"
    return (
        "exit-behind-fire",
        f"the way to {name}, {entered}, comes within {apart} of {fault.what}'s prop and flame; {asked}",
        tuple(mends),
        cited,
    )


def _cut_off(show: Staged, edge: str, corner: Point) -> Finding:
    return Finding(
        code="audience-cut-off",
        severity="stop",
        who=(),
        start=None,
        end=None,
        position=None,
        message=f"from {edge} at {place_text(corner)} no exit that counts is reached without coming within "
        f"{audience_gap(show):.2f} m of prop and flame",
        remedies=("open an exit on that side", "move the act away from the way to one"),
        source=_KEPT_FREE,
        where=corner,
    )


CHECK = Check(
    name="exits",
    run=exits,
    codes={
        **BLANK,
        "audience-cut-off": ("stop",),
        "exit-behind-fire": ("stop",),
        "exit-blocked": ("stop",),
        "exit-by-fuel": ("stop",),
        "exit-near-fire": ("stop",),
        "lane-blocked": ("stop",),
    },
    cautions=MISSING,
    of_fuel=("exit-by-fuel",),
    depends_on=("bodies", *PLAN_PARTS),
    progress=PROGRESS,
)
