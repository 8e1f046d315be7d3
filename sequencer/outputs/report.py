"""What the checks said, as a table for a terminal and as JSON for other tools.

The JSON keys are fixed: `show`, `ok`, `findings` (`code`, `severity`, `who`, `start`, `end`, `position`,
`message`, `remedies`, `source`, `where`) and `clearances` (`between`, `distance`, `required`, `at`, `error`,
`parts`, `where`, `bound`, `position`), besides `unseen`, `cautions` and `danced` (null unless asked for).
Seconds and metres.
"""

import json
import math
import textwrap
from collections.abc import Iterable
from dataclasses import asdict

from sequencer.findings import SEVERITIES, Clearance, Finding, Report
from sequencer.outputs.danced import danced_lines
from sequencer.outputs.terminal import columns, fitted
from sequencer.timing.position import clock_text

_SIGNS = {"stop": "STOP", "warn": "WARN", "note": "note"}
_PASSES = 10  # clearances shown in the table; JSON holds all
_LEAST_WIDTH = 60


def report_json(report: Report) -> str:
    """The report as one JSON object, ending in a line end."""
    content = {
        "show": report.show,
        "ok": report.ok,
        "findings": [asdict(finding) for finding in report.findings],
        "clearances": [asdict(clearance) for clearance in report.clearances],
        "unseen": list(report.unseen),
        "cautions": list(report.cautions),
        "danced": None if report.danced is None else asdict(report.danced),
    }
    return json.dumps(_finite(content), ensure_ascii=False, indent=2, allow_nan=False) + "\n"


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
    for finding in ordered:
        lines += [*_finding_lines(finding, width), ""]
    lines += _clearance_lines(report.clearances, width)
    if report.danced is not None:
        lines += [*danced_lines(report.danced, width), ""]
    if report.unseen:
        lines += ["Not looked at", *_wrapped(report.unseen, width), ""]
    if report.cautions:
        lines += ["Cautions", *_wrapped(report.cautions, width), ""]
    return "\n".join(lines).rstrip() + "\n"


def _verdict(report: Report) -> str:
    counts = {s: sum(f.severity == s for f in report.findings) for s in SEVERITIES}
    said = ", ".join(f"{n} {severity}" for severity, n in counts.items() if n)
    if report.ok and counts["warn"]:
        return f"{report.show}: nothing stops the show as entered, but decide first ({said})"
    if report.ok:
        return f"{report.show}: nothing stands against the show as entered" + (
            f" ({said})" if said else ""
        )
    return f"{report.show}: DO NOT DANCE YET ({said})"


def _finding_lines(finding: Finding, width: int) -> list[str]:
    when = "whole show"
    if finding.start is not None:
        when = clock_text(finding.start)
        if finding.position:
            when += f" (bar {finding.position})"
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


def _clearance_lines(clearances: tuple[Clearance, ...], width: int) -> list[str]:
    measured = sorted(
        (c for c in clearances if not c.bound),
        key=lambda c: (c.distance - c.required, c.at, c.between),
    )
    if not clearances:
        return []
    lines = ["Closest passes" + (" (the tightest of all)" if len(measured) > _PASSES else "")]
    names = [" – ".join(c.between) for c in measured[:_PASSES]]
    room = min(max((columns(name) for name in names), default=8), width - 49)
    lines.append(f"  {'when':<16} {fitted('between', room)}  {'closest':>9} {'asked for':>10}")
    for name, one in zip(names, measured, strict=False):
        when = clock_text(one.at) + (f" ({one.position})" if one.position else "")
        under = "  under" if one.distance < one.required else ""
        lines.append(
            f"  {when:<16} {fitted(name, room)}  {one.distance:>7.2f} m {one.required:>8.2f} m{under}"
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


def _finite(content: object) -> object:
    """JSON knows no infinity: an unbounded distance or error is null."""
    if isinstance(content, float):
        return content if math.isfinite(content) else None
    if isinstance(content, dict):
        return {key: _finite(value) for key, value in content.items()}
    if isinstance(content, list | tuple):
        return [_finite(value) for value in content]
    return content
