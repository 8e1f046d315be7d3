"""Toroids: the hand goes once round while the prop's plane bends.

With u the hand's way, e_r, e_θ, e_a its moving frame, N lobes, s the starting sense:
    n = cos β·e_θ + sin β·e_a,  d = cos φ·e_r + sin φ·(n × e_r),  φ = π + N·u
    iso-bend:  β = 0 (s = 1) or π (s = −1)
    pro-bend:  β = +[π/2 − s·(π/2)·cos(N·u/2)]
    anti-bend: β = −[π/2 − s·(π/2)·cos(N·u/2)]   (N ≥ 2)
which is three nested turns: by u about e_a, by β about e_r, by φ about e_θ. An in (d = −e_r) lies at
u = 2πj/N, an out half a lobe later. For odd N a pro- or anti-bend comes home the wrong way round, so
its period is two hand cycles. Frame: body frame [m].
Source: docs/motion.md, section 3; that odd builds come home reversed is common practice.
"""

from math import pi
from typing import Literal, TypeAlias

from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import Arm, ComposedLaw, HandPath
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.patterns.placing import circle_centre
from sequencer.motion.patterns.planar import check_beats
from sequencer.motion.patterns.planes import PlaneName, TurnName, as_vector, frame_of

Bend: TypeAlias = Literal["iso", "pro", "anti"]
BENDS: tuple[Bend, ...] = ("iso", "pro", "anti")
MOST_LOBES = 24


def check_toroid(lobes: int, bend: str, start: int) -> None:
    """Refuse a toroid that there is not.

    Raises
    ------
    ValueError
        If the lobes, the bend or the starting sense are out of range.
    """
    if bend not in BENDS:
        raise ValueError(f"bend must be one of {', '.join(BENDS)}, got {bend!r}")
    if lobes != int(lobes) or not 1 <= lobes <= MOST_LOBES:
        raise ValueError(f"lobes must be a whole number from 1 to {MOST_LOBES}, got {lobes!r}")
    if bend == "anti" and lobes < 2:
        raise ValueError(
            "an anti-bend needs at least 2 lobes: with one the prop would not turn in the room"
        )
    if start not in (1, -1):
        raise ValueError(f"start must be 1 or -1, got {start!r}")


def home_cycles(lobes: int, bend: Bend) -> int:
    """Hand cycles until the state is the same again: 2 for odd pro- and anti-bends, else 1."""
    return 2 if bend != "iso" and lobes % 2 else 1


def toroid(
    *,
    lobes: int,
    bend: Bend,
    start: Literal[1, -1] = 1,
    hand_radius: float,
    plane: PlaneName = "wall",
    turn: TurnName = "anticlockwise",
    place: float = -pi / 2,
    begin: Literal["in", "out"] = "in",
    beats: float,
    side: Side = "right",
    body: Body,
    offset: tuple[float, float, float] = (0.0, 0.0, 0.0),
) -> ComposedLaw:
    """A toroid.

    Parameters
    ----------
    lobes : int
        Loops in one cycle, at least 1 (2 for an anti-bend).
    bend : {"iso", "pro", "anti"}
    start : {1, -1}
        Sense at an in: along the hand's motion, or against it.
    hand_radius : float
        [m]
    plane, turn, place
        Plane of the hand's circle, its way round, and the angle where the hand starts [rad].
    begin : {"in", "out"}
        Whether the prop starts at an in or at the out half a lobe later.
    beats : float
        Of one hand cycle.
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
    check_toroid(lobes, bend, start)
    check_beats(beats)
    if begin not in ("in", "out"):
        raise ValueError(f"begin must be in or out, got {begin!r}")
    if not hand_radius > 0:
        raise ValueError(
            f"a toroid needs a hand circle: hand_radius must be positive, got {hand_radius!r}"
        )
    u0 = pi / lobes if begin == "out" else 0.0
    frame = frame_of(plane, turn, place)
    centre = circle_centre(plane, side, body, hand_radius, offset, bends=True)
    spin = 2 * pi / beats
    if bend == "iso":
        bent = Wave(offset=0.0 if start == 1 else pi)
    else:
        sign = 1.0 if bend == "pro" else -1.0
        sway = (-sign * start * pi / 2, lobes * spin / 2, lobes * u0 / 2)
        bent = Wave(offset=sign * pi / 2, sways=(sway,))
    around = Turn(as_vector(frame.axis), Wave(rate=spin))
    return ComposedLaw(
        hand=HandPath(
            as_vector(centre), arms=(Arm(as_vector(hand_radius * frame.outward), (around,)),)
        ),
        tether=as_vector(frame.outward),
        plane=as_vector(frame.along),
        turns=(
            around,
            Turn(as_vector(frame.outward), bent),
            Turn(as_vector(frame.along), Wave(offset=pi + lobes * u0, rate=lobes * spin)),
        ),
        period=home_cycles(lobes, bend) * beats,
    )
