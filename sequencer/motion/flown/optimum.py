"""The head's path that is nearest to what is drawn, head and hand, among those that a line and an arm can make.

Unknown are the coefficients of a spline of degree 5; all else follows (`tether.py`), so the law of motion holds exactly
and no differential equation is solved. Least is

    ∫ w_y|y − Y|² + w_h|h − H|² dt / ∫ dt      Y, H the head and the hand as drawn, at four Gauss points a span,

with quadratic penalties on a pull under its floor, on hand speed and acceleration over their limits, and on contact. The
pull is that along the tether as drawn: so its penalty is convex, and no tether gets more than 90° off. Newton's method,
with exact second derivatives but for those of drag, of contact and of hand speed and acceleration (Gauss–Newton there),
damped until the matrix is positive and the value falls. Copies of a part that is repeated see gravity from different
sides; costs are their mean.
The arithmetic is compiled (`kernel.py`); here a problem is packed for it.
Source: J. Nocedal and S. Wright, Numerical Optimization, 2006, chapters 3 and 17 (from memory).
"""

from copy import copy
from dataclasses import dataclass, replace
from functools import cached_property
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.motion.flown import kernel_places as places
from sequencer.motion.flown.body_space import NOWHERE, Room
from sequencer.motion.flown.compiled import solver
from sequencer.motion.flown.curve_layout import CurveLayout
from sequencer.motion.flown.tether import UP, force
from sequencer.progress import stop_if_unwanted

_ROUGH, _ENOUGH = (
    1e-3,
    1e-7,
)  # of the value: what a Newton step must promise before and in the last stage
_MOST_STEPS = 60  # in a stage
_LOOSER, _FIRMER = 0.1, 3.0  # factors of the damping after a step that went well, and badly
METRIC_SHARE = 0.1  # of the hand's acceleration, everywhere, in what damps a step
ORDERS = 5  # the head's path and its first four derivatives decide the hand's acceleration
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
    room : Room, optional
        What prop and hand may not touch or leave; nothing if not given.
    mates : ndarray, shape (spans, places, copies, n, 7) [m, body frame], optional
        Capsules that move: both ends and radius, clearance included; none if not given.
    """

    head: Floats
    hand: Floats
    inward: Floats
    length: float
    drag: float
    limits: SoughtLimits
    head_weight: float = 1.0
    hand_weight: float = 1.0
    room: Room | None = None
    mates: Floats | None = None


class Optimum(NamedTuple):
    """Where a search ended."""

    unknown: Floats  # (count, 3) [m]
    residual: float  # first-order: the share of the value that a further Newton step promises


class Problem:
    """One least-deviation problem."""

    def __init__(self, grid: CurveLayout, wanted: Wanted) -> None:
        self.grid, self.wanted = grid, wanted
        self._own = _frame_of(grid)
        self._rows, self._first, self._offset = self._own.rows, self._own.first, self._own.offset

    def drawn(self) -> Floats:
        """Coefficients of the spline nearest to the head as drawn, shape (count, 3) [m]."""
        pulled = np.einsum(
            "kp,kpj,kpa->kja", self.grid.shares, self.grid.pieces(1)[:, 0], self.wanted.head
        )
        load = self.grid.gradient(pulled)
        return np.asarray(np.linalg.solve(self._own.steady, load).reshape(-1, 3))

    def solved(self, start: Floats, stages: tuple[Penalties, ...] = STAGES) -> Optimum:
        """The optimum that is reached from some coefficients, stage by stage.

        Parameters
        ----------
        start : ndarray, shape (count, 3) [m]
        stages : tuple of Penalties
        """
        unknown = start
        for weights in stages[:-1]:
            found = self._run(unknown, weights, _ROUGH, _MOST_STEPS)
            unknown = found.unknown
            if found.told[places.AT_PENALTY] == 0.0:  # heavier penalties change nothing
                return self._run(unknown, weights, _ENOUGH, _MOST_STEPS).optimum
        return self._run(unknown, stages[-1], _ENOUGH, _MOST_STEPS).optimum

    def sought(self, limits: SoughtLimits) -> "Problem":
        """The same problem with other limits.

        Parameters
        ----------
        limits : SoughtLimits
        """
        out = copy(self)
        out.wanted = replace(self.wanted, limits=limits)
        return out

    @property
    def content(self) -> tuple[Ints, Floats]:
        """All that its optimum depends on, but the start and the stages."""
        ints, floats, at = self._packed
        out = floats.copy()
        out[at["numbers"]] = self._numbers(STAGES[-1], _ENOUGH, _MOST_STEPS)
        out[at["clear"].start :] = 0.0  # what is worked out
        return ints, out

    def value(self, unknown: Floats, weights: Penalties) -> float:
        """The value with penalties [m²]."""
        return float(self._run(unknown, weights, _ENOUGH, 0).told[places.AT_VALUE])

    def figures(self, unknown: Floats, weights: Penalties) -> tuple[float, Floats, Floats]:
        """The value [m²], half its gradient (n,) and half its second derivatives (n, n), by the free coefficients."""
        found = self._run(unknown, weights, _ENOUGH, 0)
        size = len(self._first)
        matrix: Floats = np.zeros((size, size))
        for row, (first, at) in enumerate(zip(self._first, self._offset, strict=True)):
            matrix[row, first : row + 1] = found.matrix[at : at + row + 1 - first]
        whole = np.tril(matrix) + np.tril(matrix, -1).T
        return float(found.told[places.AT_VALUE]), found.gradient, whole

    def hands(self, unknown: Floats) -> tuple[Floats, Floats]:
        """Hand and head at the Gauss points of all copies, each shape (n, 3) [m, body frame]."""
        local, own, up = self.grid.local(unknown), self.grid.pieces(3), UP @ self.grid.copies
        head, rate, acceleration = (np.matmul(own[:, k], local) for k in range(3))
        pulled = force(rate, acceleration, self.wanted.drag, up[:, None, None])
        hand = head + self.wanted.length * pulled / np.linalg.norm(pulled, axis=-1, keepdims=True)
        return self._shown(hand), self._shown(np.broadcast_to(head, hand.shape))

    def _shown(self, places: Floats) -> Floats:
        """Places of all copies from the frame of the unknown part, flat [m, body frame]."""
        turned = np.einsum("nab,nkpb->nkpa", self.grid.copies, places) + self.grid.centre
        return np.asarray(turned.reshape(-1, 3))

    def _run(self, start: Floats, weights: Penalties, enough: float, most: int) -> "_Found":
        """Newton's steps in the compiled kernel, see `kernel.solve`."""
        stop_if_unwanted()
        ints, floats, at = self._packed
        metric = METRIC_SHARE * weights.acceleration
        floats[at["mass"]] = self._own.mass + metric * self._stiff
        floats[at["numbers"]] = self._numbers(weights, enough, most)
        floats[at["unknown"]] = start.ravel()
        floats[at["told"]] = 0.0
        solver()(ints, floats)
        told, gradient, matrix = (
            floats[at[name]].copy() for name in ("told", "gradient", "matrix")
        )
        return _Found(floats[at["unknown"]].reshape(-1, 3).copy(), told, gradient, matrix)

    def _numbers(self, weights: Penalties, enough: float, most: int) -> Floats:
        want, out = self.wanted, np.zeros(places.KERNEL_NUMBERS)
        out[places.AT_LENGTH], out[places.AT_DRAG] = want.length, want.drag
        out[places.AT_PULL : places.AT_ACCELERATION + 1] = want.limits
        out[places.AT_HEAD_WEIGHT], out[places.AT_HAND_WEIGHT] = want.head_weight, want.hand_weight
        out[places.AT_PULL_WEIGHT : places.AT_ACCELERATION_WEIGHT + 1] = weights[:3]
        touched = want.room is not None or want.mates is not None
        out[places.AT_TOUCH_WEIGHT] = weights.contact if touched else 0.0
        out[places.AT_ENOUGH], out[places.AT_MOST_STEPS] = enough, most
        out[places.AT_LOOSER], out[places.AT_FIRMER] = _LOOSER, _FIRMER
        return out

    @cached_property
    def _packed(self) -> tuple[Ints, Floats, dict[str, slice]]:
        """All that the kernel takes, in the order in which `kernel.solve` takes it apart, and where each part lies."""
        grid, want, room = self.grid, self.wanted, self.wanted.room or NOWHERE
        shape = (len(grid.copies), grid.spans, len(grid.shares[0]))
        turned = np.zeros(0) if grid.turned is None else grid.turned
        mates = np.zeros((*shape[1:], shape[0], 0, 7)) if want.mates is None else want.mates
        band = self._offset[-1] + len(self._first) - self._first[-1] if len(self._first) else 0
        size, count = len(self._first), 3 * grid.count
        gaps = 8 + len(room.bodies) + mates.shape[-2]  # see `clear` in `kernel`
        parts = {
            "turned": turned,
            "pieces": grid.pieces(ORDERS),
            "shares": grid.shares,
            "frames": np.broadcast_to(grid.copies[:, None, None], (*shape, 3, 3))
            if grid.frames is None
            else grid.frames,
            "origins": np.broadcast_to(grid.centre, (*shape, 3))
            if grid.origins is None
            else grid.origins,
            "ups": UP @ grid.copies,
            "heads": want.head,
            "hands": want.hand,
            "inwards": want.inward,
            "numbers": np.zeros(places.KERNEL_NUMBERS),
            "room": room.numbers,
            "bodies": room.bodies,
            "mates": mates,
            "clear": np.zeros(shape[0] * shape[1] * shape[2] * gaps),
            "mass": np.zeros(band),
            "unknown": np.zeros(count),
            "told": np.zeros(places.KERNEL_TOLD),
            "gradient": np.zeros(size),
            "matrix": np.zeros(band),
            "trial": np.zeros(count),
            "factor": np.zeros(band),
            "move": np.zeros(size),
            "work": np.zeros(places.KERNEL_WORK),
        }
        whole = (grid.taken, self._rows, self._first, self._offset)
        lengths = [each.size for each in (*whole, *parts.values())]
        ints = np.concatenate([[shape[0], *lengths], *(each.ravel() for each in whole)])
        ends = np.cumsum(lengths[len(whole) :]).tolist()
        at = {
            name: slice(end - part.size, end)
            for (name, part), end in zip(parts.items(), ends, strict=True)
        }
        floats = np.concatenate([part.ravel() for part in parts.values()]).astype(np.float64)
        return ints.astype(np.int64), floats, at

    @cached_property
    def _stiff(self) -> Floats:
        """Mean square of the hand's acceleration by the head's fourth derivative, as a matrix, as if its pull were its weight."""
        own = self.grid.pieces(ORDERS)[:, 4]
        flat = (
            np.einsum("kp,kpj,kpl->kjl", self.grid.shares, own, own)
            * (self.wanted.length / STANDARD_GRAVITY) ** 2
        )
        return self._own.enveloped(self.grid.matrix(flat[:, :, None, :, None] * _EYE[:, None, :]))


class _Frame(NamedTuple):
    """What a problem's matrices have of its layout alone."""

    rows: Ints  # (count,) first row of each coefficient in the matrix, or -1
    first: Ints  # see `_envelope`
    offset: Ints
    inside: Ints  # places within the envelope, of the matrix of all coefficients
    mass: Floats  # within the envelope
    steady: Floats  # (3·count, 3·count) the mass of all coefficients, and a trace more

    def enveloped(self, matrix: Floats) -> Floats:
        """A matrix of all coefficients, of the free ones within the envelope."""
        return matrix.ravel()[self.inside]


def _frame_of(grid: CurveLayout) -> _Frame:
    """The same for every layout whose curve begins and ends and is paced evenly, however long."""
    if grid.turned is not None or grid.paced is not None:
        return _new_frame(grid)
    key = grid.taken.tobytes(), None if grid.free is None else grid.free.tobytes()
    found = _FRAMES.get(key)
    if found is None:
        found = _new_frame(grid)
        if len(_FRAMES) >= _MOST_FRAMES:
            _FRAMES.clear()
        _FRAMES[key] = found
    return found


def _new_frame(grid: CurveLayout) -> _Frame:
    free = np.ones(grid.count, dtype=np.bool_) if grid.free is None else grid.free
    rows = np.where(free, 3 * (np.cumsum(free) - 1), -1)
    first, offset = _envelope(grid.taken, rows, 3 * int(np.sum(free)))
    flat = np.einsum("kp,kpj,kpl->kjl", grid.shares, *[grid.pieces(1)[:, 0]] * 2)
    mass = grid.matrix(flat[:, :, None, :, None] * _EYE[:, None, :])
    at = np.flatnonzero(np.repeat(rows >= 0, 3))
    places = [
        own * len(mass) + at[low : row + 1]
        for row, (own, low) in enumerate(zip(at.tolist(), first.tolist(), strict=True))
    ]
    inside = np.concatenate(places) if places else np.zeros(0, dtype=np.int64)
    steady = mass + 1e-12 * np.diag(mass.sum(axis=1))
    return _Frame(rows, first, offset, inside, mass.ravel()[inside], steady)


_MOST_FRAMES = 32  # some 300 kilobytes each
_FRAMES: dict[tuple[bytes, bytes | None], _Frame] = {}  # of this process


class _Found(NamedTuple):
    """Where the kernel ended."""

    unknown: Floats  # (count, 3) [m]
    told: Floats  # see `kernel`
    gradient: Floats
    matrix: Floats

    @property
    def optimum(self) -> Optimum:
        """As a result."""
        return Optimum(self.unknown, float(self.told[places.AT_SHARE]))


def _envelope(taken: Ints, rows: Ints, size: int) -> tuple[Ints, Ints]:
    """First column of every row that can differ from zero, and where the row starts, if only what is right of it is kept."""
    own = rows[taken]
    least = np.where(own >= 0, own, size).min(axis=1)
    first = np.arange(size) // 3 * 3
    for row, low in zip(own, least.tolist(), strict=True):
        at = row[row >= 0]
        first[at] = np.minimum(first[at], low)
    first = np.repeat(first[::3], 3)
    ends = np.cumsum(np.arange(size) + 1 - first)
    return first, np.concatenate([[0], ends[:-1]]).astype(np.int64) if size else first
