"""Orbits against the formulas of the module's head; which ratios close, by counting fractions."""

from fractions import Fraction

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.placing import circle_centre
from sequencer.motion.patterns.planar import check_beats, closing_cycles, orbit, petals

BODY = Body(stature=1.7)
BEATS = np.array([0.0, 0.31, 0.9, 1.47, 2.2, 3.3, 4.9])
X, Y, Z = np.eye(3)
RIGHT_UP = {"wall": (X, Z), "wheel": (Y, Z), "floor": (X, Y)}
OFFSET = (0.07, 0.11, -0.05)


@pytest.mark.parametrize("yaw", [0.0, 0.6])
@pytest.mark.parametrize(
    ("ratio", "radius", "plane", "turn", "side", "period"),
    [
        (-3.0, 0.2, "wall", "anticlockwise", "right", 3.5),
        (1.5, 0.3, "wheel", "clockwise", "left", 7.0),
        (7 / 3, 0.1, "floor", "anticlockwise", "left", 10.5),
        (-3.0, 0.0, "wall", "clockwise", "right", 3.5),
        (0.0, 0.2, "wall", "clockwise", "right", 3.5),
        (2**0.5, 0.2, "wall", "anticlockwise", "right", np.inf),
    ],
)
def test_an_orbit_is_as_the_formula_says(ratio, radius, plane, turn, side, period, yaw):
    law = orbit(
        ratio=ratio, hand_radius=radius, plane=plane, turn=turn, start=0.8, lag=0.3, yaw=yaw,
        beats=3.5, side=side, body=BODY, offset=OFFSET,
    )  # fmt: skip
    right, up = (Rotation.from_euler("z", yaw).apply(v) for v in RIGHT_UP[plane])
    sense = 1.0 if turn == "anticlockwise" else -1.0
    k = 1.0 if radius == 0 else ratio  # a static spin turns once in its beats
    gone = 2 * np.pi * BEATS / 3.5

    def at(angle):
        return np.cos(angle)[:, None] * right + np.sin(angle)[:, None] * up

    seen = law.at(BEATS)
    centre = circle_centre(plane, side, BODY, radius, OFFSET)
    assert_allclose(seen.hand, centre + radius * at(0.8 + sense * gone), atol=1e-12)
    assert_allclose(seen.tether, at(0.8 + sense * (0.3 + k * gone)), atol=1e-12)
    axis = sense * np.cross(right, up) * (-1.0 if k < 0 else 1.0)
    assert_allclose(seen.plane, [axis] * len(BEATS), atol=1e-12)
    assert law.period == period
    assert len(law.hand.arms) == (radius > 0)


def test_an_orbit_left_to_itself():
    given = {"ratio": 2.0, "hand_radius": 0.2, "beats": 4.0, "body": BODY}
    told = {
        "plane": "wall", "turn": "anticlockwise", "start": -np.pi / 2, "lag": 0.0, "yaw": 0.0,
        "side": "right", "offset": (0.0, 0.0, 0.0),
    }  # fmt: skip
    assert orbit(**given) == orbit(**given, **told)


@pytest.mark.parametrize("ratio", [24.0, -24.0])
def test_the_greatest_ratios(ratio):
    assert orbit(ratio=ratio, hand_radius=0.2, beats=4.0, body=BODY).period == 4.0
    for beyond in (ratio * 1.001, ratio * np.inf, np.nan):
        with pytest.raises(ValueError, match="ratio must lie between -24 and 24"):
            orbit(ratio=beyond, hand_radius=0.2, beats=4.0, body=BODY)


def test_ratios_close_after_their_denominator_up_to_24():
    """Every fraction of up to 26 cycles, in lowest terms; 25 and 26 count as not closing."""
    for below in range(1, 27):
        for above in (1, 2 * below - 1):
            exact = Fraction(above, below)
            expected = exact.denominator if exact.denominator <= 24 else None
            assert closing_cycles(float(exact)) == expected
            assert closing_cycles(-float(exact)) == expected
    assert closing_cycles(0.5 + 9e-10) == 2
    assert closing_cycles(0.5 + 1.1e-9) is None
    assert closing_cycles(0.5 - 1.1e-9) is None
    assert closing_cycles(1e-9) is None  # a billionth off nought is too much, anything less is not
    assert closing_cycles(0.99e-9) == 1


def test_petals():
    """Antispin 1 − k, inspin k − 1: any table of flowers; none from k = 0 to 1."""
    pairs = ((-3.0, 4.0), (-0.5, 1.5), (0.0, 0.0), (0.5, 0.0), (1.0, 0.0), (1.5, 0.5), (4.0, 3.0))
    assert [petals(ratio) for ratio, _ in pairs] == [count for _, count in pairs]


@pytest.mark.parametrize("beats", [0.0, -1.0, np.inf, np.nan])
def test_a_cycle_takes_time(beats):
    with pytest.raises(ValueError, match="beats of a cycle must be positive"):
        check_beats(beats)
    with pytest.raises(ValueError, match="beats of a cycle must be positive"):
        orbit(ratio=1.0, hand_radius=0.2, beats=beats, body=BODY)
    assert check_beats(1e-9) is None
