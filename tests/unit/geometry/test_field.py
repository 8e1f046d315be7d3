"""The table of distances to a body: as near as its cells allow, and right about what lies outside."""

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.geometry.field import AROUND, CELL, table_of
from sequencer.geometry.posture import UPRIGHT, PosedBody, Posture

BODY = Body(stature=1.63)
LEANING = Posture(turn=0.3, lean=-0.12, tilt=0.2)


def exact(posture, points):
    """Distance to every capsule by its formula, without the table's code."""
    out = np.full(len(points), np.inf)
    for capsule in PosedBody(BODY, posture).capsules:
        start, end = np.array(capsule.start), np.array(capsule.end)
        along = end - start
        square = along @ along
        share = (
            np.clip((points - start) @ along / square, 0, 1) if square else np.zeros(len(points))
        )
        away = np.linalg.norm(points - start - share[:, None] * along, axis=1)
        out = np.minimum(out, away - capsule.radius)
    return out


@pytest.mark.parametrize("posture", [UPRIGHT, LEANING])
def test_distances_are_right_to_half_a_cell(posture):
    draw = np.random.default_rng(3)
    points = draw.uniform((-0.5, -0.4, 0.0), (0.5, 0.4, 1.8), (4000, 3))
    true = exact(posture, points)
    near = true < AROUND - CELL
    table = table_of(BODY, posture)

    found = table.moved(table.cells(points), np.zeros((1, 3), np.int64))[:, 0]

    assert near.sum() > 500
    assert np.abs(found - true)[near].max() <= CELL * np.sqrt(3) / 2 + 1e-6
    assert found[~near].min() > AROUND - 3 * CELL


def test_steps_move_every_point():
    draw = np.random.default_rng(4)
    points = draw.uniform(-0.3, 0.3, (50, 3)) + np.array([0, 0, 1.2])
    steps = np.array([[0, 0, 0], [3, -2, 5], [-40, 0, 90]])
    table = table_of(BODY)

    found = table.moved(table.cells(points), steps)

    for k, step in enumerate(steps):
        there = table.moved(table.cells(points + CELL * step), np.zeros((1, 3), np.int64))[:, 0]
        assert np.abs(found[:, k] - there).max() <= CELL * 1.8  # a cell's rounding at most
    assert np.array_equal(found[:, 0], table.moved(table.cells(points), steps[:1])[:, 0])
