"""Lengths, masses and the like as people write them: "1.8 m", "6 ft", "200 g" → SI.

A point is always the decimal mark where it stands alone. A comma is one too ("1,8 m"), but before
exactly three digits it may also part thousands ("1,500 mm"): such a number is refused. What only
parts thousands is read: "1 500 mm", "1,500.5 mm", "1.500,5 mm", "1,500,000".

Source of the factors: international yard and pound agreement of 1959 (exact); NIST SP 811.
"""

import math
import re

_SPACES = " \u00a0\u2009\u202f"  # plain, no-break, thin, narrow no-break
_NUMBER = re.compile(
    rf"^\s*([-+]?)(\d(?:[\d.,{_SPACES}]*[\d.,])?|[.,]\d+)([eE][-+]?\d+)?\s*([^\d\s].*?)?\s*$"
)
_DECIMAL = re.compile(r"^\d*[.,]?\d*$")
_TWO_WAYS = re.compile(r"^[1-9]\d{0,2},\d{3}$")
_THOUSANDS = re.compile(
    rf"^[1-9]\d{{0,2}}(?:([.,{_SPACES}])\d{{3}})(?:\1\d{{3}})*(?:(?!\1)[.,]\d+)?$"
)
_FEET_INCHES = re.compile(r"^\s*(\d+)\s*(?:ft|')\s*(\d+(?:\.\d+)?)\s*(?:in|\")\s*$")

LENGTHS = {
    "m": 1.0,
    "cm": 0.01,
    "mm": 0.001,
    "km": 1000.0,
    "ft": 0.3048,
    "in": 0.0254,
    "'": 0.3048,
    '"': 0.0254,
}
MASSES = {"kg": 1.0, "g": 0.001, "lb": 0.45359237, "oz": 0.028349523125}
VOLUMES = {"L": 0.001, "l": 0.001, "mL": 1e-6, "ml": 1e-6, "gal": 3.785411784e-3, "m³": 1.0}
AREAS = {"m²": 1.0, "m2": 1.0, "ft²": 0.3048**2, "ft2": 0.3048**2}
DURATIONS = {"s": 1.0, "ms": 0.001, "min": 60.0, "h": 3600.0}
SPEEDS = {"m/s": 1.0, "km/h": 1 / 3.6, "mph": 0.44704, "kn": 1852 / 3600}
ANGLES = {"°": 1.0, "deg": 1.0, "degrees": 1.0}


def quantity(text: str | float, units: dict[str, float], *, default: str) -> float:
    """The value of `text` in SI (degrees for angles).

    Parameters
    ----------
    text : str or float
        A number, or a number and a unit.
    units : dict
        Factor of each unit, one of the tables of this module.
    default : str
        The unit of a bare number.

    Returns
    -------
    value : float

    Raises
    ------
    ValueError
        If it is no finite number, can be read as two numbers (both are named), or the unit is unknown
        (says which units there are).

    Examples
    --------
    >>> quantity("1,8 m", LENGTHS, default="m")
    1.8
    """
    if isinstance(text, bool):
        raise ValueError(f"{text!r} is not a number")
    if isinstance(text, int | float):
        value, unit = float(text), default
    else:
        both = _FEET_INCHES.match(text)
        if both and units is LENGTHS:
            return int(both[1]) * LENGTHS["ft"] + float(both[2]) * LENGTHS["in"]
        match = _NUMBER.match(text)
        if not match:
            raise ValueError(f"{text!r} is not a number with a unit, such as {example(units)}")
        value, unit = (
            float(match[1] + _plain(match, text, units) + (match[3] or "")),
            match[4] or default,
        )
    if unit not in units:
        raise ValueError(f"unit {unit!r} of {text!r} is not known; use one of {', '.join(units)}")
    value *= units[unit]
    if not math.isfinite(value):
        raise ValueError(f"{text!r} is not a finite number")
    return value


def _plain(match: re.Match[str], text: str, units: dict[str, float]) -> str:
    """The digits of a number with a point as the only mark."""
    sign, digits, power, unit = (part or "" for part in match.groups())
    if _TWO_WAYS.match(digits):
        tail = power + (f" {unit}" if unit else "")
        ways = [sign + digits.replace(",", mark) + tail for mark in ("", ".")]
        raise ValueError(
            f"{text.strip()!r} can be read as {' or as '.join(ways)}; write one of these, without the comma"
        )
    if _DECIMAL.match(digits):
        return digits.replace(",", ".")
    if not _THOUSANDS.match(digits):
        raise ValueError(f"{text!r} is not a number with a unit, such as {example(units)}")
    marks = re.sub(r"\d", "", digits)
    whole, point, rest = digits.rpartition(marks[-1] if marks[-1] != marks[0] else "\0")
    return re.sub(r"\D", "", whole) + ("." if point else "") + re.sub(r"\D", "", rest)


def example(units: dict[str, float]) -> str:
    """A sample value in the first unit of a table, for messages."""
    return f"'1.5 {next(iter(units))}'"
