"""Constraints on a link: the hand it belongs to and the limits, tested with proven bounds.

Frame: body frame [m], rates per beat. Limits are this project's choice.
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
    """The hand and its prop: the space a link may use."""

    body: Body
    side: Side
    length: float  # [m] of the tether, or of the part in front of the hand
    solids: tuple[Solid, ...] = ()  # its shape; default: a poi of the usual size

    @property
    def shoulder(self) -> Floats:
        """Shoulder position, shape (3,) [m, body frame]."""
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
        """Whether the prop's rotation about its axis matters too."""
        return any(spot.across for solid in self.solids for spot in (solid.start, solid.end))


def hand_space_of(body: Body, side: Side, prop: Prop) -> HandSpace:
    """Hand space of a prop in one hand."""
    return HandSpace(
        body=body,
        side=side,
        length=prop.length,
        solids=prop.solids,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkLimits:
    """Limits of a link for the performer, per beat; reach is that of the arm."""

    turn_rate: float = 4 * np.pi  # [1/beat] two loops per beat
    turn_acceleration: float = 160.0  # [1/beat²] about four times that of one steady loop per beat
    hand_speed: float = 4.0  # [m/beat]
    hand_acceleration: float = 25.0  # [m/beat²]

    def keep_turning(self, angles: Piecewise, beats: Floats) -> Bools:
        """Which of n tether paths are within the limits, shape (n,), from proven bounds."""
        turn, acceleration = tether_figures(angles, beats)
        return np.asarray(
            (turn.max(axis=1) * ROUNDING_UP <= self.turn_rate)
            & (acceleration.max(axis=1) * ROUNDING_UP <= self.turn_acceleration)
        )

    def keep_moving(self, paths: Piecewise, beats: Floats, space: HandSpace) -> Bools:
        """Which of n hand paths are within the limits and the arm's reach, shape (n,), from proven bounds."""
        figures = hand_figures(paths, beats, body=space.body, side=space.side)
        return self.keep_figures(figures, space)

    def keep_figures(self, figures: tuple[Floats, Floats, Floats], space: HandSpace) -> Bools:
        """The same from the figures of the paths, as returned by `hand_figures`."""
        reach, speed, acceleration = figures
        return np.asarray(
            (reach * ROUNDING_UP <= space.arm + REACH_SLACK)
            & (speed * ROUNDING_UP <= self.hand_speed)
            & (acceleration * ROUNDING_UP <= self.hand_acceleration)
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
    turn, acceleration : ndarray, shape (n, 16) [1/beat and 1/beat²]

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
