"""Weaves, windmill, fountain, corkscrew: the prop turns steadily, the hand carries its plane about.

t counts loops; f(t) is 1 on the own side and −1 on the other (or before and behind, or high and low).
The hand changes sides while the prop points away from the body, once or twice in a cycle:
    two-beat     f = cos πt                                    one loop on each side, period 2
    three-beat   f = ⅓ − cos ⅔π(t+1) − ⅓ cos ⁴⁄₃π(t+1)         two own, one other, period 3
    h = c + w·A·f·x̂ − B·cos 2πt·â,  d = R(ẑ', S·g)·R(n, 2πt + λ)·(−â)
with â the way that points away from the body where the hand crosses, w the width (1 as usual), λ the
lead and S the swing: g = −f'/max|f'| is largest where the hand crosses inward and least where it
crosses outward, so that there the plane is turned by S from the wheel towards the wall plane, about
the vertical (ẑ' = ẑ before the body, −ẑ behind it), or towards the floor plane over the head
(ẑ' = −ŷ). The windmill and the fountain are the same with f along y and along z; the windmill's plane
leans by up to Y the way the hand goes, d = R(x̂, Y·sin πt)·R(n, 2πt + λ)·d₀. The corkscrew's hand goes
up and down the arc of the straight arm from the side to overhead, its prop flat. Every centre is moved
outward, ahead and up by an offset. Frame: body frame [m], x to the right; everything is mirrored for
the left.
Source: common practice for what loops lie where, for the plane that turns with the crossing staff and
for the staff that crosses upright; the smooth paths are this project's own.
"""

from math import degrees, pi, radians
from typing import Literal, TypeAlias

from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import Arm, ComposedLaw, HandPath, Slide
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn, Vector
from sequencer.motion.patterns.placing import sign_of
from sequencer.motion.patterns.planar import check_beats
from sequencer.motion.patterns.planes import TurnName, WheelWay, as_vector, plane_axis, wheel_axis

_Offset: TypeAlias = tuple[float, float, float]
_NOWHERE: _Offset = (0.0, 0.0, 0.0)
WeavePlace: TypeAlias = Literal["front", "behind", "overhead"]
_WIDE = 0.25  # share of the arm: a windmill's hands stay beside each other
UNDER = {
    "front": 0.10,
    "behind": 0.10,
    "overhead": 0.06,
}  # [m] the left hand passes under the right
LEAN = radians(20.0)  # of a windmill's plane while the hand crosses
LOW, HIGH = radians(5.0), radians(90.0)  # of the arm in a corkscrew

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

# What the plane turns about while a right hand crosses inward, by the right-hand rule.
_SWINGS: dict[WeavePlace, Vector] = {
    "front": (0.0, 0.0, 1.0),
    "behind": (0.0, 0.0, -1.0),
    "overhead": (0.0, -1.0, 0.0),
}
# Largest slope of the three-beat f by ⅔πt: sin a + ⅔ sin 2a, most where 8 cos²a + 3 cos a = 4.
_STEEPEST = 1.4477017


def _crossing(loops: int, beats: float) -> Wave:
    """The side f of a two- or three-beat weave as a wave of beats."""
    spin = 2 * pi / beats
    if loops == 2:
        return Wave(sways=((1.0, spin, 0.0),))
    return Wave(offset=1 / 3, sways=((-1.0, spin, 2 * pi / 3), (-1 / 3, 2 * spin, 4 * pi / 3)))


def _inward(loops: int, beats: float, most: float) -> Wave:
    """The speed of the way inward, −f', as a wave that reaches `most`."""
    spin = 2 * pi / beats
    if loops == 2:
        return Wave(sways=((most, spin, -pi / 2),))
    size = -most / _STEEPEST
    return Wave(
        sways=((size, spin, 2 * pi / 3 - pi / 2), (2 / 3 * size, 2 * spin, 4 * pi / 3 - pi / 2))
    )


def weave(
    *,
    loops: Literal[2, 3] = 2,
    way: WheelWay = "forward",
    place: WeavePlace = "front",
    width: float = 1.0,
    swing: float = 0.0,
    lead: float = 0.0,
    beats: float,
    side: Side,
    body: Body,
    offset: _Offset = _NOWHERE,
) -> ComposedLaw:
    """A two- or three-beat weave in the wheel plane, starting on the own side.

    Parameters
    ----------
    loops : {2, 3}
    way : {"forward", "backward"}
    place : {"front", "behind", "overhead"}
        Where the hand crosses: before the body, behind it, or over the head.
    width : float
        How far the hand goes to both sides, 1 as usual.
    swing : float
        By how much the plane is turned while the hand crosses [rad].
    lead : float
        Of the prop over the way towards the body at the start [rad].
    beats : float
        Of all its loops.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Own move of the whole: outward, ahead, up [m].

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
    spin = Turn(axis, Wave(offset=lead, rate=once))
    swings = Turn(_SWINGS[place], _inward(loops, beats, out * swing))
    return ComposedLaw(
        hand=HandPath(
            _moved(centre, out, offset),
            slides=(
                Slide((out * width * (own - other) / 2, 0.0, 0.0), f),
                Slide(_scaled(away, reach), Wave(sways=((1.0, once, pi),))),
            ),
        ),
        tether=_scaled(away, -1.0),
        plane=axis,
        turns=(swings, spin) if swing else (spin,),
        period=beats,
    )


def windmill(
    *,
    turn: TurnName = "anticlockwise",
    width: float = 1.0,
    lean: float = LEAN,
    lead: float = 0.0,
    beats: float,
    side: Side,
    body: Body,
    offset: _Offset = _NOWHERE,
) -> ComposedLaw:
    """One loop before the face and one behind the head, in the wall plane, hand overhead.

    Parameters
    ----------
    turn : {"anticlockwise", "clockwise"}
        As the performer sees it.
    width : float
        How far the hand goes forward and back, 1 as usual.
    lean : float
        Of the plane while the hand crosses [rad].
    lead : float
        Of the prop over hanging at the start [rad].
    beats : float
        Of both loops.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Own move of the whole: outward, ahead, up [m].

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
    leans = Wave(sways=((lean, 2 * pi / beats, -pi / 2),))
    axis = plane_axis("wall", turn)
    once = 4 * pi / beats
    return ComposedLaw(
        hand=HandPath(
            _moved((out * _WIDE * arm, 0.06 * arm, body.shoulder_height + 0.68 * arm), out, offset),
            slides=(
                Slide((0.0, width * 0.48 * arm, 0.0), f),
                Slide((0.0, 0.0, 0.1 * arm), Wave(sways=((1.0, once, pi),))),
            ),
        ),
        tether=(0.0, 0.0, -1.0),
        plane=axis,
        turns=(Turn((1.0, 0.0, 0.0), leans), Turn(axis, Wave(offset=lead, rate=once))),
        period=beats,
    )


def fountain(
    *,
    way: WheelWay = "forward",
    width: float = 1.0,
    lead: float = 0.0,
    beats: float,
    side: Side,
    body: Body,
    offset: _Offset = _NOWHERE,
) -> ComposedLaw:
    """One loop low and one loop high beside the body, in the wheel plane.

    Parameters
    ----------
    way : {"forward", "backward"}
    width : float
        How far the hand goes down and up, 1 as usual.
    lead : float
        Of the prop over pointing ahead at the start [rad].
    beats : float
        Of both loops.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Own move of the whole: outward, ahead, up [m].

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
    centre = (out * (body.half_breadth + 0.12), 0.3 * arm, body.shoulder_height + 0.05 * arm)
    return ComposedLaw(
        hand=HandPath(
            _moved(centre, out, offset),
            slides=(
                Slide((0.0, 0.0, width * -0.6 * arm), f),
                Slide((0.0, width * 0.15 * arm, 0.0), f),
            ),
        ),
        tether=(0.0, 1.0, 0.0),
        plane=axis,
        turns=(Turn(axis, Wave(offset=lead, rate=4 * pi / beats)),),
        period=beats,
    )


def corkscrew(
    *,
    turn: TurnName = "anticlockwise",
    loops: int = 4,
    low: float = LOW,
    high: float = HIGH,
    beats: float,
    side: Side,
    body: Body,
    offset: _Offset = _NOWHERE,
) -> ComposedLaw:
    """Flat loops carried from beside the body to overhead and back, along the arm's arc.

    Parameters
    ----------
    turn : {"anticlockwise", "clockwise"}
        As seen from above.
    loops : int
        On the way up and down together, 2 to 16.
    low, high : float
        Of the arm over level, lowest and highest [rad].
    beats : float
        Of all its loops.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Own move of the whole: outward, ahead, up [m].

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
    if not low < high:
        raise ValueError(
            f"the arm must rise: low must be under high, got {degrees(low):g}° and {degrees(high):g}°"
        )
    out = sign_of(side)
    axis = plane_axis("floor", turn)
    rise = Wave(offset=(low + high) / 2, sways=(((low - high) / 2, 2 * pi / beats, 0.0),))
    return ComposedLaw(
        hand=HandPath(
            _moved(as_vector(body.shoulder(side)), out, offset),
            arms=(Arm((out * 0.98 * body.arm_length, 0.0, 0.0), (Turn((0.0, -out, 0.0), rise),)),),
        ),
        tether=(out, 0.0, 0.0),
        plane=axis,
        turns=(Turn(axis, Wave(rate=2 * pi * loops / beats)),),
        period=beats,
    )


def _moved(centre: Vector, out: float, offset: _Offset) -> Vector:
    """A centre moved outward, ahead and up."""
    return (centre[0] + out * offset[0], centre[1] + offset[1], centre[2] + offset[2])


def _scaled(vector: Vector, factor: float) -> Vector:
    x, y, z = vector
    return (factor * x, factor * y, factor * z)
