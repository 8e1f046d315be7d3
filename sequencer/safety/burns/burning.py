"""Who is lit when, by whom, and for how long the wick lasts: one record per burn, for checks and sheets."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from sequencer.facts.burn_log import TimedBurn, estimate, matching, read_burn_log
from sequencer.facts.burn_times import BurnTime, default_burn_time
from sequencer.facts.fuels import Fuel, fuel
from sequencer.geometry.regions import Point
from sequencer.geometry.walking import WalkableFloor
from sequencer.safety.burns.handling import (
    HandlingTurn,
    WalkSeconds,
    handling_times,
    lighter_of,
    lighting_turns,
    putting_out_turns,
    walk_seconds,
)
from sequencer.staging.staged import Staged
from sequencer.staging.wicks import wick_area


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedBurn:
    """One performer's burn, on one soak: lit, waiting, danced, put out, cold."""

    who: str
    start: float  # [beats] all of this start are alight, and the burn begins
    end: float  # [beats] putting out begins
    start_s: float  # [s] of the track
    end_s: float  # [s]
    lit_s: float  # [s] burnt on this soak until the flame is out, earlier burns on the same soak included
    burn: BurnTime | None  # None: the burning time is unknown
    fuel: str
    soak: int = 0  # number of the performer's soak, from 0
    second_set: bool = False  # with another set of props, soaked beforehand
    lighting_s: float = 0.0  # [s] being lit
    wait_s: float = (
        0.0  # [s] alight from then until `start`, while others are lit or on the way to the place
    )
    lit_by: str | None = None  # who lights; None: nobody is named
    lit_at: Point | None = None  # [m, stage frame] where; None: unknown
    queue_s: float = 0.0  # [s] from `end` until somebody is free to put them out
    putting_out_s: float = 0.0  # [s] being put out
    put_out_by: str | None = None  # who puts out; None: nobody is named or watches
    cool_s: float = 0.0  # [s] from the flame out until the wick is cold

    @property
    def alight_s(self) -> float:
        """When lighting starts and the first wick may catch [s of the track]; negative before it."""
        return self.start_s - self.wait_s - self.lighting_s

    @property
    def out_s(self) -> float:
        """When the last flame is out [s of the track]."""
        return self.end_s + self.queue_s + self.putting_out_s

    @property
    def cold_s(self) -> float:
        """When the wick is cold [s of the track]."""
        return self.out_s + self.cool_s

    @property
    def flame_s(self) -> float:
        """How long there is a flame, without earlier burns on the same soak [s]."""
        return self.out_s - self.alight_s

    @property
    def dry_s(self) -> float | None:
        """When the wick burns out [s of the track]; None if the burning time is unknown."""
        if self.burn is None:
            return None
        return self.out_s + max(self.burn.seconds - self.lit_s, -self.flame_s)

    def share(self) -> float:
        """Planned time over burning time; inf if the burning time is unknown."""
        return self.lit_s / self.burn.seconds if self.burn else math.inf


def known_fuel(show: Staged) -> Fuel | None:
    """The show's fuel; None if nothing is lit.

    Raises
    ------
    ValueError
        If it is not known.
    """
    return fuel(show.show.fire.fuel) if show.show.fire else None


def timed_burns(show: Staged) -> tuple[TimedBurn, ...]:
    """The show's log of timed burns; empty if it names none.

    Raises
    ------
    InputError
        If the log cannot be used.
    """
    fire = show.show.fire
    if fire is None or fire.burns is None:
        return ()
    return read_burn_log(Path(show.file).parent / fire.burns)


def burn_time(show: Staged, who: str, log: Sequence[TimedBurn] = ()) -> BurnTime | None:
    """Burning time assumed for a performer's wicks: logged, timed, stated, or the default.

    Parameters
    ----------
    show : Staged
    who : str
    log : sequence of TimedBurn
        Timed burns of all performers.

    Raises
    ------
    ValueError
        If the fuel is not known.
    """
    fire = show.show.fire
    if fire is None:
        return None
    logged = estimate(matching(log, fuel=fire.fuel, performer=who))
    if logged is not None:
        return logged.burn_time()
    if fire.burn is not None:
        timed = fire.burn.measured
        return BurnTime(
            seconds=fire.burn.time,
            basis="measured" if timed else "stated",
            source="timed burn of this show's performers" if timed else "stated in the show file",
        )
    liquid = fuel(fire.fuel)
    dancer = next(each for each in show.show.cast if each.name == who)
    found = [
        default_burn_time(liquid, soak=prop.fuel_mass, wick_area=wick_area(prop))
        for prop in dancer.props.values()
    ]
    known = [each for each in found if each is not None]
    if len(known) < len(found):
        return None
    return min(known, key=lambda each: each.seconds)


def planned_burns(
    show: Staged, *, refuel_seconds: float, ground: WalkableFloor | None = None
) -> tuple[PlannedBurn, ...]:
    """Every burn of a show, by start, from its lighting on; `put_out` adds how each ends.

    Parameters
    ----------
    show : Staged
    refuel_seconds : float
        Time to soak and spin off [s]. The same wick, lit again before it can be cold and soaked, burns what is
        left of the same soak, so its burns are counted together.
    ground : WalkableFloor, optional
        Obstacles to walk round; default: an empty floor.

    Raises
    ------
    InputError
        If the log of timed burns cannot be used.
    ValueError
        If the fuel is not known.
    """
    fire = show.show.fire
    if fire is None:
        return ()
    log, times = timed_burns(show), handling_times(fire)
    floors = {dancer.name: dancer.floor for dancer in show.dancers}
    out: list[PlannedBurn] = []
    for who in show.show.names:
        burn = burn_time(show, who, log)
        before: float | None = None
        soak = -1
        for span in show.lit_of(who):
            start, end = show.seconds(span.start), show.seconds(span.end)
            fresh = (
                before is None or span.second_set or start - before >= times.cool + refuel_seconds
            )
            soak += int(fresh)
            out.append(
                PlannedBurn(
                    who=who,
                    start=span.start,
                    end=span.end,
                    start_s=start,
                    end_s=end,
                    lit_s=0.0,
                    burn=burn,
                    fuel=fire.fuel,
                    soak=soak,
                    second_set=span.second_set and before is not None,
                    lit_by=lighter_of(span.lit_by, fire, show.show.crew),
                    lit_at=span.lit_at or floors[who].place_at(span.start),
                    put_out_by=span.put_out_by,
                    cool_s=times.cool,
                )
            )
            before = end
    out.sort(key=lambda each: each.start)  # at the same beat in the order of the cast
    places = [floors[burn.who].place_at(burn.start) for burn in out]
    return _lit_in_turn(
        _counted(out), places, seconds=times.light, walk=walk_seconds(ground or WalkableFloor())
    )


def put_out(
    burns: Sequence[PlannedBurn],
    by: Sequence[str | None],
    places: Sequence[Point],
    *,
    seconds: float,
    walk: WalkSeconds,
) -> tuple[PlannedBurn, ...]:
    """Burns with who puts each of them out, and when.

    Parameters
    ----------
    burns : sequence of PlannedBurn
    by : sequence of str
        Who puts out each of them; None if that is nobody.
    places : sequence of Point
        Where each is put out [m, stage frame].
    seconds : float
        Time to put out one performer's props [s].
    walk : callable
    """
    turns = {
        index: HandlingTurn(by=person, moment=burn.end_s, spare=spare(burn), place=place)
        for index, (burn, person, place) in enumerate(zip(burns, by, places, strict=True))
    }
    when = putting_out_turns(turns, each=seconds, walk=walk)
    return _counted(
        [
            replace(
                burn,
                put_out_by=by[index],
                queue_s=when[index][0] - burn.end_s,
                putting_out_s=when[index][1] - when[index][0],
            )
            for index, burn in enumerate(burns)
        ]
    )


def _lit_in_turn(
    burns: Sequence[PlannedBurn], places: Sequence[Point], *, seconds: float, walk: WalkSeconds
) -> tuple[PlannedBurn, ...]:
    """Burns, by start, with the time for which each wick is alight before its burn begins."""
    turns = {}
    for index, (burn, place) in enumerate(zip(burns, places, strict=True)):
        at = burn.lit_at or place
        moment = burn.start_s - walk(at, place)
        turns[index] = HandlingTurn(by=burn.lit_by, moment=moment, spare=spare(burn), place=at)
    when = lighting_turns(turns, each=seconds, walk=walk)
    return _counted(
        [
            replace(
                burn,
                lighting_s=when[index][1] - when[index][0],
                wait_s=burn.start_s - when[index][1],
            )
            for index, burn in enumerate(burns)
        ]
    )


def _counted(burns: Sequence[PlannedBurn]) -> tuple[PlannedBurn, ...]:
    """Burns, by start, with the time that each has burnt on its soak when its flame is out."""
    burnt: dict[tuple[str, int], float] = {}
    out = []
    for burn in burns:
        key = (burn.who, burn.soak)
        burnt[key] = burnt.get(key, 0.0) + burn.flame_s
        out.append(replace(burn, lit_s=burnt[key]))
    return tuple(out)


def spare(burn: PlannedBurn) -> float:
    """Burning time left when a flame is put out [s]; 0 if the burning time is unknown."""
    return burn.burn.seconds - burn.lit_s if burn.burn else 0.0


def lit_at_once(burns: tuple[PlannedBurn, ...]) -> tuple[int, PlannedBurn | None]:
    """Largest number of performers lit at once, and the burn whose start reaches it.

    Lit from the start of lighting until the flame is out; who is out at the moment at which another is lit
    counts too: flames do not end on a beat.
    """
    best: tuple[int, PlannedBurn | None] = (0, None)
    for burn in burns:
        lit = {each.who for each in burns if each.alight_s <= burn.alight_s <= each.out_s}
        if len(lit) > best[0]:
            best = (len(lit), burn)
    return best
