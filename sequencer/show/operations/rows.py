"""Entries, steps and names in a show file's plain values, as operations need them."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from sequencer.motion.patterns.library import patterns
from sequencer.show.operations.operation import RowValues, refusal
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import RowsIn, TakenOut, TextEdit, ValueSet
from sequencer.show.text.plain_values import ValuePath
from sequencer.show.text.written import said

OF_AN_ENTRY = ("who", "from", "until", "canon", "mirror")  # keys of an entry that a step has not


def row_at(text: ShowText, path: ValuePath) -> dict[str, Any]:
    """The entry, step or record at a path.

    Raises
    ------
    ValueError
        If there is none.
    """
    row = text.value(*path)
    if not isinstance(row, dict):
        raise ValueError(f"there is no {spoken(path)}")
    return row


def spoken(path: ValuePath) -> str:
    """A place in the file in words: "entry 3 of the timeline"."""
    if len(path) > 1 and isinstance(path[-1], int):
        return f"entry {path[-1] + 1} of {spoken(path[:-1])}"
    if len(path) == 1:
        return f"the {str(path[0]).replace('_', ' ')}"
    return f"{path[-1]!r} of {spoken(path[:-1])}" if path else "the file"


def keys_set(text: ShowText, path: ValuePath, values: RowValues) -> list[TextEdit]:
    """Keys of a record set, or taken out where the value is None."""
    old = text.value(*path)
    if not isinstance(old, dict):
        given = {key: value for key, value in values.items() if value is not None}
        return [ValueSet(path, given)] if given else []
    edits: list[TextEdit] = []
    for key, value in values.items():
        if value is not None:
            edits.append(ValueSet((*path, key), value))
        elif key in old:
            edits.append(TakenOut((*path, key)))
    return edits


def rows_put(text: ShowText, into: ValuePath, before: int | None, rows: Sequence[Any]) -> TextEdit:
    """Rows put into a list, behind all others where no place is given.

    Raises
    ------
    ValueError
        If there is no such place.
    """
    known = text.value(*into)
    n = len(known) if isinstance(known, list) else 0
    index = n if before is None else before
    if not 0 <= index <= n:
        raise ValueError(
            f"there are {n} entries in {spoken(into)}, so none is put before number {index}"
        )
    if known is None:
        return ValueSet(into, list(rows))
    return RowsIn(into, index, tuple(rows))


def names_in(value: Any) -> list[str]:
    """Names as a file gives them: one, or a list."""
    if value is None:
        return []
    return [" ".join(str(each).split()) for each in (value if isinstance(value, list) else [value])]


def without_nobody(text: ShowText) -> ShowText:
    """The text without a list of tonight's that is empty, and without the heading if nothing is left below it.

    Parameters
    ----------
    text : ShowText
    """
    tonight = text.value("tonight")
    if not isinstance(tonight, dict):
        return text
    empty = [key for key, value in tonight.items() if value is None or value == []]
    if len(empty) == len(tonight):
        return text.edited(TakenOut(("tonight",)))
    return text.edited(*(TakenOut(("tonight", key)) for key in empty)) if empty else text


def cast_names(text: ShowText) -> list[str]:
    """The names of the cast."""
    cast = text.value("cast")
    rows = cast if isinstance(cast, list) else []
    return [name for row in rows if isinstance(row, dict) for name in names_in(row.get("name"))]


def danced_by(text: ShowText, row: Mapping[str, Any]) -> list[str]:
    """Who dances an entry, in order."""
    who = names_in(row.get("who", "all"))
    return cast_names(text) if "all" in who else list(dict.fromkeys(who))


def as_written(names: Sequence[str]) -> Any:
    """Names as a person writes them: one without brackets."""
    return names[0] if len(names) == 1 else list(names)


def phrase_uses(text: ShowText) -> Iterator[tuple[ValuePath, str]]:
    """Every entry and step that dances a phrase, with the phrase's name."""
    for path, row in every_block(text):
        if isinstance(row, dict) and row.get("phrase") is not None:
            yield path, " ".join(str(row["phrase"]).split())


def every_block(text: ShowText) -> Iterator[tuple[ValuePath, Any]]:
    """Every entry of the timeline, and every step of a phrase."""
    for k, row in enumerate(text.value("timeline") or ()):
        yield ("timeline", k), row
    for name, steps in phrases(text).items():
        for k, row in enumerate(steps if isinstance(steps, list) else ()):
            yield ("phrases", name, k), row


def phrases(text: ShowText) -> dict[str, Any]:
    """The phrases by their names as written."""
    found = text.value("phrases")
    return found if isinstance(found, dict) else {}


def free_name(text: ShowText, like: str) -> str:
    """A name that no phrase has, made from another one's."""
    taken = {" ".join(name.split()) for name in phrases(text)}
    stem = like.rstrip("0123456789").rstrip() or like
    return next(name for k in range(2, len(taken) + 3) if (name := f"{stem} {k}") not in taken)


def refuse_name_taken(text: ShowText, heading: str, name: str) -> None:
    """Refuse a name that something under a heading has already.

    Raises
    ------
    InputError
        If it has.
    """
    known, wanted = text.value(heading), " ".join(name.split())
    for key in known if isinstance(known, dict) else ():
        if " ".join(key.split()) == wanted:
            what = f"there is already a {wanted!r} under {heading}"
            raise refusal(text, (heading, key), what, "choose another name")


def refuse_move_taken(text: ShowText, name: str, renamed: str = "") -> None:
    """Refuse a name for a pattern or phrase that another move of the show has, or one of the vocabulary.

    On a sheet, and when it is called out, two moves whose names differ by capital letters alone are one.

    Parameters
    ----------
    text : ShowText
    name : str
    renamed : str, optional
        What the pattern or phrase is called now: its own name may be written otherwise.

    Raises
    ------
    InputError
        If one has it.
    """
    wanted, own = _called(name), " ".join(renamed.split())
    for heading, kind in (("patterns", "pattern"), ("phrases", "phrase")):
        known = text.value(heading)
        for key in known if isinstance(known, dict) else ():
            if _called(key) == wanted and " ".join(key.split()) != own:
                what = f"there is already a {kind} {key!r}"
                raise refusal(text, (heading, key), what, "choose another name")
    if any(_called(each) == wanted for each in patterns()):
        raise refusal(
            text, (), f"there is already a move {wanted!r} in the vocabulary", "choose another name"
        )


def _called(name: str) -> str:
    return " ".join(name.split()).casefold()


def same_list(paths: Sequence[ValuePath]) -> tuple[ValuePath, list[int]]:
    """The list in which some entries stand, and their numbers in order.

    Raises
    ------
    ValueError
        If they do not stand in one list.
    """
    holders = {path[:-1] for path in paths}
    numbers = sorted(path[-1] for path in paths if isinstance(path[-1], int))
    if len(holders) != 1 or len(set(numbers)) != len(paths):
        raise ValueError("these entries do not stand in one list")
    return holders.pop(), numbers


def beats_said(beats: Any) -> str:
    """A number of beats in words, as it was given."""
    text = str(said(beats))
    return f"{text} beat" if text == "1" else f"{text} beats"
