"""What each extinguisher stands ready for: the act, or the fuel point.

One that is used at the act is missing at the fuel, and the other way round: each has its own. As entered; otherwise
what it is nearer to, the fuel point or the nearest place with fire. Stage frame [m].
"""

from math import dist
from typing import Literal

from sequencer.safety.safety_plan import PLAN_PARTS
from sequencer.safety.site_ground.ways_out import fires_of
from sequencer.show.file_records.site import Extinguisher
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged

Guarded = Literal["act", "fuel"]


@once_per_show_with("bodies", *PLAN_PARTS)
def guarded_by(show: Staged) -> tuple[Guarded, ...]:
    """What each extinguisher of a show stands ready for, in the order of the file."""
    return tuple(_guarded(show, tool) for tool in show.show.venue.extinguishers)


def _guarded(show: Staged, tool: Extinguisher) -> Guarded:
    fuel = show.show.venue.fuel_station
    if tool.guards is not None or fuel is None:
        return tool.guards or "act"
    import shapely

    places = [shapely.points(fire.places) for fire in fires_of(show)]
    nearest = min(
        (float(shapely.distance(shapely.Point(tool.at), own).min()) for own in places), default=0.0
    )
    return "fuel" if dist(tool.at, fuel) < nearest else "act"
