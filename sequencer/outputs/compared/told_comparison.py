"""A comparison of two texts of a show, as text for a terminal and as JSON values."""

import textwrap
from dataclasses import asdict
from typing import Any

from sequencer.outputs.compared.show_changes import SUBJECT_WORDS, ShowChange, ShowComparison
from sequencer.units import counted

_MARKS = {"new": "+", "gone": "−", "moved": "→", "changed": "≠"}


def comparison_values(comparison: ShowComparison) -> dict[str, Any]:
    """A comparison as JSON values.

    Returns
    -------
    values : dict
        `old` and `new` (what the two are called), `identical`, `says_the_same`, `line` (all in one line), `changes` (each with
        `subject`, `kind`, `words`, `who`, `spans` and `before` in beats, `position`, `moves` in metres, `old` and `new` paths),
        `eights` (rows of the sheet with the numbers of their changes), `elsewhere` (numbers of all others), `findings`, `faults`.
    """
    return {
        "old": comparison.old,
        "new": comparison.new,
        "identical": comparison.identical,
        "says_the_same": comparison.says_the_same,
        "line": comparison.line,
        "changes": [_change_values(each) for each in comparison.changes],
        "eights": [asdict(row) for row in comparison.eights],
        "elsewhere": list(comparison.elsewhere),
        "findings": {**asdict(comparison.findings), "line": comparison.findings.words},
        "faults": list(comparison.faults),
    }


def _change_values(change: ShowChange) -> dict[str, Any]:
    values = asdict(change)
    del values["keys"]
    return {**values, "old": [list(path) for path in change.old], "new": [list(path) for path in change.new]}  # fmt: skip


def comparison_text(comparison: ShowComparison, *, width: int = 100) -> str:
    """A comparison as lines of text, eight by eight, then all else by its subject."""
    lines = [f"{comparison.new}, compared with {comparison.old}: {comparison.line}"]
    lines += [f"  {fault}" for fault in comparison.faults]
    section = None
    for row in comparison.eights:
        if row.section != section:
            section = row.section
            lines += ["", section or "before the first section"]
        bars = f"  bar {row.bar}"
        for k, number in enumerate(row.changes):
            lines += _wrapped(bars if k == 0 else "", _line(comparison.changes[number]), width)
    elsewhere = [comparison.changes[k] for k in comparison.elsewhere]
    for subject, words in SUBJECT_WORDS.items():
        own = [each for each in elsewhere if each.subject == subject]
        if own:
            lines += ["", words[:1].upper() + words[1:]]
            lines += [line for each in own for line in _wrapped("", _line(each), width)]
    return "\n".join([*lines, *_findings_lines(comparison, width)])


def _line(change: ShowChange) -> str:
    who = f"{', '.join(change.who)}: " if change.who else ""
    when = f"{change.position} " if change.position else ""
    return f"{_MARKS[change.kind]} {when}{who}{change.words}"


def _wrapped(head: str, text: str, width: int) -> list[str]:
    start = f"{head:<10}"
    return textwrap.wrap(
        text, max(width, 40), initial_indent=start, subsequent_indent=" " * (len(start) + 2),
        break_long_words=False, break_on_hyphens=False,
    )  # fmt: skip


def _findings_lines(comparison: ShowComparison, width: int) -> list[str]:
    found = comparison.findings
    if comparison.identical and not found.changes:
        return []
    if found.unknown:
        return ["", *(f"Findings: {why}; check it to compare them" for why in found.unknown)]
    lines = ["", f"Findings: {counted(found.same, 'finding')} as before"]
    for each in found.changes:
        where = f" {each.position}" if each.position else ""
        before = f"; before: {each.before}" if each.before else ""
        text = f"{_MARKS[each.kind]} {each.kind}: {each.severity.upper()}{where} {each.message}{before}"
        lines += _wrapped("", text, width)
    for words in found.unseen:
        lines += _wrapped("", f"≠ {words}", width)
    return lines
