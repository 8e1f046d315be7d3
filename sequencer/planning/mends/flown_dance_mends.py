"""Mends of what cannot be flown, or is strained or in its own way as flown: each tried on the whole show as flown.

The report tells one finding for each cause; here each place in the show file that it is about has a cause of its own.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from sequencer.checks.dance import as_flown
from sequencer.checks.dance.flown_faults import told_together
from sequencer.checks.distances import keeping_clear
from sequencer.checks.fault_kinds import (
    FAST_WALK,
    FLOWN_CODES,
    HIT,
    HITS,
    MEETS,
    OF_HEIGHT,
    OFF_COURSE,
    SLACK,
    STRAINS,
    TANGLE,
    TOO_FAST,
    TOO_SLOW,
)
from sequencer.findings import Finding
from sequencer.motion.fitting.windows import SIZE_PARAMETERS
from sequencer.planning.edits.dance_edits import block_ladders, other_patterns, shorter_tethers
from sequencer.planning.edits.ladders import Ladder
from sequencer.planning.edits.length_edits import left_out, length_ladders, narrower
from sequencer.planning.edits.link_edits import passage_ladders
from sequencer.planning.edits.pace_edits import cycle_ladders, cycle_left_out, with_shift
from sequencer.planning.edits.stage_edits import stage_ladders
from sequencer.planning.mends.dance_mends import OFFERED, Cause, FoundMends, causes, sought, step_of
from sequencer.planning.trying.fault_places import FaultPlace, place_of
from sequencer.planning.trying.flown_trials import FlownTrials, TrialsAlsoFlown
from sequencer.planning.trying.trial_limits import Allowance
from sequencer.planning.trying.trials import FaultTrials, mendable_faults
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.staged import Block, Path, Staged

_MOST_FLOWN = 10  # trials of the whole show as flown for a cause: a second or two each
_UNSEEN = 4  # changes of one kind that are tried where a first look says nothing
_OTHERS = 4  # patterns that are tried instead: each is flown first


def causes_as_flown(show: Staged, findings: Sequence[Finding]) -> list[tuple[Finding, Cause]]:
    """What the findings of a show as flown are about, place by place, each with the finding that tells it.

    Parameters
    ----------
    show : Staged
        As drawn.
    findings : sequence of Finding
        Of its check as flown; others than those of flown paths are left out.
    """
    told = [each for each in findings if each.code in FLOWN_CODES and each.severity != "note"]
    groups = told_together(show) if told else []
    found = []
    for finding in told:
        own = next((each for each in groups if _tells(finding, each)), None)
        if own is None:
            continue
        groups.remove(own)
        places: dict[tuple[Path | None, Path | None], list[tuple[Finding, FaultPlace]]] = {}
        for fault in own:
            place = place_of(show, fault)
            if place is not None and (place.blocks or place.passage is not None):
                places.setdefault(step_of(place), []).append((fault, place))
        for each in places.values():
            faults = tuple(fault for fault, _ in each)
            found.append((finding, Cause(code=finding.code, faults=faults, place=each[0][1])))
    return found


def causes_to_mend(show: Staged) -> list[Cause]:
    """What stops or warns of the kinds that mends are sought for, in a show as flown.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    heights = [
        each
        for each in keeping_clear.boundaries_of(flown_show(show).staged).findings
        if each.code in OF_HEIGHT and each.severity != "note"
    ]
    drawn = [each for each in mendable_faults(show) if each.code not in OF_HEIGHT]
    flown = causes_as_flown(show, as_flown.CHECK.outcome(show).findings)
    return [*causes(show, [*drawn, *heights]), *(cause for _, cause in flown)]


def _tells(finding: Finding, faults: Sequence[Finding]) -> bool:
    """Whether a finding of the check tells some faults that have one cause."""
    label = finding.message.partition(", ")[0]
    first = min(faults, key=lambda each: each.start or 0.0)
    return (
        finding.code == first.code
        and finding.position == first.position
        and set(finding.who) == {who for each in faults for who in each.who}
        and set(finding.hands) == {hand for each in faults for hand in each.hands}
        and first.message.startswith(f"{label}, ")
    )


class MendSearch:
    """Seeks mends of the causes of a show: against what it is as drawn, or as flown as well.

    Parameters
    ----------
    show : Staged
        As drawn, staged from a file.
    flown : bool
        Whether every mend is tried on it as flown.
    allowance : Allowance, optional
        What may be staged for it; as much as is wanted if not given.
    """

    def __init__(self, show: Staged, *, flown: bool, allowance: Allowance | None = None) -> None:
        share = Allowance() if allowance is None else allowance
        self._flown = FlownTrials(show=show, allowance=share) if flown else None
        self._drawn = (
            FaultTrials(show=show, allowance=share)
            if self._flown is None
            else TrialsAlsoFlown(show=show, flown=self._flown, allowance=share)
        )

    def of(self, cause: Cause, *, most: int = OFFERED, ranged: bool = True) -> FoundMends:
        """Mends of a cause, as `sought`."""
        if self._flown is None or cause.code not in (*FLOWN_CODES, *OF_HEIGHT):
            return sought(self._drawn, cause, most=most, ranged=ranged)
        kinds = flown_ladders if cause.code in FLOWN_CODES else None
        return sought(
            self._flown, cause, most=most, ranged=ranged, ladders=kinds, spent_at_most=_MOST_FLOWN
        )


def flown_ladders(trials: FaultTrials, cause: Cause) -> Iterator[Ladder]:
    """Changes for what cannot be flown or is strained or in its own way, in the order in which a performer would try them.

    Parameters
    ----------
    trials : FaultTrials
    cause : Cause
        Of flown paths.
    """
    fault = cause.faults[0]
    for ladder in _kinds(trials.show, cause.place, fault):
        # where no look settles anything each is flown with the whole show
        yield (
            replace(ladder, most=min(ladder.most, _UNSEEN)) if fault.code in OFF_COURSE else ladder
        )


def _kinds(show: Staged, place: FaultPlace, fault: Finding) -> Iterator[Ladder]:
    if fault.code == STRAINS:
        yield from _walks(show, fault)
    blocks = list(place.blocks[:1])
    for block in blocks:
        yield from _of_block(show, block, fault)
    if place.passage is not None:
        yield from passage_ladders(show, place.passage)
        beside = place.passage.after, place.passage.before
        blocks = [block for block in beside if block is not None]
    for block in blocks:
        yield replace(other_patterns(show, block), most=_OTHERS)


def _walks(show: Staged, fault: Finding) -> Iterator[Ladder]:
    """More beats for the walk during which a hand is strained, or an earlier or nearer one."""
    if fault.start is None or fault.end is None:
        return
    for before, walk in pairwise(show.standings):
        start, end = show.seconds(walk.walk), show.seconds(walk.start)
        walks = before.spots.get(fault.who[0]) != walk.spots.get(fault.who[0])
        if walks and start < fault.end and fault.start < end:
            yield from stage_ladders(show, replace(fault, code=FAST_WALK, start=start, end=end))


def _of_block(show: Staged, block: Block, fault: Finding) -> Iterator[Ladder]:
    """Changes of one pattern."""
    if fault.code in (MEETS, HITS):
        alike = _like(fault, TANGLE if fault.code == MEETS else HIT)
        yield from block_ladders(show, block, alike)
        return
    paces = _paces(show, block, fault)
    kinds = (
        *paces,
        cycle_left_out(show, block),
        *length_ladders(show, block, _like(fault, TOO_FAST), SIZE_PARAMETERS),
        narrower(show, block),
        shorter_tethers(show, block.who, fault),
        left_out(show, block),
        with_shift(block, paces[0]),
    )
    yield from (each for each in kinds if each is not None and each.rungs)


def _paces(show: Staged, block: Block, fault: Finding) -> list[Ladder]:
    """Another number of beats for the cycle: fewer where it is too slow; else either way, as a hand may be hurried by both."""
    quicker = cycle_ladders(show, block, _like(fault, SLACK))
    if fault.code == TOO_SLOW:
        return quicker
    slower = cycle_ladders(show, block, _like(fault, TOO_FAST))
    return [
        replace(
            one,
            rungs=sorted(
                (*one.rungs, *other.rungs),
                key=lambda rung: (abs(rung.value - block.cycle), rung.value),
            ),
            approach=(),
        )
        for one, other in zip(quicker, slower, strict=True)
    ]


def _like(fault: Finding, code: str) -> Finding:
    """A fault as one of a drawing that is mended in the same way; its figures are none of the drawing's."""
    return replace(fault, code=code, figures=())
