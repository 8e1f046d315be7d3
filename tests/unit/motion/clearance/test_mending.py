"""The shortest vector beyond planes, and how it is rounded: by plane geometry."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.clearance.mending import _least, _rounded_up

CASES = {
    "one plane": ([(1, 0)], [2.0], (2, 0)),
    "one that acts by half": ([(0.5, 0)], [1.0], (2, 0)),
    "at a slant": ([(0.6, 0.8)], [1.0], (0.6, 0.8)),
    "two at right angles": ([(1, 0), (0, 1)], [1.0, 2.0], (1, 2)),
    "two, one holds already": ([(1, 0), (0.6, 0.8)], [2.0, 1.0], (2, 0)),
    "a corner at a slant": ([(1, 0), (0.6, 0.8)], [1.0, 2.0], (1.2, 1.6)),
    "a corner that both ask for": ([(1, 0), (-0.6, 0.8)], [1.0, 1.0], (1, 2)),
    "three": ([(1, 0), (0, 1), (-0.6, 0.8)], [1.0, 0.5, 1.0], (1, 2)),
    "of unequal shares": ([(2, 0), (0, 0.25)], [1.0, 0.5], (0.5, 2)),
}


@pytest.mark.parametrize("case", CASES)
def test_the_shortest_vector_lies_on_a_plane_or_where_two_meet(case):
    normals, missing, expected = CASES[case]
    assert_allclose(_least(np.array(normals, float), np.array(missing)), expected, atol=1e-9)


def test_planes_against_each_other_leave_none():
    assert np.all(np.isinf(_least(np.array([(1.0, 0), (-1.0, 0)]), np.array([1.0, 1.0]))))
    assert np.all(np.isinf(_least(np.zeros((0, 2)), np.zeros(0))))


def test_of_many_planes_those_that_ask_most_decide():
    """Three hundred tangents to a circle of 2 m over a right angle: more pairs than are tried at once."""
    turn = np.linspace(0, np.pi / 2, 300)
    normals = np.stack([np.cos(turn), np.sin(turn)], axis=1)
    missing = np.full(300, 1.0)
    missing[[0, -1]] = 2.0
    assert_allclose(_least(normals, missing), (2.0, 2.0), atol=1e-9)


def test_a_move_is_rounded_up_to_whole_steps():
    for v, size in (((0.3, 0.4), 0.5), ((0.301, 0.4), 0.55), ((0.0, 0.0), 0.0)):
        found = _rounded_up(np.array(v))
        assert np.hypot(*found) >= np.hypot(*v) - 1e-9
        assert np.hypot(*found) == pytest.approx(size)
        assert found[0] * v[1] - found[1] * v[0] == pytest.approx(0.0, abs=1e-12)
    assert np.all(np.isinf(_rounded_up(np.full(2, np.inf))))
