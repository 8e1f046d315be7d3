"""Names for a schema: the patterns, phrases, formations and people that an editor may offer while somebody types."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from sequencer.motion.patterns.library import patterns
from sequencer.show.file_records.field_kinds import COUNTED_MOMENT, MOMENT_PATTERN
from sequencer.timing.song import numbered

_ALL = "all"
_NUMBER = re.compile(r"\d+(\.\d+)?")
_NAMED = "a name of this show; renew its schema when you add one: sequencer new SHOW --schema"
# Where a name stands: record, key, and of what it is a name; `*` for keys that are names themselves.
_PLACES: tuple[tuple[str, str, str], ...] = (
    ("Step", "pattern", "pattern"),
    ("Entry", "pattern", "pattern"),
    ("HandPart", "pattern", "pattern"),
    ("Step", "phrase", "phrase"),
    ("Entry", "phrase", "phrase"),
    ("Staging", "formation", "formation"),
    ("Staging", "via", "*cast"),
    ("Formation", "spots", "*cast"),
    ("Formation", "order", "cast"),
    ("Entry", "who", "dancing"),
    ("Entry", "mirror", "dancing"),
    ("Entrance", "who", "dancing"),
    ("LitSpan", "who", "dancing"),
    ("CrewMember", "watches", "dancing"),
    ("LitSpan", "lit_by", "crew"),
    ("LitSpan", "put_out_by", "crew"),
    ("Handling", "lit_by", "crew"),
    ("Tonight", "away", "people"),
    ("StandIn", "for", "people"),
)
_UNKNOWN = {
    "pattern": "no pattern that this show knows: `sequencer patterns` lists them",
    "phrase": "no phrase of this show",
    "formation": "no formation of this show",
    "cast": "nobody in the cast has this name",
    "dancing": "nobody in the cast has this name",
    "crew": "nobody in the crew has this name",
    "people": "nobody in the cast or crew has this name",
}  # what an editor says of a name that is none
_OF_SECTIONS = frozenset({"SectionMark", "SteadyRecord", "CorrectionRecord"})
_MOST_NAMED = 12  # in a message
_LISTS = frozenset({"cast", "dancing", "people"})  # one name, or a list of them


@dataclass(frozen=True, slots=True, kw_only=True)
class SchemaNames:
    """What a show names."""

    patterns: tuple[str, ...]
    phrases: tuple[str, ...]
    formations: tuple[str, ...]
    cast: tuple[str, ...]
    crew: tuple[str, ...]
    sections: tuple[str, ...] = ()  # as moments name them; none: those that were heard

    def of(self, kind: str) -> tuple[str, ...]:
        """The names of a kind, as `_PLACES` calls them."""
        return {
            "pattern": self.patterns, "phrase": self.phrases, "formation": self.formations,
            "cast": self.cast, "dancing": (_ALL, *self.cast), "crew": self.crew,
            "people": (*self.cast, *self.crew),
        }[kind]  # fmt: skip


def names_of(values: Mapping[str, Any], book: Iterable[str]) -> SchemaNames:
    """The names in a show file's plain values; what is no list or has no name is passed over.

    Parameters
    ----------
    values : mapping
        As the file says them, whether or not they are a show.
    book : iterable of str
        Names of all patterns that it can dance.
    """

    def listed(key: str) -> tuple[str, ...]:
        rows = values.get(key)
        rows = rows if isinstance(rows, list) else []
        return _plain(row.get("name") for row in rows if isinstance(row, dict))

    def keyed(key: str) -> tuple[str, ...]:
        found = values.get(key)
        return _plain(found if isinstance(found, dict) else ())

    return SchemaNames(
        patterns=tuple(book), phrases=keyed("phrases"), formations=keyed("formations"),
        cast=listed("cast"), crew=listed("crew"), sections=_sections(values),
    )  # fmt: skip


def _sections(values: Mapping[str, Any]) -> tuple[str, ...]:
    """Sections that the file names, numbered where a name returns."""
    found: Any = values
    for key in ("track", "corrections", "sections"):
        found = found.get(key) if isinstance(found, dict) else None
    rows = found if isinstance(found, list) else []
    labels = [_plain([row["name"]]) for row in rows if isinstance(row, dict) and "name" in row]
    return numbered([name for label in labels for name in label])


def _plain(names: Iterable[Any]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(" ".join(str(name).split()) for name in names if name is not None))


def with_names(schema: dict[str, Any], names: SchemaNames) -> None:
    """Write a show's names into a schema of show files, in place."""
    if names.sections:
        _with_sections(schema, names.sections)
    for record, key, kind in _PLACES:
        field = schema["$defs"][record]["properties"][key]
        kind_of_name = kind.removeprefix("*")
        chosen = _chosen(names.of(kind_of_name), kind_of_name)
        if kind.startswith("*"):
            for each in (field, *field.get("anyOf", ())):
                if each.get("type") == "object":
                    each["propertyNames"] = chosen
            continue
        is_optional = {"type": "null"} in field.get("anyOf", ())
        forms = [chosen]
        if kind in _LISTS:
            forms.append({"type": "array", "items": chosen})
        forms += [{"type": "null"}] if is_optional else []
        field.pop("type", None)
        title = field.pop(
            "title", key
        )  # of the forms, since an editor shows that of the key once for each
        forms = [{**form, "title": title} for form in forms]
        if field.get("default", "") is None:
            del field["default"]  # nothing that an editor should offer
        field["anyOf"] = forms
        field["description"] = f"{field.get('description', '')}; {_NAMED}".lstrip("; ")


def _with_sections(schema: dict[str, Any], names: Sequence[str]) -> None:
    """Let moments name only sections that there are; those that say what the sections are name heard ones."""
    told = f"no such section, and no moment as bar.beat (17.1) or m:ss.s (1:02.5); the sections: {', '.join(names)}"
    known = "|".join(re.sub(r"([.^$*+?()\[\]{}|\\/])", r"\\\1", name) for name in names)
    pattern = rf"^\s*({COUNTED_MOMENT}|((start|end) of )?({known}))\s*$"
    records = (each for key, each in schema["$defs"].items() if key not in _OF_SECTIONS)
    for record in records:
        for field in record.get("properties", {}).values():
            for form in (field, *field.get("anyOf", ())):
                if form.get("pattern") == MOMENT_PATTERN:
                    form |= {"pattern": pattern, "patternErrorMessage": told}


def _chosen(names: Sequence[str], kind: str) -> dict[str, Any]:
    """One of some names; a name that looks like a number may be written without quotation marks."""
    digits = [name for name in names if _NUMBER.fullmatch(name)]
    numbers = [int(name) if name.isdigit() else float(name) for name in digits]
    chosen: dict[str, Any] = {"enum": [*names, *numbers], "errorMessage": _UNKNOWN[kind]}
    if kind == "pattern":
        return {**chosen, **_summaries(names)}
    if 0 < len(names) <= _MOST_NAMED:
        chosen["errorMessage"] += f": {', '.join(names)}"
    return chosen


def _summaries(names: Sequence[str]) -> dict[str, Any]:
    """What each pattern is, for editors that show it beside the name; of a show's own patterns nothing is known here."""
    book = patterns()
    return {"enumDescriptions": [book[name].summary if name in book else "" for name in names]}


def with_vocabulary(schema: dict[str, Any]) -> None:
    """Let a schema of show files offer and check the built-in patterns, in a show that brings none of its own, in place."""
    names = [*patterns()]
    known = {**_summaries(names), "enum": [*names, None], "errorMessage": _UNKNOWN["pattern"]}
    hand = {"properties": {"pattern": known}}
    step = {"properties": {"pattern": known, "left": hand, "right": hand}}
    schema["if"] = {"anyOf": [{"required": ["patterns"]}, {"required": ["pattern_files"]}]}
    schema["else"] = {
        "properties": {
            "timeline": {"items": step},
            "phrases": {"additionalProperties": {"items": step}},
        }
    }
