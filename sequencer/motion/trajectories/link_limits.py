"""Constraints on a link: the hand it belongs to and the limits, tested with proven bounds.

Frame: body frame [m], rates per beat. Limits are this project's choice.
Source: docs/motion.md, section 5.
"""

from dataclasses import dataclass
from math import ceil, pi

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import ROUNDING_UP
from sequencer.motion.props.prop import TETHER_RADIUS, Prop, PropPoint, Solid
from sequencer.motion.trajectories.hand_paths import Piecewise, hand_figures

REACH_SLACK = 1e-3  # [m]
PACE_STEP = 0.0625  # [beats/s] 3.75 beats a minute
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


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceLimits:
    """What a performer is to be asked for on a link at most, by the second; as a show's `limits` say."""

    hand_speed: float = 6.0  # [m/s]
    hand_acceleration: float = 80.0  # [m/s²]
    turns: float = 2.5  # [1/s]

    def at(self, beats_per_second: float) -> LinkLimits:
        """The same per beat, or the limits of any tempo where those are stricter.

        The tempo is rounded up to a step of `PACE_STEP`, so that links of songs whose tempo sways are alike.

        Parameters
        ----------
        beats_per_second : float
            The fastest during the link [1/s].

        Raises
        ------
        ValueError
            If it is not positive.
        """
        if not beats_per_second > 0:
            raise ValueError(f"a tempo must be positive, got {beats_per_second!r}")
        pace = ceil(beats_per_second / PACE_STEP - 1e-9) * PACE_STEP
        # In a slow song those by the beat are stricter: a slow link is not to whirl because it may.
        most = LinkLimits()
        return LinkLimits(
            turn_rate=min(most.turn_rate, 2 * pi * self.turns / pace),
            hand_speed=min(most.hand_speed, self.hand_speed / pace),
            hand_acceleration=min(most.hand_acceleration, self.hand_acceleration / pace**2),
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
    raw = [angles.controls(order, beats) for order in range(3)]
    sizes = [np.abs(each).max(axis=2) for each in raw]
    steep = np.minimum(sizes[0][..., 1], 1.0)  # bound of |sin ψ|
    psi = raw[0][..., 1]
    # |ψ| is nowhere smaller than the control point nearest to 0 if all lie on one side of it.
    least = np.maximum(np.maximum(psi.min(axis=2), -psi.max(axis=2)), 0.0)
    flat = np.where(sizes[0][..., 1] <= pi / 2, np.cos(np.minimum(least, pi / 2)), 1.0)
    alpha1, psi1 = sizes[1][..., 0], sizes[1][..., 1]
    turn = np.hypot(flat * alpha1, psi1)
    across = sizes[2][..., 1] + np.minimum(0.5, steep * flat) * alpha1**2
    east = flat * sizes[2][..., 0] + 2 * steep * psi1 * alpha1
    return turn, np.sqrt(across**2 + east**2 + turn**4)
