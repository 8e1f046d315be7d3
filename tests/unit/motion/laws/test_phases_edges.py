"""Phases at their edges: when a half cosine's acceleration counts as smooth, and what lies before, at and after."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.laws.phases import CosineSteps, Spline, Steps, Wave, smooth_step

INF = np.inf


@pytest.mark.parametrize(
    ("knots", "values", "smooth"),
    [
        ((0.0, 1.0, 2.0), (0.0, 0.01, 0.0), True),
        ((0.0, 1.0, 2.01), (0.0, 0.01, 0.0), False),  # small, and uneven by two hundredths
        ((0.0, 1.0, 2.0), (0.0, 0.01, 0.02), False),  # even, but not opposite
        # the acceleration goes with 1/w²: off by 0.8e-9 and by 1.2e-9 of itself
        ((0.0, 1.0, 2.0 + 4e-10), (0.0, 5.0, 0.0), True),
        ((0.0, 1.0, 2.0 + 6e-10), (0.0, 5.0, 0.0), False),
        # a jump of π²/2 times the step: 0.94e-12 and 1.09e-12
        ((0.0, 1.0, 2.0), (0.0, 1.9e-13, 1.9e-13), True),
        ((0.0, 1.0, 2.0), (0.0, 2.2e-13, 2.2e-13), False),
        ((0.0, 1.0, 2.0, 3.0, 4.0), (0.0, 1.0, 0.0, 1.0, 0.0), True),
        ((0.0, 1.0, 2.0, 3.0), (0.0, 1.0, 0.0, 1.0), False),  # opposite, but not where it repeats
    ],
)
def test_a_half_cosine_s_jerk_is_stated_where_its_acceleration_does_not_jump(knots, values, smooth):
    third = CosineSteps(knots, values).limits()[2]
    widths, halves = np.diff(knots), np.abs(np.diff(values)) / 2
    if smooth:
        assert third == pytest.approx(np.max(halves * (np.pi / widths) ** 3), rel=1e-12)
    else:
        assert third == INF


def test_limits_of_each_kind_by_hand():
    """Steps of 1 in half a beat, of −3 in two, of 2 in one: the steepest is another one at each order."""
    knots, values = (0.0, 0.5, 2.5, 3.5), (0.0, 1.0, -2.0, 0.0)
    steps, cosines = Steps(knots, values).limits(), CosineSteps(knots, values).limits()
    assert_allclose(steps[:3], (15 / 8 * 2.0, 10 / np.sqrt(3) * 4.0, 60 * 8.0), rtol=1e-15)
    assert_allclose(cosines[:2], (np.pi, 2 * np.pi**2), rtol=1e-15)
    slow = Steps((0.0, 2.0, 5.0), (0.0, 1.0, -2.0)).limits()  # of 1 in two beats, of −3 in three
    assert_allclose(slow[:3], (15 / 8, 10 / np.sqrt(3) / 3, 60 / 8), rtol=1e-15)
    wave = Wave(0.4, -0.7, ((-0.5, 3.0, 0.2), (0.25, -2.0, 0.0)))
    assert_allclose(wave.limits(), (2.7, 5.5, 15.5, 44.5), rtol=1e-14)  # by hand


def test_a_wave_by_hand():
    """2 + 3t + 0.5·cos(4t + 0.1) − 0.2·cos(5t − 0.3) and its derivatives."""
    t = np.array([[-0.7, 0.0], [0.4, 2.1]])
    a, b = 4 * t + 0.1, 5 * t - 0.3
    value, rate, push = Wave(2.0, 3.0, ((0.5, 4.0, 0.1), (-0.2, 5.0, -0.3))).at(t)
    assert_allclose(value, 2 + 3 * t + 0.5 * np.cos(a) - 0.2 * np.cos(b), rtol=1e-14)
    assert_allclose(rate, 3 - 2 * np.sin(a) + np.sin(b), rtol=1e-13)
    assert_allclose(push, -8 * np.cos(a) + 5 * np.cos(b), rtol=1e-13)
    assert Wave() == Wave(0.0, 0.0, ())
    for part, expected in zip(Wave(1.5, 2.0).at(t), (1.5 + 2 * t, 2.0, 0.0), strict=True):
        assert_allclose(part, np.broadcast_to(expected, t.shape))


KNOTS, VALUES = (1.0, 1.5, 3.0, 5.0), (0.2, -1.0, 0.7, 0.9)  # 4 beats, 0.7 higher after each


def piece(t):
    """Cycle, piece, its width and jump, and the share of it that is over."""
    cycle = np.floor((t - 1.0) / 4.0)
    own = t - 4.0 * cycle
    k = 0 if own < 1.5 else 1 if own < 3.0 else 2
    width = KNOTS[k + 1] - KNOTS[k]
    return cycle, VALUES[k], width, VALUES[k + 1] - VALUES[k], (own - KNOTS[k]) / width


# Before, at and after every knot, and whole cycles away on either side.
TIMES = [-7.0, -3.2, -3.0, 0.9, 1.0, 1.2, 1.5, 1.6, 2.9, 3.0, 4.7, 5.0, 5.3, 6.1, 9.0, 12.6]


@pytest.mark.parametrize("t", TIMES)
def test_steps_and_half_cosines_by_hand(t):
    cycle, low, width, jump, x = piece(t)
    value, rate, push = (float(part[0]) for part in Steps(KNOTS, VALUES).at(np.array([t])))
    base = low + 0.7 * cycle
    assert value == pytest.approx(base + jump * (10 * x**3 - 15 * x**4 + 6 * x**5), abs=1e-13)
    assert rate == pytest.approx(jump / width * 30 * x**2 * (1 - x) ** 2, abs=1e-13)
    assert push == pytest.approx(jump / width**2 * (60 * x - 180 * x**2 + 120 * x**3), abs=1e-12)
    value, rate, push = (float(part[0]) for part in CosineSteps(KNOTS, VALUES).at(np.array([t])))
    assert value == pytest.approx(base + jump / 2 * (1 - np.cos(np.pi * x)), abs=1e-13)
    assert rate == pytest.approx(jump / 2 * np.pi / width * np.sin(np.pi * x), abs=1e-13)
    assert push == pytest.approx(jump / 2 * (np.pi / width) ** 2 * np.cos(np.pi * x), abs=1e-12)


def test_steps_that_end_stay_where_they_ended():
    once = Steps(KNOTS, VALUES, repeats=False)
    found = once.at(np.array([-9.0, 1.0, 5.0, 5.1, 99.0]))
    assert_allclose(found[0], [0.2, 0.2, 0.9, 0.9, 0.9])
    assert_allclose(found[1:], np.zeros((2, 5)))
    within = np.array([1.2, 2.0, 4.7])
    for own, other in zip(once.at(within), Steps(KNOTS, VALUES).at(within), strict=True):
        assert_allclose(own, other)


def test_a_spline_by_scipy():
    """The level part as scipy's periodic spline, the drift of 0.7 in four beats on top; its limits from
    the pieces' own derivatives at both ends, where a quadratic slope is bounded by sizes."""
    from scipy.interpolate import CubicSpline

    knots = np.array(KNOTS)
    level = np.array(VALUES) - 0.175 * (knots - 1.0)
    level[-1] = level[0]
    spline = CubicSpline(knots, level, bc_type="periodic")
    t = np.array(TIMES)
    own = 1.0 + np.mod(t - 1.0, 4.0)
    value, rate, push = Spline(KNOTS, VALUES).at(t)
    assert_allclose(value, spline(own) + 0.175 * (t - 1.0), atol=1e-13)
    assert_allclose(rate, spline(own, 1) + 0.175, atol=1e-13)
    assert_allclose(push, spline(own, 2), atol=1e-13)
    a, b, c, _ = np.abs(spline.c)
    w = np.diff(knots)
    first, second, third, fourth = Spline(KNOTS, VALUES).limits()
    assert first == pytest.approx(0.175 + np.max(c + 2 * b * w + 3 * a * w**2), rel=1e-12)
    assert second == pytest.approx(np.max(np.abs(spline(knots, 2))), rel=1e-12)
    assert third == pytest.approx(np.max(6 * a), rel=1e-12)
    assert fourth == INF


def test_a_step_is_flat_outside():
    x = np.array([-2.0, -0.1, 0.0, 0.25, 0.5, 1.0, 1.1, 3.0])
    value, rate, push = smooth_step(x)
    assert_allclose(value, [0, 0, 0, 0.103515625, 0.5, 1, 1, 1])  # by hand at a quarter
    assert_allclose(rate, [0, 0, 0, 1.0546875, 1.875, 0, 0, 0])
    assert_allclose(push, [0, 0, 0, 5.625, 0, 0, 0, 0], atol=1e-15)


@pytest.mark.parametrize("kind", [Steps, CosineSteps, Spline])
def test_two_knots_will_do_and_each_must_be_later(kind):
    assert_allclose(kind((1.0, 3.0), (0.5, 0.5)).at(np.array([2.0]))[0], 0.5)
    for knots in ((1.0, 1.0), (1.0, 0.0), (0.0, 2.0, 1.0)):
        with pytest.raises(ValueError, match="knots must increase"):
            kind(knots, (0.0,) * len(knots))
    for knots, values in (((1.0,), (0.0,)), ((0.0, 1.0), (0.0, 0.0, 0.0)), ((), ())):
        with pytest.raises(ValueError, match="as many values as knots"):
            kind(knots, values)
