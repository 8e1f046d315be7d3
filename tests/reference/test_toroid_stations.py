"""Toroids against the station table and the parity rule of the trade, and against scipy's rotations.

Sources: the station table (N = 4, pro-bend, wall plane) and that odd builds come home the wrong way
round are common practice; scipy.spatial.transform.Rotation is the independent reference for turns.
"""

from itertools import pairwise

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.build_steps import build_steps
from sequencer.motion.patterns.toroid import toroid
from sequencer.motion.trajectories.joining import ends

BODY = Body(stature=1.7)
TABLE = [
    (-1, 0, 0),  # wheel forward, hand at the bottom
    (0, -1, 0),  # wall anticlockwise
    (0, 0, 1),  # floor anticlockwise from above, hand at the right
    (0, -1, 0),
    (1, 0, 0),  # wheel backward, hand at the top
    (0, -1, 0),
    (0, 0, -1),  # floor clockwise from above, hand at the left
    (0, -1, 0),
    (-1, 0, 0),
]


def built(lobes, bend, start=1, **more):
    return toroid(
        lobes=lobes, bend=bend, start=start, hand_radius=0.3, beats=float(lobes), body=BODY, **more
    )


def test_station_table():
    """n at every half lobe of a four-lobe pro-bend from the bottom, starting sense −1."""
    motion = built(4, "pro", -1).at(np.arange(9) * 0.5)

    assert_allclose(motion.plane, TABLE, atol=1e-12)
    hand = motion.hand - motion.hand[:-1].mean(axis=0)
    assert_allclose(
        hand[::2] / 0.3, [(0, 0, -1), (1, 0, 0), (0, 0, 1), (-1, 0, 0), (0, 0, -1)], atol=1e-12
    )


def test_station_words():
    words = [s.performer for s in build_steps("pro-bend-4", {"start": -1})]
    assert words == [
        "wheel plane, forward",
        "wall plane, anticlockwise",
        "floor plane, anticlockwise from above",
        "wall plane, anticlockwise",
        "wheel plane, backward",
        "wall plane, anticlockwise",
        "floor plane, clockwise from above",
        "wall plane, anticlockwise",
        "wheel plane, forward",
    ]


@pytest.mark.parametrize(
    ("bend", "lobes"),
    [
        (bend, n)
        for bend in ("iso", "pro", "anti")
        for n in range(1, 13)
        if (bend, n) != ("anti", 1)
    ],
)
@pytest.mark.parametrize("start", [1, -1])
def test_parity(lobes, bend, start):
    """Odd pro- and anti-bends come home reversed at an in, by 127° between, and whole at an out."""
    law = built(lobes, bend, start)
    quarter = np.array([0.0, 0.25, 0.5])  # in, a quarter lobe in, out; one beat a lobe
    first, second = law.at(quarter), law.at(quarter + lobes)
    turned = np.degrees(np.arccos(np.clip(np.sum(first.plane * second.plane, axis=-1), -1, 1)))

    assert_allclose(first.tether[[0, 2]], second.tether[[0, 2]], atol=1e-9)
    odd = bend != "iso" and lobes % 2 == 1
    # 2·(π/2)·cos(π/4) = 127.28°
    assert_allclose(turned, [180, 127.28, 0] if odd else [0, 0, 0], atol=0.01)
    assert law.period == (2 if odd else 1) * lobes
    whole = law.at(quarter + law.period)
    assert_allclose(whole.tether, first.tether, atol=1e-9)
    assert_allclose(whole.plane, first.plane, atol=1e-9)


@pytest.mark.parametrize("lobes", [1, 3, 5, 7])
def test_second_cycle_is_the_first_with_the_other_sense(lobes):
    beats = np.linspace(0, lobes, 97)
    second, other = built(lobes, "pro").at(beats + lobes), built(lobes, "pro", -1).at(beats)

    assert_allclose(second.tether, other.tether, atol=1e-9)
    assert_allclose(second.plane, other.plane, atol=1e-9)


@pytest.mark.parametrize(("lobes", "axis"), [(1, 90.0), (3, 143.13), (5, 157.38), (7, 163.74)])
def test_turning_axis_of_an_odd_build_is_not_quite_reversed(lobes, axis):
    """The hand's own turn tilts d × d' by atan(1/N) off n, so it turns by 180° − 2·atan(1/N) only."""
    law = built(lobes, "pro")
    first, second = (law.at(np.array(t)).turning_axis for t in (0.0, float(lobes)))
    angle = np.degrees(np.arccos(first @ second / np.linalg.norm(first) / np.linalg.norm(second)))

    assert_allclose(angle, axis, atol=0.01)
    assert_allclose(angle, 180 - 2 * np.degrees(np.arctan(1 / lobes)), atol=1e-6)
    assert ends(law, float(lobes)) == "reversed"
    assert ends(law, 2.0 * lobes) == "home"
    assert ends(built(lobes, "pro", begin="out"), float(lobes)) == "home"


@pytest.mark.parametrize(
    ("bend", "turns"), [("pro", [2, 3, 4, 5, 6]), ("anti", [None, -1, -2, -3, -4])]
)
def test_winding_in_the_room(bend, turns):
    """Seen along the axis a pro-bend winds 1 + N turns a cycle, an anti-bend 1 − N."""
    for lobes, expected in enumerate(turns, start=1):
        if expected is None:
            continue
        law = built(lobes, bend)
        beats = np.linspace(0, law.period, 40_001)
        flat = law.at(beats).tether[:, [0, 2]]  # wall plane, anticlockwise as the performer sees it
        angle = np.unwrap(np.arctan2(flat[:, 1], flat[:, 0]))
        cycles = law.period / lobes
        assert round((angle[-1] - angle[0]) / (2 * np.pi) / cycles, 6) == expected


@pytest.mark.parametrize("lobes", [2, 3, 4, 6])
@pytest.mark.parametrize("bend", ["pro", "anti"])
def test_lobes_lie_before_and_behind_in_turn(lobes, bend):
    """From in to in the head is on one side of the hand's plane, touching it at the outs."""
    law = built(lobes, bend)
    own = np.linspace(0.02, 0.98, 49)
    sides = []
    for lobe in range(int(law.period)):
        across = law.at(lobe + own).tether[:, 1]
        away = np.abs(own - 0.5) > 0.05
        assert abs(np.sum(np.sign(across[away]))) == away.sum()
        sides.append(np.sign(across[away][0]))
    assert all(a == -b for a, b in pairwise(sides))


def test_scipy_rotations_give_the_same_tether():
    """d = R(e_a, u)·R(e_r, β)·R(e_θ, φ)·e_r, composed by an independent library."""
    lobes, u = 5, np.linspace(0, 4 * np.pi, 201)
    law = built(lobes, "anti", -1)
    e_r, e_t, e_a = np.array([0, 0, -1.0]), np.array([1.0, 0, 0]), np.array([0, -1.0, 0])
    beta = -(np.pi / 2) * (
        1 + np.cos(lobes * u / 2)
    )  # of an anti-bend that starts against the hand
    turn = (
        Rotation.from_rotvec(u[:, None] * e_a)
        * Rotation.from_rotvec(beta[:, None] * e_r)
        * Rotation.from_rotvec((np.pi + lobes * u)[:, None] * e_t)
    )
    motion = law.at(u / (2 * np.pi) * lobes)

    assert_allclose(motion.tether, turn.apply(e_r), atol=1e-12)
    assert_allclose(motion.plane, turn.apply(e_t), atol=1e-12)


def test_plane_against_turning_axis():
    """They differ by atan(1/N) at an in and by nothing at a pro- or anti-bend's out."""
    for lobes in range(2, 9):
        for bend in ("pro", "anti"):
            motion = built(lobes, bend).at(np.array([0.0, 0.5]))
            axis = motion.turning_axis
            axis = axis / np.linalg.norm(axis, axis=-1, keepdims=True)
            angle = np.arccos(np.clip(np.sum(axis * motion.plane, axis=-1), -1, 1))
            assert_allclose(angle[0], np.arctan(1 / lobes), atol=1e-6)
            # at the out n lies along the hand's axis, with which or against which the prop turns
            assert min(angle[1], np.pi - angle[1]) < 1e-6
