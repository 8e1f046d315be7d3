"""What contact costs: gradient and second derivatives by differences of the cost itself."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.flown.contact import Contact, Curves

DRAW = np.random.default_rng(2)
POINTS = 3
WAYS = DRAW.normal(size=(3, 3))
# two contacts at one point, one at another, at the hand, the head and in between
TOUCH = Contact(
    point=np.array([0, 0, 2]),
    depth=np.array([0.02, 0.05, 0.01]),
    share=np.array([0.0, 0.3, 1.0]),
    normal=WAYS / np.linalg.norm(WAYS, axis=1)[:, None],
)
COSTS = np.array([2.0, 7.0, 5.0])


def cost(head, hand):
    """Σ c·depth², each depth less by how far the place has moved along the normal."""
    place = (1 - TOUCH.share)[:, None] * hand[TOUCH.point] + TOUCH.share[:, None] * head[
        TOUCH.point
    ]
    depth = TOUCH.depth - np.sum(TOUCH.normal * place, axis=1)
    return np.sum(COSTS[TOUCH.point] * depth**2)


@pytest.fixture
def pushed():
    curves = Curves(*np.zeros((2, POINTS, 3)), *np.zeros((3, POINTS, 3, 3)))
    TOUCH.push(COSTS, curves)
    return curves


def shifted(k, size):
    both = np.zeros(2 * POINTS * 3)
    both[k] = size
    return both.reshape(2, POINTS, 3)


def test_gradient(pushed):
    """Central differences are exact for a square."""
    wanted = [(cost(*shifted(k, 1e-2)) - cost(*shifted(k, -1e-2))) / 4e-2 for k in range(18)]
    assert_allclose(np.stack([pushed.by_head, pushed.by_hand]).ravel(), wanted, atol=1e-12)


def test_second_derivatives(pushed):
    full = np.zeros((2, POINTS, 3, 2, POINTS, 3))
    for n in range(POINTS):
        full[0, n, :, 0, n] = pushed.head_head[n]
        full[1, n, :, 1, n] = pushed.hand_hand[n]
        full[0, n, :, 1, n] = pushed.head_hand[n]
        full[1, n, :, 0, n] = pushed.head_hand[n].T
    for k in range(18):
        for j in range(18):
            both, one = shifted(k, 0.1) + shifted(j, 0.1), cost(*shifted(k, 0.1))
            wanted = cost(*both) - one - cost(*shifted(j, 0.1)) + cost(*shifted(0, 0.0))
            assert full.reshape(18, 18)[k, j] == pytest.approx(wanted / 0.02, abs=1e-9)
