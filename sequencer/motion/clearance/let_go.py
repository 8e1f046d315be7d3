"""Where a head that comes off first lands: its flight from every instant at which it is lit, proven over all of them.

Stage frame [m], time in beats, speeds in m/s. A head that comes off at p, z above level ground, with velocity v flies
for T = (v_z + S)/g, S = √(v_z² + 2gz), and lands at p + v_xy·T. This is without air. Drag, however strong, only brings
it down earlier on the same line: z″(x) = −g/v_x², and drag makes v_x smaller. So the line on the plan from release to
landing holds every place where it can come down; distances are from that line. Wind, bounces and rolls are left out.

Between samples: with a the head's acceleration before it comes off and q = v_z/S, the landing moves at
(1 + q)·(v_xy + (a_xy·S + v_xy·a_z)/g), never more than (1 + q)·(|v_xy| + (|a|/g)·√(v² + 2gz)). With 2|v_xy| for the first
term this also bounds how fast release and distance flown change. The proven bounds on v and a of the trajectories then
bound how far a flight may be from the nearest sample; intervals are divided until that is `SLACK` at most, and extremes
are searched by branch and bound to 5 cm (geometry/certified.py): finer than air would let anybody tell. For a fan or hoop in a link or a blend nothing bounds
the acceleration of its wicks: there the slack is twice the largest step between samples 1/128 beat apart, which is a
margin and no proof, and the result says so.

Source: uniform acceleration, any mechanics text; the bounds are its derivative, by the chain rule.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from functools import partial
from typing import Any, Literal, NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.geometry.bodies import Side
from sequencer.geometry.certified import Sample, search
from sequencer.geometry.regions import Point
from sequencer.kept import content_key, kept, kept_each, recent
from sequencer.motion.clearance.slices import slice_edges, slice_keys
from sequencer.motion.laws.law import Bounds
from sequencer.motion.performers.body_parts import FIRST_POINT, REAR
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.props.prop import Prop, PropPoint
from sequencer.timing.tempo import TempoMap

FLIGHT_ERROR = 0.05  # [m] of an extreme, at most
SLACK = 0.20  # [m] that a flight may be from the nearest sample
FLOWN_CELL = 0.15  # [m] of the grid on which flights are drawn
GROWN = SLACK + 2.5 * FLOWN_CELL  # [m] by which an outline is wider than the flights, at most
_PARTS = 64  # that an interval is divided into at a time
_CHUNK = 4_096  # flights drawn at a time
_UNPROVEN = 1 / 128  # [beats] between samples where nothing bounds the acceleration
_STEP = 1e-6  # [beats] half the difference step for a wick off the axis
_MOST_PROPS = 2_000  # performers
_MOST_SAMPLED = 8  # performers whose flights stay in memory, some megabytes each


@dataclass(frozen=True, slots=True, kw_only=True)
class LandingTarget:
    """Something on the plan that a head must not come down on."""

    name: str
    shape: Literal["point", "line", "area"]
    points: tuple[Point, ...]  # [m, stage frame]; corners in order


@dataclass(frozen=True, slots=True, kw_only=True)
class NearestFlight:
    """The flight that comes nearest to a target."""

    distance: float  # [m] on the plan, from the line between release and landing; 0 if that meets it; to 5 cm
    beyond: float  # [m] a line: how far beyond it a head lands, at most `SLACK` too much; 0 if none does
    beat: float  # of the release; of the one that lands farthest beyond
    landing: Point  # [m, stage frame] without drag


@dataclass(frozen=True, slots=True, kw_only=True)
class LetGo:
    """The farthest that a performer's head flies if it comes off at the worst instant."""

    flight: float  # [m] from release to landing on the plan; to 5 cm
    beat: float  # of that release
    landing: Point  # [m, stage frame]
    fastest: float  # [m/s] bound on the speed of a lit head, walking included
    proven: bool  # False if a margin stands for a bound somewhere


class _Wick(NamedTuple):
    side: Side
    spot: PropPoint


class _Flights(NamedTuple):
    """Flights from n instants, k wicks each."""

    release: Floats  # (k, n, 2) [m, stage frame]
    landing: Floats  # (k, n, 2) [m, stage frame]
    slack: Floats  # (n,) [m] that release, landing and distance flown differ by within the interval, at most
    fastest: Floats  # (n,) [m/s] bound on the speed at release within the interval

    @property
    def flown(self) -> Floats:
        """Distance on the plan, shape (k, n) [m]."""
        return np.asarray(np.linalg.norm(self.landing - self.release, axis=-1))


_Value = Callable[[_Flights], Floats]  # of shape (k, n); it changes no more than the slack says


class _Samples(NamedTuple):
    """Intervals that cover every lit instant, and the flights from their middles."""

    row: Ints  # (n,) of the course
    beat: Floats  # (n,)
    half: Floats  # (n,) [beats]
    flights: _Flights


def flights_let_go(
    dancer: Dancer, tempo: TempoMap, targets: Sequence[LandingTarget]
) -> tuple[LetGo, tuple[NearestFlight, ...]]:
    """The farthest flight of a performer's heads, and the one that comes nearest to each target.

    Raises
    ------
    ValueError
        If they are never lit.

    Notes
    -----
    Source: module docstring; kept by slices of 16 beats, so that an edit costs what it touches. Error: 5 cm,
    unless `LetGo.proven` is false.
    """
    _content(dancer, tempo)  # refuses one who is never lit
    dancer = replace(dancer, props=_without_flames(dancer.props))
    slices = list(_lit_slices(dancer))
    wanted = tuple(targets)
    counted = (tempo.times, tempo.first)

    def work(missing: list[int]) -> list[_SliceFlights]:
        return [_of_slice(replace(dancer, lit=slices[k][1]), tempo, wanted) for k in missing]

    keyed = [k for k, (key, _) in enumerate(slices) if key is not None]
    known = kept_each(
        "flights let go",
        [(slices[k][0], counted, wanted) for k in keyed],
        lambda missing: work([keyed[k] for k in missing]),
        record=lambda own: [asdict(own.farthest), [asdict(each) for each in own.nearest]],
        restore=_slice_from,
    )
    found = dict(zip(keyed, known, strict=True))
    parts = [found[k] if k in found else work([k])[0] for k in range(len(slices))]
    far = max((part.farthest for part in parts), key=lambda each: each.flight)
    farthest = replace(
        far,
        fastest=max(part.farthest.fastest for part in parts),
        proven=all(part.farthest.proven for part in parts),
    )
    nearest = (
        min((part.nearest[k] for part in parts), key=lambda each: (each.distance, -each.beyond))
        for k in range(len(wanted))
    )
    return farthest, tuple(nearest)


def _without_flames(props: Mapping[Side, Prop]) -> Mapping[Side, Prop]:
    """Props whose flames reach nowhere: how far a flame reaches changes no flight, but with every edit.

    Equal ones are one object, so that what is known of their performer is found again.
    """
    bare = {side: replace(prop, flame_reach=0.0) for side, prop in props.items()}
    return recent("props without flames", content_key(bare), lambda: bare, most=_MOST_PROPS)


class _SliceFlights(NamedTuple):
    """What is found of one slice."""

    farthest: LetGo
    nearest: tuple[NearestFlight, ...]  # to each target


def _lit_slices(dancer: Dancer) -> Iterator[tuple[bytes | None, tuple[tuple[float, float], ...]]]:
    """Slices in which a performer is lit: what decides the motion in each, and the lit spans in it [beats]."""
    edges = slice_edges(min(low for low, _ in dancer.lit), max(high for _, high in dancer.lit))
    keys = slice_keys(dancer, edges)
    for key, low, high in zip(keys, edges[:-1].tolist(), edges[1:].tolist(), strict=True):
        spans = [(max(start, low), min(end, high)) for start, end in dancer.lit]
        lit = tuple((start, end) for start, end in spans if end > start)
        if lit:
            yield None if key is None else content_key(key, low, high), lit


def _of_slice(dancer: Dancer, tempo: TempoMap, targets: Sequence[LandingTarget]) -> _SliceFlights:
    course, samples = _sampled(dancer, tempo)
    crossed = [_crossed(samples, target) for target in targets]
    gaps = [_gap(target) for target, over in zip(targets, crossed, strict=True) if over is None]
    (beat, value, landing), *others = _leasts(course, samples, [_short_of, *gaps])
    rest = iter(others)
    nearest = []
    for over in crossed:
        if over is not None:
            nearest.append(over)
            continue
        when, distance, there = next(rest)
        nearest.append(NearestFlight(distance=distance, beyond=0.0, beat=when, landing=there))
    farthest = LetGo(
        flight=-value,
        beat=beat,
        landing=landing,
        fastest=float(np.max(samples.flights.fastest)),
        proven=bool(np.all(course.bounded)),
    )
    return _SliceFlights(farthest, tuple(nearest))


def _slice_from(record: Sequence[Any]) -> _SliceFlights:
    farthest, nearest = record
    return _SliceFlights(
        LetGo(**{**farthest, "landing": _point(farthest["landing"])}),
        tuple(NearestFlight(**{**each, "landing": _point(each["landing"])}) for each in nearest),
    )


def flown_over(dancer: Dancer, tempo: TempoMap) -> tuple[tuple[Point, ...], ...]:
    """Outlines of areas that hold every flight of a performer's heads while lit [m, stage frame].

    Raises
    ------
    ValueError
        If they never are.

    Notes
    -----
    Source: module docstring; kept by its content. Holes are filled; at most `GROWN` wider than the flights.
    """
    return kept(
        "flown over", _content(dancer, tempo),
        lambda: _outlines(_sampled(dancer, tempo)[1].flights),
        record=lambda rings: rings,
        restore=lambda record: tuple(tuple(_point(corner) for corner in ring) for ring in record),
    )  # fmt: skip


def _content(dancer: Dancer, tempo: TempoMap) -> tuple[Any, ...]:
    """All that decides a performer's flights."""
    if not dancer.lit or not dancer.props:
        raise ValueError(f"{dancer.name} is never lit")
    moving = (dancer.props, dancer.trajectories, dancer.floor, dancer.lit)
    return (*moving, tempo.times, tempo.first)


def _point(pair: Sequence[float]) -> Point:
    x, y = pair
    return (x, y)


def landing_of(place: Floats, velocity: Floats) -> Floats:
    """Where a head lands without drag on level ground.

    Parameters
    ----------
    place : ndarray, shape (..., 3) [m, stage frame]
        At release; a head below the ground counts as on it.
    velocity : ndarray, shape (..., 3) [m/s]

    Returns
    -------
    landing : ndarray, shape (..., 2) [m, stage frame]

    Notes
    -----
    Source: uniform acceleration, any mechanics text. Exact.
    """
    rise = velocity[..., 2]
    fall = np.sqrt(rise**2 + 2 * STANDARD_GRAVITY * np.maximum(place[..., 2], 0.0))
    aloft = (rise + fall) / STANDARD_GRAVITY
    return np.asarray(place[..., :2] + velocity[..., :2] * aloft[..., None])


class _Course:
    """A performer's wicks over all lit time, with proven bounds on intervals of one tempo."""

    def __init__(self, dancer: Dancer, tempo: TempoMap) -> None:
        self.dancer = dancer
        self.wicks = [
            _Wick(side, spot) for side, prop in dancer.props.items() for spot in prop.heads
        ]
        self._on_axis = not any(prop.ball[1] for prop in dancer.props.values())
        parts = [self._intervals(low, high, tempo) for low, high in dancer.lit]
        columns = [np.concatenate(column, axis=-1) for column in zip(*parts, strict=True)]
        self.start, self.end, speed, acceleration = columns
        self.tempo = np.asarray(tempo.beats_per_second((self.start + self.end) / 2))  # [beats/s]
        self.speed = speed * self.tempo  # (k, m) [m/s]
        self.acceleration = acceleration * self.tempo**2  # (k, m) [m/s²]
        self.bounded: Bools = np.all(np.isfinite(self.acceleration), axis=0)

    def _intervals(
        self, low: float, high: float, tempo: TempoMap
    ) -> tuple[Floats, Floats, Floats, Floats]:
        """Starts and ends, shape (m,) [beats]; bounds on speed and acceleration, shape (k, m) [m/beat, m/beat²]."""
        floor = self.dancer.floor.pieces(low, high)
        held = {side: own.pieces(low, high) for side, own in self.dancer.trajectories.items()}
        cuts = [
            edge for pieces in (floor, *held.values()) for piece in pieces for edge in piece[:2]
        ]
        edges = np.unique([low, high, *tempo.knots, *cuts])
        edges = edges[(edges >= low) & (edges <= high)]
        middle = (edges[:-1] + edges[1:]) / 2
        walk = [floor[i][2] for i in _which([piece[0] for piece in floor], middle)]
        ground = np.array(
            [(b.speed, b.acceleration, b.turn_rate, b.turn_acceleration) for b in walk]
        ).T
        own = {
            side: [pieces[i][2] for i in _which([piece[0] for piece in pieces], middle)]
            for side, pieces in held.items()
        }
        bounds = np.array([_bounds(ground, own[wick.side], wick.spot) for wick in self.wicks])
        return edges[:-1], edges[1:], bounds[:, 0], bounds[:, 1]

    def flights(self, rows: Ints, beats: Floats, half: Floats) -> _Flights:
        """Flights from instants in some rows, and the slack over half an interval [beats] either way."""
        place, rate = self._wicks(beats)
        velocity = rate * self.tempo[rows, None]
        slack, fastest = self._bounded(rows, place[..., 2], velocity, half / self.tempo[rows])
        return _Flights(place[..., :2], landing_of(place, velocity), slack, fastest)

    def _wicks(self, beats: Floats) -> tuple[Floats, Floats]:
        """Places and rates of the wicks, each shape (k, n, 3) [m and m/beat, stage frame]."""
        if self._on_axis:
            points, rates = self.dancer.stage_points(beats)
            own = [
                FIRST_POINT[wick.side] + 2 if wick.spot.along > 0 else REAR[wick.side]
                for wick in self.wicks
            ]
            return points[own], rates[own]

        def placed(at: Floats) -> Floats:
            return np.concatenate(list(self.dancer.wick_places(at).values()))

        change = placed(beats + _STEP) - placed(beats - _STEP)
        return placed(beats), change / (2 * _STEP)

    def _bounded(
        self, rows: Ints, height: Floats, velocity: Floats, seconds: Floats
    ) -> tuple[Floats, Floats]:
        """Bounds within some seconds either way: how far flights move [m], and speed [m/s]; the most of all wicks, shape (n,)."""
        most, pull = self.speed[:, rows], self.acceleration[:, rows]
        z = np.maximum(height, 0.0)
        with np.errstate(
            invalid="ignore", over="ignore"
        ):  # where nothing is bounded nothing is proven
            gain, climb = pull * seconds, most * seconds
            rise = np.minimum(velocity[..., 2] + gain, most)
            along = np.minimum(np.linalg.norm(velocity[..., :2], axis=-1) + gain, most)
            speed = np.minimum(np.linalg.norm(velocity, axis=-1) + gain, most)
            high, low = z + climb, np.maximum(z - climb, 0.0)
            drop = 2 * STANDARD_GRAVITY * np.where(rise > 0, low, high)
            share = rise / np.sqrt(np.maximum(rise**2 + drop, 1e-300))
            landed = np.sqrt(speed**2 + 2 * STANDARD_GRAVITY * high)
            moved = 2 * along + (1 + share) * pull / STANDARD_GRAVITY * landed
        return np.asarray(np.max(moved, axis=0) * seconds), np.asarray(np.max(speed, axis=0))


def _which(starts: Sequence[float], beats: Floats) -> Ints:
    """The piece that each beat lies in; pieces cover all of them."""
    return np.asarray(np.searchsorted(np.array(starts), beats, side="right") - 1)


def _bounds(ground: Floats, held: Sequence[Bounds], spot: PropPoint) -> Floats:
    """Bounds on a wick's speed and acceleration, shape (2, m) [m/beat, m/beat²]; the terms are those of `Dancer.pieces`."""
    v, a, w, dw = ground
    turns = [
        (b.frame_rate, b.frame_acceleration) if spot.across else (b.turn_rate, b.turn_acceleration)
        for b in held
    ]
    turn, bend = np.array(turns).T
    hand = np.array([(b.hand_reach, b.hand_speed, b.hand_acceleration) for b in held]).T
    far, rate, pull = hand[0] + spot.off, hand[1] + spot.off * turn, hand[2] + spot.off * bend
    return np.stack([v + w * far + rate, a + (dw + w * w) * far + 2 * w * rate + pull])


def _sampled(dancer: Dancer, tempo: TempoMap) -> tuple[_Course, _Samples]:
    """A performer's course and its samples; the most recent ones stay in memory."""
    key = None
    with suppress(TypeError):  # a law of another package
        key = content_key(*_content(dancer, tempo))

    def work() -> tuple[_Course, _Samples]:
        course = _Course(dancer, tempo)
        return course, _samples(course)

    return recent("sampled flights", key, work, most=_MOST_SAMPLED)


def _samples(course: _Course) -> _Samples:
    """Intervals over all lit time, divided until the slack of each is `SLACK` at most; without bounds, as far as it goes."""
    done = []
    rows: Ints = np.flatnonzero(course.bounded)
    beats, half = _middles(course, rows)
    while len(rows):
        found = course.flights(rows, beats, half)
        wide = found.slack > SLACK
        done.append(_chosen(_Samples(rows, beats, half, found), ~wide))
        count = np.minimum(np.ceil(found.slack[wide] / SLACK), _PARTS).astype(np.int64)
        rows, beats, half = _divided(rows[wide], beats[wide], half[wide], count)
    rows = np.flatnonzero(~course.bounded)
    if len(rows):
        done.append(_unbounded(course, rows))
    release, landing, slack, fastest = zip(*(each.flights for each in done), strict=True)
    return _Samples(
        np.concatenate([each.row for each in done]),
        np.concatenate([each.beat for each in done]),
        np.concatenate([each.half for each in done]),
        _Flights(
            np.concatenate(release, axis=1),
            np.concatenate(landing, axis=1),
            np.concatenate(slack),
            np.concatenate(fastest),
        ),
    )


def _unbounded(course: _Course, rows: Ints) -> _Samples:
    """Samples where nothing bounds the acceleration: evenly spaced, with a margin for the slack."""
    middle, wide = _middles(course, rows)
    count = np.ceil(2 * wide / _UNPROVEN).astype(np.int64)
    row, beats, half = _divided(rows, middle, wide, count)
    found = course.flights(row, beats, half)
    steps = np.linalg.norm(np.diff(found.landing, axis=1), axis=-1).max(axis=0)
    steps[np.diff(row) != 0] = 0.0
    largest = np.zeros(len(course.start))
    np.maximum.at(largest, row[1:], steps)
    return _Samples(row, beats, half, found._replace(slack=2 * largest[row]))


def _middles(course: _Course, rows: Ints) -> tuple[Floats, Floats]:
    start, end = course.start[rows], course.end[rows]
    return (start + end) / 2, (end - start) / 2


def _divided(rows: Ints, beats: Floats, half: Floats, count: Ints) -> tuple[Ints, Floats, Floats]:
    """Intervals divided into equal parts, as many as `count` of each."""
    parent = np.repeat(np.arange(len(rows)), count)
    place = np.arange(len(parent)) - np.repeat(np.cumsum(count) - count, count)
    part = half[parent] / count[parent]
    return rows[parent], beats[parent] + part * (2 * place + 1 - count[parent]), part


def _chosen(samples: _Samples, which: Bools) -> _Samples:
    flights = _these(samples.flights, which)
    return _Samples(samples.row[which], samples.beat[which], samples.half[which], flights)


def _leasts(
    course: _Course, samples: _Samples, values: Sequence[_Value]
) -> list[tuple[float, float, Point]]:
    """When each value of flights is smallest, that value, and the landing of that flight; all in one search."""
    groups = len(values)
    known = np.array([np.min(value(samples.flights), axis=0) for value in values])
    beats = samples.beat[np.argmin(known, axis=1)]
    least = np.min(known, axis=1)
    floor = np.where([value is _short_of for value in values], -np.inf, 0.0)  # of each value
    near = np.maximum(known - samples.flights.slack, floor[:, None]) < least[:, None] - FLIGHT_ERROR
    bounded = course.bounded[samples.row]
    group, chosen = np.nonzero(near & bounded)
    if len(chosen):
        rows, start = samples.row[chosen], samples.beat[chosen] - samples.half[chosen]

        def evaluate(r: Ints, t: Floats, half: Floats, _enough: Floats) -> Sample:
            flights = course.flights(rows[r], t, half)
            here, own = np.empty(len(r)), group[r]
            for k in np.unique(own).tolist():
                some = own == k
                here[some] = np.min(values[k](_these(flights, some)), axis=0)
            low = np.maximum(here - flights.slack, floor[own])
            return Sample(here, low, here + flights.slack, np.zeros_like(r))

        found = search(
            evaluate,
            group=group,
            start=start,
            end=samples.beat[chosen] + samples.half[chosen],
            required=np.full(groups, -np.inf),
            best=least,
            tolerance=FLIGHT_ERROR,
        )
        better = found.value < least
        beats, least = np.where(better, found.at, beats), np.where(better, found.value, least)
    loose = near & ~bounded
    if np.any(loose):  # a margin, on the safe side
        margin = np.where(loose, known - samples.flights.slack, np.inf)
        least = np.minimum(least, np.min(margin, axis=1))
    at = np.searchsorted(course.start, beats, side="right") - 1
    ends = course.flights(at, beats, np.zeros(groups))
    out = []
    for k, value in enumerate(values):
        one = _these(ends, np.arange(groups) == k)
        x, y = one.landing[int(np.argmin(value(one)[:, 0])), 0].tolist()
        out.append((float(beats[k]), float(least[k]), (x, y)))
    return out


def _these(flights: _Flights, which: Bools) -> _Flights:
    release, landing, slack, fastest = flights
    return _Flights(release[:, which], landing[:, which], slack[which], fastest[which])


def _short_of(flights: _Flights) -> Floats:
    """The distance flown, with its sign turned: smallest for the farthest flight."""
    return -flights.flown


def _gap(target: LandingTarget) -> _Value:
    """Distance of flights on the plan from a target."""
    if target.shape == "point":
        return partial(_to_point, place=np.array(target.points[0]))
    return partial(_to_shape, shape=_shape(target))


def _crossed(samples: _Samples, target: LandingTarget) -> NearestFlight | None:
    """The flight that lands farthest beyond a line, if any crosses it."""
    import shapely

    if target.shape != "line":
        return None
    shape, flights = _shape(target), samples.flights
    over = _to_shape(flights, shape) == 0.0
    if not np.any(over):
        return None
    far = np.where(over, 0.0, -np.inf)
    far[over] = shapely.distance(shapely.points(flights.landing[over]), shape)
    wick, at = divmod(int(np.argmax(far)), far.shape[1])
    x, y = flights.landing[wick, at].tolist()
    beyond = float(np.max(far + flights.slack))
    return NearestFlight(distance=0.0, beyond=beyond, beat=float(samples.beat[at]), landing=(x, y))


def _shape(target: LandingTarget) -> Any:
    import shapely

    shape = (shapely.LineString if target.shape == "line" else shapely.Polygon)(target.points)
    shapely.prepare(shape)
    return shape


def _to_shape(flights: _Flights, shape: Any) -> Floats:
    """Distance of flights on the plan from a line or an area, shape (k, n) [m]."""
    import shapely

    return np.asarray(shapely.distance(_lines(flights), shape), dtype=np.float64)


def _lines(flights: _Flights) -> Any:
    """Flights as lines on the plan, shape (k, n)."""
    import shapely

    return shapely.linestrings(np.stack([flights.release, flights.landing], axis=-2))


def _to_point(flights: _Flights, place: Floats) -> Floats:
    """Distance of flights on the plan from a point, shape (k, n) [m]."""
    way, there = flights.landing - flights.release, place - flights.release
    square = np.einsum("knc,knc->kn", way, way)
    share = np.einsum("knc,knc->kn", way, there) / np.maximum(square, 1e-300)
    off = there - np.clip(share, 0.0, 1.0)[..., None] * way
    return np.asarray(np.sqrt(np.einsum("knc,knc->kn", off, off)))


def _outlines(flights: _Flights) -> tuple[tuple[Point, ...], ...]:
    """Areas that hold every flight: the cells that the sampled ones pass, grown by what may lie between.

    Points on a flight are marked a cell apart at most; any other flight is within the slack of a sampled one.
    """
    import shapely

    ends = np.concatenate([flights.release, flights.landing]).reshape(-1, 2)
    # One cell more all round: rounding may take an end over the border of its own.
    low = np.floor(np.min(ends, axis=0) / FLOWN_CELL).astype(np.int64) - 1
    size = np.floor(np.max(ends, axis=0) / FLOWN_CELL).astype(np.int64) - low + 2
    flown = np.zeros(size, dtype=np.bool_)
    steps = max(2, int(np.ceil(float(np.max(flights.flown)) / FLOWN_CELL)) + 1)
    shares = np.linspace(0.0, 1.0, steps)[:, None, None]
    for release, landing in zip(flights.release, flights.landing, strict=True):
        for first in range(0, len(release), _CHUNK):
            a, b = release[first : first + _CHUNK], landing[first : first + _CHUNK]
            at = np.floor((a + shares * (b - a)) / FLOWN_CELL).astype(np.int64) - low
            flown[at[..., 0], at[..., 1]] = True
    x, bottom, top = _runs(flown)
    left, down = (low[0] + x) * FLOWN_CELL, (low[1] + bottom) * FLOWN_CELL
    cells = shapely.box(left, down, left + FLOWN_CELL, (low[1] + top) * FLOWN_CELL)
    grown = shapely.union_all(cells).buffer(float(np.max(flights.slack)) + FLOWN_CELL)
    simple = grown.simplify(0.45 * FLOWN_CELL)  # cuts off less than half a cell
    areas = simple.geoms if simple.geom_type == "MultiPolygon" else [simple]
    return tuple(tuple((x, y) for x, y in area.exterior.coords[:-1]) for area in areas)


def _runs(flown: Bools) -> tuple[Ints, Ints, Ints]:
    """Rows of marked cells: the row, its first cell, and the one after its last."""
    edge = np.diff(np.pad(flown.astype(np.int8), ((0, 0), (1, 1))), axis=1)
    row, first = np.nonzero(edge == 1)
    _, last = np.nonzero(edge == -1)
    return row, first, last
