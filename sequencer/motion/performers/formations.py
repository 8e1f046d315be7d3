"""Named formations, filled so that walks are short and do not cross.

Stage frame [m]: X to the audience's right, Y upstage; a facing of 0 faces the audience and grows
anticlockwise seen from above. Shapes are common practice. In all of them the two nearest positions are one
spacing apart, and the centre is the middle of the bounding box. Positions are numbered in the order in
which a caller would name them: left to right, and from the audience upstage; a wedge from its point.
"""

from collections.abc import Mapping, Sequence
from typing import Literal, NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints, as_floats
from sequencer.geometry.matching import cheapest_matching

ShapeName = Literal[
    "line", "wedge", "diamond", "circle", "box", "stagger", "face to face", "back to back"
]
FORMATION_SHAPES: tuple[ShapeName, ...] = (
    "line",
    "wedge",
    "diamond",
    "circle",
    "box",
    "stagger",
    "face to face",
    "back to back",
)
_PAIR_GAP = 1.5  # in spacings, from one pair to the next


class Places(NamedTuple):
    """Positions of n people."""

    points: Floats  # (n, 2) [m, stage frame]
    facings: Floats  # (n,) [rad]


def shape(
    name: str,
    n: int,
    *,
    centre: tuple[float, float] = (0.0, 0.0),
    spacing: float = 1.0,
    turn: float = 0.0,
) -> Places:
    """Positions in a named shape.

    Parameters
    ----------
    name : str
        One of `FORMATION_SHAPES`.
    n : int
        Number of people.
    centre : tuple of float
        Middle of the shape [m, stage frame].
    spacing : float
        Distance between the two nearest positions [m].
    turn : float
        Rotation of the shape, anticlockwise seen from above [rad]. People keep facing the audience; pairs
        keep facing each other, or away.

    Returns
    -------
    places : Places

    Raises
    ------
    ValueError
        If the name is unknown, there are no people, pairs are requested for an odd number, or a number is
        not finite.
    """
    if name not in FORMATION_SHAPES:
        raise ValueError(f"shape {name!r} is not known; use one of {', '.join(FORMATION_SHAPES)}")
    if n < 1:
        raise ValueError(f"a formation needs at least one person, got {n}")
    if not 0 < spacing < 1000:  # also catches nan
        raise ValueError(f"spacing must be above 0 and below 1000 m, got {spacing!r}")
    middle = as_floats("centre", centre)
    if not np.isfinite(turn):
        raise ValueError(f"turn must be finite, got {turn!r}")
    points, facings = _unit(name, n)
    points = points - 0.5 * (points.min(axis=0) + points.max(axis=0))
    if n > 1:
        points = points / _nearest(points)
    cos, sin = np.cos(turn), np.sin(turn)
    spun = points @ np.array([[cos, sin], [-sin, cos]])
    paired = name in {"face to face", "back to back"}
    return Places(middle + spacing * spun, facings + (turn if paired else 0.0))


def filled_shape(
    name: str,
    *,
    names: Sequence[str],
    centre: tuple[float, float],
    spacing: float,
    turn: float = 0.0,
    fixed: bool = False,
    before: Mapping[str, tuple[float, float, float]] | None = None,
) -> dict[str, tuple[float, float, float]]:
    """Positions of everyone in a named shape.

    Parameters
    ----------
    name : str
        One of `FORMATION_SHAPES`.
    names : sequence of str
        People in the formation.
    centre : tuple of float
        Middle of the shape [m, stage frame].
    spacing : float
        Distance between the two nearest positions [m].
    turn : float
        Rotation of the shape, anticlockwise seen from above [degrees].
    fixed : bool
        Whether the names are in the order of the positions.
    before : mapping of name to (X, Y, facing), optional
        Current positions; positions are then assigned by the shortest walks. Anyone missing here takes the
        remaining positions in order.

    Returns
    -------
    spots : dict of name to (X [m], Y [m], facing [degrees])

    Raises
    ------
    ValueError
        As `shape`, or if a name occurs twice.
    """
    if len(set(names)) < len(names):
        raise ValueError(f"a name occurs twice in the formation: {', '.join(names)}")
    places = shape(name, len(names), centre=centre, spacing=spacing, turn=float(np.radians(turn)))
    order: Ints = np.arange(len(names))
    known = [k for k, who in enumerate(names) if before is not None and who in before]
    if before is not None and known and not fixed:
        order = _taken(places, names, known, before)
    return {
        who: (
            float(places.points[k, 0]),
            float(places.points[k, 1]),
            float(np.degrees(places.facings[k])),
        )
        for who, k in zip(names, order, strict=True)
    }


def _taken(
    places: Places,
    names: Sequence[str],
    known: list[int],
    before: Mapping[str, tuple[float, float, float]],
) -> Ints:
    """Shortest ways for those who stand somewhere; the others are free to fill any place.

    The sum of the squares of the ways is least, so two who walk straight at the same time stay at least
    1/√2 of the smaller of their two distances apart.
    Source: M. Turpin, N. Michael, V. Kumar, CAPT, Int. J. Robotics Research 33 (2014), theorem 1 (from
    memory).
    """
    cost = np.zeros((len(names), len(names)))
    for k in known:
        across = places.points - np.array(before[names[k]][:2])
        cost[k] = np.sum(across * across, axis=1)
    return np.array([place for _, place in cheapest_matching(cost)], dtype=np.int64)


def _nearest(points: Floats) -> float:
    across = points[:, None] - points[None]
    gap = np.hypot(across[..., 0], across[..., 1])
    return float(np.min(gap[~np.eye(len(points), dtype=np.bool_)]))


def _unit(name: str, n: int) -> tuple[Floats, Floats]:
    """Positions up to scale and shift, and facings."""
    audience: Floats = np.zeros(n)
    if name in {"face to face", "back to back"}:
        return _pairs(n, inward=name == "face to face")
    makers = {
        "line": _line,
        "wedge": _wedge,
        "diamond": _diamond,
        "circle": _circle,
        "box": _box,
        "stagger": _stagger,
    }
    return makers[name](n), audience


def _line(n: int) -> Floats:
    return np.stack([np.arange(n, dtype=np.float64), np.zeros(n)], axis=1)


def _wedge(n: int) -> Floats:
    """The point is nearest to the audience; the arms go back alternately on either side."""
    back = (np.arange(n) + 1.0) // 2
    side = np.where(np.arange(n) % 2 == 1, -1.0, 1.0)
    return np.stack([side * back, back], axis=1)


def _circle(n: int) -> Floats:
    angle = 2 * np.pi * np.arange(n) / n - np.pi / 2
    return np.stack([np.cos(angle), np.sin(angle)], axis=1)


def _stagger(n: int) -> Floats:
    """Two rows, the second in the gaps of the first."""
    front = (n + 1) // 2
    x = np.concatenate([np.arange(front), np.arange(n - front) + 0.5])
    y = np.concatenate([np.zeros(front), np.full(n - front, np.sqrt(3) / 2)])
    return np.stack([x, y], axis=1)


def _pairs(n: int, *, inward: bool) -> tuple[Floats, Floats]:
    if n % 2:
        raise ValueError(f"pairs need an even number of people, got {n}")
    pair, right = np.divmod(np.arange(n), 2)
    look = np.where(right == 1, -np.pi / 2, np.pi / 2)
    x = pair * (1 + _PAIR_GAP) + right
    return np.stack([x, np.zeros(n)], axis=1), look if inward else -look


def _diamond(n: int) -> Floats:
    """Evenly along the four sides of a square on its corner, from the corner at the audience."""
    corners = np.array([(0, -1), (1, 0), (0, 1), (-1, 0), (0, -1)], dtype=np.float64)
    along = 4.0 * np.arange(n) / n
    side = np.minimum(along.astype(np.int64), 3)
    share = (along - side)[:, None]
    return np.asarray(corners[side] * (1 - share) + corners[side + 1] * share)


def _box(n: int) -> Floats:
    """A grid filled from the audience upstage; the last row is centred."""
    columns = int(np.ceil(np.sqrt(n)))
    row, column = np.divmod(np.arange(n), columns)
    length = np.minimum(n - row * columns, columns)
    return np.stack([column - 0.5 * (length - 1), row], axis=1).astype(np.float64)
