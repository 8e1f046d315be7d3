"""What cannot be flown, one finding for each hand and place: what changes of the show are held against.

The check tells one finding for each cause, and seeks what would do instead; here nothing is sought. A search that did not
converge counts as one that found no way: a change must not lead there.
"""

from dataclasses import replace
from typing import NamedTuple

from sequencer.checks.dance.flown_blocks import (
    FlownBlock,
    ShowHand,
    flown_blocks,
    hands_of,
    taut_from,
)
from sequencer.checks.dance.flown_findings import (
    SECTION_FLOWN,
    block_cause,
    gap_cause,
    grouped,
    limit_words,
    missed_figures,
    tempo_figure,
)
from sequencer.checks.dance.flown_gaps import FailedGap, failed_gaps, gaps_between
from sequencer.checks.dance.flown_in_place import strained, touches, touching
from sequencer.checks.fault_kinds import STRAINS, TOO_SLOW, UNFLOWN, UNFLOWN_LINK
from sequencer.findings import Figure, Finding
from sequencer.staging.results import once_per_show
from sequencer.staging.staged import Staged


class FlownFault(NamedTuple):
    """A fault of one hand in one place, or of both where their props meet."""

    finding: Finding
    cause: tuple[object, ...]  # what it has in common with those that are told with it


@once_per_show
def unflown(show: Staged) -> tuple[FlownFault, ...]:
    """Patterns and links that cannot be flown by themselves.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    hands = list(hands_of(show))
    patterns = flown_blocks(hands, None)
    gaps, _ = gaps_between(hands, patterns.flown)
    return (
        *(_slow(each) for each in patterns.too_slow),
        *(_stuck(each) for each in patterns.flown if not each.flies),
        *(_unlinked(each) for each in failed_gaps(gaps, None)),
    )


@once_per_show
def strains_told(show: Staged) -> tuple[FlownFault, ...]:
    """Hands that are strained in their place, those too that the check may leave out: a change must not lead there.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    return tuple(FlownFault(each, (STRAINS, k)) for k, each in enumerate(strained(show)))


@once_per_show
def touches_told(show: Staged) -> tuple[FlownFault, ...]:
    """Props that meet or go into the body on the flown paths, each at its worst beat: it may go on for long.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    out = []
    for k, (touch, told) in enumerate(zip(touches(show), touching(show), strict=True)):
        worst = show.seconds(touch.worst.beat)
        out.append(FlownFault(replace(told, start=worst, end=worst), (told.code, k)))
    return tuple(out)


def told_together(show: Staged) -> list[tuple[Finding, ...]]:
    """All of these faults, those together that the check tells as one finding, in its order.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    every = (*unflown(show), *strains_told(show), *touches_told(show))
    groups = grouped(every, lambda each: each.cause)
    return [tuple(each.finding for each in group) for group in groups]


def _slow(block: FlownBlock) -> FlownFault:
    tempo, taut = block.flying.tempo, taut_from(block.hand, block.span)
    said = f"is far too slow to fly at {tempo:.0f} beats a minute: taut from {taut:.0f} on"
    return _of_block(block, TOO_SLOW, said, (tempo_figure(tempo, taut),))


def _stuck(block: FlownBlock) -> FlownFault:
    if block.figures is None:
        raise ValueError("a pattern that was not flown")
    limits = limit_words(block.figures, block.flying.limits)
    said = f"cannot be flown at {block.flying.tempo:.0f} beats a minute: {limits}"
    return _of_block(block, UNFLOWN, said, missed_figures(block.figures, block.flying))


def _of_block(block: FlownBlock, code: str, said: str, figures: tuple[Figure, ...]) -> FlownFault:
    span = block.span
    finding = _fault(block.hand, code, (span.start, span.end), span.label, said, figures)
    return FlownFault(finding, (code, *block_cause(block)))


def _unlinked(failed: FailedGap) -> FlownFault:
    gap, link = failed
    said = f"cannot be flown in {gap.beats:g} beats: {limit_words(link, gap.flying.limits)}"
    figures = missed_figures(link, gap.flying)
    finding = _fault(gap.hand, UNFLOWN_LINK, (gap.start, gap.end), gap.label, said, figures)
    return FlownFault(finding, (UNFLOWN_LINK, *gap_cause(failed)))


def _fault(
    hand: ShowHand,
    code: str,
    beats: tuple[float, float],
    label: str,
    said: str,
    figures: tuple[Figure, ...],
) -> Finding:
    show = hand.show
    return Finding(
        code=code,
        severity="warn",
        who=(hand.dancer.name,),
        start=show.seconds(beats[0]),
        end=show.seconds(beats[1]),
        position=show.position(round(beats[0] * 16) / 16),
        message=f"{label}, {hand.side} hand: {said}",
        source=SECTION_FLOWN,
        figures=figures,
        hands=(hand.side,),
    )
