"""The state of one prop at n instants: hand, tether direction, plane, and their rates.

Frame: body frame [m]. Rates are per beat; only the tempo map converts them to seconds.
Source: the motion laws in docs/motion.md, section 2.
"""

from dataclasses import dataclass

from sequencer.arrays import Floats, crossed
from sequencer.units import counted


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Motion:
    """Hand and tether of one prop; every array has shape (..., 3)."""

    hand: Floats  # [m, body frame]
    hand_rate: Floats  # [m/beat]
    hand_acceleration: Floats  # [m/beat²]
    tether: Floats  # [1] unit vector from hand to head
    tether_rate: Floats  # [1/beat]
    tether_acceleration: Floats  # [1/beat²]
    plane: Floats  # [1] unit vector n of the law's plane and direction, n·tether = 0

    def __repr__(self) -> str:
        return f"<Motion at {counted(self.hand[..., 0].size, 'instant')}, body frame>"

    @property
    def turning_axis(self) -> Floats:
        """Tether × its rate, shape (..., 3) [1/beat]: the visible sense of rotation, as compared at a join."""
        return crossed(self.tether, self.tether_rate)

    def head(self, length: float) -> Floats:
        """Head's position, shape (..., 3) [m], on a tether of `length` [m]."""
        return self.hand + length * self.tether

    def head_rate(self, length: float) -> Floats:
        """Head's velocity, shape (..., 3) [m/beat]."""
        return self.hand_rate + length * self.tether_rate

    def head_acceleration(self, length: float) -> Floats:
        """Head's acceleration, shape (..., 3) [m/beat²]."""
        return self.hand_acceleration + length * self.tether_acceleration
