"""What each search is given: values and slopes worked out by hand, with a trajectory whose every number is known.

The searches themselves are held by brute force elsewhere; here a term that is missing, or looked up at the
wrong piece, shows to the last digit.
"""

from dataclasses import replace
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
    Least,
    Stretches,
    body_gap,
    props_gap,
    pull_left,
    reach_left,
    shape_of,
    speeds_of,
    stretches,
)
from sequencer.motion.props.prop import Prop, PropPoint, Solid

BODY = Body(stature=1.7)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.04)
STAFF = Prop(kind="staff", length=0.6, behind=0.8, mass=0.9, wick_radius=0.05)
FAN = Prop(kind="fan", length=0.4, mass=0.5, wicks=4, spread=2.0, wick_radius=0.03)
HOOP = Prop(kind="hoop", length=0.8, mass=0.5, wicks=3, wick_radius=0.03)
BENT = Carriage(
    body=BODY,
    held=(HeldPosture(0.5, 1.5, Posture(turn=0.3, lean=0.05)), HeldPosture(2.5, 4.0, Posture())),
)


class Drawn:
    """Drawn waves about a place; its bounds are just numbers, one set for each piece."""

    def __init__(self, seed, cuts=(0.0, 1.7, 3.25, 6.0), about=(0.3, 0.4, 1.3)):
        draw = np.random.default_rng(seed)
        self.about, self.waves, self.cuts = about, draw.uniform(-1, 1, (3, 2, 3)), cuts
        names = (
            "hand_speed", "hand_acceleration", "turn_rate", "turn_acceleration", "hand_reach",
            "hand_jerk", "turn_jerk", "frame_rate", "frame_acceleration",
        )  # fmt: skip
        self.bounds = [
            Bounds(**dict(zip(names, row, strict=True)))
            for row in draw.uniform(0.5, 2.0, (len(cuts) - 1, 9)).tolist()
        ]

    def at(self, beats):
        t = np.asarray(beats, float)[..., None]
        hand, rate, push = (
            self.about * (k == 0) + 0.3 * 2**k * self.waves[0, 0] * np.sin(2 * t + k * np.pi / 2)
            for k in np.array([[0], [1], [2]])
        )
        tether = self.waves[1, 0] + self.waves[1, 1] * np.sin(2 * t + self.waves[0, 1])
        tether /= np.linalg.norm(tether, axis=-1, keepdims=True)
        plane = np.cross(tether, self.waves[2, 0])
        plane /= np.linalg.norm(plane, axis=-1, keepdims=True)
        spin = self.waves[2, 1] * np.cos(3 * t)
        return Motion(
            hand=hand, hand_rate=rate, hand_acceleration=push, tether=tether, tether_rate=spin,
            tether_acceleration=0 * hand, plane=plane,
        )  # fmt: skip

    def pieces(self, start, end):
        spans = zip(self.cuts, self.cuts[1:], self.bounds, strict=False)
        return tuple(
            (max(a, start), min(b, end), own) for a, b, own in spans if b > start and a < end
        )

    def bound(self, beat, name):
        """A bound of the piece that a beat lies in."""
        k = sum(cut <= beat for cut in self.cuts) - 1
        return getattr(self.bounds[k], name)


@pytest.fixture
def asked(monkeypatch):
    """What `_least` is given, instead of a search."""
    given = []
    monkeypatch.setattr(feasibility, "_least", lambda *each: given.append(each) or [])
    for name in ("_body_gaps", "_props_gaps"):  # nothing is kept of an invented search
        monkeypatch.setattr(feasibility, name, getattr(feasibility, name).__wrapped__)
    return given


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


def test_stretches_are_cut_where_they_should_by_hand():
    own = Drawn(1)
    cut = stretches(own, [0.5, 2.5, 4.0], at=[3.0, 1.0, 1.0, 0.5, 9.0, 2.5, -1.0])
    assert_array_equal(cut.start, [0.5, 1.0, 1.7, 2.5, 3.0, 3.25])
    assert_array_equal(cut.end, [1.0, 1.7, 2.5, 3.0, 3.25, 4.0])
    assert cut.group.tolist() == [0, 0, 0, 1, 1, 1]
    assert cut.bounds == tuple(own.bounds[k] for k in (0, 0, 1, 1, 1, 2))
    assert_array_equal(cut.edges, [0.5, 2.5, 4.0])
    speed, jerk = cut.columns("hand_speed", "hand_jerk")
    assert speed.tolist() == [b.hand_speed for b in cut.bounds]
    assert jerk.tolist() == [b.hand_jerk for b in cut.bounds]
    beats = stretches(own, [0.5, 3.0], whole_beats=True, at=[1.0, 2.6])
    assert_array_equal(beats.start, [0.5, 1.0, 1.7, 2.0, 2.6])
    assert_array_equal(beats.end, [1.0, 1.7, 2.0, 2.6, 3.0])
    assert_array_equal(stretches(own, [0.5, 3.0]).start, [0.5, 1.7])
    whole = stretches(own, [1.0, 1.5], whole_beats=True)
    assert_array_equal(whole.start, [1.0])


def test_slivers_are_left_out():
    """Narrower than 1e-12 beats is rounding; twice that is a part."""
    own = Drawn(1)
    cut = stretches(own, [0.0, 4.0], at=[1.0, 1.0 + 0.5e-12])
    assert_allclose(cut.start, [0.0, 1.0, 1.7, 3.25], atol=1e-12)
    wider = stretches(own, [0.0, 4.0], at=[1.0, 1.0 + 2e-12])
    assert len(wider.start) == 5


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("carriage", [None, BENT], ids=["upright", "bent"])
def test_reach_is_given_its_value_and_slope(asked, side, carriage):
    """Arm − distance from the shoulder's box; |h'| + |s'| + 8 cm times the trunk's rate of turn."""
    own = Drawn(2, about=(0.5, 0.5, 1.3))
    assert reach_left.__wrapped__(own, [0.25, 5.0], side=side, body=BODY, carriage=carriage) == []
    ((cut, value, slope, error, enough),) = asked
    body = carriage or Carriage(body=BODY)
    cuts = {0.25, 1.7, 3.25, 5.0} | ({0.5, 1.5, 2.5, 4.0} if carriage else set())
    extra = {edge for edge in body.edges.tolist() if 0.25 < edge < 5.0}
    assert cut.start.tolist() == sorted(cuts | extra)[:-1]
    sway = body.shoulder_bounds(cut.start, cut.end)[0]
    turning = body.speeds(cut.start, cut.end)[0]
    hand = [own.bound(beat, "hand_speed") for beat in cut.start]
    assert_allclose(slope, hand + sway + 0.08 * turning, rtol=1e-12)
    beats = np.linspace(0.3, 4.9, 11)
    found, labels = value(beats)
    beyond = body.beyond(beats, own.at(beats).hand, side)
    assert_allclose(found, BODY.arm_length - beyond, rtol=1e-12)
    assert labels.tolist() == [0] * 11
    assert (error, enough) == (0.002, 0.0)


def test_pull_is_given_its_value_and_slope(asked):
    """λ²·A − g·d_z with A = r|d'|² − d·h''; slope λ²(2r|d'||d''| + |d'||h''| + |h'''|) + g|d'|."""
    own = Drawn(3)
    tempo = np.array([1.5, 0.7, 2.2, 1.1, 3.0, 0.4])  # for each whole beat

    def rates(beats):
        return tempo[np.floor(beats).astype(int)]

    assert pull_left.__wrapped__(own, [0.5, 5.5], prop=STAFF, beats_per_second=rates) == []
    ((cut, value, slope, error, enough),) = asked
    assert cut.start.tolist() == [0.5, 1, 1.7, 2, 3, 3.25, 4, 5]
    for k, beat in enumerate(cut.start):
        h2, h3, d1, d2 = (
            own.bound(beat, name)
            for name in ("hand_acceleration", "hand_jerk", "turn_rate", "turn_acceleration")
        )
        rate = tempo[int(beat)]
        expected = rate**2 * (2 * 0.6 * d1 * d2 + d1 * h2 + h3) + 9.81 * d1
        assert slope[k] == pytest.approx(expected, rel=1e-12)
    beats = np.array([0.6, 1.3, 2.9, 4.2])
    found, labels = value(beats)
    for k, beat in enumerate(beats):
        state = own.at(beat)
        outward = (
            0.6 * state.tether_rate @ state.tether_rate - state.tether @ state.hand_acceleration
        )
        expected = tempo[int(beat)] ** 2 * outward - 9.81 * state.tether[2]
        assert found[k] == pytest.approx(expected, rel=1e-12)
    assert labels.tolist() == [0] * 4
    assert (error, enough) == (0.05, 0.0)


@pytest.mark.parametrize("carriage", [None, BENT], ids=["upright", "bent"])
@pytest.mark.parametrize("prop", [STAFF, FAN], ids=lambda prop: prop.kind)
def test_own_body_is_given_its_value_and_slope(asked, prop, carriage):
    """The least of all solids against all capsules, segment by segment; slopes of prop and body add up."""
    own = Drawn(4, about=(0.15, 0.1, 1.2))
    assert body_gap(own, [0.25, 5.0], prop=prop, body=BODY, carriage=carriage, near=0.1) == []
    ((cut, value, slope, error, enough),) = asked
    body = carriage or Carriage(body=BODY)
    sway = body.capsule_speeds(cut.start, cut.end).max(axis=0)
    for k, beat in enumerate(cut.start):
        h, d, w = (own.bound(beat, name) for name in ("hand_speed", "turn_rate", "frame_rate"))
        moving = h + (max(0.8 * d, 0.0) if prop is STAFF else 0.4 * w)
        assert slope[k] == pytest.approx(moving + sway[k], rel=1e-12)
    assert (carriage is None) == (len(cut.start) == 3)
    beats = np.linspace(0.3, 4.9, 9)
    found, labels = value(beats)
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
    assert (error, enough) == (0.005, 0.1)


def test_own_body_is_near_at_nothing_unless_said(asked):
    body_gap(Drawn(4), [0.25, 5.0], prop=POI, body=BODY)
    assert asked[0][4] == 0.0


@pytest.mark.parametrize(("left", "right"), [(POI, STAFF), (STAFF, FAN)], ids=["axes", "fan"])
def test_both_props_are_given_their_value_and_slope(asked, left, right):
    """Cut where either changes, slopes of both added; gaps by segments where the balls about both are near."""
    one, two = Drawn(5), Drawn(6, cuts=(0.0, 1.7 + 5e-13, 2.0, 4.5, 6.0))
    assert props_gap((one, left), (two, right), [0.25, 3.0, 5.0]) == []
    ((cut, value, slope, error, enough),) = asked
    assert_allclose(cut.start, [0.25, 1.7, 2.0, 3.0, 3.25, 4.5], atol=1e-11)
    assert_allclose(cut.end, [1.7, 2.0, 3.0, 3.25, 4.5, 5.0], atol=1e-11)
    assert cut.group.tolist() == [0, 0, 0, 1, 1, 1]
    assert_array_equal(cut.edges, [0.25, 3.0, 5.0])
    for k, beat in enumerate((cut.start + cut.end) / 2):
        expected = 0.0
        for own, prop in ((one, left), (two, right)):
            h, d, w = (own.bound(beat, name) for name in ("hand_speed", "turn_rate", "frame_rate"))
            expected += h + (0.4 * w if prop is FAN else max(prop.length, prop.behind) * d)
        assert slope[k] == pytest.approx(expected, rel=1e-12)
    assert (error, enough) == (0.005, 0.0)
    beats = np.linspace(0.3, 4.9, 15)
    found, labels = value(beats)
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


def test_props_far_apart_are_told_by_their_balls(asked):
    """Balls about the whole props, by hand: a poi's about 0.265 with 0.275, for a rope 10 mm and a head of 40 mm."""
    poi = Prop(length=0.5, mass=0.2, wick_radius=0.04)
    states = Still((0.0, 0.0, 1.0)), Still((2.0, 0.0, 1.0))
    props_gap((states[0], poi), (states[1], poi), [0.0, 1.0])
    found, labels = asked[0][1](np.array([0.5]))
    assert found[0] == pytest.approx(2.0 - 2 * 0.275)
    assert labels.tolist() == [0]
    # beside each other at 56 cm: their balls are 1 cm apart, from which on the heads themselves are looked at
    for off, gap in ((0.5601, 0.0101), (0.5599, 0.5599 - 0.08)):
        asked.clear()
        props_gap((Still((0, 0, 1)), poi), (Still((off, 0, 1)), poi), [0.0, 1.0])
        assert asked[0][1](np.array([0.5]))[0][0] == pytest.approx(gap)


class Still:
    """A hand that rests, its tether along y."""

    def __init__(self, place):
        self.place = np.array(place, float)

    def at(self, beats):
        rows = np.zeros((*np.shape(beats), 3))
        return Motion(
            hand=rows + self.place, hand_rate=rows, hand_acceleration=rows,
            tether=rows + np.array([0.0, 1.0, 0.0]), tether_rate=rows, tether_acceleration=rows,
            plane=rows + np.array([1.0, 0.0, 0.0]),
        )  # fmt: skip

    def pieces(self, start, end):
        return ((start, end, replace(Drawn(1).bounds[0], hand_speed=0.0)),)


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
        edges=np.arange(n + 1.0), group=np.arange(n), start=np.arange(n) * 1.0,
        end=np.arange(n) + 1.0, bounds=own,
    )  # fmt: skip


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


def least(value, slope, *, edges=(0.0, 1.0), error=0.01, enough=0.0):
    edges = np.array(edges)
    n = len(edges) - 1
    cut = Stretches(edges=edges, group=np.arange(n), start=edges[:-1], end=edges[1:], bounds=())
    return feasibility._least(cut, value, np.full(n, slope), error, enough)


def test_the_least_of_each_stretch():
    """|t − ⅓| − ½ on the first of two stretches, and a line that stays above enough on the second."""

    def value(t):
        tent = np.abs(t - 1 / 3) - 0.5
        return np.where(t < 1, tent, 0.2 * t), np.where(t < 1, 7, 8)

    first, second = least(value, 1.0, edges=(0.0, 1.0, 2.0))
    assert -0.5 <= first.value <= -0.49
    assert first.beat == pytest.approx(1 / 3, abs=0.01)
    assert first.label == 7
    assert second.value == pytest.approx(0.01)
    assert (np.isnan(second.beat), second.label) == (True, -1)
    assert isinstance(first, Least)


@pytest.mark.parametrize(
    ("enough", "told"), [(0.0, False), (0.3, True), (0.21, True), (0.18, False)]
)
def test_what_stays_above_enough_is_not_looked_up(enough, told):
    """A constant 0.2 with a tolerance of 0.01: known where enough and tolerance are above it."""
    (found,) = least(
        lambda t: (np.full(t.shape, 0.2), np.zeros(t.shape, np.int64)), 0.0, enough=enough
    )
    assert (found.label == 0) == told
    assert found.value == pytest.approx(0.2 if told else enough + 0.01)


def test_a_dip_is_found_by_its_slope():
    """A dip of 1e-3 beats' width at a place that no halving meets at first: slope 400 finds it."""

    def value(t):
        return np.minimum(400.0 * np.abs(t - np.sqrt(0.2)) - 0.2, 0.5), np.zeros(t.shape, np.int64)

    (found,) = least(value, 400.0)
    assert -0.2 <= found.value <= -0.19
