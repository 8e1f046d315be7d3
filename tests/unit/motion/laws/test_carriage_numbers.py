"""How the body is carried, number by number: rotation matrices and polynomials written anew, lists by hand."""

import sys
from math import radians
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.posture import UPRIGHT, Posture, levers
from sequencer.motion.laws.carriage import (
    Carriage,
    HeldPosture,
    beyond_upright,
    carried,
    nearest_give,
)

BODY = Body(stature=1.7)
TURN, LEAN = Posture(turn=radians(30)), Posture(lean=radians(10))
MIXED = Posture(turn=radians(25), lean=radians(-7), side=radians(-2), tilt=radians(8))
OTHER = Posture(turn=radians(-15), lean=radians(4), side=radians(3), nod=radians(-3))
# Held, reached in a beat and a half, left at once, reached in two beats.
KNOTS = (0.0, 1.0, 2.5, 2.5, 4.5, 6.0)
LAST = Posture(turn=radians(30), side=radians(-5))
POSTURES = (MIXED, MIXED, OTHER, OTHER, LAST, LAST)
ROWS = np.array([p.angles for p in POSTURES])
HELD = tuple(HeldPosture(KNOTS[k], KNOTS[k + 1], POSTURES[k]) for k in (0, 2, 4))
OWN = Carriage(body=BODY, held=HELD)
BEATS = np.array([-3.0, 0.0, 0.5, 1.0, 1.3, 2.2, 2.5, 2.9, 3.5, 4.4, 4.5, 5.0, 6.0, 9.0])
UP = BODY.shoulder_height - BODY.hip_height
HALF = BODY.half_shoulder
NONE = Carriage(body=BODY)
STANDING = Carriage(
    body=BODY, held=(HeldPosture(0.0, 1.0, UPRIGHT), HeldPosture(2.0, 3.0, UPRIGHT))
)


def passed(beat):
    """Angles and rates: 10x³ − 15x⁴ + 6x⁵ between the knots, and its derivative."""
    for k in (1, 3):
        low, high = KNOTS[k], KNOTS[k + 1]
        if low < beat < high:
            x, way = (beat - low) / (high - low), ROWS[k + 1] - ROWS[k]
            rate = (30 * x**2 - 60 * x**3 + 30 * x**4) / (high - low)
            return ROWS[k] + (10 * x**3 - 15 * x**4 + 6 * x**5) * way, rate * way
    k = int(np.searchsorted(KNOTS, beat, side="right"))
    return ROWS[max(k - 1, 0)], np.zeros(5)


ANGLES, RATES = (np.array(part) for part in zip(*(passed(b) for b in BEATS), strict=True))


def trunk(angles):
    """Turn to the left about z, lean forward about −x, side to the right about y, outermost first."""
    return Rotation.from_euler("ZXY", [angles[0], -angles[1], angles[2]]).as_matrix()


def test_angles_and_rates_at_knots_between_and_outside():
    angles, rates = OWN._angles(BEATS)
    assert_allclose(angles, ANGLES, atol=1e-14)
    assert_allclose(rates, RATES, atol=1e-14)
    assert_allclose(OWN.angles(BEATS), ANGLES, atol=1e-14)
    assert_allclose(OWN.edges, KNOTS)


@pytest.mark.parametrize("side", SIDES)
def test_shoulders_and_their_rates_by_matrices(side):
    """p = R(q)·v about the hips; p′ = Σ qᵢ′·∂R/∂qᵢ·v, each ∂R by central differences of the matrix."""
    sign = 1.0 if side == "right" else -1.0
    v, hips = np.array([sign * HALF, 0.0, UP]), np.array([0.0, 0.0, BODY.hip_height])
    place = [hips + trunk(q) @ v for q in ANGLES]
    assert_allclose(OWN.shoulder(BEATS, side), place, atol=1e-14)
    h = 1e-5
    rates = []
    for q, dq in zip(ANGLES, RATES, strict=True):
        steps = [h * np.eye(5)[i] for i in range(3)]
        parts = [(trunk(q + s) - trunk(q - s)) @ v / (2 * h) for s in steps]
        rates.append(sum(r * part for r, part in zip(dq, parts, strict=False)))
    assert_allclose(OWN.shoulder_rate(BEATS, side), rates, atol=1e-9)


@pytest.mark.parametrize("side", SIDES)
def test_how_far_a_hand_is_beyond_its_shoulder_s_box(side):
    """Each way out of the box by 3, 4 and 12 cm, by hand: √(3² + 4² + 12²) = 13."""
    sign = 1.0 if side == "right" else -1.0
    low, high = BODY.shoulder_give
    for corner, out in (
        ((sign * high[0], high[1], high[2]), (sign, 1, 1)),
        ((sign * low[0], low[1], low[2]), (-sign, -1, -1)),
        ((sign * high[0], low[1], high[2]), (sign, -1, 1)),
    ):
        away = np.array(corner) + np.array(out) * [0.03, 0.04, 0.12]
        assert_allclose(nearest_give(BODY, away, side), corner, atol=1e-15)
        hand = BODY.shoulder(side) + away
        assert beyond_upright(BODY, hand, side) == pytest.approx(0.13)
        assert_allclose(NONE.beyond(np.zeros(1), hand[None], side), 0.13)
        turned = np.array([trunk(q) @ away for q in ANGLES])
        found = OWN.beyond(BEATS, OWN.shoulder(BEATS, side) + turned, side)
        assert_allclose(found, 0.13)
    inside = np.array([sign * low[0] / 2, high[1] / 3, high[2] / 4])
    assert_allclose(nearest_give(BODY, inside, side), inside)
    assert beyond_upright(BODY, BODY.shoulder(side) + inside, side) == 0.0


def test_a_box_is_mirrored_in_x_alone():
    """No body of ours gives outward; one that did, by hand."""
    box = SimpleNamespace(shoulder_give=(np.array([-0.2, -0.3, -0.5]), np.array([0.7, 1.1, 1.3])))
    far = np.array([[9.0, 9.0, 9.0], [-9.0, -9.0, -9.0]])
    assert_allclose(nearest_give(box, far, "right"), [[0.7, 1.1, 1.3], [-0.2, -0.3, -0.5]])
    assert_allclose(nearest_give(box, far, "left"), [[0.2, 1.1, 1.3], [-0.7, -0.3, -0.5]])


# Spans: before all, touching a passage at either end, within one, across both, and a still one between.
START = np.array([-2.0, 0.0, 2.5, 1.2, 0.0, 2.5, 4.5, 0.5])
END = np.array([0.0, 1.0, 2.5, 1.3, 6.0, 2.6, 6.0, 1.1])
FIRST, SECOND = np.abs(ROWS[2] - ROWS[1]), np.abs(ROWS[4] - ROWS[3])


def fastest(order, most):
    """Largest slope of a step of each angle, the greater of the two passages where both are met."""
    one, two = most * FIRST / 1.5**order, most * SECOND / 2.0**order
    still = np.zeros(5)
    return np.array([still, still, still, one, np.maximum(one, two), two, still, one])


def test_bounds_of_a_span_are_those_of_the_passages_it_meets():
    """15/8 and 10/√3 are the largest slope and bend of a minimum-jerk step."""
    rate, push = fastest(1, 15 / 8), fastest(2, 10 / np.sqrt(3))
    assert np.any(rate[4] != rate[3])
    assert np.any(rate[4] != rate[5])
    turning, nodding = OWN.speeds(START, END)
    assert_allclose(turning, rate[:, :3].sum(axis=1), rtol=1e-12)
    assert_allclose(nodding, rate[:, 3:].sum(axis=1), rtol=1e-12)
    lever = np.hypot(HALF, UP)
    speed, acceleration = OWN.shoulder_bounds(START, END)
    assert_allclose(speed, lever * turning, rtol=1e-12)
    assert_allclose(acceleration, lever * (turning**2 + push[:, :3].sum(axis=1)), rtol=1e-12)
    arms = levers(BODY)
    expected = np.outer(arms[:, 0], turning) + np.outer(arms[:, 1], nodding)
    assert_allclose(OWN.capsule_speeds(START, END), expected, rtol=1e-12)
    assert OWN.capsule_speeds(START, END).shape == (len(BODY.capsules), len(START))


def many(postures):
    """A carriage that takes one posture after another, each held for a beat and reached in another."""
    of = (TURN, LEAN, MIXED, OTHER, UPRIGHT, UPRIGHT)
    return Carriage(
        body=BODY,
        held=tuple(HeldPosture(2.0 * k, 2.0 * k + 1, of[k % len(of)]) for k in range(postures)),
    )


@pytest.mark.parametrize("order", [1, 2])
def test_bounds_of_many_spans_are_the_largest_of_all_transitions_that_meet_each(order):
    """One transition after another, as the sum of what each says: spans of any length, in any order, and beside all of them."""
    own, draw = many(40), np.random.default_rng(order)
    start = np.concatenate([draw.uniform(-5, 85, 200), np.arange(0.0, 80.0)])
    end = start + np.concatenate([draw.uniform(0, 9, 200), np.ones(80)])
    most = (15 / 8, 10 / np.sqrt(3))[order - 1]
    expected = np.zeros((len(start), 5))
    for low, high in zip(own.held, own.held[1:], strict=False):
        jump = np.abs(np.array(high.posture.angles) - np.array(low.posture.angles))
        meets = (start < high.start) & (end > low.end)
        expected[meets] = np.maximum(expected[meets], most * jump / (high.start - low.end) ** order)
    assert_allclose(own._fastest(start, end, order), expected, rtol=1e-12)
    assert np.any(expected == 0.0)


def test_bounds_of_a_long_show_take_no_more_steps_than_those_of_a_short_one():
    """Else they grow as the square of its length, for each performer and each change that is tried."""
    taken = []
    for postures in (12, 120):
        own, spans, calls = many(postures), (np.arange(20.0), np.arange(20.0) + 1), []
        sys.setprofile(lambda _frame, event, _of, calls=calls: calls.append(event))
        try:
            own.shoulder_bounds(*spans)
        finally:
            sys.setprofile(None)
        taken.append(len([each for each in calls if each in ("call", "c_call")]))
    assert taken[0] > 10
    assert taken[1] <= taken[0] + 2 * (
        120 - 12
    )  # the postures themselves are gone through, to see whether all are upright


def test_how_far_shoulders_come_by_the_widest_and_the_lowest_posture():
    """Lean and side of a posture together, at most 9° here; the lowest takes the largest of each: 7° and 5°."""
    assert OWN.shoulder_reach == pytest.approx(HALF + UP * np.sin(radians(9)))
    low = np.cos(radians(7)) * (UP * np.cos(radians(5)) - HALF * np.sin(radians(5)))
    assert OWN.lowest_shoulder == pytest.approx(BODY.hip_height + low)
    assert OWN.column_top == BODY.leaning_top
    assert not OWN.upright


@pytest.mark.parametrize("own", [NONE, STANDING], ids=["none", "standing"])
def test_who_stands_upright_does_not_move(own):
    assert own.upright
    beats, spans = np.array([-1.0, 0.5, 9.0]), (np.array([0.0, 1.0]), np.array([1.0, 2.5]))
    assert_allclose(own.angles(beats), np.zeros((3, 5)))
    low, high = own.capsule_ends(beats)
    for ends, name in ((low, "start"), (high, "end")):
        assert ends.shape == (len(BODY.capsules), 3, 3)
        for row, capsule in zip(ends, BODY.capsules, strict=True):
            assert_allclose(row, [getattr(capsule, name)] * 3)
    for side in SIDES:
        assert_allclose(own.shoulder(beats, side), [BODY.shoulder(side)] * 3)
        assert_allclose(own.shoulder_rate(beats, side), np.zeros((3, 3)))
    for part in (*own.speeds(*spans), *own.shoulder_bounds(*spans)):
        assert_allclose(part, [0.0, 0.0])
    assert_allclose(own.capsule_speeds(*spans), np.zeros((len(BODY.capsules), 2)))
    assert own.column_top == BODY.column.end[2]
    assert own.shoulder_reach == HALF
    assert own.lowest_shoulder == BODY.shoulder_height
    assert own.edges.shape == (0,)


def test_capsules_lean_with_the_trunk_and_the_head():
    """A chest's and the skull's ends by matrices; legs stand still."""
    low, high = OWN.capsule_ends(BEATS)
    hips, neck = (np.array([0.0, 0.0, h]) for h in (BODY.hip_height, BODY.neck_height))
    skull = len(BODY.trunk)
    for ends, name in ((low, "start"), (high, "end")):
        chest, head = (np.array(getattr(BODY.capsules[k], name)) for k in (0, skull))
        for k, q in enumerate(ANGLES):
            nodded = neck + Rotation.from_euler("XY", [-q[3], q[4]]).apply(head - neck)
            assert_allclose(ends[0, k], hips + trunk(q) @ (chest - hips), atol=1e-14)
            assert_allclose(ends[skull, k], hips + trunk(q) @ (nodded - hips), atol=1e-14)
        assert_allclose(ends[-1], [getattr(BODY.capsules[-1], name)] * len(BEATS))


def held(*rows):
    return tuple(HeldPosture(*row) for row in rows)


def test_postures_may_overlap_by_a_billionth_and_follow_after_a_millionth():
    for later in (2.0 - 0.9e-9, 2.0, 2.5):
        assert Carriage(body=BODY, held=held((0, 2, LEAN), (later, 4, LEAN))).held[1].end == 4
    with pytest.raises(ValueError, match="postures overlap"):
        Carriage(body=BODY, held=held((0, 2, LEAN), (2.0 - 1.1e-9, 4, LEAN)))
    assert Carriage(body=BODY, held=held((0, 2, LEAN), (2.0 + 1.1e-6, 4, TURN))).held
    for late in (0.0, 0.9e-6):
        with pytest.raises(ValueError, match="no time to move"):
            Carriage(body=BODY, held=held((0, 2, LEAN), (2.0 + late, 4, TURN)))
    three = held((0, 2, LEAN), (3, 4, TURN), (4, 5, LEAN))
    with pytest.raises(ValueError, match=r"no time to move .* at 4"):
        Carriage(body=BODY, held=three)
    assert Carriage(body=BODY, held=held((2, 2, LEAN))).held[0].end == 2
    bad = Posture(lean=radians(10), nod=radians(15))
    for rows in (((0, 2, bad), (3, 4, UPRIGHT)), ((0, 2, UPRIGHT), (3, 4, bad))):
        with pytest.raises(ValueError, match="out of its column"):
            Carriage(body=BODY, held=held(*rows))
    assert Carriage(body=BODY, held=held((0, 2, UPRIGHT), (3, 4, LEAN))).upright is False


T, L = TURN, LEAN


@pytest.mark.parametrize(
    ("blocks", "lead", "expected"),
    [
        # half a beat of each where they touch; `lead` before the first and after the last
        (
            [(8, 16, T), (18, 24, L), (24, 32, T)],
            2.0,
            [(5, 6, UPRIGHT), (8, 16, T), (18, 23.5, L), (24.5, 32, T), (34, 35, UPRIGHT)],
        ),
        # a gap of twice the lead is no time to stand upright in, a longer one is
        (
            [(8, 16, T), (20, 24, L), (28.25, 32, T)],
            2.0,
            [(5, 6, UPRIGHT), (8, 16, T), (20, 24, L), (26, 26.25, UPRIGHT), (28.25, 32, T), (34, 35, UPRIGHT)],
        ),
        # the same posture: overlapping blocks are one, the longest of their ends; touching ones stay two
        (
            [(4, 12, T), (4, 9, T), (8, 16, T), (16, 20, T)],
            2.0,
            [(1, 2, UPRIGHT), (4, 16, T), (16, 20, T), (22, 23, UPRIGHT)],
        ),
        # the same posture over a short gap, with a lead that is shorter still
        (
            [(4, 8, T), (8.5, 12, T)],
            0.125,
            [
                (2.875, 3.375, UPRIGHT), (4.5, 8, T), (8.125, 8.375, UPRIGHT), (8.5, 12, T),
                (12.125, 13.125, UPRIGHT),
            ],
        ),
        # a gap of exactly a beat is enough for another posture; three quarters take half a beat of each
        (
            [(4, 8, T), (9, 12, L), (12.75, 16, T)],
            2.0,
            [(1, 2, UPRIGHT), (4, 8, T), (9, 11.5, L), (13.25, 16, T), (18, 19, UPRIGHT)],
        ),
        # short blocks give no more than half of themselves: 0.4 of 0.8, then half of the 0.4 left
        (
            [(0, 8, T), (8, 8.75, L), (8.75, 9.5, T)],
            2.0,
            [
                (-3, -2, UPRIGHT), (0, 7.5, T), (8.375, 8.5625, L), (9.125, 9.5, T),
                (11.5, 12.5, UPRIGHT),
            ],
        ),
        # upright blocks among others are held as they are
        (
            [(0, 4, UPRIGHT), (6, 8, T)],
            1.0,
            [(-2, -1, UPRIGHT), (0, 4, UPRIGHT), (6, 8, T), (9, 10, UPRIGHT)],
        ),
    ],
)  # fmt: skip
def test_blocks_by_hand(blocks, lead, expected):
    found = carried(BODY, blocks, lead).held
    assert [each.posture for each in found] == [posture for *_, posture in expected]
    edges = [(each.start, each.end) for each in found]
    assert edges == [(float(start), float(end)) for start, end, _ in expected]


def test_upright_blocks_carry_nothing():
    for blocks in ([], [(0.0, 4.0, UPRIGHT)], [(0.0, 4.0, UPRIGHT), (4.0, 8.0, UPRIGHT)]):
        assert carried(BODY, blocks, 2.0).held == ()
        assert carried(BODY, blocks, 2.0).body is BODY
