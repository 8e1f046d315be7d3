"""Radiant heat of a point, by hand: the share of the heat over the sphere."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.facts.radiation import RADIATIVE_FRACTION, point_source_flux, seconds_to_pain


def test_the_flux_is_a_share_of_the_heat_over_the_sphere():
    assert RADIATIVE_FRACTION == 0.30  # NUREG-1805, sheet 05.1
    heat = 4 * np.pi * 1000.0
    assert_allclose(point_source_flux(heat, distance=[1.0, 2.0, 0.5]), [300.0, 75.0, 1200.0])
    assert_allclose(point_source_flux(heat, distance=2.0, radiative_fraction=1.0), 250.0)
    assert_allclose(point_source_flux(0.0, distance=1.0), 0.0)


def test_a_distance_of_none_and_negative_heat_are_refused():
    for distance in (0.0, -1.0, [1.0, 0.0]):
        with pytest.raises(ValueError, match="distance must be positive"):
            point_source_flux(1.0, distance=distance)
    with pytest.raises(ValueError, match="heat_release must not be negative"):
        point_source_flux([1.0, -1e-9], distance=1.0)


def test_pain_by_the_thermal_dose():
    """T11 of the facts sheet: dose 92 at 5 kW/m² → 10.76 s (HSL/2004/04); CIBSE Guide E, 1.33·q^−1.35 min, gives 9.1 s."""
    assert seconds_to_pain(5000.0) == pytest.approx(10.76, abs=0.005)
    assert 0.8 < seconds_to_pain(5000.0) / (60 * 1.33 * 5.0**-1.35) < 1.2
    assert seconds_to_pain(20_000.0) == pytest.approx(1.69, abs=0.01)  # own clothes alight
    assert seconds_to_pain(1000.0) == pytest.approx(92.0)
    assert seconds_to_pain(0.0) == np.inf
    with pytest.raises(ValueError, match="must not be negative"):
        seconds_to_pain(-1.0)
