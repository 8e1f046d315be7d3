"""How long a wick burns if nobody has timed it: a default that is always labelled as such.

A timed burn of the same wick and fuel always takes precedence (`burn_log`).
Sources: practitioners' guides (common practice); US NRC, Fire Dynamics Tools, for the soaked mass.
"""

from dataclasses import dataclass
from typing import Literal

from sequencer.facts.combustion import pool_burning_rate
from sequencer.facts.fuels import Fuel
from sequencer.facts.pool_fires import pool_fires
from sequencer.facts.sources import cited, data, mark_of, source

Basis = Literal["measured", "stated", "default"]


@dataclass(frozen=True, slots=True, kw_only=True)
class BurnTime:
    """The burning time that a plan uses."""

    seconds: float  # [s]
    basis: Basis  # measured: from the burn log; stated: in the show file; default: nobody timed it
    source: str
    count: int | None = None  # number of timed burns behind it, if from a log

    def __post_init__(self) -> None:
        if not self.seconds > 0:
            raise ValueError(f"seconds must be positive, got {self.seconds!r}")


def default_burn_time(
    fuel: Fuel, *, soak: float | None = None, wick_area: float | None = None
) -> BurnTime | None:
    """The shorter of the shortest time in common practice and the time that the soaked mass lasts.

    Parameters
    ----------
    fuel : Fuel
    soak : float, optional
        Fuel in the wick after spinning off [kg].
    wick_area : float, optional
        Burning surface of the wick [m²].

    Returns
    -------
    burn : BurnTime or None
        None if neither is known: such a burn cannot be planned.

    Raises
    ------
    ValueError
        If `soak` or `wick_area` is not positive.

    Notes
    -----
    Source: practitioners' guides (common practice); NUREG-1805, mass over burning rate.
    """
    found = []
    for entry in data("burn_times.json")["times"]:
        if entry["fuel"] == fuel.name:
            origin = source(entry["source"])
            found.append((float(entry["low"]), cited(origin, mark_of(entry, origin))))
    if soak is not None and wick_area is not None and fuel.pool_fire is not None:
        if not soak > 0 or not wick_area > 0:
            raise ValueError("soak and wick_area must be positive")
        row = pool_fires()[fuel.pool_fire]
        rate = pool_burning_rate(wick_area, mass_flux=row.mass_flux, absorption=row.absorption)
        found.append((soak / float(rate), f"soaked mass over burning rate, {row.source.citation}"))
    if not found:
        return None
    seconds, origin_text = min(found)
    return BurnTime(seconds=seconds, basis="default", source=origin_text)
