"""The period of a pattern as it can be flown by one hand, and how clean it reads.

The drawing is the law. Flown is the head's path nearest to it, head and hand (`optimum.py`), that holds the limits: a line
that pulls with three tenths of the head's weight at every instant, hand speed and acceleration, the arm's reach, and
clearance of the own body and the floor. Frame: body frame [m].
"""

from dataclasses import dataclass, field
from functools import cached_property

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.flown.flown_motion import OUT_OF_REACH, FlownMotion
from sequencer.motion.laws.law import Law

LOST = np.radians(90.0)  # a tether farther off what is drawn no longer shows the pattern


@dataclass(frozen=True, kw_only=True, eq=False)
class FlownPeriod(FlownMotion):
    """A law's period as flown.

    Parameters
    ----------
    law : Law
        As drawn.
    flying : Flying
    head : EvenSpline
        The head's path [m, body frame], in the law's beats; repeats.
    alike : int
        Parts of the period that are flown alike.
    moved : ndarray, shape (3,) [m, body frame]
        From where the pattern is drawn to where it is danced, so that the hand has room.
    residual : float
        First-order residual of the optimum: the share of the value that a further step promises.
    """

    law: Law
    alike: int
    residual: float
    moved: Floats = field(default_factory=lambda: np.zeros(3))

    @cached_property
    def _off(self) -> tuple[Floats, Floats, Floats]:
        """Head and hand off the drawing [m], and the tether [rad], at the looks; each shape (n,)."""
        drawn, seen = self.law.at(self._looks), self._seen
        there = drawn.head(self.flying.prop.length) + self.moved
        head = np.linalg.norm(seen.head - there, axis=-1)
        hand = np.linalg.norm(seen.hand - drawn.hand - self.moved, axis=-1)
        turned = np.arccos(np.clip(np.sum(seen.tether * drawn.tether, axis=-1), -1.0, 1.0))
        return head, hand, turned

    @property
    def head_off(self) -> tuple[float, float]:
        """Root mean square and largest distance of the head from its drawn path, moved as the pattern is [m]."""
        return _size(self._off[0])

    @property
    def hand_off(self) -> tuple[float, float]:
        """The same of the hand [m]."""
        return _size(self._off[1])

    @cached_property
    def tether_off(self) -> float:
        """Largest angle between the tether as flown and as drawn [rad]."""
        return float(np.max(self._off[2]))

    @cached_property
    def _drawn_reach(self) -> float:
        """Least arm's length left as drawn [m]."""
        return float(np.min(self._space.spare_reach(self.law.at(self._looks).hand)))

    @cached_property
    def broken(self) -> tuple[str, ...]:
        """Names of the limits that are not held: pull, speed, acceleration, reach and pattern; empty if it flies."""
        lost = () if self.tether_off <= LOST else ("pattern",)
        return (*self.overstepped(min(-OUT_OF_REACH, self._drawn_reach)), *lost)


def _size(distance: Floats) -> tuple[float, float]:
    return float(np.sqrt(np.mean(distance**2))), float(np.max(distance))
