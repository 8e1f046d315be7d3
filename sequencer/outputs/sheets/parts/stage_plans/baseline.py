"""The two points of the stage from which floor marks are measured: those whose tapes cross well at every mark.

Two lengths fix a place but for its mirror image on the other side of the line through the two points. How well: if the two
tapes cross at the angle c and each is off by at most d, the mark is off by at most d / min(sin(c/2), cos(c/2)), because the
sum of both errors moves it along the line that halves the angle by d / cos(c/2), and their difference across it by
d / sin(c/2). Tapes that cross at less than 30 degrees or more than 150 are taken to be weak: common practice in surveying,
from memory. Source: elementary geometry. Exact. Stage frame [m]: X to the audience's right, Y upstage.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from math import dist, hypot, inf, radians, sin

Place = tuple[float, float]
_LEVEL = 0.05  # [m] points no further upstage than this are on the front edge
_EDGE = 0.25  # of the stage's width: a shorter front edge counts as a point
_HERE = 0.02  # [m] a mark so near to a fixed point is that point
_SIDED = sin(radians(22.5))
WEAK = 1.0 / sin(radians(15.0))  # [1] 3.9 cm for each that a tape is off


@dataclass(frozen=True, slots=True)
class FixedPoint:
    """A point of the stage from which marks are measured."""

    letter: str
    place: Place  # [m, stage frame]
    words: str


def spread(place: Place, a: Place, b: Place) -> float:
    """How far a mark may be off for each that both tapes are off [1]; inf on the line through the two points.

    Parameters
    ----------
    place, a, b : tuple of float [m, stage frame]
    """
    from_a, from_b = dist(place, a), dist(place, b)
    if min(from_a, from_b) < _HERE:
        return 1.0
    ax, ay = (a[0] - place[0]) / from_a, (a[1] - place[1]) / from_a
    bx, by = (b[0] - place[0]) / from_b, (b[1] - place[1]) / from_b
    # lengths of half the sum and half the difference of two unit vectors: cos and sin of half the angle
    least = min(hypot(ax + bx, ay + by), hypot(ax - bx, ay - by)) / 2
    return 1.0 / least if least > 1e-6 else inf


def baseline(outline: Sequence[Place], places: Sequence[Place]) -> tuple[FixedPoint, FixedPoint]:
    """The pair of points with the fewest weak marks; the ends of the front edge, if no mark is weak from there.

    Parameters
    ----------
    outline : sequence of tuple of float
        Corners of the stage [m, stage frame].
    places : sequence of tuple of float
        The marks [m, stage frame].

    Returns
    -------
    a, b : FixedPoint
        A is further to stage right, or downstage if neither is.
    """

    def cost(pair: Sequence[tuple[Place, str]]) -> tuple[int, float]:
        (a, _), (b, _) = pair
        spreads = [spread(place, a, b) for place in places]
        weak = sum(each > WEAK for each in spreads)
        return weak, sum(min(each, 1e3) for each in spreads) if weak else 0.0

    pairs = list(combinations(_found(outline), 2))
    best = min(pairs, key=cost)
    one, other = sorted(best)
    return FixedPoint("A", *one), FixedPoint("B", *other)


def side_words(a: FixedPoint, b: FixedPoint) -> tuple[str, str]:
    """What lies on either side of the line from A to B: upstage of it, and towards the audience."""
    across, up = b.place[0] - a.place[0], b.place[1] - a.place[1]
    long = hypot(across, up)
    if across < _SIDED * long:
        return ("at stage right of it", "at stage left of it")
    if abs(up) < _SIDED * long:
        return ("upstage of it", "on the audience’s side of it")
    hand = ("right", "left") if up > 0 else ("left", "right")
    return (
        f"upstage and at stage {hand[0]} of it",
        f"downstage and at stage {hand[1]} of it",
    )


def _found(outline: Sequence[Place]) -> list[tuple[Place, str]]:
    """Points of the stage that people find without measuring, the usual two first."""
    low, high = min(y for _, y in outline), max(y for _, y in outline)
    left, right = max(outline), min(outline)
    wide = left[0] - right[0]
    found: list[tuple[Place, str]] = []
    sides = [
        (right, "the stage’s outermost point at stage right"),
        (left, "the stage’s outermost point at stage left"),
    ]
    for y, name, point_words in (
        (low, "front", "the stage’s foremost point"),
        (high, "back", "the stage’s point furthest upstage"),
    ):
        edge = [point for point in outline if abs(point[1] - y) <= _LEVEL]
        ends = min(edge), max(edge)
        if ends[1][0] - ends[0][0] >= _EDGE * wide:
            found += [
                (ends[0], f"the {name} corner at stage right"),
                (ends[1], f"the {name} corner at stage left"),
            ]
        else:
            found.append((min(edge, key=lambda point: abs(point[1] - y)), point_words))
    known = {place for place, _ in found}
    sides = [each for each in sides if each[0] not in known]
    usual = found[0][1].startswith("the front corner")
    return [*found, *sides] if usual else [*sides, *found]
