"""Position and facing of a performer over the beats of a show.

Stage frame [m]: origin where the centre line meets the downstage edge, X to the audience's right,
Y upstage. A facing of 0 faces the audience; facings grow anticlockwise seen from above [rad].

A move runs by the minimum-jerk law s(u) = 10u³ − 15u⁴ + 6u⁵, so that position, velocity and acceleration
are continuous and the performer stands still at both ends.
Source of the law: T. Flash and N. Hogan, The coordination of arm movements, J. Neurosci. 5 (1985),
eq. 1 and appendix A (from memory).
"""

import math
import struct
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import chain, pairwise

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, Ints, as_floats
from sequencer.geometry.regions import Point
from sequencer.kept import recent
from sequencer.motion.performers.straying import Stray, stray_bounds, stray_rows, strayed

_MOST_TABLES = 1_000
_MOST_PLACES = 20_000
_PEAK_RATE = 15 / 8  # of s', at u = 1/2
_PEAK_ACCELERATION = 10 / math.sqrt(3)  # of |s''|, at u = 1/2 ± √3/6


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """A change of position and facing over a span of beats."""

    start: float  # [beats]
    end: float  # [beats]
    place: Point  # [m, stage frame] where it ends
    facing: float  # [rad] where it ends; 2π more is one whole turn more
    through: tuple[Point, ...] = ()  # [m, stage frame] intermediate points; none: straight

    def __post_init__(self) -> None:
        for name in ("start", "end", "facing"):
            if not math.isfinite(getattr(self, name)):
                raise ValueError(f"{name} must be finite, got {getattr(self, name)!r}")
        if not self.end > self.start:
            raise ValueError(f"a move must end after it starts, got {self.start} to {self.end}")
        for point in (self.place, *self.through):
            if len(point) != 2 or not all(math.isfinite(value) for value in point):
                raise ValueError(f"a place must be two finite numbers, got {point!r}")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Placement:
    """Position and facing at n instants, with derivatives per beat."""

    place: Floats  # (..., 2) [m, stage frame]
    place_rate: Floats  # (..., 2) [m/beat]
    place_acceleration: Floats  # (..., 2) [m/beat²]
    facing: Floats  # (...) [rad]
    facing_rate: Floats  # (...) [rad/beat]
    facing_acceleration: Floats  # (...) [rad/beat²]

    def off_by(self, off: Floats, rate: Floats, acceleration: Floats) -> "Placement":
        """The same, off by some X, Y and facing with their derivatives, each shape (..., 3)."""
        return Placement(
            place=self.place + off[..., :2],
            place_rate=self.place_rate + rate[..., :2],
            place_acceleration=self.place_acceleration + acceleration[..., :2],
            facing=self.facing + off[..., 2],
            facing_rate=self.facing_rate + rate[..., 2],
            facing_acceleration=self.facing_acceleration + acceleration[..., 2],
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkBounds:
    """Proven upper bounds over a span of beats; never sampled maxima."""

    speed: float = 0.0  # [m/beat]
    acceleration: float = 0.0  # [m/beat²]
    turn_rate: float = 0.0  # [rad/beat]
    turn_acceleration: float = 0.0  # [rad/beat²]


@dataclass(frozen=True)
class WalkPath:
    """A performer's walking path: a first position, and moves; between moves they stand.

    Parameters
    ----------
    place : tuple of float
        Initial position [m, stage frame].
    facing : float
        Initial facing [rad].
    moves : sequence of Move
        In order, not overlapping.
    off : sequence of (start, end)
        Spans of beats in which the performer is off the stage, or walks on or off: the edge of the stage is no limit then.
    strays : sequence of (x, y, facing)
        How far off the plan each position held is, and on the way between them (`straying`); none: on the plan.
    """

    place: Point
    facing: float = 0.0
    moves: tuple[Move, ...] = ()
    off: tuple[tuple[float, float], ...] = ()
    strays: tuple[Stray, ...] = ()

    def __post_init__(self) -> None:
        if self.strays and len(self.strays) != len(self.moves) + 1:
            raise ValueError(
                f"strays must be one for each position held, {len(self.moves) + 1}, got {len(self.strays)}"
            )
        object.__setattr__(self, "moves", tuple(self.moves))
        if len(self.place) != 2 or not all(
            math.isfinite(value) for value in (*self.place, self.facing)
        ):
            raise ValueError(f"place and facing must be finite, got {self.place}, {self.facing}")
        for before, after in zip(self.moves, self.moves[1:], strict=False):
            if after.start < before.end:
                raise ValueError(
                    f"moves must not overlap: one ends at beat {before.end}, "
                    f"the next starts at {after.start}"
                )

    def at(self, beats: ArrayLike) -> Placement:
        """Position and facing with derivatives.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        placement : Placement

        Notes
        -----
        Source: minimum-jerk law along a natural cubic spline (module). Exact.
        """
        beat = as_floats("beats", beats)
        table = self.table
        return table.placed(np.searchsorted(table.starts, beat, side="right"), beat)

    def place_at(self, beat: float) -> Point:
        """Position at one instant [m, stage frame]; exact."""

        def work() -> Point:
            x, y = self.at(beat).place.tolist()
            return (x, y)

        return recent("places at instants", (self.content, beat), work, most=_MOST_PLACES)

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, WalkBounds], ...]:
        """Standing spans and moves between two beats, each with proven bounds.

        Returns
        -------
        pieces : tuple of (start, end, WalkBounds)
            Contiguous, from `start` to `end`.
        """
        out: list[tuple[float, float, WalkBounds]] = []
        at = start
        for move, bounds in zip(self.moves, self.table.bounds, strict=True):
            if move.end <= at:
                continue
            if move.start >= end:
                break
            if move.start > at:
                out.append((at, move.start, WalkBounds()))
                at = move.start
            out.append((at, min(move.end, end), bounds))
            at = min(move.end, end)
        if at < end:
            out.append((at, end, WalkBounds()))
        return tuple(out)

    def held(self, start: float, end: float) -> tuple[float, float]:
        """The span over which the path changes if positions held between two beats are moved.

        Walks that overlap the span count with the positions at both of their ends.

        Returns
        -------
        span : (float, float)
            Beats; infinite if the first or the last position is included.
        """
        for move in self.moves:
            if move.start < end and move.end > start:
                start, end = min(start, move.start), max(end, move.end)
        before = [move.start for move in self.moves if move.end <= start and move.end < end]
        after = [move.end for move in self.moves if move.start >= end and move.start > start]
        return (before[-1] if before else -math.inf, after[0] if after else math.inf)

    def moved(
        self, by: Point, *, start: float = -math.inf, end: float = math.inf, turn: float = 0.0
    ) -> "WalkPath":
        """The same path with every position held between two beats moved by a vector [m]; see `held`.

        With `turn`, the facings held there are turned as well [rad].
        """
        low, high = self.held(start, end)
        stops = [-math.inf, *(move.end for move in self.moves)]
        leaves = [*(move.start for move in self.moves), math.inf]
        held = [stop < high and leave > low for stop, leave in zip(stops, leaves, strict=True)]

        def shift(point: Point, here: bool) -> Point:
            return (point[0] + by[0], point[1] + by[1]) if here else point

        moves = tuple(
            Move(
                start=move.start,
                end=move.end,
                place=shift(move.place, held[i + 1]),
                facing=move.facing + (turn if held[i + 1] else 0.0),
                through=tuple(shift(p, held[i] and held[i + 1]) for p in move.through),
            )
            for i, move in enumerate(self.moves)
        )
        facing = self.facing + (turn if held[0] else 0.0)
        return WalkPath(shift(self.place, held[0]), facing, moves, self.off, self.strays)

    def shifted(self, beats: float) -> "WalkPath":
        """The same path with every move delayed by some beats."""
        moves = tuple(
            Move(
                start=move.start + beats,
                end=move.end + beats,
                place=move.place,
                facing=move.facing,
                through=move.through,
            )
            for move in self.moves
        )
        off = tuple((start + beats, end + beats) for start, end in self.off)
        return WalkPath(self.place, self.facing, moves, off, self.strays)

    @cached_property
    def content(self) -> bytes:
        """What stands for it in a content key: all its numbers."""
        strays = _packed(tuple(chain.from_iterable(self.strays[:1])))
        return b"".join((_packed((*self.place, self.facing)), strays, *self.walks))

    @cached_property
    def walks(self) -> tuple[bytes, ...]:
        """All numbers that decide each walk, with the place and facing from which it starts."""
        begins = [(*self.place, self.facing), *((*m.place, m.facing) for m in self.moves)]
        walks = tuple(
            _packed((*begin, m.start, m.end, *m.place, m.facing, *chain.from_iterable(m.through)))
            for begin, m in zip(begins, self.moves, strict=False)
        )
        if not self.strays:
            return walks
        off = (b"off" + _packed((*a, *b)) for a, b in pairwise(self.strays))
        return tuple(walk + by for walk, by in zip(walks, off, strict=True))

    @cached_property
    def table(self) -> "_Table":
        """The path as arrays; paths that are the same share them."""
        return recent(
            "walk tables",
            self.content,
            lambda: _Table.of(self.place, self.facing, self.moves, self.strays),
            most=_MOST_TABLES,
        )


@dataclass(frozen=True, slots=True, eq=False)
class _Table:
    """Moves as arrays; row 0 is the standing span before the first move."""

    starts: Floats  # (m,)
    begins: Floats  # (m + 1,)
    lengths: Floats  # (m + 1,)
    facings: Floats  # (m + 1,) at the start of each
    turns: Floats  # (m + 1,)
    pieces: Ints  # (m + 1,) the first piece of each, of the k pieces of all
    counts: Ints  # (m + 1,) pieces of each
    knots: Floats  # (k,) at the start of each piece
    cubics: Floats  # (4, 2, k): rows along the pieces are several times quicker than pairs
    bounds: tuple[WalkBounds, ...]  # (m,)
    strays: Floats | None  # (m + 1, 2, 3) at the start and the end of each; None: nobody strays

    @classmethod
    def of(
        cls, place: Point, facing: float, moves: Sequence[Move], strays: Sequence[Stray]
    ) -> "_Table":
        still: Floats = np.zeros((1, 4, 2))
        still[0, 0] = place
        knots, counts = [0.0], [1]
        cubics: list[Floats] = [still]
        facings, turns, bounds = [facing], [0.0], []
        here, angle = place, facing
        off = stray_rows(strays)
        for k, move in enumerate(moves, start=1):
            points = np.array([here, *move.through, move.place], dtype=np.float64)
            own, coefficients = _spline(points)
            knots.extend(own)
            counts.append(len(own))
            cubics.append(coefficients)
            turn = move.facing - angle
            facings.append(angle)
            turns.append(turn)
            bounds.append(
                _bounds(
                    own, coefficients, turn, move.end - move.start, None if off is None else off[k]
                )
            )
            here, angle = move.place, move.facing
        starts = np.array([move.start for move in moves])
        ends = np.array([move.end for move in moves])
        return cls(
            starts=starts,
            begins=np.concatenate([[0.0], starts]),
            lengths=np.concatenate([[1.0], ends - starts]),
            facings=np.array(facings),
            turns=np.array(turns),
            pieces=np.cumsum([0, *counts[:-1]]),
            counts=np.array(counts),
            knots=np.array(knots),
            cubics=np.ascontiguousarray(np.concatenate(cubics).transpose(1, 2, 0)),
            bounds=tuple(bounds),
            strays=off,
        )

    def placed(self, move: Ints, beat: Floats) -> Placement:
        """Position and facing at beats of the given rows, each shape (...)."""
        length = self.lengths[move]
        u = np.clip((beat - self.begins[move]) / length, 0.0, 1.0)
        s = u * u * u * (10.0 + u * (-15.0 + 6.0 * u))
        ds = 30.0 * (u * (1.0 - u)) ** 2 / length
        dds = 60.0 * u * (1.0 - u) * (1.0 - 2.0 * u) / (length * length)
        piece = self._piece(move, s)
        x = s - self.knots[piece]
        c = self.cubics.take(piece, axis=-1)  # (4, 2, ...)
        q = c[0] + x * (c[1] + x * (c[2] + x * c[3]))
        dq = c[1] + x * (2.0 * c[2] + x * 3.0 * c[3])
        ddq = 2.0 * c[2] + 6.0 * x * c[3]
        turn = self.turns[move]
        planned = Placement(
            place=np.moveaxis(q, 0, -1),
            place_rate=np.moveaxis(dq * ds, 0, -1),
            place_acceleration=np.moveaxis(ddq * ds * ds + dq * dds, 0, -1),
            facing=self.facings[move] + turn * s,
            facing_rate=turn * ds,
            facing_acceleration=turn * dds,
        )
        if self.strays is None:
            return planned
        return planned.off_by(*strayed(self.strays, move, s, ds, dds))

    def _piece(self, move: Ints, s: Floats) -> Ints:
        """The piece of each row that holds s, its share of the way; shape (...)."""
        first = np.asarray(self.pieces[move])
        more = np.asarray(self.counts[move]) - 1
        most = int(np.max(more, initial=0))
        if not most:  # no turning point on the way
            return first
        passed = np.zeros(first.shape, dtype=np.int64)
        for k in range(1, most + 1):
            knot = self.knots[first + np.minimum(k, more)]
            passed += (k <= more) & (s >= knot)
        return first + passed


class WalkPaths:
    """Walking paths of many performers, evaluated at once.

    Parameters
    ----------
    paths : sequence of WalkPath
    """

    def __init__(self, paths: Sequence[WalkPath]) -> None:
        tables = [path.table for path in paths]
        rows = [len(table.begins) for table in tables]
        self._first = np.concatenate([[0], np.cumsum(rows)[:-1]]).tolist()
        self._starts = [table.starts for table in tables]
        begun = np.cumsum([0, *(len(table.knots) for table in tables)])[:-1].tolist()
        self._table = _Table(
            starts=np.empty(0),
            begins=np.concatenate([table.begins for table in tables]),
            lengths=np.concatenate([table.lengths for table in tables]),
            facings=np.concatenate([table.facings for table in tables]),
            turns=np.concatenate([table.turns for table in tables]),
            pieces=np.concatenate(
                [table.pieces + first for table, first in zip(tables, begun, strict=True)]
            ),
            counts=np.concatenate([table.counts for table in tables]),
            knots=np.concatenate([table.knots for table in tables]),
            cubics=np.concatenate([table.cubics for table in tables], axis=-1),
            bounds=(),
            strays=_all_strays(tables),
        )

    def at(self, slices: Sequence[tuple[int, int, int]], beats: Floats) -> Placement:
        """Position and facing of one performer per instant.

        Parameters
        ----------
        slices : sequence of (path, low, high)
            The path for each slice of the beats; the slices cover the beats in order.
        beats : ndarray, shape (n,) [beats]

        Returns
        -------
        placement : Placement

        Notes
        -----
        Source: `WalkPath.at`. The same numbers.
        """
        moves = [
            np.searchsorted(self._starts[k], beats[low:high], side="right") + self._first[k]
            for k, low, high in slices
        ]
        return self._table.placed(np.concatenate(moves), beats)


def _packed(values: tuple[float, ...]) -> bytes:
    return struct.pack(f"<I{len(values)}d", len(values), *values)


def _spline(points: Floats) -> tuple[Floats, Floats]:
    """Natural cubic spline by chord length over 0 … 1: left knots (k,) and coefficients (k, 4, 2)."""
    chords = np.hypot(*np.diff(points, axis=0).T)
    if len(points) == 2 or not np.all(chords > 0):
        # A straight line, or coinciding points, which give a curve no direction.
        points = points[[True, *(chords > 0)]]
        chords = chords[chords > 0]
    if len(points) < 3:
        first, last = points[0], points[-1]
        line = np.zeros((1, 4, 2))
        line[0, 0], line[0, 1] = first, last - first
        return np.zeros(1), line
    h = chords / chords.sum()
    knots = np.concatenate([[0.0], np.cumsum(h)[:-1]])
    slope = np.diff(points, axis=0) / h[:, None]
    n = len(points)
    matrix = np.eye(n)
    right = np.zeros((n, 2))
    for i in range(1, n - 1):
        matrix[i, i - 1 : i + 2] = h[i - 1], 2 * (h[i - 1] + h[i]), h[i]
        right[i] = 6 * (slope[i] - slope[i - 1])
    second = np.linalg.solve(matrix, right)
    step = h[:, None]
    cubics = np.stack(
        [
            points[:-1],
            slope - step * (2 * second[:-1] + second[1:]) / 6,
            second[:-1] / 2,
            (second[1:] - second[:-1]) / (6 * step),
        ],
        axis=1,
    )
    return knots, cubics


def _all_strays(tables: Sequence[_Table]) -> Floats | None:
    """Of the rows of many tables; None if nobody strays."""
    if all(table.strays is None for table in tables):
        return None
    return np.concatenate(
        [np.zeros((len(t.begins), 2, 3)) if t.strays is None else t.strays for t in tables]
    )


def _bounds(
    knots: Floats, cubics: Floats, turn: float, length: float, off: Floats | None = None
) -> WalkBounds:
    """Bounds from control points: a polynomial stays within their convex hull. `off`: strays, shape (2, 3)."""
    h = np.diff(np.append(knots, 1.0))[:, None]
    first = cubics[:, 1]
    second, third = 2 * cubics[:, 2] * h, 3 * cubics[:, 3] * h * h
    hull = np.stack([first, first + second / 2, first + second + third])
    steepest = float(np.max(np.hypot(hull[..., 0], hull[..., 1])))
    bend = np.stack([2 * cubics[:, 2], 2 * cubics[:, 2] + 6 * cubics[:, 3] * h])
    sharpest = float(np.max(np.hypot(bend[..., 0], bend[..., 1])))
    rate, acceleration = _PEAK_RATE / length, _PEAK_ACCELERATION / length**2
    more = (0.0, 0.0, 0.0, 0.0) if off is None else stray_bounds(off, rate, acceleration)
    return WalkBounds(
        speed=steepest * rate + more[0],
        acceleration=sharpest * rate**2 + steepest * acceleration + more[1],
        turn_rate=abs(turn) * rate + more[2],
        turn_acceleration=abs(turn) * acceleration + more[3],
    )
