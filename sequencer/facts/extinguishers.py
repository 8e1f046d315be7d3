"""Extinguishers: ratings, travel distances, and whether one meets what a rule asks.

Two rating schemes live side by side and are never compared: the North American one (2-A:10-B:C, UL
711 steps) and the European one (13A 113B, EN 3 steps). Steps from memory.

Sources: NFPA 10 as told by trade articles (read second-hand).
"""

import re
from dataclasses import dataclass
from functools import cache
from typing import Literal

from sequencer.facts.sources import Mark, Source, data, mark_of, source

Scheme = Literal["UL", "EN 3"]
_PART = re.compile(r"(\d+)?-?([ABCFK])")
_WATER = ("water", "foam", "wet")


@dataclass(frozen=True, slots=True, kw_only=True)
class Rating:
    """What an extinguisher is rated for."""

    scheme: Scheme
    a: int = 0
    b: int = 0
    c: bool = False

    def __str__(self) -> str:
        joint = "-" if self.scheme == "UL" else ""
        parts = [f"{self.a}{joint}A"] if self.a else []
        parts += [f"{self.b}{joint}B"] if self.b else []
        parts += ["C"] if self.c else []
        return (":" if self.scheme == "UL" else " ").join(parts)

    def meets(self, asked: "Rating") -> bool | None:
        """True if it is at least as good; None where the schemes differ, which nobody can compare."""
        if self.scheme != asked.scheme:
            return None
        return self.a >= asked.a and self.b >= asked.b and self.c >= asked.c


@dataclass(frozen=True, slots=True, kw_only=True)
class Travel:
    """Longest walk to an extinguisher."""

    hazard: str
    rating: str
    distance: float  # [m] along the walking path
    printed: str
    source: Source
    mark: Mark


def parse_rating(text: str) -> Rating:
    """The rating written on an extinguisher.

    Parameters
    ----------
    text : str
        `2-A:10-B:C`, `2A-10BC`, `3A10BC`, `13A 113B C`.

    Raises
    ------
    ValueError
        If it is no rating, or its numbers belong to neither scheme.
    """
    letters = re.sub(r"[\s:;,/]", "", text.upper())
    parts = _PART.findall(letters)
    whole = "".join(f"{number}{letter}" for number, letter in parts)
    if not parts or whole != letters.replace("-", ""):
        raise ValueError(f"{text!r} is no extinguisher rating, such as 2-A:10-B:C or 13A 113B")
    sizes = {letter: int(number or 0) for number, letter in parts}
    a, b = sizes.get("A", 0), sizes.get("B", 0)
    if not a and not b:
        raise ValueError(f"{text!r} names no size for class A or B, such as 2-A:10-B:C")
    steps = data("extinguishers.json")
    c = "C" in sizes
    if a in (0, *steps["ul_a"]) and b in (0, *steps["ul_b"]):
        return Rating(scheme="UL", a=a, b=b, c=c)
    if a in (0, *steps["en3_a"]) and b in (0, *steps["en3_b"]):
        return Rating(scheme="EN 3", a=a, b=b, c=c)
    raise ValueError(f"{text!r} has sizes of no rating scheme; copy it from the label")


def is_water(kind: str) -> bool:
    """True for an extinguisher filled with water, foam or another wet agent."""
    return any(word in kind.casefold() for word in _WATER)


@cache
def travels() -> tuple[Travel, ...]:
    """Travel distances by hazard."""
    table = []
    for entry in data("extinguishers.json")["travel"]:
        origin = source(entry["source"])
        fields = {key: entry[key] for key in ("hazard", "rating", "distance", "printed")}
        table.append(Travel(**fields, source=origin, mark=mark_of(entry, origin)))
    return tuple(table)


def hazard_of_volume(volume: float) -> Literal["light", "ordinary", "extra"]:
    """Class B hazard of the liquid on hand [m³].

    Raises
    ------
    ValueError
        If the volume is negative.

    Notes
    -----
    Source: NFPA 10 as told by a trade catalogue (read second-hand, the last class is cut there).
    """
    if not volume >= 0:
        raise ValueError(f"volume must not be negative, got {volume!r}")
    edges = data("extinguishers.json")["hazard_by_volume"]
    if volume < edges["light_below"]:
        return "light"
    return "ordinary" if volume <= edges["ordinary_below"] else "extra"


def allowed_travel(rating: Rating, volume: float) -> Travel | None:
    """Longest walk that a class B rating allows for the liquid on hand; None where it is too small.

    Source: NFPA 10 table (light: read second-hand, its columns are ambiguous in the copy; ordinary
    and extra: from memory). European ratings are not in that table and give None.
    """
    hazard = f"B {hazard_of_volume(volume)}"
    best: Travel | None = None
    for travel in travels():
        if travel.hazard != hazard or rating.scheme != "UL":
            continue
        if rating.b >= parse_rating(travel.rating).b and (
            best is None or travel.distance > best.distance
        ):
            best = travel
    return best
