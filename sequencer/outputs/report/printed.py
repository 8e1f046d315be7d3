"""The report of the checks, as a table for a terminal and as JSON for other tools.

The JSON keys are fixed: `show`, `ok`, `findings` (`code`, `severity`, `who`, `start`, `end`, `position`,
`message`, `remedies`, `source`, `where`, `figures`, `hands`) and `clearances` (`between`, `distance`, `required`, `at`, `error`,
`parts`, `where`, `bound`, `position`), as well as `unseen`, `cautions` and `danced` (null unless requested);
`part` if only a part of the show was looked at.
Seconds and metres.
"""

import json
import math
import textwrap
from collections.abc import Iterable
from dataclasses import asdict

from sequencer.alike_findings import as_one, by_cause
from sequencer.findings import SEVERITIES, Finding, Report
from sequencer.outputs.report.as_danced import danced_lines
from sequencer.outputs.report.terminal import columns, fitted
from sequencer.timing.position import clock_text, moment_words
from sequencer.units import BarLengths, aloud, counted

_SIGNS = {"stop": "STOP", "warn": "WARN", "note": "note"}
_PASSES = 10  # clearances shown in the table; JSON holds all
_LEAST_WIDTH = 60
_ALIKE = 3  # notes of one code that are listed one by one
_NAMED = 12  # further notes for which who and when are given


def report_json(report: Report) -> str:
    """The report as one JSON object, ending in a line end."""
    content = report_values(report)
    return json.dumps(content, ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def report_values(report: Report) -> dict[str, object]:
    """The report as JSON values."""
    content: dict[str, object] = {
        "show": report.show,
        "ok": report.ok,
        "findings": [asdict(finding) for finding in report.findings],
        "clearances": [asdict(clearance) for clearance in report.clearances],
        "unseen": list(report.not_checked),
        "cautions": list(report.cautions),
        "danced": None if report.danced is None else asdict(report.danced),
    }
    if report.part:
        content["part"] = report.part
    return {key: finite(value) for key, value in content.items()}


def report_table(report: Report, *, width: int = 100) -> str:
    """The report as text for people, worst first.

    Parameters
    ----------
    report : Report
    width : int
        Columns of the terminal; less than 60 counts as 60.
    """
    width = max(width, _LEAST_WIDTH)
    lines = [_verdict(report), ""]
    ordered = sorted(
        report.findings,
        key=lambda f: (SEVERITIES.index(f.severity), f.start is None, f.start or 0.0),
    )
    for alike in _gathered(as_one(group, report.bars) for group in by_cause(ordered)):
        lines += [
            *_finding_lines(alike[0], report.bars, width),
            *_others_lines(alike[1:], width),
            "",
        ]
    lines += _clearance_lines(report, width)
    if report.danced is not None:
        lines += [*danced_lines(report.danced, width, report.bars), ""]
    if report.not_checked:
        lines += ["Not looked at", *_wrapped(report.not_checked, width), ""]
    if report.cautions:
        lines += ["Cautions", *_wrapped(report.cautions, width), ""]
    if not report.ok:  # again where a long report ends, in view of whoever scrolls no further
        lines += [_not_yet(report)]
    return "\n".join(lines).rstrip() + "\n"


def _verdict(report: Report) -> str:
    counts = {s: sum(f.severity == s for f in report.findings) for s in SEVERITIES}
    numbers = ", ".join(f"{n} {severity}" for severity, n in counts.items() if n)
    if report.part:
        return _part_verdict(report, numbers)
    if report.ok and counts["warn"]:
        return f"{report.show}: no STOP in the show as entered, but decide on the warnings first ({numbers})"
    if report.ok:
        return f"{report.show}: no problems found in the show as entered" + (
            f" ({numbers})" if numbers else ""
        )
    return f"{report.show}: DO NOT DANCE YET ({numbers})"


def _part_verdict(report: Report, numbers: str) -> str:
    """The verdict on a part, which is none on the show."""
    told = f" ({numbers})" if numbers else ""
    if report.ok:
        return f"{report.show}, {report.part} only: nothing there stops you trying it unlit{told}; the rest was not looked at"
    return (
        f"{report.show}, {report.part} only: DO NOT DANCE IT YET{told}; the rest was not looked at"
    )


def _not_yet(report: Report) -> str:
    stops = sum(finding.severity == "stop" for finding in report.findings)
    return f"DO NOT DANCE YET: {counted(stops, 'STOP', 'STOPs')} above, each to be mended first"


def _gathered(ordered: Iterable[Finding]) -> list[list[Finding]]:
    """Findings in their order; many notes of one code are grouped under the first of them."""
    groups: list[list[Finding]] = []
    notes: dict[str, list[Finding]] = {}
    for finding in ordered:
        if finding.severity != "note":
            groups.append([finding])
        elif finding.code in notes:
            notes[finding.code].append(finding)
        else:
            notes[finding.code] = [finding]
            groups.append(notes[finding.code])
    return [
        part
        for group in groups
        for part in ([group] if len(group) > _ALIKE else [[f] for f in group])
    ]


def _others_lines(others: list[Finding], width: int) -> list[str]:
    """Who and when, for further notes like the one above."""
    if not others:
        return []
    named = [
        f"{', '.join(one.who)} {moment_words(one.start)}" if one.start is not None else "whole show"
        for one in others[:_NAMED]
    ]
    more = len(others) - len(named)
    words = f"and {len(others)} more like it: {'; '.join(named)}" + (
        f"; {more} more" if more else ""
    )
    return textwrap.wrap(
        f"{words} (--json lists each)", width, initial_indent=" " * 6, subsequent_indent=" " * 6
    )


def _finding_lines(finding: Finding, bars: BarLengths, width: int) -> list[str]:
    when = "whole show"
    if finding.start is not None:
        when = moment_words(finding.start)
        if finding.position and finding.start >= 0.0:
            when += f" ({aloud(finding.position, bars, 'bar ')})"
    head = f"{_SIGNS[finding.severity]:<5} {when:<18} {finding.code}"
    who = ", ".join(finding.who)
    lines = textwrap.wrap(f"{head}  {who}".rstrip(), width, subsequent_indent=" " * 6)
    lines += textwrap.wrap(
        finding.message, width, initial_indent=" " * 6, subsequent_indent=" " * 6
    )
    for remedy in finding.remedies:
        lines += textwrap.wrap(
            remedy, width, initial_indent="      mend: ", subsequent_indent=" " * 12
        )
    if finding.source:
        lines += textwrap.wrap(
            finding.source, width, initial_indent="      rule: ", subsequent_indent=" " * 12
        )
    return lines


def _clearance_lines(report: Report, width: int) -> list[str]:
    clearances, bars = report.clearances, report.bars
    measured = sorted(
        (c for c in clearances if not c.bound),
        key=lambda c: (c.distance - c.required, c.at, c.between),
    )
    if not clearances:
        return []
    lines = ["Closest passes" + (" (the tightest of all)" if len(measured) > _PASSES else "")]
    shown = measured[:_PASSES]
    names = [" – ".join(c.between) for c in shown]
    times = [
        clock_text(c.at) + (f" ({aloud(c.position, bars)})" if c.position else "") for c in shown
    ]
    time = max((len(when) for when in times), default=4)
    room = min(max((columns(name) for name in names), default=8), width - 33 - time)
    lines.append(f"  {'when':<{time}} {fitted('between', room)}  {'closest':>9} {'required':>10}")
    for when, name, one in zip(times, names, shown, strict=True):
        under = "  under" if one.distance < one.required else ""
        lines.append(
            f"  {when:<{time}} {fitted(name, room)}  {one.distance:>7.2f} m {one.required:>8.2f} m{under}"
        )
    rest = len(clearances) - len(measured)
    if rest:
        lines.append(f"  {rest} more stay clear by a proven bound")
    return [*lines, ""]


def _wrapped(sentences: Iterable[str], width: int) -> list[str]:
    return [
        line
        for sentence in sentences
        for line in textwrap.wrap(sentence, width, initial_indent="  ", subsequent_indent="  ")
    ]


def finite(content: object) -> object:
    """JSON has no infinity: an unbounded distance or error becomes null."""
    if isinstance(content, float):
        return content if math.isfinite(content) else None
    if isinstance(content, dict):
        return {key: finite(value) for key, value in content.items()}
    if isinstance(content, list | tuple):
        return [finite(value) for value in content]
    return content
