"""A show's wicks: their burning surface and their flames, at rest and moving."""

import math
from collections.abc import Sequence

from sequencer.facts.combustion import burnt_heat_release, flame_height
from sequencer.facts.flames import FASTEST_HEAD, stretched_reach
from sequencer.facts.fuels import Fuel, fuel
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.show.model import Fire
from sequencer.show.prop_records import PropRecord
from sequencer.timing.tempo import TempoMap


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
        for low, high, bounds in trajectory.pieces(start, end):
            speed = prop.fastest(bounds)
            if speed * beats_per_second > most:
                most = max(most, speed * tempo.fastest(low, high))
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
    Source: the flame at rest as given in the show, stretched by `facts.flames.stretched_reach`.
    """
    if fire is None:
        return 0.0
    heat = fuel(fire.fuel).heat_of_combustion
    burnt = {} if heat is None else {"heat_of_combustion": heat.lowest}
    return float(stretched_reach(fire.flame, diameter=2 * _radius(prop), speed=speed, **burnt))


def resting_flame(prop: PropRecord, liquid: Fuel, seconds: float) -> float | None:
    """Mean flame height of one wick at rest by the pool-fire relation [m]; None if its soak is not known."""
    heat = liquid.heat_of_combustion
    if prop.fuel_mass is None or heat is None:
        return None
    watts = burnt_heat_release(prop.fuel_mass, heat_of_combustion=heat.highest, seconds=seconds)
    return float(flame_height(watts, diameter=2 * _radius(prop)))


def _radius(prop: PropRecord) -> float:
    return prop.held().wick_radius
