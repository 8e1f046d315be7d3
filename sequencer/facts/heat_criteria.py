"""How much radiant heat people and cloth bear, as published."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from sequencer.facts.sources import Mark, Source, data, mark_of, source


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatCriterion:
    """A flux and what it does."""

    name: str
    flux: float  # [W/m²]
    seconds: float | None  # [s] of exposure; None where the source gives no time
    effect: str
    printed: str  # the value as its source prints it
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
