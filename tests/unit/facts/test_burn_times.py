"""Burning times that nobody timed: the table of practitioners, or the soaked mass over its burning rate."""

import numpy as np
import pytest

from sequencer.facts.burn_times import BurnTime, default_burn_time
from sequencer.facts.fuels import fuel
from sequencer.facts.pool_fires import pool_fires

KEROSENE = fuel("kerosene")


def soaked(mass, area):
    """Kerosene's pool (NUREG-1805): 39 g/(m²·s) times the area times 1 − exp(−3.5 D)."""
    return mass / (0.039 * area * (1 - np.exp(-3.5 * np.sqrt(4 * area / np.pi))))


def test_kerosene_burns_as_the_table_of_pools_says():
    row = pool_fires()["kerosene"]
    assert (row.mass_flux, row.absorption) == (0.039, 3.5)


@pytest.mark.parametrize(("mass", "area"), [(0.045, 0.0314), (0.05, 0.02), (0.01, 0.004)])
def test_the_shorter_of_both_times_counts(mass, area):
    found = default_burn_time(KEROSENE, soak=mass, wick_area=area)
    assert found.seconds == pytest.approx(min(soaked(mass, area), 240.0), rel=1e-12)
    assert ("soaked mass" in found.source) == (soaked(mass, area) < 240)
    assert (found.basis, found.count) == ("default", None)


def test_the_mass_alone_or_the_area_alone_tells_nothing():
    for given in ({}, {"soak": 0.001}, {"wick_area": 1.0}):
        assert default_burn_time(KEROSENE, **given).seconds == 240.0


def test_a_fuel_without_a_time_in_the_trade_has_none():
    assert default_burn_time(fuel("ethanol")) is None


def test_a_fuel_without_a_pool_keeps_the_time_of_the_trade():
    """Nothing is known of how fast a pool of thinner or of an unknown mix burns: its mass tells nothing."""
    for name in ("thinner", "unknown-mix"):
        assert default_burn_time(fuel(name), soak=0.05, wick_area=0.02) == default_burn_time(
            fuel(name)
        )


@pytest.mark.parametrize(
    "given", [(0.0, 1.0), (1.0, 0.0), (-1.0, 1.0), (1.0, -1.0), (float("nan"), 1.0)]
)
def test_mass_and_area_are_positive(given):
    with pytest.raises(ValueError, match="must be positive"):
        default_burn_time(KEROSENE, soak=given[0], wick_area=given[1])


def test_a_burning_time_is_positive():
    assert BurnTime(seconds=0.001, basis="stated", source="").seconds == 0.001
    for seconds in (0.0, -1.0, float("nan")):
        with pytest.raises(ValueError, match="seconds must be positive"):
            BurnTime(seconds=seconds, basis="stated", source="")
