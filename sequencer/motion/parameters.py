"""Parameters of patterns: what may be set, between which limits, and how a person writes it."""

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import isfinite, nan
from typing import Literal, TypeAlias

from sequencer import units

Value: TypeAlias = float | int | str
Kind: TypeAlias = Literal["length", "angle", "ratio", "count", "choice"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Parameter:
    """One thing that may be set; lengths in metres, angles in degrees."""

    name: str
    kind: Kind
    default: Value | None  # None: taken from the prop
    help: str
    low: float = 0.0
    high: float = 0.0
    choices: tuple[Value, ...] = ()

    @property
    def unit(self) -> str:
        """m, degrees, or nothing."""
        return {"length": "m", "angle": "degrees"}.get(self.kind, "")

    @property
    def range_words(self) -> str:
        """What is allowed, for people."""
        if self.kind == "choice":
            return ", ".join(str(choice) for choice in self.choices)
        unit = f" {self.unit}" if self.unit else ""
        return f"{self.low:g} … {self.high:g}{unit}"

    def read(self, given: object) -> Value:
        """The value of what a person wrote.

        Raises
        ------
        ValueError
            If it is no such value, or out of range; says what is allowed.
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


def read_all(
    given: Mapping[str, object], allowed: Iterable[Parameter], *, of: str, fixed: Iterable[str] = ()
) -> dict[str, Value | None]:
    """Every allowed parameter's value: what was given, else its default.

    Raises
    ------
    ValueError
        If a name is not known (the nearest is offered), or a value is out of range.
    """
    table = {parameter.name: parameter for parameter in allowed}
    for name in given:
        if name in table:
            continue
        if name in set(fixed):
            raise ValueError(f"{of} has its own {name}; it cannot be set")
        raise ValueError(f"{of} has no parameter {name!r}{nearest(name, table)}")
    return {
        name: parameter.read(given[name]) if name in given else parameter.default
        for name, parameter in table.items()
    }


def nearest(name: str, names: Iterable[str]) -> str:
    """A hint at the names that are nearest to a wrong one, to end a message with."""
    known = list(names)
    close = difflib.get_close_matches(str(name).lower(), known, n=3, cutoff=0.5)
    if close:
        return f"; did you mean {' or '.join(close)}?"
    return f"; there are {', '.join(known)}" if 0 < len(known) <= 12 else ""
