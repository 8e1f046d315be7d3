"""Arms against ikpy, a general library for the kinematics of robots: a shoulder that slides in its box and
turns about three axes, an elbow that bends, a hand. It shares no code and no closed form with ours."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture, beyond_upright
from sequencer.motion.performers.arms import UPPER, elbow, given_shoulder, shoulder_gives

ikpy = pytest.importorskip("ikpy.chain")
link = pytest.importorskip("ikpy.link")

BODY = Body(stature=1.7)
CARRIAGE = Carriage(
    body=BODY,
    held=(HeldPosture(0.0, 1.0, Posture(turn=0.4, lean=-0.1, side=0.03)),),
)
MOST = np.pi


def joint(name, axis, bounds, *, sliding=False, at=(0, 0, 0)):
    own = {"translation": axis} if sliding else {"rotation": axis}
    return link.URDFLink(
        name=name, origin_translation=list(at), origin_orientation=[0, 0, 0], bounds=bounds,
        joint_type="prismatic" if sliding else "revolute", **own,
    )  # fmt: skip


def chain(root, *, sliding):
    """The right arm from where it hangs, straight ahead at zero; with or without the shoulder's box."""
    upper = UPPER * BODY.arm_length
    low, high = BODY.shoulder_give
    slides = [
        joint(f"slide {k}", axis, (low[k], high[k]), sliding=True)
        for k, axis in enumerate(([1, 0, 0], [0, 1, 0], [0, 0, 1]))
    ]
    turns = [
        joint(f"turn {k}", axis, (-MOST, MOST))
        for k, axis in enumerate(([0, 0, 1], [1, 0, 0], [0, 1, 0]))
    ]
    bend = joint("elbow", [1, 0, 0], (0.0, MOST), at=(0, upper, 0))
    hand = link.URDFLink(
        name="hand", origin_translation=[0, BODY.arm_length - upper, 0],
        origin_orientation=[0, 0, 0], joint_type="fixed",
    )  # fmt: skip
    links = [link.OriginLink(), *(slides if sliding else []), *turns, bend, hand]
    moves = [False, *[True] * (len(links) - 2), False]
    own = ikpy.Chain(links, active_links_mask=moves)
    return own, np.asarray(root)


def solved(own, root, hand, tries=4):
    """Where the joints end up, nearest to the hand over some starts: frames of all links."""
    draw = np.random.default_rng(0)
    best, least = None, np.inf
    for _ in range(tries):
        start = np.zeros(len(own.links))
        for k, each in enumerate(own.links):
            if own.active_links_mask[k]:
                low, high = each.bounds
                start[k] = draw.uniform(0.6 * low + 0.4 * high, 0.4 * low + 0.6 * high)
        joints = own.inverse_kinematics(hand - root, initial_position=start)
        frames = own.forward_kinematics(joints, full_kinematics=True)
        off = np.linalg.norm(frames[-1][:3, 3] + root - hand)
        if off < least:
            best, least = frames, off
    return best, least


def hands(n, low, high, seed):
    draw = np.random.default_rng(seed)
    way = draw.normal(size=(n, 3))
    way /= np.linalg.norm(way, axis=1, keepdims=True)
    return BODY.shoulder("right") + draw.uniform(low, high, (n, 1)) * BODY.arm_length * way


def test_the_elbow_bends_as_the_librarys():
    """Hands within reach: the same distance of the elbow from shoulder and hand, so the same bend."""
    root = BODY.shoulder("right")
    own, _ = chain(root, sliding=False)
    for hand in hands(8, 0.3, 0.97, 1):
        frames, off = solved(own, root, hand)
        assert off < 1e-4
        there = frames[-2][:3, 3] + root
        mine = elbow(BODY, root[None], hand[None], "right")[0]
        for place in (root, hand):
            assert_allclose(np.linalg.norm(mine - place), np.linalg.norm(there - place), atol=2e-4)


@pytest.mark.parametrize("seed", [2, 3])
def test_what_no_shoulder_reaches_is_missed_by_as_much(seed):
    """About the end of the arm: the library's hand stays off by what the box and the straight arm leave."""
    root = BODY.shoulder("right")
    own, _ = chain(root, sliding=True)
    near = 0
    for hand in hands(8, 1.0, 1.12, seed):
        _, off = solved(own, root, hand)
        missing = float(beyond_upright(BODY, hand, "right")) - BODY.arm_length
        assert_allclose(off, max(missing, 0.0), atol=1e-3)
        near += missing < 0
    assert 0 < near < 8


def test_a_leaning_body_reaches_the_same_in_its_own_frame():
    """Hands carried with the trunk: the same give, and an arm that ends in the hand."""
    from scipy.spatial.transform import Rotation

    turn, lean, side = CARRIAGE.held[0].posture.angles[:3]
    trunk = Rotation.from_euler("ZXY", [turn, -lean, side])
    hips = np.array([0, 0, BODY.hip_height])
    own = hands(30, 0.9, 1.2, 4)
    moved = trunk.apply(own - hips) + hips
    beats, upright = np.full(30, 0.5), Carriage(body=BODY)
    assert_allclose(
        shoulder_gives(CARRIAGE, beats, moved, "right"),
        shoulder_gives(upright, beats, own, "right"),
        atol=1e-9,
    )
    where = given_shoulder(upright, beats, own, "right")
    assert_allclose(
        given_shoulder(CARRIAGE, beats, moved, "right"), trunk.apply(where - hips) + hips, atol=1e-9
    )
