"""A check: a block that goes on for longer than eyes stay with it. The limit is made up."""

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.staging.staged import Staged

LONGEST = 16.0  # [beats]


def long_blocks(show: Staged) -> Outcome:
    """One note for each block that is longer."""
    return Outcome(
        findings=tuple(
            Finding(
                code="harbour-long-block",
                severity="note",
                who=(block.who,),
                start=show.seconds(block.start),
                end=show.seconds(block.end),
                position=show.position(block.start),
                message=f"{block.title} goes on for {block.end - block.start:g} beats",
                remedies=("change timing or direction on the way",),
                source="made up, to show how a check is written",
            )
            for block in show.blocks
            if block.end - block.start > LONGEST
        )
    )


LONG_BLOCK = Check(
    name="harbour-long-block", run=long_blocks, codes={"harbour-long-block": ("note",)}
)
