"""A show's wicks: their burning surface and their flames, at rest and moving."""

import math
from collections.abc import Sequence

import numpy as np

from sequencer.facts.combustion import burnt_heat_release, flame_height
from sequencer.facts.flames import FASTEST_HEAD, PEAK, stretched_reach
from sequencer.facts.fuels import Fuel, fuel
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.show.file_records.prop_records import PropRecord
from sequencer.show.model import Fire
from sequencer.timing.tempo import TempoMap

ASSUMED_FLAME = 0.45  # [m] if no flame is stated and none can be computed; common practice


def wick_area(prop: PropRecord) -> float:
    """Burning surface of one round wick [m²], taken as a sphere, so on the large side."""
    return 4.0 * math.pi * _radius(prop) ** 2


def fastest_wick(
    prop: Prop, trajectory: Trajectory, lit: Sequence[tuple[float, float]], tempo: TempoMap
) -> float:
    """Proven bound on the speed of a prop's wicks while lit [m/s], relative to the performer."""
    most = 0.0
    for start, end in lit:
        beats_per_second = tempo.fastest(start, end)
        pieces = trajectory.pieces(start, end)
        speeds = prop.fastest_each([bounds for *_, bounds in pieces])
        for k in np.argsort(-speeds).tolist():  # the fastest first: most others are slower anyhow
            if not speeds[k] * beats_per_second > most:
                break
            low, high, _ = pieces[k]
            most = max(most, float(speeds[k]) * tempo.fastest(low, high))
    return most


def flame_reach(prop: PropRecord, fire: Fire | None, *, speed: float = FASTEST_HEAD) -> float:
    """Length of a moving wick's flame beyond the wick [m]; 0 if nothing is lit.

    Parameters
    ----------
    prop : PropRecord
    fire : Fire, optional
    speed : float
        Speed of the wick [m/s]; default: that of any ordinary prop.

    Notes
    -----
    Source: `flame_at_rest`, stretched by `facts.flames.stretched_reach`.
    """
    if fire is None:
        return 0.0
    heat = fuel(fire.fuel).heat_of_combustion
    burnt = {} if heat is None else {"heat_of_combustion": heat.lowest}
    rest = flame_at_rest(prop, fire)
    return float(stretched_reach(rest, diameter=2 * _radius(prop), speed=speed, **burnt))


def flame_at_rest(prop: PropRecord, fire: Fire) -> float:
    """Flame length beyond one wick at rest that all distances use [m].

    The larger of the stated one and the computed one at the peak of the burn, where the burning time is stated;
    `ASSUMED_FLAME` if neither is known.

    Source: `resting_flame`; what a performer observed never shortens what is computed.
    """
    liquid = fuel(fire.fuel)
    burn = fire.burn
    computed = None if burn is None else resting_flame(prop, liquid, burn.time, times=PEAK)
    if fire.flame is None and computed is None:
        return ASSUMED_FLAME
    return max(fire.flame or 0.0, computed or 0.0)


def resting_flame(
    prop: PropRecord, liquid: Fuel, seconds: float, *, times: float = 1.0
) -> float | None:
    """Flame height of one wick at rest by the pool-fire relation [m]; None if its soak is not known.

    Parameters
    ----------
    prop : PropRecord
    liquid : Fuel
    seconds : float
        Burning time [s].
    times : float
        Of the mean heat release [1]: 1 for the mean flame, `facts.flames.PEAK` for the highest.
    """
    heat = liquid.heat_of_combustion
    if prop.fuel_mass is None or heat is None:
        return None
    watts = burnt_heat_release(prop.fuel_mass, heat_of_combustion=heat.highest, seconds=seconds)
    return float(flame_height(times * watts, diameter=2 * _radius(prop)))


def _radius(prop: PropRecord) -> float:
    return prop.held().wick_radius
