"""Findings that are one to a reader: the same fault of several performers, or of one phrase that comes back.

The report and its JSON keep every finding; text and pages tell one cause once.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from sequencer.findings import Finding
from sequencer.units import aloud

_NUMBER = re.compile(r"[-−]?\d+(?:[.:+/]\d+)*")
_HANDS = re.compile(r"\b(?:left|right|both) hands?\b")
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


def as_one(group: Sequence[Finding]) -> Finding:
    """Findings of one cause as one: the first, about all whom they are about.

    Parameters
    ----------
    group : sequence of Finding
        At least one.
    """
    first = group[0]
    who = tuple(dict.fromkeys(name for each in group for name in each.who))
    more = "" if len(group) == 1 else f" ({alike_words(group)})"
    return replace(first, who=who, message=first.message + more)


def alike_words(group: Sequence[Finding]) -> str:
    """Whom a group's message is about, and of which others the same is true, in words."""
    first = group[0]
    places = list(dict.fromkeys(aloud(each.position or "") for each in group))
    names = list(dict.fromkeys(each.who[0] for each in group))
    told = []
    if len(names) > 1:
        told.append(f"{first.who[0]}; much the same for {_listed(names[1:])}")
    if len(places) > 1:
        told.append(f"again at {_listed(places[1:])}")
    return "; ".join(told) or f"{len(group)} times"


def _listed(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _key(finding: Finding) -> tuple[str, ...]:
    return (
        finding.code,
        finding.severity,
        *(_plain(text, finding) for text in (finding.message, *finding.remedies)),
    )


def _plain(text: str, finding: Finding) -> str:
    """A text without names, numbers and hands."""
    for name in finding.who:
        text = re.sub(rf"\b{re.escape(name)}\b", "…", text)
    return _UNIT.sub("#", _NUMBER.sub("#", _HANDS.sub("hand", text)))
