"""Build steps as a teacher says them: where the hand is by the clock, which way the poi goes round, and what to do next.

The clock is the hand's circle as its usual viewer sees it: the wall plane from behind (as the performer sees it), the wheel
plane from the performer's right, the floor plane from above with 12 ahead. Common practice.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.patterns.build_steps import Station
from sequencer.motion.patterns.planes import plane_words

_VIEWS = (
    ("from your right", (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),  # by the axis of the hand's circle
    ("as you see it", (1.0, 0.0, 0.0), (0.0, 0.0, 1.0)),
    ("from above", (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
)
_SWINGS = {
    (0, 1): "out to the right", (0, -1): "across to the left", (1, 1): "out in front",
    (1, -1): "back towards you", (2, 1): "up and over", (2, -1): "down and under",
}  # fmt: skip
_HOURS = (
    "twelve", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
)  # fmt: skip
_WHOLE = " o’clock"
_MIDDLE = "the middle"
_TILTED = 10.0  # [degrees] off one of the three planes
_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class StepWords:
    """One build step in words."""

    hand: str  # "5 o'clock", "half past four"
    way: str  # "forward": which way the poi goes round
    plane: str  # "wheel plane", with its tilt
    then: str  # what to do to get to the next step; empty at the last


@dataclass(frozen=True, slots=True, kw_only=True)
class FoldedStep:
    """A station of one round of the hand, and the same place in the second round if the poi is otherwise there."""

    first: Station
    again: Station | None = None


def clock_view(stations: Sequence[Station]) -> str:
    """From where the clock of the hand's circle is read."""
    return _VIEWS[_axis(stations)][0]


def step_words(stations: Sequence[Station]) -> list[StepWords]:
    """Words for each station.

    Parameters
    ----------
    stations : sequence of Station
        In order, as many as it takes to come back; the last may repeat the first.

    Notes
    -----
    Source: the stations; clock positions to the nearest quarter of an hour, at most 3.75 degrees off. The way the poi swings
    is its direction of motion as it leaves the station, by the nearest of six directions. Common practice.
    """
    out = []
    middle, axis = _middle(stations), _axis(stations)
    for k, station in enumerate(stations):
        after = stations[k + 1] if k + 1 < len(stations) else None
        way, plane = _plane(station)
        then = "" if after is None else _then(station, after, middle, axis)
        hand = _clock(station.hand - middle, axis)
        out.append(StepWords(hand=hand, way=way, plane=plane, then=then))
    return out


def folded_steps(stations: Sequence[Station]) -> list[FoldedStep]:
    """One round of the hand; a second round is folded into it, and told only where the poi is otherwise.

    Parameters
    ----------
    stations : sequence of Station
        The last repeats the first.
    """
    rounds = max(stations[-2].cycle, 1) if len(stations) > 1 else 1
    once = (len(stations) - 1) // rounds if rounds > 1 else len(stations) - 1
    steps = []
    for k in range(once):
        first = stations[k]
        again = stations[k + once] if rounds > 1 else None
        is_same = again is None or (
            np.linalg.norm(first.tether - again.tether) < _SAME
            and np.linalg.norm(first.plane - again.plane) < _SAME
        )
        steps.append(FoldedStep(first=first, again=None if is_same else again))
    return steps


def started_at(stations: Sequence[Station], shift: float) -> list[Station]:
    """Stations from the first at or after a beat of the pattern on, counted from that beat, once through.

    Parameters
    ----------
    stations : sequence of Station
        From the beginning of the pattern; the last repeats the first.
    shift : float [beats]
        How far into the pattern it is begun.
    """
    period, count = stations[-1].beat, len(stations) - 1
    begun = shift % period
    first = next((k for k in range(count) if stations[k].beat >= begun - 1e-9), 0)
    rounds = stations[-2].cycle if count else 1
    out = []
    for k in range(count + 1):
        at = first + k
        station = stations[at % count]
        beat = station.beat + period * (at // count) - begun
        if beat < -1e-9:  # the first station after the shift is the first of the next time through
            beat += period
        cycle = min(k * rounds // count + 1, rounds)
        out.append(replace(station, number=k + 1, beat=beat, cycle=cycle))
    return out


def spoken_count(beat: float) -> str:
    """A moment as it is counted from the start of a move: 1, "1 and"; a fraction where nobody counts.

    Parameters
    ----------
    beat : float [beats]
        From the start, which is counted as 1.
    """
    count = round(beat + 1, 6)
    whole, rest = int(count + 1e-6), count - int(count + 1e-6)
    if abs(rest) < 1e-3:
        return str(whole)
    if abs(rest - 0.5) < 1e-3:
        return f"{whole} and"
    return f"{count:.2f}".rstrip("0")


def _middle(stations: Sequence[Station]) -> Floats:
    """Middle of the hand's circle, from stations that go once round, shape (3,) [m, body frame]."""
    hands = np.array([station.hand for station in stations])
    return np.asarray(hands[:-1].mean(axis=0) if len(hands) > 1 else hands[0])


def _axis(stations: Sequence[Station]) -> int:
    """Which axis the hand's circle turns about: 0 the wheel plane, 1 the wall plane, 2 the floor plane."""
    hands = np.array([station.hand for station in stations])
    return int(np.argmin(np.ptp(hands, axis=0)))


def hand_words(place: str) -> str:
    """Where the hand is: "hand at 5 o'clock", "hand at half past four", "hand in the middle"."""
    return f"hand {'in' if place == _MIDDLE else 'at'} {place}"


def _clock(away: Floats, axis: int) -> str:
    _, right, up = _VIEWS[axis]
    x, y = float(away @ np.array(right)), float(away @ np.array(up))
    if np.hypot(x, y) < 1e-6:
        return _MIDDLE
    return clock_words(float(np.degrees(np.arctan2(y, x))))


def clock_words(angle: float) -> str:
    """A place on a circle as the hour hand would point to it: "5 o'clock", "half past four", "quarter to five".

    Parameters
    ----------
    angle : float [degrees]
        As its viewer sees it: 0 to the right, which is 3 o'clock, growing anticlockwise.
    """
    hour, quarter = divmod(round((90.0 - angle) / 7.5), 4)
    this, following = _HOURS[hour % 12], _HOURS[(hour + 1) % 12]
    whole = f"{(hour - 1) % 12 + 1}{_WHOLE}"
    return (whole, f"quarter past {this}", f"half past {this}", f"quarter to {following}")[quarter]


def clocks_words(places: Sequence[str]) -> str:
    """Places by the clock in their order: "6, 4, 2 o'clock", "6 o'clock, half past four, 3 o'clock".

    Parameters
    ----------
    places : sequence of str
        As `clock_words` says them.
    """
    if all(place.endswith(_WHOLE) for place in places):
        return ", ".join(place.removesuffix(_WHOLE) for place in places) + _WHOLE
    return ", ".join(places)


def _plane(station: Station) -> tuple[str, str]:
    """Which way the poi goes round, and its plane with any tilt."""
    seen = plane_words(_nearest(station.plane))
    plane, _, way = seen.partition(", ")
    tilt = float(np.degrees(np.arccos(min(np.max(np.abs(station.plane)), 1.0))))
    return way, f"{plane}, tilted {tilt:.0f}°" if tilt > _TILTED else plane


def _nearest(plane: Floats) -> Floats:
    """The nearest of the six planes with a direction."""
    k = int(np.argmax(np.abs(plane)))
    out = np.zeros(3)
    out[k] = np.sign(plane[k])
    return out


def _then(station: Station, after: Station, middle: Floats, axis: int) -> str:
    way, plane = _plane(after)
    leaves = np.cross(station.plane, station.tether)
    k = int(np.argmax(np.abs(leaves)))
    swing = _SWINGS[k, 1 if leaves[k] > 0 else -1]
    same = float(station.plane @ after.plane) > np.cos(np.radians(_TILTED))
    hand = f"hand to {_clock(after.hand - middle, axis)}"
    if same:
        return f"{hand}; poi carries on, {plane}"
    return f"{hand}; poi swings {swing} into the {plane}, {way}"
