"""Who is lit when, and for how long the wick lasts: one record per burn, for checks and sheets."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from sequencer.facts.burn_log import TimedBurn, estimate, matching, read_burn_log
from sequencer.facts.burn_times import BurnTime, default_burn_time
from sequencer.facts.fuels import Fuel, fuel
from sequencer.staging.staged import Staged
from sequencer.staging.wicks import wick_area

LIGHTING = 5.0  # [s] to light one performer's props; a design choice


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedBurn:
    """One performer's burn, on one soak."""

    who: str
    start: float  # [beats]
    end: float  # [beats]
    start_s: float  # [s] of the track
    end_s: float  # [s]
    lit_s: float  # [s] burnt on this soak until `end`, including earlier burns on the same soak and waits
    burn: BurnTime | None  # None: the burning time is unknown
    fuel: str
    soak: int = 0  # number of the performer's soak, from 0
    wait_s: float = 0.0  # [s] alight before `start`, while others are being lit

    @property
    def dry_s(self) -> float | None:
        """When the wick burns out [s of the track]; None if the burning time is unknown."""
        if self.burn is None:
            return None
        return self.end_s + max(self.burn.seconds - self.lit_s, self.start_s - self.end_s)

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


def planned_burns(show: Staged, *, refuel_seconds: float) -> tuple[PlannedBurn, ...]:
    """Every burn of a show, by start.

    Parameters
    ----------
    show : Staged
    refuel_seconds : float
        Time to soak and spin off [s]. A wick that is relit sooner burns what is left of the same soak, so
        its burns are counted together.

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
    log = timed_burns(show)
    out: list[PlannedBurn] = []
    for who in show.show.names:
        burn = burn_time(show, who, log)
        before = -math.inf
        counted, soak = 0.0, -1
        for span in show.lit_of(who):
            start, end = show.seconds(span.start), show.seconds(span.end)
            fresh = start - before >= refuel_seconds
            counted = (0.0 if fresh else counted) + end - start
            soak += int(fresh)
            before = end
            out.append(
                PlannedBurn(
                    who=who,
                    start=span.start,
                    end=span.end,
                    start_s=start,
                    end_s=end,
                    lit_s=counted,
                    burn=burn,
                    fuel=fire.fuel,
                    soak=soak,
                )
            )
    out.sort(key=lambda each: each.start)  # at the same beat in the order of the cast
    return _with_waits(out)


def _with_waits(burns: Sequence[PlannedBurn]) -> tuple[PlannedBurn, ...]:
    """Burns, by start, with the time that each wick is alight before its burn begins."""
    waited: dict[tuple[str, int], float] = {}
    out = []
    for start in dict.fromkeys(burn.start for burn in burns):
        together = [
            replace(burn, lit_s=burn.lit_s + waited.get((burn.who, burn.soak), 0.0))
            for burn in burns
            if burn.start == start
        ]
        order = sorted(together, key=lambda burn: -spare(burn))
        waits = {burn.who: LIGHTING * left for left, burn in enumerate(reversed(order))}
        for burn in together:
            wait, key = waits[burn.who], (burn.who, burn.soak)
            waited[key] = waited.get(key, 0.0) + wait
            out.append(replace(burn, lit_s=burn.lit_s + wait, wait_s=wait))
    return tuple(out)


def spare(burn: PlannedBurn) -> float:
    """Burning time left when a flame is put out [s]; 0 if the burning time is unknown."""
    return burn.burn.seconds - burn.lit_s if burn.burn else 0.0


def lit_at_once(burns: tuple[PlannedBurn, ...]) -> tuple[int, PlannedBurn | None]:
    """Largest number of performers lit at once, and the burn whose start reaches it.

    A performer who is put out at the moment another is lit counts too: flames do not end on a beat.
    """
    best: tuple[int, PlannedBurn | None] = (0, None)
    for burn in burns:
        lit = {each.who for each in burns if each.start <= burn.start <= each.end}
        if len(lit) > best[0]:
            best = (len(lit), burn)
    return best
