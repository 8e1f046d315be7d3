"""All checks of a show, one after the other, into one report: worst first, then by time."""

from collections.abc import Collection
from dataclasses import replace

from sequencer.checks.check import Check
from sequencer.checks.distances import drift
from sequencer.checks.distances.drift_runs import Trials
from sequencer.checks.outcome import Outcome
from sequencer.checks.registry import checks, conditions_by_code, fuel_codes
from sequencer.facts.cautions import Condition, page_one
from sequencer.findings import SEVERITIES, Danced, Finding, Report
from sequencer.progress import Progress
from sequencer.safety.circumstances import cautions_of
from sequencer.staging.staged import Staged

UNLIT = "Nothing is lit in this show: burning, fuel and who watches were not looked at."
_BEFORE = 0.2  # of the progress: hearing and staging


def checked(
    show: Staged, *, trials: Trials | None = None, progress: Progress | None = None
) -> Report:
    """Every check on a staged show, without mends.

    Parameters
    ----------
    show : Staged
    trials : Trials, optional
        How the show is danced with drawn errors, if it is.
    progress : callable, optional

    Raises
    ------
    InputError
        If the show's own file of rules cannot be used.
    """
    outcome, danced = examined(show, trials=trials, progress=progress)
    return reported(show, outcome, danced)


def examined(
    show: Staged, *, trials: Trials | None = None, progress: Progress | None = None
) -> tuple[Outcome, Danced | None]:
    """What every check found, and how the show goes as danced, if that was computed."""
    say = progress or (lambda _subject, _share: None)
    outcome, said, done = Outcome(), "", _BEFORE
    for check in checks():
        if check.only_asked:
            continue
        if check.words != said:
            said = check.words
            say(said, round(done, 3))
        outcome += check.outcome(show)
        done += check.share
    if trials is not None:
        outcome += _danced(trials, say).outcome(show)
    return outcome, outcome.danced


def _danced(trials: Trials, say: Progress) -> Check:
    """The check that dances the show, with trials and progress of this run."""
    subject = f"dancing it {trials.runs} times"

    def run(show: Staged) -> Outcome:
        return drift.drifted(show, trials=trials, progress=lambda share: say(subject, share))

    return replace(drift.CHECK, run=run)


def reported(show: Staged, outcome: Outcome, danced: Danced | None = None) -> Report:
    """An outcome as the report of a show: worst first, then by time."""
    conditions = conditions_by_code()
    brought_up = frozenset(
        conditions[each.code] for each in outcome.findings if each.code in conditions
    )
    return Report(
        show=show.file,
        findings=tuple(sorted(outcome.findings, key=_order)),
        clearances=tuple(sorted(outcome.clearances, key=lambda row: row.distance - row.required)),
        not_checked=outcome.not_checked if show.lit else (UNLIT, *outcome.not_checked),
        cautions=_cautions(show, brought_up),
        conditions=brought_up,
        fuel_codes=fuel_codes(),
        danced=danced,
    )


def _cautions(show: Staged, brought_up: Collection[Condition]) -> tuple[str, ...]:
    """Page one's words and a pocket card's cautions; none where nothing burns."""
    chosen = cautions_of(show, brought_up, reader="pocket")
    return (page_one(), *(each.short for each in chosen)) if chosen else ()


def _order(finding: Finding) -> tuple[int, float, str, tuple[str, ...]]:
    start = -1.0 if finding.start is None else finding.start
    return SEVERITIES.index(finding.severity), start, finding.code, finding.who
