"""Formations of a group: shapes sized by its own reach, who stands where in them, and the walks between.

Stage frame [m]: X to the audience's right, Y upstage; a facing of 0 faces the audience [degrees]. Spots are (X, Y, facing) by name.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.dance.travel import TravelLimits
from sequencer.geometry.matching import cheapest_matching
from sequencer.motion.performers.formations import ShapeName, shape
from sequencer.timing.tempo import TempoMap

FormationSpots = dict[str, tuple[float, float, float]]

_SHAPES: tuple[ShapeName, ...] = (
    "line", "wedge", "stagger", "diamond", "circle", "box", "face to face",
)  # fmt: skip
_TURNS = (0.0, 15.0, -15.0, 30.0, -30.0, 45.0)  # [degrees] tried until nobody is hidden
_WIDER = (1.0, 1.2, 1.45)  # spacings, as multiples of the least; walks need the wider ones
_STEP = 0.05  # [m] so that tape on the floor can mark it
_ASIDE_STEP = 0.25  # [m] from the middle line
_HIDDEN = 0.50  # [m] beside one another: less than a body's breadth between the axes hides whoever is behind
_PEAK = 15 / 8  # of a walk's speed over its mean, see `motion.performers.walks`
_SPARE = 1.02  # [1] the check's bound is tight to half a percent, and places are written in whole centimetres
_MIDDLE = 0.10  # [m] from the middle line: nearer stands in the middle


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupFormation:
    """A named shape that fits, and who stands where in it."""

    name: ShapeName
    centre: tuple[float, float]  # [m, stage frame]
    spacing: float  # [m]
    turn: float  # [degrees]
    spots: FormationSpots
    hidden: tuple[tuple[str, str], ...]  # who stands in front of whom, as the audience looks


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupWalk:
    """Straight walks of a group from one formation to another, all in the same beats."""

    longest: float  # [m]
    turn: float  # [degrees] the largest turn of anybody
    squares: float  # [m²] sum of the squares of all ways
    nearest: float  # [m] least distance of two on the way, from one's reach to the other's
    pair: tuple[str, str]  # whose; empty names for fewer than two


def least_spacing(reaches: Sequence[float], required: float) -> float:
    """The spacing at which any two neighbours keep clear, whatever they dance [m].

    Parameters
    ----------
    reaches : sequence of float
        From each body's axis to the outer edge of prop and flame [m].
    required : float
        Between any part of one and any part of another [m].

    Returns
    -------
    spacing : float
        Rounded up to 5 cm; 0 for fewer than two.

    Notes
    -----
    Source: the triangle inequality; the two longest reaches may come to stand side by side.
    """
    if len(reaches) < 2:
        return 0.0
    two = sum(sorted(reaches)[-2:]) + required
    return math.ceil(two / _STEP - 1e-9) * _STEP


def fitting_formations(
    names: Sequence[str], reaches: Sequence[float], *, required: float, room: Any
) -> tuple[GroupFormation, ...]:
    """Every shape that fits into the room, sized by the group's reach, at up to three widths.

    Names are given to the spots as from a line in the order given, by the least walking, so that people keep their sides from one
    formation to the next. A shape in which somebody is hidden is turned, by the least turn that shows everybody; where none
    does, it stays as it is, and `hidden` says who is.

    Parameters
    ----------
    names : sequence of str
        From the audience's left to right.
    reaches : sequence of float
        Of each [m].
    required : float
        Between any two [m].
    room : shapely geometry [m, stage frame]
        See `standing_room`.

    Returns
    -------
    formations : tuple of GroupFormation
        Of one shape the narrowest first; empty where nothing fits.

    Raises
    ------
    ValueError
        If names and reaches do not go together, or there are none.
    """
    if not names or len(names) != len(reaches):
        raise ValueError(f"{len(names)} names and {len(reaches)} reaches do not go together")
    least = least_spacing(reaches, required)
    found: list[GroupFormation] = []
    for name in _SHAPES:
        if name == "face to face" and len(names) % 2:
            continue
        for wider in _WIDER if len(names) > 1 else (1.0,):
            spacing = max(math.ceil(least * wider / _STEP - 1e-9) * _STEP, _STEP)
            formation = _fitted(name, names, spacing, room)
            if formation is not None and not any(_same(formation, other) for other in found):
                found.append(formation)
    return tuple(found)


def _same(one: GroupFormation, other: GroupFormation) -> bool:
    """Whether all stand the same: shapes of few people coincide."""
    return all(np.allclose(one.spots[who], other.spots[who], atol=_STEP / 2) for who in one.spots)


def _fitted(
    name: ShapeName, names: Sequence[str], spacing: float, room: Any
) -> GroupFormation | None:
    """A shape that fits, with as few hidden as can be, and of those the one turned least."""
    best: GroupFormation | None = None
    for turn in _TURNS:
        centre = _centre(name, len(names), spacing, turn, room)
        if centre is None:
            continue
        spots = _spots(name, names, centre, spacing, turn)
        formation = GroupFormation(
            name=name, centre=centre, spacing=spacing, turn=turn, spots=spots, hidden=hidden(spots)
        )
        if best is None or len(formation.hidden) < len(best.hidden):
            best = formation
        if not best.hidden:
            break
    return best


def _centre(
    name: ShapeName, n: int, spacing: float, turn: float, room: Any
) -> tuple[float, float] | None:
    """Where a shape stands: on the middle line if it can, as near to the middle of the room as it fits."""
    import shapely

    if room.is_empty:
        return None
    points = shape(name, n, spacing=spacing, turn=math.radians(turn)).points
    left, down, right, up = room.bounds
    wide, deep = 0.5 * np.ptp(points, axis=0)
    middle = (0.5 * (left + right), 0.5 * (down + up))
    # The middle line first, then aside by larger steps: there is no need to try every tape mark twice.
    across = _steps(middle[0], left + wide, right - wide, _ASIDE_STEP)
    along = _steps(middle[1], down + deep, up - deep, _STEP)
    shapely.prepare(room)
    for x in across:
        spots = np.stack(np.broadcast_arrays(x, along), axis=-1)[:, None] + points
        inside = shapely.contains_xy(room, spots[..., 0], spots[..., 1]).all(axis=1)
        if inside.any():
            return (round(float(x), 2), round(float(along[np.argmax(inside)]), 2))
    return None


def _steps(middle: float, low: float, high: float, step: float) -> Floats:
    """Whole steps over a span, the one nearest to a middle first; empty where the span is."""
    values: Floats = np.asarray(
        np.arange(math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9) + 1) * step
    )
    return values[np.argsort(np.abs(values - middle), kind="stable")]


def _spots(
    name: ShapeName,
    names: Sequence[str],
    centre: tuple[float, float],
    spacing: float,
    turn: float,
) -> FormationSpots:
    places = shape(name, len(names), centre=centre, spacing=spacing, turn=math.radians(turn))
    line = shape("line", len(names), centre=centre, spacing=spacing).points
    taken = cheapest_matching(_squares(line, places.points))
    return {
        names[who]: (
            float(places.points[k, 0]),
            float(places.points[k, 1]),
            float(np.degrees(places.facings[k])),
        )
        for who, k in taken
    }


def _squares(one: Floats, other: Floats) -> Floats:
    across = one[:, None] - other[None]
    squares: Floats = np.sum(across * across, axis=2)
    return squares


def hidden(spots: Mapping[str, tuple[float, float, float]]) -> tuple[tuple[str, str], ...]:
    """Who stands in front of whom, for an audience that looks straight upstage: pairs of the one in front and the one behind.

    Notes
    -----
    Source: bodies half a metre apart beside each other no longer overlap (shoulder breadth, common practice).
    """
    return tuple(
        (one, other) if spots[one][1] < spots[other][1] else (other, one)
        for one, other in combinations(spots, 2)
        if abs(spots[one][0] - spots[other][0]) < _HIDDEN
    )


def mirrored_partners(
    spots: Mapping[str, tuple[float, float, float]],
) -> tuple[tuple[tuple[str, str], ...], tuple[str, ...]]:
    """Left and right partners about the middle of a formation, and who stands in the middle.

    Returns
    -------
    pairs : tuple of (str, str)
        The one on the audience's left, and the partner on the right.
    alone : tuple of str
        Without a partner: in the middle, or more on one side than on the other.

    Notes
    -----
    Source: least sum of squares from each place to the partner's mirrored one, by `cheapest_matching`. Exact.
    """
    xs = [x for x, _, _ in spots.values()]
    middle = 0.5 * (min(xs) + max(xs)) if xs else 0.0
    left = [who for who, (x, _, _) in spots.items() if x < middle - _MIDDLE]
    right = [who for who, (x, _, _) in spots.items() if x > middle + _MIDDLE]
    if not left or not right:
        return (), tuple(spots)
    mirrored = np.array([(2 * middle - spots[who][0], spots[who][1]) for who in left])
    across = np.array([spots[who][:2] for who in right])
    taken = cheapest_matching(_squares(mirrored, across))
    pairs = tuple((left[a], right[b]) for a, b in taken)
    paired = {who for pair in pairs for who in pair}
    return pairs, tuple(who for who in spots if who not in paired)


def group_walk(
    before: Mapping[str, tuple[float, float, float]],
    after: Mapping[str, tuple[float, float, float]],
    reaches: Mapping[str, float] | None = None,
) -> GroupWalk:
    """What straight walks from one formation to another ask for, and how near two come on the way.

    Parameters
    ----------
    before, after : mapping of name to (X [m], Y [m], facing [degrees])
        Of the same people.
    reaches : mapping of name to float, optional
        Of what is danced on the way [m]; without, axes of bodies are measured.

    Returns
    -------
    walk : GroupWalk

    Notes
    -----
    Source: the distance of two points that move in straight lines by one law of time is that of a point to a segment, from the
    first difference of their places to the last. Exact.
    """
    names = list(before)
    start = np.array([before[who][:2] for who in names])
    end = np.array([after[who][:2] for who in names])
    ways = end - start
    turns = [abs(math.remainder(after[w][2] - before[w][2], 360.0)) for w in names]
    nearest, pair = math.inf, ("", "")
    for i, j in combinations(range(len(names)), 2):
        gap = _nearest_to_origin(start[j] - start[i], end[j] - end[i])
        gap -= 0.0 if reaches is None else reaches[names[i]] + reaches[names[j]]
        if gap < nearest:
            nearest, pair = gap, (names[i], names[j])
    return GroupWalk(
        longest=float(np.max(np.hypot(*ways.T))),
        turn=max(turns),
        squares=float(np.sum(ways * ways)),
        nearest=nearest,
        pair=pair,
    )


def _nearest_to_origin(a: Floats, b: Floats) -> float:
    """Distance of a segment to the origin."""
    step = b - a
    length = float(step @ step)
    share = min(max(-float(a @ step) / length, 0.0), 1.0) if length > 0 else 0.0
    return float(np.hypot(*(a + share * step)))


def beats_to_walk(
    walk: GroupWalk, tempo: TempoMap, start: float, limits: TravelLimits | None = None
) -> int:
    """Whole beats in which a walk stays within the limits while spinning; 0 where nobody moves.

    Parameters
    ----------
    walk : GroupWalk
    tempo : TempoMap
    start : float
        When it starts [beats].
    limits : TravelLimits, optional

    Notes
    -----
    Source: the peak of the minimum-jerk law, 15/8 of the mean speed, at the fastest tempo on the way, and a fiftieth more.
    """
    use = TravelLimits() if limits is None else limits
    seconds = (
        _SPARE * _PEAK * max(walk.longest / use.speed, math.radians(walk.turn) / use.turn_rate)
    )
    if seconds <= 0:
        return 0
    beats = 1
    while beats < seconds * tempo.fastest(start, start + beats) - 1e-9:
        beats += 1
    return beats
