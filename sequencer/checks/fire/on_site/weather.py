"""Wind: how strong it is, and what lies where it blows flames, sparks and smoke.

Inputs are plain records; places in the stage frame [m], bearings [degrees] as of a facing: 0 from the
audience, 90 from stage left. Wind turns: whatever lies within 45 degrees of straight downwind counts as
downwind, from any place where a performer stands lit. That width, and how far downwind people and scenery are
checked (twice the distance that the rules require), are design choices.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from math import atan2, cos, degrees, dist, radians, sin

from sequencer.checks.check import Check
from sequencer.checks.fire.records import (
    BLANK,
    CAPPED,
    MISSING,
    PROGRESS,
    Night,
    blank_finding,
    night_finding,
    night_of,
    where_lit,
)
from sequencer.checks.outcome import Outcome
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.facts.wind import beaufort
from sequencer.findings import Finding
from sequencer.geometry.regions import Point
from sequencer.safety.rules.house_rules import rules_of
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.staging.staged import Staged

DOWNWIND_HALF_ANGLE = 45.0  # [degrees] each side of straight downwind
FAR = 2.0  # times the distance that the rules require


@dataclass(frozen=True, slots=True, kw_only=True)
class Surroundings:
    """What lies around the flames on the plan."""

    flames: Mapping[str, Sequence[Point]]  # places where a performer stands lit, by name
    fuel_point: Point | None = None
    audience: Mapping[str, Sequence[Point]] = field(default_factory=dict)  # edges by name
    scenery: Mapping[str, Sequence[Point]] = field(
        default_factory=dict
    )  # combustible pieces, by name


@where_lit
def wind(show: Staged) -> Outcome:
    """Gusts at a show against the limits.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    return Outcome(findings=tuple(wind_findings(night_of(show), rules_of(show))))


@where_lit
def downwind(show: Staged) -> Outcome:
    """What lies downwind of the flames of a show.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    wind_from = show.show.venue.wind_from
    found = downwind_findings(wind_from, night_of(show), around(show), rules_of(show))
    return Outcome(findings=tuple(found))


def around(show: Staged) -> Surroundings:
    """What lies around the places where performers stand lit."""
    venue = show.show.venue
    flames: dict[str, list[Point]] = {}
    for burn in safety_plan(show).followed:
        places = flames.setdefault(burn.who, [])
        for beat in (burn.start, burn.end):
            x, y = burn.floor.at(beat).place
            places.append((float(x), float(y)))
        places += [
            standing.spots[burn.who][:2]
            for standing in show.standings
            if burn.who in standing.spots
            and standing.start < burn.end
            and standing.end > burn.start
        ]
    return Surroundings(
        flames={who: sorted(set(places)) for who, places in flames.items()},
        fuel_point=venue.fuel_station,
        audience={line.name: line.line for line in venue.audience},
        scenery={each.name: each.outline for each in venue.scenery if each.combustible},
    )


def wind_findings(night: Night, book: RuleBook) -> list[Finding]:
    """Gusts against the limits of the rules and of the show."""
    stop, warn = _strictest(night, book), book.strictest("wind-warn")
    if night.indoors or stop is None:
        return []
    found = _capped(night, book)
    if night.wind is None:
        return [
            *found,
            blank_finding("wind is not recorded", "venue, wind, measured at prop height", stop),
        ]
    if night.wind == 0.0:
        return [
            *found,
            night_finding(
                "wind-still", "warn",
                "no wind at all is entered, but no place in the open stays still for an evening",
                f"{stop.citation}; measured at prop height: common practice",
                ("measure gusts at prop height and write the largest under venue, wind",),
            ),
        ]  # fmt: skip
    gusts = f"gusts of {night.wind:.1f} m/s (Beaufort {beaufort(night.wind)})"
    origin = "the limit is borrowed from open burning, as none for performers was found"
    if stop.mark == "as entered":
        origin = "the limit is the show’s"
    if night.wind >= stop.number:
        found.append(
            night_finding("wind-high", "stop", f"{gusts}, limit {stop.number:.1f} m/s; {origin}",
                     stop.citation, ("wait, or dance it dark",))
        )  # fmt: skip
    elif warn and night.wind >= warn.number:
        found.append(
            night_finding("wind-near", "warn", f"{gusts}, take care from {warn.number:.1f} m/s; {origin}",
                     warn.citation, ("measure at prop height before each act",
                                     "stop if flames lean at people, fuel or scenery"))
        )  # fmt: skip
    return found


def _strictest(night: Night, book: RuleBook) -> Rule | None:
    """The limit that applies: the show's if it is lower than the rule's."""
    rule = book.strictest("wind-stop")
    if rule is None or night.gust_limit is None or night.gust_limit >= rule.number:
        return rule
    return Rule(
        kind=rule.kind,
        value=night.gust_limit,
        printed=f"{night.gust_limit:.1f} m/s, weather, gusts",
        profile="this show",
        source=rule.source,
        mark="as entered",
    )


def _capped(night: Night, book: RuleBook) -> list[Finding]:
    rule = book.strictest("wind-stop")
    if rule is None or night.gust_limit is None or night.gust_limit <= rule.number:
        return []
    return [
        night_finding(
            "limit-capped",
            "warn",
            f"weather, gusts: {night.gust_limit:.1f} m/s is above what the rules allow; "
            f"{rule.number:.1f} m/s applies",
            rule.citation,
            (f"write gusts: {rule.number:.1f} m/s or less",),
        )
    ]


def downwind_findings(
    wind_from: float | None, night: Night, around: Surroundings, book: RuleBook
) -> list[Finding]:
    """Fuel, people and combustible scenery downwind of a flame."""
    if night.indoors or not around.flames:
        return []
    rule = book.required("fuel-upwind")
    if wind_from is None:
        asks = rule or book.strictest("wind-stop")
        return [] if asks is None else [
            blank_finding("wind direction is not recorded", "venue, wind_from", asks),
        ]  # fmt: skip
    towards = wind_from + 180.0
    found = []
    if rule is not None and around.fuel_point is not None:
        who = _upwind_of([around.fuel_point], around, towards, far=None)
        if who:
            found.append(
                night_finding(
                    "fuel-downwind", "stop",
                    "the fuel point lies downwind of a flame: sparks and lit drops go there",
                    rule.citation, ("move the fuel point upwind of the act, or across the wind",), who=who,
                )
            )  # fmt: skip
    for kind, things, code, word in (
        ("audience-distance", around.audience, "audience-downwind", "stands"),
        ("combustible-distance", around.scenery, "scenery-downwind", "is combustible and stands"),
    ):
        distance = book.strictest(kind)
        if distance is None:
            continue
        for name, points in things.items():
            who = _upwind_of(points, around, towards, far=FAR * distance.number)
            if who:
                found.append(
                    night_finding(
                        code, "warn",
                        f"{name} {word} downwind of a flame, within {FAR * distance.number:.1f} m: smoke, "
                        "sparks and leaning flames go there",
                        "stop if flames lean at people, fuel or scenery: common practice; checked within "
                        f"twice {distance.citation}",
                        ("turn or move the act so that the wind blows along the audience’s edge",
                         "wait for another wind"), who=who,
                    )
                )  # fmt: skip
    return found


def _upwind_of(
    points: Sequence[Point], around: Surroundings, towards: float, *, far: float | None
) -> tuple[str, ...]:
    """Performers who have a flame at a place from which the wind blows at an edge, a corner or a point."""
    return tuple(
        who
        for who, places in around.flames.items()
        if any(is_downwind(place, points, towards, far=far) for place in places)
    )


def is_downwind(
    flame: Point, points: Sequence[Point], towards: float, *, far: float | None
) -> bool:
    """Whether any point of a polyline lies downwind of a flame.

    Parameters
    ----------
    flame : tuple of float
        [m, stage frame]
    points : sequence of tuple of float
        Corners in order [m, stage frame]; a single one is a point.
    towards : float
        Where the wind blows to [degrees, as of a facing].
    far : float, optional
        Distance from the flame up to which to look [m].
    """
    angle = radians(towards)
    ahead, aside = (sin(angle), -cos(angle)), (cos(angle), sin(angle))
    local = [
        (
            (x - flame[0]) * ahead[0] + (y - flame[1]) * ahead[1],
            (x - flame[0]) * aside[0] + (y - flame[1]) * aside[1],
        )
        for x, y in points
    ]
    if len(local) == 1:
        return _inside(local[0], far)
    return any(_meets(a, b, far) for a, b in pairwise(local))


def _inside(point: Point, far: float | None) -> bool:
    away = dist((0.0, 0.0), point)
    if far is not None and away > far + 1e-9:  # at the very edge counts as within
        return False
    return away < 1e-9 or abs(degrees(atan2(point[1], point[0]))) <= DOWNWIND_HALF_ANGLE + 1e-9


def _meets(a: Point, b: Point, far: float | None) -> bool:
    """Whether a segment enters the sector: tested at its ends, its nearest point and its crossings of the sides."""
    slope = sin(radians(DOWNWIND_HALF_ANGLE)) / cos(radians(DOWNWIND_HALF_ANGLE))
    shares = [0.0, 1.0]
    for side in (slope, -slope):
        # v = side · u along the segment
        rise = (b[1] - a[1]) - side * (b[0] - a[0])
        if abs(rise) > 1e-12:
            shares.append((side * a[0] - a[1]) / rise)
    long = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2
    if long > 0:
        shares.append(-(a[0] * (b[0] - a[0]) + a[1] * (b[1] - a[1])) / long)
    return any(
        _inside((a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])), far)
        for s in shares
        if 0.0 <= s <= 1.0
    )


WIND = Check(
    name="wind",
    run=wind,
    codes={
        **BLANK,
        **CAPPED,
        "wind-high": ("stop",),
        "wind-near": ("warn",),
        "wind-still": ("warn",),
    },
    cautions=MISSING,
    depends_on=PLAN_PARTS,
    progress=PROGRESS,
)
DOWNWIND = Check(
    name="downwind",
    run=downwind,
    codes={
        **BLANK,
        "audience-downwind": ("warn",),
        "fuel-downwind": ("stop",),
        "scenery-downwind": ("warn",),
    },
    cautions=MISSING,
    of_fuel=("fuel-downwind",),
    depends_on=PLAN_PARTS,
    progress=PROGRESS,
)
