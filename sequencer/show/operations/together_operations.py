"""Who dances an entry, and how they are together: canon, mirror, unison, one taken out, an answer."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, ClassVar

from sequencer.show.drafted import KEY
from sequencer.show.operations.operation import Operation, refusal
from sequencer.show.operations.rows import (
    as_written,
    beats_said,
    cast_names,
    danced_by,
    keys_set,
    names_in,
    row_at,
    rows_put,
    same_list,
)
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import RowsIn, TakenOut
from sequencer.show.text.plain_values import ValuePath
from sequencer.show.text.written import said


@dataclass(frozen=True, slots=True, kw_only=True)
class SetCanon(Operation):
    """An entry danced one after the other, each so many beats after the one named before."""

    KIND: ClassVar[str] = "set-canon"
    at: ValuePath
    beats: float | str
    who: tuple[str, ...] = ()  # in their order; left out: as they are named

    @property
    def words(self) -> str:
        """What it does."""
        return f"canon, {beats_said(self.beats)} apart"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row = _entry(text, self.at)
        who = list(self.who) or danced_by(text, row)
        if len(who) < 2:
            raise refusal(
                text, self.at, f"{who[0] if who else 'nobody'} alone dances no canon",
                "name two performers or more",
            )  # fmt: skip
        keys: dict[str, Any] = {"canon": self.beats}
        if self.who or "who" not in row:
            keys["who"] = who
        return text.edited(*keys_set(text, self.at, keys))


@dataclass(frozen=True, slots=True, kw_only=True)
class SetMirror(Operation):
    """Which performers dance an entry with left and right swapped."""

    KIND: ClassVar[str] = "set-mirror"
    at: ValuePath
    who: tuple[str, ...]  # nobody: all as it is written

    @property
    def words(self) -> str:
        """What it does."""
        return f"mirror {', '.join(self.who)}" if self.who else "mirror nobody"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row = _entry(text, self.at)
        others = [name for name in self.who if name not in (*danced_by(text, row), "all")]
        if others:
            raise refusal(
                text, self.at, f"{others[0]} does not dance this entry", "name who dances it"
            )
        mirror = as_written(self.who) if self.who else None
        return text.edited(*keys_set(text, self.at, {"mirror": mirror}))


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUnison(Operation):
    """Entries danced as one, by all of their performers at once: without canon and mirror.

    Entries that are joined say the same but for who dances them, when, and how they are together.
    """

    KIND: ClassVar[str] = "set-unison"
    at: tuple[ValuePath, ...]

    @property
    def words(self) -> str:
        """What it does."""
        return "unison"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        paths = sorted(dict.fromkeys(self.at))
        same_list(paths)
        rows = [_entry(text, path) for path in paths]
        unlike = [
            path for path, row in zip(paths, rows, strict=True) if _what(row) != _what(rows[0])
        ]
        if unlike:
            raise refusal(
                text, unlike[0], "this entry is not what the first one dances",
                "choose entries that say the same but for who dances them and when",
            )  # fmt: skip
        who = [name for row in rows for name in danced_by(text, row)]
        keys: dict[str, Any] = {"canon": None, "mirror": None}
        if len(paths) > 1:
            keys["who"] = as_written(list(dict.fromkeys(who)))
        gone = [TakenOut(path) for path in paths[1:]]
        return text.edited(*keys_set(text, paths[0], keys), *gone)


@dataclass(frozen=True, slots=True, kw_only=True)
class PartEntry(Operation):
    """Some performers of an entry dance it in an entry of their own, right behind it, at the same time as before."""

    KIND: ClassVar[str] = "part-entry"
    at: ValuePath
    who: tuple[str, ...]
    starts: Mapping[str, str] = field(default_factory=dict)
    """When performers start, by name: of everybody where the entry has no `from`; of all but the first in a canon."""

    @property
    def words(self) -> str:
        """What it does."""
        return f"{', '.join(self.who)} apart"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row = _entry(text, self.at)
        everyone, apart = danced_by(text, row), set(self.who)
        if not apart or not apart < set(everyone):
            raise refusal(
                text, self.at, f"{', '.join(self.who) or 'nobody'} cannot be taken out of this entry",
                "name some of those who dance it, and not all",
            )  # fmt: skip
        groups = _runs(everyone, apart) if "canon" in row else _two(everyone, apart)
        into, number = self.at[:-1], int(self.at[-1])
        rows = [text.row(self.at)] * (len(groups) - 1)
        text = text.edited(RowsIn(into, number + 1, tuple(rows))) if rows else text
        edits = [
            edit
            for k, group in enumerate(groups)
            for edit in keys_set(
                text, (*into, number + k), self._keys(text, row, group, first=everyone[0])
            )
        ]
        return text.edited(*edits)

    def _keys(
        self, text: ShowText, row: Mapping[str, Any], group: Sequence[str], first: str
    ) -> dict[str, Any]:
        keys: dict[str, Any] = {"who": as_written(group), KEY: None}
        late = "canon" in row and group[0] != first
        if "from" not in row or late:
            start = self.starts.get(group[0])
            if start is None and "accent" not in row:
                raise refusal(
                    text, self.at, f"nothing says when {group[0]} starts",
                    "give the moment, or write a `from` into the entry",
                )  # fmt: skip
            keys["from"] = start
        if late and "until" in row:
            raise refusal(
                text, self.at, "in this canon `until` is the end of the first alone",
                "give the block its beats, then part it",
            )  # fmt: skip
        if len(group) == 1:
            keys["canon"] = None
        mirror = names_in(row.get("mirror"))
        if mirror and "all" not in mirror:
            keys["mirror"] = as_written(own) if (own := [n for n in mirror if n in group]) else None
        return keys


def _two(everyone: Sequence[str], apart: set[str]) -> list[list[str]]:
    return [[n for n in everyone if n not in apart], [n for n in everyone if n in apart]]


def _runs(everyone: Sequence[str], apart: set[str]) -> list[list[str]]:
    """Neighbours in a canon who stay together."""
    runs: list[list[str]] = []
    for name in everyone:
        if runs and (runs[-1][0] in apart) == (name in apart):
            runs[-1].append(name)
        else:
            runs.append([name])
    return runs


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerWith(Operation):
    """Others answer: they dance the same entry from another moment."""

    KIND: ClassVar[str] = "answer-with"
    at: ValuePath
    who: tuple[str, ...]
    start: str | None = None  # the moment; left out: as soon as they are free

    @property
    def words(self) -> str:
        """What it does."""
        return f"{', '.join(self.who)} answer"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row = _entry(text, self.at)
        if not self.who:
            raise refusal(text, self.at, "nobody answers", "name who does")
        if "until" in row:
            raise refusal(
                text, self.at, "this block ends at a moment of the song, so it cannot be danced later",
                "give it its beats first",
            )  # fmt: skip
        number = int(self.at[-1]) + 1
        behind = (*self.at[:-1], number)
        text = text.edited(rows_put(text, self.at[:-1], number, [text.row(self.at)]))
        who = ["all"] if set(self.who) == set(cast_names(text)) else self.who
        keys = {"who": as_written(who), "from": self.start, "mirror": None, KEY: None}
        if len(self.who) == 1:
            keys["canon"] = None
        return text.edited(*keys_set(text, behind, keys))


def _entry(text: ShowText, at: ValuePath) -> dict[str, Any]:
    row = row_at(text, at)
    if at[0] != "timeline":
        raise refusal(
            text, at, "a step of a phrase is danced by whoever dances the phrase",
            "choose an entry of the timeline",
        )  # fmt: skip
    return row


def _what(row: Mapping[str, Any]) -> Any:
    apart = ("who", "from", "canon", "mirror", "note", KEY)
    return said({key: value for key, value in row.items() if key not in apart})
