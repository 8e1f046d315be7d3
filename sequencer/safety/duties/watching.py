"""Who watches whom at each moment, and when the watch is handed over.

Positions in the stage frame [m], time in beats. The song is divided into phases; within a phase the same
performers are lit, and each stands or makes one walk. In each phase every lit performer is assigned one
spotter, within the number that one spotter may watch, so that the sum of the longest walks is smallest. A walk
beyond the limit counts in full and one within it a tenth, and a change of spotter costs as much as `CHANGE` metres:
a watch lasts as long as it stays within the limit.

Source: linear assignment by scipy (shortest augmenting paths). The cost of a change is a design choice.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats
from sequencer.facts.pace import reach_in, response_seconds
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.geometry.certified import TOLERANCE
from sequencer.geometry.matching import cheapest_matching
from sequencer.geometry.walking import NO_WAY, WalkableFloor, Ways
from sequencer.kept import recent
from sequencer.motion.clearance.to_posts import Followed
from sequencer.motion.performers.walks import WalkPath

CHANGE = 1.2  # [m]
_PART = 4.0  # [beats] of a walk, about; a design choice
_MOST_WAYS = 1_000  # burns whose ways are kept
_MOST = 20_000  # steps of a phase: a walk of 200 m to 5 mm
_WITHIN = 0.1  # [1] weight of a walk within the limit; a design choice
_NEVER = 1e9  # [m] cost of an impossible watch


@dataclass(frozen=True, slots=True, kw_only=True)
class Duty:
    """A crew member and one of their duties."""

    who: str
    place: tuple[float, float]  # [m, stage frame]
    duty: str  # spotter, perimeter, fuel keeper, lead
    watches: tuple[str, ...] = ()  # empty: everybody


@dataclass(frozen=True, slots=True, kw_only=True)
class Watch:
    """One spotter watching one performer without a break."""

    who: str
    spotter: str
    start: float  # [beats]
    end: float  # [beats]
    way: float  # [m] proven upper bound of the longest walk

    @property
    def response(self) -> float:
        """Time until the spotter arrives, reaction and a slow walk [s]; from when they see what is wrong."""
        return response_seconds(self.way)


@dataclass(frozen=True, slots=True, kw_only=True)
class HandOver:
    """Hand-over of the watch on a lit performer from one spotter to another."""

    who: str
    beat: float
    giver: str
    taker: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WatchPlan:
    """All watches of a show."""

    watches: tuple[Watch, ...]  # by start, then in the order of the burns
    hand_overs: tuple[HandOver, ...]
    unwatched: tuple[tuple[str, float, float], ...]  # who, from beat, to beat

    def of(self, spotter: str) -> tuple[Watch, ...]:
        """One spotter's watches in order."""
        return tuple(watch for watch in self.watches if watch.spotter == spotter)

    @property
    def worst(self) -> float:
        """Longest walk from a spotter to whom they watch [m]; 0 if nobody is lit."""
        return max((watch.way for watch in self.watches), default=0.0)


def longest_walk(book: RuleBook) -> tuple[float, Rule] | None:
    """The longest walk that the rules in force allow a spotter [m], and the rule that sets it; None if there is none.

    A rule that gives a time is met at the slow walk, the reaction counted.
    """
    found = []
    by_distance, by_time = book.strictest("response-distance"), book.strictest("response-time")
    if by_distance is not None:
        found.append((by_distance.number, by_distance))
    if by_time is not None:
        found.append((reach_in(by_time.number), by_time))
    return min(found, key=lambda each: each[0], default=None)


def watchers_of(who: str, crew: Sequence[Duty]) -> list[Duty]:
    """Spotters who may watch a performer; nobody watches themselves."""
    return [
        each
        for each in crew
        if each.duty == "spotter"
        and each.who.casefold() != who.casefold()
        and (not each.watches or who in each.watches or "all" in each.watches)
    ]


def watch_plan(
    burns: Sequence[Followed],
    crew: Sequence[Duty],
    *,
    each: int,
    limit: float = 0.0,
    ground: WalkableFloor | None = None,
) -> WatchPlan:
    """Watches with short walks and few hand-overs.

    Parameters
    ----------
    burns : sequence of Followed
        Each burn with its performer's walking path.
    crew : sequence of Duty
    each : int
        Maximum number of performers that one spotter watches at once.
    limit : float
        Acceptable walk [m]; within it no watch is handed over.
    ground : WalkableFloor, optional
        Obstacles to walk round; default: an empty floor.

    Raises
    ------
    ValueError
        If `each` is below 1.
    """
    if each < 1:
        raise ValueError(f"each must be at least 1, got {each}")
    spotters = [duty for duty in crew if duty.duty == "spotter"]
    posts, floor = tuple(duty.place for duty in spotters), ground or WalkableFloor()
    ways = floor.ways_to(posts) if spotters else None
    before: dict[str, str] = {}
    found: list[Watch] = []
    unwatched: list[tuple[str, float, float]] = []
    phases = _phases(burns)
    of_burns = []  # each burn's bounds by the start of the phase
    for burn in burns:
        own = tuple((a, b) for a, b in phases if burn.start <= a and b <= burn.end)
        bounds: Floats = np.full((len(own), len(spotters)), NO_WAY)
        if ways is not None and own:
            watchers = watchers_of(burn.who, crew)
            bound = recent(
                "longest ways",
                (burn.floor.content, own, posts, floor.obstacles),
                partial(_longest, burn.floor, own, ways),
                most=_MOST_WAYS,
                record=lambda found: found.tolist(),
                restore=_bounds_from,
            )
            bounds = np.where([duty in watchers for duty in spotters], bound, NO_WAY)
        of_burns.append({start: row for (start, _), row in zip(own, bounds, strict=True)})
    for start, end in phases:
        now = [k for k, of_burn in enumerate(of_burns) if start in of_burn]
        lit = [burns[k] for k in now]
        longest = np.array([of_burns[k][start] for k in now]).reshape(len(lit), len(spotters))
        taken = _assigned(
            longest, each, limit, [_index(before.get(burn.who), spotters) for burn in lit]
        )
        before = {}
        for row, burn in enumerate(lit):
            column = taken.get(row)
            if column is None:
                unwatched.append((burn.who, start, end))
                continue
            spotter = spotters[column].who
            before[burn.who] = spotter
            way = float(longest[row, column])
            found.append(
                Watch(
                    who=burn.who,
                    spotter=spotter,
                    start=start,
                    end=end,
                    way=way,
                )
            )
    watches = _joined(found, burns)
    return WatchPlan(watches=watches, hand_overs=_hand_overs(watches), unwatched=_gaps(unwatched))


def _bounds_from(record: Sequence[Sequence[float]]) -> Floats:
    return np.array(record, dtype=np.float64)


def _phases(burns: Sequence[Followed]) -> list[tuple[float, float]]:
    """Spans between moments at which anybody is lit or put out, or starts or ends a walk; a long walk in parts.

    So the watches of several who walk at once need not all change hands as they set off.
    """
    edges = {edge for burn in burns for edge in (burn.start, burn.end)}
    for burn in burns:
        for start, end, bounds in burn.floor.pieces(burn.start, burn.end):
            parts = max(round((end - start) / _PART), 1) if bounds.speed else 1
            edges |= {start + (end - start) * k / parts for k in range(parts)}
    ordered = sorted(edges)
    return [
        (start, end)
        for start, end in pairwise(ordered)
        if end > start and any(burn.start <= start and end <= burn.end for burn in burns)
    ]


def _longest(floor: WalkPath, phases: Sequence[tuple[float, float]], ways: Ways) -> Floats:
    """Proven upper bound of the walk from each post over each phase, to 5 mm, shape (phases, posts) [m].

    Of all phases at once: who stands still is looked at twice in each, so a burn of many phases costs little more than one.
    """
    begin, end = np.array(phases, dtype=np.float64).T
    speed = np.zeros(len(begin))
    for move, bounds in zip(floor.moves, floor.table.bounds, strict=True):
        under_way = (move.end > begin) & (move.start < end)
        speed[under_way] = np.maximum(speed[under_way], bounds.speed)
    steps = np.clip(np.ceil(speed * (end - begin) / (2 * TOLERANCE)), 1, _MOST).astype(np.int64)
    beats = [
        (a, b) if count == 1 else np.linspace(a, b, count + 1)
        for (a, b), count in zip(phases, steps.tolist(), strict=True)
    ]
    sampled = ways(floor.at(np.concatenate(beats)).place)
    first = np.concatenate([[0], np.cumsum(steps + 1)[:-1]])
    slack = speed * (end - begin) / steps / 2
    most = np.maximum.reduceat(sampled, first, axis=0)
    return np.asarray(np.minimum(most + slack[:, None], NO_WAY))


def _assigned(
    longest: Floats, each: int, limit: float, before: Sequence[int | None]
) -> dict[int, int]:
    """Spotter of each row, within capacity; rows that cannot be watched are left out."""
    rows, columns = longest.shape
    if not rows or not columns:
        return {}
    cost = _WITHIN * np.minimum(longest, limit) + np.maximum(longest - limit, 0.0)
    cost[longest >= NO_WAY] = _NEVER
    for row, column in enumerate(before):
        if column is not None:
            cost[row] += CHANGE
            cost[row, column] -= CHANGE
    pairs = cheapest_matching(np.repeat(cost, each, axis=1))
    return {row: at // each for row, at in pairs if longest[row, at // each] < NO_WAY}


def _index(name: str | None, spotters: Sequence[Duty]) -> int | None:
    return next((i for i, duty in enumerate(spotters) if duty.who == name), None)


def _joined(found: Sequence[Watch], burns: Sequence[Followed]) -> tuple[Watch, ...]:
    """Merge watches of successive phases by the same spotter."""
    order = {who: i for i, who in enumerate(dict.fromkeys(burn.who for burn in burns))}
    out: list[Watch] = []
    last: dict[str, int] = {}
    for watch in found:
        index = last.get(watch.who)
        if index is not None:
            old = out[index]
            if old.spotter == watch.spotter and old.end == watch.start:
                out[index] = replace(old, end=watch.end, way=max(old.way, watch.way))
                continue
        last[watch.who] = len(out)
        out.append(watch)
    return tuple(sorted(out, key=lambda watch: (watch.start, order[watch.who])))


def _hand_overs(watches: Sequence[Watch]) -> tuple[HandOver, ...]:
    begun: dict[tuple[str, float], list[Watch]] = {}
    for watch in watches:
        begun.setdefault((watch.who, watch.start), []).append(watch)
    found = [
        HandOver(who=early.who, beat=late.start, giver=early.spotter, taker=late.spotter)
        for early in watches
        for late in begun.get((early.who, early.end), ())
        if early.spotter != late.spotter
    ]
    return tuple(sorted(found, key=lambda each: (each.beat, each.who)))


def _gaps(found: Sequence[tuple[str, float, float]]) -> tuple[tuple[str, float, float], ...]:
    out: list[tuple[str, float, float]] = []
    for who, start, end in sorted(found):
        if out and out[-1][0] == who and out[-1][2] == start:
            out[-1] = (who, out[-1][1], end)
        else:
            out.append((who, start, end))
    return tuple(sorted(out, key=lambda each: each[1]))
