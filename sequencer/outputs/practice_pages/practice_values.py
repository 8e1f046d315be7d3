"""A practice plan as JSON values: seconds, metres, beats and bar.beat; speeds and shares of 1."""

import json
from dataclasses import asdict
from math import isfinite
from typing import Any

from sequencer.outputs.practice_pages.lines_for_show import show_lines
from sequencer.outputs.practice_pages.practice_words import PlanEdition, loop_address
from sequencer.practice.practice_plan import PracticeItem


def plan_json(edition: PlanEdition) -> str:
    """The plan as one JSON object, ending in a line end."""
    plan = edition.plan
    content = {
        "show": edition.show.show.title,
        "version": edition.show.show.version,
        "who": list(plan.who),
        "log": edition.log_path,
        "exercises": [_item(edition, item) for item in (*plan.items, *plan.done)],
        "waiting": plan.waiting,
        "weeks": [{**asdict(week), "monday": week.monday.isoformat()} for week in plan.weeks],
        "drifts": [asdict(each) for each in plan.drifts],
        "spreads": [asdict(each) for each in plan.spreads],
        "burns": [
            {
                "who": each.who,
                "timed": each.timed.count,
                "median": each.timed.middle,
                "shortest": each.timed.shortest,
                "count_on": each.timed.counted_on,
                "believed": None if each.believed is None else each.believed.seconds,
            }
            for each in plan.burns
        ],
        "for_the_show": show_lines(edition.show.show, plan, edition.log_name),
        "outdated": plan.outdated,
        "uncounted": plan.uncounted,
    }
    text = json.dumps(_plain(content), ensure_ascii=False, indent=2, allow_nan=False)
    # A log may be a stranger's: what steers a terminal or turns a line around is escaped, as JSON may have it.
    seen = (each if each.isprintable() or each == "\n" else json.dumps(each)[1:-1] for each in text)
    return f"{''.join(seen)}\n"


def _item(edition: PlanEdition, item: PracticeItem) -> dict[str, Any]:
    show, exercise = edition.show, item.exercise
    return {
        "kind": exercise.kind,
        "title": exercise.title,
        "from": show.position(exercise.start),
        "until": show.position(exercise.end),
        "start": show.seconds(exercise.start),
        "end": show.seconds(exercise.end),
        "hardness": exercise.hardness,
        "why": exercise.why,
        "canon": exercise.canon,
        "also": [show.position(at) for at, _ in exercise.also],
        "who": [
            {
                "name": state.exercise.who,
                "steps_done": state.done,
                "next": None if state.next_step is None else state.next_step.words,
                "tried": state.tried,
                "clean": state.clean,
                "last": None if state.last is None else state.last.isoformat(),
                "loops": [loop_address(show, state.exercise, step) for step in state.steps],
            }
            for state in item.states
        ],
    }


def _plain(value: Any) -> Any:
    """Values that JSON has: what is no number is null."""
    if isinstance(value, float):
        return round(value, 6) if isfinite(value) else None
    if isinstance(value, dict):
        return {key: _plain(each) for key, each in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(each) for each in value]
    return value
