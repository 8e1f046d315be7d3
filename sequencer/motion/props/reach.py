"""How far the hand is from its shoulder, for certain.

Frame: body frame [m]. Source: certified interpolation, as in composed.py.
"""

from dataclasses import dataclass
from math import isfinite

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import UPRIGHT, PosedBody, Posture
from sequencer.motion.laws.law import Law

_GRID = 1024


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """The farthest that a hand gets from its shoulder."""

    distance: float  # [m] found
    error: float  # [m] the true one is at most so much farther
    at: float  # [beats] where
    arm: float  # [m]

    @property
    def beyond(self) -> bool:
        """Whether the hand is, for certain, farther than the arm is long."""
        return self.distance > self.arm

    @property
    def within(self) -> bool:
        """Whether the hand is, for certain, in reach all along."""
        return self.distance + self.error <= self.arm


def farthest_reach(
    law: Law,
    *,
    side: Side,
    body: Body,
    start: float = 0.0,
    end: float | None = None,
    posture: Posture = UPRIGHT,
) -> Reach:
    """The hand's largest distance from its own shoulder along a law.

    Parameters
    ----------
    law : Law
    side : {"left", "right"}
    body : Body
    start, end : float, optional
        Own beats to look at; one period if no end is given.
    posture : Posture, optional
        How the body gives way throughout; the shoulder hangs where it takes it.

    Returns
    -------
    reach : Reach

    Raises
    ------
    ValueError
        If no end is given and the law has no period.

    Notes
    -----
    Source: this module's head; error at most Δ²/8·sup|h''| between samples Δ apart.
    """
    stop = law.period + start if end is None else end
    if not isfinite(stop):
        raise ValueError("this law has no period; say where it ends")
    beats: Floats = start + (stop - start) * np.arange(_GRID + 1, dtype=np.float64) / _GRID
    away = np.linalg.norm(law.at(beats).hand - PosedBody(body, posture).shoulder(side), axis=-1)
    gap = (stop - start) / _GRID
    most = int(np.argmax(away))
    return Reach(
        distance=float(away[most]),
        error=gap**2 / 8 * law.bounds().hand_acceleration,
        at=float(beats[most]),
        arm=body.arm_length,
    )
