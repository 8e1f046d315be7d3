"""Station patterns: a law through a list of stations on one hand circle.

Each station gives the hand's angle in the plane, the bend β of the prop's plane about the outward
direction, and the prop's phase φ about that plane's normal (β = 0: along the hand's motion; φ = 180°: in,
0°: out). Between two stations φ increases at a constant rate, so that φ sets the timing; the hand's angle
follows the periodic cubic spline through the stations; β follows the cosine law. A toroid given by its ins
is the same curve. If two steps of β are not equal and opposite, the tether's acceleration jumps at the
station between them; direction and rate never do. Frame: body frame [m].
Source: docs/motion.md, section 3.5.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi, radians

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import Arm, ComposedLaw, HandPath
from sequencer.motion.laws.phases import CosineSteps, Spline, Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.patterns.placing import circle_centre
from sequencer.motion.patterns.planar import check_beats
from sequencer.motion.patterns.planes import PlaneName, TurnName, as_vector, frame_of

CLOSE = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class StationPoint:
    """One station, in degrees."""

    hand: float  # angle of the hand round its circle since the first station
    bend: float  # β
    phase: float  # φ


def check_stations(stations: Sequence[StationPoint], *, hand_radius: float) -> None:
    """Raise if a list cannot be built.

    Raises
    ------
    ValueError
        If it is too short, does not return to the start, goes backwards, has parallel neighbours, or its
        direction jumps.
    """
    if len(stations) < 3:
        raise ValueError(
            f"a build needs at least 3 stations, the last equal to the first, got {len(stations)}"
        )
    if not hand_radius > 0:
        raise ValueError(f"hand_radius must be positive, got {hand_radius!r}")
    first, last = stations[0], stations[-1]
    for name, whole in (("hand", 360.0), ("bend", 360.0), ("phase", 360.0)):
        way = (getattr(last, name) - getattr(first, name)) / whole
        if abs(way - round(way)) > CLOSE:
            raise ValueError(
                f"the last station must repeat the first: its {name} is off by "
                f"{(way - round(way)) * whole:.1f}°"
            )
    for k in range(1, len(stations)):
        _check_pair(k, stations[k - 1], stations[k])


def _check_pair(k: int, before: StationPoint, here: StationPoint) -> None:
    where = f"stations {k} and {k + 1}"
    if here.phase <= before.phase or here.hand <= before.hand:
        raise ValueError(f"{where}: hand and phase must increase from station to station")
    if abs(here.bend - before.bend) > 180 + CLOSE:
        raise ValueError(
            f"{where}: the direction jumps: the plane would bend by "
            f"{abs(here.bend - before.bend):.0f}° (180° is the most)"
        )
    normals = [_normal(station) for station in (before, here)]
    if np.linalg.norm(np.cross(normals[0], normals[1])) < CLOSE:
        raise ValueError(
            f"{where}: their planes are parallel, so the prop cannot pass from one to the other"
        )


def _normal(station: StationPoint) -> Floats:
    """The normal of the prop's plane in a frame whose x and y span the hand's circle."""
    angle, bend = radians(station.hand), radians(station.bend)
    along = np.array([-np.sin(angle), np.cos(angle), 0.0])
    return np.asarray(np.cos(bend) * along + np.array([0.0, 0.0, np.sin(bend)]))


def station_law(
    stations: Sequence[StationPoint],
    *,
    hand_radius: float,
    plane: PlaneName = "wall",
    turn: TurnName = "anticlockwise",
    start: float = -pi / 2,
    beats: float,
    side: Side = "right",
    body: Body,
    offset: tuple[float, float, float] = (0.0, 0.0, 0.0),
) -> ComposedLaw:
    """The law through a list of stations.

    Parameters
    ----------
    stations : sequence of StationPoint
        The last one is the first again.
    hand_radius : float
        [m]
    plane, turn, start
        Plane of the hand's circle, its direction, and the angle of the first station [rad].
    beats : float
        For the whole list.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Own move of the circle's centre: outward, ahead, up [m].

    Returns
    -------
    law : ComposedLaw

    Raises
    ------
    ValueError
        If the list cannot be built, or a parameter is out of range.
    """
    check_stations(stations, hand_radius=hand_radius)
    check_beats(beats)
    frame = frame_of(plane, turn, start)
    centre = circle_centre(plane, side, body, hand_radius, offset, bends=True)
    hand, bend, phase = (
        np.radians([getattr(station, name) for station in stations])
        for name in ("hand", "bend", "phase")
    )
    pace = (phase[-1] - phase[0]) / beats
    knots = tuple(float(t) for t in (phase - phase[0]) / pace)
    around = Turn(as_vector(frame.axis), Spline(knots, tuple((hand - hand[0]).tolist())))
    return ComposedLaw(
        hand=HandPath(
            as_vector(centre), arms=(Arm(as_vector(hand_radius * frame.outward), (around,)),)
        ),
        tether=as_vector(frame.outward),
        plane=as_vector(frame.along),
        turns=(
            around,
            Turn(as_vector(frame.outward), CosineSteps(knots, tuple(bend.tolist()))),
            Turn(as_vector(frame.along), Wave(offset=float(phase[0]), rate=float(pace))),
        ),
        period=beats,
    )
