"""Which patterns and links can be flown with a passive prop, and what would do where they cannot; on request.

Each block of a hand is flown by itself (`flown_blocks`), and each link between what can be flown (`flown_gaps`). One finding
for each cause: the same pattern at the same tempo, or a link between the same two in as many beats, whoever dances it
(`flown_findings`).
"""

from collections.abc import Callable
from functools import partial

from sequencer.checks.check import Check
from sequencer.checks.dance.flown_blocks import flown_blocks, hands_of
from sequencer.checks.dance.flown_findings import (
    FlownPlace,
    block_cause,
    gap_cause,
    grouped,
    link_places,
    places_of,
    soft_findings,
    too_slow_findings,
    unflyable,
    unlinked,
)
from sequencer.checks.dance.flown_gaps import failed_gaps, gaps_between
from sequencer.checks.dance.flown_in_place import strained, touching
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.progress import Progress, stop_if_unwanted, within
from sequencer.staging.staged import Staged

_PATTERNS, _LINKS = 0.3, 0.6  # of the progress; the rest is seeking what would do
_NOT_CHECKED = (
    "As flown, which way a wrist and an elbow bend to follow the prop was not looked at.",
)
_UNFLOWN = "As flown, links to and from a pattern that cannot be flown, or was not flown, were not looked at."


def as_flown(show: Staged, *, progress: Progress | None = None) -> Outcome:
    """Findings on patterns and links with passive props: what reads soft, and what cannot be flown.

    Parameters
    ----------
    show : Staged
    progress : callable, optional
    """
    hands = list(hands_of(show))
    if not hands:
        return Outcome()
    share = _PATTERNS + _LINKS
    patterns = flown_blocks(hands, within(progress, 0.0, _PATTERNS))
    gaps, unflown = gaps_between(hands, patterns.flown)
    if show.part is not None:
        patterns = patterns.within(show.part)
        gaps = [each for each in gaps if show.part.overlaps(each.start, each.end)]
    findings = [*soft_findings(show, patterns.flown), *too_slow_findings(show, patterns.too_slow)]
    failed = failed_gaps(gaps, within(progress, _PATTERNS, share))
    asked = within(progress, share, 1.0)
    stuck = grouped((each for each in patterns.flown if not each.flies), block_cause)
    causes: list[tuple[list[FlownPlace], Callable[[Progress | None], Finding]]] = [
        *((places_of(group), partial(unflyable, show, group)) for group in stuck),
        *(
            (link_places(group), partial(unlinked, show, group))
            for group in grouped(failed, gap_cause)
        ),
    ]
    told = places_of(patterns.too_slow)  # where something asks for a mend
    for k, (places, cause) in enumerate(causes):
        stop_if_unwanted()
        finding = cause(within(asked, k / len(causes), (k + 1) / len(causes)))
        findings.append(finding)
        told += places if finding.severity != "note" else []
    findings += [*strained(show, told), *touching(show)]
    more = sorted(patterns.left | ({_UNFLOWN} if unflown else set()))
    return Outcome(findings=tuple(findings), not_checked=(*_NOT_CHECKED, *more))


CHECK = Check(
    name="as-flown",
    run=as_flown,
    codes={
        "cannot-be-flown": ("warn",),
        "flight-not-found": ("note",),
        "hits-body-as-flown": ("warn",),
        "link-cannot-be-flown": ("warn",),
        "props-meet-as-flown": ("warn",),
        "reads-soft": ("note",),
        "strained-as-flown": ("warn",),
        "too-slow-to-fly": ("warn",),
    },
    depends_on=("trajectories", "bodies", "places", "burns"),
    progress="flying the show",
    on_request=True,
    replaces=("flown-not-drawn",),
)
