"""What is said where no routine passes the checks: what they find, and what to relax."""

from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.planning.drafting.costing.refusal import narrowest
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.finishing.cuts import Findings, is_of_times
from sequencer.planning.drafting.finishing.walk_faults import walk_at_fault
from sequencer.planning.drafting.gaps.draft_ground import DraftGround

NOT_CLEAN = "no-clean-draft"


def not_clean(
    ground: DraftGround, before: Findings, setting: Setting | None, finding: Finding | None
) -> InputError:
    """The refusal of a draft.

    Parameters
    ----------
    ground : DraftGround
    before : Findings
        What is found in the show without the routine.
    setting : Setting, optional
        What was searched, with what was forbidden in it.
    finding : Finding, optional
        Found with the last routine.
    """
    what = "no routine was found that passes the checks"
    if finding and (walk := walk_at_fault(ground.base, before, finding)):
        coming, known = walk
        return ground.fault(
            NOT_CLEAN, ("entrances",),
            f"{what}; as {coming.who} {coming.words} there is this without any dance too: {known.message}",
            "move the entrance, or give another side",
        )  # fmt: skip
    if finding is not None:
        at = f" at {finding.position}" if finding.position else ""
        what += f": {finding.message}{at}"
        if is_of_times(finding) and finding.remedies:  # whatever is danced, it is about the fire
            return ground.fault(NOT_CLEAN, ("fire",), what, ", or ".join(finding.remedies))
    narrow = narrowest(setting, ground.base.position) if setting else ""
    what += f"; {narrow}" if narrow else ""
    return ground.fault(
        NOT_CLEAN, ("timeline",), what,
        "add patterns under `repertoire`, `known`, raise `level`, or take a wish out",
    )  # fmt: skip
