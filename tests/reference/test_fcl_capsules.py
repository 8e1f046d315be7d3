"""Capsules in random poses against the Flexible Collision Library (python-fcl), a general-purpose
collision library that shares no code with ours. Its capsules are tested to 1e-4 m: that is its own
solver's tolerance."""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.geometry.segments import segment_segment

fcl = pytest.importorskip("fcl")


def capsule(start, end, radius):
    """A capsule of theirs: along z, placed by a rotation and a shift."""
    axis = end - start
    length = float(np.linalg.norm(axis))
    turn = np.eye(3)
    if length > 0:
        turn = Rotation.align_vectors([axis / length], [[0.0, 0.0, 1.0]])[0].as_matrix()
    shape = fcl.Capsule(radius, length) if length > 0 else fcl.Sphere(radius)
    return fcl.CollisionObject(shape, fcl.Transform(turn, 0.5 * (start + end)))


def theirs(a, b):
    return fcl.distance(a, b, fcl.DistanceRequest(), fcl.DistanceResult())


def turns_from_z(axes):
    """Quaternions (w, x, y, z) that turn z to each axis: half-way between the two."""
    half = axes / np.linalg.norm(axes, axis=1, keepdims=True) + np.array([0.0, 0.0, 1.0])
    half /= np.linalg.norm(half, axis=1, keepdims=True)
    return np.stack([half[:, 2], -half[:, 1], half[:, 0], np.zeros(len(half))], axis=1)


def capsules(starts, ends, radii):
    """As `capsule`, for many at once."""
    axes = ends - starts
    lengths, turns = np.linalg.norm(axes, axis=1), turns_from_z(axes)
    return [
        fcl.CollisionObject(fcl.Capsule(radius, length), fcl.Transform(turn, middle))
        for radius, length, turn, middle in zip(
            radii, lengths, turns, 0.5 * (starts + ends), strict=True
        )
    ]


def test_a_hundred_thousand_random_capsules():
    draw = np.random.default_rng(5)
    n = 100_000
    ends = draw.uniform(-1, 1, (4, n, 3)) * draw.choice([0.05, 0.5, 2.0], (1, n, 1))
    radii = draw.uniform(0.01, 0.3, (2, n))
    ours = segment_segment(*ends)[0] - radii.sum(axis=0)
    apart = np.flatnonzero(ours > 1e-3)  # theirs gives no depth for capsules that overlap

    first = capsules(ends[0, apart], ends[1, apart], radii[0, apart])
    second = capsules(ends[2, apart], ends[3, apart], radii[1, apart])
    found = np.array([theirs(a, b) for a, b in zip(first, second, strict=True)])

    assert len(apart) > 40_000
    assert_allclose(ours[apart], found, atol=1e-4)


def test_corners_that_are_drawn_at_random():
    """Touching ends, zero lengths and parallels, where a closed form goes wrong first."""
    draw = np.random.default_rng(6)
    for _ in range(400):
        a, b, c = draw.uniform(-1, 1, (3, 3))
        for ends in ((a, b, b + 0.4, c), (a, a, b, c), (a, b, a + 0.5, b + 0.5), (a, a, b, b)):
            ours = float(segment_segment(*map(np.asarray, ends))[0]) - 0.03
            if ours > 1e-3:
                pair = capsule(*ends[:2], 0.01), capsule(*ends[2:], 0.02)
                assert ours == pytest.approx(theirs(*pair), abs=1e-4)


@pytest.mark.parametrize(
    "ends",
    [
        ([0, 0, 0], [1, 0, 0], [0, 1, 0], [1, 1, 0]),  # parallel
        ([0, 0, 0], [1, 0, 0], [2, 0, 0], [3, 0, 0]),  # on one line
        ([0, 0, 0], [0, 0, 0], [1, 0, 0], [1, 0, 0]),  # two balls
        ([0, 0, 0], [0, 0, 0], [1, -1, 0], [1, 1, 0]),  # ball and capsule
        ([0, 0, 0], [1, 0, 0], [0, 1, 0], [1, 1 + 1e-6, 0]),  # nearly parallel
    ],
)
def test_corner_cases(ends):
    ends = np.array(ends, dtype=float)
    ours = segment_segment(*ends)[0] - 0.3

    assert_allclose(ours, theirs(capsule(*ends[:2], 0.1), capsule(*ends[2:], 0.2)), atol=1e-4)
