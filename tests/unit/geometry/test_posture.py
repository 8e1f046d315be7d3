"""Postures against rotations of scipy, and every bound of them against finite differences."""

from math import radians

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.posture import (
    USED_ANGLES,
    PosedBody,
    Posture,
    capsule_ends,
    from_trunk,
    in_column,
    levers,
    shoulders,
    to_trunk,
)
from tests.repeated import at_length

BODY = Body(stature=1.7)
HIPS, NECK = np.array([0, 0, BODY.hip_height]), np.array([0, 0, BODY.neck_height])
LOW, HIGH = (np.array(limits) for limits in zip(*USED_ANGLES.values(), strict=True))
TRUNK, SKULL = len(BODY.trunk), len(BODY.skull)


def some(n, seed=0):
    return np.random.default_rng(seed).uniform(LOW, HIGH, size=(n, 5))


def allowed(body, n, seed=0):
    """Postures that keep the column, many of them at its edge: a random one, taken as far as it goes."""
    angles = some(n, seed)
    low, high = np.zeros(n), np.ones(n)
    for _ in range(40):
        middle = (low + high) / 2
        inside = in_column(body, middle[:, None] * angles)
        low, high = np.where(inside, middle, low), np.where(inside, high, middle)
    return low[:, None] * angles


def by_scipy(points, angles, *, head):
    """The same by scipy's rotations, one posture at a time."""
    turn, lean, side, nod, tilt = angles
    trunk = Rotation.from_euler("ZXY", [turn, -lean, side])  # intrinsic: Rz·Rx·Ry
    if head:
        points = Rotation.from_euler("XY", [-nod, tilt]).apply(points - NECK) + NECK
    return trunk.apply(points - HIPS) + HIPS


def test_ends_are_those_of_scipy():
    for angles in some(40):
        lows, highs = capsule_ends(BODY, angles[None])
        for k, capsule in enumerate(BODY.capsules):
            ends = np.array([capsule.start, capsule.end])
            moved = ends
            if k < TRUNK + SKULL:
                moved = by_scipy(ends, angles, head=k >= TRUNK)
            assert_allclose([lows[k, 0], highs[k, 0]], moved, atol=1e-12)
        posed = PosedBody(BODY, Posture(**dict(zip(USED_ANGLES, angles, strict=True))))
        assert_allclose([c.start for c in posed.capsules], lows[:, 0], atol=1e-12)
        for side in SIDES:
            where = by_scipy(BODY.shoulder(side)[None], angles, head=False)
            assert_allclose(shoulders(BODY, angles[None], side), where, atol=1e-12)
            assert_allclose(posed.shoulder(side), where[0], atol=1e-12)


@pytest.mark.parametrize(
    ("name", "way", "of"),
    [
        ("turn", (-1, 0, 0), "right shoulder forward"),
        ("lean", (0, 1, 0), "neck"),
        ("side", (1, 0, 0), "neck"),
        ("nod", (0, 1, 0), "head"),
        ("tilt", (1, 0, 0), "head"),
    ],
)
def test_each_angle_goes_the_way_its_name_says(name, way, of):
    """Turn to the left, lean and nod forward, side and tilt to the right."""
    posed = PosedBody(BODY, Posture(**{name: radians(6)}))
    if name == "turn":
        assert posed.shoulder("right")[1] > 0 > posed.shoulder("left")[1]
        return
    moved = np.array(posed.capsules[TRUNK].end) - np.array(BODY.capsules[TRUNK].end)
    assert moved @ np.array(way) > 0.01, of
    still = np.array(posed.shoulder("right")) - BODY.shoulder("right")
    assert (np.linalg.norm(still) < 1e-12) == (name in {"nod", "tilt"})


def test_legs_stay():
    lows, highs = capsule_ends(BODY, some(5))
    for k, capsule in list(enumerate(BODY.capsules))[TRUNK + SKULL :]:
        assert_allclose(lows[k], np.tile(capsule.start, (5, 1)))
        assert_allclose(highs[k], np.tile(capsule.end, (5, 1)))


def test_the_trunks_frame_and_back():
    angles = some(30)
    vectors = np.random.default_rng(1).normal(size=(30, 3))
    assert_allclose(to_trunk(from_trunk(vectors, angles), angles), vectors, atol=1e-12)
    shoulder = shoulders(BODY, angles, "right")
    assert_allclose(
        from_trunk(np.tile(BODY.shoulder("right") - HIPS, (30, 1)), angles), shoulder - HIPS
    )


def test_the_mirror_image():
    angles = dict(zip(USED_ANGLES, some(1)[0], strict=True))
    own = PosedBody(BODY, Posture(**angles))
    other = PosedBody(BODY, Posture(**angles).mirrored())
    assert_allclose(own.shoulder("left") * (-1, 1, 1), other.shoulder("right"))
    assert_allclose(
        np.array(own.capsules[TRUNK].end) * (-1, 1, 1), other.capsules[TRUNK].end, atol=1e-12
    )


@pytest.mark.parametrize("name", list(USED_ANGLES))
@pytest.mark.parametrize("end", [0, 1])
def test_no_angle_beyond_what_is_asked(name, end):
    limit = USED_ANGLES[name][end]
    assert Posture(**{name: limit}).angles != (0,) * 5
    with pytest.raises(ValueError, match=name):
        Posture(**{name: limit * 1.02})
    with pytest.raises(ValueError, match=name):
        Posture(**{name: float("nan")})


@pytest.mark.parametrize("stature", [1.4, 1.7, 2.1])
def test_levers_bound_the_speed_of_every_end(stature):
    """Against central differences; each column and each row of it comes within a fifth of the truth."""
    body = Body(stature=stature)
    lever, angles, step = levers(body), some(4000), 1e-6
    best = np.zeros_like(lever)
    for k in range(5):
        shift = np.zeros(5)
        shift[k] = step
        column = 0 if k < 3 else 1
        for ends in zip(
            capsule_ends(body, angles + shift), capsule_ends(body, angles - shift), strict=True
        ):
            speed = np.linalg.norm(ends[0] - ends[1], axis=-1) / (2 * step)
            assert np.all(speed <= lever[:, column, None] + 1e-6)
            best[:, column] = np.maximum(best[:, column], speed.max(axis=1))
    assert np.all(best >= 0.8 * lever)


def test_levers_add_where_all_angles_go_together():
    """Trunk and head at once move the top of the head faster than either lever alone allows."""
    lever, step = levers(BODY), 1e-6
    rates = np.array([0.0, 1.0, 0.0, 1.0, 0.0])
    ends = [capsule_ends(BODY, (sign * step * rates)[None])[1] for sign in (1, -1)]
    speed = np.linalg.norm(ends[0] - ends[1], axis=-1)[:, 0] / (2 * step)
    assert np.all(speed <= lever.sum(axis=1) + 1e-6)
    assert speed[TRUNK] > lever[TRUNK].max() * 1.1


@pytest.mark.parametrize("stature", [1.4, 1.7, 2.1])
@pytest.mark.parametrize("seed", [0, *at_length(1, 2)])
def test_what_lies_between_two_postures_keeps_the_column(stature, seed):
    """Along straight lines between postures at the edge of the column, as a passage goes."""
    body = Body(stature=stature)
    one, other = allowed(body, 3000, seed), allowed(body, 3000, seed + 100)
    count = TRUNK + SKULL
    radii = np.array([c.radius for c in body.capsules[:count]])[:, None]
    for share in np.linspace(0, 1, 9):
        ends = capsule_ends(body, one + share * (other - one))
        far = [np.hypot(end[:count, :, 0], end[:count, :, 1]) + radii for end in ends]
        top = [(end[:count, :, 2] + radii).max() for end in ends]
        assert np.max(far) <= body.half_breadth
        assert max(top) <= body.stature + 1e-9


@given(st.lists(st.floats(-1, 1), min_size=10, max_size=10), st.floats(0, 1))
def test_any_two_postures_allowed_keep_the_column_between(numbers, share):
    pair = np.array(numbers).reshape(2, 5) * np.minimum(-LOW, HIGH)
    if not np.all(in_column(BODY, pair)):
        pair *= 0.4
    if not np.all(in_column(BODY, pair)):
        return
    ends = capsule_ends(BODY, (pair[0] + share * (pair[1] - pair[0]))[None])
    count = TRUNK + SKULL
    radii = np.array([c.radius for c in BODY.capsules[:count]])
    far = [np.hypot(end[:count, 0, 0], end[:count, 0, 1]) + radii for end in ends]
    assert np.max(far) <= BODY.half_breadth


def test_leaning_and_tilting_too_far_leaves_the_column():
    assert in_column(BODY, np.zeros((1, 5)))[0]
    far = Posture(lean=radians(10), nod=radians(15), side=radians(8), tilt=radians(20))
    assert not in_column(BODY, np.array([far.angles]))[0]


def turned(posture):
    """The trunk's rotation: turn to the left about z, lean forward about −x, side bend to the right about y."""
    z = Rotation.from_rotvec([0, 0, posture.turn])
    x = Rotation.from_rotvec([-posture.lean, 0, 0])
    return z * x * Rotation.from_rotvec([0, posture.side, 0])


def nodded(posture):
    nod, tilt = [-posture.nod, 0, 0], [0, posture.tilt, 0]
    return Rotation.from_rotvec(nod) * Rotation.from_rotvec(tilt)


BENT = Posture(turn=0.31, lean=0.12, side=-0.09, nod=0.17, tilt=-0.22)


def test_every_end_lies_where_scipy_s_rotations_take_it():
    body = Body(stature=1.7)
    hips, neck = np.array([0, 0, body.hip_height]), np.array([0, 0, body.neck_height])
    posed = PosedBody(body, BENT)
    for before, after in zip(body.capsules, posed.capsules, strict=True):
        for which in ("start", "end"):
            point = np.array(getattr(before, which))
            if before.name in ("head", "neck"):
                point = nodded(BENT).apply(point - neck) + neck
            if before.name != "leg":
                point = turned(BENT).apply(point - hips) + hips
            assert_allclose(getattr(after, which), point, atol=1e-12)
        assert after.radius == before.radius
    for side in ("left", "right"):
        hangs = turned(BENT).apply(body.shoulder(side) - hips) + hips
        assert_allclose(posed.shoulder(side), hangs, atol=1e-12)


def test_vectors_go_into_the_trunk_s_frame_and_back():
    draw = np.random.default_rng(4)
    vectors, angles = draw.normal(size=(5, 3)), np.array([BENT.angles] * 5)
    assert_allclose(from_trunk(vectors, angles), turned(BENT).apply(vectors), atol=1e-12)
    assert_allclose(to_trunk(from_trunk(vectors, angles), angles), vectors, atol=1e-12)


def test_levers_are_the_farthest_ends_from_hips_and_neck():
    """Tight for what turns about its farthest axis: the yoke, the chest and the head by themselves."""
    body = Body(stature=1.7)
    found = levers(body)
    hips, neck = np.array([0, 0, body.hip_height]), np.array([0, 0, body.neck_height])
    for row, capsule in zip(found, body.capsules, strict=True):
        ends = [np.array(capsule.start), np.array(capsule.end)]
        from_hips = max(np.linalg.norm(end - hips) for end in ends)
        from_neck = max(np.linalg.norm(end - neck) for end in ends)
        if capsule.name == "trunk":
            assert_allclose(row, [from_hips, 0])
        elif capsule.name == "leg":
            assert_allclose(row, [0, 0])
        else:
            assert_allclose(row, [neck[2] - hips[2] + from_neck, from_neck])


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [("turn", -30, 30), ("lean", -10, 10), ("side", -8, 8), ("nod", -15, 15), ("tilt", -20, 20)],
)
def test_angles_are_asked_for_up_to_their_limits(name, low, high):
    """What a dancer is asked for at most [°]; a design choice well within the survey of joints."""
    for value in (low, high):
        assert getattr(Posture(**{name: np.radians(value)}), name) == np.radians(value)
    for value in (low - 0.01, high + 0.01, float("nan")):
        with pytest.raises(ValueError, match=f"{name} must be {low}° to {high}°"):
            Posture(**{name: np.radians(value)})


def test_within_the_column_is_with_four_millimetres_to_spare():
    """A lean that takes the head to just there, by the sine of the angle from hips to crown."""
    body = Body(stature=1.7)
    head = next(capsule for capsule in body.skull if capsule.name == "head")
    up = head.end[2] - body.hip_height
    edge = np.arcsin((body.girth - 0.004 - head.radius) / up)
    for lean, inside in ((edge - 1e-6, True), (edge + 1e-6, False), (-edge + 1e-6, True)):
        assert in_column(body, np.array([[0.0, lean, 0, 0, 0]]))[0] == inside


def test_a_mirrored_posture_bends_the_other_way():
    assert BENT.mirrored() == Posture(turn=-0.31, lean=0.12, side=0.09, nod=0.17, tilt=0.22)
    assert not BENT.upright
    assert not Posture(tilt=0.01).upright
    assert BENT.angles == (0.31, 0.12, -0.09, 0.17, -0.22)
