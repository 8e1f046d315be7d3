"""Swings, stalls, carries, turns, and spins whose hand travels along a line, box, diamond or figure eight.

    pendulum, stall   d = R(n, A·cos 2πt/T)·(0, 0, −1), hand still; a stall's A is 90° to 180°
    carry             h on a circle, d straight down
    travelling spin   d turns steadily in a plane, h along a line A·cos τ, an eight (W·sin τ, H·sin 2τ),
                      or a square or diamond with minimum-jerk timing, at rest at its corners
    body turn         a wheel-plane spin that stays where it is while the body turns by half a turn
                      towards it and back: place and prop turned about ẑ by minimum-jerk steps
Frame: body frame [m].
Source: docs/motion.md, section 3; names are common practice.
"""

from math import pi, radians
from typing import Literal, TypeAlias

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import Arm, ComposedLaw, HandPath, Slide
from sequencer.motion.laws.phases import Steps, Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.patterns.placing import HANDS_APART, circle_centre, sign_of
from sequencer.motion.patterns.planar import check_beats
from sequencer.motion.patterns.planes import (
    PlaneName,
    TurnName,
    WheelWay,
    as_vector,
    frame_of,
    wheel_axis,
)

PathShape: TypeAlias = Literal["line", "box", "diamond", "infinity"]
PATH_SHAPES: tuple[PathShape, ...] = ("line", "box", "diamond", "infinity")
Towards: TypeAlias = Literal["own", "right", "left"]
TOWARDS: tuple[Towards, ...] = ("own", "right", "left")
_Offset: TypeAlias = tuple[float, float, float]
_NOWHERE: _Offset = (0.0, 0.0, 0.0)


def swing(
    *,
    amplitude: float,
    plane: PlaneName = "wheel",
    turn: TurnName = "clockwise",
    beats: float,
    side: Side,
    body: Body,
    offset: _Offset = _NOWHERE,
) -> ComposedLaw:
    """A pendulum or, from 90° on, a stall: swinging to and fro about the hanging position.

    Parameters
    ----------
    amplitude : float
        Angle to either side of hanging [rad]; π stops at the top.
    plane : {"wall", "wheel"}
    turn : {"anticlockwise", "clockwise"}
        Direction of the first swing up, before the start.
    beats : float
        For one full swing, to and fro.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Offset of the hand: outward, ahead, up [m].

    Returns
    -------
    law : ComposedLaw
        Its plane is that of the first swing up; the turning axis changes sign at each end.

    Raises
    ------
    ValueError
        If a parameter is out of range.
    """
    check_beats(beats)
    if plane == "floor":
        raise ValueError("a pendulum cannot swing in the floor plane")
    if not 0 < amplitude <= pi + 1e-12:
        raise ValueError(f"amplitude must be 1 to 180 degrees, got {np.degrees(amplitude):g}")
    axis = as_vector(frame_of(plane, turn, 0.0).axis)
    return ComposedLaw(
        hand=HandPath(as_vector(circle_centre(plane, side, body, 0.0, offset))),
        tether=(0.0, 0.0, -1.0),
        plane=axis,
        turns=(Turn(axis, Wave(sways=((amplitude, 2 * pi / beats, 0.0),))),),
        period=beats,
    )


def carry(
    *,
    hand_radius: float,
    plane: PlaneName = "wall",
    turn: TurnName = "anticlockwise",
    start: float = -pi / 2,
    beats: float,
    side: Side,
    body: Body,
    offset: _Offset = _NOWHERE,
) -> ComposedLaw:
    """The hand circles; the prop hangs and does not turn.

    Parameters
    ----------
    hand_radius : float
        [m]
    plane, turn, start
        As in `planar.orbit`.
    beats : float
        Of one hand cycle.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Offset of the circle's centre: outward, ahead, up [m].

    Returns
    -------
    law : ComposedLaw

    Raises
    ------
    ValueError
        If a parameter is out of range.
    """
    check_beats(beats)
    frame = frame_of(plane, turn, start)
    centre = circle_centre(plane, side, body, hand_radius, offset)
    around = Turn(as_vector(frame.axis), Wave(rate=2 * pi / beats))
    return ComposedLaw(
        hand=HandPath(
            as_vector(centre), arms=(Arm(as_vector(hand_radius * frame.outward), (around,)),)
        ),
        tether=(0.0, 0.0, -1.0),
        plane=as_vector(frame.axis) if plane != "floor" else (-1.0, 0.0, 0.0),
        turns=(),
        period=beats,
    )


def travelling(
    *,
    shape: PathShape,
    size: float,
    loops: int,
    plane: PlaneName = "wall",
    turn: TurnName = "anticlockwise",
    lead: float = 0.0,
    beats: float,
    side: Side,
    body: Body,
    offset: _Offset = _NOWHERE,
) -> ComposedLaw:
    """A steady spin whose hand travels along a line, box, diamond or figure eight.

    Parameters
    ----------
    shape : {"line", "box", "diamond", "infinity"}
    size : float
        Half the width of the path [m].
    loops : int
        Turns of the prop per hand cycle; negative: against the hand.
    plane, turn
        Plane, and the direction of the hand as seen by the plane's viewer.
    lead : float
        Angle of the tether ahead of the outward direction at the start [rad].
    beats : float
        Of one hand cycle.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Offset of the path's centre: outward, ahead, up [m].

    Returns
    -------
    law : ComposedLaw

    Raises
    ------
    ValueError
        If a parameter is out of range.
    """
    check_beats(beats)
    if shape not in PATH_SHAPES:
        raise ValueError(f"shape must be one of {', '.join(PATH_SHAPES)}, got {shape!r}")
    if loops != int(loops) or not 1 <= abs(loops) <= 16:
        raise ValueError(f"loops must be a whole number from -16 to 16 and not 0, got {loops!r}")
    if not size > 0:
        raise ValueError(f"size must be positive, got {size!r}")
    frame = frame_of(plane, turn, 0.0)
    widest = size * (2**0.5 if shape == "box" else 1.0)
    centre = circle_centre(plane, side, body, widest, offset)
    prop = 2 * pi * loops / beats
    return ComposedLaw(
        hand=HandPath(
            as_vector(centre), slides=_slides(shape, size, frame.outward, frame.along, beats)
        ),
        tether=as_vector(frame.outward),
        plane=as_vector(frame.axis if loops > 0 else -frame.axis),
        turns=(Turn(as_vector(frame.axis), Wave(offset=lead, rate=prop)),),
        period=beats,
    )


def _slides(
    shape: PathShape, size: float, right: Floats, up: Floats, beats: float
) -> tuple[Slide, ...]:
    spin = 2 * pi / beats
    across, along = as_vector(size * right), as_vector(size * up)
    if shape == "line":
        return (Slide(across, Wave(sways=((1.0, spin, 0.0),))),)
    if shape == "infinity":
        half = as_vector(size / 2 * up)
        return (
            Slide(across, Wave(sways=((1.0, spin, -pi / 2),))),
            Slide(half, Wave(sways=((1.0, 2 * spin, -pi / 2),))),
        )
    knots = tuple(beats * k / 4 for k in range(5))
    corners = {
        "box": ((1.0, -1.0, -1.0, 1.0, 1.0), (1.0, 1.0, -1.0, -1.0, 1.0)),
        "diamond": ((1.0, 0.0, -1.0, 0.0, 1.0), (0.0, 1.0, 0.0, -1.0, 0.0)),
    }[shape]
    return (Slide(across, Steps(knots, corners[0])), Slide(along, Steps(knots, corners[1])))


def body_turn(
    *,
    way: WheelWay = "forward",
    loops: int = 8,
    towards: Towards = "own",
    apart: float = 0.0,
    beats: float,
    side: Side,
    body: Body,
    offset: _Offset = _NOWHERE,
) -> ComposedLaw:
    """A wheel-plane spin that stays in place while the body turns half round towards it, and back.

    Parameters
    ----------
    way : {"forward", "backward"}
        Direction before the turn; during the half turn it becomes the opposite, as the performer sees it.
    loops : int
        In total, 2 to 32.
    towards : {"own", "right", "left"}
        Side of the spin, to which the body turns: the hand's own side, or the same side for both hands,
        whose planes are then `HANDS_APART` apart, the other side's hand nearer to the body.
    apart : float
        How much farther from the middle of the body the spin is than usual [m].
    beats : float
        Of both turns.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Offset of the whole pattern, the same however far the body has turned: outward, ahead, up [m].

    Returns
    -------
    law : ComposedLaw

    Raises
    ------
    ValueError
        If a parameter is out of range.

    Notes
    -----
    The show must turn the performer's facing by the same angle, or the spin will not stay in place.
    """
    check_beats(beats)
    if loops != int(loops) or not 2 <= loops <= 32:
        raise ValueError(f"loops must be a whole number from 2 to 32, got {loops!r}")
    if towards not in TOWARDS:
        raise ValueError(f"towards must be one of {', '.join(TOWARDS)}, got {towards!r}")
    out, to = sign_of(side), sign_of(side if towards == "own" else towards)
    axis = wheel_axis(way)
    about = Turn((0.0, 0.0, 1.0), Steps((0.0, beats / 2, beats), (0.0, to * radians(180.0), 0.0)))
    far = body.half_breadth + 0.12 + apart - (HANDS_APART if out != to else 0.0)
    height = body.shoulder_height - 0.15 * body.arm_length
    across, ahead, up = offset
    return ComposedLaw(
        hand=HandPath(
            (out * across, ahead, height + up), arms=(Arm((to * far, 0.0, 0.0), (about,)),)
        ),
        tether=(0.0, 0.0, -1.0),
        plane=axis,
        turns=(about, Turn(axis, Wave(rate=2 * pi * loops / beats))),
        period=beats,
    )
