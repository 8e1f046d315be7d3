"""Changes of a show file tried on the restaged show: whether a fault is gone, and whether anything is worse.

A fault is a finding that stops or warns. A change clears it if no fault of its kind is left in its place, and does harm if
there is a fault that was not there before, or one that is worse than it was.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial

from sequencer.checks.check import Check
from sequencer.checks.dance import feasible
from sequencer.checks.dance.feasible import feasible_as_drawn
from sequencer.checks.distances import keeping_clear
from sequencer.checks.fault_kinds import MENDED_CODES, NEAR_FLAME, OF_JOINS, WORST_ONLY
from sequencer.checks.registry import checks
from sequencer.errors import InputError
from sequencer.findings import SEVERITIES, Figure, Finding
from sequencer.motion.performers.hand_deviation import LARGE
from sequencer.planning.trying.fault_places import home_of
from sequencer.planning.trying.first_looks import still_there
from sequencer.planning.trying.known_faults import KnownFaults
from sequencer.planning.trying.one_performer import (
    changed_alone,
    faults_alone,
    one_kind_alone,
    share_results,
)
from sequencer.planning.trying.restaging import as_drawn, needs_flights, restaged
from sequencer.planning.trying.trial_limits import Allowance
from sequencer.progress import stop_if_unwanted
from sequencer.show.editing import Change, Insertion
from sequencer.staging.staged import Block, Staged

_MOST_FLIGHTS = 12  # sought anew for one change: about a second each
_BESIDE = 0.3  # [s] by which a fault may have moved and count as the same
_ROUNDED = {"m": 0.01, "beats/min": 0.05}  # by which a figure may be worse and count as the same
_SAME_SHARE = 0.005  # the same of other units, of the limit
_QUICK = (
    "joins",
    "feasible",
    "walks",
    "distances",
)  # checks that settle most trials, in this order

_Key = tuple[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class DanceEdit:
    """One change of the show file to mend a fault of the dance."""

    words: str  # what to do, with its number
    cost: str = ""  # what it costs, in words
    changes: tuple[Change, ...] = ()
    insertions: tuple[Insertion, ...] = ()
    value: float = 0.0  # of what is changed, to order by

    @property
    def key(self) -> str:
        """The change, whatever it is called."""
        return repr((self.changes, self.insertions))

    @property
    def told(self) -> str:
        """What to do and what it costs."""
        return f"{self.words} ({self.cost})" if self.cost else self.words


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Trial:
    """What becomes of a show with a change."""

    after: Staged
    cleared: bool
    harm: tuple[Finding, ...] = ()  # the first faults that are new or worse

    @property
    def clear(self) -> bool:
        """Whether the fault is gone and nothing is worse."""
        return self.cleared and not self.harm


@dataclass(slots=True, kw_only=True, eq=False)
class FaultTrials:
    """Trials of changes on one show, against the faults that it has.

    A change is tried first with hand work as the margin of every block, which needs no flight: `of`. What is offered is
    tried again as the show is staged: `confirmed`.

    Parameters
    ----------
    show : Staged
        Staged from a file.
    fly : bool
        Whether every trial is made as the show is staged.
    allowance : Allowance, optional
        Of which each show that is staged takes one; whoever seeks mends stops when it is used up.
    """

    show: Staged
    fly: bool = False
    allowance: Allowance = field(default_factory=Allowance)
    spent: int = 0  # trials made so far
    looked: int = 0  # changes that a look as flown has settled, which costs little
    _drawn: Staged | None = None
    _flown: "FaultTrials | None" = None
    _before: Mapping[_Key, Sequence[Finding]] | None = None
    _homes: dict[int, frozenset[float]] = field(default_factory=dict)
    _known: dict[tuple[str, tuple[Finding, ...]], Trial | None] = field(default_factory=dict)
    _hopeless: dict[tuple[str, str, int], bool] = field(default_factory=dict)
    _begun: bool = False
    # of some faults, who kept theirs after the last change that did not help
    _keeps: dict[tuple[Finding, ...], str] = field(default_factory=dict)

    @property
    def before(self) -> Mapping[_Key, Sequence[Finding]]:
        """The faults of the show, by code and who."""
        if self._before is None:
            self._before = KnownFaults(self.codes(), partial(self.found_of, self._plain))
        return self._before

    @property
    def _plain(self) -> Staged:
        """The show that changes are tried on."""
        if self._drawn is None:
            self._drawn = self.show if self.fly else as_drawn(self.show)
        return self._drawn

    def found(self, show: Staged, codes: Sequence[str] = ()) -> Iterator[list[Finding]]:
        """The faults of a show, check by check: first of the check that gives some codes, then of those that settle most."""
        return (list(faults_in(check, show)) for check in settling_first(codes))

    def codes(self) -> list[str]:
        """Every code of a fault that a change is held against."""
        return [code for check in settling_first(()) for code in check.codes]

    def found_of(self, show: Staged, code: str) -> list[Finding]:
        """The faults of one code that a show has; only what gives it is run.

        Parameters
        ----------
        show : Staged
        code : str
            One of `codes`.
        """
        giving = (check for check in settling_first(()) if code in check.codes)
        return [each for check in giving for each in faults_in(check, show) if each.code == code]

    def has(self, faults: Sequence[Finding]) -> bool:
        """Whether any of some faults of another staging of this show is here, in its place."""
        return any(
            beside(fault, each)
            for fault in faults
            for each in self.before.get((fault.code, fault.who), ())
        )

    def of(self, faults: Sequence[Finding], *steps: DanceEdit) -> Trial | None:
        """The trial of a change, made in one or several steps; None if it does not fit the rest of the show.

        Parameters
        ----------
        faults : sequence of Finding
            To be cleared, all of one kind.
        *steps : DanceEdit
            Each is of the show as the one before leaves it.
        """
        key = ("|".join(step.key for step in steps), tuple(faults))
        if key not in self._known:
            stop_if_unwanted()
            self.spent += 1
            trial = self._known[key] = self.tried(faults, steps)
            if trial is not None and not trial.clear and trial.after is not self.show:
                trial.after.results.clear()  # nobody asks again what a change finds that is not offered
        return self._known[key]

    def hopeless(self, fault: Finding, block: Block, step: DanceEdit) -> bool:
        """Whether a change surely leaves a fault in its block: seen without seeking the links beside it.

        Parameters
        ----------
        fault : Finding
        block : Block
            In which it lies, and not where the block blends into its neighbours.
        step : DanceEdit
            It leaves the block where it is.
        """
        key = step.key, fault.code, id(block)
        if key not in self._hopeless:
            stop_if_unwanted()
            self._hopeless[key] = not self.fly and still_there(
                self._plain, fault.code, block, step.changes, step.insertions
            )
            self.spent += self._hopeless[key]
        return self._hopeless[key]

    def confirmed(self, faults: Sequence[Finding], *steps: DanceEdit) -> Trial | None:
        """The trial of a change as the show is staged, its blocks flown where their hand work is large.

        None too if more patterns would have to be flown anew than can be waited for: then it stays unproven.
        """
        trial = self.of(faults, *steps)
        if self.fly or trial is None or not trial.clear:
            return trial
        if self._plain is self.show and not needs_flights(trial.after):
            return trial
        if len(_flown_sizes(trial.after) - _flown_sizes(self._plain)) > _MOST_FLIGHTS:
            return None
        return self._as_staged.of(faults, *steps)

    @property
    def _as_staged(self) -> "FaultTrials":
        if self._flown is None:
            self._flown = FaultTrials(show=self.show, fly=True, allowance=self.allowance)
        return self._flown

    def tried(self, faults: Sequence[Finding], steps: Sequence[DanceEdit]) -> Trial | None:
        """The trial of a change, made anew; None if it does not fit the rest of the show."""
        alone = self.alone(faults, steps)
        if alone is not None and self._settled_by(alone, faults):
            self.allowance.take()
            return Trial(after=self.show, cleared=False)
        after = self.restaged(steps)
        if after is None:
            return None
        if alone is not None:
            share_results(alone, after)
        return self.judged(faults, after)

    def alone(self, faults: Sequence[Finding], steps: Sequence[DanceEdit]) -> Staged | None:
        """The changed show as drawn, with the one performer who kept the faults last, or has the first; None if that says nothing."""
        name = self._keeps.get(tuple(faults), faults[0].who[0] if faults[0].who else "")
        said = [(step.changes, step.insertions) for step in steps]
        return changed_alone(self._plain, said, name, fly=False)

    def _settled_by(self, alone: Staged, faults: Sequence[Finding]) -> bool:
        """Whether one performer keeps one of the faults, or has a new one that no other change of a passage mends."""
        code = faults[0].code
        check = settling_first((code,))[0]
        first = one_kind_alone(check, code, alone)
        if first is not None and self._kept(faults, first, alone) is not None:
            return True
        found = faults_alone(check, alone) if code in check.codes else None
        if found is None:
            return False
        if self._kept(faults, found, alone) is not None:
            return True
        return code not in OF_JOINS and bool(self._new_or_worse(found, alone))

    def restaged(self, steps: Sequence[DanceEdit]) -> Staged | None:
        """The show with a change, made in one or several steps; None if it does not fit the rest of the show.

        Parameters
        ----------
        steps : sequence of DanceEdit
        """
        self.allowance.take()
        self._begin()
        after = self._plain
        try:
            for step in steps:
                after = restaged(after, step.changes, step.insertions, fly=self.fly)
        except (InputError, ValueError):
            return None
        return after

    def _begin(self) -> None:
        """Run what no change of the dance concerns, once: every changed show takes it over."""
        if not self._begun:
            self._begun = True
            for check in settling_first(()):
                if "trajectories" not in check.depends_on:
                    check.faults(self._plain)

    def judged(self, faults: Sequence[Finding], after: Staged) -> Trial:
        """Whether some faults are gone from a changed show, and whether anything is worse.

        Parameters
        ----------
        faults : sequence of Finding
            To be cleared, all of one kind.
        after : Staged
        """
        for found in self.found(after, (faults[0].code,)):
            kept = self._kept(faults, found, after)
            if kept is not None:
                if kept.who:
                    self._keeps[tuple(faults)] = kept.who[0]
                return Trial(after=after, cleared=False)
            harm = self._new_or_worse(found, after)
            if harm:
                return Trial(after=after, cleared=True, harm=harm)
        return Trial(after=after, cleared=True)

    def _kept(
        self, faults: Sequence[Finding], found: Sequence[Finding], after: Staged
    ) -> Finding | None:
        """The first of some faults of a kind that a changed show still has."""
        of_the_kind = (each for each in found if each.code == faults[0].code)
        kept = (
            fault for each in of_the_kind for fault in faults if self._stays(fault, each, after)
        )
        return next(kept, None)

    def _stays(self, fault: Finding, each: Finding, after: Staged) -> bool:
        """Whether a fault of a changed show is the one to be cleared, still there: at its time or, of the worst, in its block."""
        if (each.code, each.who) != (fault.code, fault.who):
            return False
        there = each.code in WORST_ONLY and bool(home_of(after, each) & self._home(fault))
        if not there and not beside(fault, each):
            return False
        return not any(  # it may be a neighbour that was there before
            other != fault and (other.message, other.start) == (each.message, each.start)
            for other in self.before.get((each.code, each.who), ())
        )

    def _new_or_worse(self, found: Sequence[Finding], after: Staged) -> tuple[Finding, ...]:
        """Those of a check's faults that were not there before, or not as bad; each of before stands for one of a hand."""
        taken: set[tuple[int, str]] = set()
        harm = []
        likely = {id(each): self._as_bad(each, after) for each in found}
        for each in sorted(
            found, key=lambda one: all(_unlike(old, one)[0] for old in likely[id(one)])
        ):
            hands = _hands(each) or {""}
            old = [
                own for own in likely[id(each)]
                if not any((id(own), hand) in taken for hand in hands)
            ]  # fmt: skip
            if not old:
                harm.append(each)
                continue
            best = min(old, key=partial(_unlike, each))
            taken |= {(id(best), hand) for hand in hands}
        return tuple(each for each in found if any(each is own for own in harm))

    def _as_bad(self, each: Finding, after: Staged) -> list[Finding]:
        """Faults of before that are as bad as one of now, of the same hand, and in the same block or passage.

        Where only the worst is told, one that was not told before may have been there: then the worst of before counts, of
        the same pattern if it is told of each.
        """
        home, hands = home_of(after, each), _hands(each)
        return [
            old for old in self.before.get((each.code, each.who), ())
            if SEVERITIES.index(old.severity) <= SEVERITIES.index(each.severity)
            and (of_one_worst(old, each) or (beside(old, each) and home <= self._home(old)))
            and hands <= _hands(old) and bool(hands) == bool(_hands(old))
            and (old.message == each.message or not worse(old, each))
        ]  # fmt: skip

    def _home(self, old: Finding) -> frozenset[float]:
        if id(old) not in self._homes:
            self._homes[id(old)] = home_of(self._plain, old)
        return self._homes[id(old)]


def _flown_sizes(show: Staged) -> set[float]:
    """Hand work of what is flown [m]: one for each pattern at its pace, since others hardly have the same."""
    return {
        own.size
        for each in show.dancers for hand in each.deviation.values() for own in hand
        if own.size > LARGE
    }  # fmt: skip


def faults_in(check: Check, show: Staged) -> Iterator[Finding]:
    """Findings of a check that stop or warn; a tether that goes slack as drawn stops, without a flight being sought."""
    outcome = feasible_as_drawn(show) if check is feasible.CHECK else check.faults(show)
    return (each for each in outcome.findings if each.severity != "note")


def faults_of(show: Staged) -> list[Finding]:
    """All findings of the checks that stop or warn, as `check` tells them."""
    return [
        each
        for check in checks() if not check.on_request
        for each in check.faults(show).findings if each.severity != "note"
    ]  # fmt: skip


def mendable_faults(show: Staged) -> list[Finding]:
    """What stops or warns of the kinds that mends are sought for by trials, as `check` tells it."""
    found: list[Finding] = []
    for check in checks():
        if check.on_request or not set(MENDED_CODES) & set(check.codes):
            continue
        if check is keeping_clear.CHECK and check not in show.results:
            outcome = keeping_clear.boundaries_of(show)  # of distances only heights are
        else:
            outcome = check.faults(show)
        found += [
            each for each in outcome.findings
            if each.severity != "note" and each.code in MENDED_CODES
        ]  # fmt: skip
    return found


def settling_first(codes: Sequence[str]) -> list[Check]:
    """All checks but those on request: those that give some codes first, then those that settle most trials.

    Parameters
    ----------
    codes : sequence of str
    """
    use = [check for check in checks() if not check.on_request]
    first = [check for check in use if set(codes) & set(check.codes)]
    quick = [check for name in _QUICK for check in use if check.name == name]
    return list(dict.fromkeys((*first, *quick, *use)))


def beside(one: Finding, other: Finding) -> bool:
    """Whether two findings are about the same time.

    Parameters
    ----------
    one, other : Finding
    """
    if one.start is None or other.start is None:
        return one.start is other.start
    ends = [each.start if each.end is None else each.end for each in (one, other)]
    return one.start <= (ends[1] or 0.0) + _BESIDE and other.start <= (ends[0] or 0.0) + _BESIDE


def _hands(fault: Finding) -> frozenset[str]:
    """The hands that a finding is of."""
    return frozenset(fault.hands)


def _unlike(old: Finding, each: Finding) -> tuple[bool, float]:
    return old.message != each.message, abs((old.start or 0.0) - (each.start or 0.0))


def worse(before: Finding, after: Finding) -> bool:
    """Whether one fault is worse than another of its kind, by any figure; without figures to compare it is.

    Parameters
    ----------
    before, after : Finding
        Of one code.
    """
    old = {each.quantity: each for each in before.figures}
    if not after.figures or not old:
        return after.figures != before.figures or _said(before) != _said(after)
    return any(
        each.quantity not in old or _more(old[each.quantity], each) for each in after.figures
    )


def _more(old: Figure, new: Figure) -> bool:
    """Whether a figure breaks its limit by more than another of its quantity."""
    return new.beyond > old.beyond + _ROUNDED.get(new.unit, _SAME_SHARE * abs(new.limit)) + 1e-9


def of_one_worst(old: Finding, each: Finding) -> bool:
    """Whether two faults of a code are of those of which only the worst is told: of a whole show, or of a pattern in it.

    Parameters
    ----------
    old, each : Finding
        Of one code.
    """
    if each.code not in WORST_ONLY:
        return False
    # each link is told by itself
    return each.code != NEAR_FLAME or _pattern(old) == _pattern(each) != "link"


def _pattern(fault: Finding) -> str:
    """The pattern that the message of a fault of the own body begins with, before the hand."""
    return fault.message.rpartition(": ")[0].rpartition(", ")[0]


def _said(fault: Finding) -> str:
    """A message without the pattern and the hand that it begins with."""
    return fault.message.rpartition(": ")[2]
