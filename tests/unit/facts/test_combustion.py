"""Heat release and flames of pools: each formula worked by hand at round numbers."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.facts.combustion import (
    burnt_heat_release,
    equivalent_diameter,
    flame_height,
    pool_burning_rate,
)


def test_the_diameter_is_that_of_the_circle():
    assert_allclose(equivalent_diameter([np.pi, np.pi / 4, 0.0]), [2.0, 1.0, 0.0])


def test_a_pool_burns_its_flux_times_its_area_less_what_is_thin():
    """1 m across and kβ = ln 2 per metre: half; 2 m across: three quarters of m″A."""
    area = np.array([np.pi / 4, np.pi])
    found = pool_burning_rate(area, mass_flux=0.04, absorption=np.log(2))
    assert_allclose(found, [0.04 * np.pi / 4 / 2, 0.04 * np.pi * 0.75])
    assert_allclose(pool_burning_rate(0.0, mass_flux=0.0, absorption=0.0), 0.0)


def test_burnt_heat_is_mass_times_heat_over_time():
    assert_allclose(burnt_heat_release(0.06, heat_of_combustion=43e6, seconds=120.0), 21_500.0)
    assert_allclose(burnt_heat_release(0.0, heat_of_combustion=0.0, seconds=0.5), 0.0)
    for seconds in (0.0, -1.0, [1.0, 0.0]):
        with pytest.raises(ValueError, match="seconds must be positive"):
            burnt_heat_release(0.06, heat_of_combustion=43e6, seconds=seconds)


def test_a_flame_is_as_high_as_heskestad_says():
    """100 kW: 0.235·100^0.4 = 0.235·6.30957 m less 1.02 diameters; 1 W on a metre: none."""
    found = flame_height([1e5, 1e5, 1.0], diameter=[0.0, 0.5, 1.0])
    assert_allclose(found, [1.4827499, 1.4827499 - 0.51, 0.0], rtol=1e-6)
    assert_allclose(flame_height(0.0, diameter=0.0), 0.0)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: equivalent_diameter([1.0, -0.5]), "area must not be negative, got -0.5"),
        (lambda: pool_burning_rate(-1.0, mass_flux=1.0, absorption=1.0), "area must"),
        (lambda: pool_burning_rate(1.0, mass_flux=-1.0, absorption=1.0), "mass_flux must"),
        (lambda: pool_burning_rate(1.0, mass_flux=1.0, absorption=-1.0), "absorption must"),
        (lambda: burnt_heat_release(-1.0, heat_of_combustion=1.0, seconds=1.0), "mass must"),
        (lambda: burnt_heat_release(1.0, heat_of_combustion=-1.0, seconds=1.0), "heat_of"),
        (lambda: flame_height(-1.0, diameter=1.0), "heat_release must"),
        (lambda: flame_height(1.0, diameter=-1.0), "diameter must"),
    ],
)
def test_negative_values_are_refused(call, name):
    with pytest.raises(ValueError, match=name):
        call()
