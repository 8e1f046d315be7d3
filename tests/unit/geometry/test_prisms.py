"""Upright prisms: support, nearest points and segments, by hand and by brute force over corners."""

from itertools import product

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry import prisms
from sequencer.geometry.prisms import FAR_AWAY, Prism, plane, walls

BLOCK = Prism(np.array([[0.0, 0.0], [2.0, 0.0], [2.0, 1.0], [0.0, 1.0]]), 1.0, 3.0)
TRIANGLE = Prism(np.array([[0.0, 0.0], [4.0, 0.0], [0.0, 3.0]]), -1.0, 0.5)
WALL = Prism(np.array([[1.0, 0.0], [3.0, 0.0]]), 0.0, 2.0)
LINE = Prism(np.array([[1.0, 2.0]]), 0.0, 2.0)


@pytest.mark.parametrize("prism", [BLOCK, TRIANGLE, WALL, LINE])
def test_the_level_is_that_of_the_farthest_corner(prism):
    """The support of a convex body is its largest corner: each tried at both heights."""
    n = np.random.default_rng(4).normal(size=(5, 6, 3))
    corners = [(x, y, z) for (x, y), z in product(prism.corners, (prism.bottom, prism.top))]
    expected = [[max(np.dot(c, m) for c in corners) for m in row] for row in n]
    assert_allclose(prism.level(n), expected, atol=1e-12)


@pytest.mark.parametrize(
    ("prism", "point", "near"),
    [
        (BLOCK, (1.0, 0.5, 2.0), (1.0, 0.5, 2.0)),
        (BLOCK, (0.1, 0.5, 2.0), (0.1, 0.5, 2.0)),
        (BLOCK, (-3.0, 0.5, 2.0), (0.0, 0.5, 2.0)),
        (BLOCK, (5.0, 0.25, 2.0), (2.0, 0.25, 2.0)),
        (BLOCK, (1.5, -4.0, 0.0), (1.5, 0.0, 1.0)),
        (BLOCK, (0.5, 7.0, 4.0), (0.5, 1.0, 3.0)),
        (BLOCK, (-3.0, -4.0, 2.0), (0.0, 0.0, 2.0)),
        (BLOCK, (5.0, 5.0, 9.0), (2.0, 1.0, 3.0)),
        (BLOCK, (1.0, 0.5, -6.0), (1.0, 0.5, 1.0)),
        (TRIANGLE, (1.0, 1.0, 0.0), (1.0, 1.0, 0.0)),
        (TRIANGLE, (4.4, 3.8, 0.0), (2.0, 1.5, 0.0)),  # 4.4 − 2 is 0.6, 3.8 − 1.5 not: see below
        (WALL, (2.0, 1.5, 1.0), (2.0, 0.0, 1.0)),
        (WALL, (2.0, -1.5, 1.0), (2.0, 0.0, 1.0)),
        (WALL, (7.0, 0.0, 1.0), (3.0, 0.0, 1.0)),
        (WALL, (-1.0, 0.0, 1.0), (1.0, 0.0, 1.0)),
        (WALL, (2.5, 0.0, 1.0), (2.5, 0.0, 1.0)),
        (LINE, (4.0, 6.0, 1.0), (1.0, 2.0, 1.0)),
        (LINE, (1.0, 2.0, 5.0), (1.0, 2.0, 2.0)),
    ],
)  # fmt: skip
def test_the_nearest_point_lies_inside_on_an_edge_or_at_a_corner(prism, point, near):
    """By hand; the slope of the triangle has the outward normal (0.6, 0.8)."""
    if prism is TRIANGLE and point[0] > 4:
        point = (near[0] + 4 * 0.6, near[1] + 4 * 0.8, point[2])
    distance, found = prism.nearest(np.array(point))
    assert_allclose(found, near, atol=1e-12)
    assert_allclose(distance, np.linalg.norm(np.subtract(point, near)), atol=1e-12)


def test_edges_of_a_few_centimetres_have_their_own_nearest_points():
    """A post 4 cm by 2 cm: beside its long side, and beyond its corner."""
    post = Prism(np.array([[0.0, 0.0], [0.04, 0.0], [0.04, 0.02], [0.0, 0.02]]), 0.0, 1.0)
    points = np.array([[0.03, -0.5, 0.5], [0.5, 0.015, 0.5], [0.04, 3.0, 0.5], [-1.0, -1.0, 0.5]])
    near = [[0.03, 0, 0.5], [0.04, 0.015, 0.5], [0.04, 0.02, 0.5], [0, 0, 0.5]]
    assert_allclose(post.nearest(points)[1], near, atol=1e-12)


def test_many_points_come_back_in_their_shape():
    points = np.random.default_rng(5).uniform(-3, 5, size=(4, 5, 3))
    distance, near = BLOCK.nearest(points)
    expected = np.clip(points, (0, 0, 1), (2, 1, 3))  # an upright block along the axes
    assert_allclose(near, expected, atol=1e-12)
    assert_allclose(distance, np.linalg.norm(points - expected, axis=-1), atol=1e-12)


@pytest.mark.parametrize(
    ("prism", "start", "end", "distance", "along"),
    [
        (BLOCK, (-1, 0.5, 2), (5, 0.5, 2), 0.0, None),
        (BLOCK, (-1, 3, 5), (0, 3, 5), np.hypot(2, 2), 1.0),
        (BLOCK, (1, 3, 5), (1, 8, 9), np.hypot(2, 2), 0.0),
        (BLOCK, (4, -1, 2), (1, -4, 2), np.sqrt(4.5), 1 / 6),
        (BLOCK, (1, 0.5, 6), (2, 0.5, 5), 2.0, 1.0),
        (BLOCK, (6, 0.5, 2), (6, 0.5, 2), 4.0, None),
        (WALL, (0, -1, 3), (4, 3, 3), 1.0, 0.25),
        (LINE, (1, 0, 1), (5, 3, 1), 1.6, 0.24),
    ],
)
def test_a_segment_is_nearest_at_an_end_or_between(prism, start, end, distance, along):
    """By hand: the second to last crosses the wall's line 1 m above it, the last passes an upright line.

    The foot of (1, 2) on the line from (1, 0) along (0.8, 0.6) lies 1.2 m on, 1.6 m away.
    """
    start, end = np.array([start], float), np.array([end], float)
    found, on_segment, on_prism = prism.nearest_of_segment(start, end)
    assert_allclose(found, [distance], atol=1e-8)
    assert_allclose(np.linalg.norm(on_segment - on_prism, axis=1), found, atol=1e-12)
    if along is not None:
        assert_allclose(on_segment, start + along * (end - start), atol=1e-6)


def test_segments_are_searched_side_by_side():
    """Each of many as if it were alone; a dense sampling is never nearer."""
    draw = np.random.default_rng(6)
    start, end = draw.uniform(-4, 6, (2, 12, 3))
    found, on_segment, on_prism = TRIANGLE.nearest_of_segment(start, end)
    dense = start[:, None] + np.linspace(0, 1, 4001)[:, None] * (end - start)[:, None]
    least = TRIANGLE.nearest(dense)[0].min(axis=1)
    assert np.all(found <= least + 1e-12)
    assert np.all(found >= least - 0.005)
    assert_allclose(np.linalg.norm(on_segment - on_prism, axis=1), found, atol=1e-12)


def test_the_search_leaves_as_much_of_a_segment_as_is_said():
    """48 golden sections leave φ^48 of 2 km; of an even V the better probe is nearer, which leaves φ^49.

    The answer is the middle, so half of that is the largest error; one section more or less misses the band.
    """
    middle = np.random.default_rng(7).uniform(-500, 500, 400)
    start = np.stack([middle - 1000, np.full(400, -1.0), np.ones(400)], axis=1)
    end = start + np.array([2000.0, 0.0, 0.0])
    upright = Prism(np.array([[0.0, -1.0]]), 0.0, 2.0)
    error = upright.nearest_of_segment(start, end)[0].max()
    left = 2000 * ((np.sqrt(5) - 1) / 2) ** np.array([50, 49]) / 2
    assert left[0] < error <= left[1]


def test_a_line_has_a_wall_for_each_segment():
    found = walls(np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 2.0]]))
    assert [wall.corners.tolist() for wall in found] == [[[0, 0], [1, 0]], [[1, 0], [1, 2]]]
    assert {(wall.bottom, wall.top) for wall in found} == {(-1e4, 1e4)}


def test_a_plane_reaches_ten_kilometres_each_way():
    assert FAR_AWAY == prisms.FAR_AWAY == 1e4
    ceiling = plane(bottom=4.0)
    assert ceiling.corners.tolist() == [[-1e4, -1e4], [1e4, -1e4], [1e4, 1e4], [-1e4, 1e4]]
    assert (ceiling.bottom, ceiling.top) == (4.0, 1e4)
    floor = plane(top=0.0)
    assert (floor.bottom, floor.top) == (-1e4, 0.0)
    assert_allclose(ceiling.nearest(np.array([3.0, 7.0, 1.0]))[0], 3.0)
