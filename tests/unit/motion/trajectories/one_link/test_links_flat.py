"""Links of flat props: chosen by the true shape, so that one that is clear is found where there is one."""

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.geometry.segments import segment_segment
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.one_link.link_limits import hand_space_of
from sequencer.motion.trajectories.one_link.links import link
from sequencer.motion.trajectories.rests import rest

BODY = Body(stature=1.66)
FAN = Prop(
    kind="fan",
    length=0.35,
    mass=0.5,
    head_mass=0.04,
    wicks=5,
    spread=np.radians(110),
    wick_radius=0.03,
)


def gap(law, prop):
    """Smallest gap of the drawn fan to the body over a link, sampled finely."""
    motion = law.at(np.linspace(0, law.beats, 801))
    wide = np.cross(motion.plane, motion.tether)
    least = np.inf
    for spot in prop.heads:
        wick = motion.hand + spot.along * motion.tether + spot.across * wide
        for capsule in BODY.capsules:
            low, high = (
                np.broadcast_to(np.array(e), wick.shape) for e in (capsule.start, capsule.end)
            )
            away = segment_segment(motion.hand, wick, low, high)[0].min()
            least = min(least, away - capsule.radius - prop.wick_radius)
    return least


@pytest.mark.parametrize("name", ["static-spin", "extension", "antispin-flower-3", "wheel-spin"])
@pytest.mark.parametrize("side", ["left", "right"])
def test_a_fan_is_led_past_the_body(name, side):
    """From rest into a pattern: never worse than the link that knows the axis alone."""
    still = rest(side, BODY, FAN.length).at(np.array(0.0))
    law = law_for(name, {}, side=side, body=BODY, tether=FAN.length)
    start = law.at(np.array(0.5))
    own = hand_space_of(BODY, side, FAN)
    assert own.solids == FAN.solids
    axis = hand_space_of(BODY, side, Prop(length=FAN.length, mass=0.5, wick_radius=0.03))
    assert own.flat
    assert not axis.flat
    shaped, plain = (gap(link(still, start, 2.0, room), FAN) for room in (own, axis))
    assert shaped >= min(plain, 0.05) - 0.02  # what is over 8 cm clear is not made to be clearer
