"""Two texts of an open show compared, as a page reads it."""

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from sequencer.desk.file.kept_versions import finding_from_values
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
        `name`, `text`, `marked` (whether its file begins with a byte order mark), and `report`: None, or the findings and what was not looked at of a check of that text; `unchecked`, if
        given, says why there is none.
    stage : callable, optional
        Stages a text; if not given, entries are compared as they are written.
    file : str
        The show file's name.
    """
    values = comparison_values(compared(_side(old), _side(new), stage, file=file))
    return {**values, "faults": [_plain(each, file) for each in values["faults"]]}


def _plain(fault: str, file: str) -> str:
    """A sentence with an error in it without that error's code and place in the show file."""
    return re.sub(rf"{re.escape(file)}(:\d+)*: | \[[a-z-]+\]", "", fault)


def _side(given: Mapping[str, Any]) -> ComparedText:
    report = given.get("report")
    findings = None
    if report is not None:
        found = tuple(finding_from_values(each) for each in report["findings"])
        findings = CheckedFindings(found, tuple(report["unseen"]))
    marked = bool(given.get("marked"))
    whole = ComparedText(given["name"], given["text"], findings=findings, marked=marked)
    return replace(whole, unchecked=given["unchecked"]) if "unchecked" in given else whole
