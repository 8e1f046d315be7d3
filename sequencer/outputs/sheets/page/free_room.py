"""Find free space for words and marks on a drawing, so that none covers another.

Boxes are left, low, right, high; lengths in points. The search goes over a lattice on the whole
drawing, nearest point first, so it fails only if no point of the lattice is free.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from math import ceil, floor, hypot
from typing import overload

import numpy as np

from sequencer.arrays import Floats

Box = tuple[float, float, float, float]

_STEP = 3.0  # spacing of the lattice
_NEAR = 1e-9
_CELL = 32.0  # side of the squares by which boxes are found


class Boxes(Sequence[Box]):
    """Boxes found by where they lie: with many on a drawing, a box is compared with those near it only.

    Parameters
    ----------
    boxes : iterable of Box
    """

    def __init__(self, boxes: Iterable[Box] = ()) -> None:
        self._all: list[Box] = []
        self._cells: dict[tuple[int, int], list[Box]] = {}
        for box in boxes:
            self.append(box)

    def append(self, box: Box) -> None:
        """Add a box."""
        self._all.append(box)
        for cell in _cells(box):
            self._cells.setdefault(cell, []).append(box)

    def near(self, box: Box) -> Iterator[Box]:
        """Every box that shares a point with another, and some that are near it; one may come several times."""
        return (other for cell in _cells(box) for other in self._cells.get(cell, ()))

    @overload
    def __getitem__(self, index: int) -> Box: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[Box]: ...
    def __getitem__(self, index: int | slice) -> Box | Sequence[Box]:
        return self._all[index]

    def __iter__(self) -> Iterator[Box]:
        return iter(self._all)

    def __len__(self) -> int:
        return len(self._all)


def _cells(box: Box) -> Iterator[tuple[int, int]]:
    """The squares that a box lies in."""
    rows = range(floor(box[1] / _CELL), floor(box[3] / _CELL) + 1)
    for column in range(floor(box[0] / _CELL), floor(box[2] / _CELL) + 1):
        for row in rows:
            yield column, row


def overlap(a: Box, b: Box) -> bool:
    """Whether two boxes share more than an edge."""
    return (
        a[0] < b[2] - _NEAR and b[0] < a[2] - _NEAR and a[1] < b[3] - _NEAR and b[1] < a[3] - _NEAR
    )


def is_free(box: Box, area: Box, taken: Iterable[Box]) -> bool:
    """Whether a box lies inside an area and overlaps nothing that is taken."""
    inside = (
        box[0] >= area[0] - _NEAR
        and box[1] >= area[1] - _NEAR
        and box[2] <= area[2] + _NEAR
        and box[3] <= area[3] + _NEAR
    )
    if not inside:
        return False
    others = taken.near(box) if isinstance(taken, Boxes) else taken
    return not any(overlap(box, other) for other in others)


def free_place(
    near: tuple[float, float],
    size: tuple[float, float],
    area: Box,
    taken: Sequence[Box],
    *,
    first: Iterable[tuple[float, float]] = (),
    accept: Callable[[Box], bool] | None = None,
) -> tuple[float, float] | None:
    """Middle of the nearest free space for a box.

    Parameters
    ----------
    near : tuple of float
        The ideal position.
    size : tuple of float
        Width and height.
    area : Box
        The area it must stay inside.
    taken : sequence of Box
        Boxes it must stay clear of.
    first : iterable of tuple of float
        Positions to try before the lattice, in order.
    accept : callable, optional
        Whether a free box on the lattice is a good place for it.

    Returns
    -------
    middle : tuple of float or None
        None if there is no room.
    """
    wide, tall = size

    def box(x: float, y: float) -> Box:
        return (x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2)

    for x, y in first:
        if is_free(box(x, y), area, taken):
            return x, y
    across = _marks(area[0] + wide / 2, area[2] - wide / 2, near[0])
    upwards = _marks(area[1] + tall / 2, area[3] - tall / 2, near[1])
    # Far from the origin, rounding may put an end of the lattice out of the area.
    across = [
        x for x in across if area[0] - _NEAR <= x - wide / 2 and x + wide / 2 <= area[2] + _NEAR
    ]
    upwards = [
        y for y in upwards if area[1] - _NEAR <= y - tall / 2 and y + tall / 2 <= area[3] + _NEAR
    ]
    if not (across and upwards):
        return None
    beside = _overlaps(across, wide, [(b[0], b[2]) for b in taken])
    above = _overlaps(upwards, tall, [(b[1], b[3]) for b in taken])
    # A place is taken where some box overlaps it both ways: counts of such boxes are whole, so exact.
    rows, columns = np.nonzero(beside.T @ above < 1.0)
    if not len(rows):
        return None
    if accept is not None:
        good = np.array(
            [accept(box(across[k], upwards[j])) for j, k in zip(columns, rows, strict=True)]
        )
        rows, columns = rows[good], columns[good]
        if not len(rows):
            return None
    apart = np.hypot(np.asarray(across)[rows] - near[0], np.asarray(upwards)[columns] - near[1])
    closest = np.nonzero(apart <= apart.min() + _NEAR)[0]  # rounding is left to the exact order
    points = [(across[rows[k]], upwards[columns[k]]) for k in closest]
    return min(points, key=lambda point: (hypot(point[0] - near[0], point[1] - near[1]), point))


def _overlaps(marks: Sequence[float], size: float, taken: Sequence[tuple[float, float]]) -> Floats:
    """Which of the taken spans share more than an end with a box about each mark: (spans, marks), 0 or 1."""
    middle, spans = np.asarray(marks), np.asarray(taken, dtype=float).reshape(-1, 2)
    shared = (middle - size / 2 < spans[:, 1:] - _NEAR) & (spans[:, :1] < middle + size / 2 - _NEAR)
    return shared.astype(float)


def _marks(low: float, high: float, near: float) -> list[float]:
    """Lattice coordinates between two ends: the ends, and steps from the ideal position."""
    if high < low:
        return []
    start = min(max(near, low), high)
    back, ahead = ceil((start - low) / _STEP), ceil((high - start) / _STEP)
    steps = (start + _STEP * k for k in range(-back, ahead + 1))
    return sorted({min(max(mark, low), high) for mark in steps})
