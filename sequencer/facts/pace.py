"""Published walking speeds and reaction times."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from sequencer.facts.sources import Source, data, source
from sequencer.units import rounded_up


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
    """Time for a watching person to react and arrive [s], once they have seen what is wrong.

    Parameters
    ----------
    distance : float
        Walking distance [m].
    speed : float, optional
        [m/s]; default: the slow walk. A slower walk gives a longer time, so this is the safe side for a rescuer; a speed
        that is published for keeping people *from* a hazard, such as the brisk walk of 1.6 m/s, is on the other side.

    Raises
    ------
    ValueError
        If the distance is negative or the speed not positive.

    Notes
    -----
    Source: reaction 0.231 s, Woods et al. 2015; slow walk 3.5 ft/s, pedestrian design speed (LaPlante and Kaeser 2007).
    The reaction is the mean of healthy adults who expect a light: seeing that a sleeve burns takes longer, and is not in it.
    """
    pace = slow_walk().speed if speed is None else speed
    if not distance >= 0 or not pace > 0:
        raise ValueError(f"distance must be ≥ 0 and speed > 0, got {distance!r} and {pace!r}")
    return reactions()["visual"].seconds + distance / pace


def reach_in(seconds: float, *, speed: float | None = None) -> float:
    """Distance that a watching person can cover in a given time [m]; 0 before the reaction time is over.

    Source: inverse of `response_seconds`.
    """
    pace = slow_walk().speed if speed is None else speed
    return max(0.0, (seconds - reactions()["visual"].seconds) * pace)


def walk_words(distance: float) -> str:
    """A rescuer's walk in words: its length, and how long it takes briskly and slowly; everything rounded up."""
    brisk = rounded_up(response_seconds(distance, speed=brisk_walk().speed))
    slow = rounded_up(response_seconds(distance))
    return f"walk {rounded_up(distance, 1):.1f} m: {brisk:.0f} s brisk, {slow:.0f} s slow"


def slow_walk() -> Speed:
    """The walk by which a rescuer's time is judged."""
    return speeds()["pedestrian"]


def brisk_walk() -> Speed:
    """The walk of somebody in a hurry; never what a time is judged by."""
    return speeds()["approach"]
