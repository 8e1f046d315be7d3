"""Findings of the checks, with the mends that were tried on the show and work."""

from collections.abc import Sequence
from dataclasses import replace

from sequencer.checks.dance.joins import Joint
from sequencer.checks.distances.drift_runs import Trials
from sequencer.checks.distances.spacing import Conflict
from sequencer.checks.outcome import Mendable, Outcome
from sequencer.checks.suite import examined, reported
from sequencer.findings import Report
from sequencer.planning.join_remedies import remedies_for
from sequencer.planning.space_mends import words_for
from sequencer.progress import Progress
from sequencer.staging.staged import Staged


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
    outcome, danced = examined(show, flown=flown, trials=trials, progress=progress)
    return reported(show, with_mends(show, outcome), danced)


def with_mends(show: Staged, outcome: Outcome) -> Outcome:
    """The outcome, with mends in every finding that has any, best first.

    Parameters
    ----------
    show : Staged
    outcome : Outcome
        Outcome of the checks.
    """
    close = {}
    if any(isinstance(each.subject, Conflict) for each in outcome.mendable):
        close = words_for(show)
    words = {}
    for each in outcome.mendable:
        if isinstance(each.subject, Conflict):
            words[id(each.finding)] = close.get((each.finding.who, each.finding.position), ())
        else:
            words[id(each.finding)] = _join_words(each)
    return replace(
        outcome,
        findings=tuple(
            replace(each, remedies=words[id(each)]) if words.get(id(each)) else each
            for each in outcome.findings
        ),
    )


def _join_words(each: Mendable) -> tuple[str, ...]:
    """Mends of both hands alike; mends of one hand if there are none."""
    joints = each.subject
    if not isinstance(joints, Sequence):
        return ()
    mends = [
        [remedy.words for remedy in remedies_for(joint.boundary, joint.verdict)]
        for joint in joints
        if isinstance(joint, Joint)
    ]
    common = [words for words in mends[0] if all(words in other for other in mends)]
    return tuple(dict.fromkeys(common or [words for some in mends for words in some]))
