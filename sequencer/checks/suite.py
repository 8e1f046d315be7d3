"""Runs all checks of a show in turn and makes one report: worst finding first, then by time."""

from collections.abc import Collection, Sequence
from dataclasses import replace
from functools import partial

from sequencer.checks.check import Check
from sequencer.checks.dance import as_flown, feasible
from sequencer.checks.dance.feasible import TELLS_MORE
from sequencer.checks.dance.flown_feasible import CHECK_AS_FLOWN
from sequencer.checks.distances import drift
from sequencer.checks.distances.drift_runs import Trials
from sequencer.checks.outcome import Outcome
from sequencer.checks.registry import blank_codes, checks, conditions_by_code, fuel_codes
from sequencer.facts.cautions import Condition, page_one
from sequencer.findings import SEVERITIES, Danced, Finding, Report
from sequencer.progress import Progress, within
from sequencer.safety.rules.circumstances import cautions_of
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.results import result_of
from sequencer.staging.staged import ShowPart, Staged

UNLIT = "Nothing is lit in this show, so burning time, fuel and spotters were not checked."
OF_A_PART = (
    "joins",
    "accents",
    "feasible",
    "distances",
    "walks",
    "listen-again",
)  # checks of what is danced when
_REST = (
    "Only {} of the show were looked at, and of these only what is danced: neither what comes before and after, nor fire, "
    "crew, posts, exits and rules. `sequencer check` without --from and --until looks at everything, and seeks mends."
)
AS_FLOWN = ("feasible", "distances", "let-go")  # checks of the motion itself
_AT_ONCE = ("joins", "distances")  # what whoever lets go of a block waits for
_INSTANT = 1e-6  # [s]
_BEFORE = 0.2  # of the progress: song analysis and staging
_FLIGHT, _CHECKS = (
    0.55,
    0.7,
)  # the same of a show as flown: once it is flown, and once all other checks are done


def checked(
    show: Staged,
    *,
    flown: bool = False,
    trials: Trials | None = None,
    progress: Progress | None = None,
) -> Report:
    """Every check on a staged show, without mends.

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
        If the show's own file of rules cannot be used.
    """
    outcome, danced = examined(show, flown=flown, trials=trials, progress=progress)
    return reported(show, outcome, danced)


def examined(
    show: Staged,
    *,
    trials: Trials | None = None,
    flown: bool = False,
    progress: Progress | None = None,
) -> tuple[Outcome, Danced | None]:
    """Findings of every check, and the table of the show as danced, if that was computed.

    With `flown`, distances and flights let go are those of the motion as flown. Of a part of a show only what is danced in it
    is looked at.
    """
    if show.part is not None:
        return _of_part(show, show.part, progress, flown=flown), None
    say = progress or (lambda _subject, _share: None)
    outcome, shown, done = Outcome(), "", _BEFORE
    checking: Progress = say
    if flown:
        flown_show(show, within(say, _BEFORE, _FLIGHT))
        checking = within(say, _FLIGHT, _CHECKS) or say
    for check in checks():
        if check.on_request:
            continue
        if check.words != shown:
            shown = check.words
            checking(shown, round(done, 3))
        outcome += outcome_as_flown(check, show) if flown else check.outcome(show)
        done += check.share
    if flown:
        outcome = _said_as_flown(outcome) + flights_outcome(show, within(say, _CHECKS, 1.0))
    if trials is not None:
        outcome += _danced(trials, say).outcome(show)
    return outcome, outcome.danced


def outcome_as_flown(check: Check, show: Staged) -> Outcome:
    """What a check finds on a show as flown: what is about the motion itself is looked at on the flown paths.

    Parameters
    ----------
    check : Check
    show : Staged
        As drawn.
    """
    if check is feasible.CHECK:
        return CHECK_AS_FLOWN.outcome(show)
    return (
        check.outcome_of(flown_show(show).staged) if check.name in AS_FLOWN else check.outcome(show)
    )


def _of_part(show: Staged, part: ShowPart, progress: Progress | None, *, flown: bool) -> Outcome:
    """Findings on what is danced in a part."""
    say = progress or (lambda _subject, _share: None)
    outcome, done = Outcome(), _BEFORE
    checking: Progress = say
    if flown:
        flown_show(show, within(say, _BEFORE, _FLIGHT))
        checking = within(say, _FLIGHT, _CHECKS) or say
    for check in checks():
        if check.name in OF_A_PART:
            checking(check.words, round(done, 3))
            outcome += outcome_as_flown(check, show) if flown else check.outcome(show)
            done += check.share
    if flown:
        outcome = _said_as_flown(outcome) + flights_outcome(show, within(say, _CHECKS, 1.0))
    low, high = show.seconds(part.start), show.seconds(part.end)
    findings = [each for each in outcome.findings if _within(each, low, high)]
    held = {id(each) for each in findings}
    return replace(
        outcome,
        findings=tuple(findings),
        mendable=tuple(each for each in outcome.mendable if id(each.finding) in held),
        clearances=tuple(
            row if low <= row.at <= high else replace(row, bound=True) for row in outcome.clearances
        ),
        not_checked=(
            _REST.format(part_words(show)),
            *outcome.not_checked,
        ),
    )


def _within(finding: Finding, low: float, high: float) -> bool:
    """Whether a finding is about something between two seconds, at least in part."""
    if finding.start is None:
        return False
    end = finding.start if finding.end is None else finding.end
    return (
        finding.start < high - _INSTANT and end > low + _INSTANT
    ) or low - _INSTANT <= finding.start <= high


def part_words(show: Staged) -> str:
    """The part of a show that was staged: "bars 25.1 to 33.1", "bars 1.1 to 9.1", "bar 74.1 to the end"; else empty."""
    if show.part is None:
        return ""
    low = show.position(max(show.part.start, 0.0))
    if show.seconds(show.part.end) > show.song.duration - _INSTANT:
        return f"bar {low} to the end"
    return f"bars {low} to {show.position(show.part.end)}"


def by_urgency(show: Staged) -> tuple[Check, ...]:
    """All checks but those on request: those that are known first, then joins and distances, then those that can stop the show.

    Of these the quick ones come first. A check that uses the findings of others comes after them.
    """
    waiting = sorted(
        (check for check in checks() if not check.on_request),
        key=lambda check: (
            check not in show.results,
            _at_once(check),
            _gravest(check),
            check.share,
        ),
    )
    ready: list[Check] = []
    while waiting:
        names = {check.name for check in waiting}
        ready.append(
            waiting.pop(next(k for k, one in enumerate(waiting) if names.isdisjoint(one.after)))
        )
    return tuple(ready)


def by_motion(order: Sequence[Check]) -> tuple[Check, ...]:
    """Those that look at the motion itself once it is flown, distances first."""
    own = (check for check in order if check.name in AS_FLOWN)
    return tuple(sorted(own, key=_at_once))


def _at_once(check: Check) -> int:
    return _AT_ONCE.index(check.name) if check.name in _AT_ONCE else len(_AT_ONCE)


def _gravest(check: Check) -> int:
    return min(SEVERITIES.index(each) for severities in check.codes.values() for each in severities)


def _said_as_flown(outcome: Outcome) -> Outcome:
    """The outcome without what the check that flies the show says better, and without the advice to fly it."""
    return replace(
        outcome,
        findings=tuple(
            replace(each, remedies=tuple(way for way in each.remedies if way != TELLS_MORE))
            if TELLS_MORE in each.remedies else each
            for each in outcome.findings
            if each.code not in as_flown.CHECK.replaces
        ),
    )  # fmt: skip


def flights_outcome(show: Staged, progress: Progress | None) -> Outcome:
    """What the check that flies the show finds, with the progress of this run; worked out once for each show.

    Parameters
    ----------
    show : Staged
        As drawn.
    progress : callable, optional
    """
    run = partial(as_flown.as_flown, progress=progress)
    return result_of(show, as_flown.CHECK, lambda: replace(as_flown.CHECK, run=run).outcome(show))


def _danced(trials: Trials, say: Progress) -> Check:
    """The check that dances the show, with the trials and progress of this run."""
    subject = f"dancing it {trials.runs} times"

    def run(show: Staged) -> Outcome:
        return drift.drifted(show, trials=trials, progress=lambda share: say(subject, share))

    return replace(drift.CHECK, run=run)


def reported(show: Staged, outcome: Outcome, danced: Danced | None = None) -> Report:
    """An outcome as the report of a show: worst first, then by time."""
    conditions = conditions_by_code()
    raised = frozenset(
        conditions[each.code] for each in outcome.findings if each.code in conditions
    )
    return Report(
        show=show.file,
        findings=tuple(sorted(outcome.findings, key=_order)),
        clearances=tuple(sorted(outcome.clearances, key=lambda row: row.distance - row.required)),
        not_checked=outcome.not_checked
        if show.lit or show.part is not None
        else (UNLIT, *outcome.not_checked),
        cautions=_cautions(show, raised),
        conditions=raised,
        fuel_codes=fuel_codes(),
        blank_codes=blank_codes(),
        danced=danced,
        part=part_words(show),
        bars=show.tempo.bar_lengths,
    )


def _cautions(show: Staged, raised: Collection[Condition]) -> tuple[str, ...]:
    """The text of page one and the pocket-card cautions; none if nothing burns."""
    chosen = cautions_of(show, raised, reader="pocket")
    return (page_one(), *(each.short for each in chosen)) if chosen else ()


def _order(finding: Finding) -> tuple[int, float, str, tuple[str, ...]]:
    start = -1.0 if finding.start is None else finding.start
    return SEVERITIES.index(finding.severity), start, finding.code, finding.who
