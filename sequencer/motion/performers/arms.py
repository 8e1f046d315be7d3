"""Positions of shoulder and elbow for a given hand position, for drawings and texts.

A shoulder moves only once the arm is straight, towards the point of its box (`Body.shoulder_give`) nearest
to the hand, and by no more than needed: with a the vector from its rest position to the hand and c that
point, it moves by t·c, with the smallest t in 0 … 1 such that |a − t·c| ≤ the arm's length. The elbow is
only for drawing: it lies on the circle allowed by both parts of the arm, down, out and a little back. The
checks use neither; they hold for every elbow position and use the whole box. Body frame [m], beats.
"""

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import from_trunk, to_trunk
from sequencer.motion.laws.carriage import Carriage, nearest_give

UPPER = 0.505  # fraction of the arm above the elbow; ANSUR II, from memory
_POLE = (0.55, -0.35, -0.75)  # out, back and down: direction in which an elbow hangs


def shoulder_gives(carriage: Carriage, beats: Floats, hand: Floats, side: Side) -> Floats:
    """Displacement of a shoulder from its rest position, in the trunk's frame.

    Parameters
    ----------
    carriage : Carriage
    beats : ndarray, shape (n,) [beats]
    hand : ndarray, shape (n, 3) [m, body frame]
    side : {"left", "right"}

    Returns
    -------
    gives : ndarray, shape (n, 3) [m, the trunk's frame: to the right, forward, up]

    Notes
    -----
    Source: module docstring; |a − t·c| decreases all the way to t = 1, since c is the nearest point of a
    convex box that contains 0, so the required root is the smaller one of the quadratic.
    """
    body = carriage.body
    away = to_trunk(hand - carriage.shoulder(beats, side), carriage.angles(beats))
    whole = nearest_give(body, away, side)
    square = np.sum(whole * whole, axis=-1)
    along = np.sum(whole * away, axis=-1)
    missing = np.sum(away * away, axis=-1) - body.arm_length**2
    root = np.sqrt(np.maximum(along**2 - square * missing, 0.0))
    share = (along - root) / np.where(
        square > 0, square, 1.0
    )  # not above 0 within the arm's length
    return np.asarray(np.clip(share, 0.0, 1.0)[:, None] * whole)


def given_shoulder(carriage: Carriage, beats: Floats, hand: Floats, side: Side) -> Floats:
    """Shoulder position, displaced as far as the hand needs, shape (n, 3) [m, body frame].

    Parameters
    ----------
    carriage : Carriage
    beats : ndarray, shape (n,) [beats]
    hand : ndarray, shape (n, 3) [m, body frame]
    side : {"left", "right"}

    Notes
    -----
    Source: module docstring.
    """
    gives = shoulder_gives(carriage, beats, hand, side)
    return np.asarray(carriage.shoulder(beats, side) + from_trunk(gives, carriage.angles(beats)))


def elbow(body: Body, shoulder: Floats, hand: Floats, side: Side) -> Floats:
    """A plausible elbow position.

    Parameters
    ----------
    body : Body
    shoulder : ndarray, shape (n, 3) [m, body frame]
        Displaced shoulder position.
    hand : ndarray, shape (n, 3) [m, body frame]
    side : {"left", "right"}

    Returns
    -------
    elbow : ndarray, shape (n, 3) [m, body frame]
        On the straight line to the hand if that is out of reach.

    Notes
    -----
    Source: law of cosines; same formula as in the rehearsal page.
    """
    upper = UPPER * body.arm_length
    fore = body.arm_length - upper
    off = hand - shoulder
    far = np.maximum(np.linalg.norm(off, axis=-1, keepdims=True), 1e-6)
    span = np.clip(far, abs(upper - fore) + 1e-4, body.arm_length - 1e-9)
    along = (upper**2 - fore**2 + span**2) / (2 * span)
    ahead = off / far
    out = 1.0 if side == "right" else -1.0
    pole = np.array(_POLE) * (out, 1.0, 1.0)
    across = pole - np.sum(pole * ahead, axis=-1, keepdims=True) * ahead
    across /= np.maximum(np.linalg.norm(across, axis=-1, keepdims=True), 1e-9)
    return np.asarray(shoulder + along * ahead + np.sqrt(upper**2 - along**2) * across)
