"""Venue, fire and all other headings, as forms fill them in; the count of the song, put right."""

from dataclasses import dataclass
from typing import ClassVar, Literal

from pydantic import JsonValue

from sequencer.show.operations.operation import Operation, RowValues, refusal
from sequencer.show.operations.rows import keys_set, names_in, row_at, rows_put, spoken
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import TakenOut
from sequencer.show.text.plain_values import ValuePath

Heading = Literal[
    "venue", "fire", "stop_call", "emergency", "weather", "limits", "rules", "wishes", "drift"
]
ItemList = Literal["audience", "ceilings", "scenery", "exits", "extinguishers", "lit", "entrances"]

_TITLES = ("title", "version", "date", "night", "begins", "type_file")
_CORRECTIONS: ValuePath = ("track", "corrections")


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeTitles(Operation):
    """Title, version and dates of the show."""

    KIND: ClassVar[str] = "change-titles"
    values: RowValues  # by key; null takes a key out

    @property
    def words(self) -> str:
        """What it does."""
        return f"change {', '.join(self.values)}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        if other := [key for key in self.values if key not in _TITLES]:
            raise ValueError(f"{other[0]} is none of {', '.join(_TITLES)}")
        return text.edited(*keys_set(text, (), self.values))


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeHeading(Operation):
    """Keys below a heading set, or taken out."""

    KIND: ClassVar[str] = "change-heading"
    heading: Heading
    values: RowValues  # by key; null takes a key out

    @property
    def words(self) -> str:
        """What it does."""
        return f"{self.heading.replace('_', ' ')}: change {', '.join(self.values)}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        return text.edited(*keys_set(text, (self.heading,), self.values))


@dataclass(frozen=True, slots=True, kw_only=True)
class DeleteHeading(Operation):
    """A heading taken out with all below it, so that the show is as if nothing were said."""

    KIND: ClassVar[str] = "delete-heading"
    heading: Heading

    @property
    def words(self) -> str:
        """What it does."""
        return f"delete {self.heading.replace('_', ' ')}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        return text.edited(TakenOut((self.heading,)))


@dataclass(frozen=True, slots=True, kw_only=True)
class PutItem(Operation):
    """A thing of the venue, a time in which somebody is lit, or an entrance or exit."""

    KIND: ClassVar[str] = "put-item"
    into: ItemList
    item: RowValues  # as the file says it
    before: int | None = None  # the item before which it is put; None is the end

    @property
    def words(self) -> str:
        """What it does."""
        if self.into != "entrances":
            return f"add to {self.into}"
        who = " and ".join(names_in(self.item.get("who")))
        if "comes_on" in self.item:
            return f"{who} on at {self.item['comes_on']}"
        return f"{who} off at {self.item.get('goes_off')}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path = _list_of(self.into)
        if self.into == "lit" and text.value("fire") is None:
            raise refusal(text, (), "nothing says what burns", "fill in the fuel first")
        return text.edited(rows_put(text, path, self.before, [dict(self.item)]))


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeItem(Operation):
    """Keys of such a thing set, or taken out."""

    KIND: ClassVar[str] = "change-item"
    into: ItemList
    number: int  # in the list, from 0
    values: RowValues  # by key; null takes a key out

    @property
    def words(self) -> str:
        """What it does."""
        return f"change {', '.join(self.values)} of {spoken((*_list_of(self.into), self.number))}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path = (*_list_of(self.into), self.number)
        row_at(text, path)
        return text.edited(*keys_set(text, path, self.values))


@dataclass(frozen=True, slots=True, kw_only=True)
class DeleteItem(Operation):
    """Such a thing taken out."""

    KIND: ClassVar[str] = "delete-item"
    into: ItemList
    number: int  # in the list, from 0

    @property
    def words(self) -> str:
        """What it does."""
        return f"delete {spoken((*_list_of(self.into), self.number))}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path = (*_list_of(self.into), self.number)
        row_at(text, path)
        return text.edited(TakenOut(path))


def _list_of(into: ItemList) -> ValuePath:
    if into == "entrances":
        return ("entrances",)
    return ("fire", "lit") if into == "lit" else ("venue", into)


@dataclass(frozen=True, slots=True, kw_only=True)
class CorrectCount(Operation):
    """The count of the song put right: metre, the one, half or double, a shift, beats of one's own."""

    KIND: ClassVar[str] = "correct-count"
    values: RowValues  # by key; null takes a key out

    @property
    def words(self) -> str:
        """What it does."""
        return f"correct the count: {', '.join(self.values)}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        if "sections" in self.values:
            raise ValueError("sections are put, changed and deleted one by one")
        return text.edited(*keys_set(text, _CORRECTIONS, self.values))


@dataclass(frozen=True, slots=True, kw_only=True)
class PutSection(Operation):
    """A section of the song begins at a moment."""

    KIND: ClassVar[str] = "put-section"
    start: str
    name: str
    before: int | None = None  # the section before which it is put; None is the end

    @property
    def words(self) -> str:
        """What it does."""
        return f"section {self.name!r} from {self.start}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        row: dict[str, JsonValue] = {"from": self.start, "name": self.name}
        if not isinstance(text.value(*_CORRECTIONS), dict):
            return text.edited(*keys_set(text, _CORRECTIONS, {"sections": [row]}))
        return text.edited(rows_put(text, (*_CORRECTIONS, "sections"), self.before, [row]))


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeSection(Operation):
    """Another beginning or name of a section."""

    KIND: ClassVar[str] = "change-section"
    number: int  # in the list, from 0
    start: str | None = None
    name: str | None = None

    @property
    def words(self) -> str:
        """What it does."""
        return f"section {self.name!r}" if self.start is None else f"section from {self.start}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path = (*_CORRECTIONS, "sections", self.number)
        row_at(text, path)
        given = {"from": self.start, "name": self.name}
        values = {key: value for key, value in given.items() if value is not None}
        return text.edited(*keys_set(text, path, values))


@dataclass(frozen=True, slots=True, kw_only=True)
class DeleteSection(Operation):
    """A section taken out: the one before it goes on."""

    KIND: ClassVar[str] = "delete-section"
    number: int  # in the list, from 0

    @property
    def words(self) -> str:
        """What it does."""
        return "delete a section"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path = (*_CORRECTIONS, "sections")
        row_at(text, (*path, self.number))
        return text.edited(TakenOut((*path, self.number)))
