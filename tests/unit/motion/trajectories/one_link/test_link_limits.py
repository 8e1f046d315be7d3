"""Figures of links against dense differences and against sympy, term by term."""

from dataclasses import replace
from math import comb

import numpy as np
import pytest
import sympy
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import Prop, PropPoint, Solid
from sequencer.motion.trajectories.one_link import link_limits
from sequencer.motion.trajectories.one_link.hand_paths import (
    BOUND_PIECES,
    Piecewise,
    controls,
    halting,
    hand_figures,
    hand_paths,
    places,
    whole,
)
from sequencer.motion.trajectories.one_link.link_limits import (
    HandSpace,
    LinkLimits,
    PaceLimits,
    hand_space_of,
    tether_bounds,
    tether_figures,
)
from sequencer.motion.trajectories.one_link.sphere import polynomial, quintics

BODY = Body(stature=1.7)
ROOM = HandSpace(body=BODY, side="right", length=0.5)


def test_the_acceleration_of_a_direction_by_azimuth_and_elevation():
    """|d''|² = (ψ'' + sψcψα'²)² + (cψα'' − 2sψψ'α')² + (ψ'² + cψ²α'²)²: what the figures bound, by sympy."""
    t = sympy.Symbol("t")
    alpha, psi = 0.3 + 2 * t - 3 * t**2, sympy.Rational(1, 2) - t + 2 * t**3
    s, c = sympy.sin(psi), sympy.cos(psi)
    d = sympy.Matrix([c * sympy.cos(alpha), c * sympy.sin(alpha), s])
    a1, a2, p1, p2 = (f.diff(t, k) for f in (alpha, psi) for k in (1, 2))
    square = (
        (p2 + s * c * a1**2) ** 2 + (c * a2 - 2 * s * p1 * a1) ** 2 + (p1**2 + c**2 * a1**2) ** 2
    )
    second = d.diff(t, 2)
    for at in (-0.7, 0.1, 0.4, 1.3):
        assert float((second.dot(second) - square).subs(t, at)) == pytest.approx(0, abs=1e-9)
        assert float(
            (d.diff(t).dot(d.diff(t)) - p1**2 - c**2 * a1**2).subs(t, at)
        ) == pytest.approx(0, abs=1e-12)


def test_the_jerk_of_a_direction_by_azimuth_and_elevation():
    """d''' in the frame of east, pole and d: what its bound adds up, by sympy."""
    t = sympy.Symbol("t")
    alpha, psi = 0.3 + 2 * t - 3 * t**2 + t**3, sympy.Rational(1, 2) - t + 2 * t**3
    s, c = sympy.sin(psi), sympy.cos(psi)
    d = sympy.Matrix([c * sympy.cos(alpha), c * sympy.sin(alpha), s])
    east = sympy.Matrix([-sympy.sin(alpha), sympy.cos(alpha), 0])
    pole = sympy.Matrix([-s * sympy.cos(alpha), -s * sympy.sin(alpha), c])
    a1, a2, a3, p1, p2, p3 = (f.diff(t, k) for f in (alpha, psi) for k in (1, 2, 3))
    parts = (
        (east, c * a3 - 3 * s * (p1 * a2 + a1 * p2) - 3 * c * p1**2 * a1 - c * a1**3),
        (pole, p3 + 3 * s * c * a1 * a2 - 3 * s**2 * a1**2 * p1 - p1**3),
        (d, -3 * (c**2 * a1 * a2 - s * c * a1**2 * p1 + p1 * p2)),
    )
    third = d.diff(t, 3)
    for at in (-0.7, 0.1, 0.4, 1.3):
        for axis, part in parts:
            assert float((third.dot(axis) - part).subs(t, at)) == pytest.approx(0, abs=1e-8)


def angles_of(*rows):
    """A path whose azimuth and elevation are polynomials of the share of the link."""
    return whole(np.array([[(*row, *[0.0] * (6 - len(row))) for row in rows]]).transpose(0, 2, 1))


CASES = {
    "azimuth at pace": ((0.0, 3.0), (0.0,)),
    "elevation at pace": ((0.0,), (-0.6, 1.2)),
    "azimuth speeding up": ((0.0, 0.0, 4.0), (0.0,)),
    "elevation speeding up": ((0.0,), (-0.5, 0.0, 1.0)),
    "up and about at once": ((0.0, 3.0), (0.7, 0.9)),
    "about, and up faster": ((0.0, 3.0), (0.9, -0.2, 4.0)),
    "high, and a little more": ((0.0, 3.0), (0.2, 0.0, 0.5)),
    "over the pole": ((0.0, 2.0, 1.0), (1.2, 1.5, -0.5)),
    "all": ((0.3, 2.0, -3.0, 1.0), (-0.5, 1.0, 2.0, -1.0)),
}


@pytest.mark.parametrize("beats", [1.0, 2.5])
@pytest.mark.parametrize("case", CASES)
def test_figures_of_a_tether_are_the_formula_at_its_control_points(case, beats):
    """Dense differences of the direction stay below; the formula above is met with |sψ| ≤ 1, |sψcψ| ≤ ½ and |cψ| ≤ cos min|ψ|."""
    path = angles_of(*CASES[case])
    turn, push = (each[0] for each in tether_figures(path, np.array([beats])))
    assert turn.shape == push.shape == (BOUND_PIECES,)
    rows = [np.polynomial.Polynomial(row) for row in CASES[case]]
    for k in range(BOUND_PIECES):
        x = np.linspace(k, k + 1, 2001) / BOUND_PIECES
        alpha, psi = (row(x) for row in rows)
        d = np.stack([np.cos(psi) * np.cos(alpha), np.cos(psi) * np.sin(alpha), np.sin(psi)])
        step = beats * (x[1] - x[0])
        assert np.linalg.norm(np.diff(d, axis=1), axis=0).max() / step <= turn[k] * (1 + 1e-9)
        second = np.linalg.norm(np.diff(d[:, ::20], 2, axis=1), axis=0) / (20 * step) ** 2
        assert second.max() <= push[k] * (1 + 1e-6) + 1e-6
        most = [[hull(row.deriv(m), k, 5 - m) / beats**m for m in range(3)] for row in rows]
        (_, a1, a2), (p, p1, p2) = most
        points = hull_points(rows[1], k, 5)
        one_side = min(points) > 0 or max(points) < 0
        # |ψ| is nowhere smaller than its least control point if all are on one side of 0: bounds |cψ|, short of a pole.
        flat = np.cos(min(map(abs, points))) if one_side and p <= np.pi / 2 else 1.0
        assert turn[k] == pytest.approx(np.hypot(flat * a1, p1))
        steep = min(p, 1.0)
        expected = (
            (p2 + min(0.5, steep * flat) * a1**2) ** 2
            + (flat * a2 + 2 * steep * p1 * a1) ** 2
            + ((flat * a1) ** 2 + p1**2) ** 2
        )
        assert push[k] == pytest.approx(np.sqrt(expected))


@pytest.mark.parametrize("beats", [1.0, 2.5])
@pytest.mark.parametrize("case", CASES)
def test_the_jerk_of_a_tether_is_the_formula_at_its_control_points(case, beats):
    """Dense third differences of the direction stay below; the parts above with every summand as large as it can be."""
    path = angles_of(*CASES[case])
    jerk = tether_bounds(path, np.array([beats])).jerk[0]
    assert jerk.shape == (BOUND_PIECES,)
    rows = [np.polynomial.Polynomial(row) for row in CASES[case]]
    for k in range(BOUND_PIECES):
        x = np.linspace(k, k + 1, 101) / BOUND_PIECES
        alpha, psi = (row(x) for row in rows)
        d = np.stack([np.cos(psi) * np.cos(alpha), np.cos(psi) * np.sin(alpha), np.sin(psi)])
        third = np.linalg.norm(np.diff(d, 3, axis=1), axis=0) / (beats * (x[1] - x[0])) ** 3
        assert third.max() <= jerk[k] * (1 + 1e-4) + 1e-4
        (_, a1, a2, a3), (p, p1, p2, p3) = (
            [hull(row.deriv(m), k, 5 - m) / beats**m for m in range(4)] for row in rows
        )
        points = hull_points(rows[1], k, 5)
        one_side = min(points) > 0 or max(points) < 0
        c = np.cos(min(map(abs, points))) if one_side and p <= np.pi / 2 else 1.0
        s = min(p, 1.0)
        sc = min(0.5, s * c)
        east = c * a3 + 3 * s * p1 * a2 + 3 * s * a1 * p2 + 3 * c * p1**2 * a1 + c * a1**3
        pole = p3 + 3 * sc * a1 * a2 + 3 * s**2 * a1**2 * p1 + p1**3
        along = 3 * c**2 * a1 * a2 + 3 * sc * a1**2 * p1 + 3 * p1 * p2
        assert jerk[k] == pytest.approx(np.sqrt(east**2 + pole**2 + along**2))


def hull(polynomial, part, degree):
    """Largest size of a polynomial's Bernstein coefficients of a degree on one sixteenth of 0 … 1."""
    return max(map(abs, hull_points(polynomial, part, degree)))


def hull_points(polynomial, part, degree):
    """Those coefficients."""
    own = polynomial(np.polynomial.Polynomial([part / BOUND_PIECES, 1 / BOUND_PIECES])).coef
    own = np.append(own, np.zeros(degree + 1))
    return [
        sum(comb(i, j) / comb(degree, j) * own[j] for j in range(i + 1)) for i in range(degree + 1)
    ]


def test_control_points_hold_the_quintic_and_meet_it_at_the_ends_of_each_part():
    """Convex hull, end points and mean of a Bernstein polynomial: any text on geometric modelling."""
    draw = np.random.default_rng(3)
    coefficients = draw.normal(size=(2, 6, 3))
    x = np.linspace(0, 1, 401)
    for order in range(4):
        points = controls(coefficients, order)
        assert points.shape == (2, BOUND_PIECES, 6 - order, 3)
        exact = coefficients
        for _ in range(order):
            exact = exact[:, 1:] * np.arange(1, exact.shape[1])[:, None]
        values = np.einsum("nkm,kx->nxm", exact, x ** np.arange(exact.shape[1])[:, None])
        ends = values[:, :: 400 // BOUND_PIECES]
        assert_allclose(points[:, :, 0], ends[:, :-1], atol=1e-9)
        assert_allclose(points[:, :, -1], ends[:, 1:], atol=1e-9)
        for k in range(BOUND_PIECES):
            inside = values[:, k * 25 : (k + 1) * 25 + 1]
            assert np.all(inside <= points[:, k].max(axis=1)[:, None] + 1e-9)
            assert np.all(inside >= points[:, k].min(axis=1)[:, None] - 1e-9)
            mean = points[:, k].mean(axis=1)  # the mean of the control points is that of the values
            fine = np.linspace(k / BOUND_PIECES, (k + 1) / BOUND_PIECES, 401)
            own = np.einsum("nkm,kx->nxm", exact, fine ** np.arange(exact.shape[1])[:, None])
            assert_allclose(own.mean(axis=1), mean, rtol=1e-3, atol=1e-4)


def state(place, rate=(0, 0, 0), push=(0, 0, 0)):
    row = [np.array([each], float) for each in (place, rate, push)]
    zero = np.zeros((1, 3))
    return Motion(
        hand=row[0], hand_rate=row[1], hand_acceleration=row[2],
        tether=zero, tether_rate=zero, tether_acceleration=zero, plane=zero,
    )  # fmt: skip


@pytest.mark.parametrize("beats", [1.0, 3.0])
@pytest.mark.parametrize("aside", [None, np.array([[0.1, -0.05, 0.2]])])
def test_hand_paths_meet_their_ends_are_smooth_and_within_their_figures(beats, aside):
    """All four paths, by differences of places alone; stops lie within 0.88 of the arm."""
    first = state((0.3, 0.4, 1.2), (1.0, -0.5, 0.3), (2.0, 1.0, -3.0))
    last = state((-0.1, 0.5, 0.9), (0.2, 0.8, -0.6), (-1.0, 2.0, 1.0))
    shoulder = BODY.shoulder("right")
    paths = hand_paths(
        first, last, np.array([beats]), shoulder=shoulder, arm=BODY.arm_length, aside=aside
    )
    assert [path.knots for path in paths[1:]] == [(0, 4, 12, 16), (0, 6, 10, 16), (0, 2, 14, 16)]
    assert paths[0].knots == ((0, 16) if aside is None else (0, 8, 16))
    x = np.linspace(0, 1, 8001)
    step = beats * (x[1] - x[0])
    for path in paths:
        at = places(path, x)[0]
        speed, push = np.diff(at, axis=0) / step, np.diff(at, 2, axis=0) / step**2
        assert_allclose([at[0], at[-1]], [first.hand[0], last.hand[0]], atol=1e-9)
        assert_allclose([speed[0], speed[-1]], [first.hand_rate[0], last.hand_rate[0]], atol=0.02)
        ends = [first.hand_acceleration[0], last.hand_acceleration[0]]
        h = 2e-5
        close = [places(path, share + h * np.array([-1, 0, 1]))[0] for share in (h, 1 - h)]
        close = [np.diff(each, 2, axis=0)[0] / (h * beats) ** 2 for each in close]
        assert_allclose(close, ends, atol=0.2)
        assert np.abs(np.diff(push, axis=0)).max() < 0.05 * np.abs(push).max() + 0.5  # no jump
        reach, fast, hard = hand_figures(path, np.array([beats]), body=BODY, side="right")
        low, high = BODY.shoulder_give
        near = np.clip(at - shoulder, low, high)
        own = [
            np.linalg.norm(at - shoulder - near, axis=1).max(),
            np.linalg.norm(speed, axis=1).max(),
            np.linalg.norm(push, axis=1).max(),
        ]
        for found, most in zip(own, (reach[0], fast[0], hard[0]), strict=True):
            assert 0.55 * most < found <= most * (1 + 1e-6)
    for path, sixteenths in zip(paths[1:], (4, 6, 2), strict=True):
        span = beats * sixteenths / 16
        for knot, end, sign in ((sixteenths, first, 1), (16 - sixteenths, last, -1)):
            stop = places(path, np.array([knot / 16]))[0, 0]
            goal = end.hand[0] + sign * 0.4 * span * end.hand_rate[0]
            goal = goal + (0 if aside is None else aside[0])
            away = goal - shoulder
            within = min(1.0, 0.88 * BODY.arm_length / np.linalg.norm(away))
            assert_allclose(stop, shoulder + within * away, atol=1e-9)


def test_a_path_led_aside_is_there_at_its_middle_and_nowhere_farther():
    """A minimum-jerk step to the side and back on top of the plain path."""
    first, last = state((0.3, 0.3, 1.2), (0.5, 0, 0)), state((0.2, 0.4, 1.0), (0, 0.3, 0))
    beats, aside = np.array([2.0]), np.array([[0.2, 0.1, -0.3]])
    more = {"shoulder": BODY.shoulder("right"), "arm": BODY.arm_length}
    x = np.linspace(0, 1, 101)
    plain = places(hand_paths(first, last, beats, **more)[0], x)[0]
    led = places(hand_paths(first, last, beats, aside=aside, **more)[0], x)[0]
    y = 1 - np.abs(2 * x - 1)
    assert_allclose(led - plain, (10 * y**3 - 15 * y**4 + 6 * y**5)[:, None] * aside, atol=1e-12)


def test_a_quintic_meets_value_rate_and_acceleration_at_both_ends():
    draw = np.random.default_rng(1)
    start, end = draw.normal(size=(2, 4, 3, 2))
    value, rate, push = polynomial(quintics(start, end), np.array([0.0, 1.0]))
    for k, part in enumerate((value, rate, push)):
        assert_allclose(part[:, 0], start[:, k], atol=1e-12)
        assert_allclose(part[:, 1], end[:, k], atol=1e-12)


def test_halting_paths_stand_still_at_both_stops():
    draw = np.random.default_rng(2)
    start, end = draw.normal(size=(2, 3, 3, 2))
    path = halting(start, end, 5)
    assert path.knots == (0, 5, 11, 16)
    x = np.array(
        [0, 1e-6, 5 / 16 - 1e-4, 5 / 16, 5 / 16 + 1e-4, 11 / 16 - 1e-4, 11 / 16, 11 / 16 + 1e-4, 1]
    )
    at = places(path, x)
    assert_allclose(at[:, 0], start[:, 0], atol=1e-12)
    assert_allclose(at[:, -1], end[:, 0], atol=1e-12)
    assert_allclose((at[:, 1] - at[:, 0]) / 1e-6, start[:, 1], atol=1e-3)
    for k in (3, 6):
        assert_allclose(at[:, k - 1], at[:, k], atol=1e-5)
        assert_allclose(at[:, k + 1], at[:, k], atol=1e-5)


@pytest.mark.parametrize("which", ["turn_rate", "turn_acceleration"])
def test_a_tether_keeps_each_limit_at_its_edge(which):
    beats = np.array([2.0])
    path = angles_of(*CASES["all"])
    turn, push = tether_figures(path, beats)
    most = {"turn_rate": turn.max(), "turn_acceleration": push.max()}
    wide = {"turn_rate": 1e3, "turn_acceleration": 1e3}
    for factor, kept in ((1.001, True), (0.999, False)):
        limits = LinkLimits(**{**wide, which: most[which] * factor})
        assert bool(limits.keep_turning(path, beats)[0]) is kept


@pytest.mark.parametrize("which", ["hand_speed", "hand_acceleration"])
def test_a_hand_keeps_each_limit_at_its_edge(which):
    beats = np.array([2.0])
    more = {"shoulder": BODY.shoulder("right"), "arm": BODY.arm_length}
    path = hand_paths(state((0.3, 0.3, 1.2)), state((0.2, 0.4, 1.0)), beats, **more)[0]
    _, speed, push = hand_figures(path, beats, body=BODY, side="right")
    most = {"hand_speed": speed[0], "hand_acceleration": push[0]}
    wide = {"hand_speed": 1e3, "hand_acceleration": 1e3}
    for factor, kept in ((1.001, True), (0.999, False)):
        limits = LinkLimits(**{**wide, which: most[which] * factor})
        assert bool(limits.keep_moving(path, beats, ROOM)[0]) is kept


@pytest.mark.parametrize(("beyond", "kept"), [(0.0009, True), (0.0011, False), (0.1, False)])
def test_a_hand_keeps_within_the_arm_and_a_millimetre(beyond, kept):
    """Straight down from where the shoulder hangs: there it gives nothing."""
    place = BODY.shoulder("right") - [0, 0, BODY.arm_length + beyond]
    beats = np.array([1.0])
    more = {"shoulder": BODY.shoulder("right"), "arm": BODY.arm_length}
    path = hand_paths(state(place), state(place), beats, **more)[0]
    assert bool(LinkLimits().keep_moving(path, beats, ROOM)[0]) is kept


def test_a_room_without_shape_holds_a_poi_of_the_usual_size():
    """A centimetre of chain to either side, a head of 5 cm: common practice."""
    tether, head = ROOM.shape
    assert (tether.start.along, tether.end.along, tether.radius) == (0.0, 0.5, 0.01)
    assert (head.start.along, head.end.along, head.radius) == (0.5, 0.5, 0.05)
    assert not ROOM.flat
    assert ROOM.arm == BODY.arm_length
    assert_allclose(ROOM.shoulder, BODY.shoulder("right"))


def test_the_usual_limits_and_sizes():
    """docs/motion.md, section 5, typed here again: two loops a beat, four times a steady loop's acceleration."""
    usual = LinkLimits()
    assert usual.turn_rate == pytest.approx(2 * 2 * np.pi)
    assert (usual.turn_acceleration, usual.hand_speed, usual.hand_acceleration) == (
        160.0,
        4.0,
        25.0,
    )
    assert (link_limits.REACH_SLACK, link_limits.WICK) == (1e-3, 0.05)


def test_a_hand_twists_what_is_rigid_and_nothing_that_hangs_on_a_line():
    staff = Prop(kind="staff", length=0.8, behind=0.5, mass=0.6, wick_radius=0.03)
    poi = Prop(length=0.5, mass=0.2, wick_radius=0.05)
    room = hand_space_of(BODY, "left", staff)
    assert room.inertia == pytest.approx(0.6 * 1.3**2 / 12 + 0.6 * 0.15**2)
    assert room.carried == pytest.approx(0.6 * 0.15)
    line = hand_space_of(BODY, "left", poi)
    assert (line.inertia, line.carried) == (0.0, 0.0)


def test_the_room_of_a_prop_is_its_own_shape():
    """A prop is flat if any end of any of its bodies lies beside its axis."""
    fan = Prop(kind="fan", length=0.4, mass=0.5, wicks=2, spread=1.0, wick_radius=0.03)
    staff = Prop(kind="staff", length=0.6, behind=0.5, mass=0.8, wick_radius=0.03)
    for prop, flat in ((fan, True), (staff, False)):
        room = hand_space_of(BODY, "left", prop)
        assert (room.body, room.side, room.length) == (BODY, "left", prop.length)
        assert room.solids == room.shape == prop.solids
        assert room.flat == flat
    straight = Solid("rod", PropPoint(0.0), PropPoint(0.5), 0.01)
    for start, end in (((0.1, 0.2), (0.3, 0.0)), ((0.3, 0.0), (0.1, -0.2))):
        bent = Solid("rod", PropPoint(*start), PropPoint(*end), 0.01)
        for solids in ((bent, straight), (straight, bent)):
            assert HandSpace(body=BODY, side="left", length=0.5, solids=solids).flat


def test_limits_are_kept_up_to_the_last_bit():
    """Bounds a billionth larger than computed, for rounding: exactly that much is within each limit."""
    beats = np.array([2.0])
    path = angles_of(*CASES["all"])
    turn, push = (part.max() * (1 + 1e-9) for part in tether_figures(path, beats))
    more = {"shoulder": BODY.shoulder("right"), "arm": BODY.arm_length}
    hand = hand_paths(state((0.3, 0.3, 1.2)), state((0.2, 0.4, 1.0)), beats, **more)[0]
    _, speed, hard = (
        part[0] * (1 + 1e-9) for part in hand_figures(hand, beats, body=BODY, side="right")
    )
    at = LinkLimits(
        turn_rate=turn, turn_acceleration=push, hand_speed=speed, hand_acceleration=hard
    )
    assert bool(at.keep_turning(path, beats)[0])
    assert bool(at.keep_moving(hand, beats, ROOM)[0])
    for name in ("turn_rate", "turn_acceleration", "hand_speed", "hand_acceleration"):
        below = replace(at, **{name: np.nextafter(getattr(at, name), 0)})
        turns, moves = below.keep_turning(path, beats)[0], below.keep_moving(hand, beats, ROOM)[0]
        assert (bool(turns), bool(moves)) == (name.startswith("hand"), name.startswith("turn"))


def test_each_of_several_paths_is_judged_for_itself():
    slow, fast = angles_of((0.0, 1.0), (0.0,)).pieces, angles_of((0.0, 9.0), (0.0,)).pieces
    both = Piecewise((0, 16), np.concatenate((slow, fast, slow)))
    limits = LinkLimits(turn_rate=5.0)
    assert limits.keep_turning(both, np.array([1.0, 1.0, 0.1])).tolist() == [True, False, False]


@pytest.mark.parametrize("pace", [0.9, 1.5, 1.9, 2.0, 2.01])
def test_limits_by_the_second_become_limits_by_the_beat_at_a_tempo_rounded_up(pace):
    found = PaceLimits(hand_speed=6.0, hand_acceleration=80.0, turns=2.5, torque=7.0).at(pace)
    steps = np.arange(1, 100) / 16
    up = steps[steps >= pace - 1e-9][0]
    assert found == LinkLimits(
        turn_rate=min(4 * np.pi, 5 * np.pi / up),
        hand_speed=min(4.0, 6.0 / up),
        hand_acceleration=min(25.0, 80.0 / up**2),
        torque=7.0 / up**2,
        gravity=9.80665 / up**2,
    )


def test_a_tempo_must_be_positive():
    with pytest.raises(ValueError, match="must be positive"):
        PaceLimits().at(0.0)
