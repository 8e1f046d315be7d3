"""The head's path that is nearest to what is drawn, head and hand, among those that a line and an arm can make.

Unknown are the coefficients of a spline of degree 5; all else follows (`tether.py`), so the law of motion holds exactly
and no differential equation is solved. Least is

    ∫ w_y|y − Y|² + w_h|h − H|² dt / ∫ dt      Y, H the head and the hand as drawn, at four Gauss points a span,

with quadratic penalties on a pull under its floor, on hand speed and acceleration over their limits, and on contact. The
pull is that along the tether as drawn: so its penalty is convex, and no tether gets more than 90° off. Newton's method,
with exact second derivatives but for those of drag, of contact and of hand speed and acceleration (Gauss–Newton there),
damped until the matrix is positive and the value falls. Copies of a part that is repeated see gravity from different
sides; costs are their mean.
Source: J. Nocedal and S. Wright, Numerical Optimization, 2006, chapters 3 and 17 (from memory).
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.flown.contact import Contact, Curves, Touching
from sequencer.motion.flown.curve_layout import GAUSS_PLACES, CurveLayout
from sequencer.motion.flown.even_splines import DEGREE
from sequencer.motion.flown.fast_hand import ORDERS, HandLimit, TooFast, too_fast
from sequencer.motion.flown.tether import UP, drag_slopes, force

_ROUGH, _ENOUGH = (
    1e-3,
    1e-7,
)  # of the value: what a Newton step must promise before and in the last stage
_MOST_STEPS = 60  # in a stage
_LOOSER, _FIRMER = 0.1, 4.0  # factors of the damping after a step that went well, and badly
_LEAST_DAMPING, _DAMPED_OUT = 1e-9, 1e12
_EYE = np.eye(3)


class Penalties(NamedTuple):
    """Weights of the penalties in one stage."""

    pull: float  # [m²/(m/s²)²]
    speed: float  # [m²/(m/s)²]
    acceleration: float  # [m²/(m/s²)²]
    contact: float  # [1]


# 1 m/s² of pull too little, 1 m/s or 10 m/s² too much, or 1 cm of contact cost as much as a head and hand that are off
# by 32, 10, 3 and 10 cm at first, and a hundred times that in the end.
STAGES = (Penalties(1e-1, 1e-2, 1e-5, 1e2), Penalties(1e1, 1e0, 1e-3, 1e4))


class SoughtLimits(NamedTuple):
    """Limits as sought."""

    pull: float  # [m/s²] floor of the pull over mass
    speed: float  # [m/s] of the hand, at most
    acceleration: float  # [m/s²] of the hand, at most


@dataclass(frozen=True, kw_only=True, eq=False)
class Wanted:
    """What is drawn and what is allowed, at the Gauss points of every span of the unknown part.

    Parameters
    ----------
    head, hand : ndarray, shape (spans, places, 3) [m, relative to the grid's centre]
    inward : ndarray, shape (spans, places, 3) [1]
        From head to hand as drawn.
    length : float
        Of the line [m].
    drag : float
        [1/m]
    limits : SoughtLimits
    head_weight, hand_weight : float
    touching : callable, optional
        Contact of the prop with body and floor, and a hand out of reach; none if not given.
    """

    head: Floats
    hand: Floats
    inward: Floats
    length: float
    drag: float
    limits: SoughtLimits
    head_weight: float = 1.0
    hand_weight: float = 1.0
    touching: Touching | None = None


class Optimum(NamedTuple):
    """Where a search ended."""

    unknown: Floats  # (count, 3) [m]
    residual: float  # first-order: the share of the value that a further Newton step promises


class _State(NamedTuple):
    """The motion at the Gauss points, k spans, p places, n copies."""

    path: Floats  # (5, k, p, 3) the head and its derivatives [m per s^order]
    force: Floats  # (n, k, p, 3) [m/s²]
    size: Floats  # (n, k, p)
    hand: Floats  # (n, k, p, 3) [m]
    lack: Floats  # (n, k, p) [m/s²] of pull
    fast: list[TooFast]
    touch: Contact | None


class Problem:
    """One least-deviation problem."""

    def __init__(self, grid: CurveLayout, wanted: Wanted) -> None:
        self.grid, self.wanted = grid, wanted
        self._pieces = grid.pieces(ORDERS)
        self._shares = grid.shares
        self._up = UP @ grid.copies  # against gravity, as each copy sees it
        flat = np.einsum("kp,pj,pl->kjl", self._shares, self._pieces[0], self._pieces[0])
        self._mass = grid.matrix(flat[:, :, None, :, None] * _EYE[:, None, :])
        free = np.ones(grid.count, dtype=np.bool_) if grid.free is None else grid.free
        self._free = np.flatnonzero(np.repeat(free, 3))

    def drawn(self) -> Floats:
        """Coefficients of the spline nearest to the head as drawn, shape (count, 3) [m]."""
        pulled = np.einsum("kp,pj,kpa->kja", self._shares, self._pieces[0], self.wanted.head)
        load = self.grid.gradient(pulled)
        steady = self._mass + 1e-12 * np.diag(self._mass.sum(axis=1))
        return np.asarray(np.linalg.solve(steady, load).reshape(-1, 3))

    def solved(self, start: Floats, stages: tuple[Penalties, ...] = STAGES) -> Optimum:
        """The optimum that is reached from some coefficients, stage by stage.

        Parameters
        ----------
        start : ndarray, shape (count, 3) [m]
        stages : tuple of Penalties
        """
        unknown = start
        for weights in stages[:-1]:
            unknown = self._newton(unknown, weights, _ROUGH)[0]
            if self._holds(unknown, weights):  # heavier penalties change nothing
                return Optimum(*self._newton(unknown, weights, _ENOUGH))
        return Optimum(*self._newton(unknown, stages[-1], _ENOUGH))

    def value(self, unknown: Floats, weights: Penalties) -> float:
        """The value with penalties [m²]."""
        return self._value(self._state(unknown, weights), weights)

    def figures(self, unknown: Floats, weights: Penalties) -> tuple[float, Floats, Floats]:
        """The value [m²], half its gradient (3·count,) and half its second derivatives (3·count, 3·count)."""
        state = self._state(unknown, weights)
        return self._value(state, weights), *self._derivatives(state, weights)

    def hands(self, unknown: Floats) -> tuple[Floats, Floats]:
        """Hand and head at the Gauss points of all copies, each shape (n, 3) [m, body frame]."""
        state = self._state(unknown, STAGES[0])
        return self._shown(state.hand), self._shown(
            np.broadcast_to(state.path[0], state.hand.shape)
        )

    def _shown(self, places: Floats) -> Floats:
        """Places of all copies from the frame of the unknown part, flat [m, body frame]."""
        turned = np.einsum("nab,nkpb->nkpa", self.grid.copies, places) + self.grid.centre
        return np.asarray(turned.reshape(-1, 3))

    def _newton(self, start: Floats, weights: Penalties, enough: float) -> tuple[Floats, float]:
        """Where a further step promises less than a share of the value, and that share."""
        from scipy.linalg import LinAlgError, cho_factor, cho_solve

        free, damping, unknown = np.ix_(self._free, self._free), 1e-3, start
        mass = self._mass[free]
        value, gradient, second = self.figures(unknown, weights)
        share, steps = np.inf, 0
        while steps < _MOST_STEPS and share > enough and damping < _DAMPED_OUT:
            g, h = gradient[self._free], second[free]
            try:
                factor = cho_factor(h + damping * mass, check_finite=False)
            except LinAlgError:
                damping = max(_FIRMER * damping, _LEAST_DAMPING)
                continue
            move = cho_solve(factor, -g, check_finite=False)
            promised = -(2.0 * g @ move + move @ h @ move)
            moved = unknown.copy()
            moved.reshape(-1)[self._free] += move
            state = self._state(moved, weights)
            reached = self._value(state, weights)
            steps += 1
            if not reached <= value:
                damping = max(_FIRMER * damping, _LEAST_DAMPING)
                share = min(share, promised / value)
                continue
            ratio = (value - reached) / max(promised, 1e-300)
            if ratio > 0.75:
                damping = max(damping * _LOOSER, _LEAST_DAMPING)
            elif ratio < 0.25:
                damping *= _FIRMER
            unknown, value = moved, reached
            gradient, second = self._derivatives(state, weights)
            share = promised / max(value, 1e-9)
        return unknown, float(share)

    def _holds(self, unknown: Floats, weights: Penalties) -> bool:
        state = self._state(unknown, weights)
        touched = state.touch is not None and len(state.touch.point) > 0
        return not (np.any(state.lack) or state.fast or touched)

    def _state(self, unknown: Floats, weights: Penalties) -> _State:
        want, local = self.wanted, self.grid.local(unknown)
        path = np.matmul(self._pieces[:, None], local[None])
        pulled = force(path[1], path[2], want.drag, self._up[:, None, None])
        size = np.linalg.norm(pulled, axis=-1)
        hand = path[0] + want.length * pulled / size[..., None]
        limits = (
            HandLimit(want.limits.speed, weights.speed),
            HandLimit(want.limits.acceleration, weights.acceleration),
        )
        shares = self._shares / len(self.grid.copies)
        return _State(
            path,
            pulled,
            size,
            hand,
            np.maximum(want.limits.pull - np.sum(pulled * want.inward, axis=-1), 0.0),
            too_fast(path, pulled, shares, limits, length=want.length, drag=want.drag),
            self._contact(hand, np.broadcast_to(path[0], hand.shape)),
        )

    def _contact(self, hand: Floats, head: Floats) -> Contact | None:
        """Contact of all copies, in the frame of the unknown part."""
        if self.wanted.touching is None:
            return None
        own = self.grid.copies
        touch = self.wanted.touching(self._shown(hand), self._shown(head))
        copy = touch.point // (hand.shape[1] * hand.shape[2])
        return touch._replace(normal=np.einsum("mab,ma->mb", own[copy], touch.normal))

    def _value(self, state: _State, weights: Penalties) -> float:
        want, copies = self.wanted, len(self.grid.copies)
        off_head = np.sum((state.path[0] - want.head) ** 2, axis=-1)
        off_hand = np.sum((state.hand - want.hand) ** 2, axis=-1).mean(axis=0)
        lack = np.mean(state.lack**2, axis=0)
        cost = want.head_weight * off_head + want.hand_weight * off_hand + weights.pull * lack
        value = float(np.sum(self._shares * cost)) + sum(fast.value for fast in state.fast)
        if state.touch is not None:
            shares = np.tile(self._shares.ravel() / copies, copies)[state.touch.point]
            value += weights.contact * float(np.sum(shares * state.touch.depth**2))
        return value

    def _derivatives(self, state: _State, weights: Penalties) -> tuple[Floats, Floats]:
        want, shape = self.wanted, state.hand.shape
        by_head = np.broadcast_to(want.head_weight * (state.path[0] - want.head), shape)
        by_hand = want.hand_weight * (state.hand - want.hand)
        square = (*shape, 3)
        curves = Curves(
            by_head,
            by_hand,
            np.broadcast_to(want.head_weight * _EYE, square),
            np.broadcast_to(0.0 * _EYE, square),
            np.broadcast_to(want.hand_weight * _EYE, square),
        )
        if state.touch is not None and len(state.touch.point):
            flat = Curves(*(np.array(e).reshape(-1, *e.shape[3:]) for e in curves))
            state.touch.push(np.full(state.size.size, weights.contact), flat)
            curves = Curves(*(f.reshape(e.shape) for f, e in zip(flat, curves, strict=True)))
        slope, matrix = self._by_path(state, curves, weights)
        for fast in state.fast:
            fast.added(slope, matrix)
        orders = ORDERS if state.fast else 3
        return self._assembled(slope[:, :, :orders], matrix[:, :, :orders, :, :orders])

    def _by_path(self, state: _State, curves: Curves, weights: Penalties) -> tuple[Floats, Floats]:
        """Half gradient and half second derivatives by the head's derivatives, shapes (k, p, 5, 3) and twice as many axes."""
        want, size = self.wanted, state.size[..., None, None]
        u = state.force / state.size[..., None]
        uu = u[..., :, None] * u[..., None, :]
        reach = want.length * (_EYE - uu) / size  # of the hand by the force
        # second derivative of λ·r·f/|f|: −(λu + uλ + (λ·u)(1 − 3uu))r/|f|²
        tilt = curves.by_hand[..., :, None] * u[..., None, :]
        along = np.sum(curves.by_hand * u, axis=-1)[..., None, None]
        bent = tilt + np.swapaxes(tilt, -1, -2) + along * (_EYE - 3.0 * uu)
        both = curves.hand_hand @ reach
        ff = reach @ both - want.length * bent / size**2
        inward = want.inward[..., :, None] * want.inward[..., None, :]
        ff = ff + weights.pull * (state.lack > 0)[..., None, None] * inward
        yf = both + curves.head_hand @ reach
        mixed = curves.head_hand + np.swapaxes(curves.head_hand, -1, -2)
        yy = curves.head_head + mixed + curves.hand_hand
        by_force = np.matmul(reach, curves.by_hand[..., None])[..., 0]
        by_force = by_force - weights.pull * state.lack[..., None] * want.inward
        by_head = (curves.by_head + curves.by_hand).mean(axis=0)
        by_force, yy, yf, ff = (each.mean(axis=0) for each in (by_force, yy, yf, ff))
        slip = drag_slopes(state.path[1], state.path[2], want.drag)[0]
        slope: Floats = np.zeros((*self._shares.shape, ORDERS, 3))
        slope[:, :, 0], slope[:, :, 2] = by_head, by_force
        slope[:, :, 1] = np.matmul(slip, by_force[..., None])[..., 0]
        matrix: Floats = np.zeros((*self._shares.shape, ORDERS, 3, ORDERS, 3))
        for i, j, block in (
            (0, 0, yy), (0, 1, yf @ slip), (0, 2, yf), (1, 1, slip @ ff @ slip), (1, 2, slip @ ff), (2, 2, ff),
        ):  # fmt: skip
            matrix[:, :, i, :, j] = block
            matrix[:, :, j, :, i] = np.swapaxes(block, -1, -2)
        share = self._shares[..., None, None]
        return slope * share, matrix * share[..., None, None]

    def _assembled(self, slope: Floats, matrix: Floats) -> tuple[Floats, Floats]:
        """The same by the unknown coefficients."""
        orders, spans = slope.shape[2], self.grid.spans
        own = self._pieces[:orders].transpose(1, 0, 2)  # place, order, piece
        gradient = np.einsum("poj,kpoa->kja", own, slope)
        flat = own.reshape(-1, DEGREE + 1)
        half = np.matmul(
            own.transpose(0, 2, 1)[None], matrix.reshape(spans, len(GAUSS_PLACES), orders, -1)
        )
        half = half.reshape(spans, len(GAUSS_PLACES), DEGREE + 1, 3, orders, 3)
        half = half.transpose(0, 2, 3, 5, 1, 4).reshape(spans, (DEGREE + 1) * 9, -1)
        blocks = np.matmul(half, flat).reshape(spans, DEGREE + 1, 3, 3, DEGREE + 1)
        return self.grid.gradient(gradient), self.grid.matrix(blocks.transpose(0, 1, 2, 4, 3))
