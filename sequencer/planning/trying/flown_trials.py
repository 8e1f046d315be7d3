"""Changes of a show file tried on the restaged show as it is flown: nothing drawn or flown may be new or worse.

A change is looked at first: its pattern or its link, flown by itself, for one performer. Most end there, without the rest of the
show. What is left is staged, and checked as drawn: what does harm there is not flown. Then it is flown and checked as a whole;
only what the change touches is flown anew.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace

from sequencer.checks.check import Check
from sequencer.checks.dance.flown_blocks import ShowHand, flies, hands_of
from sequencer.checks.dance.flown_faults import FlownFault, strains_told, touches_told, unflown
from sequencer.checks.dance.flown_feasible import OF_THE_FLIGHT, flight_faults
from sequencer.checks.dance.flown_gaps import fails_between
from sequencer.checks.dance.flown_in_place import strained
from sequencer.checks.fault_kinds import (
    FLOWN_CODES,
    HITS,
    MEETS,
    OF_PASSAGES,
    STRAINS,
    TOO_SLOW,
    UNFLOWN,
    UNFLOWN_LINK,
)
from sequencer.checks.fire.each_burn.hanging_lit import HANGING
from sequencer.checks.outcome import Outcome
from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.planning.trying.one_performer import hanging_alone, share_results
from sequencer.planning.trying.restaging import restaged_dancers
from sequencer.planning.trying.trials import (
    DanceEdit,
    FaultTrials,
    Trial,
    beside,
    faults_in,
    settling_first,
)
from sequencer.progress import stop_if_unwanted
from sequencer.safety.safety_plan import safety_plan
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.results import result_of
from sequencer.staging.staged import Block, Staged

OF_THE_MOTION = ("distances", "let-go")  # checks that look at the flown paths, as `check` runs them
_MOST_HARM = "handling"  # check that most changes of a length fail: a lit prop would be held still
_LOOKED_AT = (UNFLOWN, UNFLOWN_LINK, TOO_SLOW)  # codes that a pattern or a link by itself decides


@dataclass(slots=True, kw_only=True, eq=False)
class FlownTrials(FaultTrials):
    """Trials of changes on one show, against the faults that it has as drawn and as flown.

    Parameters
    ----------
    show : Staged
        Staged from a file, as drawn.
    """

    fly: bool = True
    _looks: dict[tuple[str, tuple[Finding, ...]], bool] = field(default_factory=dict)
    _strained: str = ""  # who was strained last

    def found(self, show: Staged, codes: Sequence[str] = ()) -> Iterator[list[Finding]]:
        """The faults of a show as flown, check by check: first of what gives some codes, then what settles most trials."""
        paths = strains_told, touches_told
        given = {STRAINS: paths, MEETS: paths[::-1], HITS: paths[::-1]}.get(
            next(iter(codes), ""), ()
        )
        for told in (*given, unflown):
            yield from self._told(told, show)
        rest = settling_first(codes)
        for check in [each for each in rest if each.name not in OF_THE_MOTION]:
            yield _as_drawn(check, show)
        for told in [each for each in paths if each not in given]:
            yield from self._told(told, show)
        yield flight_faults(show)
        for check in [each for each in rest if each.name in OF_THE_MOTION]:
            yield list(_of_the_motion(check, show))

    def _told(
        self, told: Callable[[Staged], Sequence[FlownFault]], show: Staged
    ) -> Iterator[list[Finding]]:
        """Faults of one kind of a show as flown; strains performer by performer, so that the rest need not be flown.

        Whoever was strained when the last change ended there goes first, then who dances anew.
        """
        if told is not strains_told:
            yield [each.finding for each in told(show)]
            return
        before = {each.name: each.trajectories for each in self.show.dancers}
        for dancer in sorted(
            show.dancers,
            key=lambda one: (
                one.name != self._strained,
                one.trajectories is before.get(one.name),
            ),
        ):
            alone = replace(show, dancers=(dancer,))
            share_results(show, alone)
            found = list(strained(alone))
            share_results(alone, show)
            self._strained = dancer.name if found else self._strained
            yield found

    def codes(self) -> list[str]:
        """Every code of a fault that a change is held against, of flown paths too."""
        return [*FLOWN_CODES, *FaultTrials.codes(self)]

    def found_of(self, show: Staged, code: str) -> list[Finding]:
        """The faults of one code that a show has as flown; only what gives it is run.

        Parameters
        ----------
        show : Staged
            As drawn.
        code : str
            One of `codes`.
        """
        if code in FLOWN_CODES:
            paths = {STRAINS: strains_told, MEETS: touches_told, HITS: touches_told}
            found = [each.finding for each in paths.get(code, unflown)(show)]
        elif code in OF_THE_FLIGHT:
            found = flight_faults(show)
        else:
            giving = [check for check in settling_first(()) if code in check.codes]
            drawn = [check for check in giving if check.name not in OF_THE_MOTION]
            found = [each for check in drawn for each in _as_drawn(check, show)]
            moved = (check for check in giving if check.name in OF_THE_MOTION)
            found += [each for check in moved for each in _of_the_motion(check, show)]
        return [each for each in found if each.code == code]

    def hopeless(self, fault: Finding, block: Block, step: DanceEdit) -> bool:  # noqa: ARG002 - the fault says where
        """Whether a change surely leaves a fault in its block, as `FaultTrials.hopeless`."""
        return self._seen((fault,), step)

    def harm(self, after: Staged) -> tuple[Finding, ...]:
        """The first faults of the flown paths of a changed show that are new or worse; empty if none is.

        Parameters
        ----------
        after : Staged
            As drawn.
        """
        for found in _of_the_flight(after):
            harm = self._new_or_worse(found, after)
            if harm:
                return harm
        return ()

    def tried(self, faults: Sequence[Finding], steps: Sequence[DanceEdit]) -> Trial | None:
        """The trial of a change, made anew, if a look does not show that it is none."""
        if len(steps) == 1 and self._seen(tuple(faults), steps[0]):
            self.spent -= 1
            self.looked += 1
            return Trial(after=self.show, cleared=False)
        alone = self.alone(faults, steps)
        hanging = () if alone is None else self._hanging(alone)
        if hanging:
            self.allowance.take()
            return Trial(after=self.show, cleared=False, harm=hanging)
        after = self.restaged(steps)
        if after is None:
            return None
        if alone is not None:
            share_results(alone, after)
        harm = self._harm_as_drawn(after)
        if harm:  # whether the fault is gone need not be flown
            return Trial(after=after, cleared=False, harm=harm)
        return self.judged(faults, after)

    def _hanging(self, alone: Staged) -> tuple[Finding, ...]:
        """Lit props that hang still in the hands of one performer of a changed show, where none of theirs did before.

        The whole show tells them too, of this performer and of all who hold alike props then: they are new in it as well.
        """
        found = hanging_alone(safety_plan(self.show), alone) if alone.lit else ()
        (own,) = alone.dancers
        before = [old for old in self.found_of(self.show, HANGING) if own.name in old.who]
        return tuple(each for each in found if not any(beside(old, each) for old in before))

    def _harm_as_drawn(self, after: Staged) -> tuple[Finding, ...]:
        """The first faults of a changed show's drawing that are new or worse, if no other change of a passage may mend them."""
        for check in sorted(settling_first(()), key=lambda own: own.name != _MOST_HARM):
            if check.name not in OF_THE_MOTION:
                harm = self._new_or_worse(_as_drawn(check, after), after)
                if any(each.code not in OF_PASSAGES for each in harm):
                    return harm
        return ()

    def _seen(self, faults: tuple[Finding, ...], step: DanceEdit) -> bool:
        """Whether a look shows that a fault stays: its pattern or its link flown by itself, with the change."""
        key = step.key, faults
        if key not in self._looks:
            stop_if_unwanted()
            self._looks[key] = faults[0].code in _LOOKED_AT and self._stays_unflown(faults, step)
        return self._looks[key]

    def _stays_unflown(self, faults: tuple[Finding, ...], step: DanceEdit) -> bool:
        name = faults[0].who[0]
        who = [each.name for each in self.show.dancers].index(name)
        try:
            seen = restaged_dancers(self.show, (who,), step.changes, step.insertions, fly=False)
        except (InputError, ValueError):
            return False  # the trial says so
        if seen is None:
            return False
        hands = {hand.side: hand for hand in hands_of(replace(self.show, dancers=seen))}
        return any(
            _is_unflown(hands[side], fault)
            for fault in faults if fault.who == (name,)
            for side in fault.hands if side in hands
        )  # fmt: skip


def _as_drawn(check: Check, show: Staged) -> list[Finding]:
    """Faults of the drawing, which needs no flight."""
    return [each for each in faults_in(check, show) if each.code not in OF_THE_FLIGHT]


def _of_the_flight(show: Staged) -> Iterator[list[Finding]]:
    """The faults that only a show as flown has: of flights, and of the checks of the motion."""
    for told in (unflown, strains_told, touches_told):
        yield [each.finding for each in told(show)]
    yield flight_faults(show)
    for check in settling_first(()):
        if check.name in OF_THE_MOTION:
            yield list(_of_the_motion(check, show))


def _of_the_motion(check: Check, show: Staged) -> Iterator[Finding]:
    """Findings of a check that stop or warn, of the show on its flown paths."""
    own, work = flown_show(show).staged, check.unmended or check.run
    # what the whole check found is known under the check itself
    key = check if check in own.results else ("faults as flown", check)
    outcome: Outcome = result_of(own, key, lambda: work(own))
    return (each for each in outcome.findings if each.severity != "note")


def _is_unflown(hand: ShowHand, fault: Finding) -> bool:
    """Whether a pattern or a link is not flown by a hand with a change, where it was not without."""
    beats = hand.show.tempo.beats_from_seconds
    start, end = float(beats(fault.start or 0.0)), float(beats(fault.end or 0.0))
    if fault.code == UNFLOWN_LINK:
        return fails_between(hand, start, end)
    middle = (start + end) / 2
    inside = [
        span for span in hand.spans if span.kind == "block" and span.start <= middle < span.end
    ]
    return any(not flies(hand, span) for span in inside)


@dataclass(slots=True, kw_only=True, eq=False)
class TrialsAlsoFlown(FaultTrials):
    """Trials against the faults that a show has as drawn; what is offered is tried as flown as well.

    Parameters
    ----------
    flown : FlownTrials
        Of the same show.
    """

    flown: FlownTrials

    def confirmed(self, faults: Sequence[Finding], *steps: DanceEdit) -> Trial | None:
        """The trial of a change as the show is staged and flown; None too if it would have to be waited for."""
        trial = FaultTrials.confirmed(self, faults, *steps)
        if trial is None or not trial.clear:
            return trial
        return self.flown.of(faults, *steps)
