"""Limits that penalties hold: sought a little more strictly than they are, and again where they are missed by little."""

from collections.abc import Callable, Mapping
from math import inf
from typing import Protocol, TypeVar

from sequencer.arrays import Floats
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.flown.optimum import STAGES, Optimum, Problem, SoughtLimits


class Limited(Protocol):
    """A motion whose limits are looked at."""

    def missed(self) -> dict[str, float]:
        """Limits that are missed, and the share by which each is."""


M = TypeVar("M", bound=Limited)

_PULL = 0.4  # of the head's weight: the penalty leaves a little of it
_SHARE = 0.93  # of a limit, for the same reason
_MOST_ROUNDS = 6  # in which a limit that is missed by little is sought again
HOPELESS = 3.0  # share of a limit by which it is missed for good
_STRICTER = 1.3  # times what it was missed by
_LEAST_STRICTER, _MOST_STRICTER = 0.005, 0.35  # of a limit, in one round
_NEAR_HELD = 0.05  # share of a limit by which it is missed by little


def sought(limits: FlownLimits) -> SoughtLimits:
    """What to seek at first."""
    return SoughtLimits(
        _PULL * STANDARD_GRAVITY, _SHARE * limits.hand_speed, _SHARE * limits.hand_acceleration
    )


def held_to_limits(
    problem: Problem,
    start: Floats,
    motion_of: Callable[[Optimum], M],
    *,
    hopeless: float = HOPELESS,
) -> M:
    """The motion that a problem leads to, its limits sought until they are held or cannot be.

    Parameters
    ----------
    problem : Problem
    start : ndarray, shape (count, 3) [m]
        Coefficients.
    motion_of : callable
        The motion of an optimum.
    hopeless : float
        Share of a limit by which it is missed for good.

    Notes
    -----
    Source: this project's own rule; what it ends with is measured, not trusted.
    """
    found = problem.solved(start)
    best = motion = motion_of(found)
    least = inf
    for left in reversed(range(_MOST_ROUNDS + 1)):
        missed = motion.missed()
        worst = max(missed.values(), default=0.0)
        if worst > max(least, _NEAR_HELD):  # what grows when it is sought again is never held
            break
        if worst <= least:
            best, least = motion, worst
        if not missed or worst > hopeless or not left:
            break
        problem = stricter(problem, missed)
        if min(problem.wanted.limits) <= 0.0:
            break
        found = problem.solved(found.unknown, STAGES[-1:])
        motion = motion_of(found)
    return best


def stricter(problem: Problem, missed: Mapping[str, float]) -> Problem:
    """A problem whose limits are sought more strictly by what they were missed by.

    Parameters
    ----------
    problem : Problem
    missed : mapping
        Share by which a limit is missed, by its name.
    """
    own = problem.wanted.limits
    more = {
        name: min(max(_STRICTER * share, _LEAST_STRICTER), _MOST_STRICTER)
        for name, share in missed.items()
    }
    limits = SoughtLimits(
        own.pull * (1.0 + more.get("pull", 0.0)),
        own.speed * (1.0 - more.get("speed", 0.0)),
        own.acceleration * (1.0 - more.get("acceleration", 0.0)),
    )
    return problem.sought(limits)
