"""Capsules in random poses against the Flexible Collision Library (python-fcl), a general-purpose
collision library that shares no code with ours. Its capsules are tested to 1e-4 m: that is its own
solver's tolerance."""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.geometry.distances import segment_segment

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


def test_random_capsules():
    draw = np.random.default_rng(5)
    n = 2000
    ends = draw.uniform(-1, 1, (4, n, 3)) * draw.choice([0.05, 0.5, 2.0], (1, n, 1))
    radii = draw.uniform(0.01, 0.3, (2, n))
    ours = segment_segment(*ends)[0] - radii.sum(axis=0)
    apart = np.flatnonzero(ours > 1e-3)  # theirs gives no depth for capsules that overlap

    found = np.array(
        [
            theirs(
                capsule(ends[0, k], ends[1, k], radii[0, k]),
                capsule(ends[2, k], ends[3, k], radii[1, k]),
            )
            for k in apart
        ]
    )

    assert len(apart) > 800
    assert_allclose(ours[apart], found, atol=1e-4)


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
