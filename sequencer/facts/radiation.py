"""Radiant heat at a distance.

The flame is modelled as a point that radiates evenly; distances are from its centre. Low radiant heat does
not make a distance safe: thrown props, people walking in and scenery that catches fire are not covered.

Source: US NRC, Fire Dynamics Tools, sheet 05.1.
"""

from math import inf

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, as_floats

PAIN_DOSE = 92.0  # [(kW/m²)^(4/3)·s] HSL/2004/04
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


def seconds_to_pain(flux: float) -> float:
    """Exposure of bare skin until it hurts [s], by the thermal dose of 92 (kW/m²)^(4/3)·s; inf without heat.

    Parameters
    ----------
    flux : float
        [W/m²]

    Raises
    ------
    ValueError
        If it is negative.

    Notes
    -----
    Source: HSL/2004/04, thermal dose table, pain 92 (86 to 103), read second-hand. A steady flux; below some 1.5 kW/m²
    tables say that it is borne for good, so the time given there errs on the short side.
    """
    if not flux >= 0:
        raise ValueError(f"flux must not be negative, got {flux!r}")
    return PAIN_DOSE / (flux / 1000.0) ** (4.0 / 3.0) if flux > 0 else inf


def _positive(name: str, values: ArrayLike) -> Floats:
    floats = as_floats(name, values)
    if np.any(floats <= 0):
        raise ValueError(f"{name} must be positive, got {float(np.min(floats))!r}")
    return floats
