"""The smallest changes after which two dancers keep a distance, each proven before it is offered.

Stage frame [m], beats.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from sequencer.arrays import Floats
from sequencer.content_keys import content_key
from sequencer.kept import recent
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.nearest import closest
from sequencer.motion.clearance.slices import slice_edges, slice_keys
from sequencer.motion.performers.dancer import Dancer

_STEP = 0.05  # [m] places move by whole steps, so that tape on the floor can mark them
_SPARE = 0.02  # [m] above the requirement, so that a mend does not end within the tolerance
_TRIES = 6
_FARTHEST = 6.0  # [m] a longer move is a new formation, not a mend
_MOST_MOVES = 1_000  # that are kept


@dataclass(frozen=True, slots=True, kw_only=True)
class MovePlace:
    """A move of the places where some dancers stand between two beats."""

    who: tuple[str, ...]
    by: tuple[tuple[float, float], ...]  # [m, stage frame] for each
    start: float  # [beats]
    end: float  # [beats]
    distance: float  # [m] between the pair afterwards, to the tolerance
    crowds: tuple[str, ...] = ()  # others whom it brings under the requirement

    @property
    def cost(self) -> float:
        """Size of the change [m]; moves that crowd others come last."""
        return sum(math.hypot(*vector) for vector in self.by) + 100.0 * len(self.crowds)


def moved(dancer: Dancer, by: tuple[float, float], start: float, end: float) -> Dancer:
    """The dancer with the places held between two beats moved by a vector [m, stage frame]."""
    return replace(dancer, floor=dancer.floor.moved(by, start=start, end=end))


def place_mends(
    dancers: Sequence[Dancer],
    first: int,
    second: int,
    *,
    conflict: tuple[float, float],
    show: tuple[float, float],
    required: float,
    crowding: bool = True,
) -> tuple[MovePlace, ...]:
    """Moves of one place, the other, or both by half, that clear a pair; smallest first.

    Parameters
    ----------
    dancers : sequence of Dancer
    first, second : int
        The pair.
    conflict : (float, float)
        Beats in which they come too close.
    show : (float, float)
        Beats of the whole show.
    required : float
        Distance that they must keep [m].
    crowding : bool
        Whether moves that crowd others are wanted too.

    Returns
    -------
    mends : tuple of MovePlace
        Each proven to clear the pair between the beats of the conflict; empty where no move of up to
        6 m does.
    """
    out = []
    for shares in ((0.0, 1.0), (1.0, 0.0), (0.5, 0.5)):
        # A moved place stays moved for as long as it is held, so all of that time is searched.
        spans = [
            dancers[k].floor.held(*conflict)
            for k, share in zip((first, second), shares, strict=True)
            if share
        ]
        span = (
            max(show[0], min(low for low, _ in spans)),
            min(show[1], max(high for _, high in spans)),
        )
        mend = _recent_shortest((dancers[first], dancers[second]), shares, conflict, span, required)
        if mend is None:
            continue
        crowds = _crowds(dancers, mend, conflict, span, required)
        if crowding:
            out.append(replace(mend, crowds=tuple(dict.fromkeys(crowds))))
        elif next(crowds, None) is None:
            out.append(mend)
    return tuple(sorted(out, key=lambda mend: (round(mend.cost, 6), len(mend.who))))


def _recent_shortest(
    pair: tuple[Dancer, Dancer],
    shares: tuple[float, float],
    conflict: tuple[float, float],
    span: tuple[float, float],
    required: float,
) -> MovePlace | None:
    """What `_shortest` finds; looked up if it was asked of the same pair a short while ago."""
    low, high = _widened(conflict)
    edges = slice_edges(min(span[0], low), max(span[1], high))
    moving = [slice_keys(dancer, edges) for dancer in pair]
    key = None
    if not any(None in keys for keys in moving):
        paths = [(dancer.name, dancer.floor.content) for dancer in pair]
        key = content_key(moving, paths, shares, conflict, span, required)
    return recent(
        "shortest move",
        key,
        lambda: _shortest(pair, shares, conflict, span, required),
        most=_MOST_MOVES,
    )


def _shortest(
    plain: tuple[Dancer, Dancer],
    shares: tuple[float, float],
    conflict: tuple[float, float],
    span: tuple[float, float],
    required: float,
) -> MovePlace | None:
    """Smallest relative vector by cutting planes: each approach found adds n·v ≥ the missing distance."""
    other = elsewhere(plain, conflict, span, required)
    shifted = _both_moved(plain, np.array([1.0, 0.0]), shares, conflict)
    v: Floats = np.zeros(2)
    normals: Floats = np.zeros((0, 2))
    missing: Floats = np.zeros(0)
    for _ in range(_TRIES):
        pair = _both_moved(plain, v, shares, conflict)
        found = approaches(pair, *span, required=required, minima=False).spans
        # Other conflicts of the pair have findings and mends too.
        new = np.array(
            [
                not any(low < end and high > start for low, high in other)
                for start, end in zip(found.start, found.end, strict=True)
            ],
            dtype=np.bool_,
        )
        if not np.any(new):
            left = approaches(pair, *_widened(conflict), required=required)
            by = [(float(share * v[0]), float(share * v[1])) for share in (-shares[0], shares[1])]
            return MovePlace(
                who=tuple(d.name for d, share in zip(plain, shares, strict=True) if share),
                by=tuple(vector for vector, share in zip(by, shares, strict=True) if share),
                start=span[0],
                end=span[1],
                distance=float(left.distance[0]),
            )
        more, short = _planes(pair, plain, shifted, found.start[new], found.end[new], required)
        normals = np.concatenate([normals, more])
        missing = np.concatenate([missing, more @ v + short])
        v = _rounded_up(_least(normals, missing))
        if not np.hypot(*v) <= _FARTHEST:
            return None
    return None


def _both_moved(
    pair: tuple[Dancer, Dancer],
    v: Floats,
    shares: tuple[float, float],
    conflict: tuple[float, float],
) -> tuple[Dancer, Dancer]:
    x, y = float(v[0]), float(v[1])
    return (
        moved(pair[0], (-shares[0] * x, -shares[0] * y), *conflict),
        moved(pair[1], (shares[1] * x, shares[1] * y), *conflict),
    )


def _widened(conflict: tuple[float, float]) -> tuple[float, float]:
    return conflict[0] - 0.5, conflict[1] + 0.5


def elsewhere(
    pair: tuple[Dancer, Dancer],
    conflict: tuple[float, float],
    span: tuple[float, float],
    required: float,
) -> list[tuple[float, float]]:
    """Approaches of the pair that belong to other conflicts, widened by half a beat."""
    low, high = _widened(conflict)
    found = approaches(pair, *span, required=required, minima=False).spans
    return [
        (start - 0.5, end + 0.5)
        for start, end in zip(found.start.tolist(), found.end.tolist(), strict=True)
        if end < low or start > high
    ]


def _planes(
    pair: tuple[Dancer, Dancer],
    plain: tuple[Dancer, Dancer],
    shifted: tuple[Dancer, Dancer],
    start: Floats,
    end: Floats,
    required: float,
) -> tuple[Floats, Floats]:
    """Conditions on a relative vector: n·v ≥ the missing distance, at instants of every span.

    On a walk to or from a moved place, only part of the vector acts.
    """
    longest = np.argsort(start - end)[:64]
    share = np.linspace(0.0, 1.0, 9)
    beats = (start[longest, None] + (end - start)[longest, None] * share).ravel()
    near = closest(*pair, beats)
    normal = near.direction[:, :2]
    places = [dancer.floor.at(beats).place for dancer in pair]
    away = places[1] - places[0]
    away = np.where(np.hypot(*away.T)[:, None] > 1e-6, away, np.array([1.0, 0.0]))
    away /= np.hypot(*away.T)[:, None]
    # Parts one above the other are best separated along the line between the two places.
    normal = np.where((np.hypot(*normal.T) < 0.5)[:, None], away, normal)
    acting = [
        (with_one.floor.at(beats).place - without.floor.at(beats).place)[:, 0]
        for with_one, without in zip(shifted, plain, strict=True)
    ]
    normal = normal * (acting[1] - acting[0])[:, None]
    short = required + _SPARE - near.distance
    keep = (short > 0) & (np.hypot(*normal.T) > 0.02)
    return normal[keep], short[keep]


def _least(normals: Floats, missing: Floats) -> Floats:
    """Shortest v with n·v ≥ m for all: on one plane, or where two meet (exact in two dimensions)."""
    if not len(normals):
        return np.full(2, np.inf)
    square = np.einsum("kc,kc->k", normals, normals)
    single = normals * (missing / square)[:, None]
    i, j = np.triu_indices(len(normals), 1)
    if len(i) > 40_000:
        # Only the most demanding planes can be active.
        most = np.argsort(-missing / np.sqrt(square))[:250]
        return _least(normals[most], missing[most])
    cross = normals[i, 0] * normals[j, 1] - normals[i, 1] * normals[j, 0]
    safe = np.where(np.abs(cross) > 1e-9, cross, np.nan)
    double = np.stack(
        [
            (missing[i] * normals[j, 1] - missing[j] * normals[i, 1]) / safe,
            (missing[j] * normals[i, 0] - missing[i] * normals[j, 0]) / safe,
        ],
        axis=1,
    )
    candidates = np.concatenate([single, double])
    candidates = candidates[np.all(np.isfinite(candidates), axis=1)]
    candidates = candidates[np.argsort(np.hypot(*candidates.T))]
    for low in range(0, len(candidates), 256):
        some = candidates[low : low + 256]
        holds = np.all(some @ normals.T >= missing - 1e-9, axis=1)
        if np.any(holds):
            return np.asarray(some[np.argmax(holds)])
    return np.full(2, np.inf)


def _rounded_up(v: Floats) -> Floats:
    size = float(np.hypot(*v))
    if not np.isfinite(size) or size < 1e-9:
        return v
    return np.asarray(v * (math.ceil(size / _STEP - 1e-9) * _STEP / size))


def _crowds(
    dancers: Sequence[Dancer],
    mend: MovePlace,
    conflict: tuple[float, float],
    span: tuple[float, float],
    required: float,
) -> Iterator[str]:
    """Everyone else whom the move newly brings under the requirement."""
    vectors = dict(zip(mend.who, mend.by, strict=True))
    after = [
        moved(dancer, vectors[dancer.name], *conflict) if dancer.name in vectors else dancer
        for dancer in dancers
    ]
    for dancer, there in zip(dancers, after, strict=True):
        for other in dancers:
            if dancer.name not in vectors or other.name in vectors:
                continue
            new = approaches((there, other), *span, required=required, minima=False)
            if len(new.spans.group):
                old = approaches((dancer, other), *span, required=required, minima=False)
                if not len(old.spans.group) or new.distance[0] < old.distance[0] - 0.01:
                    yield other.name
