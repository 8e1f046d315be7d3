"""Clearance as danced: the chance that two performers come too close with human error.

The show is danced many times with random errors of place, facing, timing, tempo, tether and hands
(`checks.distances.drift_runs`), and each run is searched with the same proof as the plan; again with errors half and twice
as wide; and once more for every cue that somebody may miss (`missed_cues`). Chances have exact binomial intervals
(`binomial`), and a chance is a finding only if its whole interval lies above `CHANCE`.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace

from sequencer.checks.check import Check
from sequencer.checks.distances.binomial import CONFIDENCE, interval
from sequencer.checks.distances.conflict_groups import ConflictGroup, Dances, as_danced
from sequencer.checks.distances.drift_runs import RunProgress, Trials, Work, drawn_dancer
from sequencer.checks.distances.drift_words import (
    begun,
    finding_message,
    harm_words,
    rehearsed,
    remedies,
)
from sequencer.checks.distances.keeping_clear import boundaries_of
from sequencer.checks.distances.meeting import NearParts, meeting
from sequencer.checks.distances.missed_cues import Slip, missed_cues
from sequencer.checks.distances.rehearse_first import advice, gains, goes_wrong, worth_telling
from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.checks.distances.scenes import (
    UNPLACED,
    Edges,
    Whereabouts,
    edges_of,
    histogram,
    whereabouts,
)
from sequencer.checks.outcome import BeatClock, Outcome
from sequencer.findings import (
    AnyChance,
    Chance,
    Clearance,
    Danced,
    Finding,
    MarksOff,
    MissedCue,
    Rehearsal,
)
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.drifting import MeasuredSpread, Spread
from sequencer.staging.moves_danced import move_words
from sequencer.staging.staged import Staged
from sequencer.timing.tempo import TempoMap

CHANCE = 0.05  # a conflict that is surely this likely is a finding
_REHEARSED = 8  # things to rehearse that are told
_LEVEL = {"ceiling", "floor"}  # however far marks are off sideways, these are no nearer

PlaceOf = Callable[[str, str, float], Whereabouts]  # of two performers at a beat
MovesOf = Callable[[str, float], str]  # what somebody dances at a beat


@dataclass(frozen=True, slots=True, kw_only=True)
class Erring:
    """How far people err."""

    spread: Spread = Spread()  # noqa: RUF009 - frozen
    own: Mapping[str, Spread] | None = None  # of performers who err by their own
    missed: float = 0.0  # chance that a performer misses a cue in a run
    marks: float = 0.0  # [m] by which all marks are off together, in X and in Y


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanWords:
    """Where in its plan a show is, as far as anything is known of it."""

    edges: tuple[Edges, ...] = ()  # of the scenes of every pair
    place: PlaceOf = lambda _first, _second, _beat: UNPLACED
    moves: MovesOf = lambda _who, _beat: ""
    still: Sequence[Clearance] = ()  # distances from what stands still


def drifted(
    show: Staged, *, trials: Trials | None = None, progress: RunProgress | None = None
) -> Outcome:
    """A show danced with the errors that it states: findings on pairs too close, and the whole table.

    Parameters
    ----------
    show : Staged
    trials : Trials, optional
        How many runs, the random seed, and how far performers err by a log of theirs.
    progress : callable, optional
        Called with the share done.
    """
    start, end = show.span
    states = show.show.drift
    logged = {} if trials is None else trials.logged
    found, table = drift(
        show.dancers,
        show.tempo,
        required_distances(show),
        start=start,
        end=end,
        erring=Erring(
            spread=states.spread(),
            own=states.own_spreads(logged, [dancer.name for dancer in show.dancers]),
            missed=states.missed,
            marks=states.marks,
        ),
        plan=PlanWords(
            edges=edges_of(show),
            place=lambda first, second, beat: whereabouts(show, first, second, beat),
            moves=lambda who, beat: move_words(show, who, beat),
            still=boundaries_of(show).clearances if show.dancers else (),
        ),
        trials=trials,
        progress=progress,
    )
    by_log = tuple(name for name in table.own if _is_logged(table.own[name], logged.get(name)))
    return replace(found, danced=replace(table, by_log=by_log))


def _is_logged(own: Mapping[str, float], log: MeasuredSpread | None) -> bool:
    """Whether a performer's place or timing is what the log says: where the show states it too, the show counts."""
    return (
        log is not None
        and log != MeasuredSpread()
        and (own["place"] == log.place or own["timing"] == log.timing)
    )


def drift(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    requirements: Requirements,
    *,
    start: float,
    end: float,
    erring: Erring | None = None,
    plan: PlanWords | None = None,
    trials: Trials | None = None,
    progress: RunProgress | None = None,
) -> tuple[Outcome, Danced]:
    """Findings on pairs that surely come too close in more than one run of twenty, and the whole table.

    Parameters
    ----------
    dancers : sequence of Dancer
        With names that differ.
    tempo : TempoMap
    requirements : Requirements
    start, end : float
        Beats of the show.
    erring : Erring, optional
        The defaults of `Spread`, and no cue missed, if left out.
    plan : PlanWords, optional
    trials : Trials, optional
    progress : callable, optional
    """
    errs, words = erring or Erring(), plan or PlanWords()
    how = Trials() if trials is None else trials
    work = Work(
        dancers=tuple(dancers),
        span=(start, end),
        required=requirements.performers,
        spread=errs.spread,
        seed=how.seed,
        own=errs.own or {},
        edges=words.edges,
    )
    say = progress or (lambda _share: None)
    dances = Dances(groups=(), runs=((),) * how.runs, half=((),), twice=((),))
    slips: tuple[Slip, ...] = ()
    if len(dancers) > 1:
        dances = as_danced(work, how, progress=lambda share: say(0.9 * share))
        if errs.missed > 0:
            slips = missed_cues(
                work, tempo, jobs=how.jobs, backend=how.backend,
                progress=lambda share: say(0.9 + 0.1 * share),
            )  # fmt: skip
    told = _Told(work=work, count=BeatClock(tempo), words=words, requirements=requirements)
    chances = tuple(told.chance(one) for one in dances.groups)
    table = replace(
        told.table(dances, slips, errs, how),
        chances=chances,
        marks=_marks_off(words.still, errs.marks),
    )
    findings = tuple(
        told.finding(one, own)
        for one, own in zip(dances.groups, chances, strict=True)
        if own.low >= CHANCE
    )
    scope = (
        "As danced, only performers were checked against each other: not against audience, scenery, "
        "ceiling, edge of the stage or crew posts, but for marks that are off for all."
    )
    return Outcome(findings=findings, not_checked=(scope,)), table


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """Conflicts, slips and advice as the records of a report."""

    work: Work
    count: BeatClock
    words: PlanWords
    requirements: Requirements

    def table(self, dances: Dances, slips: Sequence[Slip], errs: Erring, how: Trials) -> Danced:
        """All but the conflicts themselves."""
        n = len(self.work.dancers)
        pairs = n * (n - 1) // 2
        anything = tuple(
            _any(times, runs)
            for times, runs in ((1.0, dances.runs), (0.5, dances.half), (2.0, dances.twice))
        )
        now = anything[0]
        before, low, high = (
            goes_wrong(chance, errs.missed, slips) for chance in (now.chance, now.low, now.high)
        )
        harmful = sorted(
            (slip for slip in slips if slip.meets),
            key=lambda slip: (slip.worst, slip.cue, slip.who),
        )
        return Danced(
            runs=how.runs,
            seed=how.seed,
            required=self.work.required,
            confidence=CONFIDENCE,
            spread=_as_numbers(self.work.spread),
            own={name: _as_numbers(own) for name, own in self.work.own.items()},
            chances=(),
            pairs=pairs,
            clear=pairs - len({one.pair for one in dances.groups}),
            clear_high=interval(0, how.runs)[1],
            least=CHANCE,
            anything=anything if pairs else (),
            missed=errs.missed,
            slips=len(slips),
            missed_cues=tuple(self.missed_cue(slip) for slip in harmful),
            goes_wrong=before,
            goes_wrong_low=low,
            goes_wrong_high=high,
            rehearse=tuple(
                Rehearsal(
                    what=rehearsed(
                        each,
                        self.begins(each.who[0], each.beat),
                        self.words.moves(each.who[0], each.beat + _INTO),
                    ),
                    who=each.who,
                    start=self.count.seconds(each.beat),
                    position=self.count.position(each.beat),
                    before=before,
                    after=max(before - each.fall, 0.0),
                    mend=each.mend,
                    gains=gains(each, how.runs),
                )
                for each in worth_telling(advice(dances, errs.missed, slips), how.runs)[:_REHEARSED]
            ),
        )

    def begins(self, who: str, cue: float) -> str:
        """What somebody begins at a cue: a walk, or a move."""
        (dancer,) = (each for each in self.work.dancers if each.name == who)
        if any(abs(move.start - cue) < _INTO for move in dancer.floor.moves):
            walk = self.words.place(who, who, cue + _INTO).formation
            return f"the {walk}" if walk.startswith("walk") else walk
        return begun(self.words.moves(who, cue + _INTO))

    def missed_cue(self, slip: Slip) -> MissedCue:
        """A slip that does harm."""
        return MissedCue(
            who=slip.who,
            start=self.count.seconds(slip.cue),
            position=self.count.position(slip.cue),
            kind=slip.kind,
            begins=self.begins(slip.who, slip.cue),
            meets=slip.meets,
            worst=slip.worst,
            parts=slip.parts,
            apart=slip.apart,
            harm=harm_words(slip),
            at=self.count.seconds(slip.at),
        )

    def chance(self, one: ConflictGroup) -> Chance:
        """A conflict."""
        low, high = interval(one.conflicts, one.runs)
        begin = float(math.floor(one.start))
        width, counts = histogram(one.moments, begin, one.end)
        removed = one.removed
        met = self.meeting(one)
        place = self.words.place(one.first, one.second, sorted(one.moments)[one.conflicts // 2])
        return Chance(
            between=(one.first, one.second),
            start=self.count.seconds(one.start),
            end=self.count.seconds(one.end),
            position=self.count.position(one.start),
            conflicts=one.conflicts,
            runs=one.runs,
            chance=one.share,
            low=low,
            high=high,
            worst=one.worst,
            parts=met.parts,
            apart=met.apart,
            formation=place.formation,
            section=place.section,
            moves=place.moves,
            slices_from=self.count.position(begin),
            slice_beats=width,
            slices=counts,
            half=one.half,
            twice=one.twice,
            matters=removed.matters,
            who=removed.who,
            without={kind: each.chance for kind, each in removed.kinds.items()},
            without_who={name: each.chance for name, each in removed.people.items()},
            raises=removed.raises,
        )

    def meeting(self, one: ConflictGroup) -> NearParts:
        """Which parts of the two come nearest of all runs, and how near without flames."""
        cast = {each.name: each for each in self.work.dancers}
        two = [
            drawn_dancer(self.work, cast[name], one.worst_run) for name in (one.first, one.second)
        ]
        return meeting(two[0], two[1], one.worst_at)

    def finding(self, one: ConflictGroup, own: Chance) -> Finding:
        """A conflict that is surely likelier than `CHANCE`."""
        spell = (self.count.aloud(one.start), self.count.aloud(one.end))
        return Finding(
            code="too-close-as-danced",
            severity="warn",
            who=own.between,
            start=own.start,
            end=own.end,
            position=own.position,
            message=finding_message(own, self.requirements.performers, spell),
            remedies=remedies(one, own),
            source="this tool's random runs; spread: `drift` of the show, or this tool's default where it is blank",
        )


_INTO = 0.01  # [beats] behind a cue, where what it begins has begun


def _any(times: float, runs: Sequence[Sequence[object]]) -> AnyChance:
    hits = sum(bool(run) for run in runs)
    low, high = interval(hits, len(runs))
    return AnyChance(spread=times, runs=len(runs), chance=hits / len(runs), low=low, high=high)


def _as_numbers(spread: Spread) -> dict[str, float]:
    return {name: float(value) for name, value in asdict(spread).items()}


def _marks_off(still: Sequence[Clearance], spread: float) -> MarksOff | None:
    """The least room to what stands still, if all marks are off together.

    Notes
    -----
    A distance changes by no more than the marks are off, e. With X and Y normal and independent, the chance that |e| is r or
    more is exp(−r²/2σ²) (Rayleigh), which is therefore the most that the chance of any too small distance can be.
    """
    level = [row for row in still if row.between[1] not in _LEVEL]
    if not level or spread <= 0:
        return None
    near = min(level, key=lambda row: row.distance - row.required)
    room = max(near.distance - near.required, 0.0)
    return MarksOff(
        between=near.between,
        at=near.at,
        position=near.position,
        room=room,
        spread=spread,
        most=math.exp(-(room**2) / (2 * spread**2)),
    )


CHECK = Check(
    name="as-danced",
    run=drifted,
    codes={"too-close-as-danced": ("warn",)},
    on_request=True,
)
