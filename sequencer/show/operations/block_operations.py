"""Blocks on the timeline and in phrases: put, changed, stretched, moved, copied, pasted, deleted."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from sequencer.show.drafted import KEY
from sequencer.show.operations.operation import Operation, RowValues, refusal
from sequencer.show.operations.rows import (
    OF_AN_ENTRY,
    beats_said,
    keys_set,
    row_at,
    rows_put,
    same_list,
)
from sequencer.show.show_text import ShowText
from sequencer.show.text.document import parse_document
from sequencer.show.text.plain_edits import RowsIn, TakenOut, TextEdit, ValueSet
from sequencer.show.text.plain_values import ValuePath
from sequencer.show.text.written import Written, flow_words
from sequencer.units import counted

_DIGITS = 6  # of a shift [beats]: what is left over is of the reckoning alone


@dataclass(frozen=True, slots=True, kw_only=True)
class PutBlock(Operation):
    """A new entry on the timeline, or a step in a phrase."""

    KIND: ClassVar[str] = "put-block"
    into: ValuePath  # ("timeline",) or ("phrases", its name)
    block: RowValues  # as the file says it
    before: int | None = None  # the entry before which it is put; None is the end

    @property
    def words(self) -> str:
        """What it does."""
        return f"put {_called(self.block)}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        return text.edited(rows_put(text, self.into, self.before, [dict(self.block)]))


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeBlock(Operation):
    """Keys of an entry or step set, or taken out."""

    KIND: ClassVar[str] = "change-block"
    at: ValuePath
    values: RowValues  # by key; null takes a key out

    @property
    def words(self) -> str:
        """What it does."""
        return f"change {', '.join(self.values)}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row_at(text, self.at)
        return text.edited(*keys_set(text, self.at, self.values))


@dataclass(frozen=True, slots=True, kw_only=True)
class StretchBlock(Operation):
    """Another length of a block: so many beats for each time that it is danced, or until a moment."""

    KIND: ClassVar[str] = "stretch-block"
    at: ValuePath
    beats: float | str | None = None
    until: str | None = None

    @property
    def words(self) -> str:
        """What it does."""
        return f"stretch to {beats_said(self.beats) if self.until is None else self.until}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row = row_at(text, self.at)
        if (self.beats is None) == (self.until is None):
            raise ValueError("a block is stretched by its beats, or until a moment")
        if "accent" in row:
            raise refusal(text, self.at, "an accent takes no time", "move it instead")
        if "phrase" in row:
            raise refusal(
                text, self.at, f"the phrase {row['phrase']!r} is as long as its steps",
                "stretch a step of it, or repeat it",
            )  # fmt: skip
        return text.edited(*keys_set(text, self.at, self._keys(row)))

    def _keys(self, row: Mapping[str, Any]) -> dict[str, Any]:
        stop = next((key for key in ("rest", "hold") if key in row), None)
        said_there = stop is not None and str(row[stop]).strip().casefold() != "true"
        if self.until is not None:
            keys: dict[str, Any] = {"until": self.until, "beats": None, "cycles": None}
            return {**keys, str(stop): True} if said_there else keys
        keys = {"until": None, "cycles": None}
        return {**keys, str(stop) if said_there else "beats": self.beats}


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveBlock(Operation):
    """A block that starts at another moment, or stands elsewhere in its list.

    What follows it without a moment of its own follows it still.
    """

    KIND: ClassVar[str] = "move-block"
    at: ValuePath
    start: str | None = None  # the moment at which it starts
    before: int | None = None  # the entry of its list, as that stands, before which it is put

    @property
    def words(self) -> str:
        """What it does."""
        return "move to another place" if self.start is None else f"move to {self.start}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row = row_at(text, self.at)
        if self.start is not None:
            key = "accent" if "accent" in row else "from"
            if self.at[0] != "timeline":
                raise refusal(
                    text, self.at, "a step of a phrase starts where the one before it ends",
                    "put it before another step",
                )  # fmt: skip
            text = text.edited(*keys_set(text, self.at, {key: self.start}))
        return text if self.before is None else moved_row(text, self.at, self.before)


def moved_row(text: ShowText, at: ValuePath, before: int) -> ShowText:
    """The text with an item of a list put before another one of it.

    Raises
    ------
    ValueError
        If there is no such place.
    """
    into, (number,) = same_list([at])
    edit = rows_put(text, into, before, [text.row(at)])
    return text if before in (number, number + 1) else text.edited(edit, TakenOut(at))


@dataclass(frozen=True, slots=True, kw_only=True)
class DeleteBlocks(Operation):
    """Entries or steps taken out; comments above them stay."""

    KIND: ClassVar[str] = "delete-blocks"
    at: tuple[ValuePath, ...]

    @property
    def words(self) -> str:
        """What it does."""
        return f"delete {counted(len(self.at), 'block')}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        for path in self.at:
            row_at(text, path)
        return text.edited(*(TakenOut(path) for path in dict.fromkeys(self.at)))


@dataclass(frozen=True, slots=True, kw_only=True)
class PasteBlocks(Operation):
    """Entries or steps put in as they were copied; they are the person's own, even if they were drafted."""

    KIND: ClassVar[str] = "paste-blocks"
    into: ValuePath  # ("timeline",) or ("phrases", its name)
    blocks: tuple[str, ...]  # as `copied` gives them
    before: int | None = None  # the entry before which they are put; None is the end
    starts: tuple[
        str | None, ...
    ] = ()  # when each starts, on the timeline; null: where the one before ends

    @property
    def words(self) -> str:
        """What it does."""
        return f"paste {counted(len(self.blocks), 'block')}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        if self.starts and len(self.starts) != len(self.blocks):
            raise ValueError("there is one start for each block that is pasted")
        known = text.value(*self.into)
        first = self.before if self.before is not None else len(known or ())
        rows = [_pasted(block) for block in self.blocks]
        text = text.edited(rows_put(text, self.into, self.before, rows))
        return text.edited(*self._adapted(text, first)) if rows else text

    def _adapted(self, text: ShowText, first: int) -> list[TextEdit]:
        """What is different where they are now."""
        edits: list[TextEdit] = []
        for k in range(len(self.blocks)):
            path = (*self.into, first + k)
            row = row_at(text, path)
            gone = [KEY] if self.into[0] == "timeline" else [KEY, *OF_AN_ENTRY]
            edits += [TakenOut((*path, key)) for key in gone if key in row]
            if self.starts and self.into[0] == "timeline":
                key = "accent" if "accent" in row else "from"
                start = self.starts[k]
                if start is not None:
                    edits.append(ValueSet((*path, key), start))
                elif key == "from" and "from" in row:
                    edits.append(TakenOut((*path, "from")))
        return edits


def _pasted(block: str) -> Any:
    value = parse_document(block, "what was copied").values
    if not isinstance(value, dict):
        raise ValueError("what was copied is no block")
    return Written(value, tuple(block.split("\n")))


def copied(text: ShowText, at: Sequence[ValuePath]) -> tuple[str, ...]:
    """Entries or steps as they are written, to be pasted: the clipboard of `PasteBlocks`.

    Parameters
    ----------
    text : ShowText
    at : sequence of paths

    Raises
    ------
    ValueError
        If there is none at a path.
    """
    found = []
    for path in at:
        row_at(text, path)
        row = text.row(path)
        found.append("\n".join(row.lines) if isinstance(row, Written) else flow_words(row))
    return tuple(found)


@dataclass(frozen=True, slots=True, kw_only=True)
class CopyBlocks(Operation):
    """Entries or steps of the file once more, in another place."""

    KIND: ClassVar[str] = "copy-blocks"
    at: tuple[ValuePath, ...]
    into: ValuePath
    before: int | None = None
    starts: tuple[str | None, ...] = ()

    @property
    def words(self) -> str:
        """What it does."""
        return f"copy {counted(len(self.at), 'block')}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        paste = PasteBlocks(
            into=self.into, blocks=copied(text, self.at), before=self.before, starts=self.starts
        )
        return paste.on(text)


@dataclass(frozen=True, slots=True, kw_only=True)
class SplitBlock(Operation):
    """A block cut in two, the second with so many beats; both dance on as the one did."""

    KIND: ClassVar[str] = "split-block"
    at: ValuePath
    first: float | str  # beats of the first
    second: float | str  # beats of the second
    shift: float | str | None = None  # where in the pattern the second starts
    home: float | None = None  # beats after which the pattern is as it was at first

    @property
    def words(self) -> str:
        """What it does."""
        return f"cut after {beats_said(self.first)}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row = row_at(text, self.at)
        if "phrase" in row or "accent" in row or "canon" in row or "repeat" in row:
            what = next(key for key in ("phrase", "accent", "canon", "repeat") if key in row)
            raise refusal(
                text, self.at, f"a block with {what!r} is not cut in two",
                "write a phrase out first, and give a block that repeats its whole length",
            )  # fmt: skip
        into, number = self.at[:-1], int(self.at[-1])
        text = text.edited(RowsIn(into, number + 1, (text.row(self.at),)))
        text = StretchBlock(at=self.at, beats=self.first).on(text)
        behind = (*into, number + 1)
        text = StretchBlock(at=behind, beats=self.second).on(text)
        keys = {"from": None, KEY: None, "note": None, "shift": self._shift}
        return text.edited(*keys_set(text, behind, keys))

    @property
    def _shift(self) -> float | str | None:
        """The shift within one time of the pattern; none where it is at its start."""
        if self.shift is None or isinstance(self.shift, str) or self.home is None:
            return self.shift
        if not self.home > 0:
            raise ValueError(f"a pattern is home after more than 0 beats, got {self.home}")
        shift = round(self.shift % self.home, _DIGITS)
        return None if shift in (0, round(self.home, _DIGITS)) else shift


def _called(row: Mapping[str, Any]) -> str:
    """What a block is called in a sentence."""
    for key in ("pattern", "phrase"):
        if row.get(key):
            return str(row[key])
    kind = next((key for key in ("link", "rest", "hold", "accent") if key in row), "block")
    return f"a {kind}" if kind != "accent" else "an accent"
