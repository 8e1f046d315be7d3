"""What a switch of who is there changed, as a page reads it: who stands where, what falls out, who leads, which jobs are open."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict
from typing import Any

from sequencer.desk.file.kept_versions import finding_from_values
from sequencer.outputs.compared.comparing import Stage
from sequencer.outputs.compared.finding_changes import CheckedFindings, findings_compared
from sequencer.outputs.compared.switched import switched
from sequencer.show.operations.operation import applied, shown_text
from sequencer.show.operations.tonight_operations import SetThere

_UNCHECKED = (
    "before the switch not all had been looked at, so nobody can tell which findings came and went",
    "",
)


def switch_view(
    before: str,
    after: str,
    reports: Sequence[Mapping[str, Any] | None],
    stage: Stage,
    file: str,
) -> dict[str, Any]:
    """A switch as JSON values.

    Parameters
    ----------
    before, after : str
        Texts of the show.
    reports : sequence of two
        What the checks said of each: `findings` and `unseen`; None if not all had answered.
    stage : callable
        Stages a text.
    file : str
        The show file's name.

    Raises
    ------
    InputError
        If one of the two cannot be staged.
    """
    everybody = applied(shown_text(after, file), SetThere()).text
    told = asdict(switched(stage(before), stage(after), stage(everybody)))
    old, new = (_checked(each) for each in reports)
    findings = None if new is None else asdict(findings_compared(old, new, _UNCHECKED))
    return {**told, "findings": findings}


def _checked(report: Mapping[str, Any] | None) -> CheckedFindings | None:
    if report is None:
        return None
    found = tuple(finding_from_values(each) for each in report["findings"])
    return CheckedFindings(found, tuple(report["unseen"]))
