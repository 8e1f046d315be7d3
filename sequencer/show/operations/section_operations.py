"""The sections of the song, all at once: named, moved, split and joined, and found again wherever they are named."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, ClassVar

from sequencer.show.operations.operation import Operation, refusal
from sequencer.show.operations.rows import keys_set
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import KeyNamed, RowsIn, TakenOut, TextEdit, ValueSet
from sequencer.show.text.plain_values import ValuePath
from sequencer.timing.position import SectionEdge, parse_moment

_CORRECTIONS: ValuePath = ("track", "corrections")
_SECTIONS: ValuePath = (*_CORRECTIONS, "sections")
_BEFORE = "before "  # of a wished stop


@dataclass(frozen=True, slots=True, kw_only=True)
class SetSections(Operation):
    """All sections of the song, instead of those that were heard or were given before; moments that name one follow it."""

    KIND: ClassVar[str] = "set-sections"
    sections: tuple[tuple[str, str], ...]  # when each begins, and its name
    renamed: tuple[tuple[str, str], ...] = ()  # a section's name as moments say it, and its new one
    gone: tuple[str, ...] = ()  # names that no section has any more: no moment may name them
    said: str = ""  # what it does, in words

    @property
    def words(self) -> str:
        """What it does."""
        return self.said or f"set {len(self.sections)} sections"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        if not self.sections:
            raise refusal(
                text, _SECTIONS if text.value(*_SECTIONS) else (), "no section would be left",
                "leave one",
            )  # fmt: skip
        new = dict(self.renamed)
        mentions: list[TextEdit] = []
        for path in _moments(text):
            name = _section_named(text.value(*path))
            if name in self.gone:
                raise refusal(
                    text, path, f"this names {name}, and there would be no such section any more",
                    "give this another moment first",
                )  # fmt: skip
            if name in new:
                mentions.append(_renamed_moment(path, text.value(*path), new[name]))
        return text.edited(*self._rows(text), *mentions, *_renamed_wishes(text, new))

    def _rows(self, text: ShowText) -> list[TextEdit]:
        rows: list[Any] = [{"from": start, "name": name} for start, name in self.sections]
        old = text.value(*_SECTIONS)
        if not isinstance(old, list) or not old:
            return keys_set(text, _CORRECTIONS, {"sections": rows})
        first, last = _alike(old, rows), 0
        if first < min(len(old), len(rows)):
            last = min(_alike(old[::-1], rows[::-1]), min(len(old), len(rows)) - first)
        between, put = range(first, len(old) - last), rows[first : len(rows) - last]
        edits: list[TextEdit] = []
        for k, row in zip(between, put, strict=False):
            if not isinstance(old[k], dict):
                edits.append(ValueSet((*_SECTIONS, k), row))
                continue
            edits += [
                ValueSet((*_SECTIONS, k, key), own)
                for key, own in row.items()
                if str(old[k].get(key)) != own
            ]
        edits += [TakenOut((*_SECTIONS, k)) for k in between[len(put) :]]
        if len(put) > len(between):
            edits.append(RowsIn(_SECTIONS, first + len(between), tuple(put[len(between) :])))
        return edits


def _alike(old: list[Any], new: list[dict[str, str]]) -> int:
    """How many rows say the same, from the first on."""
    for k, (a, b) in enumerate(zip(old, new, strict=False)):
        if not isinstance(a, dict) or any(str(a.get(key)) != own for key, own in b.items()):
            return k
    return min(len(old), len(new))


def _moments(text: ShowText) -> Iterator[ValuePath]:
    """Where the file may name a section as a moment."""
    lists: dict[ValuePath, tuple[str, ...]] = {
        ("timeline",): ("from", "until", "accent"),
        ("staging",): ("from",),
        ("entrances",): ("comes_on", "goes_off"),
        ("fire", "lit"): ("from", "until"),
    }
    for path, keys in lists.items():
        for k, row in enumerate(text.value(*path) or ()):
            yield from ((*path, k, key) for key in keys if isinstance(row, dict) and key in row)


def _section_named(value: Any) -> str:
    """The section that a moment names; nothing if it names none."""
    try:
        moment = parse_moment(str(value))
    except ValueError:
        return ""
    return moment.name if isinstance(moment, SectionEdge) else ""


def _renamed_moment(path: ValuePath, value: Any, name: str) -> TextEdit:
    words = str(value).strip()
    edge = next((each for each in ("start of ", "end of ") if words.startswith(each)), "")
    return ValueSet(path, edge + name)


def _renamed_wishes(text: ShowText, new: dict[str, str]) -> Iterator[TextEdit]:
    character = text.value("wishes", "character")
    for key in character if isinstance(character, dict) else ():
        if key in new and new[key] not in character:
            yield KeyNamed(("wishes", "character", key), new[key])
    path: ValuePath = ("wishes", "moves", "stop")
    stops = text.value(*path)
    for k, each in enumerate(stops if isinstance(stops, list) else [stops]):
        name = str(each).removeprefix(_BEFORE).strip()
        if str(each).startswith(_BEFORE) and name in new:
            yield ValueSet((*path, k) if isinstance(stops, list) else path, _BEFORE + new[name])
