"""A flown period as a law: hand and head where the period has them, exact rates, bounds that hold."""

from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.flown.even_splines import DEGREE, EvenSpline
from sequencer.outputs.patterns.flown_law import FlownLaw
from sequencer.outputs.patterns.one_pattern import one_pattern


@pytest.fixture(scope="module")
def law():
    return FlownLaw(flown=one_pattern("three-beat-weave").flown["right"])


def test_hand_and_head_are_those_of_the_period(law):
    """Within the 2 mm that the hand's spline leaves of the law of motion (docstring of motion/flown/periods.py)."""
    beats = np.linspace(0.0, law.period, 1001)
    motion, seen = law.at(beats), law.flown.flight(beats)

    assert_allclose(motion.hand, seen.hand, atol=2e-3)
    assert_allclose(motion.head(law.flown.flying.prop.length), seen.head, atol=2e-3)
    assert_allclose(np.linalg.norm(motion.tether, axis=-1), 1.0, atol=1e-12)
    assert law.period == law.flown.law.period == 3.0


def test_the_plane_holds_the_line_and_keeps_its_sense(law):
    beats = np.linspace(0.0, law.period, 301)
    motion = law.at(beats)

    assert_allclose(np.sum(motion.plane * motion.tether, axis=-1), 0.0, atol=1e-12)
    assert_allclose(np.linalg.norm(motion.plane, axis=-1), 1.0, atol=1e-12)
    # 15° off the drawing at most, so the plane is as near
    assert np.min(np.sum(motion.plane * law.flown.law.at(beats).plane, axis=-1)) > np.cos(0.3)


@pytest.mark.parametrize("what", ["hand", "tether"])
def test_rates_are_derivatives(law, what):
    """Central differences; the error of a step h is h² times a sixth of the third derivative."""
    beats, step = np.linspace(0.0, law.period, 101), 1e-4
    before, here, after = (law.at(beats + off) for off in (-step, 0.0, step))
    value = [getattr(motion, what) for motion in (before, here, after)]

    rate = (value[2] - value[0]) / (2 * step)
    second = (value[2] - 2 * value[1] + value[0]) / step**2
    assert_allclose(getattr(here, f"{what}_rate"), rate, atol=1e-4)
    assert_allclose(getattr(here, f"{what}_acceleration"), second, atol=2e-2)


def test_bounds_hold_and_are_near(law):
    motion, bounds = law.at(np.linspace(0.0, law.period, 5001)), law.bounds()
    found = {
        "hand_speed": motion.hand_rate,
        "hand_acceleration": motion.hand_acceleration,
        "turn_rate": motion.tether_rate,
        "turn_acceleration": motion.tether_acceleration,
        "hand_reach": motion.hand[..., :2],
    }
    # hulls of quintic spans lie close; the turn's second rate takes its bound term by term, so it is wider
    for name, values in found.items():
        most = np.linalg.norm(values, axis=-1).max()
        assert most <= getattr(bounds, name) <= (4.5 if name == "turn_acceleration" else 1.2) * most


def test_the_turn_of_a_line_to_a_head_that_passes_straight_by_is_bounded():
    """With the head at (0.5, 3t) from a hand at rest nothing accelerates, but the line's turn does.

    Source: θ = atan(3t/0.5), |u''|² = θ''² + θ'⁴ (any calculus text).
    """
    # a spline reproduces straight lines: coefficient j is the value at knot j − 2
    count, step = 400, 0.005
    along = (np.arange(count + DEGREE) - 2.0) * step - 1.0
    head = np.stack((np.full_like(along, 0.5), 3.0 * along, np.zeros_like(along)), axis=-1)
    paths = [
        EvenSpline(start=0.0, step=step, coefficients=c, periodic=True) for c in (head, 0.0 * head)
    ]
    law = FlownLaw(flown=SimpleNamespace(head=paths[0], hand=paths[1]))
    time = np.linspace(-0.999, 0.999, 4001)
    rate = 6.0 / (1.0 + 36.0 * time**2)
    bent = np.sqrt((-2.0 * 36.0 * time * rate**2 / 6.0) ** 2 + rate**4)

    assert rate.max() <= law.bounds().turn_rate <= 1.2 * rate.max()
    assert bent.max() <= law.bounds().turn_acceleration <= 4.0 * bent.max()
