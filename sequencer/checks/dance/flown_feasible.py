"""Whether a performer can dance the show as it is flown: what is told of a flown hand in place of what its drawing says.

How near a flame passes the body is searched by branch and bound on the flown splines. How fast and how hard a flown hand and
its prop go is told as strain (`flown_in_place`); how often a pattern turns stays the drawing's. Where a drawn path stands in,
its block is told as drawn.
"""

from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

import numpy as np

from sequencer.checks.dance import feasible
from sequencer.checks.dance.dancer_case import DancerCase
from sequencer.checks.dance.feasible import (
    BLOCKS_ONLY,
    NO_WALKING,
    feasible_as_drawn,
    feasible_beside,
)
from sequencer.checks.dance.flames_near import flames_near
from sequencer.checks.dance.flown_in_place import own_gaps
from sequencer.checks.dance.proven import SpanLeast
from sequencer.checks.fault_kinds import NEAR_FLAME, PROP_TURNS, TOO_FAST
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.geometry.bodies import Side
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.trajectories.flown_path.flown_hand import FlownHand
from sequencer.motion.trajectories.trajectory import Span
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.staged import Staged

OF_THE_FLIGHT = (
    NEAR_FLAME,
    TOO_FAST,
)  # codes that the flight of a hand decides, and not its drawing


def feasible_as_flown(show: Staged) -> Outcome:
    """Findings on whether the performers can dance their blocks; of hands that are flown, as they are flown.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    outcome = feasible_beside(show, partial(_told, show))
    if all(_all_flown(each) for each in flown_show(show).staged.dancers):
        less = (BLOCKS_ONLY, NO_WALKING)
        outcome = replace(
            outcome, not_checked=tuple(each for each in outcome.not_checked if each not in less)
        )
    return outcome


def flight_faults(show: Staged) -> list[Finding]:
    """What warns among the findings that the flight decides, in place of those of the drawing.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    drawn = [each for each in feasible_as_drawn(show).findings if each.code in OF_THE_FLIGHT]
    return [
        each
        for case in feasible.cases_of(show)
        for each in _told(show, case, [own for own in drawn if own.who == (case.dancer.name,)])
        if each.severity != "note"
    ]


def _told(show: Staged, case: DancerCase, drawn: Sequence[Finding]) -> list[Finding]:
    """What is told of a performer: of flown hands what the flight decides, in place of what the drawing says of that."""
    hands = _flights(show, case.dancer.name)
    out: list[Finding] = []
    for each in drawn:
        flown = [hands[side] for side in each.hands if side in hands]
        if each.code == TOO_FAST and flown and _is_flown(show, flown[0], each):
            out += _of_turns(each)
        elif each.code != NEAR_FLAME or not flown:
            out.append(each)
    for side, hand in hands.items():
        out += flames_near(case, side, _near(show, case, side, hand), _rate_of(hand))
    return out


def _is_flown(show: Staged, hand: FlownHand, finding: Finding) -> bool:
    """Whether what a finding is about is flown half way through."""
    start = finding.start or 0.0
    ends = np.array([start, start if finding.end is None else finding.end])
    middle = float(np.mean(show.tempo.beats_from_seconds(ends)))
    return any(each.flown and each.start <= middle < each.end for each in hand.courses)


def _of_turns(finding: Finding) -> list[Finding]:
    """What a finding on the drawing's pace says of the prop's turns, which are the pattern's."""
    label, _, said = finding.message.partition(": ")
    return [
        replace(finding, message=f"{label}: {words}", figures=(figure,))
        for words, figure in zip(said.split("; "), finding.figures, strict=True)
        if figure.quantity == PROP_TURNS
    ]


def _near(show: Staged, case: DancerCase, side: Side, hand: FlownHand) -> list[SpanLeast]:
    """The gaps of a flown prop to the body as far as they were asked for, with the spans that they are in."""
    gaps = own_gaps(show, _flown(show, case.dancer.name))
    near = [
        each for each in gaps.of(side) if each[2].label >= 0
    ]  # the others are farther than was asked
    spans = hand.drawn.spans if near else ()
    starts = [each.start for each in spans]
    return [
        SpanLeast(spans[_span_at(spans, starts, (low + high) / 2.0)], least)
        for low, high, least in near
    ]


def _flights(show: Staged, who: str) -> dict[Side, FlownHand]:
    dancer = _flown(show, who)
    return {side: hand for side, hand in dancer.trajectories.items() if isinstance(hand, FlownHand)}


def _flown(show: Staged, who: str) -> Dancer:
    return next(each for each in flown_show(show).staged.dancers if each.name == who)


def _all_flown(dancer: Dancer) -> bool:
    """Whether all that a performer holds is flown throughout."""
    return all(
        isinstance(hand, FlownHand) and all(course.flown for course in hand.courses)
        for hand in dancer.trajectories.values()
    )


def _rate_of(hand: FlownHand) -> Callable[[Span, float], float]:
    def rate(_span: Span, beat: float) -> float:
        return float(np.linalg.norm(hand.head.at(np.array(beat), 1)))

    return rate


def _span_at(spans: Sequence[Span], starts: Sequence[float], beat: float) -> int:
    """The place of the span that a beat is in, of spans that follow each other; the last one if it is in none."""
    k = bisect_right(starts, beat) - 1
    return k if k >= 0 and beat < spans[k].end else len(spans) - 1


CHECK_AS_FLOWN = replace(
    feasible.CHECK,
    name="feasible-as-flown",
    run=feasible_as_flown,
    depends_on=(*feasible.CHECK.depends_on, "places"),
)
