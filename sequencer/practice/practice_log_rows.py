"""Completes a line that was typed: the day, the exercise by where it starts, the loop's end, and the show's fuel."""

from collections.abc import Mapping, Sequence

from sequencer.errors import InputError, Place
from sequencer.practice.exercises import Exercise, exercises
from sequencer.practice.log_reading import LogGround
from sequencer.practice.log_words import OPTION
from sequencer.practice.logged_run import LOG_COLUMNS, WHOLE_SHOW, LoggedRun
from sequencer.practice.practice_steps import state_of
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
        If it may be of several exercises.
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
    exercise = _meant(show, row, ground)
    if exercise is not None:
        row["what"] = exercise.title
        row["from"] = row["from"] or show.position(exercise.start)
        row["until"] = row["until"] or show.position(exercise.end)
    return {name: row[name] for name in LOG_COLUMNS}


def said_of(
    show: Staged, rows: Sequence[Mapping[str, str]], runs: Sequence[LoggedRun]
) -> list[str]:
    """How far each exercise of some new lines is now, one line each.

    Parameters
    ----------
    show : Staged
    rows : sequence of mapping of str to str
        The new lines.
    runs : sequence of LoggedRun
        The whole log.
    """
    out = {}
    for row in rows:
        exercise = next(
            (each for each in _own(show, row["performer"]) if each.title == row["what"]), None
        )
        if exercise is None:
            continue
        state = state_of(exercise, runs)
        step = state.next_step
        if step is None:
            words = "done"
        else:
            tried = f", {state.clean} of the last {state.tried} clean so far" if state.tried else ""
            words = f"next {step.words}{tried}"
        out[exercise.who, exercise.title] = f"{exercise.title}: {words}"
    return list(out.values())


def _own(show: Staged, performer: str) -> tuple[Exercise, ...]:
    part = show.part_of(performer)
    return exercises(show, part) if part in show.show.names else ()


def _meant(show: Staged, row: Mapping[str, str], ground: LogGround) -> Exercise | None:
    """The exercise that a typed line is of: by its name, or the one whose loop begins there, or else the shortest that holds it.

    Raises
    ------
    InputError
        If several begin there, and it does not say where the loop ends.
    """
    own = _own(show, row["performer"])
    if row["what"] == WHOLE_SHOW:
        return next((each for each in own if each.title == WHOLE_SHOW), None)
    pieces = [each for each in own if each.title != WHOLE_SHOW]
    try:
        at = ground.beat_of(row["from"]) if row["from"] else None
        until = ground.beat_of(row["until"]) if row["until"] else None
    except ValueError:  # told when the line is read
        return None
    if at is None:
        return None
    begun = [
        each for each in pieces if any(abs(at - start) < 1.0 for start in (each.start, *each.also))
    ]
    exact = [each for each in begun if until is not None and abs(each.end - until) < 1.0]
    if len(begun) > 1 and until is None:
        ways = " or ".join(
            f"{show.position(each.start)}-{show.position(each.end)} ({each.title})"
            for each in begun
        )
        raise InputError(
            "which-exercise", Place(OPTION), f"{len(begun)} exercises of {row['performer']} begin at {row['from']}", f"write {ways}"
        )  # fmt: skip
    around = [each for each in pieces if each.start <= at < each.end]
    found = exact or begun or sorted(around, key=lambda each: each.end - each.start)
    return found[0] if found else None
