"""Where a drafted show cannot be flown, told shortly: without what would do instead, and before anything else is made of its flight."""

from sequencer.checks.dance.flown_blocks import flown_blocks, hands_of
from sequencer.checks.dance.flown_gaps import failed_gaps, gaps_between
from sequencer.findings import Finding
from sequencer.motion.performers.flown_figures import UNSETTLED
from sequencer.staging.staged import Staged


def unflown_places(show: Staged) -> list[Finding]:
    """Every pattern and every link that cannot be flown, each by itself.

    Parameters
    ----------
    show : Staged

    Returns
    -------
    findings : list of Finding
        For cuts, not for readers: `as_flown` says more, and takes longer. What it finds may be a matter of many causes; none of
        these is missing there.
    """
    hands = list(hands_of(show))
    patterns = flown_blocks(hands, None)
    gaps, _ = gaps_between(hands, patterns.flown)
    out = [
        _short(show, "cannot-be-flown", each.hand.dancer.name, middle, each.span.label)
        for each in patterns.flown
        if not each.flies and each.figures is not None and not each.figures.unsettled
        for middle in [(each.span.start + each.span.end) / 2]
    ]
    out += [
        _short(show, "link-cannot-be-flown", gap.hand.dancer.name, gap.start, gap.label)
        for gap, link in failed_gaps(gaps, None)
        if link.residual <= UNSETTLED
    ]
    return out


def _short(show: Staged, code: str, name: str, beat: float, label: str) -> Finding:
    seconds = show.seconds(beat)
    return Finding(
        code=code,
        severity="warn",
        who=(name,),
        start=seconds,
        end=seconds,
        position=show.position(round(beat * 16) / 16),
        message=f"{label}: cannot be flown",
    )
