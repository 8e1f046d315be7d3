"""Heat release and flame height of burning liquids. SI throughout: W, m, kg, s.

The correlations are those of pool fires wider than 0.2 m. A wick is small, upright and moving, so the
results are order-of-magnitude estimates; observation of a real burn takes precedence.

Sources: US NRC, Fire Dynamics Tools (NUREG-1805); Heskestad 1984, Fire Safety Journal 7:25.
"""

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, as_floats

_HESKESTAD = 0.235 / 1000.0**0.4  # its heat release is in kW


def equivalent_diameter(area: ArrayLike) -> Floats:
    """Diameter of the circle with a given area.

    Parameters
    ----------
    area : array_like, shape (...) [m²]

    Returns
    -------
    diameter : ndarray, shape (...) [m]

    Raises
    ------
    ValueError
        If an area is negative.

    Notes
    -----
    Source: geometry, as NUREG-1805 uses it, D = √(4A/π). Exact.
    """
    return np.sqrt(4.0 * _not_negative("area", area) / np.pi)


def pool_burning_rate(area: ArrayLike, *, mass_flux: ArrayLike, absorption: ArrayLike) -> Floats:
    """Fuel burnt per second by a pool, m″ A (1 − e^(−kβ D)).

    Parameters
    ----------
    area : array_like, shape (...) [m²]
    mass_flux : array_like, shape (...) [kg/(m²·s)]
    absorption : array_like, shape (...) [1/m]

    Returns
    -------
    rate : ndarray, shape (...) [kg/s]

    Raises
    ------
    ValueError
        If a value is negative.

    Notes
    -----
    Source: US NRC, Fire Dynamics Tools (NUREG-1805), sheet 03. Pools wider than 0.2 m.
    """
    surface = _not_negative("area", area)
    share = -np.expm1(-_not_negative("absorption", absorption) * equivalent_diameter(surface))
    return np.asarray(_not_negative("mass_flux", mass_flux) * surface * share)


def burnt_heat_release(
    mass: ArrayLike, *, heat_of_combustion: ArrayLike, seconds: ArrayLike
) -> Floats:
    """Mean heat release of a mass of fuel burnt in a given time, m ΔH / t.

    Parameters
    ----------
    mass : array_like, shape (...) [kg]
    heat_of_combustion : array_like, shape (...) [J/kg]
    seconds : array_like, shape (...) [s]

    Returns
    -------
    heat_release : ndarray, shape (...) [W]

    Raises
    ------
    ValueError
        If a mass or heat is negative, or a time not positive.

    Notes
    -----
    Source: conservation of energy; complete burning, so an upper bound of the mean.
    """
    time = as_floats("seconds", seconds)
    if np.any(time <= 0):
        raise ValueError("seconds must be positive")
    heat = _not_negative("heat_of_combustion", heat_of_combustion)
    return _not_negative("mass", mass) * heat / time


def flame_height(heat_release: ArrayLike, *, diameter: ArrayLike) -> Floats:
    """Mean height of a flame at rest above its base, L = 0.235 Q^0.4 − 1.02 D, never below 0.

    Parameters
    ----------
    heat_release : array_like, shape (...) [W]
    diameter : array_like, shape (...) [m]
        Of the burning base.

    Returns
    -------
    height : ndarray, shape (...) [m]

    Raises
    ------
    ValueError
        If a value is negative.

    Notes
    -----
    Source: Heskestad 1984, Fire Safety Journal 7:25 (Q in kW there). Pools; poor for small wicks.
    """
    heat = _not_negative("heat_release", heat_release)
    base = _not_negative("diameter", diameter)
    return np.maximum(0.0, _HESKESTAD * heat**0.4 - 1.02 * base)


def heat_of_flame(height: ArrayLike, *, diameter: ArrayLike) -> Floats:
    """Heat release whose flame at rest is this high, ((L + 1.02 D) / 0.235)^2.5.

    Parameters
    ----------
    height : array_like, shape (...) [m]
    diameter : array_like, shape (...) [m]
        Of the burning base.

    Returns
    -------
    heat_release : ndarray, shape (...) [W]

    Raises
    ------
    ValueError
        If a value is negative.

    Notes
    -----
    Source: Heskestad 1984, as in `flame_height`, solved for the heat release. For a height of 0 the largest.
    """
    tall = _not_negative("height", height)
    base = _not_negative("diameter", diameter)
    return np.asarray(1000.0 * ((tall + 1.02 * base) / 0.235) ** 2.5)


def _not_negative(name: str, values: ArrayLike) -> Floats:
    floats = as_floats(name, values)
    if np.any(floats < 0):
        raise ValueError(f"{name} must not be negative, got {float(np.min(floats))!r}")
    return floats
