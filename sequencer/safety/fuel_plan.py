"""Fuel to prepare for each prop and in all, with what goes to the spin-off, and who is lit first.

A wick takes up more than it keeps: what is spun or shaken off goes into the catch container and counts
as fuel handled. Volumes are at the lowest density the sources give, so rather too large.
Sources: density of `facts.fuels`; the spin-off's share, the spare and the time to light one prop are
design choices: weigh your own wick before and after the spin-off.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.facts.fuels import Fuel
from sequencer.geometry.bodies import Side
from sequencer.safety.burning import PlannedBurn, known_fuel, spare
from sequencer.staging.staged import Staged

SPIN_OFF = 0.25  # [1] of what a wick takes up; a design choice
FUEL_RESERVE = 0.20  # [1] of what all wicks take up, for a spill or one relight; a design choice


@dataclass(frozen=True, slots=True, kw_only=True)
class PropFuel:
    """Fuel for one prop over the whole show; None where its soak is not weighed."""

    who: str
    side: Side
    soaks: int  # times it is soaked
    wicks: int
    kept: float | None  # [kg] in all its wicks after the spin-off, each time
    taken_up: float | None  # [m³] over all soaks
    spun_off: float | None  # [m³] of that, into the catch container


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
        """Fuel that one performer's wicks take up [m³]; None where a soak is not known."""
        amounts = [each.taken_up for each in self.props if each.who == who]
        known = [amount for amount in amounts if amount is not None]
        return sum(known) if len(known) == len(amounts) else None

    @property
    def taken_up(self) -> float:
        """Fuel that all weighed wicks take up [m³]."""
        return sum(each.taken_up or 0.0 for each in self.props)

    @property
    def spun_off(self) -> float:
        """Fuel that comes back in the catch container [m³]: waste, not for another wick."""
        return sum(each.spun_off or 0.0 for each in self.props)

    @property
    def prepared(self) -> float:
        """Fuel to bring [m³]: all wicks and the spare."""
        return self.taken_up * (1.0 + FUEL_RESERVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Light:
    """One performer to be lit."""

    burn: PlannedBurn
    at_s: float  # [s] of the track at which their torch touches; before the start for all but the last
    spare_s: float | None  # [s] of burning time left when they are put out; None where unknown


@dataclass(frozen=True, slots=True, kw_only=True)
class Lighting:
    """Performers lit together, in the order in which they are lit."""

    start: float  # [beats]
    start_s: float  # [s]
    lights: tuple[Light, ...]


def fuel_plan(show: Staged, burns: Sequence[PlannedBurn]) -> FuelPlan | None:
    """Fuel for the burns of a show; None where nothing burns.

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
    """Who is lit in which order: the one with most burning time to spare first.

    Parameters
    ----------
    burns : sequence of PlannedBurn

    Notes
    -----
    Lighting several takes time in which the first already burn; whoever has least to spare is lit
    last. Source: common practice; `LIGHTING` is a design choice.
    """
    found = []
    for start in sorted({burn.start for burn in burns}):
        together = [burn for burn in burns if burn.start == start]
        lights = tuple(
            Light(
                burn=burn,
                at_s=burn.start_s - burn.wait_s,
                spare_s=None if burn.burn is None else spare(burn),
            )
            for burn in sorted(together, key=lambda burn: -burn.wait_s)
        )
        found.append(Lighting(start=start, start_s=together[0].start_s, lights=lights))
    return tuple(found)
