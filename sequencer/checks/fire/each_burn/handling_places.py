"""Where props are lit and put out: clear of everybody who dances then, of the audience and of what burns.

Places in the stage frame [m]. Lit props at rest stay within `REST_ROOM` of their performer's axis, and so does
whoever lights or puts out. How far the place is from the fuel point is told by the check of the fuel point, which
follows each performer from there.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from math import dist

from sequencer.checks.fire.each_burn.busy import Busy, during
from sequencer.findings import Finding, Severity
from sequencer.geometry.regions import Point
from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed, closest
from sequencer.motion.performers.dancer import Dancer
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.handling import SAME_PLACE, walk_seconds
from sequencer.safety.rules.permits import permit_that_holds
from sequencer.safety.safety_plan import SafetyPlan
from sequencer.staging.staged import Staged
from sequencer.timing.position import moment_words

REST_ROOM = 1.0  # [m] a design choice
_BESIDE = 0.4  # [m] from the axis to a hand at rest, at most; a design choice
_CLEAR = "nobody works within the reach of somebody who spins: common practice"


def place_findings(
    show: Staged, plan: SafetyPlan, busy: Mapping[str, Sequence[Busy]]
) -> list[Finding]:
    """Places at which props cannot be lit or put out.

    Parameters
    ----------
    show : Staged
    plan : SafetyPlan
        Of that show.
    busy : mapping of performer to sequence of Busy
    """
    dancers = {dancer.name: dancer for dancer in show.dancers}
    found = []
    for burn in plan.burns:
        floor = dancers[burn.who].floor
        spot, end = floor.place_at(burn.start), floor.place_at(burn.end)
        lit_at = burn.lit_at or spot
        for name, words, mend in _reached(show, burn, lit_at, burn.alight_s, burn.start_s, busy):
            found.append(
                _finding(
                    show, "lighting-place", "stop", burn, lit_at, (burn.who, name),
                    f"{burn.who} is lit within the reach of {name}: {words}", mend, _CLEAR,
                )
            )  # fmt: skip
        for name, words, mend in _reached(show, burn, end, burn.end_s, burn.out_s, busy):
            found.append(
                _finding(
                    show, "putting-out-place", "stop", burn, end, (burn.who, name),
                    f"{burn.who} is put out within the reach of {name}: {words}", mend, _CLEAR,
                )
            )  # fmt: skip
        if dist(lit_at, spot) >= SAME_PLACE:
            for severity, words, mend, source in _away(show, plan, burn, lit_at, spot):
                found.append(
                    _finding(
                        show, "lighting-place", severity, burn, lit_at, (burn.who,),
                        f"the place where {burn.who} is lit {words}", mend, source,
                    )
                )  # fmt: skip
    return found


def room_at_rest(dancer: Dancer) -> float:
    """How far lit props at rest, and whoever lights them, are from a performer's axis [m]."""
    longest = max((prop.farthest for prop in dancer.props.values()), default=0.0)
    return max(REST_ROOM, _BESIDE + longest)


def _reached(
    show: Staged,
    burn: PlannedBurn,
    place: Point,
    start: float,
    end: float,
    busy: Mapping[str, Sequence[Busy]],
) -> Iterator[tuple[str, str, str]]:
    """Performers who dance so near to a place in a span [s] that they reach whoever stands there."""
    (own,) = (dancer for dancer in show.dancers if dancer.name == burn.who)
    room = room_at_rest(own)
    ways = WalkableFloor().ways_to([place])
    for other in show.dancers:
        if other.name == burn.who:
            continue
        limit = other.reach + room
        worst: tuple[float, Busy] | None = None
        for each in during(busy[other.name], start, end):
            span = [
                float(show.tempo.beats_from_seconds(seconds))
                for seconds in (max(each.start, start), min(each.end, end))
            ]
            near = Followed(who=other.name, floor=other.floor, start=span[0], end=span[1])
            (found,) = closest([near], [ways], limit)
            if found.spans and (worst is None or found.distance < worst[0]):
                worst = found.distance, each
        if worst is not None:
            distance, each = worst
            words = (
                f"{other.name} {each.words} {distance:.2f} m away, {limit:.2f} m needed "
                f"({other.reach:.2f} m of reach, {room:.2f} m for {burn.who} and whoever handles the props)"
            )
            mend = (
                f"choose a place {limit - distance:.2f} m farther from {other.name}, or let {other.name} rest from "
                f"{moment_words(start)} to {moment_words(end)}"
            )
            yield other.name, words, mend


def _away(
    show: Staged, plan: SafetyPlan, burn: PlannedBurn, place: Point, spot: Point
) -> Iterator[tuple[Severity, str, str, str]]:
    """What is wrong with a place of lighting away from where a performer stands: severity, words, mend, source."""
    import shapely

    (own,) = (dancer for dancer in show.dancers if dancer.name == burn.who)
    room, here = room_at_rest(own), shapely.Point(place)
    required, source = _from_audience(show, plan)
    for line in show.show.venue.audience:
        edge = shapely.LineString(line.line)
        gap = float(shapely.distance(edge, here)) - room
        if shapely.intersects(edge, shapely.LineString([place, spot])):
            yield (
                "stop",
                f"is behind {line.name}, among the audience",
                f"move it to the stage's side of {line.name}",
                source,
            )
        elif gap < required:
            yield (
                "stop",
                f"leaves {max(gap, 0.0):.2f} m between lit props and {line.name}; {required:.2f} m required",
                f"move it {required - gap:.2f} m away from {line.name}",
                source,
            )
    for thing in show.venue.scenery:
        gap = float(shapely.distance(thing.region.polygon, here))
        if thing.bottom <= 0.0 and gap == 0.0:
            yield "stop", f"is inside {thing.name}", f"move it out of {thing.name}", "geometry"
            continue
        rule = plan.book.strictest("combustible-distance")
        if thing.combustible and rule is not None and gap - room < rule.number:
            yield (
                "stop",
                (
                    f"leaves {max(gap - room, 0.0):.2f} m between lit props and {thing.name}, which can burn; "
                    f"{rule.number:.2f} m required"
                ),
                f"move it {rule.number - gap + room:.2f} m away from {thing.name}",
                rule.citation,
            )
    if not math.isfinite(walk_seconds(plan.ground, no_way=math.inf)(place, spot)):
        yield (
            "stop",
            "has no way to where the burn begins",
            "choose a place with a way to it",
            "geometry",
        )
    stage = show.venue.stage
    if stage is not None and not stage.polygon.covers(here):
        yield (
            "warn",
            "is off the stage: the ground there was not checked",
            "clear the ground there of all that can burn, and close it to the public; or light on the stage",
            "common practice",
        )


def _from_audience(show: Staged, plan: SafetyPlan) -> tuple[float, str]:
    """Least distance of a flame from the audience [m], and its source."""
    required, rules = plan.book.audience_distance(plan.lit_at_once)
    own, permit = show.show.rules.audience, permit_that_holds(show.show)
    if own is not None:
        if permit is not None and "audience-distance" in permit.loosens:
            return own, f"this show, rules, audience, permit {permit.number}"
        if own > required:
            return own, "this show, rules, audience"
    return required, " ".join(rule.citation for rule in rules)


def _finding(
    show: Staged,
    code: str,
    severity: Severity,
    burn: PlannedBurn,
    place: Point,
    who: tuple[str, ...],
    message: str,
    mend: str,
    source: str,
) -> Finding:
    lighting = code == "lighting-place"
    return Finding(
        code=code,
        severity=severity,
        who=who,
        start=burn.alight_s if lighting else burn.end_s,
        end=burn.start_s if lighting else burn.out_s,
        position=show.position(burn.start if lighting else burn.end),
        message=message,
        remedies=(mend,),
        source=source,
        where=place,
    )
