"""Reach, tension and clearance of one performer's props, proven over a whole trajectory.

Four quantities (tension only for a tethered prop) for every stretch of a trajectory, in the body frame [m]
and in beats: the spare arm length, the tension of the tether, the distance from the performer's trunk, head
and legs, and the distance from the other prop. Each is a function of time with a proven Lipschitz constant,
searched by branch and bound (geometry/certified.py), so no moment is missed.

    arm's length − |h − shoulder|      changes at most at |h'| + |s'|, s the shoulder's rest position and the
                                       shoulder as near to the hand as it can move (`Body.shoulder_give`)
    T/m = λ²·A − g·d_z                 at most at λ²·(2r|d'||d''| + |d'||h''| + |h'''|) + g|d'|
    distance of tether or head         at most at |h'| + r|d'| plus the speed of the part of the body
                                       with (motion/laws/carriage.py); of two props, at the sum of both
    distance of a point beside the axis  at most at |h'| + ρ·ω, ρ its distance from the hand and ω the
                                       bound of the rate of every unit vector fixed to the prop
Not covered: the arms, clothing and hair, and forces due to walking.
Source: docs/motion.md, section 6.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields
from functools import wraps
from itertools import pairwise
from typing import Any, TypeVar, cast

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, Ints
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.certified import Sample, search
from sequencer.geometry.segments import segment_segment
from sequencer.kept import kept_each
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import Prop, Solid, placed
from sequencer.motion.props.tension import GRAVITY
from sequencer.motion.trajectories.trajectory import Trajectory

REACH_ERROR = 0.002  # [m]
GAP_ERROR = 0.005  # [m]
PULL_ERROR = 0.05  # [m/s²]
GIVE = 0.08  # [m] from a shoulder's rest position to any position it can move to

Rates = Callable[[Floats], Floats]  # beats → beats a second


@dataclass(frozen=True, slots=True, kw_only=True)
class Least:
    """The smallest value over one stretch, proven to the tolerance of the quantity.

    A stretch that stays above `enough` has that value and no time.
    """

    value: float
    beat: float  # nan if it stays above `enough`
    label: int  # part of the body, or of the two props; -1 if it stays above `enough`


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Stretches:
    """Stretches of a trajectory, split where its bounds or the tempo change; k stretches, n pieces."""

    edges: Floats  # (k + 1,) [beats]
    group: Ints  # (n,)
    start: Floats  # (n,) [beats]
    end: Floats  # (n,) [beats]
    bounds: tuple[Bounds, ...]  # n bounds

    def columns(self, *names: str) -> list[Floats]:
        """Some of the bounds as arrays of shape (n,)."""
        return [np.array([getattr(b, name) for b in self.bounds]) for name in names]


def stretches(
    trajectory: Trajectory,
    edges: Sequence[float],
    *,
    whole_beats: bool = False,
    at: ArrayLike = (),
) -> Stretches:
    """A trajectory split at given edges.

    Parameters
    ----------
    trajectory : Trajectory
    edges : sequence of float
        Increasing [beats]; one stretch from each to the next.
    whole_beats : bool
        Whether to split at every beat too, where a tempo map may change.
    at : array_like, shape (k,) [beats]
        Further places to split.
    """
    cuts = np.asarray(edges, dtype=np.float64)
    besides = np.unique(np.asarray(at, dtype=np.float64))
    group: list[int] = []
    start: list[float] = []
    end: list[float] = []
    bounds: list[Bounds] = []
    for k, (low, high) in enumerate(pairwise(cuts.tolist())):
        for left, right, own in trajectory.pieces(low, high):
            inner = besides[(besides > left) & (besides < right)]
            if whole_beats:
                inner = np.union1d(inner, np.arange(np.floor(left) + 1, right))
            knots = [left, *inner.tolist(), right]
            for a, b in pairwise(knots):
                if b - a > 1e-12:
                    group.append(k)
                    start.append(a)
                    end.append(b)
                    bounds.append(own)
    return Stretches(
        edges=cuts,
        group=np.array(group, dtype=np.int64),
        start=np.array(start),
        end=np.array(end),
        bounds=tuple(bounds),
    )


# --- results by stretch ---

Q = TypeVar("Q", bound=Callable[..., list[Least]])
_TOGETHER = 64  # stretches searched at a time
_SAMPLES = 16_384  # instants computed at a time


def _by_stretch(work: Q) -> Q:
    """Decorator: the result of each stretch is kept by what decides it, and only missing ones are searched.

    What decides a stretch is the part of the trajectories between its edges, the postures there, the tempo
    of its beats, and all that does not depend on time.
    """

    @wraps(work)
    def found(*given: Any, **named: Any) -> list[Least]:
        *trajectories, edges = given
        pairs = list(pairwise(edges))

        def searched(missing: list[int]) -> list[Least]:
            out: list[Least] = []
            for run in _runs(missing):
                some = [*(pairs[k][0] for k in run), pairs[run[-1]][1]]
                out += work(*trajectories, some, **named)
            return out

        contents = [_content(trajectories, named, low, high) for low, high in pairs]
        return kept_each(work.__name__, contents, searched, record=_record, restore=_restored)

    return cast("Q", found)


def _runs(indices: Sequence[int]) -> Iterator[list[int]]:
    """Consecutive indices, a limited number at a time."""
    run: list[int] = []
    for k in indices:
        if run and (k != run[-1] + 1 or len(run) == _TOGETHER):
            yield run
            run = []
        run.append(k)
    if run:
        yield run


def _content(
    trajectories: Sequence[Any], named: Mapping[str, Any], low: float, high: float
) -> tuple[Any, ...]:
    within: list[Any] = [low, high]
    within += [
        each.part(low, high) if isinstance(each, Trajectory) else each for each in trajectories
    ]
    for name, value in sorted(named.items()):
        if isinstance(value, Carriage):
            within += [name, value.part(low, high)]
        elif name == "beats_per_second":
            within += [name, value(np.arange(np.floor(low), np.ceil(high)) + 0.5)]
        else:
            within += [name, value]
    return tuple(within)


def _record(least: Least) -> list[float]:
    return [least.value, least.beat, least.label]


def _restored(record: Sequence[Any]) -> Least:
    value, beat, label = record
    return Least(value=value, beat=beat, label=label)


@_by_stretch
def reach_left(
    trajectory: Trajectory,
    edges: Sequence[float],
    *,
    side: Side,
    body: Body,
    carriage: Carriage | None = None,
) -> list[Least]:
    """Arm's length minus the hand's distance from its shoulder [m], smallest on each stretch.

    The body is upright unless a carriage is given.
    """
    carriage = carriage or Carriage(body=body)
    cut = stretches(trajectory, edges, at=carriage.edges)
    (speed,) = cut.columns("hand_speed")
    gives, _ = carriage.shoulder_bounds(cut.start, cut.end)
    # The box turns with the trunk: its corners move slightly faster than the shoulder itself.
    swings = carriage.speeds(cut.start, cut.end)[0] * GIVE

    def value(t: Floats) -> tuple[Floats, Ints]:
        away = carriage.beyond(t, trajectory.at(t).hand, side)
        return body.arm_length - away, np.zeros(len(t), dtype=np.int64)

    return _least(cut, value, speed + gives + swings, REACH_ERROR, 0.0)


@_by_stretch
def pull_left(
    trajectory: Trajectory, edges: Sequence[float], *, prop: Prop, beats_per_second: Rates
) -> list[Least]:
    """Tension over mass [m/s²], smallest on each stretch; below 0 the tether is slack.

    Notes
    -----
    `beats_per_second` may change only at whole beats, as in a tempo map; the pieces are split there.
    """
    cut = stretches(trajectory, edges, whole_beats=True)
    hand2, hand3, turn1, turn2 = cut.columns(
        "hand_acceleration", "hand_jerk", "turn_rate", "turn_acceleration"
    )
    r = prop.length
    per_second = beats_per_second((cut.start + cut.end) / 2)
    slope = per_second**2 * (2 * r * turn1 * turn2 + turn1 * hand2 + hand3) + GRAVITY * turn1

    def value(t: Floats) -> tuple[Floats, Ints]:
        motion = trajectory.at(t)
        outward = r * np.sum(motion.tether_rate**2, axis=-1) - np.sum(
            motion.tether * motion.hand_acceleration, axis=-1
        )
        pull = beats_per_second(t) ** 2 * outward - GRAVITY * motion.tether[:, 2]
        return pull, np.zeros(len(t), dtype=np.int64)

    return _least(cut, value, slope, PULL_ERROR, 0.0)


def body_gap(
    trajectory: Trajectory,
    edges: Sequence[float],
    *,
    prop: Prop,
    body: Body,
    near: float = 0.0,
    carriage: Carriage | None = None,
) -> list[Least]:
    """Gap between a prop and the performer's trunk, head, neck and legs [m]; the label indexes `Body.capsules`.

    The body is upright unless a carriage is given.
    """
    shape = shape_of(prop, _frame_rates(trajectory, edges))
    return _body_gaps(trajectory, edges, shape=shape, body=body, near=near, carriage=carriage)


@_by_stretch
def _body_gaps(
    trajectory: Trajectory,
    edges: Sequence[float],
    *,
    shape: Sequence[Solid],
    body: Body,
    near: float,
    carriage: Carriage | None,
) -> list[Least]:
    carriage = carriage or Carriage(body=body)
    cut = stretches(trajectory, edges, at=carriage.edges)
    capsules = body.capsules
    radii = np.array([capsule.radius for capsule in capsules])[:, None]
    gives = carriage.capsule_speeds(cut.start, cut.end).max(axis=0)

    def value(t: Floats) -> tuple[Floats, Ints]:
        ends = placed(shape, trajectory.at(t))
        lows, highs = carriage.capsule_ends(t)
        if carriage.upright:  # at every beat the same
            lows, highs = lows[:, :1], highs[:, :1]
        stacked = np.full((len(capsules), *t.shape), np.inf)
        for solid, (start, end) in zip(shape, ends, strict=True):
            gap = segment_segment(start, end, lows, highs)[0] - solid.radius
            stacked = np.minimum(stacked, gap - radii)
        return stacked.min(axis=0), stacked.argmin(axis=0).astype(np.int64)

    return _least(cut, value, speeds_of(cut, shape) + gives, GAP_ERROR, near)


def props_gap(
    left: tuple[Trajectory, Prop], right: tuple[Trajectory, Prop], edges: Sequence[float]
) -> list[Least]:
    """Gap between one performer's two props [m].

    A label is n·j + i for the left prop's body i of n and the right one's body j (`shape_of`).
    """
    shapes = tuple(shape_of(prop, _frame_rates(own, edges)) for own, prop in (left, right))
    return _props_gaps(left[0], right[0], edges, shapes=shapes)


@_by_stretch
def _props_gaps(
    left: Trajectory,
    right: Trajectory,
    edges: Sequence[float],
    *,
    shapes: tuple[tuple[Solid, ...], ...],
) -> list[Least]:
    cuts = [stretches(trajectory, edges) for trajectory in (left, right)]
    both = np.unique(np.concatenate([*(c.start for c in cuts), *(c.end for c in cuts)]))
    both = both[np.concatenate(([True], np.diff(both) > 1e-12))]
    start, end = both[:-1], both[1:]
    middle = (start + end) / 2
    slope = np.zeros(len(middle))
    for cut, shape in zip(cuts, shapes, strict=True):
        slope += speeds_of(cut, shape)[np.searchsorted(cut.start, middle, side="right") - 1]
    group = np.searchsorted(cuts[0].edges, middle, side="right") - 1
    joint = Stretches(
        edges=cuts[0].edges, group=group.astype(np.int64), start=start, end=end, bounds=()
    )
    wholes = [_whole(shape) for shape in shapes]

    def value(t: Floats) -> tuple[Floats, Ints]:
        states = [trajectory.at(t) for trajectory in (left, right)]
        # Balls that enclose the whole props: if they are apart, nothing else needs testing.
        middles = [
            state.hand + place * state.tether
            for state, (place, _) in zip(states, wholes, strict=True)
        ]
        apart = np.linalg.norm(middles[1] - middles[0], axis=-1) - wholes[0][1] - wholes[1][1]
        gaps, labels = apart, np.zeros(t.shape, dtype=np.int64)
        near = np.flatnonzero(apart < 2 * GAP_ERROR)
        if len(near):
            gaps[near], labels[near] = _nearest(shapes, [_rows(state, near) for state in states])
        return gaps, labels

    return _least(joint, value, slope, GAP_ERROR, 0.0)


def _frame_rates(trajectory: Trajectory, edges: Sequence[float]) -> Floats:
    """Bounds of the whole span: a prop has one shape in it, whichever of its stretches are searched."""
    return np.array([each.frame_rate for *_, each in trajectory.pieces(edges[0], edges[-1])])


def shape_of(prop: Prop, frame_rate: Floats) -> tuple[Solid, ...]:
    """The bodies to test: the true shape, or its envelope.

    Parameters
    ----------
    prop : Prop
    frame_rate : ndarray, shape (n,) [1/beat]
        Bounds of a trajectory. If one is not finite, nothing is known about how a flat prop turns about its
        axis, and the envelope, which does not depend on that, is used instead.
    """
    flat = any(spot.across for solid in prop.solids for spot in (solid.start, solid.end))
    return prop.envelope if flat and not np.all(np.isfinite(frame_rate)) else prop.solids


def speeds_of(cut: Stretches, shape: Sequence[Solid]) -> Floats:
    """Bound on the speed of every point of a prop on each piece.

    Parameters
    ----------
    cut : Stretches
    shape : sequence of Solid

    Returns
    -------
    speeds : ndarray, shape (n,) [m/beat]

    Notes
    -----
    Source: module docstring; points on the axis by |d'|, those off it by the frame's rate.
    """
    hand, turn, frame = cut.columns("hand_speed", "turn_rate", "frame_rate")
    spots = [spot for solid in shape for spot in (solid.start, solid.end)]
    most = max(abs(spot.along) for spot in spots if spot.across == 0) * turn
    wide = max((spot.off for spot in spots if spot.across), default=0.0)
    return np.asarray(hand + (np.maximum(most, wide * frame) if wide else most))


def _whole(shape: Sequence[Solid]) -> tuple[float, float]:
    """Position along the axis and radius of a ball that encloses a shape [m]."""
    spots = [(spot, solid.radius) for solid in shape for spot in (solid.start, solid.end)]
    low = min(spot.along - radius for spot, radius in spots)
    high = max(spot.along + radius for spot, radius in spots)
    middle = (low + high) / 2
    return middle, max(np.hypot(s.along - middle, s.across) + radius for s, radius in spots)


def _rows(motion: Motion, rows: Ints) -> Motion:
    return Motion(**{field.name: getattr(motion, field.name)[rows] for field in fields(motion)})


def _nearest(shapes: Sequence[Sequence[Solid]], states: Sequence[Motion]) -> tuple[Floats, Ints]:
    """Smallest gap between two props, and the bodies concerned."""
    left, right = (placed(shape, state) for shape, state in zip(shapes, states, strict=True))
    best: Floats = np.full(len(states[0].hand), np.inf)
    label = np.zeros(len(best), dtype=np.int64)
    for j, (solid, ends) in enumerate(zip(shapes[1], right, strict=True)):
        for i, (other, mine) in enumerate(zip(shapes[0], left, strict=True)):
            gap = segment_segment(*mine, *ends)[0] - other.radius - solid.radius
            closer = gap < best
            best = np.where(closer, gap, best)
            label[closer] = len(shapes[0]) * j + i
    return best, label


def _least(
    cut: Stretches,
    value: Callable[[Floats], tuple[Floats, Ints]],
    slope: Floats,
    error: float,
    enough: float,
) -> list[Least]:
    """Smallest value of each stretch; for one that stays above `enough`, only that fact."""

    def evaluate(rows: Ints, t: Floats, half: Floats, _enough: Floats) -> Sample:
        # A level may be large: memory is limited here.
        parts = [value(t[low : low + _SAMPLES]) for low in range(0, len(t), _SAMPLES)]
        here, label = (np.concatenate(part) for part in zip(*parts, strict=True))
        slack = slope[rows] * half
        return Sample(value=here, lower=here - slack, upper=here + slack, label=label)

    count = len(cut.edges) - 1
    found = search(
        evaluate, group=cut.group, start=cut.start, end=cut.end,
        required=np.full(count, -np.inf), best=np.full(count, enough + error), tolerance=error,
        apart=True,
    )  # fmt: skip
    return [
        Least(value=float(found.value[k]), beat=float(found.at[k]), label=int(found.label[k]))
        for k in range(count)
    ]
