"""Room about the body, against points tried one by one."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.posture import PosedBody, Posture, from_trunk
from sequencer.motion.flown.body_space import BodySpace
from tests.unit.motion.flown.flights import BODY, POI

TURNED = Posture(turn=np.radians(20), lean=np.radians(8))
TETHER = 0.01  # [m] half the thickness of a chain; common practice
LONG = 0.45


def space(side="right", posture=TURNED, clearance=0.03):
    return BodySpace(body=BODY, posture=posture, side=side, prop=POI, clearance=clearance)


def states(count=60, seed=4):
    """Hands about the trunk, heads a tether away."""
    draw = np.random.default_rng(seed)
    hand = draw.uniform([-0.7, -0.6, 0.2], [0.7, 0.6, 1.9], (count, 3))
    way = draw.normal(size=(count, 3))
    return hand, hand + LONG * way / np.linalg.norm(way, axis=1)[:, None]


def distance_to(point, low, high):
    """Of points from segments, by trying 400 places on each."""
    places = low + np.linspace(0, 1, 400)[:, None] * (high - low)
    return np.linalg.norm(point[:, None] - places[None], axis=-1).min(axis=1)


def tried(hand, head):
    """Distance of tether and head from every capsule, by points on both."""
    shares = np.linspace(0, 1, 60)[:, None]
    out = []
    for a, b in zip(hand, head, strict=True):
        tether = a + shares * (b - a)
        for part in PosedBody(BODY, TURNED).capsules:
            low, high = np.array(part.start), np.array(part.end)
            chain = distance_to(tether, low, high).min() - TETHER
            ball = distance_to(b[None], low, high)[0] - POI.wick_radius
            out.append(min(chain, ball) - part.radius)
    return np.array(out).reshape(len(hand), -1).min(axis=1)


def test_gaps_are_those_of_points_tried():
    hand, head = states(12)
    found, wanted = space().gaps(hand, head), tried(hand, head)
    assert found.min() < 0 < found.max()
    # points 8 mm apart on the tether and 2 to 4 mm on the body: never below, and near wherever the two do not meet
    assert np.all(found <= wanted + 1e-9)
    apart = found > 0.02
    assert_allclose(found[apart], wanted[apart], atol=2e-3)


@pytest.mark.parametrize("side", ["left", "right"])
def test_reach_is_that_of_places_of_the_shoulder_tried(side):
    hand = states(10)[0] * 1.3
    low, high = (np.array(each) for each in BODY.shoulder_give)
    if side == "left":
        low[0], high[0] = -high[0], -low[0]
    box = np.stack(np.meshgrid(*np.linspace(low, high, 15).T, indexing="ij"), axis=-1)
    angles = np.broadcast_to(TURNED.angles, (box[..., 0].size, 5))
    places = PosedBody(BODY, TURNED).shoulder(side) + from_trunk(box.reshape(-1, 3), angles)
    wanted = BODY.arm_length - np.linalg.norm(hand[:, None] - places, axis=-1).min(axis=1)
    found = space(side).spare_reach(hand)
    assert np.all(found >= wanted - 1e-9)
    assert_allclose(found, wanted, atol=0.01)


def depths(hand, head, room):
    """Every contact of one state, by kind: the order in which they are found."""
    touch = room.touching(hand[None], head[None])
    return touch.depth, touch


def test_contact_is_what_gaps_and_reach_say():
    hand, head = states(40)
    room = space()
    touch = room.touching(hand, head)
    free = (
        (room.gaps(hand, head) > 0.03)
        & (head[:, 2] > 0.03 + POI.wick_radius)
        & (room.spare_reach(hand) > 0.002)
    )
    touched = np.isin(np.arange(40), touch.point)
    assert 5 < free.sum() < 35
    assert np.array_equal(touched, ~free)
    assert_allclose(np.linalg.norm(touch.normal, axis=1), 1.0)
    far = np.array([[1.5, 0.2, 1.2]])
    (depth,) = room.touching(far, far + np.array([0, 0, LONG])).depth
    assert depth == pytest.approx(0.002 - room.spare_reach(far)[0])
    low = np.array([[0.6, 0.3, 0.5]])
    floor = replace(room, posture=Posture()).touching(low, low - [0, 0, LONG])
    (depth,) = floor.depth[floor.normal[:, 2] > 0.999]
    assert depth == pytest.approx(0.03 + POI.wick_radius - 0.05)


def test_normals_lead_out_of_contact():
    """Each depth falls as its place moves along the normal: differences of depth by hand and by head."""
    room, step = space(), 1e-6
    looked = 0
    for hand, head in zip(*states(16), strict=True):
        depth, touch = depths(hand, head, room)
        for k in range(len(depth)):
            for axis in range(3):
                push = step * np.eye(3)[axis]
                for share, moved in (
                    (1 - touch.share[k], (hand + push, head)),
                    (touch.share[k], (hand, head + push)),
                ):
                    now = depths(*moved, room)[0]
                    if len(now) != len(depth):
                        continue
                    slope = (now[k] - depth[k]) / step
                    assert slope == pytest.approx(-share * touch.normal[k, axis], abs=2e-4)
                    looked += 1
    assert looked > 80
