"""What the families refuse when they are called from Python, and laws of other packages."""

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.laws.phases import Steps, Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.laws.transforms import Mirrored, Retimed
from sequencer.motion.patterns.library import law_for
from sequencer.motion.patterns.paths import body_turn, swing, travelling
from sequencer.motion.patterns.placing import check_radius
from sequencer.motion.patterns.planar import orbit
from sequencer.motion.patterns.planes import frame_of
from sequencer.motion.patterns.samples import pattern_rows
from sequencer.motion.patterns.toroid import toroid
from sequencer.motion.patterns.weaves import corkscrew, fountain, weave, windmill
from sequencer.motion.props.reach import farthest_reach
from sequencer.motion.props.tension import hand_work, lowest_tempo

BODY = Body(stature=1.7)
WHO = {"beats": 4.0, "side": "right", "body": BODY}


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: frame_of("roof", "clockwise", 0.0), "plane must be one of wall, wheel, floor"),
        (lambda: frame_of("wall", "left", 0.0), "turn must be one of"),
        (lambda: orbit(ratio=30, hand_radius=0.2, **WHO), "ratio must lie between -24 and 24"),
        (lambda: toroid(lobes=4, bend="up", hand_radius=0.2, **WHO), "bend must be one of"),
        (lambda: toroid(lobes=4.5, bend="pro", hand_radius=0.2, **WHO), "lobes must be a whole number"),
        (lambda: toroid(lobes=4, bend="pro", hand_radius=0.2, begin="mid", **WHO), "begin must be in or out"),
        (lambda: toroid(lobes=4, bend="pro", hand_radius=0.0, **WHO), "a toroid needs a hand circle"),
        (lambda: toroid(lobes=4, bend="pro", start=3, hand_radius=0.2, **WHO), "start must be 1 or -1"),
        (lambda: weave(loops=4, **WHO), "a weave has 2 or 3 loops"),
        (lambda: weave(way="up", **WHO), "way must be forward or backward"),
        (lambda: weave(place="under", **WHO), "place must be one of front, behind, overhead"),
        (lambda: windmill(turn="left", **WHO), "turn must be one of anticlockwise, clockwise"),
        (lambda: fountain(way="up", **WHO), "way must be forward or backward"),
        (lambda: corkscrew(turn="left", **WHO), "turn must be one of anticlockwise, clockwise"),
        (lambda: corkscrew(loops=1, **WHO), "loops must be a whole number from 2 to 16"),
        (lambda: swing(amplitude=1.0, plane="floor", **WHO), "cannot swing in the floor plane"),
        (lambda: swing(amplitude=4.0, **WHO), "amplitude must be 1 to 180 degrees"),
        (lambda: travelling(shape="star", size=0.2, loops=4, **WHO), "shape must be one of line, box"),
        (lambda: travelling(shape="box", size=0.2, loops=0, **WHO), "loops must be a whole number"),
        (lambda: travelling(shape="box", size=0.0, loops=4, **WHO), "size must be positive"),
        (lambda: body_turn(way="up", **WHO), "way must be forward or backward"),
        (lambda: body_turn(loops=1, **WHO), "loops must be a whole number from 2 to 32"),
        (lambda: check_radius(-0.1, BODY), "hand_radius must be 0 or more"),
        (lambda: Turn((1.0, 1.0, 0.0), Wave()), "axis must have length 1"),
        (lambda: Steps((0.0, 0.0), (1.0, 2.0)), "knots must increase"),
        (lambda: Steps((0.0,), (1.0,)), "as many values as knots"),
        (lambda: Retimed(orbit(ratio=1, hand_radius=0.2, **WHO), 0.0, 0.0), "pace must be positive"),
        (lambda: pattern_rows("orbit", {}, beats=0), "beats must be positive"),
        (lambda: pattern_rows("orbit", {}, per_beat=0), "per_beat must be at least 1"),
        (lambda: pattern_rows("orbit", {"ratio": "x"}), "ratio must be a number"),
    ],
)  # fmt: skip
def test_refusals(call, message):
    with pytest.raises(ValueError, match=message):
        call()


def test_a_tether_lies_in_its_plane():
    with pytest.raises(ValueError, match="must be a unit vector in its plane"):
        ComposedLaw(
            hand=HandPath((0, 0, 1)), tether=(1, 0, 0), plane=(1, 0, 0), turns=(), period=1.0
        )


def test_a_ratio_that_never_closes_has_no_period():
    law = orbit(ratio=2**0.5, hand_radius=0.2, **WHO)
    assert law.period == np.inf
    assert law.bounds().turn_rate == pytest.approx(2**0.5 * np.pi / 2)
    for call in (
        lambda: farthest_reach(law, side="right", body=BODY),
        lambda: lowest_tempo(law, length=0.5),
        lambda: hand_work(law, length=0.5, mass=0.2, tempo=100),
    ):
        with pytest.raises(ValueError, match="period"):
            call()
    assert lowest_tempo(law, length=0.5, end=8.0).lowest < np.inf


def test_mirrors_and_paces_carry_their_bounds():
    law = law_for("pro-bend-3", {}, side="right", body=BODY)
    assert Mirrored(law).bounds() == law.bounds()
    assert Mirrored(law).period == law.period
    twice = Retimed(law, 0.0, 2.0)
    assert twice.period == law.period / 2
    assert twice.bounds().turn_rate == 2 * law.bounds().turn_rate
    assert twice.bounds().turn_acceleration == 4 * law.bounds().turn_acceleration
    assert twice.bounds().hand_jerk == 8 * law.bounds().hand_jerk
    assert Retimed(law, 1.0).bounds() == law.bounds()
