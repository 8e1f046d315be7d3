"""Flame height against what the show states, and radiant heat at the audience.

Places in the stage frame [m]. Every performer who is ever lit is taken at their nearest to each audience
edge, all at once, at the peak of the burn: more than ever happens. Low radiant heat does not make a
distance safe; the distance of the rules applies as well.
Sources: point source of NUREG-1805 sheet 05.1; the limit is a rule of the book in force.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS, needed, where_lit
from sequencer.checks.outcome import Outcome
from sequencer.facts.combustion import burnt_heat_release
from sequencer.facts.flames import PEAK
from sequencer.facts.profiles import Rule
from sequencer.facts.radiation import point_source_flux
from sequencer.findings import Finding
from sequencer.motion.clearance.to_posts import Followed, closest
from sequencer.safety.burning import known_fuel
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.staging.staged import Staged
from sequencer.staging.wicks import resting_flame

NOT_CHECKED = (
    "Heat is that of a point source: smoke, sparks and flames bent by the wind were not checked."
)
UNDERSTATED = 1.05  # [1] a stated flame may be this much below the computed one
_NEAREST = 0.1  # [m] closer than this the point source does not apply


@dataclass(frozen=True, slots=True, kw_only=True)
class Wicks:
    """The wicks of one performer."""

    heat: float  # [W] mean, of all wicks together
    reach: float  # [m] from the body's axis to the farthest wick
    flame: float  # [m] mean flame at rest by the pool-fire relation


@where_lit
def heat(show: Staged) -> Outcome:
    """Flames of a show, and their radiant heat at the audience.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    plan = safety_plan(show)
    stated = show.show.fire.flame if show.show.fire else None
    wicks = wicks_of(show)
    edges = {line.name: line.line for line in show.show.venue.audience}
    limit = needed(plan.book, "audience-flux")
    return Outcome(
        findings=(
            *flame_findings(wicks, stated=stated),
            *glow_findings(plan.followed, wicks, edges, limit=limit),
        ),
        not_checked=(NOT_CHECKED,),
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
        mass = sum(prop.fuel or 0.0 for prop in props)
        flames = [resting_flame(prop, liquid, burn.seconds) or 0.0 for prop in props]
        watts = burnt_heat_release(
            mass, heat_of_combustion=liquid.heat_of_combustion.highest, seconds=burn.seconds
        )
        hot = max((prop.hot_radius for prop in dancer.props.values()), default=0.0)
        found[dancer.name] = Wicks(heat=float(watts), reach=dancer.reach - hot, flame=max(flames))
    return found


def flame_findings(wicks: Mapping[str, Wicks], *, stated: float | None) -> list[Finding]:
    """Flames computed to be higher than the show states.

    Parameters
    ----------
    wicks : mapping of performer to Wicks
    stated : float, optional
        Flame over the wick at rest [m].
    """
    if stated is None:
        return []
    high = {who: each.flame for who, each in wicks.items() if each.flame > stated * UNDERSTATED}
    if not high:
        return []
    tallest = max(high.values())
    return [
        Finding(
            code="flame-understated",
            severity="warn",
            who=tuple(high),
            start=None,
            end=None,
            position=None,
            message=f"the show states a flame of {stated:.2f} m; soaked mass and burning time give "
            f"{tallest:.2f} m: distances use the smaller figure",
            remedies=(
                f"watch a real burn and write the larger figure; until then flame: {tallest:.2f} m",
            ),
            source="Heskestad 1984, Fire Safety Journal 7:25 [HESK; read second-hand]; poor for wicks",
        )
    ]


def glow_findings(
    followed: Sequence[Followed],
    wicks: Mapping[str, Wicks],
    audience: Mapping[str, Sequence[tuple[float, float]]],
    *,
    limit: Rule,
) -> list[Finding]:
    """Audience edges where all flames together give more heat than people can bear.

    Parameters
    ----------
    followed : sequence of Followed
        Each burn with its performer's path over the floor.
    wicks : mapping of performer to Wicks
    audience : mapping of name to sequence of points
        Edges of the audience [m, stage frame].
    limit : Rule
        Most radiant heat.
    """
    found = []
    known = [burn for burn in followed if burn.who in wicks]
    for name, line in audience.items():
        flux = audience_flux(known, wicks, line)
        if flux > limit.number:
            found.append(
                Finding(
                    code="audience-heat",
                    severity="stop",
                    who=tuple(dict.fromkeys(burn.who for burn in known)),
                    start=None,
                    end=None,
                    position=None,
                    message=f"up to {flux / 1000:.2f} kW/m² of heat at {name}; {limit.number / 1000:.2f} "
                    "allowed",
                    remedies=(
                        "move the act and the audience apart",
                        "light fewer or smaller wicks at once",
                    ),
                    source=f"{limit.citation} Point source: US NRC, NUREG-1805 sheet 05.1 [C17; read]",
                )
            )
    return found


def audience_flux(
    followed: Sequence[Followed], wicks: Mapping[str, Wicks], line: Sequence[tuple[float, float]]
) -> float:
    """Radiant heat at an audience edge, with everybody at their nearest and at the peak [W/m²].

    Source: point source of NUREG-1805 sheet 05.1. An upper bound within that model.
    """
    import shapely

    edge = shapely.LineString(line)

    def gap(places: Floats) -> Floats:
        return np.asarray(shapely.distance(shapely.points(places), edge))[:, None]

    nearest: dict[str, float] = {}
    for burn, found in zip(followed, closest(followed, [gap] * len(followed), 0.0), strict=True):
        centre = max(found.distance - wicks[burn.who].reach, _NEAREST)
        nearest[burn.who] = min(centre, nearest.get(burn.who, np.inf))
    return sum(
        float(point_source_flux(PEAK * wicks[who].heat, distance=centre))
        for who, centre in nearest.items()
    )


CHECK = Check(
    name="heat",
    run=heat,
    codes={"audience-heat": ("stop",), "flame-understated": ("warn",)},
    depends_on=("bodies", *PLAN_PARTS),
    progress=PROGRESS,
)
