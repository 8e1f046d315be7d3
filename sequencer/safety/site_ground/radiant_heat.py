"""Flames of a show's wicks, and their radiant heat at the audience and at the crew's posts.

Places in the stage frame [m]. Every performer who is ever lit is taken at their nearest to the place, all at once, at the
peak of the burn, their flames' centres half a flame outside the farthest wick: more than ever happens.
Sources: point source of NUREG-1805 sheet 05.1; height of a pool flame, Heskestad 1984.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.facts.combustion import burnt_heat_release
from sequencer.facts.flames import PEAK
from sequencer.facts.radiation import point_source_flux
from sequencer.geometry.regions import Point
from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed, closest
from sequencer.safety.burns.burning import known_fuel
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged
from sequencer.staging.wicks import resting_flame

_NEAREST = 0.1  # [m] closer than this the point source does not apply
Gap = Callable[[Floats], Floats]  # (n, 2) positions → (n, m) distances [m]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wicks:
    """The wicks of one performer."""

    heat: float  # [W] mean, of all wicks together
    centre: float  # [m] from the body's axis to the centre of the farthest wick's flame, pointing outward
    mean: float  # [m] the highest flame at rest by the pool-fire relation, at the mean of the burn
    peak: float  # [m] the same at its peak


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatPlan:
    """Radiant heat at the peak of all burns."""

    wicks: Mapping[str, Wicks]  # by performer; those of unknown soak or burning time are left out
    unknown: tuple[str, ...]  # performers who are lit and left out
    audience: Mapping[str, float]  # [W/m²] at each edge of the audience, by name
    posts: tuple[float, ...]  # [W/m²] at each post, in the order of the crew


@once_per_show_with("bodies", *PLAN_PARTS)
def heat_plan(show: Staged) -> HeatPlan:
    """Flames of a show, and their heat at audience and crew.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    import shapely

    wicks = wicks_of(show)
    followed = safety_plan(show).followed
    known = [burn for burn in followed if burn.who in wicks]

    def to_edge(line: Sequence[Point]) -> Gap:
        edge = shapely.LineString(line)
        return lambda places: np.asarray(shapely.distance(shapely.points(places), edge))[:, None]

    return HeatPlan(
        wicks=wicks,
        unknown=tuple(dict.fromkeys(burn.who for burn in followed if burn.who not in wicks)),
        audience={
            line.name: flux_at(to_edge(line.line), known, wicks)
            for line in show.show.venue.audience
        },
        posts=tuple(
            flux_at(WalkableFloor().ways_to([post.post]), known, wicks) for post in show.show.crew
        ),
    )


def wicks_of(show: Staged) -> dict[str, Wicks]:
    """The wicks of each performer; those of unknown soak or burning time are left out."""
    liquid = known_fuel(show)
    found: dict[str, Wicks] = {}
    if liquid is None or liquid.heat_of_combustion is None:
        return found
    burning = {burn.who: burn.burn for burn in safety_plan(show).burns if burn.burn is not None}
    for dancer, record in zip(show.dancers, show.show.cast, strict=True):
        burn = burning.get(dancer.name)
        props = record.props.values()
        if burn is None or any(prop.fuel_mass is None for prop in props):
            continue
        watts = burnt_heat_release(
            sum(prop.fuel or 0.0 for prop in props),
            heat_of_combustion=liquid.heat_of_combustion.highest,
            seconds=burn.seconds,
        )
        mean, peak = (
            max(resting_flame(prop, liquid, burn.seconds, times=times) or 0.0 for prop in props)
            for times in (1.0, PEAK)
        )
        hot = max(prop.hot_radius for prop in dancer.props.values())
        found[dancer.name] = Wicks(
            heat=float(watts), centre=dancer.reach - hot / 2, mean=mean, peak=peak
        )
    return found


def flux_at(gap: Gap, followed: Sequence[Followed], wicks: Mapping[str, Wicks]) -> float:
    """Radiant heat at a place, with everybody at their nearest and at the peak [W/m²].

    Parameters
    ----------
    gap : callable
        Distances from positions to the place.
    followed : sequence of Followed
        Each burn with its performer's path over the floor.
    wicks : mapping of performer to Wicks
        Of everybody followed.

    Notes
    -----
    Source: point source of NUREG-1805 sheet 05.1. An upper bound within that model.
    """
    nearest: dict[str, float] = {}
    for burn, found in zip(followed, closest(followed, [gap] * len(followed), 0.0), strict=True):
        away = max(found.distance - wicks[burn.who].centre, _NEAREST)
        nearest[burn.who] = min(away, nearest.get(burn.who, np.inf))
    return sum(
        float(point_source_flux(PEAK * wicks[who].heat, distance=away))
        for who, away in nearest.items()
    )
