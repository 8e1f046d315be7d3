"""The compliance table: each rule in force, what it asks, what the plan has, whether that meets it, and by how much.

A verdict is never better than what the checks found: a rule that a stop cites is not met, one that asks for what nobody
stated is not stated, whatever the number beside it. What no rule asks for and officers do is told without a verdict.
Printed numbers are rounded to the safe side: what must be large is rounded down, what must be small is rounded up, a
minimum asked for is rounded up, a maximum down, and a margin down. "Met" means only: as entered.
"""

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from sequencer.facts.heat_criteria import heat_criteria
from sequencer.facts.profiles import Rule
from sequencer.facts.radiation import seconds_to_pain
from sequencer.facts.rule_kinds import Kind
from sequencer.facts.sources import cited
from sequencer.findings import Finding, Report
from sequencer.safety.measures import Measured, PlanCase, heads_for, measured, moment
from sequencer.safety.rules.permits import permit_that_holds
from sequencer.safety.site_ground.landings import LandingPlan, landing_plan
from sequencer.safety.site_ground.radiant_heat import HeatPlan, heat_plan
from sequencer.staging.moves_danced import move_words
from sequencer.staging.staged import Staged
from sequencer.units import rounded_down, rounded_up

Verdict = Literal["met", "not met", "not stated", "confirm", "told"]
WORST_FIRST: tuple[Verdict, ...] = ("not met", "not stated", "confirm", "met", "told")
_MINUTES = 120.0  # [s] from here on times are printed in minutes
MOST_NAMED = 6  # performers whose reach is told one by one
CONFIRM_WARNED = {"fuel-warned", "fuel-permit-volume"}  # a warning of a check asks a person
_SHOWN: Mapping[str, tuple[float, int]] = {
    "m": (1.0, 2),
    "s": (1.0, 0),
    "L": (1000.0, 2),
    "m/s": (1.0, 1),
    "kW/m²": (1e-3, 2),
    "years": (1.0, 0),
    "": (100.0, 0),
}  # factor from SI and decimals, by the unit in which a subject is printed


@dataclass(frozen=True, slots=True, kw_only=True)
class ComplianceRow:
    """One line of the table: plain values, for print and JSON."""

    subject: str  # name of the rule's subject, or of what is told
    what: str  # the subject in words
    asked: str  # what the rule asks, with unit; empty if no rule does
    has: str  # what the plan has, with unit, or "not stated"
    verdict: Verdict
    margin: str = ""  # signed, with unit; empty where there is no number
    why: str = ""  # what the checks found against it
    text: str = ""  # wording of the rule
    note: str = ""  # how it is read
    profile: str = ""  # whose rule
    source: str = ""  # citation with its mark
    source_key: str = ""  # key of that source, or "choice"; empty where it is no rule's
    decides: bool = True  # False for a rule on whose subject another one is stricter


def compliance(show: Staged, report: Report, motion: Staged) -> tuple[ComplianceRow, ...]:
    """The compliance table of a show; empty if nobody is lit.

    Parameters
    ----------
    show : Staged
    report : Report
        What the checks found in it.
    motion : Staged
        The show in the motion that the report is of, as flown or as drawn: flights let go are of it.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    if not show.lit:
        return ()
    case = PlanCase.of(show, report)
    rows = [_row(case, rule) for rule in case.plan.book.rules]
    return (*rows, *_told(show, motion))


def tally(rows: Sequence[ComplianceRow]) -> dict[Verdict, int]:
    """How many rules have each verdict, the worst first."""
    return {
        verdict: sum(row.verdict == verdict for row in rows)
        for verdict in WORST_FIRST
        if verdict != "told"
    }


def _row(case: PlanCase, rule: Rule) -> ComplianceRow:
    found = measured(case, rule)
    against = [each for each in case.report.findings if rule.citation in each.source]
    limit = _limit(case, rule)
    own = _verdict(rule, found, limit)
    verdict, why = _by_checks(
        rule.kind,
        own,
        against,
        blanks=case.report.blank_codes,
        counted=found.value is not None,
    )
    return ComplianceRow(
        subject=rule.kind.name,
        what=rule.kind.what,
        asked=_asked(rule, limit, heads=case.plan.lit_at_once, own=_is_own(case, rule, limit)),
        has=_has(rule.kind, found),
        verdict=verdict,
        margin=""
        if found.value is None or limit is None
        else _margin(rule.kind, found.value, limit),
        why=why,
        text=rule.printed,
        note=rule.note,
        profile=rule.profile,
        source=cited(rule.source, rule.mark),
        source_key=_source_key(rule),
        decides=_decides(case, rule, limit),
    )


def _source_key(rule: Rule) -> str:
    return "choice" if rule.mark == "design choice" else rule.source.key


def _verdict(rule: Rule, found: Measured, limit: float | None) -> Verdict:
    """The verdict by the plan's own number or words."""
    if found.blank:
        return "not stated"
    if found.by_hand:
        return "confirm"
    if found.value is None or limit is None:
        if rule.kind.sort == "count" and limit is None:
            return "not stated"
        return "not met" if found.met is False else "met"
    return "met" if _meets(rule.kind, found.value, limit) else "not met"


def _meets(kind: Kind, value: float, limit: float) -> bool:
    if kind.sort != "most":
        return value >= limit
    return value < limit if kind.name in {"wind-warn", "wind-stop"} else value <= limit


def _by_checks(
    kind: Kind,
    own: Verdict,
    against: Sequence[Finding],
    *,
    blanks: Collection[str],
    counted: bool,
) -> tuple[Verdict, str]:
    """The verdict, no better than the findings that cite the rule, and what they say.

    Where the plan has a number, warnings that cite the rule are about something else: they do not change the verdict.
    """
    blank = [each for each in against if each.code in blanks]
    stops = [each for each in against if each.severity == "stop" and each not in blank]
    warned = []
    if not counted:
        warned = [each for each in against if each.severity == "warn" and each not in blank]
    verdict = own
    if warned:
        worst: Verdict = "confirm" if kind.name in CONFIRM_WARNED else "not met"
        verdict = own if own == "not stated" else worst
    if blank:
        verdict = "not stated"
    if stops:
        verdict = "not met"
    grave = [*stops, *blank, *warned]
    return verdict, grave[0].message if grave and verdict != "met" else ""


def _limit(case: PlanCase, rule: Rule) -> float | None:
    """The number that the plan must keep: the rule's, or the show's own where that is stricter [SI]."""
    show, kind = case.show.show, rule.kind.name
    if rule.kind.sort == "count":
        heads = heads_for(case, rule.count)
        return None if heads is None else float(rule.count.for_heads(heads))
    if rule.kind.sort not in {"least", "most"}:
        return None
    if kind in {"audience-distance", "several-performers-extra"}:
        return _audience_limit(case, rule)
    if kind == "wind-stop" and show.weather.gusts is not None:
        return min(rule.number, show.weather.gusts)
    if kind == "burn-share" and show.fire is not None:
        return min(rule.number, show.fire.reserve)
    return rule.number


def _audience_limit(case: PlanCase, rule: Rule) -> float:
    """A text's distance to the audience with its own addition for several performers [m]; or the show's own."""
    book, own = case.plan.book, case.show.show.rules.audience
    of_text = [each for each in book.all("audience-distance") if each.profile == rule.profile]
    extra = [each for each in book.all("several-performers-extra") if each.profile == rule.profile]
    several = case.plan.lit_at_once > 1
    more = sum(
        each.number * (1 if each.per == "once" else case.plan.lit_at_once - 1)
        for each in extra
        if several
    )
    total = max((each.number for each in of_text), default=0.0) + more
    permit = permit_that_holds(case.show.show)
    if own is not None and permit is not None and "audience-distance" in permit.loosens:
        return own
    return max(total, own or 0.0)


def _decides(case: PlanCase, rule: Rule, limit: float | None) -> bool:
    """Whether no other rule on the subject is stricter; of equal ones the last, which is the local one."""
    same = case.plan.book.all(rule.kind.name)
    if limit is None:
        return rule is same[-1] or rule.kind.sort in {"ask", "fuels", "extinguishers"}
    strict = [(_limit(case, each), k) for k, each in enumerate(same)]
    sign = -1.0 if rule.kind.sort == "most" else 1.0
    best = max((sign * other, k) for other, k in strict if other is not None)
    return rule is same[best[1]]


def _asked(rule: Rule, limit: float | None, *, heads: int = 1, own: bool = False) -> str:
    """What a rule asks, in a few words; `own` if the limit is the show's and not the rule's."""
    if limit is None:
        if rule.kind.sort == "extinguishers":
            return _tools_asked(rule, heads)
        return "yes" if rule.kind.sort == "yes" else rule.printed
    if rule.kind.sort == "count":
        return f"{limit:.0f}"
    least = rule.kind.sort == "least"
    shown = _number(rule.kind, limit, rounded_up if least else rounded_down)
    word = "under" if rule.kind.name in {"wind-warn", "wind-stop"} else "at most"
    return f"{'at least' if least else word} {shown}{', the show’s own' if own else ''}"


def _is_own(case: PlanCase, rule: Rule, limit: float | None) -> bool:
    """Whether a limit is set by the show, and not by the rule."""
    show = case.show.show
    own = {
        "audience-distance": show.rules.audience,
        "several-performers-extra": show.rules.audience,
        "wind-stop": show.weather.gusts,
        "burn-share": show.fire.reserve if show.fire else None,
    }.get(rule.kind.name)
    return own is not None and own == limit != rule.number


def _tools_asked(rule: Rule, heads: int) -> str:
    asked = rule.extinguishers
    parts = [] if asked.rating is None else [f"{asked.count.for_heads(heads)} × {asked.rating}"]
    parts += [
        f"{unit.count} × {unit.kind} {unit.rating}".replace("  ", " ") for unit in asked.units
    ]
    return ", ".join(parts)


def _has(kind: Kind, found: Measured) -> str:
    if found.blank:
        return f"not stated: {found.blank}"
    if found.value is None:
        return found.words
    if kind.sort == "count":
        shown = f"{found.value:.0f}"
    else:
        shown = _number(kind, found.value, rounded_down if kind.sort == "least" else rounded_up)
    return f"{shown} ({found.words})" if found.words else shown


def _margin(kind: Kind, value: float, limit: float) -> str:
    """What is left to the limit, rounded down, so that a margin is never overstated."""
    spare = limit - value if kind.sort == "most" else value - limit
    if kind.sort == "count":
        return f"{spare:+.0f}".replace("-", "−")
    return _number(kind, spare, rounded_down, signed=True)


def _number(
    kind: Kind, value: float, rounded: Callable[[float, int], float], *, signed: bool = False
) -> str:
    factor, decimals = _SHOWN[kind.default_unit]
    unit = kind.default_unit or "%"
    if unit == "s" and abs(value) >= _MINUTES:
        factor, unit = 1 / 60, "min"
    shown = rounded(factor * value, decimals)
    return f"{shown:{'+' if signed else ''}.{decimals}f} {unit}".replace("-", "−")


# --- what no rule asks for ---


def _told(show: Staged, motion: Staged) -> list[ComplianceRow]:
    found, plan = heat_plan(show), landing_plan(motion)
    return [
        *_flames(show, found),
        *_reaches(show),
        *_heat(show, found),
        *(_flights(motion, plan) if plan is not None else ()),
    ]


def _flames(show: Staged, found: HeatPlan) -> list[ComplianceRow]:
    origin = "Heskestad 1984, Fire Safety Journal 7:25 [HESK; read second-hand]; poor for wicks"
    if not found.wicks:
        return [
            ComplianceRow(
                subject="flame", what="flame at rest, mean and peak", asked="", verdict="not stated",
                has="not stated: soak or burning time", source=origin,
            )
        ]  # fmt: skip
    mean, peak = (
        max(getattr(each, name) for each in found.wicks.values()) for name in ("mean", "peak")
    )
    words = f"{rounded_up(mean, 2):.2f} m mean, {rounded_up(peak, 2):.2f} m peak"
    stated = show.show.fire.flame if show.show.fire else None
    words += "" if stated is None else f"; {rounded_up(stated, 2):.2f} m watched"
    if found.unknown:
        words += f"; not stated for {', '.join(found.unknown)}"
    return [
        ComplianceRow(
            subject="flame", what="flame at rest as computed, mean and peak", asked="", has=words,
            verdict="told", source=f"{origin}; peak over mean heat 1.5: design choice",
        )
    ]  # fmt: skip


def _reaches(show: Staged) -> list[ComplianceRow]:
    reach = {dancer.name: dancer.reach for dancer in show.dancers if dancer.lit}
    most = f"at most {rounded_up(max(reach.values()), 2):.2f} m"
    each = ", ".join(f"{who} {rounded_up(size, 2):.2f}" for who, size in reach.items())
    words = f"{most} ({each})" if len(reach) <= MOST_NAMED else most
    return [
        ComplianceRow(
            subject="reach", what="reach with prop and flame at its peak, from the body's axis",
            asked="", has=words, verdict="told",
            source="ANSUR II body survey or as measured; prop as entered; flame stretched by speed (Thomas 1963, "
            "Moorhouse 1982: from memory)",
        )
    ]  # fmt: skip


def _heat(show: Staged, found: HeatPlan) -> list[ComplianceRow]:
    crew = show.show.crew
    if found.unknown or not found.posts:
        what = "crew" if not found.posts else f"soak or burning time of {', '.join(found.unknown)}"
        has, verdict = f"not stated: {what}", "not stated"
    else:
        flux = max(found.posts)
        post = crew[found.posts.index(flux)].name
        seconds = rounded_down(seconds_to_pain(flux))
        kilowatts = rounded_up(flux / 1000, 2)
        ease = heat_criteria()["bystanders"]
        pain = f"bare skin hurts after {seconds:.0f} s" if flux > ease.flux else "below pain"
        has, verdict = f"{kilowatts:.2f} kW/m² ({post}; {pain})", "told"
    return [
        ComplianceRow(
            subject="post-flux", what="radiant heat at the nearest post, with all flames at their peak and at their nearest",
            asked="", has=has, verdict="not stated" if verdict == "not stated" else "told",
            source="point source: US NRC, NUREG-1805 sheet 05.1 [C17; read]; time to pain: HSL/2004/04 [D2; read "
            "second-hand]; below 1.42 kW/m², 24 CFR 51 [D1; read]",
        )
    ]  # fmt: skip


def _flights(show: Staged, plan: LandingPlan) -> list[ComplianceRow]:
    who, best = plan.farthest
    source = "flight without air drag, from the motion of every lit head: mechanics; bounces and rolls left out"
    if not plan.proven:
        source += "; sampled with a margin, not proven, for fans and hoops where patterns blend"
    first, move = moment(show.seconds(best.beat)), move_words(show, who, best.beat)
    rows = [
        ComplianceRow(
            subject="let-go", what="let-go range: farthest that a head flies if it comes off", asked="",
            has=f"{rounded_up(best.flight, 1):.1f} m ({', '.join(each for each in (who, first, move) if each)}; "
            f"up to {rounded_up(best.fastest, 1):.1f} m/s)",
            verdict="told", source=source,
        )
    ]  # fmt: skip
    for near in plan.near("audience")[:1]:
        flight = near.flight
        when = f"{near.who}, {moment(show.seconds(flight.beat))}"
        if flight.beyond > 0:
            has = f"lands up to {rounded_up(flight.beyond, 1):.1f} m beyond {near.name} ({when})"
        else:
            has = f"{rounded_down(flight.distance, 1):.1f} m before {near.name} ({when})"
        rows.append(
            ComplianceRow(
                subject="landing-audience", what="nearest such landing to the audience", asked="",
                has=has, verdict="told", source=source,
            )
        )  # fmt: skip
    return rows
