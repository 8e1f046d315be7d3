"""How far a hand is on a link: from the shoulder as it gives and as the body carries it."""

import numpy as np
import pytest

from sequencer.checks.dance.hard_links import _too_far
from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.performers.feasibility import reach_left
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.one_link.link_limits import hand_space_of
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span

BODY = Body(stature=1.75)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
UP = Carriage(body=BODY)
LEANING = Carriage(
    body=BODY,
    held=(
        HeldPosture(5.0, 6.0, UPRIGHT),
        HeldPosture(8.0, 12.0, Posture(lean=np.radians(8))),
        HeldPosture(14.0, 15.0, UPRIGHT),
    ),
)


@pytest.mark.parametrize(
    ("beyond", "carriage", "far"),
    [(0.0, UP, False), (0.05, UP, False), (0.10, UP, True), (0.10, LEANING, False), (0.20, LEANING, True)],
)  # fmt: skip
def test_reach_on_a_link_is_that_of_the_moved_body(beyond, carriage, far):
    """A shoulder gives 6 cm forward; a lean of 8° about the hips carries it 7 cm more."""
    place = BODY.shoulder("right") + np.array([0.0, BODY.arm_length + beyond, 0.0])
    law = ComposedLaw(
        hand=HandPath(tuple(place.tolist())), tether=(0.0, 0.0, -1.0), plane=(-1.0, 0.0, 0.0),
        turns=(), period=1.0,
    )  # fmt: skip
    block = Span(start=8.0, end=12.0, law=law, origin=8.0, kind="block", label="held")
    trajectory = assembled(
        [block], rest("right", BODY, POI), space=hand_space_of(BODY, "right", POI)
    )
    for k in (1, 3):
        span = trajectory.spans[k]
        (left,) = reach_left(
            trajectory, [span.start, span.end], side="right", body=BODY, carriage=carriage
        )
        why = _too_far(BODY, left)
        assert (why is not None) == far
        if why is not None:
            said, figure = why
            assert "with an arm of 0.682 m" in said
            assert figure.value == BODY.arm_length - left.value > figure.limit == BODY.arm_length
