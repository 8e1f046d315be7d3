"""Limits that penalties hold: sought a little more strictly than they are, and again where they are missed by little."""

from collections.abc import Callable
from dataclasses import replace
from typing import TypeVar

from sequencer.arrays import Floats
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.motion.flown.flown_motion import FlownLimits, FlownMotion
from sequencer.motion.flown.optimum import STAGES, Optimum, Problem, SoughtLimits

M = TypeVar("M", bound=FlownMotion)

_PULL = 0.4  # of the head's weight: the penalty leaves a little of it
_SHARE = 0.93  # of a limit, for the same reason
_MOST_ROUNDS = 6  # in which a limit that is missed by little is sought again
_HOPELESS = 3.0  # share of a limit by which it is missed for good
_STRICTER = 1.3  # times what it was missed by
_MOST_STRICTER = 0.35  # of a limit, in one round


def sought(limits: FlownLimits) -> SoughtLimits:
    """What to seek at first."""
    return SoughtLimits(
        _PULL * STANDARD_GRAVITY, _SHARE * limits.hand_speed, _SHARE * limits.hand_acceleration
    )


def held_to_limits(problem: Problem, start: Floats, motion_of: Callable[[Optimum], M]) -> M:
    """The motion that a problem leads to, its limits sought until they are held or cannot be.

    Parameters
    ----------
    problem : Problem
    start : ndarray, shape (count, 3) [m]
        Coefficients.
    motion_of : callable
        The motion of an optimum.

    Notes
    -----
    Source: this project's own rule; what it ends with is measured, not trusted.
    """
    found = problem.solved(start)
    motion = motion_of(found)
    for _ in range(_MOST_ROUNDS):
        missed = motion.missed()
        if not missed or max(missed.values()) > _HOPELESS:
            break
        own = problem.wanted.limits
        more = {name: min(_STRICTER * share, _MOST_STRICTER) for name, share in missed.items()}
        limits = SoughtLimits(
            own.pull * (1.0 + more.get("pull", 0.0)),
            own.speed * (1.0 - more.get("speed", 0.0)),
            own.acceleration * (1.0 - more.get("acceleration", 0.0)),
        )
        if min(limits) <= 0.0:
            break
        problem = Problem(problem.grid, replace(problem.wanted, limits=limits))
        found = problem.solved(found.unknown, STAGES[-1:])
        motion = motion_of(found)
    return motion
