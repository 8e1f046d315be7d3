"""Where heads that come off come down, and how near to people, fuel, exits and what burns.

Stage frame [m]. Every lit performer and every lit instant of the song counts; what a flight passes over counts as reached,
since drag may bring a head down earlier on its line. Bounces and rolls, wind, a raised stage and a whole prop that slips
from the hand are not in it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from sequencer.geometry.regions import Point
from sequencer.motion.clearance.flown_area import flown_over
from sequencer.motion.clearance.let_go import (
    LandingTarget,
    LetGo,
    NearestFlight,
    flights_let_go,
)
from sequencer.motion.performers.dancer import Dancer
from sequencer.show.model import Show
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged

LandingPlace = Literal["audience", "post", "fuel", "exit", "gate", "combustible"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Landing:
    """The flight of all that comes nearest to something on the plan."""

    place: LandingPlace
    name: str
    who: str  # whose head
    flight: NearestFlight


@dataclass(frozen=True, slots=True, kw_only=True)
class LandingPlan:
    """Flights of all heads let go while lit."""

    farthest: tuple[str, LetGo]  # the farthest flight of all, and whose it is
    nearest: tuple[Landing, ...]  # to each thing on the plan, in the order of `landing_places`

    @property
    def proven(self) -> bool:
        """False if a margin stands for a bound somewhere."""
        return self.farthest[1].proven

    def near(self, place: LandingPlace) -> tuple[Landing, ...]:
        """The nearest flights to one kind of thing, the nearest first; beyond a line first of all."""
        some = (each for each in self.nearest if each.place == place)
        return tuple(sorted(some, key=lambda each: (each.flight.distance, -each.flight.beyond)))


@once_per_show_with("trajectories", "bodies", "places", "burns", "venue", "crew")
def landing_plan(show: Staged) -> LandingPlan | None:
    """Flights of all heads let go while lit; None if nobody is lit."""
    lit = _lit(show)
    if not lit:
        return None
    places = landing_places(show.show)
    found = flights_let_go(lit, show.tempo, [target for _, target in places])
    return LandingPlan(
        farthest=found.farthest,
        nearest=tuple(
            Landing(place=place, name=target.name, who=who, flight=flight)
            for (place, target), (who, flight) in zip(places, found.nearest, strict=True)
        ),
    )


def landing_places(show: Show) -> list[tuple[LandingPlace, LandingTarget]]:
    """What a head must not come down on, by kind."""
    venue = show.venue
    found: list[tuple[LandingPlace, LandingTarget]] = [
        ("audience", LandingTarget(name=edge.name, shape="line", points=edge.line))
        for edge in venue.audience
    ]
    found += [("post", _spot(post.name, post.post)) for post in show.crew]
    if venue.fuel_station is not None:
        found.append(("fuel", _spot("the fuel point", venue.fuel_station)))
    if venue.spin_off is not None:
        zone = LandingTarget(name="the spin-off zone", shape="area", points=venue.spin_off)
        found.append(("fuel", zone))
    found += [("exit", _spot(exit_.name, exit_.at)) for exit_ in venue.exits]
    if venue.gate is not None:
        found.append(("gate", _spot("the gate", venue.gate)))
    found += [
        ("combustible", LandingTarget(name=thing.name, shape="area", points=thing.outline))
        for thing in venue.scenery
        if thing.combustible
    ]
    return found


@once_per_show_with("trajectories", "bodies", "places", "burns")
def landing_area(show: Staged) -> tuple[tuple[Point, ...], ...]:
    """Outlines of the ground on which a head let go may come down, of all lit performers together [m, stage frame]."""
    import shapely

    rings = [ring for dancer in _lit(show) for ring in flown_over(dancer, show.tempo)]
    if not rings:
        return ()
    area = shapely.union_all([shapely.Polygon(ring) for ring in rings])
    parts = area.geoms if area.geom_type == "MultiPolygon" else [area]
    return tuple(tuple((x, y) for x, y in part.exterior.coords[:-1]) for part in parts)


def _lit(show: Staged) -> Sequence[Dancer]:
    return [dancer for dancer in show.dancers if dancer.lit and dancer.props]


def _spot(name: str, at: Point) -> LandingTarget:
    return LandingTarget(name=name, shape="point", points=(at,))
