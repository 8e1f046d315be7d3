"""How what the checks say of two texts differs: new, gone, or told otherwise."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.findings import SEVERITIES, Finding
from sequencer.outputs.compared.show_changes import (
    ChangeKind,
    FindingChange,
    FindingsCompared,
)

UNCHECKED = "has not been checked as it stands"
_KINDS: tuple[ChangeKind, ...] = ("new", "changed", "gone", "moved")


@dataclass(frozen=True, slots=True)
class CheckedFindings:
    """A complete report's findings."""

    findings: tuple[Finding, ...]
    unseen: tuple[str, ...] = ()  # what was not looked at, a sentence each


def findings_compared(
    old: CheckedFindings | None, new: CheckedFindings | None, unchecked: tuple[str, str]
) -> FindingsCompared:
    """How the findings differ.

    Parameters
    ----------
    old, new : CheckedFindings, optional
        None if a text was not checked as it stands.
    unchecked : tuple of str
        The sentence about each, should it not have been.

    Notes
    -----
    Findings that differ only in how to mend them, or in their source, count as before: the same is found of the same people
    at the same moment.
    """
    if old is None or new is None:
        both = zip((old, new), unchecked, strict=True)
        return FindingsCompared(unknown=tuple(why for found, why in both if found is None))
    left = Counter(map(_said, old.findings))
    same, after = 0, []
    for finding in new.findings:
        if left[_said(finding)]:
            left[_said(finding)] -= 1
            same += 1
        else:
            after.append(finding)
    before = []
    for finding in old.findings:
        if left[_said(finding)]:
            left[_said(finding)] -= 1
            before.append(finding)
    changes = _paired(before, after)
    unseen = [f"not looked at before: {each}" for each in old.unseen if each not in new.unseen]
    unseen += [f"not looked at now: {each}" for each in new.unseen if each not in old.unseen]
    return FindingsCompared(changes=tuple(changes), same=same, unseen=tuple(unseen))


def _said(finding: Finding) -> tuple[object, ...]:
    """What is found, of whom and when; neither how to mend it nor its source."""
    return finding.code, finding.severity, finding.who, finding.position, finding.message


def _paired(before: Sequence[Finding], after: Sequence[Finding]) -> list[FindingChange]:
    """New ones and those that are gone; one of each about the same is one that changed."""
    known: dict[tuple[object, ...], list[Finding]] = {}
    for finding in before:
        known.setdefault((finding.code, finding.who), []).append(finding)
    changes, joined = [], Counter[int]()
    for finding in after:
        same = known.get((finding.code, finding.who))
        if same:
            own = same.pop(0)
            joined[id(own)] += 1
            changes.append(_change("changed", finding, before=_whole(own)))
        else:
            changes.append(_change("new", finding))
    changes += [_change("gone", each) for each in before if not joined[id(each)]]
    return sorted(
        changes, key=lambda each: (_KINDS.index(each.kind), SEVERITIES.index(each.severity))
    )


def _whole(finding: Finding) -> str:
    where = f" {finding.position}" if finding.position else ""
    return f"{finding.severity.upper()}{where} {finding.message}"


def _change(kind: ChangeKind, finding: Finding, before: str = "") -> FindingChange:
    return FindingChange(
        kind=kind,
        severity=finding.severity, position=finding.position, message=finding.message, before=before,
    )  # fmt: skip
