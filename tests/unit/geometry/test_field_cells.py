"""The table of distances cell by cell, on a body of two capsules."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry import field
from sequencer.geometry.capsules import Capsule
from sequencer.geometry.field import AROUND, CELL, Table

PARTS = (
    Capsule("a", (0.0, 0.0, 0.0), (0.05, -0.1, 0.15), 0.03),
    Capsule("b", (-0.06, 0.02, 0.1), (-0.06, 0.02, 0.1), 0.05),  # a ball
)


def distance(point):
    """From the surface of either part: foot on the axis by the dot product."""
    out = []
    for part in PARTS:
        start, end = np.array(part.start), np.array(part.end)
        square = np.dot(end - start, end - start)
        share = np.clip(np.dot(point - start, end - start) / square, 0, 1) if square else 0.0
        out.append(np.linalg.norm(point - start - share * (end - start)) - part.radius)
    return min(out)


def test_every_cell_holds_the_distance_of_its_middle():
    """From 14 cm below the lowest surface to 14 cm above the highest, in cells of 2 cm."""
    assert (CELL, AROUND) == (0.02, 0.14)
    table = field._table(PARTS)
    low = np.array([-0.06 - 0.05, -0.1 - 0.03, -0.03]) - 0.14
    high = np.array([0.05 + 0.03, 0.02 + 0.05, 0.15 + 0.03]) + 0.14
    assert_allclose(table.low, low)
    shape = tuple(int(np.ceil(n)) + 1 for n in (high - low) / 0.02)
    assert table.shape == shape
    values = table.values.reshape(shape)
    for cell in np.ndindex(*shape):
        if (7 * cell[0] + 3 * cell[1] + cell[2]) % 41 == 0:  # some all over
            expected = distance(low + 0.02 * np.array(cell))
            assert values[cell] == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize("end", [(0.0, 0.0, 0.3), (0.2, 0.0, 0.0), (0.1, -0.2, 0.0)])
def test_cells_about_a_capsule_along_an_axis_or_two(end):
    """In the middle and past both ends, to the side of either axis: by the foot, coordinate by coordinate."""
    table = field._table([Capsule("a", (0.1, 0.2, 0.3), tuple(np.add((0.1, 0.2, 0.3), end)), 0.04)])
    values, way = table.values.reshape(table.shape), np.array(end)
    for cell in np.ndindex(*table.shape):
        if (5 * cell[0] + 3 * cell[1] + cell[2]) % 53 == 0:
            away = table.low + 0.02 * np.array(cell) - [0.1, 0.2, 0.3]
            share = min(max(float(away @ way / (way @ way)), 0.0), 1.0)
            expected = np.linalg.norm(away - share * way) - 0.04
            assert values[cell] == pytest.approx(expected, abs=1e-12)


def numbered(shape):
    """A table whose values are the places of its cells: hundreds, tens and ones."""
    where = np.moveaxis(np.indices(shape), 0, -1) @ np.array([100, 10, 1])
    return Table(np.array([1.0, 2.0, 3.0]), shape, where.ravel().astype(float))


def test_cells_are_the_nearest_and_may_lie_outside():
    table = numbered((4, 3, 2))
    points = np.array([[1.0, 2.0, 3.0], [1.0099, 2.0101, 2.9899], [1.041, 1.9, 3.079]])
    assert table.cells(points).tolist() == [[0, 0, 0], [0, 1, -1], [2, -5, 4]]


@pytest.mark.parametrize("at_once", [1, 2**16])
def test_the_least_of_all_cells_is_that_of_each_step(monkeypatch, at_once):
    """Some cells occur twice; all at once or one by one."""
    monkeypatch.setattr(field, "_AT_ONCE", at_once)
    draw = np.random.default_rng(4)
    table = Table(np.zeros(3), (9, 8, 7), draw.normal(size=504))
    steps = draw.integers(-2, 3, (9, 3))
    for _ in range(40):
        cells = draw.integers((1, 1, 0), (3, 7, 7), (14, 3))
        cells[12:] = cells[:2]
        found = table.moved(cells, steps).min(axis=0)
        assert table.least_moved(cells, steps).tolist() == found.tolist()


def test_steps_stop_at_the_edge_of_the_table():
    table = numbered((4, 3, 2))
    cells = np.array([[0, 0, 0], [3, 2, 1], [1, 1, 0], [-7, 9, 0]])
    steps = np.array([[0, 0, 0], [1, 1, 1], [-2, 0, 5], [9, -9, -1], [1, 1, 1]])
    expected = [
        [100 * min(max(a + x, 0), 3) + 10 * min(max(b + y, 0), 2) + min(max(c + z, 0), 1)
         for x, y, z in steps]
        for a, b, c in cells
    ]  # fmt: skip
    assert table.moved(cells, steps).tolist() == expected
