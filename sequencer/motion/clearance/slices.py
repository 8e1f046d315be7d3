"""Slices of time by which distances are kept, and what decides how a dancer moves in each.

An edit changes a part of one performer's show: a dragged spot the walks to and from it, a block its own beats.
Two dancers with the same content in a slice have the same points, radii and bounds in it, to the last digit,
whatever they do before and after.
"""

import hashlib
import struct
from collections.abc import Iterable, Sequence

import numpy as np

from sequencer.arrays import Floats
from sequencer.content_keys import content_key
from sequencer.kept import recent
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.trajectories.flown_path.flown_hand import FlownHand
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.timing.position import TOUCH

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

    Notes
    -----
    Source: `Trajectory.part`, `Carriage.part`, `FlownHand.part`, and the spans that overlap a slice. Two slices with the same key have
    the same points, radii and bounds, to the last digit.
    """
    if not all(isinstance(own, Trajectory | FlownHand) for own in dancer.trajectories.values()):
        return (None,) * (len(edges) - 1)
    beats, parts = edges.tobytes(), _held(dancer)

    def work() -> tuple[object, SliceKeys]:
        moving = moving_keys(dancer, edges)
        floor = floor_keys(dancer.floor, edges)
        return parts, tuple(
            None if own is None else _hashed((own, here))
            for own, here in zip(moving, floor, strict=True)
        )

    same = (beats, *(id(part) for part in parts))
    _, keys = recent("slice keys", (same, dancer.floor.content), work, most=_MOST_DANCERS)
    return keys


def moving_keys(dancer: Dancer, edges: Floats) -> SliceKeys:
    """The same of a dancer's motion in their own frame: all but where they stand and walk.

    Parameters
    ----------
    dancer : Dancer
    edges : ndarray, shape (s + 1,) [beats]

    Notes
    -----
    Source: as `slice_keys`.
    """
    parts = _held(dancer)
    same = (edges.tobytes(), *(id(part) for part in parts))
    _, moving = recent(
        "moving keys", same, lambda: (parts, _moving_keys(dancer, edges)), most=_MOST_DANCERS
    )
    return moving


def _held(dancer: Dancer) -> tuple[object, ...]:
    """All but the floor that decides a dancer's motion."""
    # An edit leaves most performers as they were, and of most others all but the floor: these are the same
    # objects, held with what is kept so that no other can have their ids.
    return (
        dancer.body, dancer.props, dancer.trajectories, dancer.lit, dancer.deviation, dancer.carriage
    )  # fmt: skip


def key_at(dancer: Dancer, beat: float, edges: Floats | None = None) -> bytes | None:
    """A content key of all that decides a dancer's points and radii at an instant; None if there is none.

    Parameters
    ----------
    dancer : Dancer
    beat : float
    edges : ndarray, shape (s + 1,) [beats], optional
        Of slices: the key is that of the one with the instant inside. Otherwise of one as long as all are.

    Notes
    -----
    Source: `slice_keys`. Equal keys have equal points; points that are equal may have other keys.
    """
    if edges is not None:
        k = int(np.searchsorted(edges, beat))
        inside = 0 < k < len(edges) and beat < edges[k]
        return slice_keys(dancer, edges)[k - 1] if inside else None
    low = SLICE_BEATS * np.floor(beat / SLICE_BEATS)
    if beat == low:  # between two slices
        return None
    return slice_keys(dancer, np.array([low, low + SLICE_BEATS]))[0]


def _moving_keys(dancer: Dancer, edges: Floats) -> SliceKeys:
    """Of all but the floor: body, props, their trajectories, flames, hand deviation and posture."""
    carriage = dancer.carriage
    try:
        always = content_key(
            dancer.body, dancer.props, carriage.upright, carriage.column_top,
            carriage.shoulder_reach, carriage.lowest_shoulder,
        )  # fmt: skip
        trajectories = {
            side: _flown_keys(own, edges)
            if isinstance(own, FlownHand)
            else _trajectory_keys(own, edges)
            for side, own in dancer.trajectories.items()
            if isinstance(own, Trajectory | FlownHand)
        }
    except TypeError:
        return (None,) * (len(edges) - 1)
    lit_in = _running(dancer.lit, edges)
    off_in = {
        side: _running([(one.start, one.end) for one in own], edges)
        for side, own in dancer.deviation.items()
    }
    out = []
    for k, (low, high) in enumerate(zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True)):
        lit = [_clipped(*dancer.lit[m], low, high) for m in lit_in[k]]
        deviation = {
            side: [
                (*_clipped(one.start, one.end, low, high), one.size)
                for one in (own[m] for m in off_in[side][k])
            ]
            for side, own in dancer.deviation.items()
        }
        moving = {side: own[k] for side, own in trajectories.items()}
        out.append(content_key(always, moving, lit, deviation, carriage.part(low, high)))
    return tuple(out)


def _running(spans: Sequence[tuple[float, float]], edges: Floats) -> list[list[int]]:
    """Which spans run in each slice, in their order; each slice is looked at for those only, however long a show is."""
    running: list[list[int]] = [[] for _ in edges[1:]]
    starts, ends = np.array(spans, dtype=float).reshape(-1, 2).T
    firsts = np.searchsorted(edges[1:], starts, side="right").tolist()
    lasts = np.searchsorted(edges[:-1], ends, side="left").tolist()
    for m, (first, last) in enumerate(zip(firsts, lasts, strict=True)):
        for k in range(first, last):
            running[k].append(m)
    return running


def _clipped(start: float, end: float, low: float, high: float) -> tuple[float, float]:
    """The part of a span within a slice in which it runs."""
    return max(start, low), min(end, high)


def _flown_keys(hand: FlownHand, edges: Floats) -> tuple[bytes, ...]:
    """Of the splines in each slice, and of the planes that its drawing names."""
    drawn = _trajectory_keys(hand.drawn, edges)
    pairs = zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True)
    return tuple(
        _hashed((own, hand.part(low, high))) for own, (low, high) in zip(drawn, pairs, strict=True)
    )


def _trajectory_keys(trajectory: Trajectory, edges: Floats) -> tuple[bytes, ...]:
    """Of the spans and blends that decide its states in each slice, as `Trajectory.part` has them."""

    def work() -> tuple[bytes, ...]:
        spans, blends = _span_keys(trajectory)
        middle, half = np.array([each[:2] for each in trajectory.blends]).reshape(-1, 2).T
        # How many blends have ended before a slice, and how many have begun by its end.
        low = np.searchsorted(np.sort(middle + half), edges[:-1] - TOUCH, side="left").tolist()
        high = np.searchsorted(np.sort(middle - half), edges[1:] + TOUCH, side="right").tolist()
        return tuple(
            _hashed((*spans[a : b + 1], *blends[a:b])) for a, b in zip(low, high, strict=True)
        )

    key = (trajectory.content, edges.tobytes())
    return recent("trajectory keys", key, work, most=_MOST_DANCERS)


def _span_keys(trajectory: Trajectory) -> tuple[list[bytes], list[bytes]]:
    """Of each span, and of each blend."""

    def work() -> tuple[list[bytes], list[bytes]]:
        spans = [content_key(span) for span in trajectory.spans]
        return spans, [content_key(blend) for blend in trajectory.blends]

    return recent("span keys", trajectory.content, work, most=_MOST_DANCERS)


def floor_keys(floor: WalkPath, edges: Floats) -> tuple[bytes, ...]:
    """Of where someone stands when a slice begins, and every walk that runs in it, with where that begins.

    Someone who stands between two walks stands where the last one ended, to its last digit.

    Parameters
    ----------
    floor : WalkPath
    edges : ndarray, shape (s + 1,) [beats]

    Notes
    -----
    Source: as `slice_keys`.
    """

    def work() -> tuple[bytes, ...]:
        stand = floor.at(edges[:-1])
        places, facings = stand.place.tolist(), stand.facing.tolist()
        running = _running([(move.start, move.end) for move in floor.moves], edges)
        out: list[bytes] = []
        for k, (low, here) in enumerate(zip(edges[:-1].tolist(), running, strict=True)):
            standing = not here or floor.moves[here[0]].start > low
            held = struct.pack("<3d", *places[k], facings[k]) if standing else b""
            out.append(_hashed((held, *(floor.walks[m] for m in here))))
        return tuple(out)

    return recent("floor keys", (floor.content, edges.tobytes()), work, most=_MOST_DANCERS)


def _hashed(parts: Iterable[bytes]) -> bytes:
    total = hashlib.blake2b(digest_size=16)
    for part in parts:
        total.update(struct.pack("<I", len(part)) + part)
    return total.digest()
