"""What to practise of a show: its hard joins, its odd builds, its walks while spinning, and the whole of it.

Each exercise is a loop of whole bars with a run-in. What is danced several times is one exercise, at its hardest place.
How hard a join is: the largest share of the show's limits that its link asks of either hand, of hand speed, hand
acceleration and turning acceleration, by the proven bounds of the link as drawn. How hard a walk is: its highest speed.
That these are what to practise first is common practice.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import dist, floor
from typing import Literal

import numpy as np

from sequencer.motion.laws.law import Bounds
from sequencer.motion.patterns.toroid import home_cycles
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import Move
from sequencer.motion.trajectories.one_link.link_law import LinkLaw
from sequencer.motion.trajectories.one_link.link_limits import LinkLimits
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.practice.logged_run import WHOLE_SHOW
from sequencer.staging.entries.danced_entries import entry_of_blocks
from sequencer.staging.results import once_per_show
from sequencer.staging.staged import Block, Staged
from sequencer.timing.position import TOUCH, Position
from sequencer.units import counted, length_words

ExerciseKind = Literal["join", "build", "walk", "run"]
EXERCISE_KINDS: tuple[ExerciseKind, ...] = ("join", "build", "walk", "run")
_RUN_IN = 2.0  # [beats] at least, before and after
_LONGEST_WAY = 8.0  # [beats] between two blocks that still make a join
_ROUNDS = 4  # hand circles of a build that are looped at most
_SAMPLES = 257  # of a walk; its speed is told, nothing is proven with it
_LEAST_WALK = 0.3  # [m] less is a step


@dataclass(frozen=True, slots=True, kw_only=True)
class Exercise:
    """One thing to practise, of one performer."""

    kind: ExerciseKind
    title: str  # by which the log knows it
    who: str
    start: float  # [beats] of the loop, whole bars
    end: float  # [beats]
    hardness: float  # [1] of a join: share of the limits; of a build: difficulty; of a walk: [m/s]
    why: str
    lit: bool  # whether it is danced lit in the show
    canon: bool = False  # whether it is danced in canon
    also: tuple[tuple[float, float], ...] = ()  # [beats] its other loops, from and until

    @property
    def loops(self) -> tuple[tuple[float, float], ...]:
        """Every loop of it [beats], from and until; the hardest first."""
        return ((self.start, self.end), *self.also)


def exercises(show: Staged, who: str) -> tuple[Exercise, ...]:
    """One performer's exercises: joins, builds and walks, each the hardest first, then the whole show; none of who spins nothing."""
    dancer = next(each for each in show.dancers if each.name == who)
    entries = _entries(show)
    blocks = [block for block in show.blocks_of(who) if not block.link]
    if not blocks:
        return ()
    found = [
        *_joins(show, dancer, blocks),
        *_builds(show, blocks),
        *_walks(show, dancer, blocks),
    ]
    found = [replace(each, canon=_in_canon(show, each, blocks, entries)) for each in found]
    return (*_once_each(found), _whole(show, who, blocks))


@once_per_show
def _entries(show: Staged) -> dict[int, int]:
    return entry_of_blocks(show)


def _once_each(found: Iterable[Exercise]) -> list[Exercise]:
    """Exercises of one title as one, at the hardest place; by kind, the hardest first."""
    alike: dict[str, list[Exercise]] = {}
    for each in found:
        alike.setdefault(each.title, []).append(each)
    out = []
    for group in alike.values():
        hardest = max(group, key=lambda each: (each.hardness, -each.start))
        also = tuple(sorted({each.loops[0] for each in group} - {hardest.loops[0]}))
        lit = any(each.lit for each in group)
        out.append(replace(hardest, also=also, lit=lit))
    out.sort(key=lambda each: (EXERCISE_KINDS.index(each.kind), -each.hardness, each.start))
    return out


def _joins(show: Staged, dancer: Dancer, blocks: Sequence[Block]) -> Iterator[Exercise]:
    stops = show.stops_of(dancer.name)
    for before, after in pairwise(blocks):
        low, high = before.end, after.start
        stopped = any(stop.start < high + TOUCH and stop.end > low - TOUCH for stop in stops)
        if high - low > _LONGEST_WAY or stopped or before.title == after.title:
            continue
        share = max(
            (_share(show, low, high, bounds) for bounds in _ways(dancer, low, high)), default=0.0
        )
        if share > 0:
            way = (
                f"a link of {counted(high - low, 'beat')}"
                if high - low > TOUCH
                else "no link between"
            )
            why = f"{way}; it asks {100 * share:.0f} % of your limits"
            yield _loop(
                show,
                "join",
                f"{before.title} into {after.title}",
                dancer.name,
                (low, high),
                share,
                why,
            )


def _ways(dancer: Dancer, low: float, high: float) -> Iterator[Bounds]:
    """Bounds of the links and bridges of both hands between two beats."""
    for trajectory in dancer.trajectories.values():
        if not isinstance(trajectory, Trajectory):
            continue
        for span in trajectory.spans:
            if (
                isinstance(span.law, LinkLaw)
                and span.end > low - TOUCH
                and span.start < high + TOUCH
            ):
                yield span.law.bounds()
        for blend in trajectory.blends:
            if blend.bridge is not None and low - TOUCH <= blend.boundary <= high + TOUCH:
                yield blend.bridge.bounds()


def _share(show: Staged, low: float, high: float, bounds: Bounds) -> float:
    """The largest share of the show's limits that a way asks [1]."""
    limits, pace = show.show.limits, show.tempo.fastest(low, max(high, low + TOUCH))
    return max(
        bounds.hand_speed * pace / limits.hand_speed,
        bounds.hand_acceleration * pace**2 / limits.hand_acceleration,
        bounds.turn_acceleration / LinkLimits().turn_acceleration,
    )


def _builds(show: Staged, blocks: Sequence[Block]) -> Iterator[Exercise]:
    """Toroids that come home the wrong way round: two circles are one round."""
    for block in blocks:
        odd = [
            part.pattern
            for side, part in block.hands.items()
            if part.pattern in show.book
            and _is_odd(show, part.pattern, part.values, side == "left")
        ]
        if odd:
            span = block.start, min(block.end, block.start + _ROUNDS * block.cycle)
            why = "after one circle the prop spins the other way, after two you are back: always dance two"
            level = float(show.book[odd[0]].difficulty)
            yield _loop(show, "build", f"{block.title}, two circles", block.who, span, level, why)


def _is_odd(show: Staged, name: str, given: Mapping[str, object], left: bool) -> bool:
    pattern = show.book[name]
    side: Literal["left", "right"] = "left" if left else "right"
    hand = pattern.hand(side)
    if hand.kind.name != "toroid":
        return False
    allowed = {each.name for each in pattern.parameters}
    values = pattern.values({key: value for key, value in given.items() if key in allowed}, side)
    return home_cycles(int(values["lobes"]), values["bend"]) == 2


def _walks(show: Staged, dancer: Dancer, blocks: Sequence[Block]) -> Iterator[Exercise]:
    here = dancer.floor.place
    for move in dancer.floor.moves:
        far, here = dist(here, move.place), move.place
        if far >= _LEAST_WALK and (exercise := _walk(show, dancer, blocks, move, far)):
            yield exercise


def _walk(
    show: Staged, dancer: Dancer, blocks: Sequence[Block], move: Move, far: float
) -> Exercise | None:
    """A walk on which something is spun; None if nothing is."""
    spun = [
        block.title
        for block in blocks
        if block.end > move.start + TOUCH and block.start < move.end - TOUCH
    ]
    goal = next(
        (one.formation for one in show.standings if abs(one.start - move.end) <= TOUCH),
        "the next place",
    )
    if not spun:
        return None
    rates = dancer.floor.at(np.linspace(move.start, move.end, _SAMPLES)).place_rate
    speed = float(np.max(np.hypot(*rates.T))) * show.tempo.fastest(move.start, move.end)
    why = f"{length_words(far)} in {counted(move.end - move.start, 'count')}, up to {speed:.1f} m/s"
    title = f"walk to {goal} in {' and '.join(dict.fromkeys(spun))}"
    return _loop(show, "walk", title, dancer.name, (move.start, move.end), speed, why)


def _whole(show: Staged, who: str, blocks: Sequence[Block]) -> Exercise:
    first, last = min(block.start for block in blocks), max(block.end for block in blocks)
    return _loop(show, "run", WHOLE_SHOW, who, (first, last), 0.0, "without stopping, to the bow")


def _loop(
    show: Staged, kind: ExerciseKind, title: str, who: str, span: tuple[float, float], hardness: float, why: str
) -> Exercise:  # fmt: skip
    tempo = show.tempo
    _, last = show.span
    start = tempo.beat_of(Position(max(tempo.position_of(span[0] - _RUN_IN).bar, 1)))
    end = tempo.beat_of(Position(tempo.position_of(span[1] + _RUN_IN - TOUCH).bar + 1))
    lit = any(burn.start < span[1] and burn.end > span[0] for burn in show.lit_of(who))
    return Exercise(
        kind=kind, title=title, who=who, start=start, end=min(end, float(floor(last))), hardness=hardness, why=why, lit=lit
    )  # fmt: skip


def _in_canon(
    show: Staged, exercise: Exercise, blocks: Sequence[Block], entries: Mapping[int, int]
) -> bool:
    if show.read is None:
        return False
    timeline = show.read.written.timeline
    of = (
        entries.get(id(block))
        for block in blocks
        if block.end > exercise.start and block.start < exercise.end
    )
    return any(k is not None and timeline[k].canon for k in of)
