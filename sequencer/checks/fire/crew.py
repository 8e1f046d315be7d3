"""The safety crew: enough people, each with one role.

Inputs are plain records. Sources: the rules of the book in force.
"""

from collections.abc import Sequence

from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS
from sequencer.checks.outcome import Outcome
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.findings import Finding
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.safety.watching import Duty
from sequencer.staging.staged import Staged
from sequencer.units import counted


def crew(show: Staged) -> Outcome:
    """Numbers and roles of a show's crew; roles even if nothing is lit.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    plan = safety_plan(show)
    lit = tuple(dict.fromkeys(burn.who for burn in plan.burns))
    return Outcome(
        findings=(
            *number_findings(
                plan.crew,
                lit_at_once=plan.lit_at_once,
                book=plan.book,
                audience=show.show.venue.audience_size,
            ),
            *role_findings(
                plan.crew, show.show.names, lit=lit, apart=plan.book.required("roles-apart")
            ),
        )
    )


def role_findings(
    crew: Sequence[Duty], cast: Sequence[str], *, lit: Sequence[str], apart: Rule | None
) -> list[Finding]:
    """People with more than one role: a spotter does nothing else."""
    duties: dict[str, list[str]] = {}
    names: dict[str, str] = {}
    for each in crew:
        names.setdefault(each.who.casefold(), each.who)
        duties.setdefault(each.who.casefold(), []).append(each.duty)
    performers = {name.casefold() for name in cast}
    burning = {name.casefold() for name in lit}
    found = []
    for key, taken in duties.items():
        roles = list(dict.fromkeys(taken))
        if key in performers:
            roles.append("lit performer" if key in burning else "performer")
        if len(roles) < 2:
            continue
        # Doubling without spotting or fire is for the rules to forbid; those two never mix with anything.
        serious = key in burning or "spotter" in roles
        found.append(
            Finding(
                code="crew-doubles",
                severity="stop" if serious else "warn",
                who=(names[key],),
                start=None,
                end=None,
                position=None,
                message=f"{names[key]} is {' and '.join(roles)}: one person, one role",
                remedies=(
                    f"name another person as {roles[0]}",
                    f"relieve {names[key]} of one role",
                ),
                source=apart.citation if apart else "one person, one role: common practice",
            )
        )
    return found


def number_findings(
    crew: Sequence[Duty], *, lit_at_once: int, book: RuleBook, audience: int | None = None
) -> list[Finding]:
    """Too few people for a rule; each person counts once, for one duty."""
    kinds = (
        ("spotters", ("spotter",), "spotter"),
        ("perimeter-guards", ("perimeter",), "perimeter guard"),
        ("fuel-keepers", ("fuel keeper",), "fuel keeper"),
        ("stewards", ("spotter", "perimeter", "fuel keeper", "lead"), "steward"),
    )
    found = []
    for kind, duties, word in kinds:
        needed = book.needed(kind, lit_at_once, audience)
        if needed is None or lit_at_once == 0:
            continue
        number, rule = needed
        have = len({each.who.casefold() for each in crew if each.duty in duties})
        if have >= number:
            continue
        missing = number - have
        remedies = [f"add {counted(missing, word)} to the crew"]
        if rule.count.each and kind == "spotters" and have * rule.count.each > 0:
            remedies.append(f"light at most {have * rule.count.each} at once")
        found.append(
            Finding(
                code="too-few-safety",
                severity="stop",
                who=(),
                start=None,
                end=None,
                position=None,
                message=f"{counted(have, word)} for {lit_at_once} lit at once; "
                f"the rule requires {number}",
                remedies=tuple(remedies),
                source=rule.citation,
            )
        )
    return found


CHECK = Check(
    name="crew",
    run=crew,
    codes={"crew-doubles": ("stop", "warn"), "too-few-safety": ("stop",)},
    cautions={"too-few-safety": "crew-short"},
    depends_on=PLAN_PARTS,
    progress=PROGRESS,
)
