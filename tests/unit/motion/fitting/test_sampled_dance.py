"""What the search samples and measures, against plain formulas one sample at a time.

Distances of segments: the nearest of the four ends from the other segment, or of the two lines where their
common perpendicular meets both (vector geometry); production clamps, this enumerates.
"""

from dataclasses import replace
from itertools import pairwise
from math import cos, inf, pi, sin
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.field import table_of
from sequencer.geometry.posture import UPRIGHT, PosedBody, Posture
from sequencer.motion.fitting import prop_bodies, sampled_dance
from sequencer.motion.fitting.fits import Margins
from sequencer.motion.fitting.pacing import least_pull, twist
from sequencer.motion.fitting.sampled_dance import Placing, SampledDance
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import Prop, PropPoint, Solid

POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
CLUB = Prop(kind="club", length=0.6, behind=0.1, mass=0.5, head_mass=0.1, wick_radius=0.04)
HOOP = Prop(kind="hoop", length=0.8, mass=0.4, wick_radius=0.03, wicks=4)
FAN = Prop(kind="fan", length=0.4, mass=0.4, wick_radius=0.03, wicks=5, spread=1.6)
BODY = Body(stature=1.7)
NAMES = ("hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane")  # fmt: skip


def drawn(n, seed, centre=(0.2, 0.45, 1.1), spread=0.25):
    """A motion of n looks about a place; only directions are of unit length."""
    draw = np.random.default_rng(seed)
    own = {name: draw.normal(size=(n, 3)) for name in NAMES}
    own["hand"] = np.array(centre) + spread * draw.uniform(-1, 1, (n, 3))
    own["tether"] /= np.linalg.norm(own["tether"], axis=1)[:, None]
    aside = np.cross(own["tether"], own["plane"])
    own["plane"] = aside / np.linalg.norm(aside, axis=1)[:, None]
    return Motion(**own)


def put(motion, along, across, k):
    """A point of a prop at look k: along d, and across n × d, written out."""
    (dx, dy, dz), (nx, ny, nz) = motion.tether[k], motion.plane[k]
    w = np.array([ny * dz - nz * dy, nz * dx - nx * dz, nx * dy - ny * dx])
    return motion.hand[k] + along * motion.tether[k] + across * w


def to_segment(p, a, b):
    way = b - a
    square = float(way @ way)
    share = min(max(float((p - a) @ way) / square, 0.0), 1.0) if square else 0.0
    return float(np.linalg.norm(p - a - share * way))


def between(a, b, c, d):
    """Distance of the segments ab and cd."""
    found = [to_segment(a, c, d), to_segment(b, c, d), to_segment(c, a, b), to_segment(d, a, b)]
    u, v, r = b - a, d - c, c - a
    n = np.cross(u, v)
    square = float(n @ n)
    if square > 1e-18:
        s, t = float(np.cross(r, v) @ n) / square, float(np.cross(r, u) @ n) / square
        if 0 <= s <= 1 and 0 <= t <= 1:
            found.append(abs(float(r @ n)) / square**0.5)
    return min(found)


def parts(motion, prop, k):
    """Bodies of a prop without chords at look k, as (start, end, radius)."""
    return [
        (put(motion, s.start.along, s.start.across, k), put(motion, s.end.along, s.end.across, k), s.radius)
        for s in prop.solids
    ]  # fmt: skip


def bare(props, motions, passing=None):
    """A sampled dance of drawn motions."""
    looks = SampledDance.__new__(SampledDance)
    sides = tuple(side for side in SIDES if side in props)
    looks.dance = SimpleNamespace(body=BODY, sides=sides, props=props)
    looks.motions, looks.pull = motions, 7.0

    def bodies(motion, side):
        columns = [parts(motion, props[side], k) for k in range(len(motion.hand))]
        return [
            (solid, np.array([c[j][0] for c in columns]), np.array([c[j][1] for c in columns]))
            for j, solid in enumerate(props[side].solids)
        ]  # fmt: skip

    looks.bodies = {side: bodies(motion, side) for side, motion in motions.items()}
    looks.passing = {side: bodies(motion, side) for side, motion in (passing or {}).items()}
    looks.beats = np.arange(len(next(iter(motions.values())).hand), dtype=float)
    return looks


# Bodies of a prop


@pytest.mark.parametrize("prop", [POI, CLUB, FAN])
def test_bodies_lie_along_and_across_the_tether(prop):
    motion = drawn(3, 1)
    found = prop_bodies.bodies_of(prop, motion)
    assert [solid for solid, *_ in found] == list(prop.solids)
    for k in range(3):
        for (_, start, end), (a, b, _) in zip(found, parts(motion, prop, k), strict=True):
            assert_allclose((start[k], end[k]), (a, b), atol=1e-12)


def test_a_hoop_has_twelve_chords_as_thick_as_their_arcs():
    """A regular polygon in the rim: the arc is R(1 − cos 15°) off its chord; no thinner than a wick."""
    found = prop_bodies.simple_parts(HOOP)
    corners = [PropPoint(0.4 - 0.4 * cos(pi * k / 6), 0.4 * sin(pi * k / 6)) for k in range(13)]
    assert len(found) == 12
    for k, solid in enumerate(found):
        assert solid.name == "hoop"
        assert_allclose((*solid.start, *solid.end), (*corners[k], *corners[k + 1]), atol=1e-12)
        assert solid.radius == pytest.approx(0.03)
    wide = replace(HOOP, length=1.6)
    assert {round(s.radius, 12) for s in prop_bodies.simple_parts(wide)} == {
        round(0.012 + 0.8 * (1 - cos(pi / 12)), 12)
    }
    assert prop_bodies.simple_parts(CLUB) == CLUB.solids


@pytest.mark.parametrize(
    ("prop", "spots"),
    [
        # By hand: a ball each 14 cm or less, from one step off the start to the end; then the wick.
        (POI, [(0.125, 0, 0.01), (0.25, 0, 0.01), (0.375, 0, 0.01), (0.5, 0, 0.01), (0.5, 0, 0.05)]),
        (replace(POI, length=0.42), [(0.14, 0, 0.01), (0.28, 0, 0.01), (0.42, 0, 0.01), (0.42, 0, 0.05)]),
        (CLUB, [(0.04, 0, 0.025), (0.18, 0, 0.025), (0.32, 0, 0.025), (0.46, 0, 0.025), (0.6, 0, 0.025),
                (0.6, 0, 0.04), (-0.1, 0, 0.025)]),
    ],
)  # fmt: skip
def test_a_prop_is_a_row_of_balls(prop, spots):
    motion = drawn(4, 2)
    centres, radii = prop_bodies.balls_of(prop, motion)
    expected = [put(motion, along, across, k) for along, across, _ in spots for k in range(4)]
    assert_allclose(centres, expected, atol=1e-12)
    assert_allclose(radii, np.repeat([r for *_, r in spots], 4))


def test_balls_of_a_hoop_are_at_the_ends_of_its_chords():
    """Twelve chords of 0.8·sin 15° = 20.7 cm: two balls each, at its middle and its end."""
    motion = drawn(2, 3)
    centres, radii = prop_bodies.balls_of(HOOP, motion)
    corners = [np.array([0.4 - 0.4 * cos(pi * k / 6), 0.4 * sin(pi * k / 6)]) for k in range(13)]
    spots = []
    for a, b in pairwise(corners):
        spots += [(a + b) / 2, b]
    assert_allclose(
        centres, [put(motion, *spot, k) for spot in spots for k in range(2)], atol=1e-12
    )
    assert_allclose(radii, np.full(48, 0.03))


def test_a_ball_encloses_the_box_of_all_ends():
    """By hand: box 4 × 2 × 0 at the first look, its corner √5 from the middle, and 0.3 thick there."""
    zero = np.zeros(3)
    thin, thick = (
        Solid("a", PropPoint(0), PropPoint(1), 0.1),
        Solid("b", PropPoint(0), PropPoint(0), 0.3),
    )
    line = (thin, np.array([[0.0, 0, 0], [0, 0, 0]]), np.array([[4.0, 0, 0], [0, 0, 1.0]]))
    spot = (thick, np.array([[4.0, 2, 0], [0, 0, 0.5]]), np.array([[4.0, 2, 0], [0, 0, 0.5]]))
    middle, radius = prop_bodies.ball_about([line, spot])
    assert_allclose(middle, [[2, 1, 0], [0, 0, 0.5]])
    assert radius == pytest.approx(5**0.5 + 0.3)
    assert_allclose(prop_bodies.ball_about([line])[1], 2.1)
    assert prop_bodies.ball_about([(thick, zero[None], zero[None])])[1] == 0.3


def test_rows_of_a_motion():
    motion = drawn(7, 4)
    for rows, kept in ((slice(None, None, 3), [0, 3, 6]), (np.array([5, 1]), [5, 1])):
        found = prop_bodies.rows_of(motion, rows)
        for name in NAMES:
            assert_array_equal(getattr(found, name), getattr(motion, name)[kept])


# Margins at places


POSTURES = [UPRIGHT, Posture(turn=0.4, lean=-0.1), Posture(tilt=-0.3, nod=0.2), Posture(turn=-0.3, lean=0.1, side=0.1)]  # fmt: skip


def turned(posture):
    """Rz(turn)·Rx(−lean)·Ry(side), by matrices."""
    t, f, s = posture.turn, -posture.lean, posture.side
    z = np.array([[cos(t), -sin(t), 0], [sin(t), cos(t), 0], [0, 0, 1]])
    x = np.array([[1, 0, 0], [0, cos(f), -sin(f)], [0, sin(f), cos(f)]])
    y = np.array([[cos(s), 0, sin(s)], [0, 1, 0], [-sin(s), 0, cos(s)]])
    return z @ x @ y


def arm_left(hand, side, posture):
    """Arm less the way from the hand to the box in which the shoulder may move, in the trunk's frame."""
    turn, hips = turned(posture), np.array([0, 0, BODY.hip_height])
    away = turn.T @ (hand - hips - turn @ (BODY.shoulder(side) - hips))
    if side == "left":
        away[0] = -away[0]  # the left one's box is the mirror image
    low, high = BODY.shoulder_give
    off = [max(a - h, b - a, 0.0) for a, b, h in zip(away, low, high, strict=True)]
    return BODY.arm_length - float(np.linalg.norm(off))


def own_gap(looks, moves, posture, rows=None):
    least = inf
    for side, move in moves.items():
        step = np.array([move[0] if side == "right" else -move[0], move[1], move[2]])
        n = len(looks.motions[side].hand)
        for k in range(n) if rows is None else rows[side]:
            for a, b, radius in parts(looks.motions[side], looks.dance.props[side], k):
                for capsule in PosedBody(BODY, posture).capsules:
                    gap = between(
                        a + step, b + step, np.array(capsule.start), np.array(capsule.end)
                    )
                    least = min(least, gap - radius - capsule.radius)
    return least


@pytest.mark.parametrize("sides", [SIDES, ("left",)])
@pytest.mark.parametrize("near", [False, True])
def test_margins_of_places_one_sample_at_a_time(sides, near):
    props = {side: {"left": CLUB, "right": POI}[side] for side in sides}
    motions = {side: drawn(4, 5 + k, (-0.2 if side == "left" else 0.2, 0.5, 1.1)) for k, side in enumerate(sides)}  # fmt: skip
    looks = bare(props, motions)
    asked = []
    looks._between = lambda steps: asked.append(steps) or np.array([0.5, 0.4, 0.3, 0.2])
    draw = np.random.default_rng(8)
    moves = [{side: 0.2 * draw.uniform(-1, 1, 3) for side in sides} for _ in POSTURES]
    rows = {side: np.array([2, 1 + k]) for k, side in enumerate(sides)} if near else None
    found = looks.places(moves, POSTURES, rows)

    for k, (place, move, posture) in enumerate(zip(found, moves, POSTURES, strict=True)):
        assert (place.moves, place.posture) == (move, posture)
        body, other, reach, pull = place.margins
        assert body == pytest.approx(own_gap(looks, move, posture, rows), abs=1e-9)
        assert (other, pull) == pytest.approx((0.5 - 0.1 * k, 7.0))
        expected = []
        for side in sides:
            sign = 1.0 if side == "right" else -1.0
            step = move[side] * np.array([sign, 1, 1])
            assert_allclose(asked[0][side][k], step)
            expected += [arm_left(hand + step, side, posture) for hand in motions[side].hand]
        assert reach == pytest.approx(min(expected), abs=1e-9)


def test_places_are_upright_unless_said_and_none_is_none():
    looks = bare({"right": POI}, {"right": drawn(3, 9)})
    move = {"right": np.array([0.1, 0.0, 0.0])}
    assert looks.places([]) == []
    two = looks.places([move, move])
    assert [each.posture for each in two] == [UPRIGHT] * 2
    assert two[0].margins == looks.places([move], [UPRIGHT])[0].margins
    assert two[0].margins.other == inf


def test_reach_in_one_posture_for_many_places():
    """The same at each of three places; the one posture may be given once."""
    looks = bare({"right": POI}, {"right": drawn(3, 9)})
    hands = np.random.default_rng(10).uniform(0.2, 1.4, (3, 4, 3))
    for posture in (UPRIGHT, POSTURES[3]):
        found = looks._reach(hands, "right", np.array([posture.angles]))
        expected = [[arm_left(hand, "right", posture) for hand in row] for row in hands]
        assert_allclose(found, expected, atol=1e-12)


# Between the props


def apart(looks, shift, rows):
    """Sample by sample: balls about both props where they are 8 cm apart, else every body against every other."""
    n = len(looks.passing["left"][0][1])
    here = {
        side: [(s.radius, a[rows], b[rows]) for s, a, b in looks.passing[side]] for side in SIDES
    }
    count = len(range(n)[rows])
    balls = {}
    for side, own in here.items():
        centres, size = [], 0.0
        for k in range(count):
            ends = np.array([end[k] for _, a, b in own for end in (a, b)])
            centres.append((ends.min(axis=0) + ends.max(axis=0)) / 2)
            size = max(
                size,
                *(float(np.linalg.norm(e[k] - centres[-1])) + r for r, a, b in own for e in (a, b)),
            )
        balls[side] = centres, size
    least, exact = inf, 0
    for k in range(count):
        way = balls["left"][0][k] + shift - balls["right"][0][k]
        gap = float(np.linalg.norm(way)) - balls["left"][1] - balls["right"][1]
        if gap < 0.08:
            exact += 1
            gap = min(
                between(a[k] + shift, b[k] + shift, c[k], d[k]) - r - q
                for r, a, b in here["left"] for q, c, d in here["right"]
            )  # fmt: skip
        least = min(least, gap)
    return least, exact


@pytest.mark.parametrize("rows", [slice(None), slice(None, None, 3)])
def test_the_gap_of_two_props_sample_by_sample(rows):
    motions = {"left": drawn(10, 11, (0, 0, 1), 0.3), "right": drawn(10, 12, (0, 0, 1), 0.3)}
    looks = bare({"left": CLUB, "right": FAN}, motions, motions)
    shifts = np.array(
        [[0.0, 0, 0], [0.9, 0, 0], [0.6, 0.7, -0.9], [3.0, 0, 0], [0, -2.2, 0], [-1.1, 0.9, 0.2]]
    )
    expected = [apart(looks, shift, rows) for shift in shifts]
    assert_allclose(looks._pairs(shifts, rows), [gap for gap, _ in expected], atol=1e-9)
    counts = {count for _, count in expected}
    assert counts & {0}
    assert counts & set(range(1, len(range(10)[rows])))  # some by balls, some exactly
    alone = [float(looks._pairs(shift[None], rows)[0]) for shift in shifts]
    assert_allclose(alone, [gap for gap, _ in expected], atol=1e-9)


def test_near_props_are_looked_at_wherever_they_may_be_nearest():
    """Two poi that pass close by at all of forty samples: sample by sample, tethers and heads."""
    motions = {
        side: drawn(40, seed, (0, 0, 1), 0.2) for side, seed in (("left", 31), ("right", 32))
    }
    looks = bare({"left": POI, "right": POI}, motions, motions)
    draw = np.random.default_rng(33)
    shifts = np.concatenate((0.3 * draw.normal(size=(6, 3)), 1.2 * draw.normal(size=(6, 3))))
    expected = [apart(looks, shift, slice(None))[0] for shift in shifts]
    assert_allclose(looks._pairs(shifts, slice(None)), expected, atol=1e-9)
    twice = {"left": np.concatenate((shifts, shifts[::-1])), "right": np.zeros((24, 3))}
    assert_allclose(looks._between(twice), [*expected, *expected[::-1]], atol=1e-9)


def test_the_nearest_of_some_balls_is_found_by_their_distances_alone():
    """Balls on a line, 1 mm between each and the next: the last sample of all is the nearest."""
    ball = Solid("x", PropPoint(0), PropPoint(0), 0.5)
    looks = SampledDance.__new__(SampledDance)
    row = np.zeros((30, 3))
    row[:, 0] = 1.06 - 0.001 * np.arange(30)
    looks.passing = {"left": [(ball, row, row)], "right": [(ball, 0 * row, 0 * row)]}
    assert_allclose(looks._pairs(np.zeros((1, 3)), slice(None)), [0.031], atol=1e-12)


def test_between_is_of_the_left_prop_against_the_right():
    motions = {"left": drawn(6, 13), "right": drawn(6, 14)}
    looks = bare({"left": POI, "right": POI}, motions, motions)
    left, right = np.random.default_rng(15).normal(size=(2, 3, 3))
    expected = [apart(looks, a - b, slice(None))[0] for a, b in zip(left, right, strict=True)]
    assert_allclose(looks._between({"left": left, "right": right}), expected, atol=1e-9)
    assert_array_equal(looks._between({"left": left}), [inf] * 3)


def test_balls_just_so_far_apart_are_enough(monkeypatch):
    """A bar of 2 m across and a point 1.25 m from it: the ball about the bar is 0.25 m off, the bar 1.25 m.

    A quarter is exact in binary, so that it can be met exactly; a second place is nearer.
    """
    monkeypatch.setattr(sampled_dance, "APART", 0.25)
    thin = Solid("x", PropPoint(0), PropPoint(0), 0.0)
    looks = SampledDance.__new__(SampledDance)
    looks.passing = {
        "left": [(thin, np.array([[0.0, -1, 0]]), np.array([[0.0, 1, 0]]))],
        "right": [(thin, np.array([[1.25, 0, 0]]), np.array([[1.25, 0, 0]]))],
    }
    found = looks._pairs(np.array([[0.0, 0, 0], [0.125, 0, 0]]), slice(None))
    assert_array_equal(found, [0.25, 1.125])


# By the table


def looked_up(posture, point, cells=(0, 0, 0)):
    """The table's value in the cell of a point, or so many cells on, by its three indices."""
    table = table_of(BODY, posture)
    at = [
        min(max(round(float((p - low) / 0.02)) + step, 0), n - 1)
        for p, low, step, n in zip(point, table.low, cells, table.shape, strict=True)
    ]
    return float(table.values.reshape(table.shape)[tuple(at)])


@pytest.mark.parametrize("side", SIDES)
def test_the_margin_of_one_hand_is_looked_up(side):
    """Of every other look; moved by whole cells, no farther than the table; −∞ where the arm ends."""
    prop = {"left": CLUB, "right": POI}[side]
    motion = drawn(8, 16, (-0.2 if side == "left" else 0.2, 0.4, 1.2))
    looks = bare({side: prop}, {side: motion})
    looks.thin = slice(None, None, 2)
    offsets = 0.06 * np.array([[0, 0, 0], [1, -2, 3], [-3, 1, 0], [2, 2, -4], [-1, 30, 0]])
    found = looks._alone(side, offsets)
    sign = 1 if side == "right" else -1
    balls = [(s.start.along, s.end.along, s.radius) for s in prop.solids]
    spots = []
    for low, high, radius in balls:
        count = max(1, int(np.ceil((high - low) / 0.14)))
        spots += [(low + (high - low) * (k + 1) / count, radius) for k in range(count)]
    spots += [(-prop.behind, 0.025)] if prop is CLUB else []
    for offset, value in zip(offsets, found, strict=True):
        step = offset * np.array([sign, 1, 1])
        if min(arm_left(hand + step, side, UPRIGHT) for hand in motion.hand) < 0.01:
            assert value == -inf
            continue
        expected = inf
        for k in range(0, 8, 2):
            for along, radius in spots:
                cells = [round(float(s) / 0.02) for s in step]
                at = put(motion, along, 0.0, k)
                expected = min(expected, looked_up(UPRIGHT, at, cells) - radius)
        assert value == pytest.approx(expected, abs=1e-9)
    assert found[-1] == -inf
    assert np.isfinite(found).sum() >= 2


@pytest.mark.parametrize(
    ("count", "far", "seen"),
    [(10, 3, True), (24, 5, True), (69, 3, False), (69, 4, True), (72, 4, False), (72, 3, True), (96, 90, False), (96, 92, True)],
)  # fmt: skip
def test_about_twenty_four_hands_are_looked_at_for_reach(count, far, seen):
    """Every (count // 24)th, by hand: 69 // 24 = 2, 72 // 24 = 3, 96 // 24 = 4, and every one below 48."""
    looks = bare({"right": POI}, {"right": drawn(count, 17, (0.2, 0.35, 1.3), 0.01)})
    looks.thin = slice(None)
    assert np.isfinite(looks._alone("right", np.zeros((1, 3)))[0])
    looks.motions["right"].hand[far] = [0, 3, 1]
    assert (looks._alone("right", np.zeros((1, 3)))[0] == -inf) == seen


def test_a_hand_is_in_reach_with_a_centimetre_to_spare():
    looks = bare({"right": POI}, {"right": drawn(4, 18)})
    looks.thin = slice(None)
    looks._upright_reach = lambda _side, _hands, _moves: np.array([0.01, 0.00999, 0.01])
    assert_array_equal(np.isfinite(looks._alone("right", np.zeros((3, 3)))), [True, False, True])
    looks._upright_reach = lambda _side, _hands, _moves: np.zeros(3)
    assert_array_equal(looks._alone("right", np.zeros((3, 3))), [-inf] * 3)


@pytest.mark.parametrize("side", SIDES)
def test_the_least_reach_of_an_upright_body_is_that_of_each_move(side):
    """Hand by hand, beyond the box of the shoulder on all its sides; moves that repeat, and 0 and −0."""
    looks = bare({side: POI}, {side: drawn(3, 9)})
    hands = np.random.default_rng(20).uniform(-0.9, 1.9, (5, 3))
    moves = np.array([[0.1, 0.0, -0.2], [0.1, 0.3, -0.2], [-0.4, -0.0, 0.5], [0.0, 0.3, 0.0]])
    expected = [min(arm_left(hand + move, side, UPRIGHT) for hand in hands) for move in moves]
    assert_allclose(looks._upright_reach(side, hands, moves), expected, atol=1e-12)


def test_samples_near_the_body_are_those_within_twelve_centimetres_of_the_nearest():
    """At the place and in the posture it is about; the table is cut off at 14 cm beyond the surface."""
    posture = Posture(lean=0.1, turn=0.3)
    motions = {
        "left": drawn(24, 19, (-0.2, 0.5, 1.1), 0.05),
        "right": drawn(24, 20, (0.2, 0.5, 1.1), 0.05),
    }
    looks = bare(dict.fromkeys(SIDES, POI), motions)
    moves = {"left": np.array([0.05, 0.1, -0.06]), "right": np.array([-0.04, 0.08, 0.1])}
    found = looks._near(Placing(moves, posture, Margins(0, 0, 0, 0)))
    for side in SIDES:
        step = moves[side] * np.array([1 if side == "right" else -1, 1, 1])
        gaps = []
        for k in range(24):
            own = []
            for along, radius in (
                (0.125, 0.01),
                (0.25, 0.01),
                (0.375, 0.01),
                (0.5, 0.01),
                (0.5, 0.05),
            ):
                own.append(looked_up(posture, put(motions[side], along, 0.0, k) + step) - radius)
            gaps.append(min(own))
        expected = [k for k in range(24) if gaps[k] <= min(gaps) + 0.12]
        assert 2 <= len(expected) <= 22
        assert found[side].tolist() == expected


# What is sampled


class Line:
    """A law of its own: the hand goes along x, the tether turns a quarter of a radian a beat."""

    def __init__(self, period, rate=0.25):
        self.period, self.rate = period, rate

    def at(self, beats):
        zero = np.zeros_like(beats)
        t = self.rate * beats
        along = lambda x, y, z: np.stack([x, y, z], axis=-1)  # noqa: E731
        return Motion(
            hand=along(beats, zero, zero), hand_rate=along(zero + 1, zero, zero),
            hand_acceleration=along(zero, zero, zero), tether=along(np.cos(t), np.sin(t), zero),
            tether_rate=self.rate * along(-np.sin(t), np.cos(t), zero),
            tether_acceleration=-(self.rate**2) * along(np.cos(t), np.sin(t), zero),
            plane=along(zero, zero, zero + 1),
        )  # fmt: skip


def sampled(
    laws,
    props=None,
    *,
    open_=None,
    values=None,
    rooms=None,
    tempo=(60.0, 120.0),
    torque=8.0,
    shape=None,
):
    """A dance of laws of its own, and rooms by side: lowest and highest across, ahead and up."""
    seen = []

    def room(given, side):
        seen.append((given, side))
        spans = (rooms or {}).get(side, ((-1, 1), (-2, 2), (-3, 3)))
        return SimpleNamespace(across=spans[0], ahead=spans[1], up=spans[2])

    book = {f"of {side}": SimpleNamespace(room=room) for side in laws}
    names = dict.fromkeys(("across", "ahead", "up"))
    asked = SimpleNamespace(
        laws=lambda given: laws if given == (shape or {}) else None, cycle=1.5, tempo=tempo, torque=torque,
        props=props or dict.fromkeys(laws, POI), sides=tuple(s for s in SIDES if s in laws), book=book,
        parts={side: (f"of {side}", {"set": side}) for side in laws}, body=BODY,
        open=lambda side: (open_ or {}).get(side, names), values=lambda side: (values or {}).get(side, {}),
    )  # fmt: skip
    return SampledDance(asked, shape or {}), seen


@pytest.mark.parametrize(
    ("span", "count", "thin"),
    [
        # 40 a beat, at least 96 and at most 1024; thinned to 10 a beat, at least 48.
        (1.0, 96, 2), (2.4, 96, 2), (2.41, 97, 2), (3.0, 120, 2), (3.01, 121, 3), (5.0, 200, 4),
        (29.0, 1024, 4), (30.0, 1024, 3), (60.0, 1024, 2), (100.0, 1024, 1), (300.0, 1024, 1),
    ],
)  # fmt: skip
def test_looks_of_a_period(span, count, thin):
    looks, _ = sampled({"right": Line(span)})
    assert looks.span == span
    assert_allclose(looks.beats, np.linspace(0, span, count, endpoint=False), atol=1e-9)
    assert looks.thin == slice(None, None, thin)
    assert looks.sparse == slice(None, None, 4 * thin)
    assert_allclose(looks.motions["right"].hand[:, 0], looks.beats)
    assert looks.passing == {}


def test_the_longest_period_that_ends_is_sampled_or_four_cycles():
    assert sampled({"left": Line(3.0), "right": Line(inf)})[0].span == 3.0
    assert sampled({"left": Line(3.0), "right": Line(5.0)})[0].span == 5.0
    assert sampled({"left": Line(inf), "right": Line(inf)})[0].span == 6.0


def test_props_that_pass_are_sampled_four_times_as_often_unless_complex():
    """A poi has two bodies and a club two; a fan of five wicks ten. Three are few, four are many."""
    laws = {"left": Line(1.0), "right": Line(1.0)}
    looks, _ = sampled(laws)
    assert looks.often == 4
    for side in SIDES:
        (_, start, end), _ = looks.passing[side]
        beats = np.arange(384) / 384
        assert_allclose(start[:, 0], beats, atol=1e-12)
        assert_allclose(end[:, 0], beats + 0.5 * np.cos(0.25 * beats), atol=1e-12)
        (_, start, _), _ = looks.bodies[side]
        assert_allclose(start[:, 0], np.arange(96) / 96, atol=1e-12)
    looks, _ = sampled(laws, {"left": POI, "right": FAN})
    assert looks.often == 1
    assert len(looks.passing["left"][0][1]) == 96
    assert looks.sparse == slice(None, None, 2)
    three = Prop(kind="staff", length=0.5, behind=0.5, mass=0.5, wick_radius=0.04)
    four = Prop(kind="fan", length=0.4, mass=0.4, wick_radius=0.03, wicks=2, spread=1.0)
    assert (len(three.solids), len(four.solids)) == (3, 4)
    assert sampled(laws, dict.fromkeys(SIDES, three))[0].often == 4
    assert sampled(laws, dict.fromkeys(SIDES, four))[0].often == 1


def test_what_is_free_and_how_far():
    """A place is free where it is open on both sides; its room is what both allow."""
    laws = dict.fromkeys(SIDES, Line(1.0))
    open_ = {"left": {"across": 1, "up": 1}, "right": {"across": 1, "ahead": 1, "up": 1}}
    rooms = {
        "left": ((-0.3, 0.1), (-0.1, 0.2), (-0.4, 0.5)),
        "right": ((-0.2, 0.4), (-0.5, 0.1), (-0.6, 0.4)),
    }
    values = {"left": {"across": 0.3, "up": None}, "right": {"ahead": "0.25"}}
    shape = {"left": {"size": 0.2}}
    looks, seen = sampled(laws, open_=open_, rooms=rooms, values=values, shape=shape)
    assert looks.free == [True, False, True]
    assert looks.ranges == [(-0.2, 0.1), (-0.1, 0.1), (-0.4, 0.4)]
    assert_allclose(looks.limits, [[-0.2, -0.1, -0.4], [0.1, 0.1, 0.4]])
    assert_allclose(looks.usual["left"], [0.3, 0, 0])
    assert_allclose(looks.usual["right"], [0, 0.25, 0])
    assert seen == [
        ({"set": side} | ({"size": 0.2} if side == "left" else {}), side) for side in laws
    ]


def test_pull_is_the_least_of_tethers_at_the_slowest_tempo():
    laws = {"left": Line(4.0, 7.0), "right": Line(4.0, 9.0)}
    props = {"left": POI, "right": replace(POI, length=0.2)}
    looks, _ = sampled(laws, props)
    # By hand: level, so r·ω² at one beat a second.
    assert looks.pull == pytest.approx(min(0.5 * 49, 0.2 * 81))
    looks, _ = sampled(laws, {"left": POI, "right": CLUB}, tempo=(120.0, 480.0))
    assert looks.pull == pytest.approx(4 * 0.5 * 49)
    assert looks.pull == pytest.approx(
        least_pull(looks.motions["left"], length=0.5, beats_per_second=2.0)
    )
    assert sampled(laws, dict.fromkeys(SIDES, CLUB))[0].pull == inf


def test_too_heavy_is_what_twists_more_than_the_torque_at_the_fastest_tempo():
    laws = {"left": Line(4.0, 1.0), "right": Line(4.0, 2.0)}
    light = replace(CLUB, mass=0.45)
    props = {"left": CLUB, "right": light}
    looks, _ = sampled(laws, props)
    needed = max(twist(laws[side].at(looks.beats), props[side], 2.0) for side in SIDES)
    assert not sampled(laws, props, torque=needed)[0].heavy
    assert sampled(laws, props, torque=needed - 1e-9)[0].heavy
    tethered = dict.fromkeys(SIDES, POI)
    assert not sampled(laws, tethered, torque=0.0)[0].heavy
    assert sampled(laws, tethered, torque=-0.5)[
        0
    ].heavy  # nothing twists by 0, more than less than nothing
