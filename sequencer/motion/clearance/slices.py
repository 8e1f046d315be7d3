"""Slices of time by which distances are kept, and what decides how a dancer moves in each.

An edit changes a part of one performer's show: a dragged spot the walks to and from it, a block its own beats.
Two dancers with the same content in a slice have the same points, radii and bounds in it, to the last digit,
whatever they do before and after.
"""

from collections.abc import Callable, Sequence

import numpy as np

from sequencer.arrays import Floats
from sequencer.kept import content_key, recent
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.trajectories.trajectory import Trajectory

SLICE_BEATS = 16.0  # long enough to be searched together, short beside a show
_MOST_DANCERS = 2_000  # whose keys are kept

SliceKeys = tuple[bytes | None, ...]  # None: of what has no content key, nothing is kept


def slice_edges(start: float, end: float) -> Floats:
    """Edges of the slices between two beats, shape (s + 1,) [beats]: whole multiples of their length inside."""
    inner = SLICE_BEATS * np.arange(np.floor(start / SLICE_BEATS), np.ceil(end / SLICE_BEATS) + 1)
    return np.concatenate([[start], inner[(inner > start) & (inner < end)], [end]])


def slice_keys(dancer: Dancer, edges: Floats) -> SliceKeys:
    """A content key of all that decides a dancer's points, radii and bounds, for each slice.

    Parameters
    ----------
    dancer : Dancer
    edges : ndarray, shape (s + 1,) [beats]

    Returns
    -------
    keys : tuple of bytes, length s
        None if a trajectory has no content key.
    """
    none = (None,) * (len(edges) - 1)
    if not all(isinstance(own, Trajectory) for own in dancer.trajectories.values()):
        return none
    try:
        whole = content_key(
            dancer.body, dancer.props, dancer.trajectories, dancer.floor, dancer.lit,
            dancer.deviation, dancer.carriage, edges,
        )  # fmt: skip
    except TypeError:
        return none
    return recent("dancer slices", whole, lambda: _keys(dancer, edges), most=_MOST_DANCERS)


def _keys(dancer: Dancer, edges: Floats) -> SliceKeys:
    carriage = dancer.carriage
    always = content_key(
        dancer.body, dancer.props, carriage.upright, carriage.column_top, carriage.shoulder_reach,
        carriage.lowest_shoulder,
    )  # fmt: skip
    trajectories = {side: _trajectory_keys(own, edges) for side, own in dancer.trajectories.items()}
    floor = _floor_parts(dancer.floor, edges)
    out = []
    for k, (low, high) in enumerate(zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True)):
        lit = [each for span in dancer.lit if (each := _clipped(*span, low, high))]
        deviation = {
            side: [
                (*each, one.size) for one in own if (each := _clipped(one.start, one.end, low, high))
            ]
            for side, own in dancer.deviation.items()
        }
        moving = {side: own[k] for side, own in trajectories.items()}
        out.append(content_key(always, moving, floor[k], lit, deviation, carriage.part(low, high)))
    return tuple(out)


def _clipped(start: float, end: float, low: float, high: float) -> tuple[float, float] | None:
    """The part of a span within a slice; None if it lies outside."""
    return (max(start, low), min(end, high)) if start < high and end > low else None


def _trajectory_keys(trajectory: object, edges: Floats) -> tuple[bytes, ...]:
    if not isinstance(trajectory, Trajectory):
        raise TypeError(f"no content key of {type(trajectory).__name__}")

    def work() -> tuple[bytes, ...]:
        return tuple(
            content_key(trajectory.part(low, high))
            for low, high in zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True)
        )

    key = (trajectory.content, edges.tobytes())
    return recent("trajectory slices", key, work, most=_MOST_DANCERS)


def _floor_parts(floor: WalkPath, edges: Floats) -> list[tuple[object, ...]]:
    """Where someone stands when a slice begins, and every walk that runs in it, with where that begins.

    Someone who stands between two walks stands where the last one ended, to its last digit.
    """
    stand = floor.at(edges[:-1])
    begins = [(floor.place, floor.facing), *((move.place, move.facing) for move in floor.moves)]
    out: list[tuple[object, ...]] = []
    for k, (low, high) in enumerate(zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True)):
        walks = [
            (begin, move)
            for begin, move in zip(begins, floor.moves, strict=False)
            if move.start < high and move.end > low
        ]
        standing = not walks or walks[0][1].start > low
        held = (*stand.place[k].tolist(), float(stand.facing[k])) if standing else ()
        out.append((held, walks))
    return out
