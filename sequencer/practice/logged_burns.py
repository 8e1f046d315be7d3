"""What the show believes of a burn against what was timed in practice."""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.facts.burn_log import BurnEstimate, TimedBurn, estimate, matching
from sequencer.facts.burn_times import BurnTime
from sequencer.practice.logged_run import LoggedRun
from sequencer.safety.burns.burning import burn_time, timed_burns
from sequencer.staging.staged import Staged


@dataclass(frozen=True, slots=True, kw_only=True)
class BurnBelief:
    """One performer's burns: what was timed, and what the show counts on."""

    who: str
    timed: BurnEstimate
    believed: BurnTime | None  # None: the show has no burning time for this fuel

    @property
    def rosy(self) -> bool:
        """Whether the show counts on more than what was timed allows."""
        return self.believed is None or self.believed.seconds > self.timed.counted_on


def burn_beliefs(show: Staged, runs: Sequence[LoggedRun]) -> tuple[BurnBelief, ...]:
    """Of everybody whose wick was timed until it burnt out, with the show's fuel; in the order of the cast.

    Raises
    ------
    InputError
        If the show's own log of burns cannot be used.
    """
    fire = show.show.fire
    if fire is None:
        return ()
    log = timed_burns(show)
    own = [
        TimedBurn(
            fuel=run.fuel,
            seconds=run.burn,
            performer=run.who,
            burnt_out=run.burnt_out,
            line=run.line,
        )
        for run in runs
        if run.burn is not None
    ]
    out = []
    for who in show.show.names:
        timed = estimate(matching(own, fuel=fire.fuel, performer=show.taken_by(who)))
        if timed is not None:
            out.append(BurnBelief(who=who, timed=timed, believed=burn_time(show, who, log)))
    return tuple(out)
