"""Findings that are one to a reader: the same fault of several performers, or of one phrase that comes back.

The report and its JSON keep every finding; text and pages tell one cause once.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from sequencer.findings import Figure, Finding
from sequencer.units import BarLengths, at_aloud, length_words

_NUMBER = re.compile(r"[-−]?\d+(?:[.:+/]\d+)*")
# How units.aloud counts; "at" goes before every number, for "just after" has none.
_COUNTED = re.compile(r"\b(?:at )?(?:just (?:after|before) |(?:about )?the and of )?(?=[-−]?\d)")
_HANDS = re.compile(r"\b(?:left|right|both) hands?\b")
_SAID = {"1/s": "times a second", "beats/min": "beats a minute"}  # units in words
_AS_EXCESS = {"hand from shoulder"}  # messages tell by how much it is too far
_UNIT = re.compile(r"# (?:mm|cm|m)\b")  # a few millimetres and a few centimetres are alike


def by_cause(findings: Iterable[Finding]) -> list[list[Finding]]:
    """Findings in their order, those of one cause together where the first of them stands.

    Alike are those of one code and severity whose messages differ only by names, numbers and hands, and whose mends are
    the same. A finding about nobody, or about two who meet, stands alone.

    Parameters
    ----------
    findings : iterable of Finding
    """
    groups: dict[object, list[Finding]] = {}
    for number, finding in enumerate(findings):
        key: object = (
            _key(finding) if len(finding.who) == 1 and finding.severity != "note" else number
        )
        groups.setdefault(key, []).append(finding)
    return list(groups.values())


def as_one(group: Sequence[Finding], bars: BarLengths) -> Finding:
    """Findings of one cause as one: the first, about all whom they are about.

    Parameters
    ----------
    group : sequence of Finding
        At least one.
    bars : BarLengths
        Of the song.
    """
    first = group[0]
    who = tuple(dict.fromkeys(name for each in group for name in each.who))
    more = "" if len(group) == 1 else f" ({alike_words(group, bars)})"
    return replace(first, who=who, message=first.message + more)


def alike_words(group: Sequence[Finding], bars: BarLengths) -> str:
    """Whom a group's message is about, and of which others the same is true, in words."""
    first = group[0]
    places = list(dict.fromkeys(at_aloud(each.position or "", bars) for each in group))
    names = list(dict.fromkeys(each.who[0] for each in group))
    told = []
    if len(names) > 1:
        told.append(f"{first.who[0]}; much the same for {_listed(names[1:])}")
    if len(places) > 1:
        told.append(f"again {_times(places[1:])}")
    told = ["; ".join(told)] if told else [f"{len(group)} times"]
    return "; ".join([*told, *_ranges(group)])


def _times(times: Sequence[str]) -> str:
    """Times in a list, with one "at" before all if each has it."""
    if all(each.startswith("at ") for each in times):
        return f"at {_listed([each.removeprefix('at ') for each in times])}"
    return _listed(times)


def _ranges(group: Sequence[Finding]) -> list[str]:
    """From what to what the figures of a group go, where they are not told alike."""
    of = {figure.quantity: figure for figure in group[0].figures}
    found = []
    for quantity, first in of.items():
        values = [
            _told(figure)
            for each in group
            for figure in each.figures
            if figure.quantity == quantity
        ]
        if first.unit == "m" and max(values) < 0:  # each message says how far into
            values = [-value for value in values]
        low, high = (_in_words(end, first.unit) for end in (min(values), max(values)))
        if low != high:
            named = f"{quantity} " if len(of) > 1 else ""
            found.append(f"{named}{_from_to(low, high)}")
    return found


def _told(figure: Figure) -> float:
    """The figure as messages tell it: a reach, and what may not be under nothing, by how much it is beyond; else as it is."""
    into = figure.quantity in _AS_EXCESS or (figure.least and figure.limit == 0)
    return max(figure.beyond, 0.0) if figure.unit == "m" and into else figure.value


def _in_words(value: float, unit: str) -> str:
    if unit == "m":
        return length_words(value) + (" into" if value < 0 else "")
    return f"{value:.1f} {_SAID.get(unit, unit)}"


def _from_to(low: str, high: str) -> str:
    """Two figures as a range, whose unit is told once if it is the same."""
    number, _, unit = low.partition(" ")
    return f"{number} to {high}" if high.endswith(f" {unit}") else f"{low} to {high}"


def _listed(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _key(finding: Finding) -> tuple[str, ...]:
    return (
        finding.code,
        finding.severity,
        *(_plain(text, finding) for text in (finding.message, *finding.remedies)),
    )


def _plain(text: str, finding: Finding) -> str:
    """A text without names, numbers, hands, and words in which a position is counted."""
    for name in finding.who:
        text = re.sub(rf"\b{re.escape(name)}\b", "…", text)
    text = _COUNTED.sub("", text)
    return _UNIT.sub("#", _NUMBER.sub("#", _HANDS.sub("hand", text)))
