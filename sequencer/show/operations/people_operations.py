"""Cast and crew: who is in the show, what they hold, where they are named."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import ClassVar, Literal

from sequencer.show.operations.operation import Operation, RowValues, refusal
from sequencer.show.operations.rows import keys_set, names_in, rows_put, without_nobody
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import KeyNamed, TakenOut, TextEdit, ValueSet
from sequencer.show.text.plain_values import ValuePath

_Group = Literal["cast", "crew"]


@dataclass(frozen=True, slots=True, kw_only=True)
class AddPerformer(Operation):
    """A new performer, with a spot in every formation that gives each their own."""

    KIND: ClassVar[str] = "add-performer"
    performer: RowValues  # as the file says it
    spots: Mapping[str, RowValues] = field(default_factory=dict)  # by formation
    before: int | None = None  # the performer before whom they are put; None is the end

    @property
    def words(self) -> str:
        """What it does."""
        return f"add {self.performer.get('name')}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        name = str(self.performer.get("name"))
        edits: list[TextEdit] = [rows_put(text, ("cast",), self.before, [dict(self.performer)])]
        formations = text.value("formations") or {}
        for key in self.spots:
            if not isinstance(text.value("formations", key, "spots"), dict):
                raise ValueError(f"there are no spots in a formation {key!r}")
        for key, formation in formations.items():
            if isinstance(formation, dict) and isinstance(formation.get("spots"), dict):
                if key not in self.spots:
                    raise refusal(
                        text, ("formations", key), f"nothing says where {name} stands in {key!r}",
                        "give a spot in each formation",
                    )  # fmt: skip
                edits.append(ValueSet(("formations", key, "spots", name), dict(self.spots[key])))
            elif isinstance(formation, dict) and "order" in formation:
                order = [*names_in(formation["order"]), name]
                edits.append(ValueSet(("formations", key, "order"), order))
        return text.edited(*edits)


@dataclass(frozen=True, slots=True, kw_only=True)
class AddCrew(Operation):
    """A new member of the crew."""

    KIND: ClassVar[str] = "add-crew"
    member: RowValues  # as the file says it
    before: int | None = None

    @property
    def words(self) -> str:
        """What it does."""
        return f"add {self.member.get('name')} to the crew"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        return text.edited(rows_put(text, ("crew",), self.before, [dict(self.member)]))


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangePerson(Operation):
    """What the file says about a performer or a member of the crew: body, prop, post, duty, all but the name."""

    KIND: ClassVar[str] = "change-person"
    group: _Group
    name: str
    values: RowValues  # by key; null takes a key out

    @property
    def words(self) -> str:
        """What it does."""
        return f"change {', '.join(self.values)} of {self.name}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path = _person(text, self.group, self.name)
        if "name" in self.values:
            raise refusal(text, path, "a name stands in other places too", "rename them instead")
        return text.edited(*keys_set(text, path, self.values))


@dataclass(frozen=True, slots=True, kw_only=True)
class RenamePerson(Operation):
    """Another name for a performer or a member of the crew, wherever they are named."""

    KIND: ClassVar[str] = "rename-person"
    group: _Group
    name: str
    new: str

    @property
    def words(self) -> str:
        """What it does."""
        return f"call {self.name} {self.new}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path = _person(text, self.group, self.name)
        for group in ("cast", "crew"):
            for k, row in enumerate(text.value(group) or ()):
                taken = isinstance(row, dict) and names_in(row.get("name")) == names_in(self.new)
                if taken and (group, k) != path:
                    raise refusal(
                        text, (group, k), f"{self.new} is here already", "choose another name"
                    )
        edits: list[TextEdit] = [ValueSet((*path, "name"), self.new)]
        for place, key in _mentions(text, self.group, self.name):
            if key is not None:
                edits.append(KeyNamed((*place, key), self.new))
                continue
            old = text.value(*place)
            new = [
                self.new if names_in(each) == names_in(self.name) else each
                for each in names_in(old)
            ]
            edits.append(ValueSet(place, new if isinstance(old, list) else self.new))
        for k, row in enumerate(text.value("tonight", "stand_ins") or ()):
            if isinstance(row, dict) and names_in(row.get("name")) == names_in(self.name):
                edits.append(ValueSet(("tonight", "stand_ins", k, "name"), self.new))
        return text.edited(*edits)


@dataclass(frozen=True, slots=True, kw_only=True)
class RemovePerson(Operation):
    """A performer or a member of the crew taken out of the show, wherever they are named.

    What only they danced goes with them; whoever watched only them watches everybody.
    """

    KIND: ClassVar[str] = "remove-person"
    group: _Group
    name: str

    @property
    def words(self) -> str:
        """What it does."""
        return f"take {self.name} out"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        edits: dict[ValuePath, TextEdit] = {}
        path = _person(text, self.group, self.name)
        edits[path] = TakenOut(path)
        for place, key in _mentions(text, self.group, self.name):
            if key is not None:
                gone = (*place, key) if len(text.value(*place)) > 1 else place
                edits[gone] = TakenOut(gone)
                continue
            left = [
                each for each in names_in(text.value(*place)) if each != " ".join(self.name.split())
            ]
            if left:
                edits[place] = ValueSet(place, left)
            else:
                # Nobody dances it any more, or there is no part to be taken.
                own = place[:-1] if place[-1] in {"who", "for"} else place
                edits[own] = TakenOut(own)
        return without_nobody(text.edited(*_outermost(edits)))


def _outermost(edits: Mapping[ValuePath, TextEdit]) -> list[TextEdit]:
    """Edits without those within something that is taken out."""
    gone = {path for path, edit in edits.items() if isinstance(edit, TakenOut)}
    return [
        edit
        for path, edit in edits.items()
        if not any(path[:n] in gone for n in range(1, len(path)))
    ]


def _person(text: ShowText, group: _Group, name: str) -> ValuePath:
    for k, row in enumerate(text.value(group) or ()):
        if isinstance(row, dict) and names_in(row.get("name")) == names_in(name):
            return group, k
    raise ValueError(f"there is no {name!r} in the {group}")


def _mentions(text: ShowText, group: _Group, name: str) -> Iterator[tuple[ValuePath, str | None]]:
    """Where a person is named outside their own record: a name or a list of names, or a key under a path."""
    wanted = " ".join(name.split())
    other: _Group = "crew" if group == "cast" else "cast"
    both = any(
        names_in(row.get("name")) == [wanted]
        for row in text.value(other) or () if isinstance(row, dict)
    )  # fmt: skip
    places = list(_of_the_cast(text)) if group == "cast" else []
    places += [] if both else list(_of_anybody(text))
    for path in places:
        value = text.value(*path)
        if isinstance(value, dict):
            yield from ((path, key) for key in value if " ".join(key.split()) == wanted)
        elif wanted in names_in(value):
            yield path, None


def _of_the_cast(text: ShowText) -> Iterator[ValuePath]:
    for k in range(len(text.value("timeline") or ())):
        yield from ((("timeline", k, key)) for key in ("who", "mirror"))
    for key in text.value("formations") or ():
        yield from ((("formations", key, own)) for own in ("spots", "order"))
    for k in range(len(text.value("staging") or ())):
        yield ("staging", k, "via")
    for k in range(len(text.value("entrances") or ())):
        yield ("entrances", k, "who")
    for k in range(len(text.value("fire", "lit") or ())):
        yield ("fire", "lit", k, "who")
    for k in range(len(text.value("crew") or ())):
        yield ("crew", k, "watches")
    yield ("wishes", "lead")


def _of_anybody(text: ShowText) -> Iterator[ValuePath]:
    for k in range(len(text.value("fire", "lit") or ())):
        yield from (("fire", "lit", k, key) for key in ("lit_by", "put_out_by"))
    yield ("fire", "handling", "lit_by")
    yield ("tonight", "away")
    for k in range(len(text.value("tonight", "stand_ins") or ())):
        yield ("tonight", "stand_ins", k, "for")
    yield ("stop_call", "callers")
    yield ("stop_call", "does")
