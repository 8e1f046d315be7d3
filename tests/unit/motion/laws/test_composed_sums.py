"""Composed laws: the sum of slides and arms differentiated by the product rule, and each of a bound's ways.

A jet here is a value with its first two derivatives by beats, multiplied by the product rule: any calculus text.
"""

from math import comb

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.laws.composed import (
    _GRID,
    ROUNDING_UP,
    Arm,
    ComposedLaw,
    HandPath,
    Slide,
    hand_limits,
)
from sequencer.motion.laws.phases import CosineSteps, Steps, Wave
from sequencer.motion.laws.rotations import Turn

AXES = ((2 / 7, 3 / 7, 6 / 7), (0.0, -0.8, 0.6), (-2 / 3, 1 / 3, 2 / 3))
WAVES = (
    (0.3, 1.1, ((0.4, 2.0, 0.5),)),
    (-0.2, -0.7, ((0.3, 3.0, 0.1),)),
    (0.1, 0.9, ((-0.2, 1.5, 0.7), (0.15, 2.5, -0.4))),
)
X, Y, Z = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
FIELDS = (
    "hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane",
)  # fmt: skip


def times(a, b):
    """The product of two jets."""
    return a[0] * b[0], a[1] * b[0] + a[0] * b[1], a[2] * b[0] + 2 * a[1] * b[1] + a[0] * b[2]


def added(*jets):
    return tuple(sum(parts) for parts in zip(*jets, strict=True))


def fixed(vector):
    return np.array(vector), 0.0, 0.0


def wave(numbers, beats):
    """offset + rate·t + Σ a·cos(f·t + lead) as a jet of columns."""
    offset, rate, sways = numbers
    t = np.asarray(beats)[:, None]
    value, slope, curve = offset + rate * t, rate + 0 * t, 0 * t
    for a, f, lead in sways:
        value = value + a * np.cos(f * t + lead)
        slope = slope - a * f * np.sin(f * t + lead)
        curve = curve - a * f * f * np.cos(f * t + lead)
    return value, slope, curve


def spun(axis, angle, vector):
    """Rodrigues: v·cos α + (a × v)·sin α + a·(a·v)·(1 − cos α), all as jets."""
    a, c, s = np.array(axis), np.cos(angle[0]), np.sin(angle[0])
    cos = (c, -s * angle[1], -s * angle[2] - c * angle[1] ** 2)
    sin = (s, c * angle[1], c * angle[2] - s * angle[1] ** 2)
    rest = (1 - cos[0], -cos[1], -cos[2])
    vector = tuple(np.broadcast_to(part, (len(c), 3)) for part in vector)
    crossed = tuple(np.cross(a, part) for part in vector)
    along = tuple((part @ a)[:, None] * a for part in vector)
    return added(times(cos, vector), times(sin, crossed), times(rest, along))


def turn(k):
    return Turn(AXES[k], Wave(*WAVES[k]))


def test_a_hand_is_the_sum_of_its_slides_and_arms_and_a_tether_the_product_of_its_turns():
    slides = ((0.3, -0.5, 0.2), (0.7, 0.4, -0.6))
    arms = ((0.2, 0.1, -0.3), (-0.4, 0.6, 0.5))
    law = ComposedLaw(
        hand=HandPath(
            (0.5, -0.2, 1.1),
            slides=tuple(Slide(v, Wave(*WAVES[k])) for k, v in enumerate(slides)),
            arms=(Arm(arms[0], (turn(0), turn(1))), Arm(arms[1], (turn(2),))),
        ),
        tether=(0.6, 0.0, 0.8), plane=Y, turns=(turn(1), turn(2)), period=np.inf,
    )  # fmt: skip
    beats = np.array([-0.4, 0.0, 0.7, 1.9, 3.1, 5.3])
    w = [wave(numbers, beats) for numbers in WAVES]
    hand = added(
        fixed((0.5, -0.2, 1.1)),
        *(times(w[k], fixed(vector)) for k, vector in enumerate(slides)),
        spun(AXES[0], w[0], spun(AXES[1], w[1], fixed(arms[0]))),
        spun(AXES[2], w[2], fixed(arms[1])),
    )
    tether, plane = (
        spun(AXES[1], w[1], spun(AXES[2], w[2], fixed(vector))) for vector in ((0.6, 0.0, 0.8), Y)
    )
    expected = [*hand, *tether, plane[0]]
    seen, grid, alone = law.at(beats), law.at(beats.reshape(2, 3)), law.at(0.7)
    for name, rows in zip(FIELDS, expected, strict=True):
        assert_allclose(getattr(seen, name), rows, atol=1e-12, err_msg=name)
        assert_allclose(getattr(grid, name), rows.reshape(2, 3, 3), atol=1e-12, err_msg=name)
        assert_allclose(getattr(alone, name), rows[2], atol=1e-12, err_msg=name)
    assert repr(law) == "<ComposedLaw of 6 phases, does not repeat>"


def test_a_still_law_has_every_instant_in_full():
    law = ComposedLaw(hand=HandPath((1.0, 2.0, 3.0)), tether=X, plane=Z, turns=(), period=2.0)
    seen = law.at(np.zeros((2, 1)))
    values = ((1, 2, 3), (0, 0, 0), (0, 0, 0), X, (0, 0, 0), (0, 0, 0), Z)
    for name, row in zip(FIELDS, values, strict=True):
        assert_allclose(getattr(seen, name), np.tile(row, (2, 1, 1)), atol=0)
        assert getattr(seen, name).flags.c_contiguous
    assert repr(law) == "<ComposedLaw of 0 phases, repeats every 2 beats>"


@pytest.mark.parametrize("sign", [1.0, -1.0])
def test_a_tether_may_be_off_by_a_billionth(sign):
    """Length² and the product with the plane, just inside and just outside 1e-9."""
    for tether, plane in (
        ((1.0 + sign * 0.4e-9, 0.0, 0.0), Z),
        (X, (sign * 1e-9, 0.0, 1.0)),
    ):
        law = ComposedLaw(hand=HandPath(Z), tether=tether, plane=plane, turns=(), period=1.0)
        assert law.period == 1.0
    for tether, plane in (
        ((1.0 + sign * 0.6e-9, 0.0, 0.0), Z),
        (X, (sign * 1.1e-9, 0.0, 1.0)),
    ):
        with pytest.raises(ValueError, match="unit vector in its plane"):
            ComposedLaw(hand=HandPath(Z), tether=tether, plane=plane, turns=(), period=1.0)


ONCE = 2 * np.pi
STEP = 1.0 / 4096


def slid(*phases):
    """A hand that slides along x, y … by a phase each, over a tether that turns evenly."""
    slides = tuple(Slide(v, phase) for v, phase in zip((X, Y, Z), phases, strict=False))
    return ComposedLaw(
        hand=HandPath((0.0, 0.0, 1.0), slides=slides), tether=X, plane=Z,
        turns=(Turn(Z, Wave(rate=ONCE)),), period=1.0,
    )  # fmt: skip


def test_every_sample_of_a_period_counts():
    """Fastest along x at one of 4096 places and nowhere else: sin and sin 2· are both at their peak there, and
    half a period away against each other; a slide across lifts the coefficients' own bound above. By hand."""
    assert (_GRID, ROUNDING_UP) == (4096, 1.0 + 1e-9)
    for place in (0, 1, 4094, 4095):
        one, two = (np.pi / 2 - k * ONCE * place * STEP for k in (1, 2))
        along = Wave(sways=((0.3, ONCE, one), (0.05, 2 * ONCE, two)))
        across = Wave(sways=((0.1, ONCE, one + np.pi / 2),))
        curve = (0.3 + 8 * 0.05 + 0.1) * ONCE**3
        most = (0.4 * ONCE + STEP**2 / 8 * curve) * (1 + 1e-9)
        assert slid(along, across).bounds().hand_speed == pytest.approx(most, rel=1e-12), place


def test_where_the_second_derivative_jumps_half_a_step_of_the_first_is_added():
    """Uneven half cosines have a jerk that is not bounded: speed by the acceleration's bound, and the
    acceleration by its own coefficients; two at right angles so that the samples say less."""
    knots, values = (0.0, 0.25, 1.0), (0.0, 0.2, 0.0)
    law = slid(CosineSteps(knots, values), CosineSteps(knots, values))
    first, second = 0.1 * np.pi / 0.25, 0.1 * (np.pi / 0.25) ** 2
    found = law.bounds()
    speed = np.sqrt(2.0) * first + STEP / 2 * 2 * second  # the peak, at an eighth, is a sample
    assert found.hand_speed == pytest.approx(speed * (1 + 1e-9), rel=1e-12)
    assert found.hand_acceleration == pytest.approx(2 * second * (1 + 1e-9), rel=1e-12)
    assert found.hand_jerk == np.inf
    reach = np.sqrt(2.0) * 0.2 + STEP**2 / 8 * 2 * second
    assert found.hand_reach == pytest.approx(reach * (1 + 1e-9), rel=1e-12)


def test_where_the_fourth_derivative_is_not_bounded_the_third_brings_the_acceleration_down():
    """Minimum-jerk steps along x and y: 10/√3 a step of length 0.2 in half a beat, 60 its jerk."""
    steps = Steps((0.0, 0.5, 1.0), (0.0, 0.2, 0.0))
    found = slid(steps, steps).bounds()
    push, jerk = 10 / np.sqrt(3) * 0.2 / 0.25, 60 * 0.2 / 0.125
    x = np.arange(2049) / 2048
    sampled = np.max(np.abs(60 * x * (1 - x) * (1 - 2 * x))) * 0.2 / 0.25
    expected = np.sqrt(2.0) * sampled + STEP / 2 * 2 * jerk
    assert found.hand_acceleration == pytest.approx(expected * (1 + 1e-9), rel=1e-12)
    assert expected < 2 * push
    assert found.hand_jerk == pytest.approx(2 * jerk * (1 + 1e-9), rel=1e-12)


def bell(a, b, c, d):
    """Bounds of a turn's derivatives of order 0 to 4 from those of its angle: complete Bell polynomials."""
    return 1, a, a**2 + b, a**3 + 3 * a * b + c, a**4 + 6 * a**2 * b + 3 * b**2 + 4 * a * c + d


def test_a_tether_s_bounds_are_brought_down_by_the_samples_of_its_own_rates():
    """Turned about x by 0.4·cos and about z steadily, sampled here from jets; the coefficients by the product
    rule of both turns."""
    sway, spin = Wave(sways=((0.4, ONCE, 0.3),)), Wave(rate=ONCE)
    law = ComposedLaw(
        hand=HandPath((0.3, 0.4, 1.0), arms=(Arm((0.0, 0.2, 0.0), (Turn(X, sway), Turn(Z, spin))),)),
        tether=Y, plane=Z, turns=(Turn(X, sway), Turn(Z, spin)), period=1.0,
    )  # fmt: skip
    grid = np.arange(4097) * STEP
    swayed, turned = wave((0.0, 0.0, ((0.4, ONCE, 0.3),)), grid), wave((0.0, ONCE, ()), grid)
    orders = spun(X, swayed, spun(Z, turned, fixed(Y)))
    one, other = bell(*(0.4 * ONCE**k for k in range(1, 5))), bell(ONCE, 0, 0, 0)
    _, c1, c2, c3, c4 = (
        sum(comb(k, j) * one[j] * other[k - j] for j in range(k + 1)) for k in range(5)
    )

    def tight(rows, size, coarse, slope, curve):
        most = np.max(np.linalg.norm(size * rows, axis=1))
        ways = (size * coarse, most + STEP / 2 * size * slope, most + STEP**2 / 8 * size * curve)
        return min(ways) * (1 + 1e-9)

    found = law.bounds()
    for name, value in (
        ("turn_rate", tight(orders[1], 1.0, c1, c2, c3)),
        ("turn_acceleration", tight(orders[2], 1.0, c2, c3, c4)),
        ("hand_speed", tight(orders[1], 0.2, c1, c2, c3)),
        ("hand_acceleration", tight(orders[2], 0.2, c2, c3, c4)),
        ("turn_jerk", c3 * (1 + 1e-9)),
        ("hand_jerk", 0.2 * c3 * (1 + 1e-9)),
        ("frame_rate", c1 * (1 + 1e-9)),
        ("frame_acceleration", c2 * (1 + 1e-9)),
    ):
        assert getattr(found, name) == pytest.approx(value, rel=1e-12), name
    plan = np.array([0.3, 0.4]) + 0.2 * orders[0][:, :2]
    most = np.max(np.linalg.norm(plan, axis=1)) + STEP**2 / 8 * 0.2 * c2
    assert found.hand_reach == pytest.approx(min(0.7, most) * (1 + 1e-9), rel=1e-12)


BENDING = CosineSteps((0.0, 0.25, 1.0), (0.0, 0.5, 0.0))  # half of it 0.25, π in a quarter
STEPPING = Steps((0.0, 0.5, 1.0), (0.0, 0.8, 0.0))


@pytest.mark.parametrize(
    ("phase", "own"),
    [
        (BENDING, (np.pi, 4 * np.pi**2, np.inf, np.inf)),
        (STEPPING, (15 / 8 * 1.6, 10 / np.sqrt(3) * 3.2, 60 * 6.4, np.inf)),
    ],
    ids=["third not bounded", "fourth not bounded"],
)
def test_a_tether_s_rates_are_brought_down_by_what_is_bounded(phase, own):
    """Turned by it about x and steadily about z; the samples are the law's own, which other tests judge, the
    coefficients from the product rule."""
    turns = (Turn(X, phase), Turn(Z, Wave(rate=ONCE)))
    law = ComposedLaw(
        hand=HandPath((0.3, 0.4, 1.0), arms=(Arm((0.0, 0.2, 0.0), turns),)),
        tether=Y, plane=Z, turns=turns, period=1.0,
    )  # fmt: skip
    seen = law.at(np.arange(4096) * STEP)
    one, other = bell(*own), [ONCE**k for k in range(5)]
    _, *c = (sum(comb(k, j) * one[j] * other[k - j] for j in range(k + 1)) for k in range(5))
    found, used = law.bounds(), set()
    for k, turning, moving in (
        (0, "tether_rate", "hand_rate"),
        (1, "tether_acceleration", "hand_acceleration"),
    ):
        for size, field in ((1.0, turning), (0.2, moving)):
            most = np.max(np.linalg.norm(getattr(seen, field), axis=1))
            ways = (
                size * c[k],
                most + STEP / 2 * size * c[k + 1],
                most + STEP**2 / 8 * size * c[k + 2],
            )
            used.add((k, int(np.argmin(ways))))
            name = ("turn_rate", "turn_acceleration", "hand_speed", "hand_acceleration")
            bound = getattr(found, name[k + (2 if size < 1 else 0)])
            assert bound == pytest.approx(min(ways) * (1 + 1e-9), rel=1e-12), field
    # where a derivative is not bounded the one before it serves, and before that the coefficients
    assert used == ({(0, 1), (1, 0)} if phase is BENDING else {(0, 2), (1, 1)})


def test_a_law_without_a_period_has_its_coefficients_and_a_billionth_more():
    """An arm of 0.5 turned at 3, a tether at 2 and 1 in turn: powers, each widened for rounding."""
    law = ComposedLaw(
        hand=HandPath((0.3, 0.4, 1.0), arms=(Arm((0.3, 0.4, 0.0), (Turn(Z, Wave(rate=3.0)),)),)),
        tether=X, plane=Z, turns=(Turn(Z, Wave(rate=2.0)), Turn(Y, Wave(rate=1.0))), period=np.inf,
    )  # fmt: skip
    exact = {
        "hand_speed": 1.5, "hand_acceleration": 4.5, "hand_jerk": 13.5, "hand_reach": 1.0,
        "turn_rate": 3.0, "turn_acceleration": 9.0, "turn_jerk": 27.0, "frame_rate": 3.0,
        "frame_acceleration": 9.0,
    }  # fmt: skip
    for name, value in exact.items():
        found = getattr(law.bounds(), name)
        assert found == pytest.approx(value * (1 + 1e-9), rel=1e-12), name


def test_a_slide_that_goes_nowhere_adds_nothing_even_where_its_phase_is_not_bounded():
    """0 times inf is 0 here; steps that stay keep the fourth derivative that they do not state."""
    steps = Steps((0.0, 1.0), (0.5, 0.7))
    nowhere = HandPath(Z, slides=(Slide((0.0, 0.0, 0.0), steps),))
    assert hand_limits(nowhere)[1] == (0.0, 0.0, 0.0, 0.0)
    path = HandPath(Z, slides=(Slide((0.3, 0.4, 0.0), Steps((0.0, 1.0), (0.5, 0.5))),))
    assert hand_limits(path)[1] == (0.0, 0.0, 0.0, np.inf)
    assert hand_limits(HandPath(Z)) == (0.0, (0.0, 0.0, 0.0, 0.0))
