"""Published limits of radiant heat for people and fabrics."""

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Dose:
    """Thermal dose that causes an effect, [(kW/m²)^(4/3)·s]."""

    effect: str
    low: float
    middle: float
    high: float
    source: Source


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


@cache
def doses() -> Mapping[str, Dose]:
    """Doses by effect: pain, first_degree, second_degree, third_degree."""
    content = data("heat_criteria.json")["doses"]
    origin = source(content["source"])
    effects = ("pain", "first_degree", "second_degree", "third_degree")
    return {
        effect: Dose(
            effect=effect,
            low=content[effect][0],
            middle=content[effect][1],
            high=content[effect][2],
            source=origin,
        )
        for effect in effects
    }
