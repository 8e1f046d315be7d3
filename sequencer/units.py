"""Quantities as people write them ("1.8 m", "6 ft", "200 g"), converted to SI, and counts in words ("1 beat").

A point is always the decimal mark where it stands alone. A comma is one too ("1,8 m"), but before
exactly three digits it may also be a thousands separator ("1,500 mm"): such a number is refused.
Unambiguous thousands separators are accepted: "1 500 mm", "1,500.5 mm", "1.500,5 mm", "1,500,000".

Source of the factors: international yard and pound agreement of 1959 (exact); NIST SP 811.
"""

import math
import re
from dataclasses import dataclass
from fractions import Fraction

_POSITION = re.compile(r"(-?\d+)\.(\d+)(?:\+(\d+/\d+|\.\d+))?")  # bar.beat, and a part of a beat
_SPACES = " \u00a0\u2009\u202f"  # plain, no-break, thin, narrow no-break
_DIGITS = rf"\d(?:[\d.,{_SPACES}]*[\d.,])?|[.,]\d+"
_NUMBER = re.compile(rf"^\s*([-+]?)({_DIGITS})([eE][-+]?\d+)?\s*([^\d\s].*?)?\s*$")
_DECIMAL = re.compile(r"^\d*[.,]?\d*$")
_TWO_WAYS = re.compile(r"^[1-9]\d{0,2},\d{3}$")
_THOUSANDS = re.compile(
    rf"^[1-9]\d{{0,2}}(?:([.,{_SPACES}])\d{{3}})(?:\1\d{{3}})*(?:(?!\1)[.,]\d+)?$"
)
_FEET_INCHES = re.compile(rf"^\s*([-+]?)({_DIGITS})\s*(?:ft|')\s*({_DIGITS})\s*(?:in|\")\s*$")
_FEET_BARE = re.compile(rf"^\s*([-+]?)({_DIGITS})'\s*({_DIGITS})\s*$")  # 5'11

_INCHES = 12  # in a foot
_EXACT = 1e-6  # of the last decimal: what differs by less is the same number

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


class QuantityError(ValueError):
    """A quantity that cannot be used, where the message can say how to mend it.

    Parameters
    ----------
    what, mend : str
        What is wrong, and how to mend it; also the attributes.
    """

    def __init__(self, what: str, mend: str) -> None:
        super().__init__(what, mend)
        self.what, self.mend = what, mend

    def __str__(self) -> str:
        return f"{self.what}; {self.mend}"


def quantity(text: str | float, units: dict[str, float], *, default: str) -> float:
    """The value of `text` in SI (degrees for angles).

    Parameters
    ----------
    text : str or float
        A number, with or without a unit.
    units : dict
        Factor for each unit; one of the tables in this module.
    default : str
        The unit assumed for a bare number.

    Returns
    -------
    value : float

    Raises
    ------
    ValueError
        If it is not a finite number, can be read as two numbers (the message gives both), or the unit is
        unknown (the message lists the units).

    Examples
    --------
    >>> quantity("1,8 m", LENGTHS, default="m")
    1.8
    """
    if isinstance(text, bool):
        raise ValueError(f"{text!r} is not a number")
    if isinstance(text, int | float):
        try:
            value, unit = float(text), default
        except OverflowError:  # a whole number of some 310 digits
            value, unit = math.inf, default
    elif not isinstance(text, str):  # a file may hold anything
        what = "a number is missing" if text is None else "this is not a number with a unit"
        raise ValueError(f"{what}, such as {example(units)}")
    else:
        both = _FEET_INCHES.match(text) or _FEET_BARE.match(text)
        if both and units.keys() >= {"ft", "in"}:
            return _finite(_feet_inches(both, text, units), text)
        match = _NUMBER.match(text)
        if not match:
            raise ValueError(f"{text!r} is not a number with a unit, such as {example(units)}")
        value, unit = (
            float(match[1] + _plain_number(match, text, units) + (match[3] or "")),
            match[4] or default,
        )
    if unit not in units:
        raise QuantityError(
            f"unit {unit!r} of {text!r} is not known", f"use one of {', '.join(units)}"
        )
    return _finite(value * units[unit], text)


def _finite(value: float, text: str | float) -> float:
    if not math.isfinite(value):
        raise ValueError(f"{text!r} is not a finite number")
    return value


def _feet_inches(match: re.Match[str], text: str, units: dict[str, float]) -> float:
    """Feet and inches; where nothing says that the second number is inches, it is less than a foot."""
    sign, feet, inches = match.groups()
    if not feet.isdecimal():
        raise QuantityError(
            f"{text.strip()!r} does not have a whole number of feet",
            "write feet and inches as '5 ft 7 in'",
        )
    more = float(_plain(inches, text, units, before=f"{sign}{feet} ft ", after=" in"))
    if match.re is _FEET_BARE and more >= _INCHES:
        raise QuantityError(
            f"{text.strip()!r} has {inches} inches, and {_INCHES} make a foot",
            "write feet and inches as '5 ft 7 in', or metres as '1.70 m'",
        )
    size = float(feet) * units["ft"] + more * units["in"]
    return -size if sign == "-" else size


def _plain_number(match: re.Match[str], text: str, units: dict[str, float]) -> str:
    sign, digits, power, unit = (part or "" for part in match.groups())
    return _plain(digits, text, units, before=sign, after=power + (f" {unit}" if unit else ""))


def _plain(
    digits: str, text: str, units: dict[str, float], *, before: str = "", after: str = ""
) -> str:
    """The digits of a number with a point as the only mark; `before` and `after` complete it in a message."""
    if _TWO_WAYS.match(digits):
        ways = [before + digits.replace(",", mark) + after for mark in ("", ".")]
        raise QuantityError(
            f"{text.strip()!r} can be read as {' or as '.join(ways)}",
            "write one of these, without the comma",
        )
    if _DECIMAL.match(digits):
        return digits.replace(",", ".")
    if not _THOUSANDS.match(digits):
        raise ValueError(f"{text!r} is not a number with a unit, such as {example(units)}")
    marks = re.sub(r"\d", "", digits)
    whole, point, rest = digits.rpartition(marks[-1] if marks[-1] != marks[0] else "\0")
    return re.sub(r"\D", "", whole) + ("." if point else "") + re.sub(r"\D", "", rest)


def rounded_up(value: float, decimals: int = 0) -> float:
    """The nearest value of some decimals that is not smaller; one that is exact but for rounding stays as it is."""
    return math.ceil(value * 10.0**decimals - _EXACT) / 10.0**decimals + 0.0


def rounded_down(value: float, decimals: int = 0) -> float:
    """The nearest value of some decimals that is not larger; one that is exact but for rounding stays as it is."""
    return math.floor(value * 10.0**decimals + _EXACT) / 10.0**decimals + 0.0


def counted(count: float, one: str, many: str = "") -> str:
    """A count and its noun: "1 beat", "2 beats", "1.5 beats".

    Parameters
    ----------
    count : float
    one : str
        The noun for one.
    many : str, optional
        The noun for more; `one` with an s if not given.
    """
    shown = f"{count:g}" if isinstance(count, float) else str(count)
    return f"{shown} {one if shown in ('1', '-1') else many or one + 's'}"


def example(units: dict[str, float]) -> str:
    """An example value in the first unit of a table, for messages."""
    return f"'1.5 {next(iter(units))}'"


@dataclass(frozen=True, slots=True, kw_only=True)
class BarLengths:
    """How many beats each bar has: which count comes after the last of a bar."""

    metre: int = 4
    others: tuple[tuple[int, int], ...] = ()  # bars of another number of beats, and that number

    def beats(self, bar: int) -> int:
        """Beats of a bar."""
        return dict(self.others).get(bar, self.metre)


def aloud(position: str, bars: BarLengths, before: str = "") -> str:
    """A bar.beat as it can be counted aloud: to the half beat, which is the "and" of its count.

    Parameters
    ----------
    position : str
        As positions are written (`25.2+1/2`); whatever else stays as it is.
    bars : BarLengths
        Of the song.
    before : str
        What stands before the number, as in "just after bar 25.2".

    Returns
    -------
    said : str
        `25.2`, `the and of 25.2`; `just after 25.2` within a quarter of a beat, `about the and of 25.2` beside the "and", `just
        before 25.3` in the last quarter.
    """
    match = _POSITION.fullmatch(position)
    if match is None:
        return f"{before}{position}"
    bar, beat, rest = int(match[1]), int(match[2]), Fraction(match[3] or 0)
    count = f"{before}{match[1]}.{match[2]}"
    if rest < Fraction(1, 4):
        return f"just after {count}" if rest else count
    if rest > Fraction(3, 4):
        after = f"{bar}.{beat + 1}" if beat < bars.beats(bar) else f"{bar + 1}.1"
        return f"just before {before}{after}"
    return f"the and of {count}" if rest == Fraction(1, 2) else f"about the and of {count}"


def at_aloud(position: str, bars: BarLengths) -> str:
    """When something is, counted aloud: `at 25.2`, `at the and of 25.2`, but `just after 25.2`.

    Parameters
    ----------
    position : str
        As positions are written (`25.2+1/2`).
    bars : BarLengths
        Of the song.
    """
    said = aloud(position, bars)
    return said if said.startswith("just") else f"at {said}"


def length_words(metres: float) -> str:
    """A length in the unit people would use: millimetres under 1 cm, centimetres under 1 m."""
    size = abs(metres)
    if size < 0.00995:
        return f"{1000 * size:.0f} mm"
    return f"{100 * size:.0f} cm" if size < 0.995 else f"{size:.2f} m"
