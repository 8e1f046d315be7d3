"""Completes a line that was typed: the day, the exercise by its loop, the loop's end, and the show's fuel."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from sequencer.errors import InputError, Place
from sequencer.practice.exercises import Exercise, exercises
from sequencer.practice.log_reading import LogGround, run_of
from sequencer.practice.log_words import OPTION
from sequencer.practice.logged_run import LOG_COLUMNS, WHOLE_SHOW, LoggedRun
from sequencer.practice.practice_plan import runs_by_part
from sequencer.practice.practice_steps import LOOP_SLACK, is_of, state_of
from sequencer.staging.staged import Staged

_AT_TEMPO = "100"


def completed_row(show: Staged, cells: Mapping[str, str], ground: LogGround) -> dict[str, str]:
    """Cells of a whole line, in the order of the columns.

    Parameters
    ----------
    show : Staged
    cells : mapping of str to str
        What was typed.
    ground : LogGround

    Raises
    ------
    InputError
        If it may be of several exercises, or is no line of a log.
    """
    row = dict.fromkeys(LOG_COLUMNS, "") | dict(cells)
    row["date"] = row["date"] or ground.today.isoformat()
    if not row["performer"] and len(ground.names) == 1:
        row["performer"] = ground.names[0]
    row["lit"] = row["lit"] or ("yes" if row["burn"] else "no")
    if row["tried"]:
        row["speed"] = row["speed"] or _AT_TEMPO
    if row["burn"] and not row["fuel"] and show.show.fire is not None:
        row["fuel"] = show.show.fire.fuel
    exercise = _begun(show, row, ground)
    if exercise is not None:
        row["until"] = show.position(_loop_from(exercise, ground.beat_of(row["from"]))[1])
    if not row["what"]:
        # Two exercises of one loop are both run: such a line names neither, and counts for either by its loop.
        meant = _counted_for(show, run_of(row, ground, lambda _name: Place(OPTION)))
        row["what"] = meant[0].title if len(meant) == 1 else ""
    elif row["what"] == WHOLE_SHOW:
        whole = next((each for each in _own(show, row["performer"]) if each.kind == "run"), None)
        if whole is not None and not (row["from"] or row["until"]):
            row["from"], row["until"] = show.position(whole.start), show.position(whole.end)
    return {name: row[name] for name in LOG_COLUMNS}


def said_of(show: Staged, new: Sequence[LoggedRun], runs: Sequence[LoggedRun]) -> list[str]:
    """How far each exercise of some new lines is now, one line each; of a line that counts for none, that it does not.

    Parameters
    ----------
    show : Staged
    new : sequence of LoggedRun
        The new lines.
    runs : sequence of LoggedRun
        The whole log.
    """
    by_part = runs_by_part(show, runs)
    out: dict[tuple[str, str], str] = {}
    for run in new:
        found = _counted_for(show, run)
        if not found and run.tried:
            out[run.who, f"{run.what} {run.start} {run.end}"] = _for_none(show, run)
        for exercise in found:
            state = state_of(exercise, by_part)
            step = state.next_step
            tried = f", {state.clean} of the last {state.tried} clean so far" if state.tried else ""
            words = "done" if step is None else f"next {step.words}{tried}"
            out[exercise.who, exercise.title] = f"{exercise.title}: {words}"
    return list(out.values())


def _own(show: Staged, performer: str) -> tuple[Exercise, ...]:
    part = show.part_of(performer)
    return exercises(show, part) if part in show.show.names else ()


def _counted_for(show: Staged, run: LoggedRun) -> list[Exercise]:
    """The exercises that a line counts for."""
    own = replace(run, who=show.part_of(run.who))
    return [each for each in _own(show, run.who) if is_of(own, each)]


def _begun(show: Staged, row: Mapping[str, str], ground: LogGround) -> Exercise | None:
    """The exercise whose loop begins where a typed line does, if that says neither its end nor what it was; the whole show never.

    Raises
    ------
    InputError
        If several begin there.
    """
    if row["what"] or row["until"] or not row["from"]:
        return None
    try:
        at = ground.beat_of(row["from"])
    except ValueError:  # told when the line is read
        return None
    own = _own(show, row["performer"])
    begun = [each for each in own if each.kind != "run" and _begins(each, at)]
    if len({_loop_from(each, at)[1] for each in begun}) > 1:
        ways = " or ".join(
            f"{_loop_words(show, _loop_from(each, at))} ({each.title})" for each in begun
        )
        raise InputError(
            "which-exercise", Place(OPTION), f"{len(begun)} exercises of {row['performer']} begin at {row['from']}", f"write {ways}"
        )  # fmt: skip
    return begun[0] if begun else None


def _begins(exercise: Exercise, at: float) -> bool:
    return any(abs(at - low) < LOOP_SLACK for low, _ in exercise.loops)


def _loop_from(exercise: Exercise, at: float) -> tuple[float, float]:
    """The loop of an exercise that begins nearest to a beat."""
    return min(exercise.loops, key=lambda loop: abs(loop[0] - at))


def _for_none(show: Staged, run: LoggedRun) -> str:
    """That a line counts for no exercise, and which loop would."""
    own = _own(show, run.who)
    named = [each for each in own if each.title.casefold() == run.what.casefold()]
    pieces = [each for each in own if each.kind != "run"]
    at = run.start
    if at is not None and not named:
        named = [each for each in pieces if _begins(each, at)] or [
            each for each in pieces if any(low <= at < high for low, high in each.loops)
        ]
    near = named or own
    if not near:
        return f"{run.who}: this counts for no exercise, {run.who} has none in this show"
    exercise = min(near, key=lambda each: each.end - each.start) if at is not None else near[0]
    loop = (exercise.start, exercise.end) if at is None else _loop_from(exercise, at)
    what = "that loop is none of the plan's"
    if run.what:
        what = "that was not all of it"
    elif at is None:
        what = "it names no loop"
    such = "" if named else "such as "
    return f"{run.who}: this counts for no exercise, {what}; write {such}{_loop_words(show, loop)} for {exercise.title}"


def _loop_words(show: Staged, loop: tuple[float, float]) -> str:
    return f"{show.position(loop[0])}-{show.position(loop[1])}"
