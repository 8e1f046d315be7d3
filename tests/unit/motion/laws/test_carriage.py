"""How the body is carried: passages, their bounds against dense sampling, and shoulders that give."""

from dataclasses import replace
from math import radians

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.optimize import minimize
from scipy.spatial.transform import Rotation

from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.posture import (
    UPRIGHT,
    USED_ANGLES,
    PosedBody,
    Posture,
    capsule_ends,
    in_column,
)
from sequencer.geometry.segments import segment_segment
from sequencer.motion.laws.carriage import Carriage, HeldPosture, beyond_upright, carried, lasting
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.performers.arms import UPPER, elbow, given_shoulder, shoulder_gives
from sequencer.motion.performers.ensemble import Ensemble
from sequencer.motion.performers.feasibility import (
    GAP_ERROR,
    GIVE,
    REACH_ERROR,
    body_gap,
    body_quantity,
    reach_left,
    reach_quantity,
)
from sequencer.motion.performers.stretches import stretches
from sequencer.motion.performers.walks import Move
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from tests.repeated import at_length

BODY = Body(stature=1.7)
TURN = Posture(turn=radians(30))
LEAN = Posture(lean=radians(10))
SIDE = Posture(side=radians(5), turn=radians(-10))
BOW = Posture(lean=radians(4), nod=radians(8))
HEAD = Posture(nod=radians(12), tilt=radians(-6))
MIXED = Posture(turn=radians(25), lean=radians(-7), side=radians(-2), tilt=radians(8))


def swaying(*postures, step=2.0, width=1.0, body=BODY):
    return Carriage(
        body=body,
        held=tuple(
            HeldPosture(step * k, step * k + step - width, p) for k, p in enumerate(postures)
        ),
    )


ALL = {
    "turn": swaying(UPRIGHT, TURN, TURN.mirrored(), UPRIGHT),
    "lean": swaying(UPRIGHT, LEAN, Posture(lean=-LEAN.lean), UPRIGHT),
    "side": swaying(UPRIGHT, SIDE, SIDE.mirrored(), UPRIGHT),
    "head": swaying(UPRIGHT, HEAD, HEAD.mirrored(), UPRIGHT),
    "bow": swaying(UPRIGHT, BOW, Posture(lean=-BOW.lean, nod=-BOW.nod), UPRIGHT),
    "mixed": swaying(TURN, MIXED, HEAD, MIXED.mirrored(), width=0.5),
}


def spans(carriage):
    edges = np.unique(carriage.edges)
    return edges[:-1], edges[1:]


def test_held_and_passed_over():
    own = swaying(UPRIGHT, MIXED, TURN)
    seen = own.angles(np.array([-5.0, 0.5, 1.0, 1.5, 2.0, 3.0, 3.5, 9.0]))
    for k, angles in ((0, UPRIGHT), (2, UPRIGHT), (4, MIXED), (5, MIXED), (7, TURN)):
        assert_allclose(seen[k], angles.angles, atol=1e-12)
    assert_allclose(seen[3], np.array(MIXED.angles) / 2)
    assert_allclose(seen[6], (np.array(MIXED.angles) + TURN.angles) / 2)


@pytest.mark.parametrize(
    ("held", "message"),
    [
        ([(0, 2, LEAN), (1, 3, UPRIGHT)], "overlap"),
        ([(2, 0, LEAN)], "ends before"),
        ([(float("nan"), 0, LEAN)], "ends before"),
        ([(0, 2, LEAN), (2, 4, UPRIGHT)], "no time"),
        ([(0, 2, Posture(lean=radians(10), nod=radians(15)))], "column"),
    ],
)
def test_what_no_body_can_do_is_refused(held, message):
    with pytest.raises(ValueError, match=message):
        Carriage(body=BODY, held=tuple(HeldPosture(*each) for each in held))


def test_one_posture_in_two_spans_is_held_through():
    own = Carriage(body=BODY, held=(HeldPosture(0, 2, LEAN), HeldPosture(2, 4, LEAN)))
    assert_allclose(own.angles(np.array([1.0, 2.0, 3.0])), np.tile(LEAN.angles, (3, 1)))


@pytest.mark.parametrize("name", list(ALL))
def test_shoulder_rate_is_the_derivative(name):
    own, step = ALL[name], 1e-5
    beats = np.linspace(-1, 9, 3001)
    for side in SIDES:
        ahead, behind = own.shoulder(beats + step, side), own.shoulder(beats - step, side)
        found = (ahead - behind) / (2 * step)
        assert_allclose(own.shoulder_rate(beats, side), found, atol=1e-6)


@pytest.mark.parametrize("name", list(ALL))
def test_bounds_hold_and_are_near(name):
    """Every bound on every span, sampled densely; the widest no more than a third above the truth of one
    angle alone."""
    own = ALL[name]
    low, high = spans(own)
    speeds, (most, push) = own.capsule_speeds(low, high), own.shoulder_bounds(low, high)
    tightest = {"capsules": 0.0, "speed": 0.0, "push": 0.0}
    for k in range(len(low)):
        beats = np.linspace(low[k], high[k], 4001)
        step = beats[1] - beats[0]
        for ends in own.capsule_ends(beats):
            sampled = np.linalg.norm(np.diff(ends, axis=1), axis=-1) / step
            assert np.all(sampled <= speeds[:, k, None] + 1e-6)
            share = sampled.max(axis=1)[speeds[:, k] > 0] / speeds[speeds[:, k] > 0, k]
            tightest["capsules"] = max([tightest["capsules"], *share])
        for side in SIDES:
            rate = own.shoulder_rate(beats, side)
            second = np.linalg.norm(np.diff(rate, axis=0), axis=1) / step
            speed = np.linalg.norm(rate, axis=1)
            assert np.all(speed <= most[k] + 1e-9)
            assert np.all(second <= push[k] + 1e-3)
            if most[k] > 0:
                tightest["speed"] = max(tightest["speed"], speed.max() / most[k])
                tightest["push"] = max(tightest["push"], second.max() / push[k])
    if name in {"lean", "head", "bow"}:
        assert tightest["capsules"] > 0.75
    if name == "lean":
        assert tightest["speed"] > 0.75
        assert tightest["push"] > 0.65


def test_a_fast_turn_needs_the_square_of_its_speed():
    """Where a shoulder swings fast its own circling, rate² times the lever, outgrows what pushes it: at
    the middle of a passage, where nothing pushes."""
    own = Carriage(
        body=BODY, held=(HeldPosture(0, 1, LEAN), HeldPosture(2, 3, Posture(lean=-LEAN.lean)))
    )
    middle = np.array([1.5])
    step = 1e-4
    rates = [own.shoulder_rate(middle + d, "right")[0] for d in (-step, step)]
    centripetal = np.linalg.norm(rates[1] - rates[0]) / (2 * step)
    lever = np.hypot(BODY.half_shoulder, BODY.shoulder_height - BODY.hip_height)
    rate = 15 / 8 * 2 * LEAN.lean
    up = BODY.shoulder_height - BODY.hip_height
    assert_allclose(centripetal, rate**2 * up, rtol=1e-4)
    _, push = own.shoulder_bounds(np.array([1.0]), np.array([2.0]))
    assert_allclose(push, lever * (rate**2 + 10 / np.sqrt(3) * 2 * LEAN.lean), rtol=1e-9)


def test_angles_add_up_in_the_bounds():
    """Three angles at once are bounded by their sum, not by the fastest of them."""
    own = swaying(UPRIGHT, MIXED)
    low, high = np.array([1.0]), np.array([2.0])
    trunk, head = own.speeds(low, high)
    assert_allclose(trunk, 15 / 8 * np.abs(MIXED.angles[:3]).sum())
    assert_allclose(head, 15 / 8 * np.abs(MIXED.angles[3:]).sum())


def test_a_span_over_several_passages_takes_the_fastest():
    own = swaying(UPRIGHT, TURN, TURN.mirrored())
    one, other = own.speeds(np.array([1.0, 0.0]), np.array([2.0, 6.0]))[0]
    assert_allclose(other, 2 * one)
    assert_allclose(own.speeds(np.array([2.1]), np.array([2.9]))[0], 0.0)


@pytest.mark.parametrize("name", list(ALL))
def test_shoulder_reach_bounds_the_plan(name):
    own = ALL[name]
    beats = np.linspace(-1, 9, 4001)
    far = max(np.hypot(*own.shoulder(beats, side)[:, :2].T).max() for side in SIDES)
    assert far <= own.shoulder_reach + 1e-9
    if name == "side":
        assert far > 0.95 * own.shoulder_reach


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("name", ["turn", "mixed"])
def test_beyond_is_the_distance_to_the_moved_box(name, side):
    """Against scipy's bounded minimiser over the box, carried by the trunk's own frame."""
    own = ALL[name]
    low, high = own.body.shoulder_give
    if side == "left":
        low, high = low * (-1, 1, 1), high * (-1, 1, 1)
        low, high = np.minimum(low, high), np.maximum(low, high)
    draw = np.random.default_rng(5)
    beats = draw.uniform(0, 7, 12)
    for beat in beats:
        at = np.array([beat])
        hung = own.shoulder(at, side)[0]
        hand = hung + draw.normal(size=3) * draw.choice([0.03, 0.5])
        axes = trunk_axes(own, at)

        def away(give, hung=hung, axes=axes, hand=hand):
            return float(np.sum((hung + axes @ give - hand) ** 2))

        found = minimize(
            away, np.zeros(3), method="L-BFGS-B", bounds=list(zip(low, high, strict=True)),
            options={"ftol": 1e-16, "gtol": 1e-12},
        )  # fmt: skip
        assert_allclose(own.beyond(at, hand[None], side), np.sqrt(found.fun), atol=1e-6)


def trunk_axes(own, at):
    """Axes of the trunk as columns, from what it does to three places about the right shoulder."""
    turn, lean, side = own.angles(at)[0, :3]
    return Rotation.from_euler("ZXY", [turn, -lean, side]).as_matrix()


def test_upright_is_the_same_by_either_way():
    hand = np.random.default_rng(0).normal(size=(50, 3))
    for side in SIDES:
        assert_allclose(
            Carriage(body=BODY).beyond(np.zeros(50), hand, side), beyond_upright(BODY, hand, side)
        )


@pytest.mark.parametrize("stature", [1.4, 1.7562, 2.1])
def test_a_straight_arm_lies_in_the_arms_capsule(stature):
    """A shoulder that gives brings no point of the straight arm out of the capsule about the line from
    where it hangs; the box's diagonal is under 8 cm."""
    body = Body(stature=stature)
    low, high = body.shoulder_give
    assert np.linalg.norm(np.maximum(-low, high)) < GIVE
    if stature > 1.7:
        assert np.linalg.norm(np.maximum(-low, high)) > 0.95 * GIVE
    draw = np.random.default_rng(2)
    give = draw.uniform(low, high, size=(5000, 3))
    way = draw.normal(size=(5000, 3))
    hand = give + body.arm_length * way / np.linalg.norm(way, axis=1, keepdims=True)
    span = np.linalg.norm(hand, axis=1)
    for share in np.linspace(0, 1, 11):
        point = give + share * (hand - give)
        foot = np.clip(np.sum(point * hand, axis=1) / span**2, 0, 1)[:, None] * hand
        off = np.linalg.norm(point - foot, axis=1)
        straight = span >= body.arm_length  # only then does a shoulder give
        assert np.all(off[straight] <= body.elbow_room(span)[straight])


@pytest.mark.parametrize("side", SIDES)
def test_a_shoulder_gives_no_more_than_is_missing(side):
    """Within the box; the arm is straight to the hand; none while the hand is near; less would not do."""
    own, draw = ALL["mixed"], np.random.default_rng(9)
    beats = draw.uniform(0, 7, 4000)
    way = draw.normal(size=(4000, 3))
    way /= np.linalg.norm(way, axis=1, keepdims=True)
    far = draw.uniform(0.85, 1.1, 4000)
    hand = own.shoulder(beats, side) + (BODY.arm_length * far)[:, None] * way
    give = shoulder_gives(own, beats, hand, side)
    low, high = BODY.shoulder_give
    mine = give * (1 if side == "right" else -1, 1, 1)
    assert np.all((mine >= low - 1e-12) & (mine <= high + 1e-12))
    span = np.linalg.norm(hand - given_shoulder(own, beats, hand, side), axis=1)
    beyond = own.beyond(beats, hand, side)
    inside, out = far <= 1, beyond > BODY.arm_length
    assert np.all(give[inside] == 0)
    assert_allclose(span[~inside & ~out], BODY.arm_length, atol=1e-9)
    assert_allclose(span[out], beyond[out], atol=1e-9)
    assert (~inside & ~out).sum() > 100 < out.sum()


@pytest.mark.parametrize("name", list(ALL))
def test_no_shoulder_sinks_lower_than_told(name):
    beats = np.linspace(-1, 8, 4001)
    seen = min(float(ALL[name].shoulder(beats, side)[:, 2].min()) for side in SIDES)
    assert ALL[name].lowest_shoulder <= seen + 1e-12
    assert ALL[name].lowest_shoulder > seen - 0.04


def test_blocks_are_led_into():
    own = carried(BODY, [(8.0, 16.0, TURN), (18.0, 24.0, LEAN), (24.0, 32.0, TURN)], lead=2.0)
    for beat, posture in ((5.9, UPRIGHT), (8.0, TURN), (16.0, TURN), (18.0, LEAN), (23.5, LEAN)):
        assert_allclose(own.angles(np.array([beat]))[0], posture.angles, atol=1e-12)
    assert_allclose(own.angles(np.array([24.5, 34.0])), [TURN.angles, UPRIGHT.angles], atol=1e-12)
    assert_allclose(own.angles(np.array([24.0]))[0], (np.array(LEAN.angles) + TURN.angles) / 2)
    assert carried(BODY, [(0.0, 4.0, UPRIGHT)], lead=2.0).held == ()


def test_blocks_of_one_posture_may_overlap():
    own = carried(BODY, [(4.0, 12.0, TURN), (4.0, 9.0, TURN), (8.0, 16.0, TURN)], lead=2.0)
    assert_allclose(
        own.angles(np.array([2.0, 4.0, 16.0, 18.0]))[:, 0], [0, TURN.turn, TURN.turn, 0]
    )


def test_far_blocks_are_upright_between():
    own = carried(BODY, [(8.0, 16.0, TURN), (40.0, 48.0, LEAN)], lead=2.0)
    assert_allclose(own.angles(np.array([18.0, 30.0, 38.0])), np.zeros((3, 5)))


@pytest.mark.parametrize("name", ["mixed", *at_length("lean", "head")])
def test_own_body_gap_is_that_of_the_moved_body(dance, name):
    """Sampled densely with points on tether and wick against the ends that the carriage gives."""
    ada = dance.dancer("Ada", hand_radius=0.2, tether=0.5, flame=0.0)
    own, trajectory, prop = ALL[name], ada.trajectories["right"], ada.props["right"]
    found = body_gap(trajectory, [0.0, 8.0], prop=prop, body=BODY, near=1.0, carriage=own)[0]
    beats = np.linspace(0, 8, 6401)
    motion, (lows, highs) = trajectory.at(beats), own.capsule_ends(beats)
    least = np.inf
    for k, capsule in enumerate(BODY.capsules):
        along = np.linspace(0, 1, 25)[:, None, None]
        axis = lows[k] + along * (highs[k] - lows[k])
        for share in np.linspace(0, 1, 17):
            radius = prop.wick_radius if share == 1 else prop.shaft_radius
            point = motion.hand + share * prop.length * motion.tether
            gap = np.linalg.norm(axis - point, axis=-1).min() - capsule.radius - radius
            least = min(least, gap)
    assert abs(found.value - least) <= GAP_ERROR + 0.006  # the grid of the reference
    assert found.value <= least + GAP_ERROR


def nodding(posture, body=BODY):
    """A posture reached and left at once: it is met at the end of a passage, never in the middle of one."""
    return Carriage(
        body=body,
        held=(
            HeldPosture(0, 3.0, UPRIGHT),
            HeldPosture(3.08, 3.08, posture),
            HeldPosture(3.17, 8, UPRIGHT),
        ),
    )


def test_a_short_swing_takes_the_shoulder_from_a_still_hand(dance):
    """Nothing moves but the body, so its own speed alone leads the search to the moment."""
    trajectory = dance.dancer(hand_radius=0.0).trajectories["right"]
    still = trajectory.at(np.zeros(1)).hand[0]
    near = replace(BODY, arm=float(beyond_upright(BODY, still, "right")) + 0.03)
    own = nodding(Posture(lean=-LEAN.lean), near)
    assert reach_left(trajectory, [0.0, 8.0], side="right", body=near)[0].label == -1
    found = reach_left(trajectory, [0.0, 8.0], side="right", body=near, carriage=own)[0]
    beats = np.linspace(2.9, 3.3, 8001)
    sampled = near.arm_length - own.beyond(beats, trajectory.at(beats).hand, "right").max()
    assert sampled < 0
    assert found.value == pytest.approx(sampled, abs=REACH_ERROR)
    assert found.beat == pytest.approx(3.08, abs=0.03)


def test_a_short_swing_takes_the_trunk_to_a_still_staff():
    """A staff that hangs beside the body and reaches up past the shoulder."""
    law = rest("right", BODY, 0.5)
    trajectory = Trajectory(
        (Span(start=0.0, end=8.0, law=law, origin=0.0, kind="rest", label="rest"),)
    )
    staff = Prop(kind="staff", length=0.5, behind=0.9, mass=0.8, wick_radius=0.04)
    own = nodding(Posture(side=radians(5)))
    calm, found = (
        body_gap(trajectory, [0.0, 8.0], prop=staff, body=BODY, near=1.0, carriage=carriage)[
            0
        ].value
        for carriage in (None, own)
    )
    moment = PosedBody(BODY, Posture(side=radians(5)))
    motion = trajectory.at(np.array([3.08]))
    least = min(
        float(
            segment_segment(
                motion.head(-0.9), motion.head(0.5), np.array([c.start]), np.array([c.end])
            )[0][0]
        )
        - c.radius
        for c in moment.capsules
    )
    assert calm - found > 0.02
    assert least - 0.04 - GAP_ERROR <= found <= least + GAP_ERROR


def still(hand):
    """A trajectory on which neither hand nor tether ever moves."""
    law = ComposedLaw(
        hand=HandPath(tuple(hand)), tether=(0.0, 0.0, -1.0), plane=(-1.0, 0.0, 0.0), turns=(), period=1.0
    )  # fmt: skip
    return Trajectory((Span(start=0.0, end=8.0, law=law, origin=0.0, kind="block", label="still"),))


@pytest.mark.parametrize("away", [(-0.52, -0.02, 0.20), (0.3, 0.1, -0.4), (0.0, -0.45, 0.09)])
@pytest.mark.parametrize("posture", [Posture(side=radians(5)), LEAN, TURN])
def test_a_still_hand_nears_its_shoulder_no_faster_than_is_searched_with(away, posture):
    """Far up on the other side it is the corner of what a shoulder can give to that swings nearest."""
    own = swaying(posture.mirrored() if posture.side else UPRIGHT, posture)
    trajectory = still(BODY.shoulder("right") + away)
    quantity = reach_quantity(side="right", body=BODY, carriage=own)
    cut = stretches([trajectory], [(0.0, 4.0)], at=quantity.places)
    k = int(np.flatnonzero((cut.start <= 1.5) & (cut.end > 1.5))[0])
    beats = np.linspace(cut.start[k], cut.end[k], 2001)
    values, _ = quantity.value(beats, trajectory.at(beats))
    rate = np.abs(np.diff(values)).max() / (beats[1] - beats[0])
    assert 0 < rate <= quantity.slope(cut)[k]


def test_only_passages_are_searched_with_the_bodys_own_speed():
    """A posture that is held moves nothing, however fast it is left."""
    own, trajectory = swaying(UPRIGHT, MIXED), still((0.4, 0.4, 1.2))
    poi = Prop(length=0.4, mass=0.2, wick_radius=0.05)
    for quantity in (
        body_quantity(shape=poi.solids, body=BODY, carriage=own),
        reach_quantity(side="right", body=BODY, carriage=own),
    ):
        cut = stretches([trajectory], [(0.0, 4.0)], at=quantity.places)
        slope = quantity.slope(cut)
        passing = (cut.start >= 1.0) & (cut.end <= 2.0)
        assert np.all(slope[passing] > 0)
        assert np.all(slope[~passing] == 0)


@pytest.mark.parametrize("name", list(ALL))
@pytest.mark.parametrize("side", SIDES)
def test_reach_left_is_that_of_the_moved_shoulder(dance, name, side):
    trajectory = dance.dancer(hand_radius=0.3).trajectories[side]
    short = replace(BODY, arm=0.35)
    own = replace(ALL[name], body=short)
    found = reach_left(trajectory, [0.0, 8.0], side=side, body=short, carriage=own)[0]
    beats = np.linspace(0, 8, 40_001)
    least = short.arm_length - own.beyond(beats, trajectory.at(beats).hand, side).max()
    assert least < 0
    assert found.value == pytest.approx(least, abs=REACH_ERROR)


def test_points_rates_and_bounds_of_a_dancer_who_gives_way(dance):
    moves = (Move(start=2, end=5, place=(1, 4), facing=6.0, through=((1, 2.5),)),)
    ada = replace(dance.dancer(moves=moves, plane="wheel"), carriage=ALL["mixed"])
    beats = np.linspace(0, 8, 40_001)
    points, rates = ada.stage_points(beats)
    assert_allclose(np.gradient(points, beats, axis=1)[:, 2:-2], rates[:, 2:-2], atol=2e-3)
    pieces = ada.pieces(0, 8)
    for k in range(len(pieces.speed)):
        at = np.linspace(pieces.edges[k], pieces.edges[k + 1], 3001)
        seen, moving = ada.stage_points(at)
        push = np.gradient(moving, at, axis=1)[:, 1:-1]
        assert np.all(np.linalg.norm(moving, axis=-1).max(axis=1) <= pieces.speed[k] + 1e-9)
        assert np.all(np.linalg.norm(push, axis=-1).max(axis=1) <= pieces.acceleration[k] + 1e-3)
        away = np.hypot(*np.moveaxis(seen[..., :2] - ada.floor.at(at).place, -1, 0))
        assert np.all(away <= pieces.reach[k] + 1e-9)
    assert ada.reach > dance.dancer().reach


def test_a_posture_that_is_held_adds_nothing_to_a_dancers_bounds(dance):
    ada = dance.dancer()
    pieces, upright = replace(ada, carriage=swaying(UPRIGHT, MIXED)).pieces(0, 4), ada.pieces(0, 4)
    held = (pieces.edges[1:] <= 1.0) | (pieces.edges[:-1] >= 2.0)
    assert held.any()
    assert np.all(pieces.speed[~held, 2] > 0)
    assert_allclose(pieces.speed[held, 2], 0.0, atol=1e-12)
    assert_allclose(pieces.acceleration[held, 2], 0.0, atol=1e-12)
    assert_allclose(pieces.hand_speed[held], upright.hand_speed.max(), atol=1e-12)


def test_a_shoulder_leans_out_farther_than_a_hand_at_the_axis(dance):
    """The hand over the head, the prop short: the arm's own end is what others must keep from."""
    ada = dance.dancer(tether=0.05, flame=0.0, lit=())
    trajectories = dict.fromkeys(ada.props, still((0.0, 0.0, 1.65)))
    ada = replace(ada, trajectories=trajectories, carriage=ALL["side"])
    pieces = ada.pieces(0, 7)
    for k, (low, high) in enumerate(zip(pieces.edges[:-1], pieces.edges[1:], strict=True)):
        at = np.linspace(low, high, 201)
        points = ada.stage_points(at)[0]
        away = np.hypot(*(points[[2, 5], :, :2] - ada.floor.at(at).place).transpose(2, 0, 1))
        radii = ada.radii(points, ada.is_lit(at))[[1, 4]]
        assert np.all(away + radii <= pieces.reach[k] + 1e-9)


@pytest.mark.parametrize("name", ["turn", "mixed"])
def test_an_arm_thickens_no_faster_than_hand_and_shoulder_move(dance, name):
    """The hand stands still and the shoulder goes: the elbow's room changes all the same."""
    ada = replace(dance.dancer(hand_radius=0.0), carriage=ALL[name])
    pieces = ada.pieces(0, 7)
    for k, (low, high) in enumerate(zip(pieces.edges[:-1], pieces.edges[1:], strict=True)):
        at = np.linspace(low, high, 1001)
        radii = ada.shells(ada.stage_points(at)[0], at)
        for arm, part in ((0, 1), (1, 4)):
            growth = np.abs(np.diff(radii[part])).max() / (at[1] - at[0])
            assert growth <= ada.body.elbow_slope * pieces.hand_speed[k, arm] + 1e-9


def test_shoulders_alone_reach_their_bounds(dance):
    """On the spot the bound of a shoulder's speed is the carriage's own, and near the truth."""
    ada = replace(dance.dancer(), carriage=ALL["lean"])
    pieces = ada.pieces(0, 7)
    worst = 0.0
    for k in range(len(pieces.speed)):
        at = np.linspace(pieces.edges[k], pieces.edges[k + 1], 1001)
        speed = np.linalg.norm(ada.stage_points(at)[1][2], axis=-1).max()
        assert speed <= pieces.speed[k, 2] + 1e-9
        if pieces.speed[k, 2] > 0:
            worst = max(worst, speed / pieces.speed[k, 2])
    assert worst > 0.75


def test_an_ensemble_gives_way_like_its_dancers(dance):
    cast = [
        replace(dance.dancer(name, (x, 3.0), facing=x), carriage=own)
        for name, x, own in (("A", 0.0, ALL["mixed"]), ("B", 2.0, Carriage(body=BODY)), ("C", 4.0, ALL["turn"]))
    ]  # fmt: skip
    who = np.repeat(np.arange(3), 200)
    beats = np.random.default_rng(4).uniform(-1, 9, 600)
    points, rates = Ensemble(cast).stage_points(who, beats)
    for k, each in enumerate(cast):
        own, moving = each.stage_points(beats[who == k])
        assert_allclose(points[who == k], own.transpose(1, 0, 2), atol=1e-12)
        assert_allclose(rates[who == k], moving.transpose(1, 0, 2), atol=1e-12)


def test_an_elbow_keeps_both_lengths():
    draw = np.random.default_rng(6)
    for side in SIDES:
        shoulder = np.tile(BODY.shoulder(side), (500, 1))
        way = draw.normal(size=(500, 3))
        way /= np.linalg.norm(way, axis=1, keepdims=True)
        hand = shoulder + way * draw.uniform(0.05, 1.0, 500)[:, None] * BODY.arm_length
        bend = elbow(BODY, shoulder, hand, side)
        upper, fore = UPPER * BODY.arm_length, (1 - UPPER) * BODY.arm_length
        assert_allclose(np.linalg.norm(bend - shoulder, axis=1), upper, atol=1e-9)
        assert_allclose(np.linalg.norm(hand - bend, axis=1), fore, atol=1e-9)


@pytest.mark.parametrize("stature", [1.4, 1.7, 2.1])
@pytest.mark.parametrize("seated", [False, True])
def test_a_leaning_head_lies_under_the_cap_that_others_keep_from(dance, stature, seated):
    """Head and trunk in postures at the edge of what is allowed, against the column of a dancer and of a cast."""
    body = Body(stature=stature, seated=seated)
    limits = np.array(list(USED_ANGLES.values()))
    angles = np.random.default_rng(3).uniform(*limits.T, size=(2000, 5))
    low, high = np.zeros(2000), np.ones(2000)
    for _ in range(30):
        middle = (low + high) / 2
        inside = in_column(body, middle[:, None] * angles)
        low, high = np.where(inside, middle, low), np.where(inside, high, middle)
    count = len(body.trunk) + len(body.skull)
    radii = np.array([c.radius for c in body.capsules[:count]])[:, None]
    lean = Carriage(body=body, held=(HeldPosture(0, 1, Posture(lean=radians(1))),))
    ada = replace(dance.dancer(stature=stature), body=body, carriage=lean)
    tops = [
        ada.stage_points(np.zeros(1))[0][1, 0, 2],
        Ensemble([ada]).stage_points(np.zeros(1, np.int64), np.zeros(1))[0][0, 1, 2],
    ]
    for top in tops:
        for ends in capsule_ends(body, low[:, None] * angles):
            over = np.maximum(ends[:count, :, 2] - top, 0.0)
            away = np.sqrt(ends[:count, :, 0] ** 2 + ends[:count, :, 1] ** 2 + over**2)
            assert np.all(away + radii <= body.girth + 1e-9)
    assert Carriage(body=body).column_top == body.column.end[2]


def test_blocks_that_touch_share_half_a_beat_each_and_short_ones_their_half():
    """The passage takes the last half beat of one and the first of the next, no more than half of a block."""
    long, short = (0.0, 4.0, TURN), (4.0, 4.6, LEAN)
    own = carried(BODY, [long, short, (4.6, 8.0, TURN)], lead=2.0)
    spans = [(each.start, each.end) for each in own.held[1:-1]]
    assert spans == [
        pytest.approx((0.0, 3.5)),
        pytest.approx((4.3, 4.45)),  # of 0.6 beats the first half, then half of what is left
        pytest.approx((5.1, 8.0)),
    ]
    assert own.held[0][:2] == (-3.0, -2.0)
    assert own.held[-1][:2] == (10.0, 11.0)


def test_a_posture_is_held_between_two_beats_or_not():
    """From the beat it is reached to the beat it is left, both included; on the way to another none is."""
    own = swaying(UPRIGHT, MIXED, TURN)  # held from 0 to 1, 2 to 3 and 4 to 5
    assert own.held_between(2.0, 3.0) == own.held_between(2.25, 2.5) == MIXED
    assert own.held_between(0.0, 1.0) == UPRIGHT
    assert [
        own.held_between(*each) for each in ((1.9, 2.5), (2.5, 3.1), (1.2, 1.8), (0.5, 4.5))
    ] == [None] * 4
    assert Carriage(body=BODY).held_between(-9.0, 99.0) == UPRIGHT


def test_a_posture_that_lasts():
    own = lasting(BODY, MIXED)
    beats = np.array([-50.0, 0.0, 0.5, 1.0, 70.0])
    assert_allclose(own.angles(beats), np.tile(MIXED.angles, (5, 1)))
    assert not np.any(own.speeds(beats[:-1], beats[1:]))
    assert own.held_between(-7.0, 9.0) is None, (
        "asked of the one that was held, not of its likeness"
    )


def test_the_postures_that_decide_a_while():
    """Between two beats: from the last that has ended by then to the first that begins after; all of them upright or not."""
    draw = np.random.default_rng(4)
    for _ in range(40):
        edges = np.cumsum(draw.choice([0.5, 1.0, 2.0], size=2 * int(draw.integers(1, 9))))
        held = tuple(
            HeldPosture(float(low), float(high), (TURN, LEAN, SIDE)[k % 3])
            for k, (low, high) in enumerate(edges.reshape(-1, 2))
        )
        own = Carriage(body=BODY, held=held)
        for low, more in draw.choice(np.arange(0.0, 24.0, 0.25), size=(40, 2)):
            end = low + more
            first = max((k for k, each in enumerate(held) if each.end <= low), default=0)
            last = min((k for k, each in enumerate(held) if each.start >= end), default=len(held))
            assert own.part(low, end) == (BODY, held[first : last + 1])
