"""Where a link may go and what it may ask: whose hand it is, and the limits, held against proven bounds.

Frame: body frame [m], rates per beat. Limits are this project's own.
Source: docs/motion.md, section 5.
"""

from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.composed import ROUNDING
from sequencer.motion.handpaths import HandPaths, controls, hand_figures
from sequencer.motion.props import Prop, Solid

REACH_SLACK = 1e-3  # [m]


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """Whose hand it is, and what hangs from it: where a link may go."""

    body: Body
    side: Side
    length: float  # [m] of the tether, or of what is before the hand
    wick_radius: float = 0.05  # [m]
    behind: float = 0.0  # [m] that the prop goes on behind the hand
    solids: tuple[Solid, ...] = ()  # of a flat prop, whose lie about its axis matters too

    @property
    def shoulder(self) -> Floats:
        """Where the arm begins, shape (3,) [m, body frame]."""
        return self.body.shoulder(self.side)

    @property
    def arm(self) -> float:
        """Length of the arm [m]."""
        return self.body.arm_length


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """The other hand's prop while a link lasts, as looked at: what the link should keep clear of."""

    hand: bytes  # (k, 3) [m, body frame], packed so that links can be kept
    tether: bytes  # (k, 3) [1]
    room: Room

    def ends(self) -> tuple[Floats, Floats]:
        """Rear and far end of the prop at each look, each shape (k, 3) [m, body frame]."""
        hand, tether = (np.frombuffer(part).reshape(-1, 3) for part in (self.hand, self.tether))
        return hand - self.room.behind * tether, hand + self.room.length * tether


def room_of(body: Body, side: Side, prop: Prop) -> Room:
    """Room of a prop in one hand."""
    return Room(
        body=body,
        side=side,
        length=prop.length,
        wick_radius=prop.wick_radius,
        behind=prop.behind,
        solids=prop.solids if prop.ball[1] > 0 else (),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkLimits:
    """What a link may ask of the performer, in beats; reach is the arm's."""

    turn_rate: float = 4 * np.pi  # [1/beat] two loops a beat
    turn_acceleration: float = 160.0  # [1/beat²] about four times a steady loop a beat
    hand_speed: float = 4.0  # [m/beat]
    hand_acceleration: float = 25.0  # [m/beat²]

    def keep_turning(self, angles: Floats, beats: Floats) -> Bools:
        """Which of n tether paths keep the limits, shape (n,), from proven bounds."""
        turn, push = tether_figures(angles, beats)
        return np.asarray(
            (turn.max(axis=1) * ROUNDING <= self.turn_rate)
            & (push.max(axis=1) * ROUNDING <= self.turn_acceleration)
        )

    def keep_moving(self, paths: HandPaths, beats: Floats, room: Room) -> Bools:
        """Which of n hand paths keep the limits and the arm's reach, shape (n,), from proven bounds."""
        reach, speed, push = hand_figures(paths, beats, shoulder=room.shoulder)
        return np.asarray(
            (reach * ROUNDING <= room.arm + REACH_SLACK)
            & (speed * ROUNDING <= self.hand_speed)
            & (push * ROUNDING <= self.hand_acceleration)
        )


def tether_figures(angles: Floats, beats: Floats) -> tuple[Floats, Floats]:
    """Proven bounds of turning rate and turning acceleration on each sixteenth of n paths.

    Parameters
    ----------
    angles : ndarray, shape (n, 6, 2) [rad]
        Quintics of azimuth and elevation.
    beats : ndarray, shape (n,) [beats]

    Returns
    -------
    turn, push : ndarray, shape (n, 16) [1/beat and 1/beat²]

    Notes
    -----
    Source: |d'|² = ψ'² + cos²ψ·α'² and its derivative, with control points. Upper bounds.
    """
    span = beats[:, None, None]
    sizes = [np.abs(controls(angles, order)).max(axis=2) / span**order for order in range(3)]
    steep = np.minimum(sizes[0][..., 1], 1.0)  # bound of |sin ψ|
    alpha1, psi1 = sizes[1][..., 0], sizes[1][..., 1]
    turn = np.hypot(alpha1, psi1)
    across = sizes[2][..., 1] + np.minimum(0.5, steep) * alpha1**2
    east = sizes[2][..., 0] + 2 * steep * psi1 * alpha1
    return turn, np.sqrt(across**2 + east**2 + turn**4)
