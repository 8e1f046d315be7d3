"""Where props rest for bodies of other sizes, by arithmetic from the sizes alone."""

from math import sqrt

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories import rests
from sequencer.motion.trajectories.rests import rest


def test_the_numbers_of_rest():
    """Common practice and this project's choices, typed here again."""
    assert (rests._FLOOR, rests.BALL, rests.ASIDE) == (0.10, 0.02, 0.06)
    assert (rests.BENT, rests.AHEAD, rests.STATURE) == (0.93, 0.06, 1.755)
    assert rests.BESIDE == 0.12


# How far it hangs below the hand, its thickest part, and how high its ball must be kept over the floor.
PROPS = {
    "a number": (0.5, 0.55, 0.05, 0.0),
    "poi": (Prop(length=0.6, mass=0.2, wick_radius=0.04), 0.64, 0.04, 0.6 + 0.04 + 0.02),
    "thick": (Prop(length=0.6, mass=0.2, wick_radius=0.5), 1.1, 0.5, 0.6 + 0.5 + 0.02),
    "rather thick": (Prop(length=0.4, mass=0.2, wick_radius=0.2), 0.6, 0.2, 0.4 + 0.2 + 0.02),
    "staff": (
        Prop(kind="staff", length=0.7, behind=0.6, mass=0.8, wick_radius=0.04),
        0.74, 0.04, 0.7 + 0.04 + 0.02,
    ),
    "rope": (Prop(kind="rope dart", length=2.4, mass=0.2, wick_radius=0.05), 2.45, 0.05, 2.47),
    # Two spokes 60° apart: the ball about both wicks is L·cos 30° away and L·sin 30° wide.
    "fan": (
        Prop(kind="fan", length=0.5, mass=0.5, wicks=2, spread=np.pi / 3, wick_radius=0.03),
        0.25 * sqrt(3) + 0.03, 0.03, 0.25 * sqrt(3) + 0.25 + 0.03 + 0.02,
    ),
}  # fmt: skip


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("stature", [1.3, 1.755, 2.0])
@pytest.mark.parametrize("name", PROPS)
def test_a_prop_rests_where_arithmetic_puts_it(name, stature, side):
    """Beside the widest part or the upper arm, within 70 % of the arm; as high as floor and prop ask, as the arm can.

    Where even that is too low, the prop is laid out ahead, its lowest wick 10 cm over the floor.
    """
    prop, below, thick, ball = PROPS[name]
    body = Body(stature=stature)
    arm = 0.93 * body.arm_length
    widest = max(abs(c.start[0]) + c.radius for c in body.capsules)
    out = max(body.half_breadth + 0.12 * stature / 1.755, widest + thick + 0.06)
    out = min(out - body.half_shoulder, 0.7 * arm)
    ahead = 0.06 * stature
    drop = sqrt(arm**2 - out**2 - ahead**2)
    height = min(max(below + 0.10, ball, body.shoulder_height - drop), body.shoulder_height + drop)
    law = rest(side, body, prop)
    sign = 1 if side == "right" else -1
    place = (sign * (body.half_shoulder + out), ahead, height)
    assert law.hand.centre == pytest.approx(place, abs=1e-12)
    steep = min((height - 0.10) / below, 1.0)
    assert law.tether == pytest.approx((0.0, sqrt(1 - steep**2), -steep), abs=1e-7)
    assert (law.plane, law.turns, law.period) == ((-1.0, 0.0, 0.0), (), 1.0)


def test_these_props_try_every_case():
    """The arm hanging, lifted, and lifted as far as it goes with the prop ahead; out to 70 % of the arm."""
    body = Body(stature=1.3)
    arm = 0.93 * body.arm_length
    found = {name: rest("right", body, PROPS[name][0]) for name in PROPS}
    heights = {name: law.hand.centre[2] - body.shoulder_height for name, law in found.items()}
    outs = {name: law.hand.centre[0] - body.half_shoulder for name, law in found.items()}
    assert outs["thick"] == pytest.approx(0.7 * arm)
    assert 0.0 < outs["poi"] < outs["rather thick"] < 0.7 * arm
    assert heights["a number"] < 0 < heights["rope"]
    assert found["rope"].tether[1] > 0.1
    assert found["a number"].tether == pytest.approx((0, 0, -1), abs=1e-9)
