"""Published limits of radiant heat for people and fabrics: fluxes, and the dose that hurts."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from sequencer.facts.sources import Mark, Source, data, mark_of, source


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatCriterion:
    """A heat flux and its effect."""

    name: str
    flux: float  # [W/m²]
    seconds: float | None  # [s] of exposure; None if the source gives no time
    effect: str
    printed: str  # the value as printed in the source
    source: Source
    mark: Mark


@cache
def heat_criteria() -> Mapping[str, HeatCriterion]:
    """All fluxes by name."""
    table = {}
    for entry in data("heat_criteria.json")["fluxes"]:
        origin = source(entry["source"])
        table[entry["name"]] = HeatCriterion(
            name=entry["name"],
            flux=entry["flux"],
            seconds=entry.get("seconds"),
            effect=entry["effect"],
            printed=entry.get("printed", ""),
            source=origin,
            mark=mark_of(entry, origin),
        )
    return table


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatDose:
    """A thermal dose and its effect."""

    name: str
    dose: float  # [(kW/m²)^(4/3)·s]
    effect: str
    printed: str  # the value as printed in the source
    source: Source


@cache
def heat_doses() -> Mapping[str, HeatDose]:
    """All doses by name."""
    return {
        entry["name"]: HeatDose(**{**entry, "source": source(entry["source"])})
        for entry in data("heat_criteria.json")["doses"]
    }


def seconds_to(dose: str, flux: float) -> float:
    """Time after which a steady radiant heat gives a dose, t = D / q^(4/3) [s]; inf without heat.

    Parameters
    ----------
    dose : str
        Its name, such as "pain".
    flux : float
        [W/m²]

    Raises
    ------
    KeyError
        If there is no dose of that name.
    ValueError
        If the flux is negative.

    Notes
    -----
    Source: thermal dose of HSL/2004/04. For bare skin.
    """
    if flux < 0:
        raise ValueError(f"flux must not be negative, got {flux!r}")
    return float(heat_doses()[dose].dose / (flux / 1000.0) ** (4.0 / 3.0)) if flux else math.inf
