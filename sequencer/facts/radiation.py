"""Radiant heat at a distance.

The flame is a point that radiates evenly; distances are taken from its centre. Low radiant heat does
not make a distance good: thrown props, people who walk in, and scenery that lights do not radiate.

Source: US NRC, Fire Dynamics Tools, sheet 05.1.
"""

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, as_floats

RADIATIVE_FRACTION = 0.30  # [1] as the published example sheets of NUREG-1805 take it


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


def _positive(name: str, values: ArrayLike) -> Floats:
    floats = as_floats(name, values)
    if np.any(floats <= 0):
        raise ValueError(f"{name} must be positive, got {float(np.min(floats))!r}")
    return floats
