"""Radiant heat at a distance, and how long skin can bear it.

The flame is modelled as a point that radiates evenly; distances are from its centre. Low radiant heat does
not make a distance safe: thrown props, people walking in and scenery that catches fire are not covered.

Sources: US NRC, Fire Dynamics Tools, sheet 05.1; HSL/2004/04; CIBSE Guide E.
"""

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, as_floats
from sequencer.facts.heat_criteria import doses

RADIATIVE_FRACTION = 0.30  # [1] as in the published example sheets of NUREG-1805


def point_source_flux(
    heat_release: ArrayLike,
    *,
    distance: ArrayLike,
    radiative_fraction: ArrayLike = RADIATIVE_FRACTION,
) -> Floats:
    """Radiant flux at a distance from the flame's centre, q″ = χ Q / (4π R²).

    Parameters
    ----------
    heat_release : array_like, shape (...) [W]
    distance : array_like, shape (...) [m]
        From the centre of the flame, not from its edge.
    radiative_fraction : array_like, shape (...) [1]

    Returns
    -------
    flux : ndarray, shape (...) [W/m²]

    Raises
    ------
    ValueError
        If a distance is not positive, or a heat release negative.

    Notes
    -----
    Source: US NRC, Fire Dynamics Tools (NUREG-1805), sheet 05.1. Too high close to the flame.
    """
    radius = _positive("distance", distance)
    heat = as_floats("heat_release", heat_release)
    if np.any(heat < 0):
        raise ValueError("heat_release must not be negative")
    fraction = as_floats("radiative_fraction", radiative_fraction)
    return fraction * heat / (4.0 * np.pi * radius**2)


def flux_distance(
    heat_release: ArrayLike,
    *,
    flux: ArrayLike,
    radiative_fraction: ArrayLike = RADIATIVE_FRACTION,
) -> Floats:
    """Distance from the flame's centre at which a flux occurs; the inverse of `point_source_flux`.

    Parameters
    ----------
    heat_release : array_like, shape (...) [W]
    flux : array_like, shape (...) [W/m²]
    radiative_fraction : array_like, shape (...) [1]

    Returns
    -------
    distance : ndarray, shape (...) [m]

    Raises
    ------
    ValueError
        If a flux is not positive, or a heat release negative.

    Notes
    -----
    Source: US NRC, Fire Dynamics Tools (NUREG-1805), sheet 05.1, solved for R. Exact inverse.
    """
    limit = _positive("flux", flux)
    heat = as_floats("heat_release", heat_release)
    if np.any(heat < 0):
        raise ValueError("heat_release must not be negative")
    return np.sqrt(as_floats("radiative_fraction", radiative_fraction) * heat / (4 * np.pi * limit))


def dose_seconds(flux: ArrayLike, *, dose: float | None = None) -> Floats:
    """Time to reach a thermal dose, dose / q^(4/3); default dose: pain.

    Parameters
    ----------
    flux : array_like, shape (...) [W/m²]
    dose : float, optional
        [(kW/m²)^(4/3)·s]

    Returns
    -------
    seconds : ndarray, shape (...) [s]

    Raises
    ------
    ValueError
        If a flux is not positive.

    Notes
    -----
    Source: HSL/2004/04, dose table (read second-hand): pain at 92, 86 to 103.
    """
    taken = doses()["pain"].middle if dose is None else dose
    return taken / (_positive("flux", flux) / 1000.0) ** (4.0 / 3.0)


def skin_burn_seconds(flux: ArrayLike) -> Floats:
    """Time until skin burns, t[min] = 1.33 q^−1.35 with q in kW/m².

    Parameters
    ----------
    flux : array_like, shape (...) [W/m²]

    Returns
    -------
    seconds : ndarray, shape (...) [s]

    Raises
    ------
    ValueError
        If a flux is not positive.

    Notes
    -----
    Source: CIBSE Guide E eq. 10.4 (read second-hand).
    """
    return 60.0 * 1.33 * (_positive("flux", flux) / 1000.0) ** -1.35


def _positive(name: str, values: ArrayLike) -> Floats:
    floats = as_floats(name, values)
    if np.any(floats <= 0):
        raise ValueError(f"{name} must be positive, got {float(np.min(floats))!r}")
    return floats
