"""Hands over their limits: who is, by how much, and how that follows the head's path, by differences."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.flown.fast_hand import ORDERS, HandLimit, too_fast
from sequencer.motion.flown.tether import UP, flight, force

LENGTH, DRAG = 0.45, 0.2
GAUSS_SHARES = np.array([[0.3, 0.7], [0.4, 0.6]])
# gravity as two copies see it
UPS = np.stack([UP, UP[[1, 2, 0]]])
WEIGHTS = (2.0, 3e-3)


def path(seed=8):
    """Derivatives of the head at 2 spans of 2 places, as fast as a prop's."""
    scale = np.array([0.5, 4.0, 30.0, 200.0, 1500.0])[:, None, None, None]
    return scale * np.random.default_rng(seed).normal(size=(ORDERS, 2, 2, 3))


def fast(own, speed, acceleration, drag=DRAG):
    pulled = force(own[1], own[2], drag, UPS[:, None, None])
    limits = HandLimit(speed, WEIGHTS[0]), HandLimit(acceleration, WEIGHTS[1])
    return too_fast(own, pulled, GAUSS_SHARES, limits, length=LENGTH, drag=drag)


def test_none_under_the_limits():
    assert fast(path(), np.inf, np.inf) == []


def test_who_is_over_and_by_how_much():
    """Without drag the hand of `flight`, which test_tether.py holds to differences."""
    own = path()
    seen = [flight(tuple(own), length=LENGTH, drag=0.0, up=up) for up in UPS]
    for kind, name in enumerate(("hand_rate", "hand_acceleration")):
        size = np.stack([np.linalg.norm(getattr(each, name), axis=-1) for each in seen])
        limit = float(np.median(size))
        (found,) = fast(own, *((limit, np.inf) if kind == 0 else (np.inf, limit)), drag=0.0)
        over = size > limit
        assert len(found.over) == over.sum() == 4
        assert_allclose(found.over, (size - limit)[over], rtol=1e-9)
        wanted = WEIGHTS[kind] * np.sum(GAUSS_SHARES * np.maximum(size - limit, 0.0) ** 2)
        assert found.value == pytest.approx(wanted)


def both(own):
    return fast(own, 1.0, 20.0)


def test_slopes_by_differences():
    own, step = path(), 1e-6
    for kind, found in enumerate(both(own)):
        assert len(found.over) == 8  # every point of both copies
        for order in range(1, ORDERS):
            for axis in range(3):
                moved = step * max(1.0, 10.0**order / 10)
                up, down = own.copy(), own.copy()
                up[order, ..., axis] += moved
                down[order, ..., axis] -= moved
                wanted = (both(up)[kind].moved - both(down)[kind].moved) / (2 * moved)
                column = found.slopes[:, :, 3 * (order - 1) + axis]
                # the drag's second rate is left out of the hand's acceleration, and of its slopes
                assert_allclose(column, wanted, rtol=1e-4, atol=1e-6 * np.abs(found.slopes).max())


def test_gradient_and_second_derivatives_add_up():
    own = path()
    slope = np.zeros((2, 2, ORDERS, 3))
    matrix = np.zeros((2, 2, ORDERS, 3, ORDERS, 3))
    for found in both(own):
        found.added(slope, matrix)
    assert_allclose(slope[:, :, 0], 0.0)  # where the head is does not matter

    def value(moved):
        return sum(each.value for each in both(moved))

    for order in range(1, ORDERS):
        size = 1e-5 * 10.0**order / 10
        for at in np.ndindex(2, 2, 3):
            up, down = own.copy(), own.copy()
            up[(order, *at)] += size
            down[(order, *at)] -= size
            wanted = (value(up) - value(down)) / (4 * size)
            assert slope[at[0], at[1], order, at[2]] == pytest.approx(wanted, rel=1e-4, abs=1e-6)
    flat = matrix.reshape(4, 15, 15)
    assert_allclose(flat, np.swapaxes(flat, 1, 2), atol=1e-9 * np.abs(flat).max())
    assert np.linalg.eigvalsh(flat).min() > -1e-9 * np.abs(flat).max()


def test_second_derivatives_where_the_hand_moves_in_proportion():
    """With velocity alone scaled the hand's speed is linear in nothing else: differences of the gradient agree.

    Of the jerk the hand's velocity is a linear function, so nothing is left out there.
    """
    own = path()
    at = (slice(None), slice(None), 3)

    def gradient(moved):
        slope, matrix = np.zeros((2, 2, ORDERS, 3)), np.zeros((2, 2, ORDERS, 3, ORDERS, 3))
        for found in fast(moved, 1.0, np.inf):
            found.added(slope, matrix)
        return slope, matrix

    matrix = gradient(own)[1]
    for axis in range(3):
        up, down = own.copy(), own.copy()
        up[3, ..., axis] += 1e-3
        down[3, ..., axis] -= 1e-3
        wanted = (gradient(up)[0] - gradient(down)[0])[at] / 2e-3
        assert_allclose(matrix[:, :, 3, :, 3, axis], wanted, rtol=1e-5, atol=1e-9)
