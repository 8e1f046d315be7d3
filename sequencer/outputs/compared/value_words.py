"""Values of a show file and the places where they stand, as a person says them."""

from collections.abc import Mapping
from typing import Any

from sequencer.outputs.compared.show_changes import ChangeSubject
from sequencer.show.drafted import KEY as DRAFTED
from sequencer.show.text.plain_values import ValuePath

_SUBJECTS: dict[str, ChangeSubject] = {
    "track": "song", "cast": "cast", "crew": "crew", "venue": "place", "fire": "fire",
    "weather": "rules", "limits": "rules", "rules": "rules", "stop_call": "rules",
    "emergency": "rules", "drift": "rules", "timeline": "dance", "phrases": "dance",
    "patterns": "dance", "pattern_files": "dance", "formations": "floor", "staging": "floor",
    "entrances": "floor",
}  # fmt: skip
_HEADS = {
    "track": "song", "venue": "place", "cast": "", "crew": "", "timeline": "",
    "formations": "formation", "phrases": "phrase", "patterns": "own pattern", "staging": "",
    "entrances": "",
    "stop_call": "stop call", "drift": "errors to expect", "wishes": "wishes for drafts",
}  # fmt: skip
_ITEMS = {
    "exits": "exit", "extinguishers": "extinguisher", "audience": "audience edge",
    "ceilings": "ceiling", "scenery": "scenery", "lit": "burn", "sections": "section",
    "entrances": "entrance",
}  # fmt: skip
_INNER = {"spots", "corrections"}  # keys that say nothing by themselves


def subject_of(path: ValuePath) -> ChangeSubject:
    """What a place in the file is about."""
    return _SUBJECTS.get(str(path[0]), "other") if path else "other"


def value_at(values: Any, path: ValuePath) -> Any:
    """A plain value by its path; None if there is none."""
    for key in path:
        try:
            values = values[key]
        except (KeyError, IndexError, TypeError):
            return None
    return values


def value_text(value: Any) -> str:
    """A value in words; an empty one is "nothing"."""
    return _text(value)


def _text(value: Any) -> str:
    if value is None or value in ([], {}, ""):
        return "nothing"
    if isinstance(value, Mapping):
        return ", ".join(_pair(key, own) for key, own in value.items())
    if isinstance(value, list | tuple):
        told = ", ".join(map(_inner, value))
        return f"[{told}]" if is_point(value) else told
    return _scalar_text(value)


def _pair(key: str, own: Any) -> str:
    """A key with its value; the word by which a draft is known again says nothing to a person."""
    return worded(key) if key == DRAFTED else f"{worded(key)} {_inner(own)}"


def _scalar_text(value: Any) -> str:
    if isinstance(value, bool) or value in ("true", "false"):
        return "yes" if value in (True, "true") else "no"
    return f"{value:g}" if isinstance(value, float) else str(value)


def _inner(value: Any) -> str:
    return f"({_text(value)})" if isinstance(value, Mapping) and value else _text(value)


def is_point(value: Any) -> bool:
    """Whether a value is a place on the stage, as the file has it."""
    return (
        isinstance(value, list | tuple)
        and len(value) == 2
        and all(isinstance(each, int | float | str) for each in value)
        and _number(value[0]) is not None
        and _number(value[1]) is not None
    )


def _number(value: Any) -> float | None:
    try:
        return float(value)
    except ValueError:
        return None


def worded(key: str | int) -> str:
    """A key as a person says it."""
    return str(key).replace("_", " ")


def place_label(path: ValuePath, values: Any) -> str:
    """The record that a path leads to or into, in words: "Ash", "exit east", "formation wide, Ash".

    Parameters
    ----------
    path : path
        Without the key that is told.
    values : plain values
        Of the file.
    """
    if not path:
        return ""
    head = str(path[0])
    if head == "timeline" and len(path) > 1:
        return _joined(
            [entry_label(value_at(values, path[:2])), *_rest(path[2:], values, path[:2])]
        )
    if head == "phrases" and len(path) > 2:
        step = value_at(values, path[:3])
        named = f"phrase {path[1]}, step {int(path[2]) + 1} ({step_label(step)})"
        return _joined([named, *_rest(path[3:], values, path[:3])])
    if head in ("staging", "entrances") and len(path) > 1:
        named = _on_the_floor(head, value_at(values, path[:2]) or {})
        return _joined([named, *_rest(path[2:], values, path[:2])])
    first = _HEADS.get(head, worded(head))
    parts = _rest(path[1:], values, path[:1])
    if head in ("formations", "phrases", "patterns") and parts:
        return _joined([f"{first} {parts[0]}", *parts[1:]])
    return _joined([first, *parts])


def _on_the_floor(head: str, row: Mapping[str, Any]) -> str:
    """A walk to a formation, or somebody's entrance or exit."""
    if head == "staging":
        return f"walk to {row.get('formation')} from {row.get('from')}"
    who = row.get("who")
    names = " and ".join(map(str, who)) if isinstance(who, list) else who
    return f"{'entrance' if 'comes_on' in row else 'exit'} of {names}"


def _rest(path: ValuePath, values: Any, above: ValuePath) -> list[str]:
    parts = []
    for key in path:
        row, above = value_at(values, (*above, key)), (*above, key)
        if isinstance(key, int):
            of = _ITEMS.get(str(above[-2]), "")
            if above[:-1] in (("cast",), ("crew",)):
                of = ""
            parts.append(" ".join(filter(None, [of, item_name(row, key)])))
        elif key not in _INNER and key not in _ITEMS:
            parts.append(worded(key))
    return parts


def item_name(row: Any, number: int) -> str:
    """What an item of a list is called."""
    if isinstance(row, Mapping):
        if row.get("name"):
            return str(row["name"])
        if row.get("from") is not None:
            who = row.get("who")
            return " ".join(filter(None, [_text(who) if who else "", f"from {row['from']}"]))
    return str(number + 1)


def step_label(row: Any) -> str:
    """What an entry or step is."""
    row = row if isinstance(row, Mapping) else {}
    if row.get("pattern"):
        return str(row["pattern"])
    if row.get("phrase"):
        return f"phrase {row['phrase']}"
    hands = [
        own.get("pattern")
        for side in ("left", "right")
        if isinstance(own := row.get(side), Mapping)
    ]
    if hands:
        return " / ".join(str(each) for each in hands)
    if row.get("link"):
        return "link"
    for key in ("rest", "hold", "accent"):
        if row.get(key) is not None:
            return f"{key} {_text(row[key])}" if key == "accent" else key
    return "entry"


def entry_label(row: Any) -> str:
    """An entry of the timeline: what, from when and who."""
    label = step_label(row)
    row = row if isinstance(row, Mapping) else {}
    start = f" from {row['from']}" if row.get("from") is not None else ""
    who = row.get("who")
    by = "" if who in (None, "all", ["all"]) else f" ({_text(who)})"
    return f"{label}{start}{by}"


def _joined(parts: list[str]) -> str:
    return ", ".join(part for part in parts if part)
