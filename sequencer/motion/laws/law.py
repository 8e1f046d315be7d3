"""What every pattern, link and blend is to the rest of the program: a law of beats."""

from dataclasses import dataclass
from math import inf
from typing import Protocol

from sequencer.arrays import Floats
from sequencer.motion.laws.state import Motion


@dataclass(frozen=True, slots=True, kw_only=True)
class Bounds:
    """Proven upper bounds of a law over all of its phase; never sampled maxima."""

    hand_speed: float  # [m/beat] of |hand'|
    hand_acceleration: float  # [m/beat²] of |hand''|
    turn_rate: float  # [1/beat] of |tether'|
    turn_acceleration: float  # [1/beat²] of |tether''|
    hand_reach: float  # [m] of the hand's distance from the body's vertical axis
    hand_jerk: float = inf  # [m/beat³] of |hand'''|; inf where nothing is proven
    turn_jerk: float = inf  # [1/beat³] of |tether'''|; inf where nothing is proven
    frame_rate: float = (
        inf  # [1/beat] of every unit vector fixed to the prop; inf where nothing is proven
    )
    frame_acceleration: float = inf  # [1/beat²] of the same; inf where nothing is proven

    def head_speed(self, length: float) -> float:
        """Bound of the head's speed [m/beat] on a tether of `length` [m]."""
        return self.hand_speed + length * self.turn_rate

    def head_acceleration(self, length: float) -> float:
        """Bound of the head's acceleration [m/beat²]."""
        return self.hand_acceleration + length * self.turn_acceleration


class Law(Protocol):
    """One prop's motion as a smooth function of its own beats (0 at its start)."""

    @property
    def period(self) -> float:
        """Beats after which the state is the same again; inf for a law that does not repeat."""
        ...

    def at(self, beats: Floats) -> Motion:
        """State at own beats, shape (...) [beats]; smooth and defined before 0 and after the end."""
        ...

    def bounds(self) -> Bounds:
        """Proven bounds over all beats (over its span, for a law that does not repeat)."""
        ...


def period_words(law: Law) -> str:
    """How often a law repeats, for people."""
    return "does not repeat" if law.period == inf else f"repeats every {law.period:g} beats"
