"""Walks to the last digit: the spline is scipy's, the law of a move and its bounds are worked out by polynomials."""

from itertools import pairwise

import numpy as np
import pytest
from numpy.polynomial import Polynomial
from numpy.testing import assert_allclose, assert_array_equal
from scipy.interpolate import CubicSpline

from sequencer.motion.performers.walks import (
    Move,
    WalkBounds,
    WalkPath,
    WalkPaths,
    _bounds,
    _spline,
)

JERK = Polynomial([0, 0, 0, 10, -15, 6])  # minimum jerk: 10u³ − 15u⁴ + 6u⁵
CURVED = WalkPath(
    (0.5, 1.0),
    0.25,
    (
        Move(start=2.0, end=7.0, place=(2, 3), facing=1.5, through=((1, 3), (1.5, 2.2), (3, 1))),
        Move(start=8.5, end=9.5, place=(-1, 2), facing=-2.0),
        Move(start=9.5, end=12.5, place=(-1, 0.5), facing=4.0, through=((-2.0, 1.5),)),
    ),
)
STRAIGHT = WalkPath((3.0, -1.0), 2.0, (Move(start=1.0, end=4.0, place=(5, 0), facing=3.0),))
STILL = WalkPath((7.0, 8.0), -1.0)


def splined(path, move):
    """The natural cubic spline of one move over the share of its chords."""
    before = [path.place, *(each.place for each in path.moves[:move])][-1]
    points = np.array([before, *path.moves[move].through, path.moves[move].place])
    knots = np.append(0.0, np.cumsum(np.linalg.norm(np.diff(points, axis=0), axis=1)))
    return CubicSpline(
        knots / knots[-1], points, bc_type="natural" if len(points) > 2 else "clamped"
    )


def facings(path):
    return [path.facing, *(move.facing for move in path.moves)]


@pytest.mark.parametrize(("path", "move"), [(CURVED, 0), (CURVED, 2)])
def test_a_curved_walk_is_the_natural_spline_by_the_chain_rule(path, move):
    own, way = path.moves[move], splined(path, move)
    length, u = own.end - own.start, np.linspace(0.0, 1.0, 41)
    s, s1, s2 = (JERK.deriv(k)(u) / length**k for k in range(3))
    stand = path.at(own.start + u * length)

    assert_allclose(stand.place, way(s), atol=1e-12)
    assert_allclose(stand.place_rate, way(s, 1) * s1[:, None], atol=1e-12)
    bend = way(s, 2) * (s1**2)[:, None] + way(s, 1) * s2[:, None]
    assert_allclose(stand.place_acceleration, bend, atol=1e-11)
    turn = own.facing - facings(path)[move]
    assert_allclose(stand.facing, facings(path)[move] + turn * s, atol=1e-12)
    assert_allclose(stand.facing_rate, turn * s1, atol=1e-12)
    assert_allclose(stand.facing_acceleration, turn * s2, atol=1e-12)


def test_a_straight_walk_is_minimum_jerk_along_a_line():
    own, u = CURVED.moves[1], np.linspace(0.0, 1.0, 21)
    stand, way = (
        CURVED.at(own.start + u),
        np.array([-3.0, -1.0]),
    )  # from (2, 3) to (−1, 2) in a beat
    assert_allclose(stand.place, np.array([2.0, 3.0]) + JERK(u)[:, None] * way, atol=1e-12)
    assert_allclose(stand.place_rate, JERK.deriv(1)(u)[:, None] * way, atol=1e-12)
    assert_allclose(stand.place_acceleration, JERK.deriv(2)(u)[:, None] * way, atol=1e-12)
    assert_allclose(stand.facing, 1.5 - 3.5 * JERK(u), atol=1e-12)


def test_who_has_no_move_stands():
    stand = STILL.at([-3.0, 0.0, 9.0])
    assert_array_equal(stand.place, [[7.0, 8.0]] * 3)
    assert_array_equal(stand.facing, [-1.0] * 3)
    for part in (stand.place_rate, stand.place_acceleration, stand.facing_rate,
                 stand.facing_acceleration):  # fmt: skip
        assert_array_equal(part, np.zeros_like(part))
    assert WalkPath((1.0, 2.0)).facing == 0.0
    assert STILL.pieces(1.0, 2.0) == ((1.0, 2.0, WalkBounds()),)
    assert STILL.held(1.0, 2.0) == (-np.inf, np.inf)


@pytest.mark.parametrize("move", range(3))
def test_bounds_are_those_of_the_control_points(move):
    """Control points of a quadratic q on [a, b]: q(a), q(a) + (b − a)·q'(a)/2, q(b) (Bernstein form).

    Peaks of minimum jerk: s' = 15/8 at u = ½; |s''| = 10/√3 where s''' = 60 − 360u + 360u² = 0.
    """
    own = CURVED.moves[move]
    length, turn = own.end - own.start, abs(own.facing - facings(CURVED)[move])
    rate = JERK.deriv(1)(0.5) / length
    bend = JERK.deriv(2)(0.5 - np.sqrt(3) / 6) / length**2
    if move == 1:
        steepest, sharpest = np.sqrt(10.0), 0.0
    else:
        way = splined(CURVED, move)
        hull = [
            corner
            for a, b in pairwise(way.x)
            for corner in (way(a, 1), way(a, 1) + (b - a) * way(a, 2) / 2, way(b, 1))
        ]
        steepest = np.linalg.norm(hull, axis=1).max()
        sharpest = np.linalg.norm(way(way.x, 2), axis=1).max()
    bounds = CURVED.table.bounds[move]
    assert bounds.speed == pytest.approx(steepest * rate, rel=1e-12)
    assert bounds.acceleration == pytest.approx(sharpest * rate**2 + steepest * bend, rel=1e-12)
    assert bounds.turn_rate == pytest.approx(turn * rate, rel=1e-12)
    assert bounds.turn_acceleration == pytest.approx(turn * bend, rel=1e-12)


@pytest.mark.parametrize(
    ("cubic", "steepest", "sharpest"),
    [
        # derivative's control points 3, 3, 3: one at the start, in the middle and at the end by hand
        ([0, 3, 0, 0], 3.0, 0.0),
        ([0, 0, 0.5, 0], 1.0, 1.0),  # 0, ½, 1; bent evenly by 1
        ([0, 0, 2, -2], 2.0, 8.0),  # 0, 2, 4 − 6 = −2; bent 4 at the start, 4 − 12 at the end
        ([0, -5, 2, 1], 5.0, 10.0),  # −5, −3, 2; 4 and 10
    ],
)
def test_a_bound_looks_at_every_control_point(cubic, steepest, sharpest):
    own = np.zeros((1, 4, 2))
    own[0, :, 1] = cubic
    found = _bounds(np.zeros(1), own, -2.0, 2.0)
    assert found.speed == pytest.approx(steepest * 15 / 16)
    assert found.acceleration == pytest.approx(
        sharpest * (15 / 16) ** 2 + steepest * 10 / np.sqrt(3) / 4
    )
    assert found.turn_rate == pytest.approx(2 * 15 / 16)
    assert found.turn_acceleration == pytest.approx(2 * 10 / np.sqrt(3) / 4)


@pytest.mark.parametrize(
    ("cubic", "steepest", "sharpest"),
    [
        # the same on a piece 0.75 long: derivative −1 + 12x² ends at 5.75, its bend 24x at 18
        ([0, -1, 0, 4], 5.75, 18.0),
        ([0, 1, 2, 0], 4.0, 4.0),  # 1 + 4x
        ([0, 0, 8 / 3, -64 / 27], 2.0, 16 / 3),  # 0, 2, 0: the one in the middle; bent ±16/3
    ],
)
def test_a_bound_knows_how_long_a_piece_is(cubic, steepest, sharpest):
    own = np.zeros((2, 4, 2))
    own[1, :, 0] = cubic
    found = _bounds(np.array([0.0, 0.25]), own, 0.0, 1.0)
    assert found.speed == pytest.approx(steepest * 15 / 8)
    assert found.acceleration == pytest.approx(
        sharpest * (15 / 8) ** 2 + steepest * 10 / np.sqrt(3)
    )


def test_nothing_moves_without_a_bound_given():
    none = WalkBounds()
    assert (none.speed, none.acceleration, none.turn_rate, none.turn_acceleration) == (0, 0, 0, 0)


@pytest.mark.parametrize(
    ("span", "edges", "moving"),
    [
        # by hand: moves from 2 to 7, 8.5 to 9.5, 9.5 to 12.5
        ((0.0, 1.0), [0, 1], [None]),
        ((0.0, 2.0), [0, 2], [None]),
        ((0.0, 2.5), [0, 2, 2.5], [None, 0]),
        ((2.0, 7.0), [2, 7], [0]),
        ((3.0, 4.0), [3, 4], [0]),
        ((3.0, 8.0), [3, 7, 8], [0, None]),
        ((7.0, 8.5), [7, 8.5], [None]),
        ((7.0, 9.0), [7, 8.5, 9], [None, 1]),
        ((8.5, 12.5), [8.5, 9.5, 12.5], [1, 2]),
        ((9.5, 13.0), [9.5, 12.5, 13], [2, None]),
        ((12.5, 13.0), [12.5, 13], [None]),
        ((-1.0, 20.0), [-1, 2, 7, 8.5, 9.5, 12.5, 20], [None, 0, None, 1, 2, None]),
    ],
)
def test_pieces_by_hand(span, edges, moving):
    bounds = [WalkBounds() if k is None else CURVED.table.bounds[k] for k in moving]
    expected = [(a, b, own) for (a, b), own in zip(pairwise(edges), bounds, strict=True)]
    assert list(CURVED.pieces(*span)) == expected


@pytest.mark.parametrize(
    ("span", "held"),
    [
        # by hand: who is held where moves run from 2 to 7, 8.5 to 9.5, 9.5 to 12.5
        ((0.0, 1.0), (-np.inf, 7.0)),
        ((0.0, 2.0), (-np.inf, 7.0)),
        ((0.0, 2.1), (-np.inf, 9.5)),
        ((2.0, 7.0), (-np.inf, 9.5)),
        ((6.9, 8.0), (-np.inf, 9.5)),
        ((7.0, 8.5), (2.0, 9.5)),
        ((7.1, 8.4), (2.0, 9.5)),
        ((7.1, 8.6), (2.0, 12.5)),
        ((7.0, 7.0), (-np.inf, 9.5)),  # a beat alone lies on the walks that end or begin there
        ((8.5, 8.5), (2.0, 12.5)),
        ((9.5, 9.5), (2.0, np.inf)),
        ((9.6, 9.7), (8.5, np.inf)),
        ((12.5, 14.0), (9.5, np.inf)),
        ((13.0, 14.0), (9.5, np.inf)),
        ((-np.inf, np.inf), (-np.inf, np.inf)),
    ],
)
def test_held_by_hand(span, held):
    assert CURVED.held(*span) == held


def test_all_is_moved_if_no_span_is_given():
    """What `moved` and `shifted` give, field by field; by hand."""
    after = CURVED.moved((10.0, -4.0))
    assert after.place == (10.5, -3.0)
    assert after.facing == 0.25
    assert [move.place for move in after.moves] == [(12, -1), (9, -2), (9, -3.5)]
    assert [move.facing for move in after.moves] == [1.5, -2.0, 4.0]
    assert after.moves[0].through == ((11, -1), (11.5, 2.2 - 4.0), (13, -3))
    assert after.moves[2].through == ((8, -2.5),)
    turned = CURVED.moved((0.0, 0.0), end=1.0, turn=0.5)
    assert turned.facing == 0.75
    assert [move.facing for move in turned.moves] == [1.5, -2.0, 4.0]
    last = CURVED.moved((1.0, 2.0), start=13.0, turn=-1.0)
    assert last.place == CURVED.place
    assert [move.place for move in last.moves] == [(2, 3), (-1, 2), (0, 2.5)]
    assert [move.facing for move in last.moves] == [1.5, -2.0, 3.0]
    assert last.moves[2].through == ((-2.0, 1.5),)
    late = CURVED.shifted(-0.5)
    assert (late.place, late.facing) == (CURVED.place, CURVED.facing)
    assert [(move.start, move.end) for move in late.moves] == [(1.5, 6.5), (8.0, 9.0), (9.0, 12.0)]
    for before, move in zip(CURVED.moves, late.moves, strict=True):
        assert (move.place, move.facing, move.through) == (
            before.place, before.facing, before.through,
        )  # fmt: skip


@pytest.mark.parametrize("at", [1.0, 2.0, 3.0, 4.0, 5.0, 6.0])
def test_a_beat_on_walks_moves_both_ends_of_each(at):
    """Walks from 0 to 2, 2 to 4, 4 to 6, their first and last beats included; by hand."""
    path = WalkPath(
        (0, 0),
        0.0,
        tuple(Move(start=2 * k, end=2 * k + 2, place=(k + 1, 0), facing=0) for k in range(3)),
    )
    after = path.moved((0.0, 9.0), start=at, end=at)
    moved = [after.place[1] == 9.0, *(move.place[1] == 9.0 for move in after.moves)]
    k = int(at) // 2
    expected = {k, k + 1} if at % 2 else {k - 1, k, k + 1} & {0, 1, 2, 3}
    assert {i for i, each in enumerate(moved) if each} == expected


def test_many_paths_at_once_are_the_same_numbers():
    paths = (CURVED, STILL, STRAIGHT, CURVED)
    beats = np.array([-1.0, 2.0, 3.3, 8.9, 12.4, 30.0, 1.7, 2.2, 0.5, 1.0, 2.5, 4.0, 9.5, 12.0])
    slices = [(0, 0, 6), (1, 6, 8), (2, 8, 12), (3, 12, 14)]
    seen = WalkPaths(paths).at(slices, beats)
    for k, low, high in slices:
        own = paths[k].at(beats[low:high])
        for name in ("place", "place_rate", "place_acceleration", "facing", "facing_rate",
                     "facing_acceleration"):  # fmt: skip
            # Keys grow with the row, so a share of the way may be cut at another last digit.
            assert_allclose(getattr(seen, name)[low:high], getattr(own, name), atol=1e-13)


def test_points_that_coincide_are_one():
    """Twice the same point in the middle, at the start or at the end: the spline is that of the points told apart."""
    points = np.array([(0, 0), (1, 1), (2, 0.5), (3, 3)], float)
    knots, cubics = _spline(points)
    for repeated in ([0, 0, 1, 2, 3], [0, 1, 1, 2, 2, 3], [0, 1, 2, 3, 3, 3]):
        again = _spline(points[repeated])
        assert_array_equal(again[0], knots)
        assert_array_equal(again[1], cubics)
    line = _spline(points[[0, 0, 2, 2]])
    assert_array_equal(line[0], [0.0])
    assert_array_equal(line[1], [[[0, 0], [2, 0.5], [0, 0], [0, 0]]])
    stay = _spline(points[[3, 3, 3]])
    assert_array_equal(stay[0], [0.0])
    assert_array_equal(stay[1], [[[3, 3], [0, 0], [0, 0], [0, 0]]])
    both = _spline(points[[1, 1]])
    assert_array_equal(both[1], [[[1, 1], [0, 0], [0, 0], [0, 0]]])


@pytest.mark.parametrize("name", ["start", "end", "facing"])
@pytest.mark.parametrize("value", [float("nan"), float("inf"), -float("inf")])
def test_a_move_is_finite(name, value):
    with pytest.raises(ValueError, match=f"{name} must be finite"):
        Move(**{"start": 0.0, "end": 1.0, "place": (0, 0), "facing": 0.0, name: value})


@pytest.mark.parametrize(
    "given",
    [
        {"place": (0.0, 1.0, 2.0)},
        {"place": (0.0,)},
        {"place": (float("nan"), 0.0)},
        {"through": ((0.0, float("inf")),)},
        {"through": ((0.0, 1.0), (0.0,))},
    ],
)
def test_a_place_is_two_finite_numbers(given):
    with pytest.raises(ValueError, match="a place must be two finite numbers"):
        Move(**{"start": 0.0, "end": 1.0, "place": (0, 0), "facing": 0.0, **given})


@pytest.mark.parametrize(
    ("place", "facing"),
    [((0.0, 1.0, 2.0), 0.0), ((0.0,), 0.0), ((0.0, np.inf), 0.0), ((0.0, 0.0), np.nan)],
)
def test_a_path_begins_somewhere(place, facing):
    with pytest.raises(ValueError, match="place and facing must be finite"):
        WalkPath(place, facing)


def test_order_of_moves():
    def moves(*spans):
        return tuple(Move(start=a, end=b, place=(0, 0), facing=0) for a, b in spans)

    with pytest.raises(ValueError, match="end after it starts"):
        moves((1.0, 0.5))
    with pytest.raises(ValueError, match=r"one ends at beat 4\.0, the next starts at 3\.5"):
        WalkPath((0, 0), 0, moves((0.0, 1.0), (2.0, 4.0), (3.5, 5.0)))
    assert len(WalkPath((0, 0), 0, moves((0.0, 1.0), (1.0, 4.0), (4.0, 5.0))).moves) == 3
    assert WalkPath((0, 0), 0, list(moves((0.0, 1.0)))).moves == moves((0.0, 1.0))
