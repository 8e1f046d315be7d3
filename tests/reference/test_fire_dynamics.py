"""Heat release, flame height and radiant flux against published sheets and criteria.

Sources stand beside each check. E1 to E3 are example sheets printed by the US NRC with NUREG-1805
(heat release read; flux and flame height computed from the printed formulas).
"""

import math

import pytest
from numpy.testing import assert_allclose

from sequencer.facts.combustion import (
    burnt_heat_release,
    equivalent_diameter,
    flame_height,
    heat_of_flame,
    pool_burning_rate,
)
from sequencer.facts.heat_criteria import heat_criteria, seconds_to
from sequencer.facts.pool_fires import pool_fires
from sequencer.facts.radiation import point_source_flux

SQUARE_FOOT = 0.3048**2  # [m²] exact, international foot of 1959
BTU = 3.154590745  # [W/m²] of 1 Btu/(h·ft²), NIST SP 811 (from memory, re-derivable)


@pytest.mark.parametrize(
    ("mass_flux", "heat", "absorption", "square_feet", "printed_kw", "rtol"),
    [
        (0.039, 46_000e3, 0.7, 9, 771.52, 1e-4),  # E1 lube oil, sheet 05.1
        (0.033, 28_000e3, 2.6, 9, 719.75, 1e-4),  # E2, sheet 05.1
        (0.045, 44_400e3, 2.1, 2545, 472_403.60, 1e-6),  # E3 diesel, sheet 05.1
    ],
    ids=["lube oil", "second sheet", "diesel"],
)
def test_burning_rate_gives_the_heat_release_of_the_published_sheets(
    mass_flux, heat, absorption, square_feet, printed_kw, rtol
):
    """US NRC, Fire Dynamics Tools (NUREG-1805), sheet 05.1: three printed results."""
    rate = pool_burning_rate(square_feet * SQUARE_FOOT, mass_flux=mass_flux, absorption=absorption)

    assert_allclose(heat * rate / 1000, printed_kw, rtol=rtol)


def test_flame_height_of_the_first_sheet_and_of_a_round_case():
    """Heskestad 1984, L = 0.235 Q^0.4 − 1.02 D with Q in kW; computed here from the formula."""
    assert_allclose(
        flame_height([771.52e3, 1000e3], diameter=[1.03179, 2.0]), [2.305, 1.684], rtol=1e-3
    )


def test_a_small_fire_over_a_wide_base_has_no_negative_flame():
    """The formula alone gives −0.128 m for 0.5 kW over 0.3 m."""
    raw = 0.235 * 0.5**0.4 - 1.02 * 0.3

    assert raw == pytest.approx(-0.128, abs=1e-3)
    assert flame_height(500.0, diameter=0.3) == 0.0


def test_flux_counts_from_the_flame_centre():
    """E1, sheet 05.1: 10 ft from the edge of a pool of 9 ft² is 3.564 m from its centre: 1.450 kW/m²."""
    diameter = equivalent_diameter(9 * SQUARE_FOOT)
    assert_allclose(diameter, 1.0318, atol=5e-5)

    flux = point_source_flux(771.52e3, distance=3.048 + diameter / 2)

    assert_allclose(flux / 1000, 1.450, rtol=1e-3)


def test_flux_of_a_megawatt_at_five_metres():
    """q″ = χQ/(4πR²), NUREG-1805 sheet 05.1: 0.3 × 1000/(4π·25) = 0.95493 kW/m²."""
    assert_allclose(point_source_flux(1e6, distance=5.0) / 1000, 0.95493, rtol=1e-5)


def test_flux_falls_with_the_square_of_the_distance():
    """Inverse square law."""
    near, at, far = point_source_flux(8640.0, distance=[0.5, 1.0, 2.0])

    assert_allclose([near / at, far / at], [4.0, 0.25], rtol=1e-12)


def test_ethanol_table_row_lies_in_the_measured_band():
    """NIST pool fires (MaCFP): ethanol of 30.1 cm burns 14.8 ± 1.2 g/(m²·s), 28.2 kW ± 8.1 %."""
    row = pool_fires()["ethanol"]
    area = math.pi / 4 * 0.301**2
    rate = pool_burning_rate(area, mass_flux=row.mass_flux, absorption=row.absorption)
    watts = rate * row.heat_of_combustion
    seen = 0.0148 * area * row.heat_of_combustion

    assert_allclose(watts, 28.6e3, rtol=2e-3)
    assert_allclose(seen, 28.2e3, rtol=2e-3)
    assert abs(watts - seen) <= seen * 0.0012 / 0.0148


@pytest.mark.parametrize(
    ("name", "btu"), [("bystanders", 450), ("pain-15-s", 1500), ("drapes", 10_000)]
)
def test_heat_criteria_are_the_printed_ones(name, btu):
    """24 CFR 51 subpart C appendix II: 450, 1,500 and 10,000 Btu/(h·ft²)."""
    assert_allclose(heat_criteria()[name].flux, btu * BTU, rtol=3e-3)


def test_mean_heat_of_a_soaked_wick():
    """60 g of kerosene at 43.2 MJ/kg in 300 s: 8.64 kW, and Heskestad gives 0.455 m over 0.1 m."""
    watts = burnt_heat_release(0.060, heat_of_combustion=43.2e6, seconds=300.0)

    assert_allclose(watts, 8640.0, rtol=1e-9)
    assert_allclose(flame_height(watts, diameter=0.1), 0.455, atol=5e-4)
    assert_allclose(heat_of_flame(0.4548, diameter=0.1), 8640.0, rtol=1e-3)


def test_heat_of_a_flame_is_the_flame_of_that_heat_the_other_way_round():
    """Heskestad 1984, Q 771.52 kW and D 1.03179 m give 2.305 m (NUREG-1805 sheet 05.1)."""
    assert_allclose(heat_of_flame(2.3049, diameter=1.03179), 771.52e3, rtol=1e-3)
    heights = flame_height([1e3, 5e4, 8e6], diameter=[0.05, 0.2, 1.0])
    assert_allclose(heat_of_flame(heights, diameter=[0.05, 0.2, 1.0]), [1e3, 5e4, 8e6], rtol=1e-12)


def test_time_to_pain_by_the_thermal_dose():
    """HSL/2004/04: pain at 92 (kW/m²)^(4/3)·s, 10.76 s at 5 kW/m²; 8 to 12 s by CIBSE Guide E and the industry's table."""
    assert_allclose(seconds_to("pain", 5000.0), 10.76, rtol=1e-3)
    assert 8 < seconds_to("pain", 5000.0) < 12
    # an exposure eight times as hot is over 16 times sooner
    assert_allclose(seconds_to("pain", 1000.0) / seconds_to("pain", 8000.0), 16.0, rtol=1e-12)
    assert seconds_to("pain", 0.0) == math.inf
    with pytest.raises(ValueError, match="must not be negative"):
        seconds_to("pain", -1.0)


def test_radiant_heat_does_not_set_the_audience_distance():
    """Two such wicks at 3.05 m: 0.044 kW/m²; one at 0.5 m: 0.83; 1.42 (24 CFR 51) is met at 0.38 m."""
    assert_allclose(2 * point_source_flux(8640.0, distance=3.05), 44.0, rtol=0.01)
    assert_allclose(point_source_flux(8640.0, distance=0.5), 825.0, rtol=0.01)
    assert_allclose(point_source_flux(8640.0, distance=0.38), 1420.0, rtol=0.01)


def test_bad_numbers_are_refused():
    with pytest.raises(ValueError, match="must not be negative"):
        flame_height(-1.0, diameter=0.1)
    with pytest.raises(ValueError, match="seconds must be positive"):
        burnt_heat_release(0.06, heat_of_combustion=43e6, seconds=0.0)
    with pytest.raises(ValueError, match="distance must be positive"):
        point_source_flux(1.0, distance=0.0)
    with pytest.raises(ValueError, match="heat_release must not be negative"):
        point_source_flux(-1.0, distance=1.0)


@pytest.mark.parametrize("radius", [0.5, 3.5639, 40.0])
def test_radiation_agrees_with_an_independent_library(radius):
    """`ofire` 0.1.16 (MIT), a general-purpose fire library (test only, wheels for Linux): E1's fire."""
    ofire = pytest.importorskip("ofire")
    flux = ofire.fire_dynamics_tools.chapter_5.equation_5_1.thermal_radiation_point_source(
        771.52, radius, 0.3
    )
    diameter = ofire.fire_dynamics_tools.chapter_9.equation_9_4.effective_diameter(radius)

    assert_allclose(point_source_flux(771.52e3, distance=radius) / 1000, flux, rtol=1e-9)
    assert_allclose(equivalent_diameter(radius), diameter, rtol=1e-12)
