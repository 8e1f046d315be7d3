"""Where everybody stands and walks: spots, formations, and when each is taken, by which way."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, ClassVar

from sequencer.show.operations.operation import Operation, RowValues, refusal
from sequencer.show.operations.rows import keys_set, refuse_name_taken, row_at, rows_put
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import KeyNamed, TakenOut, ValueSet
from sequencer.show.text.plain_values import ValuePath

FileXY = tuple[float | str, float | str]  # as the file says it: metres, or with a unit


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveSpot(Operation):
    """Where one performer stands in a formation, and which way they face."""

    KIND: ClassVar[str] = "move-spot"
    formation: str
    who: str
    at: FileXY
    facing: float | str | None = None  # left out: as it is

    @property
    def words(self) -> str:
        """What it does."""
        return f"move {self.who} in {self.formation!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path: ValuePath = ("formations", _named(text, "formations", self.formation))
        row = row_at(text, path)
        if "spots" not in row:
            raise refusal(
                text, path, f"{self.formation!r} is a {row.get('shape')}, so nobody has a spot of their own",
                "write the formation out with a spot for each first",
            )  # fmt: skip
        keys: dict[str, Any] = {"at": list(self.at)}
        if self.facing is not None:
            keys["facing"] = self.facing
        return text.edited(*keys_set(text, (*path, "spots", self.who), keys))


@dataclass(frozen=True, slots=True, kw_only=True)
class SetFormation(Operation):
    """A formation, new or in place of the one of this name."""

    KIND: ClassVar[str] = "set-formation"
    name: str
    formation: RowValues  # as the file says it

    @property
    def words(self) -> str:
        """What it does."""
        return f"formation {self.name!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        known = text.value("formations") or {}
        key = next((each for each in known if _same(each, self.name)), self.name)
        if text.value("formations") is None:
            return text.edited(ValueSet(("formations",), {key: dict(self.formation)}))
        return text.edited(ValueSet(("formations", key), dict(self.formation)))


@dataclass(frozen=True, slots=True, kw_only=True)
class RenameFormation(Operation):
    """Another name for a formation, wherever it is taken."""

    KIND: ClassVar[str] = "rename-formation"
    old: str
    new: str

    @property
    def words(self) -> str:
        """What it does."""
        return f"call the formation {self.old!r} {self.new!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        key = _named(text, "formations", self.old)
        refuse_name_taken(text, "formations", self.new)
        uses = [
            ValueSet(("staging", k, "formation"), self.new)
            for k, row in enumerate(text.value("staging") or ())
            if isinstance(row, dict) and _same(str(row.get("formation")), self.old)
        ]
        return text.edited(*uses, KeyNamed(("formations", key), self.new))


@dataclass(frozen=True, slots=True, kw_only=True)
class DeleteFormation(Operation):
    """A formation that is never taken taken out."""

    KIND: ClassVar[str] = "delete-formation"
    name: str

    @property
    def words(self) -> str:
        """What it does."""
        return f"delete the formation {self.name!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        return text.edited(TakenOut(("formations", _named(text, "formations", self.name))))


@dataclass(frozen=True, slots=True, kw_only=True)
class PutWalk(Operation):
    """A formation taken from a moment on, with the walk that leads to it."""

    KIND: ClassVar[str] = "put-walk"
    formation: str
    start: str
    beats: float | str | None = None
    path: str | None = None
    via: Mapping[str, tuple[FileXY, ...]] = field(default_factory=dict)
    before: int | None = None  # the walk before which it is put; None is the end

    @property
    def words(self) -> str:
        """What it does."""
        return f"walk to {self.formation!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row: dict[str, Any] = {"formation": self.formation, "from": self.start}
        row |= {
            key: value for key in ("beats", "path") if (value := getattr(self, key)) is not None
        }
        if self.via:
            row["via"] = {who: [list(point) for point in way] for who, way in self.via.items()}
        return text.edited(rows_put(text, ("staging",), self.before, [row]))


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeWalk(Operation):
    """Keys of a walk set, or taken out."""

    KIND: ClassVar[str] = "change-walk"
    number: int  # in the list, from 0
    values: RowValues  # by key; null takes a key out

    @property
    def words(self) -> str:
        """What it does."""
        return f"change {', '.join(self.values)} of a walk"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row_at(text, ("staging", self.number))
        return text.edited(*keys_set(text, ("staging", self.number), self.values))


@dataclass(frozen=True, slots=True, kw_only=True)
class SetWay(Operation):
    """The points through which one performer walks; none for a straight way."""

    KIND: ClassVar[str] = "set-way"
    number: int  # of the walk, from 0
    who: str
    points: tuple[FileXY, ...]

    @property
    def words(self) -> str:
        """What it does."""
        return f"lead {self.who} another way" if self.points else f"lead {self.who} straight"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path: ValuePath = ("staging", self.number)
        via = row_at(text, path).get("via") or {}
        if self.points:
            points = [list(point) for point in self.points]
            if via:
                return text.edited(ValueSet((*path, "via", self.who), points))
            return text.edited(ValueSet((*path, "via"), {self.who: points}))
        if self.who not in via:
            return text
        return text.edited(TakenOut((*path, "via", self.who) if len(via) > 1 else (*path, "via")))


@dataclass(frozen=True, slots=True, kw_only=True)
class DeleteWalk(Operation):
    """A walk taken out: everybody stays in the formation before it."""

    KIND: ClassVar[str] = "delete-walk"
    number: int  # in the list, from 0

    @property
    def words(self) -> str:
        """What it does."""
        return "delete a walk"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row_at(text, ("staging", self.number))
        return text.edited(TakenOut(("staging", self.number)))


def _named(text: ShowText, heading: str, name: str) -> str:
    """A name as the file writes it."""
    for key in text.value(heading) or ():
        if _same(key, name):
            return str(key)
    raise ValueError(f"there is no {name!r} under {heading}")


def _same(one: str, other: str) -> bool:
    return " ".join(one.split()) == " ".join(other.split())
