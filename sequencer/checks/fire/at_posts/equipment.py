"""What the crew carries: towels, blankets and buckets.

Inputs are plain records. Sources: the rules of the book in force.
"""

from collections.abc import Iterable, Mapping

from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS, rule_finding, where_lit
from sequencer.checks.outcome import Outcome
from sequencer.facts.rule_book import RuleBook
from sequencer.findings import Finding
from sequencer.safety.duties.carried import counted
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.show.model import CrewMember
from sequencer.staging.staged import Staged

_SMOTHER = ("towels", "blankets")
_MENDS = {
    "towels": "damp towel",
    "blankets": "fire blanket",
    "buckets": "bucket of water",
}


@where_lit
def equipment(show: Staged) -> Outcome:
    """What the crew of a show carries, against what its rules require.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    plan = safety_plan(show)
    carried = counted(item for post in show.show.crew for item in post.equipment)
    return Outcome(
        findings=(
            *_bare_posts(show.show.crew),
            *carried_findings(carried, lit_at_once=plan.lit_at_once, book=plan.book),
        )
    )


def carried_findings(
    carried: Mapping[str, int], *, lit_at_once: int, book: RuleBook
) -> list[Finding]:
    """Towels, blankets and buckets that a rule requires and nobody has."""
    found = []
    for kind, word in _MENDS.items():
        needed = book.needed(kind, lit_at_once)
        if needed is None or not lit_at_once or carried.get(kind, 0) >= needed[0]:
            continue
        number, rule = needed
        have = carried.get(kind, 0)
        found.append(
            rule_finding(
                "equipment-missing",
                "stop",
                f"{have} of {number} {_several(word, number)} for {lit_at_once} lit at once",
                (f"give the crew {number - have} more, under equipment",),
                rule,
            )
        )
    either = book.required("blanket-or-towels")
    if either and lit_at_once and not (carried.get("towels") or carried.get("blankets")):
        found.append(
            rule_finding(
                "equipment-missing",
                "stop",
                "neither fire blanket nor damp towel is ready",
                ("give a spotter a damp towel or a fire blanket",),
                either,
            )
        )
    return found


def _several(word: str, number: int) -> str:
    if number == 1:
        return word
    return "buckets of water" if word == "bucket of water" else f"{word}s"


def _bare_posts(crew: Iterable[CrewMember]) -> list[Finding]:
    """Spotters with nothing in hand that smothers."""
    return [
        Finding(
            code="post-without-equipment",
            severity="warn",
            who=(post.name,),
            start=None,
            end=None,
            position=None,
            message=f"{post.name} stands by as {post.duty} with "
            + ("nothing to smother with in hand" if post.equipment else "nothing in hand"),
            remedies=("give them a damp towel or a fire blanket, under equipment",),
            source="damp towel ready at each spotter: Kansas City MO §26-319 [A1; read]; "
            "common practice",
            where=post.post,
        )
        for post in crew
        if post.duty == "spotter"
        and not any(counted(post.equipment).get(kind) for kind in _SMOTHER)
    ]


CHECK = Check(
    name="equipment",
    run=equipment,
    codes={"equipment-missing": ("stop",), "post-without-equipment": ("warn",)},
    depends_on=PLAN_PARTS,
    progress=PROGRESS,
)
