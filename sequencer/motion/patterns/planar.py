"""Planar orbits: the hand moves round a circle, the prop turns at a steady rate in the same plane.

h = c + R(cos(aτ+θ₀)·e₁ + sin(aτ+θ₀)·e₂), d = cos(bτ+θ₀+ψ₀)·e₁ + sin(bτ+θ₀+ψ₀)·e₂,
n = sign(b)·e_a, with θ₀ where the hand starts and ψ₀ the tether's lead over the outward direction
there; k = b/a is the ratio. R = 0 is a static spin and has no k. A yaw turns all of it about the
vertical through c. Frame: body frame [m].
Source: docs/motion.md, section 3; trade names are common practice.
"""

from fractions import Fraction
from math import isfinite, pi

from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import Arm, ComposedLaw, HandPath
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.patterns.placing import circle_centre
from sequencer.motion.patterns.planes import PlaneName, TurnName, as_vector, frame_of

MOST_CYCLES = 24  # a ratio that takes more hand cycles to close counts as not closing


def closing_cycles(ratio: float) -> int | None:
    """Hand cycles after which hand and prop are both back at the start; None if more than 24."""
    fraction = Fraction(ratio).limit_denominator(MOST_CYCLES)
    return fraction.denominator if abs(float(fraction) - ratio) < 1e-9 else None


def petals(ratio: float) -> float:
    """Petals per hand cycle: 1 − k for an antispin flower, k − 1 for an inspin flower, else 0."""
    if ratio < 0:
        return 1.0 - ratio
    return ratio - 1.0 if ratio > 1 else 0.0


def orbit(
    *,
    ratio: float,
    hand_radius: float,
    plane: PlaneName = "wall",
    turn: TurnName = "anticlockwise",
    start: float = -pi / 2,
    lag: float = 0.0,
    yaw: float = 0.0,
    beats: float,
    side: Side = "right",
    body: Body,
    offset: tuple[float, float, float] = (0.0, 0.0, 0.0),
) -> ComposedLaw:
    """An orbit, or with `hand_radius` 0 a static spin.

    Parameters
    ----------
    ratio : float
        k = b/a; not used by a static spin.
    hand_radius : float
        [m]
    plane, turn, start
        Plane, the direction of the hand in it, and the angle at which the hand starts [rad].
    lag : float
        Angle of the tether ahead of the outward direction at the start [rad].
    yaw : float
        Of the whole pattern about the vertical through the circle's centre, to the performer's left [rad].
    beats : float
        Per hand cycle; in a static spin, per turn of the prop.
    side : {"left", "right"}
    body : Body
    offset : tuple of float
        Own move of the circle's centre: outward, ahead, up [m].

    Returns
    -------
    law : ComposedLaw

    Raises
    ------
    ValueError
        If a parameter is out of range.
    """
    check_beats(beats)
    if not abs(ratio) <= 24:  # also catches nan
        raise ValueError(f"ratio must lie between -24 and 24, got {ratio!r}")
    frame = frame_of(plane, turn, start)
    if yaw:
        frame = frame.yawed(yaw)
    centre = circle_centre(plane, side, body, hand_radius, offset)
    spin = 2 * pi / beats
    still = hand_radius == 0
    prop = spin if still else ratio * spin
    axis = as_vector(frame.axis)
    cycles = 1 if still else closing_cycles(ratio)
    around = Turn(axis, Wave(rate=spin))
    sense = -1.0 if prop < 0 else 1.0
    return ComposedLaw(
        hand=HandPath(
            as_vector(centre),
            arms=() if still else (Arm(as_vector(hand_radius * frame.outward), (around,)),),
        ),
        tether=as_vector(frame.outward),
        plane=as_vector(sense * frame.axis),
        turns=(Turn(axis, Wave(offset=lag, rate=prop)),),
        period=float("inf") if cycles is None else cycles * beats,
    )


def check_beats(beats: float) -> None:
    """Raise if a cycle takes no time.

    Raises
    ------
    ValueError
        If it is not positive and finite.
    """
    if not (isfinite(beats) and beats > 0):
        raise ValueError(f"beats of a cycle must be positive, got {beats!r}")
