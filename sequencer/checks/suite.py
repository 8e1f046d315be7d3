"""All checks of a show, one after the other, into one report: worst first, then by time."""

from collections.abc import Callable

from sequencer.checks.dance.feasible import feasible
from sequencer.checks.dance.joins import joins
from sequencer.checks.dance.listen_again import listen_again
from sequencer.checks.dance.travel import travel
from sequencer.checks.distances.clearance import clearance
from sequencer.checks.distances.drift import drift
from sequencer.checks.distances.drift_runs import Trials
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.checks.fire.fire_and_crew import safety
from sequencer.checks.outcome import Outcome
from sequencer.facts.cautions import page_one
from sequencer.findings import SEVERITIES, Danced, Finding, Report
from sequencer.progress import Progress
from sequencer.safety.circumstances import cautions_of
from sequencer.safety.house_rules import rules_of
from sequencer.staging.staged import Staged

UNLIT = "Nothing is lit in this show: burning, fuel and who watches were not looked at."


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
    say("checking joins", 0.2)
    outcome = joins(show)
    say("checking tethers and reach", 0.3)
    outcome += feasible(show)
    say("checking distances", 0.4)
    outcome += _distances(show)
    outcome += travel(show.dancers, show.tempo)
    say("checking fire and crew", 0.8)
    outcome += safety(show)
    outcome += listen_again(show)
    danced = None
    if trials is not None:
        subject = f"dancing it {trials.runs} times"
        said, danced = _danced(show, trials, lambda share: say(subject, share))
        outcome += said
    return outcome, danced


def reported(show: Staged, outcome: Outcome, danced: Danced | None = None) -> Report:
    """An outcome as the report of a show: worst first, then by time."""
    return Report(
        show=show.file,
        findings=tuple(sorted(outcome.findings, key=_order)),
        clearances=tuple(sorted(outcome.clearances, key=lambda row: row.distance - row.required)),
        not_checked=outcome.not_checked if show.lit else (UNLIT, *outcome.not_checked),
        cautions=_cautions(show, outcome),
        danced=danced,
    )


def _cautions(show: Staged, outcome: Outcome) -> tuple[str, ...]:
    """Page one's words and a pocket card's cautions; none where nothing burns."""
    chosen = cautions_of(show, outcome.findings, reader="pocket")
    return (page_one(), *(each.short for each in chosen)) if chosen else ()


def _distances(show: Staged) -> Outcome:
    start, end = show.span
    required = required_distances(show, rules_of(show))
    return clearance(show.dancers, show.tempo, show.venue, required, start=start, end=end)


def _danced(
    show: Staged, trials: Trials, progress: Callable[[float], None]
) -> tuple[Outcome, Danced]:
    start, end = show.span
    return drift(
        show.dancers,
        show.tempo,
        required_distances(show, rules_of(show)),
        start=start,
        end=end,
        spread=show.show.drift.spread(),
        trials=trials,
        progress=progress,
    )


def _order(finding: Finding) -> tuple[int, float, str, tuple[str, ...]]:
    start = -1.0 if finding.start is None else finding.start
    return SEVERITIES.index(finding.severity), start, finding.code, finding.who
