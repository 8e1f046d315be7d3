"""Where a head that comes off first lands: the farthest flight of a cast, and the nearest to each thing on the plan.

Every lit instant of every performer counts, proven over all of them (head_flights.py). The cast's lit time is parted into
slices of 16 beats. Each is first looked at coarsely: flights from the middles of intervals, and a proven bound on what
the others in each interval can be. The slice with the best coarse flight is then searched by branch and bound to 5 cm
(geometry/certified.py), finer than air would let anybody tell, and of the others only those whose bound can beat what
was found there. Both steps are kept by the content of a slice, so that an edit costs what it touches; which slices are
searched follows from the coarse looks at all of them alone, so that a result never depends on what was kept.

A flight that crosses a line counts by how far beyond it lands, as a distance below 0. Where a flight leaves a line by
passing its end that jumps: there a flight that passes within a third of the error counts as crossing.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any, Literal, NamedTuple, TypeVar

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.content_keys import content_key
from sequencer.geometry.bodies import Side
from sequencer.geometry.certified import Sample, search
from sequencer.geometry.regions import Point
from sequencer.geometry.segments import point_segment, segment_segment
from sequencer.kept import kept_each, recent, recent_each
from sequencer.motion.clearance.head_flights import Flights, FlightSamples, WickCourses
from sequencer.motion.clearance.slices import slice_edges, slice_keys
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.props.prop import Prop
from sequencer.timing.tempo import TempoMap

FLIGHT_ERROR = 0.05  # [m] of an extreme, at most
SPEED_ERROR = 0.10  # [m/s] by which the bound on the speed of heads is too large, at most
_COARSE = 1.0  # [m] that a flight may be from the nearest sample of a coarse look
_STEP = 0.05  # [m or m/s] to which a known extreme is rounded up, so that it seldom changes with an edit
_TOUCHING = 1e-9  # [m] rounding of a distance of segments that cross
_SLICES = 64  # looked at together, to limit memory
_MOST_PROPS = 2_000  # performers
_MOST_SCANS = 50_000  # slices, some hundred numbers each at most
_MOST_SAMPLED = 256  # slices whose samples stay in memory, some ten kilobytes each
T = TypeVar("T")
_UNKEYED = object()  # what has no content key: nothing is kept of it


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
    beyond: (
        float  # [m] a line: how far beyond it a head lands, at most 5 cm too much; 0 if none does
    )
    beat: float  # of the release; of the one that lands farthest beyond
    landing: Point  # [m, stage frame] without drag


@dataclass(frozen=True, slots=True, kw_only=True)
class LetGo:
    """The farthest that a head flies if it comes off at the worst instant."""

    flight: float  # [m] from release to landing on the plan; to 5 cm
    beat: float  # of that release
    landing: Point  # [m, stage frame]
    fastest: float  # [m/s] bound on the speed of this performer's lit heads, walking included
    proven: bool  # False if a margin stands for a bound somewhere in the cast


class CastFlights(NamedTuple):
    """Extremes of the flights of a cast, each with the performer whose head it is."""

    farthest: tuple[str, LetGo]
    nearest: tuple[tuple[str, NearestFlight], ...]  # to each target


def flights_let_go(
    dancers: Sequence[Dancer], tempo: TempoMap, targets: Sequence[LandingTarget]
) -> CastFlights:
    """The farthest flight of a cast's heads, and the one that comes nearest to each target.

    Raises
    ------
    ValueError
        If one of them is never lit.

    Notes
    -----
    Source: module docstring. Error: 5 cm, unless `LetGo.proven` is false.
    """
    slices = [each for k, dancer in enumerate(dancers) for each in _lit_slices(k, dancer)]
    aims = _Aims(targets)
    looks = _Looks(slices, tempo, aims)
    everywhere = list(range(len(slices)))
    far, *near = looks.least(aims.places, everywhere, FLIGHT_ERROR)
    who = slices[far.slice].who
    own = [k for k in everywhere if slices[k].who == who]
    (speed,) = looks.least([_SPEED], own, SPEED_ERROR)
    farthest = LetGo(
        flight=-far.value,
        beat=far.beat,
        landing=far.landing,
        fastest=-speed.lower,
        proven=all(scan.proven for scan in looks.scans),
    )
    return CastFlights(
        (dancers[who].name, farthest),
        tuple((dancers[slices[each.slice].who].name, _nearest(each)) for each in near),
    )


def _nearest(found: "_Least") -> NearestFlight:
    crossed = found.value < 0.0
    return NearestFlight(
        distance=max(found.value, 0.0),
        beyond=-found.lower if crossed else 0.0,
        beat=found.beat,
        landing=found.landing,
    )


# --- slices ---


class _Slice(NamedTuple):
    who: int
    key: tuple[bytes, float, float] | None  # all that decides the motion in it
    whole: Dancer
    lit: tuple[tuple[float, float], ...]  # [beats] in it

    @property
    def dancer(self) -> Dancer:
        """Lit in this slice alone."""
        return replace(self.whole, lit=self.lit)


def _lit_slices(who: int, dancer: Dancer) -> Iterator[_Slice]:
    """Slices in which a performer is lit."""
    if not dancer.lit or not dancer.props:
        raise ValueError(f"{dancer.name} is never lit")
    dancer = replace(dancer, props=_without_flames(dancer.props))
    edges = slice_edges(min(low for low, _ in dancer.lit), max(high for _, high in dancer.lit))
    keys = slice_keys(dancer, edges)
    for key, low, high in zip(keys, edges[:-1].tolist(), edges[1:].tolist(), strict=True):
        spans = [(max(start, low), min(end, high)) for start, end in dancer.lit]
        lit = tuple((start, end) for start, end in spans if end > start)
        if lit:
            yield _Slice(who, None if key is None else (key, low, high), dancer, lit)


def _without_flames(props: Mapping[Side, Prop]) -> Mapping[Side, Prop]:
    """Props whose flames reach nowhere: how far a flame reaches changes no flight, but with every edit.

    Equal ones are one object, so that what is known of their performer is found again.
    """
    bare = {side: replace(prop, flame_reach=0.0) for side, prop in props.items()}
    return recent("props without flames", content_key(bare), lambda: bare, most=_MOST_PROPS)


# --- what is sought ---

_FLOWN, _SPEED, _TARGETS = 0, 1, 2  # aims: the farthest flight, the fastest head, then the targets


class _Aims:
    """Values of flights whose smallest is sought, with bounds on them over an interval."""

    def __init__(self, targets: Sequence[LandingTarget]) -> None:
        self.count = _TARGETS + len(targets)
        self.places = [_FLOWN, *range(_TARGETS, self.count)]
        self.contents = [_FLOWN, _SPEED, *((each.shape, each.points) for each in targets)]
        self._targets = dict(enumerate(targets, _TARGETS))
        self._points = np.full((self.count, 2), np.nan)
        self._is_point = np.zeros(self.count, dtype=np.bool_)
        for k, each in self._targets.items():
            if each.shape == "point":
                self._points[k], self._is_point[k] = each.points[0], True

    def measured(self, aims: Ints, flights: Flights) -> tuple[Floats, Floats]:
        """The value of each flight for its own aim, and a bound below it over the interval, each shape (n,)."""
        value, lower = np.empty(len(aims)), np.empty(len(aims))
        point = self._is_point[aims]
        some = np.flatnonzero(point)
        if len(some):
            value[some], lower[some] = _to_points(flights.rows(some), self._points[aims[some]])
        for aim in np.unique(aims[~point]).tolist():
            some = np.flatnonzero(aims == aim)
            value[some], lower[some] = self._of(aim, flights.rows(some))
        return value, lower

    def every(self, flights: Flights) -> tuple[Floats, Floats]:
        """The same of each flight for each aim, shape (aims, n)."""
        value, lower = np.empty((2, self.count, len(flights.slack)))
        points = np.flatnonzero(self._is_point)
        value[points], lower[points] = _to_points(flights, self._points[points, None])
        for aim in np.flatnonzero(~self._is_point).tolist():
            value[aim], lower[aim] = self._of(aim, flights)
        return value, lower

    def _of(self, aim: int, flights: Flights) -> tuple[Floats, Floats]:
        if aim == _FLOWN:
            far = flights.flown
            return -far, -far - flights.slack
        if aim == _SPEED:
            return -flights.speed, -flights.fastest
        target = self._targets[aim]
        return (_to_line if target.shape == "line" else _to_area)(flights, target)


def _to_points(flights: Flights, points: Floats) -> tuple[Floats, Floats]:
    """Distance from points, one each, or from each of several, shape (p, 1, 2)."""
    gap = point_segment(points, flights.release, flights.landing)
    return gap, np.maximum(gap - flights.slack, 0.0)


def _to_line(flights: Flights, line: LandingTarget) -> tuple[Floats, Floats]:
    """Distance from a line; below 0 how far beyond it a flight lands that crosses it."""
    gap, slack = _gaps(flights, np.array(line.points)), flights.slack
    beyond = _from_edges(flights.landing, flights.landing, np.array(line.points))
    meets = gap <= slack
    passes = meets & (slack <= FLIGHT_ERROR / 3) & (beyond > slack)
    value = np.where((gap <= _TOUCHING) | passes, -beyond, gap)
    return value, np.where(meets, -(beyond + slack), gap - slack)


def _to_area(flights: Flights, area: LandingTarget) -> tuple[Floats, Floats]:
    """Distance from an area, 0 within."""
    import shapely

    gap = _gaps(flights, np.array([*area.points, area.points[0]]))
    inside = shapely.contains_xy(shapely.Polygon(area.points), flights.release)
    gap[inside] = 0.0
    return gap, np.maximum(gap - flights.slack, 0.0)


def _gaps(flights: Flights, corners: Floats) -> Floats:
    return _from_edges(flights.release, flights.landing, corners)


def _from_edges(start: Floats, end: Floats, corners: Floats) -> Floats:
    """Distance of segments from the edges between corners, shape (n,) [m]."""
    return np.asarray(
        np.min(segment_segment(start, end, corners[:-1, None], corners[1:, None])[0], axis=0)
    )


# --- looks at slices ---


class _Seen(NamedTuple):
    """A flight whose value for an aim is smallest in a slice, as far as it was looked at."""

    value: float  # inf if nothing smaller than what was known is there
    beat: float  # of the release
    landing: Point
    lower: float  # no flight in the slice has a smaller value


class _Scan(NamedTuple):
    """A coarse look at a slice: what was seen for each of a aims."""

    value: Floats  # (a,)
    beat: Floats  # (a,)
    landing: Floats  # (a, 2)
    lower: Floats  # (a,)
    proven: bool


class _Least(NamedTuple):
    """The smallest value for an aim in several slices."""

    slice: int
    value: float
    beat: float
    landing: Point
    lower: float


class _Job(NamedTuple):
    """A search for values in a slice that are smaller than what is known."""

    slice: int
    aim: int
    known: float


class _Looks:
    """What is found in slices, for each aim."""

    def __init__(self, slices: Sequence[_Slice], tempo: TempoMap, aims: _Aims) -> None:
        self._slices, self._tempo, self._aims = slices, tempo, aims
        # Of each slice: all that its flights depend on.
        self._counted = content_key(tempo.times, tempo.first)
        self._contents = [_UNKEYED if own.key is None else own.key for own in slices]
        sought = content_key(aims.contents)
        contents = [(own, self._counted, sought) for own in self._contents]

        def kept_scans(missing: list[int]) -> list[_Scan]:
            return kept_each(
                "flights let go, coarsely",
                [contents[k] for k in missing],
                lambda some: self._scan([missing[k] for k in some]),
                record=lambda scan: [*(column.tolist() for column in scan[:4]), scan.proven],
                restore=_scan_from,
            )

        # An edit leaves most slices as they were: these are known without a content key of each.
        keys = [None if own.key is None else (own.key, self._counted, sought) for own in slices]
        self.scans = recent_each("coarse looks", keys, kept_scans, most=_MOST_SCANS)

    def least(self, aims: Sequence[int], slices: Sequence[int], tolerance: float) -> list[_Least]:
        """The smallest value for some aims in some slices, to a tolerance [m or m/s]."""
        scans = [self.scans[k] for k in slices]
        value = np.stack([scan.value for scan in scans])[:, aims]
        lower = np.stack([scan.lower for scan in scans])[:, aims]
        column = np.arange(len(aims))
        better: dict[tuple[int, int], _Seen] = {}

        def search_in(rows: Ints, columns: Ints, known: Floats) -> None:
            places = list(zip(rows.tolist(), columns.tolist(), strict=True))
            jobs = [
                _Job(slices[row], aims[c], own)
                for (row, c), own in zip(places, known.tolist(), strict=True)
            ]
            for place, each in zip(places, self._searched(jobs, tolerance), strict=True):
                lower[place] = each.lower
                if each.value < value[place]:
                    value[place], better[place] = each.value, each

        lead = np.argmin(value, axis=0)
        search_in(lead, column, value[lead, column])
        least = value[lead, column]
        rest = lower < least - tolerance
        rest[lead, column] = False
        c, row = np.nonzero(rest.T)
        known = np.ceil(least / _STEP) * _STEP
        search_in(row, c, np.minimum(known[c], value[row, c]))
        out = []
        for k, row in enumerate(np.argmin(value, axis=0).tolist()):  # of equal ones the first
            scan, aim = scans[row], aims[k]
            x, y = scan.landing[aim].tolist()
            seen = _Seen(float(scan.value[aim]), float(scan.beat[aim]), (x, y), 0.0)
            seen = better.get((row, k), seen)
            bound = min(seen.value, float(np.min(lower[:, k])))
            out.append(_Least(slices[row], seen.value, seen.beat, seen.landing, bound))
        return out

    def _searched(self, jobs: Sequence[_Job], tolerance: float) -> list[_Seen]:
        def work(missing: list[int]) -> list[_Seen]:
            some = [jobs[k] for k in missing]
            return [each for part in _parts(some) for each in self._search(part, tolerance)]

        return kept_each(
            "flights let go",
            [
                (self._contents[k], self._counted, self._aims.contents[aim], known, tolerance)
                for k, aim, known in jobs
            ],
            work,
            record=lambda seen: seen,
            restore=_seen_from,
        )

    def _search(self, jobs: Sequence[_Job], tolerance: float) -> list[_Seen]:
        """By branch and bound, all in one search."""
        place = {k: n for n, k in enumerate(dict.fromkeys(job.slice for job in jobs))}
        sampled = self._sampled(list(place))
        courses = WickCourses([self._slices[k].dancer for k in place], self._tempo)
        own = [sampled[place[job.slice]] for job in jobs]
        counts = [len(each.row) for each in own]
        group = np.repeat(np.arange(len(jobs)), counts)
        rows = np.concatenate([each.row for each in own])
        rows += np.repeat([courses.first[place[job.slice]] for job in jobs], counts)
        beat, half = (np.concatenate([each[c] for each in own]) for c in (1, 2))
        aim, known = np.array([job.aim for job in jobs]), np.array([job.known for job in jobs])
        _, lower = self._aims.measured(aim[group], _joined([each.flights for each in own]))
        # What is not proven has its bound for a value: it never is below what is known.
        near = lower < known[group] - tolerance
        left_out = np.full(len(jobs), np.inf)
        np.minimum.at(left_out, group[~near], lower[~near])
        group, rows, beat, half = group[near], rows[near], beat[near], half[near]

        def evaluate(r: Ints, t: Floats, width: Floats, _enough: Floats) -> Sample:
            flights = courses.flights(rows[r], t, width)
            value, low = self._aims.measured(aim[group[r]], flights)
            return Sample(value, low, value, np.zeros_like(r))

        found = search(
            evaluate,
            group=group,
            start=beat - half,
            end=beat + half,
            required=np.full(len(jobs), -np.inf),
            best=known,
            tolerance=tolerance,
            apart=True,
        )
        hit = np.flatnonzero(found.row >= 0)
        landing = np.full((len(jobs), 2), np.nan)
        ends = courses.flights(rows[found.row[hit]], found.at[hit], np.zeros(len(hit)))
        landing[hit] = ends.landing
        value = np.where(found.row >= 0, found.value, np.inf)
        lowest = np.minimum(found.lower, left_out)
        columns = (value.tolist(), found.at.tolist(), landing.tolist(), lowest.tolist())
        return [_Seen(v, t, (x, y), low) for v, t, (x, y), low in zip(*columns, strict=True)]

    def _scan(self, missing: list[int]) -> list[_Scan]:
        out = []
        for part in _parts(missing):
            sampled = self._sampled(part)
            flights = _joined([own.flights for own in sampled])
            proven = np.concatenate([own.proven for own in sampled])
            beats = np.concatenate([own.beat for own in sampled])
            cuts = np.cumsum([0, *(len(own.row) for own in sampled)]).tolist()
            value, lower = self._aims.every(flights)
            value = np.where(proven, value, lower)  # unproven: on the safe side
            for low, high in pairwise(cuts):
                at = low + np.argmin(value[:, low:high], axis=1)
                out.append(
                    _Scan(
                        value=value[np.arange(len(at)), at],
                        beat=beats[at],
                        landing=flights.landing[at],
                        lower=np.min(lower[:, low:high], axis=1),
                        proven=bool(np.all(proven[low:high])),
                    )
                )
        return out

    def _sampled(self, which: Sequence[int]) -> list[FlightSamples]:
        """Coarse samples of slices."""

        def work(missing: list[int]) -> list[FlightSamples]:
            dancers = [self._slices[which[k]].dancer for k in missing]
            return WickCourses(dancers, self._tempo).samples(_COARSE)

        keys = [self._slices[k].key for k in which]
        known = [None if key is None else (key, self._counted) for key in keys]
        return recent_each("coarse flights", known, work, most=_MOST_SAMPLED)


def _parts(things: Sequence[T]) -> list[Sequence[T]]:
    return [things[k : k + _SLICES] for k in range(0, len(things), _SLICES)]


def _joined(flights: Sequence[Flights]) -> Flights:
    return Flights(*(np.concatenate(column) for column in zip(*flights, strict=True)))


def _scan_from(record: Sequence[Any]) -> _Scan:
    value, beat, landing, lower = (np.array(column) for column in record[:4])
    return _Scan(value, beat, landing, lower, record[4])


def _seen_from(record: Sequence[Any]) -> _Seen:
    value, beat, (x, y), lower = record
    return _Seen(value, beat, (x, y), lower)
