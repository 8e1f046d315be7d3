"""Whether a draft could meet what is wished; a note, since what is danced does not depend on it."""

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.staging.entries.wish_faults import wish_faults
from sequencer.staging.staged import Staged


def wishes_kept(show: Staged) -> Outcome:
    """Wishes that no draft can meet, each by its line of the file."""
    if show.read is None:
        return Outcome()
    faults = wish_faults(show.read, show.book, show.song)
    return Outcome(findings=tuple(
        Finding(
            code="wish-for-nothing",
            severity="note",
            who=(),
            start=None,
            end=None,
            position=None,
            message=f"line {fault.place.line}: {fault.what}",
            remedies=(fault.mend,),
            source="this show's wishes; `sequencer draft` refuses them",
        )
        for fault in faults
    ))  # fmt: skip


CHECK = Check(
    name="wishes",
    run=wishes_kept,
    codes={"wish-for-nothing": ("note",)},
    progress="checking joins",
)
