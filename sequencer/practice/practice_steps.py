"""The steps of an exercise, and how far somebody is by the log: slow, then at tempo, both unlit; lit comes last.

A step is done once the last tries at it came off often enough. Sources: unlit before lit, and nothing new when lit:
North American fire-arts guidelines 2.1/3.0 (A36, read); slow before fast, and how many clean tries are enough: common
practice.
"""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from sequencer.practice.exercises import Exercise
from sequencer.practice.logged_run import LoggedRun


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeStep:
    """One step: at which speed, lit or not, and when it is done."""

    speed: float  # [1] of the song's tempo
    lit: bool
    tries: int  # the last so many tries count
    clean: float  # [1] share of them that has to be clean

    @property
    def words(self) -> str:
        """The step as it is said: "60 %, unlit"."""
        return f"{100 * self.speed:.0f} %, {'lit' if self.lit else 'unlit'}"


_SLOW = PracticeStep(speed=0.6, lit=False, tries=10, clean=0.8)
_AT_TEMPO = PracticeStep(speed=1.0, lit=False, tries=10, clean=0.8)
_LIT = PracticeStep(speed=1.0, lit=True, tries=3, clean=1.0)
_SLOW_RUN = PracticeStep(speed=0.8, lit=False, tries=2, clean=1.0)
_RUN = PracticeStep(speed=1.0, lit=False, tries=3, clean=1.0)
_LIT_RUN = PracticeStep(speed=1.0, lit=True, tries=1, clean=1.0)
LOOP_SLACK = 1.0  # [beats] a loop less than this beside an exercise's, at either end, is that; a design choice
_NEAR = 0.02  # [1] a speed this little below a step's is that step's


@dataclass(frozen=True, slots=True, kw_only=True)
class ExerciseState:
    """How far somebody is with an exercise."""

    exercise: Exercise
    steps: tuple[PracticeStep, ...]
    done: int  # steps done; all of them: nothing left to do
    tried: int  # of the tries that count at the step that comes next
    clean: int
    last: dt.date | None  # when it was run last

    @property
    def next_step(self) -> PracticeStep | None:
        """The step that comes next; None if all are done."""
        return self.steps[self.done] if self.done < len(self.steps) else None


def steps_of(exercise: Exercise) -> tuple[PracticeStep, ...]:
    """The steps of an exercise in their order; without the lit one if it is not lit in the show."""
    of_pieces, of_run = (_SLOW, _AT_TEMPO, _LIT), (_SLOW_RUN, _RUN, _LIT_RUN)
    steps = of_run if exercise.kind == "run" else of_pieces
    return steps if exercise.lit else steps[:-1]


def state_of(exercise: Exercise, runs: Sequence[LoggedRun]) -> ExerciseState:
    """How far the exercise's performer is with it by the log.

    Parameters
    ----------
    exercise : Exercise
    runs : sequence of LoggedRun
        In the order of the file.
    """
    own = [run for run in runs if is_of(run, exercise)]
    steps = steps_of(exercise)
    counts = [_last_tries(own, steps, k) for k in range(len(steps))]
    passed = [
        tried >= step.tries and clean >= step.clean * tried
        for step, (tried, clean) in zip(steps, counts, strict=True)
    ]
    # What comes off faster shows the slower step too; fire shows nothing of what should be mastered without it.
    unlit = max((k + 1 for k, well in enumerate(passed) if well and not steps[k].lit), default=0)
    done = unlit + int(unlit == len(steps) - 1 and steps[-1].lit and passed[-1])
    tried, clean = counts[done] if done < len(steps) else (0, 0)
    return ExerciseState(
        exercise=exercise, steps=steps, done=done, tried=tried, clean=clean,
        last=max((run.date for run in own), default=None),
    )  # fmt: skip


def is_of(run: LoggedRun, exercise: Exercise) -> bool:
    """Whether a line of the log is of an exercise: by what it says, or by its loop if it says nothing.

    A loop that begins and ends less than a beat beside the exercise's is that. Of the whole show, all of it has to lie
    within: a run that was cut short shows nothing of what came after, even if it is called the whole show.
    """
    if run.who != exercise.who:
        return False
    if run.what:
        named = run.what.casefold() == exercise.title.casefold()
        return named and not (exercise.kind == "run" and _cut_short(run, exercise))
    if run.start is None or run.end is None:
        return False
    if exercise.kind == "run":
        return not _cut_short(run, exercise)
    return any(
        abs(run.start - low) < LOOP_SLACK and abs(run.end - high) < LOOP_SLACK
        for low, high in exercise.loops
    )


def _cut_short(run: LoggedRun, exercise: Exercise) -> bool:
    """Whether a line says of itself that it began after an exercise's loop, or ended before."""
    late = run.start is not None and run.start >= exercise.start + LOOP_SLACK
    return late or (run.end is not None and run.end <= exercise.end - LOOP_SLACK)


def _last_tries(own: Sequence[LoggedRun], steps: Sequence[PracticeStep], k: int) -> tuple[int, int]:
    """Tries and clean ones at a step: of the newest lines, as many as it takes."""
    step = steps[k]
    faster = [each.speed for each in steps if each.speed > step.speed]
    most = min(faster, default=inf)
    tried = clean = 0
    newest = sorted(own, key=lambda run: (run.date, run.line), reverse=True)
    for run in newest:
        fits = run.speed is not None and step.speed - _NEAR <= run.speed < most - _NEAR
        if run.lit == step.lit and fits and tried < step.tries:
            tried, clean = tried + run.tried, clean + run.clean
    return tried, clean
