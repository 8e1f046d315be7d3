"""Where a link may go and what it may ask: whose hand it is, and the limits, held against proven bounds.

Frame: body frame [m], rates per beat. Limits are this project's own.
Source: docs/motion.md, section 5.
"""

from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import ROUNDING_UP
from sequencer.motion.props.prop import TETHER_RADIUS, Prop, PropPoint, Solid
from sequencer.motion.trajectories.hand_paths import Piecewise, hand_figures

REACH_SLACK = 1e-3  # [m]
WICK = 0.05  # [m] radius of a poi's head; common practice


@dataclass(frozen=True, slots=True, kw_only=True)
class HandSpace:
    """Whose hand it is, and what hangs from it: where a link may go."""

    body: Body
    side: Side
    length: float  # [m] of the tether, or of what is before the hand
    solids: tuple[Solid, ...] = ()  # its shape; a poi of the usual size where nothing is said

    @property
    def shoulder(self) -> Floats:
        """Where the arm begins, shape (3,) [m, body frame]."""
        return self.body.shoulder(self.side)

    @property
    def arm(self) -> float:
        """Length of the arm [m]."""
        return self.body.arm_length

    @property
    def shape(self) -> tuple[Solid, ...]:
        """The prop's bodies."""
        head = PropPoint(self.length)
        return self.solids or (
            Solid("tether", PropPoint(0.0), head, TETHER_RADIUS),
            Solid("head", head, head, WICK),
        )

    @property
    def flat(self) -> bool:
        """Whether the prop's lie about its axis matters too."""
        return any(spot.across for solid in self.solids for spot in (solid.start, solid.end))


def hand_space_of(body: Body, side: Side, prop: Prop) -> HandSpace:
    """Room of a prop in one hand."""
    return HandSpace(
        body=body,
        side=side,
        length=prop.length,
        solids=prop.solids,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkLimits:
    """What a link may ask of the performer, in beats; reach is the arm's."""

    turn_rate: float = 4 * np.pi  # [1/beat] two loops a beat
    turn_acceleration: float = 160.0  # [1/beat²] about four times a steady loop a beat
    hand_speed: float = 4.0  # [m/beat]
    hand_acceleration: float = 25.0  # [m/beat²]

    def keep_turning(self, angles: Piecewise, beats: Floats) -> Bools:
        """Which of n tether paths keep the limits, shape (n,), from proven bounds."""
        turn, push = tether_figures(angles, beats)
        return np.asarray(
            (turn.max(axis=1) * ROUNDING_UP <= self.turn_rate)
            & (push.max(axis=1) * ROUNDING_UP <= self.turn_acceleration)
        )

    def keep_moving(self, paths: Piecewise, beats: Floats, room: HandSpace) -> Bools:
        """Which of n hand paths keep the limits and the arm's reach, shape (n,), from proven bounds."""
        reach, speed, push = hand_figures(paths, beats, body=room.body, side=room.side)
        return np.asarray(
            (reach * ROUNDING_UP <= room.arm + REACH_SLACK)
            & (speed * ROUNDING_UP <= self.hand_speed)
            & (push * ROUNDING_UP <= self.hand_acceleration)
        )


def tether_figures(angles: Piecewise, beats: Floats) -> tuple[Floats, Floats]:
    """Proven bounds of turning rate and turning acceleration on each sixteenth of n paths.

    Parameters
    ----------
    angles : Piecewise
        Azimuth and elevation.
    beats : ndarray, shape (n,) [beats]

    Returns
    -------
    turn, push : ndarray, shape (n, 16) [1/beat and 1/beat²]

    Notes
    -----
    Source: |d'|² = ψ'² + cos²ψ·α'² and its derivative, with control points. Upper bounds.
    """
    sizes = [np.abs(angles.controls(order, beats)).max(axis=2) for order in range(3)]
    steep = np.minimum(sizes[0][..., 1], 1.0)  # bound of |sin ψ|
    alpha1, psi1 = sizes[1][..., 0], sizes[1][..., 1]
    turn = np.hypot(alpha1, psi1)
    across = sizes[2][..., 1] + np.minimum(0.5, steep) * alpha1**2
    east = sizes[2][..., 0] + 2 * steep * psi1 * alpha1
    return turn, np.sqrt(across**2 + east**2 + turn**4)
