"""Two texts of an open show compared, as a page reads it."""

from collections.abc import Mapping
from typing import Any

from sequencer.desk.kept_versions import finding_from_values
from sequencer.outputs.compared.comparing import ComparedText, Stage, compared
from sequencer.outputs.compared.finding_changes import CheckedFindings
from sequencer.outputs.compared.told_comparison import comparison_values


def comparison_view(
    old: Mapping[str, Any], new: Mapping[str, Any], stage: Stage | None, file: str
) -> dict[str, Any]:
    """A comparison as JSON values.

    Parameters
    ----------
    old, new : mapping
        `name`, `text`, and `report`: None, or the findings and what was not looked at of a check of that text.
    stage : callable, optional
        Stages a text; if not given, entries are compared as they are written.
    file : str
        The show file's name.
    """
    return comparison_values(compared(_side(old), _side(new), stage, file=file))


def _side(given: Mapping[str, Any]) -> ComparedText:
    report = given.get("report")
    findings = None
    if report is not None:
        found = tuple(finding_from_values(each) for each in report["findings"])
        findings = CheckedFindings(found, tuple(report["unseen"]))
    return ComparedText(given["name"], given["text"], findings=findings)
