"""Fuels, their flash points and classes, and the fuels that are refused.

Temperatures are in degrees Celsius. Two schemes are kept apart:
NFPA 30 (classic classes, defined in Fahrenheit) and 29 CFR 1910.106 / GHS (categories, defined in Celsius);
they differ at the limits.

Sources: 29 CFR 1910.106(a)(19) for the categories; NFPA 30 for the classes, IIIB from memory.
"""

import difflib
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any, Literal, cast

from sequencer.facts.sources import Range, Source, data, range_from, source

NfpaClass = Literal["IA", "IB", "IC", "II", "IIIA", "IIIB"]
GhsCategory = Literal[1, 2, 3, 4]


def _exact(fahrenheit: int) -> Fraction:
    return Fraction(fahrenheit - 32) * Fraction(5, 9)


def nfpa_class(flash_point: float, boiling_point: float | None = None) -> NfpaClass:
    """NFPA 30 class of a liquid.

    Parameters
    ----------
    flash_point : float
        Closed cup [°C].
    boiling_point : float, optional
        [°C]; separates IA from IB. Unknown counts as low, so as the worse class.

    Notes
    -----
    Source: NFPA 30, classic classes (read second-hand; IIIB from memory). Limits in exact fractions.
    """
    if flash_point < _exact(73):
        return "IA" if boiling_point is None or boiling_point < _exact(100) else "IB"
    edges: tuple[tuple[int, NfpaClass], ...] = ((100, "IC"), (140, "II"), (200, "IIIA"))
    for edge, name in edges:
        if flash_point < _exact(edge):
            return name
    return "IIIB"


def ghs_category(flash_point: float, boiling_point: float | None = None) -> GhsCategory | None:
    """Category under 29 CFR 1910.106 and GHS; None above 93 °C, where a liquid has no category.

    Parameters
    ----------
    flash_point : float
        Closed cup [°C].
    boiling_point : float, optional
        [°C]; separates 1 from 2. Unknown counts as low, so as the worse category.

    Notes
    -----
    Source: 29 CFR 1910.106(a)(19) (read second-hand). Exact.
    """
    if flash_point < 23:
        return 1 if boiling_point is None or boiling_point <= 35 else 2
    if flash_point <= 60:
        return 3
    return 4 if flash_point <= 93 else None


def is_flammable(flash_point: float) -> bool:
    """True below 37.8 °C (100 °F), where codes separate flammable from combustible liquids.

    Source: NFPA 30 class I; the same split in Canada is from memory.
    """
    return flash_point < _exact(100)


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """Why a liquid is refused."""

    why: str
    source: Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Fuel:
    """A liquid as described by its sources; the user's own data sheet takes precedence."""

    name: str
    title: str
    aliases: tuple[str, ...]
    cas: str
    refused: Refusal | None
    flash_point: Range | None  # [°C] closed cup
    boiling_point: Range | None  # [°C]
    density: Range | None  # [kg/m³]
    explosive_limits: Range | None  # [% of volume in air]
    autoignition: Range | None  # [°C]
    heat_of_combustion: Range | None  # [J/kg] lower or effective
    pool_fire: str | None  # row of the pool-fire table that gives the burning rate
    printed_class: str  # NFPA class as printed in the source
    note: str

    @property
    def nfpa_class(self) -> NfpaClass | None:
        """Class at the lowest known flash point; None if none is known."""
        if self.flash_point is None:
            return None
        boiling = None if self.boiling_point is None else self.boiling_point.lowest
        return nfpa_class(self.flash_point.lowest, boiling)

    @property
    def ghs_category(self) -> GhsCategory | None:
        """Category at the lowest known flash point; None if it has none, or none is known."""
        if self.flash_point is None:
            return None
        boiling = None if self.boiling_point is None else self.boiling_point.lowest
        return ghs_category(self.flash_point.lowest, boiling)

    @property
    def flammable(self) -> bool:
        """True if the flash point is below 37.8 °C or not known."""
        return self.flash_point is None or is_flammable(self.flash_point.lowest)


@cache
def fuels() -> Mapping[str, Fuel]:
    """All fuels by name, including refused ones."""
    return {entry["name"]: _fuel(entry) for entry in data("fuels.json")["fuels"]}


def fuel(name: str) -> Fuel:
    """The fuel with a given name.

    Parameters
    ----------
    name : str
        Name or alias; case and hyphens do not matter.

    Raises
    ------
    ValueError
        If no fuel, or more than one, has that name; the message suggests near matches.
    """
    wanted = _plain(name)
    ambiguous = _ambiguous()
    if wanted in ambiguous:
        raise ValueError(f"{name!r} {ambiguous[wanted]}")
    table = _names()
    if wanted in table:
        return fuels()[table[wanted]]
    near = difflib.get_close_matches(wanted, table, n=3, cutoff=0.6)
    offers = list(dict.fromkeys(table[match] for match in near))
    usable = [found.name for found in fuels().values() if found.refused is None]
    hint = f"did you mean {' or '.join(offers)}" if offers else f"known fuels: {', '.join(usable)}"
    raise ValueError(f"{name!r} is not a fuel this program knows; {hint}")


@cache
def _ambiguous() -> dict[str, str]:
    """What is wrong with names that more than one fuel has; read once, since every flame asks for its fuel."""
    return dict(data("fuels.json")["ambiguous"])


@cache
def _names() -> dict[str, str]:
    table = {}
    for entry in fuels().values():
        for name in (entry.name, *entry.aliases):
            table[_plain(name)] = entry.name
    return table


def _plain(name: str) -> str:
    return " ".join(name.replace("-", " ").replace("_", " ").casefold().split())


def _fuel(entry: Mapping[str, Any]) -> Fuel:
    plain = dict(entry)
    for key in (
        "flash_point",
        "boiling_point",
        "density",
        "explosive_limits",
        "autoignition",
        "heat_of_combustion",
    ):
        plain[key] = range_from(entry[key])
    refused = cast("Mapping[str, str] | None", entry["refused"])
    plain["refused"] = refused and Refusal(why=refused["why"], source=source(refused["source"]))
    plain["aliases"] = tuple(entry["aliases"])
    return Fuel(**plain)
