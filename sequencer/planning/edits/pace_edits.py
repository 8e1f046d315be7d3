"""Changes of how many beats a block takes for a cycle, alone or with where it starts and where it is danced."""

import math
from collections.abc import Callable, Iterable
from math import isfinite

from sequencer.checks.fault_kinds import (
    HAND_ACCELERATION,
    HAND_SPEED,
    OF_PACE,
    PROP_TURNS,
    PULL,
    SLACK,
    TOO_FAST,
    TWIST,
    WICK_SPEED,
)
from sequencer.findings import Finding
from sequencer.motion.patterns.library import cycle_beats
from sequencer.planning.edits.as_written import plain
from sequencer.planning.edits.join_edits import step_at
from sequencer.planning.edits.ladders import Ladder
from sequencer.planning.edits.link_edits import counted_beats
from sequencer.planning.trying.trials import DanceEdit
from sequencer.show.editing import Change
from sequencer.show.model import Step
from sequencer.staging.staged import Block, Staged

_NEARLY = (
    1.02  # times a figure by which a cycle that just keeps it may be found too short or too long
)
_SQUARED = (HAND_ACCELERATION, PULL, TWIST)
_PACED = (PROP_TURNS, HAND_SPEED, WICK_SPEED, *_SQUARED)


def cycle_ladders(show: Staged, block: Block, fault: Finding) -> list[Ladder]:
    """Another number of beats for the cycle: more where it is too fast, fewer where the tether goes slack."""
    halves = [0.5 * k for k in range(1, 33)]
    odd = [0.25 * k for k in range(1, 16, 2)]
    usual = _usual(show, block)
    if fault.code in OF_PACE:  # the tool's own choice for this tempo, which may be no half beat
        odd.append(usual)
    found = []
    for grid, name, step in (
        (halves, "the cycle", 0.5), (odd, "the cycle in quarter beats", 0.0),
    ):  # fmt: skip
        rungs = [
            DanceEdit(
                words=f"a cycle of {counted_beats(round(cycle, 4))} (now {block.cycle:.4g})",
                cost=_pace_cost(cycle, block.cycle),
                changes=_cycle_changes(show, block, cycle),
                value=cycle,
            )
            for cycle in _wanted(grid, block.cycle, fault)
        ]
        found.append(
            Ladder(
                name=name, rungs=rungs, most=8 if step else 4, step=step, range_words=_cycle_words(block.cycle),
                last=step == 0.0,
                approach=[rung for rung in rungs if step and fault.code == SLACK and rung.value > usual],
            )
        )  # fmt: skip
    return found


def _cycle_words(now: float) -> Callable[[DanceEdit, DanceEdit], str]:
    return lambda low, high: (
        f"a cycle of {low.value:g} to {high.value:g} beats, in half beats (now {now:.4g})"
    )


def _wanted(grid: Iterable[float], now: float, fault: Finding) -> list[float]:
    """Cycles that may help, the nearest first."""
    fewer, more = fault.code != TOO_FAST, fault.code != SLACK
    share = pace_share(fault)
    near = math.inf if fault.code in OF_PACE else 1.5
    found = {
        round(cycle, 6) for cycle in grid
        if (fewer and now / near <= cycle < now * min(share, 1.0) - 1e-6)
        or (more and max(now + 1e-6, now * share) < cycle <= now * near)
    }  # fmt: skip
    return sorted(found, key=lambda cycle: (abs(cycle - now), cycle))


def pace_share(fault: Finding) -> float:
    """The share of its beats that a cycle can hardly be above (slack), or below (too fast), by a fault's figures [1]."""
    if fault.code == SLACK:
        found = [each.times for each in fault.figures if isfinite(each.limit)]
        return _NEARLY / max(found) if found else 1.0
    shares = [
        # a force or an acceleration goes with the square of the pace
        each.times ** (0.5 if each.quantity in _SQUARED else 1.0)
        for each in fault.figures if each.quantity in _PACED
    ]  # fmt: skip
    return max(shares, default=1.0) / (_NEARLY if shares else 1.0)


def _usual(show: Staged, block: Block) -> float:
    return max(
        cycle_beats(part.pattern, part.parameters, show.book) for part in block.hands.values()
    )


def cycle_left_out(show: Staged, block: Block) -> Ladder | None:
    """The cycle left to the tool, which takes what is usual for the pattern."""
    if step_at(show, block.path).cycle is None:
        return None
    usual = _usual(show, block)
    if abs(usual - block.cycle) < 1e-6:
        return None
    changes = [
        (path, None if path[-1] == "cycle" else value)
        for path, value in _cycle_changes(show, block, usual)
    ]
    rung = DanceEdit(
        words=f"leave cycle out: the tool then takes {counted_beats(round(usual, 4))}, as is usual (now {block.cycle:.4g})",
        cost=_pace_cost(usual, block.cycle),
        changes=tuple(changes),
        value=usual,
    )
    return Ladder(name="leaving the cycle to the tool", rungs=[rung])


def _pace_cost(cycle: float, now: float) -> str:
    return f"{abs(cycle - now):.3g} beats a circle {'slower' if cycle > now else 'quicker'}"


def _cycle_changes(show: Staged, block: Block, cycle: float) -> tuple[Change, ...]:
    """Changes that set the cycle; a block whose length is told in cycles keeps its beats."""
    step: Step = step_at(show, block.path)
    changes: list[Change] = [((*block.path, "cycle"), plain(cycle))]
    if step.cycles is not None:
        changes.append(((*block.path, "cycles"), None))
        changes.append(((*block.path, "beats"), plain((block.end - block.start) / step.repeat)))
    return tuple(changes)


def with_shift(block: Block, pace: Ladder) -> Ladder:
    """Another cycle, entered elsewhere: where a new pace would break the joins."""
    rungs = [
        DanceEdit(
            words=f"{rung.words}, started {counted_beats(shift)} in",
            cost=rung.cost,
            changes=(*rung.changes, ((*block.path, "shift"), plain(shift))),
            value=rung.value,
        )
        for rung in list(pace.rungs)[:3]
        for shift in (0.5, 1.0, 1.5, 2.0)
        if abs(shift - block.shift) > 1e-9
    ]
    return Ladder(name="the cycle with another shift", rungs=rungs, most=8, last=True)


def with_pace(left: Ladder | None, pace: Ladder) -> Ladder | None:
    """The place left to the tool, with another cycle."""
    if left is None:
        return None
    out = list(left.rungs)[-1]
    rungs = [
        DanceEdit(
            words=f"{out.words}, with {rung.words}",
            cost=rung.cost,
            changes=out.changes + rung.changes,
            value=rung.value,
        )
        for rung in list(pace.rungs)[:6]
    ]
    return Ladder(
        name="the place left to the tool with another cycle", rungs=rungs, most=6, last=True
    )
