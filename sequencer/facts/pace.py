"""Published walking speeds and reaction times."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from sequencer.facts.sources import Source, data, source


@dataclass(frozen=True, slots=True, kw_only=True)
class Speed:
    """A walking or reaching speed."""

    name: str
    speed: float  # [m/s]
    what: str
    source: Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Reaction:
    """A simple reaction time."""

    name: str
    seconds: float  # [s]
    what: str
    source: Source


@cache
def speeds() -> Mapping[str, Speed]:
    """Speeds by name."""
    return {
        entry["name"]: Speed(**{**entry, "source": source(entry["source"])})
        for entry in data("pace.json")["speeds"]
    }


@cache
def reactions() -> Mapping[str, Reaction]:
    """Reaction times by name."""
    return {
        entry["name"]: Reaction(**{**entry, "source": source(entry["source"])})
        for entry in data("pace.json")["reactions"]
    }


def response_seconds(distance: float, *, speed: float | None = None) -> float:
    """Time for a watching person to notice, react and arrive [s].

    Parameters
    ----------
    distance : float
        Walking distance [m].
    speed : float, optional
        [m/s]; default: the walking approach speed.

    Raises
    ------
    ValueError
        If the distance is negative or the speed not positive.

    Notes
    -----
    Source: reaction 0.231 s, Woods et al. 2015; approach 1.6 m/s, EN ISO 13855:2010. The mean of healthy
    adults who expect the signal: a real spotter is slower, so a limit needs a margin.
    """
    pace = speeds()["approach"].speed if speed is None else speed
    if not distance >= 0 or not pace > 0:
        raise ValueError(f"distance must be ≥ 0 and speed > 0, got {distance!r} and {pace!r}")
    return reactions()["visual"].seconds + distance / pace


def reach_in(seconds: float, *, speed: float | None = None) -> float:
    """Distance that a watching person can cover in a given time [m]; 0 before the reaction time is over.

    Source: inverse of `response_seconds`.
    """
    pace = speeds()["approach"].speed if speed is None else speed
    return max(0.0, (seconds - reactions()["visual"].seconds) * pace)
