"""The plan of what to practise next: few exercises, the hardest that are not done, each at its next step."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, replace

from sequencer.practice.exercises import Exercise, ExerciseKind, exercises
from sequencer.practice.logged_burns import BurnBelief, burn_beliefs
from sequencer.practice.logged_run import LoggedRun
from sequencer.practice.logged_spreads import (
    LoggedSpread,
    ToldDrift,
    logged_spreads,
    pooled_spread,
    told_drifts,
)
from sequencer.practice.practice_steps import ExerciseState, is_of, state_of
from sequencer.practice.practice_weeks import PracticeWeek, weeks_of
from sequencer.staging.staged import Staged

_MOST: dict[ExerciseKind, int] = {
    "join": 3,
    "build": 2,
    "walk": 2,
    "run": 1,
}  # one page, one session


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeItem:
    """One exercise of the plan, of everybody who has it to do."""

    states: tuple[ExerciseState, ...]  # in the order of the cast

    @property
    def behind(self) -> ExerciseState:
        """Whoever has the most to do of it."""
        # Not everybody has the same steps: who is not lit in it is done a step before the others.
        return min(self.states, key=lambda each: (each.done - len(each.steps), each.done))

    @property
    def all_behind(self) -> tuple[str, ...]:
        """Everybody at the step that comes next for whoever is behind; nobody if all are at the same."""
        at = [each.exercise.who for each in self.states if each.next_step == self.behind.next_step]
        return tuple(at) if len(at) < len(self.states) else ()

    @property
    def exercise(self) -> Exercise:
        """The exercise, at the place where it is hardest."""
        return max((each.exercise for each in self.states), key=lambda each: each.hardness)


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticePlan:
    """What to practise next, and what the log says so far."""

    who: tuple[str, ...]  # whose plan it is, in the order of the cast
    items: tuple[PracticeItem, ...]
    done: tuple[PracticeItem, ...]  # nothing left to do
    later: tuple[PracticeItem, ...]  # for which there is no room yet
    weeks: tuple[PracticeWeek, ...]
    drifts: tuple[ToldDrift, ...]
    spreads: tuple[LoggedSpread, ...]
    place: float | None  # [m] of all together, for `drift` in the show; None: too few were measured
    timing: float | None  # [beats]
    burns: tuple[BurnBelief, ...]
    outdated: int  # lines of the log about what is not in the show
    uncounted: int  # lines with tries that name neither an exercise nor the loop of one
    first: dt.date | None  # of the log

    @property
    def waiting(self) -> int:
        """How many exercises there is no room for yet."""
        return len(self.later)


def practice_plan(
    show: Staged,
    runs: Sequence[LoggedRun],
    who: Sequence[str],
    *,
    today: dt.date | None = None,
) -> PracticePlan:
    """The plan of some performers.

    Parameters
    ----------
    show : Staged
    runs : sequence of LoggedRun
        The whole log.
    who : sequence of str
        Their parts in the show; a line of the log is of whoever has that part tonight.
    today : date, optional
        Until when weeks are told; default: the last that the log tells of.

    Raises
    ------
    InputError
        If the show's own log of burns cannot be used.
    """
    known = [(name, exercises(show, name)) for name in show.show.names]
    by_part = runs_by_part(show, runs)
    states = [state_of(each, by_part) for name, own in known if name in who for each in own]
    items = _together(states)
    due = [item for item in items if item.behind.next_step is not None]
    chosen = [
        item
        for kind, most in _MOST.items()
        for item in [each for each in due if each.exercise.kind == kind][:most]
    ]
    own = [run for run in by_part if run.who in who]
    place, timing = pooled_spread(by_part)
    titles = {(name, each.title.casefold()) for name, exercised in known for each in exercised}
    return PracticePlan(
        who=tuple(who),
        items=tuple(chosen),
        done=tuple(item for item in items if item.behind.next_step is None),
        later=tuple(item for item in due if item not in chosen),
        weeks=weeks_of(own, today),
        drifts=told_drifts(own, show.show.drift.place),
        spreads=tuple(logged_spreads(own).values()),
        place=place,
        timing=timing,
        burns=tuple(each for each in burn_beliefs(show, runs) if each.who in who),
        outdated=sum(
            bool(run.what) and (run.who, run.what.casefold()) not in titles for run in own
        ),
        uncounted=sum(
            bool(run.tried)
            and (not run.what or (run.who, run.what.casefold()) in titles)
            and not any(is_of(run, each) for _, exercised in known for each in exercised)
            for run in own
        ),
        first=min((run.date for run in own), default=None),
    )


def runs_by_part(show: Staged, runs: Sequence[LoggedRun]) -> list[LoggedRun]:
    """Lines of a log by the parts of the show: each of whoever has that part tonight.

    Parameters
    ----------
    show : Staged
    runs : sequence of LoggedRun
    """
    parts = {show.taken_by(name): name for name in show.show.names}
    return [replace(run, who=parts[run.who]) for run in runs if run.who in parts]


def _together(states: Sequence[ExerciseState]) -> list[PracticeItem]:
    """States of the same exercise of several performers as one item; the hardest first within each kind."""
    alike: dict[tuple[str, str], list[ExerciseState]] = {}
    for each in states:
        alike.setdefault((each.exercise.kind, each.exercise.title), []).append(each)
    items = [PracticeItem(states=tuple(group)) for group in alike.values()]
    items.sort(key=lambda item: -item.exercise.hardness)
    return items
