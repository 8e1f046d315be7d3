"""What a rigid prop asks of the hand that turns it: the torque, proven over a whole block.

With I the moment of inertia about the hand, m the mass and c its centre on the axis, the hand turns with
τ = I·d×d'' + m·c·d×(h'' − g): Euler's equation of a slender body about a moving point. What a flat prop
needs besides, to be turned about its own axis, is not in it. Frame: body frame [m]; the floor path's own
acceleration is not in it.
Source: rigid-body dynamics, any mechanics text; docs/motion.md, section 6.
"""

from math import isfinite

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.certified import Sample, search
from sequencer.motion.law import Law
from sequencer.motion.props import Prop
from sequencer.motion.tension import GRAVITY

TORQUE_ERROR = 0.1  # [N·m]


def largest_torque(law: Law, *, prop: Prop, rate: float, start: float, end: float) -> float:
    """Largest torque of the hand over some beats of a law [N·m].

    Parameters
    ----------
    law : Law
    prop : Prop
    rate : float
        Tempo [beats/s]; the torque of any slower one is smaller.
    start, end : float
        Own beats of the law.

    Returns
    -------
    torque : float
        At most 0.1 N·m under the true one; inf where nothing is proven about the law's third
        derivatives.

    Notes
    -----
    Source: this module's head, the part of the motion and the part of the weight each at its size. Its
    rate is at most λ²(I(|d'||d''| + |d'''|) + mc(|d'||h''| + |h'''|)) + mcg|d'|.
    """
    bounds = law.bounds()
    if not (isfinite(bounds.turn_jerk) and isfinite(bounds.hand_jerk)):
        return np.inf
    shifted = prop.mass * abs(prop.centre_of_mass)
    turn, push = bounds.turn_rate, bounds.turn_acceleration
    slope = (
        rate**2
        * (
            prop.inertia * (turn * push + bounds.turn_jerk)
            + shifted * (turn * bounds.hand_acceleration + bounds.hand_jerk)
        )
        + shifted * GRAVITY * turn
    )

    def evaluate(_rows: Ints, t: Floats, half: Floats, _enough: Floats) -> Sample:
        here = -torques(law, t, prop=prop, rate=rate)
        return Sample(here, here - slope * half, here + slope * half, np.zeros(t.shape, np.int64))

    found = search(
        evaluate, group=np.zeros(1, np.int64), start=np.array([start]), end=np.array([end]),
        required=np.array([-np.inf]), best=np.array([np.inf]), tolerance=TORQUE_ERROR,
    )  # fmt: skip
    return -float(found.value[0])


def torques(law: Law, beats: Floats, *, prop: Prop, rate: float) -> Floats:
    """Torque of the hand at some moments.

    Parameters
    ----------
    law : Law
    beats : ndarray, shape (...) [beats]
    prop : Prop
    rate : float
        Tempo [beats/s].

    Returns
    -------
    torque : ndarray, shape (...) [N·m]

    Notes
    -----
    Source: this module's head; the sizes of its two parts are added, so rather too large.
    """
    motion = law.at(beats)
    shifted = prop.mass * prop.centre_of_mass
    driven = prop.inertia * motion.tether_acceleration + shifted * motion.hand_acceleration
    moving = rate**2 * np.linalg.norm(np.cross(motion.tether, driven), axis=-1)
    level = np.hypot(motion.tether[..., 0], motion.tether[..., 1])
    return np.asarray(moving + abs(shifted) * GRAVITY * level)
