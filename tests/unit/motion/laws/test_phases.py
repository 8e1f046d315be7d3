"""Numbers along the beats: derivatives by sympy, limits against dense maxima."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
import sympy
from numpy.testing import assert_allclose

from sequencer.motion.laws.phases import (
    STEP_ACCELERATION,
    STEP_JERK,
    STEP_RATE,
    CosineSteps,
    Spline,
    Steps,
    Wave,
    smooth_step,
)

DENSE = np.linspace(-7.0, 9.0, 64_001)
UNEVEN = ((0.0, 1.0, 1.5, 4.0), (0.2, -1.0, 0.7, 0.9))
EVEN = ((0.0, 1.0, 2.0), (0.0, 1.0, 0.0))  # equal and opposite: the acceleration does not jump


def test_the_step_is_the_minimum_jerk_polynomial():
    """10x³ − 15x⁴ + 6x⁵ (Flash and Hogan, 1985); its peaks from the roots of the next derivative."""
    x = sympy.Symbol("x")
    step = 10 * x**3 - 15 * x**4 + 6 * x**5
    at = np.linspace(0, 1, 11)
    for k, part in enumerate(smooth_step(at)):
        assert_allclose(part, [float(sympy.diff(step, x, k).subs(x, v)) for v in at], atol=1e-12)
    for k, most in ((1, STEP_RATE), (2, STEP_ACCELERATION), (3, STEP_JERK)):
        places = [0, 1, *sympy.solve(sympy.diff(step, x, k + 1), x)]
        own = [abs(sympy.diff(step, x, k).subs(x, v)) for v in places if 0 <= v <= 1]
        assert most == pytest.approx(float(max(own)))
    assert_allclose(smooth_step(np.array([-1.0, 2.0])), [[0, 1], [0, 0], [0, 0]])


PHASES = {
    "wave": Wave(0.4, 0.7, ((0.5, 3.0, 0.2),)),
    "falling wave": Wave(0.4, -0.7, ((-0.5, -3.0, 0.2),)),
    "steps": Steps(*UNEVEN),
    "steps that end": Steps(*UNEVEN, repeats=False),
    "cosines": CosineSteps(*UNEVEN),
    "even cosines": CosineSteps(*EVEN),
    "spline": Spline(*UNEVEN),
    "even spline": Spline((0.0, 1.0, 2.0, 3.0, 4.0), (0.0, 1.0, -0.5, 0.8, 0.0)),
}


@pytest.mark.parametrize("name", PHASES)
def test_rates_are_differences_and_stay_within_limits(name):
    phase = PHASES[name]
    value, rate, push = phase.at(DENSE)
    step = DENSE[1] - DENSE[0]
    limits = phase.limits()

    assert_allclose(np.diff(value) / step, (rate[1:] + rate[:-1]) / 2, atol=1e-4)
    assert np.quantile(np.abs(np.diff(rate) / step - (push[1:] + push[:-1]) / 2), 0.999) < 1e-3
    for found, most in zip((rate, push, np.diff(push) / step), limits, strict=False):
        assert np.max(np.abs(found)) <= most * (1 + 1e-9) + 1e-9


@pytest.mark.parametrize(
    ("name", "orders"),
    [
        ("steps", (1, 2, 3)),
        ("steps that end", (1, 2, 3)),
        ("cosines", (1, 2)),
        ("even cosines", (1, 2, 3)),
        ("spline", (2,)),
        ("even spline", (2, 3)),
    ],
)
def test_limits_said_to_be_exact_are(name, orders):
    phase = PHASES[name]
    _, rate, push = phase.at(DENSE)
    jerk = np.diff(push) / (DENSE[1] - DENSE[0])
    for order in orders:
        dense = np.max(np.abs((rate, push, jerk)[order - 1]))
        assert phase.limits()[order - 1] <= 1.02 * dense


def test_a_spline_s_first_limit_is_its_pieces_coefficients():
    """A cubic's slope c + 2bx + 3ax² is at most |c| + 2|b|w + 3|a|w²; the steady drift comes on top."""
    from scipy.interpolate import CubicSpline

    knots, values = np.array(UNEVEN[0]), np.array(UNEVEN[1])
    drift = (values[-1] - values[0]) / (knots[-1] - knots[0])
    level = values - drift * knots
    level[-1] = level[0]
    a, b, c, _ = np.abs(CubicSpline(knots, level, bc_type="periodic").c)
    wide = np.diff(knots)
    expected = abs(drift) + np.max(c + 2 * b * wide + 3 * a * wide**2)
    limits = PHASES["spline"].limits()

    assert limits[0] == pytest.approx(expected)
    assert limits[2] == pytest.approx(6 * a.max())
    assert limits[3] == np.inf


def test_a_wave_s_limits_are_sums_of_sizes():
    """|a|·|f|ᵏ of every sway, and the rate: any calculus text."""
    wave = Wave(0.4, -0.7, ((-0.5, 3.0, 0.2), (0.25, -2.0, 0.0)))
    orders = [0.5 * 3.0**k + 0.25 * 2.0**k for k in (1, 2, 3, 4)]

    assert_allclose(wave.limits(), [0.7 + orders[0], *orders[1:]])


def test_where_the_acceleration_jumps_no_jerk_is_stated():
    assert CosineSteps(*UNEVEN).limits()[2:] == (np.inf, np.inf)
    assert CosineSteps(*EVEN).limits()[2] == pytest.approx(0.5 * np.pi**3)
    assert Steps(*UNEVEN).limits()[3] == np.inf


def test_values_stand_at_their_knots_and_drift_a_cycle_on():
    knots, values = np.array(UNEVEN[0]), np.array(UNEVEN[1])
    for kind in (Steps, CosineSteps, Spline):
        phase = kind(*UNEVEN)
        assert_allclose(phase.at(knots)[0], values, atol=1e-12)
        assert_allclose(phase.at(knots + 8.0)[0], values + 2 * 0.7, atol=1e-12)
        assert_allclose(phase.at(knots - 4.0)[0], values - 0.7, atol=1e-12)
        if kind is not Spline:
            assert_allclose(phase.at(knots)[1], 0, atol=1e-12)
    ends = Steps(*UNEVEN, repeats=False).at(np.array([-3.0, 9.0]))
    assert_allclose(ends, [[0.2, 0.9], [0, 0], [0, 0]])
    later = tuple(knots + 3.0)
    for kind in (Steps, CosineSteps, Spline):
        moved = kind(later, UNEVEN[1]).at(DENSE + 3.0)
        assert_allclose(moved, kind(*UNEVEN).at(DENSE), atol=1e-9)


@pytest.mark.parametrize("kind", [Steps, CosineSteps, Spline])
def test_knots_that_make_no_sense_are_refused(kind):
    for knots, values in (((0.0, 1.0), (1.0,)), ((0.0,), (1.0,))):
        with pytest.raises(ValueError, match="as many values as knots"):
            kind(knots, values)
    with pytest.raises(ValueError, match="knots must increase"):
        kind((0.0, 1.0, 1.0), (0.0, 1.0, 2.0))
    kind((0.0, 1.0), (0.0, 0.0))


@pytest.mark.parametrize("share", [0.01, 100.0])
@pytest.mark.parametrize("name", PHASES)
def test_limits_grow_with_the_values(name, share):
    """All are linear in the values: any calculus text."""
    phase = PHASES[name]
    if isinstance(phase, Wave):
        sways = tuple((share * a, f, lead) for a, f, lead in phase.sways)
        scaled = Wave(share * phase.offset, share * phase.rate, sways)
    else:
        scaled = replace(phase, values=tuple(share * value for value in phase.values))
    assert_allclose(scaled.limits(), share * np.array(phase.limits()), rtol=1e-9)


def test_knots_may_be_as_near_as_they_like():
    for kind in (Steps, CosineSteps, Spline):
        assert kind((0.0, 0.25, 0.5), (0.0, 1.0, 0.0)).limits()[0] > 3.0


@pytest.mark.parametrize("seed", range(3))
def test_a_spline_s_limits_are_those_of_its_pieces_to_a_millionth(seed):
    """Second and third derivatives are largest at knots: differences of the second tell both."""
    draw = np.random.default_rng(seed)
    knots = np.concatenate([[0.0], np.cumsum(draw.uniform(0.3, 1.5, 6))])
    phase = Spline(tuple(knots), (*draw.normal(size=6), 0.4))
    inside = [np.linspace(a + 1e-9, b - 1e-9, 200) for a, b in pairwise(knots)]
    second = [phase.at(beats)[2] for beats in inside]
    _, bend, jerk, snap = phase.limits()
    assert bend == pytest.approx(max(np.abs(each).max() for each in second), rel=1e-6)
    steps = zip(second, inside, strict=True)
    assert jerk == pytest.approx(
        max(np.abs(np.diff(s) / np.diff(b)).max() for s, b in steps), rel=1e-6
    )
    assert snap == np.inf
