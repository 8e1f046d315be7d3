"""Reads a show file into a Show; every fault is reported with its line, column and a fix."""

import difflib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo

from sequencer.errors import InputError, InputErrors
from sequencer.show.fact_names import unknown_facts
from sequencer.show.file_records.evening import Role
from sequencer.show.file_records.performer_record import Performer
from sequencer.show.file_records.record import Record
from sequencer.show.model import Show
from sequencer.show.outside_files import outside_files
from sequencer.show.text.document import Document, read_document
from sequencer.show.text.plain_values import PathKey
from sequencer.show.tonight import as_tonight, parts_of
from sequencer.show.tonight_faults import tonight_faults
from sequencer.show.unseen_texts import unseen_texts
from sequencer.units import QuantityError

MOST_SHOWN = 12  # faults reported at once
DEEPEST_PHRASE = 50  # levels of nested phrases

_MENDS = {
    "missing": "add it",
    "literal_error": "use one of these words",
    "string_type": "write text",
    "int_parsing": "write a whole number",
    "int_type": "write a whole number",
    "int_from_float": "write a whole number",
    "float_parsing": "write a number",
    "float_type": "write a number",
    "bool_parsing": "write true or false",
    "bool_type": "write true or false",
    "tuple_type": "write a list: one `- ` line for each item, or [a, b]",
    "list_type": "write a list: one `- ` line for each item, or [a, b]",
    "dict_type": "write keys with values, one per line",
    "model_type": "write keys with values, one per line",
    "model_attributes_type": "write keys with values, one per line",
    "too_short": "add what is missing",
    "too_long": "shorten it",
}
_A_LIST, _KEYS = "is not a list", "is not a set of keys with values"
# What is said of a value of the wrong kind, in place of the validator's words.
_NOT = {
    "string_type": "is not text",
    "int_parsing": "is not a whole number",
    "int_type": "is not a whole number",
    "int_from_float": "is not a whole number",
    "float_parsing": "is not a number",
    "float_type": "is not a number",
    "finite_number": "is not a number that can be counted with",
    "bool_parsing": "is neither true nor false",
    "bool_type": "is neither true nor false",
    "tuple_type": _A_LIST,
    "list_type": _A_LIST,
    "dict_type": _KEYS,
    "model_type": _KEYS,
    "model_attributes_type": _KEYS,
}


@dataclass(frozen=True, slots=True)
class ReadShow:
    """A show and the document it was read from."""

    show: Show  # as it is danced tonight
    document: Document
    written: Show  # with the whole cast, as the file says it
    parts: tuple[Performer, ...]  # of the whole cast, each with the body of who dances it tonight

    def __repr__(self) -> str:
        return f"<ReadShow {self.document.file}: {self.show!r}>"

    def fault(
        self, code: str, path: Sequence[PathKey], what: str, mend: str, why: str = ""
    ) -> InputError:
        """An error at the position of `path` in the file."""
        return InputError(code, self.document.place(*path), what, mend, why)

    def cast_path(self, who: str) -> tuple[PathKey, ...]:
        """Where the file says something about a performer of tonight: their own entry, or that of who stands in."""
        stands_in = self.written.tonight.stand_ins if self.written.tonight else ()
        for k, each in enumerate(stands_in):
            if each.part == who:
                return ("tonight", "stand_ins", k)
        return ("cast", self.written.names.index(who))


def read_show(path: Path) -> ReadShow:
    """Read and validate a show file.

    Raises
    ------
    InputError
        For one fault, InputErrors for several: file not found, not YAML, an unknown key, an invalid value,
        a name that is not in the cast, a file in a place that is not allowed.
    """
    return show_from_document(read_document(path))


def show_from_document(document: Document, *, before: ReadShow | None = None) -> ReadShow:
    """Validate a parsed document.

    Parameters
    ----------
    document : Document
    before : ReadShow, optional
        An earlier reading: values that are the same objects in both documents keep their records.

    Raises
    ------
    InputError
        As `read_show`.
    """
    if not isinstance(document.values, dict):
        raise InputError(
            "not-a-show", document.place(), "a show file consists of keys with values",
            "start one with `sequencer new`",
        )  # fmt: skip
    values = document.values if before is None else _with_records(document.values, before)
    try:
        show = Show.model_validate(values)
    except ValidationError as error:
        if before is not None:
            return show_from_document(document)  # its faults are told by what the file says
        raise _collected(
            [_located(document, fault) for fault in _root_causes(error.errors())]
        ) from None
    read = ReadShow(show, document, show, show.cast)
    if faults := [*_name_faults(read), *outside_files(document, show), *unseen_texts(document)]:
        raise _collected(faults)
    if show.tonight is None:
        return read
    parts = parts_of(show)
    return replace(read, show=as_tonight(show, parts), parts=parts)


def _with_records(values: dict[str, Any], before: ReadShow) -> dict[str, Any]:
    """The headings, with records of an earlier reading in place of values that it has validated."""
    old = before.document.values
    return {
        key: _known(value, old.get(key), getattr(before.written, key, None))
        for key, value in values.items()
    }


def _known(value: Any, old: Any, record: Any) -> Any:
    if isinstance(record, Record):
        return record if value is old and isinstance(value, dict) else value
    if isinstance(record, dict) and isinstance(value, dict) and isinstance(old, dict):
        return {key: _known(own, old.get(key), record.get(key)) for key, own in value.items()}
    if isinstance(record, tuple) and isinstance(value, list) and isinstance(old, list):
        # by object, since an entry that was put in moves those behind it
        of = {
            id(each): own
            for each, own in zip(old, record, strict=False)
            if isinstance(own, Record) and isinstance(each, dict)
        }
        return [of.get(id(each), each) for each in value]
    return value


def nearest(word: str, known: Sequence[str]) -> str:
    """Help with the closest known words, or with all of them."""
    close = difflib.get_close_matches(word, known, n=3, cutoff=0.6)
    if close:
        return "did you mean " + " or ".join(f"'{other}'" for other in close) + "?"
    shown = ", ".join(known[:12]) + (", …" if len(known) > 12 else "")
    return f"write one of: {shown}" if known else "nothing is defined here"


def _collected(faults: list[InputError]) -> InputError:
    faults = list(
        {str(fault): fault for fault in faults}.values()
    )  # report a faulty anchor only once
    faults.sort(key=lambda fault: (fault.place.line or 0, fault.place.column or 0))
    return faults[0] if len(faults) == 1 else InputErrors(faults[:MOST_SHOWN])


def _root_causes(faults: Sequence[Any]) -> list[Any]:
    """Drop "list too short" faults that only follow from a faulty item in the list."""
    deeper = {
        fault["loc"][: len(fault["loc"]) - k]
        for fault in faults
        for k in range(1, len(fault["loc"]))
    }
    return [f for f in faults if not (f["type"] == "too_short" and f["loc"] in deeper)]


def _located(document: Document, fault: Any) -> InputError:
    path, field, known = _walked(fault["loc"])
    kind, given = fault["type"], fault["input"]
    if kind == "extra_forbidden":
        key = str(fault["loc"][-1])
        return InputError(
            "unknown-key",
            document.key_place(*path[:-1], key),
            f"unknown key {key!r}",
            nearest(key, known),
        )
    if kind == "missing" and isinstance(fault["loc"][-1], int):
        return InputError(
            "bad-value", document.place(*path[:-1]),
            f"{next((str(part) for part in reversed(path) if isinstance(part, str)), 'this list')} has too few values: "
            f"{fault['loc'][-1]}",
            _mend(field),
        )  # fmt: skip
    if kind == "missing":
        return InputError(
            "missing-key", document.place(*path[:-1]), f"the key {str(path[-1])!r} is missing",
            f"add it: {field}" if field else "add it",
        )  # fmt: skip
    text = fault["msg"].removeprefix("Value error, ").removeprefix("Input should be ")
    text = text.replace("Tuple should have", "a list with").replace(" after validation", "")
    given = f"{given!r}" if isinstance(given, str | int | float) and str(given) not in text else ""
    subject = str(path[-1]) if path and isinstance(path[-1], str) else ""
    if kind == "value_error":
        cause = fault["ctx"]["error"]
        mend = _mend(field)
        if isinstance(cause, QuantityError):  # it says itself how to mend it
            text, mend = cause.what, cause.mend
        what = ": ".join(part for part in (subject, given, text) if part)
        return InputError("bad-value", document.place(*path), what, mend)
    shown = " ".join(part for part in (subject, given) if part) or "this"
    return InputError(
        "bad-value",
        document.place(*path),
        f"{shown} {_NOT[kind]}" if kind in _NOT else f"{shown} must be {_lower(text)}",
        _MENDS.get(kind) or _mend(field),
    )


def _mend(field: str) -> str:
    return f"expected: {field}" if field else "see `sequencer new` for an example"


def _lower(text: str) -> str:
    return text[:1].lower() + text[1:]


def _walked(loc: Sequence[PathKey]) -> tuple[tuple[PathKey, ...], str, list[str]]:
    """Path without the validator's internal names, description of the last field, keys known there."""
    model: Any = Show
    path: list[PathKey] = []
    description = ""
    known: list[str] = []
    for part in loc:
        models = list(_models(model))
        fields = {
            info.alias or name: info for each in models for name, info in each.model_fields.items()
        }
        if isinstance(part, int):
            path.append(part)
            model = _inner(model)
        elif part in fields:
            path.append(part)
            info = fields[part]
            model, description = _annotation(info), info.description or ""
        elif models:
            path.append(part)
            known = list(fields)
        elif _is_mapping(model) and part != "[key]":
            path.append(part)
            model = _inner(model)
    if not known:
        known = [
            info.alias or name
            for each in _models(model)
            for name, info in each.model_fields.items()
        ]
    return tuple(path), description, known


def _annotation(info: FieldInfo) -> Any:
    return info.annotation


def _bare(kind: Any) -> Any:
    while get_origin(kind) is Annotated:
        kind = get_args(kind)[0]
    return kind


def _models(kind: Any) -> Iterator[type[BaseModel]]:
    kind = _bare(kind)
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        yield kind
    elif get_origin(kind) in {Union, UnionType}:
        for part in get_args(kind):
            yield from _models(part)


def _is_mapping(kind: Any) -> bool:
    kind = _bare(kind)
    if get_origin(kind) in {Union, UnionType}:
        return any(_is_mapping(part) for part in get_args(kind))
    return get_origin(kind) is dict


def _inner(kind: Any) -> Any:
    """Type of the items in a list or mapping."""
    kind = _bare(kind)
    if get_origin(kind) in {Union, UnionType}:
        inside = [_inner(part) for part in get_args(kind) if get_args(_bare(part))]
        return inside[0] if inside else kind
    arguments = [part for part in get_args(kind) if part is not Ellipsis]
    return arguments[-1] if arguments else kind


def _name_faults(read: ReadShow) -> Iterator[InputError]:
    """Names that are used twice or unknown; the model itself cannot check across headings."""
    show = read.show
    yield from _twice(read, "cast", show.names)
    yield from _twice(read, "crew", [post.name for post in show.crew])
    yield from _exits_twice(read)
    yield from _unknown_people(read)
    yield from _unknown_in_stop_call(read)
    yield from _unknown_at_lighting(read)
    yield from _unknown_formations(read)
    yield from _phrase_faults(read)
    if show.wishes.lead is not None and show.wishes.lead not in show.names:
        yield read.fault(
            "unknown-performer", ("wishes", "lead"), f"{show.wishes.lead!r} is not in the cast",
            nearest(show.wishes.lead, list(show.names)),
        )  # fmt: skip
    yield from unknown_facts(show, read.fault)
    yield from tonight_faults(show, read.fault, nearest)


def _twice(read: ReadShow, heading: str, names: Sequence[str]) -> Iterator[InputError]:
    seen: dict[str, int] = {}
    for i, name in enumerate(names):
        folded = name.casefold()
        if folded in seen:
            first = read.document.place(heading, seen[folded], "name").line
            yield read.fault(
                "name-twice", (heading, i, "name"), f"the name {name!r} appears twice in the {heading}",
                f"give each person a different name (the first is on line {first})",
            )  # fmt: skip
        seen.setdefault(folded, i)


def _exits_twice(read: ReadShow) -> Iterator[InputError]:
    """Exits of one name: nobody could tell which is meant."""
    seen: set[str] = set()
    for i, place in enumerate(read.show.venue.exits):
        folded = place.name.casefold()
        if folded in seen:
            yield read.fault(
                "name-twice", ("venue", "exits", i, "name"), f"two exits are called {place.name!r}",
                "give each exit a name of its own",
            )  # fmt: skip
        seen.add(folded)


def _unknown_people(read: ReadShow) -> Iterator[InputError]:
    show, cast = read.show, read.show.names
    uses: list[tuple[tuple[PathKey, ...], Sequence[str], bool]] = []
    for i, entry in enumerate(show.timeline):
        uses += [
            (("timeline", i, "who"), entry.who, True),
            (("timeline", i, "mirror"), entry.mirror, True),
        ]
    if show.fire:
        uses += [
            (("fire", "lit", i, "who"), span.who, True) for i, span in enumerate(show.fire.lit)
        ]
    uses += [(("crew", i, "watches"), post.watches, True) for i, post in enumerate(show.crew)]
    for key, formation in show.formations.items():
        uses += [
            (("formations", key, "spots", name), (name,), False) for name in formation.spots or ()
        ]
        uses.append((("formations", key, "order"), formation.order or (), False))
    for i, staging in enumerate(show.staging):
        uses += [(("staging", i, "via", name), (name,), False) for name in staging.via]
    uses += [(("entrances", i, "who"), each.who, True) for i, each in enumerate(show.entrances)]
    uses += [(("drift", "people", name), (name,), False) for name in show.drift.people]
    for path, names, all_allowed in uses:
        for i, name in enumerate(names):
            if name not in cast and not (all_allowed and name == "all"):
                known = [*cast, "all"] if all_allowed else list(cast)
                yield read.fault(
                    "unknown-performer", _existing(read, (*path, i)),
                    f"{name!r} is not in the cast", nearest(name, known),
                )  # fmt: skip


def _unknown_in_stop_call(read: ReadShow) -> Iterator[InputError]:
    """Names in the stop call: people from the cast or crew, or roles."""
    show = read.show
    people = [*show.names, *(post.name for post in show.crew)]
    uses: list[tuple[tuple[PathKey, ...], str, list[str]]] = [
        (("stop_call", "callers", i), name, [*people, "all"])
        for i, name in enumerate(show.stop_call.callers)
    ]
    uses += [
        (("stop_call", "does", name), name, [*people, *get_args(Role)])
        for name in show.stop_call.does
    ]
    for path, name, known in uses:
        if name not in known:
            yield read.fault(
                "unknown-person", _existing(read, path),
                f"{name!r} is in neither cast nor crew", nearest(name, known),
            )  # fmt: skip


def _unknown_at_lighting(read: ReadShow) -> Iterator[InputError]:
    """Names of those who light and put out: people from the cast or crew."""
    show = read.show
    if show.fire is None:
        return
    people = [*show.names, *(post.name for post in show.crew)]
    uses: list[tuple[tuple[PathKey, ...], str | None]] = [
        (("fire", "handling", "lit_by"), show.fire.handling.lit_by)
    ]
    for i, span in enumerate(show.fire.lit):
        uses += [
            (("fire", "lit", i, "lit_by"), span.lit_by),
            (("fire", "lit", i, "put_out_by"), span.put_out_by),
        ]
    for path, name in uses:
        if name is not None and name not in people:
            yield read.fault(
                "unknown-person", path, f"{name!r} is in neither cast nor crew", nearest(name, people)
            )  # fmt: skip


def _existing(read: ReadShow, path: tuple[PathKey, ...]) -> tuple[PathKey, ...]:
    return path if path in read.document.places else path[:-1]


def _unknown_formations(read: ReadShow) -> Iterator[InputError]:
    show = read.show
    for i, staging in enumerate(show.staging):
        if staging.formation not in show.formations:
            yield read.fault(
                "unknown-formation", ("staging", i, "formation"),
                f"there is no formation {staging.formation!r}", nearest(staging.formation, list(show.formations)),
            )  # fmt: skip
    for name, formation in show.formations.items():
        if formation.spots is None:
            yield from _order_faults(read, name, formation.order)
            continue
        for absent in [dancer for dancer in show.names if dancer not in formation.spots]:
            yield read.fault(
                "place-missing", ("formations", name, "spots"),
                f"formation {name!r} has no position for {absent!r}", f"add a line `{absent}: {{at: [x, y]}}`",
            )  # fmt: skip


def _order_faults(read: ReadShow, name: str, order: tuple[str, ...] | None) -> Iterator[InputError]:
    """An order must name everyone exactly once, so that nobody is left without a position."""
    if order is None:
        return
    absent = [who for who in read.show.names if who not in order]
    twice = [who for who in dict.fromkeys(order) if order.count(who) > 1]
    path: tuple[PathKey, ...] = ("formations", name, "order")
    if absent:
        yield read.fault(
            "place-missing", path, f"formation {name!r} has no position for {absent[0]!r}",
            "name everyone in the order, or leave it out",
        )  # fmt: skip
    if twice:
        yield read.fault(
            "place-twice",
            path,
            f"{twice[0]!r} appears twice in formation {name!r}",
            "name each once",
        )


def _phrase_faults(read: ReadShow) -> Iterator[InputError]:
    phrases = read.show.phrases
    uses: list[tuple[tuple[PathKey, ...], str | None]]
    uses = [(("timeline", i, "phrase"), entry.phrase) for i, entry in enumerate(read.show.timeline)]
    for name, steps in phrases.items():
        uses += [(("phrases", name, i, "phrase"), step.phrase) for i, step in enumerate(steps)]
        for i, step in enumerate(steps):
            timed = step.phrase is not None or step.accent is not None
            if not timed and step.stop_beats is None and step.cycles is None:
                yield read.fault(
                    "no-length", ("phrases", name, i), "a step of a phrase needs a length",
                    "add beats or cycles",
                )  # fmt: skip
    for path, used in uses:
        if used is not None and used not in phrases:
            yield read.fault(
                "unknown-phrase",
                path,
                f"there is no phrase {used!r}",
                nearest(used, list(phrases)),
            )
    for name in phrases:
        ring = _ring(name, read.show)
        if ring and ring[0] == min(ring):  # once per cycle
            chain = " → ".join([*ring, ring[0]])
            yield read.fault(
                "endless-phrase", ("phrases", name), f"phrases contain each other in a cycle: {chain}",
                "remove one of them",
            )  # fmt: skip


def _ring(start: str, show: Show) -> list[str]:
    """The cycle of phrases through `start`, empty if there is none."""
    stack: list[tuple[str, list[str]]] = [(start, [start])]
    seen: set[str] = set()
    while stack:
        name, way = stack.pop()
        for step in show.phrases.get(name, ()):
            if step.phrase == start or len(way) > DEEPEST_PHRASE:
                return way
            if step.phrase is not None and step.phrase not in seen:
                seen.add(step.phrase)
                stack.append((step.phrase, [*way, step.phrase]))
    return []
