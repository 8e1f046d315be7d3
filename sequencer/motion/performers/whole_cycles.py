"""One cycle of what one hand dances, or two: what stays above all that matters throughout it does so however often it is danced.

Frame: body frame, beats.
"""

from collections.abc import Sequence
from math import isfinite
from typing import Any, NamedTuple

import numpy as np

from sequencer.motion.laws.composed import ComposedLaw
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.transforms import Mirrored, Retimed
from sequencer.motion.performers.batch import Plain, unwrapped
from sequencer.motion.trajectories.trajectory import Span, Trajectory

_SAME = 1e-12
_GRAIN = (
    2.0**40
)  # parts of a beat to which it is known how far one law is ahead of another: rounding differs below


class WholeCycle(NamedTuple):
    """One cycle of what each hand dances."""

    laws: tuple[Law, ...]
    origins: tuple[float, ...]  # [beats]
    period: float  # [beats]

    @property
    def trajectories(self) -> tuple[Trajectory, ...]:
        """Each of them for one period from beat 0."""
        return tuple(
            Trajectory((Span(start=0.0, end=self.period, law=law, origin=origin, kind="block", label=""),))
            for law, origin in zip(self.laws, self.origins, strict=True)
        )  # fmt: skip


def whole_cycle(
    laws: Sequence[Any], origins: Sequence[float], *, of_rates: bool
) -> WholeCycle | None:
    """One cycle of what each hand dances; None if it is not known to repeat."""
    plain = [unwrapped(law) for law in laws]
    composed = [each.law for each in plain if isinstance(each.law, ComposedLaw)]
    if len(composed) < len(laws):
        return None
    # Where in its cycle a law begins does not matter, nor does its pace where only places do.
    if len(laws) == 1:
        law = _from_lead(plain[0], composed[0], 0.0, plain[0].pace if of_rates else 1.0)
        return WholeCycle((law,), (0.0,), law.period) if isfinite(law.period) else None
    longest = max(law.period for law in laws)
    shares = np.array([longest / law.period for law in laws])
    if not (isfinite(longest) and np.all(np.abs(shares - np.round(shares)) < _SAME)):
        return None
    pace = plain[0].pace
    if plain[1].pace != pace:
        return WholeCycle(tuple(laws), (0.0, origins[1] - origins[0]), longest)
    # Of two, by how much the second is ahead of the first does matter: that is the same again after a shift of both.
    lead = [own.shift - pace * origin for own, origin in zip(plain, origins, strict=True)]
    ahead = round((lead[1] - lead[0]) % composed[1].period * _GRAIN) / _GRAIN
    both = [
        _from_lead(own, law, more, pace)
        for own, law, more in zip(plain, composed, (0.0, ahead), strict=True)
    ]
    return WholeCycle(tuple(both), (0.0, 0.0), longest)


def _from_lead(plain: Plain, law: Law, lead: float, pace: float) -> Law:
    """A law that begins some of its beats in, on the side that it is danced on."""
    timed = law if (lead, pace) == (0.0, 1.0) else Retimed(law, lead, pace)
    return Mirrored(timed) if plain.side < 0 else timed
