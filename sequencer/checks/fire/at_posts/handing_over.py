"""Hand-overs of the watch: one at a time for everybody in it, so that nobody is let go before they are taken.

Sources: a spotter has one job, to watch (common practice); the time that a hand-over takes is a design choice.
"""

from collections.abc import Sequence
from dataclasses import replace

from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS, BeatReader, where_lit
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.safety.duties.watching import HandOver, WatchPlan
from sequencer.safety.safety_plan import PLAN_PARTS, SafetyPlan, rewatched, safety_plan
from sequencer.staging.staged import Staged
from sequencer.units import counted

TAKES = 2.0  # [s] to say a name, be answered and look: two within that are at once; a design choice


@where_lit
def hand_overs(show: Staged) -> Outcome:
    """Hand-overs at once that involve one person.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    plan = safety_plan(show)
    return Outcome(
        findings=tuple(
            _finding(group, show, _calmer(show, plan, group)) for group in at_once(plan.watch, show)
        )
    )


@where_lit
def _unmended(show: Staged) -> Outcome:
    """The same, without seeking another assignment."""
    return Outcome(
        findings=tuple(
            _finding(group, show, ()) for group in at_once(safety_plan(show).watch, show)
        )
    )


def at_once(watch: WatchPlan, clock: BeatReader) -> list[tuple[HandOver, ...]]:
    """Groups of hand-overs at nearly the same moment in which somebody gives or takes more than once."""
    groups: list[list[HandOver]] = []
    for each in watch.hand_overs:  # by beat
        for group in groups:
            soon = clock.seconds(each.beat) - clock.seconds(group[0].beat) < TAKES
            if soon and any(_people(each) & _people(other) for other in group):
                group.append(each)
                break
        else:
            groups.append([each])
    return [tuple(group) for group in groups if len(group) > 1]


def _people(hand_over: HandOver) -> set[str]:
    return {hand_over.giver, hand_over.taker}


def _finding(group: Sequence[HandOver], clock: BeatReader, calmer: Sequence[str]) -> Finding:
    busy = [name for name in sorted(set().union(*map(_people, group))) if _times(name, group) > 1]
    first = group[0]
    told = ", ".join(f"{each.giver} gives {each.who} to {each.taker}" for each in group)
    said = ", then ".join(f"{each.taker} takes {each.who}" for each in gives_first(group))
    return Finding(
        code="hand-overs-at-once",
        severity="warn",
        who=tuple(dict.fromkeys((*busy, *(each.who for each in group)))),
        start=clock.seconds(first.beat),
        end=None,
        position=clock.position(first.beat),
        message=f"{told}: {counted(len(group), 'hand-over')} within {TAKES:g} s, and {' and '.join(busy)} "
        f"{'is' if len(busy) == 1 else 'are'} in more than one",
        remedies=(*calmer, f"one after the other: {said}; nobody lets go before they are answered"),
        source="one thing at a time: common practice; the time a hand-over takes: design choice",
    )


def _times(name: str, group: Sequence[HandOver]) -> int:
    return sum(name in _people(each) for each in group)


def gives_first(group: Sequence[HandOver]) -> list[HandOver]:
    """An order in which whoever gives and takes gives first: on the way nobody watches more than before or after."""
    left, order = list(group), []
    while left:
        givers = {each.giver for each in left}
        ready = next((each for each in left if each.taker not in givers), left[0])
        order.append(ready)
        left.remove(ready)
    return order


def _calmer(show: Staged, plan: SafetyPlan, group: Sequence[HandOver]) -> tuple[str, ...]:
    """Who should not watch whom, so that the watch is as near as now without these hand-overs at once."""
    now = _longest(plan.watch)
    best: tuple[tuple[int, float], str] | None = None
    for name in sorted(set().union(*map(_people, group))):
        own = next(duty for duty in plan.crew if duty.who == name)
        watched = (
            tuple(own.watches) if own.watches and "all" not in own.watches else show.show.names
        )
        for who in dict.fromkeys(each.who for each in group):
            left = tuple(each for each in watched if each != who)
            if who not in watched or not left:
                continue
            crew = tuple(replace(duty, watches=left) if duty is own else duty for duty in plan.crew)
            tried = rewatched(plan, crew)
            if tried.unwatched or _longest(tried) > now + 1e-9 or at_once(tried, show):
                continue
            score = (len(tried.hand_overs), _longest(tried))
            words = f"write watches: [{', '.join(left)}] for {name}: no watch is longer than now, and none at once"
            if best is None or score < best[0]:
                best = (score, words)
    return () if best is None else (best[1],)


def _longest(watch: WatchPlan) -> float:
    return max((each.way for each in watch.watches), default=0.0)


CHECK = Check(
    name="hand-overs",
    run=hand_overs,
    codes={"hand-overs-at-once": ("warn",)},
    depends_on=PLAN_PARTS,
    progress=PROGRESS,
    unmended=_unmended,
)
