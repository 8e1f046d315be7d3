"""What each search is given: values and slopes worked out by hand, with a trajectory whose every number is known.

The searches themselves are held by brute force elsewhere; here a term that is missing, or looked up at the
wrong piece, shows to the last digit.
"""

from itertools import product

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers import feasibility
from sequencer.motion.performers.feasibility import (
    body_quantity,
    props_quantity,
    pull_quantity,
    reach_quantity,
    shape_of,
    speeds_of,
)
from sequencer.motion.performers.stretches import Stretches, stretches
from sequencer.motion.props.prop import Prop, PropPoint, Solid
from tests.unit.motion.performers.drawn import Drawn

BODY = Body(stature=1.7)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.04)
STAFF = Prop(kind="staff", length=0.6, behind=0.8, mass=0.9, wick_radius=0.05)
FAN = Prop(kind="fan", length=0.4, mass=0.5, wicks=4, spread=2.0, wick_radius=0.03)
HOOP = Prop(kind="hoop", length=0.8, mass=0.5, wicks=3, wick_radius=0.03)
BENT = Carriage(
    body=BODY,
    held=(HeldPosture(0.5, 1.5, Posture(turn=0.3, lean=0.05)), HeldPosture(2.5, 4.0, Posture())),
)


def cut_for(quantity, trajectories, *intervals):
    """Trajectories as they are cut for a quantity."""
    return stretches(trajectories, intervals, whole_beats=quantity.whole_beats, at=quantity.places)


def apart(a, b, c, d):
    """Smallest distance of two segments: corners, edges and the inside of the square of shares."""
    best = np.inf
    for (p, q), other in (((a, b), c), ((a, b), d), ((c, d), a), ((c, d), b)):
        way = q - p
        share = np.clip((other - p) @ way / (way @ way), 0, 1) if way @ way > 0 else 0.0
        best = min(best, np.linalg.norm(p + share * way - other))
    sides = np.stack([b - a, c - d], axis=1)
    if np.linalg.matrix_rank(sides) == 2:
        s, t = np.linalg.lstsq(sides, c - a, rcond=None)[0]
        if 0 <= s <= 1 and 0 <= t <= 1:
            best = min(best, np.linalg.norm(a + s * (b - a) - c - t * (d - c)))
    return best


def bodies(prop, state):
    """Start, end and radius of every solid of a prop at one instant."""
    aside = np.cross(state.plane, state.tether)
    return [
        (
            *(state.hand + p.along * state.tether + p.across * aside for p in (s.start, s.end)),
            s.radius,
        )
        for s in prop.solids
    ]


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("carriage", [None, BENT], ids=["upright", "bent"])
def test_reach_has_its_value_and_slope(side, carriage):
    """Arm − distance from the shoulder's box; |h'| + |s'| + 8 cm times the trunk's rate of turn."""
    own = Drawn(2, about=(0.5, 0.5, 1.3))
    body = carriage or Carriage(body=BODY)
    quantity = reach_quantity(side=side, body=BODY, carriage=body)
    cut = cut_for(quantity, [own], (0.25, 5.0))
    cuts = {0.25, 1.7, 3.25, 5.0} | ({0.5, 1.5, 2.5, 4.0} if carriage else set())
    extra = {edge for edge in body.edges.tolist() if 0.25 < edge < 5.0}
    assert cut.start.tolist() == sorted(cuts | extra)[:-1]
    sway = body.shoulder_bounds(cut.start, cut.end)[0]
    turning = body.speeds(cut.start, cut.end)[0]
    hand = [own.bound(beat, "hand_speed") for beat in cut.start]
    assert_allclose(quantity.slope(cut), hand + sway + 0.08 * turning, rtol=1e-12)
    beats = np.linspace(0.3, 4.9, 11)
    found, labels = quantity.value(beats, own.at(beats))
    beyond = body.beyond(beats, own.at(beats).hand, side)
    assert_allclose(found, BODY.arm_length - beyond, rtol=1e-12)
    assert labels.tolist() == [0] * 11
    assert (quantity.error, quantity.enough) == (0.002, 0.0)
    assert quantity.needed == (1, 0, False)


def test_pull_has_its_value_and_slope():
    """λ²·A − g·d_z with A = r|d'|² − d·h''; slope λ²(2r|d'||d''| + |d'||h''| + |h'''|) + g|d'|."""
    own = Drawn(3)
    tempo = np.array([1.5, 0.7, 2.2, 1.1, 3.0, 0.4])  # for each whole beat

    def rates(beats):
        return tempo[np.floor(beats).astype(int)]

    quantity = pull_quantity(length=STAFF.length, tempos=(rates,))
    cut = cut_for(quantity, [own], (0.5, 5.5))
    slope = quantity.slope(cut)
    assert cut.start.tolist() == [0.5, 1, 1.7, 2, 3, 3.25, 4, 5]
    for k, beat in enumerate(cut.start):
        h2, h3, d1, d2 = (
            own.bound(beat, name)
            for name in ("hand_acceleration", "hand_jerk", "turn_rate", "turn_acceleration")
        )
        rate = tempo[int(beat)]
        expected = rate**2 * (2 * 0.6 * d1 * d2 + d1 * h2 + h3) + 9.80665 * d1
        assert slope[k] == pytest.approx(expected, rel=1e-12)
    beats = np.array([0.6, 1.3, 2.9, 4.2])
    found, labels = quantity.value(beats, own.at(beats))
    for k, beat in enumerate(beats):
        state = own.at(beat)
        outward = (
            0.6 * state.tether_rate @ state.tether_rate - state.tether @ state.hand_acceleration
        )
        expected = tempo[int(beat)] ** 2 * outward - 9.80665 * state.tether[2]
        assert found[k] == pytest.approx(expected, rel=1e-12)
    assert labels.tolist() == [0] * 4
    assert (quantity.error, quantity.enough) == (0.05, 0.0)
    assert quantity.needed == (3, 2, False)


def test_pull_at_the_slowest_and_the_fastest_of_some_beats():
    """Tempos widened to sixteenths of a beat a second; the value is the smaller of both, the slope of the faster."""
    own = Drawn(3)
    tempo = np.array([1.5, 1.27, 1.6, 1.1, 3.0, 0.4])
    anyone = pull_quantity(length=0.6, tempos=(lambda t: tempo[np.floor(t).astype(int)],))
    assert anyone.steady(0.5, 2.5) == (1.25, 1.625)
    assert anyone.steady(1.0, 2.0) == (1.25, 1.3125)
    lasting = anyone.always((1.25, 1.625), 0.3)
    slow, fast = (
        pull_quantity(length=0.6, tempos=(lambda t, each=each: np.full(t.shape, each),))
        for each in (1.25, 1.625)
    )
    beats = np.linspace(0.1, 5.9, 40)
    state = own.at(beats)
    values = [each.value(beats, state)[0] for each in (slow, fast)]
    assert np.any(values[0] < values[1])
    assert np.any(values[0] > values[1])
    assert_allclose(lasting.value(beats, state)[0], np.minimum(*values), rtol=1e-12)
    cut = cut_for(lasting, [own], (0.5, 5.5))
    assert_allclose(lasting.slope(cut), fast.slope(cut), rtol=1e-12)
    assert (lasting.enough, lasting.error, lasting.needed) == (0.3, 0.05, anyone.needed)


@pytest.mark.parametrize("carriage", [None, BENT], ids=["upright", "bent"])
@pytest.mark.parametrize("prop", [STAFF, FAN], ids=lambda prop: prop.kind)
def test_own_body_has_its_value_and_slope(prop, carriage):
    """The least of all solids against all capsules, segment by segment; slopes of prop and body add up."""
    own = Drawn(4, about=(0.15, 0.1, 1.2))
    body = carriage or Carriage(body=BODY)
    quantity = body_quantity(shape=prop.solids, body=BODY, carriage=body, enough=0.1)
    cut = cut_for(quantity, [own], (0.25, 5.0))
    slope = quantity.slope(cut)
    sway = body.capsule_speeds(cut.start, cut.end).max(axis=0)
    for k, beat in enumerate(cut.start):
        h, d, w = (own.bound(beat, name) for name in ("hand_speed", "turn_rate", "frame_rate"))
        moving = h + (max(0.8 * d, 0.0) if prop is STAFF else 0.4 * w)
        assert slope[k] == pytest.approx(moving + sway[k], rel=1e-12)
    assert (carriage is None) == (len(cut.start) == 3)
    beats = np.linspace(0.3, 4.9, 9)
    found, labels = quantity.value(beats, own.at(beats))
    lows, highs = body.capsule_ends(beats)
    for k, beat in enumerate(beats):
        gaps = [
            min(
                apart(start, end, lows[c][k], highs[c][k]) - radius - capsule.radius
                for start, end, radius in bodies(prop, own.at(beat))
            )
            for c, capsule in enumerate(BODY.capsules)
        ]
        assert found[k] == pytest.approx(min(gaps), abs=1e-9)
        assert gaps[labels[k]] == pytest.approx(min(gaps), abs=1e-9)
    assert len(set(labels.tolist())) > 1
    assert (quantity.error, quantity.enough) == (0.005, 0.1)
    assert quantity.needed == (1, 1, prop is FAN)


@pytest.mark.parametrize(("left", "right"), [(POI, STAFF), (STAFF, FAN)], ids=["axes", "fan"])
def test_both_props_have_their_value_and_slope(left, right):
    """Cut where either changes, slopes of both added; gaps by segments where the balls about both are near."""
    one, two = Drawn(5), Drawn(6, cuts=(0.0, 1.7 + 5e-13, 2.0, 4.5, 6.0))
    quantity = props_quantity(shapes=(left.solids, right.solids))
    cut = cut_for(quantity, [one, two], (0.25, 3.0), (3.0, 5.0))
    slope = quantity.slope(cut)
    assert_allclose(cut.start, [0.25, 1.7, 2.0, 3.0, 3.25, 4.5], atol=1e-11)
    assert_allclose(cut.end, [1.7, 2.0, 3.0, 3.25, 4.5, 5.0], atol=1e-11)
    assert cut.group.tolist() == [0, 0, 0, 1, 1, 1]
    for k, beat in enumerate((cut.start + cut.end) / 2):
        expected = 0.0
        for own, prop in ((one, left), (two, right)):
            h, d, w = (own.bound(beat, name) for name in ("hand_speed", "turn_rate", "frame_rate"))
            expected += h + (0.4 * w if prop is FAN else max(prop.length, prop.behind) * d)
        assert slope[k] == pytest.approx(expected, rel=1e-12)
    assert (quantity.error, quantity.enough) == (0.005, 0.0)
    assert quantity.needed == (1, 1, right is FAN)
    beats = np.linspace(0.3, 4.9, 15)
    found, labels = quantity.value(beats, one.at(beats), two.at(beats))
    near = 0
    for k, beat in enumerate(beats):
        first, second = (bodies(prop, own.at(beat)) for own, prop in ((one, left), (two, right)))
        gaps = {
            (i, j): apart(a, b, c, d) - r - s
            for (i, (a, b, r)), (j, (c, d, s)) in product(enumerate(first), enumerate(second))
        }
        j, i = divmod(labels[k], len(first))
        if found[k] == pytest.approx(min(gaps.values()), abs=1e-9):
            near += 1
            assert gaps[i, j] == pytest.approx(min(gaps.values()), abs=1e-9)
        else:
            assert 0.01 <= found[k] < min(gaps.values())
            assert labels[k] == 0
    assert near >= 3


def test_props_far_apart_are_told_by_their_balls():
    """Balls about the whole props, by hand: a poi's about 0.265 with 0.275, for a rope 10 mm and a head of 40 mm."""
    poi = Prop(length=0.5, mass=0.2, wick_radius=0.04)
    quantity = props_quantity(shapes=(poi.solids, poi.solids))
    # beside each other at 56 cm their balls are 1 cm apart, from which on the heads themselves are looked at
    for off, gap in ((2.0, 2.0 - 2 * 0.275), (0.5601, 0.0101), (0.5599, 0.5599 - 0.08)):
        found, labels = quantity.value(np.array([0.5]), held((0, 0, 1)), held((off, 0, 1)))
        assert found[0] == pytest.approx(gap)
        assert labels.tolist() == [3 if off == 0.5599 else 0]
    # where 1.5 cm are enough, from 2.5 cm on
    more = quantity.always((), 0.015)
    for off, gap in ((0.5751, 0.0251), (0.5749, 0.5749 - 0.08)):
        found, _ = more.value(np.array([0.5]), held((0, 0, 1)), held((off, 0, 1)))
        assert found[0] == pytest.approx(gap)


def held(place):
    """One instant of a hand, its tether along y."""
    rows = np.zeros((1, 3))
    return Motion(
        hand=rows + np.array(place, float), hand_rate=rows, hand_acceleration=rows,
        tether=rows + np.array([0.0, 1.0, 0.0]), tether_rate=rows, tether_acceleration=rows,
        plane=rows + np.array([1.0, 0.0, 0.0]),
    )  # fmt: skip


def test_balls_about_whole_shapes_by_hand():
    """A staff: −0.85 to 0.65, so 0.75 about −0.1. A point 0.3 beside the middle: as far as it lies off."""
    assert feasibility._whole(STAFF.solids) == pytest.approx((-0.1, 0.75))
    wide = (
        Solid("a", PropPoint(0.0), PropPoint(1.0), 0.1),
        Solid("b", PropPoint(0.5, 3.0), PropPoint(0.5, -2.0), 0.2),
    )
    assert feasibility._whole(wide) == pytest.approx((0.5, 3.2))
    uneven = (
        Solid("a", PropPoint(-1.0), PropPoint(-1.0), 0.5),
        Solid("b", PropPoint(2.0), PropPoint(2.0), 0.1),
    )
    assert feasibility._whole(uneven) == pytest.approx((0.3, 1.8))


def cut_of(**bounds):
    zero = dict.fromkeys(("hand_speed", "hand_acceleration", "turn_rate", "turn_acceleration"), 0.0)
    own = tuple(Bounds(**{**zero, "hand_reach": 0.0, **each}) for each in bounds["each"])
    n = len(own)
    return Stretches(
        group=np.arange(n), start=np.arange(n) * 1.0, end=np.arange(n) + 1.0, bounds=(own,)
    )


def test_circumstances_that_last():
    """A posture that is held, and how near is near; between two postures there are none."""
    for quantity in (
        reach_quantity(side="left", body=BODY, carriage=BENT),
        body_quantity(shape=POI.solids, body=BODY, carriage=BENT),
    ):
        assert quantity.steady(0.5, 1.5) == BENT.held[0].posture
        assert quantity.steady(1.4, 1.6) is None
        lasting = quantity.always(BENT.held[0].posture, 0.7)
        assert (lasting.enough, lasting.error) == (0.7, quantity.error)
        state = Drawn(4, about=(0.15, 0.1, 1.2)).at(np.array([0.7, 1.2, 9.0]))
        found, labels = lasting.value(np.array([-3.0, 7.0, 99.0]), state)
        expected, known = quantity.value(np.full(3, 1.0), state)
        assert_array_equal(found, expected)
        assert_array_equal(labels, known)


def test_speeds_by_hand():
    """On the axis by |d'|, beside it by the frame; whichever is larger, piece by piece."""
    cut = cut_of(
        each=[
            {"hand_speed": 0.5, "turn_rate": 2.0, "frame_rate": 3.0},
            {"hand_speed": 0.1, "turn_rate": 2.0, "frame_rate": 9.0},
        ]
    )
    assert_allclose(speeds_of(cut, STAFF.solids), [0.5 + 0.8 * 2, 0.1 + 0.8 * 2])
    assert_allclose(speeds_of(cut, POI.solids), [0.5 + 0.5 * 2, 0.1 + 0.5 * 2])
    # on the axis at −0.7 and beside it at √(0.3² + 0.4²) = 0.5
    both = (
        Solid("a", PropPoint(-0.7), PropPoint(0.0), 0.1),
        Solid("b", PropPoint(0.3, -0.4), PropPoint(0.2), 0.1),
    )
    assert_allclose(speeds_of(cut, both), [0.5 + 0.5 * 3, 0.1 + 0.5 * 9])
    slow = cut_of(each=[{"turn_rate": 2.0, "frame_rate": 2.0}])
    assert_allclose(speeds_of(slow, both), [0.7 * 2])
    endless = cut_of(each=[{"turn_rate": 2.0}])
    assert_allclose(speeds_of(endless, POI.solids), [1.0])


def test_which_shape_is_looked_at():
    """The envelope only for a flat prop about whose turning nothing is proven somewhere."""
    for prop in (FAN, HOOP):
        assert shape_of(prop, np.array([1.0, 2.0])) == prop.solids
        assert shape_of(prop, np.array([1.0, np.inf])) == prop.envelope
    for prop in (POI, STAFF):
        assert shape_of(prop, np.array([1.0, np.inf])) == prop.solids


def test_the_nearest_bodies_of_both_by_hand():
    """Three instants; solids of a staff: shaft, front head, rear head. A label is n·j + i; the first of equals."""
    rows = np.zeros((3, 3))
    across = rows + np.array([0.0, 1.0, 0.0])

    def state(hands):
        return Motion(
            hand=np.array(hands, float), hand_rate=rows, hand_acceleration=rows, tether=across,
            tether_rate=rows, tether_acceleration=rows, plane=rows + np.array([1.0, 0.0, 0.0]),
        )  # fmt: skip

    # the left's front head beside the right's rear one; front beside front; the shafts cross nowhere
    found, label = feasibility._nearest(
        [STAFF.solids, POI.solids],
        [state([[0, 0, 0]] * 3), state([[1, 0.1, 0], [1, -1.3, 0], [1, 0.9, 0]])],
    )
    # heads of 5 and 4 cm: 1 − 0.09; the poi's head at 0.6 by the staff's front head, at −0.8 by its rear one
    assert_allclose(found, [0.91, 0.91, np.hypot(1.0, 0.3) - 0.06], atol=1e-12)
    assert label.tolist() == [3 * 1 + 1, 3 * 1 + 2, 3 * 0 + 1]
