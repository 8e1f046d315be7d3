"""The shortest vector beyond planes, and how it is rounded: by plane geometry."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.planning.edits.moves import _least, _rounded_up, moved, place_mends

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


def test_a_pair_is_parted_by_either_or_by_both_by_half(dance):
    """Two who stand 1 m apart all along: each mend clears them, and both go equally far, each their way."""
    pair = [
        dance.dancer(name, (x, 3.0), sides=("right",), tether=0.3, flame=0.0, lit=())
        for name, x in (("Ada", 0.0), ("Bo", 1.0))
    ]
    required = 0.5
    assert dance.sampled_distance(*pair, np.linspace(0, 4, 401)).min() < required
    mends = place_mends(pair, 0, 1, conflict=(0.0, 4.0), show=(0.0, 4.0), required=required)
    assert {mend.who for mend in mends} == {("Ada",), ("Bo",), ("Ada", "Bo")}
    for mend in mends:
        by = dict(zip(mend.who, mend.by, strict=True))
        after = [moved(each, by.get(each.name, (0.0, 0.0)), 0.0, 4.0) for each in pair]
        assert dance.sampled_distance(*after, np.linspace(0, 4, 401)).min() >= required - 1e-9
        if len(mend.who) == 2:
            assert_allclose(mend.by[0], -np.array(mend.by[1]), atol=1e-12)
