"""Rest for every prop and body, and the links from and to it."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer import kept
from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.segments import segment_segment
from sequencer.motion.laws.carriage import Carriage, beyond_upright
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.patterns.library import cycle_beats, law_for, patterns
from sequencer.motion.patterns.placing import BESIDE
from sequencer.motion.performers.batch import Laws
from sequencer.motion.performers.feasibility import body_gap, props_gap, reach_left
from sequencer.motion.props.prop import Prop, PropPoint, Solid, placed
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.one_link import link_search
from sequencer.motion.trajectories.one_link.hand_paths import (
    Piecewise,
    halting,
    hand_figures,
    hand_paths,
    places,
)
from sequencer.motion.trajectories.one_link.link_gaps import (
    GAP_LOOKS,
    around,
    least_gaps,
    rods_of,
    rough,
)
from sequencer.motion.trajectories.one_link.link_law import hand_at
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits, hand_space_of
from sequencer.motion.trajectories.one_link.link_words import limit_broken, pace_broken
from sequencer.motion.trajectories.one_link.links import link
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory


def poi(length):
    return Prop(length=length, mass=0.2, wick_radius=0.05)


def staff(length):
    return Prop(kind="staff", length=length / 2, behind=length / 2, mass=0.8, wick_radius=0.04)


def fan(length):
    return Prop(kind="fan", length=length, mass=0.5, wicks=5, spread=np.radians(120), wick_radius=0.03)  # fmt: skip


def hoop(diameter):
    return Prop(kind="hoop", length=diameter, mass=0.6, wicks=4, wick_radius=0.03)


CLUB = Prop(kind="club", length=0.45, behind=0.10, mass=0.35, wick_radius=0.04)
DART = Prop(kind="rope dart", length=1.0, mass=0.2, wick_radius=0.05)
PROPS = {
    "poi 0.3": poi(0.3), "poi 0.5": poi(0.5), "poi 0.7": poi(0.7), "dart": DART,
    "staff 0.9": staff(0.9), "staff 1.4": staff(1.4), "staff 1.6": staff(1.6), "club": CLUB,
    "fan": fan(0.4), "fan 0.3": fan(0.3), "hoop 0.6": hoop(0.6), "hoop 0.85": hoop(0.85),
}  # fmt: skip
CLEAR = 0.04  # [m] what a prop at rest is clear of everything by
STATURES = (0.8, 1.1, 1.4, 1.55, 1.755, 2.1, 2.6)


def resting(side, body, prop):
    law = rest(side, body, prop)
    return Trajectory((Span(start=0.0, end=1.0, law=law, origin=0.0, kind="rest", label="rest"),))


@pytest.mark.parametrize("stature", STATURES)
@pytest.mark.parametrize("name", PROPS)
def test_rest_is_within_reach_and_clear(name, stature):
    body, prop = Body(stature=stature), PROPS[name]
    for side in SIDES:
        trajectory = resting(side, body, prop)
        state = trajectory.at(np.zeros(1))
        assert np.linalg.norm(state.hand[0] - body.shoulder(side)) <= body.arm_length - 0.02
        (gap,) = body_gap(trajectory, [0.0, 1.0], prop=prop, body=body, near=CLEAR)
        assert np.isnan(gap.beat), f"{gap.value:.3f} m"
        out = 1.0 if side == "right" else -1.0
        for solid, ends in zip(prop.solids, placed(prop.solids, state), strict=True):
            for end in ends:
                assert end[0, 2] - solid.radius >= CLEAR - 1e-9  # from the floor
                assert out * end[0, 0] - solid.radius >= CLEAR / 2  # and so from the other prop


def test_rest_is_as_it_was_measured_and_long_ropes_lie_ahead():
    body = Body(stature=1.4)
    assert rest("right", body, 0.5).hand == rest("right", body, poi(0.5)).hand
    long = Prop(kind="rope dart", length=2.5, mass=0.2, wick_radius=0.05)
    state = rest("left", body, long).at(np.array(0.0))
    assert state.tether[1] > 0.5
    assert state.hand[2] + 2.5 * state.tether[2] == pytest.approx(
        0.1 + (2.55 - 2.5) * -state.tether[2]
    )
    assert np.linalg.norm(state.hand - body.shoulder("left")) <= body.arm_length - 0.02


PASSING = ("static-spin", "extension", "antispin-flower-3", "inspin-flower-3", "butterfly",
           "wheel-spin", "two-beat-weave")  # fmt: skip


@pytest.mark.parametrize(
    ("stature", "prop"),
    [(1.45, poi(0.4)), (1.70, poi(0.5)), (2.00, poi(0.6)), (1.75, CLUB), (1.75, fan(0.4))],
    ids=["1.45 poi", "1.70 poi", "2.00 poi", "clubs", "fans"],
)
@pytest.mark.parametrize("name", PASSING)
def test_links_from_and_to_rest_are_clean(name, stature, prop):
    """As the checks prove it: of limits, reach, own body and other prop, 2 cm to spare of the body."""
    body = Body(stature=stature)
    try:
        laws = block_laws(
            dict.fromkeys(SIDES, (name, {})), timing="together", direction="same",
            cycle=cycle_beats(name, {}, patterns()),
            body=body, tethers=dict.fromkeys(SIDES, prop.length),
        )  # fmt: skip
    except ValueError:
        pytest.skip("not a pattern of this prop")
    found = {}
    for side in ("right", "left"):
        block = Span(start=8.0, end=24.0, law=laws[side], origin=8.0, kind="block", label=name)
        space = hand_space_of(body, side, prop)
        found[side] = assembled(
            [block], rest(side, body, prop), space=space, other=found.get("right")
        )
    for side, trajectory in found.items():
        edges = [trajectory.spans[0].start, *(span.end for span in trajectory.spans)]
        gaps = body_gap(trajectory, edges, prop=prop, body=body, near=0.05)
        # A block may be nearer to the body than a link is asked to be; its ends are the link's.
        at = [gaps[2].value] if np.isfinite(gaps[2].beat) else [np.inf]
        for k in (0, 1, 3, 4):
            assert gaps[k].value >= min(0.02, *at)
        left = reach_left(trajectory, edges, side=side, body=body)
        assert min(left[k].value for k in (0, 1, 3, 4)) >= 0
        for k in (1, 3):
            assert pace_broken(LinkLimits(), trajectory.spans[k].law) == ""
    low = max(found[side].spans[1].start for side in SIDES)
    high = min(found[side].spans[3].end for side in SIDES)
    pair = [(found[side], prop) for side in SIDES]
    for edges in ([low, 8.0], [24.0, high]):
        block = props_gap(*pair, [8.0, 24.0])[0].value
        assert props_gap(*pair, edges)[0].value >= min(0.0, block)


BODY = Body(stature=1.7)
ROOM = HandSpace(body=BODY, side="right", length=0.5)


def two_states(seed):
    """Ends of hand paths before the body, moving as in patterns."""
    rng = np.random.default_rng(seed)

    def state():
        return Motion(
            hand=BODY.shoulder("right") + rng.uniform(-0.45, 0.45, (1, 3)),
            hand_rate=rng.uniform(-1.5, 1.5, (1, 3)),
            hand_acceleration=rng.uniform(-6, 6, (1, 3)),
            tether=np.array([[0.0, 0.0, -1.0]]),
            tether_rate=np.zeros((1, 3)),
            tether_acceleration=np.zeros((1, 3)),
            plane=np.array([[-1.0, 0.0, 0.0]]),
        )

    return state(), state()


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize("led", [False, True])
def test_the_bound_of_the_reach_holds_everywhere_and_is_near(seed, led):
    """Against dense sampling; on a sixteenth of a link a hull is wider than its curve by little."""
    first, last = two_states(seed)
    span = np.array([2.0])
    aside = np.array([[0.2, 0.25, -0.1]]) if led else None
    for paths in hand_paths(first, last, span, shoulder=ROOM.shoulder, arm=ROOM.arm, aside=aside):
        bound = hand_figures(paths, span, body=BODY, side="right")[0][0]
        hands = places(paths, np.linspace(0, 1, 4001))[0]
        seen = beyond_upright(BODY, hands, "right").max()
        assert seen <= bound + 1e-12
        assert bound <= seen + 0.02


@pytest.mark.parametrize("seed", range(4))
def test_a_path_led_aside_meets_both_ends_smoothly(seed):
    first, last = two_states(seed)
    beats, aside = 3.0, np.array([[0.3, 0.1, -0.2]])
    plain, *_ = hand_paths(first, last, np.array([beats]), shoulder=ROOM.shoulder, arm=ROOM.arm)
    for k, paths in enumerate(
        hand_paths(
            first, last, np.array([beats]), shoulder=ROOM.shoulder, arm=ROOM.arm, aside=aside
        )
    ):
        names = ("hand", "hand_rate", "hand_acceleration")
        for state, x in ((first, 0.0), (last, 1.0)):
            for name, part in zip(names, hand_at(paths, beats, np.array([x])), strict=True):
                assert_allclose(part, getattr(state, name), atol=1e-9)
        for knot in paths.knots[1:-1]:
            before, after = (
                hand_at(paths, beats, np.array([knot / 16 + d])) for d in (-1e-9, 1e-9)
            )
            for a, b in zip(before, after, strict=True):
                assert_allclose(a, b, atol=1e-5)
        if k == 0:
            middle = np.array([0.5])
            moved = places(paths, middle)[0] - places(plain, middle)[0]
            assert_allclose(moved, aside, atol=1e-12)
        assert_allclose(places(paths, np.linspace(0, 1, 50))[0],
                        hand_at(paths, beats, np.linspace(0, 1, 50))[0], atol=1e-12)  # fmt: skip


@pytest.mark.parametrize("halt", [2, 4])
def test_a_tether_that_halts_meets_both_ends_and_stands_still_between(halt):
    rng = np.random.default_rng(3)
    start, end = rng.normal(size=(2, 6, 3, 2))
    paths = halting(start, end, halt)
    for k in range(6):
        one = Piecewise(paths.knots, paths.pieces[k : k + 1])
        for state, x in ((start, 0.0), (end, 1.0)):
            assert_allclose(np.concatenate(hand_at(one, 1.0, np.array([x]))), state[k], atol=1e-9)
        for knot in paths.knots[1:-1]:
            for d in (-1e-9, 1e-9):
                _, rate, push = hand_at(one, 1.0, np.array([knot / 16 + d]))
                assert_allclose(rate, 0, atol=1e-5)
                assert_allclose(push, 0, atol=1e-4)
        stop = places(one, np.array([halt / 16]))[0, 0]
        assert_allclose(stop, start[k, 0] + 0.4 * start[k, 1] * halt / 16, atol=1e-12)


@pytest.mark.parametrize("name", ["poi 0.5", "staff 1.4", "club", "fan", "hoop 0.85"])
def test_gaps_at_the_looks_are_those_of_the_true_shape(name):
    """Against nearest points of segments, body by body; a hoop's rim to the centimetre that is spared."""
    rng = np.random.default_rng(7)
    prop = PROPS[name]

    def units(*shape):
        vectors = rng.normal(size=(*shape, 3))
        return vectors / np.linalg.norm(vectors, axis=-1, keepdims=True)

    hands = rng.uniform(-0.6, 0.6, (5, GAP_LOOKS, 3)) + np.array([0.0, 0.3, 1.2])
    tethers = units(5, GAP_LOOKS)
    planes = np.cross(tethers, units(5, GAP_LOOKS))
    planes /= np.linalg.norm(planes, axis=-1, keepdims=True)
    still = np.zeros_like(hands)
    bodies = around(Carriage(body=BODY), np.zeros(GAP_LOOKS))
    got = least_gaps(
        hands, tethers, np.cross(planes, tethers), rods_of(prop.solids), bodies.arrays()
    )
    state = Motion(
        hand=hands, hand_rate=still, hand_acceleration=still, tether=tethers, tether_rate=still,
        tether_acceleration=still, plane=planes,
    )  # fmt: skip
    want = np.full(5, np.inf)
    for solid, ends in zip(prop.solids, placed(prop.solids, state), strict=True):
        for capsule in BODY.capsules:
            low, high = (
                np.broadcast_to(np.array(e), hands.shape) for e in (capsule.start, capsule.end)
            )
            away = segment_segment(*ends, low, high)[0] - solid.radius - capsule.radius
            want = np.minimum(want, away.min(axis=-1))
    inside = want < -0.02  # how deep is no matter
    assert_allclose(got[~inside], want[~inside], atol=0.012 if "hoop" in name else 1e-9)
    assert np.all(got[inside] < 0)


def test_the_other_prop_is_one_of_the_bodies():
    """A poi hanging 0.3 m beside the other one is 0.2 m from it: two heads of 5 cm."""
    prop, beats = poi(0.5), np.zeros(GAP_LOOKS)
    there = rest("left", BODY, prop).at(beats)
    hand = there.hand + np.array([-0.3, 0.0, 0.0])
    bodies = around(Carriage(body=BODY), beats, (there, prop.solids))
    gap = least_gaps(hand, there.tether, there.tether, rods_of(prop.solids), bodies.arrays())
    assert gap == pytest.approx(0.2)


def test_fewer_bodies_hold_a_flat_prop_nearly():
    for prop in (fan(0.4), hoop(0.85)):
        few = rough(prop.solids)
        assert len(few) <= 8
        reach = max(spot.off for solid in few for spot in (solid.start, solid.end))
        assert reach == pytest.approx(prop.length)
    ring = rough(hoop(0.85).solids)
    middle = np.hypot(*np.mean([ring[0].start, ring[0].end], axis=0) - np.array([0.425, 0.0]))
    assert middle + ring[0].radius >= 0.425 + 0.03 - 1e-9  # holds rim and wick between its ends
    assert rough(poi(0.5).solids) == poi(0.5).solids


def test_a_shoulder_gives_on_a_link():
    """5 cm beyond the straight arm, straight ahead, is what the shoulder gives; 12 cm is not."""
    still = rest("right", BODY, poi(0.5)).at(np.array(0.0))
    for beyond, broken in ((0.05, False), (0.12, True)):
        hand = BODY.shoulder("right") + np.array([0.0, BODY.arm_length + beyond, 0.0])
        far = Motion(
            hand=hand, hand_rate=np.zeros(3), hand_acceleration=np.zeros(3), tether=still.tether,
            tether_rate=np.zeros(3), tether_acceleration=np.zeros(3), plane=still.plane,
        )  # fmt: skip
        said = limit_broken(LinkLimits(), link(still, far, 2.0, ROOM), ROOM)
        assert ("reach" in said) == broken


def test_the_same_link_is_found_again():
    still = rest("right", BODY, poi(0.5)).at(np.array(0.0))
    start = law_for("antispin-flower-3", {}, side="right", body=BODY, tether=0.5).at(np.array(0.3))
    space = hand_space_of(BODY, "right", poi(0.5))
    first = link(still, start, 2.0, space)
    kept._MEMORY.clear()
    read = link(still, start, 2.0, space)
    searched = link_search.searched(still, start, 2.0, space, None, None)
    for again in (read, searched.law):
        assert again is not first
        assert again.beats == first.beats
        assert again.tilt == first.tilt
        for one, other in ((again.angles, first.angles), (again.hand, first.hand)):
            assert one.knots == other.knots
            assert np.array_equal(one.pieces, other.pieces)
        assert np.array_equal(again.frame, first.frame)


def test_a_link_with_halts_is_smooth_and_within_its_bounds():
    """Out of a buzzsaw the prop is stopped first: as twice continuously differentiable as any link."""
    body, prop = Body(stature=2.0), poi(0.6)
    law = block_laws(
        dict.fromkeys(SIDES, ("buzzsaw", {})), timing="together", direction="same",
        cycle=cycle_beats("buzzsaw", {}, patterns()), body=body,
        tethers=dict.fromkeys(SIDES, prop.length),
    )["right"]  # fmt: skip
    last = rest("right", body, prop).at(np.array(0.0))
    own = link(law.at(np.array(16.0)), last, 2.0, hand_space_of(body, "right", prop))
    assert len(own.angles.knots) == 4
    beats = np.linspace(0, 2, 3201)
    motion = own.at(beats)
    for low, high, bounds in own.parts:
        here = (beats >= low) & (beats <= high)
        assert np.linalg.norm(motion.tether_rate[here], axis=-1).max() <= bounds.turn_rate
        push = np.linalg.norm(motion.tether_acceleration[here], axis=-1).max()
        assert push <= bounds.turn_acceleration
        wide = np.diff(motion.plane[here], axis=0) / np.diff(beats[here])[:, None]
        assert np.linalg.norm(wide, axis=-1).max() <= bounds.frame_rate + 1e-6
    step = beats[1]
    rates = (motion.tether[2:] - motion.tether[:-2]) / (2 * step)
    assert_allclose(rates, motion.tether_rate[1:-1], atol=1e-3)
    pushes = (motion.tether_rate[2:] - motion.tether_rate[:-2]) / (2 * step)
    assert_allclose(pushes, motion.tether_acceleration[1:-1], atol=0.3)
    gaps = least_gaps(
        motion.hand, motion.tether, motion.tether, rods_of(prop.solids),
        _still(body, len(beats)),
    )  # fmt: skip
    straight = link(last, law.at(np.array(0.0)), 2.0, hand_space_of(body, "right", prop))
    together = Laws([straight, own])
    for k, one in enumerate((straight, own)):
        here = one.at(beats)
        seen = together.at(np.full(len(beats), k), beats)
        for part, expected in zip(
            seen, (here.hand, here.hand_rate, here.tether, here.tether_rate), strict=True
        ):
            assert_allclose(part.T, expected, atol=1e-9)
    assert gaps > 0  # 6 cm inside without a halt


@pytest.mark.parametrize("tilt", [(0.0, 0.0), (0.0, 3.0), (1.0, -2.0)])
def test_every_bound_of_a_link_holds_on_each_of_its_parts(tilt):
    """A quick one, whose hand is pushed harder than it moves, with its plane rolled about the tether."""
    law = law_for("antispin-flower-3", {}, side="right", body=BODY, tether=0.5)
    still = rest("right", BODY, poi(0.5)).at(np.array(0.0))
    own = replace(link(still, law.at(np.array(0.3)), 1.0, ROOM), tilt=tilt)
    rolled = 0.0
    for low, high, bounds in own.parts:
        beats = np.linspace(low, high, 401)
        motion, step = own.at(beats), beats[1] - beats[0]
        frame = np.diff(np.stack((motion.plane, np.cross(motion.plane, motion.tether))), axis=1)
        jerk = np.diff(motion.hand_acceleration, axis=0) / step
        for seen, bound in (
            (motion.hand_rate, bounds.hand_speed),
            (motion.hand_acceleration, bounds.hand_acceleration),
            (jerk, bounds.hand_jerk),
            (motion.hand[:, :2], bounds.hand_reach),
            (motion.tether_rate, bounds.turn_rate),
            (motion.tether_acceleration, bounds.turn_acceleration),
            (frame / step, bounds.frame_rate),
        ):
            assert np.linalg.norm(seen, axis=-1).max() <= bound * (1 + 1e-6)
        rolled = max(rolled, np.linalg.norm(frame / step, axis=-1).max() / bounds.turn_rate)
    assert (rolled > 1.0) == (tilt != (0.0, 0.0))


def _still(body, count):
    """A body that stands still, for so many looks."""
    low, high = Carriage(body=body).capsule_ends(np.zeros(count))
    return low, high - low, np.array([capsule.radius for capsule in body.capsules])


def test_where_a_prop_rests_by_arithmetic():
    """93 % of the arm, 6 % of the stature ahead, 10 cm over the floor, a flat prop's ball 2 cm over it."""
    body = Body(stature=1.755)
    arm, shoulder = 0.93 * body.arm_length, body.shoulder_height
    widest = max(abs(c.start[0]) + c.radius for c in body.capsules)
    thick = 0.05
    out = max(body.half_breadth + BESIDE, widest + thick + 0.06) - body.half_shoulder
    ahead = 0.06 * 1.755
    drop = np.sqrt(arm**2 - out**2 - ahead**2)
    wide = Prop(kind="fan", length=0.6, mass=0.6, wick_radius=thick, wicks=5, spread=np.pi / 2)
    cases = {
        # a poi hangs from the hanging arm, as long as its head is 10 cm over the floor
        0.4: shoulder - drop,
        # held higher: below the hand hang the tether and its head
        0.9: 0.9 + thick + 0.10,
        # a fan of a right angle: the ball about its outer spokes, L·cos 45° away and L·sin 45° wide
        wide: 0.6 * np.sqrt(2) + thick + 0.02,
    }
    for prop, height in cases.items():
        for side, sign in (("right", 1), ("left", -1)):
            law = rest(side, body, prop)
            place = (sign * (body.half_shoulder + out), ahead, max(height, shoulder - drop))
            assert law.hand.centre == pytest.approx(place, abs=1e-9)
            assert law.tether == pytest.approx((0.0, 0.0, -1.0), abs=1e-6)
    long = rest(
        "right", body, 2.5
    )  # a rope: the arm as high as it goes, the head ahead over the floor
    top = shoulder + drop
    steep = (top - 0.10) / (2.5 + thick)
    assert long.hand.centre[2] == pytest.approx(top)
    assert long.tether == pytest.approx((0.0, np.sqrt(1 - steep**2), -steep))


def test_a_body_across_the_prop_is_a_ball_on_its_ray():
    """A chord from (0.3, 0.4), 0.5 from the hand, to one farther: the ray to its start, by Pythagoras."""
    chord = Solid("hoop", PropPoint(0.3, 0.4), PropPoint(0.45, 0.4), 0.012)
    spoke = Solid("fan", PropPoint(-0.3, -0.4), PropPoint(0.6, 0.8), 0.02)
    for found, expected in zip(
        rods_of([chord, spoke]),
        [(0.6, 0.8, 0.5, 0.5, 0.022), (0.6, 0.8, -0.5, 1.0, 0.02)],
        strict=True,
    ):
        row = (found.along, found.across, found.low, found.high, found.radius)
        assert row == pytest.approx(expected)


def test_long_rods_and_bodies_at_a_slant_come_nearest_within():
    """Neither end is nearest: against a fine grid over both segments, some nearly parallel."""
    rng = np.random.default_rng(17)
    rod = rods_of([Solid("staff", PropPoint(-0.9), PropPoint(1.1), 0.01)])
    shares = np.linspace(0.0, 1.0, 401)
    for k in range(24):
        tether = rng.normal(size=3)
        tether /= np.linalg.norm(tether)
        axis = rng.normal(size=3) + (6.0 * tether if k % 3 == 0 else 0.0)
        axis /= np.linalg.norm(axis)
        hand, start = rng.normal(size=3) * 0.1, rng.normal(size=3) * 0.2 - 0.8 * axis
        bodies = (start[None, None], 1.7 * axis[None, None], np.array([0.05]))
        got = least_gaps(hand[None], tether[None], np.zeros((1, 3)), rod, bodies)
        one = hand + np.outer(-0.9 + 2.0 * shares, tether)
        other = start + np.outer(1.7 * shares, axis)
        apart = np.linalg.norm(one[:, None] - other, axis=-1).min() - 0.06
        assert apart - 0.006 < got <= apart + 1e-9
