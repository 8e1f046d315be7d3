"""One performer of a changed show, looked at before the others are staged: what they keep or suffer anew settles most trials.

Joins, tethers and reach are checked performer by performer, and so is whether a lit prop hangs still. A change that leaves one of
them with the fault, or with a new one, need not be staged for all who dance it.
"""

from collections.abc import Sequence
from dataclasses import replace

from sequencer.checks.check import Check
from sequencer.checks.dance import feasible, joins
from sequencer.checks.dance.feasible import feasible_as_drawn, one_kind_as_drawn
from sequencer.checks.fire.each_burn.hanging_lit import hanging_findings
from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.planning.trying.restaging import restaged_alone
from sequencer.safety.safety_plan import SafetyPlan
from sequencer.show.editing import Change, Insertion
from sequencer.staging.results import OfPerformer
from sequencer.staging.staged import Staged

_OF_THE_DANCE = {"timeline", "phrases"}  # headings that change nobody's burns, nor who handles them

Steps = Sequence[tuple[Sequence[Change], Sequence[Insertion]]]


def of_the_dance(steps: Steps) -> bool:
    """Whether changes are of nothing but what is danced.

    Parameters
    ----------
    steps : sequence of (changes, insertions)
    """
    headings = {path[0] for changes, _ in steps for path, _ in changes}
    headings |= {path[0] for _, insertions in steps for path, _, _ in insertions}
    return headings <= _OF_THE_DANCE


def changed_alone(show: Staged, steps: Steps, name: str, *, fly: bool) -> Staged | None:
    """A changed show with one dancer, who stands anywhere; None if that says nothing of the whole, or the change does not fit.

    Parameters
    ----------
    show : Staged
        Staged from a file.
    steps : sequence of (changes, insertions)
        One after the other.
    name : str
        The performer.
    fly : bool
        As in `restaged`.
    """
    if len(show.dancers) < 2 or not of_the_dance(steps) or name not in show.show.names:
        return None
    try:
        return restaged_alone(show, steps, name, fly=fly)
    except (InputError, ValueError):
        return None  # the trial says so


def one_kind_alone(check: Check, code: str, alone: Staged) -> list[Finding] | None:
    """What stops or warns by one code of one performer's dance as drawn; None if that takes no less than all that stops or warns.

    Parameters
    ----------
    check : Check
        That gives the code.
    code : str
    alone : Staged
        With one dancer.
    """
    return one_kind_as_drawn(alone, code) if check is feasible.CHECK else None


def faults_alone(check: Check, alone: Staged) -> list[Finding] | None:
    """What stops or warns of one performer's dance as drawn; None if the check does not look at one after the other.

    Parameters
    ----------
    check : Check
    alone : Staged
        With one dancer.
    """
    if check is feasible.CHECK:
        return list(feasible_as_drawn(alone).findings)
    if check is joins.CHECK:
        return [each for each in joins.joins(alone).findings if each.severity != "note"]
    return None


def hanging_alone(plan: SafetyPlan, alone: Staged) -> list[Finding]:
    """What stops or warns of a performer's lit props that hang still; in the whole show others may be told with them.

    Parameters
    ----------
    plan : SafetyPlan
        Of the whole show.
    alone : Staged
        With one dancer.
    """
    (dancer,) = alone.dancers
    own = tuple(burn for burn in plan.burns if burn.who == dancer.name)
    return hanging_findings(alone, replace(plan, burns=own))


def share_results(known: Staged, show: Staged) -> None:
    """Give a show what was found of each performer who dances the same in another one.

    Parameters
    ----------
    known, show : Staged
        Two stagings of one file, such as one with all dancers and one with one of them.
    """
    dances = {each.name: each for each in known.dancers}
    same = {
        each.name
        for each in show.dancers
        if (own := dances.get(each.name)) is not None
        and each.trajectories is own.trajectories
        and each.deviation == own.deviation
    }
    for key, result in list(known.results.items()):
        if isinstance(key, OfPerformer) and key.who in same:
            show.results.setdefault(key, result)
