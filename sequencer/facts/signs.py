"""Safety signs by meaning: codes, shapes and colours of ISO 7010 and ISO 3864, and where they are needed."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from sequencer.facts.sources import Source, data, source


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign:
    """One registered sign."""

    code: str
    what: str
    kind: str  # prohibition, mandatory, warning, safe_condition, fire_equipment
    shape: str
    colour: str
    source: Source


@cache
def signs() -> Mapping[str, Sign]:
    """All signs by code."""
    content = data("signs.json")
    kinds = content["kinds"]
    return {
        entry["code"]: Sign(**{**entry, **kinds[entry["kind"]], "source": source(entry["source"])})
        for entry in content["signs"]
    }


def signs_for(place: str) -> tuple[Sign, ...]:
    """Signs for a place on the plan: common practice, not a rule that was read.

    Raises
    ------
    ValueError
        If the place is not known.
    """
    places = data("signs.json")["places"]
    if place not in places:
        raise ValueError(f"{place!r} is not a known place; use one of {', '.join(places)}")
    return tuple(signs()[code] for code in places[place])
