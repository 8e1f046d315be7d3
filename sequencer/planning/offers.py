"""Findings of the checks, with the mends that were tried on the show and work."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from sequencer.checks.dance.feasible import TELLS_MORE
from sequencer.checks.distances.drift_runs import Trials
from sequencer.checks.distances.spacing import Conflict
from sequencer.checks.fault_kinds import (
    ANOTHER_CYCLE,
    FAULT_NAMES,
    OF_BURNS,
    OF_FIT,
    ROOTS,
    TOO_SLOW,
    UNFLOWN,
)
from sequencer.checks.fire.each_burn.burning_time import ends_earlier
from sequencer.checks.outcome import Outcome
from sequencer.checks.suite import examined, reported
from sequencer.findings import SEVERITIES, Finding, Report
from sequencer.planning.edits.length_edits import ways_by_itself
from sequencer.planning.edits.space_edits import SpaceEdit
from sequencer.planning.mends.cycle_notes import CHOOSE, cycle_written
from sequencer.planning.mends.dance_mends import Cause, DanceMend, FoundMends, causes
from sequencer.planning.mends.flown_dance_mends import MendSearch, causes_as_flown
from sequencer.planning.mends.flown_mends import Pair, words_as_flown
from sequencer.planning.mends.space_mends import MENDED, words_for
from sequencer.planning.trying.flown_trials import FlownTrials
from sequencer.planning.trying.trial_limits import Allowance, allowance_for, conflicts_to_mend
from sequencer.planning.trying.trials import DanceEdit, FaultTrials
from sequencer.progress import Progress, stop_if_unwanted, within
from sequencer.staging.staged import Staged
from sequencer.units import BarLengths, at_aloud, counted

MOST_CAUSES = 12  # for which mends are sought; the others wait
MOST_FLIGHTS_CAUSES = 6  # the same of what cannot be flown: its trials take longer
NOT_TONIGHT = "No mends were sought: they would change the show for everybody, and not everybody is there tonight."
LATER = "mend the ones above first, then check again: mends are sought for a few at a time"
TOO_LARGE = (
    "In so large a show each change takes long to try: not all mends were tried for {}, which are less urgent than the others. "
    "Mend those first, then check again."
)
_CHECKED = 0.8  # of the progress


def checked_with_mends(
    show: Staged,
    *,
    flown: bool = False,
    trials: Trials | None = None,
    progress: Progress | None = None,
) -> Report:
    """Every check on a staged show, with the mends that were tried and work.

    Parameters
    ----------
    show : Staged
    flown : bool
        Whether it is also checked which patterns and links can be flown.
    trials : Trials, optional
        Settings for dancing the show with random errors; not danced if omitted.
    progress : callable, optional

    Raises
    ------
    InputError
        If the show's file of rules cannot be used.
    """
    outcome, danced = examined(
        show, flown=flown, trials=trials, progress=within(progress, 0.0, _CHECKED)
    )
    outcome = with_mends(show, outcome, flown=flown, progress=within(progress, _CHECKED, 1.0))
    return reported(show, outcome, danced)


@dataclass(frozen=True, slots=True, kw_only=True)
class OfferedMend:
    """A mend that was tried and works, as words and as what it changes."""

    finding: Finding
    words: str  # one of the finding's remedies
    steps: tuple[DanceEdit | SpaceEdit, ...]  # one after the other


def with_mends(
    show: Staged,
    outcome: Outcome,
    *,
    flown: bool = False,
    offered: list[OfferedMend] | None = None,
    progress: Progress | None = None,
) -> Outcome:
    """The outcome, with mends in every finding that has any, best first.

    Parameters
    ----------
    show : Staged
    outcome : Outcome
        Outcome of the checks.
    flown : bool
        Whether its distances are those of the show as flown: then mends of these are tried on it as flown.
    offered : list, optional
        Is given the mends themselves, except, of a show as drawn, those of distances.
    progress : callable, optional

    Notes
    -----
    None are sought for a part of a show: they are tried on the whole, whose other faults would count as new ones. None are
    sought while somebody is away or stands in either: they would be written into the show for everybody, untried.
    """
    if show.part is not None:
        return outcome
    if show.tonight:
        return outcome + Outcome(not_checked=(NOT_TONIGHT,))
    close: dict[Pair, tuple[str, ...]] = {}
    edits: dict[Pair, tuple[SpaceEdit, ...]] = {}
    if any(isinstance(each.subject, Conflict) for each in outcome.mendable):
        close = words_as_flown(show, progress, edits) if flown else words_for(show)
    words: dict[Finding, tuple[str, ...]] = {}
    for each in outcome.mendable:
        if isinstance(each.subject, Conflict):
            pair = each.finding.who, each.finding.position
            words[each.finding] = close.get(pair, ())
            if offered is not None:
                offered += [
                    OfferedMend(finding=each.finding, words=edit.words, steps=(edit,))
                    for edit in edits.get(pair, ())
                ]
    words |= _cycles(show, outcome.findings, offered)
    allowance = allowance_for(show)
    if show.read is not None and show.heard is not None:
        words |= dance_words(
            show, outcome.findings, flown=flown, offered=offered, allowance=allowance, progress=progress
        )  # fmt: skip
    conflicts = sum(isinstance(each.subject, Conflict) for each in outcome.mendable)
    waiting = sum(LATER in each for each in words.values()) if allowance.used_up else 0
    left_out = _left_out(show, conflicts, waiting)
    return replace(
        outcome,
        not_checked=(*outcome.not_checked, *left_out),
        findings=tuple(
            replace(each, remedies=words[each]) if words.get(each) else each
            for each in outcome.findings
        ),
    )


def _cycles(
    show: Staged, findings: Sequence[Finding], offered: list[OfferedMend] | None
) -> dict[Finding, tuple[str, ...]]:
    """Notes on cycles that are left open, with the change that writes down what is danced now."""
    words: dict[Finding, tuple[str, ...]] = {}
    for note in findings if show.read is not None and show.heard is not None else ():
        edit = cycle_written(show, note) if note.code == ANOTHER_CYCLE else None
        if edit is not None:
            words[note] = edit.words, CHOOSE
            if offered is not None:
                offered.append(OfferedMend(finding=note, words=edit.words, steps=(edit,)))
    return words


def _left_out(show: Staged, conflicts: int, faults: int) -> Iterator[str]:
    """What is said of a show that is so large that mends were sought for fewer faults than else."""
    most = conflicts_to_mend(show, MENDED)
    close = conflicts - most if most < MENDED else 0
    waiting = [
        words
        for number, words in (
            (faults, counted(faults, "fault of the dance", "faults of the dance")),
            (close, counted(close, "place where two come too close", "places where two come too close")),
        )
        if number > 0
    ]  # fmt: skip
    if waiting:
        yield TOO_LARGE.format(" and ".join(waiting))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Known:
    """A cause for which a mend was found."""

    cause: Cause
    mend: DanceMend
    trials: FaultTrials  # against the faults of the show with it


def dance_words(
    show: Staged,
    findings: Sequence[Finding],
    *,
    flown: bool = False,
    offered: list[OfferedMend] | None = None,
    allowance: Allowance | None = None,
    progress: Progress | None = None,
) -> dict[Finding, tuple[str, ...]]:
    """Mends of the faults of the dance, of walks and of burns, in words, by finding.

    Parameters
    ----------
    show : Staged
        Staged from a file.
    findings : sequence of Finding
    flown : bool
        Whether they are of the show as flown: then every mend is tried on it as flown.
    offered : list, optional
        Is given the mends themselves.
    allowance : Allowance, optional
        What may be staged for them; as much as is wanted if not given.
    progress : callable, optional
    """
    share = Allowance() if allowance is None else allowance
    flights = causes_as_flown(show, findings) if flown else []
    tells = {id(cause): finding for finding, cause in flights}
    found = in_order([*causes(show, findings), *(cause for _, cause in flights)])
    search = MendSearch(show, flown=flown, allowance=share)
    known: list[_Known] = []
    words: dict[Finding, tuple[str, ...]] = {}
    asked = {True: 0, False: 0}
    for k, cause in enumerate(found):
        if progress is not None:
            progress(f"seeking mends: {k} of {len(found)}", k / len(found))
        stop_if_unwanted()
        told: tuple[str, ...]
        of_flight = id(cause) in tells
        if (before := follows_from(cause, known)) is not None:
            told = (f"mend {_named(before, show.tempo.bar_lengths)} first; that clears this too",)
        elif (beside := _next_to(cause, known)) is not None:
            told = (
                f"mend {_named(beside, show.tempo.bar_lengths)} first, then check again: what leads there changes with it",
            )
        elif share.used_up or asked[of_flight] == (
            MOST_FLIGHTS_CAUSES if of_flight else MOST_CAUSES
        ):
            told = (LATER,)
        else:
            asked[of_flight] += 1
            answer = search.of(cause)
            told = tuple(mend.words for mend in answer.mends) or (
                (LATER,) if share.used_up  # not all that there is was tried
                else (*nothing_found(show, cause, answer), *_by_itself(tells.get(id(cause))))
            )  # fmt: skip
            known += [_known(cause, mend, flown=flown) for mend in answer.mends[:1]]
            if offered is not None:
                offered += [
                    OfferedMend(finding=of, words=mend.words, steps=mend.steps)
                    for of in ((tells[id(cause)],) if of_flight else cause.faults)
                    for mend in answer.mends
                ]
        if of_flight:
            finding = tells[id(cause)]
            if before is None or finding not in words:  # else a place that is told clears it
                words[finding] = _with_place(
                    words.get(finding, ()), cause.faults[0], told, show.tempo.bar_lengths
                )
        else:
            words |= {fault: told + _besides(fault) for fault in cause.faults}
    return words


def _with_place(
    before: tuple[str, ...], fault: Finding, told: tuple[str, ...], bars: BarLengths
) -> tuple[str, ...]:
    """Words on several places that one finding tells: all of the first, and where the others are."""
    if not before:
        return told
    if told == (LATER,):
        return before if LATER in before else (*before, LATER)
    return (*before, f"{at_aloud(fault.position or '', bars)}: {told[0]}")


def _named(known: _Known, bars: BarLengths) -> str:
    fault = known.cause.faults[0]
    return f"the {FAULT_NAMES[fault.code]} {at_aloud(fault.position or '', bars)}"


def _besides(fault: Finding) -> tuple[str, ...]:
    """What else a finding names, apart from changes of the show file: of a burn, another wick or a relight."""
    if fault.code not in OF_BURNS:
        return ()
    return tuple(each for each in fault.remedies if not ends_earlier(each))


def in_order(found: Sequence[Cause]) -> list[Cause]:
    """Causes in the order in which they are mended: what stops, then what others follow from, then by time.

    A block that only warns, next to a passage that stops, comes before it: the passage may follow from it.
    """
    beside = {
        (block.path, block.start)
        for cause in found
        if cause.faults[0].severity == "stop" and cause.place.passage is not None
        for block in (cause.place.passage.before, cause.place.passage.after)
        if block is not None
    }

    def rank(cause: Cause) -> int:
        place = cause.place
        near = any((block.path, block.start) in beside for block in place.blocks)
        root = cause.code in ROOTS and not place.at_the_passage
        return 0 if root and near else SEVERITIES.index(cause.faults[0].severity)

    return sorted(
        found,
        key=lambda cause: (
            rank(cause),
            ROOTS.index(cause.code) if cause.code in ROOTS and cause.place.blocks else len(ROOTS),
            cause.faults[0].start or 0.0,
        ),
    )  # fmt: skip


def _known(cause: Cause, mend: DanceMend, *, flown: bool) -> _Known:
    """A cause with its mend, and the faults of the show with that: looked up for each cause after it, gathered once."""
    after = mend.after
    trials = FlownTrials(show=after) if flown else FaultTrials(show=after, fly=True)
    return _Known(cause=cause, mend=mend, trials=trials)


def follows_from(cause: Cause, known: Sequence[_Known]) -> _Known | None:
    """A cause whose mend, as the show is staged with it, clears this one too."""
    for before in known:
        if before.cause.place.who == cause.place.who and not before.trials.has(cause.faults):
            return before
    return None


def _next_to(cause: Cause, known: Sequence[_Known]) -> _Known | None:
    """A cause that is mended in a block before or after the passage that another one is about."""
    passage = cause.place.passage
    if passage is None or not cause.place.at_the_passage:
        return None
    beside = {(own.path, own.start) for own in (passage.before, passage.after) if own is not None}
    for before in known:
        place = before.cause.place
        if (
            before.cause.code in ROOTS
            and not place.at_the_passage
            and place.who == cause.place.who
            and any((own.path, own.start) in beside for own in place.blocks)
        ):
            return before
    return None


def _by_itself(finding: Finding | None) -> tuple[str, ...]:
    """What the check of flights found to fly, for which no place in the show was found."""
    if finding is None or finding.code not in (UNFLOWN, TOO_SLOW):
        return ()
    return tuple(
        f"for the pattern by itself, whatever is beside it: {way}" for way in finding.remedies
    )


def nothing_found(show: Staged, cause: Cause, answer: FoundMends) -> tuple[str, ...]:
    """What is said where no change helps: what was tried, and what finds more."""
    if not answer.tried:
        return ()
    tried = ", ".join(answer.tried)
    said = f"nothing was found that mends it without harm elsewhere; tried: {tried} ({answer.trials} trials)"
    fit = OF_FIT if cause.place.blocks and not cause.place.at_the_passage else ()
    alone = ways_by_itself(show, cause.place.blocks[0]) if cause.code in fit else ()
    return (
        said,
        *(f"for the pattern by itself, whatever is beside it: {way}" for way in alone),
        *(each for each in cause.faults[0].remedies if each == TELLS_MORE),
    )
