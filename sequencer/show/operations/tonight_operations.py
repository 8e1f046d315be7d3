"""Who is there tonight: somebody away, somebody in their place, everybody there again. The show itself stays as it is."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from sequencer.show.operations.operation import Operation, RowValues
from sequencer.show.operations.rows import names_in, without_nobody
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import RowsIn, TakenOut, ValueSet


@dataclass(frozen=True, slots=True, kw_only=True)
class SetAway(Operation):
    """Somebody of the cast or crew who is away tonight; their part falls out."""

    KIND: ClassVar[str] = "set-away"
    name: str

    @property
    def words(self) -> str:
        """What it does."""
        return f"{self.name} is away tonight"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        if _plain(self.name) in _away(text):
            raise ValueError(f"{self.name} is away already")
        text = _added(text, "away", self.name)
        return _left(text, [k for k, row in enumerate(_stand_ins(text)) if _of(row, self.name)], ())


@dataclass(frozen=True, slots=True, kw_only=True)
class SetStandIn(Operation):
    """Somebody else who takes a part of the cast or crew tonight."""

    KIND: ClassVar[str] = "set-stand-in"
    part: str
    person: RowValues  # as the file says it, without `for`

    @property
    def words(self) -> str:
        """What it does."""
        return f"{self.person.get('name')} takes the part of {self.part} tonight"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row = {"for": self.part, **self.person}
        found = [k for k, old in enumerate(_stand_ins(text)) if _of(old, self.part)]
        if found:
            return text.edited(ValueSet(("tonight", "stand_ins", found[0]), row))
        text = _added(text, "stand_ins", row)
        return _left(
            text, (), [k for k, name in enumerate(_away(text)) if name == _plain(self.part)]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SetThere(Operation):
    """Somebody who is there again, in their own part; everybody if no name is given."""

    KIND: ClassVar[str] = "set-there"
    name: str | None = None

    @property
    def words(self) -> str:
        """What it does."""
        return "everybody is there" if self.name is None else f"{self.name} is there"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        if self.name is None:
            return text if text.value("tonight") is None else text.edited(TakenOut(("tonight",)))
        own = _plain(self.name)
        away = [k for k, name in enumerate(_away(text)) if name == own]
        stand_ins = [k for k, row in enumerate(_stand_ins(text)) if _of(row, own)]
        return without_nobody(_left(text, stand_ins, away))


def _plain(name: str) -> str:
    return " ".join(name.split())


def _away(text: ShowText) -> list[str]:
    return names_in(text.value("tonight", "away"))


def _stand_ins(text: ShowText) -> list[Any]:
    return list(text.value("tonight", "stand_ins") or ())


def _of(row: Any, part: str) -> bool:
    """Whether a stand-in takes a part."""
    return isinstance(row, dict) and names_in(row.get("for")) == [_plain(part)]


def _added(text: ShowText, key: str, item: Any) -> ShowText:
    """The text with one more of those who are away, or stand in; the others stay as they are written."""
    old = text.value("tonight", key)
    if isinstance(text.value("tonight"), dict):
        if isinstance(old, list) and old:
            return text.edited(RowsIn(("tonight", key), len(old), (item,)))
        return text.edited(ValueSet(("tonight", key), [*names_in(old), item]))
    return text.edited(ValueSet(("tonight",), {key: [item]}))


def _left(text: ShowText, stand_ins: Sequence[int], away: Sequence[int]) -> ShowText:
    """The text without some of them, and without what is empty then."""
    for key, gone in (("stand_ins", stand_ins), ("away", away)):
        if not gone:
            continue
        old = text.value("tonight", key)
        if isinstance(old, list) and len(gone) < len(old):
            text = text.edited(*(TakenOut(("tonight", key, k)) for k in gone))
        elif len(text.value("tonight")) > 1:
            text = text.edited(TakenOut(("tonight", key)))
        else:
            text = text.edited(TakenOut(("tonight",)))
    return text
