"""Phrases: blocks given a name, written out again, renamed, and changed here or everywhere.

Everywhere is an operation on the phrase's own step. Here is the same on a copy that only one use dances: `ChangeHere`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields, replace
from itertools import pairwise
from typing import Any, ClassVar, cast

from sequencer.show.drafted import KEY
from sequencer.show.operations.operation import AnyOperation, Operation, refusal
from sequencer.show.operations.rows import (
    OF_AN_ENTRY,
    free_name,
    keys_set,
    phrase_uses,
    phrases,
    refuse_move_taken,
    row_at,
    same_list,
)
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import KeyNamed, RowsIn, TakenOut, ValueSet
from sequencer.show.text.plain_values import ValuePath

_MOST_ROWS = 500  # that a phrase is written out to


@dataclass(frozen=True, slots=True, kw_only=True)
class NamePhrase(Operation):
    """Neighbouring entries or steps made a phrase, and danced by its name."""

    KIND: ClassVar[str] = "name-phrase"
    at: tuple[ValuePath, ...]
    name: str
    follow_on: bool = False  # each is known to start where the one before ends
    beats: tuple[float | str | None, ...] = ()  # of each whose end is a moment of the song

    @property
    def words(self) -> str:
        """What it does."""
        return f"name the phrase {self.name!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        into, numbers = same_list(self.at)
        rows = [row_at(text, (*into, k)) for k in numbers]
        refuse_move_taken(text, self.name)
        self._refuse_unfit(text, into, numbers, rows)
        for n, (k, row) in enumerate(zip(numbers, rows, strict=True)):
            keys: dict[str, Any] = dict.fromkeys((*OF_AN_ENTRY, KEY))
            if "until" in row:
                keys["beats"] = self.beats[n]
            edits = keys_set(text, (*into, k), keys)
            text = text.edited(*edits) if edits else text
        steps = [text.row((*into, k)) for k in numbers]
        use = {key: rows[0][key] for key in ("who", "from", "canon", "mirror") if key in rows[0]}
        first = not phrases(text)
        return text.edited(
            ValueSet(("phrases",), {self.name: steps})
            if first
            else ValueSet(("phrases", self.name), steps),
            RowsIn(into, numbers[0], ({**use, "phrase": self.name},)),
            *(TakenOut((*into, k)) for k in numbers),
        )

    def _refuse_unfit(
        self,
        text: ShowText,
        into: ValuePath,
        numbers: Sequence[int],
        rows: Sequence[Mapping[str, Any]],
    ) -> None:
        if numbers != list(range(numbers[0], numbers[0] + len(numbers))):
            raise refusal(
                text,
                (*into, numbers[0]),
                "these blocks are not neighbours",
                "choose all between them too",
            )
        for n, (k, row) in enumerate(zip(numbers, rows, strict=True)):
            at = (*into, k)
            if "accent" in row:
                raise refusal(
                    text, at, "an accent counts the beats of what it stands in", "leave it out, and put it in later"
                )  # fmt: skip
            if any(row.get(key) != rows[0].get(key) for key in ("who", "canon", "mirror")):
                raise refusal(
                    text, at, "others dance this block, or dance it otherwise",
                    "choose blocks of the same performers",
                )  # fmt: skip
            if n and "from" in row and not self.follow_on:
                raise refusal(
                    text, at, "this block starts at a moment of its own, and a phrase has no holes",
                    "put a rest before it, or move it to where the one before it ends",
                )  # fmt: skip
            if "until" in row and (n >= len(self.beats) or self.beats[n] is None):
                raise refusal(
                    text, at, "this block ends at a moment of the song", "give it its beats"
                )


@dataclass(frozen=True, slots=True, kw_only=True)
class WriteOutPhrase(Operation):
    """A phrase's steps written in the place of its name."""

    KIND: ClassVar[str] = "write-out-phrase"
    at: ValuePath  # the entry or step that dances it

    @property
    def words(self) -> str:
        """What it does."""
        return "write the phrase out"

    def on(self, text: ShowText) -> ShowText:
        """The text with it; the phrase itself goes if nothing else dances it."""
        use, name, key = _use(text, self.at)
        steps = [row_at(text, ("phrases", key, k)) for k in range(len(text.value("phrases", key)))]
        times = int(str(use.get("repeat", 1)))
        self._refuse_unfit(text, use, name, steps, times)
        into, number = self.at[:-1], int(self.at[-1])
        last = [path for path, used in phrase_uses(text) if used == name] == [self.at]
        rows = [text.row(("phrases", key, k), comments=last) for k in range(len(steps))] * times
        text = text.edited(RowsIn(into, number + 1, tuple(rows)))
        edits = []
        for n in range(len(rows)):
            step = steps[n % len(steps)]
            keys: dict[str, Any] = {k: use[k] for k in ("who", "mirror") if k in use}
            keys[KEY] = None
            if _true(use.get("mirrored")):
                keys["mirrored"] = None if _true(step.get("mirrored")) else True
            if n == 0:
                keys |= {"from": use["from"]} if "from" in use else {}
                notes = [str(each["note"]) for each in (use, step) if each.get("note")]
                keys |= {"note": "; ".join(notes)} if notes else {}
            edits += keys_set(text, (*into, number + 1 + n), keys)
        gone = [TakenOut(("phrases", key))] if last else []
        return text.edited(*edits).edited(TakenOut(self.at), *gone)

    def _refuse_unfit(
        self,
        text: ShowText,
        use: Mapping[str, Any],
        name: str,
        steps: Sequence[Mapping[str, Any]],
        times: int,
    ) -> None:
        if "canon" in use:
            raise refusal(
                text,
                self.at,
                "in a canon everybody starts a step at another time",
                "part the entry first",
            )
        if any("accent" in step for step in steps):
            raise refusal(
                text,
                ("phrases", name),
                f"the accents of {name!r} count its own beats",
                "take them out first",
            )
        if not steps or len(steps) * times > _MOST_ROWS:
            raise refusal(
                text,
                self.at,
                f"this would be {len(steps) * times} blocks",
                f"it must be 1 to {_MOST_ROWS}",
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class SplitOut(Operation):
    """A use of a phrase given a copy of its own, so that changing it changes nothing else.

    The use is a way: the entry or step that dances the first phrase, the step of it that dances the next one, and so on.
    """

    KIND: ClassVar[str] = "split-out"
    use: tuple[ValuePath, ...]
    rounds: tuple[
        int | None, ...
    ] = ()  # which time, from 0, of each use that repeats; null: every time
    name: str | None = None  # of the copy

    @property
    def words(self) -> str:
        """What it does."""
        return "split the phrase out"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        return self.split(text)[0]

    def split(self, text: ShowText) -> tuple[ShowText, str]:
        """The text with it, and what the phrase of this use is called now.

        Raises
        ------
        InputError
            If the use is none.
        ValueError
            As `on`.
        """
        if not self.use or (self.rounds and len(self.rounds) != len(self.use)):
            raise ValueError("a use is the way from an entry to the step that dances the phrase")
        for before, path in pairwise(self.use):
            if path[:-1] != ("phrases", _use(text, before)[2]):
                raise ValueError("this is no way from phrase to phrase")
        at, key = self.use[0], ""
        for n, path in enumerate(self.use):
            if n:
                at = ("phrases", key, path[-1])
            row, name, key = _use(text, at)
            turn = self.rounds[n] if self.rounds else None
            if turn is not None and int(str(row.get("repeat", 1))) > 1:
                text, at = _one_round(text, at, turn)
            if sum(used == name for _, used in phrase_uses(text)) > 1:
                wanted = self.name if n == len(self.use) - 1 else None
                text, key = _own_copy(text, at, key, wanted)
        return text, key


def _own_copy(text: ShowText, at: ValuePath, key: str, wanted: str | None) -> tuple[ShowText, str]:
    """A copy of a phrase that only one entry or step dances."""
    if wanted is not None:
        refuse_move_taken(text, wanted)
    name = wanted or free_name(text, key)
    steps = [text.row(("phrases", key, k)) for k in range(len(text.value("phrases", key)))]
    text = text.edited(ValueSet(("phrases", name), steps), ValueSet((*at, "phrase"), name))
    marks = [
        TakenOut(("phrases", name, k, KEY))
        for k, step in enumerate(text.value("phrases", name))
        if KEY in step
    ]
    return (text.edited(*marks) if marks else text), name


def _one_round(text: ShowText, at: ValuePath, turn: int) -> tuple[ShowText, ValuePath]:
    """One time of a use that repeats made a use by itself; between those before and those behind it."""
    row, name, _ = _use(text, at)
    times = int(str(row["repeat"]))
    if not 0 <= turn < times:
        raise ValueError(f"this phrase is danced {times} times, so there is no time {turn + 1}")
    counts = [(n, n > 1) for n in (turn, 1, times - turn - 1)]
    flips = {"mirrored": True} if at[0] == "phrases" and _true(row.get("mirrored")) else {}
    rows = [
        {"phrase": name, **({"repeat": str(n)} if several else {}), **flips}
        for n, several in counts if n
    ]  # fmt: skip
    own = int(turn > 0)
    if at[0] == "phrases":
        if row.get("note"):
            rows[0] = {**rows[0], "note": row["note"]}
        into, number = at[:-1], int(at[-1])
        return text.edited(RowsIn(into, number, tuple(rows)), TakenOut(at)), (*into, number + own)
    rounds = free_name(text, name)
    text = text.edited(
        ValueSet(("phrases", rounds), rows),
        ValueSet((*at, "phrase"), rounds),
        TakenOut((*at, "repeat")),
    )
    return text, ("phrases", rounds, own)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeHere(Operation):
    """An operation on a step of a phrase that holds for one use of it only."""

    KIND: ClassVar[str] = "change-here"
    use: tuple[ValuePath, ...]  # as for `SplitOut`
    operation: AnyOperation  # on the step as it stands in the phrase
    rounds: tuple[int | None, ...] = ()
    name: str | None = None  # of the copy, if one is made

    @property
    def words(self) -> str:
        """What it does."""
        return f"{self.operation.words}, here only"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        if not self.use:
            raise ValueError("nothing says where the phrase is danced")
        old = _use(text, self.use[-1])[2]
        if _readdressed(self.operation, ("phrases", old), ("phrases",)) == self.operation:
            raise ValueError("what is to be changed is no step of the phrase that is danced here")
        split = SplitOut(use=self.use, rounds=self.rounds, name=self.name)
        text, new = split.split(text)
        return _readdressed(self.operation, ("phrases", old), ("phrases", new)).on(text)


def _readdressed(operation: Operation, old: ValuePath, new: ValuePath) -> Operation:
    """An operation on one phrase, for another."""
    given = {
        each.name: _elsewhere(getattr(operation, each.name), old, new)
        for each in fields(cast("Any", operation))
    }
    moved: Operation = replace(cast("Any", operation), **given)
    return moved


def _elsewhere(value: Any, old: ValuePath, new: ValuePath) -> Any:
    if isinstance(value, Operation):
        return _readdressed(value, old, new)
    if isinstance(value, tuple):
        if value[:2] == old:
            return (*new, *value[2:])
        return tuple(_elsewhere(each, old, new) for each in value)
    return value


@dataclass(frozen=True, slots=True, kw_only=True)
class RenamePhrase(Operation):
    """Another name for a phrase, wherever it is danced."""

    KIND: ClassVar[str] = "rename-phrase"
    old: str
    new: str

    @property
    def words(self) -> str:
        """What it does."""
        return f"call the phrase {self.old!r} {self.new!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        key = _key_of(text, self.old)
        refuse_move_taken(text, self.new, self.old)
        uses = [path for path, used in phrase_uses(text) if used == " ".join(self.old.split())]
        return text.edited(
            *(ValueSet((*path, "phrase"), self.new) for path in uses),
            KeyNamed(("phrases", key), self.new),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class DeletePhrase(Operation):
    """A phrase that nothing dances taken out."""

    KIND: ClassVar[str] = "delete-phrase"
    name: str

    @property
    def words(self) -> str:
        """What it does."""
        return f"delete the phrase {self.name!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        key, name = _key_of(text, self.name), " ".join(self.name.split())
        uses = [path for path, used in phrase_uses(text) if used == name]
        if uses:
            raise refusal(
                text,
                uses[0],
                f"the phrase {self.name!r} is danced here",
                "write it out, or delete this first",
            )
        return text.edited(TakenOut(("phrases", key)))


def _use(text: ShowText, at: ValuePath) -> tuple[dict[str, Any], str, str]:
    """An entry or step that dances a phrase, with the phrase's name, and its key as written."""
    row = row_at(text, at)
    if row.get("phrase") is None:
        raise refusal(text, at, "this dances no phrase", "choose one that does")
    name = " ".join(str(row["phrase"]).split())
    return row, name, _key_of(text, name)


def _key_of(text: ShowText, name: str) -> str:
    wanted = " ".join(name.split())
    for key in phrases(text):
        if " ".join(key.split()) == wanted:
            return key
    raise ValueError(f"there is no phrase {name!r}")


def _true(value: Any) -> bool:
    return str(value).strip().casefold() in ("true", "1", "yes", "on", "y", "t")
