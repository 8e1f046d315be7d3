"""Entrances and exits: nobody dances while they wait in the wings.

The edge of the stage is no limit for whoever waits there or walks on or off unlit (`checks.distances.boundaries`); all else is looked at
there as anywhere.
"""

from collections.abc import Iterator

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.staging.on_floor.entrances import spans_in_wings
from sequencer.staging.staged import Staged
from sequencer.timing.position import TOUCH

_NOT_CHECKED = (
    "Wings: how dark they are, what stands there, and whether there is room to wait and to pass was not checked; walk the "
    "entrances once in the light of the night."
)


def in_the_wings(show: Staged) -> Outcome:
    """Moves that are danced where nobody sees them; nothing if everybody is on stage throughout."""
    if not show.comings:
        return Outcome()
    found = [finding for dancer in show.dancers for finding in _danced_in_wings(show, dancer.name)]
    return Outcome(findings=tuple(found), not_checked=(_NOT_CHECKED,))


def _danced_in_wings(show: Staged, name: str) -> Iterator[Finding]:
    for start, end in spans_in_wings(name, show.standings):
        own = [
            block for block in show.blocks_of(name)
            if not block.link and block.start < end - TOUCH and block.end > start + TOUCH
        ]  # fmt: skip
        if not own:
            continue
        first = max(own[0].start, start)
        when = f"comes on {show.at_aloud(end)}" if end < float("inf") else "does not come on again"
        yield Finding(
            code="dances-in-wings",
            severity="warn",
            who=(name,),
            start=show.seconds(first),
            end=show.seconds(min(own[-1].end, end)),
            position=show.position(first),
            message=f"{name} dances {own[0].title} in the wings, where nobody sees it; {name} {when}",
            remedies=(
                "let them come on earlier, or go off later",
                "begin the move once they are on, or end it before they go off",
            ),
            source="common practice",
        )


CHECK = Check(
    name="in-the-wings",
    run=in_the_wings,
    codes={"dances-in-wings": ("warn",)},
    depends_on=("trajectories", "places"),
    progress="checking joins",
)
