"""The interface of every pattern, link and blend: a law of motion in beats."""

from dataclasses import dataclass
from math import inf
from typing import Protocol

from sequencer.arrays import Floats
from sequencer.motion.laws.state import Motion
from sequencer.units import counted


@dataclass(frozen=True, slots=True, kw_only=True)
class Bounds:
    """Proven upper bounds of a law over its whole phase; never sampled maxima."""

    hand_speed: float  # [m/beat] of |hand'|
    hand_acceleration: float  # [m/beat²] of |hand''|
    turn_rate: float  # [1/beat] of |tether'|
    turn_acceleration: float  # [1/beat²] of |tether''|
    hand_reach: float  # [m] of the hand's distance from the body's vertical axis
    hand_jerk: float = inf  # [m/beat³] of |hand'''|; inf if nothing is proven
    turn_jerk: float = inf  # [1/beat³] of |tether'''|; inf if nothing is proven
    frame_rate: float = (
        inf  # [1/beat] of every unit vector fixed to the prop; inf if nothing is proven
    )
    frame_acceleration: float = inf  # [1/beat²] of the same; inf if nothing is proven

    def head_speed(self, length: float) -> float:
        """Bound on the head's speed [m/beat] on a tether of `length` [m]."""
        return self.hand_speed + length * self.turn_rate

    def head_acceleration(self, length: float) -> float:
        """Bound on the head's acceleration [m/beat²]."""
        return self.hand_acceleration + length * self.turn_acceleration


class Law(Protocol):
    """One prop's motion as a smooth function of the law's beats (0 at its start)."""

    @property
    def period(self) -> float:
        """Beats after which the state is the same again; inf for a law that does not repeat."""
        ...

    def at(self, beats: Floats) -> Motion:
        """State at the law's beats, shape (...) [beats]; smooth, and defined before 0 and after the end."""
        ...

    def bounds(self) -> Bounds:
        """Proven bounds over all beats (over its span, for a law that does not repeat)."""
        ...


def period_words(law: Law) -> str:
    """How often a law repeats, as text."""
    if law.period == inf:
        return "does not repeat"
    return f"repeats every {counted(float(law.period), 'beat').removeprefix('1 ')}"
