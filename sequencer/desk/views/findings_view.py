"""What the checks say of a show, as JSON values: each finding with the entries that it is about, and mends as operations."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict
from typing import Any

from sequencer.desk.connection.page_values import with_ids
from sequencer.desk.file.line_merge import changed_lines
from sequencer.desk.file.show_operations import done_on
from sequencer.errors import InputError
from sequencer.findings import Finding, Report
from sequencer.outputs.rehearsal.page_data import entries_document, finding_when
from sequencer.outputs.report.printed import finite, report_values
from sequencer.planning.offers import OfferedMend
from sequencer.staging.staged import Staged

_INSTANT = 1e-6  # [s]


def finding_values(staged: Staged, finding: Finding, *, flown: bool) -> dict[str, Any]:
    """A finding with the fields of `check --json`, and what it is about.

    Parameters
    ----------
    staged : Staged
    finding : Finding
    flown : bool
        Whether it is of the motion as flown.
    """
    said: Any = finite(asdict(finding))
    return {
        **said,
        "when": finding_when(finding, staged.tempo.bar_lengths),
        "as": "flown" if flown else "drawn",
        "paths": [list(path) for path in finding_paths(staged, finding)],
        "mends": [],
    }


def finding_paths(staged: Staged, finding: Finding) -> list[tuple[str | int, ...]]:
    """The entries and steps of the show file that a finding is about: what its performers dance when it is."""
    if finding.start is None:
        return []
    low = finding.start
    high = low if finding.end is None else max(finding.end, low)
    first, last = (
        float(staged.tempo.beats_from_seconds(second))
        for second in (low - _INSTANT, high + _INSTANT)
    )
    return list(
        dict.fromkeys(
            block.path
            for block in (*staged.blocks, *staged.stops)
            if block.who in finding.who and block.start <= last and block.end >= first
        )
    )


def report_view(
    staged: Staged, report: Report, text: str, file: str, offered: Sequence[OfferedMend]
) -> dict[str, Any]:
    """A whole report: as `check --json` has it, with mends as operations and what lines each changes.

    Parameters
    ----------
    staged : Staged
    report : Report
    text : str
        The show file.
    file : str
        Its name.
    offered : sequence of OfferedMend
        Of the same checks.
    """
    values = report_values(report)
    mends = offered_mends(text, file, offered)
    findings = []
    for finding in report.findings:
        said = finding_values(staged, finding, flown=True)
        said["mends"] = [
            mend for mend in mends.get(_key(finding), ()) if mend["words"] in finding.remedies
        ]
        findings.append(said)
    return {
        "ok": report.ok,
        "findings": with_ids(findings),
        "entries": finite(entries_document(report)),
        **{key: values[key] for key in ("clearances", "unseen", "cautions")},
    }


def offered_mends(
    text: str, file: str, offered: Iterable[OfferedMend]
) -> dict[tuple[object, ...], list[dict[str, Any]]]:
    """Mends as operations, by what their findings are; one that cannot be written into the text is left out."""
    found: dict[tuple[object, ...], list[dict[str, Any]]] = {}
    for mend in offered:
        operation = mend_operation(mend)
        try:
            after, _ = done_on(text, file, operation)
        except InputError:
            continue
        own = {"words": mend.words, "operation": operation, "lines": changed_lines(text, after)}
        found.setdefault(_key(mend.finding), []).append(own)
    return found


def mend_operation(mend: OfferedMend) -> dict[str, Any]:
    """The operation that makes a mend's changes."""
    steps = [
        {
            "do": "make-changes",
            "said": mend.words,
            "changes": [[list(path), _json(value)] for path, value in step.changes],
            "insertions": [
                [list(path), index, _json(entry)] for path, index, entry in step.insertions
            ],
        }
        for step in mend.steps
    ]
    return (
        steps[0]
        if len(steps) == 1
        else {"do": "do-together", "said": mend.words, "operations": steps}
    )


def _key(finding: Finding) -> tuple[object, ...]:
    return finding.code, finding.who, finding.position, finding.message


def _json(value: Any) -> Any:
    """A value of a change as JSON has it: tuples are lists."""
    if isinstance(value, dict):
        return {str(key): _json(own) for key, own in value.items()}
    return [_json(own) for own in value] if isinstance(value, list | tuple) else value
