"""The floor that the audience can stand on: what is drawn, less what must be kept clear of the flames.

Places in the stage frame [m]. Kept clear is everything nearer than the required distance to the reach of prop and
flame of anybody who is lit, wherever they stand or walk while lit. Areas by shapely. Source: floor space is counted
after exclusion zones are taken off (Buckinghamshire CC and HSG195, read; see `facts.crowd`).
"""

import math
from collections.abc import Mapping, Sequence

import numpy as np

from sequencer.geometry.regions import Point
from sequencer.motion.clearance.to_posts import Followed
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged

_STEP = 0.02  # [m] between samples of a walk
_CORNERS = 64  # of a quarter circle: its chords lie 0.1 mm per metre inside, which is added


@once_per_show_with("bodies", *PLAN_PARTS)
def audience_floor(show: Staged) -> float | None:
    """Floor for the audience of a show [m²]: as entered, else as drawn less what is kept clear; None if neither is known.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    venue = show.show.venue
    floors = [edge.floor for edge in venue.audience if edge.floor is not None]
    if venue.audience_area is not None or not floors:
        return venue.audience_area
    plan = safety_plan(show)
    kept_clear, _ = plan.book.audience_distance(plan.lit_at_once)
    return standing_area(
        floors,
        plan.followed,
        {dancer.name: dancer.reach + kept_clear for dancer in show.dancers},
    )


def standing_area(
    floors: Sequence[Sequence[Point]],
    followed: Sequence[Followed],
    kept_clear: Mapping[str, float],
) -> float:
    """Area of some floors that lies outside every zone kept clear [m²]; a lower bound.

    Parameters
    ----------
    floors : sequence of outlines
        Corners in order [m, stage frame]; where two overlap it counts once.
    followed : sequence of Followed
        Each burn with its performer's path over the floor.
    kept_clear : mapping of performer to float
        Distance from the body's axis inside which nobody may stand [m].
    """
    import shapely

    ground = shapely.union_all([shapely.Polygon(outline) for outline in floors])
    zones = []
    for burn in followed:
        for start, end, bounds in burn.floor.pieces(burn.start, burn.end):
            count = 2 + math.ceil(bounds.speed * (end - start) / _STEP)
            places = burn.floor.at(np.linspace(start, end, count)).place
            slack = bounds.speed * (end - start) / (count - 1) / 2
            radius = (kept_clear[burn.who] + slack) / math.cos(math.pi / 4 / _CORNERS)
            zones.append(shapely.MultiPoint(places).buffer(radius, quad_segs=_CORNERS))
    return float(ground.difference(shapely.union_all(zones)).area)
