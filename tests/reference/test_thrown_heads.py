"""Where a thrown head lands, against scipy's integrator; and that drag brings it down earlier on the same line.

Source: Newton's second law, integrated by scipy's `solve_ivp` (DOP853) until the height is 0; drag of the square of the
speed with coefficients from a steel ball's to a feather's.
"""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.integrate import solve_ivp

from sequencer.motion.clearance.head_flights import landing_of

G = 9.80665  # [m/s²] standard gravity, ISO 80000-3


def integrated(place, velocity, drag):
    """Landing on the plan; drag in 1/m."""

    def rate(_t, state):
        speed = np.linalg.norm(state[3:])
        return [*state[3:], *(-drag * speed * state[3:] - [0.0, 0.0, G])]

    def ground(_t, state):
        return state[2]

    ground.terminal, ground.direction = True, -1
    found = solve_ivp(
        rate, (0, 20), [*place, *velocity], events=ground, method="DOP853", rtol=1e-10, atol=1e-12
    )
    return found.y_events[0][0][:2]


@pytest.mark.parametrize("seed", range(6))
def test_landing(seed):
    draw = np.random.default_rng(seed)
    place = draw.uniform([-5, -5, 0.1], [5, 5, 2.5])
    velocity = draw.normal(scale=5.0, size=3)
    landing = landing_of(place, velocity)

    assert_allclose(landing, integrated(place, velocity, 0.0), atol=1e-6)
    for drag in (0.01, 0.1, 1.0):
        way, braked = landing - place[:2], integrated(place, velocity, drag) - place[:2]
        share = braked @ way / (way @ way)
        assert_allclose(braked, share * way, atol=1e-6)  # on the same line
        assert 0 < share < 1


def test_flat_and_high_throws_of_the_textbook():
    """T26 of the facts sheet: v 10.838 m/s from 1.5 m flies 13.40 m at its best angle; from the ground v²/g."""
    v = 10.838
    slope = np.linspace(0.0, np.pi / 2, 20_001)
    velocity = v * np.stack([np.cos(slope), 0 * slope, np.sin(slope)], axis=-1)

    high = landing_of(np.array([0.0, 0.0, 1.5]), velocity)[..., 0].max()
    assert high == pytest.approx(13.40, rel=1e-3)
    assert landing_of(np.zeros(3), velocity)[..., 0].max() == pytest.approx(v**2 / G, rel=1e-6)
    assert landing_of(np.array([0.0, 0.0, -0.3]), velocity)[..., 0].max() == pytest.approx(
        v**2 / G, rel=1e-6
    )
