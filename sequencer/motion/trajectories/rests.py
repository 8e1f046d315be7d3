"""How each prop is held at rest: arms hanging beside the body, the prop in the wheel plane beside the leg.

Common practice, all of it. Poi, fans, hoops and clubs hang from the hand: a poi beside the leg, a club
head down, a fan with its spokes down, a hoop from its rim, the last two in the wheel plane so that they
pass the leg flat. Beside a wheelchair they hang outside its wheels. A staff stands upright beside the body, held where it is held to spin. What is too
long for a hanging arm is held higher; a rope too long even for a raised arm lies out ahead, its head
just over the floor. Frame: body frame [m].
"""

import numpy as np

from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.patterns.placing import BESIDE, sign_of
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.link_limits import HandSpace

_FLOOR = 0.10  # [m] from the lowest wick to the floor
BALL = 0.02  # [m] from the ball about a flat prop to the floor
ASIDE = 0.06  # [m] from the widest part of the body to the prop, at least
BENT = 0.93  # share of the arm that is used: a hand at rest is not at the end of its reach
AHEAD = 0.06  # share of the stature that the hand hangs before the shoulder
STATURE = 1.755  # [m] at which the hand hangs `BESIDE` outside the upper arm


def rest(side: Side, body: Body, prop: Prop | float) -> ComposedLaw:
    """A prop at rest in its hand, clear of legs, trunk and floor.

    Parameters
    ----------
    side : {"left", "right"}
    body : Body
        Every distance scales with it, so rest is within everybody's reach.
    prop : Prop or float
        What is held; a number is the length of a tether [m].

    Returns
    -------
    law : ComposedLaw
        At rest, plane said to be wheel, forward.

    Notes
    -----
    Source: this module's head, common practice. Exact.
    """
    solids = (
        prop.solids
        if isinstance(prop, Prop)
        else HandSpace(body=body, side=side, length=prop).shape
    )
    spots = [(spot, solid.radius) for solid in solids for spot in (solid.start, solid.end)]
    below = max(spot.along + radius for spot, radius in spots)  # what hangs under the hand
    thick = max(solid.radius for solid in solids)
    shoulder, size = body.shoulder(side), body.stature / STATURE
    widest = max(abs(c.start[0]) + c.radius for c in body.capsules)
    out = max(body.half_breadth + BESIDE * size, widest + thick + ASIDE) - body.half_shoulder
    ahead = AHEAD * body.stature
    arm = BENT * body.arm_length
    out = min(out, 0.7 * arm)  # a prop too thick to be kept beside the leg is told by the checks
    drop = float(np.sqrt(arm**2 - out**2 - ahead**2))
    lowest, highest = body.shoulder_height - drop, body.shoulder_height + drop
    # A flat prop is held over the floor with the ball about it, which the checks of the floor take.
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
