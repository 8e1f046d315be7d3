"""Burning rates of pools of liquid, as tabulated.

Source: US NRC, Fire Dynamics Tools (NUREG-1805), after SFPE Handbook 3rd ed. p. 3-26. Valid for pools wider than 0.2 m (Babrauskas 1983): a wick is smaller.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from sequencer.facts.sources import Source, data, source


@dataclass(frozen=True, slots=True, kw_only=True)
class PoolFire:
    """One row of the table."""

    name: str
    mass_flux: float  # [kg/(m²·s)] of a very wide pool
    heat_of_combustion: float  # [J/kg] effective
    density: float | None  # [kg/m³]
    absorption: float  # [1/m] extinction coefficient times mean beam length corrector
    source: Source


@cache
def pool_fires() -> Mapping[str, PoolFire]:
    """The table by fuel."""
    content = data("pool_fires.json")
    origin = source(content["source"])
    return {entry["name"]: PoolFire(**entry, source=origin) for entry in content["fuels"]}
