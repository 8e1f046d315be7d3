"""Constraints on a link: the hand it belongs to and the limits, tested with proven bounds.

Frame: body frame [m], rates per beat. Limits are this project's choice.
Source: docs/motion.md, section 5.
"""

from dataclasses import dataclass
from math import ceil, inf, pi
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.kept import recent
from sequencer.motion.laws.composed import ROUNDING_UP
from sequencer.motion.props.prop import TETHER_RADIUS, Prop, PropPoint, Solid
from sequencer.motion.props.tension import GRAVITY
from sequencer.motion.trajectories.one_link.hand_paths import Piecewise, hand_figures

_MOST_SPACES = 2_000  # that are kept
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
    inertia: float = 0.0  # [kg·m²] of a rigid prop about the hand
    carried: float = 0.0  # [kg·m] its mass times its centre of mass from the hand

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
    """Hand space of a prop in one hand; of the same body and prop the same object."""

    def work() -> tuple[object, HandSpace]:
        space = HandSpace(
            body=body,
            side=side,
            length=prop.length,
            solids=prop.solids,
            # A line hangs from the hand, which twists nothing.
            inertia=0.0 if prop.flexible else prop.inertia,
            carried=0.0 if prop.flexible else prop.mass * prop.centre_of_mass,
        )
        return (body, prop), space

    # Body and prop are held, so that their ids stay their own.
    return recent("hand spaces", (id(body), side, id(prop)), work, most=_MOST_SPACES)[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkLimits:
    """Limits of a link for the performer, per beat; reach is that of the arm."""

    turn_rate: float = 4 * np.pi  # [1/beat] two loops per beat
    turn_acceleration: float = 160.0  # [1/beat²] about four times that of one steady loop per beat
    hand_speed: float = 4.0  # [m/beat]
    hand_acceleration: float = 25.0  # [m/beat²]
    torque: float = inf  # [kg·m²/beat²] of the hand on a rigid prop: N·m at a beat a second
    gravity: float = 0.0  # [m/beat²] without a tempo the weight is left out

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
    torque: float = 8.0  # [N·m] of the hand on a rigid prop

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
            torque=self.torque / pace**2,
            gravity=GRAVITY / pace**2,
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
    return _turning(_heights(angles, beats), *(_sizes(angles, order, beats) for order in (1, 2)))


class TetherBounds(NamedTuple):
    """Proven bounds on each sixteenth of n paths, each shape (n, 16)."""

    turn: Floats  # [1/beat] of the direction's rate
    acceleration: Floats  # [1/beat²]
    jerk: Floats  # [1/beat³]
    azimuth: tuple[Floats, Floats]  # of its first two derivatives [1/beat and 1/beat²]
    elevation: tuple[Floats, Floats]


def tether_bounds(angles: Piecewise, beats: Floats) -> TetherBounds:
    """Bounds on the direction's first three derivatives, and on those of azimuth and elevation.

    Parameters
    ----------
    angles : Piecewise
        Azimuth and elevation.
    beats : ndarray, shape (n,) [beats]

    Notes
    -----
    Source: `tether_figures`; for the third derivative, with c = cos ψ and s = sin ψ, d''' has the parts
    cα''' − 3s(ψ'α'' + α'ψ'') − 3cψ'²α' − cα'³ to the east, ψ''' + 3scα'α'' − 3s²α'²ψ' − ψ'³ to the pole, and
    −3(c²α'α'' − scα'²ψ' + ψ'ψ'') along d; each summand by control points. Upper bounds.
    """
    heights = _heights(angles, beats)
    s, c = heights
    both = np.minimum(0.5, s * c)  # bound of |sin ψ cos ψ|
    sizes = [_sizes(angles, order, beats) for order in (1, 2, 3)]
    (a1, p1), (a2, p2), (a3, p3) = sizes
    east = c * (a3 + 3 * p1**2 * a1 + a1**3) + 3 * s * (p1 * a2 + a1 * p2)
    pole = p3 + 3 * both * a1 * a2 + 3 * s**2 * a1**2 * p1 + p1**3
    along = 3 * (c**2 * a1 * a2 + both * a1**2 * p1 + p1 * p2)
    jerk = np.asarray(np.sqrt(east**2 + pole**2 + along**2))
    return TetherBounds(*_turning(heights, *sizes[:2]), jerk, (a1, a2), (p1, p2))


def _turning(
    heights: tuple[Floats, Floats], first: tuple[Floats, Floats], second: tuple[Floats, Floats]
) -> tuple[Floats, Floats]:
    """Bounds of turning rate and acceleration, see `tether_figures`."""
    (steep, flat), (alpha1, psi1), (alpha2, psi2) = heights, first, second
    turn = np.hypot(flat * alpha1, psi1)
    across = psi2 + np.minimum(0.5, steep * flat) * alpha1**2
    east = flat * alpha2 + 2 * steep * psi1 * alpha1
    return turn, np.sqrt(across**2 + east**2 + turn**4)


def _heights(angles: Piecewise, beats: Floats) -> tuple[Floats, Floats]:
    """Bounds of |sin ψ| and of |cos ψ| on each sixteenth of n paths, each shape (n, 16) [1]."""
    psi = angles.controls(0, beats)[..., 1]
    most = np.abs(psi).max(axis=2)
    # |ψ| is nowhere smaller than the control point nearest to 0 if all lie on one side of it.
    least = np.maximum(np.maximum(psi.min(axis=2), -psi.max(axis=2)), 0.0)
    flat = np.where(most <= pi / 2, np.cos(np.minimum(least, pi / 2)), 1.0)
    return np.minimum(most, 1.0), flat


def _sizes(angles: Piecewise, order: int, beats: Floats) -> tuple[Floats, Floats]:
    """Bounds of a derivative of azimuth and of elevation on each sixteenth of n paths, each shape (n, 16)."""
    sizes = np.abs(angles.controls(order, beats)).max(axis=2)
    return sizes[..., 0], sizes[..., 1]
