"""Who is there tonight: somebody away, somebody in their place, everybody there again. The show itself stays as it is."""

from dataclasses import dataclass
from typing import Any, ClassVar

from sequencer.show.operations.operation import Operation, RowValues
from sequencer.show.operations.rows import keys_set, names_in
from sequencer.show.plain_edits import TakenOut, ValueSet
from sequencer.show.show_text import ShowText


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
        if " ".join(self.name.split()) in names_in(text.value("tonight", "away")):
            raise ValueError(f"{self.name} is away already")
        away, stand_ins = _without(text, self.name)
        return _written(text, [*away, self.name], stand_ins)


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
        away, stand_ins = _without(text, self.part)
        return _written(text, away, [*stand_ins, {"for": self.part, **self.person}])


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
            return _written(text, [], [])
        return _written(text, *_without(text, self.name))


def _without(text: ShowText, part: str) -> tuple[list[str], list[dict[str, Any]]]:
    """Who else is away, and who else stands in."""
    own = " ".join(part.split())
    away = [name for name in names_in(text.value("tonight", "away")) if name != own]
    rows = text.value("tonight", "stand_ins") or []
    return away, [row for row in rows if names_in(row.get("for")) != [own]]


def _written(text: ShowText, away: list[str], stand_ins: list[dict[str, Any]]) -> ShowText:
    old = text.value("tonight")
    if not away and not stand_ins:
        return text if old is None else text.edited(TakenOut(("tonight",)))
    values: dict[str, Any] = {"away": away or None, "stand_ins": stand_ins or None}
    if not isinstance(old, dict):
        return text.edited(ValueSet(("tonight",), {key: own for key, own in values.items() if own}))
    edits = keys_set(text, ("tonight",), values)
    # Set first: a heading whose only key is taken out cannot be written key by key.
    for kind in (ValueSet, TakenOut):
        text = text.edited(*(edit for edit in edits if isinstance(edit, kind)))
    return text
