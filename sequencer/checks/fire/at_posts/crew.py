"""The safety crew: enough people, one who leads, and nobody needed in two places or for two things at once.

Inputs are plain records. Sources: the rules of the book in force; which jobs one person can hold at once is common
practice (`safety.people`).
"""

from collections.abc import Callable, Sequence

from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS, night_finding
from sequencer.checks.outcome import Outcome
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.findings import Finding
from sequencer.safety.duties.people import JOB_WORDS, Job, JobClash, clashes, free_for, jobs_of
from sequencer.safety.duties.watching import Duty
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.staging.staged import Staged
from sequencer.units import counted

SAID = "What people do at the stop call was read for calling, first aid, meeting the responders and the sound only."


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
            *(lead_findings(plan.crew) if lit else ()),
            *(job_findings(jobs_of(show), show.part_of) if lit else ()),
        ),
        not_checked=(SAID,) if lit and show.show.stop_call.does else (),
    )


def lead_findings(crew: Sequence[Duty]) -> list[Finding]:
    """A crew without a lead, or with several."""
    leads = [each.who for each in crew if each.duty == "lead"]
    if len(leads) == 1:
        return []
    message = "nobody leads: no one decides, gives the go and sends for help"
    remedies = ("add one under crew, duty: lead, who has no other job during the act",)
    if leads:
        message = f"{' and '.join(leads)} lead: two who decide may decide differently"
        remedies = ("let one lead; give the others another duty",)
    return [
        night_finding(
            "two-leads" if leads else "no-lead",
            "warn" if leads else "stop",
            message,
            "a responsible person in every plan: Bend OR [A6; read]; who gives the go and decides is one "
            "person: common practice",
            remedies,
            who=tuple(leads),
        )
    ]


def job_findings(
    jobs: Sequence[Job], part_of: Callable[[str], str] = lambda who: who
) -> list[Finding]:
    """People to whom the emergency card or the stop call gives a job that they cannot do beside another.

    Parameters
    ----------
    jobs : sequence of Job
    part_of : callable
        The part that a person has tonight, under which their sheets are printed.
    """
    of: dict[str, list[JobClash]] = {}
    for clash in clashes(jobs):
        of.setdefault(clash.first.who, []).append(clash)
    found = []
    for who, own in of.items():
        told = list(dict.fromkeys(job for clash in own for job in (clash.first, clash.second)))
        why = dict.fromkeys(clash.why for clash in own)
        found.append(
            night_finding(
                "two-jobs",
                "stop" if any(clash.severity == "stop" for clash in own) else "warn",
                f"{who} {_listed([JOB_WORDS[job.kind] for job in told])}; {'; '.join(why)}",
                "one person, one job at a time: common practice",
                tuple(dict.fromkeys(_passed_on(clash.second, jobs) for clash in own)),
                who=(part_of(who),),
            )
        )
    return found


def _passed_on(job: Job, jobs: Sequence[Job]) -> str:
    """How to give a job to somebody else: to one who is free for it, if there is one."""
    free = free_for(job, jobs)
    other = free[0] if free else "somebody without a post"
    return f"write {other} under {job.written}"


def _listed(words: Sequence[str]) -> str:
    return " and ".join([", ".join(words[:-1]), words[-1]])


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
    codes={
        "crew-doubles": ("stop", "warn"),
        "no-lead": ("stop",),
        "too-few-safety": ("stop",),
        "two-jobs": ("stop", "warn"),
        "two-leads": ("warn",),
    },
    cautions={"no-lead": "crew-short", "too-few-safety": "crew-short"},
    depends_on=PLAN_PARTS,
    progress=PROGRESS,
)
