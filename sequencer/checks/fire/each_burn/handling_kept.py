"""The burn as it is handled: lit and put out by somebody, at rest, at a place for it, and away from the hand.

Times in seconds of the track, places in the stage frame [m]. Sources: `safety.handling` for the order and the
times; the numbers beside each finding.
"""

from collections.abc import Mapping, Sequence

from sequencer.checks.check import Check
from sequencer.checks.fire.each_burn.busy import Busy, beat_after, beat_before, busy_spans, during
from sequencer.checks.fire.each_burn.handlers import handler_findings
from sequencer.checks.fire.each_burn.handling_places import place_findings
from sequencer.checks.fire.each_burn.hanging_lit import HANGING, hanging_findings
from sequencer.checks.fire.each_burn.relights import relight_findings
from sequencer.checks.fire.records import PROGRESS, night_finding
from sequencer.checks.outcome import Outcome
from sequencer.facts.pace import speeds
from sequencer.findings import Finding
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.handling import seconds_words
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.staging.staged import Staged
from sequencer.timing.position import moment_words

NOT_CHECKED = (
    (
        "Whoever lights or puts out is taken to walk straight there, round scenery; performers and props on the way "
        "were not checked."
    ),
    "Lifting the props into a pattern, in the beats before it, was not checked against lighting.",
    "The second set of props is taken to lie at the place of lighting.",
)
_REST = "props are lit and put out at rest: common practice"
_EXACT = 1e-6  # [s]


def handling(show: Staged) -> Outcome:
    """How each burn of a show is handled, from its lighting until its flame is out.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    if not show.lit:
        return Outcome(findings=_nothing_lit(show))
    plan = safety_plan(show)
    busy = {who: busy_spans(show, who) for who in show.show.names}
    return Outcome(
        findings=(
            *moving_findings(show, plan.burns, busy),
            *reach_findings(show, plan.burns, busy),
            *handler_findings(show, plan, busy),
            *place_findings(show, plan, busy),
            *relight_findings(show, plan, busy),
            *hanging_findings(show, plan),
        ),
        not_checked=NOT_CHECKED,
    )


def moving_findings(
    show: Staged, burns: Sequence[PlannedBurn], busy: Mapping[str, Sequence[Busy]]
) -> list[Finding]:
    """Performers who dance or walk while they are lit, wait alight or are put out.

    Parameters
    ----------
    show : Staged
    burns : sequence of PlannedBurn
    busy : mapping of performer to sequence of Busy
    """
    found = []
    for burn in burns:
        before = during(busy[burn.who], burn.alight_s, burn.start_s)
        if before:
            found.append(_moving_before(show, burn, before))
        after = during(busy[burn.who], burn.end_s, burn.out_s)
        if after:
            found.append(_moving_after(show, burn, after))
    return found


def reach_findings(
    show: Staged, burns: Sequence[PlannedBurn], busy: Mapping[str, Sequence[Busy]]
) -> list[Finding]:
    """Performers who start to spin before whoever lit them can be out of their reach.

    Parameters
    ----------
    show : Staged
    burns : sequence of PlannedBurn
    busy : mapping of performer to sequence of Busy

    Notes
    -----
    Source: slow walk of a pedestrian, 3.5 ft/s, from the body's axis to the edge of the reach.
    """
    pace = speeds()["pedestrian"]
    reach = {dancer.name: dancer.reach for dancer in show.dancers}
    found = []
    for burn in burns:
        lit = burn.alight_s + burn.lighting_s
        away = lit + reach[burn.who] / pace.speed
        first = next((each for each in busy[burn.who] if each.start >= burn.start_s - _EXACT), None)
        if first is None or first.start >= away - _EXACT:
            continue
        person = burn.lit_by or "whoever lights"
        missing = away - first.start
        found.append(
            Finding(
                code="lighter-in-reach",
                severity="stop",
                who=tuple(filter(None, (burn.who, burn.lit_by))),
                start=lit,
                end=away,
                position=show.position(burn.start),
                message=f"{burn.who} {first.words} from {moment_words(first.start)}, and {person} lights until "
                f"{moment_words(lit)}: out of a reach of {reach[burn.who]:.2f} m is {seconds_words(away - lit)} "
                "of slow walk",
                remedies=(
                    f"start {first.what} of {burn.who} at {beat_after(show, away)} or later",
                    f"write from: {beat_before(show, burn.start_s - missing)}, so that lighting is over sooner",
                ),
                source=f"slow walk: {pace.source.citation}",
                where=burn.lit_at,
            )
        )
    return found


def _moving_before(show: Staged, burn: PlannedBurn, busy: Sequence[Busy]) -> Finding:
    last = max(each.end for each in busy)
    running = [each for each in busy if each.start <= burn.alight_s]
    onset = [each for each in busy if each.start > burn.alight_s]
    remedies = []
    if running:
        remedies.append(
            f"end {running[-1].what} of {burn.who} at {beat_before(show, burn.alight_s)} or earlier"
        )
    if onset:
        remedies.append(
            f"start {onset[0].what} of {burn.who} at {beat_after(show, burn.start_s)} or later"
        )
    later = burn.start_s + last - burn.alight_s
    if later < burn.end_s - _EXACT:
        remedies.append(f"write from: {beat_after(show, later)} or later for {burn.who}")
    return Finding(
        code="lit-while-spinning",
        severity="stop",
        who=(burn.who,),
        start=burn.alight_s,
        end=burn.start_s,
        position=show.position(burn.start),
        message=f"{burn.who} {busy[0].words} until {moment_words(last)}, but is lit from "
        f"{moment_words(burn.alight_s)} to {moment_words(burn.alight_s + burn.lighting_s)}"
        + (f" and waits alight until {moment_words(burn.start_s)}" if burn.wait_s > _EXACT else "")
        + _assumed(show, "light"),
        remedies=tuple(remedies),
        source=_REST,
        where=burn.lit_at,
    )


def _moving_after(show: Staged, burn: PlannedBurn, busy: Sequence[Busy]) -> Finding:
    last = max(each.end for each in busy)
    running = [each for each in busy if each.start <= burn.end_s]
    onset = [each for each in busy if each.start > burn.end_s]
    remedies = []
    if running:
        remedies.append(
            f"end {running[-1].what} of {burn.who} at {beat_before(show, burn.end_s)} or earlier, "
            f"or write until: {beat_after(show, running[-1].end)}"
        )
    if onset:
        remedies.append(
            f"start {onset[0].what} of {burn.who} at {beat_after(show, burn.out_s)} or later"
        )
    return Finding(
        code="lit-while-spinning",
        severity="stop",
        who=(burn.who,),
        start=burn.end_s,
        end=burn.out_s,
        position=show.position(burn.end),
        message=f"{burn.who} {busy[0].words} until {moment_words(last)}, but is put out from "
        f"{moment_words(burn.end_s)}, out by {moment_words(burn.out_s)}"
        + _assumed(show, "put_out"),
        remedies=tuple(remedies),
        source=_REST,
    )


def _assumed(show: Staged, name: str) -> str:
    return safety_plan(show).handling.words(name)


def _nothing_lit(show: Staged) -> tuple[Finding, ...]:
    if show.show.fire is None:
        return ()
    return (
        night_finding(
            "lit-not-danced", "warn",
            "fuel and burn are entered, but nobody is lit: nothing about fire was checked", "common practice",
            ("write under fire, lit who is lit, from when until when", "take out fire if nothing burns"),
        ),
    )  # fmt: skip


CHECK = Check(
    name="handling",
    run=handling,
    codes={
        HANGING: ("stop", "warn"),
        "lighter-in-reach": ("stop",),
        "lighter-unfit": ("stop",),
        "lighting-place": ("stop", "warn"),
        "lit-not-danced": ("warn",),
        "lit-while-spinning": ("stop",),
        "nobody-lights": ("stop",),
        "put-out-unfit": ("stop",),
        "putting-out-place": ("stop",),
        "relight-hot": ("stop",),
        "relight-no-time": ("stop",),
    },
    cautions={
        "lit-not-danced": "missing",
        "nobody-lights": "crew-short",
        "relight-hot": "long-song",
    },
    of_fuel=("relight-hot", "relight-no-time"),
    depends_on=("trajectories", "bodies", *PLAN_PARTS),
    progress=PROGRESS,
)
