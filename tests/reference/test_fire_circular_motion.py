"""What holds a burning head on its circle: the laws of motion against an open textbook's examples.

Source: OpenStax, College Physics 2e, ch. 6 (openstax.org/books/college-physics-2e): examples 6.2, 6.3, 6.4,
6.5 read; problems of section 6.3 read second-hand. Printed digits give the tolerances.
The textbook's bodies are put on the circle of a static spin: hand still, tether turning.
"""

import math

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for

G = 9.80  # [m/s²] as the textbook takes it


def circle(radius, per_second):
    """Acceleration [m/s²] and speed [m/s] of a head that turns so often a second on a radius."""
    law = law_for(
        "orbit",
        {"hand_radius": 0.0, "ratio": 1.0, "plane": "floor", "tether": 1.0},
        side="right",
        body=Body(stature=1.75),
        beats=1.0,
    )
    motion = law.at(np.linspace(0.0, 1.0, 9))
    speed = np.linalg.norm(motion.head_rate(radius), axis=-1) * per_second
    pull = np.linalg.norm(motion.head_acceleration(radius), axis=-1) * per_second**2
    assert np.ptp(pull) < 1e-9 * pull.max()
    return float(pull[0]), float(speed[0])


def test_a_car_in_a_curve():
    """Example 6.2: 25.0 m/s on 500 m: 1.25 m/s², 0.128 g; example 6.4: 900 kg need 1125 N."""
    pull, speed = circle(500.0, 25.0 / (2 * math.pi * 500.0))

    assert speed == pytest.approx(25.0, rel=1e-9)
    assert pull == pytest.approx(1.25, rel=1e-9)
    assert pull / G == pytest.approx(0.128, abs=5e-4)
    assert 900 * pull == pytest.approx(1125, rel=1e-9)


def test_an_ultracentrifuge():
    """Example 6.3: 7.50 cm at 7.50 × 10⁴ rev/min: 4.63 × 10⁶ m/s², 4.72 × 10⁵ g."""
    pull, _ = circle(0.075, 7.50e4 / 60)

    assert pull == pytest.approx(4.63e6, rel=2e-3)
    assert pull / G == pytest.approx(4.72e5, rel=2e-3)


@pytest.mark.parametrize(
    ("radius", "per_minute", "newtons", "rtol"),
    [(1.25, 40.0, 483, 2e-3), (8.00, 3.00, 17.4, 3e-3)],
)
def test_a_child_on_a_merry_go_round(radius, per_minute, newtons, rtol):
    """Section 6.3: 22.0 kg; printed 483 N and 17.4 N."""
    pull, _ = circle(radius, per_minute / 60)

    assert 22.0 * pull == pytest.approx(newtons, rel=rtol)


def test_the_tip_of_a_turbine():
    """Section 6.3: 4 kg at 100 m, 0.5 rev/s: 3.95 × 10³ N."""
    pull, _ = circle(100.0, 0.5)

    assert 4 * pull == pytest.approx(3.95e3, rel=2e-3)


@pytest.mark.parametrize(
    ("speed", "radius", "degrees", "tolerance"),
    [(12.0, 30.0, 26.10, 0.05), (45.84, 100.0, 65.0, 0.05)],
)
def test_the_lean_of_a_tether_in_a_flat_circle(speed, radius, degrees, tolerance):
    """A head on a level circle leans its tether from the vertical by atan(v²/(r g)).

    Example 6.5: 65.0° on 100 m is 45.8 m/s; 12 m/s on 30 m is 26.10° (computed).
    """
    pull, found = circle(radius, speed / (2 * math.pi * radius))

    assert found == pytest.approx(speed, rel=1e-9)
    assert math.degrees(math.atan(pull / G)) == pytest.approx(degrees, abs=tolerance)
