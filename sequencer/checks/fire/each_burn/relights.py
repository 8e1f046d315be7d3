"""Relights: a wick that is cold and soaked again, or a second set of props and the time to take it up."""

from collections.abc import Mapping, Sequence

from sequencer.checks.fire.each_burn.busy import Busy, beat_after, beat_before, during
from sequencer.findings import Finding
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.handling import seconds_words, walk_seconds
from sequencer.safety.safety_plan import SafetyPlan, refuel_rules, refuel_seconds
from sequencer.staging.staged import Staged
from sequencer.timing.position import moment_words

_EXACT = 1e-6  # [s]
_HOT = "no relighting of a hot wick near fuel: common practice"


def relight_findings(
    show: Staged, plan: SafetyPlan, busy: Mapping[str, Sequence[Busy]]
) -> list[Finding]:
    """Relights for which there is no time, or no free hand.

    Parameters
    ----------
    show : Staged
    plan : SafetyPlan
        Of that show.
    busy : mapping of performer to sequence of Busy
    """
    before: dict[str, PlannedBurn] = {}
    found = []
    rested: dict[str, PlannedBurn] = {}  # the last burn of the set that each has laid down
    for burn in plan.burns:
        last = before.get(burn.who)
        before[burn.who] = burn
        if last is None:
            continue
        check = _second_set if burn.second_set else _same_wick
        found += check(show, plan, last, burn, busy[burn.who])
        if burn.second_set:
            laid_down = rested.get(burn.who)
            rested[burn.who] = last
            if laid_down is not None:
                found += _set_again(show, plan, laid_down, burn)
    return found


def _same_wick(
    show: Staged, plan: SafetyPlan, last: PlannedBurn, burn: PlannedBurn, busy: Sequence[Busy]
) -> list[Finding]:
    """Cooling, the way to the fuel, soaking, spinning off and the way back."""
    walk, fuel = walk_seconds(plan.ground), show.show.venue.fuel_station
    floor = next(dancer.floor for dancer in show.dancers if dancer.name == burn.who)
    here = floor.place_at(last.end)
    there = walk(here, fuel or here)
    back = walk(fuel or here, burn.lit_at or here)
    soak = refuel_seconds(plan.book)
    refuel = there + soak + back
    need, gap = plan.handling.cool + refuel, burn.alight_s - last.out_s
    source = " ".join([_HOT, *(rule.citation for rule in refuel_rules(plan.book))])
    cool = seconds_words(plan.handling.cool) + plan.handling.words("cool")
    counted = (
        f"{cool} until the wick is cold, {seconds_words(soak)} to soak and spin off, "
        f"{seconds_words(there + back)} of slow walk"
    )
    if gap >= need - _EXACT:
        return _not_free(
            show, burn, busy, burn.alight_s - refuel, "go to the fuel", counted, source
        )
    time = f"{seconds_words(gap)} after" if gap >= 0 else f"{seconds_words(-gap)} before"
    return [
        _finding(
            show, "relight-hot", burn, last.out_s,
            f"{burn.who} is lit again from {moment_words(burn.alight_s)}, {time} the flame is out: the same wick needs "
            f"{seconds_words(need)} ({counted})",
            (
                (f"take a second set of props, soaked beforehand: props: second set, with "
                f"{seconds_words(plan.handling.swap)}{plan.handling.words('swap')} to change from "
                f"{moment_words(last.out_s)} on"),
                f"write from: {beat_after(show, burn.start_s + need - gap)} or later",
                f"leave {burn.who} dark from {moment_words(last.end_s)} on",
            ),
            source,
        )
    ]  # fmt: skip


def _second_set(
    show: Staged, plan: SafetyPlan, last: PlannedBurn, burn: PlannedBurn, busy: Sequence[Busy]
) -> list[Finding]:
    """The way to the place of lighting, and the change of props there."""
    floor = next(dancer.floor for dancer in show.dancers if dancer.name == burn.who)
    laid_down = float(show.tempo.beats_from_seconds(burn.alight_s - plan.handling.swap))
    place = floor.place_at(max(laid_down, last.end))
    way = walk_seconds(plan.ground)(place, burn.lit_at or place)
    need, gap = way + plan.handling.swap, burn.alight_s - last.out_s
    counted = (
        f"{seconds_words(way)} of slow walk to the place of lighting, "
        f"{seconds_words(plan.handling.swap)} to change props{plan.handling.words('swap')}"
    )
    source = "the hot set is laid down before the second is lit: common practice"
    if gap >= need - _EXACT:
        return _not_free(show, burn, busy, burn.alight_s - need, "change props", counted, source)
    time = f"{seconds_words(gap)} after" if gap >= 0 else f"{seconds_words(-gap)} before"
    return [
        _finding(
            show, "relight-no-time", burn, last.out_s,
            f"the second set of {burn.who} is lit from {moment_words(burn.alight_s)}, {time} the first is out; "
            f"{seconds_words(need)} needed ({counted})",
            (
                f"write from: {beat_after(show, burn.start_s + need - gap)} or later",
                f"write until: {beat_before(show, last.end_s - (need - gap))} or earlier for the first",
            ),
            source,
        )
    ]  # fmt: skip


def _set_again(
    show: Staged, plan: SafetyPlan, laid_down: PlannedBurn, burn: PlannedBurn
) -> list[Finding]:
    """A set that has burnt before: each performer has two, so the third burn takes the first one up again."""
    soak = refuel_seconds(plan.book)
    need, gap = plan.handling.cool + soak, burn.alight_s - laid_down.out_s
    if gap >= need - _EXACT:
        return []
    cool = seconds_words(plan.handling.cool) + plan.handling.words("cool")
    return [
        _finding(
            show, "relight-hot", burn, laid_down.out_s,
            f"{burn.who} changes sets again for {moment_words(burn.alight_s)}, and with two sets this one burnt until "
            f"{moment_words(laid_down.out_s)}: it needs {seconds_words(need)} ({cool} until the wick is cold, "
            f"{seconds_words(soak)} to soak and spin off)",
            (
                f"write from: {beat_after(show, burn.start_s + need - gap)} or later",
                f"leave {burn.who} dark from {moment_words(burn.alight_s)} on",
            ),
            " ".join([_HOT, *(rule.citation for rule in refuel_rules(plan.book))]),
        )
    ]  # fmt: skip


def _not_free(
    show: Staged,
    burn: PlannedBurn,
    busy: Sequence[Busy],
    start: float,
    task: str,
    counted: str,
    source: str,
) -> list[Finding]:
    """What a performer dances or walks in the time that they need for the relight."""
    kept = during(busy, start, burn.alight_s)
    if not kept:
        return []
    end = max(each.end for each in kept)
    return [
        _finding(
            show, "relight-no-time", burn, start,
            f"{burn.who} {kept[0].words} until {moment_words(end)}, but has to {task} from {moment_words(start)} on "
            f"({counted})",
            (
                f"end {kept[-1].what} of {burn.who} at {beat_before(show, start)} or earlier",
                f"write from: {beat_after(show, burn.start_s + end - start)} or later",
            ),
            source,
        )
    ]  # fmt: skip


def _finding(
    show: Staged,
    code: str,
    burn: PlannedBurn,
    start: float,
    message: str,
    remedies: tuple[str, ...],
    source: str,
) -> Finding:
    return Finding(
        code=code,
        severity="stop",
        who=(burn.who,),
        start=min(start, burn.alight_s),
        end=burn.start_s,
        position=show.position(burn.start),
        message=message,
        remedies=remedies,
        source=source,
        where=burn.lit_at,
    )
