import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.segments import point_segment, segment_segment

X, Y, Z = np.eye(3)
ZERO = np.zeros(3)


@pytest.mark.parametrize(
    ("a", "b", "expected"),
    [
        ((ZERO, X), (Y, X + Y), 1.0),  # parallel, side by side
        ((ZERO, X), (2 * X, 3 * X), 1.0),  # on one line
        ((ZERO, X), (0.5 * X, 2 * X), 0.0),  # on one line, overlapping
        ((-X, X), (-Y + Z, Y + Z), 1.0),  # crossing above
        ((-X, X), (-Y, Y), 0.0),  # meeting
        ((ZERO, ZERO), (X, X), 1.0),  # two points
        ((ZERO, ZERO), (X - Y, X + Y), 1.0),  # a point and a segment
        ((X - Y, X + Y), (ZERO, ZERO), 1.0),
        ((ZERO, X), (2 * X + Y, 2 * X + 2 * Y), np.sqrt(2)),  # both ends clamped
        ((ZERO, X), (1e-9 * Y, X), 0.0),  # nearly parallel, sharing an end
        ((ZERO, 1e-12 * X), (Y, Y + 1e-12 * X), 1.0),  # next to nothing long
    ],
)
def test_segments(a, b, expected):
    distance, s, t = segment_segment(*a, *b)

    assert_allclose(distance, expected, atol=1e-9)
    point_a, point_b = a[0] + s * (a[1] - a[0]), b[0] + t * (b[1] - b[0])
    assert_allclose(np.linalg.norm(point_a - point_b), distance, atol=1e-12)


@pytest.mark.parametrize(
    ("point", "ends", "expected"),
    [
        (Y, (-X, X), 1.0),  # beside it
        (4 * Y + 4 * X, (-X, X), 5.0),  # 3 4 5 beyond either end
        (4 * Y - 4 * X, (-X, X), 5.0),
        (0.3 * X, (-X, X), 0.0),  # on it
        (3 * X + 4 * Z, (ZERO, ZERO), 5.0),  # two points
    ],
)
def test_a_point_and_a_segment(point, ends, expected):
    assert_allclose(point_segment(point, *ends), expected, atol=1e-15)


def test_a_point_is_a_segment_without_length_to_the_last_digit():
    """Whichever of the two it is: the search for fits takes one for the other."""
    draw = np.random.default_rng(3)
    point, start, end = draw.normal(size=(3, 40, 3))
    end[:5] = start[:5]
    found = point_segment(point[:, None], start, end)
    assert_array_equal(found, segment_segment(point[:, None], point[:, None], start, end)[0])
    assert_array_equal(found, segment_segment(start, end, point[:, None], point[:, None])[0])


def test_any_shape():
    draw = np.random.default_rng(2)
    a = draw.normal(size=(4, 5, 6, 3))

    grid = segment_segment(*a)[0]

    assert grid.shape == (5, 6)
    assert_allclose(grid[2, 3], segment_segment(*a[:, 2, 3])[0], atol=1e-15)


def test_in_a_plane_it_is_as_in_space_to_the_last_digit():
    """Two columns are three of which the last is 0 everywhere: crossing, parallel, beyond an end, without length."""
    draw = np.random.default_rng(5)
    a, b, c, d = draw.normal(size=(4, 400, 2))
    b[:20], d[10:30] = a[:20], c[10:30]
    d[40:60] = c[40:60] + (b - a)[40:60]
    flat = [np.concatenate([each, np.zeros((400, 1))], axis=1) for each in (a, b, c, d)]
    for own, space in zip(segment_segment(a, b, c, d), segment_segment(*flat), strict=True):
        assert_array_equal(own, space)
    assert_array_equal(point_segment(a, c, d), point_segment(flat[0], *flat[2:]))
