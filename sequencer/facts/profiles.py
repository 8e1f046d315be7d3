"""House rules as data: what a named authority asks, each rule with its source.

A profile is what one text says, no more: a subject it does not name is not thereby allowed. Nothing
here is a permission; the authority for the place decides.

Another package can add profiles through the entry-point group `sequencer.profiles`: each entry names a
mapping of names to records like those in facts/data/profiles, or a callable that returns one. A record
brings the sources of its numbers along, as a list under `sources`.
"""

import difflib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from math import ceil, isfinite
from typing import Any

from sequencer.facts.extinguishers import Rating, parse_rating
from sequencer.facts.rule_kinds import RULE_KINDS, Kind, Sort
from sequencer.facts.sources import Mark, Source, cited, data, mark_of, source, sources
from sequencer.plugins import Plugin, extended

PROFILE_PLUGINS = "sequencer.profiles"


@dataclass(frozen=True, slots=True)
class CountRule:
    """So many for each so many, and never fewer than a least number."""

    least: int
    each: int | None  # heads that one of them serves; None: the least number is all
    of: str = ""  # which heads, where not the subject's own: "audience"

    def for_heads(self, heads: int) -> int:
        """Number needed for so many heads."""
        return max(self.least, ceil(heads / self.each) if self.each else 0)


@dataclass(frozen=True, slots=True)
class Units:
    """So many extinguishers of one kind and rating."""

    count: int
    kind: str  # "water", or empty for any
    rating: Rating


@dataclass(frozen=True, slots=True)
class Extinguishers:
    """Extinguishers that a rule asks for."""

    count: CountRule
    rating: Rating | None  # of each; None where `units` says it
    units: tuple[Units, ...] = ()


RuleValue = float | bool | CountRule | Extinguishers | tuple[str, ...] | Mapping[str, float] | str


@dataclass(frozen=True, slots=True, kw_only=True)
class Override:
    """Who loosened a limit, why, and by whose reference."""

    reference: str
    by: str
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One rule of one profile."""

    kind: Kind
    value: RuleValue
    printed: str  # as the text has it
    profile: str  # title of the profile
    source: Source
    mark: Mark
    note: str = ""
    per: str = "once"  # of an extra for several performers: once, or performer
    override: Override | None = None

    @property
    def citation(self) -> str:
        """Profile, subject, what the rule says, and where that stands: the source of a finding."""
        note = f" ({self.note})" if self.note else ""
        return f"{self.profile}, {self.kind.name}: {self.printed}{note}. {cited(self.source, self.mark)}"

    @property
    def number(self) -> float:
        """The value of a least or most rule.

        Raises
        ------
        ValueError
            If the rule's value is no number.
        """
        if not isinstance(self.value, float):
            raise ValueError(f"rule {self.kind.name} of {self.profile} holds no number")
        return self.value

    @property
    def extinguishers(self) -> Extinguishers:
        """The value of a rule on extinguishers.

        Raises
        ------
        ValueError
            If the rule is about something else.
        """
        if not isinstance(self.value, Extinguishers):
            raise ValueError(f"rule {self.kind.name} of {self.profile} holds no extinguishers")
        return self.value

    @property
    def count(self) -> CountRule:
        """The value of a count rule.

        Raises
        ------
        ValueError
            If the rule's value is no count.
        """
        if not isinstance(self.value, CountRule):
            raise ValueError(f"rule {self.kind.name} of {self.profile} holds no count")
        return self.value


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """All rules that one text gives."""

    name: str
    title: str
    place: str
    edition: str
    authority: bool  # false for an association's guidelines and for the default
    note: str
    rules: tuple[Rule, ...]


@cache
def profile_names() -> tuple[str, ...]:
    """Names of all profiles, the default first.

    Raises
    ------
    InputError
        If another package's profiles are broken, or one takes a name that is in use.
    """
    return ("default", *(name for name in sorted(_entries()) if name != "default"))


@cache
def profile(name: str) -> Profile:
    """A profile of this package or of another one.

    Raises
    ------
    ValueError
        If there is none of that name; says which are near.
    InputError
        If another package's profiles are broken, or one takes a name that is in use.
    """
    known = profile_names()
    if name not in known:
        near = difflib.get_close_matches(name.casefold(), known, n=3, cutoff=0.5)
        hint = f"did you mean {' or '.join(near)}" if near else f"known are {', '.join(known)}"
        raise ValueError(f"{name!r} is no rule profile; {hint}")
    entry = _entries()[name]
    return _profile(data(f"profiles/{name}.json"), {}) if entry is None else entry


@cache
def _entries() -> dict[str, Profile | None]:
    """Profiles by name; None for a built-in one, which is read when it is needed."""
    folder = files("sequencer.facts").joinpath("data").joinpath("profiles")
    built_in: dict[str, Profile | None] = {
        item.name.removesuffix(".json"): None for item in folder.iterdir()
    }
    return extended(built_in, PROFILE_PLUGINS, _added)


def _added(plugin: Plugin) -> dict[str, Profile | None]:
    out: dict[str, Profile | None] = {}
    for name, record in plugin.records().items():
        if not isinstance(record, Mapping):
            raise TypeError(f"profile {name!r} must be a record of keys and values")
        entry = {"note": "", "authority": False, **record, "name": name}
        try:
            out[name] = _profile(entry, {each.key: each for each in _own_sources(entry)})
        except KeyError as error:
            raise ValueError(f"profile {name!r} lacks {error.args[0]!r}") from None
        except (TypeError, ValueError) as error:
            raise ValueError(f"profile {name!r}: {error}") from None
    return out


def _own_sources(entry: Mapping[str, Any]) -> list[Source]:
    """Sources that a profile of another package brings along."""
    own = [Source(**each) for each in entry.get("sources", ())]
    for each in own:
        if each.key in sources():
            raise ValueError(f"source {each.key!r} is there already; choose another key")
        mark_of({"mark": each.mark}, each)
    return own


def _profile(entry: Mapping[str, Any], own: Mapping[str, Source]) -> Profile:
    """A profile from its record; `own` are sources besides the package's."""
    rules = []
    for item in entry["rules"]:
        key = str(item.get("source", ""))
        origin = own[key] if key in own else source(key)
        rules.append(
            Rule(
                kind=kind_of(item["kind"]),
                value=value_from(kind_of(item["kind"]), item["value"]),
                printed=item["printed"],
                profile=entry["title"],
                source=origin,
                mark=mark_of(item, origin),
                note=item.get("note", ""),
                per=item.get("per", "once"),
            )
        )
    plain = {key: entry[key] for key in ("name", "title", "place", "edition", "authority", "note")}
    return Profile(**plain, rules=tuple(rules))


def kind_of(name: str) -> Kind:
    """The subject of a name.

    Raises
    ------
    ValueError
        If no rule can be about it; says which subjects are near.
    """
    if name not in RULE_KINDS:
        near = difflib.get_close_matches(name, RULE_KINDS, n=3, cutoff=0.5) or list(RULE_KINDS)
        raise ValueError(f"{name!r} is no subject of a rule; did you mean {' or '.join(near)}")
    return RULE_KINDS[name]


def value_from(kind: Kind, raw: Any) -> RuleValue:
    """The value of a rule from plain data, SI where it is a quantity.

    Raises
    ------
    ValueError
        If it does not fit the subject.
    """
    return _READERS[kind.sort](kind, raw)


def _yes(kind: Kind, raw: Any) -> bool:
    if not isinstance(raw, bool):
        raise ValueError(f"{kind.name} takes true or false, got {raw!r}")
    return raw


def _fuels(kind: Kind, raw: Any) -> tuple[str, ...]:
    if not isinstance(raw, Sequence) or isinstance(raw, str) or not raw:
        raise ValueError(f"{kind.name} takes a list of fuels or 'flammable', got {raw!r}")
    return tuple(str(name) for name in raw)


def _volumes(kind: Kind, raw: Any) -> Mapping[str, float]:
    if not isinstance(raw, Mapping) or set(raw) - {"flammable", "combustible"}:
        raise ValueError(f"{kind.name} takes volumes of flammable and combustible liquid")
    return {str(key): _amount(kind.name, volume) for key, volume in raw.items()}


def _ask(kind: Kind, raw: Any) -> str:
    if not isinstance(raw, str) or not raw.strip():
        raise ValueError(f"{kind.name} takes a text, got {raw!r}")
    return raw


def _number(kind: Kind, raw: Any) -> float:
    value = _amount(kind.name, raw)
    if kind.name == "burn-share" and not 0 < value <= 1:
        raise ValueError(f"burn-share must be above 0 and at most 1, got {raw!r}")
    return value


def _amount(name: str, raw: Any) -> float:
    if isinstance(raw, bool) or not isinstance(raw, int | float):
        raise ValueError(f"{name} takes a number, got {raw!r}")
    if not isfinite(raw) or raw < 0:
        raise ValueError(f"{name} must be finite and not negative, got {raw!r}")
    return float(raw)


def _count(kind: Kind, raw: Any) -> CountRule:
    name = kind.name
    if not isinstance(raw, Mapping) or set(raw) - {"least", "each", "of"}:
        raise ValueError(f"{name} takes least and each, got {raw!r}")
    least, each = raw.get("least", 0), raw.get("each")
    if type(least) is not int or least < 0:
        raise ValueError(f"{name}: least must be a whole number from 0, got {least!r}")
    if each is not None and (type(each) is not int or each < 1):
        raise ValueError(f"{name}: each must be a whole number from 1, got {each!r}")
    if least == 0 and each is None:
        raise ValueError(f"{name} asks for nothing; give least or each")
    return CountRule(least, each, str(raw.get("of", "")))


def _extinguishers(kind: Kind, raw: Any) -> Extinguishers:
    if not isinstance(raw, Mapping) or set(raw) - {"least", "each", "rating", "units"}:
        raise ValueError(f"extinguishers takes least, each, rating and units, got {raw!r}")
    count = _count(kind, {key: raw[key] for key in ("least", "each") if key in raw})
    rating = parse_rating(str(raw["rating"])) if raw.get("rating") else None
    units = tuple(
        Units(int(unit["count"]), str(unit.get("kind", "")), parse_rating(str(unit["rating"])))
        for unit in raw.get("units", ())
    )
    if rating is None and not units:
        raise ValueError("extinguishers needs a rating, such as 2-A:10-B:C")
    return Extinguishers(count, rating, units)


_READERS: Mapping[Sort, Callable[[Kind, Any], RuleValue]] = {
    "least": _number,
    "most": _number,
    "count": _count,
    "extinguishers": _extinguishers,
    "yes": _yes,
    "fuels": _fuels,
    "volumes": _volumes,
    "ask": _ask,
}
