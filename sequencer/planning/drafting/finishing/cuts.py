"""What the checks find on a drafted routine, and what is forbidden because of it."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Any

from sequencer.checks.check import Check
from sequencer.checks.dance import as_flown, feasible
from sequencer.checks.dance.flown_feasible import OF_THE_FLIGHT
from sequencer.checks.fire.each_burn.hanging_lit import HANGING
from sequencer.checks.outcome import Outcome
from sequencer.checks.registry import checks
from sequencer.checks.suite import outcome_as_flown
from sequencer.findings import Finding
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.gaps.on_stage import LeftOpen
from sequencer.planning.drafting.gaps.slots import Slot
from sequencer.staging.results import result_of
from sequencer.staging.staged import Staged

_NEAR_EDGE = 1.0  # [beats] from the edge of a block: what is found there is the passage's fault
_NEAR_SLOT = 4.0  # [beats] from a slot: a link into or out of rest belongs to it
_AS_DRAWN = ("joins", "feasible", "walks", "accents")  # checks of the dance that need no flight
_IN_MOTION = (*_AS_DRAWN, "as-flown", "distances", "let-go")  # checks that come first
_OF_TIMES = ("handling", "burning-time")  # checks of when somebody dances, whatever it is
_ALWAYS = 16.0  # [beats] before and after all that is danced
_LEFT = 4.0  # [beats] left open at least where dancing is in the way of lighting or putting out

Findings = dict[tuple[Any, ...], Finding]


def grave_findings(
    show: Staged, *, of: Sequence[str] | None = None, placed: bool = True, lit: bool = False
) -> Findings:
    """STOP and WARN of a show as flown, by what they say.

    Parameters
    ----------
    show : Staged
    of : sequence of str, optional
        Only those of these checks.
    placed : bool
        Whether it says where people stand; what depends on that is left out otherwise.
    lit : bool
        Whether flames are looked at of those too who are never lit: fire may be added later, and a draft should do for it.
    """
    found: Findings = {}
    for check in (*checks(), as_flown.CHECK):
        if of is not None and check.name not in of:
            continue
        if check.on_request and check is not as_flown.CHECK:
            continue
        if not placed and "places" in check.depends_on:
            continue
        if of is _AS_DRAWN:
            outcome = _outcome_as_drawn(check, show)
        else:
            outcome = outcome_as_flown(
                check, _lit(show) if lit and check is feasible.CHECK else show
            )
        for finding in outcome.findings:
            if finding.severity != "note" and finding.code not in as_flown.CHECK.replaces:
                found.setdefault(_key(finding), finding)
    return found


def _lit(show: Staged) -> Staged:
    """The show with everybody lit who never is."""
    last = max((block.end for block in show.blocks), default=0.0)
    always = ((-_ALWAYS, last + _ALWAYS),)
    return result_of(
        show,
        _lit,
        lambda: replace(
            show,
            dancers=tuple(each if each.lit else replace(each, lit=always) for each in show.dancers),
        ),
    )


def _outcome_as_drawn(check: Check, show: Staged) -> Outcome:
    """What a check finds without a flight, but for what the flight decides."""
    outcome = check.outcome(show)
    told = tuple(each for each in outcome.findings if each.code not in OF_THE_FLIGHT)
    return replace(outcome, findings=told)


def caused(show: Staged, before: Findings) -> list[Finding]:
    """STOP and WARN that a show has only with the routine; what is found without flying it comes alone."""
    new: list[Finding] = []
    for of in (_AS_DRAWN, _IN_MOTION, None):
        new = [
            each for key, each in grave_findings(show, of=of, lit=True).items() if key not in before
        ]
        if new:
            break
    return new


def of_flight_only(faults: Sequence[Finding]) -> bool:
    """Whether there are faults, and all of them warn of what cannot be flown."""
    return bool(faults) and all(each.code in as_flown.CHECK.codes for each in faults)


def at_slots_only(
    faults: Sequence[Finding], show: Staged, slots: Sequence[Slot], some: Collection[int]
) -> bool:
    """Whether all faults are found in some of the slots, or beside them."""
    starts = [each.start for each in faults]
    return all(
        start is not None and slot_at(slots, float(show.tempo.beats_from_seconds(start))) in some
        for start in starts
    )


def besides_dance(show: Staged) -> Findings:
    """STOP and WARN of a show other than those of the checks on what is danced."""
    danced = grave_findings(show, of=_IN_MOTION)
    return {key: each for key, each in grave_findings(show).items() if key not in danced}


def _key(finding: Finding) -> tuple[Any, ...]:
    return finding.code, finding.who, finding.position, finding.message


def cut(
    setting: Setting,
    picks: Sequence[int],
    show: Staged,
    faults: Sequence[Finding],
    *,
    stands: Sequence[int] = (),
) -> bool:
    """Forbid what the checks found: a passage, or a move in its place.

    Parameters
    ----------
    setting : Setting
        What is forbidden is added to it.
    picks : sequence of int
        The routine.
    show : Staged
        With it.
    faults : sequence of Finding
    stands : sequence of int
        Picks of a routine that was found to stand as a whole. Nothing of it is forbidden: where that would be, what is beside it
        in the other routine is at fault together with it.

    Returns
    -------
    cut : bool
        Whether anything could be forbidden.
    """
    any_cut = False
    links = dict(setting.passage_keys(picks))
    if stands:
        known = {key for _, key in setting.passage_keys(stands)}
        links = {pair: key for pair, key in links.items() if key not in known}
    for finding in faults:
        if finding.start is None:
            continue
        beat = _told_at(setting, show, finding.start, finding.end)
        k = slot_at(setting.slots, beat)
        if k is None:
            continue
        slot = setting.slots[k]
        out = links.get((k, k + 1))
        pairs: list[tuple[int, int]] = []
        if out is not None and beat > slot.end - out[2] - _NEAR_EDGE:
            pairs.append((k, k + 1))
        if beat < slot.start + _NEAR_EDGE + setting.late.get(k - 1, 0):
            pairs.append((k - 1, k))
        pair = next((each for each in pairs if each in links), None)
        # Where another link did not help, the move is at fault.
        danced = tuple(picks[setting.slots[n].material] for n in pair or ())
        blame = (pair, danced, finding.code, finding.who)
        again = blame in setting.blamed
        setting.blamed.add(blame)
        move = picks[slot.material]
        if (pair is None or again) and not (stands and stands[slot.material] == move):
            spared = {(piece, pick) for piece, pick in enumerate(stands)}
            setting.forbid(slot.material, move, finding.code, but=spared)
        else:
            pair = pair or next((each for each in ((k - 1, k), (k, k + 1)) if each in links), None)
            if pair is None:
                continue
            setting.bad[links[pair]] = finding.message
            setting.passed.discard(links[pair])
        setting.could_not(finding.who)
        any_cut = True
    return any_cut


def _told_at(setting: Setting, show: Staged, start: float, end: float | None) -> float:
    """The beat at which a finding between two times [s] is taken to lie.

    What is told of a whole block is no passage's fault, though it begins with one: there it is the middle. But what is told of
    more than a block may be several moments far apart, between which all is well: only the first is sure, at the start. Where that
    lies in a long rest, it is of what comes out of the rest.
    """
    first, last = (
        float(show.tempo.beats_from_seconds(at)) for at in (start, start if end is None else end)
    )
    middle = 0.5 * (first + last)
    k = slot_at(setting.slots, middle)
    if k is None:
        return first
    slot, late = setting.slots[k], setting.late.get(k, 0)
    inside = first >= slot.start - _NEAR_EDGE and last <= slot.end + late + _NEAR_EDGE
    if inside:
        return middle
    if slot_at(setting.slots, first) is None:
        return float(min(each.start for each in setting.slots if each.end > first))
    return first


def is_of_times(finding: Finding) -> bool:
    """Whether a finding is about when somebody dances, whatever it is: about the fire."""
    return any(finding.code in check.codes for check in checks() if check.name in _OF_TIMES)


def to_leave(
    setting: Setting,
    show: Staged,
    faults: Sequence[Finding],
    names: Sequence[str],
    off: Mapping[int, Collection[str]],
) -> list[LeftOpen]:
    """From when to when those of whom something is found may not dance, whatever it is: while they are lit or put out.

    Nothing is left open because a lit prop is held still: that says that somebody should dance.

    Parameters
    ----------
    setting : Setting
    show : Staged
        With the routine.
    faults : sequence of Finding
    names : sequence of str
        Who dances; all of them are left out where a finding names none of them.
    off : mapping of int to collection of str
        Who does not dance in a slot anyway.
    """
    spans = []
    for finding in faults:
        if not is_of_times(finding) or finding.code == HANGING or finding.start is None:
            continue
        start = float(show.tempo.beats_from_seconds(finding.start))
        end = start if finding.end is None else float(show.tempo.beats_from_seconds(finding.end))
        some = tuple(name for name in names if name in finding.who) or tuple(names)
        slot = _danced_then(setting.slots, start, end, some, off)
        if slot is not None:
            low = max(start, float(slot.start))
            high = min(max(end, low + _LEFT), max(slot.end, low + _LEFT))
            spans.append(LeftOpen(low, high, some))
    return spans


def _danced_then(
    slots: Sequence[Slot],
    start: float,
    end: float,
    some: Sequence[str],
    off: Mapping[int, Collection[str]],
) -> Slot | None:
    """The first slot between two beats that any of some dance, or else the one at the first beat."""
    for k, slot in enumerate(slots):
        if slot.start < end and slot.end > start and set(some) - set(off.get(k, ())):
            return slot
    at = slot_at(slots, start)
    return None if at is None else slots[at]


def slots_beside(
    faults: Sequence[Finding], show: Staged, slots: Sequence[Slot], *, by: int = 1
) -> set[int]:
    """The slots in which faults are found, and those next to them, or so many to each side."""
    beats = (float(show.tempo.beats_from_seconds(each.start or 0.0)) for each in faults)
    own = {slot_at(slots, beat) for beat in beats}
    return {k + n for k in own if k is not None for n in range(-by, by + 1)}


def slot_at(slots: Sequence[Slot], beat: float) -> int | None:
    """The slot in which a beat lies, or the nearest one within four beats."""

    def away(k: int) -> float:
        slot = slots[k]
        return max(slot.start - beat, beat - slot.end + 1e-6, 0.0)

    nearest = min(range(len(slots)), key=away)
    return nearest if away(nearest) <= _NEAR_SLOT else None
