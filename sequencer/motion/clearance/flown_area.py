"""The ground that heads which come off may fly over: outlines of areas that hold every flight.

Stage frame [m], time in beats. Flights are sampled until every other one is within `FLOWN_SLACK` of a sampled one
(head_flights.py); the cells that those pass are grown by it.
"""

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.geometry.regions import Point
from sequencer.kept import kept
from sequencer.motion.clearance.head_flights import WickCourses
from sequencer.motion.performers.dancer import Dancer
from sequencer.timing.tempo import TempoMap

FLOWN_SLACK = 0.20  # [m] that a flight may be from the nearest sample
FLOWN_CELL = 0.15  # [m] of the grid on which flights are drawn
GROWN = FLOWN_SLACK + 2.5 * FLOWN_CELL  # [m] by which an outline is wider than the flights, at most
_CHUNK = 4_096  # flights drawn at a time


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
    if not dancer.lit or not dancer.props:
        raise ValueError(f"{dancer.name} is never lit")
    moving = (dancer.props, dancer.trajectories, dancer.floor, dancer.lit)
    return kept(
        "flown over", (*moving, tempo.times, tempo.first),
        lambda: _outlines(*_flown(dancer, tempo)),
        record=lambda rings: rings,
        restore=lambda record: tuple(tuple((x, y) for x, y in ring) for ring in record),
    )  # fmt: skip


def _flown(dancer: Dancer, tempo: TempoMap) -> tuple[Floats, Floats, float]:
    """Release and landing of the sampled flights, shape (n, 2) each [m], and the largest slack [m]."""
    releases, landings, slack = [], [], 0.0
    for samples in WickCourses([dancer], tempo).batches(FLOWN_SLACK):
        releases.append(samples.flights.release)
        landings.append(samples.flights.landing)
        slack = max(slack, float(np.max(samples.flights.slack)))
    return np.concatenate(releases), np.concatenate(landings), slack


def _outlines(release: Floats, landing: Floats, slack: float) -> tuple[tuple[Point, ...], ...]:
    """Areas that hold every flight: the cells that the sampled ones pass, grown by what may lie between.

    Points on a flight are marked a cell apart at most; any other flight is within the slack of a sampled one.
    """
    import shapely

    # One cell more all round: rounding may take an end over the border of its own.
    least = np.minimum(np.min(release, axis=0), np.min(landing, axis=0))
    most = np.maximum(np.max(release, axis=0), np.max(landing, axis=0))
    low = np.floor(least / FLOWN_CELL).astype(np.int64) - 1
    size = np.floor(most / FLOWN_CELL).astype(np.int64) - low + 2
    flown = np.zeros(size, dtype=np.bool_)
    (x, y) = (landing - release).T
    longest = float(np.sqrt(np.max(x * x + y * y)))
    steps = max(2, int(np.ceil(longest / FLOWN_CELL)) + 1)
    shares = np.linspace(0.0, 1.0, steps)[:, None, None]
    for first in range(0, len(release), _CHUNK):
        a, b = release[first : first + _CHUNK], landing[first : first + _CHUNK]
        at = np.floor((a + shares * (b - a)) / FLOWN_CELL).astype(np.int64) - low
        flown[at[..., 0], at[..., 1]] = True
    x, bottom, top = _runs(flown)
    left, down = (low[0] + x) * FLOWN_CELL, (low[1] + bottom) * FLOWN_CELL
    cells = shapely.box(left, down, left + FLOWN_CELL, (low[1] + top) * FLOWN_CELL)
    grown = shapely.union_all(cells).buffer(slack + FLOWN_CELL)
    simple = grown.simplify(0.45 * FLOWN_CELL)  # cuts off less than half a cell
    areas = simple.geoms if simple.geom_type == "MultiPolygon" else [simple]
    return tuple(tuple((x, y) for x, y in area.exterior.coords[:-1]) for area in areas)


def _runs(flown: Bools) -> tuple[Ints, Ints, Ints]:
    """Rows of marked cells: the row, its first cell, and the one after its last."""
    edge = np.diff(np.pad(flown.astype(np.int8), ((0, 0), (1, 1))), axis=1)
    row, first = np.nonzero(edge == 1)
    _, last = np.nonzero(edge == -1)
    return row, first, last
