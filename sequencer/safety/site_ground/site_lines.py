"""Lines on the ground of a site: the edges of the fire lane, and rings round the fuel. Stage frame [m].

Source of the width of a lane that is not stated: Approved Document B, table 13.1; from memory.
"""

from sequencer.geometry.regions import Point
from sequencer.safety.safety_plan import safety_plan
from sequencer.show.file_records.site import FireLane
from sequencer.staging.staged import Staged

LANE_WIDTH = 3.7  # [m] where it is not stated: assumed, not measured
_KEPT_OUT = (("fuel-point-distance", "no flame"), ("fuel-point-audience", "no audience"))


def lane_half(lane: FireLane) -> float:
    """Half the width of a fire lane [m]."""
    return (lane.width or LANE_WIDTH) / 2


def lane_words(lane: FireLane) -> str:
    """A fire lane with its width, as printed."""
    return (
        f"fire lane, {LANE_WIDTH:g} m assumed"
        if lane.width is None
        else f"fire lane {lane.width:.1f} m"
    )


def lane_outline(lane: FireLane) -> tuple[Point, ...]:
    """Corners of a fire lane in order."""
    import shapely

    strip = shapely.LineString(lane.line).buffer(
        lane_half(lane), cap_style="flat", join_style="mitre"
    )
    return tuple((float(x), float(y)) for x, y in strip.exterior.coords[:-1])


def fuel_rings(show: Staged) -> tuple[tuple[float, str], ...]:
    """Distances that the rules in force ask for round the fuel point [m], each with who keeps out of it."""
    book = safety_plan(show).book
    found: dict[float, list[str]] = {}
    for kind, words in _KEPT_OUT:
        rule = book.strictest(kind)
        if rule is not None and show.show.venue.fuel_station is not None:
            found.setdefault(rule.number, []).append(words)
    return tuple((radius, ", ".join(words)) for radius, words in found.items())
