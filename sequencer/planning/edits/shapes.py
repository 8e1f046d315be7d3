"""Shapes of formations that a mend keeps: pairs mirrored about the centre line, and lines.

Places [m, stage frame].
"""

import math
from collections.abc import Mapping
from itertools import combinations

Places = Mapping[str, tuple[float, float]]

_SAME = 0.021  # [m] within which two places mirror each other, or three lie on a line
_MARK = 0.05  # [m] to which places are marked on a floor


def marked(value: float) -> float:
    """A coordinate to the nearest 5 cm [m]."""
    return round(round(value / _MARK) * _MARK, 2) + 0.0


def marked_away(here: float, by: float) -> float:
    """A coordinate moved at least as far, to the next 5 cm; one that moves less than half of that stays [m]."""
    if abs(by) < _MARK / 2:
        return here
    steps = (here + by) / _MARK
    whole = math.ceil(steps - 1e-6) if by > 0 else math.floor(steps + 1e-6)
    return round(whole * _MARK, 2) + 0.0


def centre_line(places: Places) -> float | None:
    """X of the line about which a formation is mirrored: the stage's middle, or its own; None if it is not [m]."""
    own = sum(x for x, _ in places.values()) / len(places)
    for middle in (0.0, own):
        if any(_mirrored(a, b, middle) for a, b in combinations(places.values(), 2)):
            return middle
    return None


def partner(places: Places, who: str) -> tuple[str, float] | None:
    """The other one of a mirrored pair, and X of the line between them [m]; None if there is none."""
    middle = centre_line(places)
    if middle is None:
        return None
    for other, at in places.items():
        if other != who and _mirrored(places[who], at, middle):
            return other, middle
    return None


def _mirrored(a: tuple[float, float], b: tuple[float, float], middle: float) -> bool:
    return (
        abs(a[0] + b[0] - 2 * middle) <= _SAME
        and abs(a[1] - b[1]) <= _SAME
        and abs(a[0] - middle) > _SAME
    )


def lines(places: Places) -> list[frozenset[str]]:
    """The largest sets of three or more who stand on one line."""
    found: list[frozenset[str]] = []
    for a, b in combinations(places, 2):
        own = frozenset(
            who for who, at in places.items() if _off(places[a], places[b], at) <= _SAME
        )
        if len(own) > 2 and own not in found:
            found.append(own)
    return [own for own in found if not any(own < other for other in found)]


def _off(a: tuple[float, float], b: tuple[float, float], at: tuple[float, float]) -> float:
    """Distance of a place from the line through two others [m]."""
    x, y = b[0] - a[0], b[1] - a[1]
    size = math.hypot(x, y)
    if size < _SAME:
        return math.inf
    return abs(x * (at[1] - a[1]) - y * (at[0] - a[0])) / size


def has_shape(places: Places) -> bool:
    """Whether a formation has a mirrored pair, or a line of three."""
    return centre_line(places) is not None or bool(lines(places))


def keeps_lines(before: Places, after: Places) -> bool:
    """Whether those who stood on one line still do."""
    return all(any(own <= other for other in lines(after)) for own in lines(before))
