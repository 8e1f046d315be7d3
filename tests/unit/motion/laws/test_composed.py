"""Composed laws: bounds from the coefficients, and how near certified interpolation brings them."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.laws.composed import (
    _GRID,
    Arm,
    ComposedLaw,
    HandPath,
    Slide,
    hand_limits,
)
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn

TURN = 2 * np.pi
ROUNDED = 1 + 1e-9  # what every bound is widened by, so that rounding breaks none
UP, ASIDE, AHEAD = (0.0, 0.0, 1.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)


def spin(rate=TURN, axis=UP):
    return Turn(axis, Wave(rate=rate))


ONCE = (spin(),)


def law(hand=None, *, turns=ONCE, period=1.0):
    return ComposedLaw(
        hand=hand or HandPath((0.0, 0.0, 1.0)), tether=ASIDE, plane=UP, turns=turns, period=period
    )


def test_bounds_of_a_steady_circle_are_its_own_and_a_billionth_more():
    """ω, ω², ω³ about the tether; rω, rω², rω³ of a hand on an arm of r; any mechanics text."""
    r = 0.4
    found = law(HandPath((0.3, 0.0, 1.0), arms=(Arm((r, 0.0, 0.0), (spin(),)),))).bounds()
    exact = {
        "turn_rate": TURN, "turn_acceleration": TURN**2, "turn_jerk": TURN**3,
        "hand_speed": r * TURN, "hand_acceleration": r * TURN**2, "hand_jerk": r * TURN**3,
        "frame_rate": TURN, "frame_acceleration": TURN**2, "hand_reach": 0.3 + r,
    }  # fmt: skip
    for name, value in exact.items():
        assert getattr(found, name) == pytest.approx(value * ROUNDED, rel=1e-12), name


def test_limits_of_a_hand_path_are_sums_over_its_parts():
    """A slide of length 5 on 0.2·cos(3t), an arm of 0.5 turning twice a beat: sizes times derivatives."""
    path = HandPath(
        (0.0, 0.0, 1.0),
        slides=(Slide((3.0, 4.0, 0.0), Wave(sways=((0.2, 3.0, 0.0),))),),
        arms=(Arm((0.3, 0.4, 0.0), (spin(2 * TURN),)), Arm((0.0, 0.0, 0.1), (spin(TURN),))),
    )
    distance, orders = hand_limits(path)
    assert distance == np.inf
    expected = [5 * 0.2 * 3.0**k + 0.5 * (2 * TURN) ** k + 0.1 * TURN**k for k in (1, 2, 3, 4)]
    assert_allclose(orders, expected)
    assert hand_limits(HandPath((0.0, 0.0, 1.0), arms=path.arms))[0] == pytest.approx(0.6)
    still = HandPath(
        (0.0, 0.0, 1.0), slides=(Slide((0.0, 0.0, 0.0), Wave(sways=((1.0, 1.0, 0.0),))),)
    )
    assert hand_limits(still)[1] == (0.0, 0.0, 0.0, 0.0)


def test_samples_bring_a_bound_down_to_the_true_largest_and_a_chord_s_error_more():
    """Two slides at right angles that are never fastest at once: the coefficients say the sum, √ says less.

    Source: error of linear interpolation, Δ²/8·sup|f″|, at Δ a 4096th of the period.
    """
    slides = (
        Slide(ASIDE, Wave(sways=((0.3, TURN, 0.0),))),
        Slide(AHEAD, Wave(sways=((0.3, TURN, np.pi / 2),))),
    )
    found = law(HandPath((0.0, 0.0, 1.0), slides)).bounds()
    step = 1.0 / _GRID
    for name, order in (("hand_speed", 1), ("hand_acceleration", 2)):
        exact, curve = 0.3 * TURN**order, 0.6 * TURN ** (order + 2)
        assert getattr(found, name) == pytest.approx(
            (exact + step**2 / 8 * curve) * ROUNDED, rel=1e-12
        )
    reach = 0.3 + step**2 / 8 * 0.6 * TURN**2
    assert found.hand_reach == pytest.approx(reach * ROUNDED, rel=1e-12)
    assert found.hand_jerk == pytest.approx(0.6 * TURN**3 * ROUNDED, rel=1e-12)


def test_a_law_without_a_period_has_the_bounds_of_its_coefficients():
    path = HandPath((0.3, 0.4, 1.0), arms=(Arm((0.2, 0.0, 0.0), (spin(),)),))
    found = law(path, period=np.inf, turns=(spin(3.0), spin(2.0, AHEAD))).bounds()
    assert found.hand_reach == pytest.approx(0.7 * ROUNDED)
    assert found.hand_speed == pytest.approx(0.2 * TURN * ROUNDED)
    assert found.hand_acceleration == pytest.approx(0.2 * TURN**2 * ROUNDED)
    assert found.hand_jerk == pytest.approx(0.2 * TURN**3 * ROUNDED)
    for k, name in ((1, "turn_rate"), (2, "turn_acceleration"), (3, "turn_jerk")):
        assert getattr(found, name) == pytest.approx(5.0**k * ROUNDED)
    assert (found.frame_rate, found.frame_acceleration) == (
        found.turn_rate,
        found.turn_acceleration,
    )


def test_a_tether_is_a_unit_vector_in_its_plane():
    for tether, plane in (
        ((1.1, 0.0, 0.0), UP),
        (ASIDE, (0.1, 0.0, 1.0)),
        (ASIDE, (-0.1, 0.0, 1.0)),
    ):
        with pytest.raises(ValueError, match="unit vector in its plane"):
            ComposedLaw(
                hand=HandPath((0.0, 0.0, 1.0)), tether=tether, plane=plane, turns=(), period=1.0
            )
