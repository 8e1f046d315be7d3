"""Values as the show file writes them: in its unit, with as many places as a person measures."""

import re
from typing import Any

from sequencer.units import ANGLES, LENGTHS, quantity

_UNIT = re.compile(r"[^\d.,\s+-][^\d]*$")
_PLACES = {"m": 2, "cm": 0, "mm": 0, "km": 5, "ft": 2, "in": 1}


def length_like(pattern: Any, metres: float) -> Any:
    """A length [m] in the unit of another value of the file: "30 cm" stays in centimetres, a bare number bare.

    Parameters
    ----------
    pattern : str or float
        The value that it replaces, or one beside it.
    metres : float
        To the centimetre, if the unit is metric.
    """
    unit = unit_of(pattern, LENGTHS)
    if unit is None:
        return plain(round(metres, 2))
    number = round(metres / LENGTHS[unit], _PLACES.get(unit, 1))
    if unit == "m":
        return f"{number:.2f} m"
    return f"{plain(number):g} {unit}"


def angle_like(pattern: Any, degrees: float) -> Any:
    """An angle [degrees] written as another value of the file."""
    unit = unit_of(pattern, ANGLES)
    number = plain(round(degrees, 3))
    return number if unit is None else f"{number:g}{'' if unit == '°' else ' '}{unit}"


def unit_of(value: Any, units: dict[str, float]) -> str | None:
    """The unit in which a value is written; None if it is a bare number, or in feet and inches."""
    if not isinstance(value, str):
        return None
    found = _UNIT.search(value.strip())
    unit = None if found is None else found[0].strip()
    if unit not in units:
        return None
    try:
        quantity(value, units, default=unit)
    except ValueError:
        return None
    return unit


def plain(value: float) -> float | int:
    """A number without needless places."""
    return int(value) if float(value).is_integer() else round(float(value), 6)


def shown(value: float | str) -> str:
    """A written length as a person reads it, with a unit in any case."""
    try:
        return f"{float(value):.2f} m"
    except ValueError:
        return str(value)
