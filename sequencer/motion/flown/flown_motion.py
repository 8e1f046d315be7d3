"""A motion that can be flown: a head's spline, the hand that it takes, and what is felt; figures and proven bounds.

The hand is published as a spline through the hand that the law of motion gives, so that distances can be proven on
splines; its acceleration and the pull are bounded between knots by control points. Tempo is constant.
Frame: body frame [m]; rates per beat on splines, per second in figures.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from sequencer.arrays import Floats
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.motion.flown.body_space import CLEARANCE, LINGERING_NEAR, BodySpace
from sequencer.motion.flown.even_splines import DEGREE, EvenSpline, between, through
from sequencer.motion.flown.tether import UP, Flight, drag_of, flight, force, speed_of
from sequencer.motion.props.prop import Prop

LEAST_PULL = 0.3  # of the head's weight, at every instant
OUT_OF_REACH = 0.005  # [m] out of reach by less counts as at arm's length
_FINER = 8  # hand's knots to one of the head's, and parts of a span in proofs
# [m/s] a wick slower than this stays for 0.2 s within 10 cm of what it passes, in which a flame of 100 kW/m²
# (from memory) gives the dose of pain, 92 (kW/m²)^(4/3)·s (HSL/2004/04); a faster one is gone before. A design choice.
SLOW_PASS = 1.0
_LOOKS = 8  # samples a span for figures


@dataclass(frozen=True, slots=True, kw_only=True)
class FlownLimits:
    """What a hand can do."""

    hand_speed: float = 6.0  # [m/s]
    hand_acceleration: float = 80.0  # [m/s²]


@dataclass(frozen=True, kw_only=True)
class Flying:
    """Who flies a law with what."""

    prop: Prop
    body: Body
    side: Side
    tempo: float  # [beats/min]
    posture: Posture = UPRIGHT
    limits: FlownLimits = FlownLimits()

    @property
    def beat(self) -> float:
        """Seconds of a beat."""
        return 60.0 / self.tempo

    def space(self, clearance: float) -> BodySpace:
        """The hand's room about the body, at some clearance [m]."""
        return BodySpace(
            body=self.body,
            posture=self.posture,
            side=self.side,
            prop=self.prop,
            clearance=clearance,
        )


@dataclass(frozen=True, kw_only=True, eq=False)
class FlownMotion:
    """A head's path and the hand that it takes.

    Parameters
    ----------
    flying : Flying
    head : EvenSpline
        The head's path [m, body frame].
    """

    flying: Flying
    head: EvenSpline

    def flight(self, beats: Floats) -> Flight:
        """Head, hand and pull at the law's beats, from the law of motion; shape (..., 3), in seconds."""
        beat, prop = self.flying.beat, self.flying.prop
        seen = self.head.among(beats, range(DEGREE))
        path = [own / beat**order for order, own in enumerate(seen)]
        return flight(tuple(path), length=prop.length, drag=drag_of(prop))

    def places(self, beats: Floats) -> tuple[Floats, Floats]:
        """Head and hand alone, as `flight` gives them; each shape (..., 3) [m]."""
        beat, prop = self.flying.beat, self.flying.prop
        head, rate, bent = self.head.among(beats, range(3))
        pulled = force(rate / beat, bent / beat**2, drag_of(prop))
        way = pulled / np.linalg.norm(pulled, axis=-1, keepdims=True)
        return head, head + prop.length * way

    @cached_property
    def hand(self) -> EvenSpline:
        """The hand's path [m, body frame], in the head's beats."""
        head, step, beat = self.head, self.head.step / _FINER, self.flying.beat
        count = head.spans * _FINER + (0 if head.periodic else 1)
        knots: Floats = head.start + np.arange(count, dtype=np.float64) * step
        seen = self.flight(knots)
        if head.periodic:
            return through(seen.hand, start=head.start, step=step)
        ends = [
            np.stack((seen.hand_rate[k] * beat, seen.hand_acceleration[k] * beat**2))
            for k in (0, -1)
        ]
        return between(seen.hand, start=head.start, step=step, first=ends[0], last=ends[1])

    @cached_property
    def _looks(self) -> Floats:
        """Beats at which figures are taken, shape (n,)."""
        count = self.head.spans * _LOOKS
        return np.asarray(
            self.head.start + (np.arange(count) + 0.5) * (self.head.end - self.head.start) / count
        )

    @cached_property
    def _seen(self) -> Flight:
        return self.flight(self._looks)

    @cached_property
    def least_pull(self) -> float:
        """Lower bound of the pull at every instant, in the head's weights; proven.

        Notes
        -----
        On a span the acceleration lies in the hull of its control points, so along the force in the middle of the span the
        pull is at least that of the least control point, less what drag may change.
        """
        beat, drag = self.flying.beat, drag_of(self.flying.prop)
        fine = self.head.finer(_FINER)
        rates, second = fine.controls(1) / beat, fine.controls(2) / beat**2
        middle = second.mean(axis=1)
        way = middle + UP
        way = way / np.maximum(np.linalg.norm(way, axis=-1, keepdims=True), 1e-12)
        least = np.min(np.einsum("kja,ka->kj", second + UP, way), axis=1)
        drift = np.linalg.norm(rates, axis=-1)
        # k|v|v along a direction is at least −k times the square of the fastest, and near what it is at the first control
        first = drag * np.sum(speed_of(rates[:, 0]) * rates[:, 0] * way, axis=-1)
        spread = np.linalg.norm(rates - rates[:, :1], axis=-1).max(axis=1)
        slack = 2.0 * drag * (drift.max(axis=1) + 1e-4) * spread
        return float(np.min(least + first - slack) / STANDARD_GRAVITY)

    @property
    def pull(self) -> tuple[float, float]:
        """Least and largest pull on the hand [N], at the looks."""
        size = self.flying.prop.mass * np.linalg.norm(self._seen.force, axis=-1)
        return float(size.min()), float(size.max())

    @cached_property
    def hand_speed(self) -> float:
        """Largest speed of the hand [m/s]; proven for its spline."""
        return float(np.max(self.hand.largest(1)) / self.flying.beat)

    @cached_property
    def hand_acceleration(self) -> float:
        """Largest acceleration of the hand [m/s²]; proven for its spline."""
        return float(np.max(self.hand.finer(_FINER).largest(2)) / self.flying.beat**2)

    @property
    def head_speed(self) -> float:
        """Largest speed of the head [m/s]; proven."""
        return float(np.max(self.head.finer(_FINER).largest(1)) / self.flying.beat)

    @cached_property
    def spare_reach(self) -> float:
        """Least arm's length that is left [m], at the looks; negative out of reach."""
        return float(np.min(self._space.spare_reach(self._seen.hand)))

    @property
    def body_gap(self) -> float:
        """Least distance of the unlit prop from the own body [m], at the looks."""
        return float(np.min(self._space.gaps(self._seen.hand, self._seen.head)))

    @cached_property
    def lingers(self) -> bool:
        """Whether, at a look, the head is slow while the prop is near the own body."""
        seen = self._seen
        slow = np.linalg.norm(seen.head_rate, axis=-1) < SLOW_PASS
        if not slow.any():
            return False
        gaps = self._space.gaps(seen.hand[slow], seen.head[slow])
        return bool(np.min(gaps) < LINGERING_NEAR)

    @property
    def _space(self) -> BodySpace:
        return self.flying.space(CLEARANCE)

    def missed(self) -> dict[str, float]:
        """Limits of pull, speed and acceleration that are missed, and the share by which each is."""
        limits = self.flying.limits
        over = {
            "pull": 1.0 - self.least_pull / LEAST_PULL,
            "speed": self.hand_speed / limits.hand_speed - 1.0,
            "acceleration": self.hand_acceleration / limits.hand_acceleration - 1.0,
        }
        return {name: share for name, share in over.items() if share > 0}

    def overstepped(self, least_reach: float = -OUT_OF_REACH) -> tuple[str, ...]:
        """Names of the limits that are not held: pull, speed, acceleration and reach.

        Parameters
        ----------
        least_reach : float
            Spare reach that is enough [m].
        """
        return (*self.missed(), *(() if self.spare_reach >= least_reach else ("reach",)))
