"""Fuel to prepare for each prop and in total, the amount spun off, and the lighting order.

A wick takes up more than it keeps: the fuel spun or shaken off goes into the catch container and counts as
fuel handled. A second set of props for a relight is a soak of its own. Volumes use the lowest density in the
sources, so they err on the large side.
Sources: density from `facts.fuels`; the fraction spun off and the spare are design choices: weigh your own wick
before and after spinning off.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.facts.fuels import Fuel
from sequencer.geometry.bodies import Side
from sequencer.safety.burns.burning import PlannedBurn, known_fuel, spare
from sequencer.staging.staged import Staged

SPIN_OFF = 0.25  # [1] fraction of the fuel that a wick takes up; a design choice
FUEL_RESERVE = 0.20  # [1] fraction of the fuel that all wicks take up, for a spill or one relight; a design choice


@dataclass(frozen=True, slots=True, kw_only=True)
class PropFuel:
    """Fuel for one prop over the whole show; None if its soak is not weighed."""

    who: str
    side: Side
    soaks: int  # number of times it is soaked
    wicks: int
    kept: float | None  # [kg] in all its wicks after spinning off, per soak
    taken_up: float | None  # [m³] over all soaks
    spun_off: float | None  # [m³] of that, spun off into the catch container


@dataclass(frozen=True, slots=True, kw_only=True)
class FuelPlan:
    """Fuel for a show."""

    fuel: Fuel
    props: tuple[PropFuel, ...]  # in the order of the cast

    @property
    def unweighed(self) -> tuple[str, ...]:
        """Performers whose soak is not known."""
        return tuple(dict.fromkeys(each.who for each in self.props if each.taken_up is None))

    def of(self, who: str) -> float | None:
        """Fuel that one performer's wicks take up [m³]; None if a soak is not known."""
        amounts = [each.taken_up for each in self.props if each.who == who]
        known = [amount for amount in amounts if amount is not None]
        return sum(known) if len(known) == len(amounts) else None

    @property
    def taken_up(self) -> float:
        """Fuel that all weighed wicks take up [m³]."""
        return sum(each.taken_up or 0.0 for each in self.props)

    @property
    def spun_off(self) -> float:
        """Fuel left in the catch container [m³]: waste, not to be reused."""
        return sum(each.spun_off or 0.0 for each in self.props)

    @property
    def prepared(self) -> float:
        """Fuel to bring [m³]: all wicks and the spare."""
        return self.taken_up * (1.0 + FUEL_RESERVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Light:
    """One performer to be lit."""

    burn: PlannedBurn
    at_s: float  # [s] of the track at which lighting them starts
    spare_s: float | None  # [s] of burning time left when they are put out; None if unknown


@dataclass(frozen=True, slots=True, kw_only=True)
class Lighting:
    """Performers lit together, in lighting order."""

    start: float  # [beats]
    start_s: float  # [s]
    lights: tuple[Light, ...]


def fuel_plan(show: Staged, burns: Sequence[PlannedBurn]) -> FuelPlan | None:
    """Fuel for the burns of a show; None if nothing is lit.

    Raises
    ------
    ValueError
        If the fuel is not known.
    """
    liquid = known_fuel(show)
    if liquid is None or not burns:
        return None
    density = None if liquid.density is None else liquid.density.lowest
    props = []
    for dancer in show.show.cast:
        soaks = len({burn.soak for burn in burns if burn.who == dancer.name})
        for side, prop in dancer.props.items() if soaks else ():
            kept = prop.fuel
            volume = None
            if kept is not None and density is not None:
                volume = soaks * kept / (1.0 - SPIN_OFF) / density
            props.append(
                PropFuel(
                    who=dancer.name,
                    side=side,
                    soaks=soaks,
                    wicks=prop.wick_count,
                    kept=kept,
                    taken_up=volume,
                    spun_off=None if volume is None else volume * SPIN_OFF,
                )
            )
    return FuelPlan(fuel=liquid, props=tuple(props))


def lighting_order(burns: Sequence[PlannedBurn]) -> tuple[Lighting, ...]:
    """Lighting order: the performer with the most burning time to spare first.

    Parameters
    ----------
    burns : sequence of PlannedBurn

    Notes
    -----
    While several performers are lit in turn, the first are already burning; whoever has the least to spare
    is lit last. Source: common practice.
    """
    found = []
    for start in sorted({burn.start for burn in burns}):
        together = [burn for burn in burns if burn.start == start]
        lights = tuple(
            Light(
                burn=burn,
                at_s=burn.alight_s,
                spare_s=None if burn.burn is None else spare(burn),
            )
            for burn in sorted(together, key=lambda burn: burn.alight_s)
        )
        found.append(Lighting(start=start, start_s=together[0].start_s, lights=lights))
    return tuple(found)
