"""The vocabulary: named patterns as data, and the law of each.

A pattern is a kind of law (kinds.py) with some parameters set for good and the others left open, or
two of them, one a hand (a hybrid). The built-in ones lie in patterns.json; another package can add some
through the entry-point group `sequencer.patterns`: each entry names a mapping of names to records, as
`patterns_from` reads them, or a callable that returns one.
"""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from importlib import resources
from typing import Any

from sequencer import units
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.law_kinds import (
    DEFAULT_TETHER,
    LawContext,
    LawKind,
    law_kinds,
    opposite_law,
)
from sequencer.motion.patterns.parameters import (
    OffsetLimits,
    Parameter,
    ParameterValue,
    combinations,
    nearest,
    read_all,
)
from sequencer.motion.patterns.station_kind import station_kind
from sequencer.motion.props.prop import PROP_KINDS, USUAL_HANDS, PropKind
from sequencer.plugins import blamed, plugins

PATTERN_PLUGINS = "sequencer.patterns"
_KEYS = {
    "family", "law", "set", "defaults", "left", "right", "summary", "difficulty", "why", "needs",
    "notes", "source", "cycle", "stations", "props", "room",
}  # fmt: skip


_OF_A_HAND = ("law", "set", "stations")
_RECORDS = {"set", "defaults", "left", "right"}
_LONGEST_CYCLE = 256.0  # [beats]
_LISTS = {"stations", "props", "room"}  # whose readers say what is wrong with them


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class HandLaw:
    """One hand's kind of law and the parameters fixed by the pattern."""

    kind: LawKind
    fixed: Mapping[str, ParameterValue]

    def __repr__(self) -> str:
        return f"<HandLaw {self.kind.name} with {dict(self.fixed)}>"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Pattern:
    """A named pattern."""

    name: str
    family: str
    parameters: tuple[Parameter, ...]  # open parameters, with this pattern's defaults
    left: HandLaw
    right: HandLaw
    summary: str
    difficulty: int  # 1 … 5
    why: str  # reason for the difficulty
    needs: tuple[str, ...] = ()  # patterns to learn first
    notes: str = ""  # advice on the body: stance, arms, what to watch
    source: str = "common practice"
    cycle: float | None = None  # [beats] per hand cycle, if the law's default is too fast
    props: tuple[PropKind, ...] = PROP_KINDS  # kinds of prop it is meant for; common practice
    offset_limits: OffsetLimits | None = None  # limits of the offsets, if narrower than the law's

    def __repr__(self) -> str:
        open_ones = ", ".join(parameter.name for parameter in self.parameters)
        return (
            f"<Pattern {self.name}: {self.family}, difficulty {self.difficulty} of 5; {open_ones}>"
        )

    @property
    def hybrid(self) -> bool:
        """Whether the two hands dance different laws."""
        return self.left is not self.right

    def suits(self, kind: PropKind, hands: int | None = None) -> bool:
        """Whether it suits a kind of prop held in one or both hands.

        Parameters
        ----------
        kind : str
        hands : int, optional
            1 or 2; default: as usual for that kind. A hybrid needs both.
        """
        most = max(USUAL_HANDS[kind]) if hands is None else hands
        return kind in self.props and (most > 1 or not self.hybrid)

    def hand(self, side: Side) -> HandLaw:
        """One hand's law."""
        return self.left if side == "left" else self.right

    def room(self, given: Mapping[str, object], side: Side = "right") -> OffsetLimits:
        """How far a hand's centre may be moved from its default position.

        Raises
        ------
        ValueError
            If a name is unknown, or a value is out of range.
        """
        return self.offset_limits or self.hand(side).kind.room(self.values(given, side))

    def trials(self, given: Mapping[str, object], prop: str) -> list[dict[str, ParameterValue]]:
        """Values to try for open parameters other than offsets, the most usual first.

        Parameters
        ----------
        given : mapping
            Parameters that are set and stay fixed.
        prop : str
            Kind of prop.

        Returns
        -------
        trials : list of dict
            At least one, at most 40; in the order of `parameters.combinations`.
        """
        kinds = (self.right.kind, self.left.kind) if self.hybrid else (self.right.kind,)
        free = [each for kind in kinds for each in kind.free]
        allowed = [each for each in self.parameters if each.name not in given]
        return combinations(free, allowed, prop=prop)

    def values(self, given: Mapping[str, object], side: Side = "right") -> dict[str, Any]:
        """All values of one hand's law: given, fixed by the pattern, or default.

        Raises
        ------
        ValueError
            If a name is unknown, or a value is out of range.
        """
        of = f"pattern {self.name!r}"
        if self.hybrid:
            fixed = set(self.left.fixed) | set(self.right.fixed)
        else:
            fixed = set(self.right.fixed)
        read = read_all(given, self.parameters, of=of, fixed=fixed)
        own = self.hand(side)
        values: dict[str, Any] = {p.name: p.default for p in own.kind.parameters}
        values |= {name: value for name, value in read.items() if name in values}
        return values | dict(own.fixed)


@cache
def patterns() -> dict[str, Pattern]:
    """Every pattern by name: the built-in ones, then those of other packages.

    Raises
    ------
    InputError
        If another package's patterns are invalid, or use an existing name.
    """
    text = resources.files("sequencer.motion.patterns").joinpath("patterns.json").read_text("utf-8")
    book = patterns_from(json.loads(text))
    for plugin in plugins(PATTERN_PLUGINS):
        with blamed(plugin):
            book = patterns_from(plugin.records(), book)
    return book


def patterns_from(
    records: Mapping[str, Any], known: Mapping[str, Pattern] | None = None
) -> dict[str, Pattern]:
    """Patterns from plain records, added to those already known.

    Parameters
    ----------
    records : mapping
        One record for each name: `law` (or `stations`, or `left` and `right`, each with its `law` and
        `set`), `set` (fixed values), `defaults`, `summary`, `difficulty`, `why`, `needs`, `notes`,
        `family`, `source`, `cycle`,
        `props` (kinds of prop it is meant for; default: all), `room` (lowest and highest
        offset [m] `across`, `ahead` and `up`).
    known : mapping, optional
        Patterns that already exist.

    Returns
    -------
    patterns : dict
        All patterns by name.

    Raises
    ------
    ValueError
        If a record lacks a key, has an unknown key, or has an invalid value; the message names the pattern.
    """
    book = dict(known or {})
    for name, record in records.items():
        if name in book:
            raise ValueError(f"pattern {name!r} already exists; choose another name")
        try:
            book[name] = _pattern(name, record)
        except ValueError as error:
            raise ValueError(f"pattern {name!r}: {error}") from None
    for name in records:
        for need in book[name].needs:
            if need not in book:
                raise ValueError(
                    f"pattern {name!r} needs {need!r}, which is not known{nearest(need, book)}"
                )
    return book


def find(name: str, book: Mapping[str, Pattern] | None = None) -> Pattern:
    """The pattern with a given name.

    Raises
    ------
    ValueError
        If there is none; the message suggests near matches.
    """
    known = patterns() if book is None else book
    if name not in known:
        raise ValueError(f"pattern {name!r} is not known{nearest(name, known)}")
    return known[name]


def cycle_beats(
    name: str, parameters: Mapping[str, object], book: Mapping[str, Pattern] | None = None
) -> float:
    """Default beats per hand cycle: one per lobe, petal or loop.

    Raises
    ------
    ValueError
        If the pattern or a parameter is unknown, or a value is out of range.
    """
    pattern = find(name, book)
    values = pattern.values(parameters)
    return pattern.cycle or pattern.right.kind.cycle(values)


def turn_beats(
    name: str,
    parameters: Mapping[str, object],
    *,
    beats: float,
    side: Side = "right",
    book: Mapping[str, Pattern] | None = None,
) -> float:
    """Beats per turn; split timing is half of it, quarter timing a quarter.

    Raises
    ------
    ValueError
        If the pattern or a parameter is unknown, or a value is out of range.
    """
    pattern = find(name, book)
    return beats / pattern.hand(side).kind.turns(pattern.values(parameters, side))


def law_for(
    name: str,
    parameters: Mapping[str, object],
    *,
    side: Side,
    body: Body,
    beats: float | None = None,
    tether: float | None = None,
    opposite: bool = False,
    book: Mapping[str, Pattern] | None = None,
) -> Law:
    """The law of one hand.

    Parameters
    ----------
    name : str
        Of the pattern.
    parameters : mapping
        Parameters that are set; lengths in metres or with a unit, angles in degrees.
    side : {"left", "right"}
    body : Body
    beats : float, optional
        Per hand cycle; default: the pattern's.
    tether : float, optional
        Length of the prop [m]; the pattern's `tether` takes precedence.
    opposite : bool
        Whether this hand goes in the opposite direction to the pattern's.
    book : mapping, optional
        Patterns to use instead of the built-in ones.

    Returns
    -------
    law : Law

    Raises
    ------
    ValueError
        If the pattern or a parameter is unknown (the message suggests near matches), or out of range.
    """
    pattern = find(name, book)
    values = pattern.values(parameters, side)
    kind = pattern.hand(side).kind
    span = cycle_beats(name, parameters, book) if beats is None else beats
    wanted = LawContext(
        side=side,
        body=body,
        beats=span,
        tether=values.get("tether") or tether or DEFAULT_TETHER,
    )
    if opposite:
        return opposite_law(kind, values, wanted)
    return kind.build(values, wanted)


def _pattern(name: str, record: Mapping[str, Any]) -> Pattern:
    two = _check_record(record)
    right = _hand(record["right"] if two else record)
    left = _hand(record["left"]) if two else right
    difficulty = _number(record, "difficulty", 3)
    if difficulty not in {1, 2, 3, 4, 5}:
        raise ValueError(f"difficulty must be 1 to 5, got {record['difficulty']}")
    cycle = _number(record, "cycle", 1) if "cycle" in record else None
    if cycle is not None and not 0 < cycle <= _LONGEST_CYCLE:
        raise ValueError(
            f"cycle must be above 0 and at most {_LONGEST_CYCLE:g} beats, got {cycle:g}"
        )
    return Pattern(
        name=name,
        family=str(record.get("family", "hybrid" if two else right.kind.family)),
        parameters=_open_parameters(left, right, record.get("defaults", {})),
        left=left,
        right=right,
        summary=str(record.get("summary", "")),
        difficulty=int(difficulty),
        why=str(record.get("why", "")),
        needs=_names(record.get("needs", ())),
        notes=str(record.get("notes", "")),
        source=str(record.get("source", "common practice")),
        cycle=cycle,
        props=_props(record["props"]) if "props" in record else PROP_KINDS,
        offset_limits=_room(record["room"]) if "room" in record else None,
    )


def _number(record: Mapping[str, Any], key: str, left_out: float) -> float:
    try:
        return float(record.get(key, left_out))
    except ValueError:
        raise ValueError(f"{key} must be a number, got {record[key]!r}") from None


def _names(given: str | Sequence[str]) -> tuple[str, ...]:
    return (given,) if isinstance(given, str) else tuple(given)


def _props(given: object) -> tuple[PropKind, ...]:
    """Kinds of prop, in the standard order; a single one may be given without a list."""
    named = [given] if isinstance(given, str) else given
    if not isinstance(named, Sequence) or not named:
        raise ValueError(f"props must be one or more of {', '.join(PROP_KINDS)}, got {given!r}")
    for kind in named:
        if kind not in PROP_KINDS:
            raise ValueError(f"prop {kind!r} is not known{nearest(str(kind), PROP_KINDS)}")
    return tuple(kind for kind in PROP_KINDS if kind in named)


def _room(record: object) -> OffsetLimits:
    if not isinstance(record, Mapping) or not set(record) <= {"across", "ahead", "up"}:
        raise ValueError(
            "room must give across, ahead or up, each with a lowest and a highest offset"
        )
    spans: dict[str, tuple[float, float]] = {}
    for name, span in record.items():
        if not isinstance(span, list | tuple) or len(span) != 2:
            raise ValueError(f"room: {name} must be a lowest and a highest offset, got {span!r}")
        try:
            low, high = (units.quantity(end, units.LENGTHS, default="m") for end in span)
        except ValueError as error:
            raise ValueError(f"room: {name}: {error}") from None
        if not low <= 0.0 <= high:
            raise ValueError(f"room: {name} must include 0, got {low:g} … {high:g} m")
        spans[name] = (low, high)
    return OffsetLimits(**spans)


def _check_record(record: Mapping[str, Any]) -> bool:
    """Whether each hand has its own law; raises if the record is invalid."""
    if not isinstance(record, Mapping):
        raise ValueError("it must be a record of keys and values")
    for key in record:
        if key not in _KEYS:
            raise ValueError(f"key {key!r} is not known{nearest(key, sorted(_KEYS))}")
        _check_shape(key, record[key])
    two = "left" in record or "right" in record
    if [two, "law" in record, "stations" in record].count(True) != 1:
        raise ValueError("give either a law, or stations, or left and right with a law each")
    if two and not ("left" in record and "right" in record):
        raise ValueError("give both left and right")
    if two and "set" in record:
        raise ValueError("set is said for each hand: write it under left and under right")
    for side in ("left", "right") if two else ():
        for key in record[side]:
            if key not in _OF_A_HAND:
                raise ValueError(f"{side}: key {key!r} is not known{nearest(key, _OF_A_HAND)}")
    return two


def _check_shape(key: str, value: object) -> None:
    """Raise unless a key of a pattern, or of one of its hands, has a record, a list or one value, as it should."""
    if key in _RECORDS:
        if not isinstance(value, Mapping):
            raise ValueError(f"{key} must be a record of keys and values, got {value!r}")
    elif key == "needs":
        names = [value] if isinstance(value, str) else value
        if not isinstance(names, Sequence) or not all(isinstance(each, str) for each in names):
            raise ValueError(f"needs must be names of patterns, got {value!r}")
    elif key not in {*_LISTS, "law"} and not isinstance(value, str | int | float):
        raise ValueError(f"{key} must be one value, got {value!r}")


def _open_parameters(
    left: HandLaw, right: HandLaw, given: Mapping[str, object]
) -> tuple[Parameter, ...]:
    """Open parameters of both hands' laws, with the pattern's defaults."""
    shared = {p.name for p in left.kind.parameters} - set(left.fixed) - set(right.fixed)
    table = {p.name: p for p in right.kind.parameters if p.name in shared}
    for name, default in given.items():
        if name not in table:
            raise ValueError(
                f"there is no open parameter {name!r} to give a default{nearest(name, table)}"
            )
        table[name] = replace(table[name], default=table[name].read(default))
    return tuple(table.values())


def _hand(record: Mapping[str, Any]) -> HandLaw:
    for key in record:
        _check_shape(key, record[key])
    if "stations" in record:
        kind, called = station_kind(record["stations"]), "a list of stations"
    else:
        kinds = law_kinds()
        name = record.get("law")
        if not isinstance(name, str) or name not in kinds:
            raise ValueError(f"law {name!r} is not known{nearest(str(name), kinds)}")
        kind, called = kinds[name], f"law {name!r}"
    table = {parameter.name: parameter for parameter in kind.parameters}
    fixed: dict[str, ParameterValue] = {}
    for key, value in record.get("set", {}).items():
        if key not in table:
            raise ValueError(f"{called} has no parameter {key!r}{nearest(key, table)}")
        fixed[key] = table[key].read(value)
    return HandLaw(kind=kind, fixed=fixed)
