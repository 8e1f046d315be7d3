"""Points, radii and bounds of a dancer to the last digit, with a trajectory whose every number is known.

Points are turned by complex numbers; bounds are worked out piece by piece from the formula of a turning
frame; sizes of bodies are those of `Body`, which tests of its own hold.
"""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop

BODY = Body(stature=1.7)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.04, flame_reach=0.3)
STAFF = Prop(kind="staff", length=0.6, behind=0.8, mass=0.9, wick_radius=0.05, flame_reach=0.2)
CLUB = Prop(kind="club", length=0.45, behind=0.1, mass=0.4, wick_radius=0.06, flame_reach=0.1)
HOOP = Prop(kind="hoop", length=0.8, mass=0.5, wicks=3, wick_radius=0.03, flame_reach=0.25)
FLOOR = WalkPath(
    (0.5, 2.0),
    0.4,
    (
        Move(start=1.0, end=3.0, place=(1.5, 3.0), facing=2.0, through=((1.0, 2.2),)),
        Move(start=5.0, end=7.0, place=(0.0, 2.5), facing=-1.0),
    ),
)


class Drawn:
    """A trajectory of drawn waves; its bounds are just numbers, one set for each piece."""

    def __init__(self, seed, cuts=(0.0, 2.0, 4.5, 9.0)):
        draw = np.random.default_rng(seed)
        self.waves = draw.uniform(-1, 1, (3, 3, 3))
        self.cuts = cuts
        self.bounds = [
            Bounds(
                hand_speed=a, hand_acceleration=b, turn_rate=c, turn_acceleration=d, hand_reach=e
            )
            for a, b, c, d, e in draw.uniform(0.5, 2.0, (len(cuts) - 1, 5)).tolist()
        ]

    def at(self, beats):
        t = np.asarray(beats, float)[..., None]

        def curve(k, shift=0.0):
            a, b, c = self.waves[k]
            return a + b * np.sin(2 * t + c + shift), 2 * b * np.cos(2 * t + c + shift)

        hand, rate = curve(0)
        raw, raw_rate = curve(1)
        size = np.linalg.norm(raw, axis=-1, keepdims=True)
        tether = raw / size
        turn = (raw_rate - np.sum(tether * raw_rate, axis=-1, keepdims=True) * tether) / size
        plane = np.cross(tether, curve(2)[0])
        plane /= np.linalg.norm(plane, axis=-1, keepdims=True)
        return Motion(
            hand=hand, hand_rate=rate, hand_acceleration=0 * hand, tether=tether, tether_rate=turn,
            tether_acceleration=0 * hand, plane=plane,
        )  # fmt: skip

    def pieces(self, start, end):
        spans = zip(pairwise(self.cuts), self.bounds, strict=True)
        return tuple(
            (max(a, start), min(b, end), own) for (a, b), own in spans if b > start and a < end
        )


def dancer(props, **more):
    given = {
        "name": "Ada", "body": BODY, "props": props, "floor": FLOOR,
        "trajectories": {side: Drawn(3 + len(side)) for side in props},
    }  # fmt: skip
    return Dancer(**{**given, **more})


BENT = Carriage(
    body=BODY,
    held=(HeldPosture(0.5, 1.5, Posture(turn=0.3, lean=0.05)), HeldPosture(2.5, 4.0, Posture())),
)
CASTS = {
    "poi and staff": {"left": POI, "right": STAFF},
    "staff alone": {"left": STAFF},
    "club and hoop": {"right": HOOP, "left": CLUB},
    "nothing": {},
}


def turned(points, rates, stand):
    """Points (..., 3) of the body frame on the stage, and their rates: body x is −X, body y is −Y."""
    way = -np.exp(1j * stand.facing)
    at = way * (points[..., 0] + 1j * points[..., 1])
    by = way * (rates[..., 0] + 1j * rates[..., 1]) + 1j * stand.facing_rate * at
    place, drift = stand.place, stand.place_rate
    return (
        np.stack([place[..., 0] + at.real, place[..., 1] + at.imag, points[..., 2]], axis=-1),
        np.stack([drift[..., 0] + by.real, drift[..., 1] + by.imag, rates[..., 2]], axis=-1),
    )


@pytest.mark.parametrize("carriage", [None, BENT], ids=["upright", "bent"])
@pytest.mark.parametrize("props", CASTS.values(), ids=CASTS)
def test_points_are_turned_and_moved(props, carriage):
    ada = dancer(props, carriage=carriage)
    beats = np.linspace(-1.0, 8.0, 28).reshape(4, 7)
    points, rates = ada.stage_points(beats)
    stand, body = FLOOR.at(beats), ada.carriage
    zero = np.zeros((4, 7))
    foot = np.stack([stand.place[..., 0], stand.place[..., 1], zero], axis=-1)
    drift = np.stack([stand.place_rate[..., 0], stand.place_rate[..., 1], zero], axis=-1)
    top = foot + np.array([0.0, 0.0, body.column_top])
    expected = {0: (foot, drift), 1: (top, drift)}
    for side, first, rear in (("left", 2, 8), ("right", 5, 9)):
        own = (first, first + 1, first + 2, rear)
        if side not in props:
            expected |= dict.fromkeys(own, (top, drift))
            continue
        prop, motion = props[side], ada.trajectories[side].at(beats)
        at = [
            (body.shoulder(beats.ravel(), side).reshape(4, 7, 3),
             body.shoulder_rate(beats.ravel(), side).reshape(4, 7, 3)),
            (motion.hand, motion.hand_rate),
        ]  # fmt: skip
        far = {"hoop": 0.4}.get(prop.kind, prop.length)
        behind = -prop.behind
        at += [
            (motion.hand + a * motion.tether, motion.hand_rate + a * motion.tether_rate)
            for a in (far, behind)
        ]
        expected |= {i: turned(*each, stand) for i, each in zip(own, at, strict=True)}
    for i, (place, rate) in expected.items():
        assert_allclose(points[i], place, atol=1e-12, err_msg=f"{i}")
        assert_allclose(rates[i], rate, atol=1e-12, err_msg=f"{i}")


def test_wicks_are_turned_and_moved():
    """h + along·d + across·(n × d), turned by complex numbers."""
    ada = dancer({"right": HOOP, "left": POI})
    beats = np.linspace(0.0, 8.0, 9)
    stand, motion = FLOOR.at(beats), ada.trajectories["right"].at(beats)
    aside = np.cross(motion.plane, motion.tether)
    wicks = ada.wick_places(beats)
    assert set(wicks) == {"left", "right"}
    for k, (along, across) in enumerate(HOOP.heads):
        place = motion.hand + along * motion.tether + across * aside
        assert_allclose(wicks["right"][k], turned(place, 0 * place, stand)[0], atol=1e-12)
    spots = ada.spots("right", beats, [(0.3, -0.2), (0.0, 0.0)])
    place = motion.hand + 0.3 * motion.tether - 0.2 * aside
    assert_allclose(spots[0], turned(place, 0 * place, stand)[0], atol=1e-12)
    assert_allclose(spots[1], turned(motion.hand, 0 * place, stand)[0], atol=1e-12)


def by_hand(ada, low, high, floor, bounds):
    """Speed, acceleration, reach (with and without deviation) of one piece; and swings of both hands.

    In a turning frame |p'| ≤ v + |φ'|ρ + |q'| and |p''| ≤ a + (|φ''| + φ'²)ρ + 2|φ'||q'| + |q''|.
    """
    v, a, w, dw = floor.speed, floor.acceleration, floor.turn_rate, floor.turn_acceleration
    speed, push = np.full(10, v), np.full(10, a)
    swing, drawn, reach = np.zeros(2), BODY.girth, BODY.girth
    sway, jolt = (
        float(each[0]) for each in ada.carriage.shoulder_bounds(np.array([low]), np.array([high]))
    )
    for side, own in bounds.items():
        prop, shoulder = ada.props[side], ada.carriage.shoulder_reach
        first, rear, k = {"left": (2, 8, 0), "right": (5, 9, 1)}[side]
        far = {"hoop": 0.4}.get(prop.kind, prop.length)
        moving = {
            first: (shoulder, sway, jolt),
            first + 1: (own.hand_reach, own.hand_speed, own.hand_acceleration),
            first + 2: (
                own.hand_reach + far,
                own.hand_speed + far * own.turn_rate,
                own.hand_acceleration + far * own.turn_acceleration,
            ),
            rear: (
                own.hand_reach + prop.behind,
                own.hand_speed + prop.behind * own.turn_rate,
                own.hand_acceleration + prop.behind * own.turn_acceleration,
            ),
        }
        for i, (rho, q1, q2) in moving.items():
            speed[i] = v + w * rho + q1
            push[i] = a + (dw + w * w) * rho + 2 * w * q1 + q2
        swing[k] = own.hand_speed + sway
        elbow = max(BODY.arm_length / 2, 0.08)  # the half axis of the ellipsoid of elbows
        arm = max(own.hand_reach, shoulder) + BODY.limb_radius + elbow
        held = max(prop.length, prop.behind) + prop.wick_radius + prop.flame_reach
        far_off = max(arm, own.hand_reach + held)
        middle = (low + high) / 2
        more = max(
            (d.size for d in ada.deviation.get(side, ()) if d.start < middle < d.end), default=0
        )
        # an arm is no longer for hand work
        give = np.hypot(*np.abs(BODY.shoulder_give).max(axis=0)[:2])
        stretched = shoulder + give + BODY.arm_length + max(held, BODY.limb_radius)
        drawn = max(drawn, far_off)
        reach = max(reach, far_off, min(far_off + more, stretched))
    return speed, push, drawn, reach, swing


@pytest.mark.parametrize("carriage", [None, BENT], ids=["upright", "bent"])
@pytest.mark.parametrize("props", CASTS.values(), ids=CASTS)
def test_bounds_of_every_piece(props, carriage):
    """Cut where the floor, a trajectory, a deviation or a posture changes, and nowhere else."""
    deviation = {
        side: (HandDeviation(1.2, 4.7, 0.3), HandDeviation(4.0, 6.0, 0.1)) for side in props
    }
    ada = dancer(props, carriage=carriage, deviation=deviation)
    start, end = 0.25, 8.0
    pieces = ada.pieces(start, end)
    cuts = {start, end, 1.0, 3.0, 5.0, 7.0}
    if props:
        cuts |= {2.0, 4.5, 1.2, 4.7, 4.0, 6.0}
    if carriage is not None:
        cuts |= {edge for edge in carriage.edges.tolist() if start <= edge <= end}
    assert pieces.edges.tolist() == sorted(cuts)
    for k, (low, high) in enumerate(pairwise(pieces.edges)):
        (floor,) = (own for a, b, own in FLOOR.pieces(start, end) if a <= low and high <= b)
        bounds = {
            side: next(own for a, b, own in each.pieces(start, end) if a <= low and high <= b)
            for side, each in ada.trajectories.items()
        }
        speed, push, drawn, reach, swing = by_hand(ada, low, high, floor, bounds)
        some = [
            0,
            1,
            *(i for side in props for i in {"left": (2, 3, 4, 8), "right": (5, 6, 7, 9)}[side]),
        ]
        assert_allclose(pieces.speed[k, some], speed[some], rtol=1e-12)
        assert_allclose(pieces.acceleration[k, some], push[some], rtol=1e-12)
        assert pieces.drawn[k] == pytest.approx(drawn, rel=1e-12)
        assert pieces.reach[k] == pytest.approx(reach, rel=1e-12)
        assert pieces.place_speed[k] == floor.speed
        assert_allclose(pieces.hand_speed[k], swing, rtol=1e-12)
    empty = sorted({2, 3, 4, 8} if "left" not in props else set()) or [0]
    assert_array_equal(pieces.speed[:, empty], np.repeat(pieces.speed[:, :1], len(empty), axis=1))


def test_an_arm_drawn_in_reaches_as_far_as_its_elbow():
    """A hand at the axis and no prop to speak of: shoulder, thickness and half an arm."""
    ada = dancer({"left": Prop(length=0.01, mass=0.1, wick_radius=0.01)})
    near = [replace(each, hand_reach=0.01) for each in ada.trajectories["left"].bounds]
    ada.trajectories["left"].bounds = near
    reach = BODY.half_shoulder + BODY.limb_radius + BODY.arm_length / 2
    assert_allclose(ada.pieces(0.0, 1.0).drawn, reach, rtol=1e-12)


@pytest.mark.parametrize("field", ["hand_speed", "hand_acceleration", "hand_reach"])
def test_nothing_is_proven_without_a_finite_bound(field):
    ada = dancer({"left": POI})
    own = ada.trajectories["left"]
    own.bounds[1] = replace(own.bounds[1], **{field: np.inf})
    assert len(ada.pieces(0.0, 1.9).speed) == 2
    with pytest.raises(ValueError, match="Ada: a bound is not finite"):
        ada.pieces(0.0, 3.0)
    for end in (0.0, -1.0):
        with pytest.raises(ValueError, match="end must come after start"):
            ada.pieces(0.0, end)


LIT = ((1.0, 2.0), (2.0, 2.5), (4.0, 5.0))


def test_lit_from_end_to_end():
    ada = dancer({"left": POI}, lit=LIT)
    beats = np.array([[0.9, 1.0, 1.5, 2.0, 2.5], [2.6, 3.9, 4.0, 5.0, 5.1]])
    assert_array_equal(ada.is_lit(beats), [[0, 1, 1, 1, 1], [0, 0, 1, 1, 0]])
    assert ada.is_lit(4.5)
    assert not dancer({}).is_lit(0.0)


def test_deviations_and_changes_by_hand():
    """The larger of two where they overlap or meet; a hand without a prop has none."""
    own = (HandDeviation(1.0, 3.0, 0.1), HandDeviation(3.0, 5.0, 0.3), HandDeviation(4.0, 6.0, 0.2))
    ada = dancer({"left": POI}, lit=LIT, deviation={"left": own, "right": own})
    beats = np.array([0.9, 1.0, 2.0, 3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0, 6.1])
    expected = [0, 0.1, 0.1, 0.3, 0.3, 0.3, 0.3, 0.3, 0.2, 0.2, 0]
    assert_array_equal(ada.deviations(beats), [expected, [0] * 11])
    assert ada.deviations(2.0).tolist() == [0.1, 0.0]
    assert ada.changes.tolist() == [1, 2, 2.5, 3, 4, 5, 6]
    backwards = replace(ada, deviation={"left": own[::-1]})
    assert_array_equal(backwards.deviations(beats)[0], expected)
    assert dancer({}).changes.tolist() == []


def test_radii_of_every_part_by_hand():
    """Arms by the elbow's ellipsoid, ½√(L² − s²) and 8 cm at least; props by thickness, wick and flame."""
    ada = dancer(
        {"left": STAFF, "right": CLUB}, deviation={"right": (HandDeviation(0, 9, 0.5),)}, lit=LIT
    )
    points = np.zeros((10, 2, 3))
    points[3, :, 0] = 0.3, BODY.arm_length  # the left arm: 30 cm, and straight
    points[6, :, 1] = 0.4
    radii = ada.radii(points, np.array([True, False]))
    elbow = [np.sqrt(BODY.arm_length**2 - span**2) / 2 for span in (0.3, 0.4)]
    expected = [
        [BODY.girth] * 2, [BODY.limb_radius + elbow[0], BODY.limb_radius + 0.08],
        [0.015] * 2, [0.25, 0.05], [BODY.limb_radius + elbow[1]] * 2, [0.025] * 2, [0.16, 0.06],
        [0.25, 0.05], [0.025] * 2,
    ]  # fmt: skip
    assert_allclose(radii, expected, rtol=1e-12)
    shells = ada.shells(points, np.array([1.5, 3.0]))
    more = np.array([0, 0, 0, 0, 0.5, 0.5, 0.5, 0, 0.5])
    assert_allclose(shells, np.array(expected) + more[:, None], rtol=1e-12)
    bare = dancer({"right": HOOP})
    radii = bare.radii(points, np.array([True, False]))
    assert_allclose(radii[[0, 1, 2, 3, 7]], BODY.girth)
    assert_allclose(radii[5:7], [[0.012, 0.012], [0.4 + 0.28, 0.43]])
    assert_array_equal(
        bare.shells(points, np.array([1.0, 2.0])), bare.radii(points, np.zeros(2, bool))
    )


def test_what_parts_are_and_what_they_are_called():
    """Indices: body, then arm, tether, head of the left and the right, then the rear ends."""
    ada = dancer({"left": STAFF, "right": CLUB})
    assert [ada.carries(k) for k in range(9)] == [True] * 9
    assert [k for k in range(9) if ada.burns(k)] == [3, 6, 7]
    assert [ada.part_name(k) for k in range(9)] == [
        "body", "left arm", "left staff", "left head", "right arm", "right club", "right head",
        "left rear head", "right knob",
    ]  # fmt: skip
    bo = dancer({"right": HOOP})
    assert [k for k in range(9) if bo.carries(k)] == [0, 4, 5, 6]
    assert [k for k in range(9) if bo.burns(k)] == [6]
    assert [bo.part_name(k) for k in (1, 2, 3, 5, 6, 7)] == [
        "left arm", "left tether", "left head", "right hoop", "right hoop", "left rear end",
    ]  # fmt: skip
    assert dancer({"left": POI}).part_name(2) == "left tether"
    assert [ada.two_ended, bo.two_ended, dancer({}).two_ended] == [True, False, False]
    assert dancer({"left": POI, "right": STAFF}).two_ended


def test_reach_by_hand():
    """Shoulder, arm, the farther end and its flame; at least the body's own column."""
    arm = BODY.half_shoulder + BODY.arm_length
    assert dancer({"left": POI, "right": STAFF}).reach == pytest.approx(arm + 0.8 + 0.25)
    assert dancer({"left": POI}).reach == pytest.approx(arm + 0.5 + 0.34)
    assert dancer({}).reach == BODY.girth
    bent = dancer({"left": POI}, carriage=BENT).reach
    up = BODY.shoulder_height - BODY.hip_height
    assert bent == pytest.approx(arm + 0.5 + 0.34 + up * np.sin(0.05))


def test_a_dancer_in_words():
    assert repr(dancer({"left": POI, "right": STAFF}, lit=LIT)) == (
        "<Dancer Ada: 1.7 m tall, poi left, staff right, 3 burns, reach 1.91 m>"
    )
    assert repr(dancer({}, lit=LIT[:1])).startswith(
        "<Dancer Ada: 1.7 m tall, no prop, 1 burn, reach 0."
    )


@pytest.mark.parametrize("span", [(2.0, 2.0), (2.0, 1.0)])
def test_a_burn_ends_after_it_starts(span):
    with pytest.raises(ValueError, match="Ada: a burn must end after it starts"):
        dancer({"left": POI}, lit=((0.0, 1.0), span))
