"""The least-deviation problem: its derivatives by differences, and its optimum against scipy's."""

import gzip
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal
from scipy.optimize import minimize
from scipy.spatial.transform import Rotation

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.flown import compiled, kernel, kernel_places
from sequencer.motion.flown.body_space import NOWHERE, BodySpace, Room
from sequencer.motion.flown.curve_layout import CurveLayout, whole
from sequencer.motion.flown.even_splines import DEGREE
from sequencer.motion.flown.optimum import STAGES, Penalties, Problem, SoughtLimits, Wanted
from sequencer.motion.flown.tether import flight, force
from sequencer.motion.props.prop import Prop
from sequencer.progress import Stopped, stoppable

STEP, SPANS, LENGTH = 0.06, 5, 0.45
WEIGHTS = Penalties(pull=0.3, speed=0.2, acceleration=1e-3, contact=40.0)
INF = float("inf")
POI = Prop(length=LENGTH, mass=0.2, wick_radius=0.05)


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


NORMAL, AWAY, FAR = np.array([0.6, 0.0, 0.8]), 1.1, 1e4


def ledge():
    """A slanted plane, as a ball so large that it bends by nothing, that neither tether nor head may go under."""
    centre = (AWAY - FAR) * NORMAL
    return Room(NOWHERE.numbers, np.array([[*centre, *centre, FAR]]))


FLAT = Room(
    np.where(np.arange(kernel_places.KERNEL_ROOM) == kernel_places.AT_FLOOR, AWAY, 0.0),
    np.zeros((0, 7)),
)


def under_a_ledge(hand, head):
    """Squares of how far the tether's deeper end and the head are under it, summed for each point."""
    deep = [np.maximum(AWAY - each @ NORMAL, 0.0) for each in (hand, head)]
    return np.maximum(*deep) ** 2 + deep[1] ** 2


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


def path_of(own, at):
    """The head and its derivatives at the Gauss points."""
    return [np.einsum("pj,kja->kpa", each, own.grid.local(at)) for each in own.grid.pieces(5)[0]]


def somewhere(own, size=0.02, seed=1):
    return own.drawn() + size * np.random.default_rng(seed).normal(size=(own.grid.count, 3))


CASES = {
    "deviation": {"pull": -INF},
    "pull": {},
    "contact": {"room": FLAT},
    "ledge": {"room": ledge()},
    "speed": {"speed": 1.5},
    "acceleration": {"acceleration": 30.0},
    "all": {"room": ledge(), "speed": 1.5, "acceleration": 30.0},
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
    path = path_of(own, at)
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
        deep = under_a_ledge(*places).reshape(SPANS, 4)
        assert np.any(deep)
        total += np.sum(grid.shares * (cost + WEIGHTS.contact * deep)) / 3
    assert own.value(at, WEIGHTS) == pytest.approx(total, rel=1e-4)  # the ball bends


def test_drawn_is_the_nearest_spline_to_the_head():
    """The normal equations of a weighted least-squares fit, solved by NumPy."""
    own = problem(1)
    weights = np.sqrt(own.grid.shares).ravel()
    rows = np.zeros((SPANS, 4, own.grid.count))
    for k in range(SPANS):
        rows[k, :, k : k + DEGREE + 1] = own.grid.pieces(1)[0, 0]
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
        path = path_of(own, at)
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
    assert (
        np.abs(held.figures(found.unknown, STAGES[1])[1]).max()
        < 1e-3 * np.abs(own.figures(found.unknown, STAGES[1])[1]).max()
    )


def test_derivatives_of_free_coefficients_are_those_of_all():
    free = np.ones(SPANS + DEGREE, dtype=bool)
    free[[0, 1, 6, 9]] = False
    own = problem(1, **CASES["all"])
    held = Problem(replace(own.grid, free=free), own.wanted)
    at, flat = somewhere(own), np.repeat(free, 3)
    _, gradient, second = own.figures(at, WEIGHTS)
    assert_allclose(held.figures(at, WEIGHTS)[1], gradient[flat])
    assert_allclose(held.figures(at, WEIGHTS)[2], second[np.ix_(flat, flat)])


@pytest.mark.parametrize("name", ["hand_rate", "hand_acceleration"])
def test_second_derivatives_of_hurry_are_those_of_gauss_and_newton(name):
    """Σ w·Jᵀ(m̂m̂ᵀ + over/|m|·(1 − m̂m̂ᵀ))J, with J the slopes of the hand's motion m, by differences of `flight`."""
    limits = {"speed": 1.0} if name == "hand_rate" else {"acceleration": 10.0}
    own = problem(1, drag=0.0, pull=-INF, **limits)
    at, step = somewhere(own), 1e-6

    def moved(places):
        return getattr(flight(tuple(path_of(own, places)), length=LENGTH, drag=0.0), name)

    slopes = np.zeros((*moved(at).shape, at.size))
    for k in range(at.size):
        push = step * np.eye(at.size)[k].reshape(at.shape)
        slopes[..., k] = (moved(at + push) - moved(at - push)) / (2 * step)
    size = np.linalg.norm(moved(at), axis=-1)
    over = np.maximum(size - next(iter(limits.values())), 0.0)
    assert np.sum(over > 0) > SPANS
    way = moved(at) / size[..., None]
    along = np.einsum("kpa,kpan->kpn", way, slopes)
    side = slopes - way[..., None] * along[..., None, :]
    weight = WEIGHTS.speed if name == "hand_rate" else WEIGHTS.acceleration
    shares = weight * own.grid.shares * (over > 0)
    wanted = np.einsum("kp,kpm,kpn->mn", shares, along, along)
    wanted += np.einsum("kp,kpam,kpan->mn", shares * over / size, side, side)
    free = replace(own.wanted, limits=NONE._replace(pull=-INF))
    found = own.figures(at, WEIGHTS)[2] - Problem(own.grid, free).figures(at, WEIGHTS)[2]
    assert_allclose(found, wanted, rtol=1e-5, atol=1e-6 * np.abs(wanted).max())


POI_SPACE = BodySpace(
    body=Body(stature=1.75), posture=Posture(turn=0.4, lean=0.15, side=0.1), side="left", prop=POI, clearance=0.05
)  # fmt: skip


@pytest.mark.parametrize("copies", [1, 3])
def test_contact_is_that_of_the_body_space(copies):
    """Reach, floor, tether and head against every capsule: the same depths, found for arrays."""
    plain = problem(copies)
    own = Problem(plain.grid, replace(plain.wanted, room=POI_SPACE.room()))
    at = somewhere(own, size=0.3)
    at += np.array([0.2, 0.0, 0.3]) if copies == 1 else 0.0
    touch = POI_SPACE.touching(*own.hands(at))
    shares = set(touch.share.tolist())
    assert shares > ({0.0, 1.0} if copies == 1 else {0.0})  # and between
    shares = np.tile(own.grid.shares.ravel() / copies, copies)[touch.point]
    wanted = WEIGHTS.contact * np.sum(shares * touch.depth**2)
    assert own.value(at, WEIGHTS) - plain.value(at, WEIGHTS) == pytest.approx(wanted, rel=1e-9)
    gradient, step = own.figures(at, WEIGHTS)[1], 1e-7
    for k in range(0, at.size, 3):
        push = step * np.eye(at.size)[k].reshape(at.shape)
        slope = (own.value(at + push, WEIGHTS) - own.value(at - push, WEIGHTS)) / (4 * step)
        assert gradient[k] == pytest.approx(slope, rel=1e-3, abs=1e-5 * np.abs(gradient).max())


def test_what_moves_beside_it_is_as_a_body_that_stands_there():
    plain = problem(3)
    bodies = np.random.default_rng(5).normal(size=(2, 7)) * [0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.1]
    bodies[:, :6] += np.tile(plain.grid.centre, 2)
    bodies[:, 6] = [0.2, 0.3]
    still = Problem(plain.grid, replace(plain.wanted, room=Room(NOWHERE.numbers, bodies)))
    mates = np.broadcast_to(bodies, (SPANS, 4, 3, 2, 7))
    moving = Problem(plain.grid, replace(plain.wanted, mates=mates))
    at = somewhere(plain)
    assert still.value(at, WEIGHTS) > plain.value(at, WEIGHTS)
    for one, other in zip(still.figures(at, WEIGHTS), moving.figures(at, WEIGHTS), strict=True):
        assert_allclose(one, other, rtol=1e-12)
    # the copies, each alone, add up to all
    more = 0.0
    for copy in range(3):
        alone = np.array(mates)
        alone[:, :, [k for k in range(3) if k != copy]] += 50.0
        more += Problem(plain.grid, replace(plain.wanted, mates=alone)).value(at, WEIGHTS)
    least = plain.value(at, WEIGHTS)
    assert more - 3 * least == pytest.approx(still.value(at, WEIGHTS) - least)


@pytest.mark.parametrize("copies", [1, 3])
def test_what_was_measured_for_one_path_changes_no_digit_of_the_next(copies):
    """Gaps to capsules are measured now and then: between, nothing may touch that is taken for clear."""
    plain = problem(copies)
    draws = np.random.default_rng(copies)
    beside = draws.normal(size=(SPANS, 4, copies, 2, 7)) * [0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.0]
    beside += np.array([*np.tile(plain.grid.centre, 2), 0.1])
    wanted = replace(plain.wanted, room=POI_SPACE.room(), mates=beside)
    going, at, touched = Problem(plain.grid, wanted), somewhere(plain), set()
    for _ in range(40):
        at = at + 0.03 * draws.normal(size=at.shape)
        fresh = Problem(plain.grid, wanted)
        here, again = (each._run(at, WEIGHTS, 1e-7, 0) for each in (fresh, going))
        for name in ("told", "gradient", "matrix"):
            assert_array_equal(getattr(here, name), getattr(again, name))
        touched.add(here.told[kernel_places.AT_PENALTY])
    assert len(touched) == 40  # they did touch, each time otherwise


def test_a_value_is_left_off_only_where_it_is_more_than_asked_for(monkeypatch):
    own = problem(3, **CASES["all"])
    start = somewhere(own)
    whole, seen = own.value(start, WEIGHTS), []

    def newton(given, w, unknown, _trial, gradient, matrix, *rest):
        told = rest[-1]
        most = (INF, whole * (1.0 + 1e-12), whole * (1.0 - 1e-12), whole / 2.0)
        seen.extend(
            kernel.figures(given, w, unknown, 0, gradient, matrix, told, each) for each in most
        )

    monkeypatch.setattr(kernel, "newton", newton)
    ints, floats, at = own._packed
    floats[at["numbers"]], floats[at["unknown"]] = own._numbers(WEIGHTS, 1e-7, 0), start.ravel()
    kernel.solve(ints, floats)
    exact, enough, little, half = seen
    assert exact == enough == pytest.approx(whole, rel=1e-13)
    assert little > whole * (1.0 - 1e-12)
    assert whole / 2.0 < half < 0.9 * whole


@pytest.mark.parametrize("copies", [1, 3])
def test_the_machine_code_does_what_the_kernel_says(copies):
    """The same kernel as Python: two steps of Newton's, a problem with everything in it."""
    own = problem(copies, **CASES["all"])
    own = Problem(own.grid, replace(own.wanted, room=POI_SPACE.room()))
    start = somewhere(own)
    found = own._run(start, WEIGHTS, 1e-7, 2)
    ints, floats, at = own._packed
    floats[at["unknown"]], floats[at["told"]] = start.ravel(), 0.0
    kernel.solve(ints, floats)
    for name in ("unknown", "told", "gradient", "matrix"):
        wanted = floats[at[name]]
        assert_allclose(
            getattr(found, name).ravel(), wanted, rtol=1e-9, atol=1e-9 * np.abs(wanted).max()
        )
    assert found.told[kernel_places.AT_STEPS] == 2


@pytest.mark.parametrize("seed", range(4))
def test_no_step_raises_the_value(seed):
    """From far off, where a step of Newton's overshoots."""
    own = problem(3, **CASES["all"])
    start = somewhere(own, size=0.3, seed=seed)
    found = [own._run(start, STAGES[-1], 1e-9, most) for most in range(12)]
    values = [each.told[kernel_places.AT_VALUE] for each in found]
    assert found[-1].told[kernel_places.AT_REFUSED] > 0
    assert values == sorted(values, reverse=True)


def test_portable_code_is_of_the_kernel_as_it_is():
    """`python -m sequencer.motion.flown.compiled` makes it anew."""
    first = gzip.decompress(compiled.packed()).decode().splitlines()[0]
    assert first == f"; kernel {compiled.source_digest()}"


def test_code_that_cannot_be_used_is_compiled_here(monkeypatch):
    """Nothing of a damaged file is run: numba makes the code, and the answer is the same."""
    calls = []
    monkeypatch.setattr(compiled, "_by_numba", lambda: calls.append(1) or kernel.solve)
    for damaged in (b"", b"no code", compiled.packed()[:-99], gzip.compress(b"define nonsense")):
        assert compiled.made_from(damaged) is kernel.solve
    assert len(calls) == 4
    assert compiled.made_from(compiled.packed()) is not kernel.solve


def test_a_search_that_nobody_wants_ends_before_its_next_run():
    own, asked = problem(pull=4.0), []
    own.solved(somewhere(own))
    with pytest.raises(Stopped), stoppable(lambda: bool(asked) or bool(asked.append(1))):
        own.solved(somewhere(own))  # every search runs twice at least
    assert asked == [1]
