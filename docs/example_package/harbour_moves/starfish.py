"""A law: the hand draws a star with rounded points while the prop turns against it.

With θ = 2π·beats/cycle and n points the hand is at r·(1 − s)·e(θ) + r·s·e(−(n − 1)·θ) from the centre, where e
turns outward; the tether is at e(ratio·θ). Source: hypotrochoid, J. D. Lawrence, A Catalog of Special
Plane Curves (Dover, 1972).

`ComposedLaw` brings derivatives and proven bounds along; a law of another make must prove its own.
"""

from collections.abc import Mapping
from math import pi, radians
from typing import Any

from sequencer.motion.laws.composed import Arm, ComposedLaw, HandPath
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.patterns.law_kinds import (
    FROM,
    HAND_RADIUS,
    OFFSET,
    PLANE,
    TETHER,
    TURN,
    LawContext,
    LawKind,
    offset_of,
    one_turn,
)
from sequencer.motion.patterns.parameters import Parameter
from sequencer.motion.patterns.placing import circle_centre
from sequencer.motion.patterns.planes import as_vector, frame_of

SHARE = 0.2  # of the radius that the small circle takes; under 1/n the points stay round


def starfish(values: Mapping[str, Any], context: LawContext) -> ComposedLaw:
    """The law of one hand from plain values (metres, degrees, names)."""
    frame = frame_of(values["plane"], values["turn"], radians(values["from"]))
    radius, spin = values["hand_radius"], 2 * pi / context.beats
    axis, outward = as_vector(frame.axis), frame.outward
    centre = circle_centre(values["plane"], context.side, context.body, radius, offset_of(values))

    def at_rate(turns: float) -> tuple[Turn, ...]:
        return (Turn(axis, Wave(rate=turns * spin)),)

    return ComposedLaw(
        hand=HandPath(
            as_vector(centre),
            arms=(
                Arm(as_vector((1 - SHARE) * radius * outward), at_rate(1)),
                Arm(as_vector(SHARE * radius * outward), at_rate(1 - values["points"])),
            ),
        ),
        tether=as_vector(outward),
        plane=as_vector(-frame.axis),
        turns=at_rate(-values["points"]),
        period=context.beats,
    )


STARFISH = LawKind(
    name="starfish",
    family="star",
    parameters=(
        Parameter(
            name="points",
            kind="count",
            default=5,
            low=3,
            high=8,
            help="points of the star, and turns of the prop against the hand, in one hand cycle",
        ),
        HAND_RADIUS,
        TETHER,
        PLANE,
        TURN,
        FROM,
        *OFFSET,
    ),
    build=starfish,
    cycle=lambda values: float(values["points"]),
    turns=one_turn,
    opposite="plane",
)
