"""How far a burning wick's flame reaches, at rest and as its head moves.

At rest: the published height of a pool flame (`combustion.flame_height`) at the wick's *peak* heat
release. Moving: two effects of a crosswind on a pool fire, each at its worst:

- tilted flame. Thomas's lengths of wind-blown and still flames, L/D = 55 X^0.67 u*^−0.21 and
  42 X^0.61, X = m″/(ρ√(gD)): a wind-blown flame is longest at the least wind that tilts it (u* = 1)
  and gets shorter as the wind increases. The shortening is ignored; only the factor at u* = 1 is used,
  never less than 1.
- dragged base. Moorhouse's D′/D = 1.5 Fr^0.069, Fr = U²/(gD): the base of the flame trails behind the wick
by D′ − D.

So the reach grows with speed and never shrinks. Hot gas shed earlier stays where the head has been, which
the swept reach already covers. The constants of both relations are from memory, and wicks are
smaller than the fires they were fitted to: a measured flame, if longer, takes precedence.

Sources: Heskestad 1984; Thomas 1963 and Moorhouse 1982 (both from memory); the peak factor is a
design choice.
"""

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, as_floats
from sequencer.facts.combustion import heat_of_flame

PEAK = 1.5  # [1] peak over mean heat release of a freshly lit wick; a design choice
STANDARD_GRAVITY = 9.80665  # [m/s²] standard
AIR_DENSITY = 1.2  # [kg/m³] at 20 °C
FASTEST_HEAD = (
    20.0  # [m/s] faster than any head spun by hand: 2 turns a second at 1.15 m are 14.5 m/s
)


def stretched_reach(
    rest: ArrayLike,
    *,
    diameter: ArrayLike,
    speed: ArrayLike = FASTEST_HEAD,
    heat_of_combustion: float = 43.2e6,
) -> Floats:
    """Reach of a moving wick's flame, given its observed reach at rest; never less than at rest.

    Parameters
    ----------
    rest : array_like, shape (...) [m]
        Reach beyond the wick at rest; 0 for a wick that does not burn.
    diameter : array_like, shape (...) [m]
        Of the wick; positive.
    speed : array_like, shape (...) [m/s]
        Of the head through the air, wind included.
    heat_of_combustion : float
        [J/kg]; default: kerosene's.

    Returns
    -------
    reach : ndarray, shape (...) [m]

    Raises
    ------
    ValueError
        If a value is negative, or the diameter or the heat of combustion is 0.

    Notes
    -----
    Source: Heskestad 1984 solved for the heat release; then Thomas 1963 and Moorhouse 1982 (from
    memory), each at its worst; see the module docstring. An upper estimate, not a bound.
    """
    still = as_floats("rest", rest)
    base = as_floats("diameter", diameter)
    if np.any(still < 0):
        raise ValueError("rest must not be negative")
    heat = heat_of_flame(still, diameter=base)
    burnt = heat / _positive(heat_of_combustion)
    moving = _blown(still, burnt, base, as_floats("speed", speed))
    return np.where(still > 0, moving, 0.0)


def _blown(rest: Floats, burnt: Floats, base: Floats, speed: Floats) -> Floats:
    """Flame of reach `rest`, fed with `burnt` kg/s on a base of `base` m, at a speed."""
    if np.any(base <= 0):
        raise ValueError("diameter must be positive")
    if np.any(speed < 0):
        raise ValueError("speed must not be negative")
    x = burnt / (np.pi / 4.0 * base**2) / (AIR_DENSITY * np.sqrt(STANDARD_GRAVITY * base))
    tilted = np.maximum(1.0, 55.0 / 42.0 * x**0.06)
    froude = speed**2 / (STANDARD_GRAVITY * base)
    dragged = base * np.maximum(0.0, 1.5 * froude**0.069 - 1.0)
    return np.asarray(rest * np.where(speed > 0, tilted, 1.0) + dragged)


def _positive(heat_of_combustion: float) -> float:
    if not heat_of_combustion > 0:
        raise ValueError("heat_of_combustion must be positive")
    return heat_of_combustion
