"""Two props of one performer as flown: how far apart they are, and what one must keep clear of while the other moves."""

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.segments import segment_segment
from sequencer.motion.props.prop import SHAFT_RADIUS, Prop

LEAST_BESIDE = 0.01  # [m] between the props of both hands: walking and tempo move them a little against each other


def prop_capsules(prop: Prop, head: Floats, hand: Floats) -> Floats:
    """A prop's tether and its head, shape (n, 2, 7): both ends and radius [m, frame of the places].

    Parameters
    ----------
    prop : Prop
    head, hand : ndarray, shape (n, 3) [m]

    Notes
    -----
    Source: `BodySpace.gaps` takes them so. Exact.
    """
    out: Floats = np.empty((len(head), 2, 7))
    out[:, :, 3:6] = head[:, None]
    out[:, 0, :3], out[:, 1, :3] = hand, head
    out[:, :, 6] = SHAFT_RADIUS[prop.kind], prop.wick_radius
    return out


def gaps_between(prop: Prop, head: Floats, hand: Floats, others: Floats) -> Floats:
    """Distance of tether and head from capsules at the same instants, shape (n,) [m]; negative inside.

    Parameters
    ----------
    prop : Prop
    head, hand : ndarray, shape (n, 3) [m, body frame]
    others : ndarray, shape (n, m, 7) [m, body frame]
        Both ends and radius.

    Notes
    -----
    Source: distances of segments (`geometry.segments`), less the radii. Exact.
    """
    low, high, radius = others[..., :3], others[..., 3:6], others[..., 6]
    thin = segment_segment(hand[:, None], head[:, None], low, high)[0] - SHAFT_RADIUS[prop.kind]
    thick = segment_segment(head[:, None], head[:, None], low, high)[0] - prop.wick_radius
    return np.asarray(np.min(np.minimum(thin, thick) - radius, axis=-1))
