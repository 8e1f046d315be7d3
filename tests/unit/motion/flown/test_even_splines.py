"""Splines of degree 5 against scipy's, and their bounds between knots against dense sampling."""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.interpolate import BPoly, BSpline, make_interp_spline
from scipy.linalg import solve_banded

from sequencer.motion.flown.even_splines import DEGREE, EvenSpline, between, closed, pieces, through

SPANS, START, STEP = 7, 0.4, 0.3
DRAW = np.random.default_rng(5)
OPEN = EvenSpline(start=START, step=STEP, coefficients=DRAW.normal(size=(SPANS + DEGREE, 3)))
ROUND = EvenSpline(
    start=START, step=STEP, coefficients=closed(DRAW.normal(size=(SPANS, 3))), periodic=True
)
INSIDE = START + STEP * SPANS * np.linspace(0.0, 1.0, 200, endpoint=False)
BOTH = pytest.mark.parametrize("curve", [OPEN, ROUND], ids=["open", "periodic"])


def of_scipy(curve):
    """The same coefficients over evenly spaced knots."""
    knots = curve.start + curve.step * np.arange(-DEGREE, curve.spans + DEGREE + 1)
    return BSpline(knots, curve.coefficients, DEGREE)


@BOTH
@pytest.mark.parametrize("order", range(5))
def test_values_and_derivatives_are_those_of_scipy(curve, order):
    wanted = of_scipy(curve)(INSIDE, nu=order)
    assert_allclose(curve.at(INSIDE, order), wanted, rtol=1e-9, atol=1e-9 / STEP**order)
    shaped = curve.at(INSIDE.reshape(4, 50), order)
    assert_allclose(shaped.reshape(-1, 3), wanted, rtol=1e-9, atol=1e-9 / STEP**order)


@BOTH
@pytest.mark.parametrize("order", range(5))
@pytest.mark.parametrize("share", [0.0, 0.3, 1.0])
def test_at_one_place_of_every_span_it_is_what_it_is_there(curve, order, share):
    beats = curve.start + (np.arange(SPANS) + np.clip(share, 1e-9, 1.0 - 1e-9)) * STEP
    wanted = of_scipy(curve)(beats, nu=order)
    assert_allclose(curve.on_each_span(share, order), wanted, rtol=1e-5, atol=1e-5 / STEP**order)
    inside = of_scipy(curve)(curve.start + (np.arange(SPANS) + 0.5) * STEP, nu=order)
    assert_allclose(curve.on_each_span(0.5, order), inside, rtol=1e-9, atol=1e-9 / STEP**order)


def test_pieces_are_positive_and_sum_to_one():
    """de Boor, chapter IX: B-splines are a partition of unity; derivatives of a constant vanish."""
    places = np.linspace(0.0, 1.0, 21)
    assert np.all(pieces(places) >= -1e-15)  # to rounding
    assert_allclose(pieces(places).sum(axis=1), 1.0, rtol=1e-14)
    for order in range(1, 6):
        assert_allclose(pieces(places, order).sum(axis=1), 0.0, atol=1e-12)


def test_one_that_repeats_does_so_and_one_that_ends_stops():
    around = ROUND.end - ROUND.start
    assert_allclose(ROUND.end, START + SPANS * STEP)
    for order in range(5):  # four continuous derivatives, over the seam too
        assert_allclose(
            ROUND.at(INSIDE + 3 * around, order), ROUND.at(INSIDE, order), rtol=1e-8, atol=1e-7
        )
        seam = ROUND.at(np.array([ROUND.end - 1e-9, ROUND.start]), order)
        assert_allclose(seam[0], seam[1], atol=1e-4)
    beyond = OPEN.at(np.array([START - 1.0, START, OPEN.end, OPEN.end + 1.0]))
    assert_allclose(beyond[0], beyond[1])
    assert_allclose(beyond[3], beyond[2])


@BOTH
def test_at_one_beat_it_is_what_it_is_at_many(curve):
    """To the last digit: what flies on from a state that was found alone is kept by that state."""
    beats = [START - 0.3, START, START + STEP, *INSIDE.tolist()[:40], curve.end, curve.end + 7.1]
    found = np.stack([curve.path_at(beat) for beat in beats])
    for order in range(5):
        assert np.array_equal(found[:, order], curve.at(np.array(beats), order))


@BOTH
@pytest.mark.parametrize("times", [2, 8])
def test_the_same_curve_over_finer_knots(curve, times):
    fine = curve.finer(times)
    assert (fine.spans, fine.periodic) == (times * SPANS, curve.periodic)
    for order in range(5):
        assert_allclose(
            fine.at(INSIDE, order), curve.at(INSIDE, order), rtol=1e-8, atol=1e-8 / STEP**order
        )
    # Knots inserted by scipy one by one, in the inner spans, where its end knots do not count.
    wanted = of_scipy(curve)
    for k in range(SPANS):
        for part in range(1, times):
            wanted = wanted.insert_knot(curve.start + STEP * (k + part / times))
    own, inner = fine.coefficients, slice(DEGREE, times * SPANS)
    assert_allclose(own[inner], wanted.c[inner], rtol=1e-9, atol=1e-12)


@BOTH
@pytest.mark.parametrize("order", range(5))
def test_bounds_are_never_below_what_is_sampled_and_close_in_on_it(curve, order):
    def sampled(each):
        places = each.start + each.step * (np.arange(each.spans)[:, None] + np.linspace(0, 1, 60))
        inner = np.clip(places, each.start + 1e-12, each.end - 1e-9)
        return np.linalg.norm(each.at(inner, order), axis=-1).max(axis=1)

    assert np.all(curve.largest(order) >= sampled(curve) * (1 - 1e-7))
    fine = curve.finer(16)
    assert np.all(fine.largest(order) >= sampled(fine) * (1 - 1e-7))
    assert fine.largest(order).max() <= 1.02 * sampled(fine).max()
    assert curve.controls(order).shape == (SPANS, DEGREE + 1 - order, 3)


@BOTH
@pytest.mark.parametrize("order", range(5))
def test_bernstein_points_are_those_of_scipy(curve, order):
    """`scipy.interpolate.BPoly` of them is the curve itself; so they hull it, and end in its values."""
    points = curve.bernstein(order)
    knots = curve.start + np.arange(SPANS + 1) * curve.step
    beats = np.linspace(knots[0], knots[-1] - 1e-9, 500)
    own = BPoly(points.transpose(1, 0, 2), knots)
    assert_allclose(own(beats), curve.at(beats, order), rtol=1e-7, atol=1e-6)
    hulls = np.linalg.norm(points, axis=-1).max(axis=1)
    assert np.all(hulls <= curve.largest(order) * (1 + 1e-12))


@BOTH
def test_the_fourth_derivative_runs_straight_between_its_controls(curve):
    """A spline of degree 5 has a fourth derivative of degree 1: its controls are its values at the knots."""
    knots = curve.start + STEP * np.arange(SPANS)
    assert_allclose(curve.controls(4)[:, 0], curve.at(knots, 4), rtol=1e-8, atol=1e-6)


@pytest.mark.parametrize("count", [3, 4, 5, 9, 24])
def test_through_points(count):
    points = DRAW.normal(size=(count, 3))
    curve = through(points, start=START, step=STEP)
    knots = START + STEP * np.arange(count)
    assert_allclose(curve.at(knots), points, atol=1e-12)
    assert curve.periodic
    if count > DEGREE:  # scipy needs more points than the degree
        around = np.append(knots, START + STEP * count)
        wanted = make_interp_spline(
            around, np.vstack([points, points[:1]]), k=DEGREE, bc_type="periodic"
        )
        between = knots + 0.37 * STEP
        assert_allclose(curve.at(between), wanted(between), atol=1e-9)


def test_through_a_circle_is_a_circle():
    """The error of a periodic spline of degree 5 through a circle falls with the sixth power of the step."""

    def off(count):
        turn = 2 * np.pi * np.arange(count) / count
        points = np.stack([np.cos(turn), np.sin(turn), 0 * turn], axis=1)
        curve = through(points, start=0.0, step=1.0 / count)
        radius = np.linalg.norm(curve.at(np.linspace(0.0, 1.0, 500)), axis=1)
        return np.abs(radius - 1.0).max()

    assert off(24) < 1e-6
    assert off(24) < off(12) / 40


@pytest.mark.parametrize(("points", "step"), [(7, 1.0), (40, 1 / 96), (40, 1 / 48), (700, 1 / 96)])
def test_equations_factored_before_are_solved_as_scipy_solves_them(points, step):
    """In every digit, and whatever curve they were factored for."""
    random = np.random.default_rng(points)
    rows = [pieces(np.zeros(1), order)[0, :DEGREE] / step**order for order in range(3)]
    count, half = points + DEGREE - 1, DEGREE - 1
    band = np.zeros((2 * half + 1, count))
    orders = [1, 2, *[0] * points, 2, 1]
    knots = [0, 0, *range(points), points - 1, points - 1]
    for row, (order, knot) in enumerate(zip(orders, knots, strict=True)):
        for j in range(DEGREE):
            band[half + row - knot - j, knot + j] = rows[order][j]
    for _ in range(2):
        path = np.cumsum(random.normal(size=(points, 3)), axis=0)
        first, last = random.normal(size=(2, 2, 3))
        load = np.concatenate([first, path, last[::-1]])
        found = between(path, start=2.0, step=step, first=first, last=last).coefficients
        assert np.array_equal(found, solve_banded((half, half), band, load))
    path[3, 1] = np.nan
    with pytest.raises(ValueError, match="no number"):
        between(path, start=2.0, step=step, first=first, last=last)


@pytest.mark.parametrize("order", [0, 1, 2, 3])
@pytest.mark.parametrize("spans", [1, 2, 7, 40])
def test_the_largest_is_that_of_the_control_points_of_each_span(order, spans):
    """Source: the control points themselves, span by span."""
    points = np.random.default_rng(spans).normal(size=(spans + 5, 3))
    curve = EvenSpline(start=0.0, step=0.3, coefficients=points)
    expected = np.linalg.norm(curve.controls(order), axis=-1).max(axis=1)
    assert np.array_equal(curve.largest(order), expected)
