"""Fuel point and spin-off zone: far enough from every flame and from the audience.

Inputs are plain records; places in the stage frame [m]. Sources: the rules of the book in force.
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from math import dist

from sequencer.checks.check import Check
from sequencer.checks.fire.records import (
    BLANK,
    MISSING,
    PROGRESS,
    BeatReader,
    blank_finding,
    rule_finding,
    where_lit,
)
from sequencer.checks.outcome import Outcome
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.findings import Finding
from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed, closest
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.safety.site_ground.post_ground import beyond_audience
from sequencer.safety.site_ground.ways_out import fires_of, too_near
from sequencer.staging.staged import Staged
from sequencer.units import rounded_down, rounded_up


@where_lit
def fuel_point(show: Staged) -> Outcome:
    """The fuel point of a show: whether it is recorded, and how close flames and audience are.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    plan, venue = safety_plan(show), show.show.venue
    rule = plan.book.strictest("fuel-point-distance")
    zone = (*_in_crowd(show), *zone_findings(show))
    if venue.fuel_station is None:
        blank = () if rule is None else (
            blank_finding("the fuel point is not recorded", "venue, fuel_station", rule),
        )  # fmt: skip
        return Outcome(findings=(*blank, *zone))
    return Outcome(
        findings=(
            *fuel_point_findings(
                venue.fuel_station,
                plan.followed,
                act_edge={dancer.name: dancer.reach for dancer in show.dancers},
                audience={line.name: line.line for line in venue.audience},
                book=plan.book,
                clock=show,
            ),
            *zone,
        )
    )


def _in_crowd(show: Staged) -> Iterator[Finding]:
    """Fuel point and spin-off zone on the audience's side of its edge, however far from it."""
    import shapely

    venue, rule = show.show.venue, safety_plan(show).book.strictest("fuel-point-audience")
    if rule is None:
        return
    places = {"the fuel point": venue.fuel_station}
    if venue.spin_off is not None:
        middle = shapely.Polygon(venue.spin_off).representative_point()
        places["the spin-off zone"] = middle.x, middle.y
    for what, place in places.items():
        if place is None or not beyond_audience(show, place):
            continue
        yield rule_finding(
            "fuel-point-close",
            "stop",
            f"{what} lies behind the audience’s edge, in the crowd",
            (
                f"move {what} to the stage’s side of the edge",
                "draw the edge where the audience ends",
            ),
            rule,
            where=place,
        )


def zone_findings(show: Staged) -> Iterator[Finding]:
    """A spin-off zone too near to a flame or to the audience: wicks are soaked there, so it keeps the fuel's distances.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    venue, book = show.show.venue, safety_plan(show).book
    if venue.spin_off is None:
        return
    import shapely

    zone = shapely.Polygon(venue.spin_off)
    middle = zone.representative_point()
    clock: BeatReader = show
    rule = book.strictest("fuel-point-distance")
    near = None if rule is None else too_near(zone, fires_of(show), rule.number)
    if rule is not None and near is not None:
        who, distance, spans = near
        missing = rounded_up(rule.number - distance, 2)
        yield Finding(
            code="fuel-point-close",
            severity="stop",
            who=(who,),
            start=clock.seconds(spans[0][0]),
            end=clock.seconds(spans[-1][1]),
            position=clock.position(spans[0][0]),
            message=f"the flame of {who} comes within {rounded_down(max(distance, 0.0), 2):.2f} m of the spin-off "
            f"zone, where wicks are soaked; {rule.number:.2f} m required",
            remedies=(f"move the spin-off zone {missing:.2f} m farther away",),
            source=rule.citation,
            where=(middle.x, middle.y),
        )
    rule = book.strictest("fuel-point-audience")
    if rule is None:
        return
    for line in venue.audience:
        gap = float(zone.distance(shapely.LineString(line.line)))
        if gap < rule.number:
            yield rule_finding(
                "fuel-point-close",
                "stop",
                f"the spin-off zone, where wicks are soaked, is {rounded_down(gap, 2):.2f} m from {line.name}; "
                f"{rule.number:.2f} m required",
                (f"move the spin-off zone {rounded_up(rule.number - gap, 2):.2f} m farther away",),
                rule,
                where=(middle.x, middle.y),
            )


def fuel_point_findings(
    fuel_point: tuple[float, float] | None,
    followed: Sequence[Followed],
    *,
    act_edge: Mapping[str, float],
    audience: Mapping[str, Sequence[tuple[float, float]]],
    book: RuleBook,
    clock: BeatReader,
) -> list[Finding]:
    """A fuel point too near to a flame or to the audience.

    Parameters
    ----------
    fuel_point : tuple of float, optional
        [m, stage frame]
    followed : sequence of Followed
        Each burn with its performer's path over the floor.
    act_edge : mapping of performer to float
        Reach of prop and flame from the body's axis [m].
    audience : mapping of name to sequence of points
        Edges of the audience [m, stage frame].
    book : RuleBook
    clock : BeatReader
    """
    if fuel_point is None:
        return []
    found = []
    rule = book.strictest("fuel-point-distance")
    if rule is not None:
        for burn in followed:
            edge = act_edge.get(burn.who, 0.0)
            (near,) = closest([burn], [WalkableFloor().ways_to([fuel_point])], rule.number + edge)
            if near.spans:
                start, end = near.spans[0][0], near.spans[-1][1]
                missing = rule.number + edge - near.distance
                found.append(
                    Finding(
                        code="fuel-point-close",
                        severity="stop",
                        who=(burn.who,),
                        start=clock.seconds(start),
                        end=clock.seconds(end),
                        position=clock.position(start),
                        message=f"the flame of {burn.who} comes within "
                        f"{max(near.distance - edge, 0.0):.2f} m of the fuel point; "
                        f"{rule.number:.2f} m required",
                        remedies=(f"move the fuel point {missing:.2f} m farther away",),
                        source=rule.citation,
                        where=fuel_point,
                    )
                )
    rule = book.strictest("fuel-point-audience")
    if rule is not None:
        found += _near_audience(fuel_point, audience, rule)
    return found


def _near_audience(
    fuel_point: tuple[float, float],
    audience: Mapping[str, Sequence[tuple[float, float]]],
    rule: Rule,
) -> list[Finding]:
    gaps = {name: line_distance(fuel_point, line) for name, line in audience.items()}
    return [
        rule_finding(
            "fuel-point-close",
            "stop",
            f"the fuel point is {gap:.2f} m from {name}; {rule.number:.2f} m required",
            (f"move the fuel point {rule.number - gap:.2f} m farther away",),
            rule,
            where=fuel_point,
        )
        for name, gap in gaps.items()
        if gap < rule.number
    ]


def line_distance(point: tuple[float, float], line: Sequence[tuple[float, float]]) -> float:
    """Distance of a point from a polyline on the plan [m]."""
    best = min(dist(point, corner) for corner in line)
    for (ax, ay), (bx, by) in pairwise(line):
        length = (bx - ax) ** 2 + (by - ay) ** 2
        if length > 0:
            along = ((point[0] - ax) * (bx - ax) + (point[1] - ay) * (by - ay)) / length
            along = min(max(along, 0.0), 1.0)
            best = min(best, dist(point, (ax + along * (bx - ax), ay + along * (by - ay))))
    return best


CHECK = Check(
    name="fuel-point",
    run=fuel_point,
    codes={**BLANK, "fuel-point-close": ("stop",)},
    cautions=MISSING,
    of_fuel=("fuel-point-close",),
    depends_on=("bodies", *PLAN_PARTS),
    progress=PROGRESS,
)
