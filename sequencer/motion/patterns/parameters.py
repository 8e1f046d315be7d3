"""Parameters of patterns: names, limits, and parsing of the values that people write."""

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import product
from math import isfinite, nan
from typing import Literal, TypeAlias

from sequencer import units

ParameterValue: TypeAlias = float | int | str
Kind: TypeAlias = Literal["length", "angle", "ratio", "count", "choice"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Parameter:
    """One parameter; lengths in metres, angles in degrees."""

    name: str
    kind: Kind
    default: ParameterValue | None  # None: taken from the prop
    help: str
    low: float = 0.0
    high: float = 0.0
    choices: tuple[ParameterValue, ...] = ()

    @property
    def unit(self) -> str:
        """m, degrees, or nothing."""
        return {"length": "m", "angle": "degrees"}.get(self.kind, "")

    @property
    def range_words(self) -> str:
        """The allowed values as text."""
        if self.kind == "choice":
            return ", ".join(str(choice) for choice in self.choices)
        unit = f" {self.unit}" if self.unit else ""
        return f"{self.low:g} … {self.high:g}{unit}"

    def read(self, given: object) -> ParameterValue:
        """Parse a value written by a person.

        Raises
        ------
        ValueError
            If it is not a valid value, or out of range; the message says what is allowed.
        """
        if self.kind == "choice":
            for choice in self.choices:
                if str(given).strip().removeprefix("+") == str(choice):
                    return choice
            raise ValueError(f"{self.name} must be one of {self.range_words}, got {given!r}")
        if isinstance(given, bool) or not isinstance(given, int | float | str):
            raise ValueError(f"{self.name} must be a number, got {given!r}")
        value = self._number(given)
        if self.kind == "count" and value != int(value):
            raise ValueError(f"{self.name} must be a whole number, got {given}")
        if not self.low <= value <= self.high:
            raise ValueError(f"{self.name} must be {self.range_words}, got {given}")
        return int(value) if self.kind == "count" else value

    def _number(self, given: float | str) -> float:
        try:
            if self.kind == "length":
                return units.quantity(given, units.LENGTHS, default="m")
            if self.kind == "angle":
                return units.quantity(given, units.ANGLES, default="°")
        except ValueError as error:
            raise ValueError(f"{self.name}: {error}") from None
        try:
            top, slash, bottom = str(given).partition("/")
            value = float(top) / float(bottom) if slash else float(top)
        except (ValueError, ZeroDivisionError):
            value = nan
        if not isfinite(value):
            example = "-3 or 3/2" if self.kind == "ratio" else "4"
            raise ValueError(f"{self.name} must be a number such as {example}, got {given!r}")
        return value


@dataclass(frozen=True, slots=True)
class Free:
    """Values worth trying for a parameter left open.

    Parameters
    ----------
    name : str
        Name of the parameter.
    values : tuple
        The usual value first, then further away; for a length with `share`, as fractions of its default.
    props : tuple of str
        Kinds of prop these apply to; if empty, to all kinds not covered by an earlier entry for that
        parameter, and a pattern's own default is then tried first.
    share : bool
        Whether the values are fractions of the pattern's default.
    """

    name: str
    values: tuple[ParameterValue, ...]
    props: tuple[str, ...] = ()
    share: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class OffsetLimits:
    """How far a pattern's centre may be moved while it still matches its name.

    Parameters
    ----------
    across, ahead, up : tuple of float
        Lowest and highest offset [m].
    """

    across: tuple[float, float] = (-0.2, 0.4)
    ahead: tuple[float, float] = (-0.3, 0.4)
    up: tuple[float, float] = (-0.4, 0.3)


def combinations(
    free: Iterable[Free], allowed: Iterable[Parameter], *, prop: str, most: int = 40
) -> list[dict[str, ParameterValue]]:
    """Combinations of values to try, the most usual first.

    Parameters
    ----------
    free : iterable of Free
    allowed : iterable of Parameter
        Parameters that may still be set; the rest of `free` is ignored.
    prop : str
        Kind of prop.
    most : int
        Maximum number.

    Returns
    -------
    combinations : list of dict
        Ordered by total distance from the usual values, counted in list positions, the first parameters
        changing last.

    Notes
    -----
    Design choice of this project: deterministic and independent of the order of `allowed`.
    """
    table = {parameter.name: parameter for parameter in allowed}
    lists: dict[str, list[ParameterValue]] = {}
    for each in free:
        if each.name not in table or each.name in lists or (each.props and prop not in each.props):
            continue
        default = table[each.name].default
        values = list(each.values)
        if each.share:
            values = [round(float(value) * float(default or 0.0), 6) for value in each.values]
        elif not each.props and default is not None:
            values = [default, *(value for value in values if value != default)]
        lists[each.name] = values
    places = product(*(range(len(values)) for values in lists.values()))
    ranked = sorted(places, key=lambda place: (sum(place), place))[:most]
    return [
        {name: values[k] for (name, values), k in zip(lists.items(), place, strict=True)}
        for place in ranked
    ]


def read_all(
    given: Mapping[str, object], allowed: Iterable[Parameter], *, of: str, fixed: Iterable[str] = ()
) -> dict[str, ParameterValue | None]:
    """The value of every allowed parameter: as given, or its default.

    Raises
    ------
    ValueError
        If a name is unknown (the message suggests near matches), or a value is out of range.
    """
    table = {parameter.name: parameter for parameter in allowed}
    for name in given:
        if name in table:
            continue
        if name in set(fixed):
            raise ValueError(f"{of} has a fixed {name}; it cannot be set")
        raise ValueError(f"{of} has no parameter {name!r}{nearest(name, table)}")
    return {
        name: parameter.read(given[name]) if name in given else parameter.default
        for name, parameter in table.items()
    }


def nearest(name: str, names: Iterable[str]) -> str:
    """A hint with the known names closest to a wrong one, to append to a message."""
    known = list(names)
    close = difflib.get_close_matches(str(name).lower(), known, n=3, cutoff=0.5)
    if close:
        return f"; did you mean {' or '.join(close)}?"
    return f"; write one of: {', '.join(known)}" if 0 < len(known) <= 12 else ""
