"""The burn as it is handled: who lights and puts out whom, when and where, one performer at a time.

Times in seconds of the track, negative before it; places in the stage frame [m]. In a show file `from` is when all
of one start are alight and `until` when putting out begins. So lighting ends at `from`: one person lights one
performer at a time, most burning time to spare first, and walks on to the next; whoever is lit waits, alight.
Several people work side by side. From `until` on, one person puts out one performer at a time, least to spare
first, and the others of theirs burn on.

The first of two wicks may catch as soon as lighting starts, so a performer counts as alight from then on, until putting
out ends. Whoever lights is taken to walk straight on, at the slow pace of a pedestrian.

Sources: the order is common practice; the usual times are design choices, printed as assumed; pace from
`facts.pace`.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from sequencer.facts.pace import speeds
from sequencer.geometry.regions import Point
from sequencer.geometry.walking import NO_WAY, WalkableFloor
from sequencer.show.model import CrewMember, Fire

ASSUMED = "assumed, not measured"
# [s] for one performer's props; used, and printed as assumed, where the show has no time of its own
USUAL_TIMES = MappingProxyType({"light": 10.0, "put_out": 10.0, "cool": 600.0, "swap": 20.0})
SAME_PLACE = 0.01  # [m] nearer than this nobody walks
_EXACT = 1e-6  # [s] of rounding

WalkSeconds = Callable[[Point, Point], float]  # from one place to another [s]


@dataclass(frozen=True, slots=True, kw_only=True)
class HandlingTimes:
    """How long one performer's props are handled; each as entered, or else a usual time."""

    light: float  # [s]
    put_out: float  # [s]
    cool: float  # [s] from the flame out until the wick is cold
    swap: float  # [s] from one set of props to another
    assumed: frozenset[str] = frozenset()  # those that are usual times

    def words(self, *names: str) -> str:
        """Words to put behind such a time: that it is assumed, if any of these is a usual one; otherwise nothing."""
        return f" ({ASSUMED})" if self.assumed.intersection(names) else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HandlingTurn:
    """One performer to be lit or put out by one person."""

    by: str | None  # nobody is named: one unknown person for all of them
    moment: float  # [s] lighting has to be over by then; putting out may begin then
    spare: float  # [s] burning time left
    place: Point


def handling_times(fire: Fire | None) -> HandlingTimes:
    """The times of a show, with usual ones for those that it does not state."""
    entered = fire.handling if fire is not None else None
    stated = {name: getattr(entered, name, None) for name in USUAL_TIMES}
    return HandlingTimes(
        **{name: USUAL_TIMES[name] if own is None else own for name, own in stated.items()},
        assumed=frozenset(name for name, own in stated.items() if own is None),
    )


def lighter_of(lit_by: str | None, fire: Fire, crew: Sequence[CrewMember]) -> str | None:
    """Who lights: as entered for the burn, else for the show, else the crew's only lighter; None if that is nobody."""
    named = lit_by or fire.handling.lit_by
    lighters = [each.name for each in crew if each.duty == "lighter"]
    return named or (lighters[0] if len(lighters) == 1 else None)


def walk_seconds(ground: WalkableFloor, *, no_way: float = 0.0) -> WalkSeconds:
    """Time of a slow walk round obstacles.

    Parameters
    ----------
    ground : WalkableFloor
    no_way : float
        Given where there is no way [s]: the checks say so of the place, so elsewhere it takes no time.

    Notes
    -----
    Source: 3.5 ft/s, pedestrian clearance design speed (MUTCD history paper, 2007).
    """
    speed = speeds()["pedestrian"].speed

    def seconds(start: Point, end: Point) -> float:
        if math.dist(start, end) < SAME_PLACE:
            return 0.0
        (way,) = ground.ways_to([end])(np.array([start]))[0].tolist()
        return no_way if way >= NO_WAY else way / speed

    return seconds


def lighting_turns(
    turns: Mapping[int, HandlingTurn], *, each: float, walk: WalkSeconds
) -> dict[int, tuple[float, float]]:
    """When each lighting starts and ends [s].

    Parameters
    ----------
    turns : mapping of int to HandlingTurn
        Of two equal ones the one with the smaller number comes first.
    each : float
        Time to light one performer's props [s].
    walk : callable
    """
    found: dict[int, tuple[float, float]] = {}
    for own in _by_person(turns):
        after: tuple[float, Point] | None = None
        for key in sorted(own, key=lambda k: (-turns[k].moment, turns[k].spare, -k)):
            turn = turns[key]
            end = turn.moment
            if after is not None:
                end = min(end, after[0] - walk(turn.place, after[1]))
            found[key] = end - each, end
            after = end - each, turn.place
    return found


def putting_out_turns(
    turns: Mapping[int, HandlingTurn], *, each: float, walk: WalkSeconds
) -> dict[int, tuple[float, float]]:
    """When putting out each performer starts and ends [s]; parameters as `lighting_turns`."""
    found: dict[int, tuple[float, float]] = {}
    for own in _by_person(turns):
        waiting = sorted(own, key=lambda k: turns[k].moment)
        free, here = -math.inf, None
        while waiting:
            now = max(free, turns[waiting[0]].moment)
            due = [key for key in waiting if turns[key].moment <= now]
            key = min(due, key=lambda k: (turns[k].spare, k))
            there = turns[key].place
            start = turns[key].moment
            if here is not None:
                start = max(start, free + walk(here, there))
            found[key] = start, start + each
            free, here = start + each, there
            waiting.remove(key)
    return found


def waiting_order(waiting: str | None, *, flexible: bool, until: str) -> str:
    """What a performer does with lit props that wait for the first move of a burn, as an order.

    Parameters
    ----------
    waiting : str, optional
        As `fire`, `handling`, `waiting` says: "on the ground", "swinging", "hanging"; not stated means hanging.
    flexible : bool
        Whether the heads hang on lines.
    until : str
        When the first move begins, such as "until 2.4".
    """
    if waiting == "on the ground":
        if flexible:
            return f"Lay the heads on bare ground, tethers to your side, {until}"
        return f"Lay the props on bare ground, flames away from you, {until}"
    if waiting == "swinging":
        return (
            "Lay the heads on bare ground while they are lit, tethers to your side; then keep them swinging "
            f"(a pendulum), clear of your legs, {until}"
        )
    return f"Hold the props still, flames clear of your hands and legs, {until}"


def seconds_words(seconds: float) -> str:
    """A length of time, rounded up to a whole second: "8 s", "10 min", "3 min 29 s"."""
    whole = math.ceil(seconds - _EXACT)
    minutes, rest = divmod(whole, 60)
    if whole < 120:
        return f"{whole} s"
    return f"{minutes} min" + (f" {rest:02d} s" if rest else "")


def _by_person(turns: Mapping[int, HandlingTurn]) -> list[list[int]]:
    people: dict[str | None, list[int]] = {}
    for key, turn in turns.items():
        people.setdefault(None if turn.by is None else turn.by.casefold(), []).append(key)
    return list(people.values())
