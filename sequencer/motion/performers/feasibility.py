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

from collections.abc import Callable, Sequence
from dataclasses import fields
from functools import partial
from itertools import pairwise
from types import MethodType

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import Posture
from sequencer.geometry.segments import segment_segment
from sequencer.motion.laws.carriage import Carriage, lasting
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.batch import Needed
from sequencer.motion.performers.dancer import PropTrajectory
from sequencer.motion.performers.least_values import Asked, Content, Least, Quantity, least_values
from sequencer.motion.performers.stretches import Stretches
from sequencer.motion.props.prop import Prop, Solid, placed
from sequencer.motion.props.tension import GRAVITY
from sequencer.motion.trajectories.trajectory import Trajectory

REACH_ERROR = 0.002  # [m]
GAP_ERROR = 0.005  # [m]
PULL_ERROR = 0.05  # [m/s²]
GIVE = 0.08  # [m] from a shoulder's rest position to any position it can move to
TEMPO_STEP = 1 / 16  # [beats/s] to which a range of tempos is widened

Rates = Callable[[Floats], Floats]  # beats → beats a second


def reach_quantity(*, side: Side, body: Body, carriage: Carriage, enough: float = 0.0) -> Quantity:
    """Arm's length minus the hand's distance from its shoulder [m]."""

    def value(t: Floats, state: Motion) -> tuple[Floats, Ints]:
        away = carriage.beyond(t, state.hand, side)
        return body.arm_length - away, np.zeros(len(t), dtype=np.int64)

    def slope(cut: Stretches) -> Floats:
        (speed,) = cut.columns("hand_speed")
        gives, _ = carriage.shoulder_bounds(cut.start, cut.end)
        # The box turns with the trunk: its corners move slightly faster than the shoulder itself.
        return np.asarray(speed + gives + carriage.speeds(cut.start, cut.end)[0] * GIVE)

    def always(posture: Posture, more: float) -> Quantity:
        return reach_quantity(side=side, body=body, carriage=lasting(body, posture), enough=more)

    return Quantity(
        kind="reach",
        fixed=(side, body),
        value=value,
        slope=slope,
        needed=Needed(hand=1, tether=0),
        error=REACH_ERROR,
        enough=enough,
        places=carriage.edges,
        content=partial(_posture_between, carriage),
        steady=carriage.held_between,
        always=always,
    )


def pull_quantity(*, length: float, tempos: tuple[Rates, ...], enough: float = 0.0) -> Quantity:
    """Tension over mass on a tether of `length` [m/s²]; of several tempos at a time the smallest.

    Tempos may change only at whole beats, as in a tempo map; the pieces are split there.
    """

    def value(t: Floats, state: Motion) -> tuple[Floats, Ints]:
        outward = length * np.sum(state.tether_rate**2, axis=-1) - np.sum(
            state.tether * state.hand_acceleration, axis=-1
        )
        driven = np.min([per_second(t) ** 2 * outward for per_second in tempos], axis=0)
        return driven - GRAVITY * state.tether[:, 2], np.zeros(len(t), dtype=np.int64)

    def slope(cut: Stretches) -> Floats:
        hand2, hand3, turn1, turn2 = cut.columns(
            "hand_acceleration", "hand_jerk", "turn_rate", "turn_acceleration"
        )
        middle = (cut.start + cut.end) / 2
        fastest = np.max([per_second(middle) for per_second in tempos], axis=0)
        outward = 2 * length * turn1 * turn2 + turn1 * hand2 + hand3
        return np.asarray(fastest**2 * outward + GRAVITY * turn1)

    def rates(low: float, high: float) -> Floats:
        beats = np.arange(np.floor(low), np.ceil(high)) + 0.5
        return np.array([per_second(beats) for per_second in tempos])

    def content(low: float, high: float) -> Content:
        return Content((), [low - np.floor(low), rates(low, high)])

    def steady(low: float, high: float) -> tuple[float, float]:
        # Widened, so that blocks at nearly the same tempo share it.
        steps = rates(low, high) / TEMPO_STEP
        return float(np.floor(steps.min())) * TEMPO_STEP, float(np.ceil(steps.max())) * TEMPO_STEP

    def always(between: tuple[float, float], more: float) -> Quantity:
        # Linear in the square of the tempo: smallest at the slowest or at the fastest.
        ends = tuple(partial(_the_same, each) for each in between)
        return pull_quantity(length=length, tempos=ends, enough=more)

    return Quantity(
        kind="pull",
        fixed=(length,),
        value=value,
        slope=slope,
        needed=Needed(hand=3, tether=2),
        error=PULL_ERROR,
        enough=enough,
        whole_beats=True,
        of_rates=True,
        around=[part for each in tempos for part in _of_method(each)],
        content=content,
        steady=steady,
        always=always,
    )


def body_quantity(
    *, shape: tuple[Solid, ...], body: Body, carriage: Carriage, enough: float = 0.0
) -> Quantity:
    """Gap between a prop and the performer's trunk, head, neck and legs [m]; the label indexes `Body.capsules`."""
    radii = np.array([capsule.radius for capsule in body.capsules])[:, None]

    def value(t: Floats, state: Motion) -> tuple[Floats, Ints]:
        lows, highs = carriage.capsule_ends(t)
        if carriage.upright:  # at every beat the same
            lows, highs = lows[:, :1], highs[:, :1]
        stacked = np.full((len(radii), *t.shape), np.inf)
        for solid, (start, end) in zip(shape, placed(shape, state), strict=True):
            gap = segment_segment(start, end, lows, highs)[0] - solid.radius
            stacked = np.minimum(stacked, gap - radii)
        return stacked.min(axis=0), stacked.argmin(axis=0).astype(np.int64)

    def slope(cut: Stretches) -> Floats:
        gives = carriage.capsule_speeds(cut.start, cut.end).max(axis=0)
        return np.asarray(speeds_of(cut, shape) + gives)

    def always(posture: Posture, more: float) -> Quantity:
        return body_quantity(shape=shape, body=body, carriage=lasting(body, posture), enough=more)

    return Quantity(
        kind="own body",
        fixed=(shape, body),
        value=value,
        slope=slope,
        needed=Needed(hand=1, tether=1, plane=_wide(shape)),
        error=GAP_ERROR,
        enough=enough,
        places=carriage.edges,
        content=partial(_posture_between, carriage),
        steady=carriage.held_between,
        always=always,
    )


def props_quantity(*, shapes: tuple[tuple[Solid, ...], ...], enough: float = 0.0) -> Quantity:
    """Gap between one performer's two props, the left and the right one [m].

    A label is n·j + i for the left prop's body i of n and the right one's body j (`shape_of`).
    """
    balls = [_whole(shape) for shape in shapes]

    def value(t: Floats, *states: Motion) -> tuple[Floats, Ints]:
        # Balls that enclose the whole props: if they are apart, nothing else needs testing.
        middles = [
            state.hand + place * state.tether
            for state, (place, _) in zip(states, balls, strict=True)
        ]
        apart = np.linalg.norm(middles[1] - middles[0], axis=-1) - balls[0][1] - balls[1][1]
        gaps, labels = apart, np.zeros(t.shape, dtype=np.int64)
        near = np.flatnonzero(apart < enough + 2 * GAP_ERROR)
        if len(near):
            gaps[near], labels[near] = _nearest(shapes, [_rows(s, near) for s in states])
        return gaps, labels

    def slope(cut: Stretches) -> Floats:
        left, right = (speeds_of(cut, shape, k) for k, shape in enumerate(shapes))
        return np.asarray(left + right)

    return Quantity(
        kind="both props",
        fixed=shapes,
        value=value,
        slope=slope,
        needed=Needed(hand=1, tether=1, plane=any(_wide(shape) for shape in shapes)),
        error=GAP_ERROR,
        enough=enough,
        always=lambda _, more: props_quantity(shapes=shapes, enough=more),
    )


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
    quantity = reach_quantity(side=side, body=body, carriage=carriage or Carriage(body=body))
    return least_values([Asked(quantity, (trajectory,), list(pairwise(edges)))])[0]


def body_gap(
    trajectory: PropTrajectory,
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
    quantity = body_quantity(
        shape=shape_of(prop, frame_rates(trajectory, edges)),
        body=body,
        carriage=carriage or Carriage(body=body),
        enough=near,
    )
    return least_values([Asked(quantity, (trajectory,), list(pairwise(edges)))])[0]


def props_gap(
    left: tuple[PropTrajectory, Prop], right: tuple[PropTrajectory, Prop], edges: Sequence[float]
) -> list[Least]:
    """Gap between one performer's two props [m], smallest on each stretch; labels as in `props_quantity`."""
    shapes = tuple(shape_of(prop, frame_rates(own, edges)) for own, prop in (left, right))
    asked = Asked(props_quantity(shapes=shapes), (left[0], right[0]), list(pairwise(edges)))
    return least_values([asked])[0]


def frame_rates(trajectory: PropTrajectory, edges: Sequence[float]) -> Floats:
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
    return (
        prop.envelope if _wide(prop.solids) and not np.all(np.isfinite(frame_rate)) else prop.solids
    )


def speeds_of(cut: Stretches, shape: Sequence[Solid], of: int = 0) -> Floats:
    """Bound on the speed of every point of a prop on each piece.

    Parameters
    ----------
    cut : Stretches
    shape : sequence of Solid
    of : int
        Which of the trajectories that were cut.

    Returns
    -------
    speeds : ndarray, shape (n,) [m/beat]

    Notes
    -----
    Source: module docstring; points on the axis by |d'|, those off it by the frame's rate.
    """
    hand, turn, frame = cut.columns("hand_speed", "turn_rate", "frame_rate", of=of)
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
    # coordinates first in memory, bodies of the left prop before instants
    starts, ends = (
        np.stack([end.T for end in each]).transpose(0, 2, 1) for each in zip(*left, strict=True)
    )
    radii = np.array([solid.radius for solid in shapes[0]])[:, None]
    best: Floats = np.full(len(states[0].hand), np.inf)
    label = np.zeros(len(best), dtype=np.int64)
    for j, (solid, (start, end)) in enumerate(zip(shapes[1], right, strict=True)):
        gaps = segment_segment(starts, ends, start, end)[0] - radii - solid.radius
        gap, i = gaps.min(axis=0), gaps.argmin(axis=0)
        closer = gap < best
        best = np.where(closer, gap, best)
        label[closer] = len(shapes[0]) * j + i[closer]
    return best, label


def _wide(shape: Sequence[Solid]) -> bool:
    """Whether a part of a prop lies beside its axis."""
    return any(spot.across for solid in shape for spot in (solid.start, solid.end))


def _of_method(each: Rates) -> tuple[object, ...]:
    """What a function is known by: a method is another object each time that it is asked for."""
    return (each.__self__, each.__func__) if isinstance(each, MethodType) else (each,)


def _the_same(value: float, beats: Floats) -> Floats:
    return np.full(np.shape(beats), value)


def _posture_between(carriage: Carriage, low: float, high: float) -> Content:
    """What decides the posture between two beats."""
    _, held = carriage.part(low, high)
    times = [
        time
        for each in held
        for time in (max(each.start, min(low, each.end)), min(each.end, max(high, each.start)))
    ]
    return Content(times, [each.posture for each in held])
