"""A flown period as a law of motion: what drawings, pages and traces take where they take a pattern's law.

Hand and head are the published splines, so the bounds are proven; the line is the unit vector between them, and its
length differs from the prop's by what the hand's spline leaves of the law of motion (1 to 2 mm at most).
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.flown.even_splines import EvenSpline
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.flown.tether import held
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion


@dataclass(frozen=True, kw_only=True, eq=False)
class FlownLaw:
    """A law as one hand really flies it.

    Parameters
    ----------
    flown : FlownPeriod
    """

    flown: FlownPeriod

    @property
    def period(self) -> float:
        """Beats after which the state is the same again."""
        return self.flown.law.period

    @cached_property
    def _line(self) -> EvenSpline:
        """From hand to head [m], over the hand's knots."""
        hand = self.flown.hand
        head = self.flown.head.finer(hand.spans // self.flown.head.spans)
        return EvenSpline(
            start=hand.start,
            step=hand.step,
            coefficients=head.coefficients - hand.coefficients,
            periodic=True,
        )

    def at(self, beats: Floats) -> Motion:
        """State at the law's beats, shape (...) [beats]; the plane is the drawn one, turned to hold the line.

        Notes
        -----
        Source: `FlownPeriod`; rates of a unit vector as in motion/flown/tether.py.
        """
        hand, line = (
            [spline.at(beats, order) for order in range(3)]
            for spline in (self.flown.hand, self._line)
        )
        return held(hand, line, self.flown.law.at(beats).plane)

    def bounds(self) -> Bounds:
        """Proven bounds over all beats, from the control points of the splines.

        Notes
        -----
        With w from hand to head and ρ its least length, |u'| ≤ |w'|/ρ and |u''| ≤ |w''|/ρ + 3|w'|²/ρ², and ρ is at least
        what the control points of each span reach along their middle.
        Source: derivatives of w/|w|.
        """
        hand, points = self.flown.hand, self._line.controls(0)
        way = points.mean(axis=1)
        way = way / np.linalg.norm(way, axis=-1, keepdims=True)
        least = float(np.min(np.einsum("kja,ka->kj", points, way)))
        rate, bend = (float(np.max(self._line.largest(order))) for order in (1, 2))
        return Bounds(
            hand_speed=float(np.max(hand.largest(1))),
            hand_acceleration=float(np.max(hand.largest(2))),
            turn_rate=rate / least,
            turn_acceleration=bend / least + 3.0 * (rate / least) ** 2,
            hand_reach=float(np.max(np.linalg.norm(hand.controls(0)[..., :2], axis=-1))),
        )
