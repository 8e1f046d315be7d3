"""How a block comes out as flown, in figures: kept, so that staging, checks and pages share one search.

A block is flown at its fastest tempo, rounded to a whole beat a minute, in its posture, by its hand alone: a whole period of
its law, standing still. Frame: body frame [m].
"""

from collections.abc import Sequence
from dataclasses import astuple, dataclass, replace
from functools import cached_property
from math import ceil, isfinite, pi, sqrt
from typing import Any

import numpy as np

from sequencer.content_keys import content_key
from sequencer.geometry.bodies import Side
from sequencer.geometry.posture import UPRIGHT
from sequencer.kept import recent, remembering
from sequencer.motion.flown.flown_motion import FlownLimits, Flying
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.law import Law
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import pull
from sequencer.motion.trajectories.trajectory import Span
from sequencer.timing.tempo import TempoMap

WORTH_FLYING = 0.7  # of the tempo that keeps the drawn tether taut: slower, half of the pull at the top is missing
FAR_TOO_SLOW = 0.45  # of the same: a fifth of the pull at the top
FAR_TOO_FAST = 10.0  # [turns/s] four times what the rules allow: far beyond what anyone can dance
_LOOKS = 64  # a beat, at which the drawn tether is looked at
READS_SOFT = 0.15  # [m] root mean square of a head off its drawing; above it the pattern reads soft
UNSETTLED = 1e-2  # residual above which a search has not converged
_MOST_LOOKED_AT = 20_000  # blocks
_MOST_HANDS = 2_000
_SPARE = 0.02  # [m] on top of what is seen at the looks


@dataclass(frozen=True, slots=True, kw_only=True)
class FlownFigures:
    """A law's period as flown; distances are from the drawing."""

    head_rms: float  # [m]
    head_most: float  # [m]
    hand_rms: float  # [m]
    hand_most: float  # [m]
    least_pull: float  # in the head's weights
    hand_speed: float  # [m/s]
    hand_acceleration: float  # [m/s²]
    spare_reach: float  # [m] negative out of reach
    tether_off: float  # [rad]
    moved: float  # [m] that the whole pattern is danced from where it is drawn
    residual: float  # first-order, of the search
    broken: tuple[str, ...]  # limits that are not held; empty if it flies

    @property
    def flies(self) -> bool:
        """Whether it holds every limit."""
        return not self.broken

    @property
    def soft(self) -> bool:
        """Whether it flies, but the head is too far off to read clean."""
        return self.flies and self.head_rms > READS_SOFT

    @property
    def unsettled(self) -> bool:
        """Whether it does not fly, but only because the search did not converge."""
        return bool(self.broken) and self.residual > UNSETTLED

    @property
    def margin(self) -> float:
        """What head, hand and tether stay within of the drawing [m]: the largest seen, in whole centimetres, and 2 cm."""
        farthest = max(self.head_most, self.hand_most) + self.moved
        return ceil(100.0 * farthest) / 100.0 + _SPARE


def figures_record(figures: FlownFigures) -> list[Any]:
    """Figures as JSON values."""
    return list(astuple(figures))


def restored_figures(record: Sequence[Any]) -> FlownFigures:
    """The inverse of `figures_record`."""
    *values, broken = record
    names = FlownFigures.__dataclass_fields__
    return FlownFigures(**dict(zip(names, (*values, tuple(broken)), strict=True)))


@remembering(record=figures_record, restore=restored_figures)
def flown_figures(law: Law, flying: Flying) -> FlownFigures:
    """The figures of a law's period as one hand can fly it.

    Parameters
    ----------
    law : Law
        With a period, in the body frame.
    flying : Flying
        With a passive prop.

    Raises
    ------
    ValueError
        If the law does not repeat, or the prop is rigid.
    """
    period = flown_period(law, flying)
    (head_rms, head_most), (hand_rms, hand_most) = period.head_off, period.hand_off
    return FlownFigures(
        head_rms=head_rms,
        head_most=head_most,
        hand_rms=hand_rms,
        hand_most=hand_most,
        least_pull=period.least_pull,
        hand_speed=period.hand_speed,
        hand_acceleration=period.hand_acceleration,
        spare_reach=period.spare_reach,
        tether_off=period.tether_off,
        moved=float(np.linalg.norm(period.moved)),
        residual=period.residual,
        broken=period.broken,
    )


@dataclass(frozen=True, kw_only=True, eq=False)
class FlyingHand:
    """One hand with a passive prop through a show."""

    side: Side
    prop: Prop
    carriage: Carriage
    tempo: TempoMap
    limits: FlownLimits

    @cached_property
    def _known(self) -> dict[tuple[float, float], Flying]:
        """Who flies what, of what was asked before."""
        return {}

    @cached_property
    def _unlit(self) -> Prop:
        """The prop without its flame: it flies alike."""
        return replace(self.prop, flame_reach=0.0)

    def flying(self, start: float, end: float) -> Flying:
        """Who flies what, from one beat to another, in the posture held there and at the fastest tempo.

        Parameters
        ----------
        start, end : float
            [show beats]
        """
        found = self._known.get((start, end))
        if found is None:
            found = self._known[start, end] = Flying(
                prop=self._unlit,
                body=self.carriage.body,
                side=self.side,
                tempo=max(float(round(60.0 * self.tempo.fastest(start, end))), 1.0),
                posture=self.carriage.held_between(start, end) or UPRIGHT,
                limits=self.limits,
            )
        return found

    def worth_flying(self, block: Span, share: float = WORTH_FLYING) -> bool:
        """Whether a search is likely to end well: the drawn tether is taut, or would be at a little more than this tempo.

        A block of which this is not true is hardly ever one that flies, and takes longest to search. Where the head hangs below
        the hand only a faster hand would overtake it, so nothing is too slow there.

        Parameters
        ----------
        block : Span
        share : float
            Of the tempo at which the drawn tether must be taut.
        """
        law = block.law
        if not (self.prop.flexible and isfinite(law.period)) or self.whirls(block):
            return False
        faster = self.flying(block.start, block.end).tempo / 60.0 / share
        length = self.prop.length
        try:
            key = content_key("taut above the hand", law, faster, length)
        except TypeError:  # a law of another package
            key = None
        return recent(
            "taut above the hand", key, lambda: _taut(law, faster, length), most=_MOST_LOOKED_AT,
            record=bool, restore=bool,
        )  # fmt: skip

    def whirls(self, block: Span) -> bool:
        """Whether the drawn prop turns far faster than anyone can dance: no search is made then.

        Parameters
        ----------
        block : Span
        """
        tempo = self.flying(block.start, block.end).tempo
        # Even turns at w need w² of acceleration; a swing that needs as much is as fast.
        return sqrt(block.law.bounds().turn_acceleration) * tempo / 60.0 > FAR_TOO_FAST * 2.0 * pi

    def figures(self, block: Span) -> FlownFigures | None:
        """A block as flown; None where nothing is flown: its law does not repeat, or the prop is rigid."""
        if not (self.prop.flexible and isfinite(block.law.period)):
            return None
        return flown_figures(block.law, self.flying(block.start, block.end))


def flying_hand(
    *, side: Side, prop: Prop, carriage: Carriage, tempo: TempoMap, limits: FlownLimits
) -> FlyingHand:
    """A hand, the same object as long as it is remembered: what it has worked out holds in every show that leaves it as it was.

    Parameters
    ----------
    side, prop, carriage, tempo, limits
        See `FlyingHand`.
    """

    def work() -> FlyingHand:
        return FlyingHand(side=side, prop=prop, carriage=carriage, tempo=tempo, limits=limits)

    # It holds prop, carriage and tempo, so that no others can have their ids.
    key = side, id(prop), id(carriage), id(tempo), limits
    return recent("hands that fly", key, work, most=_MOST_HANDS)


def _taut(law: Law, beats_per_second: float, length: float) -> bool:
    """Whether a drawn tether is taut at every look of a period at which it is above the hand: there tempo is what it needs."""
    beats = np.arange(max(ceil(_LOOKS * law.period), _LOOKS)) / _LOOKS
    drawn = law.at(beats)
    felt = pull(drawn, length=length, mass=1.0, beats_per_second=beats_per_second)
    return bool(np.all((felt > 0.0) | (drawn.tether[..., 2] <= 0.0)))
