"""Build steps: the stations of a toroid in order, and where the planes of neighbours cross.

A station is a half lobe: an in or an out. Its plane passes through the hand with normal n; the planes of
two neighbours meet in a line, and the cross point is the point on that line nearest to the midpoint between
the two hands: there the prop can pass from one plane to the other. Odd pro- and anti-bends return reversed,
so their steps go through both cycles. Frame: body frame [m].
Source: docs/motion.md, sections 3.4 and 3.5; line of two planes, any text on analytic geometry.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.library import Pattern, cycle_beats, find, law_for
from sequencer.motion.patterns.planes import plane_words
from sequencer.motion.patterns.samples import CARD_STATURE

PARALLEL = 1e-6  # sine below which two planes count as parallel


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Station:
    """One half lobe of a toroid."""

    number: int  # from 1
    beat: float
    half: str  # "in" or "out"
    lobe: int  # from 1; an in begins it, an out lies within it
    cycle: int  # from 1
    hand: Floats  # (3,) [m, body frame]
    tether: Floats  # (3,) [1]
    plane: Floats  # (3,) [1]
    place: str  # where the hand is, in words
    performer: str  # plane and direction as seen by the performer
    audience: str  # plane and direction as seen by a facing audience
    turned: float  # [rad] turn of the plane since the previous station; nan at the first
    cross: Floats | None  # (3,) [m, body frame] cross point with the previous station
    cross_words: str
    change: str  # what changes from the previous station


def build_steps(
    name: str,
    parameters: Mapping[str, object],
    *,
    side: Side = "right",
    body: Body | None = None,
    cycle: float | None = None,
    tether: float | None = None,
    book: Mapping[str, Pattern] | None = None,
) -> list[Station]:
    """The stations of a toroid, over as many cycles as it takes to return to the start.

    Parameters
    ----------
    name : str
        Name of a toroid pattern.
    parameters : mapping
    side : {"left", "right"}
    body : Body, optional
        Default: 1.70 m tall.
    cycle : float, optional
        Beats per hand cycle; default: the pattern's.
    tether : float, optional
        Length of the prop [m].
    book : mapping, optional
        Patterns to use instead of the built-in ones.

    Returns
    -------
    stations : list of Station
        The last one repeats the first.

    Raises
    ------
    ValueError
        If the pattern is unknown or not a toroid, or a parameter is out of range.
    """
    pattern = find(name, book)
    span = cycle or cycle_beats(name, parameters, book)

    def law() -> Law:
        return law_for(
            name, parameters, side=side, body=body or Body(stature=CARD_STATURE), beats=span,
            tether=tether, book=book,
        )  # fmt: skip

    if pattern.hand(side).kind.stations:
        return _listed(law(), pattern, side)
    if pattern.hand(side).kind.name != "toroid":
        raise ValueError(
            f"{name} is not a toroid; build steps exist only for toroids and station patterns"
        )
    values = pattern.values(parameters, side)
    danced = law()
    half = span / values["lobes"] / 2
    count = round(danced.period / half)
    at = np.arange(count + 1) * half
    first_in = values["begin"] == "in"
    halves = ["in" if (k % 2 == 0) == first_in else "out" for k in range(len(at))]
    return stations_at(danced, at.tolist(), halves, lobes=int(values["lobes"]), cycle=span)


def _listed(law: Law, pattern: Pattern, side: Side) -> list[Station]:
    """The stations of a station pattern, as it lists them."""
    phase = np.array([point.phase for point in pattern.hand(side).kind.stations])
    beats = (phase - phase[0]) / (phase[-1] - phase[0]) * law.period
    halves = [
        "in" if abs(p % 360 - 180) < 1 else "out" if min(p % 360, 360 - p % 360) < 1 else "between"
        for p in phase.tolist()
    ]
    loops = max(round(float(phase[-1] - phase[0]) / 360), 1)
    return stations_at(law, beats.tolist(), halves, lobes=loops, cycle=law.period)


def stations_at(
    law: Law, beats: list[float], halves: list[str], *, lobes: int, cycle: float
) -> list[Station]:
    """Stations of a law at given beats."""
    motion = law.at(np.array(beats))
    span = law.period if isfinite(law.period) else beats[-1]
    centre = law.at(np.arange(256, dtype=np.float64) * span / 256).hand.mean(axis=0)
    axis = np.cross(motion.hand[0] - centre, motion.hand_rate[0])
    axis = axis / np.linalg.norm(axis)
    found: list[Station] = []
    for k, beat in enumerate(beats):
        n = motion.plane[k]
        before = found[-1] if found else None
        cross = cross_point(before.hand, before.plane, motion.hand[k], n) if before else None
        turned = _angle(before.plane, n) if before else float("nan")
        found.append(
            Station(
                number=k + 1,
                beat=beat,
                half=halves[k],
                lobe=int(np.floor(beat * lobes / cycle + 0.25)) % lobes + 1,
                cycle=int(np.floor(beat / cycle + 1e-9)) + 1,
                hand=motion.hand[k],
                tether=motion.tether[k],
                plane=n,
                place=place_words(motion.hand[k] - centre),
                performer=plane_words(n),
                audience=plane_words(n, eye="audience"),
                turned=turned,
                cross=cross,
                cross_words=_cross_words(cross, centre) if cross is not None else "",
                change=_change(before, motion.hand[k] - centre, axis, n, centre)
                if before
                else "start",
            )
        )
    return found


def cross_point(
    first_hand: Floats, first_plane: Floats, hand: Floats, plane: Floats
) -> Floats | None:
    """Point where the planes of two stations cross, nearest to the midpoint between the hands.

    Parameters
    ----------
    first_hand, hand : ndarray, shape (3,) [m, body frame]
    first_plane, plane : ndarray, shape (3,) [1, body frame]
        Normals.

    Returns
    -------
    point : ndarray or None, shape (3,) [m, body frame]
        None if the planes are parallel.

    Notes
    -----
    Source: intersection of two planes with least squares distance, any text on analytic geometry.
    Exact.
    """
    along = np.cross(first_plane, plane)
    size = float(np.linalg.norm(along))
    if size < PARALLEL:
        return None
    middle = (first_hand + hand) / 2
    rows = np.stack((first_plane, plane, along / size))
    sides = np.array([first_plane @ first_hand, plane @ hand, (along / size) @ middle])
    return np.asarray(np.linalg.solve(rows, sides))


def _angle(a: Floats, b: Floats) -> float:
    return float(2 * np.arctan2(np.linalg.norm(a - b), np.linalg.norm(a + b)))


def place_words(away: Floats) -> str:
    """Position of a hand on its circle, relative to the centre, described in body directions."""
    names = (
        ((1, 0, 0), "right"), ((-1, 0, 0), "left"), ((0, 0, 1), "top"), ((0, 0, -1), "bottom"),
        ((0, 1, 0), "front"), ((0, -1, 0), "back"),
    )  # fmt: skip
    unit = away / np.linalg.norm(away)
    # Rounded, so that half-way positions are always described the same way round.
    fits = sorted(((round(float(unit @ np.array(v)), 9), word) for v, word in names), reverse=True)
    if fits[0][0] > np.cos(np.radians(12)):
        return fits[0][1]
    degrees = np.degrees(np.arccos(fits[0][0]))
    if abs(degrees - 45) < 8:
        return f"half-way between {fits[0][1]} and {fits[1][1]}"
    return f"{degrees:.0f}° from {fits[0][1]} towards {fits[1][1]}"


def _cross_words(point: Floats, centre: Floats) -> str:
    """A point in centimetres from the middle of the hand's circle."""
    parts = []
    for value, more, less in zip(
        100 * (point - centre),
        ("right", "ahead", "above"),
        ("left", "behind", "below"),
        strict=True,
    ):
        if abs(value) >= 1:
            parts.append(f"{abs(value):.0f} cm {more if value > 0 else less}")
    return ", ".join(parts) if parts else "the middle of the hand's circle"


def _change(before: Station, away: Floats, axis: Floats, plane: Floats, centre: Floats) -> str:
    """Description of the change from one station to the next."""
    start = before.hand - centre
    step = np.degrees(
        np.arctan2(float(axis @ np.cross(start, away)), float(start @ away)) % (2 * np.pi)
    )
    turned = np.degrees(_angle(before.plane, plane))
    text = f"the hand goes on by {step:.0f}°"
    if turned < 0.5:
        return f"{text}, the plane stays"
    return f"{text}, the plane turns by {turned:.0f}°"
