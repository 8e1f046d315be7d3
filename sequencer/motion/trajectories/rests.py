"""How each prop is held at rest: arms hanging at the sides, the prop in the wheel plane beside the leg.

All of this is common practice. Poi, fans, hoops and clubs hang from the hand: a poi beside the leg, a club
head down, a fan with its spokes down, a hoop from its rim, the last two in the wheel plane so that they
pass the leg flat. Beside a wheelchair they hang outside its wheels. A staff is held upright beside the
body, with the same grip as for spinning. A prop too long for a hanging arm is held higher; a rope too long
even for a raised arm is laid out ahead, its head just above the floor. Frame: body frame [m].
"""

from functools import lru_cache

import numpy as np

from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.patterns.placing import BESIDE, sign_of
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.one_link.link_limits import HandSpace

_FLOOR = 0.10  # [m] from the lowest wick to the floor
BALL = 0.02  # [m] from the ball about a flat prop to the floor
ASIDE = 0.06  # [m] minimum from the widest part of the body to the prop
BENT = 0.93  # fraction of the arm used: a hand at rest is not at full reach
AHEAD = 0.06  # fraction of the stature by which the hand hangs in front of the shoulder
STATURE = 1.755  # [m] at which the hand hangs `BESIDE` outside the upper arm


@lru_cache(maxsize=2048)  # the same object again, of which keys and bounds are known
def rest(side: Side, body: Body, prop: Prop | float) -> ComposedLaw:
    """A prop at rest in its hand, clear of legs, trunk and floor.

    Parameters
    ----------
    side : {"left", "right"}
    body : Body
        All distances scale with it, so that rest is within everybody's reach.
    prop : Prop or float
        The prop held; a number is the length of a tether [m].

    Returns
    -------
    law : ComposedLaw
        At rest; its plane is given as wheel plane, forward.

    Notes
    -----
    Source: module docstring, common practice. Exact.
    """
    solids = (
        prop.solids
        if isinstance(prop, Prop)
        else HandSpace(body=body, side=side, length=prop).shape
    )
    spots = [(spot, solid.radius) for solid in solids for spot in (solid.start, solid.end)]
    below = max(spot.along + radius for spot, radius in spots)  # length hanging below the hand
    thick = max(solid.radius for solid in solids)
    shoulder, size = body.shoulder(side), body.stature / STATURE
    widest = max(abs(c.start[0]) + c.radius for c in body.capsules)
    out = max(body.half_breadth + BESIDE * size, widest + thick + ASIDE) - body.half_shoulder
    ahead = AHEAD * body.stature
    arm = BENT * body.arm_length
    out = min(
        out, 0.7 * arm
    )  # a prop too thick to be kept beside the leg is reported by the checks
    drop = float(np.sqrt(arm**2 - out**2 - ahead**2))
    lowest, highest = body.shoulder_height - drop, body.shoulder_height + drop
    # A flat prop is kept above the floor with its enclosing ball, as in the floor check.
    ball = prop.ball[0] + prop.cold_radius + BALL if isinstance(prop, Prop) else 0.0
    height = float(np.clip(max(below + _FLOOR, ball), lowest, highest))
    # How steeply the prop hangs: straight down unless the floor is in its way.
    steep = min((height - _FLOOR) / below, 1.0)
    flat = float(np.sqrt(1.0 - steep**2))
    return ComposedLaw(
        hand=HandPath((float(shoulder[0] + sign_of(side) * out), ahead, height)),
        tether=(0.0, flat, -steep),
        plane=(-1.0, 0.0, 0.0),
        turns=(),
        period=1.0,
    )
