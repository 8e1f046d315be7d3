"""Planar orbits with a 1 m prop against classical curves: area, arc length, cusps and petals.

Source: J. D. Lawrence, A Catalog of Special Plane Curves (Dover, 1972); values from memory.
"""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.planar import closing_cycles, orbit, petals

TAU = np.linspace(0.0, 2 * np.pi, 20_001)  # chord error below 1e-7 of the arc


def head_path(phase, *, hand_radius, length, ratio):
    """Epitrochoid or hypotrochoid of a head whose tether starts outward, in the plane of the orbit."""
    return np.stack(
        (
            hand_radius * np.cos(phase) + length * np.cos(ratio * phase),
            hand_radius * np.sin(phase) + length * np.sin(ratio * phase),
        ),
        axis=-1,
    )


@pytest.mark.parametrize(
    ("hand_radius", "ratio", "area", "arc"),
    [(2, 2, 6 * np.pi, 16), (3, 3, 12 * np.pi, 24), (2, -2, 2 * np.pi, 16), (3, -3, 6 * np.pi, 24)],
    ids=["cardioid", "nephroid", "deltoid", "astroid"],
)
def test_head_draws_the_classical_curve(hand_radius, ratio, area, arc):
    """The head's closed path has the published area and arc length."""
    x, y = head_path(TAU, hand_radius=hand_radius, length=1.0, ratio=ratio).T

    enclosed = abs(0.5 * np.sum(x[:-1] * y[1:] - x[1:] * y[:-1]))
    assert_allclose(enclosed, area, rtol=1e-6)
    assert_allclose(np.hypot(np.diff(x), np.diff(y)).sum(), arc, rtol=1e-6)


@pytest.mark.parametrize("hand_radius", [0.2, 0.35, 0.6])
@pytest.mark.parametrize("ratio", [-4.0, -3.0, -1.5, 2.0, 2.5, 4.0])
def test_area_swept_is_that_of_a_trochoid(hand_radius, ratio):
    """Epitrochoid and hypotrochoid sweep π(R² + k r²) a hand cycle (signed, over whole closings)."""
    cycles = closing_cycles(ratio)
    tau = np.linspace(0.0, 2 * np.pi * cycles, 40_001)
    x, y = head_path(tau, hand_radius=hand_radius, length=0.55, ratio=ratio).T
    swept = 0.5 * np.sum(x[:-1] * y[1:] - x[1:] * y[:-1])

    assert_allclose(swept, cycles * np.pi * (hand_radius**2 + ratio * 0.55**2), rtol=1e-5)


@pytest.mark.parametrize("ratio", [-5, -4, -3, -2, 3, 4, 5, 6])
def test_petals_are_counted_by_the_farthest_points(ratio):
    """An antispin flower has 1 − k petals, an inspin flower k − 1."""
    path = head_path(TAU[:-1], hand_radius=0.5, length=0.5, ratio=ratio)
    far = np.hypot(*path.T)
    peaks = np.sum((far > np.roll(far, 1)) & (far >= np.roll(far, -1)))

    assert peaks == petals(ratio)


def test_the_law_draws_the_same_curve():
    """The law's head is the curve's, laid in the wall plane about the circle's centre."""
    body = Body(stature=1.7)
    law = orbit(ratio=-3, hand_radius=0.3, start=0.0, beats=4, body=body)
    beats = np.linspace(0, 4, 101)
    motion = law.at(beats)
    flat = (motion.head(0.55) - motion.hand.mean(axis=0))[:, [0, 2]]
    centre = np.array(law.hand.centre)[[0, 2]] - motion.hand.mean(axis=0)[[0, 2]]
    expected = head_path(beats * np.pi / 2, hand_radius=0.3, length=0.55, ratio=-3)

    assert_allclose(flat - centre, expected, atol=1e-12)


def test_isolation_keeps_the_head_on_the_hands_circle():
    """With R = r/2 and the prop opposite, head and hand are always at the ends of a diameter."""
    law = orbit(ratio=1, hand_radius=0.275, lag=np.pi, beats=2, body=Body(stature=1.7))
    motion = law.at(np.linspace(0, 2, 33))
    middle = (motion.hand + motion.head(0.55)) / 2

    assert_allclose(middle, np.broadcast_to(middle[0], middle.shape), atol=1e-12)


def test_ratio_closes_after_the_denominator():
    assert [closing_cycles(k) for k in (3, -1.5, 0.4, 7 / 5)] == [1, 2, 5, 5]
    assert closing_cycles(np.sqrt(2)) is None
