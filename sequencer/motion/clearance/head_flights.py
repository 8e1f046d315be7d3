"""Flights of heads that come off: where each wick lands from any instant, with proven bounds between the instants.

Stage frame [m], time in beats, speeds in m/s. A head that comes off at p, z above level ground, with velocity v flies
for T = (v_z + S)/g, S = √(v_z² + 2gz), and lands at p + v_xy·T. This is without air. Drag, however strong, only brings
it down earlier on the same line: z″(x) = −g/v_x², and drag makes v_x smaller. So the line on the plan from release to
landing holds every place where it can come down; distances are from that line. Wind, bounces and rolls are left out.

Between samples: with a the head's acceleration before it comes off and q = v_z/S, the landing moves at
(1 + q)·(v_xy + (a_xy·S + v_xy·a_z)/g), never more than (1 + q)·(|v_xy| + (|a|/g)·√(v² + 2gz)). With 2|v_xy| for the first
term this also bounds how fast release and distance flown change. The proven bounds on v and a of the trajectories then
bound how far a flight may be from the nearest sample. For a fan or hoop in a link or a blend nothing bounds the
acceleration of its wicks: there the slack is twice the largest step between samples 1/128 beat apart, which is a margin
and no proof.

Wicks of many dancers are evaluated together; what is computed for one does not depend on the others.

Source: uniform acceleration, any mechanics text; the bounds are its derivative, by the chain rule.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.geometry.bodies import Side
from sequencer.motion.laws.law import Bounds
from sequencer.motion.performers.batch import Needed
from sequencer.motion.performers.courses import Courses, LawPlaces
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.performers.walks import Placement, WalkPaths
from sequencer.motion.props.prop import PropPoint
from sequencer.motion.trajectories.trajectory import Trajectory, TrajectoryPart
from sequencer.timing.tempo import TempoMap

_PARTS = 64  # that an interval is divided into at a time
_TOGETHER = 1 << 14  # flights worked out at a time, some kilobyte each
_ROWS = 512  # whose samples are sought together: a long song has many, and the samples in between need room
_UNPROVEN = 1 / 128  # [beats] between samples where nothing bounds the acceleration
_STEP = 1e-6  # [beats] half the difference step for a wick off the axis
_MOVING = Needed(hand=2, tether=2)
_STILL = Needed(hand=1, tether=1, plane=True)


class Flights(NamedTuple):
    """Flights of n heads that come off at an instant each."""

    release: Floats  # (n, 2) [m, stage frame]
    landing: Floats  # (n, 2) [m, stage frame]
    slack: Floats  # (n,) [m] that release, landing and distance flown differ by within the interval, at most
    speed: Floats  # (n,) [m/s] at release
    fastest: Floats  # (n,) [m/s] bound on it within the interval

    @property
    def flown(self) -> Floats:
        """Distance on the plan, shape (n,) [m]."""
        x, y = (self.landing - self.release).T
        return np.asarray(np.sqrt(x * x + y * y))

    def rows(self, which: Ints | Bools) -> "Flights":
        """Some of them."""
        return Flights(*(column[which] for column in self))


class FlightSamples(NamedTuple):
    """Intervals of wicks that cover every lit instant, and the flights from their middles."""

    row: Ints  # (n,) of the dancer's
    beat: Floats  # (n,)
    half: Floats  # (n,) [beats]
    flights: Flights
    proven: Bools  # (n,) whether the slack is a bound, not a margin

    def chosen(self, which: Ints | Bools) -> "FlightSamples":
        """Some of them."""
        return FlightSamples(
            self.row[which], self.beat[which], self.half[which], self.flights.rows(which),
            self.proven[which],
        )  # fmt: skip


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


class WickCourses:
    """Every wick of some dancers over their lit time: m rows, each one wick and a piece of one tempo and proven bounds.

    Parameters
    ----------
    dancers : sequence of Dancer
        Each lit, with a prop.
    tempo : TempoMap
    """

    def __init__(self, dancers: Sequence[Dancer], tempo: TempoMap) -> None:
        hands = [(k, side) for k, dancer in enumerate(dancers) for side in dancer.props]
        self._dancer = [k for k, _ in hands]
        self._courses = Courses([_lit_part(dancers[k], side) for k, side in hands])
        self._floors = WalkPaths([dancer.floor for dancer in dancers])
        own = [_dancer_rows(dancer, tempo) for dancer in dancers]
        self.first: Ints = np.cumsum([0, *(len(rows.start) for rows in own)])  # row of each dancer
        begun = np.cumsum([0, *(len(dancer.props) for dancer in dancers)]).tolist()
        self._hand = np.concatenate([rows.hand + h for rows, h in zip(own, begun, strict=False)])
        _, self._along, self._across, self.start, self.end, speed, acceleration = (
            np.concatenate(column) for column in zip(*own, strict=True)
        )
        self._pace = np.asarray(tempo.beats_per_second((self.start + self.end) / 2))  # [beats/s]
        self.speed = speed * self._pace  # (m,) [m/s] bound
        self.acceleration = acceleration * self._pace**2  # (m,) [m/s²] bound
        self.bounded: Bools = np.isfinite(self.acceleration)

    def flights(self, rows: Ints, beats: Floats, half: Floats) -> Flights:
        """Flights from instants in some rows, and the slack over half an interval [beats] either way."""
        cuts = [*range(0, len(rows), _TOGETHER), len(rows)]
        if len(cuts) <= 2:
            return self._flights(rows, beats, half)
        parts = [self._flights(rows[a:b], beats[a:b], half[a:b]) for a, b in pairwise(cuts)]
        return Flights(*(np.concatenate(column) for column in zip(*parts, strict=True)))

    def _flights(self, rows: Ints, beats: Floats, half: Floats) -> Flights:
        place, rate = self._wicks(rows, beats)
        pace = self._pace[rows]
        velocity = rate * pace[:, None]
        slack, fastest = self.bounds(rows, place[:, 2], velocity, half / pace)
        return Flights(
            place[:, :2], landing_of(place, velocity), slack, _size(*velocity.T), fastest
        )

    def _wicks(self, rows: Ints, beats: Floats) -> tuple[Floats, Floats]:
        """Places and rates of the wicks, each shape (n, 3) [m and m/beat, stage frame]."""
        place, rate = np.empty((len(rows), 3)), np.empty((len(rows), 3))
        across = self._across[rows] != 0.0
        for off_axis, work in ((False, self._on_axis), (True, self._off_axis)):
            which = np.flatnonzero(across == off_axis)
            if len(which):
                # By hand, so that each table is looked into once.
                which = which[np.argsort(self._hand[rows[which]], kind="stable")]
                place[which], rate[which] = work(rows[which], beats[which])
        return place, rate

    def _on_axis(self, rows: Ints, beats: Floats) -> tuple[Floats, Floats]:
        (hand, hand_rate, tether, tether_rate), stand = self._states(rows, beats, _MOVING)
        along = self._along[rows]
        own, moving = hand + along * tether, hand_rate + along * tether_rate
        cos, sin, w = -np.cos(stand.facing), -np.sin(stand.facing), stand.facing_rate
        (x, y), (u, v) = _turned(cos, sin, own), _turned(cos, sin, moving)
        (px, py), (dx, dy) = stand.place.T, stand.place_rate.T
        place = np.stack([px + x, py + y, own[2]], axis=-1)
        return place, np.stack([dx + u - w * y, dy + v + w * x, moving[2]], axis=-1)

    def _off_axis(self, rows: Ints, beats: Floats) -> tuple[Floats, Floats]:
        """A law has no rate of its plane: a difference stands for it."""

        def placed(at: Floats) -> Floats:
            (hand, tether, plane), stand = self._states(rows, at, _STILL)
            aside = np.cross(plane, tether, axis=0)
            own = hand + self._along[rows] * tether + self._across[rows] * aside
            x, y = _turned(-np.cos(stand.facing), -np.sin(stand.facing), own)
            return np.stack([stand.place[:, 0] + x, stand.place[:, 1] + y, own[2]], axis=-1)

        change = placed(beats + _STEP) - placed(beats - _STEP)
        return placed(beats), change / (2 * _STEP)

    def _states(self, rows: Ints, beats: Floats, needed: Needed) -> tuple[Floats, Placement]:
        """Of hand and prop, shape (parts, 3, n), and where the performer stands; rows by hand."""
        hand = self._hand[rows]
        cuts = [0, *(np.flatnonzero(np.diff(hand)) + 1).tolist(), len(rows)]
        each = [(int(hand[low]), low, high) for low, high in pairwise(cuts)]
        found = [self._courses.places(h, beats[low:high]) for h, low, high in each]
        places = LawPlaces(*(np.concatenate(column) for column in zip(*found, strict=True)))
        stand = self._floors.at([(self._dancer[h], low, high) for h, low, high in each], beats)
        return self._courses.parts(places, beats, needed), stand

    def bounds(
        self, rows: Ints, height: Floats, velocity: Floats, seconds: Floats
    ) -> tuple[Floats, Floats]:
        """Bounds within some seconds either way: how far flights move [m], and speed [m/s], each shape (n,)."""
        most, pull = self.speed[rows], self.acceleration[rows]
        z, (vx, vy, vz) = np.maximum(height, 0.0), velocity.T
        with np.errstate(
            invalid="ignore", over="ignore"
        ):  # where nothing is bounded nothing is proven
            gain, climb = pull * seconds, most * seconds
            rise = np.minimum(vz + gain, most)
            along = np.minimum(_size(vx, vy) + gain, most)
            speed = np.minimum(_size(vx, vy, vz) + gain, most)
            high, low = z + climb, np.maximum(z - climb, 0.0)
            drop = 2 * STANDARD_GRAVITY * np.where(rise > 0, low, high)
            share = rise / np.sqrt(np.maximum(rise**2 + drop, 1e-300))
            landed = np.sqrt(speed**2 + 2 * STANDARD_GRAVITY * high)
            moved = 2 * along + (1 + share) * pull / STANDARD_GRAVITY * landed
        return np.asarray(moved * seconds), np.asarray(speed)

    def samples(self, slack: float) -> list[FlightSamples]:
        """Intervals of each dancer, divided until the slack [m] of each is small enough; without bounds, as far as it goes."""
        whole = _joined(list(self.batches(slack)))
        cuts = np.searchsorted(whole.row, self.first).tolist()
        each = [whole.chosen(np.arange(low, high)) for low, high in pairwise(cuts)]
        first = self.first[:-1].tolist()
        return [own._replace(row=own.row - k) for own, k in zip(each, first, strict=True)]

    def batches(self, slack: float) -> Iterator[FlightSamples]:
        """The same for some rows at a time, in their order; each needs little room, however long the song is."""
        for first in range(0, len(self.start), _ROWS):
            yield self._batch(np.arange(first, min(first + _ROWS, len(self.start))), slack)

    def _batch(self, which: Ints, slack: float) -> FlightSamples:
        done = []
        rows: Ints = which[self.bounded[which]]
        beats, half = self._middles(rows)
        while len(rows):
            found = self.flights(rows, beats, half)
            wide = found.slack > slack
            small = ~wide
            done.append(FlightSamples(rows, beats, half, found, small).chosen(small))
            count = np.minimum(np.ceil(found.slack[wide] / slack), _PARTS).astype(np.int64)
            rows, beats, half = _divided(rows[wide], beats[wide], half[wide], count)
        rows = which[~self.bounded[which]]
        if len(rows):
            done.append(self._unbounded(rows))
        whole = _joined(done)
        return whole.chosen(np.argsort(whole.row, kind="stable"))

    def _unbounded(self, rows: Ints) -> FlightSamples:
        """Samples where nothing bounds the acceleration: evenly spaced, with a margin for the slack."""
        middle, wide = self._middles(rows)
        count = np.ceil(2 * wide / _UNPROVEN).astype(np.int64)
        row, beats, half = _divided(rows, middle, wide, count)
        found = self.flights(row, beats, half)
        steps = _size(*np.diff(found.landing, axis=0).T)
        steps[np.diff(row) != 0] = 0.0
        largest = np.zeros(len(self.start))
        np.maximum.at(largest, row[1:], steps)
        slack = 2 * largest[row]
        unproven = np.zeros(len(row), dtype=np.bool_)
        return FlightSamples(row, beats, half, found._replace(slack=slack), unproven)

    def _middles(self, rows: Ints) -> tuple[Floats, Floats]:
        start, end = self.start[rows], self.end[rows]
        return (start + end) / 2, (end - start) / 2


class _Rows(NamedTuple):
    """The rows of one dancer."""

    hand: Ints  # of the dancer's
    along: Floats  # [m]
    across: Floats  # [m]
    start: Floats  # [beats]
    end: Floats  # [beats]
    speed: Floats  # [m/beat] bound
    acceleration: Floats  # [m/beat²] bound


def _lit_part(dancer: Dancer, side: Side) -> PropTrajectory | TrajectoryPart:
    """What decides a hand's states while lit."""
    own = dancer.trajectories[side]
    if not isinstance(own, Trajectory):
        return own
    low, high = min(a for a, _ in dancer.lit), max(b for _, b in dancer.lit)
    return own.part(low - _STEP, high + _STEP)


def _dancer_rows(dancer: Dancer, tempo: TempoMap) -> _Rows:
    """Pieces of lit time within which nothing changes its bounds or the tempo, for each wick."""
    parts = [_bounds_of(dancer, low, high, tempo) for low, high in dancer.lit]
    start, end, bounds = (np.concatenate(column, axis=-1) for column in zip(*parts, strict=True))
    spots = [(h, s) for h, prop in enumerate(dancer.props.values()) for s in prop.heads]
    n = len(start)
    return _Rows(
        hand=np.repeat([h for h, _ in spots], n),
        along=np.repeat([spot.along for _, spot in spots], n),
        across=np.repeat([spot.across for _, spot in spots], n),
        start=np.tile(start, len(spots)),
        end=np.tile(end, len(spots)),
        speed=bounds[:, 0].ravel(),
        acceleration=bounds[:, 1].ravel(),
    )


def _bounds_of(
    dancer: Dancer, low: float, high: float, tempo: TempoMap
) -> tuple[Floats, Floats, Floats]:
    """Starts and ends, shape (n,) [beats]; bounds on speed and acceleration of k wicks, shape (k, 2, n) [m/beat, m/beat²]."""
    floor = dancer.floor.pieces(low, high)
    held = {side: own.pieces(low, high) for side, own in dancer.trajectories.items()}
    cuts = [edge for pieces in (floor, *held.values()) for piece in pieces for edge in piece[:2]]
    knots = tempo.knots[
        (tempo.knots >= low) & (tempo.knots <= high)
    ]  # of a long song most are elsewhere
    edges = np.unique(np.concatenate([[low, high], cuts, knots]))
    edges = edges[(edges >= low) & (edges <= high)]
    middle = (edges[:-1] + edges[1:]) / 2
    walk = [floor[i][2] for i in _which([piece[0] for piece in floor], middle)]
    ground = np.array([(b.speed, b.acceleration, b.turn_rate, b.turn_acceleration) for b in walk]).T
    bounds = []
    for side, prop in dancer.props.items():
        pieces = held[side]
        own = [pieces[i][2] for i in _which([piece[0] for piece in pieces], middle)]
        bounds += [_wick_bounds(ground, own, spot) for spot in prop.heads]
    return edges[:-1], edges[1:], np.array(bounds)


def _which(starts: Sequence[float], beats: Floats) -> Ints:
    """The piece that each beat lies in; pieces cover all of them."""
    return np.asarray(np.searchsorted(np.array(starts), beats, side="right") - 1)


def _wick_bounds(ground: Floats, held: Sequence[Bounds], spot: PropPoint) -> Floats:
    """Bounds on a wick's speed and acceleration, shape (2, n) [m/beat, m/beat²]; the terms are those of `Dancer.pieces`."""
    v, a, w, dw = ground
    turns = [
        (b.frame_rate, b.frame_acceleration) if spot.across else (b.turn_rate, b.turn_acceleration)
        for b in held
    ]
    turn, bend = np.array(turns).T
    hand = np.array([(b.hand_reach, b.hand_speed, b.hand_acceleration) for b in held]).T
    far, rate, pull = hand[0] + spot.off, hand[1] + spot.off * turn, hand[2] + spot.off * bend
    return np.stack([v + w * far + rate, a + (dw + w * w) * far + 2 * w * rate + pull])


def _joined(samples: Sequence[FlightSamples]) -> FlightSamples:
    row, beat, half, flights, proven = zip(*samples, strict=True)
    joined = Flights(*(np.concatenate(column) for column in zip(*flights, strict=True)))
    parts = (np.concatenate(row), np.concatenate(beat), np.concatenate(half))
    return FlightSamples(*parts, joined, np.concatenate(proven))


def _divided(rows: Ints, beats: Floats, half: Floats, count: Ints) -> tuple[Ints, Floats, Floats]:
    """Intervals divided into equal parts, as many as `count` of each."""
    parent = np.repeat(np.arange(len(rows)), count)
    place = np.arange(len(parent)) - np.repeat(np.cumsum(count) - count, count)
    part = half[parent] / count[parent]
    return rows[parent], beats[parent] + part * (2 * place + 1 - count[parent]), part


def _turned(cos: Floats, sin: Floats, own: Floats) -> tuple[Floats, Floats]:
    return cos * own[0] - sin * own[1], sin * own[0] + cos * own[1]


def _size(*parts: Floats) -> Floats:
    """Length of vectors, coordinate by coordinate: many times quicker than rows of three."""
    total = parts[0] * parts[0]
    for part in parts[1:]:
        total = total + part * part
    return np.asarray(np.sqrt(total))
