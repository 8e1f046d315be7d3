"""Weaves, windmill, fountain, corkscrew: the prop turns steadily, the hand carries its plane about.

t counts loops; f(t) is 1 on the own side and −1 on the other (or before and behind, or high and low).
The hand changes sides while the prop points away from the body, once or twice in a cycle:
    two-beat     f = cos πt                                    one loop on each side, period 2
    three-beat   f = ⅓ − cos ⅔π(t+1) − ⅓ cos ⁴⁄₃π(t+1)         two own, one other, period 3
    h = c + A·f·x̂ − B·cos 2πt·â,  d = R(n, 2πt)·(−â)
with â the way that points away from the body where the hand crosses. The windmill and the fountain
are the same with f along y and along z; the windmill's plane leans up to 20° the way the hand goes,
d = R(x̂, lean)·R(n, 2πt)·d₀, lean = Y·sin πt. The corkscrew's hand goes up and down the arc of the straight arm from the side to
overhead, its prop flat. Frame: body frame [m], x to the right; everything is mirrored for the left.
Source: common practice for what loops lie where; the smooth paths are this project's own.
"""

from math import pi, radians
from typing import Literal, TypeAlias

from sequencer.geometry.bodies import Body, Side
from sequencer.motion.chain import Turn, Vector
from sequencer.motion.composed import Arm, ComposedLaw, HandPath, Slide
from sequencer.motion.phases import Wave
from sequencer.motion.placing import sign_of
from sequencer.motion.planar import check_beats
from sequencer.motion.planes import TurnName, WheelWay, as_vector, plane_axis, wheel_axis

WeavePlace: TypeAlias = Literal["front", "behind", "overhead"]
WIDE = 0.25  # share of the arm: a windmill's hands stay beside each other
UNDER = {
    "front": 0.10,
    "behind": 0.10,
    "overhead": 0.06,
}  # [m] the left hand passes under the right
LEAN = radians(20.0)  # of the plane while the hand crosses

# Own side, other side, ahead, above the shoulder: shares of the arm's length, chosen by a search for
# the widest gap between a 55 cm prop and the body within 96 % of the arm.
_PLACES: dict[WeavePlace, tuple[float, float, float, float]] = {
    "front": (0.67, -0.60, 0.29, -0.18),
    "behind": (0.63, -0.56, -0.28, -0.22),
    "overhead": (0.62, -0.55, -0.15, 0.46),
}

_AWAY: dict[WeavePlace, Vector] = {
    "front": (0.0, 1.0, 0.0),
    "behind": (0.0, -1.0, 0.0),
    "overhead": (0.0, 0.0, 1.0),
}


def _crossing(loops: int, beats: float) -> Wave:
    """The side f of a two- or three-beat weave as a wave of beats."""
    spin = 2 * pi / beats
    if loops == 2:
        return Wave(sways=((1.0, spin, 0.0),))
    return Wave(offset=1 / 3, sways=((-1.0, spin, 2 * pi / 3), (-1 / 3, 2 * spin, 4 * pi / 3)))


def weave(
    *,
    loops: Literal[2, 3] = 2,
    way: WheelWay = "forward",
    place: WeavePlace = "front",
    beats: float,
    side: Side,
    body: Body,
) -> ComposedLaw:
    """A two- or three-beat weave in the wheel plane, starting on the own side.

    Parameters
    ----------
    loops : {2, 3}
    way : {"forward", "backward"}
    place : {"front", "behind", "overhead"}
        Where the hand crosses: before the body, behind it, or over the head.
    beats : float
        Of all its loops.
    side : {"left", "right"}
    body : Body

    Returns
    -------
    law : ComposedLaw

    Raises
    ------
    ValueError
        If a parameter is out of range.
    """
    check_beats(beats)
    if loops not in (2, 3):
        raise ValueError(f"a weave has 2 or 3 loops, got {loops!r}")
    if place not in _PLACES:
        raise ValueError(f"place must be one of {', '.join(_PLACES)}, got {place!r}")
    own, other, ahead, up = (body.arm_length * share for share in _PLACES[place])
    out = sign_of(side)
    f = _crossing(loops, beats)
    once = 2 * pi * loops / beats
    shoulder = body.shoulder(side)
    under = UNDER[place] if side == "left" else 0.0
    centre = (out * (own + other) / 2, float(shoulder[1]) + ahead, float(shoulder[2]) + up - under)
    # the prop points away from the body's middle while the hand crosses, half a loop after the start
    away = _AWAY[place]
    reach = 0.08 * body.arm_length
    axis = wheel_axis(way)
    return ComposedLaw(
        hand=HandPath(
            centre,
            slides=(
                Slide((out * (own - other) / 2, 0.0, 0.0), f),
                Slide(_scaled(away, reach), Wave(sways=((1.0, once, pi),))),
            ),
        ),
        tether=_scaled(away, -1.0),
        plane=axis,
        turns=(Turn(axis, Wave(rate=once)),),
        period=beats,
    )


def windmill(
    *, turn: TurnName = "anticlockwise", beats: float, side: Side, body: Body
) -> ComposedLaw:
    """One loop before the face and one behind the head, in the wall plane, hand overhead.

    Parameters
    ----------
    turn : {"anticlockwise", "clockwise"}
        As the performer sees it.
    beats : float
        Of both loops.
    side : {"left", "right"}
    body : Body

    Returns
    -------
    law : ComposedLaw

    Raises
    ------
    ValueError
        If `beats` or `turn` is out of range.
    """
    check_beats(beats)
    arm, out = body.arm_length, sign_of(side)
    f = _crossing(2, beats)
    lean = Wave(sways=((LEAN, 2 * pi / beats, -pi / 2),))
    axis = plane_axis("wall", turn)
    once = 4 * pi / beats
    return ComposedLaw(
        hand=HandPath(
            (out * WIDE * arm, 0.06 * arm, body.shoulder_height + 0.68 * arm),
            slides=(
                Slide((0.0, 0.48 * arm, 0.0), f),
                Slide((0.0, 0.0, 0.1 * arm), Wave(sways=((1.0, once, pi),))),
            ),
        ),
        tether=(0.0, 0.0, -1.0),
        plane=axis,
        turns=(Turn((1.0, 0.0, 0.0), lean), Turn(axis, Wave(rate=once))),
        period=beats,
    )


def fountain(*, way: WheelWay = "forward", beats: float, side: Side, body: Body) -> ComposedLaw:
    """One loop low and one loop high beside the body, in the wheel plane.

    Parameters
    ----------
    way : {"forward", "backward"}
    beats : float
        Of both loops.
    side : {"left", "right"}
    body : Body

    Returns
    -------
    law : ComposedLaw

    Raises
    ------
    ValueError
        If `beats` or `way` is out of range.
    """
    check_beats(beats)
    arm, out = body.arm_length, sign_of(side)
    f = _crossing(2, beats)
    axis = wheel_axis(way)
    return ComposedLaw(
        hand=HandPath(
            (out * (body.half_breadth + 0.12), 0.3 * arm, body.shoulder_height + 0.05 * arm),
            slides=(Slide((0.0, 0.0, -0.6 * arm), f), Slide((0.0, 0.15 * arm, 0.0), f)),
        ),
        tether=(0.0, 1.0, 0.0),
        plane=axis,
        turns=(Turn(axis, Wave(rate=4 * pi / beats)),),
        period=beats,
    )


def corkscrew(
    *,
    turn: TurnName = "anticlockwise",
    loops: int = 4,
    beats: float,
    side: Side,
    body: Body,
) -> ComposedLaw:
    """Flat loops carried from beside the body to overhead and back, along the arm's arc.

    Parameters
    ----------
    turn : {"anticlockwise", "clockwise"}
        As seen from above.
    loops : int
        On the way up and down together, 2 to 16.
    beats : float
        Of all its loops.
    side : {"left", "right"}
    body : Body

    Returns
    -------
    law : ComposedLaw

    Raises
    ------
    ValueError
        If a parameter is out of range.
    """
    check_beats(beats)
    if loops != int(loops) or not 2 <= loops <= 16:
        raise ValueError(f"loops must be a whole number from 2 to 16, got {loops!r}")
    out = sign_of(side)
    axis = plane_axis("floor", turn)
    low, high = radians(5.0), radians(90.0)
    rise = Wave(offset=(low + high) / 2, sways=(((low - high) / 2, 2 * pi / beats, 0.0),))
    return ComposedLaw(
        hand=HandPath(
            as_vector(body.shoulder(side)),
            arms=(Arm((out * 0.98 * body.arm_length, 0.0, 0.0), (Turn((0.0, -out, 0.0), rise),)),),
        ),
        tether=(out, 0.0, 0.0),
        plane=axis,
        turns=(Turn(axis, Wave(rate=2 * pi * loops / beats)),),
        period=beats,
    )


def _scaled(vector: Vector, factor: float) -> Vector:
    x, y, z = vector
    return (factor * x, factor * y, factor * z)
