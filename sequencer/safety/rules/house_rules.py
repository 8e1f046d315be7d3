"""The rules that apply to one show, and the user's own rules read from a file.

A rules file is YAML: `name`, `title`, `edition`, and `rules`, a list of
`{rule: audience-distance, value: 7 m, source: "By-law 12, section 3, p. 4, 2026"}`. A rule without a source
is refused, because nobody could look it up. A value looser than the default needs
`override: {reference, by, reason}`.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from sequencer.errors import InputError, InputErrors
from sequencer.facts.profiles import (
    Override,
    Profile,
    Rule,
    RuleValue,
    kind_of,
    profile,
    value_from,
)
from sequencer.facts.rule_book import RuleBook, rule_book
from sequencer.facts.rule_kinds import Kind
from sequencer.facts.sources import Source
from sequencer.safety.rules.permits import permit_that_holds
from sequencer.show.text.document import Document, read_document
from sequencer.show.text.plain_values import PathKey
from sequencer.show.unseen_texts import unseen_texts
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged
from sequencer.units import VOLUMES, quantity

_HEADINGS = {"name", "title", "edition", "place", "authority", "rules"}
_RULE_KEYS = {"rule", "value", "source", "printed", "note", "per", "override"}
_OVERRIDE_KEYS = ("reference", "by", "reason")
_AS_RULES = "write rules: and one `- rule: …` line for each rule"
_YES = {"true": True, "yes": True, "false": False, "no": False}


@once_per_show_with()
def rules_of(show: Staged) -> RuleBook:
    """Rules in force for a show: the default, its profiles, and its own rules files.

    Raises
    ------
    InputError
        If the show's own rules file cannot be used.
    ValueError
        If the profile is not known.
    """
    rules = show.show.rules
    own = [read_house_rules(Path(show.file).parent / name) for name in rules.file]
    permit = permit_that_holds(show.show)
    return rule_book(
        [profile(name) for name in rules.profile],
        own,
        permit=permit.number if permit else None,
        loosens=permit.loosens if permit else (),
    )


def read_house_rules(path: Path) -> Profile:
    """A profile from the user's rules file.

    Raises
    ------
    InputError
        For one fault, InputErrors for several: unknown subject, an invalid value, a rule without a source,
        an override without a reference.
    """
    return house_rules_from(read_document(path, _AS_RULES))


def house_rules_from(document: Document) -> Profile:
    """A profile from a parsed document.

    Raises
    ------
    InputError
        As `read_house_rules`.
    """
    values = document.values
    if not isinstance(values, dict) or not isinstance(values.get("rules"), list):
        raise InputError(
            "no-rules", document.place(), "a rules file needs a list under `rules`",
            _AS_RULES,
        )  # fmt: skip
    faults = [
        InputError(
            "unknown-key",
            document.key_place(key),
            f"unknown key {key!r}",
            f"use one of {', '.join(sorted(_HEADINGS))}",
        )
        for key in values
        if key not in _HEADINGS
    ]
    faults += unseen_texts(document)
    title = str(values.get("title") or values.get("name") or Path(document.file).stem)
    rules = []
    for index, item in enumerate(values["rules"]):
        try:
            rules.append(_rule(document, index, item, title))
        except InputErrors as error:
            faults += error.errors
        except InputError as error:
            faults.append(error)
    if faults:
        faults.sort(key=lambda fault: (fault.place.line or 0, fault.place.column or 0))
        raise faults[0] if len(faults) == 1 else InputErrors(faults)
    return Profile(
        name=str(values.get("name") or Path(document.file).stem),
        title=title,
        place=str(values.get("place") or ""),
        edition=str(values.get("edition") or ""),
        authority=str(values.get("authority", "false")).casefold() in {"true", "yes"},
        note="entered by the user",
        rules=tuple(rules),
    )


def _rule(document: Document, index: int, item: Any, title: str) -> Rule:
    path: tuple[PathKey, ...] = ("rules", index)
    if not isinstance(item, dict):
        raise InputError(
            "no-rule", document.place(*path), f"{item!r} is not a rule",
            "write rule, value and source",
        )  # fmt: skip
    for key in item:
        if key not in _RULE_KEYS:
            raise InputError(
                "unknown-key", document.key_place(*path, key), f"unknown key {key!r}",
                f"use one of {', '.join(sorted(_RULE_KEYS))}",
            )  # fmt: skip
    for key in ("rule", "value"):
        if item.get(key) is None:
            raise InputError(
                "missing-key", document.place(*path), f"this rule has no {key}", f"add {key}: …"
            )
    origin = str(item.get("source") or "").strip()
    if not origin:
        raise InputError(
            "rule-without-source", document.place(*path),
            f"the rule {item['rule']!r} names no source",
            "add source: with the text, its edition, and the section or page",
            "a rule that cannot be looked up is refused",
        )  # fmt: skip
    try:
        kind = kind_of(str(item["rule"]))
    except ValueError as error:
        raise InputError(
            "unknown-rule", document.place(*path, "rule"), str(error), "see docs/sources.md"
        ) from None
    try:
        value = value_from(kind, _plain(kind, item["value"]))
    except ValueError as error:
        raise InputError(
            "bad-value", document.place(*path, "value"), str(error), f"expected: {kind.what}"
        ) from None
    return Rule(
        kind=kind,
        value=value,
        printed=str(item.get("printed") or item["value"]),
        profile=title,
        source=Source(key="own", title=origin, date="", where=document.file, mark="as entered"),
        mark="as entered",
        note=str(item.get("note") or ""),
        per="performer" if item.get("per") == "performer" else "once",
        override=_override(document, path, item.get("override")),
    )


def _override(document: Document, path: tuple[PathKey, ...], item: Any) -> Override | None:
    if item is None:
        return None
    given = item if isinstance(item, Mapping) else {}
    missing = [key for key in _OVERRIDE_KEYS if not str(given.get(key) or "").strip()]
    if missing:
        raise InputError(
            "override-without-reference", document.place(*path, "override"),
            f"the override has no {', '.join(missing)}",
            "give the authority's reference, who enters it, and the reason",
            "a limit can only be loosened with a recorded reference",
        )  # fmt: skip
    return Override(**{key: str(given[key]).strip() for key in _OVERRIDE_KEYS})


def _plain(kind: Kind, raw: Any) -> RuleValue | list[str] | dict[str, Any]:
    """Scalars arrive as text; convert them to the type that the subject takes."""
    if kind.sort in {"least", "most"}:
        return quantity(str(raw), dict(kind.units or {"": 1.0}), default=kind.default_unit)
    if kind.sort == "yes":
        if str(raw).casefold() not in _YES:
            raise ValueError(f"{kind.name} takes true or false, got {raw!r}")
        return _YES[str(raw).casefold()]
    if kind.sort == "fuels":
        return [raw] if isinstance(raw, str) else list(raw)
    if isinstance(raw, Mapping) and kind.sort == "volumes":
        return {key: quantity(str(each), dict(VOLUMES), default="L") for key, each in raw.items()}
    if kind.sort in {"count", "extinguishers"}:
        return _whole(kind, raw if isinstance(raw, Mapping) else {"least": raw})
    return str(raw)


def _whole(kind: Kind, raw: Mapping[str, Any]) -> dict[str, Any]:
    """Convert the whole numbers of a count from text."""
    out: dict[str, Any] = {}
    for key, value in raw.items():
        if key in {"least", "each", "count"} and value is not None:
            text = str(value).strip()
            if not text.isdecimal():
                raise ValueError(f"{kind.name}: {key} must be a whole number, got {value!r}")
            out[key] = int(text)
        elif key == "units":
            out[key] = [_whole(kind, unit) for unit in value]
        else:
            out[key] = value
    return out
