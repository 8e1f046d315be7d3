"""Station patterns as a kind of law, built from a user's list of stations.

Frame and angles as in stations.py.
"""

from collections.abc import Mapping
from math import radians

from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.law_kinds import (
    FROM,
    HAND_RADII,
    OFFSET,
    PLANE,
    TETHER,
    TURN,
    LawContext,
    LawKind,
    ParameterValues,
    offset_of,
    one_turn,
)
from sequencer.motion.patterns.parameters import Parameter
from sequencer.motion.patterns.stations import StationPoint, check_stations, station_law

STATION_PARAMETERS = (
    Parameter(name="hand_radius", kind="length", default=0.2, low=0.01, high=1.2,
              help="radius of the hand's circle; at most the arm's length"),
    TETHER, PLANE, TURN, FROM, *OFFSET,
)  # fmt: skip


def station_kind(rows: object) -> LawKind:
    """A kind of law through a list of stations, each {hand, bend, phase} in degrees.

    Raises
    ------
    ValueError
        If the rows are not such a list, or cannot be built.
    """
    if not isinstance(rows, list | tuple):
        raise ValueError("stations must be a list of rows with hand, bend and phase")
    points = []
    for k, row in enumerate(rows, start=1):
        if not isinstance(row, Mapping) or set(row) != {"hand", "bend", "phase"}:
            raise ValueError(f"station {k} must give hand, bend and phase, in degrees")
        angles = {
            name: Parameter(
                name=name, kind="angle", default=None, low=-36000.0, high=36000.0, help=""
            ).read(value)
            for name, value in row.items()
        }
        points.append(StationPoint(**{name: float(value) for name, value in angles.items()}))
    check_stations(points, hand_radius=1.0)
    loops = (points[-1].phase - points[0].phase) / 360.0

    def build(values: ParameterValues, wanted: LawContext) -> Law:
        return station_law(
            points,
            hand_radius=values["hand_radius"],
            plane=values["plane"],
            turn=values["turn"],
            start=radians(values["from"]),
            beats=wanted.beats,
            side=wanted.side,
            body=wanted.body,
            offset=offset_of(values),
        )

    return LawKind(
        name="stations", family="station pattern", build=build, cycle=lambda _values: loops,
        turns=one_turn, opposite="plane", parameters=STATION_PARAMETERS, stations=tuple(points), free=(HAND_RADII,),
    )  # fmt: skip
