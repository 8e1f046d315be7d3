"""Hand paths piece by piece: quintics from a linear system, control points as polar forms, edges by hand."""

from itertools import combinations

import numpy as np
import pytest
from numpy.polynomial import Polynomial
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.one_link import hand_paths as module
from sequencer.motion.trajectories.one_link.hand_paths import (
    Piecewise,
    controls,
    halting,
    hand_figures,
    hand_paths,
    places,
    whole,
)

BODY = Body(stature=1.7)
STATE = (
    "hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane",
)  # fmt: skip


def drawn(seed, *shape):
    return np.random.default_rng(seed).normal(size=shape)


def test_the_numbers_of_the_paths():
    """This project's choices, typed here again: a changed one changes every link's path."""
    assert (module.BOUND_PIECES, module.STOP_SHARE, module.INSIDE) == (16, 0.4, 0.88)


def quintic(start, end):
    """The six conditions at 0 and at 1, solved: (6, m) from two of (3, m)."""
    system = np.array(
        [
            [1, 0, 0, 0, 0, 0], [0, 1, 0, 0, 0, 0], [0, 0, 2, 0, 0, 0],
            [1, 1, 1, 1, 1, 1], [0, 1, 2, 3, 4, 5], [0, 0, 2, 6, 12, 20],
        ]
    )  # fmt: skip
    return np.linalg.solve(system, np.concatenate((start, end)))


def polar(row, low, high, j):
    """Control point j of a polynomial on low … high: its polar form with n − j times low and j times high.

    Source: blossoming; x^i becomes the mean of the products of i of the n arguments.
    """
    n = len(row) - 1
    arguments = [low] * (n - j) + [high] * j
    return sum(
        c * np.mean([np.prod(some) for some in combinations(arguments, i)])
        for i, c in enumerate(row)
    )


@pytest.mark.parametrize("order", [0, 1, 2, 3])
@pytest.mark.parametrize("parts", [1, 3])
def test_control_points_are_polar_forms(order, parts):
    rows = drawn(1, 2, 6, 2)
    found = controls(rows, order, parts)
    assert found.shape == (2, parts, 6 - order, 2)
    for n in range(2):
        for m in range(2):
            own = Polynomial(rows[n, :, m])
            row = own.deriv(order).coef if order else own.coef
            for part in range(parts):
                ends = part / parts, (part + 1) / parts
                wanted = [polar(row, *ends, j) for j in range(6 - order)]
                assert_allclose(found[n, part, :, m], wanted, atol=1e-11)


def test_by_default_there_are_sixteen_parts():
    rows = drawn(2, 6, 3)
    assert_array_equal(controls(rows, 1), controls(rows, 1, 16))


UNEVEN = Piecewise((0, 3, 16), drawn(3, 2, 2, 6, 3))


@pytest.mark.parametrize("order", [0, 1, 2, 3])
def test_control_points_of_pieces_are_those_of_each_sixteenth_by_beats(order):
    """Two paths of 0.8 and 2.5 beats with a knot at 3/16: rates by the piece's own duration."""
    beats = np.array([0.8, 2.5])
    found = UNEVEN.controls(order, beats)
    assert found.shape == (2, 16, 6 - order, 3)
    for n in range(2):
        for k, (low, high) in enumerate(((0, 3), (3, 16))):
            span = beats[n] * (high - low) / 16
            for sixteenth in (low, high - 1):
                ends = (sixteenth - low) / (high - low), (sixteenth + 1 - low) / (high - low)
                own = Polynomial(UNEVEN.pieces[n, k, :, 1])
                row = own.deriv(order).coef if order else own.coef
                wanted = [polar(row, *ends, j) / span**order for j in range(6 - order)]
                assert_allclose(found[n, sixteenth, :, 1], wanted, rtol=1e-9, atol=1e-9)


def test_places_are_those_of_the_piece_a_share_lies_in():
    """The pieces do not meet: at a knot the later one counts; before 0 the first goes on, after 1 the last."""
    x = np.array([-0.2, 0.0, 0.1, 3 / 16, 0.5, 1.0, 1.2, 0.05])
    owner = [0, 0, 0, 1, 1, 1, 1, 0]
    found = places(UNEVEN, x)
    assert found.shape == (2, 8, 3)
    for n in range(2):
        for i, k in enumerate(owner):
            local = (x[i] - (0, 3 / 16)[k]) / (3 / 16, 13 / 16)[k]
            wanted = [Polynomial(UNEVEN.pieces[n, k, :, m])(local) for m in range(3)]
            assert_allclose(found[n, i], wanted, atol=1e-11)


def test_a_whole_path_has_one_piece():
    rows = drawn(4, 3, 6, 2)
    path = whole(rows)
    assert path.knots == (0, 16)
    assert_array_equal(path.pieces, rows.reshape(3, 1, 6, 2))


def states(seed, near):
    """Two states about a place."""
    parts = drawn(seed, 3, 2, 3)
    zero = np.zeros((2, 3))
    return Motion(
        hand=near + 0.3 * parts[0], hand_rate=parts[1], hand_acceleration=3 * parts[2],
        tether=zero, tether_rate=zero, tether_acceleration=zero, plane=zero,
    )  # fmt: skip


def ends_of(state, n, span):
    return np.array(
        [state.hand[n], state.hand_rate[n] * span, state.hand_acceleration[n] * span**2]
    )


SHOULDER, ARM = np.array([0.2, 0.1, 1.3]), 0.6


@pytest.mark.parametrize("aside", [None, np.array([[0.1, -0.2, 0.05], [-0.3, 0.0, 0.2]])])
def test_every_piece_of_every_hand_path(aside):
    """Two paths of 0.8 and 2.5 beats. The hand stops 0.4 of the way it would go, within 0.88 of the arm."""
    first, last = states(5, SHOULDER), states(6, SHOULDER + np.array([0.3, 0.3, -0.2]))
    beats = np.array([0.8, 2.5])
    paths = hand_paths(first, last, beats, shoulder=SHOULDER, arm=ARM, aside=aside)
    assert [path.knots for path in paths[1:]] == [(0, 4, 12, 16), (0, 6, 10, 16), (0, 2, 14, 16)]
    pulled = 0
    for n in range(2):
        plain = quintic(ends_of(first, n, beats[n]), ends_of(last, n, beats[n]))
        if aside is None:
            assert paths[0].knots == (0, 16)
            assert_allclose(paths[0].pieces[n, 0], plain, atol=1e-9)
        off = np.zeros(3) if aside is None else aside[n]
        for path, sixteenths in zip(paths[1:], (4, 6, 2), strict=True):
            span = beats[n] * sixteenths / 16
            stops = []
            for state, sign in ((first, 1), (last, -1)):
                goal = state.hand[n] + sign * 0.4 * span * state.hand_rate[n] + off - SHOULDER
                size = np.sqrt(goal @ goal)
                pulled += size > 0.88 * ARM
                goal = goal * (0.88 * ARM / size) if size > 0.88 * ARM else goal
                stops.append(np.array([SHOULDER + goal, np.zeros(3), np.zeros(3)]))
            wanted = [
                quintic(ends_of(first, n, span), stops[0]),
                quintic(*stops),
                quintic(stops[1], ends_of(last, n, span)),
            ]
            assert_allclose(path.pieces[n], wanted, atol=1e-9)
    assert 0 < pulled < 12  # some stops are within reach, some are not


def test_by_default_no_path_is_led_aside():
    first, last = states(5, SHOULDER), states(6, SHOULDER)
    more = {"beats": np.ones(2), "shoulder": SHOULDER, "arm": ARM}
    bare, none = (hand_paths(first, last, **more, **own) for own in ({}, {"aside": None}))
    assert [path.knots for path in bare] == [path.knots for path in none]


def test_a_path_led_aside_is_the_plain_one_and_a_step_there_and_back():
    """Minimum-jerk steps from 0 to 1 and back on either half: 10y³ − 15y⁴ + 6y⁵."""
    plain, aside = drawn(7, 2, 6, 3), drawn(8, 2, 3)
    halves = module._led(plain, aside)
    assert halves.shape == (2, 2, 6, 3)
    y = np.linspace(0, 1, 7)
    step = 10 * y**3 - 15 * y**4 + 6 * y**5
    for n in range(2):
        for half, led in ((0, step), (1, 1 - step)):
            for m in range(3):
                x = 0.5 * half + 0.5 * y
                wanted = Polynomial(plain[n, :, m])(x) + led * aside[n, m]
                assert_allclose(Polynomial(halves[n, half, :, m])(y), wanted, atol=1e-11)
    first, last = states(5, SHOULDER), states(6, SHOULDER)
    more = {"shoulder": SHOULDER, "arm": ARM}
    beats = np.array([1.0, 2.0])
    led = hand_paths(first, last, beats, **more, aside=aside)[0]
    straight = hand_paths(first, last, beats, **more)[0]
    assert led.knots == (0, 8, 16)
    assert_allclose(led.pieces, module._led(straight.pieces[:, 0], aside), atol=1e-12)


def test_a_halting_path_piece_by_piece():
    """Rates are by the link's share: those of a piece of 5/16 are 5/16 and its square as large."""
    start, end = drawn(9, 2, 2, 3, 2)
    path = halting(start, end, 5)
    assert path.knots == (0, 5, 11, 16)
    scale = np.array([1, 5 / 16, 25 / 256])[:, None]
    zero = np.zeros(2)
    for n in range(2):
        first, last = start[n] * scale, end[n] * scale
        stops = [
            np.array([first[0] + 0.4 * first[1], zero, zero]),
            np.array([last[0] - 0.4 * last[1], zero, zero]),
        ]
        wanted = [quintic(first, stops[0]), quintic(*stops), quintic(stops[1], last)]
        assert_allclose(path.pieces[n], wanted, atol=1e-11)


@pytest.mark.parametrize("side", ["left", "right"])
def test_figures_of_a_hand_are_its_worst_control_points(side):
    """Two paths; reach from the box in which the shoulder gives, mirrored on the left."""
    pieces = np.concatenate((UNEVEN.pieces, 0.4 * UNEVEN.pieces[::-1])) + 0.0
    path, beats = Piecewise(UNEVEN.knots, pieces), np.array([0.8, 2.5, 1.0, 0.3])
    reach, speed, push = hand_figures(path, beats, body=BODY, side=side)
    low, high = BODY.shoulder_give
    for n in range(4):
        points = path.controls(0, beats)[n].reshape(-1, 3) - BODY.shoulder(side)
        points = points * [1 if side == "right" else -1, 1, 1]
        beyond = np.maximum(np.maximum(low - points, points - high), 0)
        assert reach[n] == pytest.approx(np.sqrt((beyond**2).sum(axis=1)).max())
        for order, found in ((1, speed), (2, push)):
            own = path.controls(order, beats)[n].reshape(-1, 3)
            assert found[n] == pytest.approx(np.sqrt((own**2).sum(axis=1)).max())


@pytest.mark.parametrize(
    ("away", "kept"), [(0.0, 0.0), (0.1, 0.1), (0.527, 0.527), (0.529, 0.528), (2.0, 0.528)]
)
def test_a_stop_is_pulled_within_reach(away, kept):
    """0.88 of an arm of 0.6 m is 0.528 m; nearer ones stay, also one at the shoulder itself."""
    spots = SHOULDER + away * np.array([[0.6, 0.0, -0.8], [0.0, 1.0, 0.0]])
    found = module.within_reach(spots, SHOULDER, 0.6)
    assert_allclose(
        found, SHOULDER + kept * np.array([[0.6, 0.0, -0.8], [0.0, 1.0, 0.0]]), atol=1e-12
    )
    deep = module.within_reach(spots[:, None], SHOULDER, 0.6)
    assert_array_equal(deep[:, 0], found)


def test_figures_of_several_sets_are_those_of_each():
    first, last = (Motion(**dict(zip(STATE, drawn(seed, 7, 3, 3), strict=True))) for seed in (1, 2))
    beats = np.array([1.0, 2.0, 0.75])
    sets = hand_paths(first, last, beats, shoulder=BODY.shoulder("left"), arm=BODY.arm_length)
    found = module.figures_of_each(sets, beats, body=BODY, side="left")
    each = [hand_figures(own, beats, body=BODY, side="left") for own in sets]
    for own, parts in zip(found, zip(*each, strict=True), strict=True):
        assert_array_equal(own, np.concatenate(parts))


def test_on_a_moving_path_the_hand_goes_from_stop_to_stop_at_one_speed():
    """The middle piece is straight and even, and the others meet it there."""
    first, last = (Motion(**dict(zip(STATE, drawn(seed, 7, 2, 3), strict=True))) for seed in (3, 4))
    beats = np.array([1.0, 3.0])
    for paths in module.moving_paths(first, last, beats, shoulder=SHOULDER, arm=ARM):
        before, middle, after = (paths.pieces[:, k] for k in range(3))
        assert_allclose(middle[:, 2:], 0.0, atol=1e-12)
        wide, narrow = np.diff(paths.knots)[1::-1]
        ends = before.sum(axis=1), (before * np.arange(6)[:, None]).sum(axis=1)
        assert_allclose(ends[0], middle[:, 0], atol=1e-12)
        assert_allclose(ends[1] / narrow, middle[:, 1] / wide, atol=1e-12)
        assert_allclose(after[:, 0], middle[:, :2].sum(axis=1), atol=1e-12)
