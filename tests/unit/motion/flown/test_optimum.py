"""The least-deviation problem: its derivatives by differences, and its optimum against scipy's."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.optimize import minimize
from scipy.spatial.transform import Rotation

from sequencer.motion.flown.contact import Contact
from sequencer.motion.flown.curve_layout import CurveLayout, whole
from sequencer.motion.flown.even_splines import DEGREE
from sequencer.motion.flown.optimum import STAGES, Penalties, Problem, SoughtLimits, Wanted
from sequencer.motion.flown.tether import flight, force

STEP, SPANS, LENGTH = 0.06, 5, 0.45
WEIGHTS = Penalties(pull=0.3, speed=0.2, acceleration=1e-3, contact=40.0)
INF = float("inf")


def grid_of(copies):
    """A part of a period with copies tilted against gravity; of one copy, a curve with ends."""
    if copies == 1:
        return whole(SPANS, STEP)
    turn = Rotation.from_rotvec([0.0, 2 * np.pi / copies, 0.0]).as_matrix()
    powers = np.array([np.linalg.matrix_power(turn, k) for k in range(copies)])
    taken = np.arange(SPANS)[:, None] + np.arange(DEGREE + 1)
    return CurveLayout(
        step=STEP, taken=taken % SPANS, count=SPANS, turned=powers[(taken // SPANS) % copies],
        copies=powers, centre=np.array([0.1, 0.2, 1.1]),
    )  # fmt: skip


def under_a_ledge(hand, head):
    """Contact of head, hand and the middle of the tether with a slanted plane: its normal is the same everywhere."""
    normal = np.array([0.6, 0.0, 0.8])
    parts = []
    for share in (0.0, 0.5, 1.0):
        depth = 1.1 - ((1 - share) * hand + share * head) @ normal
        at = np.flatnonzero(depth > 0)
        parts.append((at, depth[at], np.full(len(at), share), np.tile(normal, (len(at), 1))))
    return Contact(*(np.concatenate(each) for each in zip(*parts, strict=True)))


NONE = SoughtLimits(12.0, INF, INF)  # but of the pull


def problem(copies=3, **more):
    """A drawn circle of the head, a hand on a smaller one."""
    grid = grid_of(copies)
    turn = np.linspace(0.0, 2 * np.pi / copies, SPANS * 4).reshape(SPANS, 4)
    circle = np.stack([np.sin(turn), 0.1 * np.cos(3 * turn), np.cos(turn)], axis=-1)
    wanted = Wanted(
        head=0.7 * circle, hand=0.3 * circle, inward=-circle / np.linalg.norm(circle, axis=-1)[..., None],
        length=LENGTH, drag=0.1, limits=NONE,
        head_weight=2.0, hand_weight=0.7,
    )  # fmt: skip
    limits = {name: more.pop(name) for name in SoughtLimits._fields if name in more}
    return Problem(grid, replace(wanted, limits=NONE._replace(**limits), **more))


def somewhere(own, size=0.02, seed=1):
    return own.drawn() + size * np.random.default_rng(seed).normal(size=(own.grid.count, 3))


CASES = {
    "deviation": {"pull": -INF},
    "pull": {},
    "contact": {"touching": under_a_ledge},
    "speed": {"speed": 1.5},
    "acceleration": {"acceleration": 30.0},
    "all": {"touching": under_a_ledge, "speed": 1.5, "acceleration": 30.0},
}


@pytest.mark.parametrize("copies", [1, 3])
@pytest.mark.parametrize("case", CASES)
def test_gradient_by_differences(case, copies):
    own = problem(copies, **CASES[case])
    at = somewhere(own)
    value, gradient, second = own.figures(at, WEIGHTS)
    assert value == pytest.approx(own.value(at, WEIGHTS))
    assert_allclose(second, second.T, atol=1e-9 * np.abs(second).max())
    step = 1e-6
    # every third coefficient: all axes and several places
    for k in range(0, at.size, 4):
        push = step * np.eye(at.size)[k].reshape(at.shape)
        wanted = (own.value(at + push, WEIGHTS) - own.value(at - push, WEIGHTS)) / (4 * step)
        assert gradient[k] == pytest.approx(wanted, rel=2e-4, abs=1e-6 * np.abs(gradient).max())


@pytest.mark.parametrize("copies", [1, 3])
@pytest.mark.parametrize("case", ["deviation", "pull", "contact"])
def test_second_derivatives_by_differences(case, copies):
    """Exact without drag and where limits on the hand's motion hold; a plane's contact has nothing to leave out."""
    own = problem(copies, drag=0.0, **CASES[case])
    at = somewhere(own)
    second, step = own.figures(at, WEIGHTS)[2], 1e-6
    for k in range(0, at.size, 5):
        push = step * np.eye(at.size)[k].reshape(at.shape)
        up, down = (own.figures(at + sign * push, WEIGHTS)[1] for sign in (1, -1))
        wanted = (up - down) / (2 * step)
        assert_allclose(second[k], wanted, rtol=1e-4, atol=1e-6 * np.abs(second).max())


def test_drag_leaves_little_out_of_the_second_derivatives():
    own = problem(3, drag=0.02)
    at, step = somewhere(own), 1e-6
    second = own.figures(at, WEIGHTS)[2]
    push = step * np.eye(at.size)[4].reshape(at.shape)
    up, down = (own.figures(at + sign * push, WEIGHTS)[1] for sign in (1, -1))
    assert_allclose(second[4], (up - down) / (2 * step), atol=0.01 * np.abs(second[4]).max())


def test_the_value_is_what_the_docstring_says():
    """Written out copy by copy in the frame of each, where gravity points down."""
    own = problem(3, drag=0.0, **CASES["all"])
    at, want, grid = somewhere(own), own.wanted, own.grid
    path = [np.einsum("pj,kja->kpa", each, grid.local(at)) for each in grid.pieces(5)]
    total = 0.0
    for turn in grid.copies:
        seen = flight(tuple(each @ turn.T for each in path), length=LENGTH, drag=want.drag)
        pulled = force(seen.head_rate, path[2] @ turn.T, want.drag)
        lack = np.maximum(want.limits.pull - np.sum(pulled * (want.inward @ turn.T), axis=-1), 0.0)
        fast = np.maximum(np.linalg.norm(seen.hand_rate, axis=-1) - want.limits.speed, 0.0)
        hard = np.linalg.norm(seen.hand_acceleration, axis=-1) - want.limits.acceleration
        cost = want.head_weight * np.sum((seen.head - want.head @ turn.T) ** 2, axis=-1)
        cost += want.hand_weight * np.sum((seen.hand - want.hand @ turn.T) ** 2, axis=-1)
        cost += WEIGHTS.pull * lack**2 + WEIGHTS.speed * fast**2
        cost += WEIGHTS.acceleration * np.maximum(hard, 0.0) ** 2
        places = [(each + grid.centre).reshape(-1, 3) for each in (seen.hand, seen.head)]
        touch = under_a_ledge(*places)
        assert len(touch.point)
        deep = np.bincount(touch.point, touch.depth**2, minlength=SPANS * 4).reshape(SPANS, 4)
        total += np.sum(grid.shares * (cost + WEIGHTS.contact * deep)) / 3
    assert own.value(at, WEIGHTS) == pytest.approx(total, rel=1e-9)


def test_drawn_is_the_nearest_spline_to_the_head():
    """The normal equations of a weighted least-squares fit, solved by NumPy."""
    own = problem(1)
    weights = np.sqrt(own.grid.shares).ravel()
    rows = np.zeros((SPANS, 4, own.grid.count))
    for k in range(SPANS):
        rows[k, :, k : k + DEGREE + 1] = own.grid.pieces(1)[0]
    rows = rows.reshape(-1, own.grid.count) * weights[:, None]
    wanted = np.linalg.lstsq(rows, own.wanted.head.reshape(-1, 3) * weights[:, None])[0]
    assert_allclose(own.drawn(), wanted, atol=1e-6)


@pytest.mark.parametrize("case", ["deviation", "pull", "contact"])
def test_the_optimum_is_scipys(case):
    own = problem(3, **CASES[case])
    found = own.solved(own.drawn(), STAGES[:1])
    assert found.residual < 1e-7

    def figures(flat):
        value, gradient, _ = own.figures(flat.reshape(-1, 3), STAGES[0])
        return value, 2 * gradient

    other = minimize(figures, own.drawn().ravel(), jac=True, method="BFGS", options={"gtol": 1e-9})
    assert own.value(found.unknown, STAGES[0]) == pytest.approx(other.fun, rel=1e-6)
    assert_allclose(found.unknown.ravel(), other.x, atol=1e-4)


def test_heavier_penalties_come_nearer_to_the_limits():
    own = problem(3, **CASES["speed"])
    light, heavy = (own.solved(own.drawn(), stages).unknown for stages in (STAGES[:1], STAGES))

    def over(at):
        path = [np.einsum("pj,kja->kpa", each, own.grid.local(at)) for each in own.grid.pieces(5)]
        seen = flight(tuple(path), length=LENGTH, drag=own.wanted.drag)
        return np.linalg.norm(seen.hand_rate, axis=-1).max() - own.wanted.limits.speed

    assert over(heavy) < 0.1
    assert over(heavy) < over(light) / 3


def test_known_coefficients_stay():
    free = np.ones(SPANS + DEGREE, dtype=bool)
    free[:3] = free[-3:] = False
    own = problem(1)
    held = Problem(replace(own.grid, free=free), own.wanted)
    start = somewhere(held)
    found = held.solved(start)
    assert np.array_equal(found.unknown[~free], start[~free])
    assert held.value(found.unknown, STAGES[0]) < held.value(start, STAGES[0])
    gradient = held.figures(found.unknown, STAGES[1])[1].reshape(-1, 3)
    assert np.abs(gradient[free]).max() < 1e-3 * np.abs(gradient[~free]).max()
