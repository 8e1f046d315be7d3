"""Distances of performers by sampling alone: what the certified search is measured against.

Everything is evaluated at every sample, vectorised over samples, in chunks that fit the cache. It shares
the laws (the show) with the search, and nothing else: no bounds, no cells, no splitting.
"""

import time
from dataclasses import dataclass

import numpy as np

from sequencer.geometry.segments import segment_segment
from sequencer.motion.performers.body_parts import FRONT_PARTS as PARTS  # the casts hold poi
from sequencer.motion.performers.dancer import Dancer

_CHUNK = 1024
_STARTS = [part.start for part in PARTS]
_ENDS = [part.end for part in PARTS]


@dataclass
class Sampled:
    """What sampling found on a slice of the show."""

    seconds: float
    evaluations: int  # pairs of performers at an instant
    least: np.ndarray  # (pairs,) [m]
    under: int  # runs of samples under the requirement


def sampled(
    dancers: list[Dancer],
    pairs: np.ndarray,
    *,
    start: float,
    end: float,
    per_beat: float,
    required: float,
    near_only: bool,
) -> Sampled:
    """Sample pairs, shape (p, 2), between two beats.

    With `near_only`, instants at which two reach balls are the requirement apart are left out: the same
    broad phase as the search, at every sample.
    """
    began = time.process_time()
    count = round((end - start) * per_beat)
    beats = start + np.arange(count) / per_beat
    least = np.full(len(pairs), np.inf)
    was_under = np.zeros(len(pairs), bool)
    evaluations = under = 0
    reach = np.array([dancer.pieces(start, end).reach.max() for dancer in dancers])
    for low in range(0, count, _CHUNK):
        at = beats[low : low + _CHUNK]
        states = {}
        for k in np.unique(pairs):
            points = dancers[k].stage_points(at)[0]
            states[k] = points, dancers[k].shells(points, at)
        for row, (i, j) in enumerate(pairs):
            distance = np.full(len(at), np.inf)
            pick = np.arange(len(at))
            if near_only:
                across = states[i][0][0] - states[j][0][0]
                apart = np.hypot(across[:, 0], across[:, 1]) - reach[i] - reach[j]
                pick = np.flatnonzero(apart < required)
            if len(pick):
                distance[pick] = _distance(states[i], states[j], pick)
            evaluations += len(pick)
            least[row] = min(least[row], distance.min())
            below = np.append(was_under[row], distance < required)
            under += int(np.count_nonzero(below[1:] & ~below[:-1]))
            was_under[row] = below[-1]
    return Sampled(time.process_time() - began, evaluations, least, under)


def _distance(first, second, pick) -> np.ndarray:
    """Smallest distance of two performers at the chosen samples: 49 pairs of parts."""
    points_a, radii_a = first
    points_b, radii_b = second
    out = np.full(len(pick), np.inf)
    for p in range(len(PARTS)):
        a = points_a[_STARTS[p]][pick], points_a[_ENDS[p]][pick]
        for q in range(len(PARTS)):
            b = points_b[_STARTS[q]][pick], points_b[_ENDS[q]][pick]
            gap = segment_segment(*a, *b)[0] - radii_a[p][pick] - radii_b[q][pick]
            np.minimum(out, gap, out=out)
    return out


def library_seconds(dancers: list[Dancer], pairs: np.ndarray, beats: np.ndarray) -> float | None:
    """Seconds that a general-purpose collision library (python-fcl) takes for pairs at instants."""
    try:
        import fcl
    except ImportError:
        return None
    from scipy.spatial.transform import Rotation

    began = time.process_time()
    for beat in beats:
        shapes = {}
        for k in np.unique(pairs):
            points = dancers[k].stage_points(beat)[0]
            radii = dancers[k].shells(points, beat)[: len(PARTS)]
            shapes[k] = []
            for part, radius in zip(PARTS, radii, strict=True):
                a, b = points[part.start], points[part.end]
                axis = b - a
                length = float(np.linalg.norm(axis))
                turn = np.eye(3)
                shape = fcl.Sphere(float(radius))
                if length > 0:
                    turn = Rotation.align_vectors([axis / length], [[0, 0, 1.0]])[0].as_matrix()
                    shape = fcl.Capsule(float(radius), length)
                shapes[k].append(fcl.CollisionObject(shape, fcl.Transform(turn, 0.5 * (a + b))))
        for i, j in pairs:
            for one in shapes[i]:
                for other in shapes[j]:
                    fcl.distance(one, other, fcl.DistanceRequest(), fcl.DistanceResult())
    return time.process_time() - began
