"""Flames against what the show states, and their glow where the audience stands.

Places in the stage frame [m]. Every performer who is ever lit is taken at their nearest to each audience
edge, all at once, at the peak of the burn: more than is ever so. Low radiant heat does not make a
distance good; the distance of the rules holds beside it.
Sources: point source of NUREG-1805 sheet 05.1; the limit is a rule of the book in force.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.facts.flames import PEAK
from sequencer.facts.profiles import Rule
from sequencer.facts.radiation import point_source_flux
from sequencer.findings import Finding
from sequencer.motion.clearance.to_posts import Followed, closest

UNDERSTATED = 1.05  # [1] a stated flame may be this much below the computed one
_NEAREST = 0.1  # [m] a point source closer than this says nothing


@dataclass(frozen=True, slots=True, kw_only=True)
class Wicks:
    """What one performer burns."""

    heat: float  # [W] mean, of all wicks together
    reach: float  # [m] from the body's axis to the farthest wick
    flame: float  # [m] mean flame at rest by the pool-fire relation


def flame_findings(wicks: Mapping[str, Wicks], *, stated: float) -> list[Finding]:
    """Flames that are higher by computation than the show states.

    Parameters
    ----------
    wicks : mapping of performer to Wicks
    stated : float
        Flame over the wick at rest [m].
    """
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
            f"{tallest:.2f} m: distances rest on the smaller one",
            remedies=(
                f"watch a real burn and write the larger; until then flame: {tallest:.2f} m",
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
    """Audience edges where the flames together glow more than people bear.

    Parameters
    ----------
    followed : sequence of Followed
        Each burn with its performer's way over the floor.
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
                    message=f"up to {flux / 1000:.2f} kW/m² reach {name}; {limit.number / 1000:.2f} "
                    "allowed",
                    remedies=(
                        "move the act or the audience apart",
                        "fewer or smaller wicks at once",
                    ),
                    source=f"{limit.citation} Point source: US NRC, NUREG-1805 sheet 05.1 [C17; read]",
                )
            )
    return found


def audience_flux(
    followed: Sequence[Followed], wicks: Mapping[str, Wicks], line: Sequence[tuple[float, float]]
) -> float:
    """Radiant heat at an audience edge, everybody at their nearest and at the peak [W/m²].

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
