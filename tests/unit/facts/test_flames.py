"""The moving flame: never shorter than at rest, growing with speed, and consistent both ways."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from sequencer.facts.combustion import flame_height
from sequencer.facts.flames import FASTEST_HEAD, stretched_reach

HEAT = 43.2e6  # [J/kg] kerosene


def test_at_rest_it_is_what_was_watched():
    assert_allclose(stretched_reach(0.45, diameter=0.1, speed=0.0, heat_of_combustion=HEAT), 0.45)


def test_worked_by_hand():
    """0.45 m at rest over 0.1 m, 20 m/s, by the module's formulas.

    Q = ((0.45 + 0.102)/0.235)^2.5 = 8.452 kW, 0.1957 g/s, m″ = 0.02491, X = 0.02491/(1.2·0.9903) = 0.02097;
    tilt 55/42·X^0.06 = 1.0386; Fr = 400/0.980665 = 407.9, drag 0.1·(1.5·407.9^0.069 − 1) = 0.1271.
    """
    assert_allclose(
        stretched_reach(0.45, diameter=0.1, speed=20.0), 0.45 * 1.0386 + 0.1271, atol=2e-4
    )


def test_it_is_fed_with_the_heat_that_gives_the_flame_at_rest():
    """Heskestad's height of 12 kW, blown as the head says: tilt 55/42·X^0.06, drag D(1.5·Fr^0.069 − 1)."""
    base, speed = 0.1, np.array([3.0, 9.0])
    rest = flame_height(12_000.0, diameter=base)
    x = 12_000.0 / HEAT / (np.pi / 4 * base**2) / (1.2 * np.sqrt(9.80665 * base))
    drag = base * np.maximum(1.5 * (speed**2 / (9.80665 * base)) ** 0.069 - 1, 0.0)

    assert_allclose(
        stretched_reach(rest, diameter=base, speed=speed, heat_of_combustion=HEAT),
        rest * 55 / 42 * x**0.06 + drag,
        rtol=1e-9,
    )


@given(st.floats(0.0, 1.5), st.floats(0.02, 0.3), st.floats(0.0, FASTEST_HEAD))
def test_never_shorter_than_at_rest_nor_than_slower(rest, diameter, speed):
    slow, fast = stretched_reach(rest, diameter=diameter, speed=[speed / 2, speed])

    assert rest <= slow + 1e-12
    assert slow <= fast + 1e-12


def test_no_flame_has_no_reach():
    assert stretched_reach(0.0, diameter=0.1) == 0.0
    assert np.shape(stretched_reach(np.ones((2, 3)), diameter=0.1)) == (2, 3)


@pytest.mark.parametrize(
    ("change", "match"),
    [
        ({"rest": -0.1}, "rest must not"),
        ({"diameter": 0.0}, "diameter must"),
        ({"speed": -1.0}, "speed must"),
        ({"heat_of_combustion": 0.0}, "heat_of_combustion must"),
    ],
)
def test_nonsense_is_refused(change, match):
    given = {"rest": 0.45, "diameter": 0.1, "speed": 5.0, "heat_of_combustion": HEAT, **change}
    with pytest.raises(ValueError, match=match):
        stretched_reach(given.pop("rest"), **given)
