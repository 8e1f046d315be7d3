"""Which links of a show cannot be flown, told shortly: without what would do instead, and before anything else is made of its flight."""

from sequencer.checks.dance.flown_blocks import flown_blocks, hands_of
from sequencer.checks.dance.flown_gaps import failed_gaps, gaps_between
from sequencer.findings import Finding
from sequencer.motion.performers.flown_figures import UNSETTLED
from sequencer.staging.staged import Staged


def unflown_links(show: Staged) -> list[Finding]:
    """Every link between what can be flown that cannot, each by itself.

    Parameters
    ----------
    show : Staged

    Returns
    -------
    findings : list of Finding
        For whoever tries shows one after another: `as_flown` warns of these links too, says more, and takes longer.
    """
    hands = list(hands_of(show))
    gaps, _ = gaps_between(hands, flown_blocks(hands, None).flown)
    return [
        Finding(
            code="link-cannot-be-flown",
            severity="warn",
            who=(gap.hand.dancer.name,),
            start=show.seconds(gap.start),
            end=show.seconds(gap.end),
            position=show.position(round(gap.start * 16) / 16),
            message=f"{gap.label}: cannot be flown",
        )
        for gap, link in failed_gaps(gaps, None)
        if link.residual <= UNSETTLED
    ]
